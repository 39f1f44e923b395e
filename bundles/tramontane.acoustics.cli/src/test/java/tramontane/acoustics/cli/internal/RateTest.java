package tramontane.acoustics.cli.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.cli.terminal.Ending;

class RateTest {

    private final MemoryConsole console = new MemoryConsole(100);
    private final Rate rate = new Rate();

    private JsonObject json(String... arguments) throws Ending {
        MemoryConsole own = new MemoryConsole(100);
        List<String> all = new ArrayList<>(List.of(arguments));
        all.addAll(List.of("--format", "json"));
        assertEquals(0, rate.run(all, own));
        return JsonParser.parseString(own.written()).getAsJsonObject();
    }

    /**
     * By hand with the A-weights -26.2 -16.1 -8.6 -3.2 0 1.2 1 -1.1 dB; NR at 1 kHz is the level, elsewhere (L - a)/b, the most at 1 kHz:
     * 63 Hz (45 - 35.5)/0.79 = 12.0, 125 Hz 29.9, 250 Hz 36.6, 500 Hz 40.2, 1 kHz 42, 2 kHz 40.9.
     */
    @Test
    void octavesAreRated() throws Ending {
        JsonObject json = json("45 48 46 44 42 38 33 27 dB");
        double sum = 0;
        double[] weighted = {45 - 26.2, 48 - 16.1, 46 - 8.6, 44 - 3.2, 42, 38 + 1.2, 33 + 1, 27 - 1.1};
        for (double level : weighted) {
            sum += Math.pow(10, level / 10);
        }
        assertEquals(10 * Math.log10(sum), json.get("levelA").getAsDouble(), 0.1);
        assertEquals(42, json.getAsJsonObject("nr").get("value").getAsDouble(), 1e-9);
        assertEquals(1000, json.getAsJsonObject("nr").get("octave").getAsDouble());
        assertTrue(json.getAsJsonObject("nr").get("tabulated").getAsBoolean());
        // NC 40 is 41 dB at 1 kHz, NC 45 is 46 dB; at 2 kHz NC 35 is 34 dB, NC 40 is 39 dB
        assertEquals(41, json.getAsJsonObject("nc").get("value").getAsDouble(), 1e-9);
        assertEquals(8, json.getAsJsonArray("octaves").size());
        assertEquals(63, json.getAsJsonArray("octaves").get(0).getAsJsonObject().get("octave").getAsDouble());
    }

    @Test
    void thirdsAddUpToOctaves() throws Ending {
        JsonObject json = json("30 30 30 40 40 40 dB", "--thirds", "--lowest", "400 Hz");
        assertEquals(2, json.getAsJsonArray("octaves").size());
        JsonObject second = json.getAsJsonArray("octaves").get(1).getAsJsonObject();
        assertEquals(1000, second.get("octave").getAsDouble());
        assertEquals(44.77, second.get("level").getAsDouble(), 0.01);
    }

    @Test
    void theTextNamesTheOctaveThatDecides() throws Ending {
        assertEquals(0, rate.run(List.of("45 48 46 44 42 38 33 27 dB"), console));
        String text = console.printed();
        assertTrue(text.contains("Octaves"), text);
        assertTrue(text.lines().anyMatch(line -> line.matches("NR +42\\.0 +1 kHz")), text);
        assertTrue(text.lines().anyMatch(line -> line.matches("NC +41\\.0 +1 kHz")), text);
        assertTrue(text.lines().anyMatch(line -> line.matches("A-weighted level +46\\.\\d( dB)? *")), text);
    }

    @Test
    void whatHasNoCurveIsTold() throws Ending {
        rate.run(List.of("5 dB", "--lowest", "1 kHz"), console);
        assertTrue(console.printed().contains("1 kHz; beyond the curves laid down, continued straight"), console.printed());
        MemoryConsole other = new MemoryConsole(100);
        rate.run(List.of("50 dB", "--lowest", "16 kHz"), other);
        assertTrue(other.printed().contains("no octave that counts"), other.printed());
        assertTrue(json("50 dB", "--lowest", "16 kHz").get("nr").isJsonNull());
    }

    @Test
    void levelsBelowZeroAreLevels() throws Ending {
        assertEquals(-10, json("-10 -20 dB").getAsJsonArray("octaves").get(0).getAsJsonObject().get("level").getAsDouble(), 1e-9);
    }

    /** A-weighted 30 dB at 125 Hz and at 1 kHz are 46.1 dB and 30 dB; together 33 dB, A-weighted. */
    @ParameterizedTest
    @ValueSource(strings = {"30 -99 -99 30 dB(A)", "30 -99 -99 30 dBA"})
    void weightedLevelsAreTakenAsSuch(String levels) throws Ending {
        JsonObject json = json(levels, "--lowest", "125 Hz");
        assertEquals(33.01, json.get("levelA").getAsDouble(), 0.01);
        assertEquals(46.1, json.getAsJsonArray("octaves").get(0).getAsJsonObject().get("level").getAsDouble(), 0.1);
        assertEquals("A", json.get("givenWeighting").getAsString());
        assertEquals("none", json("30 dB").get("givenWeighting").getAsString());
        JsonObject thirds = json("30 -99 30 dBA", "--thirds", "--lowest", "800 Hz");
        assertEquals(33.01, thirds.get("levelA").getAsDouble(), 0.01);
        rate.run(List.of(levels), console);
        assertTrue(console.printed().contains("The levels are in dB(A): they were taken as A-weighted"), console.printed());
        MemoryConsole other = new MemoryConsole(100);
        rate.run(List.of("30 dB"), other);
        assertFalse(other.printed().contains("dB(A)"), other.printed());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            45 x dB            | --thirds        | Write them as one text
            45 46 kg           | --thirds        | Write them as one text
            45 dB              | --lowest=60 Hz  | is no middle frequency of an octave; it is one of 31.5 Hz, 63 Hz
            45 46 dB           | --lowest=16 kHz | LEVELS has 2 values from the octave of 16 kHz, beyond that of 16 kHz; at most 1
            450 dB             | --thirds        | which no sound has
            45 dB              | --format=csv    | text, json""")
    void mistakesAreNamed(String levels, String option, String sentence) {
        Ending ending = assertThrows(Ending.class, () -> rate.run(List.of(levels, option), console));
        assertEquals(2, ending.code());
        assertTrue(ending.getMessage().contains(sentence), ending.getMessage());
    }
}
