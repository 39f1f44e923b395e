package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.airflow.AirPathModel;
import tramontane.airflow.AirPathSolution;
import tramontane.airflow.AirPathSolver;
import tramontane.airflow.AirflowStudy;
import tramontane.airflow.Feed;
import tramontane.analysis.Figure;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Relation;
import tramontane.analysis.Result;
import tramontane.analysis.SpeedLaw;
import tramontane.analysis.Trace;
import tramontane.model.AirMover;
import tramontane.model.AirPath;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.HeatSource;
import tramontane.model.MoverCurve;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.model.Value;
import tramontane.model.file.DesignFile;
import tramontane.physics.Air;
import tramontane.physics.units.QuantityKind;

/** What is said of an air path whose bays are warmer than the air outside. */
class AirflowStudyTest {

    private static final double B = 2e4;
    private static final double HOT = 343.15;
    private static final double TOLERANCE = 0.1;
    /** Falls in a straight line from 80 Pa to 0.05 m³/s. */
    private static final MoverCurve STRAIGHT = Movers.curve("speed", Cases.SPEED, "density", 1.2, "flow", "0 0.05 m³/s",
            "pressure", "80 0 Pa", "power", "5 8 W", "tolerance", TOLERANCE);

    private static final Condition AIR = Cases.standardAir();
    private static final double OUTSIDE = AirPathModel.of(Design.EMPTY, AIR, List.of()).outside().density();
    private static final double INSIDE = AirPathModel.of(Design.EMPTY, AIR, List.of()).outside().heatedTo(HOT).density();

    private static final List<HeatSource> HEAT = List.of(new HeatSource("board", Quantity.of(200), List.of(), Optional.empty(),
            Value.Tree.EMPTY));

    /** A box that a bank draws its warm air from. */
    private static Design box(AirMover mover) {
        return Cases.design(mover, List.of("box"), Cases.square("vent", "outside", "box", B),
                Cases.bank("fans", "box", "outside")).withHeatSources(HEAT)
                .withRequirements(List.of(new Requirement("airflow.air.rise", Requirement.WORST, Optional.empty(),
                        Optional.of(Quantity.of(10)), List.of(), Value.Tree.EMPTY)));
    }

    /**
     * f n² 80 (1 - q/(0.05 n)) ρ/1.2 = B (ρ q/ρ₀)² ρ₀/1.2, q the flow at the inlet of the bank, ρ the density there, ρ₀ that
     * outside, n the speed over that of the curve, f a factor on its pressure.
     */
    private static double flow(double factor, double speed) {
        double a = B * INSIDE / OUTSIDE;
        double b = factor * 80 * speed / 0.05;
        return (-b + Math.sqrt(b * b + 4 * a * factor * 80 * speed * speed)) / (2 * a);
    }

    private static Figure figure(Result<?> result, String id, String place) {
        return result.figures().stream().filter(each -> each.kind().id().equals(id) && each.place().equals(place)).findFirst()
                .orElseThrow(() -> new AssertionError("no " + id + " at " + place + " but " + result.findings()));
    }

    private static void is(double expected, double tolerance, Result<?> result, String id, String place) {
        assertEquals(expected, figure(result, id, place).value(), tolerance, id);
    }

