package tramontane.reliability.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.model.Problem;

class LifeTableTest {

    private static final double HOUR = 3600;

    private static LifeTable read(String text) {
        LifeTable.Read read = LifeTable.read("test", text);
        assertTrue(read.problems().stream().noneMatch(Problem::isError), () -> read.problems().toString());
        return read.table().orElseThrow();
    }

    private static List<String> wrong(String text) {
        LifeTable.Read read = LifeTable.read("test", text);
        assertTrue(read.table().isEmpty(), () -> read.table().toString());
        return read.problems().stream().filter(Problem::isError).map(Problem::sentence).toList();
    }

    private static LifeData hours(double... times) {
        return new LifeData(java.util.Arrays.stream(times).mapToObj(time -> time < 0 ? Observation.survivor(-time * HOUR)
                : Observation.failure(time * HOUR)).toList());
    }

    /** Ways to write down units that failed at 54 and 187 h and two that survived 500 h. */
    @ParameterizedTest
    @ValueSource(strings = {
        "54 187 500+ 500+ h",
        "54 h\n187 h\n500+ h\n500 h+\n",
        "54\n187\n500 S\n500S h\n",
        "54, 187, 500+, 500+ h",
        "54,187,500+,500+ h",
        "54; 187; 500+; 500+ [h]",
        "\uFEFF# a comment, with a comma\r\n54F 187\r\n500+h\r\n# another\r\n500h+",
        "time [h]\n54\n187\n500+\n500 S\n",
        "time\n54 h\n187 h\n500 h+\n500 h S\n",
        "time [h],state\n54,failed\n187,F\n500,survived\n500,suspended\n",
        "  time (h) ; STATE ; note \n\n54;1;\n# comment\n187;1;x\n500;0;y\n500,00;S;z",
        "state\ttime [h]\nf\t54,0\nF\t187,\ns\t500\nS\t5e2",
        "unit,time [h],state\nA1,54,failed\nA2,187,failed\nA3,500,0\nA4,\"500\",0\n",
        "time [min],state\n3240,1\n11220,1\n30000,0\n30000,0\n"
    })
    void oneTestWrittenInManyWays(String text) {
        LifeTable table = read(text);
        assertEquals(1, table.groups().size());
        assertEquals(hours(54, 187, -500, -500), table.groups().getFirst().data());
        assertEquals(hours(54, 187, -500, -500), table.pooled());
        assertEquals(text.contains("min") ? "min" : "h", table.timeUnit().symbol());
    }

    @Test
    void looksWithCounts() {
        LifeTable table = read("from [h];to [h];count\n;100;2\n100;200;3\n200;200;1\n200;;14\n");
        assertEquals(new LifeData(List.of(new Observation(0, 100 * HOUR, 2), new Observation(100 * HOUR, 200 * HOUR, 3),
                new Observation(200 * HOUR, 200 * HOUR, 1), new Observation(200 * HOUR, Double.POSITIVE_INFINITY, 14))), table.pooled());
        assertEquals(20, table.pooled().units());
        assertEquals(6, table.pooled().failures());
    }

    @Test
    void groupsByTemperatureThenSpeed() {
        LifeTable table = read("time [d],temperature [°C],speed [rpm]\n10,85,3000\n20,60,3000\n30+,60,1500\n12,85,3000\n");
        assertEquals(List.of(OptionalDouble.of(333.15), OptionalDouble.of(333.15), OptionalDouble.of(358.15)),
                table.groups().stream().map(LifeTable.Group::temperature).toList());
        assertEquals(1500 * Math.PI / 30, table.groups().getFirst().speed().orElseThrow(), 1e-9);
        assertEquals(LifeData.of(Observation.failure(864000), Observation.failure(12 * 86400)), table.groups().getLast().data());
        assertEquals(358.15, table.groups().getLast().stress().orElseThrow().temperature());
    }

