package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Result;
import tramontane.analysis.Severity;
import tramontane.analysis.SpeedLaw;
import tramontane.analysis.Trace;
import tramontane.model.AirMover;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.model.Quantity;
import tramontane.physics.units.UnitSystem;

class BankFindingsTest {

    private static final double B = 4e4;

    private static Design design(AirMover mover, Object... bank) {
        return Cases.design(mover, List.of("box"), Cases.bank("fans", "outside", "box", bank), Cases.square("vent", "box", "outside", B));
    }

    private static List<Finding> findings(Design design, Condition condition, SpeedLaw... laws) {
        return Cases.run(design, condition, laws).findings();
    }

    private static Optional<Finding> finding(List<Finding> findings, String words) {
        List<Finding> found = findings.stream().filter(each -> each.message().in(UnitSystem.METRIC).contains(words)).toList();
        assertTrue(found.size() < 2, found.toString());
        return found.stream().findFirst();
    }

    private static void says(List<Finding> findings, Severity severity, String words) {
        Finding finding = finding(findings, words).orElseThrow(() -> new AssertionError(findings.toString()));
        assertEquals(severity, finding.severity());
        assertTrue(severity == Severity.NOTE || !finding.remedy().isEmpty());
    }

    private static long cautions(List<Finding> findings) {
        return findings.stream().filter(each -> each.severity() == Severity.CAUTION).count();
    }

    // how far curves are stretched

    /** Limits: half of the measured speed, 30 % of density; small rotors 0.7 of the Reynolds number; one sentence for one thing. */
    @ParameterizedTest
    @CsvSource(textBlock = """
            # frame mm, speed setting, altitude m, expected
            120, 1.0,    0, ''
            120, 0.6,    0, ''
            120, 0.4,    0, too far for the fan laws
            120, 1.0, 2500, ''
            120, 1.0, 3500, its curve is stated for
             60, 1.0,    0, ''
             60, 0.75,   0, ''
             60, 0.6,    0, lowest Reynolds number
             60, 0.4,    0, lowest Reynolds number
             60, 1.0, 3500, lowest Reynolds number
             60, 0.6, 3500, lowest Reynolds number
            """)
    void saysOnceHowFarACurveIsScaled(double frame, double setting, double altitude, String words) {
        AirMover part = Movers.with(Cases.mover(), "width", frame / 1000, "height", frame / 1000);
        List<Finding> findings = findings(design(part), Cases.atAltitude(altitude).withSpeed(Quantity.of(setting)));
        assertEquals(words.isEmpty() ? 0 : 1, cautions(findings), findings.toString());
        if (!words.isEmpty()) {
            says(findings, Severity.CAUTION, words);
        }
    }

    @Test
    void theRotorDecidesHowSmallAMoverIs() {
        AirMover part = Movers.with(Cases.mover(), "rotorDiameter", "70 mm");
        says(findings(design(part), Condition.NOMINAL.withSpeed(Quantity.of(0.6))), Severity.CAUTION, "of 70.0 mm");
    }

    @Test
    void theLowestMeasuredReynoldsNumberCounts() {
        AirMover part = Movers.with(Cases.part(Cases.curve(150, 1.2, Cases.FLOW, Cases.PRESSURE, new double[0]),
                Cases.curve(300, 1.2, Cases.FLOW, Cases.PRESSURE, new double[0])), "width", "60 mm", "ratedSpeed", 300);
        assertEquals(0, cautions(findings(design(part), Cases.standardAir().withSpeed(Quantity.of(0.4)))));
        says(findings(design(part), Cases.standardAir().withSpeed(Quantity.of(0.3))), Severity.CAUTION, "lowest Reynolds number");
    }

