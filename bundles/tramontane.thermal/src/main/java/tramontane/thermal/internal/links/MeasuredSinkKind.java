package tramontane.thermal.internal.links;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.AirStream;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.LinkKind;
import tramontane.analysis.LinkLaw;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Relation;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Quantities;
import tramontane.model.Range;
import tramontane.model.Values;
import tramontane.physics.MonotoneCurve;
import tramontane.physics.units.QuantityKind;

/**
 * A heat sink known by measured points of flow, or velocity, and resistance.
 *
 * <p>Between the points the logarithm of the resistance is a curve over the logarithm of the flow, so that a power law comes back
 * exactly. Below them the slope of the first point goes on, or that of a laminar boundary layer where it is steeper, so that the
 * resistance never falls with falling flow and has no end at zero flow. Above them the last value is held, which overstates the
 * temperature.
 *
 * <p>The table is taken as measured at sea level. Thinner air of the same volume flow is looked up at the flow of equal mass: at
 * one pressure, h ∝ k √(ρ v/μ) of air hardly depends on its temperature, so that pressure alone is taken into account.
 */
@Component(service = LinkKind.class)
public final class MeasuredSinkKind implements LinkKind {

    /** Resistance of a laminar boundary layer against velocity (E. Pohlhausen 1921: Nu ∝ √Re), as a power. */
    private static final double LAMINAR = -0.5;

    private static final Relation MEASURED = new Relation("measured heat sink",
            "ln R over ln x, a curve through the measured points without overshoot; x flow or velocity × p/p₀",
            "interpolation: F. N. Fritsch, R. E. Carlson, SIAM J. Numer. Anal. 17 (1980) 238-246; equal mass flow: Reynolds "
                    + "similarity", "between the first and the last measured point; measured at sea level");

