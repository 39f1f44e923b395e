package tramontane.thermal.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.analysis.Amount;
import tramontane.analysis.Analysis;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Result;
import tramontane.analysis.SpeedLaw;
import tramontane.analysis.Table;
import tramontane.analysis.Trace;
import tramontane.model.Design;
import tramontane.model.Noun;
import tramontane.thermal.Budget;
import tramontane.thermal.Designs;
import tramontane.thermal.RandomDesigns;
import tramontane.thermal.ThermalModels;
import tramontane.thermal.internal.time.TimeAnalysis;

/** The analyses as the engine runs them: figures, findings, budget, and where figures come from. */
class AnalysesTest {

    private static final String LAW = "'controlLaws': [{'id': 'quiet', 'sensor': 'box', 'temperature': '%s °C', 'speed': [%s]%s}]";

    private static Design box(String sources, String more) {
        return EdgesTest.design("'box'", EdgesTest.square("in", "outside", "box", 20000) + "," + EdgesTest.bank("fan", "box", "outside", ""),
                sources, more.isEmpty() ? "" : ", " + more);
    }

    private static String part(String id, double watts, String chain, String more) {
        return "{'id': '" + id + "', 'power': " + watts + ", 'into': ['box'], 'chain': [" + chain + "]" + more + "}";
    }

    private static String cpu(double watts, String more) {
        return part("cpu", watts, "{'kind': 'junction to case', 'resistance': 0.1}, {'kind': 'interface', 'contactResistance': 0.00002,"
                + "'area': '10 cm²'}, {'kind': 'resistance', 'resistance': 0.2}", more);
    }

    private static Design nooks(String sources) {
        return EdgesTest.design("'box', 'nook', 'cave'", EdgesTest.square("in", "outside", "box", 20000) + "," + EdgesTest.square("slit", "box", "nook", 1e6)
                + "," + EdgesTest.square("slot", "box", "cave", 1e6) + "," + EdgesTest.bank("fan", "box", "outside", ""), sources, "");
    }

    private static Design walled(String sources, String conditions) {
        return EdgesTest.design("{'id': 'box', 'sections': {'enclosure': {'walls': [{'area': '1 m²', 'sunlit': 0.5}]}}}",
                EdgesTest.square("in", "outside", "box", 20000) + "," + EdgesTest.bank("fan", "box", "outside", ""), sources,
                ", 'conditions': [" + conditions + "]");
    }

    private static Design silent() {
        return Designs.design("{'format': 1,", EdgesTest.MOVER.replace(", 'power': '6 6.5 7 7.2 7 6.4 W'", ""),
                "'airPath': {'bays': ['box'], 'passages': [" + EdgesTest.square("in", "outside", "box", 20000) + ","
                        + EdgesTest.bank("fan", "box", "outside", "") + "]}, 'heatSources': [" + cpu(150, "") + "]}");
    }

    private record Said(Design design, String sentence) {
    }

    private static Named<Said> said(String name, Design design, String sentence) {
        return Named.of(name, new Said(design, sentence));
    }

