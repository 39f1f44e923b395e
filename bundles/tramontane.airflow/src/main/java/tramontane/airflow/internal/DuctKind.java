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
import tramontane.physics.DuctFriction;
import tramontane.physics.units.QuantityKind;

/**
 * A straight duct, round or rectangular.
 *
 * <p>Δp = (f L/d + K) ρ v²/2, f from laminar flow that develops (R. K. Shah 1978) to turbulent flow (S. W. Churchill 1977) on
 * the hydraulic diameter, K for the entry and the exit.
 */
@Component(service = PassageKind.class)
public final class DuctKind implements PassageKind {

    private static final Relation DUCT = new Relation("straight duct", "Δp = (f L/d + K) ρ v²/2, v = Q/A",
            "f: R. K. Shah, J. Fluids Eng. 100 (1978) 177-179, joined with S. W. Churchill, Chem. Eng. 84 (1977) no. 24, 91-92; "
                    + "f Re of rectangles: R. K. Shah, A. L. London, Laminar Flow Forced Convection in Ducts (1978)",
            "between Re 2000 and 4000 flow may be laminar or turbulent; turbulent flow in rectangles on the hydraulic diameter");

    private static final Form FORM = ExitHead.form("duct", "A straight duct.", CrossSection.shapeFields("duct"),
            Field.amount("length", "length", QuantityKind.LENGTH, Range.POSITIVE, "Length along the flow.").mandatory(),
            Fields.ROUGHNESS, Fields.INLET_LOSS);

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public List<Problem> check(Values values, Setting setting, String place) {
        List<Problem> problems = new ArrayList<>(CrossSection.checkShape(values, place, "its section"));
        CrossSection.of(values).ifPresent(section -> problems.addAll(Fields.checkRoughness(values, place, section)));
        return problems;
    }

    @Override
    public FlowLaw law(Values values, Setting setting) {
        CrossSection section = CrossSection.of(values).orElseThrow();
        return ChannelLaw.of(section.area(), section.diameter(), new DuctFriction(section.entry(),
                values.si("length") / section.diameter(), values.si("roughness") / section.diameter()), loss(values));
    }

    @Override
    public OptionalDouble flowArea(Values values, Setting setting) {
        return OptionalDouble.of(CrossSection.of(values).orElseThrow().area());
    }

    private static double loss(Values values) {
        return values.si("inletLoss") + ExitHead.of(values);
    }

    @Override
    public List<Finding> findings(Values values, Setting setting, OperatingPoint.PassageFlow flow) {
        return Remarks.speed(flow, CrossSection.of(values).orElseThrow().area());
    }

    @Override
    public Optional<Origin> origin(Values values, Setting setting) {
        CrossSection section = CrossSection.of(values).orElseThrow();
        return Optional.of(Inputs.of(setting).area("area A", section.area()).length("hydraulic diameter d", section.diameter())
                .length("length L", values.si("length")).length("roughness", values.si("roughness"))
                .number("loss coefficient K of entry and exit", loss(values)).of(DUCT));
    }
}
