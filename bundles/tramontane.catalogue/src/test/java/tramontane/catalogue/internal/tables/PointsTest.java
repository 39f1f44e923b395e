package tramontane.catalogue.internal.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.analysis.Importer;
import tramontane.analysis.Importer.Imported;
import tramontane.catalogue.PartTable;
import tramontane.model.AirMover;
import tramontane.model.MoverCurve;
import tramontane.model.Problem;
import tramontane.model.Value;

/** Points as they are pasted. */
class PointsTest {

    private static final String FLOWS = "m³/s, m³/h, l/s, l/min, cfm";

    static Stream<Arguments> understood() {
        return Stream.of(
                Arguments.of("0 50\n30 30\n60 0", "0 30 60 m³/h", "50 30 0 Pa", ""),
                Arguments.of("  0   50 \n\n# a remark\n60\t0\r\n", "0 60 m³/h", "50 0 Pa", ""),
                Arguments.of("0\t50\r\n60\t0\r\n", "0 60 m³/h", "50 0 Pa", ""),
                Arguments.of("0,50\n60,0.5", "0 60 m³/h", "50 0.5 Pa", ""),
                Arguments.of("0, 50\n60, 0.5", "0 60 m³/h", "50 0.5 Pa", ""),
                Arguments.of("0;50;1\n60;0,5;2", "0 60 m³/h", "50 0.5 Pa", "1 2 W"),
                Arguments.of("0,0 50,5 1,0\n30,5 30 2", "0.0 30.5 m³/h", "50.5 30 Pa", "1.0 2 W"),
                Arguments.of("0\u00a050\n60\u00a00", "0 60 m³/h", "50 0 Pa", ""),
                Arguments.of("0 m³/h; 50 Pa\n60 m³/h; 0 Pa", "0 60 m³/h", "50 0 Pa", ""),
                Arguments.of("Flow [m³/h]\tPressure [Pa]\tPower [mW]\n0\t50\t1\n60\t0\t2", "0 60 m³/h", "50 0 Pa", "1 2 mW"),
                Arguments.of("flow pressure\n0 50\n60 0", "0 60 m³/h", "50 0 Pa", ""),
                Arguments.of("volume flow m³/h static pressure Pa\n0 0.5\n60 0", "0 60 m³/h", "0.5 0 Pa", ""),
                Arguments.of("pressure (Pa); flow (m³/h)\n50; 0\n0; 60,5", "0 60.5 m³/h", "50 0 Pa", ""),
                Arguments.of("m³/h Pa\n0 0.5\n60 0", "0 60 m³/h", "0.5 0 Pa", ""));
    }

    @ParameterizedTest
    @MethodSource
    void understood(String text, String flow, String pressure, String power) {
        PartTable.Pasted pasted = PartTable.curve(text, "m³/h", "Pa", "");
        assertEquals(List.of(), pasted.problems());
        MoverCurve curve = pasted.curve().orElseThrow();
        assertEquals(new Value.Text(flow), curve.flow().written());
        assertEquals(new Value.Text(pressure), curve.pressure().written());
        assertEquals(power.isEmpty() ? Optional.empty() : Optional.of(new Value.Text(power)), curve.power().map(each -> each.written()));
    }

    @Test
    void aHeadingHasUnitsOfItsOwn() {
        MoverCurve curve = PartTable.curve("cfm mm H2O\n0 0.5\n60 0", "", "", "").curve().orElseThrow();
        assertEquals(new Value.Text("0 60 cfm"), curve.flow().written());
        // 60 ft³/min and 0.5 mm of water in SI: 1 ft³ = 0.028316846592 m³, 1 mmH2O = 9.80665 Pa (NIST SP 811, B.8)
        assertEquals(0.028316846592, curve.flow().si().get(1), 1e-15);
        assertEquals(0.5 * 9.80665, curve.pressure().si().getFirst(), 1e-14);
    }

