package tramontane.acoustics.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tramontane.acoustics.Emission;
import tramontane.acoustics.MoverNoise;
import tramontane.model.AirMover;
import tramontane.model.Quantity;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.FanSpectrum;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.Weighting;

/**
 * A part as a source of sound at any speed, flow and density.
 *
 * <p>Measured levels are carried to another speed, size and density by the sound law of fans at like points of the curve (50 lg n, 70 lg
 * D, 20 lg ρ), their bands and tones moving with the speed; between speeds and flows that were measured levels are interpolated. Where
 * levels without bands are known, their noise but for the tones has the spectrum of the type of fan at the speed where it works (VDI
 * 2081: axial for axial and mixed-flow, blades curved forward for centrifugal and cross-flow), and its A-weighted level follows the law;
 * left of the best point it rises as the efficiency falls (ASHRAE). What does all this to noise does it to tones too, except to those of
 * fixed frequency, which are no work of the blades: they stay as loud as they were measured.
 *
 * <p>Data at free delivery may be too low in a box, by nothing from 90 % of the free flow up and by {@value #INSTALLED} dB from 70 %
 * down; any may be off beyond the flows that were measured, by nothing at the last of them and by 3 dB from a fifth beyond it. Both are
 * assumed, and rise steadily in between, so that no bound jumps where a flow changes a little.
 */
final class SoundSource {

    /** How much louder a mover is in a box than data at free delivery say: several dB; common practice. */
    static final double INSTALLED = 5;
    /** How far band levels of an assumed spectrum may be off, dB; a guess. */
    static final double SHAPE = 5;
    /** Of data at free delivery: part of the free flow from which they are used where they were measured; assumed. */
    private static final double NEARLY_FREE = 0.9;
    /** Part of the free flow up to which they may be off by all that they may be; assumed. */
    private static final double IN_A_BOX = 0.7;
    /** How far levels beyond the measured flows may be off, dB; a guess. */
    private static final double BEYOND = 3;
    /** How far beyond, as part of the last measured flow, they may be off by all of it; a guess. */
    private static final double FAR_BEYOND = 0.2;
    /** By how many lg of the speed an exponent may be off: 50 by the law, up to 60 as fitted. */
    private static final double EXPONENT = 10;
    private static final double HALF = 10 * Math.log10(2);
    private static final double SAME_SPEED = 1e-3;
    static final double STANDARD_DENSITY = 1.2;

    private final AirMover part;
    private final List<Group> groups;
    private final double exponent;
    private final double diameter;
    private final double even;

    /** A measurement in the part's own size, in standard air, tones apart. */
    record Known(double speed, double flow, Spectrum noise, List<Emission.Tone> tones, boolean assumedShape,
            boolean freeDelivery, boolean assumedField, boolean assumedSize, double tolerance, double size, double density, double stated, double conversion) {

        double level() {
            return whole(noise, tones).level(Weighting.A);
        }

        /** In a half-space the power would be half of what a free field gives. */
        double below() {
            return tolerance + (assumedField ? HALF : 0);
        }
    }

    /** Measurements at one speed, by flow. */
    record Group(double speed, List<Known> points, Optional<Characteristic> curve) {
    }

    private SoundSource(AirMover part, List<Group> groups, double exponent, double diameter, double even) {
        this.part = part;
        this.groups = List.copyOf(groups);
        this.exponent = exponent;
        this.diameter = diameter;
        this.even = even;
    }

