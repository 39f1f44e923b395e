package tramontane.reliability.statistics;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static tramontane.reliability.statistics.Observation.failure;
import static tramontane.reliability.statistics.Observation.survivor;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import tramontane.reliability.statistics.Acceleration.Law;

class AccelerationPropertiesTest {

    /** Whatever was seen at whichever temperatures: a fit with bounds in order, or a reason that is not "not found". */
    @Property(tries = 300)
    void noDataStopTheLaw(@ForAll long seed, @ForAll Family family, @ForAll Law law) {
        SplittableRandom random = new SplittableRandom(seed);
        List<StressTest> tests = new ArrayList<>();
        double[] temperatures = {358.15, 378.15, 398.15};
        int levels = 2 + random.nextInt(2);
        for (int i = 0; i < levels; i++) {
            List<Observation> seen = new ArrayList<>();
            int units = 1 + random.nextInt(6);
            for (int j = 0; j < units; j++) {
                double one = 100 * (1 + random.nextInt(20));
                double other = 100 * (1 + random.nextInt(20));
                seen.add(switch (random.nextInt(5)) {
                    case 0, 1 -> failure(one);
                    case 2 -> survivor(one);
                    case 3 -> Observation.failedBefore(one);
                    default -> Observation.between(Math.min(one, other), Math.max(one, other));
                });
            }
            tests.add(StressTest.at(temperatures[i], new LifeData(seen)));
        }
        switch (Acceleration.of(tests, family, law)) {
            case Outcome.NotFound<Acceleration>(Outcome.Reason reason, String sentence) ->
                assertTrue(reason != Outcome.Reason.NOT_CONVERGED, sentence + " " + tests);
            case Outcome.Found<Acceleration>(Acceleration fit) -> {
                for (Bounds.Method method : Bounds.Method.values()) {
                    Bounds effect = fit.temperatureEffect(0.9, method);
                    assertTrue(effect.lower() <= effect.estimate() && effect.estimate() <= effect.upper(), effect + " " + tests);
                    for (Quantity each : List.of(Quantity.life(0.1), Quantity.mean(), Quantity.survival(700), Quantity.shape())) {
                        Bounds bounds = fit.at(310).bounds(each, 0.9, method);
                        assertTrue(bounds.lower() <= bounds.estimate() && bounds.estimate() <= bounds.upper(),
                                each + " " + bounds + " " + tests);
                    }
                }
            }
        }
    }
}
