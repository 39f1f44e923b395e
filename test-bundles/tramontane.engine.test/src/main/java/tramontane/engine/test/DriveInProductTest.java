package tramontane.engine.test;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
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
import tramontane.analysis.Amount;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Table;
import tramontane.analysis.Trace;
import tramontane.model.AirPath;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Value;

/** Supply, control, alarm and energy of the cabinet, from its file to its figures. */
@ExtendWith({BundleContextExtension.class, ServiceExtension.class})
class DriveInProductTest {

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

    private static Optional<Table> table(Evaluation evaluation, String title) {
        return evaluation.outcomes().stream().flatMap(outcome -> outcome.result().overviews().stream()).map(each -> each.table())
                .filter(table -> table.title().equals(title)).findFirst();
    }

    @Test
    void theYearIsTheSumOfItsPhases() {
        Design design = Designs.sample(context, "cabinet");
        Evaluation evaluation = run(design);
        double sum = 0;
        for (var phase : design.mission()) {
            sum += figure(evaluation, "drive.power", phase.condition(), "") * phase.timePerYear().si();
        }
        double energy = figure(evaluation, "drive.energy", "", "");
        assertEquals(sum, energy, 1e-9 * sum);
        assertEquals(energy / 3.6e6 * 0.28, figure(evaluation, "drive.cost", "", ""), 1e-9 * energy);
        assertTrue(figure(evaluation, "drive.energy.saved", "", "") > 0);
        // what the fans take, with what the wire loses on the way, over the efficiency of the supply
        assertEquals(figure(evaluation, "airflow.bank.power", "hot day", "fans") * 48 / figure(evaluation, "drive.bank.voltage", "hot day", "fans") / 0.88,
                figure(evaluation, "drive.power", "hot day", ""), 1e-9);
        assertEquals(2 * figure(evaluation, "airflow.bank.speed", "hot day", "fans") / (2 * Math.PI),
                figure(evaluation, "drive.bank.pulses", "hot day", "fans"), 1e-9);
    }

    @Test
    void everyFigureOfTheDriveIsTraced() {
        Design design = Designs.sample(context, "cabinet");
        Evaluation evaluation = run(design);
        Set<String> ids = evaluation.figures().stream().map(figure -> figure.kind().id()).filter(id -> id.startsWith("drive.")).collect(Collectors.toSet());
        assertTrue(ids.size() >= 20, ids::toString);
        for (String id : ids) {
            var figure = evaluation.figures().stream().filter(each -> each.kind().id().equals(id)).findFirst().orElseThrow();
            List<Trace.Step> steps = engine.trace(design, figure.condition(), id, figure.place());
            assertTrue(steps.stream().anyMatch(step -> step.figure().equals(id) && step.value() == figure.value()), () -> id + " " + steps);
        }
    }

    @Test
    void noiseIsComparedToo() {
        Design design = Designs.sample(context, "cabinet");
        Evaluation evaluation = run(design);
        Table table = table(evaluation, "What control changes in noise and life").orElseThrow();
        assertEquals(3 * design.mission().size(), table.rows().size()); // two listen, one bank lives
        List<Table.Cell> night = table.rows().stream().filter(row -> row.get(0).equals(new Table.Words("night, slow"))
                && row.get(2).equals(new Table.Words("technician"))).findFirst().orElseThrow();
        double slow = ((Amount) night.get(3)).si();
        double fast = ((Amount) night.get(4)).si();
        assertEquals(figure(evaluation, "acoustics.level", "night, slow", "technician"), slow, 1e-12);
        double ratio = figure(evaluation, "airflow.bank.speed", "night, slow", "fans") / (4000 * Math.PI / 30);
        assertEquals(50 * Math.log10(ratio), slow - fast, 2); // measured at two speeds, so not quite the sound law
    }

    @Test
    void aNameOfNoSupplyIsRefused() {
        Design design = Designs.sample(context, "cabinet");
        Value.Tree sections = Value.Tree.EMPTY.with("drive", Value.Tree.EMPTY.with("supply", new Value.Text("station batery")));
        Design wrong = design.withAirPath(new AirPath(design.airPath().bays(), design.airPath().passages().stream().map(passage -> passage.isBank()
                ? new Passage(passage.id(), passage.kind(), passage.from(), passage.to(), passage.tolerance(), passage.parameters().with("sections", sections))
                : passage).toList(), design.airPath().more()));
        List<String> problems = engine.check(wrong).stream().map(Problem::sentence).toList();
        assertEquals(1, problems.size(), problems::toString);
        assertTrue(problems.getFirst().contains("\"station batery\" is no supply of the design (did you mean \"station battery\"?)"), problems::toString);
    }

