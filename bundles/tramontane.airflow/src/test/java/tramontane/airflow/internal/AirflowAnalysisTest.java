package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.physics.units.UnitSystem;
import tramontane.model.FormReader;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Result;
import tramontane.analysis.Severity;
import tramontane.analysis.Trace;
import tramontane.model.AirMover;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.HeatSource;
import tramontane.model.Passage;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.model.Value;
import tramontane.physics.Air;

class AirflowAnalysisTest {

    /** Falls in a straight line from 80 Pa to 0.05 m³/s. */
    private static final AirMover STRAIGHT = Cases.part(Cases.curve(Cases.SPEED, 1.2, new double[] {0, 0.05},
            new double[] {80, 0}, new double[] {5, 8}));
    private static final double B = 4e4;

    private static Design box(AirMover mover, Passage... passages) {
        return Cases.design(mover, List.of("box"), passages);
    }

    private static Design simple(Object... bank) {
        return box(STRAIGHT, Cases.bank("fans", "outside", "box", bank), Cases.square("vent", "box", "outside", B));
    }

    /** 80 (1 - q/(n 0.05)) s = b q², n side by side, s in series. */
    private static double expected(int n, int s, double b) {
        double a = 80.0 * s / (0.05 * n);
        return (-a + Math.sqrt(a * a + 4 * b * 80 * s)) / (2 * b);
    }

    private static double figure(Result<?> result, String id, String place) {
        return found(result, id, place).orElseThrow(() -> new AssertionError("no " + id + " at " + place + " but "
                + result.findings()));
    }

    private static Optional<Double> found(Result<?> result, String id, String place) {
        return result.figures().stream().filter(each -> each.kind().id().equals(id) && each.place().equals(place))
                .map(Figure::value).findFirst();
    }

    private static Optional<Finding> finding(Result<?> result, String words) {
        return result.findings().stream().filter(each -> each.message().toString().contains(words)).findFirst();
    }

    private static void says(Result<?> result, Severity severity, String place, String words) {
        Finding finding = finding(result, words).orElseThrow(() -> new AssertionError(result.findings().toString()));
        assertEquals(severity, finding.severity());
        assertEquals(place, finding.place());
    }

    private static HeatSource heat(double watts) {
        return new HeatSource("board", Quantity.of(watts), List.of(), Optional.empty(), Value.Tree.EMPTY);
    }

    private static Requirement rise(double kelvin, String... conditions) {
        return new Requirement("airflow.air.rise", Requirement.WORST, Optional.empty(), Optional.of(Quantity.of(kelvin)),
                List.of(conditions), Value.Tree.EMPTY);
    }

    @Test
    void findsTheDutyPointOfOneMover() {
        Result<OperatingPoint> result = Cases.run(simple(), Cases.standardAir());
        double q = expected(1, 1, B);
        assertEquals(q, figure(result, "airflow.bank.flow", "fans"), 1e-8 * q);
        assertEquals(B * q * q, figure(result, "airflow.bank.pressure", "fans"), 1e-6);
        assertEquals(q, figure(result, "airflow.bank.standardFlow", "fans"), 1e-8 * q);
        assertEquals(Cases.SPEED, figure(result, "airflow.bank.speed", "fans"));
        double power = 5 + 3 * q / 0.05;
        assertEquals(power, figure(result, "airflow.bank.power", "fans"), 1e-6);
        assertEquals(q * B * q * q / power, figure(result, "airflow.bank.efficiency", "fans"), 1e-7);
        assertEquals(q, figure(result, "airflow.passage.flow", "vent"), 1e-8 * q);
        assertEquals(B * q * q, figure(result, "airflow.passage.drop", "vent"), 1e-6);
        assertEquals(B * q * q, figure(result, "airflow.bay.pressure", "box"), 1e-6);
        assertEquals(q, figure(result, "airflow.total.flow", ""), 1e-8 * q);
        OperatingPoint.BankPoint bank = result.data().orElseThrow().bank("fans").orElseThrow();
        assertTrue(bank.stable());
        assertEquals(1.2 * q, bank.massFlow(), 1e-8);
        assertEquals(293.15, bank.temperature());
        assertEquals(List.of(1), bank.movers().stream().map(OperatingPoint.MoverPoint::position).toList());
        assertEquals(List.of("box", "outside"), result.data().get().bays().stream().map(OperatingPoint.BayState::bay).toList());
    }

    @Test
    void aBankHasItsMoversSideBySideAndBehindOneAnother() {
        Result<OperatingPoint> result = Cases.run(simple("across", 2, "along", 3, "series", 2), Cases.standardAir());
        double q = expected(6, 2, B);
        assertEquals(q, figure(result, "airflow.bank.flow", "fans"), 1e-8 * q);
        List<OperatingPoint.MoverPoint> movers = result.data().orElseThrow().banks().getFirst().movers();
        assertEquals(12, movers.size());
        for (OperatingPoint.MoverPoint mover : movers) {
            assertEquals(q / 6, mover.flow(), 1e-9);
            assertEquals(B * q * q / 2, mover.pressure(), 1e-6);
            assertEquals(5 + 3 * q / 6 / 0.05, mover.power().orElseThrow(), 1e-6);
        }
        assertEquals(12 * (5 + 3 * q / 6 / 0.05), figure(result, "airflow.bank.power", "fans"), 1e-5);
    }

