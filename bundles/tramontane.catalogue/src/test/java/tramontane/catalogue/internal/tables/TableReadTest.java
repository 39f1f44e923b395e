package tramontane.catalogue.internal.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.analysis.Importer;
import tramontane.analysis.Importer.Imported;
import tramontane.catalogue.PartTable;
import tramontane.model.AirMover;
import tramontane.model.MoverCurve;
import tramontane.model.Problem;
import tramontane.model.Value;

/** Tables that are as they should be. */
class TableReadTest {

    private static AirMover only(Imported read) {
        assertEquals(List.of(), Tables.sentences(read));
        assertEquals(1, read.movers().size());
        return read.movers().getFirst();
    }

    private static Value text(String text) {
        return new Value.Text(text);
    }

    @Test
    void aRowIsAPartWithItsQuantitiesAsWritten() {
        AirMover part = only(Tables.read("id,maker,width [mm],curves.flow,curves.pressure [Pa]\n\"A-1\",\"Quell & Söhne, \"\"Wind\"\"\",92.50,"
                + "0 30 60 m³/h,50 30 0\n"));
        assertEquals("A-1", part.id());
        assertEquals("Quell & Söhne, \"Wind\"", part.maker());
        assertEquals(text("92.50 mm"), part.width().orElseThrow().written());
        assertEquals(0.0925, part.width().orElseThrow().si(), 1e-17);
        assertEquals(text("0 30 60 m³/h"), part.curves().getFirst().flow().written());
        assertEquals(List.of(50.0, 30.0, 0.0), part.curves().getFirst().pressure().si());
    }

    @Test
    void theImporterKnowsTheSectionsThatAreLoaded() {
        Importer importer = new PartRows(Tables.SECTIONS);
        AirMover part = only(importer.read("t.csv", "id,winding.wires,flow,pressure [Pa]\nA,4,0; 30; 60 m³/h,50 30 0\n".getBytes(StandardCharsets.UTF_8),
                Tables.settings(importer.settings(), "{}")));
        assertEquals(new Value.Num("4"), part.section("winding").map(Value.Tree.class::cast).flatMap(winding -> winding.get("wires")).orElseThrow());
        assertEquals(text("0 30 60 m³/h"), part.curves().getFirst().flow().written());
    }

    @Test
    void aRowMayBeAPoint() {
        Imported read = Tables.read("id,width [mm],curves.flow [m³/h],curves.pressure [Pa],curves.power [W]\nA,92,0,50,1\nB,80,0 9,8 0,\nA,,30,30,2\n"
                + "A,,60 90,10 0,3 4\n");
        assertEquals(List.of(), Tables.sentences(read));
        assertEquals(List.of("A", "B"), read.movers().stream().map(AirMover::id).toList());
        MoverCurve curve = read.movers().getFirst().curves().getFirst();
        assertEquals(text("0 30 60 90 m³/h"), curve.flow().written());
        assertEquals(text("50 30 10 0 Pa"), curve.pressure().written());
        assertEquals(text("1 2 3 4 W"), curve.power().orElseThrow().written());
        assertEquals(text("0 9 m³/h"), read.movers().getLast().curves().getFirst().flow().written());
    }

    @Test
    void anotherSpeedBeginsAnotherCurve() {
        AirMover part = only(Tables.read("id,speed [rpm],flow [m³/h],static pressure [Pa]\nA,2400,0,50\nA,3000,0,70\nA,,80,0\nA,2400,60,0\n"));
        assertEquals(List.of(text("2400 rpm"), text("3000 rpm")), part.curves().stream().map(curve -> curve.speed().orElseThrow().written()).toList());
        assertEquals(List.of(text("0 60 m³/h"), text("0 80 m³/h")), part.curves().stream().map(curve -> curve.flow().written()).toList());
    }

    @Test
    void aUnitInACellCountsMoreThanThatOfTheHeading() {
        AirMover part = only(Tables.read("id,width [mm],height [mm],flow [m³/h],pressure [Pa]\nA,3.6 in,92mm,0 20 cfm,50 0\n"));
        assertEquals(text("3.6 in"), part.width().orElseThrow().written());
        assertEquals(text("92mm"), part.height().orElseThrow().written());
        assertEquals(text("0 20 cfm"), part.curves().getFirst().flow().written());
    }