    @Test
    void everyFigureIsThatOfTheWarmAir() {
        Design design = box(Cases.part(STRAIGHT));
        Result<OperatingPoint> result = Cases.study(design, AIR, Map.of(), new double[] {HOT}, Optional.empty(), null);
        double q = flow(1, 1);
        double mass = INSIDE * q;
        double pressure = B * (mass / OUTSIDE) * (mass / OUTSIDE) * OUTSIDE / 1.2;
        double power = (5 + 3 * q / 0.05) * INSIDE / 1.2;
        is(q, 1e-8 * q, result, "airflow.bank.flow", "fans");
        is(mass / 1.2, 1e-8 * q, result, "airflow.bank.standardFlow", "fans");
        is(pressure, 1e-6, result, "airflow.bank.pressure", "fans");
        is(power, 1e-7, result, "airflow.bank.power", "fans");
        is(q * pressure / power, 1e-7, result, "airflow.bank.efficiency", "fans");
        is(mass / OUTSIDE, 1e-8 * q, result, "airflow.passage.flow", "vent");
        is(pressure, 1e-6, result, "airflow.passage.drop", "vent");
        is(-pressure, 1e-6, result, "airflow.bay.pressure", "box");
        is(mass / OUTSIDE, 1e-8 * q, result, "airflow.total.flow", "");
        is(OUTSIDE, 1e-12, result, "airflow.air.density", "");
        double cp = AirPathModel.of(Design.EMPTY, AIR, List.of()).outside().specificHeat();
        is(200 / (mass * cp), 1e-5, result, "airflow.air.rise", "");
        // the bank is to draw the mass needed as warm air
        double needed = 200 / (OUTSIDE * cp * 10);
        is(needed, 1e-12, result, "airflow.flow.needed", "");
        is(80 * (1 - needed * OUTSIDE / INSIDE / 0.05) * INSIDE / 1.2, 1e-6, result, "airflow.pressure.available", "fans");
        // what would be if, and bounds, in warm air too
        double less = flow(1 - TOLERANCE, 1);
        double more = flow(1 + TOLERANCE, 1);
        is(less, 1e-8 * q, result, "airflow.bank.flowAtLessPressure", "fans");
        is(more, 1e-8 * q, result, "airflow.bank.flowAtMorePressure", "fans");
        assertEquals(less, figure(result, "airflow.bank.flow", "fans").lower().orElseThrow(), 1e-8 * q);
        assertEquals(more, figure(result, "airflow.bank.flow", "fans").upper().orElseThrow(), 1e-8 * q);
        assertEquals(mass / OUTSIDE * more / q, figure(result, "airflow.passage.flow", "vent").upper().orElseThrow(), 1e-8 * q);
        // efficiency is best where (80 - 1600 q) q/(5 + 60 q) is, whatever the density: q² + q/6 - 1/240 = 0
        is((-1.0 / 6 + Math.sqrt(1.0 / 36 + 4.0 / 240)) / 2, 1e-6, result, "airflow.bank.bestFlow", "fans");
        assertEquals(HOT, result.data().orElseThrow().bank("fans").orElseThrow().temperature());
    }

    @Test
    void theSettingAndTheAirAtTheInletMakeTheSpeed() {
        AirMover motor = Movers.with(Cases.part(STRAIGHT), "motor", "DC unregulated", "noLoadSpeed", 4 * Cases.SPEED / 3);
        List<Trace.Step> steps = new ArrayList<>();
        Result<OperatingPoint> result = Cases.study(box(motor), AIR, Map.of("fans", new Feed(0.8, INSIDE, HOT, "control law fans")),
                new double[] {HOT}, Optional.empty(), steps, new SupplySpeedLaw());
        // x²(ρ/ρ₁)/4 + 3x/4 = 1 with n₁/n₀ = 3/4
        double ratio = 0.8 * (-0.75 + Math.sqrt(0.5625 + INSIDE / 1.2)) / (INSIDE / 1.2 / 2);
        is(ratio * Cases.SPEED, 1e-9, result, "airflow.bank.speed", "fans");
        is(flow(1, ratio), 1e-9, result, "airflow.bank.flow", "fans");
        Trace.Step speed = step(steps, "airflow.bank.speed", "fans");
        assertEquals("speed of an unregulated DC motor", speed.relation().name());
        assertEquals(new Trace.Term("speed setting", QuantityKind.FRACTION, 0.8, "control law fans"),
                term(speed, "speed setting"));
        assertEquals(INSIDE, term(speed, "density at the inlet ρ").value());
        assertEquals("air density in box", term(speed, "density at the inlet ρ").from());
        assertEquals(List.of(), result.findings().stream().filter(each -> each.message().toString().contains("speed law")).toList());
    }

