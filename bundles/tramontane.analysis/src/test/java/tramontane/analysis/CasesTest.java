package tramontane.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.model.AirPath;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.FailedMover.State;
import tramontane.model.Passage;
import tramontane.model.Value;

class CasesTest {

    private static Passage bank(String id, int across, int along, int series) {
        return new Passage(id, Passage.BANK, "outside", "box", Value.Tree.EMPTY.with("across", Value.Num.of(across))
                .with("along", Value.Num.of(along)).with("series", Value.Num.of(series)));
    }

    private static FailedMover failed(String bank, int position, State state) {
        return new FailedMover(Optional.of(bank).filter(name -> !name.isEmpty()),
                Optional.of(position).filter(number -> number > 0), state);
    }

    private static Design design(List<Passage> banks, FailedMover... failed) {
        return Design.EMPTY.withAirPath(new AirPath(List.of(), banks, Value.Tree.EMPTY))
                .withConditions(List.of(Condition.named("fault").with("fault", Arrays.asList(failed))));
    }

    private static List<String> ids(Cases cases) {
        return cases.list().stream().map(each -> each.concrete().id()).toList();
    }

    private static final List<Passage> TWO_AND_THREE = List.of(bank("fans", 2, 1, 1), bank("blowers", 1, 1, 3));

