package tramontane.airflow.internal;

import java.util.ArrayList;
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
import tramontane.physics.Resistance;
import tramontane.physics.units.QuantityKind;

/**
 * A sharp-edged opening in a wall between two plenums.
 *
 * <p>Δp = K ρ v²/2 on the velocity in the opening. K is that of I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed.
 * (1994), for an opening in a large wall, thin ((1 + 0.707)² = 2.914) or thick (diagram 8-3), or 1/C² for a discharge
 * coefficient C, or as given; the exit velocity head is in it.
 */
@Component(service = PassageKind.class)
public final class OpeningKind implements PassageKind {

    private static final Relation GIVEN = new Relation("local loss", "Δp = K ρ v²/2, v = Q/A, K = 1/C² for a discharge coefficient C",
            "coefficient as given", "");
    private static final Relation SHARP_EDGED = new Relation("sharp-edged opening in a wall",
            "Δp = K ρ v²/2, v = Q/A, K = (0.707 + 1)²",
            "I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed. (1994), diagram 8-1 for a small hole in a large wall",
            "the handbook's diagram for openings gives 2.7 to 2.85 (from memory); this is up to 9 % on the safe side");

    private static final Relation THICK = new Relation("thick opening in a wall",
            "Δp = K ρ v²/2, v = Q/A, K = 0.5 + τ + 1 + λ l/d",
            "I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed. (1994), diagram 8-3 for a small hole in a large wall",
            "λ = 0.02 (common practice); sharp edges");

    private static final Form FORM = ExitHead.form("opening", "A sharp-edged opening in a wall between two bays.",
            CrossSection.sizeFields("opening"),
            Field.amount("dischargeCoefficient", "discharge coefficient", QuantityKind.NUMBER, Range.PART_OF_ONE,
                    "Real flow over the flow without losses; 0.6 for a sharp edge. Calculated where not given."),
            Field.amount("lossCoefficient", "loss coefficient", QuantityKind.NUMBER, Range.POSITIVE,
                    "Drop of total pressure over the velocity head in the opening, exit included. Calculated where not given."),
            Field.amount("thickness", "thickness", QuantityKind.LENGTH, Range.POSITIVE,
                    "Thickness of the wall, for the calculated loss coefficient; thin where not given."));

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public List<Problem> check(Values values, Setting setting, String place) {
        List<Problem> problems = new ArrayList<>(CrossSection.checkSize(values, place, "how large it is"));
        problems.addAll(Checks.atMostOne(values, place, "dischargeCoefficient", "lossCoefficient"));
        if (problems.isEmpty()) {
            problems.addAll(ExitHead.check(loss(values), values, place));
        }
        return problems;
    }

    @Override
    public FlowLaw law(Values values, Setting setting) {
        return local(values);
    }

    @Override
    public OptionalDouble flowArea(Values values, Setting setting) {
        return OptionalDouble.of(CrossSection.of(values).orElseThrow().area());
    }

    private static LocalLoss local(Values values) {
        CrossSection section = CrossSection.of(values).orElseThrow();
        return LocalLoss.of(ExitHead.in(loss(values), values), section.area(), section.diameter());
    }

    @Override
    public Optional<Origin> origin(Values values, Setting setting) {
        LocalLoss local = local(values);
        Inputs inputs = Inputs.of(setting).area("open area A", local.area()).number("loss coefficient K", local.loss());
        if (values.has("lossCoefficient") || values.has("dischargeCoefficient")) {
            return Optional.of(inputs.of(GIVEN));
        }
        return Optional.of(thickness(values) > GrilleKind.THICK
                ? inputs.number("thickness over diameter l/d", thickness(values)).of(THICK) : inputs.of(SHARP_EDGED));
    }

    /** Thickness over hydraulic diameter; 0 for a thin wall. */
    private static double thickness(Values values) {
        return values.has("thickness") ? values.si("thickness") / CrossSection.of(values).orElseThrow().diameter() : 0;
    }

    /** Loss coefficient, exit velocity head included. */
    private static double loss(Values values) {
        if (values.has("lossCoefficient")) {
            return values.si("lossCoefficient");
        }
        if (values.has("dischargeCoefficient")) {
            double discharge = values.si("dischargeCoefficient");
            return 1 / (discharge * discharge);
        }
        double thickness = thickness(values);
        return thickness > GrilleKind.THICK ? Resistance.thickOpening(thickness, GrilleKind.FRICTION) : Resistance.opening(0);
    }
}