    @Test
    void pointsInSeveralUnitsAreAList() {
        AirMover part = only(Tables.read("id,flow,pressure [Pa]\nA,0 m³/h,50\nA,20 cfm,0\n"));
        assertEquals(new Value.Items(List.of(text("0 m³/h"), text("20 cfm"))), part.curves().getFirst().flow().written());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "width [mm]|width", "WIDTH (mm)|width", "frame width [mm]|width", "Frame_Width (mm)|width", "rotor-diameter [mm]|rotorDiameter",
        "curves.rotorDiameter [mm]|curves[0].rotorDiameter", "curves[0].rotor diameter [mm]|curves[0].rotorDiameter"})
    void aHeadingIsAFieldOrItsLabel(String heading, String place) {
        AirMover part = only(Tables.read("part," + heading + ",flow [m³/h],pressure [Pa]\nA,92,0 60,50 0\n"));
        Value.Tree holder = place.startsWith("curves") ? (Value.Tree) ((Value.Items) part.tree().get("curves").orElseThrow()).values().getFirst()
                : part.tree();
        assertEquals(text("92 mm"), holder.get(place.replace("curves[0].", "")).orElseThrow());
    }

    @Test
    void fieldsOfSectionsAreColumns() {
        AirMover part = only(Tables.read("id,winding.supply.current,Winding.Supply.rated voltage [V],sections.winding.wires,winding.sealed,"
                + "winding.supply.frequency,winding.steps.share [%],winding.steps[1].share,sections.other.deep.text,flow [m³/h],pressure [Pa]\n"
                + "A,dc,24,4,yes,50 60 Hz,10,0.2,'=x,0 60,50 0\n"));
        Value.Tree winding = part.more().tree("sections").orElseThrow().tree("winding").orElseThrow();
        assertEquals(Value.Tree.EMPTY.with("current", text("DC")).with("voltage", text("24 V")).with("frequency", text("50 60 Hz")),
                winding.tree("supply").orElseThrow());
        assertEquals(new Value.Num("4"), winding.get("wires").orElseThrow());
        assertEquals(new Value.Flag(true), winding.get("sealed").orElseThrow());
        assertEquals(new Value.Items(List.of(Value.Tree.EMPTY.with("share", text("10 %")), Value.Tree.EMPTY.with("share", new Value.Num("0.2")))),
                winding.get("steps").orElseThrow());
        assertEquals("=x", part.more().tree("sections").orElseThrow().tree("other").orElseThrow().tree("deep").orElseThrow().text("text").orElseThrow());
    }

    @Test
    void aMappingSaysWhatHeadingsDoNot() {
        AirMover part = only(Tables.read("Katalog 2031\n\nTeil;Breite;Q [l/s];p;Farbe;\nÄ1;92,5;0 30,5;0,5 0;rot;\n", """
                {"skip": 2, "columns": [
                    {"column": "Teil", "field": "id"},
                    {"column": "breite", "field": "width", "unit": "mm"},
                    {"column": "Q", "field": "curves.flow", "unit": "m³/h"},
                    {"column": "p", "field": "pressure", "unit": "mbar"},
                    {"column": "Farbe"}],
                 "constants": [{"field": "curves.speed", "value": "2400 rpm"}, {"field": "maker", "value": "Nordwind"}]}"""));
        assertEquals("Ä1", part.id());
        assertEquals("Nordwind", part.maker());
        assertEquals(text("92.5 mm"), part.width().orElseThrow().written());
        MoverCurve curve = part.curves().getFirst();
        assertEquals(text("2400 rpm"), curve.speed().orElseThrow().written());
        assertEquals(text("0 30.5 m³/h"), curve.flow().written());
        assertEquals(text("0.5 0 mbar"), curve.pressure().written());
    }

    @Test
    void aMappingIsKeptInAFile() {
        List<Problem> problems = new ArrayList<>();
        var mapping = PartTable.mapping("lab.mapping.json", "{\"columns\": [{\"column\": \"B\", \"field\": \"width\", \"unit\": \"mm\"}]}"
                .getBytes(StandardCharsets.UTF_8), problems);
        assertEquals(List.of(), problems);
        Imported read = PartTable.read("t.csv", "id,B,flow [m³/h],pressure [Pa]\nA,92,0 1,1 0\n".getBytes(StandardCharsets.UTF_8), mapping, List.of());
        assertEquals(text("92 mm"), only(read).width().orElseThrow().written());
        PartTable.mapping("lab.mapping.json", "{\"columns\": [{\"field\": \"width\"}], \"decimal\": \"dot\"}".getBytes(StandardCharsets.UTF_8), problems);
        assertEquals(List.of("lab.mapping.json, decimal: is \"dot\"; expected one of \"auto\", \"point\", \"comma\"",
                "lab.mapping.json, columns[0].column: is missing; expected a text"), problems.stream().map(Problem::sentence).toList());
        problems.clear();
        PartTable.mapping("lab.mapping.json", "[]".getBytes(StandardCharsets.UTF_8), problems);
        assertTrue(problems.getFirst().sentence().startsWith("lab.mapping.json"), problems::toString);
    }

    @ParameterizedTest
    @ValueSource(strings = {",", ";", "\t"})
    void theSeparatorIsFound(String separator) {
        String table = "id,width [mm],flow [m³/h],pressure [Pa]\n\"A;,\",92,0 60,50 0\n".replace(",", separator).replace("A;" + separator, "A;,");
        assertEquals("A;,", only(Tables.read(table)).id());
    }

    @Test
    void aSetSeparatorCountsMoreThanAFoundOne() {
        assertEquals("A", only(Tables.read("id;\"a,b,c\";flow [m³/h];pressure [Pa]\nA;1;0 60;50 0\n",
                "{\"delimiter\": \"semicolon\", \"columns\": [{\"column\": \"a,b,c\"}]}")).id());
    }

    @Test
    void lettersAreReadInTheirEncoding() {
        String table = "id,flow [m³/h],pressure [Pa]\r\nLüfter 92 µ,0 60,50 0\r\n";
        var automatic = PartTable.automatic();
        Imported utf = PartTable.read("t.csv", table.getBytes(StandardCharsets.UTF_8), automatic, List.of());
        assertEquals("Lüfter 92 µ", only(utf).id());
        assertEquals(utf, PartTable.read("t.csv", ("\uFEFF" + table).getBytes(StandardCharsets.UTF_8), automatic, List.of()));
        assertEquals(utf, PartTable.read("t.csv", table.getBytes(StandardCharsets.UTF_16), automatic, List.of()));
        Imported windows = PartTable.read("t.csv", table.getBytes(Charset.forName("windows-1252")), automatic, List.of());
        assertEquals(utf.movers(), windows.movers());
        assertEquals(List.of("CAUTION t.csv: is not UTF-8; read as windows-1252, so look at letters with accents and at units"), Tables.sentences(windows));
        Imported set = PartTable.read("t.csv", table.getBytes(Charset.forName("windows-1252")),
                Tables.settings(PartTable.MAPPING, "{\"encoding\": \"UTF-8\"}"), List.of());
        assertEquals(List.of("ERROR t.csv: is not UTF-8, as the settings say; expected it, or \"encoding\" windows-1252"), Tables.sentences(set));
    }

    @Test
    void decimalCommasAreFoundOrSet() {
        assertEquals(text("92.5 mm"), only(Tables.read("id;width [mm];flow [m³/h];pressure [Pa]\nA;92,5;0 60;50 0\n")).width().orElseThrow().written());
        assertEquals(text("1.234 rpm"), only(Tables.read("id;ratedSpeed [rpm];flow [m³/h];pressure [Pa]\nA;1,234;0 60;50 0\n", "{\"decimal\": \"comma\"}"))
                .ratedSpeed().orElseThrow().written());
        assertEquals(text("92.5 mm"), only(Tables.read("id,width [mm],flow [m³/h],pressure [Pa]\nA,\"92,5\",0 60,50 0\n", "{\"decimal\": \"comma\"}"))
                .width().orElseThrow().written());
    }

    @Test
    void problemsEndSomewhere() {
        StringBuilder table = new StringBuilder("id,width [mm]\n");
        IntStream.range(0, 1000).forEach(i -> table.append("P").append(i).append(",x\n"));
        Imported read = Tables.read(table.toString());
        assertEquals(201, read.problems().size());
        assertEquals("and 800 more problems, which are not listed", read.problems().getLast().sentence());
    }

    @Test
    void aSectionTypeThatFailsHarmsNobody() {
        assertEquals("A", only(PartTable.read("t.csv", "id,flow [m³/h],pressure [Pa]\nA,0 60,50 0\n".getBytes(StandardCharsets.UTF_8),
                PartTable.automatic(), List.of(new Failing()))).id());
    }

    private static final class Failing implements tramontane.analysis.SectionType<String> {
        @Override
        public tramontane.model.Form form() {
            throw new IllegalStateException("broken");
        }

        @Override
        public java.util.Set<Owner> owners() {
            return java.util.Set.of(Owner.MOVER);
        }

        @Override
        public String decode(tramontane.model.Values values) {
            return "";
        }

        @Override
        public Value.Tree encode(String section) {
            return Value.Tree.EMPTY;
        }
    }
}
