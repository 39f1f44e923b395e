package tramontane.airflow.internal;

import java.util.ArrayList;
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
import tramontane.physics.units.QuantityKind;

/**
 * A filter known by its rated flow and drop, or by a linear and a square coefficient.
 *
 * <p>Δp = c (a q μ/μ₀ + b q² ρ/ρ₀), c the clogging of the condition: dust multiplies the drop at equal flow. One rated point does
 * not say how much of the drop goes linearly with flow; in fine media most of it does, in coarse ones little (common practice).
 * The viscosity of the rating is taken as that of 20 °C. The head lost behind the filter is not in the rating and is left out:
 * 2.4 Pa at 2 m/s.
 */
@Component(service = PassageKind.class)
public final class FilterKind implements PassageKind {

    /** Flow over rated flow outside which the assumed share of the linear part shows: at the ends it moves the drop by a quarter. */
    private static final double FAR_BELOW = 0.5;
    private static final double FAR_ABOVE = 1.5;

    private static final Relation RATED = new Relation("rated filter",
            "Δp = c p₀ (s (Q/Q₀) μ/μ₀ + (1-s) (Q/Q₀)² ρ/ρ₀)", "rated point as given; Reynolds similarity; the linear share s where "
                    + "it is not given: assumed", "clean: c = 1; flows from half to one and a half of the rated one");
    private static final Relation COEFFICIENTS = new Relation("filter of two coefficients",
            "Δp = c (a Q μ/μ₀ + b Q² ρ/ρ₀)", "coefficients as given; Reynolds similarity", "clean: c = 1");

    private static final List<List<String>> RATINGS = List.of(List.of("ratedFlow"), List.of("ratedVelocity"));

    private static final Form FORM = new Form(PassageKind.FILTER, "A filter. The clogging of a condition multiplies its drop.", false,
            fields());

    private static List<Field> fields() {
        List<Field> fields = new ArrayList<>(CrossSection.sizeFields("face"));
        fields.addAll(List.of(
                Field.amount("ratedFlow", "rated flow", QuantityKind.FLOW, Range.POSITIVE, "Flow at which its drop is known."),
                Field.amount("ratedVelocity", "rated face velocity", QuantityKind.VELOCITY, Range.POSITIVE,
                        "Velocity in its face at which its drop is known; with the size of its face."),
                Field.amount("ratedPressure", "rated pressure drop", QuantityKind.PRESSURE, Range.POSITIVE,
                        "Drop of the clean filter at the rated flow or velocity."),
                Field.amount("linearShare", "linear share", QuantityKind.FRACTION, Range.SHARE,
                        "Part of the rated drop that goes linearly with flow: near 1 for fine media, little for coarse ones; "
                                + "assumed where not given.").standard("50 %"),
                Field.amount("linear", "linear coefficient", QuantityKind.LINEAR_RESISTANCE, Range.NOT_NEGATIVE,
                        "Pressure drop per flow: a in a q + b q²."),
                Field.amount("quadratic", "square coefficient", QuantityKind.QUADRATIC_RESISTANCE, Range.NOT_NEGATIVE,
                        "Pressure drop per flow squared: b in a q + b q²."),
                Field.amount("density", "density", QuantityKind.DENSITY, Range.POSITIVE,
                        "Density of the air of the rating or the coefficients.").standard("1.2 kg/m³"),
                Field.amount("finalPressure", "final pressure drop", QuantityKind.PRESSURE, Range.POSITIVE,
                        "Drop at which it must be changed.")));
        return fields;
    }

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public List<Problem> check(Values values, Setting setting, String place) {
        boolean rated = values.has("ratedFlow") || values.has("ratedVelocity") || values.has("ratedPressure");
        boolean coefficients = values.has("linear") || values.has("quadratic");
        List<Problem> problems = new ArrayList<>();
        if (rated && coefficients) {
            problems.add(Problem.error(place, "has both a rated point and coefficients; expected one of them"));
        } else if (!rated && !coefficients) {
            problems.add(Problem.error(place, "does not say its resistance; expected ratedFlow and ratedPressure, or ratedVelocity, "
                    + "ratedPressure and the size of its face, or linear, or quadratic"));
        } else if (coefficients) {
            if (!(coefficient(values, "linear") + coefficient(values, "quadratic") > 0)) {
                problems.add(Problem.error(place, "has no resistance at all; expected linear or quadratic above zero"));
            }
        } else {
            problems.addAll(Checks.oneOf(values, place, "what it is rated at", RATINGS));
            if (!values.has("ratedPressure")) {
                problems.add(Problem.missing(Problem.place(place, "ratedPressure"), "; expected the drop at what it is rated at"));
            }
        }
        boolean sized = values.has("diameter") || values.has("width") || values.has("height") || values.has("area");
        if (sized || values.has("ratedVelocity")) {
            problems.addAll(CrossSection.checkSize(values, place, "how large its face is"));
        }
        return problems;
    }

