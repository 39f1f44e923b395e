package tramontane.model;

import java.util.List;
import java.util.Optional;

/**
 * A limit on a figure.
 *
 * @param figure     the figure's id, for example {@code airflow.bank.flow}
 * @param place      where it must hold: an id, or {@link #WORST}
 * @param atLeast    lower limit in SI units, itself allowed
 * @param atMost     upper limit in SI units, itself allowed
 * @param conditions the conditions it holds in; all where none is named
 * @param more       notes and unknown members
 */
public record Requirement(String figure, String place, Optional<Quantity> atLeast, Optional<Quantity> atMost,
        List<String> conditions, Value.Tree more) implements Noun {

    /** Every place that has the figure; the worst counts. */
    public static final String WORST = "worst";

    /** The fields in the file. */
    public static final Form FORM = Form.of("requirement", "A limit on a figure.",
            Field.words("figure", "figure", "Id of the figure, for example airflow.bank.flow.").mandatory(),
            Field.reference("place", "place", Shape.Target.ANYWHERE, "Where it must hold: the id of a bay, passage or heat source, or worst.")
                    .standard(WORST),
            Field.of("atLeast", "at least", new Shape.AnyAmount(), "Lower limit."),
            Field.of("atMost", "at most", new Shape.AnyAmount(), "Upper limit."),
            Field.references("conditions", "conditions", Shape.Target.CONDITION,
                    "The conditions it holds in; all where none is named."));

    public Requirement {
        conditions = List.copyOf(conditions);
    }

    /** Reads a requirement from values of its {@link #FORM}. */
    public static Requirement from(Values values) {
        return new Requirement(values.text("figure"), values.text("place"), values.ifQuantity("atLeast"),
                values.ifQuantity("atMost"), values.names("conditions"), values.rest());
    }

    /** Whether it holds in a condition. */
    public boolean appliesIn(String condition) {
        return conditions.isEmpty() || conditions.contains(condition);
    }

    /** This requirement without regard to conditions; for a design that holds one condition only. */
    public Requirement everywhere() {
        return conditions.isEmpty() ? this : new Requirement(figure, place, atLeast, atMost, List.of(), more);
    }

    @Override
    public Value.Tree tree() {
        return new TreeBuilder().text("figure", figure).text("place", place.equals(WORST) ? "" : place)
                .quantity("atLeast", atLeast).quantity("atMost", atMost).names("conditions", conditions).build(more);
    }
}
