package tramontane.model.edit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tramontane.model.Design;
import tramontane.model.Value;
import tramontane.model.file.DesignFile;

class EditsTest {

    private static final Edits EDITS = new Edits(Designs.FORMS);

    private static final Design BOX = read("""
            {"format": 1, "name": "box",
             "airMovers": [{"id": "M", "curves": [{"flow": "0 20 cfm", "pressure": "90 0 Pa"}]}],
             "airPath": {"bays": ["front", "rear"], "passages": [
               {"id": "grille", "kind": "grille", "from": "outside", "to": "front", "freeArea": "120.0 cm²", "colour": "grey"},
               {"id": "cards", "kind": "card cage", "from": "front", "to": "rear"},
               {"id": "fans", "kind": "bank", "from": "rear", "to": "outside", "mover": "M"}],
              "layout": {"front": [1, 2], "grille": [3, 4], "passages": {"grille": {"bend": 1}}}},
             "heatSources": [{"id": "cpu", "power": "35 W", "into": ["front", {"place": "cards", "share": "20 %"}]}],
             "conditions": [{"id": "mild"}, {"id": "hot", "heatFactors": {"cpu": "120 %"}, "failed": [{"bank": "fans", "position": 1}]}],
             "mission": [{"condition": "mild", "timePerYear": "8000 h"}, {"condition": "hot", "timePerYear": "760 h"}],
             "controlLaws": [{"id": "law", "sensor": "cpu", "banks": ["fans"], "temperature": "25 45 °C", "speed": "40 100 %"}],
             "requirements": [{"figure": "airflow.bank.flow", "place": "fans", "atLeast": "35 cfm", "conditions": ["mild", "hot"]}]}
            """);

    private static Design read(String json) {
        return DesignFile.parse(json).editable().orElseThrow();
    }

    private static Design done(Edit edit) {
        assertFalse(edit.isRefused(), edit.message());
        return edit.design().orElseThrow();
    }

    private static String refused(Edit edit) {
        assertTrue(edit.isRefused(), edit.what());
        return edit.message();
    }

    private static Optional<Value> text(String text) {
        return Optional.of(new Value.Text(text));
    }

    private static String written(Design design, Subject subject) {
        return DesignFile.write(Design.EMPTY.withMore(subject.tree(design).orElseThrow())).replaceAll("\\s+", " ");
    }

    @Test
    void aQuantityKeepsItsUnitAndUnknownMembersStay() {
        Edit edit = EDITS.set(BOX, Subject.passage("grille"), FieldPath.of("freeArea"), text("19 in²"));
        assertEquals("change free area of grille", (edit).what());
        assertTrue(written(done(edit), Subject.passage("grille")).contains("\"freeArea\": \"19 in²\", \"colour\": \"grey\""));
    }

    @Test
    void onlyWhatWasEditedIsMadeAnew() {
        Design changed = done(EDITS.set(BOX, Subject.passage("grille"), FieldPath.of("freeArea"), text("19 in²")));
        assertTrue(BOX.airMovers().getFirst() == changed.airMovers().getFirst());
        assertTrue(BOX.airPath().passages().getLast() == changed.airPath().passages().getLast());
    }

    @Test
    void aBadValueIsRefusedWithWhereAndWhatWasExpected() {
        assertEquals("grille, free area: \"35 cfm\" is not an area; expected a number with one of m², cm², mm², in², ft²",
                refused(EDITS.set(BOX, Subject.passage("grille"), FieldPath.of("freeArea"), text("35 cfm"))));
        assertEquals("M, flow of curve 1: number 2, 20, repeats the one before it; expected each larger than the one before",
                refused(EDITS.set(BOX, Subject.airMover("M"), FieldPath.of("curves", 0, "flow"), text("20 20 cfm"))));
        assertEquals("cpu, share of share 2: \"120 %\" is out of range; expected a fraction above 0 and at most 1, as a number or a text in %",
                refused(EDITS.set(BOX, Subject.heatSource("cpu"), FieldPath.of("into", 1, "share"), text("120 %"))));
        assertEquals("fans, across: is 0; expected a whole number from 1 to 20",
                refused(EDITS.set(BOX, Subject.passage("fans"), FieldPath.of("across"), Optional.of(Value.Num.of(0)))));
    }

