package tramontane.reliability;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import tramontane.model.AirMover;
import tramontane.reliability.bearing.LifeFactor;
import tramontane.reliability.bearing.RollingBearing;
import tramontane.reliability.bearing.SmallMotor;
import tramontane.reliability.statistics.Weibull;

/**
 * The life of a part wherever it works.
 *
 * <p>What is not known of the part is taken at a stated default, and between stated bounds: {@link #corners} are all combinations of the
 * ends. Below the temperature of the rating one corner of each gives no credit for the cold, as that is extrapolated.
 */
public final class LifeModel {

    /** Weibull shape where none is stated; common practice for ball bearings that have not failed in test. */
    public static final double SHAPE = 3;
    /** The range that practice puts it in: 1.1 is used by others for the same bearings. */
    public static final double LOWEST_SHAPE = 1.1;
    /** See {@link #LOWEST_SHAPE}. */
    public static final double HIGHEST_SHAPE = 3.5;
    /** Temperature of a rating that does not state one, K; common practice. */
    public static final double RATED_AT = 313.15;
    /** Life counts revolutions where no exponent is stated; common practice. */
    public static final double SPEED_EXPONENT = 1;

    private static final double HOUR = 3600;

    private final MoverLife life;
    private final double ratedAt;
    private final Optional<Double> ratedSpeed;
    private final double designLife;
    private final Parameters nominal;
    private final List<Parameters> corners;

    /**
     * What may be uncertain of a part.
     *
     * @param shape    Weibull shape
     * @param factor   factor per 10 K
     * @param exponent exponent of the speed
     * @param credit   whether life below the temperature of the rating counts as longer
     */
    public record Parameters(double shape, double factor, double exponent, boolean credit) {
    }

    private LifeModel(AirMover part, MoverLife life, double designLife) {
        this.life = life;
        this.ratedAt = life.at().orElse(RATED_AT);
        this.ratedSpeed = life.speed().or(part::ratedSpeedSi);
        this.designLife = designLife;
        boolean fatigue = life.law() == MoverLife.Law.FATIGUE;
        this.nominal = new Parameters(life.shape().orElse(fatigue ? RollingBearing.SHAPE : SHAPE), life.factor().orElse(LifeFactor.PER_TEN_KELVIN),
                life.speedExponent().orElse(SPEED_EXPONENT), true);
        this.corners = corners(life, nominal, fatigue);
    }

    /**
     * The model of a part; empty where its section lacks what the law needs.
     *
     * @param part       the part
     * @param life       its section
     * @param designLife running time that a rate of a handbook is the mean of, s
     */
    public static Optional<LifeModel> of(AirMover part, MoverLife life, Optional<Double> designLife) {
        boolean complete = switch (life.law()) {
            case TEN_KELVIN, GREASE -> life.rated().isPresent();
            case ARRHENIUS -> life.rated().isPresent() && life.activationEnergy().isPresent();
            case FATIGUE -> life.dynamicRating().isPresent() && !life.loads().isEmpty();
            case HANDBOOK -> designLife.isPresent();
        };
        return complete ? Optional.of(new LifeModel(part, life, designLife.orElse(Double.NaN))) : Optional.empty();
    }

    private static List<Parameters> corners(MoverLife life, Parameters nominal, boolean fatigue) {
        List<Double> shapes = !life.shapeBounds().isEmpty() ? life.shapeBounds() : life.shape().isPresent() ? List.of(nominal.shape())
                : List.of(LOWEST_SHAPE, fatigue ? RollingBearing.SHAPE : HIGHEST_SHAPE);
        List<Double> factors = life.law() != MoverLife.Law.TEN_KELVIN || life.factor().isPresent() ? List.of(nominal.factor())
                : List.of(LifeFactor.LOWEST_PER_TEN_KELVIN, LifeFactor.HIGHEST_PER_TEN_KELVIN);
        List<Double> exponents = life.speedExponent().isPresent() || life.law() == MoverLife.Law.GREASE || life.law() == MoverLife.Law.FATIGUE
                ? List.of(nominal.exponent()) : List.of(0.0, SPEED_EXPONENT);
        List<Parameters> corners = new ArrayList<>();
        if (life.law() == MoverLife.Law.HANDBOOK) {
            return List.of(nominal);
        }
        for (double shape : shapes) {
            for (double factor : factors) {
                for (double exponent : exponents) {
                    corners.add(new Parameters(shape, factor, exponent, true));
                    if (life.law() != MoverLife.Law.FATIGUE) {
                        corners.add(new Parameters(shape, factor, exponent, false));
                    }
                }
            }
        }
        return List.copyOf(corners);
    }

