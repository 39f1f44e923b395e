package tramontane.report;

import java.util.Arrays;

/** Fewer points that draw the same line. */
public final class Decimation {

    private Decimation() {
    }

    /**
     * The points of a line that can be seen. Of points that do not go back along x and lie within a column of some width, the
     * first, lowest, highest and last are kept, so that no peak is lost; of others those that lie apart.
     *
     * @param x      places, as drawn
     * @param y      places, as drawn, as many
     * @param column width that cannot be told apart, as drawn, above zero
     * @return numbers of the points to be drawn, rising; all where there are few
     */
    public static int[] of(double[] x, double[] y, double column) {
        int[] kept = new int[x.length];
        int count = 0;
        for (int from = 0; from < x.length; ) {
            int lowest = from;
            int highest = from;
            int to = from;
            while (to + 1 < x.length && Math.floor(x[to + 1] / column) == Math.floor(x[from] / column) && x[to + 1] >= x[to]) {
                to++;
                lowest = y[to] < y[lowest] ? to : lowest;
                highest = y[to] > y[highest] ? to : highest;
            }
            int last = -1;
            for (int each : sorted(from, lowest, highest, to)) {
                boolean apart = each != last && (each == from || each == to || Math.abs(y[each] - y[last]) >= column);
                if (apart) {
                    kept[count++] = each;
                    last = each;
                }
            }
            from = to + 1;
        }
        return Arrays.copyOf(kept, count);
    }

    private static int[] sorted(int... numbers) {
        Arrays.sort(numbers);
        return numbers;
    }
}
