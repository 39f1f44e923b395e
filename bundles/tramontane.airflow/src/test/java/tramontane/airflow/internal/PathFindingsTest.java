package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Amount;
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
import tramontane.model.MoverCurve;
import tramontane.model.Passage;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.model.Value;

class PathFindingsTest {

    /** 80 Pa (1 - q/0.05), straight. */
    private static final AirMover STRAIGHT = Cases.part(Cases.curve(Cases.SPEED, 1.2, new double[] {0, 0.05},
            new double[] {80, 0}, new double[] {4, 6}));
    private static final double B = 30000;

    private static Result<OperatingPoint> run(AirMover mover, List<String> bays, Passage... passages) {
        return Cases.run(Cases.design(mover, bays, passages), Cases.standardAir());
    }

    private static Figure figure(Result<?> result, String id, String place) {
        return result.figures().stream().filter(each -> each.kind().id().equals(id) && each.place().equals(place)).findFirst()
                .orElseThrow(() -> new AssertionError(result.figures().toString()));
    }

    private static Finding says(Result<?> result, Severity severity, String place, String words) {
        Finding finding = result.findings().stream().filter(each -> each.message().toString().contains(words)).findFirst()
                .orElseThrow(() -> new AssertionError(result.findings().toString()));
        assertEquals(severity, finding.severity());
        assertEquals(place, finding.place());
        return finding;
    }

    private static boolean silent(Result<?> result, String words) {
        return result.findings().stream().noneMatch(each -> each.message().toString().contains(words));
    }

    /** f 80 (1 - q/0.05) = b q². */
    private static double straight(double f, double b) {
        double a = f * 80 / 0.05;
        return (-a + Math.sqrt(a * a + 4 * b * f * 80)) / (2 * b);
    }

    private static AirMover withTolerance(AirMover mover, double tolerance) {
        MoverCurve curve = mover.curves().getFirst();
        return Cases.part(new MoverCurve(curve.speed(), curve.voltage(), curve.frequency(), curve.density(), curve.flow(),
                curve.pressure(), curve.power(), Optional.of(Quantity.of(tolerance)), Value.Tree.EMPTY));
    }

    private static Passage square(String id, String from, String to, double b, double tolerance) {
        Passage passage = Cases.square(id, from, to, b);
        return new Passage(id, passage.kind(), from, to, Optional.of(Quantity.of(tolerance)), passage.parameters());
    }

    @Test
    void showsWhatTenPercentOfPressureDo() {
        Result<OperatingPoint> result = run(STRAIGHT, List.of("box"), Cases.bank("fans", "outside", "box"),
                Cases.square("vent", "box", "outside", B));
        assertEquals(straight(0.9, B), figure(result, "airflow.bank.flowAtLessPressure", "fans").value(), 1e-9);
        assertEquals(straight(1.1, B), figure(result, "airflow.bank.flowAtMorePressure", "fans").value(), 1e-9);
        assertTrue(figure(result, "airflow.bank.flow", "fans").lower().isEmpty());
    }

    @Test
    void carriesTolerancesThroughToBounds() {
        Result<OperatingPoint> result = run(withTolerance(STRAIGHT, 0.08), List.of("box"), Cases.bank("fans", "outside", "box"),
                square("vent", "box", "outside", B, 0.2));
        Figure flow = figure(result, "airflow.bank.flow", "fans");
        double q = straight(1, B);
        assertEquals(q, flow.value(), 1e-9);
        double lower = straight(0.92, B) + straight(1, 1.2 * B) - q;
        double upper = straight(1.08, B) + straight(1, 0.8 * B) - q;
        assertTrue(flow.lower().orElseThrow() <= lower + 1e-9);
        assertTrue(flow.upper().orElseThrow() >= upper - 1e-9);
        double width = upper - lower;
        assertEquals(lower, flow.lower().orElseThrow(), 0.03 * width);
        assertEquals(upper, flow.upper().orElseThrow(), 0.03 * width);
        Random random = new Random(99);
        for (int i = 0; i < 1000; i++) {
            double sample = straight(1 + 0.08 * (2 * random.nextDouble() - 1), B * (1 + 0.2 * (2 * random.nextDouble() - 1)));
            assertTrue(sample >= flow.lower().orElseThrow() - 0.005 * width && sample <= flow.upper().orElseThrow() + 0.005 * width);
        }
        Figure pressure = figure(result, "airflow.bay.pressure", "box");
        assertTrue(pressure.lower().orElseThrow() < pressure.value() && pressure.value() < pressure.upper().orElseThrow());
        says(result, Severity.NOTE, "", "fans (8.0 %), vent (20.0 %)");
    }

