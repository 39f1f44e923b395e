package tramontane.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.analysis.Finding;
import tramontane.analysis.Severity;
import tramontane.model.AirMover;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.file.DesignFile;
import tramontane.model.file.Limits;
import tramontane.model.file.TreeFile;
import tramontane.physics.FanNoise;

class PlausibilityTest {

    private static final String CURVE = "'speed': '4000 rpm', 'voltage': '48 V', 'flow': '0 60 100 120 150 180 210 m³/h',"
            + " 'pressure': '152 94 92 95 80 48 0 Pa', 'power': '12.6 12.2 12.3 12.2 11.6 10.6 9.4 W'";

    /** As the mover of the cabinet among the sample designs. */
    private static final String SOUND = "{'id': 'sound', 'maker': 'nobody', 'type': 'axial', 'width': '120 mm', 'height': '120 mm',"
            + " 'depth': '38 mm', 'rotorDiameter': '113 mm', 'openArea': '82 cm²', 'ratedSpeed': '4000 rpm', 'bearing': 'ball',"
            + " 'lowestTemperature': '-20 °C', 'highestTemperature': '85 °C', 'price': 31, 'currency': 'EUR', 'curves': [{" + CURVE + "}], 'sections': {"
            + "'drive': {'supply': {'current': 'DC', 'voltage': '48 V', 'rated': '260 mA'}},"
            + "'noise': {'soundPower': '58 dB', 'speed': '4000 rpm', 'at': 'free delivery'}}}";

    private static Value.Tree tree(String json) {
        return TreeFile.parse(json.replace('\'', '"').getBytes(StandardCharsets.UTF_8), Limits.STANDARD).tree().orElseThrow();
    }

    private static AirMover mover(Value.Tree tree) {
        List<Problem> problems = new ArrayList<>();
        AirMover mover = AirMover.from(FormReader.read(AirMover.FORM, tree, "", problems));
        assertEquals(List.of(), problems);
        return mover;
    }

    /** The sound part with other members, as one of its family. */
    private static AirMover doctored(String members) {
        return mover(PartFile.parts(tree(SOUND.substring(0, SOUND.length() - 1) + ", 'parts': [{" + members + "}]}")).getFirst());
    }

    private static String curve(String... changes) {
        String curve = CURVE;
        for (int i = 0; i < changes.length; i += 2) {
            assertTrue(curve.contains(changes[i]), changes[i]);
            curve = curve.replace(changes[i], changes[i + 1]);
        }
        return "'curves': [{" + curve + "}]";
    }

    @Test
    void aSoundPartHasNoFindings() {
        assertEquals(List.of(), Plausibility.of(doctored("")));
    }

    @Test
    void whatIsNotGivenIsNotJudged() {
        assertEquals(List.of(), Plausibility.of(mover(tree("{'id': 'bare', 'curves': [{'flow': [0, 0.1], 'pressure': [50, 0]}]}"))));
        assertEquals(List.of(), Plausibility.of(mover(tree("{'id': 'odd', 'type': 'axial', 'curves': [{'flow': [0, 0.1], 'pressure': [50, 0]}],"
                + "'sections': {'drive': 7, 'noise': {'soundPower': 'loud'}}}"))));
    }

