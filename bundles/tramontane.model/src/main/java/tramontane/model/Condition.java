package tramontane.model;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.physics.units.QuantityKind;

/**
 * One named operating case.
 *
 * @param id                 its name, unique among conditions
 * @param outsideTemperature temperature of the air outside, K
 * @param altitude           geometric altitude, m; decides the pressure where that is not given
 * @param pressure           barometric pressure, Pa
 * @param humidity           relative humidity outside, 0 to 1
 * @param heatFactor         factor on the heat of every source
 * @param heatFactors        factor on the heat of single sources, on top of {@code heatFactor}
 * @param clogging           factor on the pressure drop of filters at equal flow
 * @param supplyVoltage      supply voltage of the movers, V
 * @param supplyFrequency    supply frequency of the movers, Hz
 * @param speed              speed setting of the movers, 1 for full
 * @param failed             movers that have failed
 * @param more               sections, notes and unknown members
 */
public record Condition(String id, Optional<Quantity> outsideTemperature, Optional<Quantity> altitude,
        Optional<Quantity> pressure, Optional<Quantity> humidity, Optional<Quantity> heatFactor,
        Map<String, Quantity> heatFactors, Optional<Quantity> clogging, Optional<Quantity> supplyVoltage,
        Optional<Quantity> supplyFrequency, Optional<Quantity> speed, List<FailedMover> failed, Value.Tree more)
        implements Noun {

    /** The fields in the file. */
    public static final Form FORM = Form.of("condition", "One named operating case.",
            Field.words("id", "name", "Name, unique among conditions.").mandatory(),
            Field.amount("outsideTemperature", "outside temperature", QuantityKind.TEMPERATURE, Range.between(173.15, 373.15),
                    "Temperature of the air outside.").standard("20 °C"),
            Field.amount("altitude", "altitude", QuantityKind.LENGTH, Range.between(-500, 11000),
                    "Altitude above sea level (ISO 2533); decides the pressure where that is not given.").standard("0 m"),
            Field.amount("pressure", "barometric pressure", QuantityKind.PRESSURE, Range.between(20000, 120000),
                    "Barometric pressure; from the altitude where not given."),
            Field.amount("humidity", "relative humidity", QuantityKind.FRACTION, Range.SHARE,
                    "Relative humidity outside.").standard("50 %"),
            Field.amount("heatFactor", "heat factor", QuantityKind.FRACTION, Range.NOT_NEGATIVE,
                    "Factor on the heat of every source.").standard("100 %"),
            Field.of("heatFactors", "heat factors", new Shape.AmountsByName(QuantityKind.FRACTION, Range.NOT_NEGATIVE,
                    Shape.Target.HEAT_SOURCE), "Factors on the heat of single sources, on top of the heat factor."),
            Field.amount("clogging", "filter clogging", QuantityKind.NUMBER, Range.atLeast(1),
                    "Factor on the pressure drop of filters at equal flow: 1 clean, 2 twice the pressure.").standard(1),
            Field.amount("supplyVoltage", "supply voltage", QuantityKind.VOLTAGE, Range.NOT_NEGATIVE,
                    "Supply voltage of the movers; rated where not given."),
            Field.amount("supplyFrequency", "supply frequency", QuantityKind.FREQUENCY, Range.POSITIVE,
                    "Supply frequency of the movers; rated where not given."),
            Field.amount("speed", "speed setting", QuantityKind.FRACTION, Range.between(0, 1.5),
                    "Speed setting of the movers, 100 % for full: what their control is set to; without one, the part of their rated speed.").standard("100 %"),
            Field.parts("failed", "failed movers", FailedMover.FORM, "Movers that have failed in this condition."));

    /** The condition that holds where a design names none: 20 °C, sea level, 50 % humidity, everything in order. */
    public static final Condition NOMINAL = named("nominal");

    public Condition {
        heatFactors = Collections.unmodifiableMap(new LinkedHashMap<>(heatFactors));
        failed = List.copyOf(failed);
    }

    /** A condition with nothing but a name. */
    public static Condition named(String id) {
        return new Condition(id, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Map.of(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), List.of(), Value.Tree.EMPTY);
    }

    /** Reads a condition from values of its {@link #FORM}. */
    public static Condition from(Values values) {
        return new Condition(values.text("id"), values.ifQuantity("outsideTemperature"), values.ifQuantity("altitude"),
                values.ifQuantity("pressure"), values.ifQuantity("humidity"), values.ifQuantity("heatFactor"),
                values.byName("heatFactors"), values.ifQuantity("clogging"), values.ifQuantity("supplyVoltage"),
                values.ifQuantity("supplyFrequency"), values.ifQuantity("speed"),
                values.parts("failed").stream().map(FailedMover::from).toList(), values.rest());
    }

    /** Outside temperature, K; 20 °C where not given. */
    public double temperature() {
        return outsideTemperature.map(Quantity::si).orElse(293.15);
    }

    /** Relative humidity, 0 to 1; 0.5 where not given. */
    public double relativeHumidity() {
        return humidity.map(Quantity::si).orElse(0.5);
    }

    /** Altitude, m; 0 where not given. */
    public double altitudeMetres() {
        return altitude.map(Quantity::si).orElse(0.0);
    }

    /** Factor on the pressure drop of filters; 1 where not given. */
    public double cloggingFactor() {
        return clogging.map(Quantity::si).orElse(1.0);
    }

    /** Speed setting; 1 where not given. */
    public double speedSetting() {
        return speed.map(Quantity::si).orElse(1.0);
    }

    /** Heat of a source in this condition, W. */
    public double heat(HeatSource source) {
        return source.power().si() * heatFactor.map(Quantity::si).orElse(1.0)
                * Optional.ofNullable(heatFactors.get(source.id())).map(Quantity::si).orElse(1.0);
    }

    /** This condition under another name with other failed movers. */
    public Condition with(String changedId, List<FailedMover> changedFailed) {
        return new Condition(changedId, outsideTemperature, altitude, pressure, humidity, heatFactor, heatFactors, clogging,
                supplyVoltage, supplyFrequency, speed, changedFailed, more);
    }

    /** This condition at another speed setting. */
    public Condition withSpeed(Quantity changed) {
        return new Condition(id, outsideTemperature, altitude, pressure, humidity, heatFactor, heatFactors, clogging,
                supplyVoltage, supplyFrequency, Optional.of(changed), failed, more);
    }

    /** This condition at another supply voltage. */
    public Condition withSupplyVoltage(Quantity changed) {
        return new Condition(id, outsideTemperature, altitude, pressure, humidity, heatFactor, heatFactors, clogging,
                Optional.of(changed), supplyFrequency, speed, failed, more);
    }

    @Override
    public Value.Tree tree() {
        return new TreeBuilder().text("id", id).quantity("outsideTemperature", outsideTemperature)
                .quantity("altitude", altitude).quantity("pressure", pressure).quantity("humidity", humidity)
                .quantity("heatFactor", heatFactor).byName("heatFactors", heatFactors).quantity("clogging", clogging)
                .quantity("supplyVoltage", supplyVoltage).quantity("supplyFrequency", supplyFrequency)
                .quantity("speed", speed).items("failed", failed.stream().map(FailedMover::tree).toList()).build(more);
    }
}
