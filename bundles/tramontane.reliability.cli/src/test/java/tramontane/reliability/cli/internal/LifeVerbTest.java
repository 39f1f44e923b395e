package tramontane.reliability.cli.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.cli.terminal.Ending;

class LifeVerbTest {

    private final Life life = new Life(Optional.empty(), new FakeEngine(), InputStream.nullInputStream());

    @ParameterizedTest
    @ValueSource(strings = {"test", "plan", "redundancy", "bearing", "charts"})
    void helpFitsTheTerminalAndItsExamplesAreUnderstood(String verb) throws Ending {
        String help = life.verb(verb).help();
        help.lines().forEach(line -> assertTrue(line.length() <= 90, line));
        String examples = help.substring(help.indexOf("Examples:")).replaceAll("\\n {10,}", " ");
        int understood = 0;
        for (String line : examples.lines().filter(each -> each.contains("tramontane life " + verb)).toList()) {
            List<String> words = new ArrayList<>();
            Matcher matcher = Pattern.compile("\"([^\"]*)\"|(\\S+)").matcher(line.substring(line.indexOf("tramontane life")));
            while (matcher.find()) {
                words.add(matcher.group(1) == null ? matcher.group(2) : matcher.group(1));
            }
            List<String> arguments = words.subList(3, words.size());
            if (verb.equals("plan") || verb.equals("redundancy") || verb.equals("bearing")) {
                assertEquals(0, life.verb(verb).run(arguments, new MemoryConsole(100)), line);
            } else {
                assertThrowsOrRuns(verb, arguments);
            }
            understood++;
        }
        assertTrue(understood >= 2, examples);
    }

    /** The files are not there, but that is all that is wrong. */
    private void assertThrowsOrRuns(String verb, List<String> arguments) {
        try {
            life.verb(verb).run(arguments, new MemoryConsole(100));
        } catch (Ending ending) {
            assertTrue(ending.getMessage().contains("there is no such file"), ending.getMessage());
        }
    }
}
