package tramontane.airflow.desktop.internal.path;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tramontane.model.Bay;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.model.Value;

/**
 * What is joined to what, and how much room it needs; all that a layout is made from. Values play no part in it: of two designs with
 * equal graphs the picture stands still.
 *
 * <p>Passages between the same two bays in the same direction share one node of {@link Role#JOINTS}, in which each has a lane. As the
 * ribbons at one side of a bay are never wider together than {@link #FULL}, a lane can be as wide as its share of the flow without the
 * node growing.
 *
 * @param nodes outside first as source, bays and joints in the order of the design, outside last as sink
 * @param edges joins a bay to joints, or joints to a bay, in the direction in which the passage is written
 */
record PathGraph(List<Node> nodes, List<Edge> edges) {

    /** Width of all the air of the bay through which most goes. */
    static final double FULL = 64;
    /** Between ribbons at a bay. */
    static final double RIBBON_GAP = 4;
    /** Below the last line of a lane. */
    static final double LANE_GAP = 12;
    /** Between a ribbon and its label. */
    static final double LABEL_GAP = 5;
    /** The keys of the two sides of outside. */
    static final String SOURCE = "source";
    static final String SINK = "sink";
    /** The member of the air path that says where users put things, and in it that for bays: {@code {"rear": {"x": 640, "y": 120}}}. */
    static final String LAYOUT = "layout";
    static final String BAYS = "bays";
    /** Width of the bars of outside. */
    static final double BAR = 66;
    private static final double NARROWEST = 84;
    private static final double WIDEST = 190;
    private static final double PADDING = 12;

    /** What a node is. */
    enum Role {
        /** Outside, where air comes from. */
        SOURCE,
        /** A bay. */
        BAY,
        /** A bay that passages name and the design does not have. */
        MISSING,
        /** Passages side by side. */
        JOINTS,
        /** Outside, where air goes. */
        SINK
    }

    /**
     * Something with a place.
     *
     * @param key      its name among nodes
     * @param role     what it is
     * @param id       the id of the bay; empty for joints
     * @param width    room that it needs
     * @param height   room that it needs
     * @param entry    how far below its top the middle of its ribbons is
     * @param passages the passages of joints by number, in the order of the design
     * @param pin      the middle where a user put it
     */
    record Node(String key, Role role, String id, double width, double height, double entry, List<Integer> passages,
            Optional<Spot> pin) {
        Node {
            passages = List.copyOf(passages);
        }
    }

    /**
     * One half of a way from bay to bay.
     *
     * @param from     key of the node where it starts
     * @param to       key of the node where it ends
     * @param backward whether it runs against the order in which bays are laid out, as what closes a loop does
     */
    record Edge(String from, String to, boolean backward) {

        /** Its name among edges. */
        String key() {
            return from + "\n" + to;
        }
    }

    PathGraph {
        nodes = List.copyOf(nodes);
        edges = List.copyOf(edges);
    }

    /** The key of a bay's node. */
    static String bayKey(String id) {
        return "bay:" + id;
    }

    /** The key of the node at which a passage starts. */
    static String startKey(Passage passage) {
        return passage.from().equals(Bay.OUTSIDE) ? SOURCE : bayKey(passage.from());
    }

    /** The key of the node at which a passage ends. */
    static String endKey(Passage passage) {
        return passage.to().equals(Bay.OUTSIDE) ? SINK : bayKey(passage.to());
    }

    /** The key of the node in which a passage has its lane. */
    static String jointsKey(Passage passage) {
        return "joints:" + startKey(passage) + "\n" + endKey(passage);
    }

    /** This graph without what users have put somewhere: two graphs that are equal so differ in pins alone. */
    PathGraph unpinned() {
        return new PathGraph(nodes.stream().map(node -> new Node(node.key, node.role, node.id, node.width, node.height, node.entry, node.passages,
                Optional.empty())).toList(), edges);
    }

    /** How many lines a passage has for what is known of it, below its name. */
    static int lines(Passage passage) {
        return passage.isBank() ? 3 : 2;
    }

    /** The height of the label of a passage. */
    static double labelHeight(Passage passage, Measure measure) {
        return measure.height(Measure.Face.NAME) + lines(passage) * measure.height(Measure.Face.TEXT);
    }

    /** Room for the label of a passage and what lies below it. */
    static double belowRibbon(Passage passage, Measure measure) {
        return LABEL_GAP + labelHeight(passage, measure) + LANE_GAP;
    }

