package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.osgi.service.component.annotations.Component;
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
import tramontane.physics.OrificePlate;
import tramontane.physics.units.QuantityKind;

/** An orifice plate in a round duct: ISO 5167-2:2003, permanent loss. */
@Component(service = PassageKind.class)
public final class OrificeKind implements PassageKind {

    private static final String STANDARD = "ISO 5167-2:2003";
    private static final double LEAST_RATIO = 0.1;
    private static final double LARGEST_RATIO = 0.75;
    private static final double LEAST_DUCT = 0.05;
    private static final double LEAST_HOLE = 0.0125;

    private static final Relation ORIFICE = new Relation("orifice plate in a duct",
            "Δp = (K + e) ρ v²/2, v in the duct, K = (√(1 - β⁴ (1 - C²))/(C β²) - 1)², C by the Reader-Harris/Gallagher equation",
            STANDARD + ", eq. (4), (7), (8), corner taps",
            "β 0.1 to 0.75, ducts from 50 mm, holes from 12.5 mm, Re from 5000; C held below that");

    private static final Form FORM = ExitHead.form("orifice", "An orifice plate in a round duct.", List.of(),
            Field.amount("ductDiameter", "duct diameter", QuantityKind.LENGTH, Range.POSITIVE, "Diameter of the duct.").mandatory(),
            Field.amount("orificeDiameter", "orifice diameter", QuantityKind.LENGTH, Range.POSITIVE,
                    "Diameter of the hole in the plate.").mandatory());

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public List<Problem> check(Values values, Setting setting, String place) {
        if (values.has("ductDiameter") && values.has("orificeDiameter")
                && values.si("orificeDiameter") >= values.si("ductDiameter")) {
            return List.of(Problem.error(Problem.place(place, "orificeDiameter"), "is not smaller than the duct; expected below "
                    + (float) (1000 * values.si("ductDiameter")) + " mm"));
        }
        return List.of();
    }

    private static OrificePlate plate(Values values) {
        return new OrificePlate(values.si("orificeDiameter") / values.si("ductDiameter"), values.si("ductDiameter"));
    }

    @Override
    public FlowLaw law(Values values, Setting setting) {
        return new OrificeLaw(plate(values), ExitHead.of(values));
    }

    /** That of the hole. */
    @Override
    public OptionalDouble flowArea(Values values, Setting setting) {
        return OptionalDouble.of(CrossSection.round(values.si("orificeDiameter")).area());
    }

    @Override
    public List<Finding> findings(Values values, Setting setting, OperatingPoint.PassageFlow flow) {
        OrificePlate plate = plate(values);
        double hole = values.si("orificeDiameter");
        double duct = CrossSection.round(plate.diameter()).area();
        double reynolds = Remarks.reynolds(flow, duct, plate.diameter());
        List<String> outside = new ArrayList<>();
        if (plate.ratio() < LEAST_RATIO || plate.ratio() > LARGEST_RATIO) {
            outside.add("diameter ratio " + (float) plate.ratio() + " (0.1 to 0.75)");
        }
        if (plate.diameter() < LEAST_DUCT) {
            outside.add("duct below 50 mm");
        }
        if (hole < LEAST_HOLE) {
            outside.add("hole below 12.5 mm");
        }
        if (reynolds < OrificePlate.LEAST_REYNOLDS) {
            outside.add("Reynolds number " + Math.round(reynolds) + " (from 5000)");
        }
        List<Finding> findings = new ArrayList<>(Remarks.speed(flow, CrossSection.round(hole).area()));
        if (!outside.isEmpty()) {
            findings.add(Finding.caution(flow.passage(), "orifice " + flow.passage() + " is outside the range of its relation: "
                    + String.join(", ", outside)).remedy("take its drop as an estimate, or measure it").source(STANDARD));
        }
        return findings;
    }

    @Override
    public Optional<Origin> origin(Values values, Setting setting) {
        OrificePlate plate = plate(values);
        return Optional.of(Inputs.of(setting).length("duct diameter", plate.diameter())
                .length("orifice diameter", values.si("orificeDiameter")).number("diameter ratio β", plate.ratio()).exit(values)
                .of(ORIFICE));
    }
}
