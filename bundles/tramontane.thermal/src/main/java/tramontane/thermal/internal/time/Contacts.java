package tramontane.thermal.internal.time;

import java.util.ArrayList;
import java.util.List;
import tramontane.thermal.internal.Parts;

/**
 * Where heat goes into air, and which air it counts from.
 *
 * @param bays   number of bays, the places with the lowest numbers
 * @param places number of places: bays, then passages
 * @param givers what gives off heat
 * @param airs   the air at each part, then that at each chassis
 */
record Contacts(int bays, int places, List<Giver> givers, List<Local> airs) {

    Contacts {
        givers = List.copyOf(givers);
        airs = List.copyOf(airs);
    }

    /**
     * Something that gives off heat.
     *
     * @param place where
     * @param body  number of the body whose heat it is; -1 for heat that does not wait
     * @param local number of the air to which the body gives it off
     * @param part  number of the part; -1 for a chassis
     * @param chain whether it is the heat of that part's chain
     */
    record Giver(int place, int body, int local, int part, boolean chain) {
    }

    /**
     * The air at something.
     *
     * @param place   where
     * @param along   whether it counts from the air that comes to the place; else from the mean of the bay
     * @param givers  numbers of the givers at the place that warm it
     * @param weights how much each does
     */
    record Local(int place, boolean along, int[] givers, double[] weights) {
    }

    /** The contacts of a design's parts and of the bodies that are left. */
    static Contacts of(Parts parts, Bodies bodies) {
        List<Giver> givers = new ArrayList<>();
        List<List<Integer>> at = new ArrayList<>();
        List<List<Parts.Share>> shares = new ArrayList<>();
        for (int place = 0; place < parts.places(); place++) {
            at.add(new ArrayList<>());
            shares.add(parts.shares(place));
            for (Parts.Share share : parts.shares(place)) {
                int last = share.chain() ? bodies.last(share.part()) : -1;
                at.get(place).add(givers.size());
                givers.add(new Giver(place, last, share.part(), share.part(), share.chain()));
            }
        }
        List<Local> airs = new ArrayList<>();
        for (int k = 0; k < parts.list().size(); k++) {
            int place = parts.list().get(k).places().getFirst();
            boolean along = place >= parts.bays() || parts.list().get(k).source().row().isPresent();
            int[] numbers = at.get(place).stream().mapToInt(Integer::intValue).toArray();
            double[] weights = new double[numbers.length];
            for (int i = 0; i < weights.length; i++) {
                weights[i] = parts.weight(k, shares.get(place).get(i));
            }
            airs.add(new Local(place, along, numbers, weights));
        }
        for (int i = 0; i < bodies.nodes().size(); i++) {
            Bodies.Node node = bodies.nodes().get(i);
            if (node.part() < 0) {
                givers.add(new Giver(node.place(), i, airs.size(), -1, true));
                airs.add(new Local(node.place(), false, new int[0], new double[0]));
            }
        }
        return new Contacts(parts.bays(), parts.places(), givers, airs);
    }
}