    @Test
    void betweenTwoMeasuredSpeedsNothingIsFar() {
        AirMover part = Movers.with(Cases.part(Cases.curve(100, 1.2, Cases.FLOW, Cases.PRESSURE, new double[0]),
                Cases.curve(500, 1.2, Cases.FLOW, Cases.PRESSURE, new double[0])), "ratedSpeed", 500);
        assertEquals(0, cautions(findings(design(part), Cases.standardAir().withSpeed(Quantity.of(0.44)))));
        says(findings(design(part), Cases.standardAir().withSpeed(Quantity.of(0.08))), Severity.CAUTION, "too far for the fan laws");
    }

    @ParameterizedTest
    @CsvSource({"100, 100, NOTE, ''", "100, 110, NOTE, as far as it is geometrically similar", "100, 120, NOTE, similar",
        "100, 130, CAUTION, too far for them to be trusted", "100, 70, CAUTION, too far"})
    void saysThatACurveIsOfAnotherSize(double measured, double rotor, Severity severity, String words) {
        AirMover part = Movers.with(Cases.part(Movers.curve("speed", 300, "rotorDiameter", measured / 1000, "flow", "0 0.05 m³/s",
                "pressure", "80 0 Pa")), "rotorDiameter", rotor / 1000);
        List<Finding> findings = findings(design(part), Cases.standardAir());
        if (words.isEmpty()) {
            assertTrue(finding(findings, "was measured on a rotor").isEmpty());
        } else {
            says(findings, severity, words);
        }
    }

    @Test
    void saysThatASizeIsMissing() {
        AirMover part = Cases.part(Movers.curve("speed", 300, "rotorDiameter", 0.1, "flow", "0 0.05 m³/s", "pressure", "80 0 Pa"));
        says(findings(design(part), Cases.standardAir()), Severity.CAUTION, "does not state its own");
    }

    // supply

    private static AirMover supplied(Object... more) {
        List<Object> members = new ArrayList<>(List.of("speed", 300, "flow", "0 0.05 m³/s", "pressure", "80 0 Pa"));
        members.addAll(Arrays.asList(more));
        return Cases.part(Movers.curve(members.toArray()));
    }

    @Test
    void saysWhichPartOfASupplyIsNotUsed() {
        SpeedLaw law = new SupplySpeedLaw();
        AirMover plain = supplied();
        AirMover rated = supplied("voltage", "230 V", "frequency", "50 Hz");
        says(findings(design(plain), Movers.supply(Optional.of(24.0), Optional.empty()), law), Severity.CAUTION,
                "the supply of the condition does not change the speed of bank fans");
        says(findings(design(plain), Movers.supply(Optional.empty(), Optional.of(50.0)), law), Severity.CAUTION,
                "the supply of the condition does not change the speed of bank fans");
        assertEquals(0, cautions(findings(design(rated), Movers.supply(Optional.of(230.0), Optional.of(50.0)), law)));
        says(findings(design(rated), Movers.supply(Optional.of(200.0), Optional.of(50.0)), law), Severity.CAUTION,
                "the supply voltage of the condition does not change the speed of bank fans");
        List<Finding> other = findings(design(rated), Movers.supply(Optional.of(230.0), Optional.of(60.0)), law);
        says(other, Severity.CAUTION, "no curve of bank fans was measured at 60.0 Hz; those at 50.0 Hz are used");
        assertEquals(1, cautions(other));
        // one that knows more decides, also where it comes to the rated speed
        for (double speed : new double[] {250, 300}) {
            assertEquals(0, cautions(findings(design(plain), Movers.supply(Optional.of(24.0), Optional.empty()),
                    supply -> Optional.of(speed))));
        }
    }

    @Test
    void saysThatTheSpeedOfAnUnregulatedMotorIsNotKnown() {
        SpeedLaw law = new SupplySpeedLaw();
        AirMover motor = Movers.with(supplied(), "motor", "DC unregulated");
        says(findings(design(motor), Cases.atAltitude(2500), law), Severity.CAUTION, "this is not accounted for");
        assertEquals(0, cautions(findings(design(motor), Cases.atAltitude(500), law)));
        assertEquals(0, cautions(findings(design(Movers.with(motor, "noLoadSpeed", 390)), Cases.atAltitude(2500), law)));
        says(findings(design(Movers.with(motor, "noLoadSpeed", 290)), Cases.atAltitude(500), law), Severity.CAUTION, "it is not used");
        assertEquals(0, cautions(findings(design(Movers.with(motor, "motor", "EC")), Cases.atAltitude(2500), law)));
        // one that knows more decides
        assertEquals(0, cautions(findings(design(motor), Cases.atAltitude(2500), supply -> Optional.of(320.0))));
    }

