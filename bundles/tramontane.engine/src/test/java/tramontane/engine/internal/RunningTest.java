package tramontane.engine.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.analysis.Better;
import tramontane.analysis.Cancelled;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Evaluation.Status;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Judgement;
import tramontane.analysis.Overview;
import tramontane.analysis.Result;
import tramontane.analysis.Severity;
import tramontane.analysis.Table;
import tramontane.analysis.Verdict;
import tramontane.engine.internal.Toy.Alpha;
import tramontane.engine.internal.Toy.Beta;
import tramontane.engine.internal.Toy.Gamma;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.HeatSource;
import tramontane.model.Quantity;
import tramontane.model.Value;
import tramontane.physics.units.QuantityKind;

class RunningTest {

    private static final FigureKind X = Toy.figure("toy.x");
    private static final FigureKind Y = Toy.figure("toy.y");

    @Test
    void giversRunBeforeThoseThatNeedThem() {
        Evaluation evaluation = Bench.with(
                Toy.of("a", Gamma.class, (input, run) -> Result.of(new Gamma(input.result(Beta.class).value() + 1)))
                        .needs(Beta.class),
                Toy.of("b", Beta.class, (input, run) -> Result.of(new Beta(input.result(Alpha.class).value() * 2)))
                        .needs(Alpha.class),
                Toy.giving("c", Alpha.class, new Alpha(10))).run(Design.EMPTY);
        assertEquals(List.of("c", "b", "a"), evaluation.outcomes().stream().map(Evaluation.Outcome::analysis).toList());
        assertEquals(21, evaluation.data(Gamma.class, "nominal").orElseThrow().value());
        assertEquals(List.of(), evaluation.findings());
        assertFalse(evaluation.cancelled());
    }

    @Test
    void outcomesStandByCaseAndThenByOrder() {
        Evaluation evaluation = Bench.with(Toy.giving("wide", Gamma.class, new Gamma(0)).designWide(),
                Toy.giving("b", Beta.class, new Beta(0)), Toy.giving("a", Alpha.class, new Alpha(0)))
                .run(Bench.conditions("hot", "cold"));
        assertEquals(List.of("hot a", "hot b", "cold a", "cold b", " wide"),
                evaluation.outcomes().stream().map(outcome -> outcome.condition() + " " + outcome.analysis()).toList());
    }

    @Test
    void ofSeveralGiversTheHighestRankedCountsAndReceivesWhatTheNextLowerOneGave() {
        Bench bench = new Bench(Bench.THREADS)
                .load(Toy.giving("isothermal", Alpha.class, new Alpha(1)), 0)
                .load(Toy.of("coupled", Alpha.class, (input, run) -> Result.of(
                        new Alpha(input.result(Alpha.class).value() + 10))).needs(Alpha.class), 100)
                .load(Toy.of("refined", Alpha.class, (input, run) -> Result.of(
                        new Alpha(input.result(Alpha.class).value() + 100))).needs(Alpha.class), 200)
                .load(Toy.of("reader", Beta.class, (input, run) -> Result.of(
                        new Beta(input.result(Alpha.class).value()))).needs(Alpha.class), 0);
        Evaluation evaluation = bench.run(Design.EMPTY);
        assertEquals(111, evaluation.data(Beta.class, "nominal").orElseThrow().value());
        assertEquals(111, evaluation.data(Alpha.class, "nominal").orElseThrow().value());
        assertTrue(Bench.outcome(evaluation, "coupled", "nominal").overruled());
        assertFalse(Bench.outcome(evaluation, "refined", "nominal").overruled());
    }

    @Test
    void ofGiversOfEqualRankTheOneRegisteredFirstCounts() {
        Evaluation evaluation = Bench.with(Toy.giving("z", Alpha.class, new Alpha(1)), Toy.giving("a", Alpha.class, new Alpha(2)))
                .run(Design.EMPTY);
        assertEquals(1, evaluation.data(Alpha.class, "nominal").orElseThrow().value());
    }

