package tramontane.thermal.internal.links;

import java.util.Optional;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.AirStream;
import tramontane.analysis.LinkKind;
import tramontane.analysis.LinkLaw;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Relation;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Range;
import tramontane.model.Values;
import tramontane.physics.units.QuantityKind;

/** The resistance from junction to case that a data sheet states. */
@Component(service = LinkKind.class)
public final class JunctionToCaseKind implements LinkKind {

    private static final Relation STATED = new Relation("junction to case", "ΔT = R P", "JEDEC JESD51-14 for what it means",
            "all heat leaves through the face that it is stated for");

    private static final Form FORM = Form.of("junction to case", "The resistance within a package, from junction to case.",
            Field.amount("resistance", "resistance", QuantityKind.THERMAL_RESISTANCE, Range.POSITIVE,
                    "From its data sheet, to the face that the next link begins at.").mandatory());

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Step step() {
        return Step.PACKAGE;
    }

    @Override
    public LinkLaw law(Values values, Setting setting) {
        double resistance = values.si("resistance");
        return (air, beyond) -> resistance;
    }

    @Override
    public Optional<PassageKind.Origin> origin(Values values, Setting setting, AirStream air) {
        return Optional.of(Inputs.of(setting).add("resistance R", QuantityKind.THERMAL_RESISTANCE, values.si("resistance")).of(STATED));
    }
}
