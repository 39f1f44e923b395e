package tramontane.invented;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.model.AirMover;
import tramontane.model.MoverCurve;
import tramontane.physics.FanLaws;
import tramontane.physics.FanNoise;
import tramontane.physics.MonotoneCurve;

/** What everybody in the trade expects of a catalogue holds in the generated one. Common practice, from memory; figures are printed. */
class CommonPracticeTest {

    /** A mover on its falling branch at its rated speed. */
    private record Running(AirMover mover, double diameter, double speed, MonotoneCurve curve, double peakFlow, double level) {

        static Running of(AirMover mover) {
            MoverCurve curve = mover.curves().getFirst();
            MonotoneCurve smooth = MonotoneCurve.of(curve.flow().toArray(), curve.pressure().toArray());
            double peak = smooth.extrema().stream().filter(MonotoneCurve.Extremum::peak)
                    .mapToDouble(MonotoneCurve.Extremum::x).max().orElse(0);
            return new Running(mover, mover.rotorDiameter().orElseThrow().si(), curve.speed().orElseThrow().si(), smooth, peak,
                    InventedCatalogueTest.soundPower(mover));
        }

        /** Flow on the falling branch at a pressure. */
        double flowAt(double pressure) {
            double low = peakFlow;
            double high = curve.lastX();
            for (int i = 0; i < 60; i++) {
                double middle = (low + high) / 2;
                if (curve.value(middle) > pressure) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            return low;
        }

        /** Speed over the rated one at which it just delivers, right of its peak; empty where it cannot. */
        Optional<Double> slowedTo(double flow, double pressure) {
            double low = flow / curve.lastX();
            double high = peakFlow > 0 ? Math.min(1, flow / peakFlow) : 1;
            if (low > high || at(high, flow) < pressure) {
                return Optional.empty();
            }
            for (int i = 0; i < 60; i++) {
                double middle = (low + high) / 2;
                if (at(middle, flow) < pressure) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            return Optional.of(high);
        }

        private double at(double speed, double flow) {
            return curve.value(flow / FanLaws.flowRatio(speed, 1)) * FanLaws.pressureRatio(speed, 1, 1);
        }
    }

    /** Of all pairs that can do a duty, those whose larger mover is the quieter one, by ratio of diameters. */
    private record Pairs(int[] all, int[] quieter) {

        double share() {
            return (double) Arrays.stream(quieter).sum() / Arrays.stream(all).sum();
        }
    }

    private static final double[] RATIOS = {1, 1.1, 1.25, 1.5, 2, 100};

    /**
     * Compares every axial mover at its rated speed with every larger one that is slowed down to the same flow and pressure and is then
     * the slower one.
     *
     * @param share of its highest pressure that the smaller one works at, right of its peak
     */
    private static Pairs pairs(List<Running> axial, double share) {
        Pairs pairs = new Pairs(new int[RATIOS.length - 1], new int[RATIOS.length - 1]);
        for (Running small : axial) {
            double pressure = share * Arrays.stream(small.mover().curves().getFirst().pressure().toArray()).max().orElseThrow();
            double flow = small.flowAt(pressure);
            for (Running large : axial) {
                Optional<Double> slowed = large.diameter() <= small.diameter() ? Optional.empty()
                        : large.slowedTo(flow, pressure).filter(ratio -> ratio * large.speed() < small.speed());
                if (slowed.isPresent()) {
                    int bin = 0;
                    while (large.diameter() / small.diameter() > RATIOS[bin + 1]) {
                        bin++;
                    }
                    pairs.all()[bin]++;
                    pairs.quieter()[bin] += large.level() + FanNoise.difference(slowed.get(), 1, 1) < small.level() ? 1 : 0;
                }
            }
        }
        return pairs;
    }

    /** Common practice: at low resistance the larger and slower fan is the quieter one. */
    @ParameterizedTest
    @ValueSource(doubles = {0.02, 0.1, 0.2})
    void theLargerSlowerAxialIsQuieterAtLowResistance(double low) {
        Pairs pairs = pairs(InventedCatalogue.parts(800, InventedCatalogue.SEED).stream()
                .filter(mover -> mover.type().equals(Optional.of("axial"))).map(Running::of).toList(), low);
        int all = Arrays.stream(pairs.all()).sum();
        System.out.printf("at %.0f %% of its highest pressure: larger and slower axial is quieter in %.1f %% of %d pairs%n", 100 * low,
                100 * pairs.share(), all);
        for (int i = 0; i < pairs.all().length; i++) {
            System.out.printf("  diameter %.2f to %.2f times: %.1f %% of %d%n", RATIOS[i], RATIOS[i + 1],
                    100.0 * pairs.quieter()[i] / pairs.all()[i], pairs.all()[i]);
        }
        assertTrue(all > 10_000, all + " pairs");
        assertTrue(pairs.share() >= 0.9, "quieter in " + pairs.share());
        assertTrue(pairs.share() < 1, "scatter of families and makers leaves exceptions");
    }

    /** Speed number σ = φ^½ / ψ^¾ of the point with the most power in the air, on static pressure. */
    private static double specificSpeed(AirMover mover) {
        MoverCurve curve = mover.curves().getFirst();
        double diameter = mover.rotorDiameter().orElseThrow().si();
        double tip = curve.speed().orElseThrow().si() * diameter / 2;
        double[] flow = curve.flow().toArray();
        double[] pressure = curve.pressure().toArray();
        int best = 0;
        for (int i = 1; i < flow.length; i++) {
            best = flow[i] * pressure[i] > flow[best] * pressure[best] ? i : best;
        }
        return Math.sqrt(flow[best] / (Math.PI / 4 * diameter * diameter * tip))
                / Math.pow(pressure[best] / (1.2 / 2 * tip * tip), 0.75);
    }

    /**
     * Order and ranges of the Cordier diagram: axial 0.8 to 3, mixed 0.4 to 1.0, centrifugal 0.1 to 0.7 (O. Cordier, 1953, as shown by
     * Eck and Carolus; read from memory). The cross-flow rotor has no place in it.
     */
    @Test
    void specificSpeedsFollowTheHandbookOrder() {
        DoubleSummaryStatistics axial = speeds("axial");
        DoubleSummaryStatistics mixed = speeds("mixed-flow");
        DoubleSummaryStatistics centrifugal = speeds("centrifugal");
        System.out.printf("specific speed: axial %.2f to %.2f, mixed-flow %.2f to %.2f, centrifugal %.2f to %.2f%n", axial.getMin(),
                axial.getMax(), mixed.getMin(), mixed.getMax(), centrifugal.getMin(), centrifugal.getMax());
        assertTrue(axial.getMin() > mixed.getMax(), "every axial above every mixed-flow one");
        assertTrue(mixed.getMin() > centrifugal.getMax(), "every mixed-flow one above every centrifugal one");
        within(axial, 0.8, 3);
        within(mixed, 0.4, 1.0);
        within(centrifugal, 0.1, 0.7);
    }

    private static void within(DoubleSummaryStatistics speeds, double least, double most) {
        assertTrue(speeds.getCount() > 100 && speeds.getMin() >= least && speeds.getMax() <= most, speeds.toString());
    }

    private static DoubleSummaryStatistics speeds(String type) {
        return InventedCatalogue.parts(2000, InventedCatalogue.SEED).stream().filter(mover -> mover.type().equals(Optional.of(type)))
                .mapToDouble(CommonPracticeTest::specificSpeed).summaryStatistics();
    }

    /** Common practice: small ones turn faster and waste more. */
    @Test
    void smallOnesTurnFasterAndWasteMore() {
        List<AirMover> axial = InventedCatalogue.parts(2000, InventedCatalogue.SEED).stream()
                .filter(mover -> mover.type().equals(Optional.of("axial"))).toList();
        int[] borders = {0, 22, 45, 85, 150, 500};
        List<Double> speeds = new ArrayList<>();
        List<Double> efficiencies = new ArrayList<>();
        for (int i = 1; i < borders.length; i++) {
            double least = borders[i - 1] / 1000.0;
            double most = borders[i] / 1000.0;
            List<AirMover> size = axial.stream().filter(mover -> mover.width().orElseThrow().si() > least
                    && mover.width().orElseThrow().si() <= most).toList();
            speeds.add(median(size.stream().mapToDouble(mover -> mover.ratedSpeedSi().orElseThrow() * 30 / Math.PI).toArray()));
            efficiencies.add(median(size.stream().mapToDouble(InventedCatalogueTest::bestEfficiency).toArray()));
            System.out.printf("axial %d to %d mm: %.0f rpm, static efficiency %.3f (medians of %d)%n", borders[i - 1], borders[i],
                    speeds.getLast(), efficiencies.getLast(), size.size());
        }
        for (int i = 1; i < speeds.size(); i++) {
            assertTrue(speeds.get(i) < speeds.get(i - 1), "speeds " + speeds);
            assertTrue(efficiencies.get(i) > efficiencies.get(i - 1), "efficiencies " + efficiencies);
        }
    }

    private static double median(double[] values) {
        Arrays.sort(values);
        return values[values.length / 2];
    }

    /** The levels of one family follow 50 to 58 lg of speed, as written with half a decibel, where bearings are not heard. */
    @Test
    void noiseOfGradesFollowsTheirSpeeds() {
        int pairs = 0;
        List<AirMover> parts = InventedCatalogue.parts(500, InventedCatalogue.SEED);
        for (int i = 1; i < parts.size(); i++) {
            AirMover slow = parts.get(i - 1);
            AirMover fast = parts.get(i);
            double ratio = fast.ratedSpeedSi().orElseThrow() / slow.ratedSpeedSi().orElseThrow();
            if (slow.datasheet().family().equals(fast.datasheet().family()) && slow.width().equals(fast.width())
                    && slow.depth().equals(fast.depth()) && ratio > 1.2 && InventedCatalogueTest.soundPower(slow) > 30) {
                double exponent = (InventedCatalogueTest.soundPower(fast) - InventedCatalogueTest.soundPower(slow)) / Math.log10(ratio);
                // half a decibel of rounding, and 4 % of scatter in each of flow and pressure, over the ratio
                assertEquals(54, exponent, 4 + 1.1 / Math.log10(ratio), fast.id());
                pairs++;
            }
        }
        assertTrue(pairs > 50, pairs + " pairs");
    }
}
