package tramontane.physics;

import java.util.OptionalDouble;

/**
 * Properties of air.
 *
 * <ul>
 * <li>Density and saturation: A. Picard, R. S. Davis, M. Gläser, K. Fujii, "Revised formula for the density of moist
 * air (CIPM-2007)", Metrologia 45 (2008) 149-155. Its uncertainty of 22 ppm holds for 600..1100 hPa and 15..27 °C. The
 * formula is smooth outside; for -40..85 °C and 50..110 kPa it stays within 0.2 % of ideal moist air as long as less
 * than half the pressure is vapour.
 * <li>Altitude, viscosity, conductivity, speed of sound: ISO 2533:1975, Standard Atmosphere.
 * <li>Specific heat: ASHRAE Handbook Fundamentals (2017), chapter 1, the constants of the enthalpy of moist air.
 * </ul>
 */
public final class Air {

    /** Density of standard air by definition, kg/m³ (ISO 5801, AMCA 210). */
    public static final double STANDARD_DENSITY = 1.2;
    /** Standard pressure at sea level, Pa (ISO 2533). */
    public static final double STANDARD_PRESSURE = 101325;
    /** Specific gas constant of dry air, J/(kg K) (ISO 2533). */
    public static final double GAS_CONSTANT = 287.05287;

    private static final double ZERO_CELSIUS = 273.15;
    private static final double GRAVITY = 9.80665;
    private static final double EARTH_RADIUS = 6356766;
    private static final double DRY_SPECIFIC_HEAT = 1006;
    private static final double VAPOUR_SPECIFIC_HEAT = 1860;
    /** Molar mass of water over that of dry air at 400 ppm carbon dioxide (CIPM-2007). */
    private static final double MOLAR_MASS_RATIO = 18.01528 / 28.96546;

    private Air() {
    }

    /**
     * Density of moist air with 400 ppm of carbon dioxide, CIPM-2007 eq. (1).
     *
     * @param pressure    absolute pressure, Pa
     * @param temperature K
     * @param humidity    relative humidity, 0..1
     * @return kg/m³
     */
    public static double moistDensity(double pressure, double temperature, double humidity) {
        double xv = vapourFraction(pressure, temperature, humidity);
        double t = temperature - ZERO_CELSIUS;
        double pT = pressure / temperature;
        // compressibility factor, CIPM-2007 appendix A1.4
        double z = 1 - pT * (1.58123e-6 + t * (-2.9331e-8 + t * 1.1043e-10) + (5.707e-6 - 2.051e-8 * t) * xv
                + (1.9898e-4 - 2.376e-6 * t) * xv * xv) + pT * pT * (1.83e-11 - 0.765e-8 * xv * xv);
        return pressure * 28.96546e-3 / (z * 8.314472 * temperature) * (1 - xv * (1 - MOLAR_MASS_RATIO));
    }

    /**
     * Mole fraction of water vapour, CIPM-2007 appendix A1.3.
     *
     * @param pressure    absolute pressure, Pa
     * @param temperature K
     * @param humidity    relative humidity, 0..1
     * @return 0 to below 1; a state in which water would boil is refused
     */
    public static double vapourFraction(double pressure, double temperature, double humidity) {
        requirePositive("pressure", pressure);
        requirePositive("temperature", temperature);
        if (!(humidity >= 0 && humidity <= 1)) {
            throw new IllegalArgumentException("relative humidity must be 0 to 1, got " + humidity);
        }
        double xv = humidity * enhancement(pressure, temperature) * saturationPressure(temperature) / pressure;
        if (!(xv < 1)) {
            throw new IllegalArgumentException("air of " + temperature + " K, " + pressure + " Pa and humidity "
                    + humidity + " would hold more vapour than its pressure allows");
        }
        return xv;
    }

    /** Enhancement factor f, CIPM-2007 appendix A1.2. */
    private static double enhancement(double pressure, double temperature) {
        double t = temperature - ZERO_CELSIUS;
        return 1.00062 + 3.14e-8 * pressure + 5.6e-7 * t * t;
    }

    /**
     * Pressure of saturated water vapour over liquid water, CIPM-2007 appendix A1.1.
     *
     * @param temperature K; made for 0..27 °C, within 0.3 % of steam tables up to 85 °C
     * @return Pa
     */
    public static double saturationPressure(double temperature) {
        requirePositive("temperature", temperature);
        return Math.exp(logSaturation(temperature));
    }

    private static double logSaturation(double temperature) {
        return 1.2378847e-5 * temperature * temperature - 1.9121316e-2 * temperature + 33.93711047
                - 6.3431645e3 / temperature;
    }

