package tramontane.acoustics.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tramontane.acoustics.Emission;
import tramontane.model.AirMover;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.Weighting;

/** How quiet a source is at least over a range of speeds and flows, band by band: no level that it gives there is below. */
final class LeastSound {

    /** Thirds between speeds at which tones, and sounds of two speeds, are looked at. */
    private static final double FINE = 0.125;
    /** Flows at which the rise off the best point is looked at. */
    private static final int FLOWS = 6;
    /** Of those that share a flow unevenly: the largest flow backwards that is looked at, over that of the best point. */
    private static final double BACKWARDS = 0.25;
    private static final int SHARES = 32;
    /** How much lower the envelope may be than is found by so many flows, as a share. */
    private static final double COARSE = 0.02;

    private final SoundSource source;

    LeastSound(SoundSource source) {
        this.source = source;
    }

    /**
     * Within which a mover works.
     *
     * @param slowest rad/s, positive
     * @param fastest rad/s, no less
     * @param least   flow over speed, m³/s per rad/s
     * @param most    flow over speed, no less; may be infinite
     * @param mean    whether the flows are the means of several alike that may share them unevenly; what is least then holds for the
     *                mean of their powers
     */
    record Range(double slowest, double fastest, double least, double most, boolean mean) {
    }

    /**
     * What its weighted power is at least, wherever in a range it works: of noise and tones, each third by its weight. Between two
     * speeds at which shares of bands change, powers go up with the speed by the sound law, and what the bands weigh is linear, or a
     * ratio of two that are: so no more than both ends of each such piece need be looked at.
     *
     * @param density   of the air, kg/m³
     * @param obstacles what stands near it
     * @param weights   rows of weights of the thirds
     * @return for each row; 0 where nothing can be said
     */
    double[] of(Range range, double density, SoundSource.Obstacles obstacles, double[][] weights) {
        double thin = 20 * Math.log10(density / SoundSource.STANDARD_DENSITY);
        double noise = Levels.power(thin + obstacles.noise(source.diameter()));
        double tone = Levels.power(thin + obstacles.tone(source.diameter()));
        double[] least = new double[weights.length];
        Arrays.fill(least, Double.POSITIVE_INFINITY);
        List<Softest> softest = source.groups().stream().map(group -> softest(group, range)).toList();
        for (int upper = 0; upper <= source.groups().size(); upper++) {
            double from = Math.max(range.slowest(), upper == 0 ? 0 : source.groups().get(upper - 1).speed());
            double to = Math.min(range.fastest(), upper == source.groups().size() ? Double.POSITIVE_INFINITY : source.groups().get(upper).speed());
            if (from > to || from == to && from < range.fastest()) {
                continue;
            }
            Softest low = softest.get(Math.max(0, upper - 1));
            Softest high = softest.get(Math.min(source.groups().size() - 1, upper));
            double fine = low == high && low.tones().isEmpty() ? 1 : FINE;
            double speed = from;
            do {
                // where shares of bands change: whole thirds from either group's speed, and some between
                double next = Math.min(to, Math.min(low.next(speed, fine), high.next(speed, fine)));
                piece(low, high, speed, next, noise, tone, weights, least);
                speed = next;
            } while (speed < to);
        }
        return least;
    }

    private void piece(Softest low, Softest high, double from, double to, double noise, double tone, double[][] weights, double[] least) {
        double growth = Levels.power(source.exponent() * Math.log10(from / low.speed()));
        if (low == high) {
            double[] one = low.noise(from);
            double[] other = low.noise(to);
            double dip = low.assumedShape() ? Softest.DIP : 1;
            for (int row = 0; row < least.length; row++) {
                double sum = noise * growth * dip * Math.min(sum(one, weights[row]), sum(other, weights[row]));
                for (Emission.Tone each : low.tones()) {
                    sum += (each.order() > 0 ? tone * growth : 1) * each.power() * weight(weights[row], low.frequency(each, from), low.frequency(each, to));
                }
                least[row] = Math.min(least[row], sum);
            }
            return;
        }
        double above = Levels.power(source.exponent() * Math.log10(from / high.speed()));
        double whole = Math.log(high.speed() / low.speed());
        double first = Math.log(from / low.speed()) / whole;
        double last = Math.log(to / low.speed()) / whole;
        double[] one = low.least(from, to);
        double[] other = high.least(from, to);
        double[] mixed = new double[one.length];
        for (int i = 0; i < mixed.length; i++) {
            mixed[i] = least(growth * one[i], above * other[i], first, last);
        }
        for (int row = 0; row < least.length; row++) {
            double sum = noise * sum(mixed, weights[row]);
            for (Emission.Tone each : low.tones()) {
                double there = high.tones().stream().filter(tone2 -> SoundSource.like(each, tone2)).mapToDouble(Emission.Tone::power).findFirst().orElse(0);
                boolean follows = each.order() > 0;
                double below = (follows ? growth : 1) * each.power();
                double beyond = (follows ? above : 1) * there;
                sum += (follows ? tone : 1) * least(below, beyond, first, last)
                        * weight(weights[row], low.frequency(each, from), low.frequency(each, to));
            }
            least[row] = Math.min(least[row], sum);
        }
    }

    private static double sum(double[] powers, double[] weights) {
        double sum = 0;
        for (int i = 0; i < powers.length; i++) {
            sum += powers[i] * weights[i];
        }
        return sum;
    }

    private static double[] smaller(double[] one, double[] other) {
        double[] smaller = one.clone();
        for (int i = 0; i < smaller.length; i++) {
            smaller[i] = Math.min(one[i], other[i]);
        }
        return smaller;
    }

