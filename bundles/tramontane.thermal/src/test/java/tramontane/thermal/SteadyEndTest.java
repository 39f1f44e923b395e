package tramontane.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.analysis.Sentence;
import tramontane.model.Design;

/** After many time constants temperatures are those of the steady state. */
class SteadyEndTest {

    private static final String FAN = "{'format': 1, 'airMovers': [{'id': 'F', 'width': '80 mm', 'height': '80 mm', 'curves': [{'speed': '3000 rpm',"
            + "'flow': '0 0.01 0.02 0.03 0.04 0.05 m³/s', 'pressure': '80 78 70 54 30 0 Pa', 'power': '6 6.5 7 7.2 7 6.4 W'}]}],";
    private static final String BOX = FAN + "'airPath': {'bays': [{'id': 'box', 'sections': {'enclosure': {'flowArea': '0.03 m²',"
            + "'chassisHeatCapacity': '2 kJ/K', 'chassisConductance': '5 W/K'%s}}}], 'passages': ["
            + "{'id': 'in', 'kind': 'measured resistance', 'from': 'outside', 'to': 'box', 'quadratic': 20000},"
            + "{'id': 'fan', 'kind': 'bank', 'from': 'box', 'to': 'outside', 'mover': 'F', 'across': 2}]},";
    private static final String PARTS = "'heatSources': [{'id': 'cpu', 'power': '100 W', 'into': ['box'], 'row': 1, 'chain': ["
            + "{'kind': 'junction to case', 'resistance': '0.1 K/W', 'heatCapacity': '20 J/K'},"
            + "{'kind': 'interface', 'conductivity': '3 W/(m K)', 'thickness': '0.15 mm', 'area': '10 cm²', 'heatCapacity': '60 J/K'},"
            + "{'kind': 'resistance', 'resistance': '0.25 K/W', 'heatCapacity': '400 J/K'}]},"
            + "{'id': 'board', 'power': '40 W', 'into': [{'place': 'box', 'share': '60 %'}, {'place': 'in'}], 'row': 2, 'wake': 1.6, 'chain': ["
            + "{'kind': 'surface', 'coefficient': '20 W/(m² K)', 'area': '0.05 m²', 'heatCapacity': '300 J/K'}]},"
            + "{'id': 'loose', 'power': '15 W', 'into': ['box'], 'chain': [{'kind': 'resistance', 'resistance': '1 K/W', 'heatCapacity': '80 J/K'}]},"
            + "{'id': 'bare', 'power': '10 W', 'into': ['box']},"
            + "{'id': 'filter', 'power': '12 W', 'into': ['in'], 'chain': [{'kind': 'resistance', 'resistance': '0.8 K/W', 'reference': 'mean air',"
            + " 'heatCapacity': '200 J/K'}]}]}";

