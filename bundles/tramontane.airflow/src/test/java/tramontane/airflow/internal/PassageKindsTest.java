package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
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
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.model.Condition;
import tramontane.model.Passage;

class PassageKindsTest {

    private static final double MU = 1.8134e-5;

    /**
     * A passage of some kind.
     *
     * @param odd     whether flow backwards loses as much
     * @param similar whether its drop follows Reynolds similarity
     */
    record Named(String name, PassageKind kind, Condition condition, Object[] members, FlowLaw law, boolean odd, boolean similar) {
        @Override
        public String toString() {
            return name;
        }
    }

    private static Named like(String name, PassageKind kind, Object... members) {
        return named(name, kind, Condition.NOMINAL, true, true, members);
    }

    private static Named named(String name, PassageKind kind, Condition condition, boolean odd, boolean similar, Object... members) {
        return new Named(name, kind, condition, members, Cases.law(kind, condition, members), odd, similar);
    }

    private static final List<Named> LAWS = makeLaws();

    /** One of everything that we ship, all shapes of its parameters among them. */
    static List<Named> laws() {
        return LAWS;
    }

    private static List<Named> makeLaws() {
        Condition nominal = Condition.NOMINAL;
        PassageKind opening = new OpeningKind();
        PassageKind grille = new GrilleKind();
        PassageKind measured = new MeasuredResistanceKind();
        PassageKind guard = new FingerGuardKind();
        PassageKind filter = new FilterKind();
        PassageKind duct = new DuctKind();
        PassageKind bend = new BendKind();
        PassageKind change = new AreaChangeKind();
        PassageKind cage = new CardCageKind();
        PassageKind orifice = new OrificeKind();
        return List.of(
                like("round opening", opening, "diameter", "50 mm"),
                like("rectangular opening", opening, "width", "200 mm", "height", "5 mm"),
                like("opening of a discharge coefficient", opening, "area", "10 cm²", "dischargeCoefficient", 0.6),
                like("opening of a loss coefficient", opening, "area", "10 cm²", "lossCoefficient", 1.5),
                like("thick opening", opening, "area", "10 cm²", "thickness", "20 mm"),
                like("opening that continues", opening, "area", "10 cm²", "continues", true),
                like("grille of a free area", grille, "area", "100 cm²", "freeArea", "60 cm²"),
                like("fully open grille", grille, "area", "100 cm²", "openRatio", 1),
                like("thick grille", grille, "width", "100 mm", "height", "80 mm", "openRatio", "40 %",
                        "thickness", "1 mm", "holeDiameter", "4 mm"),
                like("grille of a loss coefficient", grille, "area", "100 cm²", "lossCoefficient", 3),
                like("grille that continues", grille, "area", "100 cm²", "openRatio", 0.95, "continues", true),
                like("one measured point", measured, "flow", "0.08 m³/s", "pressure", "60 Pa"),
                like("measured points", measured, "flow", "0.01 0.02 0.04 m³/s", "pressure", "3 9 30 Pa"),
                like("coefficients", measured, "linear", 400, "quadratic", 3e4),
                like("linear", measured, "linear", 400),
                like("square", measured, "quadratic", 3e4),
                named("clogged coefficients", measured, Cases.clogged(2.5), true, true, "linear", 400, "quadratic", 3e4, "filter", true),
                like("screen of a mesh", new ScreenKind(), "area", "100 cm²", "wireDiameter", "0.2 mm", "meshPitch", "1 mm"),
                like("screen of an open ratio", new ScreenKind(), "diameter", "80 mm", "wireDiameter", "0.5 mm", "openRatio", 0.3,
                        "continues", true),
                like("guard of an open ratio", guard, "diameter", "115 mm", "openRatio", 0.8),
                like("guard of a free area", guard, "area", "100 cm²", "freeArea", "85 cm²", "continues", true),
                like("guard of bars", guard, "area", "100 cm²", "wireDiameter", "1.6 mm", "spacing", "10 mm"),
                like("guard of a loss coefficient", guard, "area", "100 cm²", "lossCoefficient", 0.3),
                like("rated filter", filter, "ratedFlow", "0.08 m³/s", "ratedPressure", "60 Pa"),
                like("filter rated by its face", filter, "width", "200 mm", "height", "100 mm", "ratedVelocity", "2 m/s",
                        "ratedPressure", "60 Pa", "linearShare", 1),
                like("filter with a square law", filter, "ratedFlow", "0.08 m³/s", "ratedPressure", "60 Pa", "linearShare", 0),
                named("clogged filter", filter, Cases.clogged(2.5), true, true, "linear", 400, "quadratic", 3e4),
                like("round duct", duct, "diameter", "50 mm", "length", "2 m"),
                like("flat duct that continues", duct, "width", "200 mm", "height", "5 mm", "length", "0.3 m", "roughness", 0,
                        "inletLoss", 0, "continues", true),
                like("short duct", duct, "width", "60 mm", "height", "40 mm", "length", "10 mm"),
                like("rounded bend", bend, "diameter", "50 mm", "angle", "90 °", "radius", "75 mm"),
                like("rectangular bend", bend, "width", "80 mm", "height", "40 mm", "angle", "45 °", "radius", "40 mm", "continues", true),
                like("mitre", bend, "diameter", "50 mm", "angle", "90 °", "mitre", true),
                named("widening", change, nominal, false, true, "fromDiameter", "40 mm", "toDiameter", "80 mm"),
                named("narrowing that continues", change, nominal, false, true, "fromArea", "40 cm²", "toArea", "30 cm²",
                        "continues", true),
                like("card cage", cage, "boards", 12, "pitch", "20 mm", "height", "160 mm", "length", "200 mm"),
                like("rough card cage", cage, "boards", 5, "pitch", "15 mm", "boardThickness", "2 mm", "componentHeight", "5 mm",
                        "height", "100 mm", "length", "160 mm", "frictionFactor", 2.5),
                like("heat sink", new HeatSinkKind(), "fins", 16, "finThickness", "0.8 mm", "width", "60 mm", "height", "25 mm",
                        "length", "60 mm"),
                like("heat sink that continues", new HeatSinkKind(), "fins", 2, "finThickness", "5 mm", "width", "60 mm", "height",
                        "25 mm", "length", "300 mm", "continues", true),
                like("gap", new GapKind(), "width", "1 m", "opening", "0.5 mm", "depth", "15 mm"),
                like("gap in thin sheet", new GapKind(), "width", "1 m", "opening", "2 mm", "depth", "1 mm", "continues", true),
                named("flap", new FlapKind(), nominal, false, false, "diameter", "80 mm", "lossCoefficient", 1.6),
                named("heavy flap", new FlapKind(), nominal, false, false, "area", "100 cm²", "lossCoefficient", 3, "liftingPressure",
                        "10 Pa", "leakShare", "5 %", "continues", true),
                like("orifice", orifice, "ductDiameter", "100 mm", "orificeDiameter", "50 mm"),
                like("wide orifice", orifice, "ductDiameter", "50 mm", "orificeDiameter", "45 mm", "continues", true),
                named("bank", new BankKind(), nominal, false, false, "mover", "F", "across", 2, "along", 2, "series", 2));
    }