    @Test
    void readingsOfUnits() {
        LifeTable table = read("unit;time [h];speed [rpm];current [A];temperature"
                + " [°C]\nA;1000;2300;0,125;60\nA;0;2750;0,120;60\nB;0;2740;;60\nB;500;2700;;60\n"
                + "B;1000;0;0;60\nC;900;2700;0,12;85\n");
        assertTrue(table.groups().isEmpty());
        assertEquals(3, table.readings().size());
        LifeTable.UnitReadings first = table.readings().getFirst();
        assertEquals("A", first.unit());
        assertEquals(OptionalDouble.of(333.15), first.temperature());
        assertEquals(List.of(0.0, 1000 * HOUR), first.readings().readings().stream().map(Readings.Reading::time).toList());
        assertEquals(OptionalDouble.of(0.12), first.readings().readings().getFirst().current());
        assertEquals(OptionalDouble.empty(), table.readings().get(1).readings().readings().getFirst().current());
        assertEquals(OptionalDouble.empty(), first.readings().readings().getFirst().level());
        List<LifeTable.Group> groups = table.judged(FailureCriteria.DEFAULT);
        assertEquals(List.of(new LifeData(List.of(Observation.between(0, 1000 * HOUR), Observation.between(500 * HOUR, 1000 * HOUR))),
                LifeData.of(Observation.survivor(900 * HOUR))), groups.stream().map(LifeTable.Group::data).toList());
    }

    @Test
    void speedAloneIsAReadingWhereAUnitHasSeveralRows() {
        assertEquals(1, read("unit,time [h],speed [rpm]\nA,0,2700\nA,100,2600\n").readings().size());
        assertEquals(2, read("unit,time [h],speed [rpm]\nA,50,2700\nB,100,2600\n").groups().size());
    }