    @Test
    void aFigureThatTheHigherRankedGivesTooHasOneValue() {
        Bench bench = new Bench(Bench.THREADS)
                .load(Toy.of("low", Alpha.class, (input, run) -> Result.of(new Alpha(1))
                        .with(Figure.of(X, "fans", 1), Figure.of(Y, "fans", 5))).figures(X, Y), 0)
                .load(Toy.of("high", Alpha.class, (input, run) -> Result.of(new Alpha(2))
                        .with(Figure.of(X, "fans", 2))).figures(X).needs(Alpha.class), 1);
        assertEquals(List.of("toy.y 5.0", "toy.x 2.0"), bench.run(Design.EMPTY).figures().stream()
                .map(figure -> figure.kind().id() + " " + figure.value()).toList());
    }

    private static Bench standIn(Toy<Alpha> high, FigureKind... low) {
        return new Bench(Bench.THREADS)
                .load(Toy.of("low", Alpha.class, (input, run) -> Result.of(new Alpha(1)).with(
                        Finding.caution("fans", "takes 20 Pa"), Finding.error("", "a curve is broken"))).figures(low), 0)
                .load(high.needs(Alpha.class), 1);
    }

    @Test
    void findingsOfAnAnalysisThatAnotherStandsInForAreNotSaidTwice() {
        Toy<Alpha> high = Toy.of("high", Alpha.class, (input, run) -> input.condition().id().equals("cold")
                ? Result.<Alpha>notComputed(Finding.error("", "no balance"))
                : Result.of(new Alpha(2)).with(Finding.caution("fans", "takes 22 Pa"))).figures(X, Y);
        Evaluation evaluation = standIn(high, X).run(Bench.conditions("hot", "cold"));
        // where it was not computed, what the lower one found is all there is
        assertEquals(List.of("hot a curve is broken", "hot takes 22 Pa", "cold takes 20 Pa", "cold a curve is broken",
                "cold no balance"), evaluation.findings().stream().map(each -> each.condition() + " " + each.message()).toList());
        assertEquals(List.of("a curve is broken"), Bench.outcome(evaluation, "low", "hot").result().findings().stream()
                .map(each -> each.message().toString()).toList());
        assertEquals(List.of("hot takes 20 Pa", "hot a curve is broken"), standIn(high, X)
                .run(Bench.conditions("hot"), Set.of("low"), Set.of()).findings().stream()
                .map(each -> each.condition() + " " + each.message()).toList());
    }

    @Test
    void whoGivesLessThanTheOtherDoesNotSpeakForIt() {
        Toy<Alpha> high = Toy.of("high", Alpha.class, (input, run) -> Result.of(new Alpha(2))
                .with(Finding.caution("fans", "takes 22 Pa"))).figures(X);
        assertEquals(List.of("takes 20 Pa", "a curve is broken", "takes 22 Pa"),
                Bench.messages(standIn(high, X, Y).run(Design.EMPTY)));
    }

    private static Overview overview(String title, String... figures) {
        return new Overview(new Table(title, List.of(new Table.Column("what", false)),
                List.of(List.<Table.Cell>of(new Table.Words("it")))), List.of(figures));
    }

    private static List<String> titles(Evaluation evaluation) {
        return evaluation.outcomes().stream().flatMap(outcome -> outcome.result().overviews().stream()
                .map(each -> outcome.condition() + " " + each.table().title())).toList();
    }

    @Test
    void tablesThatAnAnalysisLaysOutArriveWhereverItRunsAndAlsoWhenItIsNotRunAgain() {
        Toy<Alpha> perCase = Toy.of("case", Alpha.class, (input, run) -> Result.of(new Alpha(1)).with(overview("budget", "toy.x"))
                .with(Figure.of(X, "cpu", 1)).with(Finding.note("", "a note"))).figures(X);
        Toy<Beta> wide = Toy.of("wide", Beta.class, (input, run) -> Result.of(new Beta(1)).with(overview("hottest"),
                overview("coldest"))).designWide();
        Bench bench = Bench.with(perCase, wide);
        List<String> expected = List.of("hot budget", "cold budget", " hottest", " coldest");
        assertEquals(expected, titles(bench.run(Bench.conditions("hot", "cold"))));
        assertEquals(expected, titles(bench.run(Bench.conditions("hot", "cold"))));
        assertEquals(2, perCase.runs.get());
    }

