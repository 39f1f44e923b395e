package tramontane.model;

import java.util.Optional;
import tramontane.physics.units.QuantityKind;

/**
 * One thermal resistance on the way of a component's heat from its junction to the air.
 *
 * @param kind         the name of its link kind, known or not to what is loaded
 * @param tolerance    relative tolerance of its resistance, for example 0.1
 * @param heatCapacity of the body on its hot side, J/K; none where not given
 * @param parameters   everything else as written: the kind's fields, sections, notes
 */
public record Link(String kind, Optional<Quantity> tolerance, Optional<Quantity> heatCapacity, Value.Tree parameters)
        implements Noun {

    /** The fields that every link has. */
    public static final Form FORM = Form.open("link", "One thermal resistance on the way of the heat from junction to air.",
            Field.words("kind", "kind", "Which kind of link it is; the kind decides the other fields.").mandatory(),
            Field.amount("tolerance", "tolerance", QuantityKind.FRACTION, Range.between(0, 0.9),
                    "Relative tolerance of its resistance, carried through to bounds of temperatures."),
            Field.amount("heatCapacity", "heat capacity", QuantityKind.HEAT_CAPACITY, Range.POSITIVE,
                    "Heat capacity of the body on its hot side (before an interface that of the package, before the air that of"
                            + " the heat sink), for temperatures in time."));

    static Link from(Values values) {
        return new Link(values.text("kind"), values.ifQuantity("tolerance"), values.ifQuantity("heatCapacity"), values.rest());
    }

    @Override
    public Value.Tree more() {
        return parameters;
    }

    @Override
    public Value.Tree tree() {
        return new TreeBuilder().text("kind", kind).quantity("tolerance", tolerance).quantity("heatCapacity", heatCapacity)
                .build(parameters);
    }
}
