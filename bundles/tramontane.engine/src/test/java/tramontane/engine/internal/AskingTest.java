package tramontane.engine.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import tramontane.analysis.Cancelled;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Evaluation.Status;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Input;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.engine.internal.Toy.Alpha;
import tramontane.engine.internal.Toy.Beta;
import tramontane.engine.internal.Toy.Gamma;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.Quantity;

/** "What if": analyses that ask for other designs and conditions. */
@Timeout(60)
class AskingTest {

    private static Condition speed(String id, double setting) {
        return Condition.named(id).withSpeed(Quantity.of(setting));
    }

    @Test
    void anAnswerIsComputedForWhatWasAskedWithAllThatItNeeds() {
        Toy<Alpha> base = Toy.of("base", Alpha.class, (input, run) -> Result.of(new Alpha(input.condition().speedSetting())));
        Toy<Beta> middle = Toy.of("middle", Beta.class, (input, run) -> Result.of(
                new Beta(2 * input.result(Alpha.class).value()))).needs(Alpha.class);
        Toy<Gamma> asks = Toy.of("asks", Gamma.class, (input, run) -> Result.of(new Gamma(
                run.ask(input.design(), speed("half", 0.5), Beta.class).orElseThrow().value())));
        Bench bench = Bench.with(base, middle, asks);
        assertEquals(1.0, bench.run(Design.EMPTY).data(Gamma.class, "nominal").orElseThrow().value());
        // once for the condition, once for the question; and both are kept
        assertEquals(2, middle.runs.get());
        bench.run(Design.EMPTY);
        assertEquals(2, middle.runs.get());
        assertEquals(1, asks.runs.get());
    }

    @Test
    void designWideDataCanBeAskedFor() {
        Toy<Alpha> base = Toy.of("base", Alpha.class, (input, run) -> Result.of(new Alpha(input.condition().speedSetting())));
        Toy<Beta> wide = Toy.of("wide", Beta.class, (input, run) -> Result.of(new Beta(input.results(Alpha.class).values()
                .stream().mapToDouble(Alpha::value).sum()))).designWide().needs(Alpha.class);
        Toy<Gamma> asks = Toy.of("asks", Gamma.class, (input, run) -> Result.of(new Gamma(run.ask(
                input.design().withConditions(List.of(speed("a", 0.25), speed("b", 0.5))), Condition.NOMINAL, Beta.class)
                .orElseThrow().value())));
        assertEquals(0.75, Bench.with(base, wide, asks).run(Design.EMPTY).data(Gamma.class, "nominal").orElseThrow().value());
    }

    @Test
    void whatNothingGivesIsEmptyUntilSomethingGivesIt() {
        Toy<Beta> asks = Toy.of("asks", Beta.class, (input, run) -> Result.of(new Beta(
                run.ask(input.design(), input.condition(), Alpha.class).map(Alpha::value).orElse(-1.0))));
        Bench bench = Bench.with(asks);
        assertEquals(-1, bench.run(Design.EMPTY).data(Beta.class, "nominal").orElseThrow().value());
        Toy<Alpha> low = Toy.giving("low", Alpha.class, new Alpha(1));
        bench.load(low, 0);
        assertEquals(1, bench.run(Design.EMPTY).data(Beta.class, "nominal").orElseThrow().value());
        bench.load(Toy.giving("high", Alpha.class, new Alpha(2)), 5);
        assertEquals(2, bench.run(Design.EMPTY).data(Beta.class, "nominal").orElseThrow().value());
    }

    @Test
    void aFailureBehindAQuestionIsReportedAndNotKept() {
        Toy<Alpha> fails = Toy.of("fails", Alpha.class, (input, run) -> {
            throw new IllegalStateException("oops");
        });
        Toy<Beta> asks = Toy.of("asks", Beta.class, (input, run) -> Result.of(new Beta(
                run.ask(input.design(), speed("half", 0.5), Alpha.class).isPresent() ? 1 : 0)));
        Bench bench = Bench.with(fails, asks);
        Evaluation evaluation = bench.run(Design.EMPTY);
        assertEquals(0, evaluation.data(Beta.class, "nominal").orElseThrow().value());
        assertTrue(Bench.outcome(evaluation, "asks", "nominal").result().findings().getFirst().message()
                .toString().contains("analysis fails of bundle lab.fails 1.0.0 failed"));
        bench.run(Design.EMPTY);
        assertEquals(2, asks.runs.get());
    }