    /** The graph of a design. */
    static PathGraph of(Design design, Measure measure) {
        List<Passage> passages = design.airPath().passages();
        Map<String, List<Integer>> joints = new LinkedHashMap<>();
        for (int i = 0; i < passages.size(); i++) {
            joints.computeIfAbsent(jointsKey(passages.get(i)), key -> new ArrayList<>()).add(i);
        }
        Map<String, Bay> bays = new LinkedHashMap<>();
        design.airPath().bays().stream().filter(bay -> !bay.id().equals(Bay.OUTSIDE)).forEach(bay -> bays.putIfAbsent(bay.id(), bay));
        Set<String> missing = new java.util.LinkedHashSet<>();
        for (Passage passage : passages) {
            for (String end : List.of(passage.from(), passage.to())) {
                if (!end.equals(Bay.OUTSIDE) && !bays.containsKey(end)) {
                    missing.add(end);
                }
            }
        }
        Map<String, Integer> degree = new LinkedHashMap<>();
        joints.values().forEach(group -> {
            Passage first = passages.get(group.getFirst());
            degree.merge(startKey(first), group.size(), Integer::sum);
            degree.merge(endKey(first), group.size(), Integer::sum);
        });
        List<Node> nodes = new ArrayList<>();
        nodes.add(new Node(SOURCE, Role.SOURCE, Bay.OUTSIDE, BAR, FULL, FULL / 2, List.of(), Optional.empty()));
        bays.values().forEach(bay -> nodes.add(bay(Role.BAY, bay.id(), pin(design, bay.id()), degree, measure)));
        missing.forEach(id -> nodes.add(bay(Role.MISSING, id, Optional.empty(), degree, measure)));
        Set<String> backward = backward(nodes, joints, passages);
        List<Edge> edges = new ArrayList<>();
        joints.forEach((key, group) -> {
            nodes.add(joints(key, group, passages, measure));
            Passage first = passages.get(group.getFirst());
            boolean against = backward.contains(key);
            edges.add(new Edge(startKey(first), key, against));
            if (!startKey(first).equals(endKey(first))) {
                edges.add(new Edge(key, endKey(first), against));
            }
        });
        nodes.add(new Node(SINK, Role.SINK, Bay.OUTSIDE, BAR, FULL, FULL / 2, List.of(), Optional.empty()));
        return new PathGraph(nodes, edges);
    }

    /** Where a user put a bay; empty where nobody did. */
    static Optional<Spot> pin(Design design, String bay) {
        return design.airPath().more().tree(LAYOUT).flatMap(layout -> layout.tree(BAYS)).flatMap(bays -> bays.tree(bay))
                .flatMap(there -> number(there, "x").flatMap(x -> number(there, "y").map(y -> new Spot(x, y))));
    }

    private static Optional<Double> number(Value.Tree tree, String name) {
        return tree.get(name).filter(Value.Num.class::isInstance).map(value -> ((Value.Num) value).number())
                .filter(number -> Math.abs(number) < 1e6);
    }

    private static Node bay(Role role, String id, Optional<Spot> pin, Map<String, Integer> degree, Measure measure) {
        double text = measure.height(Measure.Face.NAME) + 2 * measure.height(Measure.Face.TEXT) + 2 * PADDING;
        double ribbons = FULL + RIBBON_GAP * Math.max(0, degree.getOrDefault(bayKey(id), 0) - 1) + 2 * PADDING;
        double width = Math.clamp(measure.width(id, Measure.Face.NAME) + 2 * PADDING, NARROWEST, WIDEST);
        double height = Math.max(text, ribbons);
        return new Node(bayKey(id), role, id, width, height, height / 2, List.of(), pin);
    }

    private static Node joints(String key, List<Integer> group, List<Passage> passages, Measure measure) {
        double width = NARROWEST;
        double height = FULL;
        for (int i : group) {
            Passage passage = passages.get(i);
            width = Math.max(width, measure.width(passage.id(), Measure.Face.NAME) + PADDING);
            width = Math.max(width, measure.width("000.0 m³/h", Measure.Face.TEXT));
            height += belowRibbon(passage, measure);
            if (passage.isBank()) {
                BankGrid grid = BankGrid.of(passage);
                width = Math.max(width, Math.max(grid.width() + 2 * PADDING, measure.width("no. 00 freewheeling", Measure.Face.TEXT)));
                height += grid.height() + 2 * RIBBON_GAP;
            }
        }
        double entry = (height - belowRibbon(passages.get(group.getLast()), measure)) / 2;
        return new Node(key, Role.JOINTS, "", Math.min(width, Math.max(WIDEST, widestGrid(group, passages))), height, entry, group,
                Optional.empty());
    }

    private static double widestGrid(List<Integer> group, List<Passage> passages) {
        return group.stream().map(passages::get).filter(Passage::isBank).mapToDouble(bank -> BankGrid.of(bank).width() + 2 * PADDING)
                .max().orElse(0);
    }

    /**
     * What closes a loop: found by going along the passages as they are written, from outside first, then from bays in the order of the
     * design, so that it depends on nothing but that order.
     */
    private static Set<String> backward(List<Node> nodes, Map<String, List<Integer>> joints, List<Passage> passages) {
        Map<String, List<String>> leaving = new LinkedHashMap<>();
        Map<String, String> end = new LinkedHashMap<>();
        joints.forEach((key, group) -> {
            Passage first = passages.get(group.getFirst());
            leaving.computeIfAbsent(startKey(first), from -> new ArrayList<>()).add(key);
            end.put(key, endKey(first));
        });
        Set<String> backward = new HashSet<>();
        Set<String> done = new HashSet<>();
        for (Node start : nodes) {
            walk(start.key(), leaving, end, done, backward);
        }
        return backward;
    }

    /** Depth first without recursion: a chain of bays may be long. */
    private static void walk(String start, Map<String, List<String>> leaving, Map<String, String> end, Set<String> done,
            Set<String> backward) {
        if (!done.add(start)) {
            return;
        }
        Set<String> open = new HashSet<>(Set.of(start));
        List<String> way = new ArrayList<>(List.of(start));
        List<java.util.Iterator<String>> ahead = new ArrayList<>(List.of(leaving.getOrDefault(start, List.of()).iterator()));
        while (!way.isEmpty()) {
            if (!ahead.getLast().hasNext()) {
                ahead.removeLast();
                open.remove(way.removeLast());
                continue;
            }
            String joint = ahead.getLast().next();
            String next = end.get(joint);
            if (open.contains(next)) {
                backward.add(joint);
            } else if (done.add(next)) {
                open.add(next);
                way.add(next);
                ahead.add(leaving.getOrDefault(next, List.of()).iterator());
            }
        }
    }
}
