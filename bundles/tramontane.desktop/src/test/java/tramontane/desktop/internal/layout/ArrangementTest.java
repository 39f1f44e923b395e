package tramontane.desktop.internal.layout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.desktop.Spot;
import tramontane.desktop.internal.layout.Arrangement.Halves;
import tramontane.desktop.internal.layout.Arrangement.Side;
import tramontane.desktop.internal.layout.Arrangement.Stack;
import tramontane.model.Value;
import tramontane.model.file.Limits;
import tramontane.model.file.TreeFile;

class ArrangementTest {

    private static final Arrangement STANDARD = Arrangement.standard(Map.of(Spot.LEFT, List.of("tree"), Spot.MIDDLE, List.of("path"),
            Spot.BOTTOM, List.of("findings", "jobs", "log")));

    private static Stack holding(Arrangement arrangement, String view) {
        return arrangement.holding(view).orElseThrow();
    }

    @Test
    void aViewOpensAtItsSpotInFront() {
        Arrangement opened = STANDARD.open("chart", Spot.RIGHT);
        assertEquals(new Stack("right", List.of("chart"), "chart"), holding(opened, "chart"));
    }

    @Test
    void aViewThatIsOpenComesToTheFrontWhereItStands() {
        Arrangement moved = STANDARD.move("log", "left", Side.WITHIN).open("tree", Spot.LEFT);
        assertEquals("tree", holding(moved, "tree").front());
        assertEquals(new Stack("left", List.of("tree", "log"), "log"), holding(moved.open("log", Spot.BOTTOM), "log"));
    }

    @Test
    void closingShowsTheNeighbour() {
        assertEquals(new Stack("bottom", List.of("jobs", "log"), "jobs"), holding(STANDARD.close("findings"), "log"));
        assertEquals("findings", holding(STANDARD.open("jobs", Spot.BOTTOM).close("jobs"), "log").front());
    }

    @Test
    void aClosedViewComesBackWhereItsSpotIs() {
        assertEquals("left", holding(STANDARD.close("tree").open("tree", Spot.LEFT), "tree").name());
    }

    @Test
    void aViewMovedBesideGetsAStackOfItsOwnThatGoesWithIt() {
        Arrangement moved = STANDARD.move("log", "middle", Side.RIGHT);
        assertEquals("stack 1", holding(moved, "log").name());
        assertEquals(7, moved.stacks().size());
        assertEquals(6, moved.close("log").stacks().size());
        assertEquals(6, moved.move("log", "bottom", Side.WITHIN).stacks().size());
    }

    @Test
    void aViewAloneInItsStackIsNotMovedBesideItself() {
        assertEquals(STANDARD, STANDARD.move("tree", "left", Side.BELOW));
        Arrangement split = STANDARD.move("log", "bottom", Side.RIGHT);
        assertEquals(List.of("findings", "jobs"), holding(split, "jobs").views());
    }

    @Test
    void aViewThatFillsTheWindowGivesWayToAnother() {
        Arrangement full = STANDARD.fill(Optional.of("path"));
        assertEquals(Optional.of("path"), full.open("path", Spot.MIDDLE).full());
        assertEquals(Optional.empty(), full.open("log", Spot.BOTTOM).full());
        assertEquals(Optional.empty(), full.close("path").full());
    }

    @Test
    void sharesStayBetweenTheirLimits() {
        Halves root = (Halves) STANDARD.root();
        assertEquals(0.95, ((Halves) STANDARD.share(root, 7).root()).share());
        assertEquals(0.5, ((Halves) STANDARD.share(root, Double.NaN).root()).share());
    }

    @Property
    void whateverIsDoneNoViewIsLostOrDoubledAndItIsKept(@ForAll @Size(max = 40) List<@IntRange(max = 9999) Integer> steps) {
        Arrangement now = STANDARD;
        List<String> views = List.of("tree", "path", "findings", "jobs", "log", "chart", "help");
        for (int step : steps) {
            String view = views.get(step % views.size());
            List<Stack> stacks = now.stacks();
            String stack = stacks.get(step / 7 % stacks.size()).name();
            boolean open = now.views().contains(view);
            int before = now.views().size();
            switch (step / 100 % 4) {
                case 0 -> {
                    now = now.open(view, Spot.values()[step % 6]);
                    assertEquals(before + (open ? 0 : 1), now.views().size());
                    assertEquals(view, holding(now, view).front());
                }
                case 1 -> {
                    now = now.close(view);
                    assertEquals(before - (open ? 1 : 0), now.views().size());
                }
                default -> {
                    now = now.move(view, stack, Side.values()[step % 5]);
                    assertEquals(before, now.views().size());
                }
            }
            assertEquals(now.views().size(), new HashSet<>(now.views()).size());
            List<String> names = new ArrayList<>(now.stacks().stream().map(Stack::name).toList());
            assertEquals(names.size(), new HashSet<>(names).size());
            for (Spot spot : Spot.values()) {
                assertTrue(names.contains(spot.name().toLowerCase(java.util.Locale.ROOT)));
            }
        }
        Value.Tree read = TreeFile.parse(TreeFile.write(now.tree()).getBytes(java.nio.charset.StandardCharsets.UTF_8), Limits.STANDARD)
                .tree().orElseThrow();
        assertEquals(Optional.of(now.views()), Arrangement.of(read).map(Arrangement::views));
        assertEquals(Optional.of(now.tree()), Arrangement.of(read).map(Arrangement::tree));
    }

    @ParameterizedTest
    @ValueSource(strings = {"{}", "{\"format\": 1}", "{\"format\": 2, \"root\": {}}", "{\"format\": 1, \"root\": {\"stack\": 3}}",
        "{\"format\": 1, \"root\": {\"stack\": \"left\", \"views\": [\"a\"], \"front\": \"a\"}}"})
    void whatIsNoLayoutIsNone(String json) {
        assertEquals(Optional.empty(), Arrangement.of(TreeFile.parse(json.getBytes(java.nio.charset.StandardCharsets.UTF_8),
                Limits.STANDARD).tree().orElseThrow()));
    }
}
