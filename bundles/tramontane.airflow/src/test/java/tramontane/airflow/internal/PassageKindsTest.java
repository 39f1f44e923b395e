package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.PassageKind;
import tramontane.model.Condition;

class PassageKindsTest {

    private static final double MU = 1.8134e-5;

    record Named(String name, FlowLaw law, boolean odd) {
        @Override
        public String toString() {
            return name;
        }
    }

    /** One of everything that we ship, all shapes of its parameters among them. */
    static List<Named> laws() {
        Condition nominal = Condition.NOMINAL;
        PassageKind opening = new OpeningKind();
        PassageKind grille = new GrilleKind();
        PassageKind measured = new MeasuredResistanceKind();
        return List.of(
                new Named("round opening", Cases.law(opening, nominal, "diameter", "50 mm"), true),
                new Named("rectangular opening", Cases.law(opening, nominal, "width", "200 mm", "height", "5 mm"), true),
                new Named("opening of a discharge coefficient",
                        Cases.law(opening, nominal, "area", "10 cm²", "dischargeCoefficient", 0.6), true),
                new Named("opening of a loss coefficient", Cases.law(opening, nominal, "area", "10 cm²", "lossCoefficient", 1.5), true),
                new Named("grille of a free area", Cases.law(grille, nominal, "area", "100 cm²", "freeArea", "60 cm²"), true),
                new Named("fully open grille", Cases.law(grille, nominal, "area", "100 cm²", "openRatio", 1), true),
                new Named("thick grille", Cases.law(grille, nominal, "width", "100 mm", "height", "80 mm", "openRatio", "40 %",
                        "thickness", "1 mm", "holeDiameter", "4 mm"), true),
                new Named("grille of a loss coefficient", Cases.law(grille, nominal, "area", "100 cm²", "lossCoefficient", 3), true),
                new Named("one measured point", Cases.law(measured, nominal, "flow", "0.08 m³/s", "pressure", "60 Pa"), true),
                new Named("measured points", Cases.law(measured, nominal, "flow", "0.01 0.02 0.04 m³/s", "pressure", "3 9 30 Pa"), true),
                new Named("coefficients", Cases.law(measured, nominal, "linear", 400, "quadratic", 3e4), true),
                new Named("linear", Cases.law(measured, nominal, "linear", 400), true),
                new Named("square", Cases.law(measured, nominal, "quadratic", 3e4), true),
                new Named("clogged filter", Cases.law(measured, Cases.clogged(2.5), "linear", 400, "quadratic", 3e4, "filter", true), true),
                new Named("bank", Cases.law(new BankKind(), nominal, "mover", "F", "across", 2, "along", 2, "series", 2), false));
    }

    @Provide
    Arbitrary<Named> anyLaw() {
        return Arbitraries.of(laws());
    }

    private static double pressure(FlowLaw law, double flow, double density) {
        FlowLaw.Drop drop = new FlowLaw.Drop();
        law.at(flow, density, MU, drop);
        return drop.pressure();
    }

    private static double slope(FlowLaw law, double flow, double density) {
        FlowLaw.Drop drop = new FlowLaw.Drop();
        law.at(flow, density, MU, drop);
        return drop.slope();
    }

    @Property
    void isDefinedAndRisesEverywhere(@ForAll("anyLaw") Named named, @ForAll @DoubleRange(min = -10, max = 10) @Scale(15) double a,
            @ForAll @DoubleRange(min = -10, max = 10) @Scale(15) double b) {
        double pa = pressure(named.law(), a, 1.2);
        double pb = pressure(named.law(), b, 1.2);
        assertTrue(Double.isFinite(pa) && Double.isFinite(pb));
        // as far as doubles can tell them apart
        if (b - a > 1e-6) {
            assertTrue(pb > pa, () -> named + ": " + pa + " at " + a + ", " + pb + " at " + b);
        }
    }

    @Property
    void isOdd(@ForAll("anyLaw") Named named, @ForAll @DoubleRange(min = 0, max = 1) @Scale(15) double flow) {
        if (named.odd()) {
            assertEquals(pressure(named.law(), flow, 1.2), -pressure(named.law(), -flow, 1.2));
            assertEquals(slope(named.law(), flow, 1.2), slope(named.law(), -flow, 1.2));
        }
    }

    @Property
    void hasTheSlopeOfItsPressure(@ForAll("anyLaw") Named named, @ForAll @DoubleRange(min = -0.2, max = 0.2) @Scale(15) double flow,
            @ForAll @DoubleRange(min = 0.6, max = 1.4) @Scale(15) double density) {
        double h = 1e-7;
        double numeric = (pressure(named.law(), flow + h, density) - pressure(named.law(), flow - h, density)) / (2 * h);
        double slope = slope(named.law(), flow, density);
        double bend = Math.max(Math.abs(slope(named.law(), flow + h, density) - slope),
                Math.abs(slope(named.law(), flow - h, density) - slope));
        // rounding of pressures of up to some 1e5 Pa over 2 h
        assertEquals(numeric, slope, 1e-6 * slope + bend + 1e-12 * Math.abs(pressure(named.law(), flow, density)) / h + 1e-6,
                named.name());
    }

