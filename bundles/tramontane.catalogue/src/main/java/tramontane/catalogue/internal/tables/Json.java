package tramontane.catalogue.internal.tables;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.file.Limits;
import tramontane.model.file.TreeFile;

/** Single values as JSON, for cells that hold more than a plain text or number. */
final class Json {

    private static final String MEMBER = "v";

    private Json() {
    }

    /** The value that a text is; empty where it is not JSON. */
    static Optional<Value> read(String text) {
        TreeFile.Read read = TreeFile.parse(("{\"" + MEMBER + "\":" + text + "}").getBytes(StandardCharsets.UTF_8), Limits.STANDARD);
        return read.problems().stream().anyMatch(Problem::isError) ? Optional.empty()
                : read.tree().filter(tree -> tree.members().size() == 1).flatMap(tree -> tree.get(MEMBER));
    }

    /** A value as JSON. */
    static String write(Value value) {
        String file = TreeFile.write(Value.Tree.EMPTY.with(MEMBER, value)).strip();
        return file.substring(file.indexOf(':') + 1, file.length() - 1).strip();
    }
}
