package tramontane.model;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import tramontane.physics.units.AnyQuantity;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.Units;

/**
 * Whether the parts of a design fit together: names that are unique and known, air that can reach every bay, heat
 * that goes somewhere, lists of equal length, limits that can be met.
 *
 * <p>What is not given yet is no error by itself, so that a half-finished design can be worked on. The parameters of
 * passages and the sections are checked by those who own them.
 */
public final class Consistency {

    /** Rounding allowed in a sum of shares. */
    private static final double SHARE_TOLERANCE = 1e-9;

    /** Hours in the longest year. */
    private static final double LONGEST_YEAR = 8784;

    private final Design design;
    private final List<Problem> reading;
    private final List<Problem> problems = new ArrayList<>();

    private Consistency(Design design, List<Problem> reading) {
        this.design = design;
        this.reading = reading.stream().filter(Problem::isError).toList();
    }

    /** What does not fit together in a design. */
    public static List<Problem> check(Design design) {
        return check(design, List.of());
    }

    /**
     * What does not fit together in a design that could be read in part only; what merely follows from something that
     * could not be read is left out.
     *
     * @param draft   what could be read
     * @param reading the problems found while reading
     * @return what does not fit together, without the problems found while reading
     */
    public static List<Problem> check(Design draft, List<Problem> reading) {
        Consistency consistency = new Consistency(draft, reading);
        consistency.ids();
        consistency.problems.addAll(References.check(Design.FORM, draft.tree(), draft, "",
                target -> lists(target).stream().noneMatch(consistency::unread)));
        consistency.airMovers();
        consistency.airPath();
        consistency.heatSources();
        consistency.mission();
        consistency.controlLaws();
        consistency.requirements();
        return List.copyOf(consistency.problems);
    }

    /**
     * What does not fit together in an air mover.
     *
     * @param mover the part
     * @param place where it stands; empty for the whole file
     */
    public static List<Problem> check(AirMover mover, String place) {
        Consistency consistency = new Consistency(Design.EMPTY, List.of());
        consistency.airMover(mover, place);
        return List.copyOf(consistency.problems);
    }

    private void ids() {
        unique("air mover", "airMovers", design.airMovers(), AirMover::id);
        unique("bay", "airPath.bays", design.airPath().bays(), Bay::id);
        unique("passage", "airPath.passages", design.airPath().passages(), Passage::id);
        unique("heat source", "heatSources", design.heatSources(), HeatSource::id);
        unique("condition", "conditions", design.conditions(), Condition::id);
        unique("control law", "controlLaws", design.controlLaws(), ControlLaw::id);
        Set<String> bays = new HashSet<>();
        for (int i = 0; i < design.airPath().bays().size(); i++) {
            String id = design.airPath().bays().get(i).id();
            bays.add(id);
            if (id.equals(Bay.OUTSIDE)) {
                error("airPath.bays[" + i + "]", "\"outside\" is always there and not listed; expected another name");
            }
        }
        bays.add(Bay.OUTSIDE);
        for (int i = 0; i < design.airPath().passages().size(); i++) {
            String id = design.airPath().passages().get(i).id();
            if (!id.isEmpty() && bays.contains(id)) {
                problems.add(Problem.caution("airPath.passages[" + i + "]", FormReader.quote(id)
                        + " is the name of a bay too; where only the name is given, nobody can tell which one is meant"));
            }
        }
    }

    private <T> void unique(String noun, String place, List<T> things, Function<T, String> id) {
        Map<String, Integer> first = new HashMap<>();
        for (int i = 0; i < things.size(); i++) {
            String name = id.apply(things.get(i));
            Integer earlier = name.isEmpty() ? null : first.putIfAbsent(name, i);
            if (earlier != null) {
                error(place + "[" + i + "]", FormReader.quote(name) + " is the name of " + place + "[" + earlier
                        + "] already; expected a name that no other " + noun + " has");
            }
        }
    }

    private void airMovers() {
        for (int i = 0; i < design.airMovers().size(); i++) {
            problems.addAll(check(design.airMovers().get(i), "airMovers[" + i + "]"));
        }
    }

    private void airMover(AirMover mover, String place) {
        fixedLoss(mover, Problem.place(place, "fixedLoss"));
        problems.addAll(mover.datasheet().check(place));
        for (int j = 0; j < mover.curves().size(); j++) {
            MoverCurve curve = mover.curves().get(j);
            String at = Problem.place(place, "curves[" + j + "].");
            int points = curve.flow().size();
            sameLength(at + "pressure", curve.pressure().size(), points, "flow");
            curve.power().ifPresent(power -> sameLength(at + "power", power.size(), points, "flow"));
        }
    }

    /** What is always lost cannot be more than all that is taken. */
    private void fixedLoss(AirMover mover, String place) {
        double loss = mover.fixedLoss().map(Quantity::si).orElse(0.0);
        boolean above = mover.ratedPower().filter(power -> power.si() < loss).isPresent() || mover.curves().stream()
                .flatMap(curve -> curve.power().stream()).flatMapToDouble(power -> java.util.Arrays.stream(power.toArray()))
                .anyMatch(power -> power < loss);
        if (above) {
            error(place, "is more than the whole electrical input; expected no more than the ratedPower and the lowest power of a curve");
        }
    }