    @Test
    void onlyConcreteConditionsCanBeAskedAbout() {
        Toy<Beta> asks = Toy.of("asks", Beta.class, (input, run) -> Result.of(new Beta(run.ask(input.design(),
                Condition.NOMINAL.with("any", List.of(new FailedMover(Optional.empty(), Optional.empty(),
                        FailedMover.State.LOCKED))), Alpha.class).isPresent() ? 1 : 0)));
        Evaluation evaluation = Bench.with(asks).run(Design.EMPTY);
        assertTrue(Bench.messages(evaluation).getFirst().contains("condition any has failed movers that are not concrete"));
    }

    /** Its bounds are left out where another analysis asks, and there only; whichever of both comes first. */
    @Test
    void briefAnswersAreForThoseWhoAskAlone() {
        Toy<Alpha> giver = Toy.of("giver", Alpha.class, (input, run) -> Result.of(new Alpha(run.brief() ? 1 : 2))
                .with(run.brief() ? Figure.of(X, "", 5) : Figure.of(X, "", 5).within(4, 6))).figures(X).mayLeaveOut();
        Toy<Beta> asks = Toy.of("asks", Beta.class, (input, run) -> Result.of(new Beta(run.ask(input.design(), speed("half", 0.5), Alpha.class)
                .orElseThrow().value())));
        Bench bench = Bench.with(giver, asks);
        Evaluation evaluation = bench.run(Design.EMPTY);
        assertEquals(2, evaluation.data(Alpha.class, "nominal").orElseThrow().value());
        assertEquals(1, evaluation.data(Beta.class, "nominal").orElseThrow().value());
        assertEquals(2, giver.runs.get());
        // the condition that was asked about before is now wanted with all
        Evaluation half = bench.run(Design.EMPTY.withConditions(List.of(speed("half", 0.5))));
        assertEquals(2, half.data(Alpha.class, "half").orElseThrow().value());
        assertTrue(half.figures(X.id(), "half").get("").lower().isPresent());
        assertEquals(1, half.data(Beta.class, "half").orElseThrow().value(), "whoever comes first, who asks gets the same");
        assertEquals(3, giver.runs.get());
    }

    @Test
    void aBriefRequestIsAnsweredBrieflyAndKeptApart() {
        Toy<Alpha> giver = Toy.of("giver", Alpha.class, (input, run) -> Result.of(new Alpha(run.brief() ? 1 : 2))).mayLeaveOut();
        Toy<Beta> never = Toy.of("never", Beta.class, (input, run) -> Result.of(new Beta(run.brief() ? 1 : 2)));
        Bench bench = Bench.with(giver, never);
        Evaluation brief = bench.engine.evaluate(Engine.Request.all(Design.EMPTY).brief(true), Engine.Watch.NONE);
        assertEquals(1, brief.data(Alpha.class, "nominal").orElseThrow().value());
        assertEquals(2, brief.data(Beta.class, "nominal").orElseThrow().value());
        assertEquals(2, bench.run(Design.EMPTY).data(Alpha.class, "nominal").orElseThrow().value());
    }

    @Test
    void whoDoesNotSayThatHeMayBeBriefNeverIs() {
        Toy<Alpha> giver = Toy.of("giver", Alpha.class, (input, run) -> Result.of(new Alpha(run.brief() ? 1 : 2)));
        Toy<Beta> asks = Toy.of("asks", Beta.class, (input, run) -> Result.of(new Beta(run.ask(input.design(), input.condition(), Alpha.class)
                .orElseThrow().value())));
        assertEquals(2, Bench.with(giver, asks).run(Design.EMPTY).data(Beta.class, "nominal").orElseThrow().value());
        assertEquals(1, giver.runs.get());
    }

