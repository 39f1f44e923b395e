package tramontane.physics.sound;

import static tramontane.physics.sound.Inputs.positive;

import tramontane.physics.MonotoneCurve;

/**
 * How the sound power of a fan is spread over frequency when nothing but its type and speed is known, and how much louder it is
 * away from its best point.
 *
 * <p>Shape: VDI 2081-1:2019, equations 20 and 21: ΔL = −5 − 5 (lg St + C)², St = 60 f/(π n) with n in 1/min, level of an octave less
 * that of all; the form is quoted second-hand, the constants C are from memory. Broad-band noise of fans built into ducts, at the best
 * point; without the tones of the blades. As written, the octaves together come to 2.4 dB more than the whole; here they are scaled to
 * the whole. Small axial fans are outside what it was fitted to: take it as a first guess until a measured spectrum is there.
 */
public final class FanSpectrum {

    /** C of centrifugal fans with blades curved backward; from memory. */
    public static final double BACKWARD_CURVED = 0.4;
    /** C of centrifugal fans with blades curved forward; from memory. */
    public static final double FORWARD_CURVED = 0.15;
    /** C of axial fans with guide vanes; from memory. */
    public static final double AXIAL = -0.3;

    /** Middles of the steps of static efficiency over its peak, and what each adds; the first keeps it level below. */
    private static final MonotoneCurve OFF_PEAK = MonotoneCurve.of(new double[] {0, 0.52, 0.595, 0.695, 0.795, 0.87, 0.95, 1},
            new double[] {15, 15, 12, 9, 6, 3, 0, 0});

    private FanSpectrum() {
    }

    /**
     * Part of the sound power in each third-octave, all together 1: the parabola of the octaves at the middles of the thirds.
     *
     * @param speed rad/s, positive
     * @param type  the constant C: {@link #BACKWARD_CURVED}, {@link #FORWARD_CURVED}, {@link #AXIAL} or another
     */
    public static Spectrum of(double speed, double type) {
        positive("speed", speed);
        if (!Double.isFinite(type)) {
            throw new IllegalArgumentException("constant of the type of fan must be finite, got " + type);
        }
        double[] levels = new double[Bands.THIRDS];
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < levels.length; i++) {
            levels[i] = octaveLevel(Bands.middle(i), speed, type);
            most = Math.max(most, levels[i]);
        }
        double sum = 0;
        for (int i = 0; i < levels.length; i++) {
            levels[i] = Levels.power(levels[i] - most);
            sum += levels[i];
        }
        for (int i = 0; i < levels.length; i++) {
            levels[i] /= sum;
        }
        return Spectrum.of(levels);
    }

    /**
     * Level of an octave less that of all as the source has it, not scaled to the whole: −5 − 5 (lg St + C)², dB, St = 2f/ω.
     *
     * @param frequency middle of the octave, Hz, positive
     * @param speed     ω, rad/s, positive
     * @param type      the constant C
     */
    static double octaveLevel(double frequency, double speed, double type) {
        double from = Math.log10(2 * frequency / speed) + type;
        return -5 - 5 * from * from;
    }

    /**
     * By how much a fan is louder than the law of its specific level says, since it does not work at its best efficiency: 0 at the
     * peak, up to 15 dB.
     *
     * <p>Through the middles of the steps in handbooks (ASHRAE, HVAC Applications, chapter on noise; from memory): 90 to 100 % of the
     * peak 0 dB, 85 to 89 % 3, 75 to 84 % 6, 65 to 74 % 9, 55 to 64 % 12, 50 to 54 % 15; level below, where it only says "at least".
     *
     * @param ratio static efficiency over its peak, 0 to 1; what is beyond counts as the end
     * @return dB
     */
    public static double offPeak(double ratio) {
        if (Double.isNaN(ratio)) {
            throw new IllegalArgumentException("the ratio of efficiencies is not a number");
        }
        return OFF_PEAK.value(Math.clamp(ratio, 0, 1));
    }
}