    /** A law that is not ours and a setting other than the condition's. */
    @Test
    void theRatedSpeedTimesTheSettingIsToldAsSuch() {
        List<Trace.Step> steps = new ArrayList<>();
        Result<OperatingPoint> result = Cases.study(box(Cases.part(STRAIGHT)), AIR,
                Map.of("fans", new Feed(0.5, INSIDE, HOT, "control law fans")), new double[] {HOT}, Optional.empty(), steps);
        is(0.5 * Cases.SPEED, 1e-12, result, "airflow.bank.speed", "fans");
        assertEquals("speed setting", step(steps, "airflow.bank.speed", "fans").relation().name());
        assertEquals(0.5, term(step(steps, "airflow.bank.speed", "fans"), "speed setting").value());
    }

    /** A law that follows the air at the inlet, and says so. */
    private record ByTemperature(boolean explains) implements SpeedLaw {

        static final Relation LAW = new Relation("by thermistor", "n = 1 rad/(s K) × T", "invented", "");

        @Override
        public Optional<Double> speed(Supply supply) {
            return Optional.of(supply.temperature());
        }

        @Override
        public Set<String> sections() {
            return Set.of("rail", "none");
        }

        @Override
        public Optional<Origin> origin(Supply supply) {
            return explains ? Optional.of(new Origin(LAW, List.of(
                    new Trace.Term("inlet T", QuantityKind.TEMPERATURE, supply.temperature(), INLET),
                    new Trace.Term("inlet ρ", QuantityKind.DENSITY, supply.density(), INLET),
                    new Trace.Term("gain", QuantityKind.NUMBER, 1, "air mover F")))) : Optional.empty();
        }
    }

    @Test
    void theLawThatAnsweredSaysWhereTheSpeedComesFrom() {
        // ours comes behind it and would answer, too
        AirMover motor = Movers.with(Cases.part(STRAIGHT), "motor", "DC unregulated", "noLoadSpeed", 4 * Cases.SPEED / 3);
        List<Trace.Step> steps = new ArrayList<>();
        Cases.study(box(motor), AIR, Map.of("fans", new Feed(0.8, INSIDE, HOT, "control law fans")), new double[] {HOT},
                Optional.empty(), steps, new ByTemperature(true), new SupplySpeedLaw());
        assertEquals(new Trace.Step("airflow.bank.speed", "fans", ByTemperature.LAW, HOT, List.of(
                new Trace.Term("inlet T", QuantityKind.TEMPERATURE, HOT, "thermal.air.temperature at box"),
                new Trace.Term("inlet ρ", QuantityKind.DENSITY, INSIDE, "air density in box"),
                new Trace.Term("gain", QuantityKind.NUMBER, 1, "air mover F"),
                new Trace.Term("speed setting", QuantityKind.FRACTION, 0.8, "control law fans"))),
                step(steps, "airflow.bank.speed", "fans"));
    }

    @Test
    void airThatIsAsOutsideComesFromThere() {
        List<Trace.Step> steps = new ArrayList<>();
        Cases.run(box(Cases.part(STRAIGHT)), AIR, steps, new ByTemperature(true));
        Trace.Step speed = step(steps, "airflow.bank.speed", "fans");
        assertEquals(new Trace.Term("inlet T", QuantityKind.TEMPERATURE, 293.15, "condition standard air"), term(speed, "inlet T"));
        assertEquals(new Trace.Term("inlet ρ", QuantityKind.DENSITY, OUTSIDE, "airflow.air.density"), term(speed, "inlet ρ"));
    }

    @Test
    void aLawThatSaysNothingIsNamedAsALaw() {
        List<Trace.Step> steps = new ArrayList<>();
        // also where it comes to what the setting would give
        AirMover part = Movers.with(Cases.part(STRAIGHT), "ratedSpeed", 293.15);
        Cases.run(box(part), AIR, steps, new ByTemperature(false));
        assertEquals(Relations.SPEED_LAW, step(steps, "airflow.bank.speed", "fans").relation());
        assertEquals(293.15, term(step(steps, "airflow.bank.speed", "fans"), "rated speed").value());
    }

