package tramontane.desktop.internal.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.analysis.Severity;
import tramontane.desktop.internal.pages.Row.Editor;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.model.Range;
import tramontane.model.Shape;
import tramontane.model.Value;
import tramontane.model.edit.FieldPath;
import tramontane.model.edit.Subject;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

class SheetsTest {

    private static final Design BOX = Scenes.design(Scenes.BOX);

    private static Sheet page(Subject subject, UnitSystem units, Problem... problems) {
        return Sheets.of(Scenes.scene(BOX, units, problems), Scenes.KNOWN, subject).orElseThrow();
    }

    private static Row row(Sheet page, Object... path) {
        FieldPath at = FieldPath.of(path);
        return page.rows().stream().filter(row -> row.path().equals(at)).findFirst().orElseThrow();
    }

    private static Design typed(Sheet page, Row row, String text) {
        return assertInstanceOf(Sheets.Changed.class, Sheets.typed(BOX, Scenes.KNOWN, page.subject(), row, text, UnitSystem.METRIC)).edit()
                .design().orElseThrow();
    }

    private static String wrong(Sheet page, Row row, String text) {
        return assertInstanceOf(Sheets.Wrong.class, Sheets.typed(BOX, Scenes.KNOWN, page.subject(), row, text, UnitSystem.METRIC)).sentence();
    }

    private static Optional<Value> value(Design design, Subject subject, Object... path) {
        return FieldPath.of(path).in(subject.tree(design).orElseThrow());
    }

    @Test
    void aNumberIsShownInTheReadersUnitAndEditedAsWritten() {
        Row metric = row(page(Subject.passage("grille"), UnitSystem.METRIC), "freeArea");
        assertEquals("120.0", metric.text());
        assertEquals("cm²", metric.unit());
        assertEquals("120.0", metric.written());
        Row us = row(page(Subject.passage("grille"), UnitSystem.US), "freeArea");
        assertEquals("18.6", us.text());
        assertEquals("in²", us.unit());
        assertEquals("120.0 cm²", us.written());
        assertTrue(us.hover().contains("Written: 120.0 cm²\nIn full: 18.60004 in²"), us.hover());
        Row plain = row(page(Subject.EQUIPMENT, UnitSystem.METRIC), "width");
        assertEquals("266", plain.text());
        assertEquals("0.266 m", plain.written());
        UnitSystem litres = UnitSystem.METRIC.with(QuantityKind.TEMPERATURE, Units.of(QuantityKind.TEMPERATURE).getFirst());
        assertEquals("313.2", row(page(Subject.condition("hot"), litres), "outsideTemperature").text());
        assertEquals("104", row(page(Subject.condition("hot"), UnitSystem.US), "outsideTemperature").text());
        assertEquals("40", row(page(Subject.condition("hot"), UnitSystem.METRIC), "outsideTemperature").text());
    }

    @Test
    void whatIsNotGivenShowsWhatHolds() {
        Sheet page = page(Subject.passage("fans"), UnitSystem.METRIC);
        Row speed = row(page, "speed");
        assertFalse(speed.given());
        assertEquals("", speed.text());
        assertEquals("100", speed.standard());
        assertEquals("%", speed.unit());
        assertEquals("Its speed setting.\nAllowed: above 0, up to 100 %\nWhere not given: 100 %", speed.hover());
        assertEquals("1", row(page, "across").standard());
        assertEquals("yes", row(page, "flaps").text());
        assertEquals(Editor.YES_NO, row(page, "flaps").editor());
        assertEquals(List.of("M"), row(page, "mover").choices());
        assertEquals("20", row(page(Subject.condition("mild"), UnitSystem.METRIC), "outsideTemperature").standard());
        assertTrue(row(page(Subject.condition("mild"), UnitSystem.METRIC), "outsideTemperature").hover().contains("Allowed: -100 to 100 °C"));
    }

