package tramontane.model;

import java.util.List;
import java.util.Optional;
import tramontane.physics.units.QuantityKind;

/**
 * A component that gives off heat.
 *
 * @param id        its name, unique among heat sources
 * @param power     heat it gives off at heat factor 1, W
 * @param tolerance relative tolerance of its heat, for example 0.1
 * @param into      where the heat goes: bays or passages with the share of each; it stands in the first
 * @param row       the row at its place in which it stands, counted from 1 along the flow; heat of earlier rows warms its air
 * @param wake      how much warmer the air behind earlier rows is than if their heat were spread over all of it; 1 where not
 *                  given
 * @param chain     thermal resistances from junction to air, in order; the heat that goes to the first place takes this way
 * @param limit     highest temperature it stands, K
 * @param more      sections, notes and unknown members
 */
public record HeatSource(String id, Quantity power, Optional<Quantity> tolerance, List<Share> into, Optional<Integer> row,
        Optional<Quantity> wake, List<Link> chain, Optional<Quantity> limit, Value.Tree more) implements Noun {

    /**
     * The part of a source's heat that goes to one place.
     *
     * @param place a bay or a passage
     * @param share the part of the whole; everything that is left where not given
     * @param more  notes and unknown members
     */
    public record Share(String place, Optional<Quantity> share, Value.Tree more) implements Noun {

        /** The fields in the file. */
        public static final Form FORM = Form.of("share", "The part of a source's heat that goes to one place.",
                Field.reference("place", "place", Shape.Target.PLACE, "The bay or passage whose air takes the heat up.")
                        .mandatory(),
                Field.amount("share", "share", QuantityKind.FRACTION, Range.PART_OF_ONE,
                        "The part of the heat that goes there; what the others leave where not given."));

        /** A share of which nothing else is said. */
        public Share(String place, Optional<Quantity> share) {
            this(place, share, Value.Tree.EMPTY);
        }

        static Share from(Values values) {
            return new Share(values.text("place"), values.ifQuantity("share"), values.rest());
        }

        /** Written short, as its place alone, where nothing else is said of it. */
        Value value() {
            return share.isEmpty() && more.isEmpty() ? new Value.Text(place) : tree();
        }

        @Override
        public Value.Tree tree() {
            return new TreeBuilder().text("place", place).quantity("share", share).build(more);
        }
    }

    /** The fields in the file. */
    public static final Form FORM = Form.of("heat source", "A component that gives off heat.",
            Field.words("id", "name", "Name, unique among heat sources.").mandatory(),
            Field.amount("power", "heat", QuantityKind.POWER, Range.between(0, 1e6), "Heat it gives off at heat factor 1.")
                    .mandatory(),
            Field.amount("tolerance", "tolerance", QuantityKind.FRACTION, Range.between(0, 0.9),
                    "Relative tolerance of its heat, carried through to bounds of temperatures."),
            Field.parts("into", "into", Share.FORM, "place",
                    "The bays or passages whose air takes the heat up. It stands in the first; what other places get leaves it"
                            + " by other ways than its chain."),
            Field.whole("row", "row", 1, 10_000,
                    "The row at its place in which it stands, counted along the flow. The air at it is then that which comes to the"
                            + " place, warmed by the rows before; else the mean of the place."),
            Field.amount("wake", "wake factor", QuantityKind.NUMBER, Range.atLeast(1),
                    "How much warmer the air behind earlier rows is than if their heat were spread over all of it.").standard(1),
            Field.parts("chain", "chain", Link.FORM, "Thermal resistances from junction to air, in order."),
            Field.amount("limit", "limit", QuantityKind.TEMPERATURE, Range.POSITIVE,
                    "Highest temperature it stands at its junction, the hot end of its chain."));

    public HeatSource {
        into = List.copyOf(into);
        chain = List.copyOf(chain);
    }

    /** A source without chain of which nothing else is said. */
    public HeatSource(String id, Quantity power, List<Share> into, Optional<Quantity> limit, Value.Tree more) {
        this(id, power, Optional.empty(), into, Optional.empty(), Optional.empty(), List.of(), limit, more);
    }

    /** Reads a heat source from values of its {@link #FORM}. */
    public static HeatSource from(Values values) {
        return new HeatSource(values.text("id"), values.ifQuantity("power").orElse(Quantity.of(0)),
                values.ifQuantity("tolerance"), values.parts("into").stream().map(Share::from).toList(),
                values.ifWhole("row"), values.ifQuantity("wake"),
                values.parts("chain").stream().map(Link::from).toList(), values.ifQuantity("limit"), values.rest());
    }

    /** How much warmer the air behind earlier rows is than if their heat were spread over all of it; 1 where not given. */
    public double wakeFactor() {
        return wake.map(Quantity::si).orElse(1.0);
    }

    /**
     * The share of the heat that goes to one of the places; what the others leave where it is not given.
     *
     * @param place number of the place in {@link #into}
     * @return 0 to 1
     */
    public double share(int place) {
        Optional<Quantity> given = into.get(place).share();
        if (given.isPresent()) {
            return given.get().si();
        }
        double taken = into.stream().flatMap(share -> share.share().stream()).mapToDouble(Quantity::si).sum();
        long open = into.stream().filter(share -> share.share().isEmpty()).count();
        return Math.max(0, 1 - taken) / open;
    }

    @Override
    public Value.Tree tree() {
        return new TreeBuilder().text("id", id).quantity("power", power).quantity("tolerance", tolerance)
                .items("into", into.stream().map(Share::value).toList()).value("row", row.<Value>map(Value.Num::of)).quantity("wake", wake)
                .items("chain", chain.stream().map(Link::tree).toList())
                .quantity("limit", limit).build(more);
    }
}
