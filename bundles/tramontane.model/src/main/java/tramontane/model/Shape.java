package tramontane.model;

import java.util.List;
import tramontane.physics.units.QuantityKind;

/** What may stand in a {@link Field}. */
public sealed interface Shape {

    /** Any text. */
    record Words() implements Shape {
    }

    /** One of a closed set of words. */
    record Choice(List<String> words) implements Shape {
        public Choice {
            words = List.copyOf(words);
        }
    }

    /** True or false. */
    record YesNo() implements Shape {
    }

    /** A whole number within bounds, both included. */
    record Whole(int least, int most) implements Shape {
    }

    /** A whole number of at least a bound, or one word. */
    record WholeOr(int least, String word) implements Shape {
    }

    /** One quantity: a plain SI number, or a text with a unit. */
    record Amount(QuantityKind kind, Range range) implements Shape {
    }

    /** Several quantities of one kind: a list, or one text with numbers and a unit at its end. */
    record Amounts(QuantityKind kind, Range range, boolean increasing, int least) implements Shape {
    }

    /** One quantity of a kind that is known only later (a requirement's limit): a plain SI number or any known unit. */
    record AnyAmount() implements Shape {
    }

    /** The id of something else in the design. */
    record Reference(Target target) implements Shape {
    }

    /** Several ids. */
    record References(Target target) implements Shape {
    }

    /** One object with fields of its own. */
    record Part(Form form) implements Shape {
    }

    /**
     * A list of objects with fields of their own.
     *
     * @param form      the fields of each
     * @param shorthand the field that a bare value stands for ({@code "box"} for {@code {"id": "box"}}); empty for none
     */
    record Parts(Form form, String shorthand) implements Shape {
    }

    /** Quantities of one kind by a name that refers to something in the design. */
    record AmountsByName(QuantityKind kind, Range range, Target target) implements Shape {
    }

    /** Anything; kept as written. */
    record Anything() implements Shape {
    }

    /** What a reference may name. */
    enum Target {
        /** A bay, or {@code outside}. */
        BAY,
        /** A passage of any kind. */
        PASSAGE,
        /** A passage of kind {@code bank}. */
        BANK,
        /** An air mover. */
        MOVER,
        /** A heat source. */
        HEAT_SOURCE,
        /** A condition. */
        CONDITION,
        /** A bay or a passage. */
        PLACE,
        /** A control law. */
        CONTROL_LAW,
        /** What a sensor sits at: a heat source, a bay or a passage; the heat source where the name is of both. */
        SENSOR,
        /** Where a figure is: anything of the design, or a word that the figure's analysis knows; so no name is unknown. */
        ANYWHERE
    }
}
