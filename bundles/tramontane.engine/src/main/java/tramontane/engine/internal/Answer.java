package tramontane.engine.internal;

import java.util.List;
import java.util.stream.Stream;
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

    private Answer(Status status, Result<?> result, List<Finding> remarks, int depth, List<Long> askedUnder) {
        this.status = status;
        this.result = result;
        this.remarks = List.copyOf(remarks);
        this.depth = depth;
        this.askedUnder = List.copyOf(askedUnder);
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
        return new Answer(result.data().isPresent() ? Status.COMPUTED : Status.NOT_COMPUTED, result, remarks, depth, askedUnder);
    }

    /** It did not run. */
    static Answer notRun(Finding why) {
        return new Answer(Status.NOT_RUN, Result.notComputed(), List.of(why), 1, List.of());
    }

    /** It failed. */
    static Answer failed(List<Finding> why, int depth) {
        return new Answer(Status.FAILED, Result.notComputed(), why, depth, List.of());
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

    int depth() {
        return depth;
    }

    /** Whether it still holds with these analyses loaded: what was asked for could come from another one now. */
    boolean holdsUnder(List<Long> loaded) {
        return askedUnder.isEmpty() || askedUnder.equals(loaded);
    }

    /** All findings of one case. */
    List<Finding> findings(String condition) {
        return Stream.concat(result.findings().stream(), remarks.stream())
                .map(finding -> finding.condition().isEmpty() ? finding.in(condition) : finding).toList();
    }
}
