package tramontane.drive.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Exporter;
import tramontane.analysis.Result;
import tramontane.drive.ComputedLaws;
import tramontane.model.Design;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.Values;

/** Control laws as CSV and as a C header. */
class LawTablesTest {

    private static final Design DESIGN = Boxes.Box.of("", "").with(", 'controlLaws': [{'id': 'fan law', 'sensor': 'box', 'temperature': '29.96 45 °C',"
            + " 'speed': '33.33 100 %', 'hysteresis': '1.5 K'}, {'id': 'a, b */ 2', 'sensor': 'box', 'temperature': '20 °C', 'speed': '50 %'}, {'id': 'temperature', 'sensor': 'box', 'temperature': '20 °C', 'speed': '50 %'},"
            + " {'id': 'before', 'sensor': 'box', 'temperature': '20 °C', 'speed': '50 %'}, {'id': 'fan', 'sensor': 'box', 'temperature': '20 °C', 'speed': '50 %'},"
            + " {'id': 'fan setting', 'sensor': 'box', 'temperature': '20 °C', 'speed': '50 %'}]").design();

    private static Values settings(String... members) {
        Value.Tree tree = Value.Tree.EMPTY;
        for (int i = 0; i < members.length; i += 2) {
            tree = tree.with(members[i], new Value.Text(members[i + 1]));
        }
        List<Problem> problems = new ArrayList<>();
        Values values = FormReader.read(LawTables.SETTINGS, tree, "", problems);
        assertEquals(List.of(), problems);
        return values;
    }

    private static Evaluation evaluation(ComputedLaws laws) {
        Evaluation.Outcome outcome = new Evaluation.Outcome("drive.law", "", Evaluation.Status.COMPUTED, new Result<>(Optional.of(laws),
                List.of(), List.of()));
        return new Evaluation(Design.EMPTY, List.of(), List.of(outcome), List.of(), List.of(), false);
    }

    private static ComputedLaws computed(boolean holds) {
        return new ComputedLaws(List.of(new ComputedLaws.Law("fan law", "box", List.of("fans"), "energy", List.of(new ComputedLaws.Point(300, 0.2),
                new ComputedLaws.Point(300.04, 0.25), new ComputedLaws.Point(310.09, 0.501), new ComputedLaws.Point(320, 1)), 0.1, holds,
                        List.of())));
    }

    /** Rounded to the side of more air: temperatures down, settings up; points that fall together become one. */
    @Test
    void computedPointsAsCsv() {
        Exporter.Exported file = new LawCsv().write(DESIGN, evaluation(computed(true)), settings("law", "fan law"));
        assertEquals("law,sensor,temperature in °C,setting in %\r\nfan law,box,26.8,25.0\r\nfan law,box,36.9,50.1\r\nfan law,box,46.8,100.0\r\n", file.text());
        assertEquals(List.of(), file.problems());
    }

    @Test
    void statedPointsAsCsv() {
        Exporter.Exported file = new LawCsv().write(DESIGN, evaluation(new ComputedLaws(List.of())), settings("take", "as stated"));
        assertEquals("law,sensor,temperature in °C,setting in %\r\nfan law,box,29.9,33.4\r\nfan law,box,45.0,100.0\r\n\"a, b */ 2\",box,20.0,50.0\r\n", file.text().lines().limit(4).map(line -> line + "\r\n").collect(java.util.stream.Collectors.joining()));
    }

    @Test
    void whatCannotBeWrittenIsSaid() {
        assertEquals(List.of("law: \"fan lew\" is no control law of the design (did you mean \"fan law\"?); expected one of fan law, a, b */ 2,"
                + " temperature, before, fan, fan setting"),
                new LawCsv().write(DESIGN, evaluation(computed(true)), settings("law", "fan lew")).problems().stream().map(Problem::sentence)
                        .toList());
        Exporter.Exported none = new LawHeader().write(DESIGN, evaluation(new ComputedLaws(List.of())), settings("law", "fan law"));
        assertEquals("", none.text());
        assertTrue(none.problems().getFirst().sentence().startsWith("law: control law fan law could not be computed"), none.problems().toString());
        Exporter.Exported empty = new LawCsv().write(Design.EMPTY, evaluation(computed(true)), settings());
        assertEquals("controlLaws: the design has no control law; expected one, with the sensor that it reads", empty.problems().getFirst()
                .sentence());
        Exporter.Exported weak = new LawHeader().write(DESIGN, evaluation(computed(false)), settings("law", "fan law"));
        assertTrue(weak.text().contains("DOES NOT HOLD ALL LIMITS"));
        assertEquals("law: the law computed for fan law does not hold all limits in all conditions", weak.problems().getFirst().sentence());
    }

    @ParameterizedTest
    @CsvSource({"fan law, fan_law", "Läw 2, l_w_2", "2 fans, law_2_fans", "***, law", "__a__, a", "default, law_default", "Switch, law_switch"})
    void namesBecomeIdentifiers(String name, String identifier) {
        assertEquals(identifier, LawTables.identifier(name));
    }

    /** A compiler takes the header without a warning, and its function gives the points, the ends, and what lies between rounded up. */
    @Test
    void aCompilerTakesTheHeader(@TempDir Path folder) throws IOException, InterruptedException {
        Exporter.Exported file = new LawHeader().write(DESIGN, evaluation(computed(true)), settings("take", "as stated"));
        assertEquals(List.of(), file.problems());
        assertTrue(file.text().contains("#define FAN_LAW_HYSTERESIS 15"));
        assumeTrue(List.of("/usr/bin/gcc", "/usr/bin/cc").stream().anyMatch(compiler -> Files.isExecutable(Path.of(compiler))), "no C compiler");
        Files.writeString(folder.resolve("laws.h"), file.text());
        Files.writeString(folder.resolve("main.c"), """
                #include "laws.h"
                #include "laws.h"
                #include <stdio.h>
                int main(void) {
                    int t;
                    for (t = 250; t <= 500; t += 10) {
                        printf("%d %d\\n", t, fan_law((int16_t)t));
                    }
                    if (fan_law_next(300, 1000) != fan_law(315) || fan_law_next(300, 0) != fan_law(300) || fan_law_next(300, 380) != 380) {
                        return 2;
                    }
                    return a_b_2(0) == 500 && a_b_2(900) == 500 && A_B_2_POINTS == 1 ? 0 : 1;
                }
                """);
        String compiler = Files.isExecutable(Path.of("/usr/bin/gcc")) ? "/usr/bin/gcc" : "/usr/bin/cc";
        assertEquals("", run(folder, compiler, "-std=c99", "-Wall", "-Wextra", "-pedantic", "-Werror", "main.c", "-o", "main"));
        String[] lines = run(folder, folder.resolve("main").toString()).split("\n");
        assertEquals(26, lines.length);
        for (String line : lines) {
            int temperature = Integer.parseInt(line.split(" ")[0]);
            double exact = Math.clamp(334 + (1000 - 334) * (temperature - 299) / 151.0, 334, 1000);
            assertEquals(Math.ceil(exact - 1e-9), Double.parseDouble(line.split(" ")[1]), line);
        }
    }

    private static String run(Path folder, String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).directory(folder.toFile()).redirectErrorStream(true).start();
        String output = new String(process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        assertTrue(process.waitFor(1, TimeUnit.MINUTES));
        assertEquals(0, process.exitValue(), output);
        return output;
    }
}
