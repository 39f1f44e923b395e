package tramontane.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tramontane.physics.units.QuantityKind;

class ValuesTest {

    private static final Form ROD = Form.of("rod", "A rod.",
            Field.amount("length", "length", QuantityKind.LENGTH, Range.POSITIVE, "Its length."),
            Field.words("name", "name", "Its name.").standard("rod"));
    private static final Form BOX = Form.of("box", "A box.", Field.parts("rods", "rods", ROD, "What is in it."));

    private static Values rod(Value.Tree written) {
        return FormReader.read(ROD, written, "", new ArrayList<>());
    }

    @Test
    void whatIsWrittenWronglyIsNotMissing() {
        for (String wrong : List.of("60 Hz", "-1 m", "long")) {
            Values values = rod(Value.Tree.EMPTY.with("length", new Value.Text(wrong)));
            assertFalse(values.has("length"));
            assertTrue(values.unreadable("length"), wrong);
        }
        Values sound = rod(Value.Tree.EMPTY.with("length", new Value.Text("2 m")));
        assertTrue(sound.has("length") && !sound.unreadable("length"));
        assertFalse(rod(Value.Tree.EMPTY).unreadable("length"));
        assertThrows(IllegalArgumentException.class, () -> sound.unreadable("width"));
    }

    /** A blank text stands for the standard one, and is no mistake. */
    @Test
    void whatIsBlankOnPurposeCanBeRead() {
        Values values = rod(Value.Tree.EMPTY.with("name", new Value.Text(" ")));
        assertFalse(values.unreadable("name"));
        assertEquals("rod", values.text("name"));
    }

    @Test
    void nothingIsMissingOfWhatIsNoObject() {
        List<Problem> problems = new ArrayList<>();
        Values box = FormReader.read(BOX, Value.Tree.EMPTY.with("rods", new Value.Items(List.of(Value.Num.of(5), Value.Tree.EMPTY))), "", problems);
        assertEquals(1, problems.size());
        assertTrue(box.parts("rods").get(0).unreadable("length"));
        assertFalse(box.parts("rods").get(1).unreadable("length"));
        Values none = FormReader.read(BOX, Value.Tree.EMPTY.with("rods", Value.Num.of(5)), "", problems);
        assertTrue(none.unreadable("rods"));
    }
}
