package tramontane.engine.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.analysis.Evaluation.Status;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.LinkKind;
import tramontane.analysis.LinkLaw;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Result;
import tramontane.analysis.Trace;
import tramontane.engine.internal.Toy.Alpha;
import tramontane.engine.internal.Toy.Beta;
import tramontane.model.AirPath;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Equipment;
import tramontane.model.FailedMover;
import tramontane.model.Form;
import tramontane.model.HeatSource;
import tramontane.model.Passage;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.model.Value;
import tramontane.model.Values;

/** What is computed again, and what is not. */
@Timeout(30)
class KeepingTest {

    private static final FigureKind X = Toy.figure("toy.x");

    private static Value.Tree tree(String name, String text) {
        return Value.Tree.EMPTY.with(name, new Value.Text(text));
    }

    private static Design box(Value.Tree passage, Value.Tree bay, Value.Tree path) {
        return Bench.conditions("hot").withAirPath(new AirPath(List.of(new Bay("box", Optional.empty(), bay)),
                List.of(new Passage("inlet", "opening", "outside", "box", passage)), path));
    }

    private static final Design BOX = box(Value.Tree.EMPTY, Value.Tree.EMPTY, Value.Tree.EMPTY);

    @Test
    void theSameDesignIsNotComputedAgain() {
        Toy<Alpha> toy = Toy.giving("a", Alpha.class, new Alpha(1));
        Toy<Beta> after = Toy.of("b", Beta.class, (input, run) -> Result.of(new Beta(input.result(Alpha.class).value())))
                .needs(Alpha.class);
        Bench bench = Bench.with(toy, after);
        Evaluation first = bench.run(BOX);
        assertEquals(first, bench.run(box(Value.Tree.EMPTY, Value.Tree.EMPTY, Value.Tree.EMPTY)));
        assertEquals(1, toy.runs.get());
        assertEquals(1, after.runs.get());
    }

    @ParameterizedTest
    @ValueSource(strings = {"notes", "layout"})
    void whatIsCosmeticChangesNothing(String member) {
        Toy<Alpha> toy = Toy.giving("a", Alpha.class, new Alpha(1));
        Bench bench = Bench.with(toy);
        bench.run(BOX);
        bench.run(BOX.withMore(tree(member, "x")));
        bench.run(BOX.withName("another name"));
        bench.run(BOX.withEquipment(new Equipment("rack", Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.empty(), "", tree(member, "x"))));
        bench.run(box(tree(member, "x"), Value.Tree.EMPTY, Value.Tree.EMPTY));
        bench.run(box(Value.Tree.EMPTY, tree(member, "x"), Value.Tree.EMPTY));
        bench.run(box(Value.Tree.EMPTY, Value.Tree.EMPTY, tree(member, "x")));
        assertEquals(1, toy.runs.get());
        bench.run(box(tree("area", "2 cm²"), Value.Tree.EMPTY, Value.Tree.EMPTY));
        assertEquals(2, toy.runs.get());
    }

    @Test
    void aChangeOutsideOfWhatItReadsRunsNothingAndOneInsideDoes() {
        Toy<Alpha> air = Toy.of("air", Alpha.class, (input, run) -> Result.of(new Alpha(input.design().heatSources().size())))
                .reads(design -> design.withHeatSources(List.of()));
        Toy<Beta> after = Toy.of("after", Beta.class, (input, run) -> Result.of(new Beta(input.result(Alpha.class).value())))
                .needs(Alpha.class).reads(design -> Design.EMPTY.withConditions(design.conditions()));
        Bench bench = Bench.with(air, after);
        bench.run(BOX);
        Design heated = BOX.withHeatSources(List.of(new HeatSource("cpu", Quantity.of(35), List.of(),
                Optional.empty(), Value.Tree.EMPTY)));
        assertEquals(0, bench.run(heated).data(Alpha.class, "hot").orElseThrow().value());
        assertEquals(1, air.runs.get());
        bench.run(box(tree("area", "2 cm²"), Value.Tree.EMPTY, Value.Tree.EMPTY));
        assertEquals(2, air.runs.get());
        // the second reads nothing of it, but used a result that was computed anew
        assertEquals(2, after.runs.get());
    }

