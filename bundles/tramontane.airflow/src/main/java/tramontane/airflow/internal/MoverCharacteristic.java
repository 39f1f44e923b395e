package tramontane.airflow.internal;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import tramontane.analysis.FlowLaw;
import tramontane.model.AirMover;
import tramontane.model.MoverCurve;
import tramontane.model.Quantity;
import tramontane.physics.FanLaws;
import tramontane.physics.MonotoneCurve;

/**
 * What one running mover gives at a speed, as a flow law: its drop is its fan static pressure with the sign turned.
 *
 * <p>Measured curves are brought to the speed, size and density by the fan laws (ISO 5801, AMCA 210: Q ∝ n D³,
 * Δp ∝ n² D² ρ, P ∝ n³ D⁵ ρ). Between two measured speeds both neighbours are, and their pressures and powers at equal flow
 * mixed in proportion to the distance in speed; so the curve is the measured one at each measured speed and changes without a
 * jump between. Outside the measured speeds the nearest curve is taken alone. Between its points a curve is interpolated
 * without overshoot. What a motor loses at any speed, where the part states it, stands outside of the law of power:
 * P = P0 + (P1 - P0) (n/n1)³ (D/D1)⁵ ρ/ρ1. Where no curve states power, that of the part at rated speed counts at every flow.
 *
 * <p>Beyond its ends a curve goes on with the slope it has there and a square term p/Q² on top, p its highest pressure and Q
 * its largest flow: blown backwards, or faster than it moves by itself, a mover is a resistance. Where the curve rises at an
 * end, its slope s there would in turn take it far below its first pressure, or above its last; a running mover does not suck
 * air backwards. So there, at a distance t from the end, the slope dies away: s t/(1 + |t|/w)² instead of s t, w 2 % of Q,
 * which is at most s w/4. Both terms are assumed; they carry over to any speed, size and density by the fan laws like the rest.
 */
public final class MoverCharacteristic implements FlowLaw {

    /** Least fall of the curve, over its highest pressure and largest flow, that a solver can work with. */
    private static final double LEAST_FALL = 1e-6;
    /** Least rise to a peak over the highest pressure. */
    private static final double LEAST_PEAK = 1e-4;
    /** Places in each piece of the curve that are looked at for a peak or a best point. */
    private static final int STEPS = 32;
    /** Flow within which a rise at an end dies away beyond it, over the largest flow. */
    private static final double DYING = 0.02;
    /** Places, for each growth by e of the distance and that flow together, at which a rise that dies away is looked at. */
    private static final int DENSE = 64;
    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

    private final double speed;
    private final Scaled[] curves;
    private final Powered[] powers;
    /** Input that does not follow the speed, W. */
    private final double fixed;
    /** The rest of the rated input brought to this speed, per density, where no curve states power. */
    private final OptionalDouble flat;
    private final List<Share> shares;
    private final Share nearest;
    /** Flows of the measured points of all curves, brought to this speed, rising, m³/s. */
    private final double[] flows;
    private final boolean falling;

    /**
     * How a bank takes flow and pressure from its movers by what stands before or behind them: the curve's flow at equal
     * pressure and its pressure at equal flow over those measured.
     */
    record Derating(double flow, double pressure) {

        static final Derating NONE = new Derating(1, 1);

        /** With a further factor on the pressure at equal flow. */
        Derating times(double factor) {
            return new Derating(flow, pressure * factor);
        }
    }

    /** Where a mover works best. */
    record Best(double flow, double efficiency) {
    }

    /** One measured curve and how it counts: its flows and, per density, its pressures are multiplied by factors. */
    private static final class Scaled {

        private final MonotoneCurve curve;
        private final double weight;
        private final double flowFactor;
        private final double pressureFactor;
        private final double square;
        /** Slope added to a curve with a level piece, about its middle; changes pressures by less than a millionth of the highest. */
        private final double tilt;
        private final double middle;
        /** Steepest slope that is given where the curve is level at a single point, as it may be at shut-off. */
        private final double ceiling;
        private final boolean falling;
        private final double firstSlope;
        private final double lastSlope;
        /** Flow within which a rise at an end dies away. */
        private final double dying;

