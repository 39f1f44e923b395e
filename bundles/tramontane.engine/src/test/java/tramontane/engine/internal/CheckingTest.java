package tramontane.engine.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Better;
import tramontane.analysis.FigureKind;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.LinkKind;
import tramontane.analysis.LinkLaw;
import tramontane.analysis.PassageKind;
import tramontane.analysis.SectionType;
import tramontane.model.AirPath;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.HeatSource;
import tramontane.model.Link;
import tramontane.model.Noun;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.model.Range;
import tramontane.model.Requirement;
import tramontane.model.Shape;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.physics.units.QuantityKind;

class CheckingTest {

    private static class Honeycomb implements PassageKind {
        @Override
        public Form form() {
            return Form.of("honeycomb", "Round cells.",
                    Field.amount("area", "area", QuantityKind.AREA, Range.POSITIVE, "Open area.").mandatory());
        }

        @Override
        public FlowLaw law(Values values, Setting setting) {
            return (flow, density, viscosity, drop) -> drop.set(flow, 1);
        }

        @Override
        public List<Problem> check(Values values, Setting setting, String place) {
            return List.of(Problem.caution(place + ".area", "looks odd in " + setting.condition().id()));
        }
    }

    private static class Pipe implements LinkKind {

        private final String name;
        private final Step step;

        Pipe(String name, Step step) {
            this.name = name;
            this.step = step;
        }

        @Override
        public Form form() {
            return Form.of(name, "A toy.",
                    Field.amount("resistance", "resistance", QuantityKind.THERMAL_RESISTANCE, Range.POSITIVE, "Its own.")
                            .mandatory(),
                    Field.reference("beside", "beside", Shape.Target.PLACE, "What is near."));
        }

        @Override
        public Step step() {
            return step;
        }

        @Override
        public LinkLaw law(Values values, Setting setting) {
            double resistance = values.si("resistance");
            return (air, beyond) -> resistance;
        }

        @Override
        public List<Problem> check(Values values, Setting setting, String place) {
            return values.si("resistance") < 100 ? List.of() : List.of(Problem.caution(place + ".resistance", "looks odd for "
                    + setting.source().id() + " in " + setting.condition().id() + " with kind " + setting.link().kind()));
        }
    }

    private record Dust(double load) {
    }

    private static final class DustSection implements SectionType<Dust> {
        @Override
        public Form form() {
            return Form.of("dust", "Dust in the air.",
                    Field.amount("load", "load", QuantityKind.DENSITY, Range.NOT_NEGATIVE, "Dust per volume.").mandatory());
        }

        @Override
        public Set<Owner> owners() {
            return Set.of(Owner.CONDITION, Owner.BAY);
        }

        @Override
        public int version() {
            return 2;
        }

        @Override
        public Value.Tree migrate(Value.Tree tree, int version) {
            return tree.get("amount").map(amount -> tree.without("amount").with("load", amount)).orElse(tree);
        }

        @Override
        public Dust decode(Values values) {
            return new Dust(values.si("load"));
        }

        @Override
        public Value.Tree encode(Dust section) {
            return Value.Tree.EMPTY.with("load", Value.Num.of(section.load()));
        }
    }

    /** A section {@code drive} of some owners, with one field. */
    private static class Drive implements SectionType<String> {

        private final String field;
        private final Set<Owner> owners;

        Drive(String field, Owner... owners) {
            this.field = field;
            this.owners = Set.of(owners);
        }

        @Override
        public Form form() {
            return Form.of("drive", "How it is driven.", Field.words(field, field, "A name.").mandatory());
        }

        @Override
        public Set<Owner> owners() {
            return owners;
        }

        @Override
        public String decode(Values values) {
            return values.text(field);
        }

        @Override
        public Value.Tree encode(String section) {
            return Value.Tree.EMPTY.with(field, new Value.Text(section));
        }
    }

