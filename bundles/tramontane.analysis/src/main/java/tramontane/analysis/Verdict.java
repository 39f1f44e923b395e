package tramontane.analysis;

import java.util.Optional;
import tramontane.model.Requirement;

/**
 * How a requirement came out in one condition.
 *
 * @param requirement the requirement, as written or as a heat source's limit stands for it
 * @param condition   the condition as declared; where it stands for several cases, the worst counts; empty
 *                    for a figure of the design as a whole
 * @param severity    met, caution (met, but its bounds are not), not met, or not judged
 * @param figure      the figure that decided, with the case it is from; empty where not judged
 * @param margin      how far inside the limit, in the figure's SI unit; negative outside; 0 where not judged
 * @param reason      one sentence; where not judged, why
 */
public record Verdict(Requirement requirement, String condition, Severity severity, Optional<Figure> figure, double margin,
        String reason) {
}
