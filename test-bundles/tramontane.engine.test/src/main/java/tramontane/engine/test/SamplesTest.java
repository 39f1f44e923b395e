package tramontane.engine.test;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.osgi.framework.BundleContext;
import org.osgi.framework.InvalidSyntaxException;
import org.osgi.framework.ServiceReference;
import org.osgi.test.common.annotation.InjectBundleContext;
import org.osgi.test.common.annotation.InjectService;
import org.osgi.test.junit5.context.BundleContextExtension;
import org.osgi.test.junit5.service.ServiceExtension;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.Judgement;
import tramontane.analysis.OperatingPoint;
import tramontane.model.Design;
import tramontane.model.file.DesignFile;

/** From a shipped file to its duty points, and the command line as the launcher calls it. */
@ExtendWith({BundleContextExtension.class, ServiceExtension.class})
class SamplesTest {

    @InjectBundleContext
    BundleContext context;
    @InjectService
    Engine engine;

    @SuppressWarnings("unchecked") // the entry takes arguments; a service reference cannot say so
    private int run(String... arguments) throws InvalidSyntaxException {
        ServiceReference<?> entry = context.getServiceReferences(ToIntFunction.class, "(tramontane.entry=cli)").iterator().next();
        return ((ToIntFunction<String[]>) context.getService(entry)).applyAsInt(arguments);
    }

    @Test
    void everySampleIsSoundSolvedAndKept() throws IOException {
        List<Path> samples = Designs.samples(context);
        assertTrue(samples.size() >= 3, samples::toString);
        for (Path sample : samples) {
            Design design = DesignFile.read(sample).design().orElseThrow();
            assertEquals(List.of(), engine.check(design), sample::toString);
            Evaluation evaluation = engine.evaluate(Engine.Request.all(design), Engine.Watch.NONE);
            assertFalse(evaluation.outcomes().isEmpty());
            assertTrue(evaluation.outcomes().stream().allMatch(outcome -> outcome.status() == Evaluation.Status.COMPUTED),
                    () -> sample + " " + evaluation.findings());
            assertEquals(design, DesignFile.parse(DesignFile.write(design)).design().orElseThrow());
        }
    }

    @Test
    void temperaturesComeFromFlowInAgreementWithThem() {
        Path sample = Path.of(context.getProperty("tramontane.samples"), "observatory.tramontane.json");
        Design design = DesignFile.read(sample).design().orElseThrow();
        Evaluation evaluation = engine.evaluate(Engine.Request.all(design), Engine.Watch.NONE);
        OperatingPoint point = evaluation.data(OperatingPoint.class, "hot day").orElseThrow();
        double rear = point.bay("rear").orElseThrow().temperature();
        assertTrue(rear > 308.15 + 5, "the operating point is the coupled one: rear at " + rear);
        assertEquals(rear, evaluation.figures("thermal.air.temperature", "hot day").get("rear").value(), 1e-6);
        Map<String, Figure> junctions = evaluation.figures(Judgement.COMPONENT_TEMPERATURE, "hot day");
        assertEquals(design.heatSources().stream().map(source -> source.id()).toList(), List.copyOf(junctions.keySet()));
        assertTrue(junctions.values().stream().allMatch(figure -> figure.value() > rear), "parts are warmer than the air behind them");
        assertEquals(4, evaluation.verdicts().stream().filter(verdict -> verdict.condition().equals("hot day")
                && verdict.requirement().figure().equals(Judgement.COMPONENT_TEMPERATURE)).count());
        assertEquals(Set.of("board", "interface", "junction to case", "measured sink", "package", "pin fins", "plate fins", "resistance", "spreading",
                "surface"), engine.linkKinds().keySet());
        assertEquals(design.heatSources().stream().map(source -> source.id()).collect(Collectors.toSet()),
                Set.copyOf(evaluation.figures("thermal.time.peak", "hot day").keySet()));
    }

    @Test
    void theCommandLineWritesWhatItSolved(@TempDir Path folder) throws IOException, InvalidSyntaxException {
        Path output = folder.resolve("quick.json");
        Path sample = Path.of(context.getProperty("tramontane.samples"), "quick.tramontane.json");
        int code = run("solve", sample.toString(), "--format", "json", "--output", output.toString());
        assertEquals(0, code);
        assertTrue(Files.readString(output).contains("\"airflow.bank.flow\""));
    }

    @Test
    void theCommandLineRefusesWhatItCannotRead(@TempDir Path folder) throws IOException, InvalidSyntaxException {
        Path broken = folder.resolve("broken.tramontane.json");
        Files.writeString(broken, "{ \"format\": 1, ");
        assertEquals(2, run("solve", broken.toString()));
        assertEquals("{ \"format\": 1, ", Files.readString(broken));
    }
}
