package tramontane.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tramontane.model.Bay;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Noun;
import tramontane.model.Range;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.physics.units.QuantityKind;

class SectionsTest {

    private record Dust(double load) {
    }

    /** Version 1 called it amount, version 2 mass, version 3 load. */
    private static final SectionType<Dust> DUST = new SectionType<>() {
        @Override
        public Form form() {
            return Form.of("dust", "Dust in the air.", Field.amount("load", "load", QuantityKind.DENSITY,
                    Range.NOT_NEGATIVE, "Dust per volume.").mandatory());
        }

        @Override
        public Set<Owner> owners() {
            return Set.of(Owner.BAY);
        }

        @Override
        public int version() {
            return 3;
        }

        @Override
        public Value.Tree migrate(Value.Tree tree, int version) {
            String old = version == 1 ? "amount" : "mass";
            return tree.get(old).map(value -> tree.without(old).with(version == 1 ? "mass" : "load", value)).orElse(tree);
        }

        @Override
        public Dust decode(Values values) {
            return new Dust(values.si("load"));
        }

        @Override
        public Value.Tree encode(Dust section) {
            return Value.Tree.EMPTY.with("load", Value.Num.of(section.load()));
        }
    };

    private static Optional<Dust> decode(Value section) {
        return Sections.decode(DUST, new Bay("box", Optional.empty(),
                Value.Tree.EMPTY.with(Noun.SECTIONS, Value.Tree.EMPTY.with("dust", section))));
    }

    private static Value.Tree dust(int version, String member, double value) {
        return Value.Tree.EMPTY.with("version", Value.Num.of(version)).with(member, Value.Num.of(value));
    }

    @Test
    void aSectionIsBroughtToTheCurrentVersionOneStepAtATime() {
        assertEquals(Optional.of(new Dust(5)), decode(Value.Tree.EMPTY.with("amount", Value.Num.of(5))));
        assertEquals(Optional.of(new Dust(5)), decode(dust(1, "amount", 5)));
        assertEquals(Optional.of(new Dust(5)), decode(dust(2, "mass", 5)));
        assertEquals(Optional.of(new Dust(5)), decode(dust(3, "load", 5)));
    }

    @Test
    void whatCannotBeReadIsNotDecoded() {
        assertEquals(Optional.empty(), decode(dust(4, "load", 5)));
        assertEquals(Optional.empty(), decode(dust(3, "load", -1)));
        assertEquals(Optional.empty(), decode(new Value.Text("much")));
        assertEquals(Optional.empty(), Sections.decode(DUST, Bay.of("box")));
    }
}
