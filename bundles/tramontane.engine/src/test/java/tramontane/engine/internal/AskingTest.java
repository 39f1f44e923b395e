package tramontane.engine.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Evaluation.Status;
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
