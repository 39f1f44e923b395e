package tramontane.thermal.internal.links;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.AirStream;
import tramontane.analysis.Finding;
import tramontane.analysis.LinkKind;
import tramontane.analysis.LinkLaw;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Relation;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Range;
import tramontane.model.Values;
import tramontane.physics.units.QuantityKind;

/**
 * A board whose heat is spread evenly over it; its mean temperature counts.
 *
 * <p>Alone in the air it counts from the mean of the air at its place. With a channel it warms the air of that channel only, and
 * counts from the air that comes to it: R = 1/(h A) + 1/(2 m cp), half of what that air takes up on its way. The boards beside it
 * are taken to be alike.
 *
 * <p>On a passage of kind card cage its sizes and its channel are those of the cage where it gives none, and the velocity is that in
 * the channels.
 */
@Component(service = LinkKind.class)
public final class BoardKind implements LinkKind {

    private static final Relation PLATE = new Relation("flat plate", "R = 1/(h A), h = Nu k/L, Nu = 0.664 Re^½ Pr^⅓ up to Re 5e5",
            "E. Pohlhausen, Z. angew. Math. Mech. 1 (1921) 115-121; F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass "
                    + "Transfer, ch. 7", "a smooth board alone in the air; components make its real temperature lower");

    private static final Relation CHANNEL = new Relation("channel beside a board", "R = 1/(h A) + 1/(2 m cp), h = Nu k/d",
            "K. Stephan, Chem. Ing. Tech. 31 (1959) 773-778, laminar; V. Gnielinski, Int. J. Heat Mass Transfer 63 (2013) 134-140; one "
                    + "warm wall: R. K. Shah, A. L. London, Laminar Flow Forced Convection in Ducts (1978), from memory",
            "a smooth channel between boards alike; the end of a board is warmer than its mean");

    private static final Map<String, String> NAMES = Map.of("width", "height", "length", "length");
    private static final Form CAGE = Form.open(Place.CARD_CAGE, "What a board takes over from its cage.",
            Fields.length("pitch", "pitch", ""),
            // as the cage itself takes them where they are not given
            Field.amount("boardThickness", "board thickness", QuantityKind.LENGTH, Range.NOT_NEGATIVE, "").standard("1.6 mm"),
            Field.amount("componentHeight", "component height", QuantityKind.LENGTH, Range.NOT_NEGATIVE, "").standard("0 mm"),
            Fields.length("height", "height", ""), Fields.length("length", "length", ""),
            Field.whole("boards", "boards", 1, 10_000, ""));

    private static final Form FORM = Form.of("board", "A circuit board whose heat is spread evenly over it.",
            Fields.length("width", "width", "Width across the flow; that of its card cage where not given."),
            Fields.length("length", "length", "Length along the flow; that of its card cage where not given."),
            Field.whole("sides", "sides", 1, 2, "How many of its sides give off heat.").standard(1),
            Fields.length("channel", "channel", "Free distance to the next board or to a wall; that of its card cage where not"
                    + " given; without, it is alone in the air."),
            Field.whole("boards", "boards", 1, 10_000, "How many boards alike the heat is spread over.").standard(1),
            Approach.FLOW_AREA, Approach.VELOCITY);

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Step step() {
        return Step.SURFACE;
    }

    private static Shape shape(Values values, Setting setting) {
        return Shape.of(values, setting, Place.CARD_CAGE, CAGE, NAMES);
    }

    /** Free distance beside the board, m; empty where it is alone in the air. */
    private static OptionalDouble channel(Shape shape) {
        if (shape.own().has("channel")) {
            return OptionalDouble.of(shape.own().si("channel"));
        }
        Values cage = shape.place();
        return cage.has("pitch") ? OptionalDouble.of(cage.si("pitch") - cage.si("boardThickness") - cage.si("componentHeight"))
                : OptionalDouble.empty();
    }

    @Override
    public List<Problem> check(Values values, Setting setting, String place) {
        List<Problem> problems = new ArrayList<>(Shape.missing(setting, place, Place.CARD_CAGE, NAMES, List.of("width", "length")));
        problems.addAll(Approach.check(setting, place));
        Optional<Integer> cage = Place.of(setting).is(Place.CARD_CAGE) ? shape(values, setting).place().ifWhole("boards") : Optional.empty();
        if (cage.isPresent() && values.ifWhole("boards").filter(boards -> boards > cage.get()).isPresent()) {
            problems.add(Problem.error(Problem.place(place, "boards"), "is " + values.whole("boards") + ", more than the card cage has; expected "
                    + cage.get() + " at most"));
        }
        return problems;
    }

    private static double coefficient(Values values, Shape shape, AirStream air) {
        double velocity = Approach.velocity(values, air);
        OptionalDouble channel = channel(shape);
        return channel.isPresent()
                ? Convection.inChannel(channel.getAsDouble(), shape.si("width"), shape.si("length"), values.whole("sides") == 2, velocity, air)
                : Convection.alongPlate(shape.si("length"), velocity, air);
    }

    private static double area(Values values, Shape shape) {
        return values.whole("boards") * values.whole("sides") * shape.si("width") * shape.si("length");
    }

    /** Heat that the air of the channels carries per kelvin, W/K: that of one channel for each board, and no more than comes. */
    private static double capacity(Values values, Shape shape, AirStream air) {
        double flow = values.whole("boards") * channel(shape).orElseThrow() * shape.si("width") * Approach.velocity(values, air);
        return (air.flow() > 0 ? Math.min(flow, air.flow()) : flow) * air.density() * air.specificHeat();
    }

    @Override
    public boolean fromInlet(Values values, Setting setting) {
        return channel(shape(values, setting)).isPresent();
    }

    @Override
    public LinkLaw law(Values values, Setting setting) {
        Shape shape = shape(values, setting);
        double area = area(values, shape);
        return channel(shape).isPresent()
                ? (air, beyond) -> 1 / (coefficient(values, shape, air) * area) + 1 / (2 * capacity(values, shape, air))
                : (air, beyond) -> 1 / (coefficient(values, shape, air) * area);
    }

    @Override
    public List<Finding> findings(Values values, Setting setting, AirStream air) {
        List<Finding> findings = new ArrayList<>(Remarks.approach(values, setting, air));
        Optional<Integer> cage = Place.of(setting).is(Place.CARD_CAGE) ? shape(values, setting).place().ifWhole("boards") : Optional.empty();
        cage.filter(boards -> boards > 1 && !values.has("boards")).ifPresent(boards -> findings.add(Finding.note(setting.source().id(),
                Remarks.name(setting) + " is taken as one board of the " + boards + " in the card cage")
                .remedy("say over how many boards the heat is spread")));
        return findings;
    }

    @Override
    public Optional<PassageKind.Origin> origin(Values values, Setting setting, AirStream air) {
        Shape shape = shape(values, setting);
        Inputs inputs = Inputs.of(setting).length("width", shape.si("width")).length("length L", shape.si("length"))
                .count("sides", values.whole("sides")).count("boards", values.whole("boards"));
        OptionalDouble channel = channel(shape);
        channel.ifPresent(gap -> inputs.length("channel", gap));
        inputs.area("area A", area(values, shape)).velocity("velocity", Approach.velocity(values, air)).air(air)
                .coefficient("heat transfer coefficient h", coefficient(values, shape, air));
        if (channel.isPresent()) {
            inputs.number("heat m cp of the air in W/K", capacity(values, shape, air));
        }
        return Optional.of(inputs.of(channel.isPresent() ? CHANNEL : PLATE));
    }
}
