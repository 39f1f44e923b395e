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
import tramontane.physics.Bend;
import tramontane.physics.DuctFriction;
import tramontane.physics.units.QuantityKind;

/**
 * A bend of a duct, rounded or mitred.
 *
 * <p>Δp = K ρ v²/2 with the K of D. C. Rennels, H. M. Hudson, Pipe Flow (2012), ch. 15. That of a rounded bend goes with the
 * friction factor of its duct; here that of all Reynolds numbers, so that it rises in slow flow.
 */
@Component(service = PassageKind.class)
public final class BendKind implements PassageKind {

    private static final String SOURCE = "D. C. Rennels, H. M. Hudson, Pipe Flow: A Practical and Comprehensive Guide (2012), ch. 15";
    private static final Relation MITRE = new Relation("mitre bend",
            "Δp = (K + e) ρ v²/2, v = Q/A, K = 0.42 sin(α/2) + 2.56 sin³(α/2)", SOURCE,
            "turbulent flow; straight ducts before and behind; others give 10 % less at 90°");
    private static final Relation ROUNDED = new Relation("rounded bend",
            "Δp = (K + e) ρ v²/2, v = Q/A, K = f α r/d + (0.10 + 2.4 f) sin(α/2) + 6.6 f (√sin(α/2) + sin(α/2))/(r/d)^(4α/π)",
            SOURCE + "; f: S. W. Churchill, Chem. Eng. 84 (1977) no. 24, 91-92",
            "smooth round ducts in turbulent flow, straight ducts before and behind; rectangles on the hydraulic diameter");

    private static final Form FORM = ExitHead.form("bend", "A bend of a duct.", CrossSection.shapeFields("duct"),
            Field.amount("angle", "angle", QuantityKind.ANGLE, new Range(0, false, Math.PI), "By how much it turns the air.")
                    .mandatory(),
            Field.amount("radius", "radius", QuantityKind.LENGTH, Range.POSITIVE,
                    "Radius of the centreline of a rounded bend, at least half the hydraulic diameter."),
            Field.yesNo("mitre", "mitre", "Whether it turns at one edge, without a radius."),
            Fields.ROUGHNESS);

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public List<Problem> check(Values values, Setting setting, String place) {
        List<Problem> problems = new ArrayList<>(CrossSection.checkShape(values, place, "its section"));
        if (values.on("mitre") == values.has("radius")) {
            problems.add(values.has("radius") ? Problem.error(place, "has both a radius and a mitre; expected one of them")
                    : Problem.missing(Problem.place(place, "radius"), "; expected the radius of its centreline, or mitre"));
        }
        CrossSection.of(values).ifPresent(section -> {
            problems.addAll(Fields.checkRoughness(values, place, section));
            if (values.has("radius") && values.si("radius") < section.diameter() / 2) {
                problems.add(Problem.error(Problem.place(place, "radius"), "is less than half the hydraulic diameter; expected at "
                        + "least " + (float) (500 * section.diameter()) + " mm, or mitre"));
            }
        });
        return problems;
    }

    @Override
    public FlowLaw law(Values values, Setting setting) {
        CrossSection section = CrossSection.of(values).orElseThrow();
        double angle = values.si("angle");
        if (values.on("mitre")) {
            return LocalLoss.of(Bend.mitre(angle) + ExitHead.of(values), section.area(), section.diameter());
        }
        return new ChannelLaw(section.area(), section.diameter(),
                new DuctFriction(section.developed(), 1, values.si("roughness") / section.diameter()),
                Bend.frictionLength(angle, values.si("radius") / section.diameter()), Bend.turning(angle) + ExitHead.of(values));
    }

    @Override
    public OptionalDouble flowArea(Values values, Setting setting) {
        return OptionalDouble.of(CrossSection.of(values).orElseThrow().area());
    }

    @Override
    public List<Finding> findings(Values values, Setting setting, OperatingPoint.PassageFlow flow) {
        return Remarks.speed(flow, CrossSection.of(values).orElseThrow().area());
    }

    @Override
    public Optional<Origin> origin(Values values, Setting setting) {
        CrossSection section = CrossSection.of(values).orElseThrow();
        Inputs inputs = Inputs.of(setting).area("area A", section.area()).add("angle α", QuantityKind.ANGLE, values.si("angle"));
        if (values.on("mitre")) {
            return Optional.of(inputs.number("loss coefficient K", Bend.mitre(values.si("angle"))).exit(values).of(MITRE));
        }
        return Optional.of(inputs.length("hydraulic diameter d", section.diameter()).length("radius r", values.si("radius"))
                .length("roughness", values.si("roughness")).exit(values).of(ROUNDED));
    }
}