    @Test
    void typedTextBecomesAValueWithItsUnit() {
        Sheet page = page(Subject.passage("grille"), UnitSystem.METRIC);
        Row area = row(page, "freeArea");
        assertEquals(Optional.of(new Value.Text("19 in²")), value(typed(page, area, "19 in²"), page.subject(), "freeArea"));
        assertEquals(Optional.of(new Value.Text("90 cm²")), value(typed(page, area, " 90 "), page.subject(), "freeArea"));
        assertEquals(Optional.of(new Value.Text("90.5 cm²")), value(typed(page, area, "90,5"), page.subject(), "freeArea"));
        assertEquals(Optional.empty(), value(typed(page, area, ""), page.subject(), "freeArea"));
        assertInstanceOf(Sheets.Unchanged.class, Sheets.typed(BOX, Scenes.KNOWN, page.subject(), area, "120.0", UnitSystem.METRIC));
        assertEquals("\"35 kg\" is not an area; expected a number with one of m², cm², mm², in², ft²", wrong(page, area, "35 kg"));
        assertEquals("\"-5 cm²\" is out of range; expected above 0", wrong(page, area, "-5"));
        assertEquals("\"1,250\" may mean 1.250 or 1250; expected one of these", wrong(page, area, "1,250"));
        assertEquals("\"120 %\" is out of range; expected 0 to 90 %", wrong(page, row(page, "tolerance"), "120"));
    }

    @Test
    void otherFieldsAreReadBack() {
        Sheet fans = page(Subject.passage("fans"), UnitSystem.METRIC);
        assertEquals(Optional.of(Value.Num.of(3)), value(typed(fans, row(fans, "across"), "3"), fans.subject(), "across"));
        assertEquals("is \"3.5\"; expected a whole number from 1 to 20", wrong(fans, row(fans, "across"), "3.5"));
        assertEquals(Optional.of(new Value.Flag(false)), value(typed(fans, row(fans, "flaps"), "no"), fans.subject(), "flaps"));
        assertEquals(Optional.empty(), value(typed(fans, row(fans, "flaps"), ""), fans.subject(), "flaps"));
        Sheet law = page(new Subject(Subject.Kind.CONTROL_LAW, "law"), UnitSystem.METRIC);
        assertEquals(List.of("outside", "front", "rear", "grille", "slot", "fans", "cpu"), row(law, "sensor").choices());
        assertEquals(Editor.NAMES, row(law, "banks").editor());
        assertEquals(Optional.empty(), value(typed(law, row(law, "banks"), ""), law.subject(), "banks"));
        Sheet cpu = page(Subject.heatSource("cpu"), UnitSystem.METRIC);
        assertEquals("must be given; expected a power from 0 to 1000000 W, as a number in W or a text with its unit",
                wrong(cpu, row(cpu, "power"), ""));
        Sheet requirement = page(new Subject(Subject.Kind.REQUIREMENT, "0"), UnitSystem.METRIC);
        assertEquals("59.47", row(requirement, "atLeast").text());
        assertEquals("m³/h", row(requirement, "atLeast").unit());
        assertEquals(Optional.of(new Value.Text("60 m³/h")), value(typed(requirement, row(requirement, "atLeast"), "60"), requirement.subject(), "atLeast"));
        assertEquals(List.of("airflow.bank.flow"), row(requirement, "figure").choices());
    }

    @Test
    void renamingThroughTheNameFieldFollows() {
        Sheet page = page(Subject.passage("fans"), UnitSystem.METRIC);
        Design renamed = typed(page, row(page, "id"), "blowers");
        assertEquals("blowers", renamed.requirements().getFirst().place());
        assertEquals("\"grille\" is the name of a passage already; expected a name that no other bay or passage has", wrong(page, row(page, "id"), "grille"));
    }

    @Test
    void listsHaveItemsThatAreAddedRemovedAndMoved() {
        Sheet page = page(Subject.heatSource("cpu"), UnitSystem.METRIC);
        Row into = row(page, "into");
        assertEquals(Editor.LIST, into.editor());
        assertEquals(2, into.count());
        assertEquals("front", row(page, "into", 0, "place").text());
        assertEquals("chain", row(page, "chain").label());
        assertEquals("link 1, board", row(page, "chain", 0).label());
        assertEquals("3", row(page, "chain", 0, "boards").text());
        assertEquals(Editor.KEPT, row(page, "chain", 0, "old").editor());
        Design added = changed(Sheets.add(BOX, Scenes.KNOWN, page.subject(), into, "slot"));
        assertEquals("slot", added.heatSources().getFirst().into().get(2).place());
        assertEquals("board", changed(Sheets.add(BOX, Scenes.KNOWN, page.subject(), row(page, "chain"), "board")).heatSources().getFirst().chain()
                .get(1).kind());
        Design moved = changed(Sheets.move(BOX, Scenes.KNOWN, page.subject(), row(page, "into", 0), 1));
        assertEquals(List.of("rear", "front"), moved.heatSources().getFirst().into().stream().map(share -> share.place()).toList());
        assertInstanceOf(Sheets.Unchanged.class, Sheets.move(BOX, Scenes.KNOWN, page.subject(), row(page, "into", 0), -1));
        assertEquals(1, changed(Sheets.remove(BOX, Scenes.KNOWN, page.subject(), row(page, "into", 0))).heatSources().getFirst().into().size());
        Sheet hot = page(Subject.condition("hot"), UnitSystem.METRIC);
        assertEquals("120", row(hot, "heatFactors", "cpu").text());
        assertEquals(List.of(), row(hot, "heatFactors").choices());
        Sheet mild = page(Subject.condition("mild"), UnitSystem.METRIC);
        assertEquals(List.of("cpu"), row(mild, "heatFactors").choices());
        assertEquals(1.0, changed(Sheets.add(BOX, Scenes.KNOWN, mild.subject(), row(mild, "heatFactors"), "cpu")).conditions().getFirst()
                .heatFactors().get("cpu").si());
    }

