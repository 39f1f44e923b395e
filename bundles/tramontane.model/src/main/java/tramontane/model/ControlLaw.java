package tramontane.model;

import java.util.List;
import java.util.Optional;
import tramontane.physics.units.QuantityKind;

/**
 * Speed setting against a sensor's temperature, straight between its points.
 *
 * @param id          its name, unique among control laws
 * @param sensor      the bay, passage or heat source whose temperature it reads
 * @param banks       the banks it drives; all where none is named
 * @param temperature sensor temperatures, K, each larger than the one before
 * @param speed       speed setting at each, 0 to 1
 * @param hysteresis  temperature by which the way down lies below the way up, K
 * @param riseLimit   fastest rise of the setting, 1/s
 * @param fallLimit   fastest fall of the setting, 1/s
 * @param more        sections, notes and unknown members
 */
public record ControlLaw(String id, String sensor, List<String> banks, Quantities temperature, Quantities speed,
        Optional<Quantity> hysteresis, Optional<Quantity> riseLimit, Optional<Quantity> fallLimit, Value.Tree more)
        implements Noun {

    /** Change of a speed setting per second. */
    public static final QuantityKind SETTING_RATE = new QuantityKind("rate of change", "1/s");

    /** The fields in the file. */
    public static final Form FORM = Form.of("control law", "Speed setting against a sensor's temperature.",
            Field.words("id", "name", "Name, unique among control laws.").mandatory(),
            Field.reference("sensor", "sensor", Shape.Target.SENSOR, "The bay, passage or heat source whose temperature it reads.").mandatory(),
            Field.references("banks", "banks", Shape.Target.BANK, "The banks it drives; all where none is named."),
            Field.increasing("temperature", "sensor temperature", QuantityKind.TEMPERATURE, Range.POSITIVE, 1,
                    "Sensor temperatures, each larger than the one before.").mandatory(),
            Field.amounts("speed", "speed setting", QuantityKind.FRACTION, Range.SHARE, 1,
                    "Speed setting at each temperature.").mandatory(),
            Field.amount("hysteresis", "hysteresis", QuantityKind.TEMPERATURE_DIFFERENCE, Range.NOT_NEGATIVE,
                    "How far the way down lies below the way up.").standard("0 K"),
            Field.amount("riseLimit", "rise limit", SETTING_RATE, Range.POSITIVE, "Fastest rise of the setting, 1/s."),
            Field.amount("fallLimit", "fall limit", SETTING_RATE, Range.POSITIVE, "Fastest fall of the setting, 1/s."));

    public ControlLaw {
        banks = List.copyOf(banks);
    }

    /** Reads a control law from values of its {@link #FORM}. */
    public static ControlLaw from(Values values) {
        return new ControlLaw(values.text("id"), values.text("sensor"), values.names("banks"),
                values.ifQuantities("temperature").orElse(Quantities.of()),
                values.ifQuantities("speed").orElse(Quantities.of()), values.ifQuantity("hysteresis"),
                values.ifQuantity("riseLimit"), values.ifQuantity("fallLimit"), values.rest());
    }

    @Override
    public Value.Tree tree() {
        return new TreeBuilder().text("id", id).text("sensor", sensor).names("banks", banks)
                .quantities("temperature", temperature).quantities("speed", speed).quantity("hysteresis", hysteresis)
                .quantity("riseLimit", riseLimit).quantity("fallLimit", fallLimit).build(more);
    }
}