    @Test
    void aRegulatedMotorHoldsItsSpeed() {
        for (String motor : List.of("EC", "DC regulated")) {
            AirMover part = Movers.with(supplied("voltage", "24 V"), "motor", motor);
            for (double voltage : new double[] {20, 24, 28, 30}) {
                List<Finding> findings = findings(design(part), Movers.supply(Optional.of(voltage), Optional.empty()), new SupplySpeedLaw());
                assertEquals(0, cautions(findings), findings.toString());
                assertEquals(voltage == 30, finding(findings, "taken to hold their speed at 30.0 V").isPresent(), findings.toString());
            }
        }
    }

    @Test
    void saysWhichFrequencyIsTaken() {
        AirMover part = Cases.part(
                Movers.curve("speed", 280, "frequency", "50 Hz", "flow", "0 0.05 m³/s", "pressure", "80 0 Pa"),
                Movers.curve("speed", 330, "frequency", "60 Hz", "flow", "0 0.06 m³/s", "pressure", "120 0 Pa"));
        List<Finding> findings = findings(design(part), Cases.standardAir(), new SupplySpeedLaw());
        says(findings, Severity.CAUTION, "the curves at 50.0 Hz are used");
        assertEquals(1, cautions(findings));
        assertEquals(0, cautions(findings(design(part), Movers.supply(Optional.of(230.0), Optional.of(60.0)), new SupplySpeedLaw())));
        // also where only the part states a speed
        AirMover speedless = Movers.with(Cases.part(Movers.curve("frequency", "50 Hz", "flow", "0 0.05 m³/s", "pressure", "80 0 Pa"),
                Movers.curve("frequency", "60 Hz", "flow", "0 0.06 m³/s", "pressure", "120 0 Pa")), "ratedSpeed", 300);
        assertEquals(0, cautions(findings(design(speedless), Movers.supply(Optional.empty(), Optional.of(60.0)), new SupplySpeedLaw())));
    }

    @Test
    void saysWhichOfTwoCurvesOfOneSpeedIsUsed() {
        AirMover part = Movers.with(Cases.part(Movers.curve("speed", 300, "flow", "0 0.05 m³/s", "pressure", "80 0 Pa"),
                Movers.curve("flow", "0 0.06 m³/s", "pressure", "120 0 Pa")), "ratedSpeed", 300);
        says(findings(design(part), Cases.standardAir()), Severity.CAUTION, "curves 1, 2 of air mover F cannot be told apart");
        assertTrue(finding(findings(design(Movers.with(part, "ratedSpeed", 200)), Cases.standardAir()), "told apart").isEmpty());
    }

    private static Condition failing(tramontane.model.FailedMover failed) {
        Condition air = Cases.standardAir();
        return new Condition(air.id(), air.outsideTemperature(), air.altitude(), air.pressure(), air.humidity(), air.heatFactor(),
                air.heatFactors(), air.clogging(), air.supplyVoltage(), air.supplyFrequency(), air.speed(), List.of(failed), air.more());
    }

    @Test
    void saysThatAirGoesBackThroughABankThatStandsStill() {
        Design two = Cases.design(Cases.mover(), List.of("box"), Cases.bank("left", "outside", "box"),
                Cases.bank("right", "outside", "box"), Cases.square("vent", "box", "outside", B));
        Condition failed = failing(Cases.failed("right", 1, tramontane.model.FailedMover.State.LOCKED));
        says(findings(two, failed), Severity.CAUTION, "air goes backwards through bank right, whose movers stand still: ");
        assertTrue(finding(findings(two, Cases.standardAir()), "stand still: ").isEmpty());
    }

