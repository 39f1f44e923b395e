package tramontane.model;

import tramontane.physics.units.QuantityKind;

/**
 * How long a condition lasts in a year; all phases together are the mission profile.
 *
 * @param condition   the condition
 * @param timePerYear time per year, s
 * @param more        notes and unknown members
 */
public record MissionPhase(String condition, Quantity timePerYear, Value.Tree more) implements Noun {

    /** The fields in the file. */
    public static final Form FORM = Form.of("mission phase", "How long a condition lasts in a year.",
            Field.reference("condition", "condition", Shape.Target.CONDITION, "The condition.").mandatory(),
            Field.amount("timePerYear", "time per year", QuantityKind.TIME, Range.between(0, 8784 * 3600.0),
                    "How long it lasts in a year, for example \"2000 h\".").mandatory());

    /** A phase of which nothing else is said. */
    public MissionPhase(String condition, Quantity timePerYear) {
        this(condition, timePerYear, Value.Tree.EMPTY);
    }

    /** Reads a phase from values of its {@link #FORM}. */
    public static MissionPhase from(Values values) {
        return new MissionPhase(values.text("condition"), values.ifQuantity("timePerYear").orElse(Quantity.of(0)),
                values.rest());
    }

    @Override
    public Value.Tree tree() {
        return new TreeBuilder().text("condition", condition).quantity("timePerYear", timePerYear).build(more);
    }
}
