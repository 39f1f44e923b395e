package tramontane.model;

import java.util.Optional;
import tramontane.physics.units.QuantityKind;

/**
 * What air goes through between two bays.
 *
 * @param id         its name, unique among passages
 * @param kind       the name of its passage kind, known or not to what is loaded
 * @param from       the bay it starts in; flow from here is positive
 * @param to         the bay it ends in
 * @param tolerance  relative tolerance of its pressure drop at equal flow, for example 0.2; of a bank, that of its curves stands
 *                   with them
 * @param parameters everything else as written: the kind's fields, sections, notes
 */
public record Passage(String id, String kind, String from, String to, Optional<Quantity> tolerance, Value.Tree parameters)
        implements Noun {

    /** The kind of passage that holds air movers. */
    public static final String BANK = "bank";

    /** The fields that every passage has. */
    public static final Form FORM = Form.open("passage", "What air goes through between two bays.",
            Field.words("id", "name", "Name, unique among passages.").mandatory(),
            Field.words("kind", "kind", "Which kind of passage it is; the kind decides the other fields.").mandatory(),
            Field.reference("from", "from", Shape.Target.BAY, "The bay it starts in; flow from here counts as positive.")
                    .mandatory(),
            Field.reference("to", "to", Shape.Target.BAY, "The bay it ends in.").mandatory(),
            Field.amount("tolerance", "tolerance", QuantityKind.FRACTION, Range.between(0, 0.9),
                    "Relative tolerance of its pressure drop at equal flow, carried through to bounds of every figure. Not for"
                            + " banks: theirs stands with the curves of the mover."));

    /** A passage whose tolerance is not stated. */
    public Passage(String id, String kind, String from, String to, Value.Tree parameters) {
        this(id, kind, from, to, Optional.empty(), parameters);
    }

    /** Reads a passage from values of its {@link #FORM}. */
    public static Passage from(Values values) {
        return new Passage(values.text("id"), values.text("kind"), values.text("from"), values.text("to"),
                values.ifQuantity("tolerance"), values.rest());
    }

    @Override
    public Value.Tree more() {
        return parameters;
    }

    /** Whether it holds air movers. */
    public boolean isBank() {
        return kind.equals(BANK);
    }

    /** This passage with other parameters. */
    public Passage withParameters(Value.Tree changed) {
        return new Passage(id, kind, from, to, tolerance, changed);
    }

    @Override
    public Value.Tree tree() {
        return new TreeBuilder().text("id", id).text("kind", kind).text("from", from).text("to", to).quantity("tolerance", tolerance).build(parameters);
    }
}
