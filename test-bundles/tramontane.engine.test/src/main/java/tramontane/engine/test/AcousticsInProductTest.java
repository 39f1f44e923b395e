package tramontane.engine.test;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleContext;
import org.osgi.framework.InvalidSyntaxException;
import org.osgi.framework.ServiceReference;
import org.osgi.test.common.annotation.InjectBundleContext;
import org.osgi.test.common.annotation.InjectService;
import org.osgi.test.junit5.context.BundleContextExtension;
import org.osgi.test.junit5.service.ServiceExtension;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Exporter;
import tramontane.analysis.Figure;
import tramontane.analysis.Severity;
import tramontane.analysis.Trace;
import tramontane.analysis.Verdict;
import tramontane.model.Design;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.Weighting;

/** Noise of the cabinet, from its file to its figures. */
@ExtendWith({BundleContextExtension.class, ServiceExtension.class})
class AcousticsInProductTest {

    @InjectBundleContext
    BundleContext context;
    @InjectService
    Engine engine;

    private Evaluation run(Design design) {
        return engine.evaluate(Engine.Request.all(design), Engine.Watch.NONE);
    }

    private static double figure(Evaluation evaluation, String id, String condition, String place) {
        return Optional.ofNullable(evaluation.figures(id, condition).get(place)).orElseThrow(() -> new AssertionError(id + " at " + place + " in " + condition))
                .value();
    }

    private Design cabinet() {
        return Designs.sample(context, "cabinet");
    }

    @Test
    void itsSectionsAreWithoutFault() {
        List<String> noise = engine.check(cabinet()).stream().map(Problem::sentence).filter(sentence -> sentence.contains("noise")).toList();
        assertEquals(List.of(), noise);
    }

    @Test
    void levelsAreJudged() {
        Design design = cabinet();
        List<Verdict> verdicts = run(design).verdicts().stream().filter(verdict -> verdict.requirement().figure().equals("acoustics.level")).toList();
        assertTrue(verdicts.size() > 5, verdicts::toString);
        assertTrue(verdicts.stream().allMatch(verdict -> verdict.severity() == Severity.MET || verdict.severity() == Severity.CAUTION), verdicts::toString);
    }

    @Test
    void everyFigureOfNoiseIsTraced() {
        Design design = cabinet();
        Evaluation evaluation = run(design);
        Map<String, Figure> one = evaluation.figures().stream().filter(figure -> figure.kind().id().startsWith("acoustics."))
                .collect(Collectors.toMap(figure -> figure.kind().id(), figure -> figure, (first, second) -> first));
        assertTrue(one.size() >= 11, () -> one.keySet().toString());
        one.forEach((id, figure) -> {
            List<Trace.Step> steps = engine.trace(design, figure.condition(), id, figure.place());
            assertTrue(steps.stream().anyMatch(step -> step.figure().equals(id) && step.value() == figure.value()), () -> id + " " + steps);
        });
    }

    @Test
    void aFailedMoverIsNotHeard() {
        Evaluation evaluation = run(cabinet());
        String failed = evaluation.cases().stream().map(each -> each.concrete().id()).filter(id -> id.startsWith("any one failed")).findFirst().orElseThrow();
        double six = figure(evaluation, "acoustics.bank.power", "hot day", "fans");
        double five = figure(evaluation, "acoustics.bank.power", failed, "fans");
        assertTrue(five < six + 1 && five > six - 2, five + " " + six); // one less, the others a little further left
    }

    @Test
    void exportedSpectraAddUpToTheLevels() {
        Design design = cabinet();
        Evaluation evaluation = run(design);
        Exporter exporter = engine.exporters().stream().filter(each -> each.id().equals("noise-spectra")).findFirst().orElseThrow();
        String text = exporter.write(design, evaluation, FormReader.read(exporter.settings(), Value.Tree.EMPTY, "", new ArrayList<>())).text();
        String row = text.lines().filter(line -> line.startsWith("hot day,sound pressure") && line.contains(",technician,")).findFirst().orElseThrow();
        String[] cells = row.split(",", -1);
        double sum = 0;
        for (int third = 0; third < 30; third++) {
            sum += cells[third + 3].isEmpty() ? 0 : Levels.power(Double.parseDouble(cells[third + 3])) * Weighting.A.factor(third);
        }
        assertEquals(figure(evaluation, "acoustics.level", "hot day", "technician"), Levels.of(sum), 0.02);
    }

    @Test
    void exportedContributionsAddUpToTheLevels() {
        Design design = cabinet();
        Evaluation evaluation = run(design);
        Exporter exporter = engine.exporters().stream().filter(each -> each.id().equals("noise-contributions")).findFirst().orElseThrow();
        String text = exporter.write(design, evaluation, FormReader.read(exporter.settings(), Value.Tree.EMPTY, "", new ArrayList<>())).text();
        double[] levels = text.lines().filter(line -> line.startsWith("hot day,technician,")).mapToDouble(line -> Double.parseDouble(line.split(",")[4]))
                .toArray();
        assertEquals(4, levels.length);
        assertEquals(figure(evaluation, "acoustics.level", "hot day", "technician"), Levels.sum(levels), 0.02);
    }

    @SuppressWarnings("unchecked") // the entry takes arguments; a service reference cannot say so
    private int command(String... arguments) throws InvalidSyntaxException {
        ServiceReference<?> entry = context.getServiceReferences(ToIntFunction.class, "(tramontane.entry=cli)").iterator().next();
        return ((ToIntFunction<String[]>) context.getService(entry)).applyAsInt(arguments);
    }

    @Test
    void whatIsHeardIsWrittenAndReadBack(@TempDir Path folder) throws IOException, InvalidSyntaxException {
        String sample = Path.of(context.getProperty("tramontane.samples"), "cabinet.tramontane.json").toString();
        Path sounds = folder.resolve("sounds");
        assertEquals(0, command("sound", "listen", sample, "--condition", "hot day", "--seconds", "5", "--output", sounds.toString()));
        Path sound;
        try (Stream<Path> files = Files.list(sounds)) {
            sound = files.findFirst().orElseThrow();
        }
        Path section = folder.resolve("section.json");
        assertEquals(0, command("sound", "recording", sound.toString(), "--full-scale", "94 dB", "--distance", "1 m", "--field", "half-space", "--speed",
                "4000 rpm", "--format", "section", "--output", section.toString()));
        assertTrue(Files.readString(section).contains("\"half-space\""));
        Path broken = Files.write(folder.resolve("broken.wav"), Arrays.copyOf(Files.readAllBytes(sound), 40));
        assertEquals(2, command("sound", "recording", broken.toString()));
        assertEquals(0, command("sound", "rate", "45 48 46 44 42 38 33 27 dB"));
    }

    @Test
    void withoutTheBundleNothingIsLostAndNothingIsJudged() throws Exception {
        Bundle bundle = Arrays.stream(context.getBundles()).filter(each -> each.getSymbolicName().equals("tramontane.acoustics")).findFirst().orElseThrow();
        Design design = cabinet();
        bundle.stop();
        try {
            Set<Severity> severities = run(design).verdicts().stream().filter(verdict -> verdict.requirement().figure().equals("acoustics.level"))
                    .map(Verdict::severity).collect(Collectors.toSet());
            assertEquals(Set.of(Severity.NOT_JUDGED), severities);
            assertEquals(design, cabinet());
        } finally {
            bundle.start();
        }
        levelsAreJudged();
    }
}
