package tramontane.engine.test;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleContext;
import org.osgi.framework.BundleException;
import org.osgi.test.common.annotation.InjectBundleContext;
import org.osgi.test.common.annotation.InjectService;
import org.osgi.test.junit5.context.BundleContextExtension;
import org.osgi.test.junit5.service.ServiceExtension;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.Severity;
import tramontane.analysis.Trace;
import tramontane.analysis.Verdict;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.model.file.DesignFile;

/** Life and redundancy of the cabinet, from its file to its figures. */
@ExtendWith({BundleContextExtension.class, ServiceExtension.class})
class ReliabilityInProductTest {

    @InjectBundleContext
    BundleContext context;
    @InjectService
    Engine engine;

    private Evaluation run(Design design) {
        return engine.evaluate(Engine.Request.all(design), Engine.Watch.NONE);
    }

    private static double figure(Evaluation evaluation, String id, String condition) {
        return Optional.ofNullable(evaluation.figures(id, condition).get("fans")).orElseThrow(() -> new AssertionError(id + " in " + condition)).value();
    }

    private Design cabinet() {
        return Designs.sample(context, "cabinet");
    }

    @Test
    void itsSectionsAreWithoutFault() {
        assertEquals(List.of(), engine.check(cabinet()).stream().map(Problem::sentence).filter(sentence -> sentence.contains("life")).toList());
    }

    @Test
    void requirementsOfLifeAreJudged() {
        List<Verdict> verdicts = run(cabinet()).verdicts().stream().filter(verdict -> verdict.requirement().figure().startsWith("reliability.")).toList();
        assertTrue(verdicts.size() > 3, verdicts::toString);
        assertTrue(verdicts.stream().allMatch(verdict -> verdict.severity() == Severity.MET || verdict.severity() == Severity.CAUTION), verdicts::toString);
        assertEquals(1, verdicts.stream().filter(verdict -> verdict.condition().isEmpty()).count());
    }

    @Test
    void everyFigureOfLifeIsTraced() {
        Design design = cabinet();
        Map<String, Figure> one = run(design).figures().stream().filter(figure -> figure.kind().id().startsWith("reliability."))
                .collect(Collectors.toMap(figure -> figure.kind().id(), figure -> figure, (first, second) -> first));
        assertEquals(22, one.size(), () -> one.keySet().toString());
        one.forEach((id, figure) -> {
            List<Trace.Step> steps = engine.trace(design, figure.condition(), id, figure.place());
            assertTrue(steps.stream().anyMatch(step -> step.figure().equals(id) && step.value() == figure.value()), () -> id + " " + steps);
        });
    }

    /** Life over the mission lies between the lives in its phases, a bank that may lose movers lasts longer than one mover alone does. */
    @Test
    void figuresFitTogether() {
        Evaluation evaluation = run(cabinet());
        double mission = figure(evaluation, "reliability.mission.life", "");
        assertTrue(mission > figure(evaluation, "reliability.life", "hot day") && mission < figure(evaluation, "reliability.life", "night, slow"));
        assertTrue(figure(evaluation, "reliability.life", "hot day") < figure(evaluation, "reliability.life", "nominal"));
        assertTrue(figure(evaluation, "reliability.system.spare", "") >= 1);
        assertTrue(figure(evaluation, "reliability.system.survival", "") > figure(evaluation, "reliability.mission.survival", ""));
        assertTrue(figure(evaluation, "reliability.repair.survival", "") >= 0.9);
        assertTrue(figure(evaluation, "reliability.fleet.spares", "") >= 1);
    }

    /** Without its bundle the sections stay as they are and requirements of life are not judged; nothing else changes. */
    @Test
    void withoutItsBundleNothingIsLost() throws BundleException {
        Design design = cabinet();
        Evaluation with = run(design);
        List<Bundle> bundles = List.of(context.getBundles()).stream().filter(bundle -> bundle.getSymbolicName().startsWith("tramontane.reliability")).toList();
        assertTrue(!bundles.isEmpty());
        for (Bundle bundle : bundles) {
            bundle.stop();
        }
        try {
            Evaluation without = run(design);
            assertTrue(without.verdicts().stream().filter(verdict -> verdict.requirement().figure().startsWith("reliability."))
                    .allMatch(verdict -> verdict.severity() == Severity.NOT_JUDGED));
            assertEquals(with.figures().stream().filter(figure -> !figure.kind().id().startsWith("reliability.")).toList(), without.figures());
            assertTrue(DesignFile.write(design).contains("\"testedAt\": \"70 °C\""));
            assertTrue(engine.check(design).stream().noneMatch(Problem::isError));
        } finally {
            for (Bundle bundle : bundles) {
                bundle.start();
            }
        }
        assertEquals(with.verdicts(), run(design).verdicts());
    }
}
