package tramontane.model;

import java.util.List;
import java.util.Optional;
import tramontane.physics.units.QuantityKind;

/**
 * A component that gives off heat.
 *
 * @param id    its name, unique among heat sources
 * @param power heat it gives off at heat factor 1, W
 * @param into  where the heat goes: bays or passages with the share of each
 * @param chain thermal resistances from junction to air, in order, as written; the thermal analysis reads them
 * @param limit highest temperature it stands, K
 * @param more  sections, notes and unknown members
 */
public record HeatSource(String id, Quantity power, List<Share> into, Optional<Value> chain, Optional<Quantity> limit,
        Value.Tree more) implements Noun {

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
            return share.isEmpty() && more.isEmpty() ? new Value.Text(place)
                    : new TreeBuilder().text("place", place).quantity("share", share).build(more);
        }
    }

    /** The fields in the file. */
    public static final Form FORM = Form.of("heat source", "A component that gives off heat.",
            Field.words("id", "name", "Name, unique among heat sources.").mandatory(),
            Field.amount("power", "heat", QuantityKind.POWER, Range.NOT_NEGATIVE, "Heat it gives off at heat factor 1.")
                    .mandatory(),
            Field.parts("into", "into", Share.FORM, "place", "The bays or passages whose air takes the heat up."),
            Field.anything("chain", "chain",
                    "Thermal resistances from junction to air, in order."),
            Field.amount("limit", "limit", QuantityKind.TEMPERATURE, Range.POSITIVE, "Highest temperature it stands."));

    public HeatSource {
        into = List.copyOf(into);
    }

    static HeatSource from(Values values) {
        return new HeatSource(values.text("id"), values.ifQuantity("power").orElse(Quantity.of(0)),
                values.parts("into").stream().map(Share::from).toList(),
                values.anything("chain"), values.ifQuantity("limit"), values.rest());
    }

    Value.Tree tree() {
        return new TreeBuilder().text("id", id).quantity("power", power)
                .items("into", into.stream().map(Share::value).toList()).value("chain", chain)
                .quantity("limit", limit).build(more);
    }
}
