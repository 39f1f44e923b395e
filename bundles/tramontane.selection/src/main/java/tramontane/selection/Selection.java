package tramontane.selection;

import java.util.List;
import tramontane.analysis.Finding;
import tramontane.analysis.Sentence;

/**
 * What came of a {@link Task}.
 *
 * @param needs     what each condition asks of the bank
 * @param criteria  the criteria that could be told, those with a weight first
 * @param ranked    the best candidates by the weights, best first
 * @param front     all candidates of which none is worse in every criterion than another (the Pareto set), best by the weights first
 * @param passed    what may do, too, and comes behind those ranked
 * @param rejected  what does not do, in the order of the parts
 * @param nearest   of these the ones that lack least, one of a part, with what would have to change
 * @param counts    how many of what
 * @param why       in words why these win
 * @param findings  what to know about the choice as a whole; errors where nothing could be chosen
 * @param cancelled whether it was left early: what is there is right, but not all
 */
public record Selection(List<Need> needs, List<Criterion> criteria, List<Candidate> ranked, List<Candidate> front, List<Passed> passed,
        List<Rejected> rejected, List<Rejected> nearest, Counts counts, List<Sentence> why, List<Finding> findings, boolean cancelled) {

    public Selection {
        needs = List.copyOf(needs);
        criteria = List.copyOf(criteria);
        ranked = List.copyOf(ranked);
        front = List.copyOf(front);
        passed = List.copyOf(passed);
        rejected = List.copyOf(rejected);
        nearest = List.copyOf(nearest);
        why = List.copyOf(why);
        findings = List.copyOf(findings);
    }

    /** The same with others that do not do, such as parts that were not asked about. */
    public Selection withRejected(List<Rejected> changed) {
        return new Selection(needs, criteria, ranked, front, passed, changed, nearest, counts, why, findings, cancelled);
    }

    /**
     * How many of what.
     *
     * @param parts    parts to choose from
     * @param fitting  parts that fit into the room in some arrangement
     * @param arranged parts times arrangements that were looked at
     * @param may      of these the ones that may do by the reduced design
     * @param exact    how many were solved exactly
     * @param meeting  how many of those meet everything that could be judged
     * @param unjudged of how many of those something that is required could not be judged
     */
    public record Counts(int parts, int fitting, int arranged, int may, int exact, int meeting, int unjudged) {

        /** {@code everything}, or {@code everything that could be judged}: what those that are counted as meeting it meet. */
        public String met() {
            return unjudged > 0 ? "everything that could be judged" : "everything";
        }
    }
}