    @Test
    void readsTheSectionsThatItsSpeedLawsName() {
        Value.Tree rail = Cases.tree("voltage", "12 V");
        Value.Tree own = Cases.tree("sections", Cases.tree("rail", rail));
        Design written = box(Movers.with(Cases.part(STRAIGHT), "sections", Cases.tree("rail", rail)))
                .withMore(Cases.tree("notes", "all of it", "sections", Cases.tree("other", rail, "rail", rail)));
        Design design = written.withAirPath(new AirPath(written.airPath().bays(), List.of(written.airPath().passages().getFirst(),
                Cases.bank("fans", "box", "outside", "sections", Cases.tree("rail", rail))), Value.Tree.EMPTY));
        Design read = AirflowStudy.reads(design, List.of(new SupplySpeedLaw(), new ByTemperature(true)));
        assertEquals(own, read.more());
        assertEquals(Optional.of(rail), read.section("rail"));
        assertEquals(Optional.of(rail), read.airMovers().getFirst().section("rail"));
        assertEquals(Optional.of(rail), read.airPath().passages().getLast().section("rail"));
        assertEquals(Value.Tree.EMPTY, AirflowStudy.reads(design, List.of(new SupplySpeedLaw())).more());
        assertEquals(Value.Tree.EMPTY, AirflowStudy.reads(written.withMore(Value.Tree.EMPTY), List.of(new ByTemperature(true))).more());
    }

    private static Trace.Step step(List<Trace.Step> steps, String figure, String place) {
        return steps.stream().filter(each -> each.figure().equals(figure) && each.place().equals(place)).findFirst()
                .orElseThrow(() -> new AssertionError("no step for " + figure + " at " + place + " but " + steps));
    }

    private static Trace.Term term(Trace.Step step, String name) {
        return step.inputs().stream().filter(each -> each.name().equals(name)).findFirst()
                .orElseThrow(() -> new AssertionError("no " + name + " but " + step.inputs()));
    }

    // traces

    /** Bays at several heights and temperatures, with a bank between two of them; "cold" is as outside. */
    private static Design tall() {
        return Cases.design(Cases.part(STRAIGHT), List.of()).withAirPath(new AirPath(
                List.of(bay("cold", 0), bay("low", 0.2), bay("high", 1.5)),
                List.of(Cases.passage("door", "opening", "outside", "cold", "area", "60 cm²"),
                        Cases.passage("sill", "opening", "cold", "low", "area", "60 cm²"), Cases.bank("fans", "low", "high"),
                        Cases.passage("lid", "opening", "high", "outside", "area", "70 cm²"),
                        Cases.passage("way back", "opening", "high", "low", "area", "5 cm²")),
                Value.Tree.EMPTY)).withHeatSources(HEAT);
    }

    private static Bay bay(String id, double height) {
        return new Bay(id, Optional.of(Quantity.of(height)), Value.Tree.EMPTY);
    }

    @Test
    void everyFigureOfWarmAirCanBeTracedToWhereItComesFrom() {
        List<Trace.Step> steps = new ArrayList<>();
        Result<OperatingPoint> result = Cases.study(tall(), AIR, Map.of(), new double[] {AIR.temperature(), 320, HOT},
                Optional.empty(), steps);
        for (Figure figure : result.figures()) {
            assertEquals(figure.value(), step(steps, figure.kind().id(), figure.place()).value(), figure.kind().id());
        }
        Set<String> names = steps.stream().map(Trace.Step::figure).collect(Collectors.toSet());
        for (Trace.Step step : steps) {
            for (Trace.Term term : step.inputs()) {
                if (term.from().matches("air(flow\\.| density in ).*|buoyancy in .*")) {
                    assertTrue(names.contains(term.from()), term::toString);
                }
            }
        }
        Trace.Step warm = step(steps, "air density in low", "low");
        assertEquals(AirPathModel.of(Design.EMPTY, AIR, List.of()).outside().heatedTo(320).density(), warm.value());
        assertEquals(320, term(warm, "temperature in low").value());
        assertEquals("thermal.air.temperature", term(warm, "temperature in low").from());
        assertTrue(names.contains("air density in high"));
        assertEquals(Set.of("air density in low", "air density in high"),
                names.stream().filter(name -> name.startsWith("air density in ")).collect(Collectors.toSet()));
    }

