package tramontane.physics.units;

import java.util.Arrays;

/** Numbers followed by one unit, taken apart. Written by hand: no expression can be made to run long. */
final class QuantityText {

    private final String text;
    private double[] numbers = new double[4];
    private int count;
    private int position;

    private QuantityText(String text) {
        this.text = text;
    }

    /** Reads numbers until the unit begins; what remains is {@link #unit()}. */
    static QuantityText read(String text) {
        QuantityText reading = new QuantityText(text);
        reading.skipSpace();
        // numbers need a space between them, so that "5-3" is not two
        while (reading.readNumber() && reading.skipSpace()) {
            continue;
        }
        return reading;
    }

    static boolean isSpace(char c) {
        return Character.isWhitespace(c) || Character.isSpaceChar(c);
    }

    double[] numbers() {
        return Arrays.copyOf(numbers, count);
    }

    int count() {
        return count;
    }

    /** What stands behind the last number, without spaces around. */
    String unit() {
        int end = text.length();
        while (end > position && isSpace(text.charAt(end - 1))) {
            end--;
        }
        return text.substring(position, end);
    }

    private boolean skipSpace() {
        int before = position;
        while (position < text.length() && isSpace(text.charAt(position))) {
            position++;
        }
        return position > before;
    }

    private boolean readNumber() {
        int start = position;
        int at = start;
        if (at < text.length() && (isMinus(text.charAt(at)) || text.charAt(at) == '+')) {
            at++;
        }
        int whole = digits(at);
        int end = whole;
        if (end < text.length() && text.charAt(end) == '.') {
            end = digits(end + 1);
        }
        int digitCount = whole - at + Math.max(0, end - whole - 1);
        if (digitCount == 0) {
            return false;
        }
        int mantissaEnd = end;
        if (end < text.length() && (text.charAt(end) == 'e' || text.charAt(end) == 'E')) {
            int exponent = end + 1;
            if (exponent < text.length() && (isMinus(text.charAt(exponent)) || text.charAt(exponent) == '+')) {
                exponent++;
            }
            int exponentEnd = digits(exponent);
            if (exponentEnd > exponent) {
                end = exponentEnd;
            }
        }
        // "1/min" is a unit that begins with a digit
        if (end < text.length() && text.charAt(end) == '/') {
            return false;
        }
        if (end < text.length() && (text.charAt(end) == ',' || text.charAt(end) == '.')) {
            throw new UnitException(Units.quote(text)
                    + " is not understood; decimals are written with one point, several numbers with spaces between");
        }
        double value = Double.parseDouble(text.substring(start, end).replace('−', '-'));
        if (Double.isInfinite(value) || value == 0 && !zero(at, mantissaEnd)) {
            throw new UnitException(Units.quote(text) + " has a number outside the range 1e-307 to 1e308");
        }
        if (count == numbers.length) {
            numbers = Arrays.copyOf(numbers, 2 * count);
        }
        numbers[count++] = value;
        position = end;
        return true;
    }

    private int digits(int from) {
        int at = from;
        while (at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
            at++;
        }
        return at;
    }

    private boolean zero(int from, int to) {
        for (int i = from; i < to; i++) {
            if (text.charAt(i) >= '1' && text.charAt(i) <= '9') {
                return false;
            }
        }
        return true;
    }

    private static boolean isMinus(char c) {
        return c == '-' || c == '−';
    }
}
