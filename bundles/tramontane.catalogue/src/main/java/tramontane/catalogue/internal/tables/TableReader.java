package tramontane.catalogue.internal.tables;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import tramontane.analysis.Importer.Imported;
import tramontane.analysis.SectionType;
import tramontane.catalogue.internal.tables.Fields.Known;
import tramontane.catalogue.internal.tables.Numbers.LinedText;
import tramontane.catalogue.internal.tables.TableText.Row;
import tramontane.model.AirMover;
import tramontane.model.Field;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Shape;
import tramontane.model.Spelling;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.physics.units.QuantityKind;

/** Reads a table of parts: which column is which field, and what each cell says. */
public final class TableReader {

    /** Problems that are listed; further ones are counted. */
    private static final int MOST_PROBLEMS = 200;

    private static final Pattern LINE = Pattern.compile(", line ([0-9]{1,9})");

    private final String name;
    private final Values settings;
    private final Fields fields;
    private final List<Problem> problems = new ArrayList<>();
    /** Cells without a unit by field: one sentence for a whole column. */
    private final Map<String, List<Problem>> unitless = new LinkedHashMap<>();

    private TableReader(String name, Values settings, Fields fields) {
        this.name = name;
        this.settings = settings;
        this.fields = fields;
    }

    /**
     * A column that is read.
     *
     * @param heading as the table has it
     * @param unit    of numbers without one; a blank text for none; empty where it is wrong, so that no cell can be read
     */
    private record Column(int number, String heading, Known known, Optional<String> unit) {

        Optional<Shape> shape() {
            return known.field().map(Field::shape);
        }

        boolean isNumeric() {
            return shape().filter(shape -> shape instanceof Shape.Amount || shape instanceof Shape.Amounts).isPresent();
        }
    }

    /** A heading taken apart. */
    private record Heading(String field, String unit) {
    }

    /**
     * Reads a table.
     *
     * @param name     the file's name, for messages
     * @param content  its bytes
     * @param settings values of {@link Settings#TABLE}
     * @param sections the section types that are known
     */
    public static Imported read(String name, byte[] content, Values settings, List<SectionType<?>> sections) {
        TableReader reader = new TableReader(name, settings, new Fields(sections));
        List<AirMover> parts = reader.parts(content);
        return imported(parts, reader.problems);
    }

    /** What was read; nothing where anything is wrong. */
    static Imported imported(List<AirMover> parts, List<Problem> problems) {
        boolean isWrong = problems.stream().anyMatch(Problem::isError);
        List<Problem> errorsFirst = problems.stream().sorted(Comparator.comparing(Problem::severity)
                .thenComparing(TableReader::line)).toList();
        int dropped = errorsFirst.size() - MOST_PROBLEMS;
        List<Problem> listed = errorsFirst;
        if (dropped > 0) {
            listed = new ArrayList<>(errorsFirst.subList(0, MOST_PROBLEMS));
            String more = "and " + dropped + " more problems, which are not listed";
            listed.add(isWrong ? Problem.error("", more) : Problem.caution("", more));
        }
        return new Imported(isWrong ? List.of() : parts, List.of(), listed);
    }

    private static int line(Problem problem) {
        Matcher found = LINE.matcher(problem.place());
        return found.find() ? Integer.parseInt(found.group(1)) : 0;
    }

