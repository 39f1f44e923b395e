package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.PassageKind;
import tramontane.model.Condition;
import tramontane.physics.Bend;

/** Drops of the kinds of passage against published values and hand calculation, and what they say. */
class LossKindsTest {

    private static final double RHO = 1.2;
    private static final double MU = 1.8e-5;
    private static final String PLACE = "airPath.passages[3]";

    private static double drop(FlowLaw law, double flow, double density, double viscosity) {
        FlowLaw.Drop drop = new FlowLaw.Drop();
        law.at(flow, density, viscosity, drop);
        return drop.pressure();
    }

    private static double drop(PassageKind kind, double flow, Object... members) {
        return drop(Cases.law(kind, Condition.NOMINAL, members), flow, RHO, MU);
    }

    /** J. R. Culham, Y. S. Muzychka (2001), their formulas evaluated: N, t, W, H, L, Q, Δp with air of 1.1614 kg/m³, 1.846e-5 Pa s. */
    @ParameterizedTest
    @CsvSource({"16, 0.0008, 0.060, 0.025, 0.060, 0.004, 12.05499", "16, 0.0008, 0.060, 0.025, 0.060, 0.008, 34.70279",
        "20, 0.0015, 0.100, 0.040, 0.150, 0.015, 34.51445"})
    void heatSinks(int fins, double thickness, double width, double height, double length, double flow, double expected) {
        Object[] members = {"fins", fins, "finThickness", thickness, "width", width, "height", height, "length", length};
        assertEquals(expected, drop(Cases.law(new HeatSinkKind(), Condition.NOMINAL, with(members, "continues", true)), flow,
                1.1614, 1.846e-5), 1e-4 * expected);
        double approach = flow / (width * height);
        double whole = expected + 1.1614 * approach * approach / 2;
        assertEquals(whole, drop(Cases.law(new HeatSinkKind(), Condition.NOMINAL, members), flow, 1.1614, 1.846e-5), 1e-4 * whole);
    }

    /** R. K. Shah (1978) between parallel plates with 0.5 and 1.0 velocity heads; 1 m/s, 0.2 m, 1.1614 kg/m³, 1.846e-5 Pa s. */
    @ParameterizedTest
    @CsvSource({"0.0127, 1.47987, 0.60882", "0.006, 2.46869, 1.59764", "0.003, 6.17422, 5.30317"})
    void cardCages(double gap, double expected, double friction) {
        // boards so wide that the channels are parallel plates
        Object[] members = {"boards", 3, "pitch", gap + 0.0026, "boardThickness", 0.0016, "componentHeight", 0.001, "height", 1000,
            "length", 0.2};
        double flow = 3 * gap * 1000;
        assertEquals(expected, drop(Cases.law(new CardCageKind(), Condition.NOMINAL, members), flow, 1.1614, 1.846e-5), 1e-4 * expected);
        double rough = expected + 1.5 * friction;
        assertEquals(rough, drop(Cases.law(new CardCageKind(), Condition.NOMINAL, with(members, "frictionFactor", 2.5)), flow,
                1.1614, 1.846e-5), 1e-4 * rough);
    }

    private static Object[] with(Object[] members, Object... more) {
        List<Object> all = new ArrayList<>(Arrays.asList(members));
        all.addAll(Arrays.asList(more));
        return all.toArray();
    }

    /** ISO 5167-2:2003: duct 0.1 m, β 0.5, Q 0.0356537 m³/s of 1.2041 kg/m³ and 1.8134e-5 Pa s: K 29.35827. */
    @Test
    void orifices() {
        FlowLaw law = Cases.law(new OrificeKind(), Condition.NOMINAL, "ductDiameter", "100 mm", "orificeDiameter", "50 mm",
                "continues", true);
        double velocity = 0.0356537 / (Math.PI / 4 * 0.01);
        double head = 1.2041 * velocity * velocity / 2;
        assertEquals(29.35827 * head, drop(law, 0.0356537, 1.2041, 1.8134e-5), 1e-5 * 29.35827 * head);
    }

