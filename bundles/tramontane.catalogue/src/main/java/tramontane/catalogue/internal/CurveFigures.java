package tramontane.catalogue.internal;

import java.util.List;
import java.util.Optional;
import tramontane.model.AirMover;
import tramontane.model.MoverCurve;
import tramontane.model.Quantities;
import tramontane.model.Quantity;
import tramontane.physics.FanLaws;
import tramontane.physics.MonotoneCurve;
import tramontane.physics.RootSearch;

/**
 * Figures of one measured curve, brought to another speed, size and density by the fan laws. NaN stands for a figure that the
 * curve does not give.
 *
 * @param freeDelivery   flow at no static pressure, m³/s
 * @param shutOff        static pressure at no flow, Pa
 * @param bestFlow       flow at the best efficiency, m³/s
 * @param bestPressure   static pressure at the best efficiency, Pa
 * @param bestEfficiency largest ratio of flow times static pressure to electrical input
 */
public record CurveFigures(double freeDelivery, double shutOff, double bestFlow, double bestPressure, double bestEfficiency) {

    /** Figures of no curve. */
    public static final CurveFigures NONE = new CurveFigures(Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);

    /** Steps in which each interval between measured points is searched for the best efficiency. */
    private static final int STEPS = 8;

    /**
     * How a curve goes to another speed, size and density.
     *
     * @param speed   speed over that of the measurement
     * @param size    diameter over that of the measured mover
     * @param density density over that of the curve
     */
    public record Scale(double speed, double size, double density) {

        /** Whether the fan laws can be applied to it. */
        private boolean sound() {
            double power = speed * speed * speed * size * size * size * size * size * density;
            return power > 0 && power < Double.POSITIVE_INFINITY && speed * size * size * size > 0 && speed * speed * size * size > 0;
        }
    }

    /** Figures of a part at its rated speed, in its size, in standard air, from the curve nearest to that speed. */
    public static CurveFigures of(AirMover part) {
        double rated = part.ratedSpeedSi().orElse(Double.NaN);
        double diameter = si(part.rotorDiameter());
        return nearest(part.curves(), rated).map(curve -> {
            double speed = curve.speed().isPresent() && rated > 0 ? rated / curve.speed().get().si() : 1;
            double size = curve.rotorDiameter().isPresent() && diameter > 0 ? diameter / curve.rotorDiameter().get().si() : 1;
            return of(curve.flow().toArray(), curve.pressure().toArray(), curve.power().map(Quantities::toArray)
                    .orElse(new double[0]), si(part.ratedPower()), part.fixedLoss().map(Quantity::si).orElse(0.0),
                    new Scale(speed, size, MoverCurve.STANDARD_DENSITY / curve.statedDensity()));
        }).orElse(NONE);
    }

    /** The curve nearest to a speed; the first of several. */
    private static Optional<MoverCurve> nearest(List<MoverCurve> curves, double rated) {
        MoverCurve nearest = null;
        double least = Double.POSITIVE_INFINITY;
        for (MoverCurve curve : curves) {
            double far = distance(si(curve.speed()), rated);
            if (nearest == null || far < least) {
                nearest = curve;
                least = far;
            }
        }
        return Optional.ofNullable(nearest).filter(curve -> curve.flow().size() >= 2
                && curve.pressure().size() == curve.flow().size()
                && curve.power().filter(power -> power.size() != curve.flow().size()).isEmpty());
    }

    private static double si(Optional<Quantity> quantity) {
        return quantity.map(Quantity::si).orElse(Double.NaN);
    }

    /**
     * Figures of a curve.
     *
     * @param flow     volume flows, m³/s, each larger than the one before
     * @param pressure static pressure at each flow, Pa
     * @param power    electrical input at each flow, W; none where the curve states none
     * @param flat     electrical input at every flow where the curve states none, W, brought to the new speed, size and density
     *                 already; NaN for none
     * @param fixed    part of the electrical input that does not follow the speed, W
     * @param scale    how the curve is scaled
     */
    public static CurveFigures of(double[] flow, double[] pressure, double[] power, double flat, double fixed, Scale scale) {
        if (!scale.sound()) {
            return NONE;
        }
        int last = flow.length - 1;
        MonotoneCurve curve;
        MonotoneCurve input;
        try {
            curve = MonotoneCurve.of(flow, pressure);
            input = power.length > 0 ? MonotoneCurve.of(flow, power) : null;
        } catch (IllegalArgumentException e) {
            return NONE; // points so near to each other that no slope between them is finite
        }
        double flowRatio = FanLaws.flowRatio(scale.speed, scale.size);
        double pressureRatio = FanLaws.pressureRatio(scale.speed, scale.size, scale.density);
        double powerRatio = FanLaws.powerRatio(scale.speed, scale.size, scale.density);

        double free = Double.NaN;
        for (int i = pressure[last] > 0 ? 0 : last; i > 0 && Double.isNaN(free); i--) {
            if (pressure[i] <= 0 && pressure[i - 1] > 0) {
                free = pressure[i] == 0 ? flow[i] : RootSearch.between(curve::value, flow[i - 1], flow[i], pressure[i - 1], pressure[i],
                        1e-12 * flow[i], 0).at();
            }
        }
        double bestFlow = Double.NaN;
        double bestPressure = Double.NaN;
        double best = 0;
        if (input != null || flat > 0) {
            for (int i = 0; i < last; i++) {
                double step = (flow[i + 1] - flow[i]) / STEPS;
                for (int k = 0; k <= STEPS; k++) {
                    double q = k == STEPS ? flow[i + 1] : flow[i] + k * step;
                    double p = curve.value(q);
                    double taken = input == null ? flat : fixed + Math.max(0, input.value(q) - fixed) * powerRatio;
                    double efficiency = q * flowRatio * p * pressureRatio / taken;
                    if (efficiency > best && efficiency < Double.POSITIVE_INFINITY) {
                        best = efficiency;
                        bestFlow = q * flowRatio;
                        bestPressure = p * pressureRatio;
                    }
                }
            }
        }
        return new CurveFigures(free * flowRatio, flow[0] == 0 ? pressure[0] * pressureRatio : Double.NaN, bestFlow, bestPressure,
                best > 0 ? best : Double.NaN);
    }

    /**
     * How far the speed of a curve lies from the rated one, by ratio.
     *
     * @param measured speed of the curve, rad/s; NaN where it states none, which counts as rated
     * @param rated    rated speed, rad/s; NaN where it is not known
     */
    public static double distance(double measured, double rated) {
        double far = Math.abs(Math.log(measured / rated));
        return Double.isNaN(far) ? 0 : far;
    }

    /**
     * Specific speed ω √Q / (Δp/ρ)^0.75 at the best efficiency.
     *
     * <p>Source: S. L. Dixon, C. A. Hall, Fluid Mechanics and Thermodynamics of Turbomachinery, 7th ed. (2014), section 2.5, with
     * the specific work g H of the fluid as Δp/ρ; here of the static pressure. From memory.
     *
     * @param speed   rad/s
     * @param density kg/m³
     */
    public double specificSpeed(double speed, double density) {
        double specific = speed * Math.sqrt(bestFlow) / Math.pow(bestPressure / density, 0.75);
        return Double.isFinite(specific) ? specific : Double.NaN;
    }
}