    @Test
    void severalPositionsArePlural() {
        AirMover part = Cases.part(Movers.curve("speed", 300, "flow", "0.02 0.05 m³/s", "pressure", "80 0 Pa"));
        Design tight = Cases.design(part, List.of("box"), Cases.bank("fans", "outside", "box", "across", 2),
                Cases.square("vent", "box", "outside", 1e6));
        says(findings(tight, Cases.standardAir()), Severity.CAUTION, "positions 1, 2 of bank fans work outside");
    }

    @Test
    void aFanAloneDoesNotWorkBeyondFreeDelivery() {
        Design open = Cases.design(Cases.mover(), List.of("box"), Cases.bank("fans", "outside", "box"),
                Cases.square("vent", "box", "outside", 1e-9));
        assertTrue(finding(findings(open, Cases.standardAir()), "beyond free delivery").isEmpty());
    }

    @Test
    void aToleranceOfABankIsNotUsed() {
        Passage plain = Cases.bank("x", "outside", "box");
        Passage passage = new Passage(plain.id(), plain.kind(), plain.from(), plain.to(), Optional.of(Quantity.of(0.1)), plain.parameters());
        var values = tramontane.model.FormReader.read(new BankKind().form(), passage.parameters(), "p", new ArrayList<>());
        assertEquals(List.of("p.tolerance: is not used for a bank; state it with the curves of its mover"), new BankKind().check(values,
                Cases.setting(design(Cases.mover()), Condition.NOMINAL, passage), "p").stream().map(tramontane.model.Problem::sentence).toList());
    }

    // how it is fitted

    @ParameterizedTest
    @CsvSource(textBlock = """
            # fields, severity, expected; none for nothing
            series 2|CAUTION|swirl from one takes pressure from the next
            series 2 straightener true|NOTE|are taken as ideal
            series 2 stageFactor 0.8|CAUTION|
            straightener true|CAUTION|
            flowFactor 0.9|NOTE|is derated to 90.0 % of its flow and 100 % of its pressure
            inletClearance 0.05|CAUTION|less than half the width of its movers
            inletClearance 0.06|CAUTION|
            inletClearance 0.05 flowFactor 0.9|NOTE|is derated
            flaps true|NOTE|lifted by 2.00 Pa, which leaks through 1.00 % of that
            """, delimiter = '|')
    void saysWhatTheFittingMeans(String fields, Severity severity, String words) {
        Object[] members = Arrays.stream(fields.split(" ")).map(each -> each.equals("true") ? (Object) true
                : each.matches("[0-9.]+") ? (Object) Double.valueOf(each) : each).toArray();
        List<Finding> findings = findings(design(Cases.mover(), members), Cases.standardAir());
        assertEquals(words != null && severity == Severity.CAUTION ? 1 : 0, cautions(findings), findings.toString());
        if (words != null) {
            says(findings, severity, words);
        }
    }

    @Test
    void assumedFlapsAreSaidToBe() {
        assertTrue(finding(findings(design(Cases.mover(), "flaps", true, "flapLoss", 1), Condition.NOMINAL), "has a flap").orElseThrow()
                .source().contains("assumed"));
        assertEquals("", finding(findings(design(Cases.mover(), "flaps", true, "flapLoss", 1, "flapPressure", "3 Pa", "flapLeak", "2 %"),
                Condition.NOMINAL), "has a flap").orElseThrow().source());
        assertEquals(List.of("airPath.passages[3].flapLeak: says how a flap is, but the bank has none; expected with flaps set to true"),
                bankProblems("flapLeak", "2 %"));
    }

    private static List<String> bankProblems(Object... members) {
        Passage passage = Cases.bank("x", "outside", "box", members);
        List<tramontane.model.Problem> problems = new ArrayList<>();
        var values = tramontane.model.FormReader.read(new BankKind().form(), passage.parameters(), "airPath.passages[3]", problems);
        problems.addAll(new BankKind().check(values, Cases.setting(design(Cases.mover()), Condition.NOMINAL, passage),
                "airPath.passages[3]"));
        return problems.stream().map(tramontane.model.Problem::sentence).toList();
    }

