package tramontane.model.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.model.Problem;

/** Every kind of mistake in an otherwise sound file, and the sentences that an engineer reads about it. */
class BadFilesTest {

    private static List<String> said(String json) {
        return DesignFile.parse(json).allProblems().stream()
                .map(problem -> (problem.isError() ? "" : "caution: ") + problem.sentence()).toList();
    }

    private static Arguments row(String piece, String instead, String... sentences) {
        return arguments(piece, instead, List.of(sentences));
    }

    /** What stands in the sound file, what is put there instead, what is said beyond what is said of the sound file. */
    static Stream<Arguments> mistakes() {
        return Stream.of(
                row("\"format\": 1", "\"format\": \"1\"",
                        "format: is \"1\"; expected \"format\": 1 at the beginning of the file"),
                row("\"format\": 1,", "",
                        "format: is missing; expected \"format\": 1 at the beginning of the file"),
                row("\"format\": 1", "\"format\": 1.5",
                        "format: is 1.5; expected \"format\": 1 at the beginning of the file"),
                row("\"format\": 1", "\"format\": 1e400",
                        "format: is 1e400; expected \"format\": 1 at the beginning of the file"),
                row("\"name\": \"Rack with two blowers\"", "\"name\": 5",
                        "name: is 5; expected a text"),
                row("{\"id\": \"nominal\"}", "{\"id\": null}",
                        "conditions[0].id: is null; expected a text",
                        "mission[0].condition: \"nominal\" is not a condition of this design; expected hot",
                        "requirements[0].conditions[0]: \"nominal\" is not a condition of this design; expected hot"),
                row("{\"id\": \"nominal\"}", "17",
                        "conditions[0]: is 17; expected a condition, an object { … }",
                        "mission[0].condition: \"nominal\" is not a condition of this design; expected hot",
                        "requirements[0].conditions[0]: \"nominal\" is not a condition of this design; expected hot"),
                row("\"bays\": [\"box\",", "\"bays\": [5,",
                        "airPath.bays[0]: is 5; expected a text",
                        "airPath.passages[0].to: \"box\" is not a bay of this design; expected outside or plenum",
                        "airPath.passages[1].from: \"box\" is not a bay of this design; expected outside or plenum",
                        "heatSources[0].into[0].place: \"box\" is not a bay or passage of this design; expected "
                                + "outside, plenum, inlet, cards or blowers",
                        "controlLaws[0].sensor: \"box\" is not a bay, passage or heat source of this design; expected "
                                + "outside, plenum, inlet, cards, blowers or cpu"),
                row("\"bays\": [\"box\",", "\"bays\": [[],",
                        "airPath.bays[0]: is an empty list; expected a bay, an object { … } or only its id",
                        "airPath.passages[0].to: \"box\" is not a bay of this design; expected outside or plenum",
                        "airPath.passages[1].from: \"box\" is not a bay of this design; expected outside or plenum",
                        "heatSources[0].into[0].place: \"box\" is not a bay or passage of this design; expected "
                                + "outside, plenum, inlet, cards or blowers",
                        "controlLaws[0].sensor: \"box\" is not a bay, passage or heat source of this design; expected "
                                + "outside, plenum, inlet, cards, blowers or cpu"),
                row("\"attitude\": \"upright\"", "\"attitude\": \"uprigth\"",
                        "equipment.attitude: is \"uprigth\"; expected one of \"upright\", \"on its side\", \"on its "
                                + "back\", \"upside down\", \"any\" (did you mean \"upright\"?)"),
                row("\"width\": \"483 mm\"", "\"width\": \"-483 mm\"",
                        "equipment.width: \"-483 mm\" is out of range; expected a length above 0, as a number in m or a "
                                + "text with its unit"),
                row("\"width\": \"483 mm\"", "\"width\": \"483 parsec\"",
                        "equipment.width: \"483 parsec\" is not a length; expected a number with one of m, mm, cm, µm, "
                                + "km, in, ft"),
                row("\"width\": \"483 mm\"", "\"width\": \"483\"",
                        "equipment.width: \"483\" has no unit; expected a number with one of m, mm, cm, µm, km, in, ft"),
                row("\"width\": \"483 mm\"", "\"width\": \"NaN mm\"",
                        "equipment.width: \"NaN mm\" does not begin with a number; expected a number with one of m, mm, "
                                + "cm, µm, km, in, ft"),
                row("\"width\": \"483 mm\"", "\"width\": NaN",
                        "line 5, column 42: NaN is not a number that a file may hold; expected a finite number"),
                row("\"width\": \"483 mm\"", "\"width\": -Infinity",
                        "line 5, column 42: -Infinity is not a number that a file may hold; expected a finite number"),
                row("\"width\": \"483 mm\"", "\"width\": 1e999999999",
                        "equipment.width: 1e999999999 is outside the range 1e-307 to 1e308; expected a length above 0, "
                                + "as a number in m or a text with its unit"),
                row("\"width\": \"483 mm\"", "\"width\": 1e-999999999",
                        "equipment.width: 1e-999999999 is outside the range 1e-307 to 1e308; expected a length above 0, "
                                + "as a number in m or a text with its unit"),
                row("\"width\": \"483 mm\"", "\"width\": 1e99999999999999999999",
                        "equipment.width: 1e99999999999999999999 is outside the range 1e-307 to 1e308; expected a "
                                + "length above 0, as a number in m or a text with its unit"),
                row("\"width\": \"483 mm\"", "\"width\": true",
                        "equipment.width: is true; expected a length above 0, as a number in m or a text with its unit"),
                row("\"hysteresis\": \"2 K\"", "\"hysteresis\": \"2 °C\"",
                        "controlLaws[0].hysteresis: \"2 °C\" is a temperature; a difference is written in K"),
                row("\"0 20 40 60 80 cfm\"", "\"0 20 20 60 50 cfm\"",
                        "airMovers[0].curves[0].flow: number 3, 20, repeats the one before it; expected each larger "
                                + "than the one before",
                        "airMovers[0].curves[0].flow: number 5, 50, is smaller than the one before it, 60; expected "
                                + "each larger than the one before"),
                row("\"0 20 40 60 80 cfm\"", "\"0 20 40 60 cfm\"",
                        "airMovers[0].curves[0].pressure: has 5 numbers; expected 4, one for each flow",
                        "airMovers[0].curves[0].power: has 5 numbers; expected 4, one for each flow"),
                row("\"0 20 40 60 80 cfm\"", "[0, 0.01, \"10 L/s\", 0.005, 0.1]",
                        "airMovers[0].curves[0].flow: number 3, \"10 L/s\", repeats the one before it; expected each "
                                + "larger than the one before",
                        "airMovers[0].curves[0].flow: number 4, 0.005, is smaller than the one before it, \"10 L/s\"; "
                                + "expected each larger than the one before"),
                row("\"0 20 40 60 80 cfm\"", "\"-1 20 40 60 80 cfm\"",
                        "airMovers[0].curves[0].flow: number 1, -1, is out of range; expected each flow of at least 0"),
                row("\"0 20 40 60 80 cfm\"", "\"20 cfm\"",
                        "airMovers[0].curves[0].flow: has 1 number; expected at least 2"),
                row("\"0 20 40 60 80 cfm\"", "[0, 1, 2, 3, \"x\"]",
                        "airMovers[0].curves[0].flow[4]: \"x\" does not begin with a number; expected a number with one "
                                + "of m³/s, m³/h, l/s, l/min, cfm"),
                row("\"5 6 7 8 8.50 W\"", "\"5 6 7 8 W\"",
                        "airMovers[0].curves[0].power: has 4 numbers; expected 5, one for each flow"),
                row("\"share\": \"40 %\"", "\"share\": \"140 %\"",
                        "heatSources[0].into[0].share: \"140 %\" is out of range; expected a fraction above 0 and at "
                                + "most 1, as a number or a text in %"),
                row("\"share\": \"40 %\"", "\"share\": \"40\"",
                        "heatSources[0].into[0].share: \"40\" is out of range; expected a fraction above 0 and at most "
                                + "1, as a number or a text in %"),
                row("\"cards\"], \"chain\"", "{\"place\": \"cards\", \"share\": 0.5}], \"chain\"",
                        "heatSources[0].into: the shares add up to 90 %; expected 100 %, or one place without a share, "
                                + "which takes what is left"),
                row("\"cards\"], \"chain\"", "{\"place\": \"cards\", \"share\": 0.7}], \"chain\"",
                        "heatSources[0].into: the shares add up to 110 %; expected 100 % at most"),
                row("\"cards\"], \"chain\"", "\"crads\"], \"chain\"",
                        "heatSources[0].into[1]: \"crads\" is not a bay or passage of this design; expected outside, "
                                + "box, plenum, inlet, cards or blowers (did you mean \"cards\"?)"),
                row("\"55 °C\"", "\"155 °C\"",
                        "conditions[1].outsideTemperature: \"155 °C\" is out of range; expected a temperature from -100 "
                                + "°C to 100 °C, as a number in K or a text with its unit"),
                row("\"to\": \"plenum\"", "\"to\": \"plenun\"",
                        "airPath.passages[1].to: \"plenun\" is not a bay of this design; expected outside, box or "
                                + "plenum (did you mean \"plenum\"?)"),
                row("\"from\": \"outside\", \"to\": \"box\"", "\"from\": \"box\", \"to\": \"box\"",
                        "airPath.passages[0]: begins and ends in \"box\"; expected two different bays"),
                row("\"notes\": \"behind the cards\"}", "\"notes\": \"behind the cards\"}, \"pocket\", \"outside\", \"box\"",
                        "airPath.bays[4]: \"box\" is the name of airPath.bays[0] already; expected a name that no other "
                                + "bay has",
                        "airPath.bays[3]: \"outside\" is always there and not listed; expected another name",
                        "airPath.bays[2]: no passage joins \"pocket\" to outside, not even through other bays; expected "
                                + "a passage to outside or to a bay that has one"),
                row("\"id\": \"cards\", \"kind\"", "\"id\": \"inlet\", \"kind\"",
                        "airPath.passages[1]: \"inlet\" is the name of airPath.passages[0] already; expected a name "
                                + "that no other passage has",
                        "heatSources[0].into[1]: \"cards\" is not a bay or passage of this design; expected outside, "
                                + "box, plenum, inlet or blowers"),
                row("\"banks\": [\"blowers\"]", "\"banks\": [\"cards\", \"blower\", 7]",
                        "controlLaws[0].banks[2]: is 7; expected the id of a bank",
                        "controlLaws[0].banks[0]: \"cards\" is a passage, but not a bank; expected blowers",
                        "controlLaws[0].banks[1]: \"blower\" is not a bank of this design; expected blowers (did you "
                                + "mean \"blowers\"?)"),
                row("{\"cpu\": \"120 %\"}", "{\"gpu\": \"120 %\"}",
                        "conditions[1].heatFactors.gpu: \"gpu\" is not a heat source of this design; expected cpu (did "
                                + "you mean \"cpu\"?)"),
                row("\"heatFactors\": {\"cpu\": \"120 %\"}", "\"heatFactors\": 1.2",
                        "conditions[1].heatFactors: is 1.2; expected an object { … } with one fraction per heat source id"),
                row("\"any one\"", "\"every one\"",
                        "conditions[1].failed[0].position: is \"every one\"; expected a whole number of at least 1 or "
                                + "\"any one\""),
                row("\"any one\"", "0",
                        "conditions[1].failed[0].position: is 0; expected a whole number of at least 1 or \"any one\""),
                row("\"any one\"", "1.5",
                        "conditions[1].failed[0].position: is 1.5; expected a whole number of at least 1 or \"any one\""),
                row("\"locked\"", "\"loked\"",
                        "conditions[1].failed[0].state: is \"loked\"; expected one of \"locked\", \"freewheeling\", "
                                + "\"removed\" (did you mean \"locked\"?)"),
                row("\"760 h\"", "\"9000 h\"",
                        "mission[1].timePerYear: \"9000 h\" is out of range; expected a time from 0 to 8784 h, as a "
                                + "number in s or a text with its unit"),
                row("\"760 h\"", "\"2000 h\"",
                        "caution: mission: the times add up to 10000 h per year; expected 8784 h at most, the hours of "
                                + "a leap year"),
                row("{\"condition\": \"hot\"", "{\"condition\": \"nominal\"",
                        "caution: mission[1]: \"nominal\" has a time in mission[0] already; both count"),
                row("{\"condition\": \"hot\"", "{\"condition\": \"hott\"",
                        "mission[1].condition: \"hott\" is not a condition of this design; expected nominal or hot (did "
                                + "you mean \"hot\"?)"),
                row("\"sensor\": \"box\"", "\"sensor\": \"bx\"",
                        "controlLaws[0].sensor: \"bx\" is not a bay, passage or heat source of this design; expected "
                                + "outside, box, plenum, inlet, cards, blowers or cpu"),
                row("[0.4, \"100 %\"]", "[0.4, 0.5, 1]",
                        "controlLaws[0].speed: has 3 numbers; expected 2, one for each temperature"),
                row("\"25 45 °C\"", "\"45 25 °C\"",
                        "controlLaws[0].temperature: number 2, 25, is smaller than the one before it, 45; expected each "
                                + "larger than the one before"),
                row("\"25 45 °C\"", "[\"25 °C\", \"25 °C\"]",
                        "controlLaws[0].temperature: number 2, \"25 °C\", repeats the one before it; expected each "
                                + "larger than the one before"),
                row("\"atMost\": \"85 °C\"}", "\"notes\": 1}",
                        "requirements[1]: has no limit; expected atLeast, atMost or both"),
                row("\"atMost\": \"85 °C\"}", "\"atMost\": \"85 °C\", \"atLeast\": \"90 °C\"}",
                        "requirements[1]: atLeast is \"90 °C\" and atMost is \"85 °C\"; expected atLeast to be the "
                                + "smaller one"),
                row("\"atMost\": \"85 °C\"}", "\"atMost\": \"85 °C\", \"atLeast\": \"9 cfm\"}",
                        "requirements[1]: atLeast is \"9 cfm\" and atMost is \"85 °C\"; expected two quantities of one "
                                + "kind"),
                row("\"atMost\": \"85 °C\"}", "\"atMost\": \"85 parsec\"}",
                        "requirements[1].atMost: \"85 parsec\" has a unit that is not known: \"parsec\"; expected a "
                                + "number in SI units or a text with its unit"),
                row("\"sections\": {\"dust\"", "\"sections\": 5, \"was\": {\"dust\"",
                        "sections: is 5; expected an object { … } with one member per section"),
                row("\"passages\": [\n", "\"passages\": 5, \"was\": [\n",
                        "airPath.passages: is 5; expected a list of objects, each a passage"),
                row("\"passages\": [\n", "\"pasages\": [\n",
                        "caution: airPath.pasages: is not a field of an air path that anything loaded here knows; it is "
                                + "kept, but not used (did you mean \"passages\"?)",
                        "heatSources[0].into[1]: \"cards\" is not a bay or passage of this design; expected outside, "
                                + "box or plenum",
                        "conditions[1].failed[0].bank: \"blowers\" is not a bank of this design; it has no bank yet",
                        "controlLaws[0].banks[0]: \"blowers\" is not a bank of this design; it has no bank yet",
                        "caution: airPath: has no passages, so no air flows; expected at least one",
                        "airPath.bays[0]: no passage joins \"box\" to outside, not even through other bays; expected a "
                                + "passage to outside or to a bay that has one",
                        "airPath.bays[1]: no passage joins \"plenum\" to outside, not even through other bays; expected "
                                + "a passage to outside or to a bay that has one"),
                row("\"heatSources\": [\n", "\"heatSource\": [\n",
                        "caution: heatSource: is not a field of a design that anything loaded here knows; it is kept, "
                                + "but not used (did you mean \"heatSources\"?)",
                        "conditions[1].heatFactors.cpu: \"cpu\" is not a heat source of this design; it has no heat "
                                + "source yet"),
                row("\"kind\": \"grille\", ", "",
                        "airPath.passages[0].kind: is missing; expected a text"),
                row("\"power\": \"35.0 W\", ", "",
                        "heatSources[0].power: is missing; expected a power from 0 to 1000000 W, as a number in W or a text "
                                + "with its unit"),
                row("\"id\": \"inlet\",", "\"id\": \"inlet\"",
                        "line 18, column 22: expected a comma or a closing brace, found the text \"kind\""),
                row("\"id\": \"inlet\",", "\"id\" \"inlet\",",
                        "line 18, column 13: expected a colon, found the text \"inlet\""),
                row("\"id\": \"inlet\",", "id: \"inlet\",",
                        "line 18, column 8: expected a name in double quotes or a closing brace, found \"id\""),
                row("\"id\": \"inlet\",", "\"id\": inlet,",
                        "line 18, column 14: \"inlet\" is not a value; expected a number, true, false, null, or a text "
                                + "in double quotes"),
                row("\"id\": \"inlet\",", "\"id\": 'inlet',",
                        "line 18, column 14: \"'inlet'\" is not a value; expected a number, true, false, null, or a "
                                + "text in double quotes"),
                row("\"id\": \"inlet\",", "\"id\": \"inlet,",
                        "line 18, column 23: expected a comma or a closing brace, found \"kind\""),
                row("\"id\": \"inlet\",", "\"id\": 012,",
                        "line 18, column 14: \"012\" is not a number; expected one like 12, -0.5 or 1e-3"),
                row("\"id\": \"inlet\",", "\"id\": .5,",
                        "line 18, column 14: \".5\" is not a number; expected one like 12, -0.5 or 1e-3"),
                row("\"id\": \"inlet\",", "\"id\": 1,5,",
                        "line 18, column 16: expected a name in double quotes, found \"5\"; decimals are written with a "
                                + "point"),
                row("\"id\": \"inlet\",", "\"id\": \"in\\let\",",
                        "line 18, column 17: \"\\l\" means nothing in a text; expected \\\\ for a backslash"),
                row("\"id\": \"inlet\",", "\"id\": \"in\tlet\",",
                        "line 18, column 17: a text holds a control character (code 9); expected it written as \\t"),
                row("\"id\": \"inlet\",", "// the inlet",
                        "line 18, column 8: a comment is not possible in JSON; expected a name in double quotes or a "
                                + "closing brace; remarks go into a member named notes"),
                row("\"id\": \"inlet\",", "\"id\": ,",
                        "line 18, column 14: expected a value, found ,"),
                row("\"id\": \"inlet\",", "\"id\": \"inlet\",,",
                        "line 18, column 22: expected a name in double quotes, found ,"),
                row("\"id\": \"inlet\",", "\"id\": 1e,",
                        "line 18, column 14: \"1e\" is not a number; expected one like 12, -0.5 or 1e-3"),
                row("\"id\": \"inlet\",", "\"id\": True,",
                        "line 18, column 14: \"True\" is not a value; expected a number, true, false, null, or a text "
                                + "in double quotes"),
                row("\"loss\": 2.50}", "\"loss\": 2.50,}",
                        "line 18, column 109: nothing follows the comma before this brace; take the comma out or add a "
                                + "member"),
                row("\"loss\": 2.50}", "\"loss\": 2.50",
                        "line 19, column 7: expected a name in double quotes, found {"),
                row("\"loss\": 2.50}", "\"loss\": 2.50]",
                        "line 18, column 108: expected a comma or a closing brace, found ]"),
                row("1e999999999]\n}", "1e999999999,]\n}",
                        "line 40, column 66: nothing follows the comma before this bracket; take the comma out or add a "
                                + "value"),
                row("1e999999999]\n}", "1e999999999]\n",
                        "line 42, column 1: the file ends inside the object that begins in line 1, column 1; expected a "
                                + "comma or a closing brace"),
                row("1e999999999]\n}", "1e999999999\n",
                        "line 42, column 1: the file ends inside the list that begins in line 40, column 21; expected a "
                                + "comma or a closing bracket"),
                row("1e999999999]\n}", "1e999999999]\n} {}",
                        "line 41, column 3: expected nothing more, found {"),
                row("1e999999999]\n}", "1e999999999]\n}}",
                        "line 41, column 2: expected nothing more, found }"));
    }