    @Test
    void tablesOfAnAnalysisThatAnotherStandsInForAreNotShownBesideItsOwn() {
        Toy<Alpha> low = Toy.of("low", Alpha.class, (input, run) -> Result.of(new Alpha(1)).with(overview("low x", "toy.x"),
                overview("low y", "toy.y"), overview("low"))).figures(X, Y);
        Toy<Alpha> some = Toy.of("high", Alpha.class, (input, run) -> Result.of(new Alpha(2)).with(overview("high x", "toy.x")))
                .figures(X).needs(Alpha.class);
        assertEquals(List.of("nominal low y", "nominal low", "nominal high x"),
                titles(new Bench(Bench.THREADS).load(low, 0).load(some, 1).run(Design.EMPTY)));
        Toy<Alpha> all = Toy.of("high", Alpha.class, (input, run) -> Result.of(new Alpha(2))).figures(X, Y).needs(Alpha.class);
        assertEquals(List.of(), titles(new Bench(Bench.THREADS).load(low, 0).load(all, 1).run(Design.EMPTY)));
    }

    @Test
    void whereTheHighestRankedFailsTheLowerOneDoesNotStandInForIt() {
        Bench bench = new Bench(Bench.THREADS)
                .load(Toy.of("low", Alpha.class, (input, run) -> Result.of(new Alpha(1)).with(Figure.of(X, "fans", 9)))
                        .figures(X), 0)
                .load(Toy.of("high", Alpha.class, (input, run) -> Result.<Alpha>notComputed()).figures(X).needs(Alpha.class), 1);
        Evaluation evaluation = bench.run(Design.EMPTY.withRequirements(List.of(Bench.atLeast("toy.x", 1))));
        assertTrue(evaluation.data(Alpha.class, "nominal").isEmpty());
        assertEquals(Severity.NOT_JUDGED, evaluation.verdicts().getFirst().severity());
    }

    @Test
    void figuresAreHandedOnIfSomethingGivesThem() {
        Toy<Beta> reader = Toy.of("a.reader", Beta.class, (input, run) -> Result.of(new Beta(
                input.figures("toy.x").stream().mapToDouble(Figure::value).sum()))).readsFigures("toy.x");
        Toy<Alpha> giver = Toy.of("z.giver", Alpha.class, (input, run) -> Result.of(new Alpha(0))
                .with(Figure.of(X, "fans", 4), Figure.of(X, "box", 3))).figures(X);
        assertEquals(7, Bench.with(reader, giver).run(Design.EMPTY).data(Beta.class, "nominal").orElseThrow().value());
        assertEquals(0, Bench.with(reader).run(Design.EMPTY).data(Beta.class, "nominal").orElseThrow().value());
    }

    @Test
    void aFigureIsNotWaitedForWhereThatWouldCloseACircle() {
        Toy<Beta> reader = Toy.of("reader", Beta.class, (input, run) -> Result.of(new Beta(input.figures("toy.x").size())))
                .readsFigures("toy.x");
        Toy<Alpha> giver = Toy.of("giver", Alpha.class, (input, run) -> Result.of(new Alpha(input.result(Beta.class).value()))
                .with(Figure.of(X, "", 1))).figures(X).needs(Beta.class);
        Evaluation evaluation = Bench.with(reader, giver).run(Design.EMPTY);
        assertEquals(0, evaluation.data(Alpha.class, "nominal").orElseThrow().value());
        assertEquals(List.of(), evaluation.findings());
    }

    @Test
    void designWideAnalysesReceiveEveryCaseAndMayFeedConditions() {
        Toy<Alpha> perCase = Toy.of("case", Alpha.class, (input, run) -> Result.of(
                new Alpha(input.condition().id().length())));
        Toy<Beta> wide = Toy.of("wide", Beta.class, (input, run) -> Result.of(new Beta(input.results(Alpha.class).values()
                .stream().mapToDouble(Alpha::value).sum()))).designWide().needs(Alpha.class);
        Toy<Gamma> after = Toy.of("after", Gamma.class, (input, run) -> Result.of(
                new Gamma(input.result(Beta.class).value() + input.condition().id().length()))).needs(Beta.class);
        Evaluation evaluation = Bench.with(perCase, wide, after).run(Bench.conditions("hot", "cold"), Set.of(), Set.of("hot"));
        assertEquals(7, evaluation.data(Beta.class, "").orElseThrow().value());
        assertEquals(10, evaluation.data(Gamma.class, "hot").orElseThrow().value());
        // only what was asked for is shown, though the design-wide one needed the rest
        assertEquals(Set.of("hot", ""), Set.copyOf(evaluation.outcomes().stream().map(Evaluation.Outcome::condition).toList()));
    }