    private static final FigureKind X = Toy.figure("toy.x");

    /** Gives figure toy.x at two places, so many times the speed setting. */
    private static Toy<Alpha> giver(String id, double factor) {
        return Toy.of(id, Alpha.class, (input, run) -> {
            double value = factor * input.condition().speedSetting();
            return Result.of(new Alpha(value)).with(Figure.of(X, "left", value), Figure.of(X, "right", 2 * value));
        }).figures(X);
    }

    /** Asks for figure toy.x at half speed and gives the sum over its places; -1 where there is none. */
    private static Toy<Beta> asker(String id) {
        return Toy.of(id, Beta.class, (input, run) -> Result.of(new Beta(
                run.figures(input.design(), speed("half", 0.5), "toy.x").stream().mapToDouble(Figure::value)
                        .reduce(Double::sum).orElse(-1))));
    }

    private static double answer(Bench bench) {
        return bench.run(Design.EMPTY).data(Beta.class, "nominal").orElseThrow().value();
    }

    @Test
    void figuresAreAskedForByTheirIdAndKept() {
        Toy<Alpha> giver = giver("giver", 4);
        Toy<Beta> one = asker("one");
        Toy<Gamma> two = Toy.of("two", Gamma.class, (input, run) -> {
            List<Figure> figures = run.figures(input.design(), speed("half", 0.5), "toy.x");
            assertEquals(List.of(Figure.of(X, "left", 2).in("half"), Figure.of(X, "right", 4).in("half")), figures);
            return Result.of(new Gamma(figures.size()));
        });
        Bench bench = Bench.with(giver, one, two);
        assertEquals(6, answer(bench));
        assertEquals(List.of(), Bench.messages(bench.run(Design.EMPTY)));
        // once for the condition, once for both questions; and all is kept
        assertEquals(2, giver.runs.get());
        assertEquals(1, one.runs.get());
    }

    @Test
    void figuresThatNothingGivesAreEmptyUntilSomethingGivesThem() {
        Bench bench = Bench.with(asker("asks"));
        assertEquals(-1, answer(bench));
        assertEquals(List.of(), Bench.messages(bench.run(Design.EMPTY)));
        Toy<Alpha> giver = giver("giver", 4);
        bench.load(giver, 0);
        assertEquals(6, answer(bench));
        bench.unload(giver);
        assertEquals(-1, answer(bench));
    }

    @Test
    void ofSeveralThatAnnounceAFigureTheHighestRankedIsAsked() {
        Toy<Alpha> low = giver("low", 4);
        Bench bench = Bench.with(asker("asks"), low);
        bench.load(Toy.giving("silent", Alpha.class, new Alpha(7)), 9); // gives the type, but not the figure
        assertEquals(6, answer(bench));
        bench.load(giver("high", 40).needs(Alpha.class), 5);
        assertEquals(60, answer(bench));
        // and it is the one that counts in the evaluation, too
        assertEquals(40, bench.run(Design.EMPTY).figures("toy.x", "nominal").get("left").value());
    }

    @Test
    void figuresOfTheDesignAsAWholeDoNotDependOnTheConditionAsked() {
        Toy<Alpha> wide = Toy.of("wide", Alpha.class, (input, run) -> Result.of(new Alpha(1)).with(
                Figure.of(X, "", input.design().conditions().size()), Figure.of(X, "", 7).in("b"))).designWide().figures(X);
        Toy<Gamma> asks = Toy.of("asks", Gamma.class, (input, run) -> {
            List<Figure> figures = run.figures(input.design().withConditions(List.of(speed("a", 0.25), speed("b", 0.5))),
                    Condition.named("of no matter"), "toy.x");
            assertEquals(List.of(Figure.of(X, "", 2), Figure.of(X, "", 7).in("b")), figures);
            return Result.of(new Gamma(1));
        });
        assertEquals(List.of(), Bench.messages(Bench.with(wide, asks).run(Design.EMPTY)));
    }