    @Test
    void tellsWhatOpeningTheLargestDropWouldGain() {
        Result<OperatingPoint> result = run(STRAIGHT, List.of("a", "b"), Cases.square("grille", "outside", "a", 1000),
                Cases.bank("fans", "a", "b"), Cases.square("vent", "b", "outside", 29000));
        Finding finding = says(result, Severity.NOTE, "vent", "passage vent has the largest pressure drop");
        double opened = straight(1, 1000 + 29000 / 1.21);
        assertEquals(opened, ((Amount) finding.message().parts().getLast()).si(), 1e-9);
    }

    /** Peak right of the dip at 0.025 m³/s. */
    @Test
    void tellsTheDistanceToTheStallRegion() {
        Result<OperatingPoint> beyond = run(Cases.dipping(), List.of("box"), Cases.bank("fans", "outside", "box"),
                Cases.square("vent", "box", "outside", 20000));
        double flow = figure(beyond, "airflow.bank.flow", "fans").value();
        assertTrue(flow > 0.03);
        assertEquals((flow - 0.025) / flow, figure(beyond, "airflow.bank.stallMargin", "fans").value(), 1e-12);
        assertTrue(silent(beyond, "stall region"));
        Result<OperatingPoint> within = run(Cases.dipping(), List.of("box"), Cases.bank("fans", "outside", "box"),
                Cases.square("vent", "box", "outside", 500000));
        assertTrue(figure(within, "airflow.bank.stallMargin", "fans").value() < 0);
        says(within, Severity.CAUTION, "fans", "works in the stall region");
    }

    @Test
    void aCurveThatFallsAllTheWayHasNoStallRegion() {
        Result<OperatingPoint> result = run(STRAIGHT, List.of("box"), Cases.bank("fans", "outside", "box"),
                Cases.square("vent", "box", "outside", B));
        assertTrue(result.figures().stream().noneMatch(figure -> figure.kind().id().equals("airflow.bank.stallMargin")));
    }

    /** q p/P of 80 (1 - x) with x = q/0.05 and 4 + 2 x watt is highest where 4 - 8 x - 2 x² = 0: x = √6 - 2. */
    @Test
    void tellsWhereTheBestEfficiencyWouldBe() {
        Result<OperatingPoint> result = run(STRAIGHT, List.of("box"), Cases.bank("fans", "outside", "box"),
                Cases.square("vent", "box", "outside", 2000));
        double x = Math.sqrt(6) - 2;
        assertEquals(0.05 * x, figure(result, "airflow.bank.bestFlow", "fans").value(), 1e-6);
        assertEquals(0.05 * x * 80 * (1 - x) / (4 + 2 * x), figure(result, "airflow.bank.bestEfficiency", "fans").value(), 1e-9);
        says(result, Severity.NOTE, "fans", "its movers are best at");
    }

    @Test
    void tellsTheFlowLostInGaps() {
        Result<OperatingPoint> result = run(STRAIGHT, List.of("box"), Cases.square("inlet", "outside", "box", B),
                Cases.passage("slit", "gap", "outside", "box", "width", 0.2, "opening", 0.002, "depth", 0.002),
                Cases.bank("fans", "box", "outside"));
        OperatingPoint point = result.data().orElseThrow();
        double slit = point.passage("slit").orElseThrow().massFlow();
        double inlet = point.passage("inlet").orElseThrow().massFlow();
        assertEquals(slit / (slit + inlet), figure(result, "airflow.gap.share", "").value(), 1e-12);
        says(result, Severity.CAUTION, "slit", "gap slit takes ");
    }

    @Test
    void tellsThatABoxBehindAFilterDrawsDust() {
        Passage filter = Cases.passage("mat", "measured resistance", "outside", "box", "quadratic", B, "filter", true);
        says(run(STRAIGHT, List.of("box"), filter, Cases.bank("fans", "box", "outside")), Severity.CAUTION, "box",
                "dust enters by every gap");
        Result<OperatingPoint> pushed = run(STRAIGHT, List.of("front", "box"), Cases.passage("mat", "measured resistance",
                "outside", "front", "quadratic", B, "filter", true), Cases.bank("fans", "front", "box"),
                Cases.square("vent", "box", "outside", B));
        // nobody could do it better
        assertTrue(silent(pushed, "dust"));
        assertTrue(silent(run(STRAIGHT, List.of("box"), Cases.square("inlet", "outside", "box", B),
                Cases.bank("fans", "box", "outside")), "dust"));
    }

