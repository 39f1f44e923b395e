package tramontane.reliability.statistics;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import tramontane.model.Spelling;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Unit;

/** Reads life tests that have a heading row; hands bare times on. */
final class LifeTableReader {

    /** What may stand in a column. */
    private enum Column {
        TIME("time", Optional.of(QuantityKind.TIME), "h", "life", "age"),
        FROM("from", Optional.of(QuantityKind.TIME), "h", "alive until", "last seen alive"),
        TO("to", Optional.of(QuantityKind.TIME), "h", "failed by"),
        UNIT("unit", Optional.empty(), "", "serial", "serial number", "sample", "id", "name"),
        STATE("state", Optional.empty(), "", "status", "event"),
        COUNT("count", Optional.empty(), "", "number", "units", "quantity"),
        TEMPERATURE("temperature", Optional.of(QuantityKind.TEMPERATURE), "°C", "air temperature", "test temperature"),
        SPEED("speed", Optional.of(QuantityKind.ROTATIONAL_SPEED), "rpm"),
        CURRENT("current", Optional.of(QuantityKind.CURRENT), "A"),
        LEVEL("level", Optional.of(QuantityKind.LEVEL), "dB", "sound level", "noise");

        private final String word;
        private final Optional<QuantityKind> kind;
        private final String usual;
        private final List<String> others;

        Column(String word, Optional<QuantityKind> kind, String usual, String... others) {
            this.word = word;
            this.kind = kind;
            this.usual = usual;
            this.others = List.of(others);
        }

        static Optional<Column> named(String name) {
            String plain = name.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
            return Arrays.stream(values()).filter(each -> each.word.equals(plain) || each.others.contains(plain)).findFirst();
        }

        static List<String> words() {
            return Arrays.stream(values()).map(each -> each.word).toList();
        }
    }

    private static final Set<String> FAILED = Set.of("failed", "failure", "fail", "f", "1");
    private static final Set<String> SURVIVED = Set.of("survived", "survivor", "suspended", "suspension", "censored", "s", "0");
    private static final List<String> STATES = List.of("failed", "survived", "suspended");
    /** Columns that nobody expects to be read. */
    private static final Set<String> REMARKS = Set.of("note", "notes", "remark", "remarks", "comment", "comments", "");
    private static final Pattern HEADING = Pattern.compile("([^\\[(]*)[\\[(](.*)[])]\\s*");

    private final String name;
    private final LifeCells cells = new LifeCells();
    private final Map<Column, Integer> places = new EnumMap<>(Column.class);
    private final Map<Column, String> headings = new EnumMap<>(Column.class);
    /** The unit of a column, once it is known, and where it stands. */
    private final Map<Column, Unit> units = new EnumMap<>(Column.class);
    private final Map<Column, String> unitPlaces = new EnumMap<>(Column.class);
    private final Set<Column> unitMissing = new HashSet<>();
    private int columns;

    private LifeTableReader(String name) {
        this.name = name;
    }

    /** A row, by the line it begins in. */
    private record Row(int line, List<String> cells) {
    }

    /** What units have in common. */
    private record Stress(OptionalDouble temperature, OptionalDouble speed) {
    }

    static LifeTable.Read read(String name, String text) {
        LifeTableReader reader = new LifeTableReader(name);
        Optional<LifeTable> table = reader.table(text);
        return new LifeTable.Read(reader.cells.sound() ? table : Optional.empty(), reader.cells.all(name));
    }

