package tramontane.airflow;

import java.util.List;
import java.util.Objects;
import tramontane.analysis.FlowLaw;

/**
 * Bays joined by branches, each with a flow law.
 *
 * @param bays     the bays, without the outside
 * @param branches the branches
 */
public record Network(List<Bay> bays, List<Branch> branches) {

    /** The number of the outside in {@link Branch#from} and {@link Branch#to}: its pressure is known and zero. */
    public static final int OUTSIDE = -1;

    public Network {
        bays = List.copyOf(bays);
        branches = List.copyOf(branches);
        for (Branch branch : branches) {
            for (int end : new int[] {branch.from, branch.to}) {
                if (end < OUTSIDE || end >= bays.size()) {
                    throw new IllegalArgumentException("branch " + branch.id + " ends in bay " + end + " of " + bays.size());
                }
            }
        }
    }

    /**
     * A bay.
     *
     * @param id     its name, for messages
     * @param height height of its middle above a common level, m
     */
    public record Bay(String id, double height) {
        public Bay {
            Objects.requireNonNull(id);
            if (!Double.isFinite(height)) {
                throw new IllegalArgumentException("height of bay " + id + " must be finite, got " + height);
            }
        }
    }

    /**
     * What joins two bays.
     *
     * @param id   its name, for messages
     * @param from number of the bay in which it starts, or {@link #OUTSIDE}; flow from here is positive
     * @param to   number of the bay in which it ends, or {@link #OUTSIDE}
     * @param law  its pressure drop; a bank's drop is its rise with the sign turned
     */
    public record Branch(String id, int from, int to, FlowLaw law) {
        public Branch {
            Objects.requireNonNull(id);
            Objects.requireNonNull(law);
        }
    }
}
