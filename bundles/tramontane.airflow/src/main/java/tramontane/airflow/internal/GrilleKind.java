package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Relation;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Range;
import tramontane.model.Values;
import tramontane.physics.Resistance;
import tramontane.physics.units.QuantityKind;

/**
 * A grille or perforated plate in the wall of a bay.
 *
 * <p>Δp = K ρ v²/2 on the face velocity. K is the plate's own coefficient of I. E. Idelchik, Handbook of Hydraulic Resistance,
 * 3rd ed. (1994), diagram 8-1 (thin) or 8-3 (thicker than 0.015 hole diameters), plus 1 for the velocity head that is lost in
 * the bay behind it. Correlations for plates differ by 10 to 30 %. Holes of unknown size count as one for where creeping flow
 * ends.
 */
@Component(service = PassageKind.class)
public final class GrilleKind implements PassageKind {

    /** Thickness over hole diameter above which a plate counts as thick; diagram 8-3. */
    static final double THICK = 0.015;
    /** Friction factor in the short holes of a thick plate; common practice. */
    static final double FRICTION = 0.02;
    /** Velocity head that is lost behind the grille. */
    private static final double EXIT = 1;

    private static final Relation GIVEN = new Relation("local loss", "Δp = K ρ v²/2, v = Q/A", "loss coefficient as given", "");
    private static final Relation THIN_PLATE = new Relation("thin perforated plate",
            "Δp = K ρ v²/2, v = Q/A, K = (0.707 (1-F)^0.375 + 1 - F)²/F² + 1",
            "I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed. (1994), diagram 8-1; 1 for the velocity head lost behind it",
            "sharp edges, hole Reynolds numbers above about 1e5; other correlations differ by 10 to 30 %");
    private static final Relation THICK_PLATE = new Relation("thick perforated plate",
            "Δp = K ρ v²/2, v = Q/A, K = (0.5 (1-F)^0.75 + τ (1-F)^1.375 + (1-F)² + λ l/d)/F² + 1",
            "I. E. Idelchik, Handbook of Hydraulic Resistance, 3rd ed. (1994), diagram 8-3; 1 for the velocity head lost behind it",
            "λ = 0.02 (common practice); other correlations differ by 10 to 30 %");

    private static final Form FORM = Form.of("grille", "A grille or perforated plate in the wall of a bay.",
            Field.amount("width", "width", QuantityKind.LENGTH, Range.POSITIVE, "Width of its face; with its height."),
            Field.amount("height", "height", QuantityKind.LENGTH, Range.POSITIVE, "Height of its face; with its width."),
            Field.amount("area", "face area", QuantityKind.AREA, Range.POSITIVE, "Area of its face, holes and bars together."),
            Field.amount("freeArea", "free area", QuantityKind.AREA, Range.POSITIVE, "Area of all holes together."),
            Field.amount("openRatio", "open ratio", QuantityKind.FRACTION, Range.PART_OF_ONE,
                    "Area of the holes over area of the face."),
            Field.amount("thickness", "thickness", QuantityKind.LENGTH, Range.POSITIVE,
                    "Thickness of the plate, or depth of the bars; thin where not given."),
            Field.amount("holeDiameter", "hole diameter", QuantityKind.LENGTH, Range.POSITIVE,
                    "Hydraulic diameter of one hole: four times its area over its edge."),
            Field.amount("lossCoefficient", "loss coefficient", QuantityKind.NUMBER, Range.POSITIVE,
                    "Drop of total pressure over the velocity head of the face velocity, the lost head behind it included. "
                            + "Calculated from the free area where not given."),
            ExitHead.FIELD);

    private static final List<List<String>> FACES = List.of(List.of("width", "height"), List.of("area"));
    private static final List<List<String>> OPEN = List.of(List.of("freeArea"), List.of("openRatio"), List.of("lossCoefficient"));

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public List<Problem> check(Values values, Setting setting, String place) {
        List<Problem> problems = new ArrayList<>(Checks.oneOf(values, place, "how large its face is", FACES));
        if (values.has("lossCoefficient")) {
            problems.addAll(Checks.atMostOne(values, place, "freeArea", "openRatio"));
        } else {
            problems.addAll(Checks.oneOf(values, place, "how open it is", OPEN));
        }
        face(values).ifPresent(face -> {
            if (values.has("freeArea") && values.si("freeArea") > face) {
                problems.add(Problem.error(Problem.place(place, "freeArea"),
                        "is larger than the face it lies in; expected at most " + (float) face + " m²"));
            }
        });
        if (values.has("thickness") && !values.has("holeDiameter") && !values.has("lossCoefficient")) {
            problems.add(Problem.missing(Problem.place(place, "holeDiameter"),
                    "; expected with thickness, since only both together say how thick the plate is for the air"));
        }
        if (problems.isEmpty()) {
            face(values).ifPresent(face -> problems.addAll(ExitHead.check(loss(values, open(values, face)), values, place)));
        }
        return problems;
    }

    private static OptionalDouble face(Values values) {
        if (values.has("area")) {
            return OptionalDouble.of(values.si("area"));
        }
        return values.has("width") && values.has("height")
                ? OptionalDouble.of(values.si("width") * values.si("height")) : OptionalDouble.empty();
    }

    @Override
    public FlowLaw law(Values values, Setting setting) {
        double face = face(values).orElseThrow();
        double open = open(values, face);
        double hole = values.has("holeDiameter") ? values.si("holeDiameter") : LocalLoss.roundDiameter(open * face);
        return new LocalLoss(ExitHead.in(loss(values, open), values), face, hole, open * face);
    }

    /** Its face: what stands at a grille sees the face velocity, not that in the holes. */
    @Override
    public OptionalDouble flowArea(Values values, Setting setting) {
        return OptionalDouble.of(face(values).orElseThrow());
    }

    private static double open(Values values, double face) {
        return values.has("openRatio") ? values.si("openRatio")
                : values.has("freeArea") ? Math.min(1, values.si("freeArea") / face) : 1;
    }

    /** Thickness over hole diameter; 0 for a thin plate. */
    private static double thickness(Values values) {
        return values.has("thickness") && values.has("holeDiameter")
                ? values.si("thickness") / values.si("holeDiameter") : 0;
    }

    /** Loss coefficient, exit velocity head included. */
    private static double loss(Values values, double open) {
        if (values.has("lossCoefficient")) {
            return values.si("lossCoefficient");
        }
        double thickness = thickness(values);
        return EXIT + (thickness > THICK ? Resistance.thickPlate(open, thickness, FRICTION) : Resistance.thinPlate(open));
    }

    @Override
    public Optional<Origin> origin(Values values, Setting setting) {
        double face = face(values).orElseThrow();
        double open = open(values, face);
        Inputs inputs = Inputs.of(setting).area("face area A", face)
                .number("loss coefficient K", ExitHead.in(loss(values, open), values));
        if (values.has("lossCoefficient")) {
            return Optional.of(inputs.of(GIVEN));
        }
        inputs.add("open ratio F", QuantityKind.FRACTION, open);
        return Optional.of(thickness(values) > THICK
                ? inputs.number("thickness over hole diameter", thickness(values)).of(THICK_PLATE) : inputs.of(THIN_PLATE));
    }
}
