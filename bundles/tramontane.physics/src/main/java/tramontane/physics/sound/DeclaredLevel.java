package tramontane.physics.sound;

/**
 * What a maker declares of a series of machines: the mean A-weighted sound power level of a sample, and by how much a level may lie
 * above it before the declaration is taken to be wrong.
 *
 * <p>ISO 9296:2017 and ECMA-109 (information technology), after ISO 4871; formulas from memory. L_WA,c = L_WA,m + Kv,
 * Kv = 1.514 st + 0.564 (σM − st) = 0.95 st + 0.564 σM, st = √(sR² + sP²). With it 95 % of the series is accepted by a sample of
 * three: 1.514 = 1.645/√3 + 0.564. All means are means of levels, not of powers.
 *
 * @param mean  L_WA,m, dB re 1 pW
 * @param adder Kv, dB, not negative
 */
public record DeclaredLevel(double mean, double adder) {

    /** Reference standard deviation σM of this class of machines, dB. */
    public static final double REFERENCE_DEVIATION = 2.0;

    private static final double FOR_TOTAL = 0.95;
    private static final double FOR_REFERENCE = 0.564;

    /** Refuses what is no level. */
    public DeclaredLevel {
        if (!Double.isFinite(mean) || !(adder >= 0 && adder < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("declared level " + mean + " must be finite, adder " + adder + " not negative");
        }
    }

    /**
     * Kv = 0.95 √(sR² + sP²) + 0.564 σM, dB.
     *
     * @param reproducibility standard deviation sR of the method, dB, not negative: 1.5 for ISO 7779
     * @param production      standard deviation sP of the series, dB, not negative
     */
    public static double adder(double reproducibility, double production) {
        if (!(reproducibility >= 0 && production >= 0)) {
            throw new IllegalArgumentException("standard deviations must not be negative, got " + reproducibility + " and " + production);
        }
        return FOR_TOTAL * Math.hypot(reproducibility, production) + FOR_REFERENCE * REFERENCE_DEVIATION;
    }

    /**
     * What to declare after measuring a sample.
     *
     * @param levels          A-weighted sound power levels of two machines or more, dB re 1 pW
     * @param reproducibility standard deviation sR of the method, dB
     */
    public static DeclaredLevel ofSample(double[] levels, double reproducibility) {
        if (levels.length < 2) {
            throw new IllegalArgumentException("the spread of a series needs two levels or more, got " + levels.length);
        }
        double mean = mean(levels);
        double squares = 0;
        for (double level : levels) {
            squares += (level - mean) * (level - mean);
        }
        return new DeclaredLevel(mean, adder(reproducibility, Math.sqrt(squares / (levels.length - 1))));
    }

    /** @return statistical upper limit L_WA,c, dB re 1 pW */
    public double limit() {
        return mean + adder;
    }

    /** @return the upper limit as it is written on a data sheet: in bels, rounded to a tenth */
    public double limitInBels() {
        return Math.round(limit()) / 10.0;
    }

    /**
     * Whether a batch agrees with what was declared: its mean is at most L_WA,c − 0.564 σM.
     *
     * @param levels A-weighted sound power levels of three machines of it, dB re 1 pW; for other numbers the factor is another
     */
    public boolean accepts(double[] levels) {
        if (levels.length != 3) {
            throw new IllegalArgumentException("a batch is judged by three machines, got " + levels.length);
        }
        return mean(levels) <= limit() - FOR_REFERENCE * REFERENCE_DEVIATION;
    }

    private static double mean(double[] levels) {
        double sum = 0;
        for (double level : levels) {
            sum += level;
        }
        return sum / levels.length;
    }
}
