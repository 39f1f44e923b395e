package tramontane.model;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import tramontane.physics.units.QuantityKind;

/**
 * A fan, blower or cross-flow blower as a catalogue part.
 *
 * @param id               its part number, unique in the design
 * @param maker            who makes it
 * @param type             one of {@link #TYPES}
 * @param width            width of the frame, m
 * @param height           height of the frame, m
 * @param depth            depth of the frame along the flow, m
 * @param rotorDiameter    diameter of the rotor over its blades, m
 * @param openArea         area left open when only the hub and struts stand in the frame, m²
 * @param ratedSpeed       speed at rated supply in free air, rad/s
 * @param motor            one of {@link #MOTORS}
 * @param noLoadSpeed      speed of the motor without load at rated supply, the voltage of the curve nearest to the
 *                         rated speed, rad/s
 * @param category         installation category of the measurement, ISO 5801: A, B, C or D
 * @param lockedLoss       loss coefficient on the open area with the rotor held, measured
 * @param freewheelingLoss loss coefficient on the open area with the rotor turned by the air, measured
 * @param ratedPower       electrical input at rated speed in air of {@link MoverCurve#STANDARD_DENSITY}, W; counts at every
 *                         flow where no curve states power
 * @param fixedLoss        part of the electrical input that does not follow the speed: losses of motor and electronics, W
 * @param datasheet        what its data sheet says beside the aerodynamics
 * @param curves           measured characteristics
 * @param more             sections, notes and unknown members
 */
