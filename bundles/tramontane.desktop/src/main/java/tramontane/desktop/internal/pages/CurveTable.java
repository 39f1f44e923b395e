package tramontane.desktop.internal.pages;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.model.FormReader;
import tramontane.model.Shape;
import tramontane.model.Value;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Unit;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/**
 * Lists of numbers that belong together, as a table: the flow, pressure and power of a curve. What is typed into it is kept in it until
 * it makes lists that can be read.
 *
 * @param columns the lists
 */
public record CurveTable(List<Column> columns) {

    /**
     * One list.
     *
     * @param name    the member in the file; empty for one that is computed
     * @param label   the heading
     * @param shape   what may stand in it
     * @param unit    the unit that it is shown in
     * @param values  each number as it is written, a plain one in SI
     * @param shown   each number in that unit
     * @param changed whether it has been edited and not been taken over yet
     */
    public record Column(String name, String label, Shape.Amounts shape, String unit, List<String> values, List<String> shown, boolean changed) {
        public Column {
            values = List.copyOf(values);
            shown = List.copyOf(shown);
        }

        /** Whether it can be typed into. */
        public boolean isEditable() {
            return !name.isEmpty();
        }
    }

    public CurveTable {
        columns = List.copyOf(columns);
    }

    /** A column of what stands in a file; empty where that is no list of numbers. */
    static Optional<Column> column(String name, String label, Shape.Amounts shape, Optional<Value> written, UnitSystem units) {
        Optional<List<String>> values = written.isEmpty() ? Optional.of(List.of()) : values(written.get(), shape.kind());
        if (values.isEmpty()) {
            return Optional.empty();
        }
        double largest = values.get().stream().mapToDouble(each -> Math.abs(si(each, shape.kind()))).max().orElse(0);
        String unit = values.get().isEmpty() ? Units.display(shape.kind(), units).symbol() : Shown.of(largest, shape.kind(), units).unit();
        List<String> shown = values.get().stream().map(each -> shown(each, shape.kind(), unit)).toList();
        return Optional.of(new Column(name, label, shape, unit, values.get(), shown, false));
    }

    private static Optional<List<String>> values(Value written, QuantityKind kind) {
        List<String> values = new ArrayList<>();
        switch (written) {
            case Value.Items(List<Value> items) -> {
                for (Value item : items) {
                    if (FormReader.quantity(item, kind).isEmpty()) {
                        return Optional.empty();
                    }
                    values.add(item instanceof Value.Num(String literal) ? literal : ((Value.Text) item).text());
                }
            }
            case Value.Num(String literal) -> values.add(literal);
            case Value.Text(String text) -> {
                String[] words = text.strip().split("[\\s\\p{Z}]+");
                int count;
                try {
                    count = Units.parseList(text, kind).length;
                } catch (IllegalArgumentException e) {
                    return Optional.empty();
                }
                String last = count <= words.length ? words[count - 1] : "";
                Shown end = Shown.written(new Value.Text(last), kind);
                String unit = (end.unit() + " " + String.join(" ", List.of(words).subList(Math.min(count, words.length), words.length))).strip();
                for (int i = 0; i < count && i < words.length; i++) {
                    String number = i == count - 1 ? end.number() : words[i];
                    values.add(unit.isEmpty() ? number : number + " " + unit);
                }
            }
            default -> {
                return Optional.empty();
            }
        }
        return Optional.of(values);
    }

    private static double si(String value, QuantityKind kind) {
        return FormReader.quantity(plain(value), kind).map(each -> each.si()).orElse(0.0);
    }

    /** A number with unit as a text, one without as a plain number. */
    private static Value plain(String value) {
        return Value.Num.numberEnd(value, 0) == value.length() && !value.isEmpty() ? new Value.Num(value) : new Value.Text(value);
    }

    private static String shown(String value, QuantityKind kind, String unit) {
        Shown written = Shown.written(plain(value), kind);
        return written.unit().equals(unit) ? written.number()
                : Shown.numbers(List.of(si(value, kind)), kind, unit).getFirst();
    }

    /** Rows that have a number in any column. */
    public int rows() {
        return columns.stream().mapToInt(column -> column.values().size()).max().orElse(0);
    }

    /** What a cell shows; empty where there is nothing. */
    public String cell(int row, int column) {
        List<String> shown = columns.get(column).shown();
        return row < shown.size() ? shown.get(row) : "";
    }

    /** A table, or why a text cannot stand in it. */
    public record Edited(Optional<CurveTable> table, String problem) {
    }