    @Test
    void whatWasWrongBeforeDoesNotKeepFromMendingTheRest() {
        Design broken = read("""
                {"format": 1, "airPath": {"passages": [{"id": "g", "kind": "grille", "from": "outside", "to": "outside", "freeArea": "5 kg"}]}}""");
        Design changed = done(EDITS.set(broken, Subject.passage("g"), FieldPath.of("beside"), text("g")));
        assertEquals(Optional.of("g"), changed.airPath().passages().getFirst().parameters().text("beside"));
        done(EDITS.set(broken, Subject.passage("g"), FieldPath.of("freeArea"), text("5 cm²")));
    }

    @Test
    void objectsOnTheWayAreMadeAndShortFormsAreTakenApart() {
        Design shared = done(EDITS.set(BOX, Subject.heatSource("cpu"), FieldPath.of("into", 0, "share"), text("80 %")));
        assertTrue(written(shared, Subject.heatSource("cpu")).contains("{\"place\": \"front\", \"share\": \"80 %\"}"));
        Design link = done(EDITS.set(BOX, Subject.heatSource("cpu"), FieldPath.of("chain", 0, "kind"), text("clip")));
        link = done(EDITS.set(link, Subject.heatSource("cpu"), FieldPath.of("chain", 0, "resistance"), text("2 K/W")));
        assertTrue(refused(EDITS.set(link, Subject.heatSource("cpu"), FieldPath.of("chain", 0, "resistance"), text("2 W")))
                .startsWith("cpu, resistance of link 1: \"2 W\" is not a thermal resistance"));
        Design section = done(EDITS.set(BOX, Subject.passage("grille"), FieldPath.of("sections", "near", "places", 0), text("rear")));
        assertEquals("[Text[text=rear]]", ((Value.Items) FieldPath.of("sections", "near", "places").in(
                Subject.passage("grille").tree(section).orElseThrow()).orElseThrow()).values().toString());
        assertEquals(BOX, done(EDITS.set(section, Subject.passage("grille"), FieldPath.of("sections", "near"), Optional.empty())));
        assertTrue(refused(EDITS.set(BOX, Subject.passage("grille"), FieldPath.of("sections", "near"), text("x"))).contains("an object"));
    }

    @Test
    void whatTheModelCannotLeaveOutMustBeGiven() {
        assertEquals("cpu, heat: must be given; expected a power from 0 to 1000000 W, as a number in W or a text with its unit",
                refused(EDITS.set(BOX, Subject.heatSource("cpu"), FieldPath.of("power"), Optional.empty())));
        assertEquals(Optional.empty(), done(EDITS.set(BOX, Subject.passage("fans"), FieldPath.of("mover"), Optional.empty()))
                .airPath().passages().getLast().parameters().text("mover"));
    }

    @Test
    void aNameIsFollowedEverywhere() {
        Design design = done(EDITS.rename(BOX, Subject.passage("fans"), " blowers "));
        assertEquals("blowers", design.airPath().passages().getLast().id());
        assertEquals(Optional.of("blowers"), design.conditions().getLast().failed().getFirst().bank());
        assertEquals(List.of("blowers"), design.controlLaws().getFirst().banks());
        assertEquals("blowers", design.requirements().getFirst().place());
        assertFalse(DesignFile.write(design).contains("fans"));
        assertFalse(DesignFile.write(done(EDITS.rename(BOX, Subject.bay("front"), "face"))).contains("\"front\""));
        assertFalse(DesignFile.write(done(EDITS.rename(BOX, Subject.passage("grille"), "inlet"))).contains("\"grille\": {"));
        assertFalse(DesignFile.write(done(EDITS.rename(BOX, Subject.heatSource("cpu"), "processor"))).contains("cpu"));
        assertFalse(DesignFile.write(done(EDITS.rename(BOX, Subject.airMover("M"), "N"))).contains("\"M\""));
        assertFalse(DesignFile.write(done(EDITS.rename(BOX, Subject.condition("hot"), "hot day"))).contains("\"hot\""));
        assertEquals("rename fans", (EDITS.rename(BOX, Subject.passage("fans"), "blowers")).what());
    }

