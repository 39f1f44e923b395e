package tramontane.reliability.bearing;

/**
 * By what factor a life changes with temperature and speed. Temperatures in K, speeds in any unit, the same for both.
 *
 * <p>The laws agree locally at best: 1.5 per 10 K is 0.354 eV from 40 to 50 °C and 0.399 eV from 60 to 70 °C.
 */
public final class LifeFactor {

    /** Boltzmann constant, J/K; SI Brochure, 9th edition (2019), exact. */
    public static final double BOLTZMANN = 1.380649e-23;

    /** Factor per 10 K where nothing better is known; common practice for grease in ball bearings of fans. */
    public static final double PER_TEN_KELVIN = 1.5;

    /** The range that common practice puts the factor in: from 1.3 to 2, the latter that of electronics. */
    public static final double LOWEST_PER_TEN_KELVIN = 1.3;
    /** See {@link #LOWEST_PER_TEN_KELVIN}. */
    public static final double HIGHEST_PER_TEN_KELVIN = 2;

    /** Slope of the logarithm of grease life over 1/T, K; Booser 1974, the constant from memory. */
    private static final double GREASE_SLOPE = 2450;
    /** Loss of the logarithm of grease life at the limiting speed of bearing and grease; Booser 1974, the constants from memory. */
    private static final double GREASE_SPEED = 0.301 * 0.864;

    private LifeFactor() {
    }

    /**
     * Rule of so much per 10 K: {@code L/L_rated = q^((T_rated - T)/10 K)}; common practice.
     *
     * @param factor      q, above 0
     * @param rated       temperature that the life was rated at, K
     * @param temperature temperature, K
     */
    public static double perTenKelvin(double factor, double rated, double temperature) {
        return Math.pow(factor, (rated - temperature) / 10);
    }

    /**
     * Arrhenius: {@code L/L_rated = exp(E/k (1/T - 1/T_rated))}; NIST/SEMATECH e-Handbook 8.1.5.1.
     *
     * @param energy      activation energy E, J
     * @param rated       temperature that the life was rated at, K
     * @param temperature temperature, K
     */
    public static double arrhenius(double energy, double rated, double temperature) {
        return Math.exp(energy / BOLTZMANN * (1 / temperature - 1 / rated));
    }

    /**
     * Grease: {@code lg(L/L_rated) = 2450 K (1/T - 1/T_rated) - 0.260 (n - n_rated)/n_limit}; E. R. Booser, "Grease Life Forecast for Ball
     * Bearings", Lubrication Engineering 30 (1974), the constants from memory. For ball bearings with mineral oil greases above about 70 °C;
     * below, oxidation does not limit alone and the gain is overrated.
     *
     * @param rated       temperature of the bearing where the life was rated, K
     * @param temperature temperature of the bearing, K
     * @param ratedSpeed  speed where the life was rated
     * @param speed       speed
     * @param limit       limiting speed of bearing and grease; infinite where speed does not matter
     */
    public static double grease(double rated, double temperature, double ratedSpeed, double speed, double limit) {
        return Math.pow(10, GREASE_SLOPE * (1 / temperature - 1 / rated) - GREASE_SPEED * (speed - ratedSpeed) / limit);
    }

    /**
     * Speed: {@code L/L_rated = (n_rated/n)^k}; k = 1 counts revolutions, as ISO 281 does at one load.
     *
     * @param exponent   k, not below 0
     * @param ratedSpeed speed where the life was rated, above 0
     * @param speed      speed, above 0
     */
    public static double speed(double exponent, double ratedSpeed, double speed) {
        return Math.pow(ratedSpeed / speed, exponent);
    }
}
