package tramontane.airflow.internal;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Relation;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Range;
import tramontane.model.Values;
import tramontane.physics.DuctFriction;
import tramontane.physics.Friction;
import tramontane.physics.LaminarFriction;
import tramontane.physics.Resistance;
import tramontane.physics.units.QuantityKind;

/**
 * A gap that air leaks through: a long slit in a wall.
 *
 * <p>Δp = (f l/d + 0.5 + τ + 1) ρ v²/2: developed flow between parallel plates, entry and exit of a thick opening in a wall
 * (I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed., 1994, diagram 8-3), d twice the opening.
 */
@Component(service = PassageKind.class)
public final class GapKind implements PassageKind {

    private static final Relation SLIT = new Relation("slit", "Δp = (f l/d + K) ρ v²/2, v = Q/A, f Re = 96 in laminar flow, K = 1.5 + τ",
            "K: I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed. (1994), diagram 8-3 for a small hole in a large wall; "
                    + "f: parallel plates, joined with S. W. Churchill, Chem. Eng. 84 (1977) no. 24, 91-92",
            "a slit much longer than its opening; even opening all along");

    private static final Form FORM = ExitHead.form(PassageKind.GAP, "A gap that air leaks through: a long slit in a wall.", List.of(),
            Field.amount("width", "width", QuantityKind.LENGTH, Range.POSITIVE, "Long side of the slit.").mandatory(),
            Field.amount("opening", "opening", QuantityKind.LENGTH, Range.POSITIVE, "Short side of the slit.").mandatory(),
            Field.amount("depth", "depth", QuantityKind.LENGTH, Range.POSITIVE, "Length along the flow: the thickness of the wall.")
                    .mandatory());

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public List<Problem> check(Values values, Setting setting, String place) {
        return values.has("width") && values.has("opening") && values.si("opening") > values.si("width")
                ? List.of(Problem.error(Problem.place(place, "opening"), "is larger than the width; expected the short side, at most "
                        + (float) (1000 * values.si("width")) + " mm"))
                : List.of();
    }

    private static double area(Values values) {
        return values.si("width") * values.si("opening");
    }

    private static double length(Values values) {
        return values.si("depth") / (2 * values.si("opening"));
    }

    private static double loss(Values values) {
        return ExitHead.in(Resistance.thickOpening(length(values), 0), values);
    }

    @Override
    public FlowLaw law(Values values, Setting setting) {
        return ChannelLaw.of(area(values), 2 * values.si("opening"),
                new DuctFriction(new LaminarFriction.Developed(Friction.LAMINAR_PLATES), length(values), 0), loss(values));
    }

    @Override
    public OptionalDouble flowArea(Values values, Setting setting) {
        return OptionalDouble.of(area(values));
    }

    @Override
    public Optional<Origin> origin(Values values, Setting setting) {
        return Optional.of(Inputs.of(setting).area("area A", area(values)).length("hydraulic diameter d", 2 * values.si("opening"))
                .length("depth l", values.si("depth")).number("loss coefficient K of entry and exit", loss(values)).of(SLIT));
    }
}