    private Optional<LifeTable> table(String given) {
        if (given.length() > LifeTable.LONGEST) {
            cells.error(name, "has " + given.length() + " characters; expected a life test of " + LifeTable.LONGEST + " at most");
            return Optional.empty();
        }
        if (given.indexOf('\0') >= 0) {
            cells.error(line(1 + (int) given.substring(0, given.indexOf('\0')).chars().filter(c -> c == '\n').count()),
                    "has a NUL character; expected a life test as text");
            return Optional.empty();
        }
        String text = withoutComments(given.startsWith("\uFEFF") ? given.substring(1) : given);
        Optional<String> first = text.lines().filter(line -> !line.isBlank()).findFirst();
        if (first.isEmpty()) {
            cells.error(name, "is empty; expected a life test: a table with a heading row, or times such as \"54 187 500+ h\"");
            return Optional.empty();
        }
        if (BareTimes.begins(first.get())) {
            return new BareTimes(name, cells).read(text);
        }
        List<Row> rows = rows(text, separator(first.get()));
        if (rows.isEmpty() && cells.sound()) {
            cells.error(name, "has no cell with anything in it; expected a heading row such as \"time [h],state\"");
        }
        if (rows.isEmpty() || !headings(rows.getFirst())) {
            return Optional.empty();
        }
        if (rows.size() == 1) {
            cells.error(line(rows.getFirst().line()), "is a heading without rows; expected at least one unit on test below it");
            return Optional.empty();
        }
        List<Row> body = rows.subList(1, rows.size());
        Optional<LifeTable> table = readings(body) ? readingsOf(body) : unitsOf(body);
        cells.oneDecimalSign(name);
        return table;
    }

    /** Comments become empty lines, so that lines keep their numbers. */
    private static String withoutComments(String text) {
        return text.replaceAll("\r\n?", "\n").lines().map(line -> line.stripLeading().startsWith("#") ? "" : line)
                .collect(Collectors.joining("\n"));
    }

    private static Optional<Character> separator(String heading) {
        Optional<Character> best = Optional.empty();
        long most = 0;
        for (char candidate : new char[] {';', '\t', ','}) {
            long count = heading.chars().filter(c -> c == candidate).count();
            if (count > most) {
                most = count;
                best = Optional.of(candidate);
            }
        }
        return best;
    }

    private List<Row> rows(String text, Optional<Character> separator) {
        List<Row> rows = new ArrayList<>();
        if (separator.isEmpty()) {
            List<String> lines = text.lines().toList();
            for (int i = 0; i < lines.size(); i++) {
                if (!lines.get(i).isBlank()) {
                    rows.add(new Row(i + 1, List.of(lines.get(i).strip())));
                }
            }
            return rows;
        }
        CSVFormat format = CSVFormat.RFC4180.builder().setDelimiter(separator.get()).setIgnoreSurroundingSpaces(true).get();
        int line = 1;
        int leading = 0;
        while (leading < text.length() && Character.isWhitespace(text.charAt(leading)) && text.charAt(leading) != '\t') {
            line += text.charAt(leading++) == '\n' ? 1 : 0;
        }
        int base = line;
        try (CSVParser parser = CSVParser.parse(new StringReader(text.substring(leading)), format)) {
            Iterator<CSVRecord> records = parser.iterator();
            while (records.hasNext()) {
                CSVRecord record = records.next();
                List<String> read = record.toList().stream().map(cell -> cell == null ? "" : cell.strip()).toList();
                if (!read.stream().allMatch(String::isBlank)) {
                    rows.add(new Row(line, read));
                }
                line = base + (int) parser.getCurrentLineNumber();
            }
        } catch (UncheckedIOException | IOException | IllegalStateException wrong) {
            cells.error(line(line), String.valueOf(wrong.getMessage()).contains("EOF")
                    ? "has a quotation mark that is never closed; expected another one behind the text"
                    : "has something behind a closing quotation mark; expected the next cell there");
        }
        return rows;
    }

    private boolean headings(Row row) {
        columns = row.cells().size();
        for (int i = 0; i < row.cells().size(); i++) {
            String heading = row.cells().get(i);
            Matcher matcher = HEADING.matcher(heading);
            boolean bracket = matcher.matches();
            String word = (bracket ? matcher.group(1) : heading).strip();
            String place = place(row.line(), heading.isBlank() ? Integer.toString(i + 1) : heading);
            Optional<Column> column = Column.named(word);
            if (column.isEmpty()) {
                unknown(place, word);
                continue;
            }
            if (places.putIfAbsent(column.get(), i) != null) {
                cells.error(place, LifeCells.quote(heading) + " is the second column of the " + column.get().word + "; expected one");
                continue;
            }
            headings.put(column.get(), heading);
            if (bracket && column.get().kind.isPresent()) {
                QuantityKind kind = column.get().kind.get();
                Optional<Unit> unit = LifeCells.unit(matcher.group(2).strip(), kind);
                if (unit.isEmpty()) {
                    cells.error(place, LifeCells.quote(matcher.group(2)) + " is not a unit of a " + kind.name() + "; expected one of "
                            + LifeCells.units(kind));
                    unitMissing.add(column.get());
                } else {
                    units.put(column.get(), unit.get());
                    unitPlaces.put(column.get(), line(row.line()));
                }
            }
        }
        String place = line(row.line());
        boolean interval = places.containsKey(Column.FROM) || places.containsKey(Column.TO);
        if (places.containsKey(Column.TIME) && interval) {
            cells.error(place, "has a time and from or to; expected either \"time\", or \"from\" and \"to\"");
        } else if (interval && !(places.containsKey(Column.FROM) && places.containsKey(Column.TO))) {
            cells.error(place, "has only one of from and to; expected both");
        } else if (!interval && !places.containsKey(Column.TIME)) {
            cells.error(place, "has no column of times in " + LifeCells.quote(String.join(", ", row.cells()))
                    + "; expected \"time [h]\", or \"from [h]\" and \"to [h]\", or bare times that begin with a number");
        }
        return cells.sound();
    }