    private List<AirMover> parts(byte[] content) {
        Optional<String> decoded = TableText.decode(name, content, settings.text("encoding"), problems);
        if (decoded.isEmpty()) {
            return List.of();
        }
        String text = decoded.get();
        int skipped = settings.whole("skip");
        char separator = Settings.separator(settings.text("delimiter"), text, skipped);
        List<Row> rows = TableText.rows(name, text, separator, skipped, problems);
        if (rows.isEmpty()) {
            if (problems.stream().noneMatch(Problem::isError)) {
                problems.add(Problem.error(name, (skipped > 0 ? "has no lines behind the first " + skipped : "is empty")
                        + "; expected a line of headings and a row for each part"));
            }
            return List.of();
        }
        Row header = rows.getFirst();
        List<Column> columns = columns(header, rows);
        Optional<Column> id = columns.stream().filter(column -> column.known().path().place().equals("id")).findFirst();
        if (id.isEmpty()) {
            problems.add(Problem.error(TableText.line(name, header.line()), "no column is the part number; expected one with the heading id"
                    + ", or \"columns\" in the settings that name it"));
            return List.of();
        }
        if (rows.size() == 1 && problems.stream().anyMatch(Problem::isError)) {
            return List.of();
        }
        if (rows.size() == 1) {
            problems.add(Problem.error(name, "has headings and no rows; expected a row for each part"));
            return List.of();
        }
        List<Row> full = rows.subList(1, rows.size()).stream().filter(row -> hasAllCells(row, header, separator)).toList();
        Numbers numbers = Numbers.of(full.stream().flatMap(row -> columns.stream().filter(Column::isNumeric)
                .map(column -> new LinedText(row.line(), row.cells().get(column.number())))).toList(), settings.text("decimal"), separator);
        List<PartRow> read = new ArrayList<>();
        List<PartRow.Cell> constants = constants();
        for (Row row : full) {
            String part = Cells.text(row.cells().get(id.get().number()));
            if (part.isBlank()) {
                problems.add(Problem.error(place(row, id.get()), "is empty; expected the part number"));
                part = "";
            }
            List<PartRow.Cell> cells = new ArrayList<>();
            Set<String> bad = new HashSet<>();
            for (Column column : columns) {
                String cell = row.cells().get(column.number());
                if (!cell.isBlank()) {
                    Optional<PartRow.Cell> value = column.unit().flatMap(unit -> cell(cell, column.known(), unit, numbers, place(row, column)));
                    value.ifPresentOrElse(cells::add, () -> bad.add(column.known().path().key()));
                }
            }
            if (!part.isEmpty()) {
                read.add(new PartRow(part, row.line(), cells, bad));
            }
        }
        unitless.forEach((column, cells) -> problems.add(cells.size() == 1 ? cells.getFirst() : Problem.error(cells.getFirst().place(),
                cells.getFirst().message().replace(" has no unit;", " and " + (cells.size() - 1) + " more below have no unit;"))));
        return new PartAssembly(name, fields, constants, problems).parts(read);
    }

    private boolean hasAllCells(Row row, Row header, char separator) {
        int size = row.cells().size();
        int expected = header.cells().size();
        if (size == expected || size > expected && row.cells().subList(expected, size).stream().allMatch(String::isBlank)) {
            return true;
        }
        problems.add(Problem.error(TableText.line(name, row.line()), "has " + size + (size == 1 ? " cell" : " cells") + "; expected "
                + expected + ", as many as headings" + (size > expected && separator == ','
                ? " (a comma within a cell, as in a number, needs quotation marks around the cell)" : "")));
        return false;
    }

    private String place(Row row, Column column) {
        return TableText.line(name, row.line()) + ", column " + FormReader.describe(new Value.Text(column.heading()));
    }

    private Optional<PartRow.Cell> cell(String cell, Known known, String unit, Numbers numbers, String place) {
        try {
            Shape shape = known.field().map(Field::shape).orElse(new Shape.Anything());
            Value value = switch (shape) {
                case Shape.Words words -> new Value.Text(Cells.text(cell));
                case Shape.Reference reference -> new Value.Text(Cells.text(cell));
                case Shape.Choice(List<String> words) -> new Value.Text(words.stream()
                        .filter(word -> word.equalsIgnoreCase(Cells.text(cell))).findFirst().orElse(Cells.text(cell)));
                case Shape.YesNo() -> yesNo(cell);
                case Shape.Whole whole -> numbers.whole(cell);
                case Shape.WholeOr whole -> Numbers.begins(cell.strip()) ? numbers.whole(cell) : new Value.Text(Cells.text(cell));
                case Shape.Amount(QuantityKind kind, var range) -> numbers.quantity(cell, kind, unit);
                case Shape.Amounts amounts -> null;
                default -> Cells.any(cell);
            };
            if (shape instanceof Shape.Amounts amounts) {
                Numbers.Written list = numbers.list(cell, amounts.kind(), unit);
                return Optional.of(new PartRow.Cell(known.path(), place, Numbers.value(list), Optional.of(list)));
            }
            return Optional.of(new PartRow.Cell(known.path(), place, value, Optional.empty()));
        } catch (BadCell e) {
            if (e.isUnitMissing() && unit.isEmpty()) {
                unitless.computeIfAbsent(known.path().key(), each -> new ArrayList<>()).add(Problem.error(place, e.getMessage()));
            } else {
                problems.add(Problem.error(place, e.getMessage()));
            }
            return Optional.empty();
        }
    }