    @Test
    void namesThatCannotBeAreRefused() {
        assertEquals("outside is the air around the equipment; it cannot be renamed", refused(EDITS.rename(BOX, Subject.OUTSIDE, "room")));
        assertEquals("\"outside\" is the air around the equipment; expected another name", refused(EDITS.rename(BOX, Subject.bay("front"), "outside")));
        assertEquals("\"cards\" is the name of a passage already; expected a name that no other bay or passage has",
                refused(EDITS.rename(BOX, Subject.bay("front"), "cards")));
        assertEquals("\"mild\" is the name of a condition already; expected a name that no other condition has",
                refused(EDITS.set(BOX, Subject.condition("hot"), FieldPath.of("id"), text("mild"))));
        assertEquals("a passage must have a name; expected a text", refused(EDITS.rename(BOX, Subject.passage("fans"), "  ")));
        assertEquals("a requirement has no name of its own", refused(EDITS.rename(BOX, new Subject(Subject.Kind.REQUIREMENT, "0"), "x")));
        assertEquals("this design has no passage \"gone\" any more", refused(EDITS.rename(BOX, Subject.passage("gone"), "x")));
    }

    @Test
    void aNameThatMayMeanSomethingElseIsLeftAndNoted() {
        Design design = read("""
                {"format": 1, "airPath": {"bays": ["x"], "passages": [{"id": "p", "kind": "grille", "from": "outside", "to": "x"}]},
                 "heatSources": [{"id": "x", "power": 5, "into": ["x"]}],
                 "controlLaws": [{"id": "l", "sensor": "x", "temperature": [300], "speed": [1]}],
                 "requirements": [{"figure": "f", "place": "x", "atMost": 1}]}""");
        Edit bay = EDITS.rename(design, Subject.bay("x"), "y");
        assertEquals("requirements[0].place still names x, as something else has that name, too", bay.message());
        assertEquals("y", done(bay).heatSources().getFirst().into().getFirst().place());
        assertEquals("x", done(bay).controlLaws().getFirst().sensor());
        Edit source = EDITS.rename(design, Subject.heatSource("x"), "y");
        assertEquals("y", done(source).controlLaws().getFirst().sensor());
        assertEquals("x", done(source).heatSources().getFirst().into().getFirst().place());
    }

    @Test
    void oneOfTwoThingsOfOneNameCanBeRenamed() {
        Design design = read("""
                {"format": 1, "airPath": {"bays": ["a"], "passages": [
                  {"id": "p", "kind": "grille", "from": "outside", "to": "a"}, {"id": "p", "kind": "grille", "from": "a", "to": "outside"}]},
                 "heatSources": [{"id": "s", "power": 5, "into": ["p"]}]}""");
        List<Subject> passages = Subject.Kind.PASSAGE.subjects(design);
        assertEquals(List.of(new Subject(Subject.Kind.PASSAGE, "p", 0), new Subject(Subject.Kind.PASSAGE, "p", 1)), passages);
        Design mended = done(EDITS.rename(design, passages.getLast(), "q"));
        assertEquals(List.of("p", "q"), Subject.Kind.PASSAGE.ids(mended));
        assertEquals("p", mended.heatSources().getFirst().into().getFirst().place());
    }

    @Test
    void whatIsAboutNothingElseGoesWithIt() {
        Edit hot = EDITS.remove(BOX, List.of(Subject.condition("hot")));
        assertEquals(1, done(hot).mission().size());
        assertEquals(List.of("mild"), done(hot).requirements().getFirst().conditions());
        assertEquals("", hot.message());
        assertEquals("delete hot", hot.what());
        Edit fans = EDITS.remove(BOX, List.of(Subject.passage("fans")));
        assertEquals(List.of(), done(fans).conditions().getLast().failed());
        // an empty list would mean all banks
        assertEquals("law still names fans; airflow.bank.flow at fans still names fans", fans.message());
        Edit cpu = EDITS.remove(BOX, List.of(Subject.heatSource("cpu")));
        assertTrue(done(cpu).conditions().getLast().heatFactors().isEmpty());
        assertFalse(DesignFile.write(done(EDITS.remove(BOX, List.of(Subject.passage("grille"))))).contains("bend"));
        assertEquals("outside is always there; it cannot be deleted", refused(EDITS.remove(BOX, List.of(Subject.OUTSIDE))));
    }