    @Test
    void tellsTheShareOfExhaustDrawnBack() {
        Result<OperatingPoint> result = run(STRAIGHT, List.of("in", "out"), Cases.square("inlet", "outside", "in", B),
                Cases.bank("fans", "in", "out"), Cases.square("outlet", "out", "outside", B),
                Cases.square("round", "out", "in", 9 * B));
        OperatingPoint point = result.data().orElseThrow();
        double share = point.passage("round").orElseThrow().massFlow() / point.bank("fans").orElseThrow().massFlow();
        assertEquals(share, figure(result, "airflow.bank.drawnBack", "fans").value(), 1e-8);
        says(result, Severity.CAUTION, "fans", "has been through it before");
    }

    @Test
    void tellsThatBanksSideBySideShareUnequally() {
        Result<OperatingPoint> result = run(STRAIGHT, List.of("near", "far", "out"), Cases.square("a", "outside", "near", B),
                Cases.square("b", "outside", "far", 4 * B), Cases.bank("left", "near", "out"), Cases.bank("right", "far", "out"),
                Cases.square("vent", "out", "outside", B));
        says(result, Severity.CAUTION, "left", "the banks left, right, which stand side by side, share the flow unequally");
    }

    @Test
    void everyFigureCanBeTraced() {
        List<Trace.Step> steps = new ArrayList<>();
        Design design = Cases.design(withTolerance(Cases.part(Cases.curve(Cases.SPEED, 1.2,
                new double[] {0, 0.01, 0.015, 0.025, 0.04, 0.05}, new double[] {80, 60, 50, 60, 40, 0},
                new double[] {4, 4, 4, 5, 5, 5})), 0.1), List.of("in", "out"), Cases.square("inlet", "outside", "in", 3000),
                Cases.passage("slit", "gap", "outside", "in", "width", 0.2, "opening", 0.002, "depth", 0.002),
                Cases.bank("fans", "in", "out"), Cases.square("outlet", "out", "outside", 3000),
                Cases.square("round", "out", "in", 9 * B));
        Result<OperatingPoint> result = Cases.run(design, Cases.standardAir(), steps);
        for (Figure figure : result.figures()) {
            assertTrue(steps.stream().anyMatch(step -> step.figure().equals(figure.kind().id())
                    && step.place().equals(figure.place()) && step.value() == figure.value()), figure::toString);
        }
        assertTrue(result.figures().stream().map(figure -> figure.kind().id()).toList().containsAll(List.of(
                "airflow.bank.stallMargin", "airflow.bank.bestFlow", "airflow.bank.drawnBack", "airflow.gap.share",
                "airflow.bank.flowAtLessPressure")));
    }

    /** With 5 % less pressure the bank stalls on its way up from standstill, though it could stay where it is. */
    @Test
    void boundsSeeThatABankMayNotComeUpFromStandstill() {
        AirMover dip = Cases.part(Cases.curve(Cases.SPEED, 1.2, new double[] {0, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06},
                new double[] {120, 90, 70, 85, 92, 60, 0}, new double[0]));
        Passage flap = Cases.passage("flap", "flap", "outside", "in", "area", 0.04, "lossCoefficient", 2, "liftingPressure", 69);
        Passage vent = Cases.square("vent", "box", "outside", 15.6);
        Result<OperatingPoint> stated = run(withTolerance(dip, 0.05), List.of("in", "box"), flap,
                Cases.bank("fans", "in", "box"), vent);
        Figure flow = figure(stated, "airflow.bank.flow", "fans");
        assertTrue(flow.value() > 0.04);
        AirMover weaker = Cases.part(Cases.curve(Cases.SPEED, 1.2, new double[] {0, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06},
                new double[] {114, 85.5, 66.5, 80.75, 87.4, 57, 0}, new double[0]));
        double stalled = figure(run(weaker, List.of("in", "box"), flap, Cases.bank("fans", "in", "box"), vent),
                "airflow.bank.flow", "fans").value();
        assertTrue(stalled < 0.02);
        assertEquals(stalled, flow.lower().orElseThrow(), 1e-6);
        says(stated, Severity.CAUTION, "", "leaves its stretch of the curve");
    }

