package tramontane.catalogue.internal;

import java.util.Arrays;
import java.util.List;

/** The values of all parts, column by column; a column that few parts fill takes little room. */
public final class Columns {

    /** A column with fewer values than one in so many parts is held as pairs of part and value. */
    private static final int SPARSE = 3;

    /** Numbers of one column. */
    private static final class Numbers {
        private final int[] parts;
        private final double[] values;
        private int count;

        private Numbers(int count, int parts) {
            this.parts = SPARSE * count < parts ? new int[count] : null;
            values = new double[this.parts == null ? parts : count];
            if (this.parts == null) {
                Arrays.fill(values, Double.NaN);
            }
        }

        private void add(int part, double value) {
            if (parts == null) {
                values[part] = value;
            } else {
                parts[count] = part;
                values[count++] = value;
            }
        }

        private double get(int part) {
            if (parts == null) {
                return values[part];
            }
            int at = Arrays.binarySearch(parts, part);
            return at >= 0 ? values[at] : Double.NaN;
        }
    }

    /** Texts of one column. */
    private static final class Texts {
        private final int[] parts;
        private final String[] values;
        private int count;

        private Texts(int count, int parts) {
            this.parts = SPARSE * count < parts ? new int[count] : null;
            values = new String[this.parts == null ? parts : count];
        }

        private void add(int part, String value) {
            if (parts == null) {
                values[part] = value;
            } else {
                parts[count] = part;
                values[count++] = value;
            }
        }

        private String get(int part) {
            if (parts == null) {
                return values[part];
            }
            int at = Arrays.binarySearch(parts, part);
            return at >= 0 ? values[at] : null;
        }
    }

    private final Numbers[] numbers;
    private final Texts[] texts;

    private Columns(int columns) {
        numbers = new Numbers[columns];
        texts = new Texts[columns];
    }

    /** The columns of parts in their order; takes their rows away from them. */
    static Columns of(List<StoredPart> parts, int columns) {
        PartRow[] rows = parts.stream().map(StoredPart::takeRow).toArray(PartRow[]::new);
        int[] numberCounts = new int[columns];
        int[] textCounts = new int[columns];
        for (PartRow row : rows) {
            for (int column : row.numbersIn()) {
                numberCounts[column]++;
            }
            for (int column : row.textsIn()) {
                textCounts[column]++;
            }
        }
        Columns all = new Columns(columns);
        for (int i = 0; i < columns; i++) {
            all.numbers[i] = numberCounts[i] > 0 ? new Numbers(numberCounts[i], rows.length) : null;
            all.texts[i] = textCounts[i] > 0 ? new Texts(textCounts[i], rows.length) : null;
        }
        for (int part = 0; part < rows.length; part++) {
            PartRow row = rows[part];
            for (int i = 0; i < row.numbers().length; i++) {
                all.numbers[row.numbersIn()[i]].add(part, row.numbers()[i]);
            }
            for (int i = 0; i < row.texts().length; i++) {
                all.texts[row.textsIn()[i]].add(part, row.texts()[i]);
            }
        }
        return all;
    }

    /** A number; NaN for none. */
    public double number(int column, int part) {
        return numbers[column] == null ? Double.NaN : numbers[column].get(part);
    }

    /** A text; null for none, since this is asked for every part of a large catalogue. */
    public String text(int column, int part) {
        return texts[column] == null ? null : texts[column].get(part);
    }

    /** Whether any part has a value in a column. */
    public boolean isFilled(int column) {
        return numbers[column] != null || texts[column] != null;
    }
}
