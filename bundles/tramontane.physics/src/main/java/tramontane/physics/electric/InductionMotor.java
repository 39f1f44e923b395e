package tramontane.physics.electric;

import tramontane.physics.RootSearch;

/**
 * An induction motor that drives a fan.
 *
 * <p>Torque by M. Kloss's formula, T = 2 T_b/(s/s_b + s_b/s), with s the slip and T_b, s_b at breakdown (Archiv für Elektrotechnik 5
 * (1916) 59; A. E. Fitzgerald, C. Kingsley, S. D. Umans, "Electric Machinery", ch. 6; from memory). T_b goes with (U/f)²; the
 * breakdown slip with 1/f. Resistance of the stator left out, so that at low frequency it is taken too strong. The load's torque goes
 * with ρ n² (fan laws).
 *
 * @param pairs     pole pairs
 * @param speed     rated speed, rad/s, below the synchronous one
 * @param voltage   rated voltage, V
 * @param frequency rated frequency, Hz
 * @param density   density of the air that loads it at rated speed, kg/m³
 * @param breakdown breakdown torque over rated torque, above 1
 */
public record InductionMotor(int pairs, double speed, double voltage, double frequency, double density, double breakdown) {

    private static final int STEPS = 400;
    private static final double LEAST_SLIP = 1e-9;
    private static final double TOLERANCE = 1e-14;

    /** Refuses what is no induction motor. */
    public InductionMotor {
        if (pairs < 1 || !(voltage > 0) || !(frequency > 0) || !(density > 0) || !(breakdown > 1) || !(speed > 0)
                || !(speed < synchronous(frequency, pairs))) {
            throw new IllegalArgumentException("induction motor of " + pairs + " pole pairs, " + speed + " rad/s at " + voltage + " V and "
                    + frequency + " Hz, density " + density + ", breakdown torque " + breakdown
                    + "; expected a rated speed above zero and below the synchronous one, a breakdown torque above 1");
        }
    }

    /**
     * How it runs.
     *
     * @param speed     rad/s
     * @param pulledOut whether its slip is beyond that of breakdown, where small fan motors still run, but warm
     */
    public record Running(double speed, boolean pulledOut) {
    }

    /**
     * Synchronous speed, rad/s: 2π f/p.
     *
     * @param frequency f, Hz
     * @param pairs     p, pole pairs
     */
    public static double synchronous(double frequency, int pairs) {
        return 2 * Math.PI * frequency / pairs;
    }

    /** Slip at breakdown, from rated slip s_r: s_r (b + √(b² - 1)). */
    public double breakdownSlip() {
        double rated = 1 - speed / synchronous(frequency, pairs);
        return rated * (breakdown + Math.sqrt(breakdown * breakdown - 1));
    }

    /**
     * The speed at which it runs: the highest at which its torque is that of the fan.
     *
     * @param volts V, not below zero
     * @param hertz Hz, above zero
     * @param air   density of the air, kg/m³, above zero
     */
    public Running running(double volts, double hertz, double air) {
        if (volts == 0) {
            return new Running(0, true);
        }
        double synchronous = synchronous(hertz, pairs);
        double strength = breakdown * Math.pow(volts / voltage * frequency / hertz, 2);
        double breaks = breakdownSlip() * frequency / hertz;
        double load = air / density * Math.pow(synchronous / speed, 2);
        // excess of torque over rated torque; below zero at no slip, above zero at rest
        java.util.function.DoubleUnaryOperator excess = slip -> 2 * strength / (slip / breaks + breaks / slip) - load * (1 - slip) * (1 - slip);
        double from = LEAST_SLIP;
        for (int i = 1; i <= STEPS; i++) {
            double to = Math.pow(LEAST_SLIP, 1 - (double) i / STEPS);
            if (excess.applyAsDouble(to) >= 0) {
                double low = from;
                RootSearch root = RootSearch.between(excess, low, to, excess.applyAsDouble(low), excess.applyAsDouble(to), TOLERANCE, 0);
                return new Running(synchronous * (1 - root.at()), root.at() > breaks);
            }
            from = to;
        }
        return new Running(0, true); // at rest any torque moves a fan: not reached
    }
}
