package tramontane.selection;

import java.util.OptionalLong;

/** How candidates compare with the first, as one number. */
public final class Merit {

    /** What the number means, for people. */
    public static final String MEANING = "Merit: 100 for the first; 50 means on the weighted average twice as much of everything.";

    private Merit() {
    }

    /**
     * 100 for the first, half of that for each step that another lies behind it.
     *
     * @return empty where more or less is known of it than of the first: then the two means are not of the same things
     */
    public static OptionalLong of(Candidate first, Candidate candidate) {
        double merit = 100 * Math.pow(2, first.steps() - candidate.steps());
        return first.unknown() == candidate.unknown() && Double.isFinite(merit) ? OptionalLong.of(Math.round(merit)) : OptionalLong.empty();
    }
}