    private static Value.Tree drive(String field) {
        return sections("drive", Value.Tree.EMPTY.with(field, new Value.Text("x")));
    }

    private static Design withPassage(String kind, Value.Tree parameters) {
        return Design.EMPTY.withAirPath(new AirPath(List.of(Bay.of("box")),
                List.of(new Passage("inlet", kind, "outside", "box", parameters)), Value.Tree.EMPTY));
    }

    private static Link link(String kind, String resistance) {
        return new Link(kind, Optional.empty(), Optional.empty(),
                Value.Tree.EMPTY.with("resistance", new Value.Text(resistance)));
    }

    private static Design withChains(List<List<Link>> chains) {
        List<HeatSource> sources = new ArrayList<>();
        chains.forEach(chain -> sources.add(new HeatSource("cpu " + sources.size(), Quantity.of(5), Optional.empty(),
                List.of(new HeatSource.Share("outside", Optional.empty())), Optional.empty(), Optional.empty(), chain,
                Optional.empty(), Value.Tree.EMPTY)));
        return Design.EMPTY.withHeatSources(sources);
    }

    private static List<String> check(Bench bench, Design design) {
        return bench.engine.check(design).stream().map(Problem::sentence).toList();
    }

    private static Value.Tree sections(String name, Value value) {
        return Value.Tree.EMPTY.with(Noun.SECTIONS, Value.Tree.EMPTY.with(name, value));
    }

    @Test
    void parametersAreCheckedByTheKindOfThePassage() {
        Bench bench = new Bench(1).load(new Honeycomb());
        assertEquals(List.of("airPath.passages[0].area: looks odd in nominal"), check(bench,
                withPassage("honeycomb", Value.Tree.EMPTY.with("area", new Value.Text("2 cm²")))));
        List<String> bad = check(bench, withPassage("honeycomb", Value.Tree.EMPTY.with("area", new Value.Text("2 m"))));
        // what the kind would say of a passage whose area it never saw helps nobody
        assertEquals(1, bad.size());
        assertTrue(bad.getFirst().startsWith("airPath.passages[0].area: \"2 m\" is not an area"), bad::toString);
    }

    @Test
    void aLimitInAUnitThatDoesNotFitItsFigureIsAnError() {
        FigureKind rise = new FigureKind("toy.rise", "rise", QuantityKind.TEMPERATURE_DIFFERENCE, Better.LOWER, "");
        Bench bench = Bench.with(Toy.giving("toy", Object.class, "").figures(rise));
        Design design = Design.EMPTY.withRequirements(List.of(
                new Requirement("toy.rise", Requirement.WORST, Optional.empty(), Optional.of(Quantity.of(12, "12 K")), List.of(),
                        Value.Tree.EMPTY),
                new Requirement("toy.rise", Requirement.WORST, Optional.empty(), Optional.of(Quantity.of(285.15, "12 °C")),
                        List.of(), Value.Tree.EMPTY)));
        assertEquals(List.of("requirements[1].atMost: \"12 °C\" is a temperature; a difference is written in K"),
                check(bench, design));
    }

    @Test
    void namesThatNothingAnswersToAreErrors() {
        Bench bench = new Bench(1, ModelChecks.OF_THE_MODEL).load(new Honeycomb() {
            @Override
            public Form form() {
                return Form.of("honeycomb", "Round cells.",
                        Field.reference("beside", "beside", Shape.Target.PASSAGE, "Another passage."));
            }

            @Override
            public List<Problem> check(Values values, Setting setting, String place) {
                return List.of();
            }
        });
        Design design = withPassage("honeycomb", Value.Tree.EMPTY.with("beside", new Value.Text("nobody")));
        List<String> errors = bench.engine.check(design.withAirPath(new AirPath(design.airPath().bays(),
                List.of(new Passage("inlet", "honeycomb", "outside", "bax", design.airPath().passages().getFirst().parameters())),
                Value.Tree.EMPTY))).stream().filter(Problem::isError).map(Problem::place).toList();
        assertEquals(List.of("airPath.passages[0].to", "airPath.bays[0]", "airPath.passages[0].beside"), errors);
    }