    private static Design changed(Sheets.Change change) {
        return assertInstanceOf(Sheets.Changed.class, change, change.toString()).edit().design().orElseThrow();
    }

    @Test
    void sectionsAreGroupsAndUnknownOnesAreKept() {
        Sheet page = page(Subject.passage("grille"), UnitSystem.METRIC);
        Row dust = row(page, "sections", "dust");
        assertEquals(Editor.GROUP, dust.editor());
        assertTrue(dust.given());
        assertEquals("{\"a\": [1, 2]}", page.rows().getLast().text());
        assertEquals(Editor.KEPT, page.rows().getLast().editor());
        assertEquals(Editor.KEPT, row(page, "colour").editor());
        assertEquals("by the door", row(page, "notes").text());
        Row other = row(page(Subject.passage("slot"), UnitSystem.METRIC), "sections", "dust");
        assertFalse(other.given());
        Design added = changed(Sheets.add(BOX, Scenes.KNOWN, Subject.passage("slot"), other, ""));
        assertEquals(Optional.of(Value.Tree.EMPTY), value(added, Subject.passage("slot"), "sections", "dust"));
        assertEquals(BOX, changed(Sheets.remove(added, Scenes.KNOWN, Subject.passage("slot"), other)));
        assertEquals(Editor.KEPT, row(page(Subject.passage("slot"), UnitSystem.METRIC), "gap").editor());
    }

    @Test
    void anOlderSectionIsShownAsItWouldBeAndBroughtUpWhenEdited() {
        Sheet page = page(Subject.passage("grille"), UnitSystem.METRIC);
        assertEquals("1000", row(page, "sections", "dust", "load").text());
        Design edited = typed(page, row(page, "sections", "dust", "load"), "0.002");
        assertEquals("{version=Num[literal=2], load=Text[text=0.002 kg/m³]}", new java.util.TreeMap<>(
                ((Value.Tree) value(edited, page.subject(), "sections", "dust").orElseThrow()).members()).descendingMap().toString());
    }

    @Test
    void problemsStandBesideTheirFields() {
        Sheet page = page(Subject.passage("grille"), UnitSystem.METRIC, Problem.error("airPath.passages[0].freeArea", "is too small"),
                Problem.missing("airPath.passages[0].to", "; expected a bay"), Problem.caution("airPath.passages[0]", "is odd"));
        assertEquals("is too small", row(page, "freeArea").problem());
        assertTrue(row(page, "freeArea").serious());
        assertFalse(row(page, "to").serious());
        assertEquals(List.of("is odd"), page.problems());
    }

