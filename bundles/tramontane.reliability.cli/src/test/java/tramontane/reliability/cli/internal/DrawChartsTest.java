package tramontane.reliability.cli.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tramontane.cli.terminal.Ending;
import tramontane.reliability.DutyLife;
import tramontane.analysis.Sections;
import tramontane.model.AirMover;
import tramontane.model.file.DesignFile;
import tramontane.reliability.LifeModel;
import tramontane.reliability.LifeState;
import tramontane.reliability.MissionLife;
import tramontane.reliability.SystemLife;
import tramontane.reliability.internal.MoverLifeSection;
import tramontane.reliability.statistics.Weibull;
import tramontane.reliability.system.SystemSurvival;

class DrawChartsTest {

    private static final double HOUR = 3600;
    private static final String DESIGN = """
            {"format": 1, "name": "box", "airMovers": [
              {"id": "A 1", "curves": [{"speed": "3000 rpm", "flow": "0 35 cfm", "pressure": "50 0 Pa"}],
               "sections": {"life": {"rated": "60000 h", "at": "40 °C", "speed": "3000 rpm", "shape": 3}}}],
             "conditions": [{"id": "cool"}, {"id": "hot"}],
             "airPath": {"bays": [], "passages": []}}
            """;

    private static final AirMover PART = DesignFile.parse(DESIGN).design().orElseThrow().airMovers().getFirst();
    private static final LifeModel MODEL = LifeModel.of(PART, Sections.decode(new MoverLifeSection(), PART).orElseThrow(), Optional.empty()).orElseThrow();

    @TempDir
    private Path folder;
    private final FakeEngine engine = new FakeEngine();
    private String design;
    private Path output;

    @BeforeEach
    void write() throws IOException {
        design = Files.writeString(folder.resolve("box.tramontane.json"), DESIGN).toString();
        output = folder.resolve("charts");
    }

    private static LifeState state(double temperature, double life) {
        return new LifeState(List.of(new LifeState.BankState("fans", "A 1", MODEL, List.of(new LifeState.MoverState(1, temperature, 100 * Math.PI,
                new LifeState.Spread(new DutyLife.Aged(Weibull.through(life * HOUR, 0.1, 3)), List.of()))))), List.of());
    }

    private void lives() {
        engine.states.put("cool", state(313.15, 60000));
        engine.states.put("hot", state(333.15, 26667));
        SystemSurvival survival = SystemSurvival.of(2, 3, Weibull.through(60000 * HOUR, 0.1, 3));
        engine.system = Optional.of(new SystemLife(List.of(new SystemLife.Group("fans", 1, List.of(), survival, List.of(survival,
                SystemSurvival.of(2, 3, Weibull.through(40000 * HOUR, 0.1, 3))))), Optional.empty(), Optional.empty()));
        engine.mission = Optional.of(new MissionLife(Optional.of(8 * MissionLife.YEAR), List.of()));
    }

    @Test
    void bothChartsAndTheirNumbers() throws Ending, IOException {
        lives();
        Verbs.Ran ran = Verbs.run(engine, "", "charts", design, "--output", output.toString(), "--format", "json");
        JsonObject json = ran.json();
        assertEquals(4, json.getAsJsonArray("files").size());
        assertEquals(0, json.getAsJsonArray("notes").size());
        String survival = Files.readString(output.resolve("survival.svg"));
        assertTrue(survival.contains("<svg") && survival.contains("fans") && survival.contains("after the service life"), survival);
        String temperature = Files.readString(output.resolve("life-temperature.svg"));
        assertTrue(temperature.contains("A 1 at 3000 rpm") && temperature.contains("hot") && temperature.contains("extrapolated"),
                temperature);
        String[] rows = Files.readString(output.resolve("survival.csv")).split("\r\n");
        assertTrue(rows.length > 60, rows.length + " rows");
        assertTrue(rows[0].contains("fans"), rows[0]);
        // at the rated temperature the curve has the rated life
        assertTrue(json.getAsJsonArray("charts").get(1).getAsString().contains("cool at 40.0 °C, 60000 h"), json.toString());
    }

    @Test
    void onlyTheConditionsAskedFor() throws Ending, IOException {
        lives();
        Verbs.Ran ran = Verbs.run(engine, "", "charts", design, "--output", output.toString(), "--condition", "hot");
        String printed = ran.printed().replaceAll("\\s+", " ");
        assertTrue(printed.contains("hot at 60.0 °C") && !printed.contains("cool at"), printed);
        Ending there = assertThrows(Ending.class, () -> Verbs.run(engine, "", "charts", design, "--output", output.toString()));
        assertTrue(there.getMessage().endsWith("there is a file of that name; --replace writes over it."), there.getMessage());
        assertEquals(0, Verbs.run(engine, "", "charts", design, "--output", output.toString(), "--replace").code());
    }

    @Test
    void whatCannotBeDrawnIsSaid() throws Ending {
        engine.states.put("hot", state(333.15, 26667));
        Verbs.Ran ran = Verbs.run(engine, "", "charts", design, "--output", output.toString());
        assertTrue(ran.printed().contains("Survival was not drawn"), ran.printed());
        assertFalse(Files.exists(output.resolve("survival.svg")));
        assertTrue(Files.exists(output.resolve("life-temperature.svg")));
    }

    @Test
    void mistakes() {
        assertEquals("life charts: --output is missing: the folder to write to. See \"tramontane help life charts\".", refused(2, "charts",
                design));
        assertTrue(refused(4, "charts", design, "--output", output.toString())
                .contains("nothing can be said of life; give its parts a section"));
        assertEquals("--condition hut: " + design + " has no such condition; did you mean \"hot\"?", refused(2, "charts", design,
                "--output",
                output.toString(), "--condition", "hut"));
        engine.givers = Set.of();
        assertTrue(refused(3, "charts", design, "--output", output.toString()).startsWith("No analysis of life is loaded"));
        assertFalse(Files.exists(output));
    }

    private String refused(int code, String... arguments) {
        Ending ending = assertThrows(Ending.class, () -> Verbs.run(engine, "", arguments));
        assertEquals(code, ending.code());
        return ending.getMessage();
    }
}
