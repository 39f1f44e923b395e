package tramontane.physics.electric;

/**
 * A permanent-magnet DC motor at constant voltage that drives a rotor in air.
 *
 * <p>It loses speed in proportion to its torque, from n₀ without load to n₁ under the load it was measured at; the torque of the
 * rotor goes with ρ n². So (ρ/ρ₁)(n/n₁)²(1 - n₁/n₀) = v - n/n₀, v the voltage over the one at which n₁ and n₀ hold: in thin air it
 * turns faster, in the limit at v n₀. Steady; losses in the motor go into n₀; no electronics that limit current or speed. Textbook,
 * e.g. A. Hughes, Electric Motors and Drives, ch. 3 (from memory).
 */
public final class DcMotor {

    private DcMotor() {
    }

    /**
     * Its speed, rad/s: the positive root, in the form that keeps its digits where the load vanishes.
     *
     * @param loaded  n₁, speed under the measured load, rad/s, above zero
     * @param noLoad  n₀, speed without load at the same voltage, rad/s, above n₁
     * @param load    torque of the rotor over the measured one at equal speed, so ρ/ρ₁; not negative
     * @param voltage v, not negative
     */
    public static double speed(double loaded, double noLoad, double load, double voltage) {
        if (!(loaded > 0 && noLoad > loaded && load >= 0 && voltage >= 0 && noLoad < Double.POSITIVE_INFINITY
                && load < Double.POSITIVE_INFINITY && voltage < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("speed under load " + loaded + " rad/s, without load " + noLoad + " rad/s, load "
                    + load + " and voltage " + voltage + " over those measured; expected speeds above zero, the one without load "
                    + "the higher, and load and voltage not below zero");
        }
        double slip = loaded / noLoad;
        double drop = load * (1 - slip);
        return 2 * voltage * loaded / (slip + Math.sqrt(slip * slip + 4 * drop * voltage));
    }
}
