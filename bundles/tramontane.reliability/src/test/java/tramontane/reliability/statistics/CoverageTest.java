package tramontane.reliability.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** How often bounds hold the truth: simulated Weibull tests, the same ones each time. */
class CoverageTest {

    private static final int RUNS = 6000;
    private static final Weibull TRUTH = new Weibull(1000, 2);
    private static final double CONFIDENCE = 0.9;

    /** Shares in per cent that hold the truth: Fisher two-sided, Fisher lower, likelihood ratio two-sided, likelihood ratio lower. */
    private record Coverage(int units, int failures, String quantity, double[] percent, int fits) {

        String row() {
            return String.format(Locale.ROOT, "| %d | %d | %s | %.1f | %.1f | %.1f | %.1f |", units, failures, quantity, percent[0],
                    percent[1], percent[2], percent[3]);
        }
    }

    private static LifeData draw(SplittableRandom random, int units, int failures) {
        double[] lives = new double[units];
        for (int i = 0; i < units; i++) {
            lives[i] = TRUTH.life(random.nextDouble(0x1p-53, 1));
        }
        Arrays.sort(lives);
        List<Observation> seen = new ArrayList<>();
        for (int i = 0; i < failures; i++) {
            seen.add(Observation.failure(lives[i]));
        }
        if (units > failures) {
            seen.add(Observation.survivor(lives[failures - 1]).times(units - failures));
        }
        return new LifeData(seen);
    }

    private static List<Coverage> simulate(int units, int failures) {
        Quantity[] quantities = {Quantity.life(0.1), Quantity.shape()};
        double[] truths = {TRUTH.life(0.1), TRUTH.shape()};
        SplittableRandom seeds = new SplittableRandom(1000L * units + failures);
        long[] seed = seeds.longs(RUNS).toArray();
        int[][] held = IntStream.range(0, RUNS).parallel().mapToObj(run -> {
            LifeFit fit = LifeFit.of(draw(new SplittableRandom(seed[run]), units, failures), Family.WEIBULL).orElseThrow();
            int[] result = new int[8];
            for (int q = 0; q < 2; q++) {
                for (Bounds.Method method : Bounds.Method.values()) {
                    Bounds bounds = fit.bounds(quantities[q], CONFIDENCE, method);
                    int at = 4 * q + 2 * method.ordinal();
                    result[at] = bounds.lower() <= truths[q] && truths[q] <= bounds.upper() ? 1 : 0;
                    // One-sided at 95 % is the lower end of two-sided at 90 %.
                    result[at + 1] = bounds.lower() <= truths[q] ? 1 : 0;
                }
            }
            return result;
        }).toArray(int[][]::new);
        List<Coverage> result = new ArrayList<>();
        for (int q = 0; q < 2; q++) {
            double[] percent = new double[4];
            for (int i = 0; i < 4; i++) {
                int at = 4 * q + i;
                percent[i] = 100.0 * Arrays.stream(held).mapToInt(each -> each[at]).sum() / RUNS;
            }
            result.add(new Coverage(units, failures, q == 0 ? "L10" : "shape", percent, RUNS));
        }
        return result;
    }

    @Test
    void likelihoodRatioBoundsHoldWhatTheySay() {
        List<Coverage> all = new ArrayList<>();
        for (int units : new int[] {10, 20, 50}) {
            all.addAll(simulate(units, units));
            all.addAll(simulate(units, units / 2));
        }
        System.out.println("| units | failed | of | Fisher, 90 % two-sided | Fisher, 95 % lower "
                + "| likelihood ratio, 90 % two-sided | likelihood ratio, 95 % lower |");
        System.out.println("|---|---|---|---|---|---|---|");
        all.forEach(each -> System.out.println(each.row()));
        for (Coverage each : all) {
            if (each.units() == 50) {
                assertEquals(90, each.percent()[2], 2, each.row());
            }
            // Few failures make both too narrow, but never by much for the likelihood ratio.
            assertTrue(each.percent()[2] > 80, each.row());
        }
    }
}
