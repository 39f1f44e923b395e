package tramontane.model;

import java.util.Optional;
import tramontane.physics.units.QuantityKind;

/**
 * A volume of air with one pressure and one temperature.
 *
 * @param id     its name, unique among bays; {@link #OUTSIDE} is always there and never declared
 * @param height height of its middle above a common level, m; for stack effect
 * @param more   sections, notes and unknown members
 */
public record Bay(String id, Optional<Quantity> height, Value.Tree more) implements Noun {

    /** The bay whose pressure and temperature are known. */
    public static final String OUTSIDE = "outside";

    /** The fields in the file. */
    public static final Form FORM = Form.of("bay", "A volume of air with one pressure and one temperature.",
            Field.words("id", "name", "Name, unique among bays.").mandatory(),
            Field.amount("height", "height", QuantityKind.LENGTH, Range.ANY,
                    "Height of its middle above a common level, for stack effect.").standard("0 m"));

    /** A bay with nothing but a name. */
    public static Bay of(String id) {
        return new Bay(id, Optional.empty(), Value.Tree.EMPTY);
    }

    /** Reads a bay from values of its {@link #FORM}. */
    public static Bay from(Values values) {
        return new Bay(values.text("id"), values.ifQuantity("height"), values.rest());
    }

    /** Written short, as its name alone, where nothing else is said of it. */
    Value value() {
        return height.isEmpty() && more.isEmpty() ? new Value.Text(id) : tree();
    }

    @Override
    public Value.Tree tree() {
        return new TreeBuilder().text("id", id).quantity("height", height).build(more);
    }
}
