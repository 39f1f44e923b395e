package tramontane.selection.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import tramontane.analysis.Cancelled;
import tramontane.analysis.Cases;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Sentence;
import tramontane.model.AirMover;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.HeatSource;
import tramontane.model.MoverCurve;
import tramontane.model.Passage;
import tramontane.model.Quantities;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.model.Value;
import tramontane.selection.Arrangement;
import tramontane.selection.Need;
import tramontane.selection.Placement;

/**
 * The rest of a design as one bank sees it: for each condition what pressure it takes to pass a flow, and what flow it takes that
 * everything holds which follows from the flow alone.
 *
 * <p>It is found by running the analyses on the design with a mover in the bank that imposes a flow: one whose curve is so steep
 * that it moves the same against any pressure, and that takes no power. What a real mover does beside, its own heat, makes parts no
 * cooler; but it swells the air behind the bank, which {@link Screen} allows for. Where a mover has failed and air goes round through
 * its place, parts in the bays before and behind the bank feel that flow too: where such are judged, these cases are left to the exact
 * judgement. So are figures that are not the same with another mover at the same flow.
 */
final class Reduction {

    /** Id of the mover that imposes a flow. */
    private static final String IMPOSING = "imposed flow";
    /** Pressure at which it gives so much less than the flow it imposes, over that; more than any part gives, Pa. */
    private static final double STIFF = 1e6;
    private static final double WITHIN = 0.01;
    private static final double RATED = 100;
    /** How much weaker and faster another one is, and to what figures with both are the same. */
    private static final double OTHER = 2;
    private static final double SAME = 1e-3;
    /** One flow that is looked at over the next. */
    private static final double STEP = 1.8;
    /** So many at least, and so many at most: smaller flows are looked at until what is required fails in all cases. */
    private static final int LEAST_SAMPLES = 4;
    private static final int MOST_SAMPLES = 60;
    /** So many larger ones than any part gives, to say how much it would take. */
    private static final int MOST_BEYOND = 8;
    /** Distance of the flows between which a need is found, over the flow. */
    private static final double FOUND = 1e-3;
    private static final int MOST_STEPS = 12;
    /** So many columns are enough to tell every kind of case. */
    private static final int COLUMNS = 6;
    private static final String PREFIX = "c";

    private final Engine engine;
    private final Design design;
    private final Passage bank;
    private List<Ask> asks;
    private final Set<String> analyses;
    private final Engine.Watch watch;
    private final Set<String> wanted;
    private final String imposing;
    private int asked;
    /** The conditions without failed movers of the bank, by id of their own. */
    private final Map<String, Condition> bases = new LinkedHashMap<>();
    private final Map<String, List<BankLoad.Point>> sampled = new HashMap<>();
    private final Map<String, BankLoad> loads = new HashMap<>();
    private final List<Group> groups = new ArrayList<>();
    private final Map<Need, Ask> deciding = new IdentityHashMap<>();
    private final boolean felt;

    /**
     * Cases that are alike for a part: one condition, with so many of the bank's movers failed.
     *
     * @param declared  the condition's id
     * @param base      the id of the condition without these
     * @param condition the same as a condition, the first positions failed
     * @param failed    how many have failed
     * @param need      what it needs; empty where nothing can be said beforehand
     */
    record Group(String declared, String base, Condition condition, int failed, Optional<Need> need) {
    }

    private Reduction(Engine engine, Design design, Passage bank, List<Ask> asks, Set<String> analyses, Engine.Watch watch) {
        this.engine = engine;
        this.design = design;
        this.bank = bank;
        this.asks = asks;
        this.analyses = analyses;
        this.watch = watch;
        String id = IMPOSING;
        while (design.airMover(id).isPresent()) {
            id += "'";
        }
        this.imposing = id;
        this.wanted = asks.stream().map(ask -> ask.kind().id()).collect(Collectors.toSet());
        Set<String> beside = new HashSet<>(List.of(bank.from(), bank.to()));
        beside.remove(Bay.OUTSIDE);
        felt = design.heatSources().stream().map(HeatSource::into).flatMap(List::stream).anyMatch(share -> beside.contains(share.place()))
                || asks.stream().anyMatch(ask -> beside.contains(ask.requirement().place())
                || ask.requirement().place().equals(Requirement.WORST) && !ask.kind().id().startsWith("airflow."));
    }

