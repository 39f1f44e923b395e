package tramontane.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.analysis.Evaluation.Status;
import tramontane.model.AirPath;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.HeatSource;
import tramontane.model.Passage;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.model.Value;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Units;

class JudgementTest {

    private static final FigureKind FLOW = new FigureKind("air.flow", "flow", QuantityKind.FLOW, Better.HIGHER, "Flow.");
    private static final FigureKind LIFE = new FigureKind("life", "life", QuantityKind.TIME, Better.HIGHER, "Life.");
    private static final Engine.Loaded AIR = loaded("air", Scope.CONDITION, FLOW);

    private static Engine.Loaded loaded(String id, Scope scope, FigureKind kind) {
        return new Engine.Loaded(id, id, "lab 1.0.0", scope, List.of(kind), Optional.empty());
    }

    private static Requirement requirement(String figure, String place, Double least, Double most, String... conditions) {
        return new Requirement(figure, place, Optional.ofNullable(least).map(Quantity::of),
                Optional.ofNullable(most).map(Quantity::of), List.of(conditions), Value.Tree.EMPTY);
    }

    private static Evaluation.Outcome outcome(String analysis, String condition, Status status, Figure... figures) {
        List<Figure> placed = new ArrayList<>();
        for (Figure figure : figures) {
            placed.add(figure.in(condition));
        }
        return new Evaluation.Outcome(analysis, condition, status, new Result<>(Optional.of("data")
                .filter(data -> status == Status.COMPUTED), placed, List.of()));
    }

    private static Figure flow(String place, double value) {
        return Figure.of(FLOW, place, value);
    }

    private static List<Verdict> judge(Design design, List<Evaluation.Outcome> outcomes, Engine.Loaded... asked) {
        return Judgement.judge(design, Cases.of(design, Set.of()), outcomes, List.of(asked), List.of(FLOW, LIFE));
    }

    private static Verdict one(Requirement requirement, Figure... figures) {
        List<Verdict> verdicts = judge(Design.EMPTY.withRequirements(List.of(requirement)),
                List.of(outcome("air", "nominal", Status.COMPUTED, figures)), AIR);
        assertEquals(1, verdicts.size());
        return verdicts.getFirst();
    }

    static Stream<Arguments> limits() {
        // at least, at most, value, lower, upper -> severity, margin; worked by hand
        return Stream.of(
                Arguments.of(2.0, null, 3.0, 3.0, 3.0, Severity.MET, 1.0),
                Arguments.of(2.0, null, 2.0, 2.0, 2.0, Severity.MET, 0.0),
                Arguments.of(2.0, null, 1.5, 1.5, 1.5, Severity.NOT_MET, -0.5),
                Arguments.of(null, 2.0, 1.5, 1.5, 1.5, Severity.MET, 0.5),
                Arguments.of(null, 2.0, 2.5, 2.5, 2.5, Severity.NOT_MET, -0.5),
                Arguments.of(1.0, 4.0, 3.5, 3.5, 3.5, Severity.MET, 0.5),
                Arguments.of(1.0, 4.0, 1.25, 1.25, 1.25, Severity.MET, 0.25),
                Arguments.of(1.0, 4.0, 5.0, 5.0, 5.0, Severity.NOT_MET, -1.0),
                Arguments.of(2.0, null, 3.0, 1.5, 4.0, Severity.CAUTION, 1.0),
                Arguments.of(2.0, null, 3.0, 2.5, 4.0, Severity.MET, 1.0),
                Arguments.of(null, 2.0, 1.0, 0.5, 2.5, Severity.CAUTION, 1.0),
                Arguments.of(2.0, null, 1.0, 0.5, 4.0, Severity.NOT_MET, -1.0));
    }

    @ParameterizedTest
    @MethodSource("limits")
    void aFigureIsHeldAgainstItsLimits(Double least, Double most, double value, double lower, double upper,
            Severity severity, double margin) {
        Verdict verdict = one(requirement("air.flow", "fans", least, most), flow("fans", value).within(lower, upper));
        assertEquals(severity, verdict.severity());
        assertEquals(margin, verdict.margin(), 1e-12);
        assertEquals(value, verdict.figure().orElseThrow().value());
    }

