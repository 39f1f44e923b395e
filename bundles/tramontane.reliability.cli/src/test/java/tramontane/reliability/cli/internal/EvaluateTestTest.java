package tramontane.reliability.cli.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.cli.terminal.Ending;

class EvaluateTestTest {

    private static final double HOUR = 3600;
    /** Device A of W. Meeker, L. Escobar, "Statistical Methods for Reliability Data" (1998), table C.10 (W. Hooper, D. Amster). */
    private static final String DEVICE = "time [h];state;temperature [°C];count\n5000;S;10;30\n" + rows(40,
            "1298 1390 3187 3241 3261 3313 4501 4568"
            + " 4841 4982") + "5000;S;40;90\n" + rows(60, "581 925 1432 1586 2452 2734 2772 4106 4674") + "5000;S;60;11\n"
            + rows(80, "283 361 515 638 854 1024 1030 1045 1767 1777 1856 1951 1964 2884") + "5000;S;80;1\n";

    @TempDir
    private Path folder;

    private static String rows(int temperature, String times) {
        StringBuilder rows = new StringBuilder();
        for (String time : times.split(" ")) {
            rows.append(time).append(";F;").append(temperature).append(";1\n");
        }
        return rows.toString();
    }

    private static JsonObject first(JsonObject json, String list) {
        return json.getAsJsonArray(list).get(0).getAsJsonObject();
    }

    @Test
    void theHandbooksTestIsAnsweredFirst() throws Ending {
        Verbs.Ran ran = Verbs.run(Verbs.HANDBOOK, "test", "-", "--after", "300 h");
        assertEquals(0, ran.code());
        assertTrue(ran.printed().startsWith("L10 164 h, 74.8 to 255 h at 90 % (likelihood ratio).\n"), ran.printed());
        assertTrue(ran.printed().contains("scale (63.2 % failed)     607 h"), ran.printed());
        assertTrue(ran.printed().contains("survival at 300 h        74.2 %"), ran.printed());
        assertTrue(ran.printed().contains("Weibull: log-likelihood -75.13, AIC 154.27 (times in h)"), ran.printed());
        assertTrue(ran.printed().contains("L10 of at least 93.4 h"), ran.printed());
        assertTrue(ran.printed().contains("The mean lies beyond the longest time on test, 500 h: extrapolated."), ran.printed());
        assertEquals("", ran.errors());
    }

    @Test
    void theHandbooksTestAsJson() throws Ending {
        JsonObject json = Verbs.json(Verbs.HANDBOOK, "test", "-", "--life", "L10", "--life", "mean");
        JsonObject answer = first(json, "answers");
        JsonObject weibull = first(answer, "distributions");
        assertEquals("weibull", weibull.get("name").getAsString());
        assertEquals(606.5280, Verbs.number(weibull, "scale", "estimate") / HOUR, 1e-3);
        assertEquals(1.7208, Verbs.number(weibull, "shape", "estimate"), 1e-4);
        assertEquals(-75.135, Verbs.number(weibull, "logLikelihood"), 1e-3);
        JsonObject life = first(weibull, "lives");
        assertEquals(164.0, life.get("estimate").getAsDouble() / HOUR, 0.05);
        assertEquals(74.8, life.get("lower").getAsDouble() / HOUR, 0.05);
        assertEquals(254.8, life.get("upper").getAsDouble() / HOUR, 0.05);
        assertTrue(weibull.getAsJsonArray("lives").get(1).getAsJsonObject().get("failed").isJsonNull());
        assertEquals(20, answer.get("units").getAsInt());
        assertEquals(10, answer.get("failures").getAsInt());
        assertTrue(json.get("temperatureEffect").isJsonNull());
    }

    @Test
    void allDistributionsByTheirAic() throws Ending {
        JsonArray all = first(Verbs.json(Verbs.HANDBOOK, "test", "-", "--distribution", "all", "--bounds", "fisher"), "answers")
                .getAsJsonArray("distributions");
        assertEquals(3, all.size());
        for (int i = 1; i < 3; i++) {
            assertTrue(Verbs.number(all.get(i - 1).getAsJsonObject(), "aic") <= Verbs.number(all.get(i).getAsJsonObject(), "aic"));
        }
    }

    @Test
    void aLineThroughRanksHasNoBounds() throws Ending {
        Verbs.Ran ran = Verbs.run(Verbs.HANDBOOK, "test", "-", "--method", "ranks");
        assertTrue(ran.printed().startsWith("L10 151 h (line through median ranks, no bounds).\n"), ran.printed());
        JsonObject life = first(first(first(Verbs.json(Verbs.HANDBOOK, "test", "-", "--method", "ranks"), "answers"), "distributions"),
                "lives");
        assertTrue(life.get("lower").isJsonNull());
    }