    @Test
    void figuresThatCouldNotBeComputedAreEmpty() {
        Toy<Alpha> fails = Toy.of("fails", Alpha.class, (input, run) -> {
            throw new IllegalStateException("oops");
        }).figures(X);
        Toy<Beta> asks = asker("asks");
        Bench bench = Bench.with(fails, asks);
        Evaluation evaluation = bench.run(Design.EMPTY);
        assertEquals(-1, evaluation.data(Beta.class, "nominal").orElseThrow().value());
        assertTrue(Bench.outcome(evaluation, "asks", "nominal").result().findings().getFirst().message()
                .toString().contains("analysis fails of bundle lab.fails 1.0.0 failed"));
        // tried again, as it may succeed another time
        bench.run(Design.EMPTY);
        assertEquals(2, asks.runs.get());
        Toy<Alpha> without = Toy.of("without", Alpha.class, (input, run) -> new Result<Alpha>(Optional.empty(),
                List.of(Figure.of(X, "", 3)), List.of())).figures(X);
        assertEquals(-1, answer(Bench.with(without, asker("asks"))));
    }

    @Test
    void aCircleOfQuestionsForFiguresIsSaidAsAnyOther() {
        Toy<Alpha> ping = Toy.of("ping", Alpha.class, (input, run) -> {
            int there = run.figures(input.design(), Condition.named("nominal"), "toy.y").size();
            return Result.of(new Alpha(there)).with(Figure.of(X, "", there));
        }).figures(X);
        FigureKind y = Toy.figure("toy.y");
        Toy<Beta> pong = Toy.of("pong", Beta.class, (input, run) -> {
            int there = run.figures(input.design(), Condition.named("nominal"), "toy.x").size();
            return Result.of(new Beta(there)).with(Figure.of(y, "", there));
        }).figures(y);
        for (int threads : List.of(1, 4)) {
            Evaluation evaluation = new Bench(threads).load(ping, 0).load(pong, 0).run(Design.EMPTY);
            assertEquals(Status.FAILED, Bench.status(evaluation, "ping"));
            assertEquals(Status.FAILED, Bench.status(evaluation, "pong"));
            assertEquals(List.of("analyses ask each other in a circle (ping asks pong asks ping); the bundles are"
                    + " lab.ping 1.0.0, lab.pong 1.0.0"), Bench.messages(evaluation));
        }
    }

    @Test
    void aCancelPassesThroughAQuestionForFigures() throws InterruptedException {
        CountDownLatch inside = new CountDownLatch(1);
        CountDownLatch heard = new CountDownLatch(2);
        Toy<Alpha> waits = Toy.of("waits", Alpha.class, (input, run) -> {
            try {
                while (true) {
                    if (input.condition().id().equals("half")) {
                        inside.countDown();
                    }
                    run.check();
                }
            } catch (Cancelled e) {
                if (input.condition().id().equals("half")) {
                    heard.countDown();
                }
                throw e;
            }
        }).figures(X);
        Toy<Beta> asks = Toy.of("asks", Beta.class, (input, run) -> {
            try {
                return Result.of(new Beta(run.figures(input.design(), speed("half", 0.5), "toy.x").size()));
            } catch (Cancelled e) {
                heard.countDown();
                throw e;
            }
        });
        Evaluation evaluation = Bench.with(waits, asks).engine.evaluate(Engine.Request.all(Design.EMPTY), new Engine.Watch() {
            @Override
            public boolean cancelled() {
                return inside.getCount() == 0;
            }

            @Override
            public void progress(double fraction, String message) {
                // nobody looks
            }
        });
        assertTrue(evaluation.cancelled());
        assertTrue(heard.await(10, TimeUnit.SECONDS));
        assertEquals(List.of(), evaluation.findings());
    }

