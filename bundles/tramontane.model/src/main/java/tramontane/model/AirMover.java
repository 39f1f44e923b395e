package tramontane.model;

import java.util.List;
import java.util.Optional;
import tramontane.physics.units.QuantityKind;

/**
 * A fan, blower or cross-flow blower as a catalogue part.
 *
 * @param id         its part number, unique in the design
 * @param maker      who makes it
 * @param type       one of {@link #TYPES}
 * @param width      width of the frame, m
 * @param height     height of the frame, m
 * @param depth      depth of the frame along the flow, m
 * @param openArea   area left open when only the hub and struts stand in the frame, m²
 * @param ratedSpeed speed at rated supply in free air, rad/s
 * @param category   installation category of the measurement, ISO 5801: A, B, C or D
 * @param curves     measured characteristics
 * @param more       sections, notes and unknown members
 */
public record AirMover(String id, String maker, Optional<String> type, Optional<Quantity> width, Optional<Quantity> height,
        Optional<Quantity> depth, Optional<Quantity> openArea, Optional<Quantity> ratedSpeed, Optional<String> category,
        List<MoverCurve> curves, Value.Tree more) implements Noun {

    /** Types of air mover. */
    public static final List<String> TYPES = List.of("axial", "mixed-flow", "centrifugal", "cross-flow");

    /** Installation categories of ISO 5801: free or ducted inlet and outlet. */
    public static final List<String> CATEGORIES = List.of("A", "B", "C", "D");

    /** The fields in the file. */
    public static final Form FORM = Form.of("air mover", "A fan or blower as a catalogue part.",
            Field.words("id", "part", "Part number, unique in the design.").mandatory(),
            Field.words("maker", "maker", "Who makes it."),
            Field.choice("type", "type", TYPES, "How air goes through the rotor."),
            Field.amount("width", "frame width", QuantityKind.LENGTH, Range.POSITIVE, "Width of the frame."),
            Field.amount("height", "frame height", QuantityKind.LENGTH, Range.POSITIVE, "Height of the frame."),
            Field.amount("depth", "frame depth", QuantityKind.LENGTH, Range.POSITIVE, "Depth along the flow."),
            Field.amount("openArea", "open area", QuantityKind.AREA, Range.POSITIVE,
                    "Area left open when the rotor is taken out: opening of the frame less hub and struts."),
            Field.amount("ratedSpeed", "rated speed", QuantityKind.ROTATIONAL_SPEED, Range.POSITIVE,
                    "Speed at rated supply; the speed of the first curve where not given."),
            Field.choice("category", "installation category", CATEGORIES,
                    "ISO 5801: A free inlet and outlet, B ducted outlet, C ducted inlet, D both ducted."),
            Field.parts("curves", "curves", MoverCurve.FORM, "Measured characteristics.").mandatory());

    public AirMover {
        curves = List.copyOf(curves);
    }

    /** Reads an air mover from values of its {@link #FORM}. */
    public static AirMover from(Values values) {
        return new AirMover(values.text("id"), values.text("maker"), values.ifText("type"), values.ifQuantity("width"),
                values.ifQuantity("height"), values.ifQuantity("depth"), values.ifQuantity("openArea"),
                values.ifQuantity("ratedSpeed"), values.ifText("category"),
                values.parts("curves").stream().map(MoverCurve::from).toList(), values.rest());
    }

    /** The rated speed, or that of the first curve that states one, rad/s. */
    public Optional<Double> ratedSpeedSi() {
        return ratedSpeed.or(() -> curves.stream().flatMap(curve -> curve.speed().stream()).findFirst()).map(Quantity::si);
    }

    /** The part as it stands in a file. */
    public Value.Tree tree() {
        return new TreeBuilder().text("id", id).text("maker", maker).text("type", type).quantity("width", width)
                .quantity("height", height).quantity("depth", depth).quantity("openArea", openArea)
                .quantity("ratedSpeed", ratedSpeed).text("category", category)
                .items("curves", curves.stream().map(MoverCurve::tree).toList()).build(more);
    }
}
