package tramontane.reliability.system;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

import tramontane.reliability.statistics.Exponential;
import tramontane.reliability.statistics.Weibull;
import tramontane.reliability.system.FailureGraph.Failure;
import tramontane.reliability.system.FailureGraph.State;

class RepairTest {

    static Stream<List<String>> golden() {
        return Golden.rows("repair.csv");
    }

    /** SciPy expm and exact fractions: golden.py. */
    @ParameterizedTest
    @MethodSource("golden")
    void agreesWithGolden(List<String> row) {
        double[] cell = row.stream().mapToDouble(Double::parseDouble).toArray();
        Repair repair = new Repair(FailureGraph.needed((int) cell[0], (int) cell[1]), List.of(cell[2]), 1 / cell[3], (int) cell[4]);
        assertEquals(cell[5], repair.unavailability(), 1e-12 * cell[5], "unavailability");
        assertEquals(1 - cell[5], repair.availability(), 1e-14, "availability");
        assertEquals(cell[6], repair.mean(), 1e-12 * cell[6], "mean");
        assertEquals(cell[7], repair.failureRate(), 1e-12 * cell[7], "failures");
        // expm itself has an absolute error of its scaling times the machine's precision.
        assertEquals(cell[9], repair.failed(cell[8]), 1e-9 * cell[9] + 1e-15 * cell[8] / cell[3], "failed");
        assertEquals(8760 * cell[5], repair.downTime(8760), 1e-8 * cell[5]);
    }

    /** Birth-death closed forms (NIST/SEMATECH e-Handbook 8.1.8; steady state solved by hand), failure rate 1e-5 per h. */
    @ParameterizedTest
    @CsvSource({"1, 2, 24, 2.084833e8, 1.151447e-7, 5.757236e-8", "2, 3, 24, 6.952778e7, 3.454341e-7, 1.726895e-7",
        "3, 4, 24, 3.478056e7, 6.908681e-7, 3.453237e-7", "3, 4, 168, 5.018651e6, 3.375481e-5, 1.683992e-5",
        "5, 6, 72, 4.666296e6, 1.552956e-5, 7.749929e-6"})
    void agreesWithTables(int needed, int units, double time, double mean, double one, double each) {
        FailureGraph graph = FailureGraph.needed(needed, units);
        Repair single = Repair.of(graph, List.of(new Exponential(1e5)), time, 1);
        Repair all = Repair.of(graph, List.of(new Exponential(1e5)), time, Repair.EACH);
        assertEquals(mean, single.mean(), 1e-5 * mean);
        assertEquals(one, single.unavailability(), 1e-5 * one);
        assertEquals(each, all.unavailability(), 1e-5 * each);
        assertEquals(new KOutOfN(needed, units).unavailability(1e5, time), all.unavailability(), 1e-12 * each);
    }

    /** Two kinds of units, each repaired by its own crew, are independent: every state a pair of numbers failed. */
    @Test
    void splitsRepairsAmongWhatFailed() {
        int a = 3;
        int b = 2;
        List<State> states = new ArrayList<>();
        for (int i = 0; i <= a; i++) {
            for (int j = 0; j <= b; j++) {
                List<Failure> failures = new ArrayList<>();
                if (i < a) {
                    failures.add(new Failure((i + 1) * (b + 1) + j, a - i, 0, 0, 1));
                }
                if (j < b) {
                    failures.add(new Failure(i * (b + 1) + j + 1, b - j, 1, 1, 1));
                }
                states.add(new State(i <= 1 && j <= 1, failures));
            }
        }
        Repair repair = new Repair(new FailureGraph(states), List.of(1e-4, 3e-5), 0.05, Repair.EACH);
        double first = new KOutOfN(2, 3).unavailability(1e4, 20);
        double second = new KOutOfN(1, 2).unavailability(1 / 3e-5, 20);
        double exact = first + second - first * second;
        assertEquals(exact, repair.unavailability(), 1e-12 * exact);
        double demand = 3 / (1e4 + 20) + 2 / (1 / 3e-5 + 20);
        assertEquals(demand, repair.failureRate(), 1e-12 * demand);
    }

    @Test
    void meetsLifeWithoutRepairWhenRepairsTakeForEver() {
        FailureGraph graph = FailureGraph.needed(2, 4, failed -> 1 + 0.2 * failed);
        Repair repair = new Repair(graph, List.of(1e-5), 1e-18, 1);
        SystemSurvival system = new SystemSurvival(graph, List.of(new Exponential(1e5)));
        List<SystemSurvival.Point> points = system.course(80000, 8);
        List<SystemSurvival.Point> repaired = repair.course(80000, 8);
        for (int i = 1; i < points.size(); i++) {
            assertEquals(points.get(i).failed(), repaired.get(i).failed(), 1e-7 * points.get(i).failed());
        }
        assertEquals(system.mean(), repair.mean(), 1e-7 * system.mean());
    }

    @Test
    void bearsStiffRates() {
        Repair repair = new Repair(FailureGraph.needed(1, 3), List.of(1e-6), 1e3, 1);
        // Down three failures deep: 3λ · 2λ/μ · λ/μ per time to leading order, with corrections of some λ/μ.
        double rate = 6e-18 / 1e6;
        assertEquals(rate, repair.downRate(), 1e-7 * rate);
        assertEquals(1 / rate, repair.mean(), 1e-7 / rate);
        assertEquals(rate * 1e5, repair.failed(1e5), 1e-6 * rate * 1e5);
        assertEquals(rate / 1e3, repair.unavailability(), 1e-7 * rate / 1e3);
    }

    @Test
    void countsLongRunRatesOfUnitsThatWear() {
        Weibull life = Weibull.through(60000, 0.1, 3);
        assertEquals(1 / life.mean(), Repair.of(FailureGraph.needed(1, 2), List.of(life), 24, 1).rates().get(0), 0);
    }

    @Test
    void refusesStatesOfSeveralNumbersFailed() {
        FailureGraph graph = new FailureGraph(List.of(
                new State(true, List.of(new Failure(1, 1, 0, 0, 1), new Failure(2, 1, 0, 1, 1))),
                new State(true, List.of(new Failure(2, 1, 0, 1, 1))),
                new State(false, List.of())));
        String message = assertThrows(IllegalArgumentException.class, () -> new Repair(graph, List.of(1.0), 1, 1)).getMessage();
        assertTrue(message.contains("state 2 is entered by failure number"), message);
    }

    @Test
    void isAlwaysUpWhereNothingBringsItDown() {
        FailureGraph graph = new FailureGraph(List.of(new State(true, List.of(new Failure(1, 1, 0, 0, 1))), new State(true, List.of())));
        Repair repair = new Repair(graph, List.of(1.0), 1, 1);
        assertEquals(0, repair.unavailability());
        assertEquals(Double.POSITIVE_INFINITY, repair.mean());
        assertEquals(0.5, repair.failureRate(), 1e-15);
    }
}