    @Test
    void withoutTemperaturesTheRestOfTheDriveStays() throws Exception {
        Bundle thermal = Arrays.stream(context.getBundles()).filter(bundle -> bundle.getSymbolicName().equals("tramontane.thermal")).findFirst().orElseThrow();
        Design design = Designs.sample(context, "cabinet").withControlLaws(List.of());
        thermal.stop();
        try {
            Evaluation evaluation = run(design);
            Set<String> computed = evaluation.outcomes().stream().filter(outcome -> outcome.status() == Evaluation.Status.COMPUTED)
                    .map(Evaluation.Outcome::analysis).collect(Collectors.toSet());
            assertTrue(computed.containsAll(Set.of("drive", "drive.fit", "drive.watch", "drive.energy")), computed::toString);
            assertFalse(computed.contains("drive.control") || computed.contains("drive.law"), computed::toString);
        } finally {
            thermal.start();
        }
        assertTrue(run(design).outcomes().stream().anyMatch(outcome -> outcome.analysis().equals("drive.law")));
    }

    @SuppressWarnings("unchecked") // the entry takes arguments; a service reference cannot say so
    private int command(String... arguments) throws InvalidSyntaxException {
        ServiceReference<?> entry = context.getServiceReferences(ToIntFunction.class, "(tramontane.entry=cli)").iterator().next();
        return ((ToIntFunction<String[]>) context.getService(entry)).applyAsInt(arguments);
    }

    @Test
    void theComputedLawGoesToAFileAndHoldsWhenPutBack(@TempDir Path folder) throws IOException, InvalidSyntaxException {
        Path sample = Path.of(context.getProperty("tramontane.samples"), "cabinet.tramontane.json");
        Path csv = folder.resolve("law.csv");
        assertEquals(0, command("export", sample.toString(), "--as", "control-law", "--output", csv.toString()));
        List<String[]> rows = Files.readAllLines(csv).stream().skip(1).map(line -> line.split(",")).toList();
        assertTrue(rows.size() >= 2 && rows.stream().allMatch(row -> row.length == 4 && row[0].equals("fan law") && row[1].equals("roof")));
        Path header = folder.resolve("law.h");
        assertEquals(0, command("export", sample.toString(), "--as", "control-law-c", "--set", "law=fan law", "--output", header.toString()));
        assertTrue(Files.readString(header).contains("#define FAN_LAW_POINTS " + rows.size()));
        Path response = folder.resolve("response.csv");
        assertEquals(0, command("export", sample.toString(), "--as", "control-response", "--output", response.toString()));
        assertTrue(Files.readAllLines(response).size() > 100);

        Design design = Designs.sample(context, "cabinet");
        Design changed = design.withControlLaws(design.controlLaws().stream().map(law -> new tramontane.model.ControlLaw(law.id(), law.sensor(), law.banks(),
                tramontane.model.Quantities.of(rows.stream().mapToDouble(row -> Double.parseDouble(row[2]) + 273.15).toArray()),
                tramontane.model.Quantities.of(rows.stream().mapToDouble(row -> Double.parseDouble(row[3]) / 100).toArray()), law.hysteresis(),
                law.riseLimit(), law.fallLimit(), law.more())).toList());
        Evaluation before = run(design);
        Evaluation after = run(changed);
        assertTrue(after.figures("thermal.junction.margin", "hot day").values().stream().allMatch(margin -> margin.value() >= 5 - 0.01),
                () -> after.figures("thermal.junction.margin", "hot day").toString());
        assertTrue(after.verdicts().stream().noneMatch(verdict -> verdict.severity() == tramontane.analysis.Severity.NOT_MET
                && !verdict.requirement().figure().equals("airflow.bank.stallMargin")), () -> after.verdicts().toString());
        assertTrue(figure(after, "drive.energy", "", "") < figure(before, "drive.energy", "", ""));
    }
}
