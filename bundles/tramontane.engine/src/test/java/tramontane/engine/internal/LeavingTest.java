package tramontane.engine.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import tramontane.analysis.Cancelled;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Evaluation.Status;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Result;
import tramontane.analysis.Severity;
import tramontane.engine.internal.Toy.Alpha;
import tramontane.engine.internal.Toy.Beta;
import tramontane.engine.internal.Toy.Gamma;
import tramontane.model.Condition;
import tramontane.model.Design;

/** Cancelled runs and runs without end. */
@Timeout(30)
class LeavingTest {

    private static final FigureKind X = Toy.figure("toy.x");

    private final AtomicBoolean spin = new AtomicBoolean(true);
    private final CountDownLatch spinning = new CountDownLatch(1);

    @AfterEach
    void letGo() {
        spin.set(false);
    }

    /** Never looks at cancel, never sleeps, ignores interrupts. */
    private Result<Alpha> loop() {
        spinning.countDown();
        while (spin.get()) {
            Thread.onSpinWait();
        }
        return Result.of(new Alpha(1));
    }

    private Toy<Alpha> looping(String id) {
        return Toy.of(id, Alpha.class, (input, run) -> loop());
    }

    private static Engine.Watch cancelledWhen(CountDownLatch latch) {
        return new Engine.Watch() {
            @Override
            public boolean cancelled() {
                return latch.getCount() == 0;
            }

            @Override
            public void progress(double fraction, String message) {
                // nobody looks
            }
        };
    }

    @Test
    void cancelGivesControlBackWhileALoopStillSpins() {
        Bench bench = Bench.with(looping("loops"), Toy.of("quick", Beta.class, (input, run) -> Result.of(new Beta(1))
                .with(Figure.of(X, "", 1))).figures(X), Toy.giving("behind", Gamma.class, new Gamma(1)).needs(Alpha.class));
        AtomicBoolean stillSpinning = new AtomicBoolean();
        Evaluation evaluation = bench.engine.evaluate(Engine.Request.all(Design.EMPTY.withRequirements(
                List.of(Bench.atLeast("toy.x", 0), Bench.atLeast("toy.y", 0)))), cancelledWhen(spinning));
        stillSpinning.set(spin.get());
        assertTrue(stillSpinning.get());
        assertTrue(evaluation.cancelled());
        assertTrue(evaluation.outcomes().stream().noneMatch(each -> each.analysis().equals("loops")
                || each.analysis().equals("behind")));
        // what is there is right: nothing is judged on what is not
        assertTrue(evaluation.verdicts().stream().allMatch(each -> each.severity() == Severity.NOT_JUDGED
                || each.figure().isPresent()));
    }

    @Test
    void aCancelGivesControlBackWhileALoopStillSpins() throws InterruptedException {
        Bench bench = Bench.with(looping("loops"));
        long[] asked = new long[1];
        bench.engine.evaluate(Engine.Request.all(Design.EMPTY), new Engine.Watch() {
            @Override
            public boolean cancelled() {
                if (spinning.getCount() == 0 && asked[0] == 0) {
                    asked[0] = System.nanoTime();
                }
                return asked[0] != 0;
            }

            @Override
            public void progress(double fraction, String message) {
                // nobody looks
            }
        });
        // control is back although the loop still spins; how soon is measured, not asserted
        assertTrue(spin.get());
    }

    @Test
    void whatWasFinishedBeforeACancelIsKept() throws InterruptedException {
        CountDownLatch quickIsDone = new CountDownLatch(1);
        Toy<Beta> quick = Toy.giving("quick", Beta.class, new Beta(1));
        Toy<Gamma> after = Toy.of("after", Gamma.class, (input, run) -> {
            quickIsDone.countDown();
            return Result.of(new Gamma(loop().data().orElseThrow().value()));
        }).needs(Beta.class);
        Evaluation evaluation = Bench.with(quick, after).engine.evaluate(Engine.Request.all(Design.EMPTY),
                cancelledWhen(quickIsDone));
        assertEquals(List.of("quick"), evaluation.outcomes().stream().map(Evaluation.Outcome::analysis).toList());
    }

    @Test
    void cancelledLoopsDoNotUseUpTheThreads() {
        Bench bench = new Bench(1);
        Toy<Beta> quick = Toy.giving("quick", Beta.class, new Beta(1));
        Toy<Alpha> loops = looping("loops");
        bench.load(loops, 0);
        for (int i = 0; i < 3; i++) {
            assertTrue(bench.engine.evaluate(Engine.Request.all(Design.EMPTY), cancelledWhen(spinning)).cancelled());
        }
        bench.unload(loops).load(quick, 0);
        assertEquals(Status.COMPUTED, Bench.status(bench.run(Design.EMPTY), "quick"));
    }

    @Test
    void anAnalysisHearsThatItIsCancelled() throws InterruptedException {
        CountDownLatch heard = new CountDownLatch(1);
        Toy<Alpha> polite = Toy.of("polite", Alpha.class, (input, run) -> {
            spinning.countDown();
            try {
                while (true) {
                    run.check();
                }
            } catch (Cancelled e) {
                heard.countDown();
                throw e;
            }
        });
        Evaluation evaluation = Bench.with(polite).engine.evaluate(Engine.Request.all(Design.EMPTY), cancelledWhen(spinning));
        assertTrue(heard.await(10, TimeUnit.SECONDS));
        assertEquals(List.of(), evaluation.findings());
    }

