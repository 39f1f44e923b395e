package tramontane.desktop.internal.pages;

import java.util.List;
import java.util.Optional;
import tramontane.model.Shape;
import tramontane.model.edit.FieldPath;

/**
 * One row of a property page.
 *
 * @param path     the field
 * @param label    what people read beside it
 * @param depth    how deep it lies within objects and lists, 0 for the subject's own fields
 * @param editor   how it is edited
 * @param shape    what may stand in it, for reading typed text
 * @param text     what is shown: the number in the reader's unit, the word, or the text; empty where not given
 * @param written  what stands in the field while it is edited: the text of the file where it has a unit of its own
 * @param unit     the unit at the right edge; empty for none
 * @param given    whether it is given
 * @param required whether it must be given
 * @param standard what holds where it is not given, for showing greyed; empty for nothing
 * @param hover    what it means, what is allowed, how it is written, all digits
 * @param choices  the words to pick from; of a list, what may be added
 * @param index    place of an item in its list; -1 for what is no item
 * @param count    number of items of the list that this is, or that this item lies in
 * @param problem  what is wrong here, one sentence; empty for nothing
 * @param serious  whether that keeps the design from being judged for more than that it is not given yet
 * @param table    the lists of numbers that belong together
 */
public record Row(FieldPath path, String label, int depth, Editor editor, Shape shape, String text, String written, String unit, boolean given,
        boolean required, String standard, String hover, List<String> choices, int index, int count, String problem, boolean serious,
        Optional<CurveTable> table) {

    /** How a row is edited. */
    public enum Editor {
        /** A heading over rows; of a section, to be added and removed. */
        GROUP,
        /** Typed text. */
        LINE,
        /** One of some words. */
        PICK,
        /** Typed text, or one of some words. */
        TYPE_OR_PICK,
        /** Yes, no or not given. */
        YES_NO,
        /** Some of some names. */
        NAMES,
        /** Lists of numbers that belong together. */
        TABLE,
        /** An object with rows beneath it, to be added and removed. */
        PART,
        /** A list with items beneath it, to be added to. */
        LIST,
        /** An item of a list with rows beneath it, to be removed and moved. */
        ITEM,
        /** Something that nobody here understands; shown and kept. */
        KEPT
    }

    public Row {
        choices = List.copyOf(choices);
    }

    /** What two rows must share for one's widgets to serve the other. */
    public record Skeleton(FieldPath path, Editor editor, int depth, String label, int columns, boolean present) {
    }

    /** What decides its widgets. */
    public Skeleton skeleton() {
        boolean header = editor == Editor.GROUP || editor == Editor.PART;
        return new Skeleton(path, editor, depth, label, table.map(each -> each.columns().size()).orElse(0), !header || given);
    }
}