    /**
     * Reduces a design.
     *
     * @param design  the design, control laws without the bank
     * @param bank    the bank
     * @param asks    the requirements on flow and temperature
     * @param most    the largest flow that is looked at, m³/s
     */
    static Reduction of(Engine engine, Design design, Passage bank, List<Ask> asks, double most, Engine.Watch watch) {
        boolean only = design.airPath().banks().size() == 1;
        List<Ask> following = asks.stream().filter(ask -> ask.followsFlow(bank, only)).toList();
        Set<String> ids = new HashSet<>(engine.givers(Set.of(OperatingPoint.class)));
        engine.analyses().stream().filter(analysis -> analysis.figures().stream().anyMatch(figure -> following.stream()
                .anyMatch(ask -> ask.kind().id().equals(figure.id())))).forEach(analysis -> ids.add(analysis.id()));
        Reduction reduction = new Reduction(engine, design, bank, following, ids, watch);
        reduction.asked = asks.size();
        reduction.run(most);
        return reduction;
    }

    /** Whether all that is required of flow and temperature follows from the flow, in all cases. */
    boolean isComplete() {
        return asks.size() == asked && groups.stream().allMatch(group -> group.need().isPresent());
    }

    /** The groups of cases. */
    List<Group> groups() {
        return groups;
    }

    /** What a bank has to work against in the cases of a group; empty where that could not be found. */
    Optional<BankLoad> load(Group group) {
        return Optional.ofNullable(loads.get(group.base()));
    }

    /** What asks for most where something is needed. */
    Optional<Ask> ask(Need need) {
        return Optional.ofNullable(deciding.get(need));
    }

    /** What each condition needs, the most of its cases. */
    List<Need> needs() {
        Map<String, Need> byCondition = new LinkedHashMap<>();
        for (Group group : groups) {
            group.need().ifPresent(need -> byCondition.merge(group.declared(), need, (a, b) -> size(a) >= size(b) ? a : b));
        }
        return List.copyOf(byCondition.values());
    }

    private static double size(Need need) {
        return need.flow().orElse(Double.POSITIVE_INFINITY);
    }

    private void run(double most) {
        List<Engine.Case> cases = Cases.of(design.withAirPath(design.airPath().withPassage(Placement.passage(bank, IMPOSING,
                new Arrangement(COLUMNS, 1, 1, false), 1))), Set.of()).list();
        Map<Condition, String> known = new LinkedHashMap<>();
        Map<List<Object>, Group> distinct = new LinkedHashMap<>();
        for (Engine.Case each : cases) {
            List<FailedMover> own = each.concrete().failed().stream().filter(this::isOwn).toList();
            List<FailedMover> others = each.concrete().failed().stream().filter(failed -> !isOwn(failed)).toList();
            Condition base = each.concrete().with("", others);
            String id = known.computeIfAbsent(base, key -> PREFIX + known.size());
            bases.putIfAbsent(id, base.with(id, others));
            List<FailedMover> first = own.stream().map(failed -> new FailedMover(Optional.of(bank.id()), failed.position(), failed.state())).toList();
            distinct.putIfAbsent(List.of(each.declared(), id, first.stream().map(FailedMover::state).toList()),
                    new Group(each.declared(), id, base.with(each.declared(), first), own.size(), Optional.empty()));
        }
        double flow = most;
        for (int i = 0; i < LEAST_SAMPLES || i < MOST_SAMPLES && distinct.values().stream().anyMatch(this::holdsAtLeast); i++) {
            sample(flow, bases.keySet());
            flow /= STEP;
        }
        probe(flow * STEP);
        flow = most * STEP;
        for (int i = 0; i < MOST_BEYOND && distinct.values().stream().anyMatch(this::failsAtMost); i++) {
            sample(flow, bases.keySet());
            flow *= STEP;
        }
        for (Group group : distinct.values()) {
            groups.add(new Group(group.declared(), group.base(), group.condition(), group.failed(),
                    group.failed() > 0 && felt ? Optional.empty() : need(group)));
        }
        sampled.forEach((id, points) -> {
            if (points.size() > 1) {
                loads.put(id, new BankLoad(points));
            }
        });
    }

