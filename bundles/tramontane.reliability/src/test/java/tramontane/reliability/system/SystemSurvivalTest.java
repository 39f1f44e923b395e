package tramontane.reliability.system;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.stream.Stream;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

import tramontane.reliability.statistics.Exponential;
import tramontane.reliability.statistics.LifeDistribution;
import tramontane.reliability.statistics.Lognormal;
import tramontane.reliability.statistics.Weibull;
import tramontane.reliability.system.FailureGraph.Failure;
import tramontane.reliability.system.FailureGraph.State;

class SystemSurvivalTest {

    static Stream<List<String>> sharing() {
        return Golden.rows("sharing.csv");
    }

    /** NumPy, nested Gauss-Legendre quadrature: sharing.py. */
    @ParameterizedTest
    @MethodSource("sharing")
    void followsAgesOfUnitsThatShareLoad(List<String> row) {
        double expected = Double.parseDouble(row.get(2));
        // Four groups: polynomials of degree 4 only.
        double tolerance = row.get(0).equals("four banks") ? 2e-5 : 1e-6;
        double failed = Sharing.CASES.get(row.get(0)).failed(Double.parseDouble(row.get(1)));
        assertEquals(expected, failed, tolerance * expected, row.toString());
    }

    static Stream<List<String>> weibull() {
        return Golden.rows("weibull.csv");
    }

    /** SciPy, quad and brentq over the binomial distribution: golden.py. */
    @ParameterizedTest
    @MethodSource("weibull")
    void findsLivesAndMeans(List<String> row) {
        SystemSurvival system = SystemSurvival.of(Integer.parseInt(row.get(0)), Integer.parseInt(row.get(1)),
                new Weibull(1, Double.parseDouble(row.get(2))));
        double[] expected = row.stream().skip(3).mapToDouble(Double::parseDouble).toArray();
        assertEquals(expected[0], system.mean(), 1e-8 * expected[0], "mean");
        assertEquals(expected[1], system.life(0.1), 1e-8 * expected[1], "L10");
        assertEquals(expected[2], system.life(0.5), 1e-8 * expected[2], "L50");
        assertEquals(expected[3], system.meanFailed(0.5), 1e-8 * expected[3], "mean failed");
    }

    @ParameterizedTest
    @CsvSource({"1, 1, 0.5", "1, 2, 3", "3, 4, 1.1", "5, 6, 0.7", "2, 4, 3.5", "6, 12, 2", "3, 30, 3"})
    void isBinomialWhereNothingSpeedsUp(int needed, int units, double shape) {
        KOutOfN exact = new KOutOfN(needed, units);
        for (LifeDistribution life : List.of(new Weibull(60000, shape), new Exponential(60000), new Lognormal(60000, 0.6))) {
            for (SystemSurvival.Point point : SystemSurvival.of(needed, units, life).course(90000, 30)) {
                double failed = exact.failed(life, point.time());
                assertEquals(failed, point.failed(), 1e-9, () -> life + " at " + point);
                if (failed > 1e-25) {
                    assertEquals(1, point.failed() / failed, 2e-9, () -> life + " at " + point);
                }
            }
        }
    }

    @Test
    void findsUnitsOfDifferentKindsAndUnequalStart() {
        LifeDistribution early = new Weibull(5e6, 0.6);
        LifeDistribution late = new Weibull(60000, 4);
        FailureGraph series = new FailureGraph(List.of(
                new State(true, List.of(new Failure(1, 2, 0, 0, 1), new Failure(1, 3, 1, 1, 1))), new State(false, List.of())));
        for (SystemSurvival.Point point : new SystemSurvival(series, List.of(early, late)).course(70000, 20)) {
            double exact = -Math.expm1(-2 * Math.pow(point.time() / 5e6, 0.6) - 3 * Math.pow(point.time() / 60000, 4));
            assertEquals(exact, point.failed(), 1e-9 * exact);
        }
    }

    /** Two exponential stages one behind the other, rates 2 and f: the hypoexponential distribution. */
    @ParameterizedTest
    @CsvSource({"1.3", "1.7", "3", "10"})
    void isHypoexponentialWithoutWear(double ageing) {
        SystemSurvival system = Sharing.needed(1, 2, 1, ageing);
        for (SystemSurvival.Point point : system.course(3, 30)) {
            double exact = 1 - (ageing * Math.exp(-2 * point.time()) - 2 * Math.exp(-ageing * point.time())) / (ageing - 2);
            assertEquals(exact, point.failed(), 1e-8);
        }
        assertEquals(0.5 + 1 / ageing, system.mean(), 1e-7);
    }

    @ParameterizedTest
    @CsvSource({"two banks, 0.5", "two banks, 0.9", "three banks, 0.5"})
    void agreesWithSimulation(String name, double time) {
        SystemSurvival system = Sharing.CASES.get(name);
        Random random = new Random(20240611);
        int runs = 200_000;
        int failed = 0;
        for (int run = 0; run < runs; run++) {
            failed += lasts(system, random) < time ? 1 : 0;
        }
        double share = system.failed(time);
        assertEquals(share, (double) failed / runs, 3.5 * Math.sqrt(share * (1 - share) / runs));
    }