    private void unknown(String place, String word) {
        Optional<String> near = Spelling.nearest(word.toLowerCase(Locale.ROOT), Column.words());
        if (near.isPresent()) {
            cells.error(place, LifeCells.quote(word) + " is not a column; did you mean \"" + near.get() + "\"?");
        } else if (!REMARKS.contains(word.toLowerCase(Locale.ROOT))) {
            cells.caution(place, LifeCells.quote(word) + " is not read; columns that are read: " + String.join(", ", Column.words()));
        }
    }

    /** Whether rows are readings of units. */
    private boolean readings(List<Row> rows) {
        if (!places.containsKey(Column.UNIT) || !places.containsKey(Column.TIME) || places.containsKey(Column.STATE)
                || places.containsKey(Column.COUNT)) {
            return false;
        }
        if (places.containsKey(Column.CURRENT) || places.containsKey(Column.LEVEL)) {
            return true;
        }
        Set<String> names = new HashSet<>();
        return places.containsKey(Column.SPEED) && rows.stream().anyMatch(row -> !names.add(cell(row, Column.UNIT)));
    }

    private Optional<LifeTable> unitsOf(List<Row> rows) {
        Map<Stress, List<Observation>> groups = new LinkedHashMap<>();
        Map<String, Integer> names = new HashMap<>();
        long count = 0;
        for (Row row : rows) {
            if (tooMany(row)) {
                continue;
            }
            String unit = cell(row, Column.UNIT);
            Integer before = unit.isEmpty() ? null : names.putIfAbsent(unit, row.line());
            if (before != null) {
                cells.error(place(row.line(), Column.UNIT), LifeCells.quote(unit) + " stands in line " + before
                        + " already; expected one row for each unit on test");
            }
            Optional<Observation> seen = places.containsKey(Column.TIME) ? ofTime(row) : ofInterval(row);
            int units = count(row);
            count += units;
            OptionalDouble temperature = stress(row, Column.TEMPERATURE);
            OptionalDouble speed = stress(row, Column.SPEED);
            seen.filter(each -> units > 0).ifPresent(each -> groups.computeIfAbsent(new Stress(temperature, speed),
                    key -> new ArrayList<>())
                    .add(each.times(units)));
        }
        if (count > LifeTable.MOST_UNITS) {
            cells.error(name, "has " + count + " units on test; expected " + LifeTable.MOST_UNITS + " at most");
        }
        if (cells.sound() && groups.isEmpty()) {
            cells.error(name, "has no unit that was on test for any time; expected at least one");
        }
        if (!cells.sound()) {
            return Optional.empty();
        }
        Column time = places.containsKey(Column.TIME) ? Column.TIME : units.containsKey(Column.FROM) ? Column.FROM : Column.TO;
        return Optional.of(new LifeTable(units.get(time), groups.entrySet().stream().map(each -> new LifeTable.Group(each.getKey()
                .temperature(),
                each.getKey().speed(), new LifeData(each.getValue()))).sorted(Comparator.comparingDouble((LifeTable.Group group) ->
                group.temperature().orElse(0)).thenComparingDouble(group -> group.speed().orElse(0))).toList(), List.of()));
    }