    static Stream<Arguments> designs() {
        String round = FAN + "'airPath': {'bays': ['front', 'rear'], 'passages': ["
                + "{'id': 'in', 'kind': 'opening', 'from': 'outside', 'to': 'front', 'area': '60 cm²'},"
                + "{'id': 'fan', 'kind': 'bank', 'from': 'front', 'to': 'rear', 'mover': 'F', 'across': 3},"
                + "{'id': 'back', 'kind': 'opening', 'from': 'rear', 'to': 'front', 'area': '40 cm²'},"
                + "{'id': 'out', 'kind': 'opening', 'from': 'rear', 'to': 'outside', 'area': '60 cm²'}]},";
        String roundParts = "'heatSources': [{'id': 'cpu', 'power': '80 W', 'into': ['rear'], 'chain': ["
                + "{'kind': 'resistance', 'resistance': '0.3 K/W', 'reference': 'mean air', 'heatCapacity': '400 J/K'}]},"
                + "{'id': 'drive', 'power': '20 W', 'into': ['fan'], 'chain': ["
                + "{'kind': 'resistance', 'resistance': '0.9 K/W', 'heatCapacity': '300 J/K'}]},"
                + "{'id': 'coil', 'power': '30 W', 'into': ['back'], 'chain': [{'kind': 'resistance', 'resistance': '0.5 K/W', 'heatCapacity': '500 J/K'}]}]}";
        String law = "'controlLaws': [{'id': 'fans', 'sensor': '%s', 'temperature': '%s', 'speed': '%s'%s}],";
        String rising = FAN + "'airPath': {'bays': [{'id': 'low'}, {'id': 'high', 'height': '400 mm'}], 'passages': ["
                + "{'id': 'in', 'kind': 'opening', 'from': 'outside', 'to': 'low', 'area': '100 cm²'},"
                + "{'id': 'up', 'kind': 'opening', 'from': 'low', 'to': 'high', 'area': '150 cm²'},"
                + "{'id': 'out', 'kind': 'opening', 'from': 'high', 'to': 'outside', 'area': '100 cm²'}]},"
                + "'heatSources': [{'id': 'cpu', 'power': '60 W', 'into': ['low'], 'chain': ["
                + "{'kind': 'resistance', 'resistance': '0.5 K/W', 'reference': 'mean air', 'heatCapacity': '500 J/K'}]}]}";
        return Stream.of(
                Arguments.of("a box", BOX.formatted("") + PARTS),
                Arguments.of("a box with walls", BOX.formatted(", 'walls': [{'area': '0.5 m²'}, {'area': '0.2 m²', 'facing': 'up'}]") + PARTS),
                Arguments.of("a closed box with walls", BOX.formatted(", 'walls': [{'area': '0.9 m²'}]").replace("'from': 'outside', 'to': 'box', 'quadratic'",
                        "'from': 'box', 'to': 'box', 'quadratic'") + PARTS.replace("'into': ['in']", "'into': ['box']").replace("{'place': 'in'}", "{'place': 'fan'}")),
                Arguments.of("air that goes round", round + roundParts),
                Arguments.of("a law on a part", BOX.formatted("") + law.formatted("cpu", "30 90 °C", "20 100 %", "") + PARTS),
                Arguments.of("a law on the air", BOX.formatted("") + law.formatted("box", "21 25 30 °C", "20 60 100 %", ", 'hysteresis': '1 K'") + PARTS),
                Arguments.of("a steep law on the air", BOX.formatted("") + law.formatted("box", "22 24 °C", "20 100 %", "") + PARTS),
                Arguments.of("a slow law on a passage", round + law.formatted("out", "21 30 °C", "20 100 %", ", 'riseLimit': 0.0005") + roundParts),
                Arguments.of("a switch", BOX.formatted("") + law.formatted("cpu", "50 51 90 °C", "40 60 100 %", ", 'hysteresis': '3 K'") + PARTS),
                Arguments.of("two laws on a bank", BOX.formatted("") + "'controlLaws': [{'id': 'part', 'sensor': 'cpu', 'temperature': '30 90 °C', 'speed': '10 90 %'},"
                        + "{'id': 'air', 'sensor': 'box', 'banks': ['fan'], 'temperature': '20 30 °C', 'speed': '30 100 %', 'fallLimit': 0.001}]," + PARTS),
                Arguments.of("rising air alone", rising),
                Arguments.of("a fan that failed", BOX.formatted("") + "'conditions': [{'id': 'failed', 'failed': [{'bank': 'fan', 'position': 1}]}]," + PARTS));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("designs")
    void theEndIsTheSteadyState(String name, String json) {
        Design design = Designs.design(json);
        ThermalModel model = Designs.model(design);
        Transient outcome = Transient.of(List.of(new Transient.Step(0, model, Sentence.of("start"))), Transient.Start.COLD, 40_000, () -> false);
        assertEquals(List.of(), outcome.obstacles());
        History history = outcome.history().orElseThrow();
        ThermalState steady = model.settle(() -> false).state().orElseThrow();
        assertTrue(history.remarks().isEmpty(), history.remarks().toString());
        assertEquals(steady.parts().size(), history.parts().size());
        double far = 0;
        for (History.Course course : history.parts()) {
            far = Math.max(far, Math.abs(course.end() - steady.part(course.source()).orElseThrow().junction().getAsDouble()));
        }
        for (int i = 0; i < design.airPath().bays().size(); i++) {
            far = Math.max(far, Math.abs(history.bays().get(design.airPath().bays().get(i).id()).getLast() - steady.temperatures().get(i)));
        }
        assertTrue(far < 0.01, name + " ends " + far + " K from its steady state");
    }
}