    static Stream<Named<Said>> sentences() {
        return Stream.of(
                said("a source nowhere", box(cpu(150, "") + ", {'id': 'psu', 'power': 5}", ""), "not judged: heat source psu goes nowhere;"
                        + " without a place for all heat no temperature can be told | say into which bays or passages the heat goes"),
                said("sources nowhere", box("{'id': 'cpu', 'power': 9, 'limit': '80 °C'}, {'id': 'psu', 'power': 5}", ""), "not judged: heat sources cpu"
                        + " and psu go nowhere; without a place for all heat no temperature can be told | say into which bays or passages the heat goes"),
                said("a limit below outside", box(cpu(150, ", 'limit': '15 °C'"), ""), "caution: the limit of cpu, 15.0 °C, lies below the air outside,"
                        + " 20.0 °C: air alone cannot cool below outside | cool it by other means, or keep the equipment from such air"),
                said("no speed would do", box(cpu(150, ", 'limit': '60 °C'"), ""), "caution: no speed of the movers would do: even at 8.00 times"
                        + " theirs a part is above its limit | lower the resistance of its chain, or the heat"),
                said("any speed would do", box(cpu(1, ", 'limit': '60 °C'"), ""), "note: every part would stay below its limit even with movers at"
                        + " 2.00 % of their speed"),
                said("below its limit", box(cpu(150, ", 'limit': '85 °C'"), ""), "note: nearest to its limit is cpu, 13.8 K below it, with 71.2 °C | what"
                        + " would cool it most: 10 % less resistance from surface to air, by 3.00 K; 10 % less resistance from junction to case, by"
                        + " 1.50 K; 10 % less resistance of the interface, by 0.300 K; movers 10 % faster, by 0.289 K"),
                said("above its limit", box(part("cpu", 150, "{'kind': 'resistance', 'resistance': 0.2}", ", 'limit': '50 °C'"), ""), "note: farthest above"
                        + " its limit is cpu, 3.15 K above it, with 53.2 °C | what would cool it most: 10 % less resistance from surface to air, by"
                        + " 3.00 K; movers 10 % faster, by 0.289 K"),
                said("no limit", box(part("cpu", 150, "{'kind': 'resistance', 'resistance': 0.2}", ""), ""), "note: the hottest part is cpu with 53.2 °C"
                        + " | what would cool it most: 10 % less resistance from surface to air, by 3.00 K; movers 10 % faster, by 0.289 K"),
                said("flow needed", box(cpu(150, ", 'limit': '85 °C'"), ""), "note: the limits need 26.2 m³/h, which 19.3 % of the present speed gives; a"
                        + " first estimate by the heat of the sources and the 65.0 K from outside to the limit of cpu is 6.84 m³/h: it leaves out the"
                        + " 48.0 K from the air to its junction"),
                said("a bay without bound", nooks("{'id': 'cpu', 'power': 40, 'into': ['nook']}"), "not met: bay nook gets heat that neither air nor walls"
                        + " carry off: the air there would be more than 400 K warmer than outside | give it a way in and a way out, or walls in its enclosure"),
                said("bays without bound", nooks("{'id': 'cpu', 'power': 40, 'into': ['nook']}, {'id': 'psu', 'power': 4, 'into': ['cave']}"), "not met:"
                        + " bays nook and cave get heat that neither air nor walls carry off: the air there would be more than 400 K warmer than outside | give each of"
                        + " them a way in and a way out, or walls in its enclosure"),
                said("a bay with hardly any air", EdgesTest.design("'box', 'nook'", EdgesTest.square("in", "outside", "box", 20000) + ","
                        + EdgesTest.bank("fan", "box", "outside", "") + "," + EdgesTest.square("slit", "outside", "nook", 1e12) + ","
                        + EdgesTest.square("slot", "nook", "box", 1e12), "{'id': 'cpu', 'power': 40, 'into': ['nook'], 'limit': '80 °C'}", ""), "not met: bay nook"
                        + " gets heat that neither air nor walls carry off: the air there would be more than 400 K warmer than outside | give it a way in"
                        + " and a way out, or walls in its enclosure"),
                said("no chain", box(part("led", 10, "", ", 'limit': '60 °C'"), ""), "note: led has no chain: its limit is judged by the air at it | give the"
                        + " thermal resistances from junction to air"),
                said("no chains", box(part("led", 10, "", ", 'limit': '60 °C'") + "," + part("fuse", 1, "", ", 'limit': '60 °C'") + ","
                        + part("coil", 1, "", ", 'limit': '60 °C'"), ""), "note: led, fuse and coil have no chain: their limits are judged by the air at"
                        + " them | give the thermal resistances from junction to air"),
                said("no velocity", box(part("cpu", 150, "{'kind': 'measured sink', 'velocity': '1 2 m/s', 'resistance': '0.5 0.4 K/W'}", ""), ""),
                        "not judged: the temperature of cpu cannot be told: its link measured sink needs the velocity of the air at box, which is not known;"
                                + " give the link a flowArea, or the bay an enclosure with one"),
                said("an unknown kind", box(part("cpu", 150, "{'kind': 'magic'}", ""), ""), "not judged: the temperature of cpu cannot be told: its chain has a"
                        + " link of kind magic, which nothing loaded knows"),
                said("movers without power", silent(), "note: the heat of the movers of fan is left out, as their curves state no power | give their power"),
                said("a hot surface", box(part("cpu", 150, "{'kind': 'resistance', 'resistance': 0.4}", ""), ""), "note: the surface of cpu comes to 83.2 °C:"
                        + " touching it may burn | guard or mark it where hands reach; the safety standard of the equipment decides [common"
                        + " practice after ISO 13732-1; the threshold is from memory]"),
                said("no temperature any more", box(part("cpu", 150, "{'kind': 'resistance', 'resistance': 10}", "") + ","
                        + part("gpu", 140, "{'kind': 'resistance', 'resistance': 10}", ""), ""), "caution: the temperature of cpu, 1526 °C, tells no"
                        + " more than that its heat hardly leaves it: nothing is whole at that; so it is with gpu | give the air at it a way; where it"
                        + " stands in still air on purpose, state its resistance there with a link of kind resistance or surface, since sinks count"
                        + " without natural convection"),
                said("dew on a cold sheet", walled(part("cpu", 0, "", ""), "{'id': 'c', 'humidity': 1, 'speed': 0}"), "caution: the inner face of a wall of bay"
                        + " box, 20.0 °C, is no warmer than the dew point of the air, 20.0 °C: water settles on it | keep it warm, or the air dry"),
                said("dew on a part", box(part("cpu", 0, "{'kind': 'resistance', 'resistance': 0.4}", ""), "'conditions': [{'id': 'c', 'humidity': 1,"
                        + " 'speed': 0}]"), "caution: the surface of cpu, 20.0 °C, is no warmer than the dew point of the air, 20.0 °C: water settles on it"
                        + " | keep it warm, or the air dry"),
                said("a law at rest", box(cpu(150, ""), String.format(LAW, "20 40", "0.2, 1", "") + ", 'conditions': [{'id': 'c', 'speed': 0.7}]"), "note:"
                        + " control laws do not act here, as the condition states a speed setting"),
                said("tolerances", box("{'id': 'cpu', 'power': 150, 'tolerance': '10 %', 'into': ['box'], 'chain': [{'kind': 'resistance', 'resistance': 0.4,"
                        + " 'tolerance': '20 %'}]}", ""), "note: the bounds of temperatures come from the tolerances of resistance of cpu (20.0 %, up to"
                        + " 12.0 K) and heat of cpu (10.0 %, up to 6.32 K) [bounds add up as if each tolerance were at its worst at once; samples check them]"));
    }

