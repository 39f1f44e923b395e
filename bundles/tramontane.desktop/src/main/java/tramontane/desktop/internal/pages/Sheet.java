package tramontane.desktop.internal.pages;

import java.util.List;
import java.util.Optional;
import tramontane.analysis.Severity;
import tramontane.desktop.FigureKey;
import tramontane.model.edit.Subject;

/**
 * A property page.
 *
 * @param subject  what it is about
 * @param title    its name
 * @param caption  what kind of thing it is, and in a sentence what that is
 * @param rows     its rows, headings among them
 * @param problems what is wrong with it as a whole, a sentence each
 * @param figures  what it does in the case in front
 * @param front    the case in front
 */
public record Sheet(Subject subject, String title, String caption, List<Row> rows, List<String> problems, List<Line> figures, String front) {

    /**
     * A figure of the subject.
     *
     * @param label    what it is
     * @param text     number and unit
     * @param stale    whether it belongs to an earlier state of the design
     * @param severity the worst verdict on it
     * @param hover    all digits, bounds, other units
     * @param key      to ask where it comes from
     */
    public record Line(String label, String text, boolean stale, Optional<Severity> severity, String hover, FigureKey key) {
    }

    public Sheet {
        rows = List.copyOf(rows);
        problems = List.copyOf(problems);
        figures = List.copyOf(figures);
    }

    /** What decides the widgets of the page. */
    public List<Row.Skeleton> skeleton() {
        return rows.stream().map(Row::skeleton).toList();
    }
}