    /**
     * Temperature at which the air would be saturated when cooled at constant pressure.
     *
     * @param temperature K
     * @param humidity    relative humidity, 0..1
     * @return K; empty for dry air
     */
    public static OptionalDouble dewPoint(double temperature, double humidity) {
        requirePositive("temperature", temperature);
        if (!(humidity >= 0 && humidity <= 1)) {
            throw new IllegalArgumentException("relative humidity must be 0 to 1, got " + humidity);
        }
        if (humidity == 0) {
            return OptionalDouble.empty();
        }
        // The logarithm is nearly linear in 1/T, so Newton in 1/T settles in a few steps.
        double target = logSaturation(temperature) + Math.log(humidity);
        double inverse = 1 / temperature;
        for (int i = 0; i < 60; i++) {
            double at = 1 / inverse;
            double byInverse = -at * at * (2 * 1.2378847e-5 * at - 1.9121316e-2) - 6.3431645e3;
            double step = (target - logSaturation(at)) / byInverse;
            inverse += step;
            if (Math.abs(step) <= 1e-15 * inverse) {
                break;
            }
        }
        return OptionalDouble.of(1 / inverse);
    }

    /**
     * Geopotential altitude, ISO 2533 eq. (8): H = r z / (r + z).
     *
     * @param altitude geometric altitude above sea level, m
     * @return m
     */
    public static double geopotential(double altitude) {
        requireFinite("altitude", altitude);
        return EARTH_RADIUS * altitude / (EARTH_RADIUS + altitude);
    }

    /**
     * Temperature of the standard atmosphere, ISO 2533.
     *
     * @param geopotential geopotential altitude, m, -2000 to 20000
     * @return K
     */
    public static double standardTemperature(double geopotential) {
        requireAltitude(geopotential);
        return 288.15 - 0.0065 * Math.min(geopotential, 11000);
    }

    /**
     * Pressure of the standard atmosphere, ISO 2533 eq. (12) and (13).
     *
     * @param geopotential geopotential altitude, m, -2000 to 20000
     * @return Pa
     */
    public static double standardPressure(double geopotential) {
        double temperature = standardTemperature(geopotential);
        double p = STANDARD_PRESSURE * Math.pow(temperature / 288.15, GRAVITY / (GAS_CONSTANT * 0.0065));
        return geopotential <= 11000 ? p
                : p * Math.exp(-GRAVITY * (geopotential - 11000) / (GAS_CONSTANT * temperature));
    }

    /**
     * Dynamic viscosity of dry air by Sutherland's formula, ISO 2533 eq. (22). Within about 1 % for 200..600 K. Vapour
     * lowers it, by 1 % at 35 °C and saturation; that is left out.
     *
     * @param temperature K
     * @return Pa s
     */
    public static double viscosity(double temperature) {
        requirePositive("temperature", temperature);
        return 1.458e-6 * temperature * Math.sqrt(temperature) / (temperature + 110.4);
    }

    /**
     * Thermal conductivity of dry air, ISO 2533 eq. (24).
     *
     * @param temperature K
     * @return W/(m K)
     */
    public static double conductivity(double temperature) {
        requirePositive("temperature", temperature);
        return 2.64638e-3 * temperature * Math.sqrt(temperature)
                / (temperature + 245.4 * Math.pow(10, -12 / temperature));
    }

    /**
     * Specific heat at constant pressure of moist air per mass of moist air, ASHRAE Fundamentals 2017 chapter 1:
     * (1006 + 1860 w)/(1 + w) with w the vapour per dry air. Within 0.5 % for -40..85 °C.
     *
     * @param vapourFraction mole fraction of water vapour, 0..1, 0 for dry air
     * @return J/(kg K)
     */
    public static double specificHeat(double vapourFraction) {
        if (!(vapourFraction >= 0 && vapourFraction < 1)) {
            throw new IllegalArgumentException("vapour fraction must be 0 to below 1, got " + vapourFraction);
        }
        double vapour = MOLAR_MASS_RATIO * vapourFraction;
        double dry = 1 - vapourFraction;
        return (DRY_SPECIFIC_HEAT * dry + VAPOUR_SPECIFIC_HEAT * vapour) / (dry + vapour);
    }

    /**
     * Prandtl number of dry air, cp μ / k.
     *
     * @param temperature K
     * @return about 0.7
     */
    public static double prandtl(double temperature) {
        return DRY_SPECIFIC_HEAT * viscosity(temperature) / conductivity(temperature);
    }

    /**
     * Speed of sound in dry air, ISO 2533 eq. (19).
     *
     * @param temperature K
     * @return m/s
     */
    public static double speedOfSound(double temperature) {
        requirePositive("temperature", temperature);
        return Math.sqrt(1.4 * GAS_CONSTANT * temperature);
    }

    /** Relative humidity at which the air has the given mole fraction of vapour; above 1 when it would condense. */
    static double humidity(double pressure, double temperature, double vapourFraction) {
        return vapourFraction * pressure / (enhancement(pressure, temperature) * saturationPressure(temperature));
    }

    private static void requireAltitude(double geopotential) {
        if (!(geopotential >= -2000 && geopotential <= 20000)) {
            throw new IllegalArgumentException(
                    "altitude must be -2000 m to 20000 m for the standard atmosphere, got " + geopotential + " m");
        }
    }

    private static void requirePositive(String what, double value) {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(what + " must be above zero and finite, got " + value);
        }
    }

    private static void requireFinite(String what, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(what + " must be finite, got " + value);
        }
    }
}