    /** On a square resistance the volume flow stays, pressure and power go with density. */
    @Test
    void atAltitudeVolumeFlowStaysAndPressureFalls() {
        Result<OperatingPoint> result = Cases.run(simple(), Cases.atAltitude(3000));
        double density = Air.moistDensity(Air.standardPressure(Air.geopotential(3000)), 293.15, 0);
        double q = expected(1, 1, B);
        assertEquals(q, figure(result, "airflow.bank.flow", "fans"), 1e-7 * q);
        assertEquals(B * q * q * density / 1.2, figure(result, "airflow.bank.pressure", "fans"), 1e-4);
        assertEquals(q * density / 1.2, figure(result, "airflow.bank.standardFlow", "fans"), 1e-7);
        assertEquals((5 + 3 * q / 0.05) * density / 1.2, figure(result, "airflow.bank.power", "fans"), 1e-5);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 0.8, 1.2})
    void theSpeedSettingFollowsTheFanLaws(double setting) {
        Result<OperatingPoint> result = Cases.run(simple(), Cases.standardAir().withSpeed(Quantity.of(setting)));
        double q = expected(1, 1, B);
        assertEquals(setting * q, figure(result, "airflow.bank.flow", "fans"), 1e-7 * q);
        assertEquals(setting * setting * B * q * q, figure(result, "airflow.bank.pressure", "fans"), 1e-5);
        assertEquals(setting * Cases.SPEED, figure(result, "airflow.bank.speed", "fans"), 1e-12 * Cases.SPEED);
    }

    @Test
    void theSpeedLawOfHighestRankThatKnowsThePartDecides() {
        Result<OperatingPoint> result = Cases.run(simple(), Cases.standardAir(), supply -> Optional.of(0.5 * Cases.SPEED),
                supply -> Optional.of(0.7 * Cases.SPEED), supply -> Optional.empty());
        assertEquals(0.7 * expected(1, 1, B), figure(result, "airflow.bank.flow", "fans"), 1e-8);
    }

    @Test
    void aCloggedFilterTakesFlow() {
        Design design = box(STRAIGHT, Cases.bank("fans", "outside", "box"),
                Cases.passage("filter", "measured resistance", "box", "outside", "quadratic", B, "filter", true));
        double clean = figure(Cases.run(design, Condition.NOMINAL), "airflow.bank.flow", "fans");
        double clogged = figure(Cases.run(design, Cases.clogged(2)), "airflow.bank.flow", "fans");
        assertEquals(expected(1, 1, B), clean, 1e-7);
        assertEquals(expected(1, 1, 2 * B), clogged, 1e-7);
    }

    // heat

    @Test
    void estimatesTheRiseOfTheAir() {
        Result<OperatingPoint> result = Cases.run(simple().withHeatSources(List.of(heat(150), heat(100))), Cases.standardAir());
        double cp = Air.specificHeat(Air.vapourFraction(Cases.standardAir().pressure().orElseThrow().si(), 293.15, 0.5));
        assertEquals(250 / (1.2 * expected(1, 1, B) * cp), figure(result, "airflow.air.rise", ""), 1e-6);
        assertTrue(found(result, "airflow.flow.needed", "").isEmpty());
    }

    @Test
    void givesNoRiseWithoutHeat() {
        assertTrue(found(Cases.run(simple(), Condition.NOMINAL), "airflow.air.rise", "").isEmpty());
    }

    /** Heat, allowed rise and a fan, but no resistance: what flow is needed, and what may the air path ask for? */
    @Test
    void saysWhatTheAirPathMayAskForAtTheFlowNeeded() {
        Design design = Cases.design(STRAIGHT, List.of(), Cases.bank("fans", "outside", "outside"))
                .withHeatSources(List.of(heat(400))).withRequirements(List.of(rise(15), rise(10, "another condition")));
        Result<OperatingPoint> result = Cases.run(design, Cases.standardAir());
        double cp = Air.specificHeat(Air.vapourFraction(Cases.standardAir().pressure().orElseThrow().si(), 293.15, 0.5));
        double needed = 400 / (1.2 * cp * 15);
        assertEquals(needed, figure(result, "airflow.flow.needed", ""), 1e-9);
        assertEquals(80 * (1 - needed / 0.05), figure(result, "airflow.pressure.available", "fans"), 1e-6);
        assertEquals(0.05, figure(result, "airflow.bank.flow", "fans"), 1e-9);
        assertEquals(0.05, figure(result, "airflow.total.flow", ""), 1e-9);
        says(result, Severity.CAUTION, "fans", "goes from outside to outside");
        assertTrue(finding(result, "the air path may ask for").isPresent());
    }

    // failed movers

    private static Condition failing(FailedMover... failed) {
        return Cases.standardAir().with("failed", List.of(failed));
    }

    @Test
    void aFailedMoverLetsAirBackAndIsSaidTo() {
        Design design = simple("across", 2);
        double healthy = figure(Cases.run(design, Cases.standardAir()), "airflow.bank.flow", "fans");
        double before = Double.POSITIVE_INFINITY;
        // the more open what has failed, the more comes back
        for (FailedMover.State state : List.of(FailedMover.State.LOCKED, FailedMover.State.FREEWHEELING, FailedMover.State.REMOVED)) {
            Result<OperatingPoint> result = Cases.run(design, failing(Cases.failed("fans", 2, state)));
            double flow = figure(result, "airflow.bank.flow", "fans");
            assertTrue(flow < before && flow < healthy);
            before = flow;
            List<OperatingPoint.MoverPoint> movers = result.data().orElseThrow().banks().getFirst().movers();
            assertTrue(movers.get(0).running() && !movers.get(1).running());
            assertEquals(flow, movers.get(0).flow() + movers.get(1).flow(), 1e-12);
            assertEquals(movers.get(0).pressure(), movers.get(1).pressure(), 1e-7);
            assertTrue(movers.get(1).flow() < 0);
            assertEquals(0, movers.get(1).speed());
            // Δp = K ρ v²/2 on the open area of 80 cm²
            double speed = movers.get(1).flow() / 0.008;
            assertEquals(Bank.assumedLoss(state) * 0.6 * speed * speed, movers.get(1).pressure(), 1e-6);
            says(result, Severity.NOTE, "fans", "the mover that stands still in bank fans is taken as an opening of");
            assertEquals("common practice; the values are assumed", finding(result, "taken as an opening").orElseThrow().source());
            says(result, Severity.CAUTION, "fans", "comes back through the failed position");
        }
    }

    @Test
    void failedMoversHaveTheAssumedCoefficients() {
        // an opening by Idelchik, (0.707 + 1)², and two and three times that: assumed, no published value is known
        assertEquals(1.707 * 1.707, Bank.assumedLoss(FailedMover.State.REMOVED), 1e-12);
        assertEquals(2 * 1.707 * 1.707, Bank.assumedLoss(FailedMover.State.FREEWHEELING), 1e-12);
        assertEquals(3 * 1.707 * 1.707, Bank.assumedLoss(FailedMover.State.LOCKED), 1e-12);
    }

    // published closed forms

    /**
     * Like fans of Δp = 80 Pa (1 - (Q/0.06)²) on Δp = K Q²: one Q = √(p₀/(K + p₀/Q₀²)), two side by side √(p₀/(K + p₀/4Q₀²)), two
     * behind one another √(2p₀/(K + 2p₀/Q₀²)). Flows and pressures add as textbooks have it, e.g. F. P. Bleier, Fan Handbook
     * (1998), on fans in parallel and in series (from memory).
     */
    @ParameterizedTest
    @CsvSource({"2e4, 1, 1, 0.043529, 37.8947", "2e4, 2, 1, 0.055950, 62.6087", "2e4, 1, 2, 0.049827, 49.6552",
        "5e4, 1, 1, 0.033282, 55.3846", "5e4, 2, 1, 0.037947, 72.0000", "5e4, 1, 2, 0.041160, 84.7059",
        "2e5, 1, 1, 0.018974, 72.0000", "2e5, 2, 1, 0.019728, 77.8378", "2e5, 1, 2, 0.025584, 130.9091"})
    void idealFansAddFlowsOrPressures(double k, int across, int series, double flow, double pressure) {
        int points = 400;
        double[] q = new double[points + 1];
        double[] p = new double[points + 1];
        for (int i = 0; i <= points; i++) {
            q[i] = 0.06 * i / points;
            p[i] = 80 * (1 - (double) i * i / points / points);
        }
        Design design = box(Cases.part(Cases.curve(Cases.SPEED, 1.2, q, p, new double[0])),
                Cases.bank("fans", "outside", "box", "across", across, "series", series), Cases.square("vent", "box", "outside", k));
        Result<OperatingPoint> result = Cases.run(design, Cases.standardAir());
        // the table has five digits of the flow
        assertEquals(flow, figure(result, "airflow.bank.flow", "fans"), 1e-5 * flow + 5e-7);
        assertEquals(pressure, figure(result, "airflow.bank.pressure", "fans"), 1e-5 * pressure + 5e-5);
    }

    // how a bank is fitted

    /** One gives p, each behind it a part of p. */
    @ParameterizedTest
    @CsvSource({"2, 0.8", "3, 0.7", "2, 1"})
    void moversBehindOneAnotherGiveLess(int series, double factor) {
        Result<OperatingPoint> result = Cases.run(simple("series", series, "stageFactor", factor), Cases.standardAir());
        double shutOff = 80 * (1 + (series - 1) * factor);
        double q = (-shutOff / 0.05 + Math.sqrt(shutOff / 0.05 * shutOff / 0.05 + 4 * B * shutOff)) / (2 * B);
        assertEquals(q, figure(result, "airflow.bank.flow", "fans"), 1e-8 * q);
        OperatingPoint.BankPoint bank = result.data().orElseThrow().banks().getFirst();
        assertEquals(bank.pressure(), bank.movers().stream().mapToDouble(OperatingPoint.MoverPoint::pressure).sum(), 1e-6);
        assertEquals(factor * bank.movers().get(0).pressure(), bank.movers().get(1).pressure(), 1e-9);
    }

    @Test
    void theFirstRunningMoverOfAColumnGivesAll() {
        OperatingPoint.BankPoint bank = Cases.run(simple("across", 2, "series", 3, "stageFactor", 0.6),
                failing(Cases.failed("fans", 1, FailedMover.State.LOCKED), Cases.failed("fans", 5, FailedMover.State.LOCKED)))
                .data().orElseThrow().banks().getFirst();
        for (int column = 0; column < 2; column++) {
            assertEquals(bank.pressure(), bank.movers().subList(3 * column, 3 * column + 3).stream()
                    .mapToDouble(OperatingPoint.MoverPoint::pressure).sum(), 1e-6);
        }
        double alone = 80 * (1 - bank.movers().get(1).flow() / 0.05);
        assertEquals(alone, bank.movers().get(1).pressure(), 1e-6);
        assertEquals(0.6 * alone, bank.movers().get(2).pressure(), 1e-6);
        assertEquals(80 * (1 - bank.movers().get(3).flow() / 0.05), bank.movers().get(3).pressure(), 1e-6);
    }

    @Test
    void aDeratedBankGivesLess() {
        Result<OperatingPoint> result = Cases.run(simple("flowFactor", "90 %", "pressureFactor", 0.8), Cases.standardAir());
        double a = 64 / 0.045;
        double q = (-a + Math.sqrt(a * a + 4 * B * 64)) / (2 * B);
        assertEquals(q, figure(result, "airflow.bank.flow", "fans"), 1e-8 * q);
    }

    /** On the open area of 80 cm²: 1.5 ρ v²/2 and 2 Pa less than the movers give. */
    @Test
    void anOpenFlapTakesItsLoss() {
        OperatingPoint.BankPoint bank = Cases.run(simple("flaps", true), Cases.standardAir()).data().orElseThrow().banks().getFirst();
        double speed = bank.flow() / 0.008;
        assertEquals(bank.movers().getFirst().pressure() - 1.5 * 0.6 * speed * speed - 2, bank.pressure(), 0.01);
        assertEquals(B * bank.flow() * bank.flow(), bank.pressure(), 1e-6);
    }

    @Test
    void aFailedMoverBehindAFlapLeaksOnly() {
        Condition failed = failing(Cases.failed("fans", 2, FailedMover.State.FREEWHEELING));
        Result<OperatingPoint> open = Cases.run(simple("across", 2), failed);
        Result<OperatingPoint> shut = Cases.run(simple("across", 2, "flaps", true, "flapLoss", 1.5, "flapPressure", "2 Pa", "flapLeak",
                "1 %"), failed);
        assertTrue(figure(shut, "airflow.bank.flow", "fans") > figure(open, "airflow.bank.flow", "fans"));
        OperatingPoint.BankPoint bank = shut.data().orElseThrow().banks().getFirst();
        double back = -bank.movers().get(1).flow();
        // an opening of 0.8 cm², (0.707 + 1)² ρ v²/2, and the rotor that the air turns in front of it
        double speed = back / 0.00008;
        double rotor = back / 0.008;
        assertEquals(2.913849 * 0.6 * speed * speed + 2 * 2.913849 * 0.6 * rotor * rotor, bank.pressure(), 0.01 * bank.pressure());
        assertTrue(finding(shut, "fit flaps").isEmpty() && shut.findings().stream()
                .noneMatch(each -> each.remedy().toString().contains("fit flaps")));
        says(shut, Severity.NOTE, "fans", "comes back through the leak of the shut flap at the failed position");
        says(open, Severity.CAUTION, "fans", "comes back through the failed position");
    }

    @Test
    void aFlapNeedsAnArea() {
        AirMover frameless = new AirMover("F", "", Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.empty(), Optional.empty(), STRAIGHT.curves(), Value.Tree.EMPTY);
        refuses(simple("flaps", true).withAirMovers(List.of(frameless)), Condition.NOMINAL, "fans",
                "of which no flap can be computed; expected its openArea, or width and height of its frame");
    }

    @Test
    void measuredLossesReplaceAssumedOnes() {
        AirMover part = Movers.with(STRAIGHT, "lockedLoss", 12);
        Design design = box(part, Cases.bank("fans", "outside", "box", "across", 2), Cases.square("vent", "box", "outside", B));
        Result<OperatingPoint> locked = Cases.run(design, failing(Cases.failed("fans", 2, FailedMover.State.LOCKED)));
        OperatingPoint.MoverPoint still = locked.data().orElseThrow().banks().getFirst().movers().get(1);
        assertEquals(12 * 0.6 * still.flow() * still.flow() / 0.008 / 0.008, still.pressure(), 1e-6);
        assertEquals("", finding(locked, "with loss coefficient 12.0 (locked)").orElseThrow().source());
        Result<OperatingPoint> turning = Cases.run(design, failing(Cases.failed("fans", 2, FailedMover.State.FREEWHEELING)));
        assertTrue(finding(turning, "taken as an opening").orElseThrow().source().contains("assumed"));
    }

    @Test
    void aFailedStageInSeriesIsAResistance() {
        Result<OperatingPoint> result = Cases.run(simple("series", 2), failing(Cases.failed("fans", 1, FailedMover.State.LOCKED)));
        double resistance = Bank.assumedLoss(FailedMover.State.LOCKED) * 0.6 / (0.008 * 0.008);
        assertEquals(expected(1, 1, B + resistance), figure(result, "airflow.bank.flow", "fans"), 1e-8);
        assertTrue(finding(result, "comes back").isEmpty());
    }

    @Test
    void allFailedMoversMoveNothing() {
        Result<OperatingPoint> result = Cases.run(simple(), failing(Cases.failed("fans", 1, FailedMover.State.REMOVED)));
        assertEquals(0, figure(result, "airflow.bank.flow", "fans"));
        assertEquals(0, figure(result, "airflow.bank.speed", "fans"));
        assertTrue(found(result, "airflow.bank.power", "fans").isEmpty());
    }

    @Test
    void aBankAtNoSpeedStandsStill() {
        Result<OperatingPoint> result = Cases.run(simple(), Cases.standardAir().withSpeed(Quantity.of(0)));
        assertEquals(0, figure(result, "airflow.bank.flow", "fans"));
        says(result, Severity.CAUTION, "fans", "stands still");
    }

    @Test
    void assumesAnOpenAreaFromTheFrame() {
        AirMover part = new AirMover("F", "", Optional.empty(), Optional.of(Quantity.of(0.1)), Optional.of(Quantity.of(0.1)),
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), STRAIGHT.curves(), Value.Tree.EMPTY);
        Result<OperatingPoint> result = Cases.run(box(part, Cases.bank("fans", "outside", "box", "across", 2),
                Cases.square("vent", "box", "outside", B)), failing(Cases.failed("fans", 1, FailedMover.State.LOCKED)));
        says(result, Severity.NOTE, "fans", "(60 % of its frame, assumed)");
    }

    // what it refuses

    private static void refuses(Design design, Condition condition, String place, String words) {
        Result<OperatingPoint> result = Cases.run(design, condition);
        assertTrue(result.data().isEmpty());
        assertTrue(result.figures().isEmpty());
        says(result, Severity.NOT_JUDGED, place, words);
    }

    @Test
    void refusesAnUnknownKindOfPassage() {
        refuses(box(STRAIGHT, Cases.bank("fans", "outside", "box"), Cases.passage("comb", "honeycomb", "box", "outside")),
                Condition.NOMINAL, "comb", "passage comb is of kind honeycomb, which nothing loaded knows");
    }

    @Test
    void refusesWhatIsMissing() {
        refuses(Design.EMPTY, Condition.NOMINAL, "", "no air path");
        refuses(simple().withAirMovers(List.of()), Condition.NOMINAL, "fans", "uses air mover F, which the design does not have");
        refuses(box(STRAIGHT, Cases.square("vent", "box", "attic", B)), Condition.NOMINAL, "vent", "ends in bay attic");
        refuses(box(STRAIGHT, Cases.passage("vent", "opening", "box", "outside")), Condition.NOMINAL, "vent",
                "does not say how large it is");
        refuses(simple(), failing(Cases.failed("fans", 2, FailedMover.State.LOCKED)), "fans", "has only 1");
        AirMover speedless = new AirMover("F", "", Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.empty(), Optional.empty(), STRAIGHT.curves().stream().map(curve ->
                        new tramontane.model.MoverCurve(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                                curve.flow(), curve.pressure(), Optional.empty(), Optional.empty(), Value.Tree.EMPTY)).toList(),
                Value.Tree.EMPTY);
        refuses(simple().withAirMovers(List.of(speedless)), Condition.NOMINAL, "fans", "states no speed");
        AirMover frameless = new AirMover("F", "", Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.empty(), Optional.empty(), STRAIGHT.curves(), Value.Tree.EMPTY);
        refuses(simple().withAirMovers(List.of(frameless)), failing(Cases.failed("fans", 1, FailedMover.State.LOCKED)), "fans",
                "expected its openArea, or width and height of its frame");
    }

    @Test
    void refusesAirThatCannotBe() {
        Condition steam = new Condition("steam", Optional.of(Quantity.of(373)), Optional.empty(), Optional.of(Quantity.of(50000)),
                Optional.of(Quantity.of(1)), Optional.empty(), Map.of(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), List.of(), Value.Tree.EMPTY);
        refuses(simple(), steam, "", "the air outside cannot be");
    }

    // curves with a dip

    /** 60, 18, 60 Pa at 0.01, 0.015, 0.025 m³/s: a square law through 19 Pa at 0.015 m³/s meets it three times. */
    private static final AirMover DEEP = Cases.part(Cases.curve(Cases.SPEED, 1.2,
            new double[] {0, 0.01, 0.015, 0.025, 0.04, 0.05}, new double[] {80, 60, 18, 60, 40, 0}, new double[0]));

    @Test
    void findsEveryCrossingOfACurveWithADipAndTakesTheOneReachedFromRest() {
        Result<OperatingPoint> result = Cases.run(box(DEEP, Cases.bank("fans", "outside", "box"),
                Cases.square("vent", "box", "outside", 85000)), Cases.standardAir());
        double flow = figure(result, "airflow.bank.flow", "fans");
        assertTrue(flow > 0.01 && flow < 0.015);
        assertEquals(85000 * flow * flow, figure(result, "airflow.bank.pressure", "fans"), 1e-5);
        Finding finding = finding(result, "there are 3 duty points").orElseThrow();
        assertEquals(Severity.CAUTION, finding.severity());
        assertEquals(2, finding.message().toString().split("\\(stable", -1).length - 1);
        assertEquals(1, finding.message().toString().split("\\(unstable", -1).length - 1);
        assertTrue(result.data().orElseThrow().banks().getFirst().stable());
    }

    @Test
    void aBankWithADipKeepsWorkingWhenOneOfItsMoversFails() {
        Result<OperatingPoint> result = Cases.run(box(Cases.dipping(), Cases.bank("fans", "outside", "box", "across", 3),
                Cases.square("vent", "box", "outside", 8000)), failing(Cases.failed("fans", 2, FailedMover.State.LOCKED)));
        OperatingPoint.BankPoint bank = result.data().orElseThrow().banks().getFirst();
        double q = bank.flow();
        assertEquals(8000 * q * q, bank.pressure(), 1e-5);
        assertEquals(q, bank.movers().stream().mapToDouble(OperatingPoint.MoverPoint::flow).sum(), 1e-10);
        assertEquals(bank.movers().get(0).flow(), bank.movers().get(2).flow());
        for (OperatingPoint.MoverPoint mover : bank.movers()) {
            assertEquals(bank.pressure(), mover.pressure(), 1e-5);
        }
        assertTrue(bank.movers().get(1).flow() < 0);
        assertEquals(q, figure(result, "airflow.total.flow", "") , 1e-10);
    }

    @Test
    void aDipThatIsNotMetGivesOneDutyPoint() {
        Result<OperatingPoint> result = Cases.run(box(DEEP, Cases.bank("fans", "outside", "box"),
                Cases.square("vent", "box", "outside", 20000)), Cases.standardAir());
        double flow = figure(result, "airflow.bank.flow", "fans");
        assertEquals(20000 * flow * flow, figure(result, "airflow.bank.pressure", "fans"), 1e-5);
        assertTrue(flow > 0.04);
        says(result, Severity.NOTE, "fans", "meets the system curve once");
    }

    @Test
    void aBankWithADipWorksBesideOthersWithoutOne() {
        AirMover other = new AirMover("G", "", Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.empty(), Optional.empty(), STRAIGHT.curves(), Value.Tree.EMPTY);
        Design design = box(DEEP, Cases.bank("fans", "outside", "box"),
                new Passage("others", "bank", "outside", "box", Cases.tree("mover", "G")),
                Cases.square("vent", "box", "outside", 20000)).withAirMovers(List.of(DEEP, other));
        OperatingPoint point = Cases.run(design, Cases.standardAir()).data().orElseThrow();
        double pressure = point.bay("box").orElseThrow().pressure();
        double sum = point.bank("fans").orElseThrow().flow() + point.bank("others").orElseThrow().flow();
        assertEquals(20000 * sum * sum, pressure, 1e-5);
        assertEquals(80 * (1 - point.bank("others").orElseThrow().flow() / 0.05), pressure, 1e-5);
        assertEquals(pressure, point.bank("fans").orElseThrow().pressure(), 1e-5);
    }

    /** Two like banks side by side work as one bank of two. */
    @ParameterizedTest
    @ValueSource(doubles = {5000, 21250, 60000, 200000})
    void severalBanksWithDipsSettleFromRest(double b) {
        Design apart = box(DEEP, Cases.bank("left", "outside", "box"), Cases.bank("right", "outside", "box"),
                Cases.square("vent", "box", "outside", b));
        Design together = box(DEEP, Cases.bank("fans", "outside", "box", "across", 2), Cases.square("vent", "box", "outside", b));
        Result<OperatingPoint> result = Cases.run(apart, Cases.standardAir());
        double flow = figure(Cases.run(together, Cases.standardAir()), "airflow.bank.flow", "fans");
        assertEquals(flow / 2, figure(result, "airflow.bank.flow", "left"), 1e-8);
        assertEquals(flow / 2, figure(result, "airflow.bank.flow", "right"), 1e-8);
        assertTrue(finding(result, "the curves of banks left, right do not fall all the way").isPresent());
    }

    @Test
    void listsTheJointDutyPointsOfSeveralBanks() {
        Design apart = box(DEEP, Cases.bank("left", "outside", "box"), Cases.bank("right", "outside", "box"),
                Cases.square("vent", "box", "outside", 85000.0 / 4));
        says(Cases.run(apart, Cases.standardAir()), Severity.CAUTION, "left", "there are 9 joint duty points: ");
    }

    @Test
    void aStageFailedInOneColumnOfABankWithADipIsSolved() {
        OperatingPoint.BankPoint bank = Cases.run(box(DEEP, Cases.bank("fans", "outside", "box", "across", 2, "series", 2),
                Cases.square("vent", "box", "outside", B)), failing(Cases.failed("fans", 1, FailedMover.State.LOCKED)))
                .data().orElseThrow().banks().getFirst();
        assertEquals(B * bank.flow() * bank.flow(), bank.pressure(), 1e-5);
        assertEquals(bank.flow(), bank.movers().get(0).flow() + bank.movers().get(2).flow(), 1e-10);
        assertEquals(bank.pressure(), bank.movers().get(0).pressure() + bank.movers().get(1).pressure(), 1e-5);
        assertEquals(bank.pressure(), bank.movers().get(2).pressure() + bank.movers().get(3).pressure(), 1e-5);
    }

    // findings

    @Test
    void saysWhereABankIsBlownThroughOrBack() {
        AirMover weak = Cases.part(Cases.curve(Cases.SPEED, 1.2, new double[] {0, 0.01}, new double[] {10, 0}, new double[0]));
        AirMover strong = new AirMover("S", "", Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.empty(), Optional.empty(), STRAIGHT.curves(), Value.Tree.EMPTY);
        Design series = Cases.design(weak, List.of("a", "b"), Cases.bank("weak", "outside", "a"),
                new Passage("strong", "bank", "a", "b", Cases.tree("mover", "S")), Cases.square("vent", "b", "outside", 5e3))
                .withAirMovers(List.of(weak, strong));
        says(Cases.run(series, Condition.NOMINAL), Severity.CAUTION, "weak", "position 1 of bank weak works beyond free delivery");
        Design parallel = box(weak, Cases.bank("weak", "outside", "box"),
                new Passage("strong", "bank", "outside", "box", Cases.tree("mover", "S")),
                Cases.square("vent", "box", "outside", B)).withAirMovers(List.of(weak, strong));
        says(Cases.run(parallel, Condition.NOMINAL), Severity.CAUTION, "weak", "air goes backwards through position 1");
    }

    @Test
    void saysWhenACurveIsScaledOrContinuedFar() {
        says(Cases.run(simple(), Cases.standardAir().withSpeed(Quantity.of(0.4))), Severity.CAUTION, "fans",
                "too far for the fan laws");
        assertTrue(finding(Cases.run(simple(), Cases.standardAir().withSpeed(Quantity.of(0.6))), "too far").isEmpty());
        AirMover shortCurve = Cases.part(Cases.curve(Cases.SPEED, 1.2, new double[] {0.005, 0.01}, new double[] {80, 70}, new double[0]));
        says(Cases.run(box(shortCurve, Cases.bank("fans", "outside", "box"), Cases.square("vent", "box", "outside", B)),
                Condition.NOMINAL), Severity.CAUTION, "fans", "works outside the measured flows");
    }

    @Test
    void namesThePassageWithTheLargestDropAndTheDensity() {
        Design design = Cases.design(STRAIGHT, List.of("a", "b"), Cases.bank("fans", "outside", "a"),
                Cases.square("card", "a", "b", 3e4), Cases.square("vent", "b", "outside", 1e4));
        Result<OperatingPoint> result = Cases.run(design, Condition.NOMINAL);
        says(result, Severity.NOTE, "card", "passage card has the largest pressure drop");
        // Picard et al., Metrologia 45 (2008): moist air at 101325 Pa, 20 °C, 50 % humidity
        assertEquals(1.199314, figure(result, "airflow.air.density", ""), 1e-6);
    }

    @Test
    void notesBaysWithoutAWayOutside() {
        Design design = Cases.design(STRAIGHT, List.of("hot", "cold"), Cases.bank("fans", "cold", "hot"),
                Cases.square("core", "hot", "cold", B));
        Result<OperatingPoint> result = Cases.run(design, Cases.standardAir());
        assertEquals(expected(1, 1, B), figure(result, "airflow.bank.flow", "fans"), 1e-8);
        assertEquals(0, figure(result, "airflow.total.flow", ""));
        says(result, Severity.NOTE, "hot", "have no way to the outside");
    }

    @Test
    void saysThatNoAirTakesTheHeat() {
        Design design = simple().withHeatSources(List.of(heat(540)));
        Result<OperatingPoint> result = Cases.run(design, failing(Cases.failed("fans", 1, FailedMover.State.LOCKED)));
        says(result, Severity.NOT_MET, "", "no air goes through the equipment");
        says(result, Severity.CAUTION, "fans", "all have failed");
        assertTrue(result.figures().stream().noneMatch(each -> each.kind().id().equals("airflow.air.rise")));
    }

    @Test
    void saysThatADeadEndWithHeatInItGetsNoAir() {
        Design design = Cases.design(STRAIGHT, List.of("a", "attic"), Cases.bank("fans", "outside", "a"),
                Cases.square("vent", "a", "outside", B), Cases.square("duct", "a", "attic", B)).withHeatSources(List.of(
                        new HeatSource("card", Quantity.of(100), List.of(new HeatSource.Share("duct", Optional.empty())),
                                Optional.empty(), Value.Tree.EMPTY)));
        Result<OperatingPoint> result = Cases.run(design, Condition.NOMINAL);
        assertEquals(0, figure(result, "airflow.passage.flow", "duct"));
        assertEquals(0, figure(result, "airflow.passage.drop", "duct"));
        says(result, Severity.CAUTION, "duct", "no air goes through duct, into which card gives its heat");
    }

    @Test
    void saysThatASupplyIsNotUsed() {
        Condition base = Condition.named("low");
        Condition low = new Condition("low", base.outsideTemperature(), base.altitude(), base.pressure(), base.humidity(),
                base.heatFactor(), base.heatFactors(), base.clogging(), Optional.of(Quantity.of(12)), base.supplyFrequency(),
                base.speed(), base.failed(), base.more());
        says(Cases.run(simple(), low), Severity.CAUTION, "fans", "does not change the speed");
    }

    @Test
    void saysThatAMeasurementIsLeftFarBehind() {
        Passage filter = Cases.passage("filter", "measured resistance", "box", "outside", "flow", "10 20 30 m³/h", "pressure",
                "0.1 0.2 0.3 Pa");
        says(Cases.run(box(STRAIGHT, Cases.bank("fans", "outside", "box"), filter), Condition.NOMINAL), Severity.CAUTION,
                "filter", "far beyond its measurement");
    }

    @Test
    void aSoundDesignHasFewFindings() {
        assertTrue(Cases.run(simple(), Condition.NOMINAL).findings().size() <= 2);
    }

    // trace and cache

    @Test
    void saysWhereEveryFigureComesFrom() {
        List<Trace.Step> steps = new ArrayList<>();
        Design design = simple().withHeatSources(List.of(heat(300))).withRequirements(List.of(rise(10)));
        Result<OperatingPoint> result = Cases.run(design, Condition.NOMINAL, steps);
        assertEquals(18, result.figures().size());
        for (Figure figure : result.figures()) {
            Trace.Step step = steps.stream().filter(each -> each.figure().equals(figure.kind().id())
                    && each.place().equals(figure.place())).findFirst()
                    .orElseThrow(() -> new AssertionError("no step for " + figure.kind().id()));
            assertEquals(figure.value(), step.value(), figure.kind().id());
            assertFalse(step.inputs().isEmpty());
        }
        assertTrue(steps.stream().map(Trace.Step::figure).collect(Collectors.toSet()).contains("airflow.air.density"));
    }

    @Test
    void whatATraceSaysOfAPassageCanBeCheckedByHand() {
        Value.Tree grille = Value.Tree.EMPTY.with("area", new Value.Text("120 cm²")).with("freeArea", new Value.Text("60 cm²"));
        Design design = Cases.design(STRAIGHT, List.of("a"), Cases.bank("fans", "outside", "a"),
                new Passage("grille", "grille", "a", "outside", grille));
        List<Trace.Step> steps = new ArrayList<>();
        Cases.run(design, Condition.NOMINAL, steps);
        Trace.Step step = steps.stream().filter(each -> each.figure().equals("airflow.passage.drop")).findFirst().orElseThrow();
        assertEquals("thin perforated plate", step.relation().name());
        Map<String, Double> inputs = step.inputs().stream().collect(Collectors.toMap(Trace.Term::name, Trace.Term::value));
        double velocity = inputs.get("flow") / inputs.get("face area A");
        // Idelchik, Handbook of Hydraulic Resistance, 3rd ed., diagram 8-1, at F 0.5: 4.36953, and the head lost behind
        assertEquals(5.36953, inputs.get("loss coefficient K"), 1e-5);
        assertEquals(0.5, inputs.get("open ratio F"), 1e-12);
        assertEquals(step.value(), inputs.get("loss coefficient K") * inputs.get("density in a") * velocity * velocity / 2,
                1e-5 * step.value());
    }

    @Test
    void givesTheSameWithAndWithoutATrace() {
        assertEquals(Cases.run(simple(), Condition.NOMINAL), Cases.run(simple(), Condition.NOMINAL, new ArrayList<>()));
    }

    @Test
    void readsOnlyWhatItComputesFrom() {
        AirflowAnalysis analysis = new AirflowAnalysis(Cases.KINDS, List.of());
        Design design = simple().withName("one").withRequirements(List.of(rise(10),
                new Requirement("thermal.junction.temperature", "worst", Optional.empty(), Optional.of(Quantity.of(350)), List.of(),
                        Value.Tree.EMPTY)));
        Design read = analysis.reads(design);
        assertEquals("", read.name());
        assertEquals(List.of("airflow.air.rise"), read.requirements().stream().map(Requirement::figure).toList());
        assertEquals(design.airPath(), read.airPath());
        assertEquals(design.airMovers(), read.airMovers());
    }

    @Test
    void declaresTheFiguresItGives() {
        List<String> declared = new AirflowAnalysis(Cases.KINDS, List.of()).figures().stream().map(kind -> kind.id()).toList();
        assertEquals(List.of("airflow.bank.flow", "airflow.bank.standardFlow", "airflow.bank.pressure", "airflow.bank.speed",
                "airflow.bank.power", "airflow.bank.efficiency", "airflow.bank.bestEfficiency", "airflow.bank.bestFlow",
                "airflow.bank.stallMargin", "airflow.bank.drawnBack", "airflow.bank.flowAtLessPressure",
                "airflow.bank.flowAtMorePressure", "airflow.gap.share", "airflow.passage.flow", "airflow.passage.drop",
                "airflow.bay.pressure", "airflow.total.flow", "airflow.air.density", "airflow.air.rise", "airflow.flow.needed",
                "airflow.pressure.available"), declared);
    }

    @ParameterizedTest
    @CsvSource({"50, 1, 40.0 °C at most", "-30, 1, -10.0 °C at least", "20, 0, ''"})
    void moversInAirThatTheirDataSheetDoesNotAllowAreNotMet(double celsius, int findings, String says) {
        AirMover part = AirMover.from(FormReader.read(AirMover.FORM, Cases.mover().tree().with("lowestTemperature", new Value.Text("-10 °C"))
                .with("highestTemperature", new Value.Text("40 °C")), "", new ArrayList<>()));
        Design design = Cases.design(part, List.of("box"), Cases.square("vent", "outside", "box", 1e4), Cases.bank("fans", "box", "outside"));
        Condition condition = new Condition("outdoors", Optional.of(Quantity.of(273.15 + celsius)), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Map.of(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), List.of(), Value.Tree.EMPTY);
        List<Finding> found = Cases.run(design, condition).findings().stream().filter(finding -> finding.severity() == Severity.NOT_MET).toList();
        assertEquals(findings, found.size(), found::toString);
        assertTrue(found.stream().allMatch(finding -> finding.message().in(UnitSystem.METRIC).endsWith("allows " + says)), found::toString);
    }
}
