package tramontane.acoustics.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static tramontane.acoustics.internal.Movers.PART;
import static tramontane.acoustics.internal.Movers.RATED;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import tramontane.acoustics.NoiseState;
import tramontane.airflow.internal.BankKind;
import tramontane.airflow.internal.OpeningKind;
import tramontane.analysis.Amount;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Severity;
import tramontane.analysis.Table;
import tramontane.analysis.Trace;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.Weighting;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;

class NoiseAnalysisTest {

    private static final List<PassageKind> KINDS = List.of(new OpeningKind(), new BankKind());
    private static final String BANDS = "'octaves': '45 48 46 44 42 38 33 27 dB', 'at': 'best point'";
    private static final String TONE = BANDS + ", 'blades': 7, 'tones': [{'order': 7, 'level': '45 dB'}]";
    /** One point, two metres in front of a box without size, all round and over nothing that reflects. */
    private static final String FREE = "'space': {'kind': 'free field'}, 'positions': [{'id': 'ear', 'kind': 'point', 'distance': '2 m'}]";

    /** A box whose movers blow straight out by the front, and whose inlet is at the rear. */
    private static Design box(String noise, String scene, String more) {
        return Movers.read("{'format': 1, 'airMovers': [{" + PART + (noise.isEmpty() ? "" : ", 'sections': {'noise': {" + noise + "}}") + "}],"
                + " 'airPath': {'bays': ['box'], 'passages': [{'id': 'inlet', 'kind': 'opening', 'from': 'outside', 'to': 'box', 'area': '0.02 m²',"
                + " 'sections': {'noise': {'directivity': 'all round'}}}, {'id': 'fans', 'kind': 'bank', 'from': 'box', 'to': 'outside', 'mover': 'F',"
                + " 'across': 2, 'sections': {'noise': {'directivity': 'all round'}}}" + more + "]}"
                + (scene.isEmpty() ? "" : ", 'sections': {'noise': {" + scene + "}}") + "}");
    }

    private static OperatingPoint.BankPoint bank(String id, double... speeds) {
        List<OperatingPoint.MoverPoint> movers = new ArrayList<>();
        for (double speed : speeds) {
            movers.add(new OperatingPoint.MoverPoint(movers.size() + 1, speed > 0, 0.04 * speed / RATED, 30, speed, OptionalDouble.empty()));
        }
        double most = Arrays.stream(speeds).max().orElse(0);
        return new OperatingPoint.BankPoint(id, 0.08, 0.096, 30, most, OptionalDouble.empty(), 293, 1.2, true, movers, 1);
    }

    private static OperatingPoint point(OperatingPoint.BankPoint... banks) {
        return new OperatingPoint(List.of(banks), List.of(), List.of());
    }

    /** A result, and where its figures come from. */
    private record Told(Result<NoiseState> result, List<Trace.Step> steps) {

        Figure figure(String id, String place) {
            return result.figures().stream().filter(figure -> figure.kind().id().equals(id) && figure.place().equals(place)).findFirst()
                    .orElseThrow(() -> new AssertionError("no figure " + id + " at " + place + " in " + result.figures()));
        }

        boolean has(String id) {
            return result.figures().stream().anyMatch(figure -> figure.kind().id().equals(id));
        }

        Optional<Finding> finding(Severity severity, String words) {
            return result.findings().stream().filter(finding -> finding.severity() == severity
                    && finding.message().in(UnitSystem.METRIC).contains(words)).findFirst();
        }
    }

    private static Told told(Design design, OperatingPoint point) {
        List<Trace.Step> steps = new ArrayList<>();
        NoiseAnalysis analysis = new NoiseAnalysis(KINDS);
        return new Told(analysis.run(new Given(design, Optional.of(Condition.NOMINAL), Map.of("", point)), Run.alone(Trace.into(steps))), steps);
    }

