package tramontane.physics.electric;

/** Currents and signals of motors. */
public final class Electricity {

    private Electricity() {
    }

    /**
     * Current of a load: P/(U cosφ), and P/(√3 U cosφ) for three phases.
     *
     * @param power   electrical input, W
     * @param voltage V, above zero; between phases for three of them
     * @param factor  power factor cosφ, above zero up to one; 1 for direct current
     * @param phases  1, or √3 for three phases
     * @return A
     */
    public static double current(double power, double voltage, double factor, double phases) {
        if (!(voltage > 0) || !(factor > 0 && factor <= 1) || !(power >= 0)) {
            throw new IllegalArgumentException("power " + power + " W at " + voltage + " V, power factor " + factor
                    + "; expected power not below zero, voltage above zero, power factor above zero up to one");
        }
        return power / (phases * voltage * factor);
    }

    /**
     * Frequency of a tacho.
     *
     * @param speed  rad/s
     * @param pulses per revolution
     * @return Hz
     */
    public static double pulses(double speed, int pulses) {
        return pulses * speed / (2 * Math.PI);
    }

    /**
     * Speed of a rotor whose tacho gives a frequency.
     *
     * @param frequency Hz
     * @param pulses    per revolution
     * @return rad/s
     */
    public static double speed(double frequency, int pulses) {
        return 2 * Math.PI * frequency / pulses;
    }
}
