package tramontane.selection;

import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.analysis.Sentence;

/**
 * A part, or one in an arrangement, that does not do.
 *
 * @param part        its id
 * @param arrangement how it was arranged; empty where none fits
 * @param reason      in one sentence, which requirement fails and by how much
 * @param speed       how many times its full speed would do, by the reduced design; empty where speed is not what it lacks
 * @param exactly     whether it was judged exactly, or turned down by the reduced design
 * @param remedy      what would have to change; empty where nothing was looked for
 */
public record Rejected(String part, Optional<Arrangement> arrangement, Sentence reason, OptionalDouble speed, boolean exactly,
        Sentence remedy) {
}
