package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Figure;

class BandsTest {

    private static Bands bands(Map<String, Double> tolerances, ToDoubleFunction<Map<String, Double>> value) {
        return Bands.of(List.of(Figure.of(Figures.BANK_FLOW, "fans", value.applyAsDouble(Map.of()))), tolerances,
                factors -> Optional.of(new Bands.Found(List.of(Figure.of(Figures.BANK_FLOW, "fans",
                        value.applyAsDouble(factors))), true)));
    }

    private static double factor(Map<String, Double> factors, String name) {
        return factors.getOrDefault(name, 1.0);
    }

    @Property
    void linearOnesAddUp(@ForAll @DoubleRange(min = -3, max = 3) double a, @ForAll @DoubleRange(min = -3, max = 3) double b,
            @ForAll @DoubleRange(min = 0.01, max = 0.5) double first, @ForAll @DoubleRange(min = 0.01, max = 0.5) double second) {
        Map<String, Double> tolerances = new LinkedHashMap<>();
        tolerances.put("a", first);
        tolerances.put("b", second);
        Bands bands = bands(tolerances, factors -> 10 + a * factor(factors, "a") + b * factor(factors, "b"));
        Figure figure = bands.figures().getFirst();
        double width = Math.abs(a) * first + Math.abs(b) * second;
        if (width > 1e-7) {
            assertEquals(figure.value() - width, figure.lower().orElseThrow(), 1e-9);
            assertEquals(figure.value() + width, figure.upper().orElseThrow(), 1e-9);
        }
        assertEquals(0, bands.beyond(), 1e-6);
    }

    /** The product of two is highest with both at their upper ends, more than the single moves added up; samples see it. */
    @Test
    void samplesWidenWhatIsNotLinear() {
        Map<String, Double> tolerances = new LinkedHashMap<>();
        tolerances.put("a", 0.4);
        tolerances.put("b", 0.4);
        Bands bands = bands(tolerances, factors -> factor(factors, "a") * factor(factors, "b"));
        Figure figure = bands.figures().getFirst();
        assertEquals(1.96, figure.upper().orElseThrow(), 1e-12);
        assertEquals(0.2, figure.lower().orElseThrow(), 1e-12);
        assertEquals(0.16 / 1.6, bands.beyond(), 1e-9);
    }

    @Test
    void aFigureThatNothingMovesHasNoBounds() {
        Figure figure = bands(Map.of("a", 0.3), factors -> 5).figures().getFirst();
        assertTrue(figure.lower().isEmpty());
        assertTrue(figure.upper().isEmpty());
    }

    @Test
    void countsWhatHasNoAnswerAndWhatLeavesItsStretch() {
        Figure one = Figure.of(Figures.BANK_FLOW, "fans", 1);
        Bands bands = Bands.of(List.of(one), Map.of("a", 0.3), factors -> factors.get("a") > 1 ? Optional.empty()
                : Optional.of(new Bands.Found(List.of(one), false)));
        assertTrue(bands.without() >= 1);
        assertTrue(bands.left() >= 1);
        assertEquals(2 + 2 + Bands.SAMPLES, bands.without() + bands.left());
    }
}
