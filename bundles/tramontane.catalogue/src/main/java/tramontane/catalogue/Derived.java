package tramontane.catalogue;

import java.util.OptionalDouble;
import tramontane.catalogue.internal.CurveFigures;
import tramontane.model.AirMover;
import tramontane.model.MoverCurve;
import tramontane.model.Quantity;
import tramontane.physics.FanLaws;

/**
 * What follows from the curves of a part: its figures at rated speed, in the size of the part, in air of
 * {@link MoverCurve#STANDARD_DENSITY}. They are taken from the curve measured nearest to the rated speed, by ratio, and brought
 * there by the {@linkplain FanLaws fan laws}; the fixed loss of the motor stays as it is. A curve without speed counts as measured
 * at rated speed.
 *
 * @param freeDelivery   volume flow at no static pressure, m³/s; empty where the curve does not come down to it
 * @param shutOff        static pressure at no flow, Pa; empty where the curve does not begin there
 * @param bestFlow       volume flow at the best efficiency, m³/s
 * @param bestPressure   static pressure at the best efficiency, Pa
 * @param bestEfficiency largest flow times static pressure over electrical input, wire to air, on the interpolated curve; the
 *                       rated power counts at every flow where the curve states none; empty without power
 * @param specificSpeed  ω √Q / (Δp/ρ)^0.75 at the best efficiency, without dimension (S. L. Dixon, C. A. Hall, Fluid Mechanics
 *                       and Thermodynamics of Turbomachinery, 7th ed. (2014), section 2.5, with static pressure; from memory)
 * @param tipSpeed       speed of the blade tips, m/s; empty without rotor diameter
 */
public record Derived(OptionalDouble freeDelivery, OptionalDouble shutOff, OptionalDouble bestFlow, OptionalDouble bestPressure,
        OptionalDouble bestEfficiency, OptionalDouble specificSpeed, OptionalDouble tipSpeed) {

    /** The figures of a part. */
    public static Derived of(AirMover part) {
        double rated = part.ratedSpeedSi().orElse(Double.NaN);
        CurveFigures figures = CurveFigures.of(part);
        double diameter = part.rotorDiameter().map(Quantity::si).orElse(Double.NaN);
        return new Derived(known(figures.freeDelivery()), known(figures.shutOff()), known(figures.bestFlow()),
                known(figures.bestPressure()), known(figures.bestEfficiency()),
                known(figures.specificSpeed(rated, MoverCurve.STANDARD_DENSITY)), known(rated * diameter / 2));
    }

    private static OptionalDouble known(double value) {
        return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
    }
}