    private static Value yesNo(String cell) throws BadCell {
        return switch (cell.strip().toLowerCase(Locale.ROOT)) {
            case "true", "yes" -> new Value.Flag(true);
            case "false", "no" -> new Value.Flag(false);
            default -> throw new BadCell(FormReader.describe(new Value.Text(cell.strip())) + " is neither yes nor no; expected true or false");
        };
    }

    private List<PartRow.Cell> constants() {
        List<PartRow.Cell> constants = new ArrayList<>();
        List<Values> written = settings.parts("constants");
        for (int i = 0; i < written.size(); i++) {
            String place = "settings, constants[" + i + "]";
            Optional<Known> known = field(written.get(i).text("field"), Problem.place(place, "field"), true);
            String value = written.get(i).text("value");
            if (known.isPresent() && known.get().path().place().equals("id")) {
                problems.add(Problem.error(Problem.place(place, "field"), "is the part number, which no two parts share; expected another field"));
            } else if (known.isPresent() && !value.isBlank()) {
                cell(value, known.get(), "", Numbers.POINT, Problem.place(place, "value")).ifPresent(constants::add);
            }
        }
        return constants;
    }

    /** The field of a name; a name that means none is reported. */
    private Optional<Known> field(String field, String place, boolean isError) {
        String message;
        switch (fields.meaning(field)) {
            case Fields.Clear(Known known) -> {
                if (known.path().place().equals("curves")) {
                    message = "is a list of curves; expected what a curve has, such as curves.flow";
                } else {
                    return Optional.of(known);
                }
            }
            case Fields.Several(List<String> paths) -> message = "may mean " + String.join(" or ", paths) + "; expected one of these";
            case Fields.Unknown(Optional<String> nearest) -> message = "is no field of an air mover that anything loaded here knows"
                    + nearest.map(near -> " (did you mean " + near + "?)").orElse("")
                    + (isError ? "; expected one, such as width or curves.flow" : "");
        }
        problems.add(isError ? Problem.error(place, FormReader.describe(new Value.Text(field)) + " " + message)
                : Problem.caution(place, message + "; the column is not read"));
        return Optional.empty();
    }

    private List<Column> columns(Row header, List<Row> rows) {
        Map<String, Integer> mapped = new LinkedHashMap<>();
        List<Values> mappings = settings.parts("columns");
        for (int i = 0; i < mappings.size(); i++) {
            if (mapped.putIfAbsent(key(mappings.get(i).text("column")), i) != null) {
                problems.add(Problem.error("settings, columns[" + i + "].column",
                        FormReader.describe(new Value.Text(mappings.get(i).text("column"))) + " stands there twice; expected each column once"));
            }
        }
        List<Column> columns = new ArrayList<>();
        Map<String, String> taken = new LinkedHashMap<>();
        for (int number = 0; number < header.cells().size(); number++) {
            String heading = header.cells().get(number).strip();
            Heading apart = heading(heading);
            Integer mapping = mapped.remove(key(heading));
            mapping = mapping != null ? mapping : mapped.remove(key(apart.field()));
            int place = number;
            if (heading.isEmpty()) {
                rows.stream().skip(1).filter(row -> place < row.cells().size() && !row.cells().get(place).isBlank()).findFirst()
                        .ifPresent(row -> problems.add(Problem.caution(TableText.line(name, header.line()), "column " + (place + 1)
                                + " has no heading; it is not read, though line " + row.line() + " has something there")));
                continue;
            }
            column(header.line(), number, heading, apart, Optional.ofNullable(mapping).map(mappings::get),
                    mapping == null ? "" : "settings, columns[" + mapping + "]").ifPresent(column -> {
                        String before = taken.putIfAbsent(column.known().path().key(), heading);
                        if (before != null) {
                            problems.add(Problem.error(TableText.line(name, header.line()) + ", column "
                                    + FormReader.describe(new Value.Text(heading)), "is " + column.known().path().shown()
                                    + ", and so is column " + FormReader.describe(new Value.Text(before)) + "; expected one column for each field"));
                        } else {
                            columns.add(column);
                        }
                    });
        }
        mapped.forEach((key, index) -> problems.add(Problem.caution("settings, columns[" + index + "].column", "the table has no column "
                + FormReader.describe(new Value.Text(mappings.get(index).text("column")))
                + Spelling.hint(mappings.get(index).text("column"), header.cells().stream().map(cell -> heading(cell.strip()).field()).toList()))));
        return columns;
    }

