package tramontane.reliability.statistics;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.model.Problem;
import tramontane.physics.units.Unit;

/**
 * A life test as somebody wrote it down: units that failed or survived, in groups of like temperature and speed, or readings of units.
 *
 * <p>Times are in s, temperatures in K, speeds in rad/s; the unit that times were written in is kept to show them in. A table has units on
 * test ({@link #groups}) or readings ({@link #readings}), not both.
 *
 * @param timeUnit the unit that times were written in
 * @param groups   units on test, by temperature, then speed
 * @param readings units with readings, in the order of the text
 */
public record LifeTable(Unit timeUnit, List<Group> groups, List<UnitReadings> readings) {

    /** Most characters that are read. */
    public static final int LONGEST = 16 << 20;
    /** Most units on test. */
    public static final int MOST_UNITS = 1_000_000;

    /** Refuses a table of nothing, or of both. */
    public LifeTable {
        Objects.requireNonNull(timeUnit);
        groups = List.copyOf(groups);
        readings = List.copyOf(readings);
        if (groups.isEmpty() == readings.isEmpty()) {
            throw new IllegalArgumentException("a table has units on test or readings, got " + groups.size() + " groups and readings of "
                    + readings.size() + " units");
        }
    }

    /**
     * Units that ran alike.
     *
     * @param temperature K, where it was written down
     * @param speed       rad/s, where it was written down
     * @param data        what was seen, s
     */
    public record Group(OptionalDouble temperature, OptionalDouble speed, LifeData data) {
        public Group {
            Objects.requireNonNull(temperature);
            Objects.requireNonNull(speed);
            Objects.requireNonNull(data);
        }

        /** The same as a test at a stress; empty where the temperature is not known. */
        public Optional<StressTest> stress() {
            return temperature.isPresent() ? Optional.of(new StressTest(temperature.getAsDouble(), speed, data)) : Optional.empty();
        }
    }

    /**
     * What was read of one unit.
     *
     * @param unit        its name
     * @param temperature at which it ran, K, where it was written down
     * @param readings    by rising time, s, the last above zero; it ran at time zero
     */
    public record UnitReadings(String unit, OptionalDouble temperature, Readings readings) {
        public UnitReadings {
            Objects.requireNonNull(unit);
            Objects.requireNonNull(temperature);
            Objects.requireNonNull(readings);
        }
    }

    /**
     * What came of reading a text.
     *
     * @param table    empty where something is wrong
     * @param problems everything that is wrong or worth a look; the place names file, line and column
     */
    public record Read(Optional<LifeTable> table, List<Problem> problems) {
        public Read {
            problems = List.copyOf(problems);
        }
    }

    /** All units on test, whatever they ran at. */
    public LifeData pooled() {
        return new LifeData(groups.stream().flatMap(group -> group.data().observations().stream()).toList());
    }

    /**
     * The groups, of readings those that their verdicts give.
     *
     * @param criteria when a unit counts as failed
     */
    public List<Group> judged(FailureCriteria criteria) {
        if (readings.isEmpty()) {
            return groups;
        }
        Map<OptionalDouble, List<Observation>> seen = new LinkedHashMap<>();
        readings.forEach(each -> seen.computeIfAbsent(each.temperature(), key -> new ArrayList<>()).add(each.readings().judge(criteria)
                .observation()));
        return seen.entrySet().stream().map(each -> new Group(each.getKey(), OptionalDouble.empty(), new LifeData(each.getValue())))
                .sorted(Comparator.comparingDouble(group -> group.temperature().orElse(0))).toList();
    }

    /**
     * Reads a life test.
     *
     * <p>A table has a heading row with names and units, in any order: {@code time [h]}, or {@code from [h]} and {@code to [h]} (empty
     * where nobody saw it fail); {@code state} (failed, survived or suspended, F or S, 1 or 0); {@code count}; {@code unit};
     * {@code temperature [°C]}; {@code speed [rpm]}. Without a state, times with a {@code +} or {@code S} behind are those of
     * survivors. Columns are parted by semicolon, tab or comma, lines that begin with {@code #} are left out, and decimals may have a comma
     * where that does not part columns.
     *
     * <p>Bare times need no heading: {@code 54 187 216 500+ 500+ h}.
     *
     * <p>Readings are a table with {@code unit}, {@code time [h]}, and {@code speed}, {@code current} or {@code level}, without state and
     * count, several rows to a unit; speed 0 is that of a unit that does not run.
     *
     * @param name what problems call the text
     * @param text anything; nothing is thrown for what it holds
     */
    public static Read read(String name, String text) {
        return LifeTableReader.read(name, text);
    }
}
