package tramontane.drive.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.analysis.Cases;
import tramontane.analysis.Engine;
import tramontane.drive.ComputedLaws;
import tramontane.model.ControlLaw;
import tramontane.model.Design;
import tramontane.model.Quantities;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.model.Value;
import tramontane.thermal.Drive;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalState;

/** Laws that hold every limit in every case and ask for no more. */
class LawAnalysisTest {

    private static final String CONDITIONS = "{'id': 'cool', 'outsideTemperature': '10 °C'}, {'id': 'warm', 'outsideTemperature': '30 °C'},"
            + " {'id': 'hot', 'outsideTemperature': '45 °C'},"
            + " {'id': 'failed', 'outsideTemperature': '35 °C', 'failed': [{'bank': 'fans', 'position': 'any one', 'state': 'locked'}]}";

    private static Design design(String heat, String law, String conditions) {
        return Boxes.Box.of(LoopAnalysisTest.PART, "").withConditions(conditions).with(LoopAnalysisTest.HEAT.formatted(heat)
                + ", 'controlLaws': [{'id': 'law', 'sensor': 'box', 'temperature': '20 40 °C', 'speed': '80 100 %'"
                + (law.isEmpty() ? "" : ", 'sections': {'drive': {" + law + "}}") + "}]").design();
    }

    private static List<Engine.Case> cases(Design design) {
        return Cases.of(design, Set.of()).list();
    }

    private static double margin(Design design, Engine.Case each, double setting) {
        ThermalModel model = Boxes.THERMAL.model(design, each.concrete());
        return model.margin(model.at(Drive.STATED.with(java.util.Map.of("fans", setting)), Optional.empty(), () -> false).state()
                .orElseThrow()).orElseThrow();
    }

    private static Design with(Design design, ComputedLaws.Law law) {
        ControlLaw stated = design.controlLaws().getFirst();
        return design.withControlLaws(List.of(new ControlLaw(stated.id(), stated.sensor(), stated.banks(),
                Quantities.of(law.points().stream().mapToDouble(ComputedLaws.Point::temperature).toArray()),
                Quantities.of(law.points().stream().mapToDouble(ComputedLaws.Point::setting).toArray()), stated.hysteresis(), stated.riseLimit(),
                stated.fallLimit(), stated.more())));
    }

    /** What is needed leaves the reserve and no more, looked at by the thermal model itself. */
    @Test
    void whatIsNeededJustHolds() {
        Design design = design("120 W", "'reserve': '2 K', 'sensorLag': '5 s'", CONDITIONS);
        Boxes.Told<ComputedLaws> told = Boxes.laws(design);
        ComputedLaws.Law law = told.data().law("law").orElseThrow(() -> new AssertionError(told.sentences().toString()));
        assertTrue(law.holds(), told.sentences().toString());
        for (int i = 0; i < law.cases().size(); i++) {
            ComputedLaws.Case one = law.cases().get(i);
            assertEquals(cases(design).get(i).concrete().id(), one.id());
            double margin = margin(design, cases(design).get(i), one.needed());
            assertTrue(margin >= 2 - 1e-6, one + " leaves " + margin);
            if (one.needed() > LawComputation.ASSUMED_LOWEST + 1e-9) {
                assertTrue(margin(design, cases(design).get(i), one.needed() - 0.002) < 2, one + " is more than it takes");
            }
            assertTrue(one.then().orElseThrow() >= one.needed() - 1e-4 && one.then().orElseThrow() <= one.now().orElseThrow() + 1e-9, one.toString());
        }
        assertTrue(told.sentences().stream().anyMatch(each -> each.startsWith("note: control law law asks for more than it must")),
                told.sentences().toString());
        assertEquals(law.cases().size(), told.steps().stream().filter(step -> step.figure().equals("drive.law.needed")).count());
    }

    /** With the computed law in the design, every case rests with all limits held; a law that is lower anywhere fails somewhere. */
    @ParameterizedTest
    @ValueSource(strings = {"100 W", "120 W", "130 W"})
    void theLawHoldsInEveryCase(String heat) {
        Design design = design(heat, "'reserve': '1 K'", CONDITIONS);
        ComputedLaws.Law law = Boxes.laws(design).data().law("law").orElseThrow();
        Design changed = with(design, law);
        for (Engine.Case each : cases(changed)) {
            ThermalModel model = Boxes.THERMAL.model(changed, each.concrete());
            ThermalState rest = model.settle(() -> false).state().orElseThrow();
            assertTrue(model.margin(rest).orElseThrow() >= 1 - 2e-3, each.concrete().id() + " leaves " + model.margin(rest));
        }
    }

