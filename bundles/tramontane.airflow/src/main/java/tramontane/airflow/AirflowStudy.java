package tramontane.airflow;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.airflow.internal.AirflowResult;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.SpeedLaw;
import tramontane.analysis.SpeedLaws;
import tramontane.model.Design;

/**
 * Everything that the air-flow analysis says of an air path, at any bay temperatures and speed settings: for an analysis that
 * finds these by itself and then gives the operating point in its place.
 *
 * <p>That heat has no air is left to whoever finds the temperatures, as long as every source has its place.
 *
 * <p>What would be if, the bounds from tolerances among it, is said at these temperatures and speeds: they are not found anew for
 * each variation.
 */
public final class AirflowStudy {

    private AirflowStudy() {
    }

    /** The figures it can give. */
    public static List<FigureKind> figures() {
        return AirflowResult.figures();
    }

    /**
     * The part of a design that it reads; for {@link tramontane.analysis.Analysis#reads}.
     *
     * @param design the whole design
     * @param laws   the loaded speed laws, which read sections of the design itself
     */
    public static Design reads(Design design, List<? extends SpeedLaw> laws) {
        return AirflowResult.reads(design, laws);
    }

    /**
     * The figures of a state that is solved already: those that vary something, as the flow with more pressure, are left out.
     *
     * @param design   the design, or what {@link #reads} leaves of it
     * @param model    its air path in the condition
     * @param laws     the loaded speed laws, highest ranked first
     * @param feeds    speed setting and inlet air by bank
     * @param solution the state
     * @return figures without bounds; none where the solution has no operating point
     */
    public static List<Figure> figures(Design design, AirPathModel model, List<? extends SpeedLaw> laws, Map<String, Feed> feeds,
            AirPathSolution solution) {
        return AirflowResult.figures(design, model, laws, feeds, solution);
    }

    /**
     * Solves an air path, and says what there is to say of it.
     *
     * <p>Where a bay is not at outside temperature, a trace takes its temperature from the figure {@code
     * thermal.air.temperature} at that bay; whoever gives it records where it comes from.
     *
     * @param design       the design, or what {@link #reads} leaves of it
     * @param model        its air path in the condition
     * @param laws         the loaded speed laws, highest ranked first; see {@link SpeedLaws#ranked}
     * @param feeds        speed setting and inlet air by bank; {@link AirPathModel#feed} for one that is missing
     * @param temperatures temperature of each bay in the order of {@link AirPathModel#bays}, K
     * @param start        the solution that led here, from other temperatures or speeds: where a bank has several duty points the
     *                     one that the air comes to from there is judged; empty for that first met from standstill
     * @param run          cancel and trace
     * @return figures with bounds, findings and the operating point; not computed where there is no honest answer
     * @throws tramontane.analysis.Cancelled when the answer is no longer wanted
     */
    public static Result<OperatingPoint> of(Design design, AirPathModel model, List<? extends SpeedLaw> laws,
            Map<String, Feed> feeds, double[] temperatures, Optional<AirPathSolution> start, Run run) {
        return AirflowResult.of(design, model, laws, feeds, temperatures, start, true, run);
    }
}