    @Test
    void everyKindIsHere() {
        assertEquals(Cases.KINDS.stream().map(kind -> kind.form().name()).collect(Collectors.toSet()),
                LAWS.stream().map(named -> named.kind().form().name()).collect(Collectors.toSet()));
        assertEquals(PassageKind.FILTER, new FilterKind().form().name());
        assertEquals(PassageKind.GAP, new GapKind().form().name());
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

    @Property
    void risesOnEveryScale(@ForAll("anyLaw") Named named, @ForAll @DoubleRange(min = -12, max = 1) double exponent, @ForAll boolean back) {
        double flow = back ? -Math.pow(10, exponent) : Math.pow(10, exponent);
        double far = pressure(named.law(), flow * (1 + 1e-4), 1.2);
        double near = pressure(named.law(), flow * (1 - 1e-4), 1.2);
        double slope = slope(named.law(), flow, 1.2);
        assertTrue(slope > 0 && slope < Double.POSITIVE_INFINITY);
        if (!(named.kind() instanceof BankKind)) { // its pressure at rest drowns the difference
            assertTrue(back ? far < near : far > near, named.name());
            assertEquals((far - near) / (2e-4 * flow), slope, 1e-4 * slope, named.name());
        }
    }

    /** All passages in one row, with the bank or against it: what the bank gives is what they ask for. */
    @ParameterizedTest
    @CsvSource({"false", "true"})
    void standsInOneRowWithAllOthers(boolean against) {
        List<Passage> row = new ArrayList<>();
        List<String> bays = new ArrayList<>();
        for (Named named : LAWS) {
            if (!(named.kind() instanceof BankKind)) {
                String from = bays.isEmpty() ? "outside" : bays.getLast();
                bays.add("bay " + bays.size());
                row.add(Cases.passage(named.name(), named.kind().form().name(), against ? bays.getLast() : from,
                        against ? from : bays.getLast(), named.members()));
            }
        }
        row.add(Cases.bank("fans", bays.getLast(), "outside"));
        OperatingPoint point = Cases.run(Cases.design(Cases.mover(), bays, row.toArray(Passage[]::new)), Cases.standardAir())
                .data().orElseThrow();
        double pressure = point.bank("fans").orElseThrow().pressure();
        double flow = point.bank("fans").orElseThrow().flow();
        assertTrue(flow > 0 && pressure > 1);
        double sum = 0;
        for (OperatingPoint.PassageFlow passage : point.passages()) {
            if (!passage.passage().equals("fans")) {
                assertEquals(flow, against ? -passage.flow() : passage.flow(), 1e-6 * flow, passage.passage());
                sum += Math.abs(passage.drop());
            }
        }
        assertEquals(pressure, sum, 1e-6 * pressure);
    }

    @ParameterizedTest
    @MethodSource("laws")
    void hasOneSlopeOnBothSidesOfRest(Named named) {
        double rest = slope(named.law(), 0, 1.2);
        for (double flow : new double[] {1e-300, 1e-15, 1e-12}) {
            assertEquals(rest, slope(named.law(), flow, 1.2), 1e-5 * rest);
            assertEquals(rest, slope(named.law(), -flow, 1.2), 1e-5 * rest);
        }
        if (!(named.kind() instanceof BankKind)) {
            assertEquals(0, pressure(named.law(), 0, 1.2));
            assertEquals(rest, pressure(named.law(), 1e-12, 1.2) / 1e-12, 1e-5 * rest);
            assertEquals(rest, pressure(named.law(), -1e-12, 1.2) / -1e-12, 1e-5 * rest);
        }
    }

    /** Δp ρ/μ² is a function of q ρ/μ alone: O. Reynolds (1883), for air taken as incompressible. */
    @Property
    void followsReynoldsSimilarity(@ForAll("anyLaw") Named named, @ForAll @DoubleRange(min = -8, max = 0) double exponent,
            @ForAll @DoubleRange(min = 0.5, max = 2) @Scale(15) double denser, @ForAll @DoubleRange(min = 0.5, max = 2) @Scale(15) double thicker) {
        if (!named.similar()) {
            return;
        }
        for (double flow : new double[] {Math.pow(10, exponent), -Math.pow(10, exponent)}) {
            FlowLaw.Drop here = new FlowLaw.Drop();
            FlowLaw.Drop there = new FlowLaw.Drop();
            named.law().at(flow, 1.2, MU, here);
            named.law().at(flow * thicker / denser, 1.2 * denser, MU * thicker, there);
            assertEquals(here.pressure(), there.pressure() * denser / (thicker * thicker), 1e-9 * Math.abs(here.pressure()), named.name());
            assertEquals(here.slope(), there.slope() / thicker, 1e-9 * here.slope(), named.name());
        }
    }

    @ParameterizedTest
    @MethodSource("laws")
    void doesNotAllocate(Named named) {
        com.sun.management.ThreadMXBean threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        FlowLaw.Drop drop = new FlowLaw.Drop();
        long used = Long.MAX_VALUE;
        for (int round = 0; round < 3; round++) {
            long before = threads.getCurrentThreadAllocatedBytes();
            for (int i = -500; i < 500; i++) {
                named.law().at(i * 1e-4, 1.2, MU, drop);
            }
            used = Math.min(used, threads.getCurrentThreadAllocatedBytes() - before);
        }
        assertTrue(used < 1000, used + " bytes");
    }

    @ParameterizedTest
    @MethodSource("laws")
    void saysWhereItComesFrom(Named named) {
        if (named.kind() instanceof BankKind) {
            return; // told by the bank's own steps
        }
        PassageKind.Origin origin = Cases.origin(named.kind(), named.condition(), named.members()).orElseThrow();
        assertFalse(origin.inputs().isEmpty() || origin.relation().source().isEmpty());
        origin.inputs().forEach(term -> assertTrue(Double.isFinite(term.value()), term.name()));
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
