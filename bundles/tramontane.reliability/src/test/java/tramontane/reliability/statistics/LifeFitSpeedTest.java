package tramontane.reliability.statistics;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class LifeFitSpeedTest {

    private static double median(Runnable work) {
        for (int i = 0; i < 2000; i++) {
            work.run();
        }
        double[] micros = new double[301];
        for (int i = 0; i < micros.length; i++) {
            long start = System.nanoTime();
            work.run();
            micros[i] = (System.nanoTime() - start) / 1e3;
        }
        Arrays.sort(micros);
        return micros[micros.length / 2];
    }

    /** Fifty units, a third of them surviving: a fit well below 1 ms, a likelihood-ratio bound of L10 below 2 ms; medians, warm. */
    @ParameterizedTest
    @EnumSource(Family.class)
    void fiftyUnitsAreFittedAtOnce(Family family) {
        SplittableRandom random = new SplittableRandom(5);
        List<Observation> seen = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            double life = new Weibull(1000, 1.8).life(random.nextDouble(1e-15, 1));
            seen.add(life < 1050 ? Observation.failure(life) : Observation.survivor(1050 + i));
        }
        LifeData data = new LifeData(seen);
        LifeFit fit = LifeFit.of(data, family).orElseThrow();
        double fitting = median(() -> LifeFit.of(data, family).orElseThrow());
        double bounding = median(() -> fit.lower(Quantity.life(0.1), 0.95, Bounds.Method.LIKELIHOOD_RATIO));
        System.out.printf("%s: fit %.0f µs, likelihood-ratio bound of L10 %.0f µs%n", family.word(), fitting, bounding);
        assertTrue(fitting < 500, "a fit took " + fitting + " µs");
        assertTrue(bounding < 2000, "a bound took " + bounding + " µs");
    }
}
