package tramontane.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.model.Design;

/** What control laws read, and how far parts are from their limits. */
class SensedTest {

    private static final String AIR = "{'format': 1, 'airMovers': [{'id': 'F', 'width': '80 mm', 'height': '80 mm', "
            + "'curves': [{'speed': '3000 rpm', 'flow': '0 0.01 0.02 0.03 0.04 0.05 m³/s', 'pressure': '80 78 70 54 30 0 Pa'}]}],"
            + "'airPath': {'bays': ['box'], 'passages': ["
            + "{'id': 'in', 'kind': 'measured resistance', 'from': 'outside', 'to': 'box', 'quadratic': 20000},"
            + "{'id': 'fans', 'kind': 'bank', 'from': 'box', 'to': 'outside', 'mover': 'F', 'across': 2},"
            + "{'id': 'aside', 'kind': 'bank', 'from': 'box', 'to': 'outside', 'mover': 'F'}]},";
    private static final String LAWS = "'controlLaws': [{'id': 'one', 'sensor': '%s', 'temperature': '30 60 °C', 'speed': '20 100 %%'},"
            + "{'id': 'two', 'sensor': 'box', 'banks': ['aside', 'gone'], 'temperature': '30 60 °C', 'speed': '0 100 %%'}],";
    private static final String CHAIN = "'chain': [{'kind': 'resistance', 'resistance': '0.5 K/W'}]";

    private static Design design(String sensor, String more, String sources) {
        return Designs.design(AIR, LAWS.formatted(sensor), more, "'heatSources': [" + sources + "]}");
    }

    private static String source(String limit) {
        return "{'id': 'cpu', 'power': '40 W', 'into': ['in'], " + limit + CHAIN + "}";
    }

    @Test
    void lawsActOnTheirBanks() {
        ThermalModel model = Designs.model(design("cpu", "", source("")));
        assertEquals(List.of("one", "two"), model.acting().stream().map(acting -> acting.law().id()).toList());
        assertEquals(List.of(List.of("fans", "aside"), List.of("aside")), model.acting().stream().map(ThermalModel.Acting::banks).toList());
        assertEquals(List.of(), Designs.model(design("cpu", "'conditions': [{'id': 'c', 'speed': '50 %'}],", source(""))).acting());
        assertEquals(List.of(), Designs.model(Designs.design("{'format': 1}")).acting(), "no air path, so nothing to act on");
    }

    @ParameterizedTest
    @CsvSource({"outside, 293.15", "cpu, 313.15", "nothing, "})
    void aSensorReadsWhatItStandsAt(String sensor, Double reads) {
        Design design = design(sensor, "'conditions': [{'id': 'c', 'speed': '50 %'}],",
                source("").replace("'0.5 K/W'", "'0.5 K/W', 'reference': 'inlet air'"));
        ThermalModel model = Designs.model(design);
        OptionalDouble sensed = model.sensed(design.controlLaws().getFirst(), model.settle(() -> false).state().orElseThrow());
        assertEquals(reads == null, sensed.isEmpty());
        sensed.ifPresent(temperature -> assertEquals(reads, temperature, 1e-9));
    }

    @Test
    void aBayAndAPassageAreReadAsTheyAre() {
        Design design = design("in", "", source(""));
        ThermalModel model = Designs.model(design);
        ThermalState state = model.settle(() -> false).state().orElseThrow();
        double box = model.sensed(design.controlLaws().get(1), state).orElseThrow();
        assertEquals(state.temperatures().getFirst(), box, 0);
        assertEquals(293.15 + 0.5 * (box - 293.15), model.sensed(design.controlLaws().getFirst(), state).orElseThrow(), 1e-9,
                "all heat goes into the air of the passage, half of it counts on the mean");
    }

    @Test
    void theMarginIsThatOfTheWorst() {
        Design design = design("cpu", "", source("'limit': '60 °C', ")
                + ", {'id': 'gpu', 'power': '90 W', 'into': ['box'], 'limit': '50 °C', " + CHAIN + "}");
        ThermalModel model = Designs.model(design);
        ThermalState state = model.settle(() -> false).state().orElseThrow();
        double gpu = 323.15 - state.part("gpu").orElseThrow().junction().orElseThrow();
        assertTrue(gpu < 0, "it is above its limit");
        assertEquals(gpu, model.margin(state).orElseThrow(), 0);
        ThermalModel free = Designs.model(design("cpu", "", source("")));
        assertEquals(OptionalDouble.empty(), free.margin(free.settle(() -> false).state().orElseThrow()), "no part has a limit");
    }

    @Test
    void whereNothingCarriesHeatOffTheMarginIsFarBelowZero() {
        Drive still = Drive.STATED.with(Map.of("fans", 0.0, "aside", 0.0));
        ThermalModel passage = Designs.model(design("cpu", "", source("'limit': '60 °C', ").replace("'in'", "'fans'")));
        ThermalState state = passage.at(still, Optional.empty(), () -> false).state().orElseThrow();
        assertTrue(passage.margin(state).orElseThrow() <= -400, "its air stands: " + passage.margin(state));
        ThermalModel plate = Designs.model(design("cpu", "", "{'id': 'cpu', 'power': '1 W', 'into': ['fans'], 'limit': '60 °C', 'chain': ["
                + "{'kind': 'plate fins', 'fins': 10, 'finThickness': '1 mm', 'width': '60 mm', 'height': '20 mm', 'length': '60 mm'}]}"));
        assertTrue(plate.margin(plate.at(still, Optional.empty(), () -> false).state().orElseThrow()).orElseThrow() <= -400);
    }

    @Test
    void whatIsNotStatedLeavesNoMargin() {
        ThermalModel model = Designs.model(design("cpu", "", source("'limit': '60 °C', ")
                + ", {'id': 'odd', 'power': '1 W', 'into': ['box'],"
                + " 'limit': '50 °C', 'chain': [{'kind': 'unknown to all'}]}"));
        assertEquals(OptionalDouble.empty(), model.margin(model.settle(() -> false).state().orElseThrow()));
    }
}
