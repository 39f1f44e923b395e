package tramontane.thermal.internal.links;

import java.util.List;
import java.util.Optional;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.AirStream;
import tramontane.analysis.Finding;
import tramontane.analysis.LinkKind;
import tramontane.analysis.LinkLaw;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Relation;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Range;
import tramontane.model.Values;
import tramontane.physics.units.QuantityKind;

/** A surface whose heat transfer coefficient is stated; it counts from the mean of the air along it. */
@Component(service = LinkKind.class)
public final class SurfaceKind implements LinkKind {

    private static final Relation NEWTON = new Relation("stated heat transfer coefficient", "R = 1/(h A)",
            "I. Newton's law of cooling, e.g. F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass Transfer, ch. 1",
            "the flow for which the coefficient is stated");

    private static final Form FORM = Form.of("surface", "A surface with a stated heat transfer coefficient.",
            Field.amount("coefficient", "heat transfer coefficient", QuantityKind.HEAT_TRANSFER, Range.POSITIVE,
                    "Mean over the surface, against the mean of the air along it.").mandatory(),
            Field.amount("area", "area", QuantityKind.AREA, Range.POSITIVE, "Area that gives off heat to the air.").mandatory(),
            Remarks.STATED_FLOW);

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Step step() {
        return Step.SURFACE;
    }

    @Override
    public LinkLaw law(Values values, Setting setting) {
        double resistance = 1 / (values.si("coefficient") * values.si("area"));
        return (air, beyond) -> resistance;
    }

    @Override
    public List<Finding> findings(Values values, Setting setting, AirStream air) {
        return Remarks.stated(values, setting, air);
    }

    @Override
    public Optional<PassageKind.Origin> origin(Values values, Setting setting, AirStream air) {
        return Optional.of(Inputs.of(setting).coefficient("coefficient h", values.si("coefficient"))
                .area("area A", values.si("area")).of(NEWTON));
    }
}
