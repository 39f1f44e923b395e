package tramontane.thermal.internal.time;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.hipparchus.complex.Complex;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.EigenDecompositionNonSymmetric;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.analysis.Sentence;
import tramontane.model.ControlLaw;
import tramontane.model.Design;
import tramontane.model.Quantities;
import tramontane.model.Value;
import tramontane.physics.units.UnitSystem;
import tramontane.thermal.Designs;
import tramontane.thermal.Drive;
import tramontane.thermal.History;
import tramontane.thermal.LargeDesign;
import tramontane.thermal.LinearPlant;
import tramontane.thermal.Linearization;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalState;
import tramontane.thermal.Transient;

/** The linear system that a control law sees. */
class LinearPlantTest {

    private static final String FAN = "{'format': 1, 'airMovers': [{'id': 'F', 'width': '80 mm', 'height': '80 mm', "
            + "'curves': [{'speed': '3000 rpm', 'flow': '0 0.01 0.02 0.03 0.04 0.05 m³/s', 'pressure': '80 78 70 54 30 0 Pa'}]}],";
    private static final String BOX = FAN + "'airPath': {'bays': ['box'], 'passages': ["
            + "{'id': 'in', 'kind': 'measured resistance', 'from': 'outside', 'to': 'box', 'quadratic': 20000},"
            + "{'id': 'fan', 'kind': 'bank', 'from': 'box', 'to': 'outside', 'mover': 'F', 'across': 2}]},";
    private static final String LUMP = "'heatSources': [{'id': 'lump', 'power': '20 W', 'into': ['%s'], 'chain': [{'kind': 'resistance',"
            + " 'resistance': '2 K/W', 'reference': '%s', 'heatCapacity': '150 J/K'}]}]}";

    /** A law that reads a sensor; what it asks for is of no account. */
    private static ControlLaw reading(String sensor) {
        return new ControlLaw("law", sensor, List.of(), Quantities.of(new double[] {300, 350}), Quantities.of(0.2, 1), Optional.empty(),
                Optional.empty(), Optional.empty(), Value.Tree.EMPTY);
    }

    private static Drive all(ThermalModel model, double setting) {
        Map<String, Double> settings = new HashMap<>();
        model.path().banks().forEach(bank -> settings.put(bank, setting));
        return Drive.STATED.with(settings);
    }

    private static Linearization linearize(ThermalModel model, String sensor, double setting) {
        return model.plant(reading(sensor), all(model, setting), Optional.empty(), () -> false);
    }

    private static LinearPlant plant(ThermalModel model, String sensor, double setting) {
        Linearization linear = linearize(model, sensor, setting);
        assertEquals(List.of(), linear.obstacles());
        return linear.plant().orElseThrow();
    }

    private static void says(Linearization linear, String sentence) {
        assertEquals(Optional.empty(), linear.plant());
        String said = linear.obstacles().getFirst().message().in(UnitSystem.METRIC);
        assertTrue(said.matches(sentence), said);
    }

    @Test
    void aBodyInAirFromOutsideIsAnExponential() {
        LinearPlant plant = plant(Designs.model(Designs.design(BOX, LUMP.formatted("in", "inlet air"))), "lump", 1);
        assertEquals(List.of("the hot side of resistance of lump"), plant.bodies());
        assertEquals(-1 / 300.0, plant.a()[0][0], 1e-15, "2 K/W times 150 J/K");
        assertEquals((20 + 293.15 / 2) / 150, plant.f()[0], 1e-12);
        assertArrayEquals(new double[] {1}, plant.c());
        assertEquals(0, plant.d(), 1e-12);
        assertEquals(333.15, plant.rest()[0], 1e-9);
        assertEquals(333.15, plant.sensed(), 1e-9);
    }

    @Test
    void theAirFollowsTheBodyAtOnce() {
        ThermalModel model = Designs.model(Designs.design(BOX, LUMP.formatted("box", "mean air")));
        Linearization linear = linearize(model, "box", 0.5);
        LinearPlant plant = linear.plant().orElseThrow();
        double carries = linear.state().orElseThrow().point().passages().getFirst().massFlow() * model.path().outside().specificHeat();
        double share = 0.5 / (0.5 + carries);
        assertEquals(share, plant.c()[0], 1e-12, "of the rise of a body in well-mixed air, (1/R) / (1/R + m cp)");
        assertEquals((1 - share) * 293.15, plant.d(), 1e-9);
        assertEquals(-0.5 * (1 - share) / 150, plant.a()[0][0], 1e-15);
        assertEquals(293.15 + 20 / carries, plant.sensed(), 1e-6);
    }