    /** Hagen and Poiseuille: 32 μ L v/d² in a round tube; 12 μ l v/h² in a slit; both long and slow. */
    @Test
    void slowFlowInLongDuctsIsLaminar() {
        double area = Math.PI / 4 * 1e-4;
        double tube = 32 * MU * 50 * 0.1 / 1e-4;
        assertEquals(tube, drop(new DuctKind(), 0.1 * area, "diameter", 0.01, "length", 50), 1e-3 * tube);
        double slit = 12 * MU * 0.5 * 0.01 / 0.25e-6;
        assertEquals(slit, drop(new GapKind(), 0.01 * 1 * 0.5e-3, "width", 1, "opening", "0.5 mm", "depth", "500 mm"), 1e-3 * slit);
    }

    /** S. W. Churchill (1977): f 0.0387336 at Re 1e5, roughness 0.01; entry 0.5, exit 1. */
    @Test
    void fastFlowInDuctsIsTurbulent() {
        double d = 0.05;
        double velocity = 1e5 * MU / (RHO * d);
        double head = RHO * velocity * velocity / 2;
        double flow = velocity * Math.PI / 4 * d * d;
        double expected = (0.0387336 * 100 + 1.5) * head;
        assertEquals(expected, drop(new DuctKind(), flow, "diameter", d, "length", 5, "roughness", 0.01 * d), 2e-6 * expected);
        double square = drop(new DuctKind(), velocity * d * d, "width", d, "height", d, "length", 5, "roughness", 0.01 * d);
        assertEquals(expected, square, 2e-6 * expected);
        // D. C. Rennels, H. M. Hudson (2012) with that friction factor
        double bend = (Bend.rounded(Math.PI / 2, 1.5, 0.0387336) + 1) * head;
        assertEquals(bend, drop(new BendKind(), flow, "diameter", d, "angle", "90 °", "radius", 1.5 * d, "roughness", 0.01 * d),
                2e-6 * bend);
        assertEquals((1.20208 + 1) * head, drop(new BendKind(), flow, "diameter", d, "angle", "90 °", "mitre", true), 1e-5 * bend);
    }

    /** s = 0.25: Borda-Carnot 0.5625, Rennels and Hudson 0.49558; exit head on the section it leaves. */
    @Test
    void areaChanges() {
        Object[] widening = {"fromArea", "10 cm²", "toArea", "40 cm²"};
        Object[] narrowing = {"fromArea", "40 cm²", "toArea", "10 cm²"};
        double head = RHO * 100 / 2; // 10 m/s in 10 cm²
        assertEquals((0.5625 + 0.0625) * head, drop(new AreaChangeKind(), 0.01, widening), 1e-5 * head);
        assertEquals(-(0.49558 + 1) * head, drop(new AreaChangeKind(), -0.01, widening), 1e-5 * head);
        assertEquals((0.49558 + 1) * head, drop(new AreaChangeKind(), 0.01, narrowing), 1e-5 * head);
        assertEquals(-(0.5625 + 0.0625) * head, drop(new AreaChangeKind(), -0.01, narrowing), 1e-5 * head);
        assertEquals(0.5625 * head, drop(new AreaChangeKind(), 0.01, with(widening, "continues", true)), 1e-5 * head);
    }