public record AirMover(String id, String maker, Optional<String> type, Optional<Quantity> width, Optional<Quantity> height,
        Optional<Quantity> depth, Optional<Quantity> rotorDiameter, Optional<Quantity> openArea, Optional<Quantity> ratedSpeed,
        Optional<String> motor, Optional<Quantity> noLoadSpeed, Optional<String> category, Optional<Quantity> lockedLoss,
        Optional<Quantity> freewheelingLoss, Optional<Quantity> ratedPower, Optional<Quantity> fixedLoss, Datasheet datasheet,
        List<MoverCurve> curves, Value.Tree more) implements Noun {

    /** Types of air mover. */
    public static final List<String> TYPES = List.of("axial", "mixed-flow", "centrifugal", "cross-flow");

    /** A DC motor whose speed follows voltage and load. */
    public static final String DC_UNREGULATED = "DC unregulated";

    /** Types of motor. */
    public static final List<String> MOTORS = List.of("AC", DC_UNREGULATED, "DC regulated", "EC");

    /** Installation categories of ISO 5801: free or ducted inlet and outlet. */
    public static final List<String> CATEGORIES = List.of("A", "B", "C", "D");

    /** The fields in the file. */
    public static final Form FORM = Form.of("air mover", "A fan or blower as a catalogue part.", Stream.of(Stream.of(
            Field.words("id", "part", "Part number, unique in the design.").mandatory(),
            Field.words("maker", "maker", "Who makes it."),
            Field.choice("type", "type", TYPES, "How air goes through the rotor."),
            Field.amount("width", "frame width", QuantityKind.LENGTH, Range.POSITIVE, "Width of the frame."),
            Field.amount("height", "frame height", QuantityKind.LENGTH, Range.POSITIVE, "Height of the frame."),
            Field.amount("depth", "frame depth", QuantityKind.LENGTH, Range.POSITIVE, "Depth along the flow."),
            Field.amount("rotorDiameter", "rotor diameter", QuantityKind.LENGTH, Range.POSITIVE,
                    "Diameter of the rotor over its blades; with that of a curve it says how far the curve is scaled in size."),
            Field.amount("openArea", "open area", QuantityKind.AREA, Range.POSITIVE,
                    "Area left open when the rotor is taken out: opening of the frame less hub and struts."),
            Field.amount("ratedSpeed", "rated speed", QuantityKind.ROTATIONAL_SPEED, Range.POSITIVE,
                    "Speed at rated supply; the speed of the first curve where not given."),
            Field.choice("motor", "motor", MOTORS,
                    "What drives it. The speed of an unregulated DC motor rises with voltage and in thin air."),
            Field.amount("noLoadSpeed", "no-load speed", QuantityKind.ROTATIONAL_SPEED, Range.POSITIVE,
                    "Speed of an unregulated DC motor without load at rated supply: the voltage of the curve nearest to the rated "
                            + "speed."),
            Field.choice("category", "installation category", CATEGORIES,
                    "ISO 5801: A free inlet and outlet, B ducted outlet, C ducted inlet, D both ducted."),
            Field.amount("lockedLoss", "loss when locked", QuantityKind.NUMBER, Range.POSITIVE,
                    "Measured drop of total pressure with the rotor held, over the velocity head in the open area."),
            Field.amount("freewheelingLoss", "loss when freewheeling", QuantityKind.NUMBER, Range.POSITIVE,
                    "Measured drop of total pressure with the rotor turned by the air, over the velocity head in the open area."),
            Field.amount("ratedPower", "rated power", QuantityKind.POWER, Range.POSITIVE,
                    "Electrical input at rated speed in air of 1.2 kg/m³: counts at every flow where no curve states power."),
            Field.amount("fixedLoss", "fixed loss", QuantityKind.POWER, Range.NOT_NEGATIVE,
                    "Part of the electrical input that does not follow the speed, such as losses of the electronics; none where not "
                            + "given. The rest goes with the cube of the speed.")),
            Datasheet.FIELDS.stream(),
            Stream.of(Field.parts("curves", "curves", MoverCurve.FORM, "Measured characteristics.").mandatory()))
            .flatMap(fields -> fields).toArray(Field[]::new));

    public AirMover {
        curves = List.copyOf(curves);
    }

    /** An air mover of which nothing is said about rotor, motor and losses at rest. */
    public AirMover(String id, String maker, Optional<String> type, Optional<Quantity> width, Optional<Quantity> height,
            Optional<Quantity> depth, Optional<Quantity> openArea, Optional<Quantity> ratedSpeed, Optional<String> category,
            List<MoverCurve> curves, Value.Tree more) {
        this(id, maker, type, width, height, depth, Optional.empty(), openArea, ratedSpeed, Optional.empty(), Optional.empty(),
                category, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Datasheet.EMPTY, curves, more);
    }

    /** Reads an air mover from values of its {@link #FORM}. */
    public static AirMover from(Values values) {
        return new AirMover(values.text("id"), values.text("maker"), values.ifText("type"), values.ifQuantity("width"),
                values.ifQuantity("height"), values.ifQuantity("depth"), values.ifQuantity("rotorDiameter"),
                values.ifQuantity("openArea"), values.ifQuantity("ratedSpeed"), values.ifText("motor"),
                values.ifQuantity("noLoadSpeed"), values.ifText("category"), values.ifQuantity("lockedLoss"),
                values.ifQuantity("freewheelingLoss"), values.ifQuantity("ratedPower"), values.ifQuantity("fixedLoss"),
                Datasheet.from(values), values.parts("curves").stream().map(MoverCurve::from).toList(), values.rest());
    }

    /** The rated speed, or that of the first curve that states one, rad/s. */
    public Optional<Double> ratedSpeedSi() {
        return ratedSpeed.or(() -> curves.stream().flatMap(curve -> curve.speed().stream()).findFirst()).map(Quantity::si);
    }

    /** This part with other curves. */
    public AirMover withCurves(List<MoverCurve> changed) {
        return new AirMover(id, maker, type, width, height, depth, rotorDiameter, openArea, ratedSpeed, motor, noLoadSpeed, category,
                lockedLoss, freewheelingLoss, ratedPower, fixedLoss, datasheet, changed, more);
    }

    /** This part under another id. */
    public AirMover withId(String changed) {
        return new AirMover(changed, maker, type, width, height, depth, rotorDiameter, openArea, ratedSpeed, motor, noLoadSpeed, category,
                lockedLoss, freewheelingLoss, ratedPower, fixedLoss, datasheet, curves, more);
    }

    @Override
    public Value.Tree tree() {
        return datasheet.write(new TreeBuilder().text("id", id).text("maker", maker).text("type", type).quantity("width", width)
                .quantity("height", height).quantity("depth", depth)
                .quantity("rotorDiameter", rotorDiameter).quantity("openArea", openArea).quantity("ratedSpeed", ratedSpeed)
                .text("motor", motor).quantity("noLoadSpeed", noLoadSpeed).text("category", category)
                .quantity("lockedLoss", lockedLoss).quantity("freewheelingLoss", freewheelingLoss)
                .quantity("ratedPower", ratedPower).quantity("fixedLoss", fixedLoss))
                .items("curves", curves.stream().map(MoverCurve::tree).toList()).build(more);
    }
}
