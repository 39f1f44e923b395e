package tramontane.model.edit;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.file.Limits;
import tramontane.model.file.TreeFile;

/** Things of designs as a text. */
final class Clipping {

    private static final String FORMAT = "format";
    private static final String THINGS = "tramontaneThings";

    /** A thing by its kind, as it stands in a file. */
    record Entry(Subject.Kind kind, Value.Tree tree) {
    }

    private Clipping() {
    }

    static String write(List<Entry> entries) {
        List<Value> things = new ArrayList<>();
        entries.forEach(entry -> things.add(Value.Tree.EMPTY.with(entry.kind().noun(), entry.tree())));
        return TreeFile.write(Value.Tree.EMPTY.with(FORMAT, Value.Num.of(Design.FORMAT)).with(THINGS, new Value.Items(things)));
    }

    /** The things; empty where the text holds something else, or things of a newer format. */
    static Optional<List<Entry>> read(String text) {
        if (!text.contains(THINGS)) {
            return Optional.empty(); // whatever else lies on a clipboard need not be taken apart
        }
        TreeFile.Read read = TreeFile.parse(text.getBytes(StandardCharsets.UTF_8), Limits.STANDARD);
        Value.Tree tree = read.tree().filter(whole -> read.problems().stream().noneMatch(Problem::isError)).orElse(Value.Tree.EMPTY);
        if (!(tree.get(FORMAT).orElse(null) instanceof Value.Num num) || num.number() != Design.FORMAT
                || !(tree.get(THINGS).orElse(null) instanceof Value.Items(List<Value> items)) || items.isEmpty()) {
            return Optional.empty();
        }
        List<Entry> entries = new ArrayList<>();
        for (Value item : items) {
            Optional<Entry> entry = item instanceof Value.Tree thing ? Arrays.stream(Subject.Kind.values()).filter(Subject.Kind::isListed)
                    .flatMap(kind -> thing.tree(kind.noun()).map(value -> new Entry(kind, value)).stream()).findFirst() : Optional.empty();
            if (entry.isEmpty()) {
                return Optional.empty();
            }
            entries.add(entry.get());
        }
        return Optional.of(List.copyOf(entries));
    }
}