    @ParameterizedTest
    @MethodSource("sentences")
    void theSentenceIsSaid(Said said) {
        List<String> all = Runs.run(said.design()).sentences();
        assertTrue(all.contains(said.sentence()), () -> "expected\n" + said.sentence() + "\namong\n" + String.join("\n", all));
    }

    @Test
    void aHuntingLawIsSaidToHuntInsteadOfFlows() {
        Design design = box(cpu(150, ", 'limit': '85 °C'"), String.format(LAW, "26 27", "0.2, 1", ", 'hysteresis': '1 K'"));
        Runs.Told told = Runs.run(design);
        assertTrue(told.thermal().isEmpty());
        assertEquals(List.of("not judged: control law quiet hunts: it goes to and fro between 20.0 % speed with box at 36.3 °C and 28.7 m³/h through fan"
                + " (cpu 84.3 °C), and 100 % speed with box at 23.2 °C and 143 m³/h through fan (cpu 71.2 °C) | draw the rise of the law over more"
                + " kelvin, or take a hysteresis wider than what a switch changes at the sensor"), Runs.sentences(told.flow()));
    }

    /** Every bay and source has its figures; limits are judged by the worse bound. */
    @Test
    void figuresAreThoseOfTheState() {
        Design design = box("{'id': 'cpu', 'power': 150, 'tolerance': '10 %', 'into': ['box'], 'limit': '120 °C', 'chain': [{'kind': 'junction to case',"
                + "'resistance': 0.1}, {'kind': 'resistance', 'resistance': 0.4, 'tolerance': '20 %'}]}, {'id': 'psu', 'power': 30, 'into': ['box']}",
                String.format(LAW, "20 40", "0.2, 1", ""));
        Runs.Told told = Runs.run(design);
        double box = told.flow().data().orElseThrow().bay("box").orElseThrow().temperature();
        assertEquals(box, told.figure("thermal.air.temperature", "box"), 1e-8);
        assertEquals(box + 75, told.figure("thermal.junction.temperature", "cpu"), 1e-8);
        assertEquals(393.15 - box - 75, told.figure("thermal.junction.margin", "cpu"), 1e-8);
        assertFalse(told.has("thermal.junction.margin", "psu"));
        assertEquals(15, told.figure("thermal.step.package", "cpu"), 1e-9);
        assertEquals(60, told.figure("thermal.step.surface", "cpu"), 1e-9);
        assertEquals(0, told.figure("thermal.step.arriving", "cpu"), 1e-9);
        assertEquals(box - 293.15, told.figure("thermal.step.along", "psu"), 1e-8);
        assertEquals(0.2 + 0.8 * (box - 293.15) / 20, told.figure("thermal.control.setting", "fan"), 1e-8);
        assertEquals(told.figure("thermal.control.setting", "fan"), told.flow().data().orElseThrow().banks().getFirst().setting(), 1e-12);
        double movers = told.flow().data().orElseThrow().banks().getFirst().power().orElseThrow();
        assertEquals(180 + movers, told.figure("thermal.heat.total", ""), 1e-8);
        assertEquals(movers, told.figure("thermal.heat.movers", ""), 1e-8);
        assertTrue(told.figure("thermal.exhaust.temperature", "") > box);
        assertFalse(told.has("thermal.heat.walls", ""));
        Figure junction = told.temperatures().figures().getFirst();
        assertEquals("thermal.junction.temperature", junction.kind().id());
        // 20 % of 60 K and 10 % of all above the air at least
        assertTrue(junction.upper().orElseThrow() - junction.value() >= 12 + 7.5 - 1e-9);
        Figure margin = told.temperatures().figures().get(1);
        assertEquals(393.15 - junction.upper().orElseThrow(), margin.lower().orElseThrow(), 1e-9);
        assertEquals(393.15 - junction.lower().orElseThrow(), margin.upper().orElseThrow(), 1e-9);
    }

