package tramontane.engine.test;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.ExtendWith;
import org.osgi.framework.BundleContext;
import org.osgi.test.common.annotation.InjectBundleContext;
import org.osgi.test.common.annotation.InjectService;
import org.osgi.test.junit5.context.BundleContextExtension;
import org.osgi.test.junit5.service.ServiceExtension;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Severity;
import tramontane.analysis.Trace;
import tramontane.analysis.Verdict;
import tramontane.engine.test.toys.LoopingToy;
import tramontane.engine.test.toys.StayToy;
import tramontane.engine.test.toys.ThrowingToy;
import tramontane.model.Design;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.model.Value;

/** The engine with toy bundles that come, break, loop and go. */
@ExtendWith({BundleContextExtension.class, ServiceExtension.class})
class EngineInProductTest {

    @InjectBundleContext
    BundleContext context;
    @InjectService
    Engine engine;

    private static Requirement stayBelow(double seconds) {
        return new Requirement("toy.stay", Requirement.WORST, Optional.empty(), Optional.of(Quantity.of(seconds)), List.of(),
                Value.Tree.EMPTY);
    }

    private static List<Severity> severities(Evaluation evaluation) {
        return evaluation.verdicts().stream().map(Verdict::severity).toList();
    }

    private static boolean tells(Evaluation evaluation, Severity severity, String part) {
        return evaluation.findings().stream().anyMatch(finding -> finding.severity() == severity
                && finding.message().toString().contains(part));
    }

    @Test
    void aStrangersAnalysisIsJudgedWhileItsBundleIsThere() throws Exception {
        Design design = Designs.requiring(Designs.sample(context, "quick"), stayBelow(0.25));
        assertEquals(List.of(Severity.NOT_JUDGED), severities(engine.evaluate(Engine.Request.all(design), Engine.Watch.NONE)));
        try (ToyBundle toy = ToyBundle.start(context, StayToy.class, "toy.stay", "Stay")) {
            Evaluation with = engine.evaluate(Engine.Request.all(design), Engine.Watch.NONE);
            assertEquals(List.of(Severity.MET), severities(with));
            double flow = with.figures("airflow.bank.flow", "nominal").get("fans").value();
            assertEquals(0.02 / flow, with.figures("toy.stay", "nominal").get("").value(), 1e-15);
            toy.stop();
            assertEquals(List.of(Severity.NOT_JUDGED),
                    severities(engine.evaluate(Engine.Request.all(design), Engine.Watch.NONE)));
            toy.restart();
            assertEquals(List.of(Severity.MET), severities(engine.evaluate(Engine.Request.all(design), Engine.Watch.NONE)));
        }
    }

    @Test
    void aFigureTellsWhereItComesFrom() throws Exception {
        Design design = Designs.sample(context, "quick");
        try (ToyBundle toy = ToyBundle.start(context, StayToy.class, "toy.stay", "Stay")) {
            List<Trace.Step> steps = engine.trace(design, "nominal", "toy.stay", "");
            assertEquals(1, steps.size());
            assertEquals("mean residence time", steps.get(0).relation().name());
            assertEquals(2, steps.get(0).inputs().size());
        }
        List<Trace.Step> flow = engine.trace(design, "nominal", "airflow.bank.flow", "fans");
        assertFalse(flow.isEmpty());
        assertTrue(flow.stream().allMatch(step -> !step.relation().source().isBlank()));
    }

    @Test
    void anAnalysisThatThrowsIsNamedAndTheRestGoesOn() throws Exception {
        Design design = Designs.sample(context, "quick");
        Evaluation before = engine.evaluate(Engine.Request.all(design), Engine.Watch.NONE);
        try (ToyBundle toy = ToyBundle.start(context, ThrowingToy.class, "toy.throws")) {
            Evaluation after = engine.evaluate(Engine.Request.all(design), Engine.Watch.NONE);
            List<Finding> errors = after.findings().stream().filter(finding -> finding.severity() == Severity.ERROR).toList();
            assertEquals(1, errors.size());
            assertTrue(errors.get(0).message().toString().contains("toy.throws 1.0.0"), errors::toString);
            assertTrue(errors.get(0).message().toString().contains("the toy broke"), errors::toString);
            assertEquals(before.figures(), after.figures());
            assertEquals(before.verdicts(), after.verdicts());
        }
    }