    @Test
    void ofSeveralPlacesTheWorstDecides() {
        Verdict verdict = one(requirement("air.flow", Requirement.WORST, 2.0, null), flow("a", 5), flow("b", 3), flow("c", 4));
        assertEquals("b", verdict.figure().orElseThrow().place());
        assertEquals("holds at b, the worst of 3 places", verdict.reason());
        // one that may fail is worse than one that holds by less
        Verdict unsure = one(requirement("air.flow", Requirement.WORST, 2.0, null), flow("a", 2.5), flow("b", 3).within(1, 4));
        assertEquals(Severity.CAUTION, unsure.severity());
        assertEquals("b", unsure.figure().orElseThrow().place());
    }

    private static Verdict untold(Requirement requirement, Figure... figures) {
        Evaluation.Outcome outcome = outcome("air", "nominal", Status.COMPUTED, figures);
        Result<?> said = outcome.result().with(Finding.of(Severity.NOT_JUDGED, "c", "the flow at c cannot be told"));
        return judge(Design.EMPTY.withRequirements(List.of(requirement)),
                List.of(new Evaluation.Outcome("air", "nominal", Status.COMPUTED, said)), AIR).getFirst();
    }

    @Test
    void whatCouldNotBeToldSomewhereIsNotMetByOtherPlaces() {
        Requirement worst = requirement("air.flow", Requirement.WORST, 2.0, null);
        assertEquals(Severity.NOT_JUDGED, untold(worst, flow("a", 5)).severity());
        assertEquals("could not be told at c", untold(worst, flow("a", 5)).reason());
        assertEquals(Severity.NOT_MET, untold(worst, flow("a", 1)).severity(), "but what fails, fails");
        assertEquals(Severity.MET, untold(worst, flow("a", 5), flow("c", 3)).severity(), "and what has the figure is told");
        assertEquals(Severity.MET, untold(requirement("air.flow", "a", 2.0, null), flow("a", 5)).severity(), "elsewhere it does not matter");
        assertEquals("could not be told at c", untold(requirement("air.flow", "c", 2.0, null), flow("a", 5)).reason());
    }

    static Stream<Arguments> reasons() {
        return Stream.of(
                Arguments.of(requirement("air.flaw", "fans", 1.0, null),
                        "nothing loaded gives a figure air.flaw (did you mean air.flow?)"),
                Arguments.of(requirement("something.else", "fans", 1.0, null),
                        "nothing loaded gives a figure something.else"),
                Arguments.of(requirement("air.flow", "fan", 1.0, null),
                        "there is no such figure at fan; it is known at fans"),
                Arguments.of(requirement("air.flow", "fans", null, null), "the requirement has no limit"),
                Arguments.of(new Requirement("air.flow", "fans", Optional.of(Quantity.of(35, "35 dB")), Optional.empty(),
                        List.of(), Value.Tree.EMPTY), "the limit does not fit the figure: \"35 dB\" is not a flow"),
                Arguments.of(requirement("life", "fans", 1.0, null), "none of the analyses that give this figure was run"));
    }

    @ParameterizedTest
    @MethodSource("reasons")
    void whatIsNotJudgedSaysWhy(Requirement requirement, String reason) {
        Verdict verdict = one(requirement, flow("fans", 3));
        assertEquals(Severity.NOT_JUDGED, verdict.severity());
        assertTrue(verdict.reason().startsWith(reason), verdict::reason);
        assertTrue(verdict.figure().isEmpty());
    }

    @Test
    void aLimitIsReadInTheUnitsOfItsFigure() {
        Requirement hourly = new Requirement("air.flow", "fans", Optional.of(Quantity.of(0.1, "360 m³/h")), Optional.empty(),
                List.of(), Value.Tree.EMPTY);
        assertEquals(0.05, one(hourly, flow("fans", 0.15)).margin(), 1e-12);
    }

    private static final Design ANY_OF_TWO = Design.EMPTY.withAirPath(new AirPath(List.of(), List.of(new Passage("fans",
            Passage.BANK, "outside", "box", Value.Tree.EMPTY.with("across", Value.Num.of(2)))), Value.Tree.EMPTY))
            .withConditions(List.of(Condition.named("fault").with("fault", List.of(new FailedMover(Optional.of("fans"),
                    Optional.empty(), FailedMover.State.LOCKED)))))
            .withRequirements(List.of(requirement("air.flow", "fans", 2.0, null)));