    /** A linear filter gains less by being opened than a square one: twice the area halves its drop, not quarters it. */
    @Test
    void openingALinearPassageGainsWhatMoreOfItWould() {
        Result<OperatingPoint> result = run(STRAIGHT, List.of("a", "b"), Cases.square("grille", "outside", "a", 100),
                Cases.bank("fans", "a", "b"), Cases.passage("mat", "measured resistance", "b", "outside", "linear", 1500));
        Result<OperatingPoint> larger = run(STRAIGHT, List.of("a", "b"), Cases.square("grille", "outside", "a", 100),
                Cases.bank("fans", "a", "b"), Cases.passage("mat", "measured resistance", "b", "outside", "linear", 1500 / 1.1));
        Finding finding = says(result, Severity.NOTE, "mat", "has the largest pressure drop");
        assertEquals(figure(larger, "airflow.total.flow", "").value(),
                ((Amount) finding.message().parts().getLast()).si(), 1e-9);
    }

    /** Two banks side by side, one standing still: what comes back through it is no air that cools. */
    @Test
    void airThatComesBackThroughABankThatStandsStillIsNoIntake() {
        Passage inlet = Cases.square("inlet", "outside", "box", 55000);
        Design design = Cases.design(STRAIGHT, List.of("box"), inlet, Cases.bank("left", "box", "outside"),
                Cases.bank("right", "box", "outside"));
        Result<OperatingPoint> apart = Cases.run(design, new Condition("failed", Optional.empty(),
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Map.of(), Optional.empty(),
                Optional.empty(), Optional.empty(), Optional.empty(),
                List.of(Cases.failed("left", 1, FailedMover.State.LOCKED)), Value.Tree.EMPTY));
        assertTrue(figure(apart, "airflow.bank.flow", "left").value() < 0);
        assertEquals(figure(apart, "airflow.passage.flow", "inlet").value(), figure(apart, "airflow.total.flow", "").value(),
                1e-12);
    }

    @Test
    void airThatComesInByOneGapAndLeavesByAnotherCountsOnce() {
        Passage in = Cases.passage("slit in", "gap", "outside", "a", "width", 0.2, "opening", 0.002, "depth", 0.002);
        Passage out = Cases.passage("slit out", "gap", "b", "outside", "width", 0.2, "opening", 0.002, "depth", 0.002);
        Result<OperatingPoint> result = run(STRAIGHT, List.of("a", "b"), Cases.square("inlet", "outside", "a", B), in, out,
                Cases.bank("fans", "a", "b"), Cases.square("outlet", "b", "outside", B));
        OperatingPoint point = result.data().orElseThrow();
        double inlet = point.passage("inlet").orElseThrow().massFlow();
        double first = point.passage("slit in").orElseThrow().massFlow();
        double second = point.passage("slit out").orElseThrow().massFlow();
        assertEquals(Math.max(first, second) / (inlet + first), figure(result, "airflow.gap.share", "").value(), 1e-12);
    }

    @Test
    void aRequirementOnTheStallRegionIsMetByACurveWithoutOne() {
        Requirement requirement = new Requirement("airflow.bank.stallMargin", Requirement.WORST, Optional.of(Quantity.of(0.1)),
                Optional.empty(), List.of(), Value.Tree.EMPTY);
        Design design = Cases.design(STRAIGHT, List.of("box"), Cases.bank("fans", "outside", "box"),
                Cases.square("vent", "box", "outside", B)).withRequirements(List.of(requirement));
        assertEquals(1, figure(Cases.run(design, Cases.standardAir()), "airflow.bank.stallMargin", "fans").value());
    }

    @Test
    void saysWhereAirCannotContinueOrIsTakenAsFromRest() {
        Passage first = Cases.passage("first", "duct", "a", "b", "diameter", 0.1, "length", 0.5, "continues", true);
        Passage next = Cases.passage("next", "duct", "b", "outside", "diameter", 0.1, "length", 0.5);
        says(run(STRAIGHT, List.of("a", "b"), Cases.bank("fans", "outside", "a"), first, next), Severity.CAUTION, "next",
                "which has an inlet loss as from a bay");
        assertTrue(silent(run(STRAIGHT, List.of("a", "b"), Cases.bank("fans", "outside", "a"), first, Cases.passage("next", "duct",
                "b", "outside", "diameter", 0.1, "length", 0.5, "inletLoss", 0)), "continue"));
        says(run(STRAIGHT, List.of("a", "b"), Cases.bank("fans", "outside", "a"), first, next,
                Cases.square("leak", "b", "outside", 1e6)), Severity.CAUTION, "first", "more than one meets it in bay b");
    }
}
