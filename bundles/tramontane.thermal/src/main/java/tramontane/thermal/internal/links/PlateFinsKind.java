package tramontane.thermal.internal.links;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
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
import tramontane.physics.heat.Bypass;
import tramontane.physics.heat.PlateFins;
import tramontane.physics.units.QuantityKind;

/**
 * The plate fins of a heat sink and the base between them, without conduction in the base; it counts from the air that comes to it.
 *
 * <p>On a passage of kind heat sink its sizes are those of the passage where it gives none, and all air of the passage goes between
 * the fins. Elsewhere it is given the part of the air that comes to it, and the duct round it where some goes past it.
 */
@Component(service = LinkKind.class)
public final class PlateFinsKind implements LinkKind {

    private static final double LAMINAR = 2300;
    /** Sizes written in other units may differ by rounding. */
    private static final double ROUNDING = 1e-9;
    private static final String TEERTSTRA = "P. Teertstra, M. M. Yovanovich, J. R. Culham, J. Electronics Manufacturing 10 (2000) 253-261";

    private static final Relation FINS = new Relation("plate fins", "R = 1/(h ((N - 1) b L + 2 N H L η)), h = Nu k/b, "
            + "Nu = ((Re* Pr/2)^-3 + (0.664 √Re* Pr^⅓ √(1 + 3.65/√Re*))^-3)^-⅓, Re* = v b²/(ν L), η = tanh(m H)/(m H)", TEERTSTRA,
            "Re* from 0.26 to 175, laminar; against the air that comes to it");

    private static final List<Field> SIZES = List.of(
            Field.whole("fins", "fins", 2, 100_000, "Number of fins."),
            Fields.length("finThickness", "fin thickness", "Thickness of a fin."),
            Fields.length("width", "width", "Width across the fins, from the outside of the first to that of the last."),
            Fields.length("height", "height", "Height of the fins above their base."),
            Fields.length("length", "length", "Length along the flow."));
    private static final List<String> NEEDED = SIZES.stream().map(Field::name).toList();
    private static final Map<String, String> NAMES = Map.of("fins", "fins", "finThickness", "finThickness", "width", "width",
            "height", "height", "length", "length");
    private static final Form PASSAGE = new Form(Place.HEAT_SINK, "What a sink takes over from its passage.", true, SIZES);
    private static final Form FORM = Fields.form("plate fins", "Plate fins of a heat sink; sizes not given are those of the passage of kind"
            + " heat sink that it stands on.", SIZES,
            Fields.SINK_CONDUCTIVITY,
            Fields.length("ductWidth", "duct width", "Width of the duct round the sink, past whose fins some air goes; with its"
                    + " height; all goes between them where not given."),
            Fields.length("ductHeight", "duct height", "Height of the duct from the foot of the sink; with its width."),
            Field.amount("base", "base", QuantityKind.LENGTH, Range.NOT_NEGATIVE, "Thickness of the sink's base, which stands in the duct"
                    + " too.").standard("0 mm"),
            FlowShare.FIELD);

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Step step() {
        return Step.SURFACE;
    }

    @Override
    public boolean fromInlet(Values values, Setting setting) {
        return true;
    }

    private static Shape shape(Values values, Setting setting) {
        return Shape.of(values, setting, Place.HEAT_SINK, PASSAGE, NAMES);
    }

    @Override
    public List<Problem> check(Values values, Setting setting, String place) {
        List<Problem> problems = new ArrayList<>(Shape.missing(setting, place, Place.HEAT_SINK, NAMES, NEEDED));
        problems.addAll(Checks.together(setting, place, List.of("ductWidth", "ductHeight")));
        Shape shape = shape(values, setting);
        problems.addAll(room(values, shape, place));
        if (shape.has("width")) {
            problems.addAll(duct(values, place, "ductWidth", shape.si("width"), "width of the sink"));
        }
        if (shape.has("height")) {
            problems.addAll(duct(values, place, "ductHeight", shape.si("height") + values.si("base"), "height of fins and base"));
        }
        if (!Checks.writes(setting, "ductWidth", "ductHeight")) {
            problems.addAll(Checks.unused(setting, place, "without a duct", "base"));
        }
        if (Place.of(setting).is(Place.HEAT_SINK)) {
            problems.addAll(Checks.unused(setting, place, "on a passage of kind heat sink, whose air all goes between the fins",
                    "ductWidth", "ductHeight"));
        }
        return problems;
    }

    private static List<Problem> room(Values values, Shape shape, String place) {
        Optional<String> own = Stream.of("width", "fins", "finThickness").filter(values::has).findFirst();
        if (own.isEmpty() || !shape.hasAll(List.of("width", "fins", "finThickness"))) {
            return List.of();
        }
        double closed = shape.whole("fins") * shape.si("finThickness");
        return closed < shape.si("width") ? List.of() : List.of(Problem.error(Problem.place(place, own.get()),
                "leaves no room between the fins, " + Checks.millimetres(closed) + " side by side in a width of "
                + Checks.millimetres(shape.si("width")) + "; expected less of them"));
    }