    @Test
    void casesThatCouldNotBeComputedAreMissingForDesignWideAnalyses() {
        Toy<Alpha> perCase = Toy.of("case", Alpha.class, (input, run) -> input.condition().id().equals("hot")
                ? Result.notComputed(Finding.caution("", "too hot")) : Result.of(new Alpha(1)));
        Toy<Beta> wide = Toy.of("wide", Beta.class, (input, run) -> Result.of(new Beta(input.results(Alpha.class).size())))
                .designWide().needs(Alpha.class);
        assertEquals(2, Bench.with(perCase, wide).run(Bench.conditions("cold", "hot", "mild")).data(Beta.class, "")
                .orElseThrow().value());
        assertEquals(Status.NOT_RUN, Bench.status(Bench.with(perCase, wide).run(Bench.conditions("hot")), "wide"));
    }

    @Test
    void whatNeedsSomethingThatNothingGivesDoesNotRunAndSaysSoOnce() {
        Evaluation evaluation = Bench.with(Toy.giving("a", Beta.class, new Beta(1)).needs(Alpha.class),
                Toy.giving("b", Gamma.class, new Gamma(1))).run(Bench.conditions("hot", "cold"));
        assertEquals(Status.NOT_RUN, Bench.outcome(evaluation, "a", "cold").status());
        assertEquals(Status.COMPUTED, Bench.outcome(evaluation, "b", "cold").status());
        assertEquals(List.of(Finding.of(Severity.NOT_JUDGED, "",
                "analysis a did not run: it needs Alpha, and nothing loaded gives it")), evaluation.findings());
    }

    @Test
    void aFigureThatBelongsToAnotherIsNotGiven() {
        FigureKind flow = new FigureKind("toy.flow", "flow", QuantityKind.FLOW, Better.HIGHER, "");
        FigureKind foreign = new FigureKind("toy.flow", "flow", QuantityKind.NUMBER, Better.HIGHER, "");
        Evaluation evaluation = Bench.with(
                Toy.of("first", Alpha.class, (input, run) -> Result.of(new Alpha(1)).with(Figure.of(flow, "fans", 2))).figures(flow),
                Toy.of("second", Beta.class, (input, run) -> Result.of(new Beta(1)).with(Figure.of(foreign, "fans", 3)))
                        .figures(foreign)).run(Bench.conditions("hot"));
        assertEquals(List.of(2.0), evaluation.figures().stream().map(Figure::value).toList());
        assertEquals(List.of("analysis second of bundle lab.second 1.0.0 is not used: figure toy.flow belongs to analysis first"
                + " of bundle lab.first 1.0.0"), Bench.messages(evaluation));
    }

    @Test
    void aCircleOfNeedsIsNamedAndTheRestGoesOn() {
        Evaluation evaluation = Bench.with(Toy.giving("c", Alpha.class, new Alpha(1)).needs(Beta.class),
                Toy.giving("b", Beta.class, new Beta(1)).needs(Gamma.class),
                Toy.giving("a", Gamma.class, new Gamma(1)).needs(Alpha.class),
                Toy.giving("behind", String.class, "").needs(Alpha.class),
                Toy.giving("apart", Integer.class, 1)).run(Design.EMPTY);
        assertEquals(Status.NOT_RUN, Bench.status(evaluation, "a"));
        assertEquals(Status.NOT_RUN, Bench.status(evaluation, "behind"));
        assertEquals(Status.COMPUTED, Bench.status(evaluation, "apart"));
        Finding error = evaluation.findings().stream().filter(each -> each.severity() == Severity.ERROR).findFirst().orElseThrow();
        assertEquals("analysis a of bundle lab.a 1.0.0 did not run: it needs itself by way of others"
                + " (a needs c needs b needs a)", error.message().toString());
    }