    @Test
    void anotherConditionLeavesTheFirstAlone() {
        Toy<Alpha> toy = Toy.giving("a", Alpha.class, new Alpha(1));
        Toy<Beta> wide = Toy.of("wide", Beta.class, (input, run) -> Result.of(new Beta(input.results(Alpha.class).size())))
                .designWide().needs(Alpha.class);
        Bench bench = Bench.with(toy, wide);
        bench.run(Bench.conditions("hot"));
        bench.run(Bench.conditions("hot", "cold"));
        assertEquals(2, toy.runs.get());
        assertEquals(2, wide.runs.get());
    }

    @Test
    void failuresAreTriedAgainAndHonestRefusalsAreNot() {
        Toy<Alpha> fails = Toy.of("fails", Alpha.class, (input, run) -> {
            throw new IllegalStateException("again");
        });
        Toy<Beta> refuses = Toy.of("refuses", Beta.class, (input, run) -> Result.notComputed(Finding.caution("", "no answer")));
        Bench bench = Bench.with(fails, refuses);
        bench.run(BOX);
        Evaluation second = bench.run(BOX);
        assertEquals(2, fails.runs.get());
        assertEquals(1, refuses.runs.get());
        assertEquals(Status.NOT_COMPUTED, Bench.status(second, "refuses"));
        assertTrue(Bench.messages(second).contains("no answer"));
    }

    @Test
    void anotherVersionOfTheBundleIsRunAnew() {
        Toy<Alpha> old = Toy.giving("a", Alpha.class, new Alpha(1));
        Toy<Alpha> young = Toy.giving("a", Alpha.class, new Alpha(2));
        Bench bench = Bench.with(old);
        bench.run(BOX);
        bench.unload(old).load(young, 0, "lab.a 1.0.1");
        assertEquals(2, bench.run(BOX).data(Alpha.class, "hot").orElseThrow().value());
    }

    @Test
    void anotherKindOfPassageOrLinkMakesWhatWasComputedWithoutItStale() {
        Toy<Alpha> toy = Toy.giving("a", Alpha.class, new Alpha(1));
        Bench bench = Bench.with(toy);
        bench.run(BOX);
        bench.load(new PassageKind() {
            @Override
            public Form form() {
                return Form.of("honeycomb", "Round cells.");
            }

            @Override
            public FlowLaw law(Values values, Setting setting) {
                return (flow, density, viscosity, drop) -> drop.set(flow, 1);
            }
        });
        bench.run(BOX);
        assertEquals(2, toy.runs.get());
        bench.load(new LinkKind() {
            @Override
            public Form form() {
                return Form.of("heat pipe", "A heat pipe.");
            }

            @Override
            public Step step() {
                return Step.SPREADING;
            }

            @Override
            public LinkLaw law(Values values, Setting setting) {
                return (air, beyond) -> 1;
            }
        });
        bench.run(BOX);
        bench.run(BOX);
        assertEquals(3, toy.runs.get());
    }

    @Test
    void anAnalysisIsHandedTheRequirementsOfItsConditionOnly() {
        FailedMover anyOne = new FailedMover(Optional.of("fans"), Optional.empty(), FailedMover.State.LOCKED);
        Design design = Design.EMPTY.withAirPath(new AirPath(List.of(), List.of(new Passage("fans", Passage.BANK, "outside",
                "outside", Value.Tree.EMPTY.with("across", Value.Num.of(2)))), Value.Tree.EMPTY))
                .withConditions(List.of(Condition.named("hot").with("hot", List.of(anyOne)), Condition.named("hot: night")))
                .withRequirements(List.of(new Requirement("toy.x", Requirement.WORST, Optional.of(Quantity.of(1)),
                        Optional.empty(), List.of("hot"), Value.Tree.EMPTY)));
        Toy<Beta> counts = Toy.of("counts", Beta.class, (input, run) -> Result.of(new Beta((int) input.design().requirements()
                .stream().filter(requirement -> requirement.appliesIn(input.condition().id())).count())));
        Evaluation evaluation = Bench.with(counts).run(design);
        assertEquals(1, evaluation.data(Beta.class, "hot: fans 1 locked").orElseThrow().value());
        assertEquals(1, evaluation.data(Beta.class, "hot: fans 2 locked").orElseThrow().value());
        assertEquals(0, evaluation.data(Beta.class, "hot: night").orElseThrow().value());
    }