    /**
     * A part as a source.
     *
     * @return empty where nothing usable is stated: no level, or no speed that it belongs to
     */
    static Optional<SoundSource> of(AirMover part, MoverNoise noise) {
        List<Known> known = new ArrayList<>();
        for (MoverNoise.Measurement measurement : noise.measurements()) {
            Optional<Double> speed = measurement.speed().or(part::ratedSpeedSi);
            speed.ifPresent(rated -> known.add(known(part, measurement, rated)));
        }
        if (known.isEmpty()) {
            return Optional.empty();
        }
        known.sort(Comparator.comparingDouble(Known::speed));
        List<Group> groups = new ArrayList<>();
        int from = 0;
        for (int to = 1; to <= known.size(); to++) {
            if (to == known.size() || known.get(to).speed() > known.get(from).speed() * (1 + SAME_SPEED)) {
                List<Known> points = known.subList(from, to).stream().sorted(Comparator.comparingDouble(Known::flow)).toList();
                groups.add(new Group(points.getFirst().speed(), points, Characteristic.of(part, points.getFirst().speed())));
                from = to;
            }
        }
        return Optional.of(new SoundSource(part, groups, noise.exponent(), size(part), Characteristic.even(part)));
    }

    /** Over its blades, or over the smaller side of its frame, m; NaN where neither is stated. */
    static double size(AirMover part) {
        return part.rotorDiameter().map(Quantity::si).orElseGet(() -> Math.min(part.width().map(Quantity::si).orElse(Double.NaN),
                part.height().map(Quantity::si).orElse(Double.NaN)));
    }

    private static Known known(AirMover part, MoverNoise.Measurement m, double speed) {
        Optional<Characteristic> curve = Characteristic.of(part, speed);
        // a frame in the place of a rotor would not do: that of a blower is far larger than its rotor, and 5 % are 1.5 dB
        double ratio = m.rotorDiameter().flatMap(measured -> part.rotorDiameter().map(own -> own.si() / measured)).orElse(1.0);
        double toPower = MoverNoiseSection.toPower(m);
        double size = 70 * Math.log10(ratio);
        double density = 20 * Math.log10(STANDARD_DENSITY / m.density());
        double gain = Levels.power(toPower + size + density);
        boolean shaped = m.bands().isEmpty();
        Spectrum bands = shaped ? shape(part, speed).gained(m.level().orElseThrow()) : MoverNoiseSection.spectrum(m);
        double stated = bands.level(Weighting.A);
        List<Emission.Tone> tones = new ArrayList<>();
        double[] noise = bands.toArray();
        Spectrum apart = Spectrum.SILENCE;
        for (MoverNoise.Tone tone : m.tones()) {
            double frequency = tone.frequency().orElseGet(() -> tone.order().orElseThrow() * speed / (2 * Math.PI));
            double order = tone.fixed() ? 0 : tone.order().orElse(frequency * 2 * Math.PI / speed);
            double power = Levels.power(tone.level());
            tones.add(new Emission.Tone(frequency, power * (order > 0 ? gain : Levels.power(toPower)), order));
            apart = apart.plus(frequency, power);
            if (!shaped) {
                takeOut(noise, frequency, power, m.octaves());
            }
        }
        // an assumed spectrum is one without tones: they are part of the A-weighted level, but of no band
        double toneless = shaped ? Math.max(0, 1 - apart.power(Weighting.A) / bands.power(Weighting.A)) : 1;
        double flow = m.flow().map(stands -> stands * ratio * ratio * ratio / speed).or(() -> curve.map(of ->
                m.place() == MoverNoise.Place.BEST_POINT ? of.best() : of.free())).orElse(0.0);
        boolean free = m.flow().isEmpty() ? m.place() == MoverNoise.Place.FREE_DELIVERY
                : curve.filter(of -> flow > NEARLY_FREE * of.free()).isPresent();
        return new Known(speed, flow, Spectrum.of(noise).times(gain * toneless), List.copyOf(tones), shaped, free,
                m.distance().filter(from -> from.field().isEmpty()).isPresent(),
                m.rotorDiameter().isPresent() && part.rotorDiameter().isEmpty(), m.tolerance(), size, density, stated,
                toPower);
    }

