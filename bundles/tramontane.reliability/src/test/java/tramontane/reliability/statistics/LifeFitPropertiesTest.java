package tramontane.reliability.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

class LifeFitPropertiesTest {

    @Provide
    Arbitrary<Observation> observations() {
        Arbitrary<Double> times = Arbitraries.doubles().between(1, 1000).map(each -> Math.round(each * 10) / 10.0);
        Arbitrary<Integer> counts = Arbitraries.frequency(Tuple.of(4, 1), Tuple.of(1, 3), Tuple.of(1, 12));
        return Combinators.combine(times, times, Arbitraries.integers().between(0, 9), counts).as((one, other, kind, count) ->
            switch (kind) {
            case 0, 1, 2, 3, 4 -> new Observation(one, one, count);
            case 5, 6, 7 -> new Observation(one, Double.POSITIVE_INFINITY, count);
            case 8 -> new Observation(0, one, count);
            default -> new Observation(Math.min(one, other), Math.max(one, other), count);
        });
    }

    @Provide
    Arbitrary<LifeData> tests() {
        return observations().list().ofMinSize(1).ofMaxSize(25).map(LifeData::new);
    }

    private static LifeFit fit(LifeData data, Family family) {
        Optional<LifeFit> found = LifeFit.of(data, family).found();
        Assume.that(found.isPresent());
        return found.orElseThrow();
    }

    private static void near(double expected, double actual, double relative) {
        if (expected != actual) {
            assertEquals(expected, actual, relative * Math.abs(expected));
        }
    }

    @Property(tries = 300)
    void noDataStopTheFit(@ForAll("tests") LifeData data, @ForAll Family family) {
        Outcome<LifeFit> outcome = LifeFit.of(data, family);
        if (outcome instanceof Outcome.NotFound<LifeFit>(Outcome.Reason reason, String sentence)) {
            assertTrue(reason != Outcome.Reason.NOT_CONVERGED && reason != Outcome.Reason.NOT_DETERMINED, sentence + " " + data);
        }
    }

    @Property(tries = 200)
    void longerLivesScaleTheScaleAndLeaveTheShape(@ForAll("tests") LifeData data, @ForAll Family family,
            @ForAll @Scale(4) @DoubleRange(min = 1e-4, max = 1e4) double factor) {
        LifeFit one = fit(data, family);
        LifeFit other = fit(data.scaled(factor), family);
        assertEquals(one.location() + Math.log(factor), other.location(), 1e-7 * (1 + one.spread()));
        near(one.spread(), other.spread(), 1e-7);
        Quantity life = Quantity.life(0.1);
        near(factor * one.lower(life, 0.9, Bounds.Method.LIKELIHOOD_RATIO), other.lower(life, 0.9, Bounds.Method.LIKELIHOOD_RATIO), 1e-5);
    }

    @Property(tries = 200)
    void orderAndSplitCountsDoNotMatter(@ForAll("tests") LifeData data, @ForAll Family family, @ForAll long seed) {
        LifeFit one = fit(data, family);
        List<Observation> split = new ArrayList<>();
        for (Observation each : data.observations()) {
            if (each.count() > 1) {
                split.add(each.times(1));
                split.add(each.times(each.count() - 1));
            } else {
                split.add(each);
            }
        }
        Collections.shuffle(split, new Random(seed));
        LifeFit other = fit(new LifeData(split), family);
        assertEquals(one.location(), other.location());
        assertEquals(one.spread(), other.spread());
        assertEquals(one.logLikelihood(), other.logLikelihood());
        assertEquals(one.covariance(), other.covariance());
    }

    @Property(tries = 200)
    void boundsHoldTheEstimateAndWidenWithConfidence(@ForAll("tests") LifeData data, @ForAll Family family, @ForAll Bounds.Method method,
            @ForAll @Scale(4) @DoubleRange(min = 0.05, max = 0.9) double confidence,
            @ForAll @Scale(4) @DoubleRange(min = 0.001, max = 0.95) double failed,
            @ForAll @Scale(4) @DoubleRange(min = 0.5, max = 2000) double time) {
        LifeFit fit = fit(data, family);
        for (Quantity each : List.of(Quantity.scale(), Quantity.shape(), Quantity.life(failed), Quantity.survival(time), Quantity.mean())) {
            Bounds near = fit.bounds(each, confidence, method);
            Bounds wide = fit.bounds(each, confidence + 0.09, method);
            String what = each + " " + near + " " + wide + " " + data;
            assertTrue(near.lower() <= near.estimate() && near.estimate() <= near.upper(), what);
            // Rounding where a bound is the end of what numbers hold.
            assertTrue(wide.lower() <= near.lower() * (1 + 1e-12) && near.upper() <= wide.upper() * (1 + 1e-12), what);
        }
    }

    @Property(tries = 200)
    void likelihoodRatioBoundsAreAsLikelyAsTheConfidenceSays(@ForAll("tests") LifeData data, @ForAll Family family,
            @ForAll @Scale(4) @DoubleRange(min = 0.001, max = 0.95) double failed) {
        LifeFit fit = fit(data, family);
        Bounds life = fit.bounds(Quantity.life(failed), 0.9, Bounds.Method.LIKELIHOOD_RATIO);
        for (double end : new double[] {life.lower(), life.upper()}) {
            if (end > 1e-300 && end < 1e300) {
                Bounds survival = fit.bounds(Quantity.survival(end), 0.9, Bounds.Method.LIKELIHOOD_RATIO);
                double asked = 1 - failed;
                assertEquals(asked, end == life.lower() ? survival.lower() : survival.upper(), 1e-6, life + " " + survival + " " + data);
            }
        }
    }

    @Property(tries = 100)
    void moreFailedMeansLater(@ForAll("tests") LifeData data, @ForAll Family family) {
        LifeFit fit = fit(data, family);
        for (Bounds.Method method : Bounds.Method.values()) {
            Bounds ten = fit.bounds(Quantity.life(0.1), 0.9, method);
            Bounds half = fit.bounds(Quantity.life(0.5), 0.9, method);
            assertTrue(ten.estimate() < half.estimate() || half.estimate() == 0);
            near(fit.distribution().life(0.1), ten.estimate(), 1e-9);
            if (method == Bounds.Method.LIKELIHOOD_RATIO) {
                assertTrue(ten.lower() <= half.lower() && ten.upper() <= half.upper(), ten + " " + half + " " + data);
            }
        }
    }
}
