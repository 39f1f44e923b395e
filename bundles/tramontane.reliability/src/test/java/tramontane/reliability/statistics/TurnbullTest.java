package tramontane.reliability.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Non-parametric survival against R survival::survfit (survival.R beside the tables) and the e-Handbook. */
class TurnbullTest {

    private static final List<String[]> DATA = read("survival-data.csv");
    private static final List<String[]> STEPS = read("survival-steps.csv");

    private static List<String[]> read(String name) {
        try (BufferedReader in = new BufferedReader(new InputStreamReader(TurnbullTest.class.getResourceAsStream(name),
            StandardCharsets.UTF_8))) {
            return in.lines().skip(2).map(line -> line.split(",", -1)).toList();
        } catch (IOException e) {
            throw new AssertionError(name, e);
        }
    }

    private static LifeData data(String set) {
        return new LifeData(DATA.stream().filter(row -> row[0].equals(set))
            .map(row -> new Observation(number(row[1]), number(row[2]), Integer.parseInt(row[3]))).toList());
    }

    private static double number(String text) {
        return text.equals("Inf") ? Double.POSITIVE_INFINITY : Double.parseDouble(text.trim());
    }

    private static List<String[]> steps(String set) {
        return STEPS.stream().filter(row -> row[0].equals(set)).toList();
    }

    private static Stream<String> sets(String kind) {
        Map<String, String> sets = new LinkedHashMap<>();
        STEPS.forEach(row -> sets.put(row[0], row[1]));
        return sets.keySet().stream().filter(set -> sets.get(set).equals(kind));
    }

    static Stream<String> exact() {
        return sets("exact");
    }

    static Stream<String> between() {
        return sets("between");
    }

    @Test
    void thereAreEnoughSets() {
        assertEquals(8, exact().count());
        assertEquals(11, between().count());
    }

    @ParameterizedTest
    @MethodSource("exact")
    void kaplanMeier(String set) {
        Turnbull estimate = Turnbull.of(data(set));
        List<String[]> expected = steps(set);
        assertEquals(expected.size(), estimate.steps().size());
        for (int i = 0; i < expected.size(); i++) {
            Turnbull.Step step = estimate.steps().get(i);
            String[] row = expected.get(i);
            assertEquals(number(row[2]), step.to(), 0);
            assertEquals(number(row[3]), step.survival(), 1e-11);
            if (step.survival() > 0) {
                assertEquals(number(row[5]), step.standardError().orElseThrow(), 1e-11);
                assertEquals(number(row[6]), step.bounds(0.9).orElseThrow().lower(), 1e-10);
                assertEquals(number(row[7]), step.bounds(0.9).orElseThrow().upper(), 1e-10);
            } else {
                assertEquals(OptionalDouble.empty(), step.standardError());
                assertTrue(step.bounds(0.9).isEmpty());
            }
        }
    }

    /** Against the maximum found in R by other means; survfit stops at changes of 5e-5 and must not have found anything likelier. */
    @ParameterizedTest
    @MethodSource("between")
    void turnbull(String set) {
        LifeData data = data(set);
        Turnbull estimate = Turnbull.of(data);
        assertTrue(estimate.converged());
        TreeMap<Double, Double> survfit = new TreeMap<>();
        TreeMap<Double, Double> own = new TreeMap<>();
        for (String[] row : steps(set)) {
            double time = number(row[2]);
            assertEquals(number(row[4]), estimate.survival(time), 1e-7, () -> set + " at " + time);
            survfit.put(time, number(row[3]));
            own.put(time, estimate.survival(time));
        }
        assertTrue(logLikelihood(data, own) >= logLikelihood(data, survfit) - 1e-9);
    }

    /** Where its tolerance and its own way with the earliest left-censored do not show, survfit agrees to a thousandth. */
    @ParameterizedTest
    @MethodSource("between")
    void survfit(String set) {
        double tolerance = switch (set) {
            // It makes a step of its own at each early look that found a unit failed; the data ask for one, at the earliest.
            case "some25" -> 0.05;
            // It stops short of the maximum: shares that must vanish have not yet.
            case "own10", "own120" -> 0.01;
            default -> 1e-3;
        };
        Turnbull estimate = Turnbull.of(data(set));
        for (String[] row : steps(set)) {
            assertEquals(number(row[3]), estimate.survival(number(row[2])), tolerance);
        }
    }