    @Test
    void whatFullSpeedCannotHoldIsSaid() {
        Boxes.Told<ComputedLaws> told = Boxes.laws(design("260 W", "", CONDITIONS));
        assertFalse(told.data().law("law").orElseThrow().holds());
        assertTrue(told.sentences().stream().anyMatch(each -> each.startsWith("not met: no setting of control law law holds the limit of chip: even full speed"
                + " is ")), told.sentences().toString());
        Design reserve = design("120 W", "'reserve': '60 K'", CONDITIONS);
        assertTrue(Boxes.laws(reserve).sentences().stream().anyMatch(each -> each.startsWith("caution: no setting of control law law leaves the reserve of 60.0 K")),
                Boxes.laws(reserve).sentences().toString());
    }

    /** The sensor may read too low: the law begins as much earlier. */
    @Test
    void theToleranceOfTheSensorIsLeft() {
        List<ComputedLaws.Point> exact = Boxes.laws(design("120 W", "", CONDITIONS)).data().law("law").orElseThrow().points();
        List<ComputedLaws.Point> loose = Boxes.laws(design("120 W", "'sensorTolerance': '1.5 K'", CONDITIONS)).data().law("law").orElseThrow()
                .points();
        assertEquals(exact.size(), loose.size());
        for (int i = 0; i < exact.size(); i++) {
            assertEquals(exact.get(i).temperature() - 1.5, loose.get(i).temperature(), 1e-6);
        }
    }

    @Test
    void itNeverGoesBelowWhatStartsTheMovers() {
        Design design = Boxes.Box.of(LoopAnalysisTest.PART.replace("'kind': 'duty'", "'kind': 'duty', 'startSetting': '45 %'"), "")
                .withConditions(CONDITIONS)
                .with(LoopAnalysisTest.HEAT.formatted("60 W") + ", 'controlLaws': [{'id': 'law', 'sensor': 'box', 'temperature': '20 °C', 'speed': '100 %'}]").design();
        ComputedLaws.Law law = Boxes.laws(design).data().law("law").orElseThrow();
        assertEquals(0.45, law.points().stream().mapToDouble(ComputedLaws.Point::setting).min().orElseThrow(), 1e-12);
        assertTrue(Boxes.laws(design("60 W", "", CONDITIONS)).sentences().stream().anyMatch(each -> each.startsWith(
                "note: nothing says from which setting the movers of control law law run; the computed law goes down to 20.0 %")));
        assertEquals(0.3, Boxes.laws(design("60 W", "'lowest': '30 %'", CONDITIONS)).data().law("law").orElseThrow().points().getFirst()
                .setting(), 1e-12);
    }

    /** Cases that need no more than what starts the movers leave the law as steep as it may be. */
    @Test
    void theEdgeOfStandingIsNoSlope() {
        Design design = Boxes.Box.of(LoopAnalysisTest.PART.replace("'kind': 'duty'",
                "'kind': 'duty', 'startSetting': '25 %', 'stopSetting': '25 %'"), "")
                .withConditions(CONDITIONS).with(LoopAnalysisTest.HEAT.formatted("100 W")
                        + ", 'controlLaws': [{'id': 'law', 'sensor': 'box', 'temperature': '20 °C', 'speed': '100 %'}]").design();
        Boxes.Told<ComputedLaws> told = Boxes.laws(design);
        ComputedLaws.Law law = told.data().law("law").orElseThrow();
        assertTrue(law.holds(), told.sentences().toString());
        assertEquals(0.25, law.points().getFirst().setting(), 1e-12);
        assertTrue(law.cases().stream().anyMatch(each -> each.needed() == 0.25), law.cases().toString());
        assertTrue(law.points().getLast().temperature() < law.points().getFirst().temperature() + 40, law.points().toString());
    }

