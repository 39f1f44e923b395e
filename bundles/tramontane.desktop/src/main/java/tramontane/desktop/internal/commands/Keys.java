package tramontane.desktop.internal.commands;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.eclipse.swt.SWT;

/**
 * A key with its modifiers, as commands name it: {@code Ctrl+Shift+D}, {@code F2}, {@code Ctrl++}.
 *
 * @param modifiers SWT's modifier bits; {@code Ctrl} is the command key on a Mac
 * @param code      SWT's key code; of letters the lower case character
 */
public record Keys(int modifiers, int code) {

    private static final Map<String, Integer> NAMED = Map.ofEntries(Map.entry("DEL", (int) SWT.DEL), Map.entry("ESC", (int) SWT.ESC),
            Map.entry("ENTER", (int) SWT.CR), Map.entry("TAB", (int) SWT.TAB), Map.entry("SPACE", (int) ' '),
            Map.entry("BACKSPACE", (int) SWT.BS), Map.entry("LEFT", SWT.ARROW_LEFT), Map.entry("RIGHT", SWT.ARROW_RIGHT),
            Map.entry("UP", SWT.ARROW_UP), Map.entry("DOWN", SWT.ARROW_DOWN), Map.entry("HOME", SWT.HOME), Map.entry("END", SWT.END),
            Map.entry("PAGEUP", SWT.PAGE_UP), Map.entry("PAGEDOWN", SWT.PAGE_DOWN), Map.entry("+", (int) '+'));

    /**
     * Reads a name.
     *
     * @throws IllegalArgumentException if it names no key
     */
    public static Keys parse(String text) {
        String plus = text.endsWith("++") ? text.substring(0, text.length() - 1) + "PLUS" : text.equals("+") ? "PLUS" : text;
        List<String> words = Arrays.asList(plus.split("\\+"));
        int modifiers = 0;
        for (String word : words.subList(0, words.size() - 1)) {
            modifiers |= switch (word.toUpperCase(Locale.ROOT)) {
                case "CTRL" -> SWT.MOD1;
                case "SHIFT" -> SWT.MOD2;
                case "ALT" -> SWT.MOD3;
                default -> throw new IllegalArgumentException("no modifier " + word + " in keys " + text);
            };
        }
        String key = words.getLast().toUpperCase(Locale.ROOT);
        if (key.equals("PLUS")) {
            return new Keys(modifiers, '+');
        }
        if (key.matches("F([1-9]|1[0-2])")) {
            return new Keys(modifiers, SWT.F1 + (Integer.parseInt(key.substring(1)) - 1) * (SWT.F2 - SWT.F1));
        }
        if (NAMED.containsKey(key)) {
            return new Keys(modifiers, NAMED.get(key));
        }
        if (key.length() == 1) {
            return new Keys(modifiers, Character.toLowerCase(key.charAt(0)));
        }
        throw new IllegalArgumentException("no key " + words.getLast() + " in keys " + text);
    }

    /** The key of an event; the number pad counts as the keys it doubles, and + and - whatever has to be held down for them. */
    public static Keys of(int stateMask, int keyCode, char character) {
        int modifiers = stateMask & SWT.MODIFIER_MASK;
        int code = switch (keyCode) {
            case SWT.KEYPAD_CR -> SWT.CR;
            case SWT.KEYPAD_ADD -> '+';
            case SWT.KEYPAD_SUBTRACT -> '-';
            case SWT.KEYPAD_0 -> '0';
            default -> Character.isLetter(keyCode) && keyCode < 0x10000 ? Character.toLowerCase(keyCode) : keyCode;
        };
        if (character == '+' || character == '=' && code == '=') {
            // Ctrl with the key of + is meant as such on every layout
            return new Keys(modifiers & ~SWT.MOD2, '+');
        }
        return new Keys(modifiers, code);
    }
}