    private static double lasts(SystemSurvival system, Random random) {
        double[] ages = new double[3];
        double now = 0;
        State state = system.graph().states().get(0);
        while (state.up()) {
            double soonest = Double.POSITIVE_INFINITY;
            Failure next = state.failures().get(0);
            for (Failure failure : state.failures()) {
                Weibull life = (Weibull) system.lives().get(failure.kind());
                double hazard = Math.pow(ages[failure.group()] / life.scale(), life.shape())
                        - Math.log(random.nextDouble()) / failure.units();
                double wait = (life.scale() * Math.pow(hazard, 1 / life.shape()) - ages[failure.group()]) / failure.ageing();
                if (wait < soonest) {
                    soonest = wait;
                    next = failure;
                }
            }
            double[] factors = new double[3];
            state.failures().forEach(failure -> factors[failure.group()] = failure.ageing());
            for (int g = 0; g < 3; g++) {
                ages[g] += factors[g] * soonest;
            }
            now += soonest;
            state = system.graph().states().get(next.to());
        }
        return now;
    }

    /** Two units that are all gone by 3e-4 of the life of the others, without which the system runs on. */
    @Test
    void leavesBehindWhatIsGone() {
        FailureGraph graph = new FailureGraph(List.of(
                Sharing.state(Sharing.failure(1, 2, 0, 1), Sharing.failure(2, 2, 1, 1)),
                new State(false, List.of()),
                Sharing.state(Sharing.failure(1, 2, 0, 1), Sharing.failure(3, 1, 1, 1)),
                Sharing.state(Sharing.failure(1, 2, 0, 1))));
        SystemSurvival system = new SystemSurvival(graph, List.of(new Weibull(1, 3), new Weibull(1e-4, 3)));
        for (SystemSurvival.Point point : system.course(1, 10)) {
            double exact = -Math.expm1(-2 * Math.pow(point.time(), 3));
            assertEquals(exact, point.failed(), 2e-9 * exact);
        }
        assertEquals(new Weibull(Math.pow(2, -1.0 / 3), 3).mean(), system.mean(), 1e-9);
    }

    /** Exact over age: the first two failures of two units, the time between them shorter by the ageing. */
    @ParameterizedTest
    @CsvSource({"1, 3", "1, 32", "1.5, 8", "3, 1.3", "3, 8", "6, 3"})
    void meanWithAgeing(double shape, double ageing) {
        double one = new Weibull(1, shape).mean();
        double first = one * Math.pow(2, -1 / shape);
        assertEquals(first + 2 * (one - first) / ageing, Sharing.needed(1, 2, shape, ageing).mean(), 1e-6);
    }

    @Test
    void saysWhenItCanNotFollow() {
        String message = assertThrows(IllegalStateException.class, () -> Sharing.needed(1, 2, 6, 32).survival(1)).getMessage();
        assertTrue(message.contains("differ too much"), message);
    }

    @Test
    void renewsAtIntervals() {
        SystemSurvival system = SystemSurvival.of(3, 4, Weibull.through(60000, 0.1, 3));
        double whole = system.survival(20000);
        assertEquals(Math.pow(whole, 3) * system.survival(5000), system.survival(65000, 20000), 1e-12);
        assertEquals(Math.pow(whole, 3), system.survival(60000, 20000), 1e-12);
        assertEquals(system.failed(15000), system.failed(15000, 20000), 1e-15);
        assertEquals(5 * system.failed(100), system.failed(500, 100), 1e-8 * system.failed(500, 100));
    }

    @Test
    void livesForEverWhereNothingBringsItDown() {
        FailureGraph graph = new FailureGraph(List.of(new State(true, List.of(new Failure(1, 1, 0, 0, 1))), new State(true, List.of())));
        SystemSurvival system = new SystemSurvival(graph, List.of(new Exponential(1)));
        assertEquals(Double.POSITIVE_INFINITY, system.mean());
        assertEquals(Double.POSITIVE_INFINITY, system.life(0.1));
        assertEquals(0, system.failed(1e9));
        assertEquals(0, system.meanFailed(1e9));
    }

    @Test
    void lifeAndShareFailedAgree() {
        Sharing.CASES.forEach((name, system) -> {
            for (double share : new double[] {1e-6, 0.01, 0.1, 0.5, 0.9}) {
                assertEquals(share, system.failed(system.life(share)), 1e-7 * share, name);
            }
        });
    }

    @Test
    void refusesWhatMakesNoSense() {
        SystemSurvival system = SystemSurvival.of(1, 2, new Exponential(1));
        assertThrows(IllegalArgumentException.class, () -> system.at(List.of(2.0, 1.0)));
        assertThrows(IllegalArgumentException.class, () -> system.life(1));
        assertThrows(IllegalArgumentException.class, () -> new SystemSurvival(FailureGraph.needed(1, 2), List.of()));
        String message = assertThrows(IllegalArgumentException.class, () -> new FailureGraph(List.of(
                new State(true, List.of(new Failure(1, 1, 0, 0, 1))), new State(true, List.of(new Failure(0, 1, 0, 0, 1)))))).getMessage();
        assertTrue(message.contains("circle"), message);
        message = assertThrows(IllegalArgumentException.class,
                () -> new FailureGraph(List.of(new State(true, List.of(new Failure(7, 1, 0, 0, 1)))))).getMessage();
        assertTrue(message.contains("state 7"), message);
        message = assertThrows(IllegalArgumentException.class, () -> FailureGraph.needed(3, 2)).getMessage();
        assertEquals("units must be at least 3, got 2", message);
        assertThrows(IllegalArgumentException.class, () -> new FailureGraph(List.of(new State(false, List.of()))));
        assertThrows(IllegalArgumentException.class, () -> new FailureGraph(
                List.of(new State(true, List.of(new Failure(1, 1, 0, 0, 1.2))), new State(false, List.of()))));
        assertThrows(IllegalArgumentException.class, () -> new FailureGraph(List.of(new State(true, List.of(new Failure(1, 1, 0, 0, 1))),
                new State(true, List.of(new Failure(2, 1, 0, 0, 1.2), new Failure(2, 1, 1, 0, 1.3))), new State(false, List.of()))));
    }
}