    @Test
    void figuresThatComeAndGoMakeTheirReadersRunAgain() {
        Toy<Beta> reader = Toy.of("reader", Beta.class, (input, run) -> Result.of(new Beta(input.figures("toy.x").size())))
                .readsFigures("toy.x");
        Toy<Alpha> giver = Toy.of("giver", Alpha.class, (input, run) -> Result.of(new Alpha(0)).with(Figure.of(X, "", 1)))
                .figures(X);
        Toy<Alpha> needy = Toy.giving("needy", Alpha.class, new Alpha(0)).figures(X).needs(Integer.class);
        Bench bench = Bench.with(reader, needy);
        assertEquals(0, bench.run(BOX).data(Beta.class, "hot").orElseThrow().value());
        bench.run(BOX);
        assertEquals(1, reader.runs.get()); // a giver that did not run is the same as none
        bench.load(giver, 1);
        assertEquals(1, bench.run(BOX).data(Beta.class, "hot").orElseThrow().value());
        bench.unload(giver);
        assertEquals(0, bench.run(BOX).data(Beta.class, "hot").orElseThrow().value());
        assertEquals(2, reader.runs.get());
    }

    @Test
    void whatSeveralWantAtOnceIsComputedOnce() throws InterruptedException {
        CountDownLatch inside = new CountDownLatch(1);
        CountDownLatch go = new CountDownLatch(1);
        Toy<Alpha> slow = Toy.of("slow", Alpha.class, (input, run) -> {
            inside.countDown();
            try {
                go.await(10, TimeUnit.SECONDS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
            return Result.of(new Alpha(5));
        });
        Bench bench = Bench.with(slow);
        AtomicInteger right = new AtomicInteger();
        List<Thread> callers = IntStream.range(0, 3).mapToObj(i -> Thread.ofPlatform().start(() -> {
            if (bench.run(BOX).data(Alpha.class, "hot").map(Alpha::value).filter(value -> value == 5).isPresent()) {
                right.incrementAndGet();
            }
        })).toList();
        inside.await();
        Thread.sleep(50);
        go.countDown();
        for (Thread caller : callers) {
            caller.join();
        }
        assertEquals(3, right.get());
        assertEquals(1, slow.runs.get());
    }

    @Test
    void theLeastRecentlyUsedLeaveFirst() {
        Memo memo = new Memo(2);
        memo.retain(List.of(1L));
        Card card = Card.of(new Extension<>(Toy.giving("a", Alpha.class, new Alpha(1)), 1, 0, "lab.a 1.0.0"));
        Map<String, Key> keys = Map.of("a", key(card, "a"), "b", key(card, "b"), "c", key(card, "c"));
        for (String id : List.of("a", "b", "a", "c")) {
            Job job = new Job(running -> { });
            Frame frame = new Frame(null, job, null, card, Trace.SILENT);
            if (memo.enter(keys.get(id), frame, List.of(), new HashMap<>()) instanceof Memo.Compute(Pending pending)) {
                memo.leave(pending, Answer.of(Result.of(id), List.of(), 1, List.of()), true, new HashMap<>());
            }
        }
        assertEquals(2, memo.size());
        Frame frame = new Frame(null, new Job(running -> { }), null, card, Trace.SILENT);
        assertTrue(memo.enter(keys.get("a"), frame, List.of(), new HashMap<>()) instanceof Memo.Kept);
        assertTrue(memo.enter(keys.get("b"), frame, List.of(), new HashMap<>()) instanceof Memo.Compute);
        memo.retain(List.of());
        assertEquals(0, memo.size());
    }

    private static Key key(Card card, String condition) {
        return new Key(card, Design.EMPTY.withConditions(List.of(Condition.named(condition))), List.of(), List.of(), false, Set.of());
    }
}
