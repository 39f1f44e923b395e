package tramontane.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What an analysis returns.
 *
 * @param <T>       the type of its data
 * @param data      its typed data; empty where it could not be computed
 * @param figures   its figures
 * @param findings  its findings
 * @param overviews tables that it lays out itself
 */
public record Result<T>(Optional<T> data, List<Figure> figures, List<Finding> findings, List<Overview> overviews) {

    public Result {
        figures = List.copyOf(figures);
        findings = List.copyOf(findings);
        overviews = List.copyOf(overviews);
    }

    /** A result without tables of its own. */
    public Result(Optional<T> data, List<Figure> figures, List<Finding> findings) {
        this(data, figures, findings, List.of());
    }

    /** A result of data alone. */
    public static <T> Result<T> of(T data) {
        return new Result<>(Optional.of(data), List.of(), List.of());
    }

    /**
     * No honest answer, and why. This is a failure that callers see in their exit code; where a design simply has nothing that
     * the analysis is for, return data that says so, without figures.
     */
    public static <T> Result<T> notComputed(Finding... why) {
        return new Result<>(Optional.empty(), List.of(), List.of(why));
    }

    /** This result with more figures. */
    public Result<T> with(Figure... more) {
        List<Figure> all = new ArrayList<>(figures);
        all.addAll(List.of(more));
        return new Result<>(data, all, findings, overviews);
    }

    /** This result with more findings. */
    public Result<T> with(Finding... more) {
        List<Finding> all = new ArrayList<>(findings);
        all.addAll(List.of(more));
        return new Result<>(data, figures, all, overviews);
    }

    /** This result with more tables that it lays out itself. */
    public Result<T> with(Overview... more) {
        List<Overview> all = new ArrayList<>(overviews);
        all.addAll(List.of(more));
        return new Result<>(data, figures, findings, all);
    }
}
