package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Relation;
import tramontane.analysis.Trace;
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
 * (1994), for an opening in a large thin wall, (1 + 0.707)² = 2.914, or 1/C² for a discharge coefficient C, or as given.
 */
@Component(service = PassageKind.class)
public final class OpeningKind implements PassageKind {

    private static final Relation GIVEN = new Relation("local loss", "Δp = K ρ v²/2, v = Q/A, K = 1/C² for a discharge coefficient C",
            "coefficient as given", "");
    private static final Relation SHARP_EDGED = new Relation("sharp-edged opening in a wall",
            "Δp = K ρ v²/2, v = Q/A, K = (0.707 + 1)²",
            "I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed. (1994), diagram 8-1 for a small hole in a large wall",
            "the handbook's diagram for openings gives 2.7 to 2.85 (from memory); this is up to 9 % on the safe side");

    private static final Form FORM = Form.of("opening", "A sharp-edged opening in a wall between two bays.",
            Field.amount("diameter", "diameter", QuantityKind.LENGTH, Range.POSITIVE, "Diameter of a round opening."),
            Field.amount("width", "width", QuantityKind.LENGTH, Range.POSITIVE,
                    "Width of a rectangular opening; with its height."),
            Field.amount("height", "height", QuantityKind.LENGTH, Range.POSITIVE,
                    "Height of a rectangular opening; with its width."),
            Field.amount("area", "area", QuantityKind.AREA, Range.POSITIVE, "Open area of an opening of any shape."),
            Field.amount("dischargeCoefficient", "discharge coefficient", QuantityKind.NUMBER, Range.PART_OF_ONE,
                    "Real flow over the flow without losses; 0.6 for a sharp edge. Calculated where not given."),
            Field.amount("lossCoefficient", "loss coefficient", QuantityKind.NUMBER, Range.POSITIVE,
                    "Drop of total pressure over the velocity head in the opening, exit included. Calculated where not given."));

    private static final List<List<String>> SIZES = List.of(List.of("diameter"), List.of("width", "height"), List.of("area"));

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public List<Problem> check(Values values, Setting setting, String place) {
        List<Problem> problems = new ArrayList<>(Checks.oneOf(values, place, "how large it is", SIZES));
        problems.addAll(Checks.atMostOne(values, place, "dischargeCoefficient", "lossCoefficient"));
        return problems;
    }

    @Override
    public FlowLaw law(Values values, Setting setting) {
        return local(values);
    }

    private static LocalLoss local(Values values) {
        double area;
        double diameter;
        if (values.has("diameter")) {
            diameter = values.si("diameter");
            area = Math.PI / 4 * diameter * diameter;
        } else if (values.has("area")) {
            area = values.si("area");
            diameter = LocalLoss.roundDiameter(area);
        } else {
            double width = values.si("width");
            double height = values.si("height");
            area = width * height;
            diameter = 2 * area / (width + height);
        }
        return LocalLoss.of(loss(values), area, diameter);
    }

    @Override
    public Optional<Origin> origin(Values values, Setting setting) {
        LocalLoss local = local(values);
        String place = "passage " + setting.passage().id();
        boolean given = values.has("lossCoefficient") || values.has("dischargeCoefficient");
        return Optional.of(new Origin(given ? GIVEN : SHARP_EDGED, List.of(
                new Trace.Term("open area A", QuantityKind.AREA, local.area(), place),
                new Trace.Term("loss coefficient K", QuantityKind.NUMBER, local.loss(), place))));
    }

    private static double loss(Values values) {
        if (values.has("lossCoefficient")) {
            return values.si("lossCoefficient");
        }
        if (values.has("dischargeCoefficient")) {
            double discharge = values.si("dischargeCoefficient");
            return 1 / (discharge * discharge);
        }
        return Resistance.opening(0);
    }
}
