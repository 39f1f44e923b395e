package tramontane.reliability.bearing;

import java.util.List;
import tramontane.reliability.statistics.Exponential;

/**
 * Failure rate of motors below one horsepower by MIL-HDBK-217F, Notice 2 (1995), section 12.1: bearings and windings. Times in hours,
 * temperatures in K.
 *
 * <p>For rolling bearings. Cold grease shortens the life of the bearing too: it is longest near 35 °C. The rate is the mean over the design
 * life, constant through it. The handbook has not been kept up since 1995; its rates compare designs, they do not predict.
 *
 * @param kind the kind of motor
 */
public record SmallMotor(Kind kind) {

    /** Temperatures that the tables of the handbook cover, K. */
    public static final double LOWEST = 273.15;
    /** See {@link #LOWEST}. */
    public static final double HIGHEST = 413.15;

    /** The handbook adds 273 to °C. */
    private static final double ZERO = 0.15;

    /** Upper ends of the ranges of design life over characteristic life, and the factor in each. */
    private static final double[] ENDS = {0.10, 0.20, 0.30, 0.40, 0.50, 0.60, 0.70, 0.80, 0.90};
    private static final double[] FACTORS = {0.13, 0.15, 0.23, 0.31, 0.41, 0.51, 0.61, 0.68, 0.76, 1.0};

    /** Kinds of motor with their constants. */
    public enum Kind {
        /** Electrical, general: that of fans. */
        ELECTRICAL("electrical", 1.9, 1.1),
        /** Sensor. */
        SENSOR("sensor", 0.48, 0.29),
        /** Servo. */
        SERVO("servo", 2.4, 1.7),
        /** Stepper. */
        STEPPER("stepper", 11, 5.4);

        private final String word;
        private final double a;
        private final double b;

        Kind(String word, double a, double b) {
            this.word = word;
            this.a = a;
            this.b = b;
        }

        /** The word in files. */
        public String word() {
            return word;
        }
    }

    /**
     * Characteristic life of the bearings, h.
     *
     * @param temperature of the air around, K
     */
    public static double bearing(double temperature) {
        double t = temperature - ZERO;
        return 1 / (Math.pow(10, 2.534 - 2357 / t) + 1 / (Math.pow(10, 20 - 4500 / t) + 300));
    }

    /**
     * Characteristic life of the windings, h.
     *
     * @param temperature of the air around, K
     */
    public static double winding(double temperature) {
        return Math.pow(10, 2357 / (temperature - ZERO) - 1.83);
    }

    /**
     * Characteristic life over a cycle of temperatures: {@code Σ h / Σ (h/α)}.
     *
     * @param hours at each temperature, some above zero
     * @param lives characteristic life at each, h
     */
    public static double cycle(List<Double> hours, List<Double> lives) {
        double sum = 0;
        double used = 0;
        for (int i = 0; i < hours.size(); i++) {
            sum += hours.get(i);
            used += hours.get(i) / lives.get(i);
        }
        return sum / used;
    }

    /** Factor λ1 or λ2 of a ratio of design life to characteristic life; ratios between two ranges count as the higher one. */
    static double factor(double ratio) {
        int range = 0;
        while (range < ENDS.length && ratio > ENDS[range]) {
            range++;
        }
        return FACTORS[range];
    }

    /**
     * Failure rate, 1/h: {@code λ1/(A α_B) + λ2/(B α_W)}.
     *
     * @param bearing    characteristic life of the bearings, h
     * @param winding    characteristic life of the windings, h
     * @param designLife design life or interval of overhaul, h
     */
    public double rate(double bearing, double winding, double designLife) {
        return factor(designLife / bearing) / (kind.a * bearing) + factor(designLife / winding) / (kind.b * winding);
    }

    /** Lives at that rate, h; see {@link #rate}. */
    public Exponential lives(double bearing, double winding, double designLife) {
        return new Exponential(1 / rate(bearing, winding, designLife));
    }
}
