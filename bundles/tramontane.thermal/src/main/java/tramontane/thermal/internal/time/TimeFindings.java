package tramontane.thermal.internal.time;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.physics.units.QuantityKind;
import tramontane.thermal.History;
import tramontane.thermal.Transient;
import tramontane.thermal.internal.ThermalFindings;

/** What an engineer should know about temperatures in time beyond their figures. */
final class TimeFindings {

    /** Distance from the steady state from which it is worth a word, K. */
    private static final double FAR = 1;
    /** Rise over the duration from which a part counts as still rising, K. */
    private static final double RISES = 1;
    /** Rate over the distance from where a part would rest, 1/s, below which it rests: nothing takes weeks to warm up. */
    private static final double RESTS = 1e-6;
    /** Distance that counts at most for that, K: far from a rest that is not real even a quick rise is slow beside the distance. */
    private static final double REACH = 10;
    private static final int MOST_NAMES = 6;

    private final History history;
    private final List<Finding> findings = new ArrayList<>();

    private TimeFindings(History history) {
        this.history = history;
    }

    static List<Finding> of(History history) {
        TimeFindings all = new TimeFindings(history);
        all.limits();
        all.end();
        all.cycles();
        all.wet();
        all.settled();
        all.remarks();
        return List.copyOf(all.findings);
    }

    private static Amount time(double seconds) {
        return new Amount(seconds, QuantityKind.TIME);
    }

    private static Amount celsius(double kelvin) {
        return new Amount(kelvin, QuantityKind.TEMPERATURE);
    }

    private static Amount kelvin(double difference) {
        return new Amount(difference, QuantityKind.TEMPERATURE_DIFFERENCE);
    }

    private static String names(List<String> ids) {
        return ids.size() == 1 ? ids.getFirst() : ids.size() > MOST_NAMES
                ? String.join(", ", ids.subList(0, MOST_NAMES)) + " and " + (ids.size() - MOST_NAMES) + " more"
                : String.join(", ", ids.subList(0, ids.size() - 1)) + " and " + ids.getLast();
    }

    private void limits() {
        List<History.Course> limited = history.parts().stream().filter(part -> part.limit().isPresent()).toList();
        if (limited.isEmpty()) {
            return;
        }
        Optional<History.Course> first = history.first();
        if (first.isEmpty()) {
            History.Course nearest = limited.stream().min(Comparator.comparingDouble(part -> part.limit().get() - part.peak())).orElseThrow();
            findings.add(Finding.note(nearest.source(), "no part comes above its limit within ", time(history.duration()),
                    "; nearest to it comes " + nearest.source() + ", ", kelvin(nearest.limit().get() - nearest.peak()), " below it after ",
                    time(nearest.peakTime()), "; the time to the first limit stands at the whole duration"));
            return;
        }
        History.Course part = first.get();
        double reached = part.reached().get();
        List<Object> words = new ArrayList<>(List.of(part.source() + " is the first above its limit of ", celsius(part.limit().get()), ": "));
        words.addAll(when(reached));
        List<String> others = limited.stream().filter(other -> other.reached().isPresent() && other != part).map(History.Course::source).toList();
        if (!others.isEmpty()) {
            words.add("; later also " + names(others));
        }
        if (part.end() <= part.limit().get()) {
            words.addAll(List.of("; at the end it is below it again, at ", celsius(part.end())));
        }
        findings.add(Finding.caution(part.source(), words.toArray()));
    }

    /** A time told from the last thing that changed. */
    private List<Object> when(double at) {
        Optional<History.Event> event = history.before(at);
        List<Object> words = new ArrayList<>();
        if (event.isEmpty() || event.get().at() == 0) {
            words.addAll(at == 0 ? List.of("from the beginning") : List.of(time(at), " after the beginning"));
            return words;
        }
        words.addAll(at == event.get().at() ? List.of("at once when ") : List.of(time(at - event.get().at()), " after "));
        words.addAll(event.get().what().parts());
        words.addAll(List.of(" at ", time(event.get().at())));
        return words;
    }

    /** Parts that rise without end, or to where none is whole any more. */
    private Stream<History.Course> rises() {
        return history.parts().stream().filter(part -> part.steady().filter(TimeFindings::real).isEmpty() && part.rate() * history.duration() > RISES);
    }

    private static boolean real(double steady) {
        return steady <= ThermalFindings.ABSURD;
    }