    @Test
    void figuresOfTheCaseInFrontStandBeneath() {
        Sheet.Line flow = page(Subject.passage("fans"), UnitSystem.METRIC).figures().getFirst();
        assertEquals("flow", flow.label());
        assertEquals("72.0 m³/h", flow.text());
        assertEquals(Optional.of(Severity.NOT_MET), flow.severity());
        assertEquals(List.of(), page(Subject.passage("slot"), UnitSystem.METRIC).figures());
        assertEquals(List.of(), page(Subject.OUTSIDE, UnitSystem.METRIC).rows());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            1,5          | 1.5
            0,125        | 0.125
            -,5 m        | -0.5 m
            12,34 cfm    | 12.34 cfm
            1,2345       | 1.2345
            1000,250     | 1000.250
            1.5          | 1.5
            """)
    void aDecimalCommaIsAPoint(String typed, String read) {
        assertEquals(read, Typing.decimalPoint(typed));
    }

    @Test
    void listsOfNumbersAreTypedInManyWays() {
        Shape shape = new Shape.Amounts(QuantityKind.FLOW, Range.NOT_NEGATIVE, true, 2);
        for (String text : List.of("0 20,5 40", "0; 20,5; 40", "0, 20.5, 40")) {
            assertEquals(new Typing.Read(Optional.of(new Value.Text("0 20.5 40 m³/h"))), Typing.read(text, shape, "m³/h", UnitSystem.METRIC));
        }
        assertEquals(new Typing.Read(Optional.of(new Value.Text("0 20 cfm"))), Typing.read("0 20 cfm", shape, "m³/h", UnitSystem.METRIC));
        assertInstanceOf(Typing.Wrong.class, Typing.read("0 20 10", shape, "m³/h", UnitSystem.METRIC));
    }

    @Test
    void aCurveIsATable() {
        Sheet page = page(Subject.airMover("M"), UnitSystem.METRIC);
        Row row = page.rows().stream().filter(each -> each.editor() == Editor.TABLE).findFirst().orElseThrow();
        CurveTable table = row.table().orElseThrow();
        assertEquals(List.of("flow", "static pressure", "electrical power", "efficiency"), table.columns().stream().map(CurveTable.Column::label).toList());
        assertEquals(3, table.rows());
        assertEquals("33.98", table.cell(1, 0));
        assertEquals("60", table.cell(1, 1));
        // 20 cfm at 60 Pa is 0.566 W of 6 W
        assertEquals("9.44", table.cell(1, 3));
        CurveTable edited = table.type(1, 0, "36").table().orElseThrow();
        Design design = changed(Sheets.table(BOX, Scenes.KNOWN, page.subject(), row, edited));
        assertEquals(Optional.of(new Value.Text("0 21.1888 40 cfm")), value(design, page.subject(), "curves", 0, "flow"));
        assertEquals(value(BOX, page.subject(), "curves", 0, "pressure"), value(design, page.subject(), "curves", 0, "pressure"));
        CurveTable longer = table.type(3, 0, "50 cfm").table().orElseThrow().type(3, 1, "-5").table().orElseThrow();
        design = changed(Sheets.table(BOX, Scenes.KNOWN, page.subject(), row, longer));
        assertEquals(Optional.of(new Value.Text("0 20 40 50 cfm")), value(design, page.subject(), "curves", 0, "flow"));
        assertEquals(4, design.airMovers().getFirst().curves().getFirst().pressure().size());
        assertEquals(Optional.of(new Value.Text("0 40 cfm")), value(changed(Sheets.table(BOX, Scenes.KNOWN, page.subject(), row, table.without(1))),
                page.subject(), "curves", 0, "flow"));
        assertEquals("flow number 3, 40, repeats the one before it; expected each larger than the one before", assertInstanceOf(Sheets.Wrong.class,
                Sheets.table(BOX, Scenes.KNOWN, page.subject(), row, table.type(1, 0, "40 cfm").table().orElseThrow())).sentence());
        assertEquals("fill the cell above first", table.type(5, 0, "1").problem());
        assertTrue(table.type(1, 0, "x").problem().contains("does not begin with a number"));
        CurveTable pasted = table.paste(0, 0, "0\t100\n10 m³/h\t80,5\n20\t0").table().orElseThrow();
        assertEquals(List.of("100", "80.5", "0"), pasted.columns().get(1).shown());
        assertEquals("row 2, static pressure: \"x\" does not begin with a number; expected a number with one of Pa, hPa, kPa, mbar, bar, mmH2O, inH2O, psi",
                table.paste(0, 0, "0\t100\n10\tx").problem());
    }

    @Test
    void aNewCurveIsKeptAsADraftUntilItCanBeRead() {
        Design design = changed(Sheets.change(BOX, Scenes.KNOWN, Subject.airMover("M"), FieldPath.of("curves", 1), Optional.of(Value.Tree.EMPTY)));
        Sheet page = Sheets.of(Scenes.scene(design, UnitSystem.METRIC), Scenes.KNOWN, Subject.airMover("M")).orElseThrow();
        Row row = page.rows().stream().filter(each -> each.editor() == Editor.TABLE).reduce((one, other) -> other).orElseThrow();
        CurveTable one = row.table().orElseThrow().type(0, 0, "0").table().orElseThrow();
        assertEquals("flow has 1 number; expected at least 2", ((Sheets.Wrong) Sheets.table(design, Scenes.KNOWN, page.subject(), row, one)).sentence());
        CurveTable two = one.type(1, 0, "50").table().orElseThrow();
        assertEquals(Optional.of(new Value.Text("0 50 m³/h")), value(changed(Sheets.table(design, Scenes.KNOWN, page.subject(), row, two)),
                page.subject(), "curves", 1, "flow"));
    }
}
