package tramontane.selection;

import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Verdict;
import tramontane.model.AirMover;
import tramontane.model.Design;

/**
 * A part in an arrangement at a speed that was judged exactly and meets every requirement of flow and temperature in every
 * condition, and all else that could be judged.
 *
 * @param part        the part
 * @param arrangement how it is arranged
 * @param setting     its speed setting over that of the condition: the lowest, to a thousandth, with which all holds
 * @param speed       the largest speed of its movers in any case, rad/s
 * @param adjustable  whether its speed follows a setting at all
 * @param values      what it comes to by the criteria that are known of it, by {@link Criterion#id}, SI
 * @param steps       what it comes to by all criteria with a weight, in steps (factors of two), their weighted mean; lower is better
 * @param unknown     how many criteria with a weight are not known of it; those that know more come first
 * @param front       whether no other is as good in every criterion and better in one
 * @param tightest    the verdict that holds with the least to spare, of those that have a figure
 * @param unjudged    how many verdicts are not judged
 * @param design      the design with it
 * @param evaluation  what all analyses say of it briefly, by the figures as they are stated, without their bounds; empty for one that
 *                    is not listed
 */
public record Candidate(AirMover part, Arrangement arrangement, double setting, double speed, boolean adjustable, Map<String, Double> values,
        double steps, int unknown, boolean front, Optional<Verdict> tightest, int unjudged, Design design, Optional<Evaluation> evaluation) {

    /** Best first; of equals the one with the fewer movers, then by id. */
    public static final Comparator<Candidate> BEST_FIRST = Comparator.comparingInt(Candidate::unknown).thenComparingDouble(Candidate::steps)
            .thenComparingInt(candidate -> candidate.arrangement().movers()).thenComparing(candidate -> candidate.part().id())
            .thenComparingInt(candidate -> candidate.arrangement().series());

    public Candidate {
        values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
    }

    /** {@code P120-38, 2 side by side}. */
    public String words() {
        return part.id() + ", " + arrangement.words();
    }

    /** The same, on the front or not. */
    public Candidate withFront(boolean changed) {
        return new Candidate(part, arrangement, setting, speed, adjustable, values, steps, unknown, changed, tightest, unjudged, design, evaluation);
    }

    /** The same with another evaluation. */
    public Candidate withEvaluation(Evaluation changed) {
        return new Candidate(part, arrangement, setting, speed, adjustable, values, steps, unknown, front, tightest, unjudged, design, Optional.of(changed));
    }

    /** The verdicts, where it is listed. */
    public List<Verdict> verdicts() {
        return evaluation.map(Evaluation::verdicts).orElse(List.of());
    }
}
