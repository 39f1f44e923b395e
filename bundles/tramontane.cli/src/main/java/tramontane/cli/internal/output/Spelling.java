package tramontane.cli.internal.output;

import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.nio.charset.StandardCharsets;
import tramontane.cli.terminal.Wrapping;

/** How texts are spelt for an encoding: {@code m³/h} where it has the letters, {@code m3/h} where not. */
public final class Spelling {

    /** Everything as it is, but for control characters. */
    public static final Spelling FULL = new Spelling(StandardCharsets.UTF_8);

    private final Charset charset;

    /** The spelling for an encoding. */
    public Spelling(Charset charset) {
        this.charset = charset;
    }

    /**
     * A text of one line as the encoding can hold it.
     *
     * <p>Control characters, and those that turn the direction of writing, become {@code ?}: a name in a file of somebody else
     * must not steer the terminal.
     */
    public String of(String text) {
        if (plain(text)) {
            return text;
        }
        CharsetEncoder encoder = charset.newEncoder();
        StringBuilder spelt = new StringBuilder(text.length() + 8);
        text.codePoints().forEach(c -> {
            String letter = Character.toString(c);
            if (unsafe(c)) {
                spelt.append('?');
            } else if (c == Wrapping.FAST || encoder.canEncode(letter)) {
                spelt.append(letter);
            } else {
                spelt.append(ascii(c));
            }
        });
        return spelt.toString();
    }

    private static boolean plain(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) < ' ' || text.charAt(i) > '~') {
                return false;
            }
        }
        return true;
    }

    private static boolean unsafe(int c) {
        return switch (Character.getType(c)) {
            case Character.CONTROL, Character.FORMAT, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR,
                    Character.SURROGATE -> true;
            default -> false;
        };
    }

    private static String ascii(int c) {
        return switch (c) {
            case '²', '₂' -> "2";
            case '³' -> "3";
            case '⁶' -> "6";
            case '°' -> "deg";
            case 'µ', 'μ' -> "u";
            case 'Ω', '\u2126' -> "ohm";
            case '×' -> "x";
            case '·', '⋅' -> "*";
            case '≤' -> "<=";
            case '≥' -> ">=";
            case '≈' -> "~";
            case '±' -> "+/-";
            case '−', '–', '—', '‐', '‑' -> "-";
            case '→' -> "->";
            case '↔' -> "<->";
            case '…' -> "...";
            case '‘', '’' -> "'";
            case '“', '”', '„' -> "\"";
            case 'Δ' -> "d";
            case 'ρ' -> "rho";
            case 'η' -> "eta";
            case 'π' -> "pi";
            case 'ζ' -> "zeta";
            case 'λ' -> "lambda";
            case '√' -> "sqrt";
            case '\u202f', '\u2009' -> " ";
            default -> "?";
        };
    }
}
