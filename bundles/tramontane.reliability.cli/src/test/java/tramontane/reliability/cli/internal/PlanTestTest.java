package tramontane.reliability.cli.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.cli.terminal.Ending;

class PlanTestTest {

    private static final double HOUR = 3600;

    @Test
    void theTimeOfSoManyUnits() throws Ending {
        // n t^β hazards of -ln 0.9 / life^β together must reach ln 10
        double time = 60000 * Math.cbrt(Math.log(10) / -Math.log(0.9) / 20);
        JsonObject json = Verbs.json("", "plan", "--life", "60000 h", "--units", "20", "--shape", "3");
        assertEquals(time, Verbs.number(json, "time") / HOUR, 1e-6 * time);
        assertEquals(0.9, Verbs.number(json, "shownConfidence"), 1e-9);
        assertEquals(0.1, json.getAsJsonArray("chances").get(2).getAsJsonObject().get("chance").getAsDouble(), 1e-9);
        assertEquals("20 units must run 61800 h (7.05 years) each without a failure to show L10 60000 h (6.85 years) at 90 % (shape 3).",
                json.get("sentence").getAsString());
    }

    @Test
    void theUnitsOfSoMuchTimeWhereItIsHotter() throws Ending {
        JsonObject json = Verbs.json("", "plan", "--life", "60000 h", "--time", "20000 h", "--shape", "1.5", "--factor", "1.5",
                "--test-at", "70 °C",
                "--rated-at", "40 °C");
        assertEquals(3.375, Verbs.number(json, "acceleration"), 1e-12);
        double units = Math.log(10) / -Math.log(0.9) * Math.pow(60000 / (20000 * 3.375), 1.5);
        assertEquals(Math.ceil(units), Verbs.number(json, "units"));
        String printed = Verbs.run("", "plan", "--life", "60000 h", "--time", "20000 h", "--factor", "1.5", "--test-at", "70 °C",
                "--rated-at",
                "40 °C").printed();
        assertTrue(printed.contains("Units age 3.38 times as fast in the test: factor 1.5 per 10 K."), printed);
        assertTrue(printed.contains("Chance to pass"), printed);
        assertTrue(printed.contains("The shape of 3 is common practice for ball bearings"), printed);
    }

    @Test
    void bothGivenShowALife() throws Ending {
        JsonObject json = Verbs.json("", "plan", "--life", "60000 h", "--time", "20000 h", "--units", "20", "--shape", "3");
        assertEquals(20000 / Math.cbrt(Math.log(10) / -Math.log(0.9) / 20), Verbs.number(json, "shownLife") / HOUR, 1e-3);
        assertTrue(json.get("sentence").getAsString().startsWith("20 units that run 20000 h (2.28 years) each without a failure show L10"
                + " 19420 h"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            --units 20 | life plan: --life is missing: the life to be shown, for example "60000 h". See "tramontane help life plan".
            --life 60000h | life plan: --units or --time is missing: give one, the other is found. See "tramontane help life plan".
            --life 60000 --units 3 | --life "60000" has no unit; expected a number with one of s, ms, min, h, d, year.
            --life 60000h --units 2 --failures 2 | --units 2: more units are needed than the 2 of --failures.
            --life 60000h --units 0 | --units "0" is no whole number from 1 to 1000000.
            --life 60000h --units 2 --test-at 343K --factor 2 | For a test at another temperature --test-at, --rated-at and --factor (or --energy) belong together; missing: --rated-at.
            --life 60000h --time 1s | --time "1s" is too short: more than 1000000000 units would be needed; run longer or hotter.
            """)
    void mistakes(String options, String sentence) {
        assertEquals(sentence, Verbs.refused(2, "", ("plan " + options).split(" ")));
    }
}