    private Optional<Observation> ofTime(Row row) {
        String written = cell(row, Column.TIME);
        boolean marked = written.endsWith("+") || written.endsWith("S") || written.endsWith("F");
        Optional<Boolean> byMark = marked ? Optional.of(!written.endsWith("F")) : Optional.empty();
        OptionalDouble time = quantity(row, Column.TIME, marked ? written.substring(0, written.length() - 1).strip() : written);
        Optional<Boolean> byState = survived(row);
        if (places.containsKey(Column.STATE) && byState.isEmpty() || time.isEmpty()) {
            return Optional.empty();
        }
        String place = place(row.line(), Column.TIME);
        if (byState.isPresent() && byMark.isPresent() && !byState.equals(byMark)) {
            cells.error(place, LifeCells.quote(written) + " is marked otherwise than its state " + LifeCells.quote(cell(row, Column.STATE))
                    + "; expected both alike");
            return Optional.empty();
        }
        return seen(cells, place, written, time.getAsDouble(), byState.or(() -> byMark).orElse(false));
    }

    /** A unit that failed or survived until a time; empty with a problem, or a caution where it tells nothing. */
    static Optional<Observation> seen(LifeCells cells, String place, String written, double time, boolean survived) {
        if (time < 0) {
            cells.error(place, LifeCells.quote(written) + " is below zero; expected a time on test");
            return Optional.empty();
        }
        if (time == 0 && !survived) {
            cells.error(place, LifeCells.quote(written) + " is the time of a failure; expected it above zero, as no unit fails before it"
                    + " runs");
            return Optional.empty();
        }
        if (time == 0) {
            cells.caution(place, LifeCells.quote(written) + " is the time of a survivor that never ran; it tells nothing and is left out");
            return Optional.empty();
        }
        return Optional.of(survived ? Observation.survivor(time) : Observation.failure(time));
    }

    private Optional<Observation> ofInterval(Row row) {
        String fromText = cell(row, Column.FROM);
        String toText = cell(row, Column.TO);
        String place = place(row.line(), Column.TO);
        if (fromText.isEmpty() && toText.isEmpty()) {
            cells.error(place, "from and to are both empty; expected at least one of the two");
            survived(row);
            return Optional.empty();
        }
        OptionalDouble from = fromText.isEmpty() ? OptionalDouble.of(0) : quantity(row, Column.FROM, fromText);
        OptionalDouble to = toText.isEmpty() ? OptionalDouble.of(Double.POSITIVE_INFINITY) : quantity(row, Column.TO, toText);
        Optional<Boolean> state = survived(row);
        if (from.isEmpty() || to.isEmpty() || places.containsKey(Column.STATE) && state.isEmpty()) {
            return Optional.empty();
        }
        if (state.isPresent() && state.get() != toText.isEmpty()) {
            cells.error(place(row.line(), Column.STATE), LifeCells.quote(cell(row, Column.STATE)) + (state.get()
                    ? " has a time to " + LifeCells.quote(toText) + "; expected none, as nobody saw it fail"
                    : " has no time to; expected the time by which it had failed"));
            return Optional.empty();
        }
        if (from.getAsDouble() < 0) {
            cells.error(place(row.line(), Column.FROM), LifeCells.quote(fromText) + " is below zero; expected a time on test");
            return Optional.empty();
        }
        if (toText.isEmpty()) {
            return seen(cells, place(row.line(), Column.FROM), fromText, from.getAsDouble(), true);
        }
        if (to.getAsDouble() <= 0) {
            cells.error(place, LifeCells.quote(toText) + " is the time of a failure; expected it above zero, as no unit fails before it"
                    + " runs");
            return Optional.empty();
        }
        if (from.getAsDouble() > to.getAsDouble()) {
            cells.error(place, LifeCells.quote(toText) + " lies before from, " + LifeCells.quote(fromText)
                    + "; expected it there or later");
            return Optional.empty();
        }
        return Optional.of(new Observation(from.getAsDouble(), to.getAsDouble(), 1));
    }