    /** What asks for less flow is no reason for more speed, and what more speed helps is held. */
    @Test
    void requirementsCountAsSpeedHelpsThem() {
        Design plain = design("100 W", "", CONDITIONS);
        Value.Tree none = Value.Tree.EMPTY;
        Requirement most = new Requirement("airflow.bank.flow", Requirement.WORST, Optional.empty(), Optional.of(Quantity.of(0.01)), List.of(), none);
        Requirement least = new Requirement("airflow.bank.flow", Requirement.WORST, Optional.of(Quantity.of(0.045)), Optional.empty(),
                List.of("cool"), none);
        double without = Boxes.laws(plain).data().law("law").orElseThrow().cases().getFirst().needed();
        assertEquals(without, Boxes.laws(plain.withRequirements(List.of(most))).data().law("law").orElseThrow().cases().getFirst().needed(), 1e-9);
        ComputedLaws.Case cool = Boxes.laws(plain.withRequirements(List.of(least))).data().law("law").orElseThrow().cases().getFirst();
        assertTrue(cool.needed() > without + 0.05, cool.toString());
        assertEquals("flow", cool.held());
        ThermalModel model = Boxes.THERMAL.model(plain, cases(plain).getFirst().concrete());
        assertEquals(0.045, model.at(Drive.STATED.with(java.util.Map.of("fans", cool.needed())), Optional.empty(), () -> false).state()
                .orElseThrow().point()
                .bank("fans").orElseThrow().flow(), 2e-4);
        Requirement far = new Requirement("airflow.bank.flow", Requirement.WORST, Optional.of(Quantity.of(9)), Optional.empty(),
                List.of("cool"), none);
        assertTrue(Boxes.laws(plain.withRequirements(List.of(far))).sentences().stream().anyMatch(each -> each.startsWith(
                "not met: no setting of control law law meets flow: not even full speed does")),
                        Boxes.laws(plain.withRequirements(List.of(far))).sentences().toString());
    }

    @Test
    void aConditionWithoutRestIsLeftOut() {
        Design design = design("100 W", "", CONDITIONS + ", {'id': 'none', 'failed': [{'bank': 'fans', 'position': 1, 'state': 'locked'},"
                + " {'bank': 'fans', 'position': 2, 'state': 'locked'}]}");
        Boxes.Told<ComputedLaws> told = Boxes.laws(design);
        assertEquals(5, told.data().law("law").orElseThrow().cases().size() - told.data().law("law").orElseThrow().cases().stream()
                .filter(each -> each.id().equals("none")).count());
        assertTrue(told.data().law("law").orElseThrow().points().size() >= 2);
    }

    /** A slow sensor close to the limit takes the slope that it may have. */
    @Test
    void theGainMarginLimitsTheSlope() {
        String far = "'sensorLag': '1 s', 'moverLag': '1 s'";
        String slow = "'sensorLag': '60 s', 'moverLag': '10 s', 'interval': '60 s', 'gainMargin': 20";
        String sensor = "'sensor': 'chip'";
        Design quick = Boxes.read(text(far, sensor));
        Design lazy = Boxes.read(text(slow, sensor));
        ComputedLaws.Law steep = Boxes.laws(quick).data().law("law").orElseThrow();
        ComputedLaws.Law flat = Boxes.laws(lazy).data().law("law").orElseThrow();
        assertEquals(0.1, steep.slope(), 0.011);
        assertTrue(flat.slope() < 0.05, () -> flat.slope() + " 1/K");
        for (Engine.Case each : cases(lazy)) {
            Design changed = with(lazy, flat);
            assertTrue(Boxes.run(new LoopAnalysis(Boxes.THERMAL), changed, Optional.of(each.concrete()), java.util.Map.of()).data().law("law")
                    .orElseThrow()
                    .gainMargin() >= 20 - 1e-6, each.concrete().id());
        }
    }

    private static String text(String law, String sensor) {
        return "{'format': 1, 'airMovers': [{" + Boxes.PART + ", 'sections': {'drive': {" + LoopAnalysisTest.PART
                + "}}}], 'airPath': {'bays': ['box'], 'passages': ["
                + "{'id': 'fans', 'kind': 'bank', 'from': 'outside', 'to': 'box', 'mover': 'F', 'across': 2},"
                + " {'id': 'outlet', 'kind': 'opening', 'from': 'box', 'to': 'outside', 'area': '0.02 m²'}]}"
                + LoopAnalysisTest.HEAT.formatted("120 W") + ", 'controlLaws': [{'id': 'law', " + sensor
                        + ", 'temperature': '20 40 °C', 'speed': '80 100 %',"
                + " 'sections': {'drive': {" + law + "}}}], 'conditions': [" + CONDITIONS + "]}";
    }