    @Test
    void anUnknownKindIsKeptAndSaid() {
        List<Problem> problems = new Bench(1).engine.check(withPassage("honeycomb", Value.Tree.EMPTY));
        assertEquals(List.of(Problem.caution("airPath.passages[0].kind", "\"honeycomb\" is no passage kind that anything"
                + " loaded here knows; the design is not judged until a bundle that gives it is loaded")), problems);
    }

    @Test
    void everyLinkOfEveryChainIsCheckedByItsKind() {
        Bench bench = new Bench(1).load(new Pipe("pipe", LinkKind.Step.SPREADING)).load(new Pipe("fins", LinkKind.Step.SURFACE));
        assertEquals(Set.of("fins", "pipe"), bench.engine.linkKinds().keySet());
        assertEquals(List.of(), check(bench, withChains(List.of(List.of(), List.of(link("pipe", "2 K/W"), link("fins", "1 K/W"))))));
        assertEquals(List.of("heatSources[1].chain[1].resistance: looks odd for cpu 1 in nominal with kind fins"),
                check(bench, withChains(List.of(List.of(), List.of(link("pipe", "2 K/W"), link("fins", "200 K/W"))))));
        List<String> bad = check(bench, withChains(List.of(List.of(link("pipe", "2 K"), link("fins", "-1 K/W")))));
        assertEquals(2, bad.size(), bad::toString);
        assertTrue(bad.get(0).startsWith("heatSources[0].chain[0].resistance: \"2 K\" is not a thermal resistance"), bad::toString);
        assertTrue(bad.get(1).startsWith("heatSources[0].chain[1].resistance: \"-1 K/W\" is out of range"), bad::toString);
    }

    @Test
    void aLinkOfAnUnknownKindIsKeptAndSaid() {
        Design design = withChains(List.of(List.of(link("pipes", "1 K/W"), link("", "1 K/W"))));
        assertEquals(List.of(Problem.caution("heatSources[0].chain[0].kind", "\"pipes\" is no link kind that anything loaded"
                + " here knows; the temperature of its heat source is not judged until a bundle that gives it is loaded"
                + " (did you mean \"pipe\"?); loaded are pipe")),
                new Bench(1).load(new Pipe("pipe", LinkKind.Step.SPREADING)).engine.check(design));
    }

    @Test
    void theWayToTheAirIsTheLastOfItsChain() {
        Bench bench = new Bench(1).load(new Pipe("pipe", LinkKind.Step.SPREADING)).load(new Pipe("fins", LinkKind.Step.SURFACE));
        assertEquals(List.of(Problem.error("heatSources[0].chain[0]", "is the way to the air; expected it last in its chain")),
                bench.engine.check(withChains(List.of(List.of(link("fins", "1 K/W"), link("fins", "1 K/W")),
                        List.of(link("pipe", "1 K/W"), link("fins", "1 K/W"))))));
    }

    @Test
    void aChainThatEndsBeforeTheAirIsAnErrorAtItsLastLink() {
        Design design = withChains(List.of(List.of(link("fins", "1 K/W")), List.of(link("pipe", "1 K/W"), link("pipe", "1 K/W"))));
        String place = "heatSources[1].chain[1]";
        String sentence = "ends before the air; expected a last link that goes from a surface to the air";
        Bench bench = new Bench(1).load(new Pipe("pipe", LinkKind.Step.SPREADING)).load(new Pipe("broken", LinkKind.Step.SURFACE) {
            @Override
            public Step step() {
                throw new IllegalStateException("oops");
            }
        });
        assertEquals(List.of(Problem.error(place, sentence)), errors(bench, design));
        bench.load(new Pipe("fins", LinkKind.Step.SURFACE));
        assertEquals(List.of(Problem.error(place, sentence + ", such as fins")), errors(bench, design));
        List.of("pins", "grease", "board", "rods", "skin").forEach(name ->
                bench.load(new Pipe(name, name.equals("grease") ? LinkKind.Step.INTERFACE : LinkKind.Step.SURFACE)));
        assertEquals(List.of(Problem.error(place, sentence + ", such as board, fins, pins, rods or skin")), errors(bench, design));
        bench.load(new Pipe("walls", LinkKind.Step.SURFACE));
        assertEquals(List.of(Problem.error(place, sentence + ", such as board, fins, pins, rods or skin")), errors(bench, design));
        // what an unknown kind leads to cannot be told
        assertEquals(List.of(), errors(bench, withChains(List.of(List.of(link("pipe", "1 K/W"), link("unheard of", "1 K/W"))))));
    }

