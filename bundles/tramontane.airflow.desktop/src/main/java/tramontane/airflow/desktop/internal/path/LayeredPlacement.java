package tramontane.airflow.desktop.internal.path;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.elk.alg.layered.options.CrossingMinimizationStrategy;
import org.eclipse.elk.alg.layered.options.LayerConstraint;
import org.eclipse.elk.alg.layered.options.LayeredMetaDataProvider;
import org.eclipse.elk.alg.layered.options.LayeredOptions;
import org.eclipse.elk.alg.layered.options.NodePlacementStrategy;
import org.eclipse.elk.alg.layered.options.OrderingStrategy;
import org.eclipse.elk.core.RecursiveGraphLayoutEngine;
import org.eclipse.elk.core.data.LayoutMetaDataService;
import org.eclipse.elk.core.options.CoreOptions;
import org.eclipse.elk.core.options.Direction;
import org.eclipse.elk.core.options.EdgeRouting;
import org.eclipse.elk.core.options.PortConstraints;
import org.eclipse.elk.core.options.PortSide;
import org.eclipse.elk.core.util.NullElkProgressMonitor;
import org.eclipse.elk.graph.ElkBendPoint;
import org.eclipse.elk.graph.ElkEdge;
import org.eclipse.elk.graph.ElkEdgeSection;
import org.eclipse.elk.graph.ElkNode;
import org.eclipse.elk.graph.ElkPort;
import org.eclipse.elk.graph.util.ElkGraphUtil;

/**
 * Lays a graph out in layers along the flow: K. Sugiyama, S. Tagawa, M. Toda, Methods for visual understanding of hierarchical system
 * structures, IEEE Trans. Syst. Man Cybern. 11 (1981) 109, as the Eclipse Layout Kernel does it.
 *
 * <p>The first call in a JVM takes some half a second, so it is made off the UI thread.
 */
final class LayeredPlacement {

    /** Between layers: room for a ribbon to swing from one height to another. */
    static final double BETWEEN = 26;
    private static final double BESIDE = 26;
    /** Up to this many nodes the slower way is taken that makes ribbons straighter. */
    private static final int STRAIGHT = 150;
    private static final int SEED = 1;

    private static boolean known;

    private LayeredPlacement() {
    }

    /** Where nodes and edges of a graph stand, pins respected. The same graph gives the same answer. */
    static Placement of(PathGraph graph) {
        return free(graph).pinned(graph);
    }

    /** Where they stand if nobody put a bay anywhere. */
    static Placement free(PathGraph graph) {
        prepare();
        ElkNode root = ElkGraphUtil.createGraph();
        root.setProperty(CoreOptions.ALGORITHM, LayeredOptions.ALGORITHM_ID);
        root.setProperty(CoreOptions.DIRECTION, Direction.RIGHT);
        root.setProperty(CoreOptions.EDGE_ROUTING, EdgeRouting.POLYLINE);
        root.setProperty(CoreOptions.SEPARATE_CONNECTED_COMPONENTS, false);
        root.setProperty(CoreOptions.RANDOM_SEED, SEED);
        root.setProperty(LayeredOptions.SPACING_NODE_NODE, BESIDE);
        root.setProperty(LayeredOptions.SPACING_EDGE_NODE, BESIDE * 0.7);
        root.setProperty(LayeredOptions.SPACING_EDGE_EDGE, PathGraph.RIBBON_GAP * 3);
        root.setProperty(LayeredOptions.SPACING_NODE_NODE_BETWEEN_LAYERS, BETWEEN);
        root.setProperty(LayeredOptions.SPACING_EDGE_NODE_BETWEEN_LAYERS, BETWEEN * 0.6);
        root.setProperty(LayeredOptions.NODE_PLACEMENT_STRATEGY, graph.nodes().size() <= STRAIGHT
                ? NodePlacementStrategy.NETWORK_SIMPLEX : NodePlacementStrategy.BRANDES_KOEPF);
        root.setProperty(LayeredOptions.CROSSING_MINIMIZATION_STRATEGY, CrossingMinimizationStrategy.LAYER_SWEEP);
        root.setProperty(LayeredOptions.CONSIDER_MODEL_ORDER_STRATEGY, OrderingStrategy.PREFER_NODES);
        Map<String, ElkNode> nodes = new LinkedHashMap<>();
        Map<String, ElkPort> inlets = new HashMap<>();
        Map<String, ElkPort> outlets = new HashMap<>();
        for (PathGraph.Node node : graph.nodes()) {
            ElkNode placed = ElkGraphUtil.createNode(root);
            placed.setDimensions(node.width(), node.height());
            if (node.role() == PathGraph.Role.SOURCE) {
                placed.setProperty(LayeredOptions.LAYERING_LAYER_CONSTRAINT, LayerConstraint.FIRST_SEPARATE);
            } else if (node.role() == PathGraph.Role.SINK) {
                placed.setProperty(LayeredOptions.LAYERING_LAYER_CONSTRAINT, LayerConstraint.LAST_SEPARATE);
            }
            if (node.role() == PathGraph.Role.JOINTS) {
                placed.setProperty(CoreOptions.PORT_CONSTRAINTS, PortConstraints.FIXED_POS);
                inlets.put(node.key(), port(placed, PortSide.WEST, 0, node.entry()));
                outlets.put(node.key(), port(placed, PortSide.EAST, node.width(), node.entry()));
            }
            nodes.put(node.key(), placed);
        }
        Map<String, ElkEdge> edges = new LinkedHashMap<>();
        for (PathGraph.Edge edge : graph.edges()) {
            String from = edge.backward() ? edge.to() : edge.from();
            String to = edge.backward() ? edge.from() : edge.to();
            ElkEdge placed = ElkGraphUtil.createSimpleEdge(outlets.containsKey(from) ? outlets.get(from) : nodes.get(from),
                    inlets.containsKey(to) ? inlets.get(to) : nodes.get(to));
            placed.setProperty(CoreOptions.EDGE_THICKNESS, PathGraph.FULL);
            edges.put(edge.key(), placed);
        }
        new RecursiveGraphLayoutEngine().layout(root, new NullElkProgressMonitor());
        return read(graph, nodes, edges);
    }

    private static ElkPort port(ElkNode node, PortSide side, double x, double y) {
        ElkPort port = ElkGraphUtil.createPort(node);
        port.setProperty(CoreOptions.PORT_SIDE, side);
        port.setLocation(x, y);
        return port;
    }

    private static Placement read(PathGraph graph, Map<String, ElkNode> nodes, Map<String, ElkEdge> edges) {
        Map<String, Box> boxes = new LinkedHashMap<>();
        nodes.forEach((key, node) -> boxes.put(key, new Box(node.getX(), node.getY(), node.getWidth(), node.getHeight())));
        Map<String, List<Spot>> bends = new LinkedHashMap<>();
        for (PathGraph.Edge edge : graph.edges()) {
            List<Spot> spots = new ArrayList<>();
            for (ElkEdgeSection section : edges.get(edge.key()).getSections()) {
                for (ElkBendPoint bend : section.getBendPoints()) {
                    spots.add(new Spot(bend.getX(), bend.getY()));
                }
            }
            if (edge.backward()) {
                spots = spots.reversed();
            }
            bends.put(edge.key(), List.copyOf(spots));
        }
        return new Placement(Placement.bars(graph, boxes), bends);
    }

    private static synchronized void prepare() {
        if (!known) {
            LayoutMetaDataService.getInstance().registerLayoutMetaDataProviders(new LayeredMetaDataProvider());
            known = true;
        }
    }
}
