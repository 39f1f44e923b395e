package tramontane.engine.internal;

import java.util.List;
import java.util.Set;
import tramontane.analysis.Evaluation.Status;
import tramontane.analysis.Finding;
import tramontane.analysis.Result;

/**
 * How one run of an analysis ended. Compared by identity: whoever used an answer is computed again when it is another one.
 */
final class Answer {

    private final Status status;
    private final Result<?> result;
    private final List<Finding> remarks;
    private final int depth;
    private final List<Long> askedUnder;
    private final Set<Key> ring;

    private Answer(Status status, Result<?> result, List<Finding> remarks, int depth, List<Long> askedUnder, Set<Key> ring) {
        this.status = status;
        this.result = result;
        this.remarks = List.copyOf(remarks);
        this.depth = depth;
        this.askedUnder = List.copyOf(askedUnder);
        this.ring = ring;
    }

    /**
     * The analysis ran.
     *
     * @param result     what it gave
     * @param remarks    what the engine has to say about it
     * @param depth      how deep it asked, itself included
     * @param askedUnder service ids of all analyses loaded when it asked "what if"; empty where it did not ask
     */
    static Answer of(Result<?> result, List<Finding> remarks, int depth, List<Long> askedUnder) {
        return new Answer(result.data().isPresent() ? Status.COMPUTED : Status.NOT_COMPUTED, result, remarks, depth,
                askedUnder, Set.of());
    }

    /** It did not run. */
    static Answer notRun(Finding why) {
        return new Answer(Status.NOT_RUN, Result.notComputed(), List.of(why), 1, List.of(), Set.of());
    }

    /** It failed. */
    static Answer failed(Finding why) {
        return new Answer(Status.FAILED, Result.notComputed(), List.of(why), 1, List.of(), Set.of());
    }

    /** It had to fail. */
    static Answer failed(Doom doom) {
        return new Answer(Status.FAILED, Result.notComputed(), List.of(doom.why()), 1, List.of(), doom.ring());
    }

    Status status() {
        return status;
    }

    boolean isComputed() {
        return status == Status.COMPUTED;
    }

    /** The result as the analysis gave it; empty where it gave none. */
    Result<?> result() {
        return result;
    }

    /** The engine's findings. */
    List<Finding> remarks() {
        return remarks;
    }

    /** The circle of runs that it failed for; whoever is one of them fails, too. */
    Set<Key> ring() {
        return ring;
    }

    int depth() {
        return depth;
    }

    /** Whether it still holds with these analyses loaded: what was asked for could come from another one now. */
    boolean holdsUnder(List<Long> loaded) {
        return askedUnder.isEmpty() || askedUnder.equals(loaded);
    }

    /** The analysis's findings, in one case. */
    List<Finding> findings(String condition) {
        return in(condition, result.findings());
    }

    /** The engine's findings, in one case. */
    List<Finding> remarks(String condition) {
        return in(condition, remarks);
    }

    private static List<Finding> in(String condition, List<Finding> findings) {
        return findings.stream().map(finding -> finding.condition().isEmpty() ? finding.in(condition) : finding).toList();
    }
}
