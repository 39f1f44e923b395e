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
import tramontane.physics.heat.Spreading;
import tramontane.physics.units.QuantityKind;

/**
 * A plate in which heat spreads from a part of one face and goes through to the whole other face: the base of a heat sink.
 *
 * <p>The hottest place of the heated part counts unless its mean is asked for: a limit holds at the hottest place, and the relation
 * is better there.
 */
@Component(service = LinkKind.class)
public final class SpreadingKind implements LinkKind {

    private static final String MAXIMUM = "maximum";
    /** Sizes written in other units may differ by rounding. */
    private static final double ROUNDING = 1e-9;

    private static final String LEE = "S. Lee, S. Song, V. Au, K. P. Moran, ASME/JSME Thermal Engineering Conf. 4 (1995) 199-206";
    private static final String SHAPE = "φ = (tanh λτ + λ/Bi)/(1 + λ/Bi tanh λτ), λ = π + 1/(√π ε), ε = a/b, τ = t/b, "
            + "Bi = 1/(π k b R0); a, b radii of circles of the areas, R0 the links after it";
    private static final Relation HOTTEST = new Relation("spreading to the hottest place",
            "R = (1 - ε) φ/(π k a) + t/(k A), " + SHAPE, LEE, "1 to 3 % low against the exact series for thin plates");
    private static final Relation MEAN = new Relation("mean spreading",
            "R = ½ (1 - ε)^1.5 φ/(√π k a) + t/(k A), " + SHAPE, LEE, "5 to 7 % low against the exact series for thin plates");

    private static final Form FORM = Form.of("spreading", "A plate in which heat spreads from a part of its face: the base of a sink.",
            Fields.length("sourceWidth", "source width", "Width of the heated part; with sourceHeight."),
            Fields.length("sourceHeight", "source height", "Height of the heated part; with sourceWidth."),
            Field.amount("sourceArea", "source area", QuantityKind.AREA, Range.POSITIVE, "Area of a heated part of any compact shape."),
            Fields.length("width", "width", "Width of the plate; with its length."),
            Fields.length("length", "length", "Length of the plate; with its width."),
            Field.amount("plateArea", "plate area", QuantityKind.AREA, Range.POSITIVE, "Area of a plate of any compact shape."),
            Fields.length("thickness", "thickness", "Thickness of the plate.").mandatory(),
            Field.amount("conductivity", "conductivity", QuantityKind.CONDUCTIVITY, Range.POSITIVE, "Thermal conductivity of the plate.")
                    .mandatory(),
            Field.choice("where", "where", List.of("average", MAXIMUM), "Whether the mean of the heated part or its hottest place counts.")
                    .standard(MAXIMUM));

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Step step() {
        return Step.SPREADING;
    }

    @Override
    public List<Problem> check(Values values, Setting setting, String place) {
        List<Problem> problems = new ArrayList<>(Checks.oneOf(setting, place, "the size of its source",
                List.of(List.of("sourceWidth", "sourceHeight"), List.of("sourceArea"))));
        problems.addAll(Checks.oneOf(setting, place, "the size of its plate", List.of(List.of("width", "length"), List.of("plateArea"))));
        if (problems.isEmpty()) {
            problems.addAll(fits(values, place));
        }
        return problems;
    }

    private static List<Problem> fits(Values values, String place) {
        Optional<Double> source = area(values, "sourceWidth", "sourceHeight", "sourceArea");
        Optional<Double> plate = area(values, "width", "length", "plateArea");
        if (source.isEmpty() || plate.isEmpty()) {
            return List.of();
        }
        if (values.has("sourceWidth") && values.has("width")) {
            double[] part = sides(values, "sourceWidth", "sourceHeight");
            double[] whole = sides(values, "width", "length");
            return part[0] <= whole[0] * (1 + ROUNDING) && part[1] <= whole[1] * (1 + ROUNDING) ? List.of()
                    : List.of(Problem.error(Problem.place(place, "sourceWidth"), "makes a source of " + rectangle(part)
                    + ", larger than its plate of " + rectangle(whole) + "; expected a source that fits on it"));
        }
        return source.get() <= plate.get() * (1 + ROUNDING) ? List.of() : List.of(Problem.error(
                Problem.place(place, values.has("sourceArea") ? "sourceArea" : "sourceWidth"), "makes a source of "
                + squareCentimetres(source.get()) + ", larger than its plate of " + squareCentimetres(plate.get())
                + "; expected a source that fits on it"));
    }

    /** The shorter and the longer side. */
    private static double[] sides(Values values, String one, String other) {
        return new double[] {Math.min(values.si(one), values.si(other)), Math.max(values.si(one), values.si(other))};
    }

    private static String rectangle(double[] sides) {
        return Checks.millimetres(sides[0]) + " by " + Checks.millimetres(sides[1]);
    }

    private static String squareCentimetres(double si) {
        return (float) (1e4 * si) + " cm²";
    }

    private static Optional<Double> area(Values values, String width, String height, String area) {
        return values.has(area) ? Optional.of(values.si(area))
                : values.has(width) && values.has(height) ? Optional.of(values.si(width) * values.si(height)) : Optional.empty();
    }

    private static double plate(Values values) {
        return area(values, "width", "length", "plateArea").orElseThrow();
    }

    private static double source(Values values) {
        return Math.min(plate(values), area(values, "sourceWidth", "sourceHeight", "sourceArea").orElseThrow());
    }

    private static boolean hottest(Values values) {
        return values.text("where").equals(MAXIMUM);
    }

    @Override
    public LinkLaw law(Values values, Setting setting) {
        double source = source(values);
        double plate = plate(values);
        double thickness = values.si("thickness");
        double conductivity = values.si("conductivity");
        double through = Spreading.through(plate, thickness, conductivity);
        boolean hottest = hottest(values);
        return (air, beyond) -> Double.isNaN(beyond) ? Double.NaN
                : through + (hottest ? Spreading.maximum(source, plate, thickness, conductivity, beyond)
                        : Spreading.mean(source, plate, thickness, conductivity, beyond));
    }

    @Override
    public Optional<PassageKind.Origin> origin(Values values, Setting setting, AirStream air) {
        return Optional.of(Inputs.of(setting).area("source area", source(values)).area("plate area A", plate(values))
                .length("thickness t", values.si("thickness")).conductivity("conductivity k", values.si("conductivity"))
                .of(hottest(values) ? HOTTEST : MEAN));
    }
}
