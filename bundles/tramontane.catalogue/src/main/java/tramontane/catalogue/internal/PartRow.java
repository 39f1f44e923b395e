package tramontane.catalogue.internal;

import java.util.Arrays;

/**
 * The values of one part by column.
 *
 * @param numbersIn columns with numbers
 * @param numbers   a number for each, in SI units
 * @param textsIn   columns with texts
 * @param texts     a text for each
 */
record PartRow(int[] numbersIn, double[] numbers, int[] textsIn, String[] texts) {

    /** Collects the values of one part after another; a later value of a column takes the place of an earlier one. */
    static final class Builder {

        private int part = 1;
        private int[] known = new int[64];
        private double[] numbers = new double[64];
        private String[] texts = new String[64];
        private int[] touched = new int[64];
        private int count;

        /** Forgets all values. */
        void clear() {
            part++;
            count = 0;
        }

        private void open(int column) {
            if (column >= known.length) {
                int length = Math.max(column + 1, 2 * known.length);
                known = Arrays.copyOf(known, length);
                numbers = Arrays.copyOf(numbers, length);
                texts = Arrays.copyOf(texts, length);
                touched = Arrays.copyOf(touched, length);
            }
            if (known[column] != part) {
                known[column] = part;
                touched[count++] = column;
            }
            numbers[column] = Double.NaN;
            texts[column] = null;
        }

        void set(int column, double number) {
            open(column);
            numbers[column] = number;
        }

        void set(int column, String text) {
            open(column);
            texts[column] = text;
        }

        void set(int column, double number, String text) {
            open(column);
            numbers[column] = number;
            texts[column] = text;
        }

        void unset(int column) {
            open(column);
        }

        /** The number of a column; NaN for none. */
        double number(int column) {
            return column < known.length && known[column] == part ? numbers[column] : Double.NaN;
        }

        /** The text of a column; null for none. */
        String text(int column) {
            return column < known.length && known[column] == part ? texts[column] : null;
        }

        PartRow build() {
            int n = 0;
            int t = 0;
            for (int i = 0; i < count; i++) {
                n += Double.isNaN(numbers[touched[i]]) ? 0 : 1;
                t += texts[touched[i]] == null ? 0 : 1;
            }
            int[] numbersIn = new int[n];
            double[] values = new double[n];
            int[] textsIn = new int[t];
            String[] words = new String[t];
            for (int i = count - 1; i >= 0; i--) {
                int column = touched[i];
                if (!Double.isNaN(numbers[column])) {
                    numbersIn[--n] = column;
                    values[n] = numbers[column];
                }
                if (texts[column] != null) {
                    textsIn[--t] = column;
                    words[t] = texts[column];
                }
            }
            return new PartRow(numbersIn, values, textsIn, words);
        }
    }
}
