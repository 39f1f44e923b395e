package tramontane.catalogue.internal.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.analysis.Importer.Imported;

/** What is said of tables that are not as they should be: where, what, and what was expected. */
class TableMessagesTest {

    private static final String HEAD = "id,width [mm],curves.flow [m³/h],curves.pressure [Pa]\n";
    private static final String LENGTHS = "m, mm, cm, µm, km, in, ft";
    private static final String FLOWS = "m³/s, m³/h, l/s, l/min, cfm";

    static Stream<Arguments> refused() {
        return Stream.of(
                table("bad numbers, and no word of what follows from them", HEAD + "A,abc,0 30 60,50 30 0\nB,,0 x 3,1 2 3\n",
                        "line 2, column \"width [mm]\": \"abc\" is not a number; expected a length in mm",
                        "line 3, column \"curves.flow [m³/h]\": \"0 x 3\" is not a flow; expected a number with one of " + FLOWS),
                table("another unit in a cell", HEAD + "A,92 Pa,0 30,50 0\n",
                        "line 2, column \"width [mm]\": \"92 Pa\" is not a length; expected a number with one of " + LENGTHS),
                table("another unit in a heading", "id,width [Pa]\nA,92\nB,80\n",
                        "line 1, column \"width [Pa]\": the unit \"Pa\" is not one of a length; expected one of " + LENGTHS),
                table("a unit of a text", "id,maker [mm]\nA,x\n",
                        "line 1, column \"maker [mm]\": the unit \"mm\" has no meaning here: maker is no number with a unit; expected none"),
                table("no unit", "id,width\nA,92\n",
                        "line 2, column \"width\": \"92\" has no unit; expected one of " + LENGTHS
                                + ", behind the number, in the heading or in the settings"),
                table("no unit in a whole column", "id,width\nA,92\nB,80 mm\nC,60\nD,40\n",
                        "line 2, column \"width\": \"92\" and 2 more below have no unit; expected one of " + LENGTHS
                                + ", behind the number, in the heading or in the settings"),
                table("missing id", HEAD + "A,92,0 30,50 0\n,92,0 30,50 0\n", "line 3, column \"id\": is empty; expected the part number"),
                table("no column for the id", "width [mm]\n92\n", "line 1: no column is the part number; expected one with the heading id, "
                        + "or \"columns\" in the settings that name it"),
                table("ragged rows; empty cells at the end are none", HEAD + "A,92,0 30 60\nB,92,0 30 60,1 2 3,,\nC,92,0 1,1 0,x\n",
                        "line 2: has 3 cells; expected 4, as many as headings",
                        "line 4: has 5 cells; expected 4, as many as headings (a comma within a cell, as in a number, needs quotation marks "
                                + "around the cell)"),
                table("duplicate column", "id,width [mm],frame width [in]\nA,92,3\n",
                        "line 1, column \"frame width [in]\": is width, and so is column \"width [mm]\"; expected one column for each field"),
                table("empty file", "", ": is empty; expected a line of headings and a row for each part"),
                table("blank file", "\n\n  \n", ": is empty; expected a line of headings and a row for each part"),
                table("only a header", HEAD, ": has headings and no rows; expected a row for each part"),
                table("NUL", HEAD + "A,9\0,1,2\n", "line 2: has a NUL character; expected a table as text, in UTF-8 or windows-1252"),
                table("a workbook", "PK\u0003\u0004abc", ": is a workbook or an archive; expected a table as text: save it as CSV first"),
                table("unclosed quote", HEAD + "A,92,\"0 30,5\nB,1,2\n",
                        "line 2: has a quotation mark that is never closed; expected another one behind the text"),
                table("unclosed quote, further down", HEAD + "A,92,0 30,\"5\n0\"\n\nB,1,\"2\n",
                        "line 5: has a quotation mark that is never closed; expected another one behind the text"),
                table("something behind a quote", HEAD + "A,92,\"0 30\"x,5\n", "line 2: has something behind a closing quotation mark; "
                        + "expected the next cell there, and quotation marks within a text doubled"),
                table("decimal comma between commas", HEAD + "A,92,5,0 30 60,50 30 0\n",
                        "line 2: has 5 cells; expected 4, as many as headings (a comma within a cell, as in a number, needs quotation marks "
                                + "around the cell)"),
                table("decimal comma in quotes between commas", HEAD + "A,\"92,5\",0 30 60,50 30 0\n",
                        "line 2, column \"width [mm]\": \"92,5\" has a decimal comma; expected a decimal point, as commas stand between "
                                + "the cells of this table; or \"decimal\" in the settings"),
                table("thousands separators with a decimal comma", "id;width [mm];ratedSpeed [rpm]\nA;92,5;1.234,5\nB;92,5;1.234.567\n",
                        "line 2, column \"ratedSpeed [rpm]\": \"1.234,5\" has thousands separators; expected the number without them, such as 1234,5",
                        "line 3, column \"ratedSpeed [rpm]\": \"1.234.567\" has thousands separators; expected the number without them, such as 1234567"),
                table("thousands separators of other kinds", "id,ratedSpeed [rpm],mass [g]\nA,\"1,234.5\",1 234\nB,1'234,12\n",
                        "line 2, column \"ratedSpeed [rpm]\": \"1,234.5\" has thousands separators; expected the number without them, such as 1234.5",
                        "line 2, column \"mass [g]\": \"1 234\" has more than one number; expected one, without thousands separators",
                        "line 3, column \"ratedSpeed [rpm]\": \"1'234\" has thousands separators; expected the number without them, such as 1234"),
                table("what may be thousands", "id;ratedSpeed [rpm]\nA;1,234\n",
                        "line 2, column \"ratedSpeed [rpm]\": \"1,234\" may mean 1234 or 1.234; expected it without a thousands separator, "
                                + "or \"decimal\" in the settings to be comma, if that is what it is"),
                table("both decimal marks", "id;width [mm];height [mm]\nA;92,5;92.5\n",
                        "line 2, column \"width [mm]\": \"92,5\" has a decimal comma; expected one decimal mark throughout, as \"92.5\" in line 2 has a point"),
                table("out of range", HEAD + "A,-92,0 30 60,50 30 0\n", "line 2, column \"width [mm]\": \"-92 mm\" is out of range; "
                        + "expected a length above 0, as a number in m or a text with its unit"),
                table("one point", HEAD + "A,92,0,50\n",
                        "line 2, column \"curves.flow [m³/h]\": \"0 m³/h\" is the only point of its curve; expected at least two"),
                table("flows up and down", HEAD + "A,92,0,50\nA,,30,40\nA,,20,30\n",
                        "line 4, column \"curves.flow [m³/h]\": \"20 m³/h\" is not above the flow before it, 30 m³/h; expected each flow "
                                + "larger than the one before, or all of them falling"),
                table("a flow twice", HEAD + "A,92,0 30 30,50 20 10\n", "line 2, column \"curves.flow [m³/h]\": \"30 m³/h\" repeats the "
                        + "flow before it; expected each flow larger than the one before, or all of them falling"),
                table("fewer pressures than flows", HEAD + "A,92,0 30 60,50 30\n",
                        "line 2, column \"curves.pressure [Pa]\": has 2 numbers; expected 3, as many as flows in the row"),
                table("no pressure", HEAD + "A,92,0 30 60,\n", "line 2, column \"curves.flow [m³/h]\": is \"0 30 60 m³/h\", a flow without "
                        + "a pressure; expected both in the row"),
                table("power at some points only", "id,flow [cfm],pressure [Pa],power [W]\nA,0,5,1\nA,3,2,\nA,5,0,2\n",
                        "line 3, power: is empty; expected a power at every point of the curve, as in line 2, or at none"),
                table("rows of a part that differ", HEAD + "A,92,0,50\nA,120,30,40\n",
                        "line 3, column \"width [mm]\": \"120 mm\" is not \"92 mm\", as in line 2; expected the same in all rows of part \"A\""),
                table("no such word", HEAD.replace("width [mm]", "bearing") + "A,bal,0 30,50 0\n",
                        "line 2, column \"bearing\": is \"bal\"; expected one of \"sleeve\", \"ball\", \"fluid-film\", "
                                + "\"magnetically supported sleeve\" (did you mean \"ball\"?)"),
                table("temperatures that do not fit", HEAD.replace("width [mm]", "highest temperature [°C],lowestTemperature [°C]")
                        + "A,-10,70,0 30,50 0\n", "line 2, column \"highest temperature [°C]\": is not above the lowest temperature"),
                table("fields of a section", HEAD.replace("width [mm]", "winding.wires,winding.sealed,winding.supply.current")
                        + "A,40,perhaps,XC,0 30,50 0\nB,2.5,,ac,0 30,50 0\n",
                        "line 2, column \"winding.sealed\": \"perhaps\" is neither yes nor no; expected true or false",
                        "line 2, column \"winding.wires\": is 40; expected a whole number from 2 to 12",
                        "line 2, column \"winding.supply.current\": is \"XC\"; expected one of \"AC\", \"DC\"",
                        "line 3, column \"winding.wires\": \"2.5\" is not a whole number; expected one, such as 12"),
                table("an object and its part", HEAD.replace("width [mm]", "winding.supply,winding.supply.voltage") + "A,{},24 V,0 30,50 0\n",
                        "line 2, column \"winding.supply.voltage\": another column stands for the whole or a part of "
                                + "sections.winding.supply.voltage; expected one of the two only"));
    }

