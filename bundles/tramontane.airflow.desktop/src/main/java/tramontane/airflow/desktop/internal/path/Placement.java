package tramontane.airflow.desktop.internal.path;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Where everything stands.
 *
 * @param boxes by key of node
 * @param bends by key of edge: where it turns on its way from its first to its second node, ends left out
 */
record Placement(Map<String, Box> boxes, Map<String, List<Spot>> bends) {

    /** Nothing placed yet. */
    static final Placement NONE = new Placement(Map.of(), Map.of());

    private static final double MARGIN = 12;
    private static final int MOST_PUSHES = 4000;

    Placement {
        boxes = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(boxes));
        bends = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(bends));
    }

    /** Whether it has a place for each node of a graph, of its size. */
    boolean fits(PathGraph graph) {
        return graph.nodes().stream().allMatch(node -> Optional.ofNullable(boxes.get(node.key()))
                .filter(box -> node.role() == PathGraph.Role.SOURCE || node.role() == PathGraph.Role.SINK
                        || box.width() == node.width() && box.height() == node.height()).isPresent())
                && graph.edges().stream().allMatch(edge -> bends.containsKey(edge.key()));
    }

    /**
     * This layout with bays where users put them. Joints and bends follow the bays that they join; what then lies under a bay that was
     * put there gives way up or down.
     */
    Placement pinned(PathGraph graph) {
        Map<String, Spot> shift = new LinkedHashMap<>();
        for (PathGraph.Node node : graph.nodes()) {
            node.pin().ifPresent(pin -> {
                Spot middle = boxes.get(node.key()).middle();
                shift.put(node.key(), new Spot(pin.x() - middle.x(), pin.y() - middle.y()));
            });
        }
        if (shift.isEmpty()) {
            return this;
        }
        Map<String, Box> moved = new LinkedHashMap<>(boxes);
        shift.forEach((key, by) -> moved.put(key, moved.get(key).moved(by.x(), by.y())));
        for (PathGraph.Node node : graph.nodes()) {
            if (node.role() == PathGraph.Role.JOINTS) {
                Spot by = follow(graph, node.key(), shift);
                moved.put(node.key(), moved.get(node.key()).moved(by.x(), by.y()));
            }
        }
        giveWay(graph, moved, shift);
        Map<String, List<Spot>> bent = new LinkedHashMap<>();
        for (PathGraph.Edge edge : graph.edges()) {
            bent.put(edge.key(), bend(edge, moved));
        }
        return new Placement(bars(graph, moved), bent);
    }

    /** Joints follow the mean of both bays; towards outside, whose bar is as high as the picture, they follow the one bay up and down. */
    private static Spot follow(PathGraph graph, String joints, Map<String, Spot> shift) {
        double x = 0;
        double y = 0;
        int bays = 0;
        for (PathGraph.Edge edge : graph.edges()) {
            String other = edge.from().equals(joints) ? edge.to() : edge.to().equals(joints) ? edge.from() : "";
            if (other.isEmpty()) {
                continue;
            }
            Spot by = shift.getOrDefault(other, new Spot(0, 0));
            x += by.x() / 2;
            if (!other.equals(PathGraph.SOURCE) && !other.equals(PathGraph.SINK)) {
                y += by.y();
                bays++;
            }
        }
        return new Spot(x, bays == 0 ? 0 : y / bays);
    }

    private static void giveWay(PathGraph graph, Map<String, Box> moved, Map<String, Spot> pinned) {
        List<String> keys = new ArrayList<>();
        graph.nodes().stream().filter(node -> node.role() != PathGraph.Role.SOURCE && node.role() != PathGraph.Role.SINK)
                .forEach(node -> keys.add(node.key()));
        int pushes = 0;
        boolean again = true;
        while (again && pushes < MOST_PUSHES) {
            again = false;
            for (int i = 0; i < keys.size(); i++) {
                for (int j = 0; j < keys.size(); j++) {
                    Box first = moved.get(keys.get(i));
                    Box second = moved.get(keys.get(j));
                    boolean firm = pinned.containsKey(keys.get(i)) || !pinned.containsKey(keys.get(j)) && i < j;
                    if (i != j && firm && !pinned.containsKey(keys.get(j)) && first.grown(MARGIN).overlaps(second)) {
                        // always the same way, or two would push each other to and fro
                        moved.put(keys.get(j), second.moved(0, first.bottom() + MARGIN - second.y()));
                        pushes++;
                        again = pushes < MOST_PUSHES;
                    }
                }
            }
        }
    }

    private List<Spot> bend(PathGraph.Edge edge, Map<String, Box> moved) {
        List<Spot> old = bends.get(edge.key());
        Spot a = by(edge.from(), moved);
        Spot b = by(edge.to(), moved);
        List<Spot> bent = new ArrayList<>();
        for (int i = 0; i < old.size(); i++) {
            double share = (i + 1.0) / (old.size() + 1);
            bent.add(old.get(i).plus(a.x() * (1 - share) + b.x() * share, a.y() * (1 - share) + b.y() * share));
        }
        return List.copyOf(bent);
    }

    private Spot by(String key, Map<String, Box> moved) {
        Spot before = boxes.get(key).middle();
        Spot after = moved.get(key).middle();
        return new Spot(after.x() - before.x(), after.y() - before.y());
    }

    /** Outside stays at the edges, whatever has been put there. */
    static Map<String, Box> bars(PathGraph graph, Map<String, Box> boxes) {
        Optional<Box> inner = graph.nodes().stream()
                .filter(node -> node.role() != PathGraph.Role.SOURCE && node.role() != PathGraph.Role.SINK)
                .map(node -> boxes.get(node.key())).reduce(Box::with);
        Map<String, Box> all = new LinkedHashMap<>(boxes);
        Box around = inner.orElse(new Box(0, 0, 2 * PathGraph.BAR, 2 * PathGraph.FULL));
        // where nothing is joined yet there must be room to draw a passage
        double room = LayeredPlacement.BETWEEN * (graph.edges().isEmpty() ? 4 : 1);
        all.put(PathGraph.SOURCE, new Box(around.x() - room - PathGraph.BAR, around.y(), PathGraph.BAR, around.height()));
        all.put(PathGraph.SINK, new Box(around.right() + room, around.y(), PathGraph.BAR, around.height()));
        return all;
    }
}