    /** Two lists that belong together; one that is not given yet does not count. */
    private void sameLength(String place, int size, int expected, String each) {
        if (size != expected && size > 0 && expected > 0) {
            error(place, "has " + size + (size == 1 ? " number" : " numbers") + "; expected " + expected
                    + ", one for each " + each);
        }
    }

    private void airPath() {
        List<Passage> passages = design.airPath().passages();
        for (int i = 0; i < passages.size(); i++) {
            Passage passage = passages.get(i);
            if (passage.from().equals(passage.to()) && !passage.from().isEmpty() && !passage.from().equals(Bay.OUTSIDE)) {
                error("airPath.passages[" + i + "]", "begins and ends in " + FormReader.quote(passage.from())
                        + "; expected two different bays");
            }
        }
        if (unread("airPath.passages")) {
            return;
        }
        if (passages.isEmpty()) {
            problems.add(Problem.caution("airPath", "has no passages, so no air flows; expected at least one"));
        }
        Set<String> reached = reached();
        for (int i = 0; i < design.airPath().bays().size(); i++) {
            String id = design.airPath().bays().get(i).id();
            if (!id.isEmpty() && !reached.contains(id)) {
                error("airPath.bays[" + i + "]", "no passage joins " + FormReader.quote(id)
                        + " to outside, not even through other bays; expected a passage to outside or to a bay that has one");
            }
        }
    }

    /**
     * The bays that air can reach from outside. A passage with one end missing or unknown counts as one to outside: its own
     * mistake is reported already, and what lies behind it cannot be told yet.
     */
    private Set<String> reached() {
        Set<String> bays = References.names(design, Shape.Target.BAY);
        Map<String, List<String>> neighbours = new HashMap<>();
        for (Passage passage : design.airPath().passages()) {
            String from = bays.contains(passage.from()) ? passage.from() : Bay.OUTSIDE;
            String to = bays.contains(passage.to()) ? passage.to() : Bay.OUTSIDE;
            neighbours.computeIfAbsent(from, name -> new ArrayList<>()).add(to);
            neighbours.computeIfAbsent(to, name -> new ArrayList<>()).add(from);
        }
        Set<String> reached = new HashSet<>(Set.of(Bay.OUTSIDE));
        Deque<String> open = new ArrayDeque<>(reached);
        while (!open.isEmpty()) {
            for (String next : neighbours.getOrDefault(open.remove(), List.of())) {
                if (reached.add(next)) {
                    open.add(next);
                }
            }
        }
        return reached;
    }

    private void heatSources() {
        // a design that wants no more than a mean air rise need not say where heat goes
        boolean placed = design.heatSources().stream().anyMatch(source -> !source.into().isEmpty() || !source.chain().isEmpty()
                || source.limit().isPresent());
        for (int i = 0; i < design.heatSources().size(); i++) {
            HeatSource source = design.heatSources().get(i);
            String place = "heatSources[" + i + "]";
            if (source.into().isEmpty() && !unreadWithin(place + ".into")) {
                nowhere(source, place, placed);
            }
            if (source.wake().isPresent() && source.row().isEmpty() && !unreadWithin(place + ".row")) {
                problems.add(Problem.caution(place + ".wake", "has no effect without a row; expected the row in which the source stands"));
            }
            List<HeatSource.Share> into = source.into();
            place += ".into";
            Set<String> taken = new HashSet<>();
            for (int k = 0; k < into.size(); k++) {
                String name = into.get(k).place();
                if (name.equals(Bay.OUTSIDE)) {
                    error(place + "[" + k + "]", "\"outside\" takes up no heat here; expected a bay or passage");
                } else if (!name.isEmpty() && !taken.add(name)) {
                    error(place + "[" + k + "]", FormReader.quote(name) + " stands here twice; expected each place once, with its share");
                }
            }
            double sum = into.stream().flatMap(share -> share.share().stream()).mapToDouble(Quantity::si).sum();
            boolean allGiven = !into.isEmpty() && into.stream().allMatch(share -> share.share().isPresent());
            if (sum > 1 + SHARE_TOLERANCE) {
                error(place, "the shares add up to " + percent(sum) + "; expected 100 % at most");
            } else if (allGiven && sum < 1 - SHARE_TOLERANCE && !unreadWithin(place)) {
                error(place, "the shares add up to " + percent(sum)
                        + "; expected 100 %, or one place without a share, which takes what is left");
            }
        }
    }

    /** A source that says of no place that its air takes its heat up. */
    private void nowhere(HeatSource source, String place, boolean placed) {
        if (!source.chain().isEmpty()) {
            error(place + ".chain", "leads the heat of " + FormReader.quote(source.id()) + " to no air, as " + place
                    + ".into is missing; expected into with the bay or passage that it stands in");
        } else if (placed && source.power().si() > 0) {
            problems.add(Problem.caution(place + ".into", "is missing, so its heat goes nowhere; expected the bays or passages"
                    + " whose air takes it up"));
        }
        if (source.row().isPresent()) {
            problems.add(Problem.caution(place + ".row", "is " + source.row().get() + ", but not used, as " + place
                    + ".into is missing; expected into with the bay or passage that has the rows"));
        }
    }

