package tramontane.engine.test;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
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
import tramontane.analysis.Severity;
import tramontane.cli.Console;
import tramontane.cli.Verb;
import tramontane.model.AirMover;
import tramontane.model.Design;
import tramontane.model.file.DesignFile;

/** The verbs choose and catalogue on the catalogue that is shipped. */
@ExtendWith({BundleContextExtension.class, ServiceExtension.class})
class SelectionInProductTest {

    @InjectBundleContext
    BundleContext context;
    @InjectService
    Engine engine;

    /** What a verb wrote. */
    private static final class Written implements Console {
        final StringWriter out = new StringWriter();
        final StringWriter err = new StringWriter();
        final StringWriter data = new StringWriter();

        @Override
        public PrintWriter out() {
            return new PrintWriter(out, true);
        }

        @Override
        public PrintWriter err() {
            return new PrintWriter(err, true);
        }

        @Override
        public PrintWriter data() {
            return new PrintWriter(data, true);
        }

        @Override
        public int width() {
            return 100;
        }

        @Override
        public String shown(String text) {
            return text;
        }

        @Override
        public Engine.Watch watch() {
            return Engine.Watch.NONE;
        }

        @Override
        public String toString() {
            return out + "\n" + err + "\n" + data;
        }
    }

    private List<Verb> verbs() throws InvalidSyntaxException {
        return context.getServiceReferences(Verb.class, null).stream().map(context::getService).toList();
    }

    private Set<String> names() throws InvalidSyntaxException {
        return verbs().stream().map(Verb::name).collect(Collectors.toSet());
    }

    private Written run(int expected, String name, String... arguments) throws Exception {
        Verb verb = verbs().stream().filter(each -> each.name().equals(name)).findFirst().orElseThrow();
        Written written = new Written();
        assertEquals(expected, verb.run(List.of(arguments), written), written::toString);
        return written;
    }

    private Bundle bundle(String name) {
        return Arrays.stream(context.getBundles()).filter(bundle -> bundle.getSymbolicName().equals(name)).findFirst().orElseThrow();
    }

    private Path catalogue() {
        return Path.of(context.getProperty("tramontane.catalogue"));
    }

    private static List<String[]> rows(Written written) {
        return written.data.toString().lines().skip(1).map(line -> line.split(",", -1)).toList();
    }

    @Test
    void theSampleIsGivenMovers() throws Exception {
        Written text = run(0, "choose", "quick", "--top", "3");
        assertTrue(text.out.toString().contains("The best, by the weights"), text::toString);
        List<String[]> rows = rows(run(0, "choose", "quick", "--top", "3", "--format", "csv"));
        assertEquals(3, rows.size());
        assertEquals("100", rows.getFirst()[8]);
    }

    @Test
    void whatIsPutMeetsItsRequirementsAndBarelySo(@TempDir Path folder) throws Exception {
        Path out = folder.resolve("chosen.tramontane.json");
        List<String[]> rows = rows(run(0, "choose", "--flow", "0.08m3/s", "--pressure", "60Pa", "--opening", "260x130x80mm", "--top", "3", "--format", "csv",
                "--put", "1", "--output", out.toString()));
        Design design = DesignFile.read(out).design().orElseThrow();
        assertEquals(List.of(rows.getFirst()[1]), design.airMovers().stream().map(AirMover::id).toList());
        Evaluation evaluation = engine.evaluate(Engine.Request.all(design), Engine.Watch.NONE);
        assertTrue(evaluation.verdicts().stream().allMatch(verdict -> verdict.severity() == Severity.MET || verdict.severity() == Severity.CAUTION),
                () -> evaluation.verdicts().toString());
        double flow = evaluation.figures("airflow.bank.flow", "nominal").get("movers").value();
        // settings are searched to a thousandth of full speed, and flow on a square resistance goes with speed
        assertEquals(0.08, flow, 0.0015 * 0.08 / Double.parseDouble(rows.getFirst()[6]));
        // it fits: two frames beside each other at most 260 mm wide
        AirMover part = design.airMovers().getFirst();
        assertTrue(part.width().orElseThrow().si() * Integer.parseInt(rows.getFirst()[2]) <= 0.26 * 1.0001);
    }