    /** Whether the state says that it survived; empty where there is none or it is not understood, the latter a problem. */
    private Optional<Boolean> survived(Row row) {
        if (!places.containsKey(Column.STATE)) {
            return Optional.empty();
        }
        String word = cell(row, Column.STATE);
        String plain = word.toLowerCase(Locale.ROOT);
        if (FAILED.contains(plain) || SURVIVED.contains(plain)) {
            return Optional.of(SURVIVED.contains(plain));
        }
        cells.error(place(row.line(), Column.STATE), (word.isEmpty() ? "the state is missing" : LifeCells.quote(word) + " is not a state")
                + Spelling.nearest(plain, STATES).map(near -> "; did you mean \"" + near + "\"?")
                .orElse("; expected failed, survived or suspended, F or S, 1 (failed) or 0"));
        return Optional.empty();
    }

    private int count(Row row) {
        if (!places.containsKey(Column.COUNT)) {
            return 1;
        }
        String text = cell(row, Column.COUNT);
        if (text.matches("\\d{1,7}")) {
            int count = Integer.parseInt(text);
            if (count >= 1 && count <= LifeTable.MOST_UNITS) {
                return count;
            }
        }
        cells.error(place(row.line(), Column.COUNT), (text.isEmpty() ? "the count is missing" : LifeCells.quote(text)
                + " is not a count of units")
                + "; expected a whole number from 1 to " + LifeTable.MOST_UNITS);
        return 0;
    }

    /** Temperature or speed that a unit ran at. */
    private OptionalDouble stress(Row row, Column column) {
        if (!places.containsKey(column)) {
            return OptionalDouble.empty();
        }
        String text = cell(row, column);
        OptionalDouble value = quantity(row, column, text);
        if (value.isPresent() && !(value.getAsDouble() > 0)) {
            cells.error(place(row.line(), column), LifeCells.quote(text) + " is not above " + (column == Column.TEMPERATURE
                    ? "absolute zero"
                    : "zero") + "; expected the " + column.word + " that units ran at");
        }
        return value;
    }

    private Optional<LifeTable> readingsOf(List<Row> rows) {
        Map<String, TreeMap<Double, Readings.Reading>> read = new LinkedHashMap<>();
        Map<String, OptionalDouble> temperatures = new HashMap<>();
        for (Row row : rows) {
            if (tooMany(row)) {
                continue;
            }
            String unit = cell(row, Column.UNIT);
            if (unit.isEmpty()) {
                cells.error(place(row.line(), Column.UNIT), "the unit is missing; expected its name");
            }
            String timeText = cell(row, Column.TIME);
            OptionalDouble time = quantity(row, Column.TIME, timeText);
            if (time.isPresent() && time.getAsDouble() < 0) {
                cells.error(place(row.line(), Column.TIME), LifeCells.quote(timeText) + " is below zero; expected a time on test");
            }
            OptionalDouble temperature = stress(row, Column.TEMPERATURE);
            OptionalDouble other = temperatures.putIfAbsent(unit, temperature);
            if (other != null && !other.equals(temperature) && temperature.isPresent()) {
                cells.error(place(row.line(), Column.TEMPERATURE), LifeCells.quote(cell(row, Column.TEMPERATURE))
                        + " is another temperature than that of " + LifeCells.quote(unit) + " above; expected one for each unit");
            }
            Readings.Reading reading = reading(row, time);
            if (!reading.ran() && reading.time() == 0 && time.isPresent()) {
                cells.error(place(row.line(), Column.SPEED), LifeCells.quote(unit)
                        + " does not run at time 0; expected a unit that begins to live,"
                        + " or none");
            }
            if (time.isPresent() && read.computeIfAbsent(unit, key -> new TreeMap<>()).putIfAbsent(time.getAsDouble(), reading) != null) {
                cells.error(place(row.line(), Column.TIME), LifeCells.quote(timeText) + " stands twice for " + LifeCells.quote(unit)
                        + "; expected one reading at a time");
            }
        }
        read.forEach((unit, times) -> {
            if (times.lastKey() == 0) {
                cells.error(name, LifeCells.quote(unit) + " was read at time 0 only; expected a later reading");
            }
        });
        if (!cells.sound()) {
            return Optional.empty();
        }
        return Optional.of(new LifeTable(units.get(Column.TIME), List.of(), read.entrySet().stream().map(each -> new LifeTable.UnitReadings(
                each.getKey(), temperatures.get(each.getKey()), new Readings(List.copyOf(each.getValue().values())))).toList()));
    }

