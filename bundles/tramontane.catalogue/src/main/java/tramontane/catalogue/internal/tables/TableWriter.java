package tramontane.catalogue.internal.tables;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import tramontane.analysis.SectionType;
import tramontane.model.AirMover;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.FormReader;
import tramontane.model.Noun;
import tramontane.model.Quantity;
import tramontane.model.Shape;
import tramontane.model.Value;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Unit;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/** Writes parts as a table that {@link TableReader} reads back. */
public final class TableWriter {

    /** Deeper than this, what nothing knows is written as JSON in one cell. */
    private static final int DEEPEST = 6;

    /** Longest list that gets columns of its own, as {@link FieldPath} reads it. */
    private static final int LONGEST_LIST = 1000;

    private static final Pattern NUMBER_AND_UNIT = Pattern.compile("([+-]?[0-9]+(?:\\.[0-9]+)?(?:[eE][+-]?[0-9]+)?) (\\S.*\\S|\\S)");

    private final Fields fields;
    private final Optional<UnitSystem> units;
    /** Columns in the order of the forms. */
    private final Map<String, Column> columns = new TreeMap<>();

    private TableWriter(Fields fields, Optional<UnitSystem> units) {
        this.fields = fields;
        this.units = units;
    }

    private record Column(FieldPath path, Optional<Field> field, Map<Integer, Value> values) {
    }

    /**
     * Writes parts.
     *
     * @param parts    the parts, each under an id of its own
     * @param wanted   fields as headings of a table name them, objects and lists as a whole included; all where empty
     * @param units    the units of numbers; as written where empty
     * @param sections the section types that are known
     * @throws IllegalArgumentException for a name that means no field, with a sentence for whoever gave it
     */
    public static String write(List<AirMover> parts, List<String> wanted, Optional<UnitSystem> units, List<SectionType<?>> sections) {
        TableWriter writer = new TableWriter(new Fields(sections), units);
        for (int i = 0; i < parts.size(); i++) {
            writer.object(Optional.of(AirMover.FORM), parts.get(i).tree(), new FieldPath(List.of()), "", i);
        }
        return writer.table(parts.size(), wanted.isEmpty() ? List.copyOf(writer.columns.values()) : writer.wanted(wanted));
    }

    private List<Column> wanted(List<String> wanted) {
        List<Column> chosen = new ArrayList<>();
        for (String name : wanted) {
            List<Column> found = columns.values().stream().filter(column -> isWithin(column, name)).toList();
            if (found.isEmpty()) {
                switch (fields.meaning(name)) {
                    case Fields.Clear(Fields.Known known) -> found = under(known);
                    case Fields.Several(List<String> paths) -> throw new IllegalArgumentException("the field \"" + name + "\" may mean "
                            + String.join(" or ", paths) + "; expected one of these");
                    case Fields.Unknown(Optional<String> nearest) -> throw new IllegalArgumentException("\"" + name
                            + "\" is no field of an air mover; expected one such as width or curves.flow"
                            + nearest.map(near -> " (did you mean " + near + "?)").orElse(""));
                }
            }
            found.stream().filter(column -> !chosen.contains(column)).forEach(chosen::add);
        }
        return chosen;
    }

    private static boolean isWithin(Column column, String name) {
        String text = column.path().text();
        return text.equals(name) || text.startsWith(name + ".") || text.startsWith(name + "[");
    }

    /** The columns at a field, below it where it is an object, or an empty one where no part has it. */
    private List<Column> under(Fields.Known known) {
        String place = known.path().place();
        List<Column> found = columns.values().stream().filter(column -> column.path().place().equals(place)
                || column.path().place().startsWith(place + ".") || column.path().place().startsWith(place + "[")).toList();
        boolean isObject = known.field().flatMap(Fields::inner).isPresent();
        return !found.isEmpty() || isObject ? found : List.of(new Column(known.path(), known.field(), Map.of()));
    }

