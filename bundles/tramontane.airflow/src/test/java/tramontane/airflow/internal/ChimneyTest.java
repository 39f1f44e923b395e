package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.airflow.AirPathModel;
import tramontane.analysis.OperatingPoint;
import tramontane.model.AirPath;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.model.Quantity;
import tramontane.model.Value;

/**
 * Natural draught through a heated column without a fan, against the stack formula: Δp = (ρo - ρi) g h = Σ K ρ v²/2, and the
 * flow through two openings Q = C A √(2 g h ΔT/T) (ASHRAE Handbook - Fundamentals, ch. Ventilation and Infiltration, from memory).
 */
class ChimneyTest {

    private static final double GRAVITY = 9.80665;
    private static final double OPENING = 0.02;
    /** A sharp-edged opening by Idelchik; its exit velocity head is in it. */
    private static final double LOSS = 1.707 * 1.707;

    private static Bay bay(String id, double height) {
        return new Bay(id, Optional.of(Quantity.of(height)), Value.Tree.EMPTY);
    }

    private static Passage opening(String id, String from, String to, double area) {
        return Cases.passage(id, "opening", from, to, "area", area);
    }

    /** An opening at the bottom, a column, an opening at the top; defined upwards or downwards. */
    private static AirPathModel chimney(double height, double out, double column, boolean upwards) {
        List<Passage> passages = upwards ? List.of(opening("in", "outside", "foot", OPENING), opening("column", "foot", "head", column),
                opening("out", "head", "outside", out)) : List.of(opening("in", "foot", "outside", OPENING),
                        opening("column", "head", "foot", column), opening("out", "outside", "head", out));
        Design design = Design.EMPTY.withAirPath(new AirPath(List.of(bay("foot", 0.3), bay("head", 0.3 + height)), passages,
                Value.Tree.EMPTY));
        return AirPathModel.of(design, Condition.NOMINAL, Cases.KINDS);
    }

    /** Height, temperatures of the foot, which fills the column, and of the head; area of the upper opening and of the column. */
    @ParameterizedTest
    @CsvSource({"2, 313.15, 313.15, 0.02, 10", "2, 333.15, 333.15, 0.01, 0.03", "1, 313.15, 333.15, 0.03, 0.05",
        "4, 353.15, 323.15, 0.02, 0.04"})
    void theDraughtIsWhatTheOpeningsAndTheColumnLose(double height, double foot, double head, double out, double column) {
        for (boolean upwards : new boolean[] {true, false}) {
            AirPathModel model = chimney(height, out, column, upwards);
            OperatingPoint point = model.at(Map.of()).solve(new double[] {foot, head}).point().orElseThrow();
            double outside = model.outside().density();
            double inColumn = model.outside().heatedTo(foot).density();
            double atHead = model.outside().heatedTo(head).density();
            double draught = (outside - inColumn) * GRAVITY * height;
            double mass = Math.sqrt(2 * draught / LOSS / (1 / (outside * OPENING * OPENING) + 1 / (inColumn * column * column)
                    + 1 / (atHead * out * out)));
            double sign = upwards ? 1 : -1;
            for (String each : List.of("in", "column", "out")) {
                assertEquals(sign * mass, point.passage(each).orElseThrow().massFlow(), 1e-9 * mass, each);
            }
            double in = LOSS * mass * mass / (2 * outside * OPENING * OPENING);
            assertEquals(-in, point.bay("foot").orElseThrow().pressure(), 1e-8 * draught);
            assertEquals(LOSS * mass * mass / (2 * atHead * out * out), point.bay("head").orElseThrow().pressure(), 1e-8 * draught);
            assertTrue(draught > 0.5, () -> "too weak to be turbulent: " + draught);
        }
    }

    /** Two like openings: each has half the height to itself but for the difference of densities, discharge coefficient 1/√K. */
    @ParameterizedTest
    @CsvSource({"2, 303.15", "3, 308.15"})
    void theFlowIsThatOfTheVentilationFormula(double height, double inside) {
        AirPathModel model = chimney(height, OPENING, 10, true);
        OperatingPoint point = model.at(Map.of()).solve(new double[] {inside, inside}).point().orElseThrow();
        double outside = model.outside().temperature();
        double formula = OPENING / Math.sqrt(LOSS) * Math.sqrt(2 * GRAVITY * height / 2 * (inside - outside) / inside);
        // the formula takes dry air, and the level without pressure in the middle: a per cent at these temperatures
        assertEquals(formula, point.passage("in").orElseThrow().flow(), 0.015 * formula);
    }

    @Test
    void coolAirFallsThroughIt() {
        AirPathModel model = chimney(2, OPENING, 10, true);
        OperatingPoint point = model.at(Map.of()).solve(new double[] {278.15, 278.15}).point().orElseThrow();
        double outside = model.outside().density();
        double inside = model.outside().heatedTo(278.15).density();
        double mass = Math.sqrt(2 * (inside - outside) * GRAVITY * 2 / LOSS / (1 / (outside * OPENING * OPENING)
                + 1 / (inside * 10 * 10) + 1 / (inside * OPENING * OPENING)));
        // it comes in at the top
        assertEquals(-mass, point.passage("in").orElseThrow().massFlow(), 1e-9 * mass);
    }
}