    static Stream<Arguments> expansions() {
        return Stream.of(
                Arguments.of("both said", List.of(failed("fans", 2, State.LOCKED)), List.of("fault")),
                Arguments.of("any one of a bank", List.of(failed("blowers", 0, State.REMOVED)), List.of(
                        "fault: blowers 1 removed", "fault: blowers 2 removed", "fault: blowers 3 removed")),
                Arguments.of("any one at all", List.of(failed("", 0, State.LOCKED)), List.of("fault: fans 1 locked",
                        "fault: fans 2 locked", "fault: blowers 1 locked", "fault: blowers 2 locked", "fault: blowers 3 locked")),
                Arguments.of("a position in any bank that has it", List.of(failed("", 3, State.FREEWHEELING)),
                        List.of("fault: blowers 3 freewheeling")),
                Arguments.of("any one beside a certain one", List.of(failed("fans", 1, State.LOCKED),
                        failed("fans", 0, State.LOCKED)), List.of("fault: fans 2 locked")),
                Arguments.of("any two, in no order", List.of(failed("blowers", 0, State.LOCKED),
                        failed("blowers", 0, State.LOCKED)), List.of("fault: blowers 1 locked, blowers 2 locked",
                        "fault: blowers 1 locked, blowers 3 locked", "fault: blowers 2 locked, blowers 3 locked")),
                Arguments.of("two in different states", List.of(failed("fans", 0, State.LOCKED),
                        failed("fans", 0, State.REMOVED)), List.of("fault: fans 1 locked, fans 2 removed",
                        "fault: fans 2 locked, fans 1 removed")));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("expansions")
    void aConditionStandsForEveryWayInWhichItsMoversMayFail(String what, List<FailedMover> failed, List<String> expected) {
        Cases cases = Cases.of(design(TWO_AND_THREE, failed.toArray(FailedMover[]::new)), Set.of());
        assertEquals(expected, ids(cases));
        assertEquals(List.of(), cases.findings());
        cases.list().forEach(each -> {
            assertEquals("fault", each.declared());
            assertEquals(failed.size(), each.concrete().failed().stream().filter(FailedMover::isConcrete).count());
        });
    }

    static Stream<Arguments> unlikes() {
        return Stream.of(
                Arguments.of("columns are alike, places in them are not", List.of(bank("fans", 3, 2, 2)), List.of(failed("fans", 0, State.LOCKED)),
                        List.of("fault: fans 1 locked", "fault: fans 2 locked")),
                Arguments.of("both in one column or in two", List.of(bank("fans", 3, 1, 2)), List.of(failed("fans", 0, State.LOCKED), failed("fans", 0, State.LOCKED)),
                        List.of("fault: fans 1 locked, fans 2 locked", "fault: fans 1 locked, fans 3 locked", "fault: fans 1 locked, fans 4 locked",
                                "fault: fans 2 locked, fans 4 locked")),
                Arguments.of("a certain one beside any", List.of(bank("fans", 3, 1, 1)), List.of(failed("fans", 2, State.REMOVED), failed("fans", 0, State.LOCKED)),
                        List.of("fault: fans 1 locked")),
                Arguments.of("banks are not alike", TWO_AND_THREE, List.of(failed("", 0, State.LOCKED)),
                        List.of("fault: fans 1 locked", "fault: blowers 1 locked", "fault: blowers 2 locked", "fault: blowers 3 locked")));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("unlikes")
    void ofCasesThatAreAlikeTheFirstStandsForAll(String name, List<Passage> banks, List<FailedMover> failed, List<String> expected) {
        Design design = design(banks, failed.toArray(FailedMover[]::new));
        assertEquals(expected, ids(Cases.unlike(design, Set.of())));
        assertTrue(ids(Cases.of(design, Set.of())).containsAll(expected));
    }

    @Test
    void anyOneThatCouldBeAnyBankIsNotCountedTwice() {
        Cases cases = Cases.of(design(List.of(bank("fans", 3, 1, 1)), failed("", 0, State.LOCKED),
                failed("fans", 0, State.LOCKED)), Set.of());
        assertEquals(3, cases.list().size());
    }

    @Test
    void aConditionThatIsConcreteIsTakenAsItIs() {
        Design design = design(TWO_AND_THREE);
        assertSame(design.conditions().getFirst(), Cases.of(design, Set.of()).list().getFirst().concrete());
        assertEquals(List.of("nominal"), ids(Cases.of(Design.EMPTY, Set.of())));
        assertEquals(List.of(), ids(Cases.of(design, Set.of("another"))));
    }

    @Test
    void positionsAreMoversSideBySideTimesMoversInSeries() {
        assertEquals(12, Cases.positions(bank("fans", 3, 2, 2)));
        assertEquals(1, Cases.positions(new Passage("fans", Passage.BANK, "", "", Value.Tree.EMPTY
                .with("across", new Value.Text("three")).with("along", Value.Num.of(1.5)).with("series", Value.Num.of(0)))));
        assertEquals(Integer.MAX_VALUE, Cases.positions(bank("fans", 2_000_000_000, 2_000_000_000, 2)));
    }

    @Test
    void whatCannotFailGivesNoCaseAndSaysSo() {
        for (FailedMover wrong : List.of(failed("fans", 3, State.LOCKED), failed("none", 0, State.LOCKED),
                failed("", 9, State.LOCKED))) {
            Cases cases = Cases.of(design(TWO_AND_THREE, wrong), Set.of());
            assertEquals(List.of(), cases.list());
            assertEquals(List.of("fault"), cases.conditions());
            assertEquals(Severity.ERROR, cases.findings().getFirst().severity());
        }
        FailedMover[] three = IntStream.range(0, 3).mapToObj(i -> failed("fans", 0, State.LOCKED)).toArray(FailedMover[]::new);
        assertEquals("condition fault cannot be computed: it lets more movers fail than there are",
                Cases.of(design(TWO_AND_THREE, three), Set.of()).findings().getFirst().message().toString());
    }

    @Test
    void aConditionThatStandsForTooManyIsNotComputedInPart() {
        Cases most = Cases.of(design(List.of(bank("fans", Cases.MOST, 1, 1)), failed("fans", 0, State.LOCKED)), Set.of());
        assertEquals(Cases.MOST, most.list().size());
        Cases more = Cases.of(design(List.of(bank("fans", Cases.MOST + 1, 1, 1)), failed("fans", 0, State.LOCKED)), Set.of());
        assertEquals(0, more.list().size());
        assertEquals(Severity.NOT_JUDGED, more.findings().getFirst().severity());
        // combinations are not tried one by one before that is known
        FailedMover[] eleven = IntStream.range(0, 11).mapToObj(i -> failed("fans", 0, State.LOCKED)).toArray(FailedMover[]::new);
        assertEquals(12, Cases.of(design(List.of(bank("fans", 12, 1, 1)), eleven), Set.of()).list().size());
        FailedMover[] many = IntStream.range(0, 40).mapToObj(i -> failed("fans", 0, State.values()[i % 3]))
                .toArray(FailedMover[]::new);
        assertEquals(0, Cases.of(design(List.of(bank("fans", 39, 1, 1)), many), Set.of()).list().size());
    }
}