    @Test
    void lifeAtAnotherTemperatureByTheTests() throws Ending {
        Verbs.Ran ran = Verbs.run(DEVICE, "test", "-", "--distribution", "lognormal", "--at", "10 °C");
        assertTrue(ran.printed().startsWith("At 10.0 °C: L10 60540 h, 31280 to 137600 h at 90 % (likelihood ratio).\n"), ran.printed());
        JsonObject json = Verbs.json(DEVICE, "test", "-", "--distribution", "lognormal", "--at", "10 °C");
        assertEquals(0.6279, Verbs.number(json, "temperatureEffect", "activationEnergy", "estimate") / 1.602176634e-19, 1e-4);
        JsonObject lognormal = first(first(json, "answers"), "distributions");
        assertEquals(0.9778, Verbs.number(lognormal, "shape", "estimate"), 1e-4);
        assertEquals(-321.703, Verbs.number(lognormal, "logLikelihood"), 1e-3);
        assertEquals(4, json.getAsJsonArray("groups").size());
    }

    @Test
    void groupsAreAnsweredOneByOne() throws Ending {
        Verbs.Ran ran = Verbs.run(DEVICE, "test", "-");
        assertEquals(4, ran.code(), "nothing failed at 10 °C");
        assertTrue(ran.printed().startsWith("At 10.0 °C: no life can be given: no unit failed;"), ran.printed());
        assertTrue(ran.printed().contains("At 80.0 °C: L10 313 h, 122 to 581 h at 90 % (likelihood ratio)."), ran.printed());
        assertTrue(ran.printed().contains("factor per 10 K        1.94"), ran.printed());
    }

    @Test
    void aKnownShapeAnswersWhereNothingFailed() throws Ending {
        // 3 units of 500 h, shape 3: η at 90 % is (3·500³/ln 10)^(1/3) h
        double scale = Math.cbrt(3 * Math.pow(500, 3) / Math.log(10));
        double shown = scale * Math.cbrt(-Math.log(0.9));
        JsonObject answer = first(Verbs.json("500+ 500+ 500+ h", "test", "-", "--shape", "3"), "answers");
        assertEquals(shown, Verbs.number(answer, "shownL10KnownShape") / HOUR, 1e-6 * shown);
        assertEquals("L10 is at least 258 h at 90 % (one-sided, shape 3 known); no unit failed.", answer.get("sentence").getAsString());
        JsonObject cooler = first(Verbs.json("500+ 500+ 500+ h", "test", "-", "--shape", "3", "--test-at", "70 °C", "--at", "40 °C",
                "--factor",
                "1.5"), "answers");
        assertEquals(shown * 3.375, Verbs.number(cooler, "shownL10KnownShape") / HOUR, 1e-6 * shown);
        assertEquals("standard input: no unit failed, so the test alone gives no life. Where the shape is known, it shows one: L10 of at"
                + " least"
                + " 68.6 h at 90 % with --shape 1, L10 of at least 258 h at 90 % with --shape 3.", Verbs.refused(4, "500+ 500+ 500+ h",
                "test", "-"));
    }

    @Test
    void timesStayInTheUnitTheyWereWrittenIn() throws Ending {
        assertTrue(Verbs.run("10 20 30 40+ d", "test", "-").printed().matches("(?s)L10 [0-9.]+ d, [0-9.]+ to [0-9.]+ d at 90 %.*longest"
                + " \\[d].*"));
    }

    @Test
    void readingsAreJudged() throws Ending {
        String printed = Verbs.run("unit;time [h];speed"
                + " [rpm]\nA;0;2750\nA;500;2700\nA;1000;2300\nB;0;2750\nB;1000;2700\nC;0;2740\nC;800;0\n", "test",
                "-").printed();
        assertTrue(printed.contains("A          500 h     1000 h  speed fell"), printed);
        assertTrue(printed.contains("B         1000 h   survived"), printed);
        assertTrue(printed.contains("C            0 h      800 h  does not run"), printed);
    }