    private static double logLikelihood(LifeData data, TreeMap<Double, Double> survival) {
        double sum = 0;
        for (Observation each : data.observations()) {
            var before = each.exact() ? survival.lowerEntry(each.from()) : survival.floorEntry(each.from());
            var after = each.survived() ? null : survival.floorEntry(each.to());
            sum += each.count() * Math.log((before == null ? 1 : before.getValue()) - (after == null ? 0 : after.getValue()));
        }
        return sum;
    }

    /** NIST/SEMATECH e-Handbook 8.2.2.1: after each of the ten failures of twenty units 0.95, 0.90 ... 0.50. */
    @Test
    void handbook() {
        Turnbull estimate = Turnbull.of(RankRegressionTest.handbook());
        for (int i = 0; i < 10; i++) {
            assertEquals(0.95 - 0.05 * i, estimate.steps().get(i).survival(), 1e-12);
            assertEquals(0.025 + 0.05 * i, estimate.points().get(i).failed(), 1e-12);
        }
        assertEquals(1, estimate.survival(53.9));
        assertEquals(0.95, estimate.survival(54), 1e-12);
        assertEquals(0.5, estimate.survival(1e9), 1e-12);
    }

    @Test
    void nothingFailed() {
        Turnbull estimate = Turnbull.of(LifeData.of(Observation.survivor(5).times(3)));
        assertTrue(estimate.steps().isEmpty());
        assertTrue(estimate.points().isEmpty());
        assertEquals(1, estimate.survival(100));
    }

    /** One interval and one survivor beyond it: half fail, no one knows when. */
    @Test
    void oneInterval() {
        Turnbull estimate = Turnbull.of(LifeData.of(Observation.between(10, 20), Observation.survivor(20)));
        assertEquals(1, estimate.steps().size());
        assertEquals(0.5, estimate.survival(20), 1e-9);
        assertEquals(1, estimate.survival(19));
        assertEquals(List.of(20.0), estimate.points().stream().map(PlotPoint::time).toList());
        assertEquals(1, Turnbull.of(LifeData.of(Observation.failedBefore(7))).steps().size());
    }

    /** Intervals that shrink to their failures give what Kaplan and Meier give. */
    @Property(tries = 60)
    void narrowIntervalsAreFailures(@ForAll @IntRange(min = 1, max = 60) int units, @ForAll @IntRange(min = 0, max = 10_000) int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Observation> known = new ArrayList<>(List.of(Observation.failure(1000)));
        List<Observation> narrow = new ArrayList<>(List.of(Observation.between(1000 - 1e-7, 1000)));
        for (int i = 0; i < units; i++) {
            double time = 1 + random.nextInt(999);
            boolean failed = random.nextInt(3) > 0;
            known.add(failed ? Observation.failure(time) : Observation.survivor(time));
            narrow.add(failed ? Observation.between(time - 1e-7, time) : Observation.survivor(time));
        }
        Turnbull exact = Turnbull.of(new LifeData(known));
        Turnbull other = Turnbull.of(new LifeData(narrow));
        assertTrue(other.converged());
        exact.steps().forEach(step -> assertEquals(step.survival(), other.survival(step.to()), 1e-7));
    }

    /** Whatever was seen: the search ends, survival falls from 1 and never rises, and observations can happen. */
    @Property(tries = 100)
    void alwaysASurvival(@ForAll @IntRange(min = 1, max = 150) int units, @ForAll @IntRange(min = 0, max = 10_000) int seed,
        @ForAll @DoubleRange(min = 1, max = 1000) double width) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Observation> seen = new ArrayList<>();
        for (int i = 0; i < units; i++) {
            double from = random.nextInt(500);
            seen.add(switch (random.nextInt(4)) {
                case 0 -> Observation.survivor(from);
                case 1 -> Observation.failure(from + 1);
                case 2 -> Observation.failedBefore(from + 1);
                default -> Observation.between(from, from + random.nextDouble() * width + 1e-3);
            });
        }
        Turnbull estimate = Turnbull.of(new LifeData(seen));
        assertTrue(estimate.converged());
        double last = 1;
        for (Turnbull.Step step : estimate.steps()) {
            assertEquals(last, step.before());
            assertTrue(step.survival() < step.before() && step.survival() >= 0);
            last = step.survival();
        }
    }
}