    /** Movers of the sample designs, made by hand. */
    @Test
    void theMoversOfTheSampleDesignsAreSound() throws IOException {
        int movers = 0;
        try (Stream<Path> files = Files.list(Path.of("../../product/samples"))) {
            for (Path file : files.filter(each -> each.toString().endsWith(DesignFile.ENDING)).toList()) {
                for (AirMover mover : DesignFile.read(file).design().orElseThrow().airMovers()) {
                    assertEquals(List.of(), Plausibility.of(mover), file + ": " + mover.id());
                    movers++;
                }
            }
        }
        assertTrue(movers >= 4, movers + " movers");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "'rotorDiameter': '125 mm'                                              | ERROR   | its rotor of 0.125 m does not go into its frame",
        "'openArea': '145 cm²'                                                  | ERROR   | its open area of 0.0145 m² is more than its frame has",
        "'price': 31                                                            | CAUTION | its price of 31 has no currency",
        "'bearing': 'sleeve'                                                    | CAUTION | its sleeve bearing is said to work in air of 358 K",
        "'sections': {'noise': {'soundPower': '75 dB'}}                         | CAUTION | its sound power of 75.0 dB does not fit",
        "'sections': {'noise': {'soundPower': '40 dB'}}                         | CAUTION | its sound power of 40.0 dB does not fit",
        "'sections': {'noise': {'speed': '1500 rpm'}}                           | CAUTION | its sound power of 58.0 dB does not fit",
        "'sections': {'drive': {'supply': {'rated': '0.026 A'}}}                | CAUTION | its rated voltage times its rated current is 1.25 W",
        "'sections': {'drive': {'supply': {'rated': '0.45 A'}}}                 | CAUTION | its rated voltage times its rated current is 21.6 W",
        "'ratedPower': '50 W'                                                   | CAUTION | its rated voltage times its rated current is 12.5 W",
        "'sections': {'drive': {'supply': {'current': 'AC', 'rated': '0.15 A'}}}| ERROR   | its electrical input of 9.40 W is more than",
        "'sections': {'drive': {'supply': {'current': 'AC', 'rated': '2.6 A'}}} | CAUTION | its electrical input of 12.6 W is 0.101 of",
    })
    void eachRuleFindsADoctoredPart(String members, Severity severity, String words) {
        AirMover mover = words.contains("no currency") ? mover(tree(SOUND).without("currency")) : doctored(members);
        only(severity, words, Plausibility.of(mover));
    }

    private static void only(Severity severity, String words, List<Finding> findings) {
        assertEquals(1, findings.size(), findings.toString());
        Finding finding = findings.getFirst();
        assertEquals(severity, finding.severity());
        assertTrue(finding.message().toString().startsWith(words), finding.message().toString());
        assertTrue(finding.message().toString().contains("expected"), finding.message().toString());
        assertEquals("sound", finding.place());
        assertFalse(finding.remedy().isEmpty() || finding.source().isEmpty(), finding.toString());
    }

    @Test
    void eachRuleFindsADoctoredCurve() {
        only(Severity.CAUTION, "the curve starts at 0.00556 m³/s", Plausibility.of(doctored(curve("'0 60", "'20 60"))));
        only(Severity.CAUTION, "the curve ends at 30.0 Pa", Plausibility.of(doctored(curve("48 0 Pa", "48 30 Pa"))));
        only(Severity.CAUTION, "the curve rises by 32.0 Pa up to 0.0500 m³/s", Plausibility.of(doctored(curve("80 48 0", "48 80 0"))));
        only(Severity.ERROR, "the curve has no pressure above zero", findings("no pressure",
                doctored(curve("152 94 92 95 80 48 0", "0 0 -1 -5 -9 -12 -20"))));
        only(Severity.CAUTION, "the curve reaches a static efficiency of", Plausibility.of(doctored(curve(
                "'power': '12.6 12.2 12.3 12.2 11.6 10.6 9.4 W'",
                "'power': '5 5 5 5 5 5 5 W'") + ", 'sections': {'drive': {'supply': {'rated': '104 mA'}}}")));
        only(Severity.ERROR, "the curve gives more power to the air", Plausibility.of(doctored(curve("'power': '12.6 12.2 12.3 12.2 11.6 10.6 9.4 W'",
                "'power': '2 2 2 2 2 2 2 W'") + ", 'sections': {'drive': {'supply': {'rated': '41.7 mA'}}}")));
        only(Severity.ERROR, "the curve gives more power to the air than the part takes: efficiency more than any number",
                findings("efficiency", doctored(curve("'power': '12.6 12.2 12.3 12.2 11.6 10.6 9.4 W'", "'power': '0 0 0 0 0 0 0 W'"))));
        // half as fast again is within the range of the type, ten times as fast is not
        assertEquals(List.of(), Plausibility.of(doctored(curve("4000 rpm", "6000 rpm") + ", 'ratedSpeed': '6000 rpm', 'sections': {'noise':"
                + " {'speed': '6000 rpm'}}")));
        List<Finding> fast = Plausibility.of(doctored(curve("4000 rpm", "40000 rpm") + ", 'ratedSpeed': '40000 rpm', 'sections': {'noise':"
                + " {'speed': '40000 rpm'}}"));
        assertEquals(2, fast.size(), fast.toString());
        assertTrue(fast.get(0).message().toString().startsWith("the curve has a highest flow coefficient of 0.0246"), fast.toString());
        assertTrue(fast.get(1).message().toString().startsWith("the curve has a highest pressure coefficient of 0.00452"), fast.toString());
    }

    /** Findings without those of other rules that a curve so far off sets off, too. */
    private static List<Finding> findings(String words, AirMover mover) {
        return Plausibility.of(mover).stream().filter(finding -> finding.message().toString().contains(words)).toList();
    }

    /** The sound part with its noise stated in another way; its estimate is 61.3 dB of sound power. */
    private static List<Finding> noise(String noise) {
        Value.Tree part = tree(SOUND);
        Value.Tree sections = part.tree("sections").orElseThrow();
        return Plausibility.of(mover(part.with("sections", sections.with("noise", tree("{" + noise + "}")))));
    }

    @Test
    void soundPressureIsJudgedByTheSoundPowerItStandsFor() {
        assertEquals(List.of(), noise("'soundPressure': '47 dB', 'distance': '1 m', 'speed': '4000 rpm'"));
        assertEquals(List.of(), noise("'soundPressure': '35 dB', 'distance': '4 m', 'field': 'half-space'"));
        only(Severity.CAUTION, "its sound pressure of 64.0 dB at 1.00 m, which stands for a sound power of 72.0 dB, does not fit",
                noise("'soundPressure': '64 dB', 'distance': '1 m'"));
        only(Severity.CAUTION, "its sound pressure of 53.0 dB at 4.00 m, which stands for a sound power of 73.0 dB",
                noise("'soundPressure': '53 dB', 'distance': '4 m', 'field': 'half-space'"));
        only(Severity.CAUTION, "its sound pressure of 30.0 dB at 1.00 m, which stands for a sound power of 41.0 dB",
                noise("'soundPressure': '30 dB', 'field': 'free field'"));
    }

    /** Where nothing tells the field, the power may be anything between; 3 dB decide here at either end. */
    @Test
    void anUnknownFieldIsGivenTheBenefitOfTheDoubt() {
        double estimate = FanNoise.level(37, 150 / 3600.0, 80);
        double over = 10 * Math.log10(2 * Math.PI);
        String high = "'soundPressure': " + (estimate + 9.5 - over);
        assertEquals(List.of(), noise(high));
        assertEquals(List.of(), noise(high + ", 'field': 'half-space'"));
        assertEquals(1, noise(high + ", 'field': 'free field'").size());
        String low = "'soundPressure': " + (estimate - 11.5 - over);
        assertEquals(List.of(), noise(low));
        assertEquals(List.of(), noise(low + ", 'field': 'free field'"));
        assertEquals(1, noise(low + ", 'field': 'half-space'").size());
    }

    /** Of points, that at rated speed nearest to the best point is judged: 150 m³/h; stall is loud and slow ones are not. */
    @Test
    void ofPointsTheOneNearestToTheBestPointIsJudged() {
        String points = "'points': [{'speed': '2000 rpm', 'flow': '75 m³/h', 'soundPower': '%s dB'}, {'speed': '4000 rpm', 'flow': '60 m³/h',"
                + " 'soundPower': '%s dB'}, {'speed': '4000 rpm', 'flow': '140 m³/h', 'soundPower': '%s dB'},"
                + " {'speed': '4000 rpm', 'flow': '210 m³/h', 'soundPower': '%s dB'}]";
        assertEquals(List.of(), noise(points.formatted(39, 80, 58, 58)));
        assertEquals(List.of(), noise(points.formatted(10, 90, 58, 20)));
        only(Severity.CAUTION, "its sound power of 75.0 dB does not fit", noise(points.formatted(39, 58, 75, 58)));
        only(Severity.CAUTION, "its sound power of 39.0 dB does not fit", noise(points.formatted(39, 58, 39, 58)));
        only(Severity.CAUTION, "its sound pressure of 66.0 dB at 1.00 m, which stands for a sound power of 74.0 dB",
                noise("'field': 'half-space', 'distance': '1 m', 'points': [{'soundPressure': '66 dB', 'flow': '140 m³/h'}]"));
        assertEquals(List.of(), noise("'speed': '2000 rpm', 'points': [{'soundPower': '40 dB', 'flow': '75 m³/h'}]"), "speed from above");
        only(Severity.CAUTION, "its sound power of 58.0 dB",
                noise("'speed': '2000 rpm', 'points': [{'soundPower': '58 dB', 'flow': '75 m³/h'}]"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "'points': 7", "'points': []", "'points': [7, null, [], {}]", "'points': [{'soundPower': 'loud'}]",
        "'points': [{'octaves': '40 41 dB', 'flow': '100 m³/h'}]", "'soundPressure': 'x'", "'soundPressure': '47 dB', 'distance': 0",
        "'soundPressure': '47 dB', 'distance': '-1 m'", "'soundPressure': '47 dB', 'distance': 'far', 'field': 7",
        "'soundPower': [58], 'speed': 'fast'", "'points': {'soundPower': '90 dB'}"})
    void oddNoiseIsNotJudged(String noise) {
        assertEquals(List.of(), noise(noise));
    }

    /** The sound part with a section of life, and members beside. */
    private static List<Finding> life(String life, String members) {
        return Plausibility.of(doctored(members + (members.isEmpty() ? "" : ", ") + "'sections': {'life': {" + life + "}}"));
    }

    /** With shape 1.1 a mean is 7.5 times the L10, with 3.5 it is 1.7 times; exp(-0.4 eV/k (1/313.15 K - 1/353.15 K)) is 1/5.36. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "'rated': '15000 h'                                                     | its rated life of 5.40e7 s is short for its ball bearing",
        "'rated': '200000 h', 'at': '40 °C'                                     | its rated life of 7.20e8 s is long for its ball bearing",
        "'rated': '70000'                                                       | ",
        "'rated': '70 h'                                                        | its rated life of 252000 s is short for its ball bearing",
        "'rated': '15000 h', 'at': '60 °C'                                      | ",
        "'rated': '10000 h', 'at': '60 °C', 'factor': 1.2                       | its rated life of 3.60e7 s (L10 at 333 K), which stands for an L10 of at most 5.18e7 s at 313 K, is short",
        "'rated': '60000 h', 'at': '80 °C', 'law': 'Arrhenius', 'activationEnergy': '0.4 eV' | its rated life of 2.16e8 s (L10 at 353 K), which stands for an L10 of at least 1.16e9 s at 313 K, is long",
        "'rated': '300000 h', 'at': '60 °C'                                     | its rated life of 1.08e9 s (L10 at 333 K), which stands for an L10 of at least 1.83e9 s",
        "'rated': '250000 h', 'statistic': 'MTTF', 'shape': 2.5                 | ",
        "'rated': '400000 h', 'statistic': 'MTTF', 'shape': 3                   | its rated life of 1.44e9 s (MTTF at 313 K), which stands for an L10 of at least 6.80e8 s at 313 K, is long",
        "'rated': '400000 h', 'statistic': 'MTTF'                               | its rated life of 1.44e9 s is a mean life (MTTF) without a shape, which may stand for an L10 of 1.86e8 s to 8.55e8 s",
        "'rated': '20000 h', 'statistic': 'L50', 'shape': 2                     | its rated life of 7.20e7 s (L50 at 313 K), which stands for an L10 of at most 2.81e7 s",
        "'rated': '40000 h', 'statistic': 'L1', 'shape': 1.2                    | its rated life of 1.44e8 s (L1 at 313 K), which stands for an L10 of at least 1.02e9 s",
        "'rated': '70000 h', 'at': '90 °C', 'factor': 1                         | its life is rated in air of 363 K, in which it may not work",
        "'rated': '70000 h', 'testedAt': '100 °C'                               | ",
        "'lowestStorage': '-10 °C'                                              | it may be stored down to 263 K but work in colder air",
        "'lowestStorage': '-20 °C', 'highestStorage': '85 °C'                   | ",
        "'highestStorage': '60 °C'                                              | it may be stored up to 333 K but work in warmer air",
        "'shaft': 'any'                                                         | ",
        "'rated': '1 h', 'law': 'ISO 281'                                       | ",
    })
    void livesAreJudgedByTheL10TheyStandFor(String life, String words) {
        if (words == null) {
            assertEquals(List.of(), life(life, ""));
        } else {
            only(Severity.CAUTION, words, life(life, ""));
        }
    }

    @Test
    void livesAreJudgedByTheKindOfBearing() {
        String sleeve = "'bearing': 'sleeve', 'highestTemperature': '60 °C'";
        assertEquals(List.of(), life("'rated': '15000 h', 'shaft': 'level'", sleeve));
        only(Severity.CAUTION, "its rated life of 3.24e8 s is long for its sleeve bearing", life("'rated': '90000 h'", sleeve));
        only(Severity.CAUTION, "its sleeve bearing is said to work with the shaft in any attitude", life("'rated': '30000 h', 'shaft': 'any'", sleeve));
        String floating = "'bearing': 'magnetically supported sleeve', 'highestTemperature': '70 °C'";
        assertEquals(List.of(), life("'rated': '60000 h', 'shaft': 'any'", floating));
        String unknown = SOUND.replace("'bearing': 'ball', ", "").replace("'sections': {", "'sections': {'life': {'rated': '1 h'}, ");
        assertEquals(List.of(), Plausibility.of(mover(tree(unknown))));
    }

    @ParameterizedTest
    @ValueSource(strings = {"'rated': 'long'", "'rated': [70000]", "'rated': '-5 h'", "'rated': 0", "'rated': '1 h', 'statistic': 'B10'", "'rated': '1 h', 'statistic': 7",
        "'rated': '70000 h', 'at': '0 K', 'shape': 'steep'", "'rated': '1 h', 'statistic': 'MTTF', 'shape': 0.5", "'at': 'warm'", "'lowestStorage': 'cold', 'shaft': 9"})
    void oddLivesAreNotJudged(String life) {
        assertEquals(List.of(), life(life, ""));
    }

    @Test
    void airOfAJetThroughTheFrameIsFound() {
        List<Finding> findings = findings("free delivery", doctored(curve("180 210", "180 1300")));
        only(Severity.CAUTION, "its free delivery goes through the frame with 44.0 m/s", findings);
    }

    /** Whatever a file says, its findings are sentences. */
    @Property(tries = 500)
    void absurdFiguresAreToldNotThrown(@ForAll @DoubleRange(min = -300, max = 300) double flow,
            @ForAll @DoubleRange(min = -300, max = 300) double pressure, @ForAll @DoubleRange(min = -300, max = 300) double other) {
        String wild = Value.Num.of(Math.pow(10, other)).literal();
        AirMover mover = doctored("'rotorDiameter': " + wild + ", 'openArea': " + wild + ", 'ratedSpeed': " + wild + ", 'curves': [{'flow': [0, "
                + Value.Num.of(Math.pow(10, flow)).literal() + "], 'pressure': [" + Value.Num.of(Math.pow(10, pressure)).literal()
                + ", 0], 'power': [" + wild + ", " + wild + "]}], 'sections': {'noise': {'speed': " + wild + "}, 'drive': {'supply': {'rated': "
                + wild + "}}}");
        AirMover measured = mover(tree(SOUND).with("sections", tree("{'noise': {'distance': " + wild + ", 'points': [{'speed': "
                + wild + ", 'flow': " + Value.Num.of(Math.pow(10, flow)).literal() + ", 'soundPressure': " + pressure + "}, {'soundPower': " + wild + "}]}, 'life': {'rated': " + wild + ", 'at': " + wild + ", 'shape': " + wild
                + ", 'statistic': 'MTTF', 'highestStorage': " + wild + "}}")));
        for (Finding finding : Stream.of(mover, measured).flatMap(each -> Plausibility.of(each).stream()).toList()) {
            assertFalse(finding.message().toString().contains("NaN"), finding.toString());
        }
    }

    /** A centrifugal rotor lies in any two sides of its frame, a cross-flow one has its length from the longest. */
    @Test
    void framesOfOtherTypes() {
        String blower = "{'id': 'sound', 'maker': 'nobody', 'type': 'centrifugal', 'width': '120 mm', 'height': '120 mm', 'depth': '32 mm',"
                + " 'rotorDiameter': '%s', 'curves': [{'speed': '2500 rpm', 'flow': '0 25 50 m³/h', 'pressure': '150 120 0 Pa'}]}";
        assertEquals(List.of(), Plausibility.of(mover(tree(blower.formatted("84 mm")))));
        only(Severity.ERROR, "its rotor of 0.130 m", findings("rotor of", mover(tree(blower.formatted("130 mm")))));
        String cross = "{'id': 'sound', 'maker': 'nobody', 'type': 'cross-flow', 'width': '%s', 'height': '90 mm', 'depth': '94 mm',"
                + " 'rotorDiameter': '60 mm', 'curves': [{'speed': '1500 rpm', 'flow': '0 150 300 m³/h', 'pressure': '35 25 0 Pa'}]}";
        assertEquals(List.of(), Plausibility.of(mover(tree(cross.formatted("300 mm")))));
        only(Severity.CAUTION, "the curve has a highest flow coefficient", Plausibility.of(mover(tree(cross.formatted("100 mm")))));
    }
}