    /** Level arithmetic: two alike are 3.0103 dB more. ISO 3745: 10 lg 4π 2² = 17.0127 dB. */
    @Test
    void whatLeavesIsWhatIsHeard() {
        Told told = told(box(BANDS, FREE, ""), point(bank("fans", RATED, RATED)));
        double one = told.result().data().orElseThrow().banks().getFirst().movers().getFirst().level();
        assertEquals(one + 3.0103, told.figure("acoustics.bank.power", "fans").value(), 1e-4);
        assertEquals(one + 3.0103, told.figure("acoustics.power", "").value(), 1e-4);
        assertEquals(one + 3.0103 - 17.0127, told.figure("acoustics.level", "ear").value(), 1e-4);
        double front = told.figure("acoustics.opening.power", "fans").value();
        double rear = told.figure("acoustics.opening.power", "inlet").value();
        assertEquals(one + 3.0103, Levels.sum(front, rear), 1e-4);
        assertTrue(front > rear, "half goes straight out, and some of the rest back through the movers");
    }

    @Test
    void levelsCarryTheToleranceOfTheirSource() {
        Figure level = told(box(BANDS + ", 'tolerance': '2 dB'", FREE, ""), point(bank("fans", RATED, RATED))).figure("acoustics.level", "ear");
        assertEquals(level.value() - 2, level.lower().getAsDouble(), 1e-6);
        assertEquals(level.value() + 2, level.upper().getAsDouble(), 1e-6);
        Told told = told(box(BANDS + ", 'tolerance': '2 dB'", FREE, ""), point(bank("fans", RATED, RATED)));
        for (Figure figure : told.result().figures()) {
            boolean bounded = figure.kind().id().startsWith("acoustics.level") || figure.kind().id().contains("power")
                    || figure.kind().id().contains("rating");
            assertTrue(!bounded || figure.lower().isPresent() && figure.upper().isPresent(), figure.toString());
        }
    }

    @Test
    void aFailedMoverIsSilent() {
        double both = told(box(BANDS, FREE, ""), point(bank("fans", RATED, RATED))).figure("acoustics.level", "ear").value();
        Told one = told(box(BANDS, FREE, ""), point(bank("fans", RATED, 0)));
        assertEquals(both - 3.0103, one.figure("acoustics.level", "ear").value(), 1e-4);
        Told none = told(box(BANDS, FREE, ""), point(bank("fans", 0, 0)));
        assertEquals(0, none.figure("acoustics.level", "ear").value());
        assertTrue(none.finding(Severity.NOTE, "levels of 0 dB stand for silence").isPresent());
        assertTrue(none.result().data().orElseThrow().silent());
        assertEquals(1, none.steps().stream().filter(step -> step.figure().equals("acoustics.level")).count());
        assertEquals(List.of(), none.result().findings().stream().filter(each -> each.severity() == Severity.ERROR).toList());
    }

    @Test
    void aDesignThatSaysNothingOfNoiseIsLeftAlone() {
        Told told = told(box("", "", ""), point(bank("fans", RATED, RATED)));
        assertEquals(NoiseState.NONE, told.result().data().orElseThrow());
        assertEquals(List.of(), told.result().figures());
        assertEquals(List.of(), told.result().findings());
    }

    @Test
    void whereNothingIsKnownOfABankNoLevelIsGiven() {
        Told told = told(box("", FREE, ""), point(bank("fans", RATED, RATED)));
        assertFalse(told.has("acoustics.level"));
        assertTrue(told.finding(Severity.NOT_JUDGED, "nothing is stated of the noise of F").isPresent());
        Told blades = told(box("'blades': 7", FREE, ""), point(bank("fans", RATED, RATED)));
        assertTrue(blades.finding(Severity.NOT_JUDGED, "has no level that belongs to a speed").isPresent());
        Told standing = told(box("", FREE, ""), point(bank("fans", 0, 0)));
        assertEquals(List.of(), standing.result().findings());
    }

    @Test
    void ratingsAreThoseOfItsOctaves() {
        Told told = told(box(BANDS, FREE, ""), point(bank("fans", RATED, RATED)));
        NoiseState.PositionNoise ear = told.result().data().orElseThrow().position("ear").orElseThrow();
        assertEquals(ear.noiseRating().orElseThrow().value(), told.figure("acoustics.rating.nr", "ear").value());
        double shift = 3.0103 - 17.0127; // octaves of the spectrum of the check values, moved
        assertEquals(42 + shift, ear.total().octave(5), 1e-3);
        assertEquals(42 + shift, told.figure("acoustics.rating.nr", "ear").value(), 1e-3); // 1 kHz decides, where NR is the level
        assertEquals(5, ear.noiseRating().orElseThrow().octave());
    }