    /** The bands include the tones; what they leave is noise. */
    private static void takeOut(double[] noise, double frequency, double power, boolean octaves) {
        int third = Bands.third(frequency);
        if (third < 0 || third >= Bands.THIRDS) {
            return;
        }
        int from = octaves ? third / 3 * 3 : third;
        int to = octaves ? from + 3 : third + 1;
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += noise[i];
        }
        double left = sum > 0 ? Math.max(0, 1 - power / sum) : 0;
        for (int i = from; i < to; i++) {
            noise[i] *= left;
        }
    }

    /** The spectrum of its type of fan, its A-weighted level 0 dB. */
    static Spectrum shape(AirMover part, double speed) {
        Spectrum shape = FanSpectrum.of(speed, switch (part.type().orElse("")) {
            case "centrifugal", "cross-flow" -> FanSpectrum.FORWARD_CURVED;
            default -> FanSpectrum.AXIAL;
        });
        return shape.gained(-shape.level(Weighting.A));
    }

    /** What changes the noise of the blades changes tones that follow the speed. */
    static List<Emission.Tone> gained(List<Emission.Tone> tones, double gain) {
        double factor = Levels.power(gain);
        return tones.stream().map(tone -> tone.order() > 0 ? new Emission.Tone(tone.frequency(), tone.power() * factor, tone.order()) : tone)
                .toList();
    }

    private static Spectrum whole(Spectrum noise, List<Emission.Tone> tones) {
        Spectrum sum = noise;
        for (Emission.Tone tone : tones) {
            sum = sum.plus(tone.frequency(), tone.power());
        }
        return sum;
    }

    AirMover part() {
        return part;
    }

    /** What was measured, from the lowest speed up. */
    List<Group> groups() {
        return groups;
    }

    /** By how many lg of the speed its level rises beyond the speeds that were measured. */
    double exponent() {
        return exponent;
    }

    /** By which obstacles are near, m; NaN where not known. */
    double diameter() {
        return diameter;
    }

    /** Flow over speed from which on like ones side by side share a flow evenly, m³/s per rad/s. */
    double even() {
        return even;
    }

    /** What has been computed of one group, to be carried on. */
    record At(Spectrum noise, List<Emission.Tone> tones, double flowGain, double below, double above, Set<Emission.Assumed> assumed,
            Known nearest) {
    }

    /**
     * Its sound where it works.
     *
     * @param speed     rad/s, positive
     * @param flow      m³/s
     * @param density   of the air, kg/m³
     * @param obstacles what stands near it
     */
    Emission at(double speed, double flow, double density, Obstacles obstacles) {
        int upper = 0;
        while (upper < groups.size() && groups.get(upper).speed() < speed) {
            upper++;
        }
        At at;
        if (upper == 0 || upper == groups.size()) {
            at = carried(groups.get(Math.min(upper, groups.size() - 1)), speed, flow, true);
        } else {
            Group low = groups.get(upper - 1);
            Group high = groups.get(upper);
            double weight = Math.log(speed / low.speed()) / Math.log(high.speed() / low.speed());
            at = between(carried(low, speed, flow, false), carried(high, speed, flow, false), weight);
        }
        double thin = 20 * Math.log10(density / STANDARD_DENSITY);
        double near = obstacles.noise(diameter);
        Spectrum noise = at.noise().gained(thin + near);
        List<Emission.Tone> tones = gained(at.tones(), thin + obstacles.tone(diameter)).stream()
                .sorted(Comparator.comparingDouble(Emission.Tone::frequency)).toList();
        Set<Emission.Assumed> assumed = EnumSet.noneOf(Emission.Assumed.class);
        assumed.addAll(at.assumed());
        if (near > 0) {
            assumed.add(Emission.Assumed.OBSTACLE);
        }
        if (Double.isNaN(diameter) && Math.min(obstacles.inlet(), obstacles.outlet()) < Double.POSITIVE_INFINITY) {
            assumed.add(Emission.Assumed.OBSTACLE_SIZE);
        }
        Known nearest = at.nearest();
        double level = whole(noise, tones).level(Weighting.A);
        double heard = level - whole(noise.gained(-near), gained(at.tones(), thin)).level(Weighting.A);
        Emission.Terms terms = new Emission.Terms(nearest.stated(), nearest.conversion(), level - nearest.stated()
                - nearest.conversion() - nearest.size() - nearest.density() - thin
                - at.flowGain() - heard, nearest.size(), nearest.density() + thin, at.flowGain(), heard);
        return new Emission(noise, tones, terms, at.below() + near / 2, at.above() + near / 2, assumed);
    }

    /** A group at another speed by the sound law, at a flow. */
    private At carried(Group group, double speed, double flow, boolean beyondMeasured) {
        At here = atFlow(group, flow / speed);
        double ratio = speed / group.speed();
        double beyond = beyondMeasured ? Math.abs(Math.log10(ratio)) * EXPONENT : 0;
        double gain = exponent * Math.log10(ratio);
        List<Emission.Tone> tones = gained(here.tones(), gain).stream().map(tone -> tone.order() > 0
                ? new Emission.Tone(tone.frequency() * ratio, tone.power(), tone.order()) : tone).toList();
        // the law is for what is stated, and of an assumed spectrum that is the A-weighted level
        Spectrum noise = group.points().stream().allMatch(Known::assumedShape) ? shape(part, speed).gained(here.noise().level(Weighting.A) + gain)
                : here.noise().shifted(ratio).gained(gain);
        Set<Emission.Assumed> assumed = EnumSet.noneOf(Emission.Assumed.class);
        assumed.addAll(here.assumed());
        if (beyondMeasured && Math.abs(ratio - 1) > SAME_SPEED) {
            assumed.add(Emission.Assumed.SPEED);
        }
        return new At(noise, tones, here.flowGain(), here.below() + beyond, here.above() + beyond, assumed, here.nearest());
    }

    /** A group at its own speed, at a flow coefficient. */
    static At atFlow(Group group, double flow) {
        List<Known> points = group.points();
        int upper = 0;
        while (upper < points.size() && points.get(upper).flow() < flow) {
            upper++;
        }
        if (upper > 0 && upper < points.size()) {
            Known low = points.get(upper - 1);
            Known high = points.get(upper);
            At below = new At(low.noise(), low.tones(), 0, low.below(), low.tolerance(), stated(low), low);
            At above = new At(high.noise(), high.tones(), 0, high.below(), high.tolerance(), stated(high), high);
            double weight = (flow - low.flow()) / (high.flow() - low.flow());
            At mixed = between(below, above, weight);
            double gain = whole(mixed.noise(), mixed.tones()).level(Weighting.A) - mixed.nearest().level();
            return new At(mixed.noise(), mixed.tones(), gain, mixed.below(), mixed.above(), mixed.assumed(), mixed.nearest());
        }
        Known end = points.get(Math.min(upper, points.size() - 1));
        Set<Emission.Assumed> assumed = stated(end);
        double gain = group.curve().map(curve -> rise(curve, flow) - rise(curve, end.flow())).orElse(0.0);
        double below = end.below() + Math.abs(gain) / 2;
        double above = end.tolerance() + Math.abs(gain) / 2;
        if (gain != 0) {
            assumed.add(Emission.Assumed.EFFICIENCY);
        }
        double boxed = end.freeDelivery() ? group.curve().filter(curve -> curve.free() > 0).map(curve ->
                Math.clamp((NEARLY_FREE - flow / curve.free()) / (NEARLY_FREE - IN_A_BOX), 0, 1)).orElse(0.0) : 0;
        if (boxed > 0) {
            assumed.add(Emission.Assumed.FREE_DELIVERY);
        }
        double away = points.size() > 1 && Math.abs(flow - end.flow()) > 1e-6 * end.flow()
                ? Math.min(1, Math.abs(flow - end.flow()) / (FAR_BEYOND * end.flow())) : 0;
        if (away > 0) {
            assumed.add(Emission.Assumed.FLOW);
        }
        below += away * BEYOND;
        above += Math.max(away * BEYOND, Math.max(0, boxed * INSTALLED - gain));
        return new At(end.noise().gained(gain), gained(end.tones(), gain), gain, below, above, assumed, end);
    }

    private static Set<Emission.Assumed> stated(Known known) {
        Set<Emission.Assumed> assumed = EnumSet.noneOf(Emission.Assumed.class);
        if (known.assumedField()) {
            assumed.add(Emission.Assumed.FREE_FIELD);
        }
        if (known.assumedShape()) {
            assumed.add(Emission.Assumed.SPECTRUM);
        }
        if (known.assumedSize()) {
            assumed.add(Emission.Assumed.SIZE);
        }
        return assumed;
    }

    /** Left of the best point levels rise; from there to free delivery they hardly change (common practice). */
    static double rise(Characteristic curve, double flow) {
        return flow >= curve.best() ? 0 : FanSpectrum.offPeak(curve.efficiency(flow));
    }

    /** Between two sounds in decibels, band by band and tone by tone. */
    private static At between(At low, At high, double weight) {
        double[] noise = new double[Bands.THIRDS];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = mean(low.noise().power(i), high.noise().power(i), weight);
        }
        List<Emission.Tone> tones = new ArrayList<>();
        for (Emission.Tone tone : low.tones()) {
            Optional<Emission.Tone> other = high.tones().stream().filter(each -> like(tone, each)).findFirst();
            tones.add(new Emission.Tone(tone.frequency(), mean(tone.power(), other.map(Emission.Tone::power).orElse(0.0), weight), tone.order()));
        }
        for (Emission.Tone tone : high.tones()) {
            if (low.tones().stream().noneMatch(each -> like(tone, each))) {
                tones.add(new Emission.Tone(tone.frequency(), tone.power() * weight, tone.order()));
            }
        }
        Set<Emission.Assumed> assumed = EnumSet.noneOf(Emission.Assumed.class);
        assumed.addAll(low.assumed());
        assumed.addAll(high.assumed());
        return new At(Spectrum.of(noise), tones, low.flowGain() + weight * (high.flowGain() - low.flowGain()),
                low.below() + weight * (high.below() - low.below()), low.above() + weight * (high.above() - low.above()), assumed,
                weight < 0.5 ? low.nearest() : high.nearest());
    }

    static boolean like(Emission.Tone one, Emission.Tone other) {
        return one.order() > 0 ? Math.abs(one.order() - other.order()) < 0.01 * one.order()
                : other.order() == 0 && Math.abs(one.frequency() - other.frequency()) < 0.01 * one.frequency();
    }

    /** Geometric, as levels are read; where one is nothing, by power. */
    static double mean(double low, double high, double weight) {
        return low > 0 && high > 0 ? Math.exp((1 - weight) * Math.log(low) + weight * Math.log(high)) : (1 - weight) * low + weight * high;
    }

    /**
     * What stands near a rotor: up to 5 dB on the noise and 10 dB on tones by one in front of it, half as much by one behind, falling
     * to nothing at one diameter. Common practice, figures from memory; half of it is counted as uncertain.
     *
     * @param inlet  free distance in front, m; infinite where nothing is stated
     * @param outlet free distance behind, m
     */
    record Obstacles(double inlet, double outlet) {

        static final Obstacles NONE = new Obstacles(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
        private static final double NOISE = 5;
        private static final double TONE = 10;

        double noise(double diameter) {
            return NOISE * (near(inlet, diameter) + near(outlet, diameter) / 2);
        }

        double tone(double diameter) {
            return TONE * (near(inlet, diameter) + near(outlet, diameter) / 2);
        }

        private static double near(double distance, double diameter) {
            return diameter > 0 ? Math.max(0, 1 - distance / diameter) : 0;
        }
    }
}