    /** I. E. Idelchik: K 0.9644 at F 0.6 and 1.65 at F 0.5, in fast flow; a factor of 1.42 at a Reynolds number of 50 of the wire. */
    @Test
    void screens() {
        double head = RHO * 100 / 2; // 10 m/s in 100 cm²
        double reynolds = RHO * 10 / 0.6 * 1e-3 / MU;
        assertEquals((0.96444 * (1 + 21 / reynolds) + 1) * head,
                drop(new ScreenKind(), 0.1, "area", "100 cm²", "wireDiameter", "1 mm", "openRatio", 0.6), 1e-5 * head);
        double velocity = 50 * MU * 0.64 / (RHO * 0.2e-3);
        double slow = RHO * velocity * velocity / 2;
        double loss = 1.3 * 0.36 + 0.36 * 0.36 / (0.64 * 0.64);
        assertEquals((loss * 1.42 + 1) * slow, drop(new ScreenKind(), 0.01 * velocity, "area", "100 cm²", "wireDiameter", "0.2 mm",
                "meshPitch", "1 mm"), 1e-9 * slow);
        assertEquals((1.65 + 1) * head, drop(new FingerGuardKind(), 0.1, "area", "100 cm²", "freeArea", "50 cm²"), 1e-5 * head);
        assertEquals((0.3 + 1) * head, drop(new FingerGuardKind(), 0.1, "area", "100 cm²", "lossCoefficient", 0.3), 1e-5 * head);
        double bars = RHO * 10 / 0.5 * 1e-3 / MU;
        assertEquals((1.65 * (1 + 21 / bars) + 1) * head,
                drop(new FingerGuardKind(), 0.1, "area", "100 cm²", "wireDiameter", "1 mm", "spacing", "2 mm"), 1e-5 * head);
    }

    /** Worked by hand: 30 % of 100 Pa linear at half the rated flow, 15 Pa, and a quarter of the other 70 Pa. */
    @Test
    void filters() {
        double mu = tramontane.physics.Air.viscosity(293.15);
        Object[] rated = {"ratedFlow", 0.1, "ratedPressure", 100, "linearShare", 0.3};
        FlowLaw law = Cases.law(new FilterKind(), Condition.NOMINAL, rated);
        assertEquals(32.5, drop(law, 0.05, RHO, mu), 1e-9);
        assertEquals(100, drop(law, 0.1, RHO, mu), 1e-9);
        assertEquals(15 + 17.5 * 0.75, drop(law, 0.05, 0.9, mu), 1e-9);
        assertEquals(65, drop(Cases.law(new FilterKind(), Cases.clogged(2), rated), 0.05, RHO, mu), 1e-9);
        FlowLaw face = Cases.law(new FilterKind(), Condition.NOMINAL, "width", 0.2, "height", 0.25, "ratedVelocity", 2,
                "ratedPressure", 100, "linearShare", 0.3);
        assertEquals(32.5, drop(face, 0.05, RHO, mu), 1e-9);
        FlowLaw coefficients = Cases.law(new FilterKind(), Condition.NOMINAL, "linear", 20, "quadratic", 8);
        assertEquals(28, drop(coefficients, 1, RHO, mu), 1e-12);
        assertEquals(100, drop(coefficients, 2.5, RHO, mu), 1e-12);
    }

    /** The assumed half: 40 Pa and 32 Pa of 100 at 0.8 of the rated flow. */
    @Test
    void halfOfTheRatedDropIsLinearWhereNothingIsSaid() {
        FlowLaw law = Cases.law(new FilterKind(), Condition.NOMINAL, "ratedFlow", 0.1, "ratedPressure", 100);
        assertEquals(72, drop(law, 0.08, RHO, tramontane.physics.Air.viscosity(293.15)), 1e-9);
    }

    /** I. E. Idelchik, diagram 8-3: 1.5 + τ, τ 0.2436 at a depth of one hydraulic diameter; λ 0.02 for an opening. */
    @Test
    void thickWalls() {
        double head = RHO * 1e4 / 2; // 100 m/s, where friction is little
        double opening = drop(new OpeningKind(), 100 * Math.PI / 4 * 1e-4, "diameter", "10 mm", "thickness", "10 mm");
        assertEquals((1.5 + 0.2436 + 0.02) * head, opening, 1e-4 * head);
        double gap = drop(new GapKind(), 100 * 0.01, "width", 1, "opening", "10 mm", "depth", "20 mm");
        double friction = tramontane.physics.Friction.churchill(RHO * 100 * 0.02 / MU, 0);
        assertEquals((1.5 + 0.2436 + friction) * head, gap, 1e-4 * head);
    }