        Scaled(MoverCurve measured, double weight, double flowFactor, double pressureFactor) {
            double[] pressure = measured.pressure().toArray();
            curve = MonotoneCurve.of(measured.flow().toArray(), pressure);
            this.weight = weight;
            this.flowFactor = flowFactor;
            this.pressureFactor = pressureFactor;
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
            dying = DYING * largest;
        }

        /** What the slope at an end adds at a distance beyond it, negative before the first point. */
        private double going(double slope, double t) {
            double far = 1 + Math.abs(t) / dying;
            return slope > 0 ? slope * t / (far * far) : slope * t;
        }

        /** Derivative of {@link #going}. */
        private double goingSlope(double slope, double t) {
            double far = 1 + Math.abs(t) / dying;
            return slope > 0 ? slope * (2 - far) / (far * far * far) : slope;
        }

        /** Flows beyond the ends at which it rises, ever wider apart, as far as a distance. */
        DoubleStream beyondRises(double distance) {
            double scale = dying * flowFactor;
            int count = (int) Math.ceil(DENSE * Math.log1p(distance / scale));
            return DoubleStream.of(firstSlope > 0 ? -1 : 0, lastSlope > 0 ? 1 : 0).filter(side -> side != 0)
                    .flatMap(side -> IntStream.rangeClosed(1, count).mapToDouble(i -> side * scale
                            * Math.expm1((double) i / DENSE) + flowFactor * (side < 0 ? curve.firstX() : curve.lastX())));
        }

        /** Its part of the pressure at a flow, per density. */
        double rise(double flow) {
            double q = flow / flowFactor;
            double rise;
            if (q < curve.firstX()) {
                double t = q - curve.firstX();
                rise = curve.y(0) + going(firstSlope, t) + square * t * t;
            } else if (q > curve.lastX()) {
                double t = q - curve.lastX();
                rise = curve.y(curve.size() - 1) + going(lastSlope, t) - square * t * t;
            } else {
                rise = curve.value(q);
            }
            return weight * pressureFactor * (rise - tilt * (q - middle));
        }

        /** Derivative of {@link #rise}. */
        double slope(double flow) {
            double q = flow / flowFactor;
            double slope;
            if (q < curve.firstX()) {
                double t = q - curve.firstX();
                slope = goingSlope(firstSlope, t) + 2 * square * t;
            } else if (q > curve.lastX()) {
                double t = q - curve.lastX();
                slope = goingSlope(lastSlope, t) - 2 * square * t;
            } else {
                slope = curve.slope(q);
            }
            return weight * pressureFactor / flowFactor * Math.min(slope - tilt, ceiling);
        }
    }

    /** One measured curve of the power and how it counts, per density and without what does not follow the speed. */
    private record Powered(MonotoneCurve curve, double weight, double flowFactor, double powerFactor, double fixed) {

        double power(double flow) {
            return weight * powerFactor * Math.max(0, curve.value(Math.clamp(flow / flowFactor, curve.firstX(), curve.lastX())) - fixed);
        }
    }

    /** A measured curve that is used, and how much of it. */
    record Share(MoverCurve curve, double speed, double weight) {
    }