    @Property(tries = 25)
    void figuresAreDeclaredAndBoundsAreInOrder(@ForAll int seed) {
        Runs.Told told = Runs.run(RandomDesigns.wild(seed));
        if (told.thermal().isEmpty() || told.temperatures().data().isEmpty()) {
            return;
        }
        Set<FigureKind> declared = Set.copyOf(Figures.ALL);
        List<String> seen = new ArrayList<>();
        for (Figure figure : told.temperatures().figures()) {
            assertTrue(declared.contains(figure.kind()), figure.kind().id());
            assertTrue(figure.lower().orElse(figure.value()) <= figure.value() && figure.value() <= figure.upper().orElse(figure.value()));
            String name = figure.kind().id() + " at " + figure.place();
            assertFalse(seen.contains(name), "twice: " + name);
            seen.add(name);
        }
    }

    private static Stream<Design> traced() {
        return Stream.of(box(cpu(150, ", 'limit': '85 °C'"), ""), box(cpu(150, ""), String.format(LAW, "20 40", "0.2, 1", "")),
                walled(cpu(10, ", 'limit': '60 °C'"), "{'id': 'c', 'sections': {'sun': {'irradiance': 1000}}}"), silent(),
                EdgesTest.design("'box', 'rear'", EdgesTest.square("in", "outside", "box", 20000) + "," + EdgesTest.square("cards", "box", "rear", 5000)
                        + "," + EdgesTest.bank("fans", "rear", "outside", ", 'across': 2"), "{'id': 'a', 'power': 50, 'into': ['cards'], 'row': 1,"
                        + "'chain': [{'kind': 'surface', 'coefficient': 30, 'area': '100 cm²'}]}, {'id': 'b', 'power': 50, 'into': [{'place': 'cards',"
                        + "'share': 0.5}, 'rear'], 'row': 2, 'limit': '150 °C', 'chain': [{'kind': 'resistance', 'resistance': 0.5}]}",
                        ", 'conditions': [{'id': 'c', 'failed': [{'bank': 'fans', 'position': 2, 'state': 'locked'}]}]"),
                RandomDesigns.wild(3), RandomDesigns.wild(4), RandomDesigns.wild(5));
    }

    @ParameterizedTest
    @MethodSource("traced")
    void everyFigureHasAStepOfItsValue(Design design) {
        Runs.Told told = Runs.run(design);
        for (Figure figure : told.temperatures().figures()) {
            List<Trace.Step> steps = told.steps().stream().filter(step -> step.figure().equals(figure.kind().id())
                    && step.place().equals(figure.place())).toList();
            assertFalse(steps.isEmpty(), "no step of " + figure.kind().id() + " at " + figure.place());
            steps.forEach(step -> assertEquals(figure.value(), step.value(), 1e-12 * Math.abs(figure.value()), step.figure()));
        }
    }

    /** What looks like the id of a figure is one that this or the flow analysis says how it came about. */
    @ParameterizedTest
    @MethodSource("traced")
    void whatStepsComeFromIsThere(Design design) {
        Runs.Told told = Runs.run(design);
        Set<String> told2 = Stream.concat(told.flowSteps().stream(), told.steps().stream()).map(Trace.Step::figure).collect(Collectors.toSet());
        for (Trace.Step step : told.steps()) {
            for (Trace.Term term : step.inputs()) {
                assertTrue(Double.isFinite(term.value()), step.figure() + " at " + step.place() + ": " + term);
                if (term.from().matches("[a-z]+(\\.[a-zA-Z0-9]+)+")) {
                    assertTrue(told2.contains(term.from()), step.figure() + " at " + step.place() + " takes " + term.name() + " from " + term.from());
                }
            }
        }
    }