    @Property
    void hasASlopeWithoutJumps(@ForAll("anyLaw") Named named, @ForAll @DoubleRange(min = -0.3, max = 0.3) @Scale(15) double flow) {
        double far = slope(named.law(), flow + 1e-6, 1.2) - slope(named.law(), flow, 1.2);
        double near = slope(named.law(), flow + 1e-9, 1.2) - slope(named.law(), flow, 1.2);
        assertEquals(0, near, 1e-2 * Math.abs(far) + 1e-7 * slope(named.law(), flow, 1.2) + 1e-2, named.name());
    }

    @ParameterizedTest
    @MethodSource("laws")
    void hasAPositiveSlopeAtRest(Named named) {
        double slope = slope(named.law(), 0, 1.2);
        assertTrue(slope > 0 && slope < Double.POSITIVE_INFINITY);
    }

    /** At flows where the square law holds, the drop goes with density: Δp = K ρ v²/2. */
    @Property
    void losesInProportionToDensity(@ForAll @DoubleRange(min = 0.5, max = 1.5) @Scale(15) double density) {
        for (Named named : laws()) {
            if (named.name().contains("opening") || named.name().contains("grille") || named.name().equals("square")) {
                assertEquals(density / 1.2, pressure(named.law(), 0.05, density) / pressure(named.law(), 0.05, 1.2), 1e-6,
                        named.name());
            }
        }
    }

    /** K = (1 + 0.707)² on the velocity in the opening (Idelchik); 10 cm², 0.01 m³/s: 10 m/s, 60 Pa of velocity head. */
    @Test
    void anOpeningLosesItsVelocityHeadAndMore() {
        FlowLaw law = Cases.law(new OpeningKind(), Condition.NOMINAL, "area", "10 cm²");
        assertEquals(1.707 * 1.707 * 60, pressure(law, 0.01, 1.2), 1e-4);
        FlowLaw round = Cases.law(new OpeningKind(), Condition.NOMINAL, "diameter", Math.sqrt(4e-3 / Math.PI));
        assertEquals(pressure(law, 0.01, 1.2), pressure(round, 0.01, 1.2), 1e-9);
        FlowLaw discharge = Cases.law(new OpeningKind(), Condition.NOMINAL, "area", "10 cm²", "dischargeCoefficient", 0.6);
        assertEquals(60 / 0.36, pressure(discharge, 0.01, 1.2), 1e-4);
        FlowLaw loss = Cases.law(new OpeningKind(), Condition.NOMINAL, "width", "50 mm", "height", "20 mm", "lossCoefficient", 1.5);
        assertEquals(90, pressure(loss, 0.01, 1.2), 1e-4);
    }

    /** Plate coefficients of Idelchik, diagrams 8-1 (thin) and 8-3 (thick, λ l/d of 0.02), plus the head lost behind it. */
    @ParameterizedTest
    @CsvSource({"0.2, 0, 52.58039", "0.4, 0, 8.75789", "0.6, 0, 2.25705", "0.8, 0, 0.53773", "0.4, 0.5, 7.48690",
        "0.6, 1, 1.39050", "0.4, 2, 4.68975"})
    void aGrilleLosesWhatItsFreeAreaSays(double open, double thickness, double plate) {
        // 10 m/s in a face of 100 cm²: 60 Pa
        FlowLaw law = thickness == 0 ? Cases.law(new GrilleKind(), Condition.NOMINAL, "area", "100 cm²", "openRatio", open)
                : Cases.law(new GrilleKind(), Condition.NOMINAL, "area", "100 cm²", "freeArea", 0.01 * open, "thickness",
                        0.003 * thickness, "holeDiameter", "3 mm");
        assertEquals((1 + plate) * 60, pressure(law, 0.1, 1.2), 60 * 1e-5 * (1 + plate));
    }

    @Test
    void aMeasuredPointComesBack() {
        FlowLaw law = Cases.law(new MeasuredResistanceKind(), Condition.NOMINAL, "flow", "0.08 m³/s", "pressure", "60 Pa");
        assertEquals(60, pressure(law, 0.08, 1.2), 1e-6);
        assertEquals(15, pressure(law, 0.04, 1.2), 1e-5);
        assertEquals(50, pressure(law, 0.08, 1.0), 1e-5);
    }