    static Stream<Arguments> refused() {
        return Stream.of(
                Arguments.of("0,5,50,5\n3,4,5", List.of("points, line 1: \"0,5,50,5\" has 4 numbers; expected two or three: flow, pressure and perhaps power")),
                Arguments.of("0\n3", List.of("points, line 1: \"0\" has 1 number; expected two or three: flow, pressure and perhaps power",
                        "points, line 2: \"3\" has 1 number; expected two or three: flow, pressure and perhaps power")),
                Arguments.of("0 50\n60 0 3", List.of("points, line 2: \"60 0 3\" has 3 numbers; expected 2, as in other lines")),
                Arguments.of("0 50\n60 1\n50 0", List.of("points, line 3, flow: \"50 m³/h\" is not above the flow before it, 60 m³/h; expected each flow "
                        + "larger than the one before, or all of them falling")),
                Arguments.of("0 50\n60 1\n60 0", List.of("points, line 3, flow: \"60 m³/h\" repeats the flow before it; expected each flow "
                        + "larger than the one before, or all of them falling")),
                Arguments.of("0 50\n6o 0\n70 x", List.of("points, line 2, flow: \"6o\" is not a flow; expected a number with one of " + FLOWS,
                        "points, line 3, pressure: \"x\" is not a number; expected a pressure in Pa, or several with spaces between")),
                Arguments.of("0,5 50\n60 0.5", List.of("points, line 1, flow: \"0,5\" has a decimal comma; expected one decimal mark throughout, "
                        + "as \"0.5\" in line 2 has a point")),
                Arguments.of("0 50\n1.234,5 0", List.of("points, line 2, flow: \"1.234,5\" has thousands separators; expected the number without "
                        + "them, such as 1234.5")),
                Arguments.of("\n \n", List.of("points: is empty; expected a flow and a pressure in each line")),
                Arguments.of("flow pressure", List.of("points: has a heading and no points; expected a flow and a pressure in each line")),
                Arguments.of("0 50", List.of("points, line 1, flow: \"0 m³/h\" is the only point of its curve; expected at least two")),
                Arguments.of("flow [cfm] pressure [Pa]\n0 50\n60 0",
                        List.of("settings, flowUnit: is m³/h, but the heading says cfm; expected one of the two only")),
                Arguments.of("flow [m³] pressure [Pa]\n0 50\n60 0",
                        List.of("points, line 1, flow: the unit \"m³\" is not one of a flow; expected one of " + FLOWS)),
                Arguments.of("0 50\n" + "1 ".repeat(600) + "2", List.of("points, line 2: has 1201 characters; expected two or three numbers")),
                Arguments.of("-1 50\n60 0", List.of("points, flow: number 1, -1, is out of range; expected each flow of at least 0")));
    }

    @ParameterizedTest
    @MethodSource
    void refused(String text, List<String> sentences) {
        PartTable.Pasted pasted = PartTable.curve(text, "m³/h", "Pa", "");
        assertEquals(sentences, pasted.problems().stream().filter(Problem::isError).map(Problem::sentence).toList());
        assertEquals(Optional.empty(), pasted.curve());
    }

    @Test
    void aMissingUnitIsSaidOnce() {
        assertEquals(List.of("points, line 1, flow: \"0\" has no unit; expected one of " + FLOWS + ", behind the number, in the heading or in the settings"),
                PartTable.curve("0 50\n60 0", "", "Pa", "").problems().stream().map(Problem::sentence).toList());
    }

    @Test
    void fallingFlowsAreTurnedRound() {
        PartTable.Pasted pasted = PartTable.curve("60 0\n30 5\n0 50", "m³/h", "Pa", "");
        assertEquals(new Value.Text("0 30 60 m³/h"), pasted.curve().orElseThrow().flow().written());
        assertEquals(new Value.Text("50 5 0 Pa"), pasted.curve().orElseThrow().pressure().written());
        assertEquals(List.of("points, line 1, flow: the flows fall from 60 m³/h to 0 m³/h; the curve was turned round"),
                pasted.problems().stream().map(Problem::sentence).toList());
    }

    @Test
    void theImporterGivesOnePart() {
        Importer importer = new PastedPoints();
        Imported read = importer.read("blower.txt", "0 50\n60 0\n".getBytes(StandardCharsets.UTF_8), Tables.settings(importer.settings(),
                "{\"part\": \"A-7\", \"maker\": \"Nordwind\", \"speed\": \"2400 rpm\", \"flowUnit\": \"m³/h\", \"pressureUnit\": \"Pa\"}"));
        assertEquals(List.of(), Tables.sentences(read));
        AirMover part = read.movers().getFirst();
        assertEquals("A-7", part.id());
        assertEquals("Nordwind", part.maker());
        assertEquals(new Value.Text("2400 rpm"), part.curves().getFirst().speed().orElseThrow().written());
        assertEquals(List.of("ERROR blower.txt, line 2: has a NUL character; expected a table as text, in UTF-8 or windows-1252"),
                Tables.sentences(importer.read("blower.txt", "0 50\n6\0 0\n".getBytes(StandardCharsets.UTF_8), Tables.settings(importer.settings(), "{\"part\": \"A\"}"))));
    }
}
