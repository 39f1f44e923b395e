package tramontane.reliability.cli.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.cli.terminal.Ending;

class JudgeRedundancyTest {

    private static final double HOUR = 3600;

    private static JsonObject survival(JsonObject json) {
        return json.getAsJsonArray("survival").get(0).getAsJsonObject();
    }

    private static double poisson(int most, double mean) {
        double sum = 0;
        double term = Math.exp(-mean);
        for (int i = 0; i <= most; i++) {
            sum += term;
            term *= mean / (i + 1);
        }
        return sum;
    }

    @Test
    void threeOfFour() throws Ending {
        double unit = Math.exp(Math.log(0.9) * Math.pow(43800.0 / 60000, 3));
        JsonObject json = Verbs.json("", "redundancy", "--needed", "3", "--of", "4", "--life", "60000 h", "--shape", "3", "--after",
                "5 years");
        assertEquals(unit, Verbs.number(survival(json), "unit"), 1e-12);
        assertEquals(4 * Math.pow(unit, 3) - 3 * Math.pow(unit, 4), Verbs.number(survival(json), "system"), 1e-9);
        assertTrue(json.get("availability").isJsonNull());
        assertTrue(json.get("spares").isJsonNull());
        String printed = Verbs.run("", "redundancy", "--needed", "3", "--of", "4", "--life", "60000 h", "--after", "5 years").printed();
        assertTrue(printed.startsWith("3 of 4 units: with a probability of 99.08 % enough run until 43800 h (5.00 years), without"
                + " repair.\n"), printed);
        assertTrue(printed.contains("The shape of 3 is common practice"), printed);
    }

    @Test
    void ageingShortensTheRest() throws Ending {
        String[] base = {"redundancy", "--needed", "3", "--of", "4", "--life", "60000 h", "--shape", "3"};
        JsonObject alone = Verbs.json("", base);
        JsonObject loaded = Verbs.json("", "redundancy", "--needed", "3", "--of", "4", "--life", "60000 h", "--shape", "3", "--ageing",
                "1.1");
        assertTrue(Verbs.number(loaded, "l10") < Verbs.number(alone, "l10"));
    }

    @Test
    void repairOfUnitsThatDoNotAge() throws Ending {
        // two units, one needed, λ = 1/MTTF each, one crew: unavailability 2λ²/(μ² + 2λμ + 2λ²)
        double mean = 10000 / -Math.log(0.9);
        JsonObject json = Verbs.json("", "redundancy", "--needed", "1", "--of", "2", "--life", "10000 h", "--shape", "1", "--repair",
                "100 h",
                "--availability", "99.9 %", "--fleet", "50", "--restocking", "1000 h");
        double r = 100 / mean;
        assertEquals(2 * r * r / (1 + 2 * r + 2 * r * r), 1 - Verbs.number(json, "availability"), 1e-10);
        assertTrue(json.get("kept").getAsBoolean());
        double states = 1 + 2 * r + 2 * r * r;
        assertEquals((2 + 2 * r) / states / mean * 8760 * 50, Verbs.number(json, "exchangesPerYear"), 1e-6);
        double demand = 1000 * (2 + 2 * r) / states / mean * 50;
        int spares = json.get("spares").getAsInt();
        assertTrue(poisson(spares, demand) >= 0.95 && poisson(spares - 1, demand) < 0.95, spares + " spares for " + demand);
    }

    @Test
    void visitsThatKeepAnAvailability() throws Ending {
        String[] asked = {"redundancy", "--needed", "5", "--of", "6", "--life", "40000 h", "--availability", "99.99 %", "--format", "json"};
        double interval = Verbs.number(Verbs.run("", asked).json(), "longestInterval") / HOUR;
        Verbs.Ran kept = Verbs.run("", "redundancy", "--needed", "5", "--of", "6", "--life", "40000 h", "--availability", "99.99 %",
                "--interval",
                0.999 * interval + " h");
        Verbs.Ran missed = Verbs.run("", "redundancy", "--needed", "5", "--of", "6", "--life", "40000 h", "--availability", "99.99 %",
                "--interval",
                1.001 * interval + " h");
        assertEquals(0, kept.code());
        assertEquals(1, missed.code());
        assertTrue(missed.printed().contains("not kept"), missed.printed());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            --needed 5 --of 4 --life 1h | --needed 5 is more than the 4 of --of; at most as many can be needed.
            --of 4 --life 1h | life redundancy: --needed is missing: how many units must run. See "tramontane help life redundancy".
            --needed 1 --of 100 --life 1h | --of "100" is no whole number from 1 to 64.
            --needed 1 --of 2 --life 1h --crews each | --crews belongs to --repair, the time of an exchange; it is missing.
            --needed 1 --of 2 --life 1h --repair 1h --interval 2h | --repair and --interval: units are exchanged when they fail or at visits; give one.
            --needed 1 --of 2 --life 1h --ageing 0.5 | --ageing "0.5" is out of range; it must be 1 to 2.
            --needed 1 --of 2 --life 1h --availability 99.99 | --availability "99.99" must lie between 0 and 100 %, both left out; write for example "99.99 %".
            """)
    void mistakes(String options, String sentence) {
        assertEquals(sentence, Verbs.refused(2, "", ("redundancy " + options).split(" ")));
    }
}