    @ParameterizedTest
    @CsvSource({"A, A, ''", "B, A, a ducted outlet shows more pressure than a free one gives", "D, A, a ducted outlet shows more",
        "C, A, the air comes in otherwise", "A, B, a free outlet shows less pressure", "B, D, the air comes in otherwise", "B, B, ''"})
    void saysThatACurveIsOfAnotherInstallation(String measured, String fitted, String words) {
        AirMover part = Movers.with(Cases.mover(), "category", measured);
        List<Finding> findings = findings(design(part, "installation", fitted), Condition.NOMINAL);
        if (words.isEmpty()) {
            assertEquals(0, cautions(findings));
        } else {
            says(findings, Severity.CAUTION, words);
        }
    }

    @Test
    void aPartOfNoStatedCategoryIsNotCautionedAbout() {
        assertEquals(0, cautions(findings(design(Cases.mover()), Condition.NOMINAL)));
    }

    // direction

    @Test
    void saysThatBanksOnlyWorkAgainstOneAnother() {
        Design into = Cases.design(Cases.mover(), List.of("box"), Cases.bank("left", "outside", "box"), Cases.bank("right", "outside", "box"));
        says(findings(into, Condition.NOMINAL), Severity.CAUTION, "all of them, left, right, each blow into it");
        Design outOf = Cases.design(Cases.mover(), List.of("box"), Cases.bank("left", "box", "outside"), Cases.bank("right", "box", "outside"));
        says(findings(outOf, Condition.NOMINAL), Severity.CAUTION, "each draw from it");
        Design through = Cases.design(Cases.mover(), List.of("box"), Cases.bank("left", "outside", "box"), Cases.bank("right", "box", "outside"));
        assertTrue(finding(findings(through, Condition.NOMINAL), "against one another").isEmpty());
        Design vented = Cases.design(Cases.mover(), List.of("box"), Cases.bank("left", "outside", "box"), Cases.square("vent", "box", "outside", B));
        assertTrue(finding(findings(vented, Condition.NOMINAL), "against one another").isEmpty());
    }

    // trace

    @Test
    void saysWhereASpeedAndAMixedCurveComeFrom() {
        AirMover part = Cases.part(
                Movers.curve("speed", 200, "voltage", "12 V", "flow", "0 0.03 m³/s", "pressure", "30 0 Pa"),
                Movers.curve("speed", 360, "voltage", "24 V", "flow", "0 0.06 m³/s", "pressure", "100 0 Pa"));
        List<Trace.Step> steps = new ArrayList<>();
        Result<OperatingPoint> result = Cases.run(design(part, "series", 2, "stageFactor", 0.8, "flaps", true, "flowFactor", 0.9),
                Movers.supply(Optional.of(15.0), Optional.empty()), steps, new SupplySpeedLaw());
        Trace.Step speed = steps.stream().filter(each -> each.figure().equals("airflow.bank.speed")).findFirst().orElseThrow();
        assertEquals(Relations.SPEED_BY_VOLTAGE, speed.relation());
        assertEquals(240, speed.value(), 1e-9);
        Trace.Step pressure = steps.stream().filter(each -> each.figure().equals("airflow.bank.pressure")).findFirst().orElseThrow();
        // every name once, as toMap asks
        var terms = pressure.inputs().stream().collect(Collectors.toMap(Trace.Term::name, Trace.Term::value));
        assertEquals(0.75, terms.get("how much curve 1 counts"), 1e-12);
        assertEquals(0.25, terms.get("how much curve 2 counts"), 1e-12);
        assertEquals(0.8, terms.get("stage factor"));
        assertEquals(2, terms.get("pressure that lifts a flap"));
        assertEquals(result.figures().stream().filter(each -> each.kind().id().equals("airflow.bank.pressure")).findFirst().orElseThrow()
                .value(), pressure.value());
    }
}
