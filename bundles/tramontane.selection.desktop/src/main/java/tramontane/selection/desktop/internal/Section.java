package tramontane.selection.desktop.internal;

import java.util.List;
import java.util.Optional;
import tramontane.analysis.Sentence;
import tramontane.analysis.Table;

/**
 * A piece of an explanation.
 *
 * @param heading   what it is about
 * @param sentences what is said
 * @param table     what is shown below; empty for none
 */
record Section(String heading, List<Sentence> sentences, Optional<Table> table) {

    Section {
        sentences = List.copyOf(sentences);
    }

    static Section of(String heading, List<Sentence> sentences) {
        return new Section(heading, sentences, Optional.empty());
    }

    static Section of(String heading, Table table, Sentence... sentences) {
        return new Section(heading, List.of(sentences), Optional.of(table));
    }
}
