package tramontane.airflow.internal;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Relation;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Range;
import tramontane.model.Values;
import tramontane.physics.DuctFriction;
import tramontane.physics.LaminarFriction;
import tramontane.physics.units.QuantityKind;

/**
 * A heat sink of plate fins; all air of the passage goes between the fins.
 *
 * <p>J. R. Culham, Y. S. Muzychka, IEEE Trans. Components Packaging Technol. 24 (2001) 159-165:
 * Δp = (Kc + f L/d + Ke) ρ v²/2 between the fins, Kc = 0.42 (1 - s²), Ke = (1 - s²)², s = 1 - N t/W, laminar. Above its range the
 * turbulent part of S. W. Churchill's friction factor takes over.
 */
@Component(service = PassageKind.class)
public final class HeatSinkKind implements PassageKind {

    private static final double LAMINAR = 2300;
    private static final String SOURCE = "J. R. Culham, Y. S. Muzychka, IEEE Trans. Components Packaging Technol. 24 (2001) 159-165";

    private static final Relation FINS = new Relation("plate fins",
            "Δp = (Kc + f L/d + Ke) ρ v²/2 + e ρ u²/2, v between the fins, u = Q/(W H), Kc = 0.42 (1 - s²), Ke = (1 - s²)², "
                    + "s = 1 - N t/W",
            SOURCE + "; turbulent part: S. W. Churchill, Chem. Eng. 84 (1977) no. 24, 91-92",
            "laminar up to Re 2300; all air between the fins, none past them");

    private static final Form FORM = ExitHead.form("heat sink", "A heat sink of plate fins; all of its air goes between the fins.",
            List.of(),
            Field.whole("fins", "fins", 2, 100_000, "Number of fins.").mandatory(),
            Field.amount("finThickness", "fin thickness", QuantityKind.LENGTH, Range.POSITIVE, "Thickness of a fin.").mandatory(),
            Field.amount("width", "width", QuantityKind.LENGTH, Range.POSITIVE,
                    "Width across the fins, from the outside of the first to that of the last.").mandatory(),
            Field.amount("height", "height", QuantityKind.LENGTH, Range.POSITIVE, "Height of the fins above their base.").mandatory(),
            Field.amount("length", "length", QuantityKind.LENGTH, Range.POSITIVE, "Length along the flow.").mandatory());

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public List<Problem> check(Values values, Setting setting, String place) {
        if (values.ifWhole("fins").isPresent() && values.has("finThickness") && values.has("width")
                && !(values.whole("fins") * values.si("finThickness") < values.si("width"))) {
            return List.of(Problem.error(Problem.place(place, "width"), "leaves no room between the fins; expected above "
                    + (float) (1000 * values.whole("fins") * values.si("finThickness")) + " mm, all fins side by side"));
        }
        return List.of();
    }

    private static double gap(Values values) {
        return (values.si("width") - values.whole("fins") * values.si("finThickness")) / (values.whole("fins") - 1);
    }

    private static CrossSection channel(Values values) {
        return CrossSection.rectangle(gap(values), values.si("height"));
    }

    private static double area(Values values) {
        return (values.whole("fins") - 1) * channel(values).area();
    }

    /** Velocity heads between the fins lost at both ends of them. */
    private static double ends(Values values) {
        double open = 1 - values.whole("fins") * values.si("finThickness") / values.si("width");
        double closed = 1 - open * open;
        return 0.42 * closed + closed * closed;
    }

    @Override
    public FlowLaw law(Values values, Setting setting) {
        CrossSection channel = channel(values);
        double area = area(values);
        double approach = area / (values.si("width") * values.si("height"));
        return ChannelLaw.of(area, channel.diameter(), new DuctFriction(LaminarFriction.CulhamMuzychka.channel(channel.aspect()),
                values.si("length") / channel.diameter(), 0), ends(values) + ExitHead.of(values) * approach * approach);
    }

    /** That between the fins. */
    @Override
    public OptionalDouble flowArea(Values values, Setting setting) {
        return OptionalDouble.of(area(values));
    }

    @Override
    public List<Finding> findings(Values values, Setting setting, OperatingPoint.PassageFlow flow) {
        double reynolds = Remarks.reynolds(flow, area(values), channel(values).diameter());
        return reynolds <= LAMINAR ? List.of() : List.of(Finding.caution(flow.passage(), "heat sink " + flow.passage()
                + " works at a Reynolds number of ", new Amount(reynolds, QuantityKind.NUMBER), " between its fins, above 2300, where its relation ends; "
                + "the velocity there is ", new Amount(Math.abs(flow.flow()) / area(values), QuantityKind.VELOCITY))
                .remedy("take its drop as an estimate, or measure it").source(SOURCE));
    }

    @Override
    public Optional<Origin> origin(Values values, Setting setting) {
        return Optional.of(Inputs.of(setting).add("fins N", QuantityKind.COUNT, values.whole("fins"))
                .length("fin thickness t", values.si("finThickness")).length("width W", values.si("width"))
                .length("height H", values.si("height")).length("length L", values.si("length"))
                .length("hydraulic diameter d", channel(values).diameter()).number("Kc + Ke", ends(values)).exit(values).of(FINS));
    }
}