    /** Leaves out what another mover at the same flow gives another value: it does not follow from the flow. */
    private void probe(double flow) {
        Evaluation other = engine.evaluate(new Engine.Request(imposing(flow, OTHER), analyses, bases.keySet(), Engine.Request.TIME_LIMIT).briefly(wanted), watch);
        if (other.cancelled()) {
            throw new Cancelled();
        }
        asks = asks.stream().filter(ask -> bases.keySet().stream().allMatch(id -> {
            List<BankLoad.Point> points = sampled.getOrDefault(id, List.of());
            Optional<Figure> there = ask.worst(other.figures().stream().filter(figure -> figure.condition().equals(id) || figure.condition().isEmpty()).toList());
            Optional<Figure> here = points.isEmpty() ? Optional.empty() : Optional.ofNullable(points.getLast().figures().get(ask));
            return there.isPresent() == here.isPresent() && (here.isEmpty() || Math.abs(here.get().value() - there.get().value())
                    <= SAME * Math.max(Math.abs(here.get().value()), Math.abs(ask.margin(here.get().value()))));
        })).toList();
    }

    /** Whether all that more flow helps still holds at the smallest flow looked at. */
    private boolean holdsAtLeast(Group group) {
        List<BankLoad.Point> points = sampled.getOrDefault(group.base(), List.of());
        if (points.size() < 2) {
            return true;
        }
        BankLoad load = new BankLoad(points);
        List<Ask> helped = helped(group, load);
        return !helped.isEmpty() && holds(helped, load.points().getFirst());
    }

    /** Whether something that more flow helps fails at the largest flow looked at. */
    private boolean failsAtMost(Group group) {
        List<BankLoad.Point> points = sampled.getOrDefault(group.base(), List.of());
        if (points.size() < 2) {
            return false;
        }
        BankLoad load = new BankLoad(points);
        return !holds(helped(group, load), load.points().getLast());
    }

    private List<Ask> helped(Group group, BankLoad load) {
        return asks.stream().filter(ask -> ask.requirement().appliesIn(group.declared()) && load.knows(ask)
                && margin(ask, load.points().getLast()) >= margin(ask, load.points().getFirst())).toList();
    }

    private boolean isOwn(FailedMover failed) {
        return failed.bank().orElse(bank.id()).equals(bank.id());
    }

    /** Solves the design with a flow imposed, in some conditions. */
    private void sample(double flow, Set<String> conditions) {
        Engine.Request request = new Engine.Request(imposing(flow, 1), analyses, conditions, Engine.Request.TIME_LIMIT).briefly(wanted);
        Evaluation evaluation = engine.evaluate(request, watch);
        if (evaluation.cancelled()) {
            throw new Cancelled();
        }
        for (String id : conditions) {
            evaluation.data(OperatingPoint.class, id).flatMap(point -> point.bank(bank.id())).filter(point -> point.flow() > 0)
                    .ifPresent(point -> {
                        List<Figure> there = evaluation.figures().stream().filter(figure -> figure.condition().equals(id)
                                || figure.condition().isEmpty()).toList();
                        Map<Ask, Figure> figures = new HashMap<>();
                        asks.forEach(ask -> ask.worst(there).ifPresent(figure -> figures.put(ask, figure)));
                        sampled.computeIfAbsent(id, key -> new ArrayList<>()).add(BankLoad.Point.of(point, figures));
                    });
        }
    }