    private static List<Problem> errors(Bench bench, Design design) {
        return bench.engine.check(design).stream().filter(Problem::isError).toList();
    }

    @Test
    void aNameInALinkThatNothingAnswersToIsAnError() {
        Bench bench = new Bench(1, ModelChecks.OF_THE_MODEL).load(new Pipe("pipe", LinkKind.Step.SURFACE));
        Link lost = new Link("pipe", Optional.empty(), Optional.empty(), link("pipe", "1 K/W").parameters()
                .with("beside", new Value.Text("nobody")));
        assertEquals(List.of("heatSources[0].chain[0].beside: \"nobody\" is not a bay or passage of this design; expected outside"),
                bench.engine.check(withChains(List.of(List.of(lost)))).stream().filter(Problem::isError)
                        .filter(problem -> problem.place().startsWith("heatSources[0].chain")).map(Problem::sentence).toList());
    }

    @Test
    void aLinkKindThatThrowsIsNamedAndTheRestIsChecked() {
        Bench bench = new Bench(1).load(new Pipe("pipe", LinkKind.Step.SPREADING) {
            @Override
            public Step step() {
                throw new IllegalStateException("oops");
            }
        }).load(new Pipe("fins", LinkKind.Step.SURFACE));
        assertEquals(List.of("heatSources[0].chain[0]: could not be checked: link kind pipe of bundle lab.links 1.0.0 failed:"
                + " IllegalStateException: oops", "heatSources[0].chain[1].resistance: looks odd for cpu 0 in nominal with kind fins"),
                check(bench, withChains(List.of(List.of(link("pipe", "1 K/W"), link("fins", "200 K/W"))))));
    }

    @Test
    void aKindThatThrowsIsNamedAndTheRestIsChecked() {
        Bench bench = new Bench(1).load(new Honeycomb() {
            @Override
            public List<Problem> check(Values values, Setting setting, String place) {
                throw new IllegalStateException("oops");
            }
        }).load(new DustSection());
        Design design = withPassage("honeycomb", Value.Tree.EMPTY.with("area", Value.Num.of(1)))
                .withConditions(List.of(withMore(sections("dust", Value.Tree.EMPTY))));
        List<Problem> problems = bench.engine.check(design);
        assertEquals("airPath.passages[0]: could not be checked: passage kind honeycomb of bundle lab.kinds 1.0.0 failed:"
                + " IllegalStateException: oops", problems.getFirst().sentence());
        assertFalse(problems.getFirst().isError());
        assertEquals("conditions[0].sections.dust.load", problems.get(1).place());
    }

    private static Condition withMore(Value.Tree more) {
        Condition base = Condition.named("hot");
        return new Condition(base.id(), base.outsideTemperature(), base.altitude(), base.pressure(), base.humidity(),
                base.heatFactor(), base.heatFactors(), base.clogging(), base.supplyVoltage(), base.supplyFrequency(),
                base.speed(), base.failed(), more);
    }

