package tramontane.desktop.internal.documents;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import tramontane.model.Design;

class HistoryTest {

    private static Design named(String name) {
        return Design.EMPTY.withName(name);
    }

    @Test
    void aStepIsTakenBackAndDoneAgain() {
        History history = History.of(named("a")).with("rename to b", named("b"));
        assertEquals(Optional.of("rename to b"), history.undone());
        assertEquals("a", history.undo().design().name());
        assertEquals(Optional.of("rename to b"), history.undo().redone());
        assertEquals("b", history.undo().redo().design().name());
    }

    @Test
    void aNewStepEndsWhatCouldBeDoneAgain() {
        History history = History.of(named("a")).with("b", named("b")).with("c", named("c")).undo().with("d", named("d"));
        assertEquals(Optional.empty(), history.redone());
        assertEquals(List.of("a", "b", "d"), history.states().stream().map(Design::name).toList());
    }

    @Test
    void anEqualDesignIsNoStep() {
        History history = History.of(named("a"));
        assertSame(history, history.with("nothing", named("a")));
    }

    @Test
    void theEndsStay() {
        History history = History.of(named("a"));
        assertSame(history, history.undo());
        assertSame(history, history.redo());
    }

    @Test
    void noMoreThanTheMostAreKept() {
        History history = History.of(named("0"));
        for (int i = 1; i <= History.MOST + 50; i++) {
            history = history.with("step " + i, named(String.valueOf(i)));
        }
        assertEquals(History.MOST, history.steps().size());
        assertEquals("50", history.states().getFirst().name());
    }

    @Property
    void undoneAsOftenAsDoneIsTheBeginning(@ForAll @Size(max = 30) List<@IntRange(max = 4) Integer> names) {
        History history = History.of(named("begin"));
        int steps = 0;
        for (int name : names) {
            History next = history.with("to " + name, named(String.valueOf(name)));
            steps += next == history ? 0 : 1;
            history = next;
        }
        Design last = history.design();
        History back = history;
        for (int i = 0; i < steps; i++) {
            back = back.undo();
        }
        assertEquals("begin", back.design().name());
        assertTrue(back.undone().isEmpty());
        for (int i = 0; i < steps; i++) {
            back = back.redo();
        }
        assertSame(last, back.design());
    }
}
