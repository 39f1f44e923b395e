package tramontane.model;

import java.util.List;
import java.util.Optional;
import tramontane.physics.units.QuantityKind;

/**
 * One field of a {@link Form}: its name in the file, what may stand in it, and the words that explain it.
 *
 * <p>From this alone come reading and checking, JSON Schema, property pages, CSV columns, filters and help.
 *
 * @param name     the name in the file, lower camel case
 * @param label    what people read, lower case: {@code free area}
 * @param shape    what may stand in it
 * @param required whether it must be given
 * @param standard what holds when it is not given, as it would be written; empty when there is no such value
 * @param help     one or two sentences: what it means and where to find it
 */
public record Field(String name, String label, Shape shape, boolean required, Optional<Value> standard, String help) {

    private static Field field(String name, String label, Shape shape, String help) {
        return new Field(name, label, shape, false, Optional.empty(), help);
    }

    /** A text. */
    public static Field words(String name, String label, String help) {
        return field(name, label, new Shape.Words(), help);
    }

    /** One of these words. */
    public static Field choice(String name, String label, List<String> words, String help) {
        return field(name, label, new Shape.Choice(words), help);
    }

    /** True or false. */
    public static Field yesNo(String name, String label, String help) {
        return field(name, label, new Shape.YesNo(), help);
    }

    /** A whole number between two bounds, both included. */
    public static Field whole(String name, String label, int least, int most, String help) {
        return field(name, label, new Shape.Whole(least, most), help);
    }

    /** A quantity of a kind within a range. */
    public static Field amount(String name, String label, QuantityKind kind, Range range, String help) {
        return field(name, label, new Shape.Amount(kind, range), help);
    }

    /** Several quantities of a kind; {@code least} is the smallest number of them. */
    public static Field amounts(String name, String label, QuantityKind kind, Range range, int least, String help) {
        return field(name, label, new Shape.Amounts(kind, range, false, least), help);
    }

    /** Several quantities of a kind, each larger than the one before. */
    public static Field increasing(String name, String label, QuantityKind kind, Range range, int least, String help) {
        return field(name, label, new Shape.Amounts(kind, range, true, least), help);
    }

    /** The id of something else in the design. */
    public static Field reference(String name, String label, Shape.Target target, String help) {
        return field(name, label, new Shape.Reference(target), help);
    }

    /** Ids of something else in the design. */
    public static Field references(String name, String label, Shape.Target target, String help) {
        return field(name, label, new Shape.References(target), help);
    }

    /** An object with fields of its own. */
    public static Field part(String name, String label, Form form, String help) {
        return field(name, label, new Shape.Part(form), help);
    }

    /** A list of objects with fields of their own. */
    public static Field parts(String name, String label, Form form, String help) {
        return field(name, label, new Shape.Parts(form, ""), help);
    }

    /** A list of objects, each of which may be written short as a bare value of one of its fields. */
    public static Field parts(String name, String label, Form form, String shorthand, String help) {
        return field(name, label, new Shape.Parts(form, shorthand), help);
    }

    /** Anything, kept as written. */
    public static Field anything(String name, String label, String help) {
        return field(name, label, new Shape.Anything(), help);
    }

    /** A field of any shape. */
    public static Field of(String name, String label, Shape shape, String help) {
        return field(name, label, shape, help);
    }

    /** This field, which must then be given. */
    public Field mandatory() {
        return new Field(name, label, shape, true, standard, help);
    }

    /** This field with the text that holds when it is not given, for example {@code "20 °C"}. */
    public Field standard(String written) {
        return new Field(name, label, shape, required, Optional.of(new Value.Text(written)), help);
    }

    /** This field with the number that holds when it is not given. */
    public Field standard(double si) {
        return new Field(name, label, shape, required, Optional.of(Value.Num.of(si)), help);
    }
}