    static Stream<Arguments> mistakes() {
        return Stream.of(
                Arguments.of("", "test: is empty; expected a life test: a table with a heading row, or times such as \"54 187 500+ h\""),
                Arguments.of("# only a comment\n \n", "test: is empty; expected a life test: a table with a heading row, or times such as"
                        + " \"54 187 500+ h\""),
                Arguments.of("54 187 500+", "test: has times without a unit; expected one behind them, one of s, ms, min, h, d, year:"
                        + " \"54 187 500+ h\""),
                Arguments.of("54 h\n3 d\n", "test: has different units: h in test, line 1, column 2, d in test, line 2, column 2; expected"
                + " one"
                        + " for all times"),
                Arguments.of("54 x 187 h", "test, line 1, column 2: \"x\" is neither a time nor a unit of it; expected times with a unit at"
                + " the"
                        + " end, \"+\" or S behind those of survivors: \"54 187 500+ h\""),
                Arguments.of("54 -3 h", "test, line 1, column 2: \"-3\" is below zero; expected a time on test"),
                Arguments.of("54 0 h", "test, line 1, column 2: \"0\" is the time of a failure; expected it above zero, as no unit fails"
                + " before"
                        + " it runs"),
                Arguments.of("1,200 2400 h", "test, line 1, column 1: \"1,200\" may be 1.200 or 1200; expected it without a comma"),
                Arguments.of(",,\n", "test: has no cell with anything in it; expected a heading row such as \"time [h],state\""),
                Arguments.of("54++ h", "test, line 1, column 1: \"54++\" is not understood; expected times with a unit at the end, \"+\" or"
                + " S"
                        + " behind those of survivors: \"54 187 500+ h\""),
                Arguments.of("0+ h", "test: has no unit that was on test for any time; expected at least one"),
                Arguments.of("54,5 60.5 h", "test: decimals are written with a comma and with a point: test, line 1, column 1 has \"54,5\","
                + " test,"
                        + " line 1, column 2 has \"60.5\"; expected one of the two throughout"),
                Arguments.of("time,state\n54,failed\n60,failed", "test, line 2, column time: \"54\" has no unit; expected one in the"
                + " heading,"
                        + " for example \"time [h]\""),
                Arguments.of("time [h]\n54\n3 d", "test, line 3, column time [h]: \"3 d\" is in d, test, line 1 in h; expected one unit in"
                + " a"
                        + " column"),
                Arguments.of("time [kg]\n54", "test, line 1, column time [kg]: \"kg\" is not a unit of a time; expected one of s, ms, min,"
                + " h, d,"
                        + " year"),
                Arguments.of("time [h]", "test, line 1: is a heading without rows; expected at least one unit on test below it"),
                Arguments.of("state,count\nfailed,1", "test, line 1: has no column of times in \"state, count\"; expected \"time [h]\", or"
                        + " \"from [h]\" and \"to [h]\", or bare times that begin with a number"),
                Arguments.of("time [h],temperture [°C]\n54,60", "test, line 1, column temperture [°C]: \"temperture\" is not a column; did"
                + " you"
                        + " mean \"temperature\"?"),
                Arguments.of("from [h],count\n54,60", "test, line 1: has only one of from and to; expected both"),
                Arguments.of("time [h],from [h]\n54,60", "test, line 1: has a time and from or to; expected either \"time\", or \"from\""
                + " and"
                        + " \"to\""),
                Arguments.of("time [h],time [d]\n54,60", "test, line 1, column time [d]: \"time [d]\" is the second column of the time;"
                + " expected"
                        + " one"),
                Arguments.of("time [h],state\n54,broken", "test, line 2, column state: \"broken\" is not a state; expected failed, survived"
                + " or"
                        + " suspended, F or S, 1 (failed) or 0"),
                Arguments.of("time [h],state\n54,faild", "test, line 2, column state: \"faild\" is not a state; did you mean \"failed\"?"),
                Arguments.of("time [h],state\n54,", "test, line 2, column state: the state is missing; expected failed, survived or"
                + " suspended, F"
                        + " or S, 1 (failed) or 0"),
                Arguments.of("time [h],state\n54+,failed", "test, line 2, column time [h]: \"54+\" is marked otherwise than its state"
                        + " \"failed\"; expected both alike"),
                Arguments.of("time [h],state\nNaN,failed", "test, line 2, column time [h]: \"NaN\" is not a number; expected a time in h"),
                Arguments.of("time [h],state\n,failed", "test, line 2, column time [h]: the time is missing; expected a time in h"),
                Arguments.of("time [h]\n1e999", "test, line 2, column time [h]: \"1e999 h\" has a number outside the range 1e-307 to"
                + " 1e308"),
                Arguments.of("time [h],state\n54,5,failed", "test, line 2: has 3 cells, its heading 2; expected as many (a decimal comma"
                + " cannot"
                        + " stand where commas part columns)"),
                Arguments.of("from [h],to [h]\n60,54", "test, line 2, column to [h]: \"54\" lies before from, \"60\"; expected it there or"
                        + " later"),
                Arguments.of("from [h],to [h]\n0,0", "test, line 2, column to [h]: \"0\" is the time of a failure; expected it above zero,"
                + " as no"
                        + " unit fails before it runs"),
                Arguments.of("from [h],to [h]\n-1,5", "test, line 2, column from [h]: \"-1\" is below zero; expected a time on test"),
                Arguments.of("from [h],to [h],count\n,,1", "test, line 2, column to [h]: from and to are both empty; expected at least one"
                + " of the"
                        + " two"),
                Arguments.of("from [h],to [h],state\n5,,failed", "test, line 2, column state: \"failed\" has no time to; expected the time"
                + " by"
                        + " which it had failed"),
                Arguments.of("from [h],to [h],state\n5,6,S", "test, line 2, column state: \"S\" has a time to \"6\"; expected none, as"
                + " nobody saw"
                        + " it fail"),
                Arguments.of("time [h],count\n54,0", "test, line 2, column count: \"0\" is not a count of units; expected a whole number"
                + " from 1"
                        + " to 1000000"),
                Arguments.of("time [h],count\n54,1.5", "test, line 2, column count: \"1.5\" is not a count of units; expected a whole"
                + " number from"
                        + " 1 to 1000000"),
                Arguments.of("time [h],temperature\n54,60", "test, line 2, column temperature: \"60\" has no unit; expected one in the"
                + " heading,"
                        + " for example \"temperature [°C]\""),
                Arguments.of("time [h],temperature [°C]\n54,", "test, line 2, column temperature [°C]: the temperature is missing; expected"
                + " a"
                        + " temperature in °C"),
                Arguments.of("time [h],temperature [°C]\n54,-300", "test, line 2, column temperature [°C]: \"-300\" is not above absolute"
                + " zero;"
                        + " expected the temperature that units ran at"),
                Arguments.of("time [h],speed [rpm]\n54,0", "test, line 2, column speed [rpm]: \"0\" is not above zero; expected the speed"
                + " that"
                        + " units ran at"),
                Arguments.of("unit,time [h],state\nA,54,F\nA,60,F", "test, line 3, column unit: \"A\" stands in line 2 already; expected"
                + " one row"
                        + " for each unit on test"),
                Arguments.of("unit,time [h],current [A]\nA,9,1\nA,9,2",
                "test, line 3, column time [h]: \"9\" stands twice for \"A\"; expected one"
                        + " reading at a time"),
                Arguments.of("unit,time [h],current [A]\n,9,1", "test, line 2, column unit: the unit is missing; expected its name"),
                Arguments.of("unit,time [h],current [A]\nA,0,1", "test: \"A\" was read at time 0 only; expected a later reading"),
                Arguments.of("unit,time [h],speed [rpm],level [dB]\nA,0,0,\nA,9,1,2",
                "test, line 2, column speed [rpm]: \"A\" does not run at"
                        + " time 0; expected a unit that begins to live, or none"),
                Arguments.of("unit,time [h],current [A],speed [rpm]\nA,9,0,5", "test, line 2, column current [A]: \"0\" is the current of a"
                        + " unit that runs; expected it above zero, or speed 0"),
                Arguments.of("time [h],state\n\"54,failed\n", "test, line 2: has a quotation mark that is never closed; expected another"
                + " one behind"
                        + " the text"),
                Arguments.of("time [h]\n\0", "test, line 2: has a NUL character; expected a life test as text"));
    }

