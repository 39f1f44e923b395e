package tramontane.cli.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Finding;
import tramontane.physics.units.UnitSystem;

class VerbGroupTest {

    private static final class Count extends TerminalVerb {
        private String counted = "";

        Count() {
            super("shelf count", "Count what stands there.");
        }

        @Override
        protected Syntax syntax() {
            return new Syntax(name()).parameter("WHAT", "What to count.");
        }

        @Override
        protected int run(Syntax.Given given, tramontane.cli.Console console) {
            counted = given.parameter(0);
            return 0;
        }
    }

    private static final class Shelf extends VerbGroup {
        Shelf(TerminalVerb... verbs) {
            super("shelf", "All about shelves.", List.of(verbs), "A word at the end.");
        }
    }

    private final Count count = new Count();
    private final Shelf shelf = new Shelf(count);

    @Test
    void theSecondWordNamesTheVerb() throws Ending {
        assertEquals(0, shelf.run(List.of("count", "fans"), null));
        assertEquals("fans", count.counted);
    }

    @Test
    void aWrongSecondWordIsNamedWithTheOneThatWasMeant() {
        assertEquals("shelf: \"cuont\" is not one of its verbs; did you mean count?",
                assertThrows(Ending.class, () -> shelf.verb("cuont")).getMessage());
        assertEquals("shelf: \"zzzzzz\" is not one of its verbs; they are count.",
                assertThrows(Ending.class, () -> shelf.verb("zzzzzz")).getMessage());
    }

    @Test
    void theHelpListsItsVerbs() {
        assertTrue(shelf.help().contains("  count  Count what stands there."), shelf.help());
        assertTrue(shelf.help().endsWith("A word at the end."), shelf.help());
    }

    @Test
    void mistakesNameBothWords() {
        assertEquals("shelf count: WHAT is missing. See \"tramontane help shelf count\".",
                assertThrows(Ending.class, () -> shelf.run(List.of("count"), null)).getMessage());
    }

    @Test
    void findingsHangBehindTheirSeverity() {
        List<String> lines = FindingLines.of(List.of(Finding.caution("fan", "turns").remedy("stop it").source("common practice"),
                Finding.note("", "all else is well")), UnitSystem.METRIC, 80);
        assertEquals(List.of("  caution  fan: turns", "             stop it [common practice]", "  note     all else is well"), lines);
        assertFalse(lines.isEmpty());
    }

    @Test
    void cellsAreQuotedWhereTheyMust() {
        assertEquals("a,\"b,c\",\"d\"\"e\"\r\n\" x\",,\"1\n2\"\r\n", new CsvRows().row("a", "b,c", "d\"e").row(" x", "", "1\n2").toString());
    }
}
