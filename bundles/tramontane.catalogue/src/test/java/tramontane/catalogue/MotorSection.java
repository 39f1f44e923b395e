package tramontane.catalogue;

import java.util.List;
import java.util.Set;
import tramontane.analysis.SectionType;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Range;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.physics.units.QuantityKind;

/** A section with a field of every shape that a part's section may have. */
public record MotorSection(int version) implements SectionType<String> {

    private static final Form SUPPLY = Form.of("supply", "What it is fed with.",
            Field.choice("current", "kind of current", List.of("AC", "DC"), "Kind of current.").mandatory(),
            Field.amount("voltage", "rated voltage", QuantityKind.VOLTAGE, Range.ANY, "Rated voltage."),
            Field.amounts("frequency", "frequencies", QuantityKind.FREQUENCY, Range.POSITIVE, 1, "Frequencies."));

    private static final Form TAP = Form.of("tap", "A tap of a winding.",
            Field.amount("turns", "turns", QuantityKind.NUMBER, Range.POSITIVE, "How many turns."),
            Field.amount("power", "power", QuantityKind.POWER, Range.ANY, "What it takes.").mandatory(),
            Field.yesNo("fixed", "fixed", "Whether it is soldered."));

    private static final Form WINDING = Form.of("winding", "A winding.",
            Field.amount("speed", "speed", QuantityKind.ROTATIONAL_SPEED, Range.POSITIVE, "Speed at which it is used."),
            Field.amounts("levels", "levels", QuantityKind.LEVEL, Range.between(-50, 160), 1, "Levels."),
            Field.choice("at", "at", List.of("rest", "run"), "When."),
            Field.parts("taps", "taps", TAP, "Its taps."));

    private static final Form FORM = Form.of("motor", "The motor.",
            Field.whole("wires", "wires", 2, 12, "How many wires."),
            Field.yesNo("reversible", "reversible", "Whether it runs backwards."),
            Field.words("maker", "maker of the motor", "Who makes it.").mandatory(),
            Field.part("supply", "supply", SUPPLY, "What it is fed with."),
            Field.parts("windings", "windings", WINDING, "Its windings."),
            Field.anything("lab", "anything", "Anything."));

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Set<Owner> owners() {
        return Set.of(Owner.MOVER);
    }

    @Override
    public Value.Tree migrate(Value.Tree tree, int version) {
        return tree.get("builder").map(maker -> tree.without("builder").with("maker", maker)).orElse(tree);
    }

    @Override
    public String decode(Values values) {
        return values.text("maker");
    }

    @Override
    public Value.Tree encode(String section) {
        return Value.Tree.EMPTY.with("maker", new Value.Text(section));
    }
}
