package tramontane.thermal;

import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.analysis.Sentence;

/**
 * Temperatures in time.
 *
 * <p>A time stands twice where something jumps: the values before and after.
 *
 * @param duration  how long it was followed, s; 0 where a condition has no timeline
 * @param times     s, not falling
 * @param bays      temperature of each bay at these times, K, by id in the order of the design
 * @param junctions temperature of each heat source, K; NaN at times at which it cannot be told
 * @param settings  speed setting of each bank
 * @param flows     flow of each bank at its inlet, m³/s
 * @param parts     each heat source as a whole, those left out whose temperature cannot be told
 * @param events    what changes, in order of time
 * @param cycles    control laws that go to and fro
 * @param wet       surfaces on which water settles
 * @param settled   bodies that were taken to follow the others at once
 * @param remarks   what else is worth knowing: {@link Remark}
 */
public record History(double duration, List<Double> times, Map<String, List<Double>> bays, Map<String, List<Double>> junctions,
        Map<String, List<Double>> settings, Map<String, List<Double>> flows, List<Course> parts, List<Event> events,
        List<Cycle> cycles, List<Wet> wet, List<String> settled, List<Remark> remarks) {

    /** Of a condition that has no timeline. */
    public static final History NONE = new History(0, List.of(), Map.of(), Map.of(), Map.of(), Map.of(), List.of(), List.of(), List.of(),
            List.of(), List.of(), List.of());

    public History {
        times = List.copyOf(times);
        bays = copy(bays);
        junctions = copy(junctions);
        settings = copy(settings);
        flows = copy(flows);
        parts = List.copyOf(parts);
        events = List.copyOf(events);
        cycles = List.copyOf(cycles);
        wet = List.copyOf(wet);
        settled = List.copyOf(settled);
        remarks = List.copyOf(remarks);
    }

    private static Map<String, List<Double>> copy(Map<String, List<Double>> series) {
        Map<String, List<Double>> copy = new LinkedHashMap<>();
        series.forEach((id, values) -> copy.put(id, List.copyOf(values)));
        return Collections.unmodifiableMap(copy);
    }

    /** What else is worth knowing of a history. */
    public enum Remark {
        /** At some time flow and temperature did not agree. */
        RESTLESS,
        /** Of a law that goes to and fro, many turns were taken together. */
        SKIPPED,
        /** At the end of what the last condition leads to nothing comes to rest. */
        NO_REST
    }

    /**
     * One heat source as a whole.
     *
     * @param source   its id
     * @param limit    its limit, K
     * @param peak     highest temperature, K
     * @param peakTime when, s
     * @param reached  when it first was above its limit, s; empty where it never was
     * @param end      temperature at the end, K
     * @param rate     how fast it rises at the end, K/s
     * @param steady   where it would come to in the last condition, K; empty where nothing comes to rest
     */
    public record Course(String source, Optional<Double> limit, double peak, double peakTime, Optional<Double> reached, double end,
            double rate, Optional<Double> steady) {
    }

    /**
     * A change.
     *
     * @param at   s
     * @param what in words: {@code fans 1 fails}
     */
    public record Event(double at, Sentence what) {
    }

    /**
     * A control law that goes to and fro.
     *
     * @param law    its id
     * @param from   since when, s
     * @param period s
     * @param low    lowest setting
     * @param high   highest setting
     */
    public record Cycle(String law, double from, double period, double low, double high) {
    }

    /**
     * A surface no warmer than the dew point of the air that reaches it.
     *
     * @param what     what it is, in words
     * @param place    heat source or bay
     * @param from     since when, s
     * @param until    until when, s
     * @param coldest  its lowest temperature in that time, K
     * @param dewPoint of the air then, K
     */
    public record Wet(String what, String place, double from, double until, double coldest, double dewPoint) {
    }

    /** The heat source that is first above its limit. */
    public Optional<Course> first() {
        return parts.stream().filter(part -> part.reached().isPresent()).min(Comparator.comparing(part -> part.reached().get()));
    }

    /** The course of a heat source. */
    public Optional<Course> part(String source) {
        return parts.stream().filter(part -> part.source().equals(source)).findFirst();
    }

    /** The last thing that changed up to a time. */
    public Optional<Event> before(double time) {
        return events.stream().filter(event -> event.at() <= time).reduce((a, b) -> b);
    }
}
