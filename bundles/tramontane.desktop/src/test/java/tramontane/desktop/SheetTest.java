package tramontane.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;

class SheetTest {

    private static final List<Sheet.Column> COLUMNS = List.of(Sheet.Column.words("what"), Sheet.Column.numbers("how much"));

    @Test
    void asTextEachRowIsALineAndCellsAreParted() {
        Sheet sheet = new Sheet(COLUMNS, List.of(new Sheet.Row(1, List.of(Sheet.Cell.of("a\tb\nc"), Sheet.Cell.of("3 Pa"))),
                new Sheet.Row(2, List.of(Sheet.Cell.EMPTY, Sheet.Cell.of("4 Pa")))));
        assertEquals("what\thow much\na b c\t3 Pa\n\t4 Pa\n", sheet.tabbed());
        assertEquals("what\thow much\n\t4 Pa\n", sheet.tabbed(sheet.rows().subList(1, 2)));
    }

    @Test
    void aRowHasACellForEachColumn() {
        assertThrows(IllegalArgumentException.class, () -> new Sheet(COLUMNS, List.of(new Sheet.Row(1, List.of(Sheet.Cell.EMPTY)))));
    }
}