    /** K ρ v²/2 with the density of the air that enters; and the difference of pressures with the weight of the air in between. */
    @Test
    void theDropOfAPassageIsThatOfTheAirWhichEntersIt() {
        List<Trace.Step> steps = new ArrayList<>();
        OperatingPoint point = Cases.study(tall(), AIR, Map.of(), new double[] {AIR.temperature(), 320, HOT}, Optional.empty(), steps)
                .data().orElseThrow();
        Map<String, String> enters = Map.of("door", "outside", "sill", "in cold", "lid", "in high", "way back", "in high");
        enters.forEach((passage, bay) -> {
            Trace.Step drop = step(steps, "airflow.passage.drop", passage);
            double velocity = term(drop, "flow").value() / term(drop, "open area A").value();
            Trace.Term density = term(drop, "density " + bay);
            assertEquals(drop.value(), term(drop, "loss coefficient K").value() * density.value() * velocity * Math.abs(velocity) / 2,
                    1e-4 * Math.abs(drop.value()), passage);
            assertEquals(bay.equals("in high") ? "air density in high" : "airflow.air.density", density.from());
            assertEquals(Air.viscosity(bay.equals("in high") ? HOT : AIR.temperature()),
                    term(drop, "viscosity").value());
        });
        // the bank carries air of the low bay upwards, the way back air of the high one downwards
        for (String passage : List.of("fans", "way back")) {
            Trace.Step buoyancy = step(steps, "buoyancy in " + passage, passage);
            double rise = term(buoyancy, "height of " + (passage.equals("fans") ? "high" : "low")).value()
                    - term(buoyancy, "height of " + (passage.equals("fans") ? "low" : "high")).value();
            double density = term(buoyancy, "density in " + (passage.equals("fans") ? "low" : "high")).value();
            assertEquals((OUTSIDE - density) * 9.80665 * rise, buoyancy.value(), 1e-12);
        }
        Trace.Step back = step(steps, "airflow.passage.flow", "way back");
        assertEquals("flow network with buoyancy", back.relation().name());
        assertEquals(point.passage("way back").orElseThrow().drop(), term(back, "pressure in high").value()
                - term(back, "pressure in low").value() + term(back, "buoyancy of the air in way back").value(), 1e-6);
        assertEquals("flow network", step(steps, "airflow.passage.flow", "sill").relation().name());
        assertEquals("flow network with buoyancy", step(steps, "airflow.bay.pressure", "high").relation().name());
        assertEquals("flow network", step(steps, "airflow.bay.pressure", "cold").relation().name());
        assertEquals("air density in low", term(step(steps, "airflow.bank.pressure", "fans"), "density at the inlet").from());
        assertEquals("air density in low", term(step(steps, "airflow.bank.bestFlow", "fans"), "density at the inlet").from());
    }

    // the same, where nothing is warm

    @Test
    void atOutsideTemperatureItIsTheAirFlowAnalysis() throws IOException {
        Design design = DesignFile.parse(Files.readString(Path.of("../../product/samples/observatory.tramontane.json"))).design()
                .orElseThrow();
        for (Condition condition : design.conditions().subList(0, 3)) {
            List<Trace.Step> expected = new ArrayList<>();
            List<Trace.Step> steps = new ArrayList<>();
            Result<OperatingPoint> analysis = Cases.run(design, condition, expected, new SupplySpeedLaw());
            AirPathModel model = AirPathModel.of(design, condition, Cases.KINDS);
            assertEquals(analysis, Cases.study(design, condition, Map.of("fans", model.feed("fans")), model.temperatures(),
                    Optional.empty(), steps, new SupplySpeedLaw()));
            assertEquals(expected, steps);
            assertTrue(analysis.data().isPresent());
        }
    }

    // several duty points