    /** Two banks in a row, each by its own law: what is found takes no more power than both at one setting. */
    @Test
    void ofTwoLawsTheCheapestPairIsFound() {
        String bank = "{'id': '%s', 'kind': 'bank', 'from': '%s', 'to': '%s', 'mover': 'F'}";
        String text = "{'format': 1, 'airMovers': [{" + Boxes.PART + ", 'sections': {'drive': {" + LoopAnalysisTest.PART
                + "}}}], 'airPath': {'bays': ['box'], 'passages': ["
                + bank.formatted("in", "outside", "box") + ", " + bank.formatted("out", "box", "outside") + "]}"
                        + LoopAnalysisTest.HEAT.formatted("110 W")
                + ", 'controlLaws': [{'id': 'a', 'sensor': 'box', 'banks': ['in'], 'temperature': '20 °C', 'speed': '100 %'},"
                + " {'id': 'b', 'sensor': 'box', 'banks': ['out'], 'temperature': '20 °C', 'speed': '100 %'}], 'conditions': [{'id': 'warm', 'outsideTemperature': '30 °C'}]}";
        Design design = Boxes.read(text);
        Boxes.Told<ComputedLaws> told = Boxes.laws(design);
        double a = told.data().law("a").orElseThrow().cases().getFirst().needed();
        double b = told.data().law("b").orElseThrow().cases().getFirst().needed();
        ThermalModel model = Boxes.THERMAL.model(design, cases(design).getFirst().concrete());
        double least = power(model, a, b);
        assertTrue(hold(model, a, b), told.sentences().toString());
        List<Double> others = new ArrayList<>();
        for (double first = 0.2; first <= 1; first += 0.1) {
            for (double second = 0.2; second <= 1; second += 0.01) {
                if (hold(model, first, second)) {
                    others.add(power(model, first, second));
                    break;
                }
            }
        }
        double best = others.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
        assertTrue(least <= best * 1.02, least + " W against " + best + " W");
    }

    private static ThermalState at(ThermalModel model, double a, double b) {
        return model.at(Drive.STATED.with(java.util.Map.of("in", a, "out", b)), Optional.empty(), () -> false).state().orElseThrow();
    }

    private static boolean hold(ThermalModel model, double a, double b) {
        return model.margin(at(model, a, b)).orElseThrow() >= 0;
    }

    private static double power(ThermalModel model, double a, double b) {
        return at(model, a, b).point().banks().stream().mapToDouble(bank -> bank.power().orElseThrow()).sum();
    }

    @Test
    void conditionsWithASpeedOfTheirOwnAreLeftOut() {
        Boxes.Told<ComputedLaws> told = Boxes.laws(design("120 W", "", CONDITIONS + ", {'id': 'night', 'speed': 0.5}"));
        assertEquals(List.of("cool", "warm", "hot", "failed: fans 1 locked", "failed: fans 2 locked"),
                told.data().law("law").orElseThrow().cases().stream().map(ComputedLaws.Case::id).toList());
        assertTrue(told.sentences().stream().anyMatch(each -> each.contains("is computed without night, which states its own speed setting")),
                told.sentences().toString());
    }

    /** More heat never needs less. */
    @Property(tries = 25)
    void moreHeatNeedsMore(@ForAll @DoubleRange(min = 60, max = 100) double heat, @ForAll @DoubleRange(min = 1, max = 30) double more) {
        double first = Boxes.laws(design(heat + " W", "", CONDITIONS)).data().law("law").orElseThrow().cases().stream()
                .mapToDouble(ComputedLaws.Case::needed).max().orElseThrow();
        double second = Boxes.laws(design((heat + more) + " W", "", CONDITIONS)).data().law("law").orElseThrow().cases().stream()
                .mapToDouble(ComputedLaws.Case::needed).max()
                .orElseThrow();
        assertTrue(second >= first - 1e-3, first + " and then " + second);
    }

    @Test
    void withoutALawNothingIsComputed() {
        assertEquals(List.of(), Boxes.laws(Boxes.Box.of(LoopAnalysisTest.PART, "").design()).data().laws());
    }
}