    @Test
    void theBackgroundIsAddedWhereItIsAskedFor() {
        Told told = told(box(BANDS, FREE + ", 'background': {'weighted': '30 dB'}", ""), point(bank("fans", RATED, RATED)));
        assertEquals(Levels.sum(30, told.figure("acoustics.level", "ear").value()), told.figure("acoustics.level.total", "ear").value(), 1e-9);
    }

    /** ISO 9296: K_v = 0.95 s_t + 0.564 · 2 dB with s_t² = s_R² + s_P². */
    @Test
    void theDeclaredLevelHasItsAdder() {
        Told told = told(box(BANDS, FREE + ", 'declaration': {'reproducibility': '1.5 dB', 'production': '1 dB'}", ""), point(bank("fans", RATED, RATED)));
        double adder = 0.95 * Math.hypot(1.5, 1) + 0.564 * 2;
        assertEquals(told.figure("acoustics.power", "").value() + adder, told.figure("acoustics.power.declared", "").value(), 1e-9);
    }

    @Test
    void aProminentToneIsSaidAndJudged() {
        Told told = told(box(BANDS + ", 'blades': 10, 'tones': [{'order': 10, 'level': '43.9 dB'}]", FREE, ""), point(bank("fans", RATED, RATED)));
        assertEquals(500, told.figure("acoustics.bank.blades", "fans").value(), 1e-9);
        assertTrue(told.figure("acoustics.tone.excess", "ear").value() > 0);
        assertTrue(told.finding(Severity.CAUTION, "the tone at 500 Hz (fans, blades) is prominent").isPresent(), told.result().findings().toString());
        Told faint = told(box(BANDS + ", 'blades': 10, 'tones': [{'order': 10, 'level': '30 dB'}]", FREE, ""), point(bank("fans", RATED, RATED)));
        assertTrue(faint.figure("acoustics.tone.excess", "ear").value() < 0);
        assertTrue(faint.finding(Severity.CAUTION, "is prominent").isEmpty());
    }

    /** Hum alone is stated, and not the tone of the blades: what is worst is not known unless the hum is prominent. */
    @Test
    void whatIsNotStatedOfTonesIsNotMet() {
        String hum = BANDS + ", 'blades': 7, 'tones': [{'frequency': '100 Hz', 'fixed': true, 'level': '30 dB'}]";
        Told faint = told(box(hum, FREE, ""), point(bank("fans", RATED, RATED)));
        assertFalse(faint.has("acoustics.tone.excess"));
        assertTrue(faint.finding(Severity.NOTE, "the tone of the blades is not among those stated of F").isPresent());
        assertTrue(told(box(BANDS + ", 'tones': []", FREE, ""), point(bank("fans", RATED, RATED))).result().findings().stream()
                .noneMatch(each -> each.message().in(UnitSystem.METRIC).contains("tone")));
        assertTrue(told(box(TONE, FREE, ""), point(bank("fans", RATED, RATED))).figure("acoustics.tone.excess", "ear").lower().isPresent());
        Told loud = told(box(BANDS + ", 'blades': 7, 'tones': [{'frequency': '500 Hz', 'fixed': true, 'level': '43.9 dB'}]", FREE, ""),
                point(bank("fans", RATED, RATED)));
        assertTrue(loud.figure("acoustics.tone.excess", "ear").value() > 0);
    }

    /** Two softer tones beside a louder third, all counted as one: they beat all the same. */
    @Test
    void softerTonesBeatToo() {
        String two = ", {'id': 'b', 'kind': 'bank', 'from': 'box', 'to': 'outside', 'mover': 'F'}, {'id': 'c', 'kind': 'bank', 'from': 'box',"
                + " 'to': 'outside', 'mover': 'F'}";
        Told told = told(box(TONE, FREE, two), point(bank("fans", RATED), bank("b", 1.01 * RATED), bank("c", 1.03 * RATED)));
        assertEquals(3, told.result().findings().stream().filter(each -> each.message().in(UnitSystem.METRIC).contains(" beat, ")).count());
    }