    @Test
    void flaps() {
        // 2 m/s: 2.4 Pa of velocity head
        assertEquals(1.5 * 2.4 + 2, drop(new FlapKind(), 0.02, "area", "100 cm²", "lossCoefficient", 1.5), 1e-3);
        assertEquals(1.5 * 2.4 + 5, drop(new FlapKind(), 0.02, "area", "100 cm²", "lossCoefficient", 1.5, "liftingPressure", 5), 1e-3);
        // 50 m/s in a leak of 1 cm²
        assertEquals(-1.707 * 1.707 * 1500, drop(new FlapKind(), -5e-3, "area", "100 cm²", "lossCoefficient", 1.5), 0.01);
    }

    static List<Arguments> exits() {
        return List.of(
                Arguments.of(new OpeningKind(), 0.001, new Object[] {"area", "10 cm²"}),
                Arguments.of(new GrilleKind(), 0.01, new Object[] {"area", "100 cm²", "openRatio", 0.5}),
                Arguments.of(new ScreenKind(), 0.01, new Object[] {"area", "100 cm²", "openRatio", 0.5, "wireDiameter", "1 mm"}),
                Arguments.of(new FingerGuardKind(), 0.01, new Object[] {"area", "100 cm²", "openRatio", 0.5}),
                Arguments.of(new DuctKind(), 0.01, new Object[] {"width", 0.1, "height", 0.1, "length", 1}),
                Arguments.of(new BendKind(), 0.01, new Object[] {"width", 0.1, "height", 0.1, "angle", 1, "radius", 0.1}),
                Arguments.of(new BendKind(), 0.01, new Object[] {"width", 0.1, "height", 0.1, "angle", 1, "mitre", true}),
                Arguments.of(new CardCageKind(), 4 * 0.1 * 0.01,
                        new Object[] {"boards", 4, "pitch", "11.6 mm", "height", 0.1, "length", 0.2}),
                Arguments.of(new HeatSinkKind(), 0.06 * 0.025, new Object[] {"fins", 16, "finThickness", "0.8 mm", "width", "60 mm",
                    "height", "25 mm", "length", "60 mm"}),
                Arguments.of(new GapKind(), 0.001, new Object[] {"width", 1, "opening", "1 mm", "depth", "5 mm"}),
                Arguments.of(new OrificeKind(), Math.PI / 4 * 0.01, new Object[] {"ductDiameter", 0.1, "orificeDiameter", 0.05}),
                Arguments.of(new FlapKind(), 0.01, new Object[] {"area", "100 cm²", "lossCoefficient", 1.5}));
    }

    @ParameterizedTest
    @MethodSource("exits")
    void aPassageThatContinuesKeepsOneVelocityHead(PassageKind kind, double area, Object[] members) {
        double flow = 20 * area;
        double kept = drop(kind, flow, members) - drop(kind, flow, with(members, "continues", true));
        assertEquals(240, kept, 0.01, kind.form().name());
        if (!(kind instanceof FlapKind)) {
            double back = drop(kind, -flow, members) - drop(kind, -flow, with(members, "continues", true));
            assertEquals(-240, back, 0.01, kind.form().name());
        }
    }