    @Test
    void whatCountsAsFailureCanBeSaid() throws Ending {
        String readings = "unit;time [h];speed [rpm];level [dB]\nA;0;2750;40\nA;500;2700;40\nA;1000;2300;44\nB;0;2750;40\nB;1000;2100;40\nB;1500;2000;40\nC;0;2750;40\nC;1600;2700;40\nC;2000;1900;40\n";
        String usual = Verbs.run(readings, "test", "-").printed();
        assertTrue(usual.contains("A          500 h     1000 h  speed fell, sound rose"), usual);
        String louder = Verbs.run(readings, "test", "-", "--speed-fall", "25 %", "--level-rise", "3.5 dB").printed();
        assertTrue(louder.contains("A          500 h     1000 h  sound rose"), louder);
        assertTrue(louder.contains("B         1000 h     1500 h  speed fell"), louder);
        assertTrue(Verbs.refused(2, readings, "test", "-", "--speed-fall", "120 %").contains("--speed-fall"));
    }

    @Test
    void chartAndCsv() throws Ending, IOException {
        Path chart = folder.resolve("test.svg");
        Path file = Files.writeString(folder.resolve("test.txt"), Verbs.HANDBOOK);
        Verbs.Ran ran = Verbs.run("", "test", file.toString(), "--chart", chart.toString(), "--format", "csv");
        assertEquals("The chart was written to " + chart + ".\n", ran.errors());
        String svg = Files.readString(chart);
        assertTrue(svg.contains("<svg") && svg.contains("Life test test.txt") && svg.contains("63.2 %"), svg);
        String[] lines = ran.written().split("\r\n");
        assertEquals("temperature [K],distribution,what,unit,estimate,lower,upper", lines[0]);
        assertEquals(7, lines.length);
        assertTrue(lines[4].startsWith(",weibull,L10,s,590480.7"), lines[4]);
        Path law = folder.resolve("law.svg");
        Verbs.run(DEVICE, "test", "-", "--at", "30 °C", "--chart", law.toString());
        assertTrue(Files.readString(law).contains("at 80.0 °C"));
    }

    @Test
    void mistakesOfTheFileAreAllPrinted() throws Ending {
        Verbs.Ran ran = Verbs.run("time [h],state\n54,broken\n-3,F\n", "test", "-");
        assertEquals(2, ran.code());
        assertEquals("standard input, line 2, column state: \"broken\" is not a state; expected failed, survived or suspended, F or S, 1"
                + " (failed) or"
                + " 0.\nstandard input, line 3, column time [h]: \"-3\" is below zero; expected a time on test.\n2 errors; nothing was"
                + " evaluated.\n", ran.errors());
        assertEquals("", ran.printed());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            --confidence 90 | --confidence "90" must lie between 0 and 100 %, both left out; write for example "90 %".
            --distribution gamma | --distribution "gamma" is not known; it is one of weibull, lognormal, exponential, all.
            --life B | --life "B" is no life; write L10 for the time by which 10 % have failed, or mean.
            --factor 2 | --factor belongs to --at, the temperature at which life is asked for; it is missing.
            --at 313K | --at needs the temperature of the test: a column "temperature [°C]" in the file, or --test-at "70 °C".
            --at 313K --factor 2 --energy 1eV | --factor and --energy say the same in two ways; give one.
            --shape 0 | --shape "0" is out of range; it must be 0.05 to 100.
            --shape 2 --distribution all | --shape belongs to one distribution, not to "all"; give --distribution weibull or lognormal.
            --method ranks --shape 2 | --method ranks finds the shape and has no bounds; leave out --shape, or take --method likelihood.
            --after 5 | --after "5" has no unit; expected a number with one of s, ms, min, h, d, year.
            --after -5h | --after "-5h" is out of range; it must be above zero and at most 1000000 years.
            --chart nowhere/at.svg/x | --chart nowhere/at.svg/x: the folder {folder} does not exist.
            """)
    void mistakesOfTheCommandLine(String options, String sentence) {
        String[] words = ("test - " + options).split(" ");
        assertEquals(sentence.replace("{folder}", Path.of("nowhere/at.svg").toAbsolutePath().toString()), Verbs.refused(2, Verbs.HANDBOOK,
                words));
    }

    @Test
    void oneTemperatureShowsNoLaw() {
        assertEquals("--at needs units tested at two temperatures or more, or a known relation: --factor 1.5 (per 10 K) or --energy \"0.4"
                + " eV\"."
                + " All units ran at 70.0 °C.", Verbs.refused(2, Verbs.HANDBOOK, "test", "-", "--test-at", "70 °C", "--at", "40 °C"));
        assertEquals("no such.txt: there is no such file.", Verbs.refused(2, "", "test", "no such.txt"));
    }
}
