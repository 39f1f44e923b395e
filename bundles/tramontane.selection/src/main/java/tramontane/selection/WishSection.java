package tramontane.selection;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.SectionType;
import tramontane.analysis.Sections;
import tramontane.model.Design;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.model.Range;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.physics.units.QuantityKind;

/** Section {@code selection} of a bank: the room for its movers, which parts are looked at, what counts. */
@Component(service = SectionType.class)
public final class WishSection implements SectionType<Wish> {

    private static final int MOST = 100;

    private static final Form WEIGHT = Form.of("weight", "How much one criterion counts.",
            Field.words("of", "of", "power, noise, life, cost, size, mass, or the id of a figure.").mandatory(),
            Field.amount("weight", "weight", QuantityKind.NUMBER, Range.NOT_NEGATIVE, "Compared with the other weights; 0 for not at all.").mandatory());

    private static final Form FORM = Form.of("selection", "The choice of a bank's movers: room, parts, what counts.",
            Field.amount("openingWidth", "opening width", QuantityKind.LENGTH, Range.POSITIVE, "Width of the opening that the bank may take up."),
            Field.amount("openingHeight", "opening height", QuantityKind.LENGTH, Range.POSITIVE, "Height of that opening."),
            Field.amount("openingDepth", "opening depth", QuantityKind.LENGTH, Range.POSITIVE, "Room along the flow, for movers one behind another."),
            Field.whole("sideBySide", "side by side", 1, MOST, "How many movers may stand side by side at most; 6 where only an opening is given."),
            Field.whole("inSeries", "in series", 1, MOST, "How many may stand one behind another at most; 2 where only an opening is given."),
            Field.whole("movers", "movers", 1, MOST, "How many there may be in all."),
            Field.amount("lowestSpeed", "lowest speed", QuantityKind.FRACTION, Range.PART_OF_ONE,
                    "Lowest speed setting that is looked at; movers are seldom run, and seldom specified, below a fifth (common practice).")
                    .standard("20 %"),
            Field.words("where", "where", "Which parts of the catalogue are looked at: type = axial and drive.supply.voltage = 24 V."),
            Field.parts("weights", "weights", WEIGHT, "How much each criterion counts; all alike where none is given."));

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Set<Owner> owners() {
        return Set.of(Owner.PASSAGE);
    }

    @Override
    public Wish decode(Values values) {
        Map<String, Double> weights = new LinkedHashMap<>();
        values.parts("weights").forEach(weight -> weights.put(weight.text("of"), weight.si("weight")));
        return new Wish(values.ifQuantity("openingWidth"), values.ifQuantity("openingHeight"), values.ifQuantity("openingDepth"),
                values.ifWhole("sideBySide"), values.ifWhole("inSeries"), values.ifWhole("movers"), values.ifQuantity("lowestSpeed"),
                values.ifText("where"), weights, values.rest());
    }

    @Override
    public Value.Tree encode(Wish wish) {
        Value.Tree tree = Value.Tree.EMPTY;
        tree = with(tree, "openingWidth", wish.width().map(Quantity::written));
        tree = with(tree, "openingHeight", wish.height().map(Quantity::written));
        tree = with(tree, "openingDepth", wish.depth().map(Quantity::written));
        tree = with(tree, "sideBySide", wish.columns().map(Value.Num::of));
        tree = with(tree, "inSeries", wish.series().map(Value.Num::of));
        tree = with(tree, "movers", wish.movers().map(Value.Num::of));
        tree = with(tree, "lowestSpeed", wish.lowest().map(Quantity::written));
        tree = with(tree, "where", wish.where().map(Value.Text::new));
        List<Value> weights = new ArrayList<>();
        wish.weights().forEach((of, weight) -> weights.add(Value.Tree.EMPTY.with("of", new Value.Text(of)).with("weight", Value.Num.of(weight))));
        tree = with(tree, "weights", weights.isEmpty() ? Optional.empty() : Optional.of(new Value.Items(weights)));
        for (Map.Entry<String, Value> each : wish.more().members().entrySet()) {
            tree = tree.get(each.getKey()).isPresent() ? tree : tree.with(each.getKey(), each.getValue());
        }
        return tree;
    }

    private static Value.Tree with(Value.Tree tree, String name, Optional<? extends Value> value) {
        return value.isPresent() ? tree.with(name, value.get()) : tree;
    }

    @Override
    public List<Problem> check(Values values, String place) {
        List<Problem> problems = new ArrayList<>();
        if (values.has("openingWidth") != values.has("openingHeight")) {
            problems.add(Problem.error(Problem.place(place, values.has("openingWidth") ? "openingHeight" : "openingWidth"),
                    "is missing; expected both sides of the opening, or neither"));
        }
        return problems;
    }

    /** What a design says of one of its banks; no wish where it says nothing that can be read. */
    public static Wish of(Design design, String bank) {
        return design.airPath().passage(bank).filter(Passage::isBank).flatMap(passage -> Sections.decode(new WishSection(), passage)).orElse(Wish.NONE);
    }
}
