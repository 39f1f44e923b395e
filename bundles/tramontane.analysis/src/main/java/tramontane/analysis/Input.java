package tramontane.analysis;

import java.util.List;
import java.util.Map;
import org.osgi.annotation.versioning.ProviderType;
import tramontane.model.Condition;
import tramontane.model.Design;

/**
 * What an analysis is handed to compute from.
 *
 * <pre>{@code
 * double flow = input.result(OperatingPoint.class).banks().getFirst().flow();
 * double outside = input.condition().temperature();
 * List<Figure> noise = input.figures("acoustics.level");   // empty where nothing loaded gives it
 * }</pre>
 */
@ProviderType
public interface Input {

    /** The part of the design that the analysis reads; see {@link Analysis#reads}. */
    Design design();

    /**
     * The condition, failed movers all concrete.
     *
     * @throws IllegalStateException for an analysis of {@link Scope#DESIGN}
     */
    Condition condition();

    /**
     * The data of a needed type in this condition; for {@link Scope#DESIGN} that of a design-wide analysis.
     *
     * @param <R>  the type
     * @param type one of {@link Needs#results}
     * @throws IllegalArgumentException for a type that was not asked for in {@link Analysis#needs}
     */
    <R> R result(Class<R> type);

    /**
     * The data of a needed type by case id, in the order of the conditions; those that could not be computed are missing. For
     * {@link Scope#DESIGN}, which is handed all cases of the design whichever of them were asked for.
     *
     * <p>The id of a case is that of its condition, with the failed position behind it where the condition leaves that open:
     * {@code any one failed: fans 1 locked}. {@code Cases.of(design(), Set.of()).list()} gives each case with its condition. A
     * figure of one case is marked with {@link Figure#in}.
     *
     * @param <R>  the type
     * @param type one of {@link Needs#results}
     */
    <R> Map<String, R> results(Class<R> type);

    /**
     * Figures of one id, if anything gives them: of this condition, or of all for {@link Scope#DESIGN}.
     *
     * @param id one of {@link Needs#figures}
     */
    List<Figure> figures(String id);
}
