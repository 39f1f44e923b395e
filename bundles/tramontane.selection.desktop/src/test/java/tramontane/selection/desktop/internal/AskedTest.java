package tramontane.selection.desktop.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.model.Value;
import tramontane.selection.Duty;
import tramontane.selection.Space;
import tramontane.selection.Task;

class AskedTest {

    @Test
    void somethingMustCount() {
        Asked none = Asked.of(Given.duty(), Duty.BANK);
        for (String criterion : Task.EVEN.keySet()) {
            none = none.with(Asked.weight(criterion), "0");
        }
        assertEquals(java.util.Set.of(Asked.weight("power")), read(none).problems().keySet());
        assertTrue(read(none.with(Asked.weight("mass"), "1")).task().isPresent());
    }

    private static Asked.Read read(Asked asked) {
        return asked.read(Given.duty(), Given.catalogue(), Set.of("airflow.bank.flow"));
    }

    @Test
    void withoutAWishItIsWhatTheCommandLineAsks() {
        Asked asked = Asked.of(Given.duty(), Duty.BANK);
        Task task = read(asked).task().orElseThrow();
        assertEquals(Task.EVEN, task.weights());
        assertEquals(Space.ANY, task.space());
        assertEquals(Task.LOWEST, task.lowest());
        assertEquals(20, task.listed());
        assertEquals(4, task.parts().size());
        assertFalse(task.certain());
    }

    @Test
    void theWishOfTheDesignFillsTheFields() {
        Passage bank = Given.duty().airPath().passage(Duty.BANK).orElseThrow();
        Value.Tree wish = Value.Tree.EMPTY.with("openingWidth", new Value.Text("300 mm")).with("openingHeight", Value.Num.of(0.15))
                .with("sideBySide", Value.Num.of(3)).with("where", new Value.Text("width > 50 mm"))
                .with("weights", new Value.Items(java.util.List.of(Value.Tree.EMPTY.with("of", new Value.Text("cost")).with("weight", Value.Num.of(3)))));
        Design design = Given.duty().withAirPath(Given.duty().airPath().withPassage(bank.withParameters(bank.parameters()
                .with("sections", Value.Tree.EMPTY.with("selection", wish)))));
        Asked asked = Asked.of(design, Duty.BANK);
        assertEquals("300 mm", asked.text(Asked.WIDTH));
        assertEquals("0.15 m", asked.text(Asked.HEIGHT));
        assertEquals("width > 50 mm", asked.text(Asked.WHERE));
        assertEquals("3", asked.text(Asked.weight("cost")));
        Asked.Read read = asked.read(design, Given.catalogue(), Set.of());
        assertEquals(3, read.parts());
        assertEquals(Optional.of(0.15), read.task().orElseThrow().space().height());
        assertEquals(3, read.task().orElseThrow().space().columns());
        assertEquals(Map.of("cost", 3.0), read.task().orElseThrow().weights());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"openingWidth|-3 mm|must be above zero", "openingWidth|3 kg|", "openingWidth|100 mm|", "sideBySide|0|is a whole number from 1 to 100",
            "movers|many|is a whole number from 1 to 100", "lowestSpeed|120 %|must be above 0 % and at most 100 %", "where|wdth > 3 mm|", "where|width > 3 m|none of 4 parts passes; widen it",
            "weight power|-1|is a number from 0 on", "weight lab.level|2|nothing loaded gives lab.level", "listed|0|is a whole number from 1 to 1000"})
    void whatIsWrongIsSaidAtItsField(String field, String text, String problem) {
        Asked.Read read = read(Asked.of(Given.duty(), Duty.BANK).with(field, text));
        assertTrue(read.task().isEmpty());
        String at = field.equals("openingWidth") && text.equals("100 mm") ? "openingHeight" : field;
        assertTrue(read.problems().containsKey(at), read.problems().toString());
        if (problem != null) {
            assertEquals(problem, read.problems().get(at));
        }
    }

    @Test
    void aFigureThatSomethingGivesMayBeWeighed() {
        Task task = read(Asked.of(Given.duty(), Duty.BANK).with(Asked.weight("airflow.bank.flow"), "2")).task().orElseThrow();
        assertEquals(2.0, task.weights().get("airflow.bank.flow"));
    }

    @Test
    void partsThatHaveEndedCountOnlyWhereAskedFor() {
        Asked asked = Asked.of(Given.duty(), Duty.BANK).with(Asked.WHERE, "maker = Halmstrup or width > 0 mm");
        int still = asked.read(Given.duty(), Given.shipped(), Set.of()).parts();
        int all = asked.ended(true).read(Given.duty(), Given.shipped(), Set.of()).parts();
        assertEquals(200, all);
        assertEquals(192, still, "as README counts them");
    }
}
