package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.airflow.AirPathModel;
import tramontane.airflow.AirPathSolution;
import tramontane.airflow.AirPathSolver;
import tramontane.airflow.BankCurve;
import tramontane.airflow.DutyPoint;
import tramontane.airflow.JointState;
import tramontane.analysis.Chart;
import tramontane.analysis.OperatingPoint;
import tramontane.model.AirMover;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.Passage;
import tramontane.model.Value;

class BankCurveTest {

    private static final AirMover DEEP = Cases.part(Cases.curve(Cases.SPEED, 1.2,
            new double[] {0, 0.01, 0.015, 0.025, 0.04, 0.05}, new double[] {80, 60, 18, 60, 40, 0}, new double[0]));
    private static final double VISCOSITY = 1.8e-5;

    /** A solved design. */
    private record Solved(AirPathSolver solver, AirPathSolution solution) {

        static Solved of(Design design, Condition condition) {
            AirPathModel model = AirPathModel.of(design, condition, Cases.KINDS);
            AirPathSolver solver = model.at(Map.of());
            AirPathSolution solution = solver.solve(model.temperatures());
            assertTrue(solution.point().isPresent(), () -> solution.obstacles().toString());
            return new Solved(solver, solution);
        }

        OperatingPoint point() {
            return solution.point().orElseThrow();
        }

        OperatingPoint.BankPoint bank() {
            return point().banks().getFirst();
        }

        BankCurve curve(double from, double to) {
            return solver.bankCurve(bank().bank(), bank().density(), VISCOSITY, from, to).orElseThrow();
        }

        Chart.Points system(double... flows) {
            return solver.systemCurve(bank().bank(), point(), flows, () -> false);
        }
    }

    private static Solved box(AirMover mover, double resistance, Object... members) {
        return Solved.of(Cases.design(mover, List.of("box"), Cases.bank("fans", "outside", "box", members),
                Cases.square("out", "box", "outside", resistance)), Cases.standardAir());
    }

    /** How far a point lies off the nearest straight line of a curve, over the largest flow and pressure of the mover. */
    private static double off(List<Chart.Points> pieces, double flow, double pressure, double columns) {
        double least = Double.POSITIVE_INFINITY;
        for (Chart.Points piece : pieces) {
            for (int i = 1; i < piece.size(); i++) {
                double x1 = piece.x(i - 1) / (0.05 * columns);
                double y1 = piece.y(i - 1) / 80;
                double dx = piece.x(i) / (0.05 * columns) - x1;
                double dy = piece.y(i) / 80 - y1;
                double px = flow / (0.05 * columns) - x1;
                double py = pressure / 80 - y1;
                double along = dx == 0 && dy == 0 ? 0 : Math.clamp((px * dx + py * dy) / (dx * dx + dy * dy), 0, 1);
                least = Math.min(least, Math.hypot(px - along * dx, py - along * dy));
            }
        }
        return least;
    }

    @Test
    void aQuadraticResistanceAsksForItsSquare() {
        Solved solved = box(Cases.mover(), 5e4);
        double[] flows = {-0.02, 0, 0.01, 0.02, 0.05};
        Chart.Points system = solved.system(flows);
        assertEquals(flows.length, system.size());
        for (int i = 0; i < flows.length; i++) {
            assertEquals(5e4 * flows[i] * Math.abs(flows[i]), system.y(i), 1e-6);
        }
    }

    @Test
    void theCurveGoesThroughWhatWasMeasured() {
        BankCurve curve = box(Cases.mover(), 5e4, "across", 2, "series", 3).curve(0, 0.1);
        assertEquals(1, curve.pieces().size());
        for (int i = 0; i < Cases.FLOW.length; i++) {
            assertEquals(3 * Cases.PRESSURE[i], curve.pieces().getFirst().at(2 * Cases.FLOW[i]).orElseThrow(), 1e-4);
            assertEquals(6 * Cases.POWER[i], curve.power().orElseThrow().getFirst().at(2 * Cases.FLOW[i]).orElseThrow(), 1e-6);
        }
        assertEquals(OptionalDouble.empty(), curve.stallFlow());
    }