    /** All that a sensor may stand at. */
    private static List<String> sensors(ThermalModel model, ThermalState state) {
        List<String> all = new ArrayList<>(List.of("outside"));
        model.path().bays().forEach(bay -> all.add(bay.id()));
        model.path().passages().forEach(passage -> all.add(passage.id()));
        state.parts().forEach(part -> all.add(part.source()));
        return all.stream().filter(sensor -> model.sensed(reading(sensor), state).isPresent()).toList();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("tramontane.thermal.SteadyEndTest#designs")
    void restIsTheSteadyState(String name, String json) {
        ThermalModel model = Designs.model(Designs.design(json));
        for (double setting : new double[] {0.3, 0.7, 1}) {
            ThermalState state = model.at(all(model, setting), Optional.empty(), () -> false).state().orElseThrow();
            double[] steady = Bodies.of(model).at(state, Double.NaN);
            for (String sensor : sensors(model, state)) {
                LinearPlant plant = plant(model, sensor, setting);
                assertArrayEquals(steady, plant.rest(), 1e-6, name + " at " + setting);
                double read = model.sensed(reading(sensor), state).orElseThrow();
                assertEquals(read, plant.sensed(), 1e-6, sensor);
                assertEquals(read, plant.reads(plant.rest()), 1e-6, sensor);
                double[] rates = plant.rates(plant.rest());
                for (int i = 0; i < rates.length; i++) {
                    assertEquals(0, rates[i], 1e-9 * Math.abs(plant.a()[i][i]), plant.bodies().get(i) + ": off by 1e-9 K");
                }
                dies(plant);
            }
        }
    }

    /** Temperatures later, by exp(A t) of a small step doubled: N. J. Higham, Functions of Matrices, SIAM 2008, sec. 10.3. */
    private static double[] after(LinearPlant plant, double[] start, double time) {
        int n = plant.size();
        double[][] step = plant.a();
        double scale = time / (1 << 24);
        for (double[] row : step) {
            for (int j = 0; j < n; j++) {
                row[j] *= scale;
            }
        }
        Array2DRowRealMatrix small = new Array2DRowRealMatrix(step, false);
        // exp(x) - 1 of the small step to second order, doubled by (1 + e)² - 1 = 2 e + e²
        RealMatrix e = small.add(small.multiply(small).scalarMultiply(0.5));
        for (int k = 0; k < 24; k++) {
            e = e.scalarMultiply(2).add(e.multiply(e));
        }
        double[] left = new ArrayRealVector(start).subtract(new ArrayRealVector(plant.rest())).toArray();
        double[] moved = e.operate(left);
        double[] rest = plant.rest();
        for (int i = 0; i < n; i++) {
            moved[i] += left[i] + rest[i];
        }
        return moved;
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("tramontane.thermal.SteadyEndTest#designs")
    void aStepIsThatOfTheSimulation(String name, String json) {
        String fixed = json.contains("'conditions'") ? json.replace("'id': 'failed',", "'id': 'failed', 'speed': '60 %',")
                : json.replace("'heatSources'", "'conditions': [{'id': 'fixed', 'speed': '60 %'}], 'heatSources'");
        ThermalModel model = Designs.model(Designs.design(fixed));
        // where air moves by its own warmth, flows and films on the way are not those at rest
        boolean natural = name.equals("rising air alone") || name.equals("a closed box with walls");
        for (double duration : new double[] {60, 300, 1500}) {
            Transient outcome = Transient.of(List.of(new Transient.Step(0, model, Sentence.of("start"))),
                    new Transient.At(Optional.of(308.15)),
                    duration, () -> false);
            History history = outcome.history().orElseThrow();
            for (History.Course part : history.parts()) {
                LinearPlant plant = plant(model, part.source(), 0.6);
                double[] start = new double[plant.size()];
                Arrays.fill(start, 308.15);
                assertEquals(part.end(), plant.reads(after(plant, start, duration)), natural ? 0.05 * Math.abs(plant.sensed() - 308.15)
                        : 0.03,
                        part.source() + " after " + duration + " s");
            }
        }
    }

    private static Design random(int seed) {
        Random random = new Random(seed);
        return LargeDesign.of(1 + random.nextInt(3), 2 + random.nextInt(3), 2 + random.nextInt(12), false, random.nextBoolean(), seed);
    }

    @Property(tries = 60)
    void allDies(@ForAll @IntRange(min = 0, max = 1_000_000) int seed, @ForAll @DoubleRange(min = 0.2, max = 1) double setting) {
        ThermalModel model = Designs.model(random(seed));
        LinearPlant plant = plant(model, "outside", setting);
        assertTrue(plant.size() > 0);
        dies(plant);
        assertEquals(model.condition().temperature(), plant.sensed(), 0);
    }

    private static void dies(LinearPlant plant) {
        for (Complex value : new EigenDecompositionNonSymmetric(new Array2DRowRealMatrix(plant.a())).getEigenvalues()) {
            assertTrue(value.getRealPart() < 0, value + " 1/s");
        }
    }

    @Property(tries = 60)
    void theSlopeAtRestIsThatOfTheReadings(@ForAll @IntRange(min = 0, max = 1_000_000) int seed,
            @ForAll @DoubleRange(min = 0.3, max = 0.95) double setting) {
        ThermalModel model = Designs.model(random(seed));
        double h = 3e-4;
        ThermalState rest = model.at(all(model, setting), Optional.empty(), () -> false).state().orElseThrow();
        List<String> sensors = sensors(model, rest);
        String sensor = sensors.get(Math.floorMod(seed, sensors.size()));
        List<Linearization> three = model.plants(reading(sensor), List.of(setting - h, setting, setting + h), rest, () -> false);
        LinearPlant less = three.get(0).plant().orElseThrow();
        LinearPlant at = three.get(1).plant().orElseThrow();
        LinearPlant more = three.get(2).plant().orElseThrow();
        double[] t = at.rest();
        double[] g = new ArrayRealVector(more.rates(t)).subtract(new ArrayRealVector(less.rates(t))).mapDivide(2 * h).toArray();
        double e = (more.reads(t) - less.reads(t)) / (2 * h);
        double[] moved = new LUDecomposition(new Array2DRowRealMatrix(at.a()), 0).getSolver().solve(new ArrayRealVector(g)).toArray();
        double slope = e - new ArrayRealVector(at.c()).dotProduct(new ArrayRealVector(moved));
        OptionalDouble low = model.sensed(reading(sensor), three.get(0).state().orElseThrow());
        OptionalDouble high = model.sensed(reading(sensor), three.get(2).state().orElseThrow());
        double difference = (high.orElseThrow() - low.orElseThrow()) / (2 * h);
        assertEquals(difference, slope, 1e-5 * Math.max(1, Math.abs(difference)), sensor + ": off by the square of the step, 1e-7");
    }

    @Test
    void withoutBodiesTheSensorFollowsTheSettingsAtOnce() {
        ThermalModel model = Designs.model(Designs.design(BOX, LUMP.formatted("box", "mean air").replace(", 'heatCapacity': '150 J/K'",
                "")));
        Linearization linear = linearize(model, "box", 0.5);
        LinearPlant plant = linear.plant().orElseThrow();
        assertEquals(0, plant.size());
        assertEquals(model.sensed(reading("box"), linear.state().orElseThrow()).orElseThrow(), plant.d(), 1e-9);
        assertEquals(plant.d(), plant.sensed(), 0);
    }

    @Test
    void whereFansStandNothingIsThrown() {
        ThermalModel closed = Designs.model(Designs.design(BOX, LUMP.formatted("box", "mean air")));
        says(linearize(closed, "lump", 0), "bay box gets heat that neither air nor walls carry off: .*");
        String walls = BOX.replace("'box'],", "{'id': 'box', 'sections': {'enclosure': {'walls': [{'area': '1 m²'}]}}}],");
        assertEquals(1, plant(Designs.model(Designs.design(walls, LUMP.formatted("box", "mean air"))), "lump", 0).size());
        String fins = "'heatSources': [{'id': 'cpu', 'power': '%s W', 'into': ['box'], 'chain': [{'kind': 'plate fins', 'fins': 10, "
                + "'finThickness': '1 mm', 'width': '60 mm', 'height': '20 mm', 'length': '60 mm', "
                + "'flowArea': '20 cm²', 'heatCapacity': '90 J/K'}]}]}";
        ThermalModel sink = Designs.model(Designs.design(walls, fins.formatted("5")));
        says(linearize(sink, "box", 0),
                "at these speed settings nothing carries heat off the hot side of plate fins of cpu, so it comes to rest nowhere");
        says(linearize(sink, "cpu", 0),
                "control law law reads cpu, whose temperature cannot be told: its link plate fins carries no heat, .*");
        assertEquals(1, plant(sink, "cpu", 0.5).size());
        ThermalModel idle = Designs.model(Designs.design(walls, fins.formatted("0")));
        says(linearize(idle, "box", 0), "at these speed settings nothing carries heat off .*");
    }

    @Test
    void aSensorNeedsATemperature() {
        Design design = Designs.design(BOX, LUMP.formatted("box", "mean air").replace("'kind': 'resistance'", "'kind': 'unknown'"));
        ThermalModel model = Designs.model(design);
        says(linearize(model, "lump", 1),
                "control law law reads lump, whose temperature cannot be told: its chain has a link of kind unknown, .*");
        says(linearize(model, "nowhere", 1), "control law law reads nowhere, whose temperature cannot be told");
        assertEquals(0, plant(model, "box", 1).size(), "its heat goes into the air at once");
    }

    @Test
    void whatCannotBeSolvedHasNoPlant() {
        ThermalModel none = Designs.model(Designs.design("{'format': 1}"));
        assertEquals(none.obstacles(), linearize(none, "outside", 1).obstacles());
        ThermalModel model = Designs.model(Designs.design(BOX, LUMP.formatted("box", "mean air")));
        Linearization stopped = model.plant(reading("box"), Drive.STATED, Optional.empty(), () -> true);
        assertEquals(Optional.empty(), stopped.plant());
        assertEquals(List.of(), stopped.obstacles());
    }

    private static final String TWO = FAN + "'airPath': {'bays': ['box', 'side'], 'passages': ["
            + "{'id': 'in', 'kind': 'measured resistance', 'from': 'outside', 'to': 'box', 'quadratic': 20000},"
            + "{'id': 'aside', 'kind': 'measured resistance', 'from': 'outside', 'to': 'side', 'quadratic': 20000},"
            + "{'id': 'fan', 'kind': 'bank', 'from': 'box', 'to': 'outside', 'mover': 'F', 'across': 2},"
            + "{'id': 'second', 'kind': 'bank', 'from': 'side', 'to': 'outside', 'mover': 'F'}]},"
            + "'controlLaws': [{'id': 'law', 'sensor': 'lump', 'banks': ['fan'], 'temperature': '30 90 °C', 'speed': '20 100 %'},"
            + "{'id': 'other', 'sensor': 'box', 'temperature': '0 100 °C', 'speed': '40 60 %'}],";

    @Test
    void otherLawsAreHeldWhereTheyAre() {
        Design design = Designs.design(TWO, LUMP.formatted("box", "mean air"));
        ThermalModel model = Designs.model(design);
        ThermalState rest = model.settle(() -> false).state().orElseThrow();
        double other = 0.4 + 0.2 * (rest.temperatures().getFirst() - 273.15) / 100;
        List<Linearization> plants = model.plants(design.controlLaws().getFirst(), List.of(0.2, 0.6, 1.0), rest, () -> false);
        assertEquals(3, plants.size());
        for (int i = 0; i < 3; i++) {
            assertEquals(other, plants.get(i).drive().settings().get("second"), 1e-8);
            assertEquals(List.of(other, 0.6, 1.0).get(i), plants.get(i).drive().settings().get("fan"), 1e-8,
                    "of two laws the one that asks for most");
            Linearization cold = model.plant(design.controlLaws().getFirst(), plants.get(i).drive(), Optional.empty(), () -> false);
            assertEquals(cold.plant().orElseThrow().sensed(), plants.get(i).plant().orElseThrow().sensed(), 1e-7,
                    "from wherever it starts");
        }
        double own = rest.drive().settings().get("fan");
        assertEquals(rest.part("lump").orElseThrow().junction().orElseThrow(), model.plants(design.controlLaws().getFirst(), List.of(own),
                rest,
                () -> false).getFirst().plant().orElseThrow().sensed(), 1e-6);
    }

    @Test
    void aLawThatIsIdleMovesItsBanksToo() {
        Design design = Designs.design(TWO, "'conditions': [{'id': 'c', 'speed': '50 %'}],", LUMP.formatted("box", "mean air"));
        ThermalModel model = Designs.model(design);
        ThermalState rest = model.settle(() -> false).state().orElseThrow();
        assertEquals(Map.of("fan", 0.2), model.drive(design.controlLaws().getFirst(), rest, 0.2).settings());
        LinearPlant half = model.plants(design.controlLaws().getFirst(), List.of(0.5), rest, () -> false).getFirst().plant().orElseThrow();
        assertEquals(rest.part("lump").orElseThrow().junction().orElseThrow(), half.sensed(), 1e-6);
    }

    @Test
    void arraysAreCopies() {
        LinearPlant plant = plant(Designs.model(Designs.design(BOX, LUMP.formatted("in", "inlet air"))), "lump", 1);
        plant.a()[0][0] = 7;
        plant.f()[0] = 7;
        plant.c()[0] = 7;
        plant.rest()[0] = 7;
        LinearPlant again = plant(Designs.model(Designs.design(BOX, LUMP.formatted("in", "inlet air"))), "lump", 1);
        assertEquals(again, plant, "same input, same bits, and nothing that was given was changed");
        assertEquals(again.hashCode(), plant.hashCode());
        assertThrows(IllegalArgumentException.class, () -> new LinearPlant(List.of("one"), new double[1][2], new double[1], new double[1],
                0,
                new double[1], 0));
    }
}