    @Test
    @Timeout(60)
    void anAnalysisThatLoopsIsLeftOnCancel() throws Exception {
        Design design = Designs.sample(context, "quick");
        try (ToyBundle toy = ToyBundle.start(context, LoopingToy.class, "toy.loops.cancel")) {
            AtomicBoolean cancel = new AtomicBoolean();
            Thread canceller = Thread.ofVirtual().start(() -> {
                try {
                    Thread.sleep(3000);
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                }
                cancel.set(true);
            });
            Evaluation partial = engine.evaluate(Engine.Request.all(design), new Engine.Watch() {
                @Override
                public boolean cancelled() {
                    return cancel.get();
                }

                @Override
                public void progress(double fraction, String message) {
                    assertTrue(fraction >= 0 && fraction <= 1);
                }
            });
            canceller.join();
            assertTrue(partial.cancelled());
            assertTrue(partial.data(OperatingPoint.class, "nominal").isPresent());
        }
    }

    @Test
    @Timeout(60)
    void anAnalysisBeyondItsTimeIsBarredAndTheRestIsJudged() throws Exception {
        Design design = Designs.sample(context, "quick");
        try (ToyBundle toy = ToyBundle.start(context, LoopingToy.class, "toy.loops.limit")) {
            Engine.Request request = new Engine.Request(design, Set.of(), Set.of(), Duration.ofSeconds(4));
            Evaluation evaluation = engine.evaluate(request, Engine.Watch.NONE);
            assertFalse(evaluation.cancelled());
            assertTrue(tells(evaluation, Severity.ERROR, "toy.loops.limit"), () -> evaluation.findings().toString());
            assertEquals(List.of(Severity.MET), severities(evaluation));
            Engine.Loaded loaded = engine.analyses().stream().filter(each -> each.id().equals("toy.loops")).findFirst()
                    .orElseThrow();
            assertTrue(loaded.barred().isPresent());
            Evaluation again = engine.evaluate(Engine.Request.all(design), Engine.Watch.NONE);
            assertFalse(again.cancelled());
            assertEquals(List.of(Severity.MET), severities(again));
        }
    }

    @Test
    void aRepeatedRunGivesTheSameBits() {
        Design design = Designs.sample(context, "observatory");
        Evaluation first = engine.evaluate(Engine.Request.all(design), Engine.Watch.NONE);
        Evaluation second = engine.evaluate(Engine.Request.all(design.withName("another name")), Engine.Watch.NONE);
        assertEquals(first.figures(), second.figures());
        assertEquals(first.findings(), second.findings());
        assertTrue(first.figures().stream().map(Figure::condition).distinct().count() >= 5);
    }

    @Test
    void whatIfAnyOneFailsIsRunForEveryPosition() {
        Design design = Designs.sample(context, "observatory");
        Evaluation evaluation = engine.evaluate(Engine.Request.all(design), Engine.Watch.NONE);
        List<String> cases = evaluation.cases().stream().filter(each -> each.declared().equals("any one failed"))
                .map(each -> each.concrete().id()).toList();
        assertEquals(List.of("any one failed: fans 1 locked", "any one failed: fans 2 locked"), cases);
        // the limit of the condition holds in its cases: 14 K where failed, 10 K on a hot day in the same air
        double hot = evaluation.figures("airflow.flow.needed", "hot day").get("").value();
        cases.forEach(each -> assertEquals(hot * 10 / 14, evaluation.figures("airflow.flow.needed", each).get("").value(),
                1e-12));
    }
}