    @Test
    void freshNamesCountOn() {
        Edit first = EDITS.duplicate(BOX, List.of(Subject.passage("grille")));
        assertEquals("duplicate grille", first.what());
        assertEquals(List.of(Subject.passage("grille 2")), first.subjects());
        assertEquals(List.of("grille", "grille 2", "cards", "fans"), Subject.Kind.PASSAGE.ids(done(first)));
        assertEquals("grille 3", Edits.freshId(done(first), Subject.Kind.PASSAGE, "grille 2"));
        assertEquals("cards 2", Edits.freshId(BOX, Subject.Kind.BAY, "cards"));
        assertEquals("outside 2", Edits.freshId(BOX, Subject.Kind.BAY, "outside"));
    }

    @Test
    void theFirstConditionIsTheOneThatHeldSoFar() {
        Edit first = EDITS.add(Design.EMPTY, Subject.Kind.CONDITION, Value.Tree.EMPTY, Optional.empty());
        assertEquals("nominal", done(first).conditions().getFirst().id());
        assertEquals("condition", (EDITS.add(done(first), Subject.Kind.CONDITION, Value.Tree.EMPTY, Optional.empty()))
                .design().orElseThrow().conditions().getLast().id());
        Value.Tree filter = Value.Tree.EMPTY.with("kind", new Value.Text("filter"));
        Edit passage = EDITS.add(BOX, Subject.Kind.PASSAGE, filter, Optional.of(Subject.passage("grille")));
        assertEquals(List.of("grille", "filter", "cards", "fans"), Subject.Kind.PASSAGE.ids(done(passage)));
        assertEquals("add filter", passage.what());
    }

    @Test
    void whatIsPastedElsewhereNamesWhatIsMissing() {
        String text = EDITS.copy(BOX, List.of(Subject.passage("fans"), Subject.airMover("M"))).orElseThrow();
        Edit here = EDITS.paste(BOX, text, Optional.of(Subject.passage("grille")));
        assertEquals(List.of("grille", "fans 2", "cards", "fans"), Subject.Kind.PASSAGE.ids(done(here)));
        assertEquals(Optional.of("M 2"), done(here).airPath().passage("fans 2").orElseThrow().parameters().text("mover"));
        Edit elsewhere = EDITS.paste(Design.EMPTY, text, Optional.empty());
        assertEquals("fans names \"rear\", which is no bay of this design", elsewhere.message());
        assertEquals("paste 2 things", elsewhere.what());
        assertEquals("the clipboard holds nothing that was copied from a design", refused(EDITS.paste(BOX, "{\"format\": 1}", Optional.empty())));
        assertEquals("the clipboard holds nothing that was copied from a design", refused(EDITS.paste(BOX, "tramontaneThings", Optional.empty())));
        assertTrue(refused(EDITS.paste(BOX, text.replace("90 0 Pa", "90 0 K"), Optional.empty())).startsWith("M, curves[0].pressure: "));
    }

    @Test
    void placesOfProblemsLeadToTheirSubjects() {
        assertEquals(Optional.of(Subject.passage("cards")), Subject.at(BOX, "airPath.passages[1].freeArea"));
        assertEquals(Optional.of(Subject.EQUIPMENT), Subject.at(BOX, "equipment.width"));
        assertEquals(Optional.of(Subject.DESIGN), Subject.at(BOX, "sections.drive"));
        assertEquals(Optional.empty(), Subject.at(BOX, "airPath.passages[7]"));
        assertEquals("airPath.passages[1]", Subject.passage("cards").place(BOX));
        assertEquals("airflow.bank.flow at fans", new Subject(Subject.Kind.REQUIREMENT, "0").title(BOX));
    }
}
