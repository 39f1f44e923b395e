package tramontane.desktop.internal.commands;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.desktop.Command;

class KeysTest {

    @ParameterizedTest
    @CsvSource({"F2, 0, 0x100000B", "F12, 0, 0x1000015", "Del, 0, 0x7f", "Ctrl+Z, 0x40000, 0x7a", "Ctrl+Shift+S, 0x60000, 0x73",
        "Ctrl++, 0x40000, 0x2b", "Ctrl+-, 0x40000, 0x2d", "Ctrl+0, 0x40000, 0x30", "Alt+Left, 0x10000, 0x1000003",
        "Ctrl+PageDown, 0x40000, 0x1000006", "Esc, 0, 0x1b"})
    void namesAreKeys(String name, String modifiers, String code) {
        // key codes of the toolkit as its documentation lists them; Ctrl is another modifier on a Mac
        int expected = Integer.decode(modifiers);
        int ctrl = (expected & SWT.CTRL) != 0 ? SWT.MOD1 : 0;
        assertEquals(new Keys(expected & ~SWT.CTRL | ctrl, Integer.decode(code)), Keys.parse(name));
    }

    @Test
    void eventsAreKeys() {
        assertEquals(Keys.parse("Ctrl+Z"), Keys.of(SWT.MOD1, 'z', '\u001a'));
        assertEquals(Keys.parse("Ctrl++"), Keys.of(SWT.MOD1, SWT.KEYPAD_ADD, '+'));
        assertEquals(Keys.parse("Ctrl++"), Keys.of(SWT.MOD1 | SWT.SHIFT, '=', '+'));
        assertEquals(Keys.parse("Ctrl++"), Keys.of(SWT.MOD1, '=', '='));
        assertEquals(Keys.parse("Ctrl+,"), Keys.of(SWT.MOD1, ',', ','));
        assertEquals(Keys.parse("F2"), Keys.of(0, SWT.F2, '\0'));
        assertEquals(Keys.parse("Enter"), Keys.of(0, SWT.KEYPAD_CR, '\r'));
    }

    @Test
    void otherNamesAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> Keys.parse("Hyper+X"));
        assertThrows(IllegalArgumentException.class, () -> Keys.parse("Ctrl+Knob"));
    }

    @Test
    void aTableFindsByKeyAndTellsClashes() {
        Command one = Command.of("one", "One", "", desk -> { }).keys("Ctrl+O");
        Command two = Command.of("two", "Two", "", desk -> { }).keys("Ctrl+O");
        CommandTable table = new CommandTable(Map.of("M", List.of(List.of(one), List.of(two))));
        assertEquals(Optional.of(one), table.of(Keys.parse("Ctrl+O")));
        assertEquals(List.of("Ctrl+O is one and two"), table.clashes());
    }
}
