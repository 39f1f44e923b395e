package tramontane.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import org.junit.jupiter.api.Test;
import tramontane.physics.units.QuantityKind;

class DerivationTest {

    private static final FigureKind FLOW = new FigureKind("a.flow", "flow", QuantityKind.FLOW, Better.HIGHER, "A flow.");
    private static final Relation SUM = new Relation("sum", "c = a + b", "arithmetic", "always");
    private static final BiFunction<Double, QuantityKind, String> FORMAT = (si, kind) -> si + " " + kind.siUnit();

    private static Trace.Step step(String figure, String place, double value, Trace.Term... inputs) {
        return new Trace.Step(figure, place, SUM, value, List.of(inputs));
    }

    private static Trace.Term from(String from) {
        return new Trace.Term("x", QuantityKind.PRESSURE, 1, from);
    }

    @Test
    void anInputNamesTheStepAtThePlaceItSaysElseAtItsOwnElseAnywhere() {
        Trace.Step front = step("p", "front", 1);
        Trace.Step rear = step("p", "rear", 2);
        Trace.Step flow = step("a.flow", "front", 3, from("p"), from("p at rear"), from("nobody"));
        Derivation derivation = Derivation.of(List.of(front, rear, flow), List.of(FLOW));
        assertEquals(List.of(front), derivation.behind(flow, from("p")));
        assertEquals(List.of(rear), derivation.behind(flow, from("p at rear")));
        assertEquals(List.of(front, rear), derivation.behind(step("a.flow", "elsewhere", 3), from("p")));
        assertEquals(List.of(), derivation.behind(flow, from("nobody")));
        assertEquals(List.of(flow), derivation.of("a.flow", "front"));
    }

    @Test
    void aFigureHasItsLabelAndAValueOnTheWayTheKindThatOthersTakeItFor() {
        Trace.Step way = step("p", "front", 1);
        Trace.Step odd = step("odd", "", 1);
        Derivation derivation = Derivation.of(List.of(way, odd, step("a.flow", "fans", 3, from("p"))), List.of(FLOW));
        assertEquals("flow at fans", derivation.name(derivation.steps().get(2)));
        assertEquals("p at front", derivation.name(way));
        assertEquals(Optional.of(QuantityKind.PRESSURE), derivation.quantity(way));
        assertEquals("1.0 Pa", derivation.value(way, FORMAT));
        assertEquals("1.0 1 (SI units)", derivation.value(odd, FORMAT));
        assertEquals("no finite number", derivation.value(step("p", "", Double.NaN), FORMAT));
        Trace.Step named = step("air at it", "cpu", 1);
        Trace.Step placed = step("q", "rear", 1);
        Derivation both = Derivation.of(List.of(named, placed, step("a.flow", "fans", 3, from("air at it"), from("q at rear"))), List.of(FLOW));
        assertEquals(Optional.of(QuantityKind.PRESSURE), both.quantity(named));
        assertEquals(Optional.of(QuantityKind.PRESSURE), both.quantity(placed));
    }

    @Test
    void aFormulaIsToldOnce() {
        List<Derivation.Block> blocks = Derivation.of(List.of(step("p", "front", 1, from("p at rear")), step("a.flow", "fans", 3, from("p"))), List.of(FLOW))
                .blocks(FORMAT);
        assertEquals(new Derivation.Block("p at front = 1.0 Pa", "sum: c = a + b", List.of("x = 1.0 Pa   from p at rear"), "always", "arithmetic"),
                blocks.get(0));
        assertEquals(new Derivation.Block("flow at fans = 3.0 m³/s", "sum, as in step 1", List.of("x = 1.0 Pa   from p"), "", ""), blocks.get(1));
    }

    @Test
    void aFigureOfAnotherAnalysisIsKnownByItsId() {
        assertEquals(Optional.of(FLOW), Derivation.of(List.of(), List.of(FLOW)).figure(from("a.flow at fans")));
        assertEquals(Optional.empty(), Derivation.of(List.of(), List.of(FLOW)).figure(from("condition hot")));
    }
}