    /** The steps of a bay's temperature hold all that is needed to compute it by hand. */
    @ParameterizedTest
    @MethodSource("traced")
    void aBaysTemperatureFollowsFromItsStep(Design design) {
        Runs.Told told = Runs.run(design);
        for (Trace.Step step : told.steps()) {
            if (!step.figure().equals("thermal.air.temperature")) {
                continue;
            }
            double capacity = 0;
            double heat = 0;
            double cp = step.inputs().stream().filter(term -> term.name().startsWith("specific heat")).findFirst().orElseThrow().value();
            for (int i = 0; i < step.inputs().size(); i++) {
                Trace.Term term = step.inputs().get(i);
                if (term.name().startsWith("mass flow")) {
                    capacity += term.value() * cp;
                    heat += term.value() * cp * step.inputs().get(i + 1).value();
                } else if (term.name().startsWith("heat through a wall")) {
                    heat -= term.value();
                } else if (term.name().startsWith("heat of") || term.name().startsWith("electrical")) {
                    heat += term.value();
                }
            }
            assertEquals(heat / capacity, step.value(), 1e-6, "bay " + step.place());
        }
    }

    @Test
    void theBudgetNamesTheWorst() {
        Design design = box(cpu(150, ", 'limit': '85 °C'") + "," + part("led", 5, "", ""), "'conditions': [{'id': 'cool'}, {'id': 'hot',"
                + " 'outsideTemperature': '40 °C'}]");
        Result<Budget> budget = Runs.budget(design);
        List<Budget.Row> rows = budget.data().orElseThrow().rows();
        assertEquals(List.of(new Budget.Row("cpu", "cool", false), new Budget.Row("cpu", "hot", true), new Budget.Row("led", "cool", false),
                new Budget.Row("led", "hot", false)), rows);
        Table table = budget.overviews().getFirst().table();
        for (List<Table.Cell> cells : table.rows()) {
            assertEquals(table.columns().size(), cells.size());
            double outside = ((Amount) cells.get(2)).si();
            double sum = outside;
            int junction = table.columns().stream().map(Table.Column::label).toList().indexOf("junction");
            for (int i = 3; i < junction; i++) {
                sum += cells.get(i) instanceof Amount amount ? amount.si() : 0;
            }
            assertEquals(((Amount) cells.get(junction)).si(), sum, 1e-9, "the steps lead from outside to the junction");
        }
        assertEquals(Map.of("cool", 293.15, "> hot", 313.15), table.rows().stream().limit(2).collect(Collectors.toMap(
                cells -> ((Table.Words) cells.get(1)).text(), cells -> ((Amount) cells.get(2)).si())));
        assertEquals(Optional.empty(), Runs.budget(box("", "")).overviews().stream().findFirst());
    }

    /** What a loaded speed law reads stays where an analysis asks for speeds: of the design itself what it names, elsewhere all. */
    @Test
    void keepsWhatSpeedLawsRead() {
        SpeedLaw law = new SpeedLaw() {
            @Override
            public Optional<Double> speed(Supply supply) {
                return Optional.empty();
            }

            @Override
            public Set<String> sections() {
                return Set.of("rail");
            }
        };
        String rail = "'sections': {'rail': {'voltage': 12}, 'other': {}}";
        Design design = Designs.design("{'format': 1, " + rail + ", 'airMovers': [{'id': 'F', 'curves': [{'flow': '0 1 m³/s', "
                + "'pressure': '9 0 Pa'}], " + rail + "}], 'airPath': {'bays': ['box'], 'passages': [{'id': 'fan', 'kind': 'bank', "
                + "'from': 'outside', 'to': 'box', 'mover': 'F', " + rail + "}]}, 'conditions': [{'id': 'hot', " + rail + "}],"
                + "'controlLaws': [{'id': 'quiet', 'sensor': 'box', 'temperature': '20 40 °C', 'speed': [0.5, 1], " + rail + "}]}");
        ThermalModels models = new ThermalModels(Designs.PASSAGES, Designs.LINKS, List.of(Map.entry(Map.of(), law)));
        for (Analysis<?> analysis : List.of(new CoupledAnalysis(models), new ThermalAnalysis(models), new TimeAnalysis(models))) {
            Design read = analysis.reads(design);
            assertTrue(read.section("rail").isPresent(), analysis.id());
            assertTrue(read.section("other").isEmpty(), analysis.id());
            for (Noun noun : List.of(read.airMovers().getFirst(), read.airPath().passages().getFirst(), read.conditions().getFirst(),
                    read.controlLaws().getFirst())) {
                assertTrue(noun.section("rail").isPresent() && noun.section("other").isPresent(), analysis.id() + " " + noun);
            }
        }
        assertTrue(new BudgetAnalysis().reads(design).section("rail").isEmpty());
    }
}