    @Test
    void aRunCancelledFromTheStartRunsNothing() {
        Toy<Alpha> toy = Toy.giving("a", Alpha.class, new Alpha(1));
        CountDownLatch over = new CountDownLatch(0);
        Evaluation evaluation = Bench.with(toy).engine.evaluate(Engine.Request.all(Design.EMPTY), cancelledWhen(over));
        assertTrue(evaluation.cancelled());
        assertEquals(0, toy.runs.get());
    }

    @Test
    void anInterruptedCallerLeavesAndStaysInterrupted() {
        Thread.currentThread().interrupt();
        Evaluation evaluation = Bench.with(looping("loops")).run(Design.EMPTY);
        assertTrue(Thread.interrupted());
        assertTrue(evaluation.cancelled());
    }

    @Test
    void beyondItsTimeLimitAnAnalysisIsDroppedAndItsBundleBarred() {
        Bench bench = new Bench(1);
        Toy<Beta> sibling = Toy.giving("sibling", Beta.class, new Beta(1));
        Toy<Alpha> loops = looping("loops");
        bench.load(loops, 0, "lab.toys 1.0.0");
        bench.load(Toy.giving("zz.after", Gamma.class, new Gamma(1)), 0);
        Evaluation evaluation = bench.run(Design.EMPTY, Duration.ofMillis(1500));
        assertFalse(evaluation.cancelled());
        assertEquals(Status.FAILED, Bench.status(evaluation, "loops"));
        assertEquals(Status.COMPUTED, Bench.status(evaluation, "zz.after"));
        assertEquals(List.of("analysis loops of bundle lab.toys 1.0.0 ran beyond the time limit of 1500 ms; its result is"
                + " dropped, and bundle lab.toys 1.0.0 is barred until the program is started again"), Bench.messages(evaluation));

        bench.load(sibling, 0, "lab.toys 1.0.0");
        Evaluation again = bench.run(Design.EMPTY);
        assertEquals(Status.NOT_RUN, Bench.status(again, "loops"));
        assertEquals(Status.NOT_RUN, Bench.status(again, "sibling"));
        assertEquals(Status.COMPUTED, Bench.status(again, "zz.after"));
        assertEquals(1, loops.runs.get());
        assertEquals(0, sibling.runs.get());
        assertEquals("bundle lab.toys 1.0.0 is barred until the program is started again: its analysis loops ran beyond the"
                + " time limit of 1500 ms", bench.engine.analyses().getFirst().barred().orElseThrow());
    }

    @Test
    void whoeverAskedARunawayIsDroppedButNotBarred() {
        Toy<Alpha> loops = Toy.of("loops", Alpha.class, (input, run) ->
                input.condition().id().equals("what if") ? loop() : Result.of(new Alpha(1)));
        Toy<Beta> asks = Toy.of("asks", Beta.class, (input, run) -> Result.of(new Beta(
                run.ask(input.design(), Condition.named("what if"), Alpha.class).orElseThrow().value())));
        Bench bench = Bench.with(loops, asks);
        Evaluation evaluation = bench.run(Design.EMPTY, Duration.ofMillis(300));
        assertEquals(Status.FAILED, Bench.status(evaluation, "asks"));
        assertEquals(List.of("asks -", "loops barred"), bench.engine.analyses().stream()
                .map(each -> each.id() + (each.barred().isPresent() ? " barred" : " -")).toList());
        assertTrue(Bench.messages(evaluation).getFirst().startsWith("analysis asks of bundle lab.asks 1.0.0 was stopped at the"
                + " time limit of 300 ms, which analysis loops of bundle lab.loops 1.0.0 used up"), Bench.messages(evaluation)::toString);
    }

    @Test
    void aRunawayThatWasCancelledIsBarredWhenItsTimeIsUp() throws InterruptedException {
        Bench bench = Bench.with(looping("loops"));
        bench.engine.evaluate(new Engine.Request(Design.EMPTY, Set.of(), Set.of(), Duration.ofMillis(200)),
                cancelledWhen(spinning));
        for (int i = 0; i < 500 && bench.engine.analyses().getFirst().barred().isEmpty(); i++) {
            Thread.sleep(10);
        }
        assertTrue(bench.engine.analyses().getFirst().barred().isPresent());
    }

    @Test
    void aSecondEvaluationDoesNotWaitForWhatTheFirstGaveUp() throws InterruptedException {
        AtomicBoolean first = new AtomicBoolean(true);
        Toy<Alpha> loopsOnce = Toy.of("loops", Alpha.class, (input, run) ->
                first.getAndSet(false) ? loop() : Result.of(new Alpha(2)));
        Bench bench = Bench.with(loopsOnce);
        bench.engine.evaluate(Engine.Request.all(Design.EMPTY), cancelledWhen(spinning));
        assertEquals(2, bench.run(Design.EMPTY).data(Alpha.class, "nominal").orElseThrow().value());
        spin.set(false); // the late answer of the first must not replace the second
        Thread.sleep(50);
        assertEquals(2, bench.run(Design.EMPTY).data(Alpha.class, "nominal").orElseThrow().value());
        assertEquals(2, loopsOnce.runs.get());
    }
}
