package tramontane.thermal.internal.links;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.AirStream;
import tramontane.analysis.LinkKind;
import tramontane.analysis.LinkLaw;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Relation;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Range;
import tramontane.model.Values;
import tramontane.physics.heat.Interface;
import tramontane.physics.units.QuantityKind;

/** A layer between two surfaces: paste, pad, adhesive, or the bare joint. */
@Component(service = LinkKind.class)
public final class InterfaceKind implements LinkKind {

    private static final QuantityKind CONTACT_RESISTANCE = new QuantityKind("contact resistance", "m² K/W");

    private static final Relation LAYER = new Relation("thermal interface", "R = (t/k + Rc)/A",
            "ASTM D5470 for what the parts mean", "heat goes straight through");

    private static final Form FORM = Form.of("interface", "A layer between two surfaces: paste, pad, adhesive, or the bare joint.",
            Field.amount("thickness", "thickness", QuantityKind.LENGTH, Range.NOT_NEGATIVE,
                    "Thickness of the layer as mounted; with its conductivity."),
            Field.amount("conductivity", "conductivity", QuantityKind.CONDUCTIVITY, Range.POSITIVE,
                    "Thermal conductivity of the layer; with its thickness."),
            Field.amount("contactResistance", "contact resistance", CONTACT_RESISTANCE, Range.NOT_NEGATIVE,
                    "Resistance times area of both faces together, as a number in m² K/W; alone, what a data sheet calls the thermal"
                            + " impedance of a pad at its pressure.").standard(0),
            Field.amount("width", "width", QuantityKind.LENGTH, Range.POSITIVE, "Width of the area in touch; with its height."),
            Field.amount("height", "height", QuantityKind.LENGTH, Range.POSITIVE, "Height of the area in touch; with its width."),
            Field.amount("area", "area", QuantityKind.AREA, Range.POSITIVE, "Area in touch, of any shape."));

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Step step() {
        return Step.INTERFACE;
    }

    @Override
    public List<Problem> check(Values values, Setting setting, String place) {
        List<Problem> problems = new ArrayList<>();
        if (Checks.writes(setting, "thickness", "conductivity")) {
            problems.addAll(Checks.together(setting, place, List.of("thickness", "conductivity")));
        } else if (!Checks.writes(setting, "contactResistance")) {
            problems.add(Problem.missing(Problem.place(place, "thickness"),
                    ", so that its resistance is not known; expected thickness and conductivity, or contactResistance"));
        }
        problems.addAll(Checks.oneOf(setting, place, "its size", List.of(List.of("width", "height"), List.of("area"))));
        return problems;
    }

    private static double area(Values values) {
        return values.has("area") ? values.si("area") : values.si("width") * values.si("height");
    }

    @Override
    public LinkLaw law(Values values, Setting setting) {
        boolean layer = values.has("thickness");
        double resistance = Interface.resistance(layer ? values.si("thickness") : 0, layer ? values.si("conductivity") : 1,
                values.si("contactResistance"), area(values));
        return (air, beyond) -> resistance;
    }

    @Override
    public Optional<PassageKind.Origin> origin(Values values, Setting setting, AirStream air) {
        Inputs inputs = Inputs.of(setting);
        if (values.has("thickness")) {
            inputs.length("thickness t", values.si("thickness")).conductivity("conductivity k", values.si("conductivity"));
        }
        return Optional.of(inputs.add("contact resistance Rc of both faces", CONTACT_RESISTANCE, values.si("contactResistance"))
                .area("area A", area(values)).of(LAYER));
    }
}