    /** The design with a mover that imposes a flow; by a factor weaker and faster for who wants another. */
    private Design imposing(double flow, double other) {
        int columns = Math.max(1, Cases.positions(bank)); // as many positions as now, which timelines may speak of
        double each = flow / columns;
        MoverCurve curve = new MoverCurve(Optional.of(Quantity.of(RATED * other)), Optional.empty(), Optional.empty(), Optional.empty(),
                Quantities.of(each * (1 - WITHIN), each), Quantities.of(STIFF / other, 0), Optional.empty(), Optional.empty(),
                Value.Tree.EMPTY);
        AirMover mover = new AirMover(imposing, "", Optional.empty(), Optional.of(Quantity.of(1)), Optional.of(Quantity.of(1)),
                Optional.empty(), Optional.empty(), Optional.of(Quantity.of(RATED * other)), Optional.empty(), List.of(curve), Value.Tree.EMPTY);
        Value.Tree plain = Value.Tree.EMPTY.with("mover", new Value.Text(imposing)).with("across", Value.Num.of(columns));
        List<Condition> conditions = bases.values().stream().map(base -> base.speed().isEmpty() ? base : base.withSpeed(Quantity.of(1))).toList();
        return Placement.of(design, bank.id(), mover, Arrangement.SINGLE, 1).withAirPath(design.airPath().withPassage(bank.withParameters(plain)))
                .withConditions(conditions).withMission(List.of()).withRequirements(asks.stream()
                        .map(ask -> ask.requirement().everywhere()).distinct().toList());
    }

    private Optional<Need> need(Group group) {
        for (int i = 0;; i++) {
            if (sampled.getOrDefault(group.base(), List.of()).size() < 2) {
                return Optional.empty();
            }
            BankLoad load = new BankLoad(sampled.get(group.base()));
            List<BankLoad.Point> points = load.points();
            List<Ask> helped = helped(group, load);
            if (helped.isEmpty()) {
                return Optional.empty();
            }
            int below = points.size() - 1;
            while (below >= 0 && holds(helped, points.get(below))) {
                below--;
            }
            if (below < 0) {
                return Optional.of(new Need(group.declared(), Sentence.EMPTY, OptionalDouble.of(0), OptionalDouble.of(0), Optional.empty()));
            }
            BankLoad.Point low = points.get(below);
            Ask decides = helped.stream().min(Comparator.comparingDouble(ask -> ask.share(margin(ask, low)))).orElseThrow();
            Optional<Figure> figure = Optional.of(low.figures().get(decides));
            if (below == points.size() - 1) {
                return decided(decides, new Need(group.declared(), decides.words(), OptionalDouble.empty(), OptionalDouble.empty(), figure));
            }
            BankLoad.Point high = points.get(below + 1);
            if (high.flow() - low.flow() <= FOUND * high.flow() || i == MOST_STEPS) {
                return decided(decides, new Need(group.declared(), decides.words(), OptionalDouble.of(low.flow()),
                        OptionalDouble.of(low.pressure()), figure));
            }
            sample(between(margin(decides, low), margin(decides, high), low.flow(), high.flow(), i), Set.of(group.base()));
        }
    }

    private Optional<Need> decided(Ask ask, Need need) {
        deciding.put(need, ask);
        return Optional.of(need);
    }

    /** Where a margin that is straight over 1/flow passes zero, and a little further, so that the two ends close in on it. */
    private static double between(double atLow, double atHigh, double low, double high, int step) {
        double inverse = 1 / low + (1 / high - 1 / low) * atLow / (atLow - atHigh);
        double guess = step % 3 == 2 ? Math.sqrt(low * high) : 1 / inverse * (1 + (step % 2 == 0 ? 0.4 : -0.4) * FOUND);
        return atLow < 0 && atHigh >= 0 && guess > low * (1 + FOUND / 10) && guess < high * (1 - FOUND / 10) ? guess : Math.sqrt(low * high);
    }

    private static boolean holds(List<Ask> asks, BankLoad.Point point) {
        return asks.stream().allMatch(ask -> margin(ask, point) >= 0);
    }

    private static double margin(Ask ask, BankLoad.Point point) {
        return ask.margin(point.figures().get(ask).value());
    }
}
