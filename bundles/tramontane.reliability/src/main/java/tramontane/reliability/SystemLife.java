package tramontane.reliability;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.reliability.system.FailureGraph;
import tramontane.reliability.system.SystemSurvival;

/**
 * What happens when movers fail.
 *
 * @param banks    each bank, all others in order
 * @param whole    the whole equipment where it has several banks
 * @param interval time between visits at which all movers are exchanged, s
 */
public record SystemLife(List<Group> banks, Optional<Group> whole, Optional<Double> interval) {

    public SystemLife {
        banks = List.copyOf(banks);
    }

    /** All there is, banks first. */
    public List<Group> groups() {
        return whole.map(group -> {
            List<Group> all = new ArrayList<>(banks);
            all.add(group);
            return List.copyOf(all);
        }).orElse(banks);
    }

    /**
     * Movers that keep limits together.
     *
     * @param place    the id of the bank; empty for the whole equipment
     * @param spare    how many may fail, whichever they are, before a limit is passed
     * @param steps    the states in the order they were looked at
     * @param survival by what is stated, and defaults; times are calendar times, s
     * @param corners  by the ends of what is uncertain
     */
    public record Group(String place, int spare, List<Step> steps, SystemSurvival survival, List<SystemSurvival> corners) {
        public Group {
            steps = List.copyOf(steps);
            corners = List.copyOf(corners);
        }

        /** States and failures. */
        public FailureGraph graph() {
            return survival.graph();
        }
    }

    /**
     * A set of failed movers.
     *
     * @param failed what has failed, in words
     * @param count  how many have
     * @param kept   whether all limits are kept
     * @param limit  which limit is passed, where one is
     * @param ageing how much faster the rest ages, the mean of all that run
     */
    public record Step(String failed, int count, boolean kept, String limit, double ageing) {
    }
}