    @Test
    void saysWhatDoesNotFitTogether() {
        assertEquals(List.of(PLACE + ".continues: leaves nothing of its loss coefficient of 0.9, of which 1 is the exit velocity head; "
                + "expected a coefficient above 1"),
                Cases.problems(new OpeningKind(), "area", 0.01, "lossCoefficient", 0.9, "continues", true));
        assertEquals(List.of(PLACE + ".continues: leaves nothing of its loss coefficient of 1.0, of which 1 is the exit velocity head; "
                + "expected a coefficient above 1"),
                Cases.problems(new GrilleKind(), "area", 0.01, "openRatio", 1, "continues", true));
        assertEquals(1, Cases.problems(new FlapKind(), "area", 0.01, "lossCoefficient", 0.8, "continues", true).size());
        assertEquals(List.of(PLACE + ": does not say its section; expected diameter, or width and height"),
                Cases.problems(new DuctKind(), "length", 1));
        assertEquals(List.of(PLACE + ".roughness: is taken as 0.09 mm, more than a tenth of the hydraulic diameter; expected at most "
                + "0.05 mm"), Cases.problems(new DuctKind(), "diameter", 0.0005, "length", 1));
        assertEquals(List.of(PLACE + ".radius: is missing; expected the radius of its centreline, or mitre"),
                Cases.problems(new BendKind(), "diameter", 0.05, "angle", 1));
        assertEquals(List.of(PLACE + ": has both a radius and a mitre; expected one of them"),
                Cases.problems(new BendKind(), "diameter", 0.05, "angle", 1, "radius", 0.1, "mitre", true));
        assertEquals(List.of(PLACE + ".radius: is less than half the hydraulic diameter; expected at least 25.0 mm, or mitre"),
                Cases.problems(new BendKind(), "diameter", 0.05, "angle", 1, "radius", 0.02));
        assertEquals(List.of(PLACE + ": does not say how large it starts; expected fromDiameter, or fromArea"),
                Cases.problems(new AreaChangeKind(), "toArea", 0.05));
        assertEquals(List.of(PLACE + ": is as large at its start as at its end, and loses nothing; expected two sizes"),
                Cases.problems(new AreaChangeKind(), "fromArea", 0.05, "toArea", 0.05, "continues", true));
        assertEquals(List.of(), Cases.problems(new AreaChangeKind(), "fromArea", 0.05, "toArea", 0.05));
        assertEquals(List.of(PLACE + ".orificeDiameter: is not smaller than the duct; expected below 50.0 mm"),
                Cases.problems(new OrificeKind(), "ductDiameter", 0.05, "orificeDiameter", 0.05));
        assertEquals(List.of(PLACE + ".meshPitch: leaves no room between the wires; expected above 1.0 mm, the wire diameter"),
                Cases.problems(new ScreenKind(), "area", 0.05, "wireDiameter", 0.001, "meshPitch", 0.001));
        assertEquals(List.of(PLACE + ": does not say how open it is; expected openRatio, or freeArea, or wireDiameter and spacing, or "
                + "lossCoefficient"), Cases.problems(new FingerGuardKind(), "area", 0.05));
        assertEquals(List.of(PLACE + ".freeArea: leaves no room for bars in the opening it lies in; expected at most 0.0495 m²"),
                Cases.problems(new FingerGuardKind(), "area", 0.05, "freeArea", 0.05));
        assertEquals(List.of(PLACE + ".pitch: leaves no channel; expected above 21.6 mm, the thickness of a board with its components"),
                Cases.problems(new CardCageKind(), "boards", 4, "pitch", 0.02, "componentHeight", 0.02, "height", 0.1, "length", 0.1));
        assertEquals(List.of(PLACE + ".width: leaves no room between the fins; expected above 60.0 mm, all fins side by side"),
                Cases.problems(new HeatSinkKind(), "fins", 60, "finThickness", 0.001, "width", 0.06, "height", 0.02, "length", 0.06));
        assertEquals(List.of(PLACE + ".opening: is larger than the width; expected the short side, at most 10.0 mm"),
                Cases.problems(new GapKind(), "width", 0.01, "opening", 0.02, "depth", 0.001));
    }