    @Test
    void theLargestMeasuredFlowIsThatOfAllColumns() {
        assertEquals(OptionalDouble.of(2 * 0.05), box(Cases.mover(), 5e4, "across", 2, "series", 3).solver().largestFlow("fans"));
        AirPathModel model = AirPathModel.of(Cases.design(Cases.mover(), List.of("box"), Cases.bank("fans", "outside", "box"),
                Cases.square("out", "box", "outside", 1e4)), Cases.standardAir(), Cases.KINDS);
        assertEquals(OptionalDouble.empty(), model.at(Map.of("fans", 0.0)).largestFlow("fans"));
        assertEquals(Cases.SPEED, model.ratedSpeed("fans"));
        assertEquals(0, model.tolerance("fans", Cases.SPEED));
    }

    @Test
    void ofACurveWithADipTheStallRegionReachesToThePeak() {
        assertEquals(2 * 0.025, box(DEEP, 5e4, "across", 2).curve(0, 0.1).stallFlow().orElseThrow(), 1e-6);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e3, 2e4, 4e4, 6e4, 1e5, 3e5, 1e6})
    void dutyPointsLieWhereTheCurvesCross(double resistance) {
        for (AirMover mover : List.of(Cases.mover(), Cases.dipping(), DEEP)) {
            Solved solved = box(mover, resistance);
            OperatingPoint.BankPoint bank = solved.bank();
            assertTrue(off(solved.curve(-0.05, 0.1).pieces(), bank.flow(), bank.pressure(), 1) < 1e-3);
            assertEquals(bank.pressure(), solved.system(bank.flow()).y(0), 1e-6 * Math.max(1, bank.pressure()));
            for (JointState state : solved.solution().states()) {
                DutyPoint point = state.points().getFirst();
                assertTrue(off(solved.curve(-0.05, 0.1).pieces(), point.flow(), point.pressure(), 1) < 1e-3);
                assertEquals(point.pressure(), solved.system(point.flow()).y(0), 1e-6 * Math.max(1, point.pressure()));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {2e3, 5e3, 1e4, 2e4, 5e4, 2e5})
    void unlikeColumnsWithADipHaveACurveInPiecesThatHoldsTheirDutyPoints(double resistance) {
        for (FailedMover.State state : FailedMover.State.values()) {
            Condition failed = Cases.standardAir().with("one failed", List.of(Cases.failed("fans", 2, state)));
            Solved solved = Solved.of(Cases.design(DEEP, List.of("box"), Cases.bank("fans", "outside", "box", "across", 3),
                    Cases.square("out", "box", "outside", resistance)), failed);
            BankCurve curve = solved.curve(-0.15, 0.3);
            assertTrue(curve.pieces().size() >= 3);
            assertTrue(curve.stallFlow().isPresent());
            int met = 0;
            for (JointState joint : solved.solution().states()) {
                DutyPoint point = joint.points().getFirst();
                if (joint.even()) {
                    met++;
                    assertTrue(off(curve.pieces(), point.flow(), point.pressure(), 3) < 2e-3,
                            () -> state + " at " + point + ": " + off(curve.pieces(), point.flow(), point.pressure(), 3));
                }
                assertEquals(point.pressure(), solved.system(point.flow()).y(0), 1e-6 * Math.max(1, point.pressure()));
            }
            assertTrue(met > 0);
        }
    }

    @Test
    void aDutyPointThatIsSharedUnevenlyLiesOnACurveOfItsOwn() {
        // where their common flow would come to rest on the rising part, two movers part
        AirMover booster = new AirMover("B", "", Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.empty(), Optional.empty(), Cases.part(Cases.curve(Cases.SPEED, 1.2,
                        new double[] {0, 1}, new double[] {60, 0}, new double[0])).curves(), Value.Tree.EMPTY);
        Solved solved = Solved.of(Cases.design(DEEP, List.of("box", "duct"), Cases.bank("fans", "outside", "box", "across", 2),
                new Passage("booster", "bank", "box", "duct", Cases.tree("mover", "B")),
                Cases.square("vent", "duct", "outside", 3.3e5 / 4)).withAirMovers(List.of(DEEP, booster)), Cases.standardAir());
        OperatingPoint.BankPoint bank = solved.bank();
        assertTrue(Math.abs(bank.movers().get(0).flow() - bank.movers().get(1).flow()) > 1e-3);
        BankCurve along = solved.solver().unevenCurve(bank, VISCOSITY, -0.1, 0.2).orElseThrow();
        assertTrue(off(along.pieces(), bank.flow(), bank.pressure(), 2) < 1e-3);
        assertEquals(bank.pressure(), solved.system(bank.flow()).y(0), 1e-5);
    }

    @Test
    void aDutyPointThatIsSharedEvenlyHasNone() {
        Solved solved = box(DEEP, 5e3, "across", 2);
        assertTrue(solved.solver().unevenCurve(solved.bank(), VISCOSITY, -0.1, 0.2).isEmpty());
        assertTrue(box(Cases.mover(), 5e3, "across", 2).solver().unevenCurve(solved.bank(), VISCOSITY, -0.1, 0.2).isEmpty());
    }

    @Test
    void anotherBankStaysOnItsOwnCurve() {
        // two fans blow into one box: with the flow of one imposed, the other gives what both together are resisted with
        double resistance = 1e4;
        Solved solved = Solved.of(Cases.design(Cases.mover(), List.of("box"), Cases.bank("one", "outside", "box"),
                Cases.bank("two", "outside", "box"), Cases.square("out", "box", "outside", resistance)), Cases.standardAir());
        MoverCharacteristic curve = MoverCharacteristic.of(Cases.mover(), Cases.SPEED);
        for (double flow : new double[] {0, 0.02, 0.04, 0.06}) {
            double low = -0.1;
            double high = 0.1;
            for (int i = 0; i < 80; i++) {
                double middle = (low + high) / 2;
                double both = flow + middle;
                tramontane.analysis.FlowLaw.Drop drop = new tramontane.analysis.FlowLaw.Drop();
                curve.at(middle, 1.2, VISCOSITY, drop);
                if (-drop.pressure() > resistance * both * Math.abs(both)) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            assertEquals(resistance * (flow + low) * Math.abs(flow + low), solved.system(flow).y(0), 1e-5);
        }
        assertEquals(solved.bank().pressure(), solved.system(solved.bank().flow()).y(0), 1e-6);
    }

    @ParameterizedTest
    @ValueSource(doubles = {5e3, 1.5e4, 4e4})
    void anotherBankStaysOnItsStretch(double resistance) {
        Solved solved = Solved.of(Cases.design(DEEP, List.of("box"), Cases.bank("one", "outside", "box"),
                Cases.bank("two", "outside", "box"), Cases.square("out", "box", "outside", resistance)), Cases.standardAir());
        double own = solved.bank().flow();
        double[] flows = new double[41];
        for (int i = 0; i < flows.length; i++) {
            flows[i] = own + (i - 20) * 0.003;
        }
        Chart.Points system = solved.system(flows);
        assertEquals(solved.bank().pressure(), system.at(own).orElseThrow(), 1e-5);
        for (int i = 1; i < system.size(); i++) {
            assertTrue(system.y(i) > system.y(i - 1) - 1e-9, "what is asked rises with flow while no other bank leaves its stretch");
        }
    }

    @Test
    void aBankThatIsNotThereHasNoCurves() {
        Solved solved = box(Cases.mover(), 1e4);
        assertTrue(solved.solver().bankCurve("other", 1.2, VISCOSITY, 0, 1).isEmpty());
        assertEquals(0, solved.solver().systemCurve("other", solved.point(), new double[] {1}, () -> false).size());
        assertEquals(0, solved.solver().systemCurve("out", solved.point(), new double[] {1}, () -> false).size());
    }

    @Test
    void whoNoLongerWantsAnAnswerGetsNone() {
        Solved solved = box(Cases.mover(), 1e4);
        assertEquals(0, solved.solver().systemCurve("fans", solved.point(), new double[] {0.01, 0.02}, () -> true).size());
    }

    @Test
    void aBankBetweenTheSamePlaceIsAskedForNothing() {
        Solved solved = Solved.of(Cases.design(Cases.mover(), List.of(), new Passage[] {Cases.bank("fan", "outside", "outside")}),
                Cases.standardAir());
        Chart.Points system = solved.system(0, 0.02, 0.05);
        assertEquals(3, system.size());
        system.ys().forEach(pressure -> assertEquals(0, pressure, 1e-9));
        assertEquals(0.05, solved.bank().flow(), 1e-6);
        assertFalse(solved.curve(0, 0.06).pieces().isEmpty());
    }
}