    static Stream<Arguments> taken() {
        return Stream.of(
                table("falling flows", HEAD + "A,92,60,0\nA,,30,30\nA,,0,50\n",
                        "line 2, column \"curves.flow [m³/h]\": the flows fall from 60 m³/h to 0 m³/h; the curve was turned round"),
                table("unknown columns", HEAD.replace("width", "widht").replace("\n", ",colour,curves\n") + "A,92,0 30,50 0,red,1\n",
                        "line 1, column \"widht [mm]\": is no field of an air mover that anything loaded here knows (did you mean width?); "
                                + "the column is not read",
                        "line 1, column \"colour\": is no field of an air mover that anything loaded here knows; the column is not read",
                        "line 1, column \"curves\": is a list of curves; expected what a curve has, such as curves.flow; the column is not read"),
                table("a name of several fields", HEAD.replace("width [mm]", "remark") + "A,x,0 30,50 0\n",
                        "line 1, column \"remark\": may mean sections.winding.remark or sections.winding.steps.remark; expected one of these; "
                                + "the column is not read"),
                table("a column without heading", HEAD.replace("width [mm]", "") + "A,x,0 30,50 0\n",
                        "line 1: column 2 has no heading; it is not read, though line 2 has something there"),
                table("parts without curves", "id,width [mm]\nA,92\nB,92\nC,92\nD,92\nE,92\n",
                        ": 5 parts have no curve: \"A\", \"B\", \"C\" and 2 more; they are kept, but cannot be judged"),
                table("sections that lack something", HEAD.replace("width [mm]", "winding.supply.voltage [V],winding.odd") + "A,24,1,0 30,50 0\n",
                        ": part \"A\": sections.winding.supply.current is missing; expected one of \"AC\", \"DC\"",
                        "line 2, column \"winding.odd\": is not a field of a winding that anything loaded here knows; it is kept, but not used"));
    }