    /**
     * Types into a cell.
     *
     * @param row    its row; the one behind the last begins a new one
     * @param column its column
     * @param text   a number in the column's unit or with one of its own; empty to take out the last number
     */
    public Edited type(int row, int column, String text) {
        Column edited = columns.get(column);
        List<String> values = new ArrayList<>(edited.values());
        List<String> shown = new ArrayList<>(edited.shown());
        if (text.isBlank()) {
            if (row >= values.size()) {
                return new Edited(Optional.of(this), "");
            }
            if (row < values.size() - 1) {
                return new Edited(Optional.empty(), "a number is missing; delete the whole row instead");
            }
            values.removeLast();
            shown.removeLast();
        } else {
            if (row > values.size()) {
                return new Edited(Optional.empty(), "fill the cell above first");
            }
            Shape one = new Shape.Amount(edited.shape().kind(), edited.shape().range());
            switch (Typing.read(text, one, edited.unit(), UnitSystem.METRIC)) {
                case Typing.Wrong(String sentence) -> {
                    return new Edited(Optional.empty(), sentence);
                }
                case Typing.Read(Optional<Value> value) -> {
                    String written = value.map(each -> each instanceof Value.Text(String typed) ? typed : ((Value.Num) each).literal())
                            .orElse("");
                    if (row < values.size() && shown.get(row).equals(text.strip())) {
                        return new Edited(Optional.of(this), "");
                    }
                    if (row < values.size()) {
                        values.remove(row);
                        shown.remove(row);
                    }
                    values.add(row, written);
                    shown.add(row, shown(written, edited.shape().kind(), edited.unit()));
                }
            }
        }
        return new Edited(Optional.of(with(column, new Column(edited.name(), edited.label(), edited.shape(), edited.unit(), values, shown, true))), "");
    }

    private CurveTable with(int column, Column changed) {
        List<Column> all = new ArrayList<>(columns);
        all.set(column, changed);
        return new CurveTable(all);
    }

    /** This table without a row. */
    public CurveTable without(int row) {
        return new CurveTable(columns.stream().map(column -> {
            if (row >= column.values().size() || !column.isEditable()) {
                return column;
            }
            List<String> values = new ArrayList<>(column.values());
            List<String> shown = new ArrayList<>(column.shown());
            values.remove(row);
            shown.remove(row);
            return new Column(column.name(), column.label(), column.shape(), column.unit(), values, shown, true);
        }).toList());
    }

    /**
     * Fills cells from a text as spreadsheets copy it: columns divided by tabs, rows by line ends.
     *
     * @param row    the first row
     * @param column the first column
     * @param text   the text
     */
    public Edited paste(int row, int column, String text) {
        CurveTable table = this;
        String[] lines = text.strip().split("\\R");
        for (int i = 0; i < lines.length; i++) {
            String[] cells = lines[i].split("\t");
            for (int j = 0; j < cells.length && column + j < columns.size(); j++) {
                if (columns.get(column + j).isEditable() && !cells[j].isBlank()) {
                    Edited edited = table.type(row + i, column + j, cells[j]);
                    if (edited.table().isEmpty()) {
                        return new Edited(Optional.empty(), "row " + (row + i + 1) + ", " + columns.get(column + j).label() + ": " + edited.problem());
                    }
                    table = edited.table().get();
                }
            }
        }
        return new Edited(Optional.of(table), "");
    }

    /** A column as it is to be written: one text where all numbers have one unit, else a list; empty for no numbers. */
    static Optional<Value> written(Column column) {
        if (column.values().isEmpty()) {
            return Optional.empty();
        }
        List<Shown> apart = column.values().stream().map(each -> Shown.written(plain(each), column.shape().kind())).toList();
        boolean plain = column.values().stream().allMatch(each -> plain(each) instanceof Value.Num);
        String unit = apart.getFirst().unit();
        if (!plain && apart.stream().allMatch(each -> each.unit().equals(unit))) {
            StringBuilder text = new StringBuilder();
            apart.forEach(each -> text.append(each.number()).append(' '));
            return Optional.of(new Value.Text(text.append(unit).toString().strip()));
        }
        // the unit that most are written in stands for all: a curve of two units is hard to read
        Optional<Unit> common = Shown.unit(unit, column.shape().kind());
        if (!plain && common.isPresent()) {
            StringBuilder text = new StringBuilder();
            for (int i = 0; i < apart.size(); i++) {
                double si = si(column.values().get(i), column.shape().kind());
                text.append(apart.get(i).unit().equals(unit) ? apart.get(i).number() : rounded(common.get().fromSi(si))).append(' ');
            }
            return Optional.of(new Value.Text(text.append(unit).toString().strip()));
        }
        return Optional.of(new Value.Items(column.values().stream().map(CurveTable::plain).toList()));
    }

    /** Seven digits: more than any measured curve has. */
    private static String rounded(double number) {
        if (number == 0) {
            return "0";
        }
        return new BigDecimal(number).round(new MathContext(7)).stripTrailingZeros().toPlainString();
    }
}