    /** A mover with a deep dip on a resistance that it meets three times. */
    private static Design dipping() {
        return Cases.design(Cases.part(Cases.curve(Cases.SPEED, 1.2, new double[] {0, 0.01, 0.015, 0.025, 0.04, 0.05},
                new double[] {80, 60, 18, 60, 40, 0}, new double[0])), List.of("box"), Cases.square("vent", "outside", "box", 9.4e4),
                Cases.bank("fans", "box", "outside"));
    }

    @Test
    void theStateThatTheAirHasComeToIsJudged() {
        AirPathModel model = AirPathModel.of(dipping(), AIR, Cases.KINDS);
        double[] warm = {313.15};
        AirPathSolver solver = model.at(Map.of());
        AirPathSolution fromRest = solver.solve(warm);
        assertEquals(3, fromRest.states().size());
        // behind half the resistance there is but the state beyond the dip
        AirPathSolution open = model.at(Map.of(), Map.of("vent", 0.5), Map.of()).solve(model.temperatures());
        AirPathSolution come = solver.near(warm, open, () -> false);
        Result<OperatingPoint> rest = Cases.study(dipping(), AIR, Map.of(), warm, Optional.empty(), null);
        Result<OperatingPoint> followed = Cases.study(dipping(), AIR, Map.of(), warm, Optional.of(open), null);
        assertEquals(fromRest.point(), rest.data());
        double largest = 0.05;
        assertEquals(come.point().orElseThrow().banks().getFirst().flow(), followed.data().orElseThrow().banks().getFirst().flow(),
                1e-6 * largest);
        assertNotEquals(rest.data().orElseThrow().banks().getFirst().flow(), followed.data().orElseThrow().banks().getFirst().flow(),
                0.1 * largest);
        assertEquals(fromRest.states(), solver.follow(warm, open, () -> false).states());
        assertTrue(followed.findings().stream().anyMatch(each -> each.message().toString().contains(
                "there are 3 duty points") && each.message().toString().contains("followed as the air grows warmer")));
        // and from its own answer it stays there
        assertEquals(followed.data(), Cases.study(dipping(), AIR, Map.of(), warm, Optional.of(come), null).data());
    }

    /** Two and three movers side by side, which may share evenly or not; from every kind of state. */
    @ParameterizedTest
    @CsvSource({"2, 1e4", "2, 2e4", "2, 2.3e4", "2, 3e4", "2, 5e4", "3, 8e3", "3, 1e4", "3, 1.5e4", "3, 3e4"})
    void whatFollowsIsOneOfTheStatesThatAreFoundFromRest(int across, double quadratic) {
        Design design = dipping().withAirPath(new AirPath(List.of(Bay.of("box")), List.of(
                Cases.square("vent", "outside", "box", quadratic), Cases.bank("fans", "box", "outside", "across", across)),
                Value.Tree.EMPTY));
        AirPathModel model = AirPathModel.of(design, AIR, Cases.KINDS);
        AirPathSolver solver = model.at(Map.of());
        double[] warm = {296.15};
        AirPathSolution fromRest = solver.solve(warm);
        List<AirPathSolution> starts = new ArrayList<>(List.of(fromRest));
        for (double opened : new double[] {0.3, 1, 3}) {
            starts.add(model.at(Map.of(), Map.of("vent", opened), Map.of()).solve(model.temperatures()));
        }
        for (AirPathSolution start : starts) {
            AirPathSolution near = solver.near(warm, start, () -> false);
            AirPathSolution follow = solver.follow(warm, start, () -> false);
            assertEquals(fromRest.states(), follow.states());
            double[] expected = model.columnFlows(near.point().orElseThrow().banks().getFirst());
            double[] found = model.columnFlows(follow.point().orElseThrow().banks().getFirst());
            Arrays.sort(expected);
            Arrays.sort(found);
            assertArrayEquals(expected, found, 2e-6 * across * 0.05);
        }
        assertEquals(fromRest.point(), solver.follow(warm, fromRest, () -> false).point());
    }
}
