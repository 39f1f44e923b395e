package tramontane.thermal.internal.time;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.analysis.Sentence;
import tramontane.thermal.Designs;
import tramontane.thermal.History;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.Transient;

/** Flows and settings are held within pieces of time; with pieces of a tenth of their length temperatures hardly differ. */
class PaceTest {

    static Stream<Arguments> designs() {
        String movers = "{'format': 1, 'airMovers': [{'id': 'F', 'curves': [{'speed': '3000 rpm',"
                + "'flow': '0 0.01 0.02 0.03 0.04 0.05 m³/s', 'pressure': '80 78 70 54 30 0 Pa'}]}],";
        String box = "'airPath': {'bays': [{'id': 'box', 'height': '300 mm', 'sections': {'enclosure': {'flowArea': '0.02 m²',"
                + "'walls': [{'area': '0.4 m²'}]}}}], 'passages': [{'id': 'in', 'kind': 'opening', 'from': 'outside', 'to': 'box', 'area': '60 cm²'},"
                + "%s]}, 'heatSources': [{'id': 'cpu', 'power': '70 W', 'into': ['box'], 'limit': '60 °C', 'chain': ["
                + "{'kind': 'measured sink', 'velocity': '0.2 0.5 1 2 4 m/s', 'resistance': '0.8 0.5 0.35 0.25 0.18 K/W', 'heatCapacity': '400 J/K'}]},"
                + "{'id': 'slow', 'power': '20 W', 'into': ['box'], 'chain': [{'kind': 'resistance', 'resistance': '1 K/W', 'heatCapacity': '900 J/K'}]}]}";
        String fan = "{'id': 'fan', 'kind': 'bank', 'from': 'box', 'to': 'outside', 'mover': 'F'}";
        String law = "'controlLaws': [{'id': 'fans', 'sensor': '%s', 'temperature': '%s', 'speed': '25 100 %%'%s}],";
        return Stream.of(
                Arguments.of("full speed", movers + box.formatted(fan), 0.001),
                Arguments.of("a law on a part", movers + law.formatted("cpu", "30 70 °C", "") + box.formatted(fan), 0.03),
                Arguments.of("a law on the air", movers + law.formatted("box", "22 30 °C", ", 'hysteresis': '1 K', 'fallLimit': 0.01") + box.formatted(fan), 0.03),
                Arguments.of("a switch", movers + law.formatted("cpu", "45 45.5 °C", ", 'hysteresis': '40 K'") + box.formatted(fan), 0.001),
                Arguments.of("air that rises", movers + box.formatted("{'id': 'out', 'kind': 'opening', 'from': 'box', 'to': 'outside', 'area': '60 cm²'}"), 0.005));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("designs")
    void shorterPiecesChangeLittle(String name, String json, double most) {
        double far = 0;
        double late = 0;
        for (double duration : new double[] {60, 200, 500, 1000}) {
            ThermalModel model = Designs.model(Designs.design(json));
            List<Transient.Step> steps = List.of(new Transient.Step(0, model, Sentence.of("start")));
            History usual = Simulation.run(steps, Transient.Start.COLD, duration, 1, () -> false).history().orElseThrow();
            History fine = Simulation.run(steps, Transient.Start.COLD, duration, 0.1, () -> false).history().orElseThrow();
            for (History.Course part : usual.parts()) {
                far = Math.max(far, Math.abs(part.end() - fine.part(part.source()).orElseThrow().end()));
                far = Math.max(far, Math.abs(part.peak() - fine.part(part.source()).orElseThrow().peak()));
            }
            if (usual.first().isPresent() || fine.first().isPresent()) {
                late = Math.max(late, Math.abs(usual.first().orElseThrow().reached().orElseThrow() - fine.first().orElseThrow().reached().orElseThrow()));
            }
        }
        assertTrue(far < most, name + ": " + far + " K apart");
        assertTrue(late < 0.1, name + ": " + late + " s apart");
    }
}