    @Test
    void aSlowerSpeedIsAmongWhatWouldHelp() {
        Told told = told(box(BANDS, FREE, ""), point(bank("fans", RATED, RATED)));
        Table table = told.result().overviews().get(2).table();
        List<Table.Cell> slower = table.rows().stream().filter(row -> row.get(4).equals(new Table.Words("10 % slower"))).findFirst().orElseThrow();
        double gain = ((Amount) slower.get(5)).si();
        assertTrue(gain > -50 * Math.log10(0.9) && gain < 3.5, "50 lg, and some more by bands that move to where they are heard less: " + gain);
    }

    /** Nothing is stated below 355 Hz, where the hum is: its ratios are infinite, and those of the other tone are not the worst. */
    @Test
    void aToneWithoutNoiseAroundItIsSaidAndNotRated() {
        Told told = told(box("'octaves': '44 42 38 dB', 'lowestOctave': '500 Hz', 'tones': [{'frequency': '100 Hz', 'fixed': true, 'level': '30 dB'},"
                + " {'order': 20, 'level': '30 dB'}]", FREE, ""), point(bank("fans", RATED, RATED)));
        assertTrue(told.finding(Severity.CAUTION, "the tone at 100 Hz (fans, fixed) stands alone").isPresent(), told.result().findings().toString());
        assertFalse(told.has("acoustics.tone.excess"));
        assertTrue(told.has("acoustics.level"));
        assertEquals(4, told.result().overviews().size());
    }

    /** The third of 500 Hz stands 25 dB above its neighbours: its hump has a prominence ratio whatever faint tone is in it. */
    @Test
    void aHumpOfTheNoiseIsNoProminentTone() {
        Told told = told(box("'thirds': '20 20 20 20 20 45 20 20 20 20 20 dB', 'lowestThird': '160 Hz', 'tones': [{'order': 10, 'level': '20 dB'}]", FREE, ""),
                point(bank("fans", RATED, RATED)));
        assertTrue(told.figure("acoustics.tone.prominence", "ear").value() > 12.01, "criterion of 500 Hz");
        assertTrue(told.figure("acoustics.tone.ratio", "ear").value() < -20);
        assertTrue(told.figure("acoustics.tone.excess", "ear").value() < -30);
        assertTrue(told.finding(Severity.CAUTION, "is prominent").isEmpty());
    }

    @Test
    void moversOfNearlyOneSpeedBeat() {
        String second = ", {'id': 'more fans', 'kind': 'bank', 'from': 'box', 'to': 'outside', 'mover': 'F'}";
        Told close = told(box(TONE, FREE, second), point(bank("fans", RATED, RATED), bank("more fans", 1.02 * RATED)));
        assertTrue(close.finding(Severity.CAUTION, "and 357 Hz (more fans, blades) beat, 7.00 Hz apart").isPresent());
        Told apart = told(box(TONE, FREE, second), point(bank("fans", RATED, RATED), bank("more fans", 1.5 * RATED)));
        assertTrue(apart.finding(Severity.CAUTION, "beat").isEmpty());
        Told alike = told(box(TONE, FREE, ""), point(bank("fans", RATED, RATED)));
        assertTrue(alike.finding(Severity.NOTE, "their tones may beat at ear").isPresent());
    }

    @Test
    void assumptionsAreSaid() {
        Told told = told(box("'soundPressure': '38 dB'", "", ""), point(bank("fans", RATED, RATED)));
        assertTrue(told.finding(Severity.CAUTION, "holds for free delivery, but it works at 80.0 % of its free flow").isPresent(),
                told.result().findings().toString());
        assertTrue(told.finding(Severity.NOTE, "a free field is assumed").isPresent());
        assertTrue(told.finding(Severity.NOTE, "the spectrum of its type of fan is assumed").isPresent());
        assertTrue(told.finding(Severity.NOTE, "nothing is stated of the tones of F").isPresent());
        assertTrue(told.has("acoustics.level"), "somebody listens at 1 m where nothing else is said");
        Told slow = told(box(BANDS, FREE, ""), point(bank("fans", RATED / 3, RATED / 3)));
        assertTrue(slow.finding(Severity.CAUTION, "is carried from 3000 rpm to 1000 rpm by the sound law").isPresent());
        Told size = told(box(BANDS + ", 'rotorDiameter': '0.09 m'", FREE, "").withAirMovers(List.of(Movers.read("{'format': 1, 'airMovers': [{'id': 'F',"
                + " 'ratedSpeed': '3000 rpm', 'curves': [{'flow': '0 0.05 m³/s', 'pressure': '100 0 Pa'}], 'sections': {'noise': {" + BANDS
                + ", 'rotorDiameter': '0.09 m'}}}], 'airPath': {'bays': [], 'passages': []}}").airMovers().getFirst())), point(bank("fans", RATED, RATED)));
        assertTrue(size.finding(Severity.CAUTION, "the size does not count").isPresent(), size.result().findings().toString());
        Told loud = told(box("'soundPower': '105 dB'", FREE, ""), point(bank("fans", RATED, RATED)));
        assertTrue(loud.finding(Severity.CAUTION, "hearing has to be protected").isPresent());
    }