    static Stream<Arguments> misbehaviours() {
        return Stream.of(
                bad("throws", "IllegalStateException: oops", Toy.of("bad", Alpha.class, (input, run) -> {
                    throw new IllegalStateException("oops");
                })),
                bad("overflows the stack", "StackOverflowError", Toy.of("bad", Alpha.class, (input, run) -> endless(1))),
                bad("misses a class", "NoClassDefFoundError: lab/Gone", Toy.of("bad", Alpha.class, (input, run) -> {
                    throw new NoClassDefFoundError("lab/Gone");
                })),
                bad("runs out of memory", "OutOfMemoryError: full", Toy.of("bad", Alpha.class, (input, run) -> {
                    throw new OutOfMemoryError("full");
                })),
                bad("has a message that throws", "Nasty", Toy.of("bad", Alpha.class, (input, run) -> {
                    throw new Nasty();
                })),
                bad("says cancelled when nobody cancelled", "Cancelled: cancelled", Toy.of("bad", Alpha.class, (input, run) -> {
                    throw new Cancelled();
                })),
                bad("gives nothing", "run() gave nothing", Toy.of("bad", Alpha.class, (input, run) -> null)),
                bad("gives null data", "without data", Toy.of("bad", Alpha.class, (input, run) ->
                        new Result<>(null, List.of(), List.of()))),
                bad("gives another type", "run() gave a Beta, but gives() says Alpha", wrongType()),
                bad("gives a figure that it does not list", "figure toy.y, which is not among those",
                        Toy.of("bad", Alpha.class, (input, run) -> Result.of(new Alpha(1)).with(Figure.of(Y, "", 1))).figures(X)),
                bad("has no label", "label() gave nothing", Toy.giving("bad", Alpha.class, new Alpha(1)).label(() -> null)),
                bad("has a label that throws", "IllegalStateException: no words", Toy.giving("bad", Alpha.class, new Alpha(1))
                        .label(() -> {
                            throw new IllegalStateException("no words");
                        })),
                bad("reads nothing", "reads() gave nothing", Toy.giving("bad", Alpha.class, new Alpha(1)).reads(design -> null)),
                bad("wants what it did not ask for", "Beta was not asked for in needs()",
                        Toy.of("bad", Alpha.class, (input, run) -> Result.of(new Alpha(input.result(Beta.class).value())))),
                bad("wants a condition that it left out", "reads() left the condition out",
                        Toy.of("bad", Alpha.class, (input, run) -> Result.of(new Alpha(input.condition().temperature())))
                                .reads(design -> design.withConditions(List.of()))));
    }

    private static Arguments bad(String what, String says, Toy<?> toy) {
        return Arguments.of(what, says, toy);
    }

    private static final class Nasty extends RuntimeException {
        private static final long serialVersionUID = 1L;

        @Override
        public String getMessage() {
            throw new IllegalStateException("even this");
        }
    }

    @SuppressWarnings("unchecked")
    private static Toy<Alpha> wrongType() {
        return Toy.of("bad", Alpha.class, (input, run) -> (Result<Alpha>) (Result<?>) Result.of(new Beta(1)));
    }