    /** The section that it is made of. */
    public MoverLife life() {
        return life;
    }

    /** What is stated, and defaults for the rest. */
    public Parameters nominal() {
        return nominal;
    }

    /** All combinations of the ends of what is uncertain, at least one; one where nothing is. */
    public List<Parameters> corners() {
        return corners;
    }

    /** The temperature of its rating, K; empty where the law needs none. */
    public Optional<Double> ratedAt() {
        return rates() ? Optional.of(ratedAt) : Optional.empty();
    }

    /** The speed of its rating, rad/s; empty where it is not known, or the law needs none. */
    public Optional<Double> ratedSpeed() {
        return rates() ? ratedSpeed : Optional.empty();
    }

    private boolean rates() {
        return life.law() != MoverLife.Law.FATIGUE && life.law() != MoverLife.Law.HANDBOOK;
    }

    /** Factor of the temperature on the rated life; 1 for laws without a rating. */
    public double ofTemperature(Parameters by, double temperature) {
        double factor = switch (life.law()) {
            case TEN_KELVIN -> LifeFactor.perTenKelvin(by.factor(), ratedAt, temperature);
            case ARRHENIUS -> LifeFactor.arrhenius(life.activationEnergy().orElseThrow(), ratedAt, temperature);
            case GREASE -> LifeFactor.grease(ratedAt + life.rise(), temperature + life.rise(), 0, 0, Double.POSITIVE_INFINITY);
            case FATIGUE, HANDBOOK -> 1;
        };
        return by.credit() ? factor : Math.min(1, factor);
    }

    /** Factor of the speed on the rated life; 1 where the speed of the rating is not known, and for laws without a rating. */
    public double ofSpeed(Parameters by, double speed) {
        if (!rates() || ratedSpeed.isEmpty()) {
            return 1;
        }
        return life.law() == MoverLife.Law.GREASE ? LifeFactor.grease(ratedAt, ratedAt, ratedSpeed.get(), speed,
                life.greaseLimit().orElse(Double.POSITIVE_INFINITY)) : LifeFactor.speed(by.exponent(), ratedSpeed.get(), speed);
    }

    /**
     * The lives at a duty.
     *
     * @param by          what is taken for what is uncertain
     * @param temperature air at the mover, K
     * @param speed       above zero, rad/s
     */
    public DutyLife at(Parameters by, double temperature, double speed) {
        return switch (life.law()) {
            case TEN_KELVIN, ARRHENIUS, GREASE -> new DutyLife.Aged(life.statistic().with(life.rated().orElseThrow(), by.shape())
                    .scaled(ofTemperature(by, temperature) * ofSpeed(by, speed)));
            case FATIGUE -> new DutyLife.Aged(Weibull.through(life.rolling().together(life.loads().stream()
                    .map(load -> life.rolling().life(life.dynamicRating().orElseThrow(), load, speed)).toList()), 0.1, by.shape()));
            case HANDBOOK -> new DutyLife.AtRate(SmallMotor.bearing(temperature), SmallMotor.winding(temperature), new SmallMotor(life.motor()),
                    designLife / HOUR);
        };
    }

    /** Whether lives are the same wherever a mover works. */
    @Override
    public boolean equals(Object other) {
        return other instanceof LifeModel model && life.equals(model.life) && ratedSpeed.equals(model.ratedSpeed)
                && Double.compare(designLife, model.designLife) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(life, ratedSpeed, designLife);
    }
}
