package tramontane.desktop.internal.documents;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.desktop.Results;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.edit.Subject;

class SessionTest {

    private int changes;
    private int computations;
    private final Session session = new Session(new Session.Listener() {
        @Override
        public void changed() {
            changes++;
        }

        @Override
        public void computeAnew() {
            computations++;
        }
    });

    private static Design named(String name) {
        return Design.EMPTY.withName(name);
    }

    private static Evaluation of(Design design, String... cases) {
        return new Evaluation(design, java.util.Arrays.stream(cases).map(id -> new Engine.Case(id.split(":")[0], Condition.NOMINAL.with(id,
                List.of()))).toList(), List.of(), List.of(), List.of(), false);
    }

    @Test
    void anEmptyDesignGivesWayToTheFirstOpened() {
        session.open(Optional.of(Path.of("a")), named("a"), Optional.of(named("a")));
        assertEquals(1, session.open().size());
        session.open(Optional.empty(), named("b"), Optional.empty());
        assertEquals(2, session.open().size());
        assertEquals("b", session.front().design().name());
    }

    @Test
    void oneThatWasTouchedStays() {
        session.edit("name it", named("mine"));
        session.open(Optional.of(Path.of("a")), named("a"), Optional.of(named("a")));
        assertEquals(List.of("mine", "a"), session.open().stream().map(each -> each.design().name()).toList());
    }

    @Test
    void dirtyMeansOtherThanTheFile() {
        session.open(Optional.of(Path.of("a")), named("a"), Optional.of(named("a")));
        assertFalse(session.front().changed());
        session.edit("rename", named("b"));
        assertTrue(session.front().changed());
        session.undo();
        assertFalse(session.front().changed());
        session.redo();
        session.saved(session.front().key(), Path.of("a"), session.front().design());
        assertFalse(session.front().changed());
        session.undo();
        assertTrue(session.front().changed());
    }

    @Test
    void editsMadeWhileSavingStayUnsaved() {
        session.open(Optional.of(Path.of("a")), named("a"), Optional.of(named("a")));
        session.edit("rename", named("b"));
        Design written = session.front().design();
        session.edit("rename again", named("c"));
        session.saved(session.front().key(), Path.of("a"), written);
        assertTrue(session.front().changed());
    }

    @Test
    void eachEditIsComputedAndAnEqualOneIsNot() {
        int before = computations;
        session.edit("rename", named("x"));
        session.edit("rename", named("x"));
        assertEquals(before + 1, computations);
    }

    @Test
    void resultsOfAnOlderStateAreDropped() {
        Design old = session.front().design();
        session.edit("rename", named("new"));
        session.computed(session.front().key(), of(old, "nominal"), true);
        assertTrue(session.front().results().now().isEmpty());
    }

    @Test
    void whatWasKnownStaysUntilTheWholeIsComputed() {
        Design first = named("first");
        session.edit("rename", first);
        session.computed(session.front().key(), of(first, "nominal", "hot"), true);
        Design second = named("second");
        session.edit("rename", second);
        Results stale = session.front().results();
        assertTrue(stale.now().isEmpty());
        assertEquals(first, stale.before().orElseThrow().design());
        session.computed(session.front().key(), of(second, "nominal"), false);
        assertEquals(second, session.front().results().now().orElseThrow().design());
        assertEquals(first, session.front().results().before().orElseThrow().design());
        assertEquals(2, session.front().results().cases().size(), "the cases do not come and go");
        session.computed(session.front().key(), of(second, "nominal", "hot"), true);
        assertTrue(session.front().results().complete());
    }

    @Test
    void anEditBeforeTheWholeIsComputedKeepsTheLastWhole() {
        Design first = named("first");
        session.edit("rename", first);
        session.computed(session.front().key(), of(first, "nominal", "hot"), true);
        Design second = named("second");
        session.edit("rename", second);
        session.computed(session.front().key(), of(second, "nominal"), false);
        session.edit("rename", named("third"));
        assertEquals(first, session.front().results().before().orElseThrow().design());
    }

    @Test
    void theConditionInFrontFollowsItsCases() {
        Design design = Design.EMPTY.withConditions(List.of(Condition.NOMINAL.with("any one failed", List.of())));
        session.open(Optional.empty(), design, Optional.empty());
        session.computed(session.front().key(), of(design, "any one failed: fans 1 locked", "any one failed: fans 2 locked"), true);
        assertEquals("any one failed: fans 1 locked", session.front().front());
        session.front("any one failed: fans 2 locked");
        Design changed = design.withName("other");
        session.edit("rename", changed);
        assertEquals("any one failed: fans 2 locked", session.front().front());
    }

    @Test
    void aConditionThatGoesLeavesTheFirst() {
        Condition hot = Condition.NOMINAL.with("hot", List.of());
        Design design = Design.EMPTY.withConditions(List.of(Condition.NOMINAL, hot));
        session.open(Optional.empty(), design, Optional.empty());
        session.front("hot");
        session.edit("delete hot", design.withConditions(List.of(Condition.NOMINAL)));
        assertEquals(Condition.NOMINAL.id(), session.front().front());
    }

    @Test
    void closingTheLastLeavesAnEmptyOne() {
        session.open(Optional.of(Path.of("a")), named("a"), Optional.of(named("a")));
        session.close(session.front().key());
        assertEquals(Design.EMPTY, session.front().design());
        assertFalse(session.front().changed());
    }

    @Test
    void closingAnotherLeavesTheFrontInFront() {
        session.open(Optional.of(Path.of("a")), named("a"), Optional.of(named("a")));
        String first = session.front().key();
        session.open(Optional.of(Path.of("b")), named("b"), Optional.of(named("b")));
        session.close(first);
        assertEquals("b", session.front().design().name());
    }

    @Test
    void selectingTheSameAgainTellsNobody() {
        session.select(Optional.of(Subject.DESIGN));
        int before = changes;
        session.select(Optional.of(Subject.DESIGN));
        assertEquals(before, changes);
    }

    @Test
    void aPartDoesNotTakeTheCaseInFrontAway() {
        Condition hot = Condition.NOMINAL.with("hot", List.of());
        Design design = Design.EMPTY.withConditions(List.of(Condition.NOMINAL, hot));
        session.open(Optional.empty(), design, Optional.empty());
        session.computed(session.front().key(), of(design, "nominal"), false);
        assertFalse(session.front().results().complete(), "the rest is still to come");
        session.front("hot");
        session.computed(session.front().key(), of(design, "nominal"), false);
        assertEquals("hot", session.front().front());
        session.computed(session.front().key(), of(design, "nominal", "hot"), true);
        assertEquals("hot", session.front().front());
        // computed once more: a part of what is known is nothing new
        session.computed(session.front().key(), of(design, "nominal"), false);
        assertEquals(2, session.front().results().cases().size());
        assertEquals("hot", session.front().front());
    }
}
