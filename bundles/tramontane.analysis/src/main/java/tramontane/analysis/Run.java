package tramontane.analysis;

import java.util.List;
import java.util.Optional;
import org.osgi.annotation.versioning.ProviderType;
import tramontane.model.Condition;
import tramontane.model.Design;

/**
 * One run of an analysis, as the analysis sees it.
 *
 * <pre>{@code
 * for (int i = 0; i < steps; i++) {
 *     run.check();                                    // leaves if nobody wants the answer any more
 *     run.progress(i / (double) steps, "step " + i);
 *     …
 * }
 * Condition slower = input.condition().withSpeed(Quantity.of(0.5));
 * Optional<OperatingPoint> atHalfSpeed = run.ask(input.design(), slower, OperatingPoint.class);
 * List<Figure> flowsThen = run.figures(input.design(), slower, "airflow.bank.flow");
 * }</pre>
 */
@ProviderType
public interface Run {

    /** Whether the answer is no longer wanted. Long loops ask, or call {@link #check}. */
    boolean cancelled();

    /**
     * Leaves the run if the answer is no longer wanted.
     *
     * @throws Cancelled if so
     */
    default void check() {
        if (cancelled()) {
            throw new Cancelled();
        }
    }

    /**
     * Says how far it has come.
     *
     * @param fraction done, 0 to 1
     * @param message  what it is doing, a few words; may be empty
     */
    void progress(double fraction, String message);

    /**
     * Whether this run answers a question of another analysis, or a {@link Engine.Request#brief} request, which want data and the
     * values of figures: bounds of figures, findings and tables may be left out. What is left out in one run is never handed to whom wants it. Never so for an analysis
     * that does not say {@link Analysis#mayBeBrief}.
     */
    default boolean brief() {
        return false;
    }

    /**
     * A run without an engine, as for a unit test: nobody watches or cancels it, and no question has an answer.
     *
     * @param trace where steps go; {@link Trace#SILENT}, or {@link Trace#into}
     */
    static Run alone(Trace trace) {
        return new LoneRun(trace);
    }

    /** Where to say where figures come from; does nothing in normal runs. */
    Trace trace();

    /**
     * "What if": the data of one type for another design or condition, computed on this thread and cached like any other, by runs
     * that are {@link #brief} where the asked analysis knows such.
     * What the asked analysis needs is computed with it; asking may go 32 deep.
     *
     * @param <R>       the type
     * @param design    the design to ask about
     * @param condition the condition, failed movers all concrete; for design-wide data it is ignored
     * @param type      the type of data
     * @return the data; empty if nothing gives it, if it could not be computed, or if asking would go round in a circle: then
     *         every analysis on the circle fails, with an error finding that names it
     * @throws Cancelled when the answer is no longer wanted; let it pass
     */
    <R> Optional<R> ask(Design design, Condition condition, Class<R> type);

    /**
     * "What if" for who knows a figure by its id only: the figures of one kind for another design or condition, from whatever
     * analysis announces that kind in {@link Analysis#figures}, computed on this thread and cached as by {@link #ask}. It need
     * not stand in {@link Analysis#needs}. Of several that announce it the highest ranked counts, as in an evaluation.
     *
     * @param design    the design to ask about
     * @param condition the condition, failed movers all concrete; an analysis of {@link Scope#DESIGN} ignores it and gives its
     *                  figures of all cases of that design
     * @param id        the figure's id
     * @return the figures at all their places, each with its condition; empty if nothing gives it, if it could not be computed,
     *         or if asking would go round in a circle: then every analysis on the circle fails as with {@link #ask}
     * @throws Cancelled when the answer is no longer wanted; let it pass
     */
    List<Figure> figures(Design design, Condition condition, String id);
}
