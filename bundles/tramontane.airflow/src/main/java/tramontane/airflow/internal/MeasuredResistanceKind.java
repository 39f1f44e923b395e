package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Relation;
import tramontane.analysis.Trace;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Quantities;
import tramontane.model.Range;
import tramontane.model.Values;
import tramontane.physics.Air;
import tramontane.physics.MeasuredResistance;
import tramontane.physics.units.QuantityKind;

/**
 * A passage known by measurement: points of flow and pressure drop, or a linear and a square coefficient.
 *
 * <p>Δp = a q + b q². In other air the linear part goes with viscosity and the square part with density (Reynolds
 * similarity); the measurement is taken to have been made at 20 °C as far as viscosity goes.
 */
@Component(service = PassageKind.class)
public final class MeasuredResistanceKind implements PassageKind {

    /** Flow over the largest measured one from which a curve of several points is not to be trusted; common practice. */
    private static final double BEYOND = 1.5;
    private static final double VISCOSITY = Air.viscosity(293.15);

    private static final Relation MEASURED = new Relation("measured resistance",
            "Δp = a q μ/μ₀ + b q² ρ/ρ₀; between measured points a curve without overshoot",
            "Reynolds similarity: Δp/(ρ v²) depends on ρ v d/μ only; interpolation: F. N. Fritsch, R. E. Carlson, "
                    + "SIAM J. Numer. Anal. 17 (1980) 238-246",
            "flows within or near the measured ones");

    private static final Form FORM = Form.of("measured resistance",
            "A passage known by measured points of flow and pressure drop, or by coefficients.",
            Field.increasing("flow", "flow", QuantityKind.FLOW, Range.POSITIVE, 1,
                    "Measured flows, each larger than the one before; one point gives a square law."),
            Field.amounts("pressure", "pressure drop", QuantityKind.PRESSURE, Range.POSITIVE, 1,
                    "Drop of pressure at each flow."),
            Field.amount("linear", "linear coefficient", QuantityKind.LINEAR_RESISTANCE, Range.NOT_NEGATIVE,
                    "Pressure drop per flow: a in a q + b q²."),
            Field.amount("quadratic", "square coefficient", QuantityKind.QUADRATIC_RESISTANCE, Range.NOT_NEGATIVE,
                    "Pressure drop per flow squared: b in a q + b q²."),
            Field.amount("density", "density", QuantityKind.DENSITY, Range.POSITIVE,
                    "Density of the air at the measurement.").standard("1.2 kg/m³"),
            Field.yesNo("filter", "filter", "Whether it is a filter: its drop is then multiplied by the clogging of the "
                    + "condition."));

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public List<Problem> check(Values values, Setting setting, String place) {
        List<Problem> problems = new ArrayList<>();
        boolean points = values.has("flow") || values.has("pressure");
        boolean coefficients = values.has("linear") || values.has("quadratic");
        if (points && coefficients) {
            problems.add(Problem.error(place, "has both measured points and coefficients; expected one of them"));
        } else if (!points && !coefficients) {
            problems.add(Problem.error(place, "does not say its resistance; expected flow and pressure, or linear, or quadratic"));
        } else if (coefficients) {
            if (!(coefficient(values, "linear") + coefficient(values, "quadratic") > 0)) {
                problems.add(Problem.error(place, "has no resistance at all; expected linear or quadratic above zero"));
            }
        } else if (!values.has("flow") || !values.has("pressure")) {
            problems.add(Problem.missing(Problem.place(place, values.has("flow") ? "pressure" : "flow"),
                    "; expected one for each " + (values.has("flow") ? "flow" : "pressure")));
        } else {
            problems.addAll(points(values, place));
        }
        return problems;
    }

    private static List<Problem> points(Values values, String place) {
        Quantities flow = values.ifQuantities("flow").orElseThrow();
        Quantities pressure = values.ifQuantities("pressure").orElseThrow();
        List<Problem> problems = new ArrayList<>();
        if (flow.size() != pressure.size()) {
            problems.add(Problem.error(Problem.place(place, "pressure"), "has " + pressure.size() + (pressure.size() == 1 ? " number" : " numbers") + "; expected "
                    + flow.size() + ", one for each flow"));
        }
        for (int i = 1; i < pressure.size(); i++) {
            if (pressure.si().get(i) <= pressure.si().get(i - 1)) {
                problems.add(Problem.error(Problem.place(place, "pressure"), "number " + (i + 1)
                        + " is not larger than the one before it; expected a drop that rises with flow"));
                break;
            }
        }
        return problems;
    }

    @Override
    public List<Finding> findings(Values values, Setting setting, OperatingPoint.PassageFlow flow) {
        return values.ifQuantities("flow").map(Quantities::toArray).filter(measured -> measured.length > 1)
                .filter(measured -> Math.abs(flow.flow()) > BEYOND * measured[measured.length - 1])
                .map(measured -> List.of(Finding.caution(setting.passage().id(), "passage " + setting.passage().id()
                        + " takes a flow far beyond its measurement, which ends at ",
                        new Amount(measured[measured.length - 1], QuantityKind.FLOW))
                        .remedy("check the units of the measured flows, or measure at higher flow").source("common practice")))
                .orElse(List.of());
    }

    @Override
    public Optional<Origin> origin(Values values, Setting setting) {
        String place = "passage " + setting.passage().id();
        List<Trace.Term> inputs = new ArrayList<>(List.of(
                new Trace.Term("density of the measurement", QuantityKind.DENSITY, values.si("density"), place)));
        values.ifQuantity("linear").ifPresent(a -> inputs.add(
                new Trace.Term("linear coefficient a", QuantityKind.LINEAR_RESISTANCE, a.si(), place)));
        values.ifQuantity("quadratic").ifPresent(b -> inputs.add(
                new Trace.Term("square coefficient b", QuantityKind.QUADRATIC_RESISTANCE, b.si(), place)));
        values.ifQuantities("flow").ifPresent(flow -> {
            Quantities pressure = values.ifQuantities("pressure").orElseThrow();
            for (int i = 0; i < flow.size(); i++) {
                inputs.add(new Trace.Term("measured flow " + (i + 1), QuantityKind.FLOW, flow.si().get(i), place));
                inputs.add(new Trace.Term("measured drop " + (i + 1), QuantityKind.PRESSURE, pressure.si().get(i), place));
            }
        });
        if (values.on("filter")) {
            inputs.add(new Trace.Term("clogging", QuantityKind.NUMBER, setting.condition().cloggingFactor(),
                    "condition " + setting.condition().id()));
        }
        return Optional.of(new Origin(MEASURED, inputs));
    }

    private static double coefficient(Values values, String field) {
        return values.has(field) ? values.si(field) : 0;
    }

    @Override
    public FlowLaw law(Values values, Setting setting) {
        double factor = values.on("filter") ? setting.condition().cloggingFactor() : 1;
        double measured = values.si("density");
        if (values.has("flow")) {
            MeasuredResistance resistance = MeasuredResistance.of(values.ifQuantities("flow").orElseThrow().toArray(),
                    values.ifQuantities("pressure").orElseThrow().toArray(), measured, VISCOSITY);
            return (flow, density, viscosity, drop) -> drop.set(factor * resistance.drop(flow, density, viscosity),
                    factor * resistance.slope(flow, density, viscosity));
        }
        return MixedLaw.measured(coefficient(values, "linear"), coefficient(values, "quadratic"), measured, factor);
    }
}