    private MoverCharacteristic(AirMover mover, List<MoverCurve> candidates, double speed, Derating derating) {
        this.speed = speed;
        shares = shares(mover, candidates, speed);
        curves = shares.stream().map(share -> {
            double ratio = speed / share.speed();
            double size = sizeRatio(mover, share.curve());
            return new Scaled(share.curve(), share.weight(), derating.flow() * FanLaws.flowRatio(ratio, size),
                    derating.pressure() * FanLaws.pressureRatio(ratio, size, 1 / share.curve().statedDensity()));
        }).toArray(Scaled[]::new);
        fixed = mover.fixedLoss().map(Quantity::si).orElse(0.0);
        powers = shares(mover, candidates.stream().filter(MoverCharacteristic::hasPower).toList(), speed).stream().map(share -> {
            double ratio = speed / share.speed();
            double size = sizeRatio(mover, share.curve());
            return new Powered(MonotoneCurve.of(share.curve().flow().toArray(), share.curve().power().orElseThrow().toArray()),
                    share.weight(), derating.flow() * FanLaws.flowRatio(ratio, size),
                    FanLaws.powerRatio(ratio, size, 1 / share.curve().statedDensity()), fixed);
        }).toArray(Powered[]::new);
        flat = powers.length > 0 || mover.ratedPower().isEmpty() || mover.ratedSpeedSi().isEmpty() ? OptionalDouble.empty()
                : OptionalDouble.of(Math.max(0, mover.ratedPower().get().si() - fixed)
                        * FanLaws.powerRatio(speed / mover.ratedSpeedSi().get(), 1, 1 / MoverCurve.STANDARD_DENSITY));
        nearest = shares.stream().min(Comparator.comparingDouble(share -> Math.abs(Math.log(speed / share.speed()))))
                .orElseThrow();
        flows = flows();
        falling = falls();
    }

    private static boolean hasPower(MoverCurve curve) {
        return curve.power().filter(power -> power.size() == curve.flow().size()).isPresent();
    }

    private static double highest(double[] pressure) {
        double highest = 0;
        for (double each : pressure) {
            highest = Math.max(highest, each);
        }
        return highest;
    }

    /** The curves on either side of a speed, or the one at it or nearest to it; none for none. */
    private static List<Share> shares(AirMover mover, List<MoverCurve> curves, double speed) {
        Share below = null;
        Share above = null;
        for (MoverCurve curve : curves) {
            double measured = measuredSpeed(mover, curve).orElse(Double.NaN);
            if (measured <= speed && (below == null || measured > below.speed())) {
                below = new Share(curve, measured, 1);
            }
            if (measured >= speed && (above == null || measured < above.speed())) {
                above = new Share(curve, measured, 1);
            }
        }
        if (below == null || above == null || below.speed() == above.speed()) {
            return below != null ? List.of(below) : above != null ? List.of(above) : List.of();
        }
        double weight = (speed - below.speed()) / (above.speed() - below.speed());
        return List.of(new Share(below.curve(), below.speed(), 1 - weight), new Share(above.curve(), above.speed(), weight));
    }

    private double[] flows() {
        double[] all = Arrays.stream(curves).flatMapToDouble(each -> IntStream.range(0, each.curve.size())
                .mapToDouble(i -> each.curve.x(i) * each.flowFactor)).sorted().toArray();
        // points of curves that follow the fan laws exactly fall together but for rounding
        double least = 1e-9 * all[all.length - 1];
        return IntStream.range(0, all.length).filter(i -> i == 0 || all[i] - all[i - 1] > least).mapToDouble(i -> all[i]).toArray();
    }

    /**
     * Between neighbouring points the pressure is a cubic, so that its slope is steepest at an end or where that turns. Where a
     * rise of one curve dies away beyond its end it is not, so that places are looked at there between which it nearly is.
     */
    private boolean falls() {
        if (Arrays.stream(curves).allMatch(each -> each.falling)) {
            return true;
        }
        double largest = flows[flows.length - 1];
        double least = -LEAST_FALL * Math.abs(rise(flows[0])) / largest;
        double[] at = DoubleStream.concat(Arrays.stream(flows), Arrays.stream(curves)
                .flatMapToDouble(each -> each.beyondRises(2 * largest))).sorted().toArray();
        for (int i = 1; i < at.length; i++) {
            double width = at[i] - at[i - 1];
            double first = slope(at[i - 1]);
            double last = slope(at[i]);
            // of two places that fall together the slope is all there is to know
            double mean = width > 1e-9 * largest ? (rise(at[i]) - rise(at[i - 1])) / width : (first + last) / 2;
            double bend = 6 * mean - 4 * first - 2 * last;
            double turn = 3 * (first + last) - 6 * mean;
            double where = turn < 0 ? Math.clamp(-bend / (2 * turn), 0, 1) : 0;
            double steepest = Math.max(Math.max(first, last), first + where * (bend + where * turn));
            if (!(steepest < least)) {
                return false;
            }
        }
        return true;
    }