    private void object(Optional<Form> form, Value.Tree tree, FieldPath path, String order, int part) {
        boolean isTop = path.steps().isEmpty();
        tree.members().forEach((name, value) -> {
            Optional<Field> field = form.flatMap(each -> each.field(name));
            String own = order + "/" + field.map(each -> fourDigits(form.orElseThrow().fields().indexOf(each)))
                    .orElse("9999 " + name);
            if (field.isPresent()) {
                known(field.get(), value, path, own, part);
            } else if (isTop && name.equals(Noun.SECTIONS) && value instanceof Value.Tree sections && !sections.isEmpty()) {
                sections.members().forEach((section, written) -> free(Optional.ofNullable(fields.sections().get(section))
                        .map(SectionType::form), written, path.with(FieldPath.Step.of(name)).with(FieldPath.Step.of(section)),
                        order + "/5000 " + section, part));
            } else {
                boolean isQuoted = form.isPresent() && !(isTop && Fields.isFree(name));
                free(Optional.empty(), value, path.with(new FieldPath.Step(name, -1, isQuoted)), own, part);
            }
        });
    }

    private void known(Field field, Value value, FieldPath path, String order, int part) {
        Optional<Form> inner = Fields.inner(field);
        FieldPath.Step step = FieldPath.Step.of(field.name());
        if (inner.isPresent() && field.shape() instanceof Shape.Part && value instanceof Value.Tree tree && !tree.isEmpty()) {
            object(inner, tree, path.with(step), order, part);
        } else if (inner.isPresent() && field.shape() instanceof Shape.Parts && value instanceof Value.Items(List<Value> items)
                && items.size() < LONGEST_LIST
                && items.stream().allMatch(item -> item instanceof Value.Tree tree && !tree.isEmpty()) && !items.isEmpty()) {
            for (int i = 0; i < items.size(); i++) {
                object(inner, (Value.Tree) items.get(i), path.with(step.at(i)), order + " " + fourDigits(i), part);
            }
        } else {
            leaf(path.with(step), Optional.of(field), value, order, part);
        }
    }

    /** A number so that its order as text is its order. */
    private static String fourDigits(int number) {
        return Integer.toString(10_000 + number).substring(1);
    }

    private void free(Optional<Form> form, Value value, FieldPath path, String order, int part) {
        if (value instanceof Value.Tree tree && !tree.isEmpty() && path.steps().size() < DEEPEST) {
            object(form, tree, path, order, part);
        } else {
            leaf(path, Optional.empty(), value, order, part);
        }
    }

    private void leaf(FieldPath path, Optional<Field> field, Value value, String order, int part) {
        // a value here and an object there need a column each
        columns.computeIfAbsent(order + "\0" + path.text(), each -> new Column(path, field, new TreeMap<>())).values().put(part, value);
    }

    private String table(int rows, List<Column> chosen) {
        StringBuilder text = new StringBuilder();
        try (CSVPrinter printer = new CSVPrinter(text, CSVFormat.RFC4180)) {
            List<String> unitOf = chosen.stream().map(this::unit).toList();
            for (int i = 0; i < chosen.size(); i++) {
                printer.print(chosen.get(i).path().text() + (unitOf.get(i).isEmpty() ? "" : " [" + unitOf.get(i) + "]"));
            }
            printer.println();
            for (int row = 0; row < rows; row++) {
                for (int i = 0; i < chosen.size(); i++) {
                    Value value = chosen.get(i).values().get(row);
                    printer.print(value == null ? "" : cell(value, chosen.get(i).field(), unitOf.get(i)));
                }
                printer.println();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e); // never: a text in memory
        }
        return text.toString();
    }

