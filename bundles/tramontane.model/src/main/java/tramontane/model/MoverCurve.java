package tramontane.model;

import java.util.Optional;
import tramontane.physics.units.QuantityKind;

/**
 * One measured characteristic of an air mover: fan static pressure against actual inlet volume flow (ISO 5801).
 *
 * @param speed         speed of the rotor it was measured at, rad/s
 * @param voltage       supply voltage it was measured at, V
 * @param frequency     supply frequency it was measured at, Hz
 * @param density       air density it is stated for, kg/m³; standard air of 1.2 kg/m³ where not given
 * @param rotorDiameter rotor diameter of the mover it was measured on, m; the part itself where not given
 * @param flow          actual inlet volume flows, m³/s, each larger than the one before
 * @param pressure      fan static pressure at each flow, Pa
 * @param power         electrical input at each flow, W
 * @param tolerance     relative tolerance of the pressure at equal flow, for example 0.1
 * @param more          notes and unknown members
 */
public record MoverCurve(Optional<Quantity> speed, Optional<Quantity> voltage, Optional<Quantity> frequency,
        Optional<Quantity> density, Optional<Quantity> rotorDiameter, Quantities flow, Quantities pressure,
        Optional<Quantities> power, Optional<Quantity> tolerance, Value.Tree more) implements Noun {

    /** Density of standard air, kg/m³ (ISO 5801). */
    public static final double STANDARD_DENSITY = 1.2;

    /** The fields in the file. */
    public static final Form FORM = Form.of("curve", "One measured characteristic of an air mover.",
            Field.amount("speed", "speed", QuantityKind.ROTATIONAL_SPEED, Range.POSITIVE,
                    "Speed of the rotor during the measurement."),
            Field.amount("voltage", "voltage", QuantityKind.VOLTAGE, Range.POSITIVE,
                    "Supply voltage during the measurement."),
            Field.amount("frequency", "frequency", QuantityKind.FREQUENCY, Range.POSITIVE,
                    "Supply frequency during the measurement (AC)."),
            Field.amount("density", "density", QuantityKind.DENSITY, Range.POSITIVE,
                    "Air density the curve is stated for.").standard("1.2 kg/m³"),
            Field.amount("rotorDiameter", "rotor diameter", QuantityKind.LENGTH, Range.POSITIVE,
                    "Rotor diameter of the geometrically similar mover that was measured; the part itself where not given."),
            Field.increasing("flow", "flow", QuantityKind.FLOW, Range.NOT_NEGATIVE, 2,
                    "Actual volume flow at the inlet, each larger than the one before.").mandatory(),
            Field.amounts("pressure", "static pressure", QuantityKind.PRESSURE, Range.ANY, 2,
                    "Fan static pressure at each flow.").mandatory(),
            Field.amounts("power", "electrical power", QuantityKind.POWER, Range.NOT_NEGATIVE, 2,
                    "Electrical input at each flow."),
            Field.amount("tolerance", "tolerance", QuantityKind.FRACTION, Range.between(0, 0.5),
                    "Relative tolerance of the pressure at equal flow."));

    /** A curve that was measured on the part itself. */
    public MoverCurve(Optional<Quantity> speed, Optional<Quantity> voltage, Optional<Quantity> frequency,
            Optional<Quantity> density, Quantities flow, Quantities pressure, Optional<Quantities> power,
            Optional<Quantity> tolerance, Value.Tree more) {
        this(speed, voltage, frequency, density, Optional.empty(), flow, pressure, power, tolerance, more);
    }

    /** Reads a curve from values of its {@link #FORM}. */
    public static MoverCurve from(Values values) {
        return new MoverCurve(values.ifQuantity("speed"), values.ifQuantity("voltage"), values.ifQuantity("frequency"),
                values.ifQuantity("density"), values.ifQuantity("rotorDiameter"),
                values.ifQuantities("flow").orElse(Quantities.of()),
                values.ifQuantities("pressure").orElse(Quantities.of()), values.ifQuantities("power"),
                values.ifQuantity("tolerance"), values.rest());
    }

    /** The density the curve is stated for, kg/m³. */
    public double statedDensity() {
        return density.map(Quantity::si).orElse(STANDARD_DENSITY);
    }

    /** This curve at a stated voltage. */
    public MoverCurve withVoltage(Quantity changed) {
        return new MoverCurve(speed, Optional.of(changed), frequency, density, rotorDiameter, flow, pressure, power, tolerance, more);
    }

    @Override
    public Value.Tree tree() {
        return new TreeBuilder().quantity("speed", speed).quantity("voltage", voltage).quantity("frequency", frequency)
                .quantity("density", density).quantity("rotorDiameter", rotorDiameter)
                .quantities("flow", flow).quantities("pressure", pressure).quantities("power", power)
                .quantity("tolerance", tolerance).build(more);
    }
}