    private static List<Problem> duct(Values values, String place, String field, double least, String what) {
        return !values.has(field) || values.si(field) >= least * (1 - ROUNDING) ? List.of()
                : List.of(Problem.error(Problem.place(place, field), "is less than the " + what + ", " + Checks.millimetres(least)
                + "; expected at least that"));
    }

    private static PlateFins fins(Values values, Shape shape) {
        return new PlateFins(shape.whole("fins"), shape.si("finThickness"), shape.si("width"), shape.si("height"), shape.si("length"),
                values.si("conductivity"));
    }

    /** The duct round the sink; none where all air goes between the fins. */
    private static Optional<Bypass> duct(Values values, Setting setting, PlateFins fins) {
        double base = values.si("base");
        return !values.has("ductWidth") || Place.of(setting).is(Place.HEAT_SINK) ? Optional.empty()
                : Optional.of(new Bypass(fins, Math.max(fins.width(), values.si("ductWidth")),
                        Math.max(fins.height() + base, values.si("ductHeight")), base));
    }

    /** Velocity between the fins, m/s. */
    private static double velocity(Values values, PlateFins fins, Optional<Bypass> duct, AirStream air) {
        double flow = FlowShare.flow(values, air);
        return duct.map(round -> round.velocity(flow, air.kinematicViscosity())).orElseGet(() -> flow / fins.flowArea());
    }

    private static double coefficient(PlateFins fins, double velocity, AirStream air) {
        return fins.coefficient(velocity, air.kinematicViscosity(), air.conductivity(), air.prandtl());
    }

    @Override
    public LinkLaw law(Values values, Setting setting) {
        PlateFins fins = fins(values, shape(values, setting));
        Optional<Bypass> duct = duct(values, setting, fins);
        return (air, beyond) -> {
            double velocity = velocity(values, fins, duct, air);
            // in creeping flow the relation, which adds outer faces and base, would give more than the air can carry
            double carried = air.density() * velocity * fins.flowArea() * air.specificHeat();
            return 1 / Math.min(carried, fins.conductance(coefficient(fins, velocity, air)));
        };
    }

    @Override
    public List<Finding> findings(Values values, Setting setting, AirStream air) {
        PlateFins fins = fins(values, shape(values, setting));
        Optional<Bypass> duct = duct(values, setting, fins);
        double velocity = velocity(values, fins, duct, air);
        double modified = fins.modifiedReynolds(velocity, air.kinematicViscosity());
        double reynolds = velocity * 2 * fins.gap() * fins.height() / (fins.gap() + fins.height()) / air.kinematicViscosity();
        String source = setting.source().id();
        List<Finding> findings = new ArrayList<>();
        if (duct.isEmpty()) {
            findings.addAll(FlowShare.assumed(values, setting, air, ", or the size of the duct round the sink"));
        }
        findings.addAll(Remarks.slow(setting, velocity));
        if (modified > 0 && modified < PlateFins.LEAST || modified > PlateFins.MOST) {
            findings.add(Finding.caution(source, Remarks.name(setting) + " work at a channel Reynolds number Re* of ",
                    Amounts.number(modified), ", outside 0.26 to 175, where their relation was made")
                    .remedy("take their resistance as an estimate, or measure it").source(TEERTSTRA));
        }
        if (reynolds > LAMINAR) {
            findings.add(Finding.caution(source, Remarks.name(setting) + " work at a Reynolds number of ", Amounts.number(reynolds),
                    " between the fins, above 2300, where laminar flow and with it their relation end")
                    .remedy("take their resistance as an estimate, or measure it").source(TEERTSTRA));
        }
        return findings;
    }

    @Override
    public Optional<PassageKind.Origin> origin(Values values, Setting setting, AirStream air) {
        PlateFins fins = fins(values, shape(values, setting));
        Optional<Bypass> duct = duct(values, setting, fins);
        double velocity = velocity(values, fins, duct, air);
        Inputs inputs = Inputs.of(setting).count("fins N", fins.fins()).length("fin thickness", fins.thickness())
                .length("width", fins.width()).length("height H", fins.height()).length("length L", fins.length())
                .length("gap b", fins.gap()).conductivity("conductivity of the fins", fins.conductivity())
                .flow("flow that comes to the sink", FlowShare.flow(values, air));
        duct.ifPresent(round -> inputs.number("part of it that goes between the fins (J. R. Culham, Y. S. Muzychka 2001, both ways)",
                round.share(FlowShare.flow(values, air), air.kinematicViscosity())));
        return Optional.of(inputs.velocity("velocity v between the fins", velocity).air(air)
                .number("Re*", fins.modifiedReynolds(velocity, air.kinematicViscosity()))
                .coefficient("heat transfer coefficient h", coefficient(fins, velocity, air)).of(FINS));
    }
}
