package tramontane.model;

import java.util.List;
import java.util.Optional;
import tramontane.physics.units.QuantityKind;

/**
 * What is to be cooled, as a whole.
 *
 * @param name     what it is called
 * @param width    outer width, m
 * @param height   outer height, m
 * @param depth    outer depth, m
 * @param attitude how it stands: one of {@link #ATTITUDES}
 * @param place    where it is used, in words
 * @param more     sections, notes and unknown members
 */
public record Equipment(String name, Optional<Quantity> width, Optional<Quantity> height, Optional<Quantity> depth,
        Optional<String> attitude, String place, Value.Tree more) implements Noun {

    /** How equipment may stand. */
    public static final List<String> ATTITUDES = List.of("upright", "on its side", "on its back", "upside down", "any");

    /** Equipment of which nothing is said. */
    public static final Equipment UNNAMED = new Equipment("", Optional.empty(), Optional.empty(), Optional.empty(),
            Optional.empty(), "", Value.Tree.EMPTY);

    /** The fields in the file. */
    public static final Form FORM = Form.of("equipment", "What is to be cooled, as a whole.",
            Field.words("name", "name", "What the equipment is called."),
            Field.amount("width", "width", QuantityKind.LENGTH, Range.POSITIVE, "Outer width."),
            Field.amount("height", "height", QuantityKind.LENGTH, Range.POSITIVE, "Outer height."),
            Field.amount("depth", "depth", QuantityKind.LENGTH, Range.POSITIVE, "Outer depth."),
            Field.choice("attitude", "attitude", ATTITUDES,
                    "How it stands in use; it decides shaft attitudes and natural convection."),
            Field.words("place", "place of use", "Where it is used, in words."));

    /** Reads equipment from values of its {@link #FORM}. */
    public static Equipment from(Values values) {
        return new Equipment(values.text("name"), values.ifQuantity("width"), values.ifQuantity("height"),
                values.ifQuantity("depth"), values.ifText("attitude"), values.text("place"), values.rest());
    }

    @Override
    public Value.Tree tree() {
        return new TreeBuilder().text("name", name).quantity("width", width).quantity("height", height)
                .quantity("depth", depth).text("attitude", attitude).text("place", place).build(more);
    }
}