    @ParameterizedTest
    @MethodSource("mistakes")
    void everyMistakeIsASentenceWithItsPlace(String text, String sentence) {
        assertEquals(List.of(sentence), wrong(text));
    }

    @Test
    void otherCommasTellThatOneIsOfDecimals() {
        assertEquals(hours(1.2, 2.45), read("1,200 2,45 h").pooled());
    }

    @Test
    void allMistakesAreCollected() {
        assertEquals(List.of("test, line 2, column time [h]: \"x\" is not a number; expected a time in h",
                "test, line 3, column state: \"?\" is not a state; expected failed, survived or suspended, F or S, 1 (failed) or 0",
                "test, line 4, column time [h]: \"-5\" is below zero; expected a time on test"),
                wrong("time [h],state\nx,F\n54,?\n-5,F\n60,S\n"));
        List<String> many = wrong("time [h]\n" + "x\n".repeat(300));
        assertEquals(101, many.size());
        assertEquals("test: has 200 more mistakes; these are not listed", many.getLast());
    }

    @Test
    void cautionsKeepTheTable() {
        LifeTable.Read read = LifeTable.read("test", "time [h],colour\n54,red\n0+,blue\n");
        assertEquals(hours(54), read.table().orElseThrow().pooled());
        assertEquals(List.of("test, line 1, column colour: \"colour\" is not read; columns that are read: time, from, to, unit, state,"
                + " count,"
                + " temperature, speed, current, level", "test, line 3, column time [h]: \"0+\" is the time of a survivor that never ran;"
                + " it tells"
                + " nothing and is left out"), read.problems().stream().map(Problem::sentence).toList());
    }

    @Test
    void nothingIsThrownForAnyText() {
        Random random = new Random(20261130);
        List<String> seeds = List.of("54 187 216 500+ 500+ h", "time [h],state\n54,failed\n187,F\n500,survived\n",
                "from [h];to [h];count\n;100;2\n100;200;3\n200;;14\n",
                "unit;time [h];speed [rpm];current [A]\nA;0;2750;0,12\nA;99;2700;0,125\n",
                "time [d],temperature [°C],speed [rpm]\n10,85,3000\n\"20\",60,3000\n30+,60,1500\n");
        String letters = "0123456789+-−.,;:\t\n\r\"#[](){}<>/\\ eEFSfshdµ°CKrpmNaNinfinity∞\0\uFEFF\uD800\u202E%$&'*=~ü漢";
        int readable = 0;
        for (int i = 0; i < 10_000; i++) {
            StringBuilder text = new StringBuilder(i % 5 == 0 ? "" : seeds.get(random.nextInt(seeds.size())));
            int changes = i % 5 == 0 ? random.nextInt(60) : 1 + random.nextInt(6);
            for (int j = 0; j < changes; j++) {
                int at = random.nextInt(text.length() + 1);
                switch (random.nextInt(4)) {
                    case 0 -> text.delete(at, Math.min(text.length(), at + 1 + random.nextInt(4)));
                    case 1 -> text.insert(at, text.substring(at, Math.min(text.length(), at + random.nextInt(9))));
                    default -> text.insert(at, letters.charAt(random.nextInt(letters.length())));
                }
            }
            LifeTable.Read read = LifeTable.read("test", text.toString());
            boolean mistakes = read.problems().stream().anyMatch(Problem::isError);
            assertEquals(read.table().isEmpty(), mistakes, text::toString);
            read.problems().forEach(problem -> assertFalse(problem.sentence().isBlank()));
            read.table().ifPresent(table -> assertFalse(table.judged(FailureCriteria.DEFAULT).isEmpty()));
            readable += mistakes ? 0 : 1;
        }
        assertTrue(readable > 500 && readable < 9500, "of 10000 texts " + readable + " were read");
    }
}
