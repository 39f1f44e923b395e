package tramontane.physics.sound;

/** Frequency weightings, IEC 61672-1:2013, equations E.1 to E.8, by their analytic form. */
public enum Weighting {
    /** As a moderate sound is heard. */
    A {
        @Override
        double response(double squared) {
            return F4 * F4 * squared * squared / ((squared + F1 * F1) * Math.sqrt((squared + F2 * F2) * (squared + F3 * F3))
                    * (squared + F4 * F4));
        }
    },
    /** As a loud sound is heard. */
    C {
        @Override
        double response(double squared) {
            return F4 * F4 * squared / ((squared + F1 * F1) * (squared + F4 * F4));
        }
    },
    /** None. */
    Z {
        @Override
        double response(double squared) {
            return 1;
        }
    };

    private static final double F1 = 20.598997;
    private static final double F2 = 107.65265;
    private static final double F3 = 737.86223;
    private static final double F4 = 12194.217;
    private static final double[][] FACTORS = new double[values().length][Bands.THIRDS];

    static {
        for (Weighting each : values()) {
            for (int third = 0; third < Bands.THIRDS; third++) {
                FACTORS[each.ordinal()][third] = Levels.power(each.level(Bands.middle(third)));
            }
        }
    }

    abstract double response(double squared);

    /** @param frequency Hz, positive
     *  @return weighting there, dB; 0 at 1 kHz */
    public double level(double frequency) {
        return 20 * Math.log10(response(frequency * frequency) / response(1e6));
    }

    /** @param third a band of {@link Bands}
     *  @return factor on the power in that band, taken at its exact middle */
    public double factor(int third) {
        return FACTORS[ordinal()][third];
    }
}