    /**
     * By how much the mean power of several alike rises at least off the best point, whatever the flows of each, from the mean of these
     * on: the convex envelope of the rise, as a factor.
     */
    private static double shared(Characteristic curve, double mean) {
        double from = -BACKWARDS * curve.best();
        double[] flow = new double[SHARES + 1];
        double[] power = new double[SHARES + 1];
        for (int i = 0; i <= SHARES; i++) {
            flow[i] = from + (curve.best() - from) * i / SHARES;
            power[i] = Levels.power(SoundSource.rise(curve, flow[i]));
        }
        double least = Double.POSITIVE_INFINITY;
        for (int left = 0; left < SHARES && flow[left] <= mean; left++) {
            for (int right = SHARES; right > left && flow[right] >= mean; right--) {
                double share = (mean - flow[left]) / (flow[right] - flow[left]);
                least = Math.min(least, power[left] + share * (power[right] - power[left]));
            }
        }
        return Math.max(1, least * (1 - COARSE));
    }

    /** The least weight between two frequencies; nothing beyond the bands. */
    private static double weight(double[] weights, double from, double to) {
        double least = Double.POSITIVE_INFINITY;
        for (int third = Bands.third(from); third <= Bands.third(to); third++) {
            least = Math.min(least, third < 0 || third >= weights.length ? 0 : weights[third]);
        }
        return least;
    }

    /**
     * A group at its softest over a range of flows, band by band and tone by tone.
     *
     * @param assumedShape whether its level follows the law and not its bands
     */
    private record Softest(double speed, Spectrum noise, List<Emission.Tone> tones, boolean assumedShape, AirMover part) {

        /**
         * Between speeds a third apart a band of the assumed shape may be softer than at both by this factor: its level is concave in lg n
         * with a curvature of 10 dB, which makes 10/8 · 0.1² dB.
         */
        private static final double HUMP = Levels.power(-0.013);
        /**
         * So may a sum of bands: beside that it is convex where bands apart in slope by up to 30 dB for a decade take turns, which makes
         * (ln 10)/10 · 15²/8 · 0.1² dB.
         */
        private static final double DIP = Levels.power(-0.08);

        double frequency(Emission.Tone tone, double at) {
            return tone.order() > 0 ? tone.frequency() * (at / speed) : tone.frequency();
        }

        double[] noise(double at) {
            return (assumedShape ? SoundSource.shape(part, at).times(noise.power(Weighting.A)) : noise.shifted(at / speed)).toArray();
        }

        /** The least in each band between two speeds no more than a third apart. */
        double[] least(double from, double to) {
            double[] least = smaller(noise(from), noise(to));
            if (assumedShape) {
                for (int i = 0; i < least.length; i++) {
                    least[i] *= HUMP;
                }
            }
            return least;
        }

        /** The next speed, so many thirds from its own. */
        double next(double from, double step) {
            double place = Math.floor(10 * Math.log10(from / speed) / step + 1e-6) + 1;
            return speed * Math.pow(10, place * step / 10);
        }
    }

    private Softest softest(SoundSource.Group group, Range range) {
        if (range.mean() && group.points().size() == 1 && group.curve().isPresent() && range.most() < group.curve().get().best()) {
            SoundSource.Known only = group.points().getFirst();
            double gain = shared(group.curve().get(), range.most()) * Levels.power(-SoundSource.rise(group.curve().get(), only.flow()));
            return new Softest(group.speed(), only.noise().times(gain), SoundSource.gained(only.tones(), Levels.of(gain)), only.assumedShape(), source.part());
        }
        double least = range.mean() ? 0 : range.least();
        double most = range.mean() ? Double.POSITIVE_INFINITY : range.most();
        List<Double> flows = new ArrayList<>(List.of(least, most));
        group.points().stream().map(SoundSource.Known::flow).filter(flow -> flow > least && flow < most).forEach(flows::add);
        group.curve().ifPresent(curve -> {
            for (int i = 1; i < FLOWS && least < curve.best(); i++) {
                flows.add(least + (Math.min(most, curve.best()) - least) * i / FLOWS);
            }
        });
        boolean assumed = group.points().stream().allMatch(SoundSource.Known::assumedShape);
        double[] noise = null;
        List<Emission.Tone> tones = List.of();
        for (double flow : flows) {
            SoundSource.At at = SoundSource.atFlow(group, flow);
            if (noise == null) {
                noise = at.noise().toArray();
                tones = at.tones();
                continue;
            }
            noise = smaller(noise, at.noise().toArray());
            tones = tones.stream().flatMap(tone -> at.tones().stream().filter(other -> SoundSource.like(tone, other)).limit(1).map(other -> new Emission.Tone(
                    tone.frequency(), Math.min(tone.power(), other.power()), tone.order()))).toList();
        }
        // several points with tones and a level alone: how noise and tones share it changes with the flow, of which nothing is said
        boolean unsaid = assumed && group.points().size() > 1 && group.points().stream().anyMatch(point -> !point.tones().isEmpty());
        return unsaid ? new Softest(group.speed(), Spectrum.SILENCE, List.of(), assumed, source.part()) : new Softest(group.speed(), Spectrum.of(noise), tones, assumed, source.part());
    }

    /** No mean of two between two weights is less; nothing where one may be nothing, as a mean with next to nothing is less than with none. */
    private static double least(double low, double high, double first, double last) {
        return low > 0 && high > 0 ? Math.min(SoundSource.mean(low, high, first), SoundSource.mean(low, high, last)) : 0;
    }
}