    @Test
    void everyFigureSaysWhereItComesFrom() {
        Told told = told(box(TONE, FREE + ", 'background': {'weighted': '30 dB'}, 'declaration': {'production': '1 dB'}", ""),
                point(bank("fans", RATED, RATED)));
        for (Figure figure : told.result().figures()) {
            List<Trace.Step> steps = told.steps().stream().filter(step -> step.figure().equals(figure.kind().id()) && step.place().equals(figure.place()))
                    .toList();
            assertEquals(1, steps.size(), figure.toString());
            assertEquals(figure.value(), steps.getFirst().value(), 1e-9, figure.toString());
            assertFalse(steps.getFirst().inputs().isEmpty());
        }
        Trace.Step level = told.steps().stream().filter(step -> step.figure().equals("acoustics.level")).findFirst().orElseThrow();
        assertEquals(level.value(), Levels.sum(level.inputs().stream().mapToDouble(Trace.Term::value).toArray()), 1e-9);
        for (Trace.Step step : told.steps()) {
            if (step.figure().equals("level of a part") || step.figure().equals("sound power of a mover")) {
                assertEquals(step.value(), step.inputs().stream().filter(term -> term.quantity().equals(QuantityKind.LEVEL))
                        .mapToDouble(Trace.Term::value).sum(), 1e-9, step.toString());
            }
        }
    }

    @Test
    void tablesNameWhatMakesTheLevel() {
        Told told = told(box(TONE, FREE, ""), point(bank("fans", RATED, RATED)));
        assertEquals(List.of("Noise", "Noise in octaves", "What makes the noise", "Tones"), told.result().overviews().stream().map(each -> each.table().title())
                .toList());
        NoiseState.PositionNoise ear = told.result().data().orElseThrow().position("ear").orElseThrow();
        assertEquals(2, ear.parts().size());
        double rest = ear.without(ear.parts().getFirst());
        assertEquals(ear.level(), Levels.sum(rest, ear.parts().getFirst().total().level(Weighting.A)), 1e-9);
    }

    @Test
    void briefRunsGiveTheSameFiguresAlone() {
        Design design = box(TONE, FREE, "");
        OperatingPoint point = point(bank("fans", RATED, RATED));
        Run alone = Run.alone(Trace.SILENT);
        Run brief = new Run() {
            @Override
            public boolean cancelled() {
                return false;
            }

            @Override
            public void progress(double fraction, String message) {
                // nobody watches
            }

            @Override
            public boolean brief() {
                return true;
            }

            @Override
            public Trace trace() {
                return Trace.SILENT;
            }

            @Override
            public <R> Optional<R> ask(Design other, Condition condition, Class<R> type) {
                return alone.ask(other, condition, type);
            }

            @Override
            public List<Figure> figures(Design other, Condition condition, String id) {
                return List.of();
            }
        };
        Given given = new Given(design, Optional.of(Condition.NOMINAL), Map.of("", point));
        Result<NoiseState> full = new NoiseAnalysis(KINDS).run(given, alone);
        Result<NoiseState> little = new NoiseAnalysis(KINDS).run(given, brief);
        assertEquals(full.figures(), little.figures());
        assertEquals(List.of(), little.overviews());
        assertEquals(Stream.of(full, little).map(Result::data).distinct().count(), 1);
    }
}