    private Optional<Column> column(int line, int number, String heading, Heading apart, Optional<Values> mapping, String mappingPlace) {
        String place = TableText.line(name, line) + ", column " + FormReader.describe(new Value.Text(heading));
        if (mapping.isPresent() && mapping.get().text("field").isBlank()) {
            return Optional.empty();
        }
        Optional<Known> known = mapping.isPresent() ? field(mapping.get().text("field"), Problem.place(mappingPlace, "field"), true)
                : field(apart.field(), place, false);
        String set = mapping.map(each -> each.text("unit").strip()).orElse("");
        String unit = set.isEmpty() ? apart.unit() : set;
        if (known.isEmpty() || unit.isEmpty()) {
            return known.map(each -> new Column(number, heading, each, Optional.of("")));
        }
        String unitPlace = set.isEmpty() ? place : Problem.place(mappingPlace, "unit");
        try {
            switch (known.get().field().map(Field::shape).orElse(new Shape.Anything())) {
                case Shape.Amount(QuantityKind kind, var range) -> Numbers.unit(unit, kind);
                case Shape.Amounts amounts -> Numbers.unit(unit, amounts.kind());
                default -> {
                    problems.add(Problem.error(unitPlace, "the unit " + FormReader.describe(new Value.Text(unit))
                            + " has no meaning here: " + known.get().path().shown() + " is no number with a unit; expected none"));
                    return Optional.of(new Column(number, heading, known.get(), Optional.of("")));
                }
            }
        } catch (BadCell e) {
            problems.add(Problem.error(unitPlace, e.getMessage()));
            return Optional.of(new Column(number, heading, known.get(), Optional.empty()));
        }
        return Optional.of(new Column(number, heading, known.get(), Optional.of(unit)));
    }

    private static String key(String heading) {
        return heading.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    }

    /** Field and unit of a heading: {@code width [mm]}, {@code width (mm)}; the number of a list's element is no unit. */
    private static Heading heading(String heading) {
        int end = heading.length() - 1;
        char close = end < 1 ? ' ' : heading.charAt(end);
        if (close != ']' && close != ')') {
            return new Heading(heading, "");
        }
        char open = close == ']' ? '[' : '(';
        int depth = 0;
        for (int at = end; at > 0; at--) {
            depth += heading.charAt(at) == close ? 1 : heading.charAt(at) == open ? -1 : 0;
            if (depth == 0) {
                String unit = heading.substring(at + 1, end).strip();
                boolean isIndex = close == ']' && unit.matches("[0-9]+") && heading.charAt(at - 1) != ' ';
                return isIndex ? new Heading(heading, "") : new Heading(heading.substring(0, at).strip(), unit);
            }
        }
        return new Heading(heading, "");
    }

    /** How many things, and the first of them by name. */
    static String some(List<String> names) {
        String first = names.stream().limit(3).map(each -> FormReader.describe(new Value.Text(each))).collect(Collectors.joining(", "));
        return names.size() > 3 ? first + " and " + (names.size() - 3) + " more" : first;
    }
}