    @ParameterizedTest
    @MethodSource("mistakes")
    void aMistakeIsNamedWithItsPlaceAndWhatWasExpected(String piece, String instead, List<String> sentences) {
        String sound = DesignFileTest.rack();
        assertTrue(sound.contains(piece), piece);
        List<String> said = new ArrayList<>(said(sound.replace(piece, instead)));
        said.removeAll(said(sound));
        said.removeIf(sentence -> sentence.contains(".was:") || sentence.startsWith("caution: was:"));
        assertEquals(sentences, said);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            ``               | the file is empty; expected an object { … }
            `  `             | the file is empty; expected an object { … }
            []               | the file holds a list; expected an object { … }
            "a"              | the file holds a text; expected an object { … }
            3                | the file holds a number; expected an object { … }
            null             | the file holds a single word; expected an object { … }
            {                | line 1, column 2: the file ends inside the object that begins in line 1, column 1; expected a name in double quotes or a closing brace
            }                | line 1, column 1: expected a value, found }
            {"format": 1}x   | line 1, column 14: expected nothing more, found "x"
            {"format": 1} {} | line 1, column 15: expected nothing more, found {
            nul              | line 1, column 1: "nul" is not a value; expected a number, true, false, null, or a text in double quotes
            {"a": [1, 2      | line 1, column 12: the file ends inside the list that begins in line 1, column 7; expected a comma or a closing bracket
            {"a": tru        | line 1, column 7: "tru" is not a value; expected a number, true, false, null, or a text in double quotes
            """)
    void aFileThatIsNoObjectIsRefusedInOneSentence(String json, String sentence) {
        assertEquals(List.of(sentence), said(json));
    }

    @Test
    void aNumberOfAThousandDigitsIsRefused() {
        assertEquals(List.of("line 1, column 6: a number has 1001 characters; expected 1000 at most"),
                said("{\"a\":" + "1".repeat(1001) + "}"));
        assertEquals(List.of("line 1, column 6: a number has 5000000 characters; expected 1000 at most"),
                said("{\"a\":" + "1".repeat(5_000_000) + "}"));
    }

    @Test
    void allMistakesAreSaidAtOnce() {
        String bad = DesignFileTest.rack().replace("\"to\": \"plenum\"", "\"to\": \"plenun\"")
                .replace("\"483 mm\"", "\"483 parsec\"").replace("\"loss\": 2.50", "\"loss\": 2.50, \"loss\": 3")
                .replace("\"2 K\"", "\"2 °C\"").replace("\"limit\": \"85 °C\"", "\"limit\": \"85\"")
                .replace("{\"id\": \"nominal\"}", "{\"id\": \"hot\"}");
        assertEquals(List.of("airPath.passages[0].loss", "equipment.width", "heatSources[0].limit", "controlLaws[0].hysteresis",
                "conditions[1]", "airPath.passages[1].to", "mission[0].condition", "requirements[0].conditions[0]"),
                DesignFile.parse(bad).allProblems().stream().filter(Problem::isError).map(Problem::place).toList());
    }
}
