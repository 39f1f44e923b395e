package tramontane.airflow.internal;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import tramontane.analysis.FlowLaw;
import tramontane.model.AirMover;
import tramontane.model.MoverCurve;
import tramontane.model.Quantity;
import tramontane.physics.MonotoneCurve;

/**
 * What one running mover gives at a speed, as a flow law: its drop is its fan static pressure with the sign turned.
 *
 * <p>The measured curve whose speed is nearest is brought to the speed and density by the fan laws (ISO 5801, AMCA 210:
 * Q ∝ n, Δp ∝ n² ρ, P ∝ n³ ρ). Between its points the curve is interpolated without overshoot.
 *
 * <p>Beyond its ends it goes on with the slope it has there and a square term p/Q² on top, p its highest pressure and Q its
 * largest flow: blown backwards, or faster than it moves by itself, a mover is a resistance. That term is assumed; it carries
 * over to any speed and density by the fan laws like the rest.
 */
public final class MoverCharacteristic implements FlowLaw {

    /** Least fall of the curve, over its highest pressure and largest flow, that a solver can work with. */
    private static final double LEAST_FALL = 1e-6;

    private final MonotoneCurve curve;
    private final Optional<MonotoneCurve> powerCurve;
    private final double statedDensity;
    private final double measuredSpeed;
    private final double speed;
    private final double ratio;
    private final double square;
    /** Slope added to a curve with a level piece, about its middle; changes pressures by less than a millionth of the highest. */
    private final double tilt;
    private final double middle;
    /** Steepest slope that is given where the curve is level at a single point, as it may be at shut-off. */
    private final double ceiling;
    private final boolean falling;
    private final double firstSlope;
    private final double lastSlope;

    private MoverCharacteristic(MoverCurve measured, double measuredSpeed, double speed) {
        double[] flow = measured.flow().toArray();
        double[] pressure = measured.pressure().toArray();
        curve = MonotoneCurve.of(flow, pressure);
        powerCurve = measured.power().filter(power -> power.size() == flow.length)
                .map(power -> MonotoneCurve.of(flow, power.toArray()));
        statedDensity = measured.statedDensity();
        this.measuredSpeed = measuredSpeed;
        this.speed = speed;
        ratio = speed / measuredSpeed;
        double highest = highest(pressure);
        double largest = curve.lastX();
        square = highest / (largest * largest);
        falling = IntStream.range(1, pressure.length).allMatch(i -> pressure[i] <= pressure[i - 1]);
        boolean level = falling && IntStream.range(1, pressure.length).anyMatch(i -> pressure[i] == pressure[i - 1]);
        tilt = level ? LEAST_FALL * highest / largest : 0;
        ceiling = falling ? -LEAST_FALL * highest / largest : Double.POSITIVE_INFINITY;
        middle = (curve.firstX() + largest) / 2;
        firstSlope = curve.slope(curve.firstX());
        lastSlope = curve.slope(largest);
    }

    private static double highest(double[] pressure) {
        double highest = 0;
        for (double each : pressure) {
            highest = Math.max(highest, each);
        }
        return highest;
    }

    /**
     * The characteristic of a mover at a speed.
     *
     * @param mover a part that {@link #fault} finds no fault with
     * @param speed rad/s, above zero
     */
    static MoverCharacteristic of(AirMover mover, double speed) {
        MoverCurve nearest = mover.curves().getFirst();
        for (MoverCurve each : mover.curves()) {
            if (distance(mover, each, speed) < distance(mover, nearest, speed)) {
                nearest = each;
            }
        }
        return new MoverCharacteristic(nearest, measuredSpeed(mover, nearest).orElseThrow(), speed);
    }

    private static double distance(AirMover mover, MoverCurve curve, double speed) {
        return measuredSpeed(mover, curve).map(measured -> Math.abs(Math.log(speed / measured)))
                .orElse(Double.POSITIVE_INFINITY);
    }

    private static Optional<Double> measuredSpeed(AirMover mover, MoverCurve curve) {
        return curve.speed().map(Quantity::si).or(mover::ratedSpeedSi);
    }

    /** What keeps a part from being computed with; empty if nothing does. */
    static Optional<String> fault(AirMover mover) {
        if (mover.curves().isEmpty()) {
            return Optional.of("has no curve");
        }
        if (mover.ratedSpeedSi().isEmpty()) {
            return Optional.of("states no speed, neither a rated one nor at a curve");
        }
        for (int i = 0; i < mover.curves().size(); i++) {
            MoverCurve curve = mover.curves().get(i);
            String which = mover.curves().size() == 1 ? "its curve" : "curve " + (i + 1);
            if (curve.flow().size() < 2 || curve.flow().size() != curve.pressure().size()) {
                return Optional.of("has " + curve.flow().size() + " flows and " + curve.pressure().size() + " pressures in "
                        + which);
            }
            if (!(highest(curve.pressure().toArray()) > 0)) {
                return Optional.of("gives no pressure at any flow in " + which);
            }
        }
        return Optional.empty();
    }

    @Override
    public void at(double flow, double density, double viscosity, Drop drop) {
        double q = flow / ratio;
        double rise;
        double slope;
        if (q < curve.firstX()) {
            double t = q - curve.firstX();
            rise = curve.y(0) + t * (firstSlope + square * t);
            slope = firstSlope + 2 * square * t;
        } else if (q > curve.lastX()) {
            double t = q - curve.lastX();
            rise = curve.y(curve.size() - 1) + t * (lastSlope - square * t);
            slope = lastSlope - 2 * square * t;
        } else {
            rise = curve.value(q);
            slope = curve.slope(q);
        }
        double scale = density / statedDensity * ratio;
        drop.set(-(rise - tilt * (q - middle)) * scale * ratio, -Math.min(slope - tilt, ceiling) * scale);
    }

    @Override
    public boolean increasing() {
        return falling;
    }

    /** Electrical input, W, where the curve states it; beyond its ends that at the end. */
    public OptionalDouble power(double flow, double density) {
        if (powerCurve.isEmpty()) {
            return OptionalDouble.empty();
        }
        double q = Math.max(curve.firstX(), Math.min(curve.lastX(), flow / ratio));
        return OptionalDouble.of(powerCurve.get().value(q) * density / statedDensity * ratio * ratio * ratio);
    }

    /** Speed, rad/s. */
    double speed() {
        return speed;
    }

    /** Speed of the measurement that it is taken from, rad/s. */
    double measuredSpeed() {
        return measuredSpeed;
    }

    /** Density that the measurement is stated for, kg/m³. */
    double statedDensity() {
        return statedDensity;
    }

    /** Smallest flow that was measured, brought to this speed, m³/s. */
    double firstFlow() {
        return curve.firstX() * ratio;
    }

    /** Largest flow that was measured, brought to this speed, m³/s. */
    double lastFlow() {
        return curve.lastX() * ratio;
    }

    /** Number of measured points. */
    int points() {
        return curve.size();
    }

    /** Flow of a measured point, brought to this speed, m³/s. */
    double flow(int point) {
        return curve.x(point) * ratio;
    }

    /** Fan static pressure of a measured point at this speed and the stated density, Pa. */
    double pressure(int point) {
        return curve.y(point) * ratio * ratio;
    }
}
