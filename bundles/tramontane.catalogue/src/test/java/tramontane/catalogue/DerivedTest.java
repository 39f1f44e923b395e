package tramontane.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.model.AirMover;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.file.Limits;
import tramontane.model.file.TreeFile;

/** Figures that follow from curves. */
class DerivedTest {

    private static AirMover part(String members) {
        List<Problem> problems = new ArrayList<>();
        AirMover part = AirMover.from(FormReader.read(AirMover.FORM, TreeFile.parse(("{\"id\": \"x\", " + members + "}")
                .getBytes(StandardCharsets.UTF_8), Limits.STANDARD).tree().orElseThrow(), "", problems));
        assertEquals(List.of(), problems);
        return part;
    }

    /**
     * Similarity of fans, ANSI/AMCA 210 and ISO 5801 conversion rules with Kp = 1: Q ~ n D³, Δp ~ n² D² ρ, P ~ n³ D⁵ ρ. The base
     * point of 0.05 m³/s, 80 Pa, 9 W at 2800 rpm, 0.12 m and 1.2 kg/m³ is the best one of a curve; wanted are the worked values
     * at other speed, size and density. The curve is stated for the first density and brought to 1.2 kg/m³.
     */
    @ParameterizedTest
    @CsvSource(textBlock = """
            2800, 0.120, 1.2, 0.05,         80.0,        9.0
            2100, 0.120, 1.2, 0.0375,       45.0,        3.796875
            2800, 0.140, 1.2, 0.0793981481, 108.8888889, 19.4525463
            3500, 0.092, 1.2, 0.0281643519, 73.4722222,  4.65591936
            2800, 0.120, 1.5839456, 0.05,   60.6081333,  6.818415
            """)
    void figuresFollowTheFanLaws(double speed, double diameter, double stated, double flow, double pressure, double power) {
        // 1.2 / 1.5839456 = 0.909122 / 1.2; the row of 3500 rpm is that of 1.0 kg/m³ times 1.2
        AirMover mover = part("\"ratedSpeed\": \"" + speed + " rpm\", \"rotorDiameter\": " + diameter + ", \"curves\": [{\"speed\": \"2800 rpm\", "
                + "\"rotorDiameter\": 0.12, \"density\": " + stated + ", \"flow\": [0, 0.05, 0.1], \"pressure\": [160, 80, 0], "
                + "\"power\": [9, 9, 9]}]");
        Derived derived = Derived.of(mover);
        assertEquals(flow, derived.bestFlow().orElseThrow(), 1e-6 * flow);
        assertEquals(pressure, derived.bestPressure().orElseThrow(), 1e-6 * pressure);
        assertEquals(2 * flow, derived.freeDelivery().orElseThrow(), 2e-6 * flow);
        assertEquals(2 * pressure, derived.shutOff().orElseThrow(), 2e-6 * pressure);
        assertEquals(flow * pressure / power, derived.bestEfficiency().orElseThrow(), 1e-6 * flow * pressure / power);
        double omega = speed * Math.PI / 30;
        assertEquals(omega * Math.sqrt(flow) / Math.pow(pressure / 1.2, 0.75), derived.specificSpeed().orElseThrow(), 1e-5);
        assertEquals(omega * diameter / 2, derived.tipSpeed().orElseThrow(), 1e-9);
    }

    /** A static efficiency of 0.02 m³/s × 50 Pa / 6.5 W = 0.153846 (Q Δp / P, ISO 5801). */
    @Test
    void efficiencyIsFlowTimesPressureOverInput() {
        Derived derived = Derived.of(part("\"ratedPower\": 6.5, \"curves\": [{\"flow\": [0, 0.02, 0.04], \"pressure\": [100, 50, 0]}]"));
        assertEquals(0.153846, derived.bestEfficiency().orElseThrow(), 1e-6);
        assertEquals(OptionalDouble.empty(), derived.specificSpeed(), "no speed is given");
        assertEquals(OptionalDouble.empty(), derived.tipSpeed());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            "curves": [{"flow": [0, 1], "pressure": [10, 0]}]                                                              | 1    | 10
            "curves": [{"flow": [0, 1], "pressure": [10, 2]}]                                                              |      | 10
            "curves": [{"flow": [0.1, 1], "pressure": [10, 0]}]                                                            | 1    |
            "curves": [{"flow": [0, 1], "pressure": [10, -10]}]                                                            | 0.5  | 10
            "curves": [{"flow": [0, 1, 2], "pressure": [-5, 10, 0]}]                                                       | 2    | -5
            "ratedSpeed": 100, "curves": [{"speed": 50, "flow": [0, 1], "pressure": [10, 0]}]                              | 2    | 40
            "ratedSpeed": 100, "curves": [{"flow": [0, 1], "pressure": [10, 0]}]                                           | 1    | 10
            "ratedSpeed": 100, "curves": [{"speed": 50, "flow": [0, 1], "pressure": [10, 0]}, {"speed": 80, "flow": [0, 4], "pressure": [8, 0]}] | 5 | 12.5
            "ratedSpeed": 100, "curves": [{"speed": 80, "flow": [0, 4], "pressure": [8, 0]}, {"speed": 130, "flow": [0, 9], "pressure": [9, 0]}] | 5 | 12.5
            "curves": [{"speed": 80, "flow": [0, 4], "pressure": [8, 0]}, {"speed": 100, "flow": [0, 9], "pressure": [9, 0]}] | 4 | 8
            "rotorDiameter": 1, "curves": [{"flow": [0, 1], "pressure": [10, 0]}]                                          | 1    | 10
            "curves": [{"density": 0.6, "flow": [0, 1], "pressure": [10, 0]}]                                              | 1    | 20
            """)
    void endsOfCurves(String members, Double free, Double shutOff) {
        Derived derived = Derived.of(part(members));
        assertFigure(free, derived.freeDelivery());
        assertFigure(shutOff, derived.shutOff());
        assertEquals(OptionalDouble.empty(), derived.bestEfficiency(), "no power is given");
    }

    private static void assertFigure(Double expected, OptionalDouble got) {
        assertEquals(expected != null, got.isPresent());
        if (expected != null) {
            assertEquals(expected, got.getAsDouble(), 1e-9);
        }
    }

    /** The fixed loss does not follow the speed: 2 W + (6 W - 2 W) (1/2)³ at half the speed. */
    @Test
    void theFixedLossStays() {
        Derived derived = Derived.of(part("\"ratedSpeed\": 50, \"fixedLoss\": 2, \"curves\": [{\"speed\": 100, \"flow\": [0, 0.02, 0.04], "
                + "\"pressure\": [100, 50, 0], \"power\": [6, 6, 6]}]"));
        assertEquals(0.01 * 12.5 / 2.5, derived.bestEfficiency().orElseThrow(), 1e-12);
    }

    /** On p = p0 (1 - q/q0) with constant input the product q p is greatest at q0/2, wherever the points lie. */
    @Property(tries = 200)
    void theBestPointIsFoundBetweenPoints(@ForAll @DoubleRange(min = 0.05, max = 0.95) double inner) {
        Derived derived = Derived.of(part("\"ratedPower\": 10, \"curves\": [{\"flow\": [0, " + inner + ", 1], \"pressure\": [40, " + 40 * (1 - inner)
                + ", 0]}]"));
        // steps of an eighth of an interval: at worst 1/16 beside the peak, where the product is less by 4/256
        assertEquals(1, derived.bestEfficiency().orElseThrow(), 4.0 / 256);
        assertTrue(derived.bestEfficiency().orElseThrow() <= 1 + 1e-12);
    }
}
