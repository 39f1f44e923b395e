package tramontane.selection;

import tramontane.analysis.Better;
import tramontane.physics.units.QuantityKind;

/**
 * One thing by which candidates that meet everything are ranked.
 *
 * <p>Twice as much of it counts as one step, wherever it lies; of a level 10 dB do, since that is about twice as loud (ISO 532,
 * sone; common practice), and of a temperature 10 K (common practice: half the life). So what one candidate is better than
 * another by does not depend on which others there are.
 *
 * @param id       one of {@link #POWER} and so on, or the id of a figure
 * @param label    what people read
 * @param quantity its kind of quantity
 * @param better   which way is better
 * @param about    which figure it is, and of which place and condition: {@code sound pressure level, the worst of all positions and
 *                 conditions}; empty where the label says all
 */
public record Criterion(String id, String label, QuantityKind quantity, Better better, String about) {

    /** Electrical input of the bank, its largest in any case, W. */
    public static final String POWER = "power";
    /** Price of all movers of the bank. */
    public static final String COST = "cost";
    /** Volume of the frames of all movers of the bank, m³. */
    public static final String SIZE = "size";
    /** Mass of all movers of the bank, kg. */
    public static final String MASS = "mass";
    /** Level, as whoever gives {@value #NOISE_FIGURE} finds it, dB. */
    public static final String NOISE = "noise";
    /** Life, as whoever gives {@value #LIFE_FIGURE} finds it, s. */
    public static final String LIFE = "life";
    /** The figure that {@link #NOISE} is. */
    public static final String NOISE_FIGURE = "acoustics.level";
    /** The figure that {@link #LIFE} is. */
    public static final String LIFE_FIGURE = "reliability.life";

    private static final double LEVEL_STEP = 10;
    private static final double TEMPERATURE_STEP = 10;

    /** One whose label says all. */
    public Criterion(String id, String label, QuantityKind quantity, Better better) {
        this(id, label, quantity, better, "");
    }

    /**
     * Steps from one of it (one W, one kg; 0 dB, 0 K): more are worse.
     *
     * @param value its value in SI units; of a quantity that is halved and doubled above zero
     */
    public double steps(double value) {
        double up = quantity.equals(QuantityKind.LEVEL) ? value / LEVEL_STEP
                : quantity.equals(QuantityKind.TEMPERATURE) || quantity.equals(QuantityKind.TEMPERATURE_DIFFERENCE) ? value / TEMPERATURE_STEP
                : Math.log(Math.max(value, Double.MIN_NORMAL)) / Math.log(2);
        return better == Better.HIGHER ? -up : up;
    }
}