    private static double coefficient(Values values, String field) {
        return values.has(field) ? values.si(field) : 0;
    }

    /** Rated flow, where one is given. */
    private static OptionalDouble rated(Values values) {
        if (values.has("ratedFlow")) {
            return OptionalDouble.of(values.si("ratedFlow"));
        }
        return values.has("ratedVelocity")
                ? OptionalDouble.of(values.si("ratedVelocity") * CrossSection.of(values).orElseThrow().area()) : OptionalDouble.empty();
    }

    private static double linear(Values values) {
        OptionalDouble rated = rated(values);
        return rated.isPresent() ? values.si("linearShare") * values.si("ratedPressure") / rated.getAsDouble()
                : coefficient(values, "linear");
    }

    private static double quadratic(Values values) {
        OptionalDouble rated = rated(values);
        return rated.isPresent()
                ? (1 - values.si("linearShare")) * values.si("ratedPressure") / (rated.getAsDouble() * rated.getAsDouble())
                : coefficient(values, "quadratic");
    }

    @Override
    public FlowLaw law(Values values, Setting setting) {
        return MixedLaw.measured(linear(values), quadratic(values), values.si("density"), setting.condition().cloggingFactor());
    }

    /** Its face, where it is known; a rating by flow does not need it. */
    @Override
    public OptionalDouble flowArea(Values values, Setting setting) {
        return CrossSection.of(values).map(section -> OptionalDouble.of(section.area())).orElse(OptionalDouble.empty());
    }

    @Override
    public List<Finding> findings(Values values, Setting setting, OperatingPoint.PassageFlow flow) {
        List<Finding> findings = new ArrayList<>();
        OptionalDouble rated = rated(values);
        if (rated.isPresent() && !values.has("linearShare")) {
            double ratio = Math.abs(flow.flow()) / rated.getAsDouble();
            if (ratio < FAR_BELOW || ratio > FAR_ABOVE) {
                findings.add(Finding.note(flow.passage(), "filter " + flow.passage() + " works at ",
                        new Amount(Math.abs(flow.flow()), QuantityKind.FLOW), ", far from its rating at ",
                        new Amount(rated.getAsDouble(), QuantityKind.FLOW), "; half of its drop is assumed to go linearly with flow")
                        .remedy("give its linear share, or two measured points").source("common practice; the value is assumed"));
            }
        }
        if (values.has("finalPressure") && Math.abs(flow.drop()) > values.si("finalPressure")) {
            findings.add(Finding.caution(flow.passage(), "filter " + flow.passage() + " drops ",
                    new Amount(Math.abs(flow.drop()), QuantityKind.PRESSURE), ", more than the ",
                    new Amount(values.si("finalPressure"), QuantityKind.PRESSURE), " at which it must be changed")
                    .remedy("change it before it is that clogged, or use a larger one").source("final pressure drop of the filter"));
        }
        return findings;
    }

    @Override
    public Optional<Origin> origin(Values values, Setting setting) {
        Inputs inputs = Inputs.of(setting).add("density of the rating", QuantityKind.DENSITY, values.si("density")).clogging();
        OptionalDouble rated = rated(values);
        if (rated.isPresent()) {
            return Optional.of(inputs.add("rated flow Q₀", QuantityKind.FLOW, rated.getAsDouble())
                    .add("rated drop p₀", QuantityKind.PRESSURE, values.si("ratedPressure"))
                    .add("linear share s" + (values.has("linearShare") ? "" : ", assumed"), QuantityKind.FRACTION,
                            values.si("linearShare")).of(RATED));
        }
        return Optional.of(inputs.add("linear coefficient a", QuantityKind.LINEAR_RESISTANCE, linear(values))
                .add("square coefficient b", QuantityKind.QUADRATIC_RESISTANCE, quadratic(values)).of(COEFFICIENTS));
    }
}
