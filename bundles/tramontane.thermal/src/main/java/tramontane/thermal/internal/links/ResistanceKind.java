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

/** A stated resistance to the air, which does not follow the flow: a sink at a known flow, case to ambient. */
@Component(service = LinkKind.class)
public final class ResistanceKind implements LinkKind {

    private static final Relation STATED = new Relation("stated resistance to the air", "ΔT = R P", "as stated in the design",
            "the flow for which it is stated");

    private static final Form FORM = Form.of("resistance", "A stated resistance to the air, which does not follow the flow.",
            Field.amount("resistance", "resistance", QuantityKind.THERMAL_RESISTANCE, Range.POSITIVE,
                    "From the surface to the air, at the flow that there is.").mandatory(),
            Remarks.STATED_FLOW, Reference.FIELD);

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
        double resistance = values.si("resistance");
        return (air, beyond) -> resistance;
    }

    @Override
    public boolean fromInlet(Values values, Setting setting) {
        return Reference.inlet(values);
    }

    @Override
    public List<Finding> findings(Values values, Setting setting, AirStream air) {
        return Remarks.stated(values, setting, air);
    }

    @Override
    public Optional<PassageKind.Origin> origin(Values values, Setting setting, AirStream air) {
        return Optional.of(Inputs.of(setting).add("resistance R", QuantityKind.THERMAL_RESISTANCE, values.si("resistance")).of(STATED));
    }
}