    private void end() {
        Optional<History.Course> far = history.parts().stream().filter(part -> part.steady().filter(TimeFindings::real).isPresent())
                .max(Comparator.comparingDouble(part -> Math.abs(part.end() - part.steady().get())));
        boolean cycles = !history.cycles().isEmpty();
        far.filter(part -> !cycles && Math.abs(part.end() - part.steady().get()) > FAR).ifPresent(part -> {
            double left = part.steady().get() - part.end();
            if (Math.abs(part.rate()) < RESTS * Math.min(REACH, Math.abs(left))) {
                if (rises().findAny().isPresent()) {
                    return; // what rises without end keeps its heat from the air, which is why the others are colder
                }
                findings.add(Finding.note(part.source(), "at the end all is at rest, but " + part.source() + " is ", kelvin(Math.abs(left)),
                        left > 0 ? " below" : " above", " where it comes to rest when warming up from cold: the hysteresis of a control law,"
                        + " or another duty point, keeps it there"));
                return;
            }
            Optional<History.Course> over = history.parts().stream().filter(each -> each.reached().isEmpty() && each.limit().isPresent()
                    && each.steady().isPresent() && each.steady().get() > each.limit().get()).findFirst();
            List<Object> words = new ArrayList<>(List.of("at the end " + part.source() + (left > 0 ? " still rises by " : " still falls by "),
                    kelvin(Math.abs(part.rate()) * 60), " per minute and is ", kelvin(Math.abs(left)), left > 0 ? " below" : " above",
                    " where it would come to rest"));
            over.ifPresent(each -> words.addAll(List.of("; going on so, " + each.source() + " would come above its limit")));
            Finding finding = over.isPresent() ? Finding.caution(over.get().source(), words.toArray()) : Finding.note(part.source(), words.toArray());
            findings.add(finding.remedy("let the timeline go on longer to see the rest"));
        });
        boolean rests = !history.remarks().contains(History.Remark.NO_REST);
        rises().filter(part -> rests)
                .max(Comparator.comparingDouble(History.Course::rate)).ifPresent(part -> findings.add(Finding.caution(part.source(),
                        "at the end neither air nor walls carry off the heat of " + part.source() + ": it rises by ",
                        kelvin(part.rate() * 60), " per minute and comes to no rest", part.steady().isPresent() ? " below " : "",
                        part.steady().isPresent() ? celsius(ThermalFindings.ABSURD) : "")
                        .remedy("give its air a way out by which it rises, and the source a link that knows still air, or its bay walls")));
        if (!rests) {
            Optional<History.Course> rising = history.parts().stream().max(Comparator.comparingDouble(History.Course::rate));
            rising.filter(part -> part.rate() * history.duration() > RISES).ifPresent(part -> findings.add(Finding.caution(part.source(),
                    "what the last condition leads to never comes to rest; at the end " + part.source() + " rises by ",
                    kelvin(part.rate() * 60), " per minute")));
        }
    }

    private void cycles() {
        for (History.Cycle cycle : history.cycles()) {
            List<Object> words = new ArrayList<>(List.of("control law " + cycle.law() + " hunts from ", time(cycle.from()),
                    " on: every ", time(cycle.period()), " it goes from ", new Amount(cycle.low(), QuantityKind.FRACTION), " to ",
                    new Amount(cycle.high(), QuantityKind.FRACTION), " speed and back"));
            if (cycle.period() < 10 * history.duration() / Transient.QUICK) {
                words.add(", as fast as it is followed: what its sensor reads follows the air at once");
            }
            findings.add(Finding.caution("", words.toArray())
                    .remedy("draw the rise of the law over more kelvin, limit how fast it falls, or take a hysteresis wider than what a"
                            + " switch changes at the sensor"));
        }
    }

    private void wet() {
        history.wet().stream().max(Comparator.comparingDouble(wet -> wet.dewPoint() - wet.coldest())).ifPresent(worst -> {
            List<String> others = history.wet().stream().filter(wet -> wet != worst).map(History.Wet::what).toList();
            List<Object> words = new ArrayList<>(List.of(worst.what() + ", at its coldest ", celsius(worst.coldest()),
                    ", is no warmer than the dew point of the air, ", celsius(worst.dewPoint()), ", "));
            words.addAll(worst.until() > worst.from() ? List.of("from ", time(worst.from()), " to ", time(worst.until()))
                    : List.of("at ", time(worst.from())));
            words.add(": water settles on it");
            if (!others.isEmpty()) {
                words.add("; on " + names(others) + " too");
            }
            findings.add(Finding.caution(worst.place(), words.toArray())
                    .remedy("let it warm up before moist air reaches it, or dry the air"));
        });
    }

    private void settled() {
        if (!history.settled().isEmpty()) {
            findings.add(Finding.note("", names(history.settled()) + (history.settled().size() == 1 ? " follows its" : " follow their"),
                    " surroundings within ", time(history.duration() / Transient.QUICK), " and ", history.settled().size() == 1 ? "is" : "are",
                    " taken to follow at once; what is held there counts with what it follows")
                    .source("R. J. Guyan, AIAA J. 3 (1965) 380"));
        }
    }

    private void remarks() {
        if (history.remarks().contains(History.Remark.SKIPPED)) {
            findings.add(Finding.note("", "of what goes to and fro not every turn is followed: where turns are alike, many are taken together"));
        }
        if (history.remarks().contains(History.Remark.RESTLESS)) {
            findings.add(Finding.caution("", "at some times flow, temperature and speed did not agree; the temperatures then are not sure")
                    .remedy("draw the rise of control laws over more kelvin"));
        }
    }
}
