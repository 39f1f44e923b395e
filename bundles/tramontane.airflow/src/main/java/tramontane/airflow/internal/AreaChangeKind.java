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
import tramontane.physics.AreaChange;
import tramontane.physics.Resistance;
import tramontane.physics.units.QuantityKind;

/**
 * A sudden change of a duct's section: an expansion one way (Borda, Carnot), a contraction the other (D. C. Rennels,
 * H. M. Hudson, Pipe Flow, 2012, ch. 10).
 */
@Component(service = PassageKind.class)
public final class AreaChangeKind implements PassageKind {

    private static final Relation AREA_CHANGE = new Relation("sudden change of area",
            "Δp = K ρ v²/2 on the smaller section, s smaller over larger area; into the larger K = (1 - s)²; into the smaller "
                    + "K = 0.0696 (1 - s^2.5) λ² + (λ - 1)², λ = 1 + 0.622 (1 - 0.215 s - 0.785 s^2.5); e ρ v²/2 on the section "
                    + "it leaves",
            "expansion: momentum balance of Borda and Carnot; contraction: D. C. Rennels, H. M. Hudson, Pipe Flow: A Practical "
                    + "and Comprehensive Guide (2012), ch. 10",
            "turbulent flow, sharp edges; other contractions differ by up to a third");

    private static final Form FORM = ExitHead.form("area change", "A sudden change of a duct's section.", List.of(),
            Field.amount("fromDiameter", "diameter at its start", QuantityKind.LENGTH, Range.POSITIVE,
                    "Diameter of the round duct it starts from."),
            Field.amount("fromArea", "area at its start", QuantityKind.AREA, Range.POSITIVE, "Area of the duct it starts from."),
            Field.amount("toDiameter", "diameter at its end", QuantityKind.LENGTH, Range.POSITIVE,
                    "Diameter of the round duct it ends in."),
            Field.amount("toArea", "area at its end", QuantityKind.AREA, Range.POSITIVE, "Area of the duct it ends in."));

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public List<Problem> check(Values values, Setting setting, String place) {
        List<Problem> problems = new ArrayList<>();
        problems.addAll(Checks.oneOf(values, place, "how large it starts", List.of(List.of("fromDiameter"), List.of("fromArea"))));
        problems.addAll(Checks.oneOf(values, place, "how large it ends", List.of(List.of("toDiameter"), List.of("toArea"))));
        if (problems.isEmpty() && values.on(ExitHead.NAME) && !(forward(values) > 0 && backward(values) > 0)) {
            problems.add(Problem.error(place, "is as large at its start as at its end, and loses nothing; expected two sizes"));
        }
        return problems;
    }

    private static double area(Values values, String end) {
        return values.has(end + "Area") ? values.si(end + "Area") : CrossSection.round(values.si(end + "Diameter")).area();
    }

    private static double smaller(Values values) {
        return Math.min(area(values, "from"), area(values, "to"));
    }

    private static double forward(Values values) {
        return loss(area(values, "from"), area(values, "to"), ExitHead.of(values));
    }

    private static double backward(Values values) {
        return loss(area(values, "to"), area(values, "from"), ExitHead.of(values));
    }

    /** Δp/(ρ q²), 1/m⁴. */
    private static double loss(double from, double to, double exit) {
        double smaller = Math.min(from, to);
        double ratio = smaller / Math.max(from, to);
        double change = from < to ? AreaChange.expansion(ratio) : AreaChange.contraction(ratio);
        return 0.5 * (change / (smaller * smaller) + exit / (to * to));
    }

    @Override
    public FlowLaw law(Values values, Setting setting) {
        double smaller = smaller(values);
        return new AreaChangeLaw(forward(values), backward(values),
                Resistance.TRANSITION_REYNOLDS * smaller / LocalLoss.roundDiameter(smaller));
    }

    /** The smaller of its two. */
    @Override
    public OptionalDouble flowArea(Values values, Setting setting) {
        return OptionalDouble.of(smaller(values));
    }

    @Override
    public List<Finding> findings(Values values, Setting setting, OperatingPoint.PassageFlow flow) {
        return Remarks.speed(flow, smaller(values));
    }

    @Override
    public Optional<Origin> origin(Values values, Setting setting) {
        return Optional.of(Inputs.of(setting).area("area at its start", area(values, "from"))
                .area("area at its end", area(values, "to")).exit(values).of(AREA_CHANGE));
    }
}
