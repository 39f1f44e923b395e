package tramontane.selection.desktop.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import tramontane.analysis.Amount;
import tramontane.analysis.Table;
import tramontane.physics.units.QuantityKind;

/**
 * By which column rows are sorted.
 *
 * @param column     its id
 * @param descending largest first
 */
record Order(String column, boolean descending) {

    /** What a temperature is measured by beside shares of other limits, K: as the choice itself finds the tightest requirement. */
    private static final double WHOLE = 50;

    /** The order after a click on a heading: that column, and the other way round on the next. */
    Order clicked(String id) {
        return column.equals(id) ? new Order(id, !descending) : new Order(id, false);
    }

    /**
     * Rows in this order: numbers by value, words by letters and the numbers in them; what is not known comes last whichever way,
     * and equals stay as they were.
     */
    <R> List<R> sorted(List<R> rows, Function<R, Table.Cell> cell) {
        Comparator<Table.Cell> values = Order::compare;
        Comparator<Table.Cell> way = descending ? values.reversed() : values;
        List<R> sorted = new ArrayList<>(rows);
        sorted.sort(Comparator.<R, Boolean>comparing(row -> cell.apply(row) instanceof Table.Empty)
                .thenComparing((one, other) -> cell.apply(one) instanceof Table.Empty ? 0 : way.compare(cell.apply(one), cell.apply(other))));
        return sorted;
    }

    private static int compare(Table.Cell one, Table.Cell other) {
        if (one instanceof Amount a && other instanceof Amount b) {
            return Double.compare(number(a, b), number(b, a));
        }
        if (one instanceof Amount || other instanceof Amount) {
            return one instanceof Amount ? -1 : 1;
        }
        return natural(text(one), text(other));
    }

    private static double number(Amount amount, Amount other) {
        return amount.quantity().equals(QuantityKind.TEMPERATURE_DIFFERENCE) && !other.quantity().equals(amount.quantity()) ? amount.si() / WHOLE
                : amount.si();
    }

    private static String text(Table.Cell cell) {
        return cell instanceof Table.Words words ? words.text() : "";
    }

    /** Letters without regard to case, runs of digits by their value: 40 mm before 120 mm. */
    static int natural(String one, String other) {
        int i = 0;
        int j = 0;
        while (i < one.length() && j < other.length()) {
            char a = one.charAt(i);
            char b = other.charAt(j);
            if (isDigit(a) && isDigit(b)) {
                int endA = end(one, i);
                int endB = end(other, j);
                String left = one.substring(i, endA).replaceFirst("^0+(?=.)", "");
                String right = other.substring(j, endB).replaceFirst("^0+(?=.)", "");
                int byValue = left.length() != right.length() ? left.length() - right.length() : left.compareTo(right);
                if (byValue != 0) {
                    return byValue;
                }
                i = endA;
                j = endB;
                continue;
            }
            int byLetter = Character.compare(Character.toLowerCase(a), Character.toLowerCase(b));
            if (byLetter != 0) {
                return byLetter;
            }
            i++;
            j++;
        }
        return (one.length() - i) - (other.length() - j);
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    private static int end(String text, int from) {
        int end = from;
        while (end < text.length() && isDigit(text.charAt(end))) {
            end++;
        }
        return end;
    }
}