    @Test
    void sectionsAreCheckedByTheirTypeAndUnknownOnesAreSaid() {
        Bench bench = new Bench(1).load(new DustSection());
        Design design = Bench.conditions("hot");
        assertEquals(List.of("conditions[0].sections.pollen: is a section that nothing loaded here knows; it is kept, but not used",
                "conditions[0].sections.dusk: is a section that nothing loaded here knows; it is kept, but not used"
                        + " (did you mean \"dust\"?)"),
                Stream.of("pollen", "dusk").flatMap(name -> check(bench, design.withConditions(List.of(withMore(
                        sections(name, Value.Tree.EMPTY))))).stream()).toList());
        assertEquals(List.of(), check(bench, design.withConditions(List.of(withMore(sections("dust",
                Value.Tree.EMPTY.with("version", Value.Num.of(2)).with("load", Value.Num.of(1))))))));
        // version 1 called it an amount
        assertEquals(List.of(), check(bench, design.withConditions(List.of(withMore(sections("dust",
                Value.Tree.EMPTY.with("amount", Value.Num.of(1))))))));
        List<String> bad = check(bench, design.withConditions(List.of(withMore(sections("dust", Value.Tree.EMPTY)))));
        assertTrue(bad.getFirst().startsWith("conditions[0].sections.dust.load: is missing"), bad::toString);
    }

    @Test
    void aSectionOfALaterVersionOrInTheWrongPlaceIsKeptAndSaid() {
        Bench bench = new Bench(1).load(new DustSection());
        List<Problem> later = bench.engine.check(Bench.conditions("hot").withConditions(List.of(withMore(sections("dust",
                Value.Tree.EMPTY.with("version", Value.Num.of(3)))))));
        assertEquals(List.of("conditions[0].sections.dust.version: is 3, but what is loaded here knows dust up to version 2"
                + " only; it is kept, but not used"), later.stream().map(Problem::sentence).toList());
        assertFalse(later.getFirst().isError());
        assertEquals(List.of("sections.dust: is kept, but not used here; a section dust belongs to a bay or a condition"),
                check(bench, Design.EMPTY.withMore(sections("dust", Value.Tree.EMPTY))));
    }

    @Test
    void sectionsOfOneNameAreToldApartByWhatCarriesThem() {
        SectionType<?> ofCondition = new Drive("supply", SectionType.Owner.CONDITION);
        SectionType<?> ofDesign = new Drive("levels", SectionType.Owner.DESIGN);
        Bench bench = new Bench(1).load(ofCondition).load(ofDesign);
        assertEquals(List.of(ofCondition, ofDesign), bench.engine.sectionTypes());
        Design sound = Design.EMPTY.withMore(drive("levels")).withConditions(List.of(withMore(drive("supply"))));
        assertEquals(List.of(), check(bench, sound));
        Design swapped = Design.EMPTY.withMore(drive("supply")).withConditions(List.of(withMore(drive("levels"))));
        assertEquals(List.of("sections.drive.levels", "conditions[0].sections.drive.supply"), errors(bench, swapped).stream()
                .map(Problem::place).toList());
    }

    @Test
    void aSectionThatOnlyOthersMayCarryDoesNotBelongThere() {
        Bench bench = new Bench(1).load(new Drive("supply", SectionType.Owner.CONDITION))
                .load(new Drive("levels", SectionType.Owner.MOVER, SectionType.Owner.PASSAGE));
        assertEquals(List.of("sections.drive: is kept, but not used here; a section drive belongs to an air mover or a passage"
                + " or a condition"), check(bench, Design.EMPTY.withMore(drive("levels"))));
    }