    static Stream<Arguments> twoCases() {
        return Stream.of(
                Arguments.of("both hold", outcome("air", "fault: fans 2 locked", Status.COMPUTED, flow("fans", 2.5)), 3.0,
                        Severity.MET, "holds at fans in fault: fans 2 locked, the worst of 2 cases"),
                Arguments.of("one fails", outcome("air", "fault: fans 2 locked", Status.COMPUTED, flow("fans", 1)), 3.0,
                        Severity.NOT_MET, "does not hold at fans in fault: fans 2 locked, the worst of 2 cases"),
                Arguments.of("one is missing", outcome("air", "fault: fans 2 locked", Status.NOT_COMPUTED), 3.0,
                        Severity.NOT_JUDGED, "could not be computed in fault: fans 2 locked: analysis air found no answer"),
                Arguments.of("one gave no such figure", outcome("air", "fault: fans 2 locked", Status.COMPUTED), 3.0,
                        Severity.NOT_JUDGED, "there is no such figure in fault: fans 2 locked"),
                Arguments.of("one is missing and the other fails", outcome("air", "fault: fans 2 locked", Status.FAILED), 1.0,
                        Severity.NOT_MET, "does not hold at fans in fault: fans 1 locked, the worst of 2 cases"),
                Arguments.of("one was not finished", outcome("air", "elsewhere", Status.COMPUTED), 3.0,
                        Severity.NOT_JUDGED, "could not be computed in fault: fans 2 locked: analysis air was not finished"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("twoCases")
    void ofSeveralCasesTheWorstDecidesAndAMissingOneIsNeverMet(String what, Evaluation.Outcome second, double first,
            Severity severity, String reason) {
        Verdict verdict = judge(ANY_OF_TWO, List.of(outcome("air", "fault: fans 1 locked", Status.COMPUTED,
                flow("fans", first)), second), AIR).getFirst();
        assertEquals(severity, verdict.severity());
        assertEquals("fault", verdict.condition());
        assertEquals(reason, verdict.reason());
    }

    @Test
    void aRequirementIsJudgedInTheConditionsItHoldsInOnly() {
        Design design = Design.EMPTY.withConditions(List.of(Condition.named("hot"), Condition.named("cold")))
                .withRequirements(List.of(requirement("air.flow", "fans", 2.0, null, "cold"),
                        requirement("air.flow", "fans", 2.0, null)));
        List<Verdict> verdicts = judge(design, List.of(outcome("air", "hot", Status.COMPUTED, flow("fans", 1)),
                outcome("air", "cold", Status.COMPUTED, flow("fans", 3))), AIR);
        assertEquals(List.of("cold met", "hot not met", "cold met"),
                verdicts.stream().map(each -> each.condition() + " " + each.severity().word()).toList());
    }

    @Test
    void aFigureOfTheDesignAsAWholeIsJudgedOnce() {
        Design design = Design.EMPTY.withConditions(List.of(Condition.named("hot"), Condition.named("cold")))
                .withRequirements(List.of(requirement("life", "fans", 2.0, null)));
        Engine.Loaded life = loaded("life", Scope.DESIGN, LIFE);
        List<Verdict> verdicts = judge(design, List.of(outcome("life", "", Status.COMPUTED, Figure.of(LIFE, "fans", 3))), life);
        assertEquals(1, verdicts.size());
        assertEquals("", verdicts.getFirst().condition());
        assertEquals(Severity.MET, verdicts.getFirst().severity());
        assertEquals("could not be computed: analysis life did not run",
                judge(design, List.of(outcome("life", "", Status.NOT_RUN)), life).getFirst().reason());
    }

    @Test
    void aConditionWithoutCasesIsNotJudged() {
        Design none = ANY_OF_TWO.withAirPath(AirPath.EMPTY);
        assertEquals("the condition has no case that could be computed", judge(none, List.of(), AIR).getFirst().reason());
    }

    private static final FigureKind JUNCTION = new FigureKind(Judgement.COMPONENT_TEMPERATURE, "junction temperature",
            QuantityKind.TEMPERATURE, Better.LOWER, "Of a heat source.");
    private static final Engine.Loaded HEAT = loaded("heat", Scope.CONDITION, JUNCTION);

    private static HeatSource source(String id, String limit) {
        return new HeatSource(id, Quantity.of(5), List.of(), Optional.of(limit).filter(text -> !text.isEmpty())
                .map(text -> Quantity.of(Units.parse(text, QuantityKind.TEMPERATURE), text)), Value.Tree.EMPTY);
    }

    private static Requirement junction(String place, String most, String... conditions) {
        return new Requirement(JUNCTION.id(), place, Optional.empty(),
                Optional.of(Quantity.of(Units.parseAny(most).si(), most)), List.of(conditions), Value.Tree.EMPTY);
    }

    private static final Design HOT = Design.EMPTY.withConditions(List.of(Condition.named("hot"), Condition.named("cold")))
            .withHeatSources(List.of(source("cpu", "85 °C"), source("coil", ""), source("disk", "60 °C"), source("", "50 °C")));

    private static List<String> said(List<Requirement> requirements) {
        return requirements.stream().map(each -> each.place() + " " + each.atMost().orElseThrow().si() + " in "
                + each.conditions()).toList();
    }

    @Test
    void theLimitOfAHeatSourceIsARequirementOnceSomethingGivesItsTemperature() {
        Design design = HOT.withRequirements(List.of(requirement("air.flow", "fans", null, 2.0)));
        assertEquals(design.requirements(), Judgement.requirements(design, List.of(FLOW, LIFE)));
        assertEquals(List.of("fans 2.0 in []", "cpu 358.15 in []", "disk 333.15 in []"),
                said(Judgement.requirements(design, List.of(FLOW, JUNCTION))));
    }

    static Stream<Arguments> writtenBeside() {
        return Stream.of(
                Arguments.of("the same", junction("cpu", "85 °C"), false),
                Arguments.of("the same in other units", junction("cpu", "185 °F"), false),
                Arguments.of("the same in every condition by name", junction("cpu", "85 °C", "cold", "hot"), false),
                Arguments.of("the same in one condition only", junction("cpu", "85 °C", "hot"), true),
                Arguments.of("another limit", junction("cpu", "80 °C"), true),
                Arguments.of("of a kind that does not fit", junction("cpu", "85 dB"), true),
                Arguments.of("at every place", junction(Requirement.WORST, "85 °C"), true),
                Arguments.of("on another figure", requirement("air.flow", "cpu", null, 358.15), true));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("writtenBeside")
    void aWrittenRequirementThatSaysTheSameIsNotJudgedTwice(String what, Requirement written, boolean twice) {
        List<Requirement> all = Judgement.requirements(HOT.withRequirements(List.of(written)), List.of(FLOW, JUNCTION));
        assertEquals(twice ? List.of("cpu 358.15 in []", "disk 333.15 in []") : List.of("disk 333.15 in []"),
                said(all.subList(1, all.size())));
    }

    @Test
    void limitsOfHeatSourcesAreJudgedLikeAnyRequirement() {
        List<FigureKind> known = List.of(FLOW, JUNCTION);
        List<Verdict> verdicts = Judgement.judge(HOT, Cases.of(HOT, Set.of()), List.of(
                outcome("heat", "hot", Status.COMPUTED, Figure.of(JUNCTION, "cpu", 359.15)),
                outcome("heat", "cold", Status.COMPUTED, Figure.of(JUNCTION, "cpu", 350.15).within(345.15, 358.65))),
                List.of(HEAT), known);
        assertEquals(List.of("cpu hot not met -1.0: does not hold at cpu",
                "cpu cold caution 8.0: holds at cpu, but not at the edge of its uncertainty",
                "disk hot not judged 0.0: there is no such figure at disk; it is known at cpu",
                "disk cold not judged 0.0: there is no such figure at disk; it is known at cpu"),
                verdicts.stream().map(each -> each.requirement().place() + " " + each.condition() + " " + each.severity().word()
                        + " " + each.margin() + ": " + each.reason()).toList());
        assertEquals(List.of("cpu hot no", "disk hot no"), Judgement.none(HOT, known, List.of("hot"), "no").stream()
                .map(each -> each.requirement().place() + " " + each.condition() + " " + each.reason()).toList());
        assertEquals(List.of("none of the analyses that give this figure was run"), Judgement.judge(HOT, Cases.of(HOT, Set.of()),
                List.of(), List.of(AIR), known).stream().map(Verdict::reason).distinct().toList());
    }
}
