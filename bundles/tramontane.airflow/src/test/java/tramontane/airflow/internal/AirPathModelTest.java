package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.airflow.AirPathModel;
import tramontane.airflow.AirPathSolution;
import tramontane.airflow.AirPathSolver;
import tramontane.airflow.Feed;
import tramontane.airflow.NetworkSolver;
import tramontane.analysis.Finding;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.SpeedLaw;
import tramontane.analysis.SpeedLaws;
import tramontane.model.AirMover;
import tramontane.model.AirPath;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.Form;
import tramontane.model.Passage;
import tramontane.model.Quantity;
import tramontane.model.Value;
import tramontane.model.Values;

/** The pure function that a coupled loop uses: this network at these bay temperatures and speeds. */
class AirPathModelTest {

    private static Bay bay(String id, double height) {
        return new Bay(id, Optional.of(Quantity.of(height)), Value.Tree.EMPTY);
    }

    private static Design chimney() {
        return Cases.design(Cases.mover(), List.of(), Cases.square("in", "outside", "lower", 1e3),
                Cases.square("shaft", "lower", "upper", 1e3), Cases.square("out", "upper", "outside", 1e3))
                .withAirPath(new AirPath(List.of(bay("lower", 0.1), bay("upper", 0.6)), List.of(
                        Cases.square("in", "outside", "lower", 1e3), Cases.square("shaft", "lower", "upper", 1e3),
                        Cases.square("out", "upper", "outside", 1e3)), Value.Tree.EMPTY));
    }

    @Test
    void heatedAirRisesByItself() {
        AirPathModel model = AirPathModel.of(chimney(), Condition.NOMINAL, Cases.KINDS);
        OperatingPoint point = model.at(Map.of()).solve(new double[] {323.15, 333.15}).point().orElseThrow();
        double outside = model.outside().density();
        double lower = model.outside().heatedTo(323.15).density();
        double upper = model.outside().heatedTo(333.15).density();
        // each b ρ/1.2 q² at the density of the air that enters it; the shaft of 0.5 m holds air of the lower bay
        double drive = (outside - lower) * 9.80665 * 0.5;
        double mass = Math.sqrt(drive * 1.2 / 1e3 / (1 / outside + 1 / lower + 1 / upper));
        // the square law turns linear below 1e-4 Pa; here it works at some 0.1 Pa
        assertEquals(mass, point.passage("shaft").orElseThrow().massFlow(), 1e-5 * mass);
        assertEquals(mass / upper, point.passage("out").orElseThrow().flow(), 1e-5 * mass);
        assertEquals(333.15, point.bay("upper").orElseThrow().temperature());
        assertEquals(upper, point.bay("upper").orElseThrow().density());
    }

    @Test
    void atOutsideTemperatureNothingRises() {
        AirPathModel model = AirPathModel.of(chimney(), Condition.NOMINAL, Cases.KINDS);
        assertEquals(0, model.at(Map.of()).solve(model.temperatures()).point().orElseThrow().passage("shaft").orElseThrow().flow());
    }

    @Test
    void aSuckingBankTakesWarmAirAtItsInlet() {
        Design design = Cases.design(Cases.mover(), List.of("box"), Cases.square("vent", "outside", "box", 2e4),
                Cases.bank("fans", "box", "outside"));
        AirPathModel model = AirPathModel.of(design, Condition.NOMINAL, Cases.KINDS);
        OperatingPoint.BankPoint bank = model.at(Map.of("fans", Cases.SPEED)).solve(new double[] {343.15}).point().orElseThrow()
                .bank("fans").orElseThrow();
        assertEquals(343.15, bank.temperature());
        assertEquals(model.outside().heatedTo(343.15).density(), bank.density(), 1e-12);
        assertEquals(bank.massFlow() / bank.density(), bank.flow(), 1e-15);
    }

    @Test
    void speedsThatAreGivenCount() {
        Design design = Cases.design(Cases.mover(), List.of("box"), Cases.square("vent", "outside", "box", 2e4),
                Cases.bank("fans", "box", "outside"));
        AirPathModel model = AirPathModel.of(design, Cases.standardAir(), Cases.KINDS);
        double full = model.at(model.speeds(List.of())).solve(model.temperatures()).point().orElseThrow().banks().getFirst().flow();
        double half = model.at(Map.of("fans", Cases.SPEED / 2)).solve(model.temperatures()).point().orElseThrow().banks().getFirst()
                .flow();
        assertEquals(full / 2, half, 1e-8);
        assertEquals(Map.of("fans", Cases.SPEED), model.speeds(List.of()));
    }