    @Test
    void sectionTypesThatShareNameAndOwnerClashAndTheHigherRankedCounts() {
        SectionType<?> low = new Drive("low", SectionType.Owner.CONDITION, SectionType.Owner.BAY);
        SectionType<?> high = new Drive("high", SectionType.Owner.CONDITION);
        Bench bench = new Bench(1).load(low, 0, "lab.low 1.0.0").load(high, 5, "lab.high 1.0.0");
        String clash = "section drive of a condition is given by bundles lab.high 1.0.0 and lab.low 1.0.0; that of"
                + " lab.high 1.0.0 is used";
        assertEquals(List.of(clash), check(bench, Design.EMPTY.withConditions(List.of(withMore(drive("high"))))));
        // where they do not clash the lower one still counts
        assertEquals(List.of(high, low), bench.engine.sectionTypes());
        Design bay = Design.EMPTY.withAirPath(new AirPath(List.of(new Bay("box", Bay.of("box").height(), drive("low"))),
                List.of(), Value.Tree.EMPTY));
        assertEquals(List.of(clash), check(bench, bay));
        assertEquals(List.of(high), new Bench(1).load(high, 5, "lab.high 1.0.0")
                .load(new Drive("low", SectionType.Owner.CONDITION), 0, "lab.low 1.0.0").engine.sectionTypes());
    }

    @Test
    void aSectionTypeThatThrowsIsNamedAndTheOthersAreUsed() {
        Bench bench = new Bench(1).load(new Drive("broken") {
            @Override
            public Set<Owner> owners() {
                throw new IllegalStateException("oops");
            }
        }, 5, "lab.broken 1.0.0").load(new Drive("supply", SectionType.Owner.CONDITION));
        assertEquals(List.of("a section type of bundle lab.broken 1.0.0 failed: IllegalStateException: oops"),
                check(bench, Design.EMPTY.withConditions(List.of(withMore(drive("supply"))))));
        assertEquals(1, bench.engine.sectionTypes().size());
    }

    @Test
    void aSectionMayBeCheckedAgainstTheRestOfTheDesign() {
        Bench bench = new Bench(1).load(new Drive("supply", SectionType.Owner.CONDITION) {
            @Override
            public List<Problem> check(Values values, Design design, String place) {
                return design.section("drive").isPresent() ? List.of()
                        : List.of(Problem.error(place + ".supply", "names what the design has not: " + values.text("supply")));
            }
        }).load(new Drive("levels", SectionType.Owner.DESIGN));
        Design without = Design.EMPTY.withConditions(List.of(withMore(drive("supply"))));
        assertEquals(List.of("conditions[0].sections.drive.supply: names what the design has not: x"), check(bench, without));
        assertEquals(List.of(), check(bench, without.withMore(drive("levels"))));
    }

    @Test
    void aSectionTypeThatLooksAtItsOwnValuesAloneIsAskedToo() {
        Bench bench = new Bench(1).load(new Drive("supply", SectionType.Owner.CONDITION) {
            @Override
            public List<Problem> check(Values values, String place) {
                return List.of(Problem.caution(place, "looks odd"));
            }
        });
        assertEquals(List.of("conditions[0].sections.drive: looks odd"),
                check(bench, Design.EMPTY.withConditions(List.of(withMore(drive("supply"))))));
    }

    @Test
    void failedMoversThatAreNotThereAreErrors() {
        Bench bench = new Bench(1);
        Design design = Bench.oneOfThree();
        List<Problem> beyond = bench.engine.check(failing(design, Optional.of("fans"), Optional.of(4)));
        assertEquals("conditions[0].failed[0].position: is 4; expected a position in bank fans, 1 to 3",
                beyond.getFirst().sentence());
        assertTrue(beyond.getFirst().isError());
        assertTrue(check(bench, failing(design, Optional.empty(), Optional.of(9))).getFirst()
                .startsWith("conditions[0].failed[0]: fails position 9, but no bank has that many"));
        assertTrue(check(bench, failing(Design.EMPTY, Optional.empty(), Optional.empty())).getFirst()
                .startsWith("conditions[0].failed[0]: fails a mover, but the design has no bank"));
    }

    private static Design failing(Design design, Optional<String> bank, Optional<Integer> position) {
        return design.withConditions(List.of(Condition.named("lost").with("lost", List.of(
                new FailedMover(bank, position, FailedMover.State.LOCKED)))));
    }
}
