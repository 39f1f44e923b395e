package tramontane.thermal.internal.links;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.AirStream;
import tramontane.analysis.Finding;
import tramontane.analysis.LinkKind;
import tramontane.analysis.LinkLaw;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Relation;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Values;

/**
 * A bare package, in air that goes along its flat face or across its round body; it counts from the mean of the air at its place.
 * What it gives off through its leads to a board is left out.
 */
@Component(service = LinkKind.class)
public final class PackageKind implements LinkKind {

    private static final Relation PLATE = new Relation("flat plate", "R = 1/(h A), h = Nu k/L, Nu = 0.664 Re^½ Pr^⅓ up to Re 5e5",
            "E. Pohlhausen, Z. angew. Math. Mech. 1 (1921) 115-121; F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass "
                    + "Transfer, ch. 7", "a flat face along the flow; sides of a package count as much as its face");
    private static final Relation CYLINDER = new Relation("cylinder across the flow", "R = 1/(h π D L), h = Nu k/D",
            "S. W. Churchill, M. Bernstein, J. Heat Transfer 99 (1977) 300-306", "Re Pr above 0.2; in proportion to velocity below");

    private static final Form FORM = Form.of("package", "A bare package, flat along the flow or round across it.",
            Fields.length("width", "width", "Width across the flow of a flat package; with its length."),
            Fields.length("length", "length", "Length of a flat package along the flow; of a round one across it."),
            Fields.length("height", "height", "Height of a flat package, whose sides then give off heat too."),
            Fields.length("diameter", "diameter", "Diameter of a round package that lies across the flow; with its length."),
            Approach.FLOW_AREA, Approach.VELOCITY);

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Step step() {
        return Step.SURFACE;
    }

    @Override
    public List<Problem> check(Values values, Setting setting, String place) {
        List<Problem> problems = new ArrayList<>(Checks.oneOf(setting, place, "its size", List.of(List.of("width"), List.of("diameter"))));
        if (!Checks.writes(setting, "length")) {
            problems.add(Problem.missing(Problem.place(place, "length"), "; expected with width or diameter"));
        }
        if (!Checks.writes(setting, "width")) {
            problems.addAll(Checks.unused(setting, place, "without width", "height"));
        }
        problems.addAll(Approach.check(setting, place));
        return problems;
    }

    private static boolean round(Values values) {
        return values.has("diameter");
    }

    private static double area(Values values) {
        double length = values.si("length");
        if (round(values)) {
            return Math.PI * values.si("diameter") * length;
        }
        double width = values.si("width");
        return width * length + (values.has("height") ? 2 * (width + length) * values.si("height") : 0);
    }

    private static double coefficient(Values values, AirStream air) {
        double velocity = Approach.velocity(values, air);
        return round(values) ? Convection.acrossCylinder(values.si("diameter"), velocity, air)
                : Convection.alongPlate(values.si("length"), velocity, air);
    }

    @Override
    public LinkLaw law(Values values, Setting setting) {
        double area = area(values);
        return (air, beyond) -> 1 / (coefficient(values, air) * area);
    }

    @Override
    public List<Finding> findings(Values values, Setting setting, AirStream air) {
        return Remarks.approach(values, setting, air);
    }

    @Override
    public Optional<PassageKind.Origin> origin(Values values, Setting setting, AirStream air) {
        Inputs inputs = Inputs.of(setting);
        if (round(values)) {
            inputs.length("diameter D", values.si("diameter"));
        }
        return Optional.of(inputs.length("length L", values.si("length")).area("area A", area(values))
                .velocity("velocity", Approach.velocity(values, air)).air(air)
                .coefficient("heat transfer coefficient h", coefficient(values, air)).of(round(values) ? CYLINDER : PLATE));
    }
}
