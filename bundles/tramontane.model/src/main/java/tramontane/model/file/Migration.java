package tramontane.model.file;

import java.util.Objects;
import java.util.function.UnaryOperator;
import tramontane.model.Value;

/**
 * Brings a design file from one version of the format to the next.
 *
 * @param from   the version it starts from
 * @param change turns a file of version {@code from} into one of version {@code from + 1}; the member {@code format} is set
 *               by the caller
 */
record Migration(int from, UnaryOperator<Value.Tree> change) {

    Migration {
        Objects.requireNonNull(change);
    }
}
