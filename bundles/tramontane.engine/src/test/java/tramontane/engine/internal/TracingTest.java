package tramontane.engine.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Input;
import tramontane.analysis.Relation;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Trace;
import tramontane.engine.internal.Toy.Alpha;
import tramontane.model.Design;
import tramontane.physics.units.QuantityKind;

@Timeout(30)
class TracingTest {

    private static final FigureKind FLOW = Toy.figure("toy.flow");
    private static final Relation SUM = new Relation("sum", "c = a + b", "common practice", "");

    private static Trace.Step step(String figure, String place, double value, String... from) {
        return new Trace.Step(figure, place, SUM, value, Arrays.stream(from)
                .map(each -> new Trace.Term("part", QuantityKind.NUMBER, 1, each)).toList());
    }

    private static Result<Alpha> flow(Input input, Run run, double value) {
        if (run.trace().recording()) {
            run.trace().step(step("speed", "fans", 3, "condition " + input.condition().id()));
            run.trace().step(step("speed", "blower", 4, "condition " + input.condition().id()));
            run.trace().step(step("density", "", 1.2, "a standard"));
            run.trace().step(step("unused", "fans", 9));
            run.trace().step(step("toy.flow", "fans", value, "speed", "density"));
            run.trace().step(step("toy.flow", "blower", value, "speed", "density"));
        }
        return Result.of(new Alpha(value)).with(Figure.of(FLOW, "fans", value), Figure.of(FLOW, "blower", value));
    }

    private static Toy<Alpha> toy(String id, double value) {
        return Toy.of(id, Alpha.class, (input, run) -> flow(input, run, value)).figures(FLOW);
    }

    private static List<String> said(List<Trace.Step> steps) {
        return steps.stream().map(step -> step.figure() + " " + step.place() + " " + step.value()).toList();
    }

    @Test
    void theStepsOfAFigureAndThoseOnItsWayComeInTheirOrder() {
        Toy<Alpha> toy = toy("a", 7);
        Bench bench = Bench.with(toy);
        bench.run(Design.EMPTY);
        assertEquals(List.of("speed fans 3.0", "density  1.2", "toy.flow fans 7.0"),
                said(bench.engine.trace(Design.EMPTY, "nominal", "toy.flow", "fans")));
        assertEquals(2, toy.runs.get()); // once more, with the trace
    }

    @Test
    void anInputThatNamesAPlaceLeadsThereAlone() {
        List<Trace.Step> steps = List.of(step("flow", "a", 1, "flow at b"), step("flow", "b", 2, "nothing"), step("flow", "c", 3, "nothing"),
                step("drop", "b", 4, "flow"), step("drop", "d", 5, "flow"));
        assertEquals(List.of("flow a 1.0", "flow b 2.0"), said(Tracing.onTheWay(steps, "flow", "a")));
        assertEquals(List.of("flow b 2.0", "drop b 4.0"), said(Tracing.onTheWay(steps, "drop", "b")), "else that of the same place");
        assertEquals(4, Tracing.onTheWay(steps, "drop", "d").size(), "else all");
    }

    @Test
    void theHighestRankedGiverIsTheOneThatIsTraced() {
        Bench bench = new Bench(2).load(toy("low", 1), 0).load(toy("high", 2), 1);
        assertEquals("toy.flow fans 2.0", said(bench.engine.trace(Design.EMPTY, "nominal", "toy.flow", "fans")).getLast());
    }

    @Test
    void onlyTheHighestRankedRecordsEvenWhereItStartsFromALowerOne() {
        Toy<Alpha> low = toy("low", 1);
        Toy<Alpha> high = Toy.of("high", Alpha.class, (input, run) -> {
            double value = input.result(Alpha.class).value() + 1;
            if (run.trace().recording()) {
                run.trace().step(step("toy.flow", "fans", value, "speed", "first flow"));
                run.trace().step(step("first flow", "fans", input.result(Alpha.class).value(), "airflow"));
            }
            return Result.of(new Alpha(value)).with(Figure.of(FLOW, "fans", value));
        }).figures(FLOW).needs(Alpha.class);
        Bench bench = new Bench(2).load(low, 0).load(high, 1);
        bench.run(Design.EMPTY);
        assertEquals(List.of("toy.flow fans 2.0", "first flow fans 1.0"),
                said(bench.engine.trace(Design.EMPTY, "nominal", "toy.flow", "fans")));
        assertEquals(1, low.runs.get());
        assertEquals(2, high.runs.get());
        // the higher one does not give it there, and the lower one's value is not the one that is shown
        assertEquals(List.of(), bench.engine.trace(Design.EMPTY, "nominal", "toy.flow", "blower"));
    }

    @Test
    void whatNothingGivesHasNoTrace() {
        Bench bench = Bench.with(toy("a", 7));
        assertEquals(List.of(), bench.engine.trace(Design.EMPTY, "nominal", "toy.flow", "elsewhere"));
        assertEquals(List.of(), bench.engine.trace(Design.EMPTY, "cold", "toy.flow", "fans"));
        assertEquals(List.of(), bench.engine.trace(Design.EMPTY, "nominal", "toy.other", "fans"));
    }

    @Test
    void normalRunsAreNotRecorded() {
        Toy<Alpha> toy = Toy.of("a", Alpha.class, (input, run) -> Result.of(new Alpha(run.trace().recording() ? 1 : 0)));
        assertEquals(0, Bench.with(toy).run(Design.EMPTY).data(Alpha.class, "nominal").orElseThrow().value());
    }
}
