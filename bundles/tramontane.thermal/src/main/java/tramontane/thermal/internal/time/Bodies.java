package tramontane.thermal.internal.time;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tramontane.model.Link;
import tramontane.model.Quantity;
import tramontane.thermal.PartState;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalState;
import tramontane.thermal.internal.EnclosureSection;
import tramontane.thermal.internal.Parts;

/**
 * What holds heat: bodies on the hot sides of links, and what stands in bays. The state of a history is a temperature for each.
 *
 * @param nodes  the bodies, those of one part together and from its junction outwards
 * @param ofPart numbers of the bodies of each part
 */
record Bodies(List<Node> nodes, int[][] ofPart) {

    Bodies {
        nodes = List.copyOf(nodes);
    }

    /**
     * One body.
     *
     * @param name        what people call it
     * @param part        number of its part; -1 for what stands in a bay
     * @param link        number of the link whose hot side it is
     * @param place       number of the bay it stands in, for one without part
     * @param capacity    J/K
     * @param conductance to the air of the bay, W/K, for one without part
     */
    record Node(String name, int part, int link, int place, double capacity, double conductance) {
        Node with(double changed) {
            return new Node(name, part, link, place, changed, conductance);
        }
    }

    static Bodies of(List<Node> nodes, int parts) {
        int[][] ofPart = new int[parts][];
        for (int k = 0; k < parts; k++) {
            int part = k;
            ofPart[k] = java.util.stream.IntStream.range(0, nodes.size()).filter(i -> nodes.get(i).part() == part).toArray();
        }
        return new Bodies(nodes, ofPart);
    }

    /** All bodies of a design. */
    static Bodies of(ThermalModel model) {
        List<Node> nodes = new ArrayList<>();
        List<Parts.Part> parts = model.parts().list();
        for (int k = 0; k < parts.size(); k++) {
            Parts.Part part = parts.get(k);
            List<Link> chain = part.source().chain();
            for (int i = 0; i < chain.size() && part.fault().isEmpty(); i++) {
                if (chain.get(i).heatCapacity().isPresent()) {
                    nodes.add(new Node(name(part, i), k, i, -1, chain.get(i).heatCapacity().get().si(), 0));
                }
            }
        }
        List<EnclosureSection.Enclosure> enclosures = model.balancing().enclosures();
        for (int i = 0; i < enclosures.size(); i++) {
            EnclosureSection.Enclosure enclosure = enclosures.get(i);
            if (enclosure.chassisCapacity().isPresent() && enclosure.chassisConductance().isPresent()) {
                nodes.add(new Node("the chassis of " + model.path().bays().get(i).id(), -1, -1, i,
                        enclosure.chassisCapacity().map(Quantity::si).get(), enclosure.chassisConductance().map(Quantity::si).get()));
            }
        }
        return of(nodes, parts.size());
    }

    private static String name(Parts.Part part, int link) {
        return "the hot side of " + part.source().chain().get(link).kind() + " of " + part.source().id();
    }

    /**
     * Temperatures in a steady state, K.
     *
     * @param state     the state
     * @param otherwise what stands for air without temperature, K
     */
    double[] at(ThermalState state, double otherwise) {
        double[] all = new double[size()];
        for (int i = 0; i < all.length; i++) {
            Node node = nodes.get(i);
            if (node.part() < 0) {
                all[i] = known(state.temperatures().get(node.place()), otherwise);
            } else {
                PartState part = state.parts().get(node.part());
                double rise = 0;
                for (int link = node.link(); link < part.links().size(); link++) {
                    rise += part.links().get(link).rise();
                }
                all[i] = known(part.air(), otherwise) + rise;
            }
        }
        return all;
    }

    private static double known(double temperature, double otherwise) {
        return Double.isNaN(temperature) ? otherwise : temperature;
    }

    int size() {
        return nodes.size();
    }

    /** The body of a part that is next to the air; -1 where it has none. */
    int last(int part) {
        return ofPart[part].length == 0 ? -1 : ofPart[part][ofPart[part].length - 1];
    }

    /** Those that stay, with other heat capacities. */
    Bodies left(boolean[] gone, double[] capacity) {
        List<Node> left = new ArrayList<>();
        for (int i = 0; i < nodes.size(); i++) {
            if (!gone[i]) {
                left.add(nodes.get(i).with(capacity[i]));
            }
        }
        return of(left, ofPart.length);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Bodies bodies && nodes.equals(bodies.nodes) && Arrays.deepEquals(ofPart, bodies.ofPart);
    }

    @Override
    public int hashCode() {
        return nodes.hashCode();
    }
}
