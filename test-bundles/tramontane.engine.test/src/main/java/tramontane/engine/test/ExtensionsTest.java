package tramontane.engine.test;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.osgi.framework.BundleContext;
import org.osgi.test.common.annotation.InjectBundleContext;
import org.osgi.test.common.annotation.InjectService;
import org.osgi.test.junit5.context.BundleContextExtension;
import org.osgi.test.junit5.service.ServiceExtension;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Exporter;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Severity;
import tramontane.analysis.Verdict;
import tramontane.engine.test.toys.HoneycombToy;
import tramontane.model.Design;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.file.DesignFile;
import tramontane.model.file.Loaded;

/** Kinds of passages and links and sections that come and go with their bundle; the file keeps them meanwhile. */
@ExtendWith({BundleContextExtension.class, ServiceExtension.class})
class ExtensionsTest {

    private static final String HONEYCOMB = """
            { "format": 1, "name": "with a stranger's passage",
              "airMovers": [{"id": "fan", "curves": [{"speed": "3000 rpm", "flow": "0 0.02 0.04 m³/s", "pressure": "80 50 0 Pa"}]}],
              "airPath": {"bays": ["box"], "passages": [
                {"id": "straightener", "kind": "honeycomb", "from": "outside", "to": "box", "area": "40 cm²", "length": "AREA"},
                {"id": "fan", "kind": "bank", "from": "box", "to": "outside", "mover": "fan"}]},
              "requirements": [{"figure": "airflow.bank.flow", "atLeast": "0.001 m³/s"}],
              "sections": {"cells": {"diameter": "3 mm"}, "somebody else's": {"anything": [1.50, null, {"deep": "5 furlongs"}]}} }
            """;

    private static final String CHAIN = """
            { "format": 1, "name": "with a stranger's link",
              "airPath": {"bays": ["box"], "passages": [
                {"id": "slot", "kind": "opening", "from": "outside", "to": "box", "area": "40 cm²"}]},
              "heatSources": [{"id": "laser", "power": "5 W", "into": ["box"], "chain": [
                {"kind": "heat pipe", "resistance": "RESISTANCE"}, {"kind": "resistance", "resistance": "1 K/W"}]}] }
            """;

    @InjectBundleContext
    BundleContext context;
    @InjectService
    Engine engine;

    private static Design design(String length) {
        Loaded loaded = DesignFile.parse(HONEYCOMB.replace("AREA", length));
        return loaded.design().orElseThrow(() -> new AssertionError(loaded.problems()));
    }

    @Test
    void aDesignWithAnUnknownKindIsNotJudgedUntilItsBundleComes() throws Exception {
        Design design = design("50 mm");
        Evaluation without = engine.evaluate(Engine.Request.all(design), Engine.Watch.NONE);
        assertEquals(List.of(Severity.NOT_JUDGED), without.verdicts().stream().map(Verdict::severity).toList());
        assertTrue(without.data(OperatingPoint.class, "nominal").isEmpty());
        assertTrue(engine.check(design).stream().noneMatch(Problem::isError), () -> engine.check(design).toString());
        assertTrue(engine.check(design).stream().anyMatch(problem -> problem.place().equals("airPath.passages[0].kind")));

        try (ToyBundle toy = ToyBundle.start(context, HoneycombToy.class, "toy.honeycomb", "Cells", "Honeycomb", "HeatPipe",
                "CellsSection", "CellList")) {
            Evaluation with = engine.evaluate(Engine.Request.all(design), Engine.Watch.NONE);
            assertEquals(List.of(Severity.MET), with.verdicts().stream().map(Verdict::severity).toList());
            assertTrue(engine.passageKinds().containsKey("honeycomb"));
            assertTrue(engine.sectionTypes().stream().anyMatch(type -> type.form().name().equals("cells")));
        }
        assertFalse(engine.passageKinds().containsKey("honeycomb"));
    }

    @Test
    void itsOwnerFindsWhatIsWrongInAPassageAndASection() throws Exception {
        Design wrong = DesignFile.parse(HONEYCOMB.replace("AREA", "50 kg").replace("\"diameter\": \"3 mm\"",
                "\"diameter\": \"-3 mm\"")).design().orElseThrow();
        try (ToyBundle toy = ToyBundle.start(context, HoneycombToy.class, "toy.honeycomb", "Cells", "Honeycomb", "HeatPipe",
                "CellsSection", "CellList")) {
            List<String> places = engine.check(wrong).stream().filter(Problem::isError).map(Problem::place).toList();
            assertEquals(List.of("airPath.passages[0].length", "sections.cells.diameter"), places);
        }
    }

    @Test
    void aLinkOfAnUnknownKindIsSaidUntilItsBundleComesAndFindsWhatIsWrong() throws Exception {
        Design sound = DesignFile.parse(CHAIN.replace("RESISTANCE", "2 K/W")).design().orElseThrow();
        Design wrong = DesignFile.parse(CHAIN.replace("RESISTANCE", "2 W")).design().orElseThrow();
        assertEquals(List.of("heatSources[0].chain[0].kind"), chains(sound));
        try (ToyBundle toy = ToyBundle.start(context, HoneycombToy.class, "toy.honeycomb", "Cells", "Honeycomb", "HeatPipe",
                "CellsSection", "CellList")) {
            assertTrue(engine.linkKinds().containsKey("heat pipe"));
            assertEquals(List.of(), chains(sound));
            assertEquals(List.of("heatSources[0].chain[0].resistance"), chains(wrong));
        }
        assertFalse(engine.linkKinds().containsKey("heat pipe"));
    }

    private List<String> chains(Design design) {
        return engine.check(design).stream().map(Problem::place).filter(place -> place.startsWith("heatSources")).toList();
    }

    @Test
    void anExporterComesAndGoesWithItsBundle() throws Exception {
        assertTrue(engine.exporters().stream().noneMatch(each -> each.id().equals("toy.cells")));
        Design design = design("50 mm");
        try (ToyBundle toy = ToyBundle.start(context, HoneycombToy.class, "toy.honeycomb", "Cells", "Honeycomb", "HeatPipe",
                "CellsSection", "CellList")) {
            Exporter exporter = engine.exporters().stream().filter(each -> each.id().equals("toy.cells")).findFirst().orElseThrow();
            Evaluation evaluation = engine.evaluate(Engine.Request.all(design), Engine.Watch.NONE);
            assertEquals("nominal\n", exporter.write(design, evaluation, FormReader.read(exporter.settings(), Value.Tree.EMPTY,
                    "", new ArrayList<>())).text());
        }
        assertTrue(engine.exporters().stream().noneMatch(each -> each.id().equals("toy.cells")));
    }

    @Test
    void theFileKeepsWhatNobodyKnows() {
        Design design = design("50 mm");
        String written = DesignFile.write(design);
        assertTrue(written.contains("1.50"), written);
        assertTrue(written.contains("5 furlongs"), written);
        assertEquals(design, DesignFile.parse(written).design().orElseThrow());
    }
}