    /** The unit that stands in a heading; none where cells have units of their own. */
    private String unit(Column column) {
        if (!(column.field().map(Field::shape).orElse(null) instanceof Shape.Amount(QuantityKind kind, var range))) {
            return units.isPresent() && column.field().map(Field::shape).orElse(null) instanceof Shape.Amounts amounts
                    ? display(amounts.kind()).symbol() : "";
        }
        if (units.isPresent()) {
            return display(kind).symbol();
        }
        List<String> written = column.values().values().stream().map(value -> FormReader.quantity(value, kind).isPresent()
                && value instanceof Value.Text(String text) && NUMBER_AND_UNIT.matcher(text) instanceof Matcher found && found.matches()
                ? found.group(2) : "").distinct().toList();
        return written.size() == 1 ? written.getFirst() : "";
    }

    private String cell(Value value, Optional<Field> field, String unit) {
        return switch (field.map(Field::shape).orElse(new Shape.Anything())) {
            case Shape.Amount(QuantityKind kind, var range) -> FormReader.quantity(value, kind).map(quantity -> amount(quantity, kind, unit))
                    .orElseGet(() -> Cells.ofAny(value));
            case Shape.Amounts amounts -> amounts(value, amounts.kind());
            case Shape.Whole whole when value instanceof Value.Num num && num.number() == Math.rint(num.number()) ->
                    Numbers.shown(num.number());
            case Shape.Words words when value instanceof Value.Text(String text) -> Cells.ofText(text);
            case Shape.Reference reference when value instanceof Value.Text(String text) -> Cells.ofText(text);
            case Shape.Choice choice when value instanceof Value.Text(String text) -> Cells.ofText(text);
            default -> Cells.ofAny(value);
        };
    }

    private String amount(Quantity quantity, QuantityKind kind, String unit) {
        if (units.isPresent()) {
            return Numbers.shown(display(kind).fromSi(quantity.si()));
        }
        return switch (quantity.written()) {
            case Value.Text(String text) when !unit.isEmpty() -> text.substring(0, text.indexOf(' '));
            case Value.Text(String text) -> text.strip();
            case Value.Num(String literal) -> kind.dimensionless() ? literal : literal + " " + kind.siUnit();
            default -> throw new IllegalStateException("a quantity is written as a number or a text");
        };
    }

    private String amounts(Value value, QuantityKind kind) {
        Optional<double[]> si = numbers(value, kind);
        if (si.isEmpty()) {
            return Cells.ofAny(value);
        }
        if (units.isEmpty() && value instanceof Value.Text(String text)) {
            return text.strip();
        }
        Unit shown = units.isPresent() ? display(kind) : null;
        List<String> numbers = new ArrayList<>();
        for (int i = 0; i < si.get().length; i++) {
            numbers.add(shown != null ? Numbers.shown(shown.fromSi(si.get()[i])) : literal(value, i, si.get()[i]));
        }
        String unit = shown != null ? shown.symbol() : kind.dimensionless() ? "" : kind.siUnit();
        return numbers.isEmpty() || unit.isEmpty() ? String.join(" ", numbers) : String.join(" ", numbers) + " " + unit;
    }

    /** A number as its author wrote it where it is a plain one. */
    private static String literal(Value value, int place, double si) {
        Value one = value instanceof Value.Items(List<Value> items) ? items.get(place) : value;
        return one instanceof Value.Num(String literal) ? literal : Value.Num.of(si).literal();
    }

    private static Optional<double[]> numbers(Value value, QuantityKind kind) {
        List<Value> items = value instanceof Value.Items(List<Value> several) ? several : List.of(value);
        if (value instanceof Value.Text(String text)) {
            try {
                return Optional.of(Units.parseList(text, kind));
            } catch (UnitException e) {
                return Optional.empty();
            }
        }
        List<Quantity> quantities = items.stream().flatMap(item -> FormReader.quantity(item, kind).stream()).toList();
        return quantities.size() == items.size() ? Optional.of(quantities.stream().mapToDouble(Quantity::si).toArray()) : Optional.empty();
    }

    private Unit display(QuantityKind kind) {
        return Units.display(kind, units.orElseThrow());
    }
}