    private Readings.Reading reading(Row row, OptionalDouble time) {
        double at = Math.max(0, time.orElse(0));
        OptionalDouble speed = value(row, Column.SPEED);
        OptionalDouble current = value(row, Column.CURRENT);
        OptionalDouble level = value(row, Column.LEVEL);
        boolean ran = speed.orElse(1) > 0 && (speed.isPresent() || current.orElse(1) > 0);
        if (ran && current.isPresent() && current.getAsDouble() == 0) {
            cells.error(place(row.line(), Column.CURRENT), LifeCells.quote(cell(row, Column.CURRENT))
                    + " is the current of a unit that runs; expected it above zero, or speed 0");
            return Readings.Reading.running(at);
        }
        return ran ? new Readings.Reading(at, true, speed, current, level) : Readings.Reading.stopped(at);
    }

    /** What was read; empty where the cell is, or there is no such column. */
    private OptionalDouble value(Row row, Column column) {
        String text = cell(row, column);
        OptionalDouble value = text.isEmpty() ? OptionalDouble.empty() : quantity(row, column, text);
        if (value.isPresent() && column != Column.LEVEL && value.getAsDouble() < 0) {
            cells.error(place(row.line(), column), LifeCells.quote(text) + " is below zero; expected a " + column.word);
            return OptionalDouble.empty();
        }
        return value;
    }

    /** A quantity in SI; empty where it is wrong, which is a problem then. */
    private OptionalDouble quantity(Row row, Column column, String text) {
        String place = place(row.line(), column);
        QuantityKind kind = column.kind.orElseThrow();
        String expected = "a " + kind.name() + (units.containsKey(column) ? " in " + units.get(column).symbol() : ", such as \"40 "
                + column.usual
                + "\"");
        if (text.isEmpty()) {
            cells.error(place, "the " + column.word + " is missing; expected " + expected);
            return OptionalDouble.empty();
        }
        Optional<LifeCells.Written> written = cells.written(place, text, expected);
        if (written.isEmpty()) {
            return OptionalDouble.empty();
        }
        String behind = written.get().behind();
        if (behind.isEmpty()) {
            if (!units.containsKey(column) && unitMissing.add(column)) {
                cells.error(place, LifeCells.quote(text) + " has no unit; expected one in the heading, for example \"" + column.word + " ["
                        + column.usual + "]\"");
            }
            return units.containsKey(column) ? cells.si(place, written.get().number(), units.get(column), kind) : OptionalDouble.empty();
        }
        Optional<Unit> own = LifeCells.unit(behind, kind);
        if (own.isEmpty()) {
            cells.error(place, LifeCells.quote(text) + " is not a " + kind.name() + ": " + LifeCells.quote(behind)
                    + " is no unit of it; expected "
                    + (units.containsKey(column) ? units.get(column).symbol() : "one of " + LifeCells.units(kind)));
            return OptionalDouble.empty();
        }
        Unit unit = units.computeIfAbsent(column, key -> own.get());
        unitPlaces.putIfAbsent(column, line(row.line()));
        if (!unit.equals(own.get())) {
            cells.error(place, LifeCells.quote(text) + " is in " + own.get().symbol() + ", " + unitPlaces.get(column) + " in "
                    + unit.symbol()
                    + "; expected one unit in a column");
            return OptionalDouble.empty();
        }
        return cells.si(place, written.get().number(), unit, kind);
    }

    private boolean tooMany(Row row) {
        boolean more = row.cells().size() > columns && row.cells().stream().skip(columns).anyMatch(cell -> !cell.isBlank());
        if (more) {
            cells.error(line(row.line()), "has " + row.cells().size() + " cells, its heading " + columns
                    + "; expected as many (a decimal comma cannot stand where commas part columns)");
        }
        return more;
    }

    private String cell(Row row, Column column) {
        Integer at = places.get(column);
        return at == null || at >= row.cells().size() ? "" : row.cells().get(at);
    }

    private String line(int line) {
        return name + ", line " + line;
    }

    private String place(int line, Column column) {
        return place(line, headings.getOrDefault(column, column.word));
    }

    private String place(int line, String heading) {
        String plain = LifeCells.quote(heading);
        return line(line) + ", column " + plain.substring(1, plain.length() - 1);
    }
}