    /** dp = 20 v + 8 v² in a face of 1 m²: 12, 28, 72, 100 Pa at 0.5, 1, 2, 2.5 m/s. */
    @ParameterizedTest
    @CsvSource({"0.5, 12", "1, 28", "2, 72", "2.5, 100"})
    void aFilterOfTwoCoefficientsComesBack(double flow, double pressure) {
        FlowLaw law = Cases.law(new MeasuredResistanceKind(), Condition.NOMINAL, "linear", 20, "quadratic", 8);
        FlowLaw.Drop drop = new FlowLaw.Drop();
        law.at(flow, 1.2, tramontane.physics.Air.viscosity(293.15), drop);
        assertEquals(pressure, drop.pressure(), 1e-12 * pressure);
    }

    @Test
    void cloggingMultipliesTheDropOfFiltersOnly() {
        FlowLaw clean = Cases.law(new MeasuredResistanceKind(), Condition.NOMINAL, "linear", 20, "quadratic", 8, "filter", true);
        FlowLaw clogged = Cases.law(new MeasuredResistanceKind(), Cases.clogged(2), "linear", 20, "quadratic", 8, "filter", true);
        FlowLaw other = Cases.law(new MeasuredResistanceKind(), Cases.clogged(2), "linear", 20, "quadratic", 8);
        assertEquals(2 * pressure(clean, 1, 1.2), pressure(clogged, 1, 1.2), 1e-12);
        assertEquals(pressure(clean, 1, 1.2), pressure(other, 1, 1.2));
        FlowLaw points = Cases.law(new MeasuredResistanceKind(), Cases.clogged(2), "flow", "1 m³/s", "pressure", "28 Pa", "filter", true);
        assertEquals(56, pressure(points, 1, 1.2), 1e-5);
    }

    @Test
    void saysWhatDoesNotFitTogether() {
        assertEquals(List.of("airPath.passages[3]: does not say how large it is; expected diameter, or width and height, or area"),
                Cases.problems(new OpeningKind()));
        assertEquals(List.of("airPath.passages[3]: says how large it is more than once, by diameter and by area; expected one of them"),
                Cases.problems(new OpeningKind(), "diameter", 0.1, "area", 0.1));
        assertEquals(List.of("airPath.passages[3].height: is missing; expected with width"),
                Cases.problems(new OpeningKind(), "width", 0.1));
        assertEquals(List.of("airPath.passages[3]: has dischargeCoefficient and lossCoefficient, which say the same; expected one of them"),
                Cases.problems(new OpeningKind(), "area", 0.1, "dischargeCoefficient", 0.6, "lossCoefficient", 2));
        assertEquals(List.of("airPath.passages[3].freeArea: is larger than the face it lies in; expected at most 0.01 m²"),
                Cases.problems(new GrilleKind(), "area", 0.01, "freeArea", 0.02));
        assertEquals(List.of("airPath.passages[3].holeDiameter: is missing; expected with thickness, since only both together say "
                + "how thick the plate is for the air"),
                Cases.problems(new GrilleKind(), "area", 0.01, "openRatio", 0.5, "thickness", 0.001));
        assertEquals(List.of("airPath.passages[3]: does not say how open it is; expected freeArea, or openRatio, or lossCoefficient"),
                Cases.problems(new GrilleKind(), "area", 0.01));
        assertEquals(List.of("airPath.passages[3]: does not say its resistance; expected flow and pressure, or linear, or quadratic"),
                Cases.problems(new MeasuredResistanceKind()));
        assertEquals(List.of("airPath.passages[3].pressure: is missing; expected one for each flow"),
                Cases.problems(new MeasuredResistanceKind(), "flow", "0.08 m³/s"));
        assertEquals(List.of("airPath.passages[3].pressure: has 1 number; expected 2, one for each flow"),
                Cases.problems(new MeasuredResistanceKind(), "flow", "0.08 0.1 m³/s", "pressure", "60 Pa"));
        assertEquals(List.of("airPath.passages[3].pressure: number 2 is not larger than the one before it; expected a drop that "
                + "rises with flow"),
                Cases.problems(new MeasuredResistanceKind(), "flow", "0.08 0.1 m³/s", "pressure", "60 60 Pa"));
        assertEquals(List.of("airPath.passages[3]: has no resistance at all; expected linear or quadratic above zero"),
                Cases.problems(new MeasuredResistanceKind(), "linear", 0));
        assertEquals(List.of("airPath.passages[3]: has both measured points and coefficients; expected one of them"),
                Cases.problems(new MeasuredResistanceKind(), "linear", 5, "flow", "0.08 m³/s", "pressure", "60 Pa"));
    }

    @Test
    void refusesNegativeAreas() {
        assertEquals(1, Cases.problems(new GrilleKind(), "area", 0.01, "freeArea", -0.005).stream()
                .filter(problem -> problem.startsWith("airPath.passages[3].freeArea: -0.005 is out of range")).count());
    }
}