    @Test
    void aWarmStartGivesTheSame() {
        Design design = Cases.design(Cases.mover(), List.of("box"), Cases.square("vent", "outside", "box", 2e4),
                Cases.bank("fans", "box", "outside"));
        AirPathModel model = AirPathModel.of(design, Condition.NOMINAL, Cases.KINDS);
        AirPathSolver solver = model.at(model.speeds(List.of()));
        AirPathSolution cold = solver.solve(new double[] {320});
        AirPathSolution warm = solver.solve(new double[] {320}, NetworkSolver.Settings.STANDARD,
                solver.solve(new double[] {300}).network(), () -> false);
        assertEquals(cold.point().orElseThrow().banks().getFirst().flow(), warm.point().orElseThrow().banks().getFirst().flow(), 1e-12);
        assertTrue(warm.network().orElseThrow().iterations() <= cold.network().orElseThrow().iterations());
    }

    private static Design pushAndPull() {
        return Cases.design(Cases.mover(), List.of("box"), Cases.bank("in", "outside", "box"), Cases.bank("out", "box", "outside"));
    }

    @Test
    void eachBankHasASettingAndDensityOfItsOwn() {
        AirPathModel model = AirPathModel.of(pushAndPull(), Cases.standardAir().withSpeed(Quantity.of(0.8)), Cases.KINDS);
        SpeedLaw byDensity = supply -> Optional.of(100 * supply.setting() / supply.density());
        Map<String, Feed> feeds = Map.of("out", new Feed(0.5, 1.0, 320, "control law fans"));
        Map<String, Double> speeds = model.speeds(List.of(byDensity), feeds);
        assertEquals(50, speeds.get("out"), 1e-12);
        assertEquals(100 * 0.8 / 1.2, speeds.get("in"), 1e-6);
        assertEquals(0.5 * Cases.SPEED, model.speeds(List.of(), feeds).get("out"), 1e-12);
        assertEquals(0.8 * Cases.SPEED, model.speeds(List.of(), feeds).get("in"), 1e-12);
        assertEquals(model.speeds(List.of(byDensity)), model.speeds(List.of(byDensity), Map.of("in", model.feed("in"), "out", model.feed("out"))));
    }

    @Test
    void aBankMayRunSlowerThanTheCondition() {
        Design design = pushAndPull();
        Passage in = design.airPath().passage("in").orElseThrow();
        Design slowed = design.withAirPath(design.airPath().withPassage(in.withParameters(in.parameters().with("speed", Value.Num.of(0.5)))));
        AirPathModel model = AirPathModel.of(slowed, Cases.standardAir().withSpeed(Quantity.of(0.8)), Cases.KINDS);
        assertEquals(0.4 * Cases.SPEED, model.speeds(List.of()).get("in"), 1e-12);
        assertEquals(0.8 * Cases.SPEED, model.speeds(List.of()).get("out"), 1e-12);
        OperatingPoint.BankPoint point = model.at(model.speeds(List.of())).solve(new double[] {293.15}).point().orElseThrow().bank("in").orElseThrow();
        assertEquals(0.4, point.setting(), 1e-12);
        assertEquals(0.4 * Cases.SPEED, point.speed(), 1e-12);
    }

    @Test
    void aSpeedLawIsToldWhatFeedsAMover() {
        Design design = pushAndPull().withMore(Cases.tree("sections", Cases.tree("rail", "x")));
        Condition condition = Cases.standardAir().withSpeed(Quantity.of(0.8));
        AirPathModel model = AirPathModel.of(design, condition, Cases.KINDS);
        List<SpeedLaw.Supply> asked = new ArrayList<>();
        model.speeds(List.of(supply -> {
            asked.add(supply);
            return Optional.empty();
        }), Map.of("out", new Feed(0.5, 1.0, 320, "control law fans")));
        assertEquals(List.of(
                new SpeedLaw.Supply(design, design.airPath().passages().getFirst(), Cases.mover(), condition, 0.8,
                        model.outside().density(), 293.15),
                new SpeedLaw.Supply(design, design.airPath().passages().get(1), Cases.mover(), condition, 0.5, 1.0, 320)), asked);
        assertEquals(asked.get(1), model.supply("out", new Feed(0.5, 1.0, 320, "whoever")));
    }

