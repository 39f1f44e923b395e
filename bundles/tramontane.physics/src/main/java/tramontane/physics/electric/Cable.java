package tramontane.physics.electric;

import java.util.List;
import java.util.Optional;

/**
 * One copper conductor of a cable.
 *
 * <p>Of nominal cross-sections the resistance is the highest that IEC 60228 allows, at 20 °C; below 0.5 mm², which the standard does
 * not list for flexible conductors, that of the national extension of the same table. Of AWG wires it is computed from the diameter of
 * ASTM B258 and the resistivity of annealed copper, 1/58 Ω mm²/m at 20 °C (IEC 60028); strands add some 2 %.
 *
 * @param area       cross-section, m²
 * @param at20       resistance per length at 20 °C, Ω/m
 */
public record Cable(double area, double at20) {

    /** Kinds of copper conductor. */
    public enum Conductor {
        /** Class 1 and 2. */
        SOLID_OR_STRANDED,
        /** Class 5 and 6, plain copper. */
        FLEXIBLE,
        /** Class 5, metal-coated. */
        FLEXIBLE_TINNED
    }

    /** Inferred temperature of no resistance of copper, °C below zero (IEC 60228, Annex; IEC 60287). */
    private static final double COPPER = 234.5;
    private static final double CELSIUS = 273.15;
    /** Resistivity of annealed copper at 20 °C, Ω m (IEC 60028). */
    private static final double RESISTIVITY = 1e-6 / 58;
    private static final double SAME_AREA = 1e-6;

    /** Nominal cross-section, mm², and resistance by class, Ω/km; 0 where the table has none. IEC 60228, Tables 1 to 3. */
    private static final double[][] TABLE = {
        {0.14, 0, 134, 0}, {0.22, 0, 96, 0}, {0.25, 0, 76, 0}, {0.34, 0, 53, 0},
        {0.5, 36.0, 39.0, 40.1}, {0.75, 24.5, 26.0, 26.7}, {1.0, 18.1, 19.5, 20.0}, {1.5, 12.1, 13.3, 13.7}, {2.5, 7.41, 7.98, 8.21},
        {4, 4.61, 4.95, 5.09}, {6, 3.08, 3.30, 3.39}, {10, 1.83, 1.91, 1.95}};

    /**
     * A conductor of a nominal cross-section.
     *
     * @param area      m²
     * @param conductor its kind
     * @return empty for a cross-section that the table does not have for this kind
     */
    public static Optional<Cable> of(double area, Conductor conductor) {
        for (double[] row : TABLE) {
            double ohms = row[1 + conductor.ordinal()];
            if (Math.abs(row[0] * 1e-6 - area) <= SAME_AREA * area && ohms > 0) {
                return Optional.of(new Cable(area, ohms * 1e-3));
            }
        }
        return Optional.empty();
    }

    /** The cross-sections that are known of a kind, m². */
    public static List<Double> areas(Conductor conductor) {
        return java.util.Arrays.stream(TABLE).filter(row -> row[1 + conductor.ordinal()] > 0).map(row -> row[0] * 1e-6).toList();
    }

    /**
     * A wire by its AWG number: d = 0.127 mm · 92^((36 - n)/39).
     *
     * @param number 0 to 40
     */
    public static Cable awg(int number) {
        if (number < 0 || number > 40) {
            throw new IllegalArgumentException("AWG number must be from 0 to 40, got " + number);
        }
        double diameter = 0.127e-3 * Math.pow(92, (36 - number) / 39.0);
        double area = Math.PI / 4 * diameter * diameter;
        return new Cable(area, RESISTIVITY / area);
    }

    /**
     * Resistance per length of one conductor, Ω/m: R20 (234.5 + t)/254.5.
     *
     * @param temperature of the conductor, K, above that at which copper would have none by this formula
     */
    public double resistance(double temperature) {
        double celsius = temperature - CELSIUS;
        if (!(celsius > -COPPER)) {
            throw new IllegalArgumentException("temperature of a conductor must be above 38.65 K, got " + temperature);
        }
        return at20 * (COPPER + celsius) / (COPPER + 20);
    }
}