    private static String percent(double part) {
        return Value.Num.of(Math.rint(part * 1e9) / 1e7).literal() + " %";
    }

    private void mission() {
        Map<String, Integer> first = new LinkedHashMap<>();
        for (int i = 0; i < design.mission().size(); i++) {
            String condition = design.mission().get(i).condition();
            Integer earlier = condition.isEmpty() ? null : first.putIfAbsent(condition, i);
            if (earlier != null) {
                problems.add(Problem.caution("mission[" + i + "]", FormReader.quote(condition) + " has a time in mission["
                        + earlier + "] already; both count"));
            }
        }
        double hours = design.mission().stream().mapToDouble(phase -> phase.timePerYear().si()).sum() / 3600;
        if (hours > LONGEST_YEAR * (1 + SHARE_TOLERANCE)) {
            problems.add(Problem.caution("mission", "the times add up to " + Math.round(hours)
                    + " h per year; expected 8784 h at most, the hours of a leap year"));
        }
    }

    private void controlLaws() {
        boolean known = lists(Shape.Target.SENSOR).stream().noneMatch(this::unread);
        for (int i = 0; i < design.controlLaws().size(); i++) {
            ControlLaw law = design.controlLaws().get(i);
            String place = "controlLaws[" + i + "].";
            sameLength(place + "speed", law.speed().size(), law.temperature().size(), "temperature");
            if (known && References.names(design, Shape.Target.PLACE).contains(law.sensor())
                    && References.names(design, Shape.Target.HEAT_SOURCE).contains(law.sensor())) {
                problems.add(Problem.caution(place + "sensor", FormReader.quote(law.sensor())
                        + " is the name of a heat source and of a bay or passage; the heat source is read"));
            }
            double[] speeds = law.speed().toArray();
            for (int k = 1; k < speeds.length; k++) {
                if (speeds[k] < speeds[k - 1]) {
                    problems.add(Problem.caution(place + "speed", "falls as the sensor gets warmer, so that less air cools what is hotter"));
                    break;
                }
            }
        }
    }

    private void requirements() {
        for (int i = 0; i < design.requirements().size(); i++) {
            Requirement requirement = design.requirements().get(i);
            String place = "requirements[" + i + "]";
            Optional<Quantity> least = requirement.atLeast();
            Optional<Quantity> most = requirement.atMost();
            if (least.isEmpty() && most.isEmpty() && !unreadWithin(place)) {
                error(place, "has no limit; expected atLeast, atMost or both");
            }
            if (least.isEmpty() || most.isEmpty()) {
                continue;
            }
            String both = "atLeast is " + FormReader.describe(least.get().written()) + " and atMost is "
                    + FormReader.describe(most.get().written());
            if (!sameKind(least.get(), most.get())) {
                error(place, both + "; expected two quantities of one kind");
            } else if (least.get().si() > most.get().si()) {
                error(place, both + "; expected atLeast to be the smaller one");
            }
        }
    }

    /** Whether two quantities may be of one kind; a number without unit may be of any. */
    private static boolean sameKind(Quantity one, Quantity other) {
        if (!(one.written() instanceof Value.Text(String first)) || !(other.written() instanceof Value.Text(String second))) {
            return true;
        }
        try {
            AnyQuantity known = Units.parseAny(first);
            List<QuantityKind> kinds = Units.parseAny(second).kinds();
            return kinds.stream().anyMatch(known::fits);
        } catch (UnitException e) {
            return true; // a unit of somebody else's, about which nothing can be said
        }
    }

    /** Where the things stand that a reference may name. */
    private static List<String> lists(Shape.Target target) {
        return switch (target) {
            case BAY -> List.of("airPath.bays");
            case PASSAGE, BANK, PLACE -> List.of("airPath.passages");
            case MOVER -> List.of("airMovers");
            case HEAT_SOURCE -> List.of("heatSources");
            case CONDITION -> List.of("conditions");
            case CONTROL_LAW -> List.of("controlLaws");
            case SENSOR -> List.of("airPath.bays", "airPath.passages", "heatSources");
            case ANYWHERE -> List.of();
        };
    }

    /** Whether what stands at a place could not be read as a whole. */
    private boolean unread(String place) {
        return reading.stream().anyMatch(problem -> problem.place().equals(place)
                || !problem.place().isEmpty() && place.startsWith(problem.place() + "."));
    }

    /** Whether something at a place or inside it could not be read. */
    private boolean unreadWithin(String place) {
        return reading.stream().anyMatch(problem -> problem.place().startsWith(place)
                && (problem.place().length() == place.length() || ".[".indexOf(problem.place().charAt(place.length())) >= 0));
    }

    private void error(String place, String message) {
        problems.add(Problem.error(place, message));
    }
}