    private static Optional<Double> ask(Input input, Run run, String condition, Class<Alpha> type) {
        return run.ask(input.design(), Condition.named(condition), type).map(Alpha::value);
    }

    @Test
    void oneThatAsksForItselfFails() {
        Toy<Alpha> self = Toy.of("self", Alpha.class, (input, run) ->
                Result.of(new Alpha(ask(input, run, input.condition().id(), Alpha.class).orElse(0.0) + 1)));
        Evaluation evaluation = Bench.with(self).run(Design.EMPTY);
        assertEquals(Status.FAILED, Bench.status(evaluation, "self"));
        assertEquals(List.of("analyses ask each other in a circle (self asks self); the bundles are lab.self 1.0.0"),
                Bench.messages(evaluation));
    }

    /** Two that ask each other, and one that asks into the circle from outside. */
    private static Bench circle(int threads, CyclicBarrier barrier) {
        Toy<Alpha> ping = Toy.of("ping", Alpha.class, (input, run) -> {
            meet(barrier, input);
            return Result.of(new Alpha(run.ask(input.design(), Condition.named("nominal"), Beta.class)
                    .map(Beta::value).orElse(0.0) + 1));
        });
        Toy<Beta> pong = Toy.of("pong", Beta.class, (input, run) -> {
            meet(barrier, input);
            return Result.of(new Beta(run.ask(input.design(), Condition.named("nominal"), Alpha.class)
                    .map(Alpha::value).orElse(0.0) + 1));
        });
        Toy<Gamma> outside = Toy.of("outside", Gamma.class, (input, run) -> Result.of(new Gamma(
                run.ask(input.design(), Condition.named("nominal"), Alpha.class).map(Alpha::value).orElse(-1.0))));
        return new Bench(threads).load(ping, 0).load(pong, 0).load(outside, 0);
    }

    /** Lets both be inside before either asks, so that each waits for the other's thread. */
    private static void meet(CyclicBarrier barrier, Input input) {
        if (barrier != null) {
            try {
                barrier.await(200, TimeUnit.MILLISECONDS);
            } catch (Exception e) {
                barrier.reset();
            }
        }
    }

    @RepeatedTest(5)
    void aCircleOfQuestionsFailsTheSameWayOnOneThreadAndOnSeveral() {
        Evaluation alone = circle(1, null).run(Design.EMPTY);
        assertEquals(Status.FAILED, Bench.status(alone, "ping"));
        assertEquals(Status.FAILED, Bench.status(alone, "pong"));
        assertEquals(-1, alone.data(Gamma.class, "nominal").orElseThrow().value());
        assertTrue(Bench.messages(alone).contains("analyses ask each other in a circle (ping asks pong asks ping);"
                + " the bundles are lab.ping 1.0.0, lab.pong 1.0.0"));
        assertEquals(alone, circle(4, null).run(Design.EMPTY));
        assertEquals(alone, circle(4, new CyclicBarrier(2)).run(Design.EMPTY));
    }

    @Test
    void questionsWithinQuestionsEndSomewhere() {
        Toy<Alpha> deep = Toy.of("deep", Alpha.class, (input, run) -> {
            int left = Integer.parseInt(input.condition().id());
            return Result.of(new Alpha(left == 0 ? 0 : run.ask(input.design(), Condition.named(String.valueOf(left - 1)),
                    Alpha.class).orElseThrow(() -> new IllegalStateException("too far")).value() + 1));
        });
        Bench bench = Bench.with(deep);
        assertEquals(31, bench.run(Bench.conditions("31")).data(Alpha.class, "31").orElseThrow().value());
        // one deeper fails, whether the others are kept already or not
        for (Bench each : List.of(bench, Bench.with(deep))) {
            Evaluation evaluation = each.run(Bench.conditions("32"));
            assertEquals(Status.FAILED, Bench.status(evaluation, "deep"));
            assertEquals(List.of("analysis deep of bundle lab.deep 1.0.0 failed: its questions lead to more than 32 questions"
                    + " within each other"), Bench.messages(evaluation));
        }
    }
}
