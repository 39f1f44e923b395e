package tramontane.selection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tramontane.model.AirMover;
import tramontane.model.Design;
import tramontane.model.FormReader;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.model.Value;
import tramontane.model.file.DesignFile;

class PlacementTest {

    private static final Arrangement TWO = new Arrangement(2, 1, 1, false);

    @Test
    void aPartIsPutIntoTheBankAndItsLawLetsGo() {
        Design cabinet = Choices.sample("cabinet");
        AirMover part = Choices.parabola("F", 80, 0.06);
        Design placed = Placement.of(cabinet, "fans", part, TWO, 0.634);
        Passage bank = placed.airPath().passage("fans").orElseThrow();
        assertEquals(Optional.of(new Value.Text("F")), bank.parameters().get("mover"));
        assertEquals(Optional.of(new Value.Text("63.4 %")), bank.parameters().get("speed"));
        assertTrue(placed.controlLaws().isEmpty(), "its only bank was this");
        assertEquals(part, placed.airMover("F").orElseThrow());
        assertEquals(cabinet.airMovers().getFirst(), placed.airMovers().getFirst(), "the old part stays");
        assertEquals(cabinet.requirements(), placed.requirements());
        Design read = DesignFile.parse(DesignFile.write(placed)).design().orElseThrow();
        assertEquals(placed, read);
    }

    @Test
    void aPartOfTheSameIdThatAnotherBankUsesIsNotChanged() {
        Design observatory = Choices.sample("observatory");
        Passage fans = observatory.airPath().passage("fans").orElseThrow();
        List<Passage> passages = new ArrayList<>(observatory.airPath().passages());
        passages.add(new Passage("others", Passage.BANK, fans.from(), fans.to(), fans.parameters()));
        Design two = observatory.withAirPath(new tramontane.model.AirPath(observatory.airPath().bays(), passages, observatory.airPath().more()));
        AirMover changed = observatory.airMovers().getFirst().withCurves(Choices.parabola("x", 80, 0.06).curves());
        Design placed = Placement.of(two, "fans", changed, TWO, 1);
        assertEquals(observatory.airMovers().getFirst(), placed.airMover("Levante 80-25 D24").orElseThrow());
        assertEquals(changed.curves(), placed.airMover("Levante 80-25 D24 (chosen)").orElseThrow().curves());
        assertEquals(changed, Placement.of(observatory, "fans", changed, TWO, 1).airMover("Levante 80-25 D24").orElseThrow(), "nobody else uses it");
    }

    @Test
    void aBankMustBeThere() {
        assertThrows(IllegalArgumentException.class, () -> Placement.of(Choices.sample("observatory"), "fan", Choices.parabola("F", 80, 0.06), TWO, 1));
        Selection selection = Choices.SELECTOR.choose(Task.of(Choices.sample("observatory"), "fan", List.of(Choices.parabola("F", 80, 0.06)), Space.ANY), Watch.NONE);
        assertEquals("the design has no bank fan", selection.findings().getFirst().message().toString());
    }

    @Test
    void aWishIsReadAndWrittenAsItStands() {
        Value.Tree tree = Value.Tree.EMPTY.with("openingWidth", new Value.Text("170 mm")).with("openingHeight", new Value.Text("90 mm"))
                .with("inSeries", Value.Num.of(1)).with("lowestSpeed", new Value.Text("30 %")).with("where", new Value.Text("type = axial"))
                .with("weights", new Value.Items(List.of(Value.Tree.EMPTY.with("of", new Value.Text("power")).with("weight", Value.Num.of(2)))))
                .with("note", new Value.Text("by me"));
        WishSection type = new WishSection();
        List<Problem> problems = new ArrayList<>();
        Wish wish = type.decode(FormReader.read(type.form(), tree, "", problems));
        assertTrue(problems.stream().noneMatch(Problem::isError), problems::toString);
        assertEquals(new Space(Optional.of(0.17), Optional.of(0.09), Optional.empty(), 6, 1, 6), wish.space());
        assertEquals(Map.of("power", 2.0), wish.weighed());
        assertEquals(0.3, wish.lowestSetting());
        assertEquals(tree, type.encode(wish));
        assertEquals(1, type.check(FormReader.read(type.form(), Value.Tree.EMPTY.with("openingWidth", Value.Num.of(1)), "", problems), "s").size());
        assertEquals(Space.ANY, Wish.NONE.space());
    }

    @Test
    void aDutyIsADesign() {
        Design design = Duty.design(Quantity.of(0.08, "0.08 m³/s"), Quantity.of(60, "60 Pa"), tramontane.model.Condition.NOMINAL);
        Design placed = Placement.of(design, Duty.BANK, Choices.parabola("F", 80, 0.06), TWO, 1);
        assertEquals(List.of(), Choices.WIRED.engine().check(placed).stream().filter(Problem::isError).toList());
        assertEquals("Duty of 0.08 m³/s at 60 Pa", design.name());
    }
}