    @Test
    void aFeedIsOfRealNumbers() {
        for (double wrong : new double[] {-0.1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThrows(IllegalArgumentException.class, () -> new Feed(wrong, 1.2, 300, ""));
        }
        for (double wrong : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThrows(IllegalArgumentException.class, () -> new Feed(1, wrong, 300, ""));
            assertThrows(IllegalArgumentException.class, () -> new Feed(1, 1.2, wrong, ""));
        }
        assertEquals(0, new Feed(0, 1.2, 300, "").setting());
    }

    @Test
    void speedLawsAreAskedByRankThenByAge() {
        SpeedLaw low = supply -> Optional.of(1.0);
        SpeedLaw unranked = supply -> Optional.of(2.0);
        SpeedLaw later = supply -> Optional.of(3.0);
        SpeedLaw high = supply -> Optional.of(4.0);
        assertEquals(List.of(high, unranked, later, low), SpeedLaws.ranked(List.of(
                Map.entry(Map.of("service.ranking", -100, "service.id", 1L), low),
                Map.entry(Map.of("service.ranking", 0, "service.id", 9L), later),
                Map.entry(Map.of("service.id", 4L), unranked),
                Map.entry(Map.of("service.ranking", 7, "service.id", 12L), high))));
    }

    /** A part whose curve falls all the way when slow and has a dip when fast. */
    private static AirMover dippingWhenFast() {
        double[] slow = {0, 0.01, 0.02, 0.03};
        return Cases.part(Cases.curve(Cases.SPEED / 2, 1.2, slow, new double[] {20, 18, 13, 0}, new double[0]),
                Cases.dipping().curves().getFirst());
    }

    @ParameterizedTest
    @ValueSource(strings = {"falling", "dipping", "changing"})
    void otherSpeedsOnASolverGiveWhatANewOneGives(String curve) {
        AirMover mover = Map.of("falling", Cases.mover(), "dipping", Cases.dipping(), "changing", dippingWhenFast()).get(curve);
        Design design = Cases.design(mover, List.of("box", "far"), Cases.square("vent", "outside", "box", 2e4),
                Cases.square("shaft", "box", "far", 1e4), Cases.bank("fans", "far", "outside", "across", 3),
                Cases.bank("booster", "box", "far"));
        Condition failed = Cases.standardAir().with("failed", List.of(Cases.failed("fans", 2, FailedMover.State.LOCKED)));
        for (Condition condition : List.of(Cases.standardAir(), failed)) {
            AirPathModel model = AirPathModel.of(design, condition, Cases.KINDS);
            Map<String, Double> factors = Map.of("vent", 1.1, "fans", 0.9);
            Map<String, Double> area = Map.of("shaft", 1.2);
            AirPathSolver solver = model.at(Map.of("fans", Cases.SPEED), factors, area);
            double[] warm = {310, 320};
            AirPathSolution fast = solver.solve(warm);
            for (Map<String, Double> speeds : List.of(Map.of("fans", Cases.SPEED / 2, "booster", Cases.SPEED / 2),
                    Map.of("fans", 0.9 * Cases.SPEED), Map.of("fans", 0.0, "booster", 1.1 * Cases.SPEED))) {
                AirPathSolver fresh = model.at(speeds, factors, area);
                AirPathSolver other = solver.withSpeeds(speeds);
                assertEquals(fresh.solve(warm).point(), other.solve(warm).point());
                assertEquals(fresh.near(warm, fast, () -> false).point(), other.near(warm, fast, () -> false).point());
                assertTrue(other.near(warm, fast, () -> false).point().isPresent());
                assertTrue(solver.near(warm, other.solve(warm), () -> false).point().isPresent());
            }
            assertEquals(fast.point(), solver.solve(warm).point());
            assertSame(solver, solver.withSpeeds(Map.of("fans", Cases.SPEED)));
        }
    }

    @Test
    void aSpeedThatCannotBeComputedDoesNotStick() {
        Design design = Cases.design(Cases.mover(), List.of("box"), Cases.square("vent", "outside", "box", 2e4),
                Cases.bank("fans", "box", "outside"));
        AirMover frameless = new AirMover("F", "", Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.empty(), Optional.empty(), Optional.empty(), Cases.mover().curves(), Value.Tree.EMPTY);
        AirPathModel model = AirPathModel.of(design.withAirMovers(List.of(frameless)), Cases.standardAir(), Cases.KINDS);
        AirPathSolver still = model.at(Map.of("fans", 0.0));
        assertEquals(List.of("fans"), still.obstacles().stream().map(Finding::place).toList());
        AirPathSolver turning = still.withSpeeds(Map.of("fans", Cases.SPEED));
        assertEquals(List.of(), turning.obstacles());
        assertEquals(still.obstacles(), turning.withSpeeds(Map.of("fans", 0.0)).obstacles());
        assertThrows(IllegalArgumentException.class, () -> turning.withSpeeds(Map.of("fans", -1.0)));
    }

    /** A suction box with warm air; a bank of three columns of which one is locked, so that it is blown back through. */
    private static AirPathModel withOneLocked(AirMover mover, Object... bank) {
        Design design = Cases.design(mover, List.of("box"), Cases.square("vent", "outside", "box", 2e4),
                Cases.bank("fans", "box", "outside", bank));
        return AirPathModel.of(design, Cases.standardAir().with("failed",
                List.of(Cases.failed("fans", 3, FailedMover.State.LOCKED))), Cases.KINDS);
    }

    @ParameterizedTest
    @ValueSource(doubles = {293.15, 343.15})
    void columnsThatAreBlownBackThroughCountAgainstTheOthers(double box) {
        for (AirMover mover : List.of(Cases.mover(), Cases.dipping())) {
            AirPathModel model = withOneLocked(mover, "across", 3);
            OperatingPoint.BankPoint bank = model.at(Map.of()).solve(new double[] {box}).point().orElseThrow().banks().getFirst();
            double[] columns = model.columnFlows(bank);
            assertEquals(1, model.series("fans"));
            assertEquals(3, columns.length);
            assertTrue(columns[0] > 0 && columns[1] > 0 && columns[2] < 0, () -> Arrays.toString(columns));
            assertEquals(bank.massFlow(), Arrays.stream(columns).sum(), 1e-11);
            assertEquals(bank.flow(), bank.massFlow() / bank.density(), 1e-15);
            // side by side all have one pressure; whichever air is in them
            for (OperatingPoint.MoverPoint each : bank.movers()) {
                assertEquals(bank.pressure(), each.pressure(), 1e-7);
            }
        }
    }

    /** K ρ v²/2 with K of a locked mover, 3 times that of an opening, on 0.008 m²: a column of its own holds the air behind. */
    @Test
    void aColumnOfItsOwnHasTheAirThatComesBack() {
        AirPathModel model = withOneLocked(Cases.dipping(), "across", 3);
        OperatingPoint.BankPoint bank = model.at(Map.of()).solve(new double[] {343.15}).point().orElseThrow().banks().getFirst();
        double density = model.outside().density();
        double loss = 3 * Math.pow(1 + 0.707, 2);
        double mass = Math.sqrt(2 * density * bank.pressure() / loss) * 0.008;
        assertEquals(-mass, model.columnFlows(bank)[2], 1e-4 * mass);
        assertEquals(model.outside().heatedTo(343.15).density(), bank.density(), 1e-12);
        AirPathModel falling = withOneLocked(Cases.mover(), "across", 3);
        OperatingPoint.BankPoint shared = falling.at(Map.of()).solve(new double[] {343.15}).point().orElseThrow().banks().getFirst();
        double back = Math.sqrt(2 * shared.density() * shared.pressure() / loss) * 0.008;
        assertEquals(-back, falling.columnFlows(shared)[2], 1e-4 * back);
    }

    @Test
    void moversBehindOneAnotherShareAFlow() {
        AirPathModel model = withOneLocked(Cases.mover(), "across", 2, "series", 2);
        OperatingPoint.BankPoint bank = model.at(Map.of()).solve(new double[] {313.15}).point().orElseThrow().banks().getFirst();
        double[] columns = model.columnFlows(bank);
        assertEquals(2, model.series("fans"));
        assertEquals(2, columns.length);
        // the second column has one mover that runs and the locked one
        assertTrue(columns[0] > columns[1], () -> Arrays.toString(columns));
        assertEquals(bank.movers().get(2).flow(), bank.movers().get(3).flow());
        assertEquals(bank.movers().get(2).flow() * bank.density(), columns[1], 1e-15);
        assertEquals(bank.massFlow(), columns[0] + columns[1], 1e-11);
    }

    /** The sections that air goes through, by hand. */
    @Test
    void aPassageHasTheAreaThatItsAirGoesThrough() {
        Design design = Cases.design(Cases.mover(), List.of("box"),
                Cases.passage("opening", "opening", "outside", "box", "diameter", "40 mm"),
                Cases.passage("duct", "duct", "outside", "box", "width", "40 mm", "height", "30 mm", "length", "1 m"),
                Cases.passage("bend", "bend", "outside", "box", "width", "40 mm", "height", "30 mm", "angle", 1.57, "mitre", true),
                Cases.passage("cage", "card cage", "outside", "box", "boards", 6, "pitch", "20 mm", "componentHeight", "10 mm",
                        "height", "160 mm", "length", "220 mm"),
                Cases.passage("fins", "heat sink", "outside", "box", "fins", 16, "finThickness", "1 mm", "width", "80 mm",
                        "height", "40 mm", "length", "120 mm"),
                Cases.passage("plate", "orifice", "outside", "box", "ductDiameter", "60 mm", "orificeDiameter", "40 mm"),
                Cases.passage("wider", "area change", "outside", "box", "fromArea", "10 cm²", "toArea", "25 cm²"),
                Cases.passage("narrower", "area change", "outside", "box", "fromArea", "25 cm²", "toArea", "10 cm²"),
                Cases.passage("grille", "grille", "outside", "box", "width", "140 mm", "height", "90 mm", "freeArea", "68 cm²"),
                Cases.passage("screen", "screen", "outside", "box", "area", "50 cm²", "wireDiameter", "0.5 mm", "openRatio", 0.6),
                Cases.passage("guard", "finger guard", "outside", "box", "area", "90 cm²", "openRatio", "82 %"),
                Cases.passage("faced", "filter", "outside", "box", "width", "140 mm", "height", "90 mm", "ratedFlow", "72 m³/h",
                        "ratedPressure", "9 Pa"),
                Cases.passage("faceless", "filter", "outside", "box", "ratedFlow", "72 m³/h", "ratedPressure", "9 Pa"),
                Cases.passage("gap", "gap", "outside", "box", "width", "60 mm", "opening", "4 mm", "depth", "1.5 mm"),
                Cases.passage("flap", "flap", "outside", "box", "area", "30 cm²", "lossCoefficient", 2),
                Cases.square("measured", "outside", "box", 1e4), Cases.bank("fans", "box", "outside"));
        AirPathModel model = AirPathModel.of(design, Condition.NOMINAL, Cases.KINDS);
        assertEquals(List.of(), model.obstacles());
        Map<String, Double> areas = Map.ofEntries(Map.entry("opening", Math.PI * 4e-4), Map.entry("duct", 12e-4),
                Map.entry("bend", 12e-4), Map.entry("cage", 6 * 0.0084 * 0.16), Map.entry("fins", 0.064 * 0.04),
                Map.entry("plate", Math.PI * 4e-4), Map.entry("wider", 10e-4), Map.entry("narrower", 10e-4),
                Map.entry("grille", 126e-4), Map.entry("screen", 50e-4), Map.entry("guard", 90e-4), Map.entry("faced", 126e-4),
                Map.entry("gap", 2.4e-4), Map.entry("flap", 30e-4));
        areas.forEach((id, area) -> assertEquals(area, model.flowArea(id).orElseThrow(), 1e-12, id));
        for (String none : List.of("faceless", "measured", "fans", "missing")) {
            assertEquals(OptionalDouble.empty(), model.flowArea(none), none);
        }
    }

    /** A kind that says an area of its own. */
    private record Odd(DoubleSupplier area) implements PassageKind {

        @Override
        public Form form() {
            return Form.of("odd", "Odd.");
        }

        @Override
        public FlowLaw law(Values values, Setting setting) {
            return LocalLoss.of(1, 1);
        }

        @Override
        public OptionalDouble flowArea(Values values, Setting setting) {
            return OptionalDouble.of(area.getAsDouble());
        }
    }

    @Test
    void aKindThatFailsToSayItsAreaIsNamed() {
        Design design = Cases.design(Cases.mover(), List.of(), Cases.passage("x", "odd", "outside", "outside"));
        for (DoubleSupplier wrong : List.<DoubleSupplier>of(() -> 0, () -> Double.NaN, () -> {
            throw new UnsupportedOperationException("no idea");
        })) {
            List<Finding> obstacles = AirPathModel.of(design, Condition.NOMINAL, List.of(new Odd(wrong))).obstacles();
            assertEquals(List.of("x"), obstacles.stream().map(Finding::place).toList());
            assertTrue(obstacles.getFirst().message().toString().startsWith("passage kind odd failed for passage x: "));
        }
        assertEquals(2, AirPathModel.of(design, Condition.NOMINAL, List.of(new Odd(() -> 2))).flowArea("x").orElseThrow());
    }
}
