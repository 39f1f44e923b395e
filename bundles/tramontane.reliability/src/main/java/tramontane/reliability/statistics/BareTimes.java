package tramontane.reliability.statistics;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Unit;

/** Times without a heading, with a {@code +} or {@code S} behind those of survivors. */
final class BareTimes {

    private static final Pattern BEGINS = Pattern.compile("\\s*[+\\-−]?[.,]?\\d.*", Pattern.DOTALL);
    private static final Pattern TWO_COMMAS = Pattern.compile("\\d,\\d+,\\d");
    private static final Pattern COMMA_AT_END = Pattern.compile(",(\\s|$)", Pattern.MULTILINE);
    /** Behind a number: marks and a unit, in any order. */
    private static final Pattern MARKS = Pattern.compile("([+SF]?)([^+]*)(\\+?)", Pattern.DOTALL);
    private static final String EXPECTED = "times with a unit at the end, \"+\" or S behind those of survivors: \"54 187 500+ h\"";

    private final String name;
    private final LifeCells cells;
    /** Where each unit stands first. */
    private final Map<Unit, String> units = new LinkedHashMap<>();
    private final List<Time> times = new ArrayList<>();

    BareTimes(String name, LifeCells cells) {
        this.name = name;
        this.cells = cells;
    }

    /** A time that is not read yet. */
    private record Time(String place, String written, String number, boolean survived, boolean marked) {
    }

    /** Whether a first line begins bare times and not a table. */
    static boolean begins(String line) {
        return BEGINS.matcher(line).matches();
    }

    Optional<LifeTable> read(String text) {
        boolean list = TWO_COMMAS.matcher(text).find() || COMMA_AT_END.matcher(text).find();
        int line = 0;
        for (String each : text.lines().toList()) {
            line++;
            int at = 0;
            String[] words = each.strip().split(list ? "[\\s;,]+" : "[\\s;]+");
            for (int i = 0; i < words.length; i++) {
                if (!words[i].isEmpty()) {
                    at++;
                    word(name + ", line " + line + ", column " + at, words[i]);
                }
            }
        }
        cells.oneDecimalSign(name);
        if (units.size() > 1) {
            StringBuilder stand = new StringBuilder();
            units.forEach((unit, place) -> stand.append(stand.isEmpty() ? "" : ", ").append(unit.symbol()).append(" in ").append(place));
            cells.error(name, "has different units: " + stand + "; expected one for all times");
        } else if (units.isEmpty() && cells.sound()) {
            cells.error(name, "has times without a unit; expected one behind them, one of " + LifeCells.units(QuantityKind.TIME)
                    + ": \"54 187 500+ h\"");
        }
        if (times.size() > LifeTable.MOST_UNITS) {
            cells.error(name, "has " + times.size() + " units on test; expected " + LifeTable.MOST_UNITS + " at most");
        }
        if (!cells.sound()) {
            return Optional.empty();
        }
        Unit unit = units.keySet().iterator().next();
        List<Observation> seen = new ArrayList<>();
        for (Time time : times) {
            OptionalDouble si = cells.si(time.place(), time.number(), unit, QuantityKind.TIME);
            if (si.isPresent()) {
                LifeTableReader.seen(cells, time.place(), time.written(), si.getAsDouble(), time.survived()).ifPresent(seen::add);
            }
        }
        if (cells.sound() && seen.isEmpty()) {
            cells.error(name, "has no unit that was on test for any time; expected at least one");
        }
        return cells.sound() ? Optional.of(new LifeTable(unit, List.of(new LifeTable.Group(OptionalDouble.empty(), OptionalDouble.empty(),
                new LifeData(seen))), List.of())) : Optional.empty();
    }

    private void word(String place, String word) {
        if (!begins(word)) {
            behind(place, word, word);
            return;
        }
        Optional<LifeCells.Written> written = cells.written(place, word, EXPECTED);
        if (written.isPresent()) {
            times.add(new Time(place, word, written.get().number(), false, false));
            if (!written.get().behind().isEmpty()) {
                behind(place, word, written.get().behind());
            }
        }
    }

    /** A mark of the time before, a unit, or both. */
    private void behind(String place, String word, String text) {
        Matcher matcher = MARKS.matcher(text);
        Optional<Unit> whole = LifeCells.unit(text, QuantityKind.TIME);
        if (whole.isPresent() || text.startsWith("[") && text.endsWith("]") && LifeCells.unit(text.substring(1, text.length() - 1),
                QuantityKind.TIME).isPresent()) {
            units.putIfAbsent(whole.or(() -> LifeCells.unit(text.substring(1, text.length() - 1), QuantityKind.TIME)).orElseThrow(), place);
            return;
        }
        if (!matcher.matches()) {
            cells.error(place, LifeCells.quote(word) + " is not understood; expected " + EXPECTED);
            return;
        }
        String unit = matcher.group(2).strip();
        Optional<Unit> known = LifeCells.unit(unit, QuantityKind.TIME);
        String mark = matcher.group(1) + matcher.group(3);
        if (!unit.isEmpty() && known.isEmpty() || mark.length() != 1) {
            cells.error(place, LifeCells.quote(word) + (Character.isDigit(word.charAt(0)) ? " is not understood"
                    : " is neither a time nor a unit of it")
                    + "; expected " + EXPECTED);
            return;
        }
        known.ifPresent(each -> units.putIfAbsent(each, place));
        if (times.isEmpty() || times.getLast().marked()) {
            cells.error(place, LifeCells.quote(word) + " has a mark " + LifeCells.quote(mark) + " too many; expected one behind a time");
            return;
        }
        Time last = times.removeLast();
        times.add(new Time(last.place(), last.written(), last.number(), !mark.equals("F"), true));
    }
}
