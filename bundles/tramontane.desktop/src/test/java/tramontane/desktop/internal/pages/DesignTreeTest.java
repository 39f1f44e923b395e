package tramontane.desktop.internal.pages;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Severity;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.model.edit.Subject;
import tramontane.physics.units.UnitSystem;

class DesignTreeTest {

    private static final Design BOX = Scenes.design(Scenes.BOX);

    private static List<TreeNode> flat(List<TreeNode> nodes) {
        List<TreeNode> all = new ArrayList<>();
        for (TreeNode node : nodes) {
            all.add(node);
            all.addAll(flat(node.children()));
        }
        return all;
    }

    private static List<TreeNode> tree(String search, Problem... problems) {
        return flat(DesignTree.of(Scenes.scene(BOX, UnitSystem.METRIC, problems), Scenes.KNOWN, search));
    }

    private static TreeNode node(List<TreeNode> nodes, String key) {
        return nodes.stream().filter(node -> node.key().equals(key)).findFirst().orElseThrow();
    }

    @Test
    void everySubjectStandsInIt() {
        List<TreeNode> nodes = tree("");
        List<Subject> shown = nodes.stream().flatMap(node -> node.subject().stream()).toList();
        assertTrue(shown.containsAll(Subject.all(BOX)));
        assertEquals(2, shown.stream().filter(Subject.passage("fans")::equals).count());
        assertEquals(nodes.size(), new HashSet<>(nodes.stream().map(TreeNode::key).toList()).size());
        assertEquals("35 W", node(nodes, "sources/cpu/0").detail());
        assertEquals("40 °C", node(nodes, "conditions/hot/0").detail());
        assertEquals("flow at fans", node(nodes, "requirements/0/0").label());
        assertEquals("≥ 59.47 m³/h", node(nodes, "requirements/0/0").detail());
        assertEquals("M", node(nodes, "banks/fans/0").detail());
        assertEquals("2", node(nodes, "group/bays").detail());
    }

    @Test
    void theWorstIsMarkedAndSaysWhy() {
        List<TreeNode> nodes = tree("", Problem.error("heatSources[0].limit", "is too low"));
        assertEquals(Optional.of(Severity.NOT_MET), node(nodes, "passages/fans/0").severity());
        assertEquals(Optional.of(Severity.CAUTION), node(nodes, "passages/slot/0").severity());
        assertEquals("is narrow", node(nodes, "passages/slot/0").why());
        assertEquals(Optional.of(Severity.NOT_MET), node(nodes, "conditions/hot/0").severity());
        assertEquals(Optional.empty(), node(nodes, "conditions/mild/0").severity());
        assertEquals(Optional.of(Severity.ERROR), node(nodes, "group/sources").severity());
        assertEquals("cpu: is too low", node(nodes, "group/sources").why());
        assertEquals(Optional.of(Severity.NOT_MET), node(nodes, "requirements/0/0").severity());
    }

    @Test
    void searchLooksAtNamesKindsAndValues() {
        assertEquals(List.of("group/path", "group/passages", "passages/slot/0"), tree("3 MM").stream().map(TreeNode::key).toList());
        assertEquals(List.of("group/sources", "sources/cpu/0"), tree("heat source cpu").stream().map(TreeNode::key).toList());
        assertEquals(List.of(), tree("nowhere to be found"));
        assertFalse(tree("axial").isEmpty());
    }

    @Test
    void whatCanBeDoneDependsOnTheLine() {
        List<TreeNode> nodes = tree("");
        assertEquals(new DesignTree.Possible(true, true, true, Optional.of(Subject.Kind.PASSAGE)), DesignTree.Possible.with(node(nodes, "passages/fans/0")));
        assertEquals(new DesignTree.Possible(false, true, true, Optional.of(Subject.Kind.REQUIREMENT)),
                DesignTree.Possible.with(node(nodes, "requirements/0/0")));
        assertEquals(new DesignTree.Possible(true, false, false, Optional.empty()), DesignTree.Possible.with(node(nodes, "equipment//0")));
        assertEquals(new DesignTree.Possible(false, false, false, Optional.of(Subject.Kind.BAY)), DesignTree.Possible.with(node(nodes, "bays/outside/0")));
        assertEquals(Optional.of(Subject.Kind.HEAT_SOURCE), DesignTree.Possible.with(node(nodes, "group/sources")).add());
    }

    @Test
    void aDesignWithoutConditionsSaysWhatHolds() {
        List<TreeNode> nodes = flat(DesignTree.of(Scenes.scene(Design.EMPTY, UnitSystem.METRIC), Known.NOTHING, ""));
        assertEquals("nominal", node(nodes, "conditions/").label());
        assertEquals(Optional.of(Subject.DESIGN), node(nodes, "design//0").subject());
    }
}