    @Test
    void aWishThatNothingMeetsIsToldBySentences() throws Exception {
        Written text = run(1, "choose", "quick", "--opening", "40x40x20mm");
        assertTrue(text.out.toString().contains("None meets everything."), text::toString);
        assertTrue(text.out.toString().replaceAll("\\s+", " ").contains("does not fit into the room of 40.0 mm × 40.0 mm × 20.0 mm"), text::toString);
    }

    @Test
    void theShippedCatalogueIsSoundAndListed() throws Exception {
        long files;
        try (Stream<Path> all = Files.list(catalogue())) {
            files = all.filter(file -> file.toString().endsWith(".json")).count();
        }
        assertTrue(run(0, "catalogue", "check").out.toString().contains("200 parts in " + files + " files: no errors"));
        List<String[]> rows = rows(run(0, "catalogue", "list", "--where", "type = axial and width <= 92 mm", "--fields", "type,width", "--format", "csv"));
        assertFalse(rows.isEmpty());
        rows.forEach(row -> assertTrue(row[1].equals("axial") && Double.parseDouble(row[2]) <= 0.092, () -> String.join(",", row)));
        assertTrue(run(0, "catalogue", "show", rows.getFirst()[0]).out.toString().contains("free delivery"));
    }

    @Test
    void aTableGoesOutAndComesBack(@TempDir Path folder) throws Exception {
        Path table = folder.resolve("parts.csv");
        run(0, "catalogue", "export", "--where", "family = HV-E1", "--output", table.toString());
        Path own = Files.createDirectory(folder.resolve("own"));
        run(0, "catalogue", "import", table.toString(), "--as", "parts-table", "--output", own.resolve("again.json").toString());
        assertEquals(run(0, "catalogue", "list", "--where", "family = HV-E1", "--format", "csv").data.toString(),
                run(0, "catalogue", "list", "--only", "--catalogue", own.toString(), "--format", "csv").data.toString());
        Path points = Files.writeString(folder.resolve("points.txt"), "0 160\n130 104\n259 0\n");
        run(0, "catalogue", "import", points.toString(), "--as", "points", "--set", "part=Mine", "--set", "flowUnit=m3/h", "--set", "pressureUnit=Pa",
                "--output", own.resolve("mine.json").toString());
        assertTrue(run(0, "catalogue", "show", "Mine", "--catalogue", own.toString()).out.toString().contains("259"));
        Files.writeString(own.resolve("broken.json"), "{");
        assertTrue(run(1, "catalogue", "check", "--only", "--catalogue", own.toString()).out.toString().contains("broken.json"));
    }

    @Test
    void withoutSelectionTheVerbVanishesAndTheRestStays() throws Exception {
        assertTrue(names().containsAll(Set.of("choose", "catalogue")));
        Bundle selection = bundle("tramontane.selection");
        selection.stop();
        try {
            assertFalse(names().contains("choose"));
            run(0, "catalogue", "list", "--limit", "1");
        } finally {
            selection.start();
        }
        Bundle verbs = bundle("tramontane.selection.cli");
        verbs.stop();
        try {
            assertFalse(names().contains("choose") || names().contains("catalogue"));
            assertEquals(0, command("solve", "quick", "--quiet", "--format", "csv", "--output", context.getDataFile("quick.csv").toString()));
        } finally {
            verbs.start();
        }
        assertTrue(names().containsAll(Set.of("choose", "catalogue")));
    }

    @Test
    void withoutImportersTheRestOfTheCatalogueStays() throws Exception {
        Bundle catalogue = bundle("tramontane.catalogue");
        catalogue.stop();
        try {
            run(0, "catalogue", "list", "--limit", "1");
            assertTrue(run(0, "catalogue", "import").out.toString().contains("No importer is loaded."));
        } finally {
            catalogue.start();
        }
        assertTrue(run(0, "catalogue", "import").out.toString().contains("parts-table"));
    }

    @SuppressWarnings("unchecked") // the entry takes arguments; a service reference cannot say so
    private int command(String... arguments) throws InvalidSyntaxException, IOException {
        ServiceReference<?> entry = context.getServiceReferences(ToIntFunction.class, "(tramontane.entry=cli)").iterator().next();
        return ((ToIntFunction<String[]>) context.getService(entry)).applyAsInt(arguments);
    }
}