    /**
     * The characteristic of a mover at a speed, by the curves that are taken where no supply frequency is stated.
     *
     * @param mover a part that {@link #fault} finds no fault with
     * @param speed rad/s, above zero
     */
    static MoverCharacteristic of(AirMover mover, double speed) {
        return of(mover, Optional.empty(), speed, Derating.NONE);
    }

    /**
     * The characteristic of a mover at a speed.
     *
     * @param mover     a part that {@link #fault} finds no fault with
     * @param frequency supply frequency, Hz; decides which curves are taken where they state different ones
     * @param speed     rad/s, above zero
     * @param derating  how its surroundings change the curve
     */
    static MoverCharacteristic of(AirMover mover, Optional<Double> frequency, double speed, Derating derating) {
        return new MoverCharacteristic(mover, MeasuredCurves.of(mover, frequency).curves(), speed, derating);
    }

    private static Optional<Double> measuredSpeed(AirMover mover, MoverCurve curve) {
        return curve.speed().map(Quantity::si).or(mover::ratedSpeedSi);
    }

    /** Rotor diameter of the part over that of the mover which was measured; 1 where either is not stated. */
    static double sizeRatio(AirMover mover, MoverCurve curve) {
        return mover.rotorDiameter().isPresent() && curve.rotorDiameter().isPresent()
                ? mover.rotorDiameter().get().si() / curve.rotorDiameter().get().si() : 1;
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

    private double rise(double flow) {
        double rise = 0;
        for (int i = 0; i < curves.length; i++) {
            rise += curves[i].rise(flow);
        }
        return rise;
    }

    private double slope(double flow) {
        double slope = 0;
        for (int i = 0; i < curves.length; i++) {
            slope += curves[i].slope(flow);
        }
        return slope;
    }

    @Override
    public void at(double flow, double density, double viscosity, Drop drop) {
        drop.set(-rise(flow) * density, -slope(flow) * density);
    }

    @Override
    public boolean increasing() {
        return falling;
    }

    /** Electrical input, W, where a curve or the part states it; beyond the ends of a curve that at the end. */
    public OptionalDouble power(double flow, double density) {
        return powers.length > 0 ? OptionalDouble.of(fixed + density * power(flow))
                : flat.isPresent() ? OptionalDouble.of(fixed + density * flat.getAsDouble()) : OptionalDouble.empty();
    }

    /** Electrical input per density, but for what does not follow the speed. */
    private double power(double flow) {
        double power = 0;
        for (Powered each : powers) {
            power += each.power(flow);
        }
        return power;
    }

    /** Speed, rad/s. */
    double speed() {
        return speed;
    }

    /** Speed of the measurement that it is taken from, rad/s; the nearest of two. */
    double measuredSpeed() {
        return nearest.speed();
    }

    /** The measured curves that it is mixed from, with their speeds and how much each counts: one, or two. */
    List<Share> shares() {
        return shares;
    }

    /** Density that the measurement is stated for, kg/m³. */
    double statedDensity() {
        return nearest.curve().statedDensity();
    }

    /** Smallest flow that was measured, brought to this speed, m³/s. */
    double firstFlow() {
        return flows[0];
    }

    /** Largest flow that was measured, brought to this speed, m³/s. */
    public double lastFlow() {
        return flows[flows.length - 1];
    }

    /** Number of measured points, those of both curves where two are mixed. */
    int points() {
        return flows.length;
    }

    /** Flow of a measured point, brought to this speed, m³/s; they rise. */
    double flow(int point) {
        return flows[point];
    }

    /** Fan static pressure at the flow of a measured point at this speed and the stated density, Pa. */
    double pressure(int point) {
        return rise(flows[point]) * statedDensity();
    }

    /**
     * The flow at the pressure peak to the right of a dip, or of a piece that rises from rest, m³/s: left of it the curve
     * does not fall all the way. Empty for a curve that falls, where it rises only towards its end, and where it rises by
     * less than a ten-thousandth of its highest pressure, as a mixed curve may by little more than rounding.
     */
    OptionalDouble peakFlow() {
        if (falling) {
            return OptionalDouble.empty();
        }
        double[] places = places();
        double highest = Arrays.stream(places).map(this::rise).max().orElseThrow();
        // at a measured point the slope may be nothing, but for rounding
        double least = LEAST_FALL * highest / lastFlow();
        for (int i = places.length - 2; i >= 0; i--) {
            if (slope(places[i]) > least && slope(places[i + 1]) <= least) {
                int dip = i;
                while (dip > 0 && slope(places[dip - 1]) > least) {
                    dip--;
                }
                double low = Math.min(rise(places[dip]), rise(places[Math.max(0, dip - 1)]));
                double peak = turn(places[i], places[i + 1]);
                if (peak < lastFlow() && rise(peak) - low > LEAST_PEAK * highest) {
                    return OptionalDouble.of(peak);
                }
            }
        }
        return OptionalDouble.empty();
    }

    /** The measured flows, and places between them. */
    private double[] places() {
        double[] places = new double[(flows.length - 1) * STEPS + 1];
        for (int i = 0; i < places.length; i++) {
            int piece = Math.min(i / STEPS, flows.length - 2);
            places[i] = flows[piece] + (flows[piece + 1] - flows[piece]) * (i - piece * STEPS) / STEPS;
        }
        return places;
    }

    /** Where the curve stops rising, by halving. */
    private double turn(double rising, double notRising) {
        double low = rising;
        double high = notRising;
        for (double middle = (low + high) / 2; middle > low && middle < high; middle = (low + high) / 2) {
            if (slope(middle) > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    /**
     * The measured flow at which flow times fan static pressure over electrical input is highest; empty where no power is
     * stated or the mover gives no pressure at any flow above zero.
     *
     * @param density kg/m³; flow and efficiency do not depend on it as far as the fan laws hold and nothing is lost at any speed
     */
    Optional<Best> bestEfficiency(double density) {
        if (powers.length == 0 || !(density > 0)) {
            return Optional.empty();
        }
        double[] places = places();
        int best = 0;
        for (int i = 1; i < places.length; i++) {
            best = efficiency(places[i], density) > efficiency(places[best], density) ? i : best;
        }
        double flow = bestBetween(places[Math.max(0, best - 1)], places[Math.min(places.length - 1, best + 1)], places[best],
                density);
        double efficiency = efficiency(flow, density);
        return efficiency > 0 ? Optional.of(new Best(flow, efficiency)) : Optional.empty();
    }

    private double efficiency(double flow, double density) {
        double power = fixed + density * power(flow);
        return power > 0 ? density * flow * rise(flow) / power : Double.NEGATIVE_INFINITY;
    }

    /** The flow of highest efficiency between two bounds, by the golden section; the start where none is better. */
    private double bestBetween(double from, double to, double start, double density) {
        double low = from;
        double high = to;
        double left = high - GOLDEN * (high - low);
        double right = low + GOLDEN * (high - low);
        while (right - left > 1e-12 * to) {
            if (efficiency(left, density) >= efficiency(right, density)) {
                high = right;
            } else {
                low = left;
            }
            left = high - GOLDEN * (high - low);
            right = low + GOLDEN * (high - low);
        }
        return DoubleStream.of(start, left).boxed().max(Comparator.comparingDouble(flow -> efficiency(flow, density))).orElseThrow();
    }
}
