package tramontane.selection;

import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.analysis.Figure;
import tramontane.analysis.Sentence;

/**
 * What the rest of a design asks of a bank in one condition.
 *
 * @param condition   the condition
 * @param requirement what asks for most: the requirement in words, empty where nothing asks for a flow
 * @param flow        least flow of the bank with which everything holds that depends on its flow alone, m³/s at its inlet; 0 where
 *                    nothing asks for any; empty where no flow is enough
 * @param pressure    fan static pressure that the rest of the design takes at that flow, Pa
 * @param nearest     the deciding figure at the largest flow looked at where no flow is enough
 */
public record Need(String condition, Sentence requirement, OptionalDouble flow, OptionalDouble pressure,
        Optional<Figure> nearest) {
}
