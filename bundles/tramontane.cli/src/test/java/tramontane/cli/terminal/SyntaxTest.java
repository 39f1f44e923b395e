package tramontane.cli.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class SyntaxTest {

    private static Syntax syntax() {
        return new Syntax("compare").parameter("FILE", "The first.").furtherParameters("MORE", "The others.").flag("--quiet", "No words.");
    }

    @Test
    void furtherParametersMayBeAsManyAsWanted() throws Ending {
        Syntax.Given given = syntax().parse(List.of("a", "b", "--quiet", "c", "d"));
        assertEquals("a", given.parameter(0));
        assertEquals(List.of("b", "c", "d"), given.furtherParameters(1));
        assertTrue(given.flag("--quiet"));
    }

    @Test
    void furtherParametersMayBeLeftOut() throws Ending {
        Syntax.Given given = syntax().parse(List.of("a"));
        assertEquals("a", given.parameter(0));
        assertEquals(List.of(), given.furtherParameters(1));
    }

    @Test
    void theFirstIsStillNeeded() {
        assertEquals("compare: FILE is missing. See \"tramontane help compare\".",
                assertThrows(Ending.class, () -> syntax().parse(List.of("--quiet"))).getMessage());
        assertTrue(syntax().help().contains("FILE [MORE...]"), syntax()::help);
    }

    @Test
    void numbersBelowZeroAreNoOptions() throws Ending {
        Syntax syntax = syntax().option("--limit", "LEVEL", "At most.").options("--at", "LEVEL", "Some.");
        Syntax.Given given = syntax.parse(List.of("-10 -5 dB", "--limit", "-3 dB", "--at=-1", "--at", "-.5", "-2", "--quiet", "1"));
        assertEquals("-10 -5 dB", given.parameter(0));
        assertEquals(List.of("-2", "1"), given.furtherParameters(1));
        assertEquals("-3 dB", given.option("--limit").orElseThrow());
        assertEquals(List.of("-1", "-.5"), given.options("--at"));
        assertTrue(given.flag("--quiet"));
        String tooMany = assertThrows(Ending.class, () -> new Syntax("list").parse(List.of("-10 dB"))).getMessage();
        assertEquals("list: \"-10 dB\" is an argument too many. See \"tramontane help list\".", tooMany);
        assertTrue(assertThrows(Ending.class, () -> syntax().parse(List.of("a", "-q"))).getMessage().contains("there is no option -q"));
    }
}
