package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.model.Field;
import tramontane.model.Problem;
import tramontane.model.Range;
import tramontane.model.Values;
import tramontane.physics.Friction;
import tramontane.physics.LaminarFriction;
import tramontane.physics.units.QuantityKind;

/**
 * The section that air goes through: round, rectangular, or of an area only.
 *
 * @param area     m²
 * @param diameter hydraulic diameter, four times the area over the perimeter, m; that of a circle where only the area is known
 * @param aspect   short over long side; 1 where it is not rectangular
 * @param round    whether it is round, or taken as round because only its area is known
 */
record CrossSection(double area, double diameter, double aspect, boolean round) {

    private static final List<List<String>> SHAPES = List.of(List.of("diameter"), List.of("width", "height"));
    private static final List<List<String>> SIZES = List.of(List.of("diameter"), List.of("width", "height"), List.of("area"));

    static CrossSection round(double diameter) {
        return new CrossSection(Math.PI / 4 * diameter * diameter, diameter, 1, true);
    }

    static CrossSection rectangle(double width, double height) {
        return new CrossSection(width * height, 2 * width * height / (width + height),
                Math.min(width, height) / Math.max(width, height), false);
    }

    static CrossSection ofArea(double area) {
        return new CrossSection(area, LocalLoss.roundDiameter(area), 1, true);
    }

    /** Fields of a section whose shape matters; {@code what} goes into their help: {@code duct}. */
    static List<Field> shapeFields(String what) {
        return List.of(
                Field.amount("diameter", "diameter", QuantityKind.LENGTH, Range.POSITIVE, "Diameter of a round " + what + "."),
                Field.amount("width", "width", QuantityKind.LENGTH, Range.POSITIVE,
                        "Width of a rectangular " + what + "; with its height."),
                Field.amount("height", "height", QuantityKind.LENGTH, Range.POSITIVE,
                        "Height of a rectangular " + what + "; with its width."));
    }

    /** Fields of a section that may also be known by its area only. */
    static List<Field> sizeFields(String what) {
        List<Field> fields = new ArrayList<>(shapeFields(what));
        fields.add(Field.amount("area", "area", QuantityKind.AREA, Range.POSITIVE,
                "Area of " + (what.matches("[aeiou].*") ? "an " : "a ") + what + " of any shape."));
        return fields;
    }

    /** Whether the fields of {@link #shapeFields} say one shape. */
    static List<Problem> checkShape(Values values, String place, String what) {
        return Checks.oneOf(values, place, what, SHAPES);
    }

    /** Whether the fields of {@link #sizeFields} say one size. */
    static List<Problem> checkSize(Values values, String place, String what) {
        return Checks.oneOf(values, place, what, SIZES);
    }

    /** The section that the fields say, where they do; of several, the first. */
    static Optional<CrossSection> of(Values values) {
        if (values.has("diameter")) {
            return Optional.of(round(values.si("diameter")));
        }
        if (values.has("width") && values.has("height")) {
            return Optional.of(rectangle(values.si("width"), values.si("height")));
        }
        return values.has("area") ? Optional.of(ofArea(values.si("area"))) : Optional.empty();
    }

    /** Friction of laminar flow that develops from its entry on. */
    LaminarFriction entry() {
        return round ? LaminarFriction.Shah.round() : LaminarFriction.Shah.rectangle(aspect);
    }

    /** Friction of laminar flow that is developed all along. */
    LaminarFriction developed() {
        return new LaminarFriction.Developed(round ? Friction.LAMINAR_ROUND : Friction.laminarRectangle(aspect));
    }
}