    private static Result<Alpha> endless(int depth) {
        Result<Alpha> result = endless(depth + 1);
        return result.with(Figure.of(X, "", depth));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("misbehaviours")
    void oneThatMisbehavesIsNamedAndTheRestGoesOn(String what, String says, Toy<?> bad) {
        Bench bench = Bench.with(bad, Toy.giving("good", Gamma.class, new Gamma(1)),
                Toy.giving("needy", String.class, "").needs(Alpha.class));
        Evaluation evaluation = bench.run(Design.EMPTY);
        assertEquals(Status.FAILED, Bench.status(evaluation, "bad"));
        assertEquals(Status.COMPUTED, Bench.status(evaluation, "good"));
        assertEquals(Status.NOT_RUN, Bench.status(evaluation, "needy"));
        List<Finding> errors = evaluation.findings().stream().filter(each -> each.severity() == Severity.ERROR).toList();
        assertEquals(1, errors.size(), errors::toString);
        String message = errors.getFirst().message().toString();
        assertTrue(message.startsWith("analysis bad of bundle lab.bad 1.0.0 failed: "), message);
        assertTrue(message.contains(says), message);
        assertFalse(errors.getFirst().remedy().isEmpty());
    }

    @Test
    void twoAnalysesOfOneNameAreNotMixedUp() {
        Bench bench = new Bench(Bench.THREADS).load(Toy.giving("same", Alpha.class, new Alpha(1)), 0, "first 1.0.0")
                .load(Toy.giving("same", Beta.class, new Beta(1)), 5, "second 1.0.0");
        Evaluation evaluation = bench.run(Design.EMPTY);
        assertEquals(1, evaluation.outcomes().size());
        assertTrue(evaluation.data(Beta.class, "nominal").isPresent());
        assertEquals(List.of("analysis same of bundle first 1.0.0 is not used: bundle second 1.0.0 gives an analysis of the"
                + " same name"), Bench.messages(evaluation));
        assertEquals(2, bench.engine.analyses().size());
    }

    @Test
    void onlyTheChosenAndWhatTheyNeedOrReadAreRun() {
        Toy<Alpha> needed = Toy.giving("needed", Alpha.class, new Alpha(1));
        Toy<Beta> read = Toy.of("read", Beta.class, (input, run) -> Result.of(new Beta(1)).with(Figure.of(X, "", 2))).figures(X);
        Toy<Gamma> chosen = Toy.of("chosen", Gamma.class, (input, run) -> Result.of(new Gamma(
                input.figures("toy.x").size()))).needs(Alpha.class).readsFigures("toy.x");
        Toy<String> other = Toy.giving("other", String.class, "");
        Evaluation evaluation = Bench.with(needed, read, chosen, other).run(Design.EMPTY, Set.of("chosen", "none"), Set.of());
        assertEquals(Set.of("needed", "read", "chosen"),
                Set.copyOf(evaluation.outcomes().stream().map(Evaluation.Outcome::analysis).toList()));
        assertEquals(1, evaluation.data(Gamma.class, "nominal").orElseThrow().value());
        assertEquals(0, other.runs.get());
        assertEquals(List.of("no analysis none is loaded"), Bench.messages(evaluation));
    }

    @Test
    void anyOneFailedIsRunForEveryPositionAndTheWorstIsJudged() {
        Toy<Alpha> flow = Toy.of("flow", Alpha.class, (input, run) -> {
            int position = input.condition().failed().isEmpty() ? 0 : input.condition().failed().getFirst().position().orElseThrow();
            double value = Map.of(0, 10.0, 1, 7.0, 2, 5.0, 3, 6.0).get(position);
            return Result.of(new Alpha(value)).with(Figure.of(X, "fans", value));
        }).figures(X);
        Evaluation evaluation = Bench.with(flow).run(Bench.oneOfThree().withRequirements(List.of(Bench.atLeast("toy.x", 5.5))));
        assertEquals(List.of("all well", "any one failed: fans 1 locked", "any one failed: fans 2 locked",
                "any one failed: fans 3 locked"), evaluation.cases().stream().map(each -> each.concrete().id()).toList());
        assertEquals(List.of(Severity.MET, Severity.NOT_MET), evaluation.verdicts().stream().map(each -> each.severity()).toList());
        assertEquals("any one failed: fans 2 locked", evaluation.verdicts().get(1).figure().orElseThrow().condition());
        assertEquals(-0.5, evaluation.verdicts().get(1).margin(), 1e-12);
    }

    @Test
    void limitsOfHeatSourcesAreJudgedOnceSomethingGivesComponentTemperatures() {
        Design design = Bench.conditions("hot").withHeatSources(List.of(new HeatSource("cpu", Quantity.of(35), List.of(),
                Optional.of(Quantity.of(358.15)), Value.Tree.EMPTY)));
        Evaluation without = Bench.with(Toy.giving("a", Alpha.class, new Alpha(1))).run(design);
        assertEquals(List.of(), without.verdicts());
        assertEquals(List.of("the limit of one heat source is not judged: nothing loaded gives component temperatures"),
                Bench.messages(without));
        FigureKind junction = new FigureKind(Judgement.COMPONENT_TEMPERATURE, "junction temperature",
                QuantityKind.TEMPERATURE, Better.LOWER, "");
        Toy<Alpha> heat = Toy.of("heat", Alpha.class, (input, run) -> Result.of(new Alpha(0))
                .with(Figure.of(junction, "cpu", 350.15))).figures(junction);
        Evaluation with = Bench.with(heat).run(design);
        assertEquals(List.of(), Bench.messages(with));
        assertEquals(List.of("cpu hot met 8.0"), with.verdicts().stream().map(each -> each.requirement().place() + " "
                + each.condition() + " " + each.severity().word() + " " + each.margin()).toList());
        // one that could not be computed is never taken for met, nor is one in a design with errors
        Toy<Alpha> silent = Toy.of("heat", Alpha.class, (input, run) -> Result.<Alpha>notComputed()).figures(junction);
        assertEquals(List.of("could not be computed: analysis heat found no answer"),
                Bench.with(silent).run(design).verdicts().stream().map(Verdict::reason).toList());
        Design broken = design.withConditions(List.of(Condition.named("hot").with("hot", List.of(
                new FailedMover(Optional.of("fans"), Optional.of(1), FailedMover.State.LOCKED)))));
        assertEquals(List.of(), Bench.with(heat).run(broken).verdicts().stream()
                .filter(each -> each.severity() != Severity.NOT_JUDGED).toList());
    }

    @Test
    void aDesignWithErrorsIsNotJudged() {
        Toy<Alpha> toy = Toy.giving("a", Alpha.class, new Alpha(1));
        Design broken = Bench.oneOfThree().withRequirements(List.of(Bench.atLeast("toy.x", 1)));
        broken = broken.withConditions(List.of(broken.conditions().get(1).with("lost", List.of(
                new FailedMover(Optional.of("fans"), Optional.of(4), FailedMover.State.LOCKED)))));
        Evaluation evaluation = Bench.with(toy).run(broken);
        assertEquals(0, toy.runs.get());
        assertEquals(Severity.NOT_JUDGED, evaluation.verdicts().getFirst().severity());
        assertTrue(Bench.messages(evaluation).contains(
                "conditions[0].failed[0].position: is 4; expected a position in bank fans, 1 to 3"), () -> Bench.messages(evaluation).toString());
    }

    @Test
    void progressNeverFallsAndEndsAtOne() {
        List<Double> seen = new CopyOnWriteArrayList<>();
        Toy<Alpha> toy = Toy.of("a", Alpha.class, (input, run) -> {
            run.progress(0.5, "half");
            run.progress(Double.NaN, "lost");
            run.progress(0.2, "back");
            run.progress(7, "beyond");
            return Result.of(new Alpha(1));
        });
        Bench.with(toy, Toy.giving("b", Beta.class, new Beta(1)).needs(Alpha.class)).engine.evaluate(
                Engine.Request.all(Bench.conditions("hot", "cold")), new Engine.Watch() {
                    @Override
                    public boolean cancelled() {
                        return false;
                    }

                    @Override
                    public void progress(double fraction, String message) {
                        seen.add(fraction);
                    }
                });
        assertEquals(seen.stream().sorted().toList(), seen);
        assertEquals(1.0, seen.getLast());
    }

    @Test
    void aBundleThatLeavesDuringARunDoesNotBreakIt() {
        Bench bench = new Bench(Bench.THREADS);
        Toy<Alpha> leaving = Toy.giving("leaving", Alpha.class, new Alpha(3));
        bench.load(leaving, 0);
        bench.load(Toy.of("first", Gamma.class, (input, run) -> {
            bench.unload(leaving);
            return Result.of(new Gamma(1));
        }), 0);
        bench.load(Toy.of("needy", Beta.class, (input, run) -> Result.of(new Beta(input.result(Alpha.class).value())))
                .needs(Alpha.class, Gamma.class), 0);
        assertEquals(3, bench.run(Design.EMPTY).data(Beta.class, "nominal").orElseThrow().value());
        assertEquals(Status.NOT_RUN, Bench.status(bench.run(Design.EMPTY), "needy"));
    }
}