    private static final Form FORM = Form.of("measured sink", "A heat sink known by measured flows, or velocities, and resistances.",
            Field.increasing("flow", "flow", QuantityKind.FLOW, Range.POSITIVE, 1,
                    "Measured flows at sea level, each larger than the one before; or velocity."),
            Field.increasing("velocity", "velocity", QuantityKind.VELOCITY, Range.POSITIVE, 1,
                    "Measured velocities of the air that comes to it at sea level, each larger than the one before; or flow."),
            Field.amounts("resistance", "resistance", QuantityKind.THERMAL_RESISTANCE, Range.POSITIVE, 1,
                    "Resistance to the air at each of them.").mandatory(),
            Reference.FIELD, FlowShare.FIELD, Approach.FLOW_AREA);

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
        return Reference.inlet(values);
    }

    @Override
    public List<Problem> check(Values values, Setting setting, String place) {
        List<Problem> problems = new ArrayList<>(Checks.oneOf(setting, place, "what its resistance was measured against",
                List.of(List.of("flow"), List.of("velocity"))));
        if (Checks.writes(setting, "flow")) {
            problems.addAll(Checks.unused(setting, place, "with measured flows", "flowArea"));
        } else {
            problems.addAll(Checks.unused(setting, place, "with measured velocities; give flowArea", "flowShare"));
        }
        String against = values.has("flow") ? "flow" : "velocity";
        Optional<Quantities> flow = values.ifQuantities(against);
        Optional<Quantities> resistance = values.ifQuantities("resistance");
        flow.filter(points -> points.size() == 1).ifPresent(points -> problems.add(Problem.error(Problem.place(place, against),
                "is a table with one point, which does not say how the resistance follows the " + against
                        + "; expected two points or more, or a link of kind resistance")));
        if (flow.isPresent() && resistance.isPresent()) {
            int points = flow.get().size();
            int given = resistance.get().size();
            if (points != given) {
                problems.add(Problem.error(Problem.place(place, "resistance"), "has " + given + (given == 1 ? " number" : " numbers")
                        + "; expected " + points + ", one for each " + against));
            }
            for (int i = 1; i < given; i++) {
                if (resistance.get().si().get(i) > resistance.get().si().get(i - 1)) {
                    problems.add(Problem.error(Problem.place(place, "resistance"), "number " + (i + 1)
                            + " is larger than the one before it; expected a resistance that does not rise with " + against));
                    break;
                }
            }
        }
        return problems;
    }

    private static double[] points(Values values) {
        return values.ifQuantities(values.has("flow") ? "flow" : "velocity").orElseThrow().toArray();
    }

    /** What comes to the sink in the terms of its table, as sea-level air; NaN where the velocity is not known. */
    private static double working(Values values, double thinness, AirStream air) {
        return thinness * (values.has("flow") ? FlowShare.flow(values, air)
                : values.has("flowArea") ? air.flow() / values.si("flowArea") : air.velocity());
    }

    @Override
    public LinkLaw law(Values values, Setting setting) {
        double[] x = points(values);
        double[] y = values.ifQuantities("resistance").orElseThrow().toArray();
        MonotoneCurve curve = MonotoneCurve.of(Arrays.stream(x).map(Math::log).toArray(), Arrays.stream(y).map(Math::log).toArray());
        double power = Math.min(LAMINAR, curve.slope(curve.firstX()));
        double thinness = Place.thinness(setting.condition());
        return (air, beyond) -> {
            double at = working(values, thinness, air);
            return at < x[0] ? y[0] * Math.pow(at / x[0], power)
                    : at > x[x.length - 1] ? y[y.length - 1] : Math.exp(curve.value(Math.log(at)));
        };
    }

    @Override
    public List<Finding> findings(Values values, Setting setting, AirStream air) {
        double[] x = points(values);
        double thinness = Place.thinness(setting.condition());
        double at = working(values, thinness, air);
        QuantityKind kind = values.has("flow") ? QuantityKind.FLOW : QuantityKind.VELOCITY;
        String name = Remarks.name(setting);
        List<Finding> findings = new ArrayList<>();
        if (values.has("flow")) {
            findings.addAll(FlowShare.assumed(values, setting, air, ""));
        } else {
            findings.addAll(Remarks.slow(setting, at / thinness));
        }
        String thin = Remarks.thin(setting) ? " of sea-level air" : "";
        if (at < x[0]) {
            findings.add(Finding.caution(setting.source().id(), name + " works at ", new Amount(at, kind),
                    thin + ", below its table, which begins at ", new Amount(x[0], kind),
                    "; its resistance is carried on as a power of the " + kind.name())
                    .remedy("measure it at less " + kind.name()).source("common practice"));
        } else if (at > x[x.length - 1]) {
            findings.add(Finding.caution(setting.source().id(), name + " works at ", new Amount(at, kind),
                    thin + ", beyond its table, which ends at ", new Amount(x[x.length - 1], kind),
                    "; the last resistance is held, which overstates its temperature")
                    .remedy("measure it at more " + kind.name()).source("common practice"));
        }
        return findings;
    }

    @Override
    public Optional<PassageKind.Origin> origin(Values values, Setting setting, AirStream air) {
        boolean byFlow = values.has("flow");
        double[] x = points(values);
        double[] y = values.ifQuantities("resistance").orElseThrow().toArray();
        Inputs inputs = Inputs.of(setting);
        if (byFlow) {
            inputs.flow("flow", FlowShare.flow(values, air));
        } else {
            inputs.velocity("velocity", working(values, 1, air));
        }
        inputs.thinAir();
        for (int i = 0; i < x.length; i++) {
            inputs.add((byFlow ? "measured flow " : "measured velocity ") + (i + 1),
                    byFlow ? QuantityKind.FLOW : QuantityKind.VELOCITY, x[i])
                    .add("measured resistance " + (i + 1), QuantityKind.THERMAL_RESISTANCE, y[i]);
        }
        return Optional.of(inputs.of(MEASURED));
    }
}