    private static Arguments table(String what, String table, String... sentences) {
        return Arguments.of(what, table, Stream.of(sentences).map(sentence -> "parts.csv" + (sentence.startsWith(":") ? "" : ", ")
                + sentence).toList());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource
    void refused(String what, String table, List<String> sentences) {
        Imported read = Tables.read(table);
        assertEquals(sentences.stream().map(sentence -> "ERROR " + sentence).toList(),
                Tables.sentences(read).stream().filter(sentence -> sentence.startsWith("ERROR") || !sentence.contains("no curve")).toList());
        assertEquals(List.of(), read.movers());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource
    void taken(String what, String table, List<String> sentences) {
        Imported read = Tables.read(table);
        assertEquals(sentences.stream().map(sentence -> "CAUTION " + sentence).toList(), Tables.sentences(read));
        assertEquals("A", read.movers().getFirst().id());
    }

    static Stream<Arguments> settings() {
        return Stream.of(
                Arguments.of("{\"columns\": [{\"column\": \"Breite\", \"field\": \"widht\", \"unit\": \"mm\"}]}",
                        "settings, columns[0].field: \"widht\" is no field of an air mover that anything loaded here knows (did you mean width?); "
                                + "expected one, such as width or curves.flow"),
                Arguments.of("{\"columns\": [{\"column\": \"Breite\", \"field\": \"width\", \"unit\": \"Pa\"}]}",
                        "settings, columns[0].unit: the unit \"Pa\" is not one of a length; expected one of " + LENGTHS),
                Arguments.of("{\"columns\": [{\"column\": \"Breite\"}, {\"column\": \"breite\", \"field\": \"width\"}]}",
                        "settings, columns[1].column: \"breite\" stands there twice; expected each column once"),
                Arguments.of("{\"columns\": [{\"column\": \"Breite\"}], \"constants\": [{\"field\": \"curves.speed\", \"value\": \"2400\"}]}",
                        "settings, constants[0].value: \"2400\" has no unit; expected one of rpm, 1/min, rad/s, behind the number, "
                                + "in the heading or in the settings"),
                Arguments.of("{\"columns\": [{\"column\": \"Breite\"}], \"constants\": [{\"field\": \"id\", \"value\": \"X\"}]}",
                        "settings, constants[0].field: is the part number, which no two parts share; expected another field"),
                Arguments.of("{\"encoding\": \"UTF-8\", \"skip\": 5}",
                        "parts.csv: has no lines behind the first 5; expected a line of headings and a row for each part"));
    }

    @ParameterizedTest
    @MethodSource("settings")
    void settingsThatAreWrongAreNamed(String settings, String sentence) {
        Imported read = Tables.read("id,Breite\nA,92\n", settings);
        assertEquals(List.of("ERROR " + sentence), Tables.sentences(read).stream().filter(each -> each.startsWith("ERROR")).toList());
        assertEquals(List.of(), read.movers());
    }
}