    @Test
    void saysWhatAFilterLacks() {
        assertEquals(List.of(PLACE + ": does not say its resistance; expected ratedFlow and ratedPressure, or ratedVelocity, "
                + "ratedPressure and the size of its face, or linear, or quadratic"), Cases.problems(new FilterKind()));
        assertEquals(List.of(PLACE + ": has both a rated point and coefficients; expected one of them"),
                Cases.problems(new FilterKind(), "ratedFlow", 0.1, "ratedPressure", 50, "linear", 3));
        assertEquals(List.of(PLACE + ".ratedPressure: is missing; expected the drop at what it is rated at"),
                Cases.problems(new FilterKind(), "ratedFlow", 0.1));
        assertEquals(List.of(PLACE + ": does not say what it is rated at; expected ratedFlow, or ratedVelocity"),
                Cases.problems(new FilterKind(), "ratedPressure", 50));
        assertEquals(List.of(PLACE + ": does not say how large its face is; expected diameter, or width and height, or area"),
                Cases.problems(new FilterKind(), "ratedVelocity", 2, "ratedPressure", 50));
        assertEquals(List.of(PLACE + ": has no resistance at all; expected linear or quadratic above zero"),
                Cases.problems(new FilterKind(), "linear", 0));
    }

    @Test
    void saysWhereItIsUsedOutsideItsRange() {
        Object[] sink = {"fins", 16, "finThickness", "0.8 mm", "width", "60 mm", "height", "25 mm", "length", "60 mm"};
        assertEquals(List.of(), Cases.findings(new HeatSinkKind(), 0.004, 12, sink));
        List<String> turbulent = Cases.findings(new HeatSinkKind(), 0.009, 34, sink);
        assertEquals(1, turbulent.size());
        assertTrue(turbulent.getFirst().startsWith("caution: heat sink x works at a Reynolds number of 28"), turbulent.toString());
        assertEquals(List.of(), Cases.findings(new OrificeKind(), 0.03, 300, "ductDiameter", 0.1, "orificeDiameter", 0.05));
        assertEquals(List.of("caution: orifice x is outside the range of its relation: diameter ratio 0.8 (0.1 to 0.75), duct below "
                + "50 mm, Reynolds number 3370 (from 5000)"),
                Cases.findings(new OrificeKind(), 0.0016, 300, "ductDiameter", 0.04, "orificeDiameter", 0.032));
        assertEquals(1, Cases.findings(new DuctKind(), 0.3, 300, "diameter", 0.05, "length", 1).size());
        assertEquals(List.of(), Cases.findings(new DuctKind(), 0.03, 300, "diameter", 0.05, "length", 1));
    }

    @Test
    void saysWhatIsAssumed() {
        Object[] rated = {"ratedFlow", 0.1, "ratedPressure", 60, "finalPressure", 200};
        assertEquals(List.of(), Cases.findings(new FilterKind(), 0.08, 60, rated));
        assertEquals(List.of("note: filter x works at 0.0400 m³/s, far from its rating at 0.100 m³/s; half of its drop is assumed to "
                + "go linearly with flow"), Cases.findings(new FilterKind(), -0.04, -20, rated));
        assertEquals(List.of(), Cases.findings(new FilterKind(), 0.04, 20, with(rated, "linearShare", 0.5)));
        assertEquals(List.of("caution: filter x drops 220 Pa, more than the 200 Pa at which it must be changed"),
                Cases.findings(new FilterKind(), 0.1, 220, rated));
        Object[] cage = {"boards", 12, "pitch", "20 mm", "height", "160 mm", "length", "200 mm"};
        assertEquals(1, Cases.findings(new CardCageKind(), 0.02, 3, cage).size());
        assertEquals(0, Cases.findings(new CardCageKind(), 0.02, 3, with(cage, "frictionFactor", 2)).size());
        assertEquals(List.of("note: flap x is assumed to lift at 2.00 Pa"),
                Cases.findings(new FlapKind(), 0.02, 3, "area", 0.01, "lossCoefficient", 1.5));
        assertEquals(1, Cases.findings(new FlapKind(), -0.0002, -3, "area", 0.01, "lossCoefficient", 1.5).size());
        assertEquals(0, Cases.findings(new FlapKind(), 0.02, 3, "area", 0.01, "lossCoefficient", 1.5, "liftingPressure", 2).size());
    }
}
