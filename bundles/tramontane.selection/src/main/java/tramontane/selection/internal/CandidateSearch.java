package tramontane.selection.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import tramontane.analysis.Amount;
import tramontane.analysis.Cancelled;
import tramontane.analysis.Engine;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Judgement;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Sentence;
import tramontane.analysis.SpeedLaw;
import tramontane.model.AirMover;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.physics.units.QuantityKind;
import tramontane.selection.Arrangement;
import tramontane.selection.Candidate;
import tramontane.selection.FigureBound;
import tramontane.selection.Need;
import tramontane.selection.Passed;
import tramontane.selection.Placement;
import tramontane.selection.Rejected;
import tramontane.selection.Selection;
import tramontane.selection.Task;
import tramontane.selection.Watch;

/**
 * One choice: reduces the design, turns down what cannot do, judges the rest exactly, best prospects first, until nothing that is
 * left can come before those found.
 */
final class CandidateSearch {

    /** How many are judged side by side; the same everywhere, so that as many are judged everywhere. */
    private static final int WINDOW = 8;
    /** Parts that are looked at before the first of them are judged. */
    private static final int FIRST = 500;
    private static final int CHUNK = 2000;
    /** Share of the pressure of an air path that an engineer may hope to save. */
    private static final double MOST_LESS = 0.5;

    private final Engine engine;
    private final List<SpeedLaw> laws;
    private final Map<String, FigureBound> bounds;
    private final Task task;
    private final Watch watch;
    private final Map<Prospect, Judging.Judged> judged = new LinkedHashMap<>();
    private final List<Rejected> rejected = new ArrayList<>();
    private final Map<Integer, AirMover> parts = new HashMap<>();
    private List<Candidate> meeting;
    /** Those that all analyses have judged. */
    private final Set<Prospect> confirmed = new LinkedHashSet<>();
    /** What is said beforehand of figures that are criteria, by id. */
    private final Map<String, FigureBound.Bound> prepared = new HashMap<>();
    private Scoring scoring;
    private Screen screen;
    private Judging judging;
    private Reduction reduction;
    private boolean asksNothing;
    private double shown;
    private int may;

    /** A part in an arrangement that may do. */
    private static final class Prospect {
        final int index;
        final AirMover part;
        final Arrangement arrangement;
        final Screen.Found found;
        final Map<String, Double> best;
        final double steps;
        final int unknown;

        Prospect(int index, AirMover part, Arrangement arrangement, Screen.Found found, Map<String, Double> best, Scoring scoring) {
            this.index = index;
            this.part = part;
            this.arrangement = arrangement;
            this.found = found;
            this.best = best;
            this.steps = scoring.steps(best);
            this.unknown = scoring.unknown(best);
        }
    }

    /** What was found of one part. */
    private record Looked(List<Prospect> prospects, List<Rejected> rejected, int arranged) {
    }

    private static final Comparator<Prospect> BEST_FIRST = Comparator.<Prospect>comparingInt(prospect -> prospect.unknown)
            .thenComparingDouble(prospect -> prospect.steps).thenComparingInt(prospect -> prospect.index)
            .thenComparingInt(prospect -> prospect.arrangement.movers()).thenComparingInt(prospect -> prospect.arrangement.series());

    CandidateSearch(Engine engine, List<SpeedLaw> laws, Map<String, FigureBound> bounds, Task task, Watch watch) {
        this.engine = engine;
        this.laws = laws;
        this.bounds = bounds;
        this.task = task;
        this.watch = watch;
    }

    Selection run() {
        Passage bank;
        try {
            bank = Placement.passage(passage(), "", Arrangement.SINGLE, 1);
        } catch (IllegalArgumentException e) {
            return nothing(Finding.error("", e.getMessage()).remedy("name one of its banks"));
        }
        PassageKind kind = engine.passageKinds().get(Passage.BANK);
        if (kind == null) {
            return nothing(Finding.error("", "nothing loaded knows banks of air movers").remedy("load the airflow bundle"));
        }
        if (task.parts().isEmpty()) {
            return nothing(Finding.error("", "there are no parts to choose from").remedy("widen the filter, or name another catalogue"));
        }
        try {
            return run(kind);
        } catch (Cancelled e) {
            return cancelled();
        }
    }

    private Passage passage() {
        return task.design().airPath().passage(task.bank()).filter(Passage::isBank).orElseThrow(() -> new IllegalArgumentException(
                "the design has no bank " + task.bank()));
    }

    private Selection run(PassageKind kind) {
        progress(0, "reading parts");
        Design design = Placement.roomy(task.design(), task.bank(), task.parts().getFirst());
        List<Problem> errors = engine.check(design).stream().filter(Problem::isError)
                .filter(problem -> !Placement.isOfPart(problem, design, task.bank())).toList(); // another part may be better
        if (!errors.isEmpty()) {
            return nothing(errors.stream().map(problem -> Finding.error("", problem.sentence()).remedy("correct the design")).toArray(Finding[]::new));
        }
        Map<String, Integer> currencies = new TreeMap<>();
        double[] most = {0};
        List<AirMover> made = made();
        for (int i = 0; i < made.size(); i++) {
            AirMover part = made.get(i);
            parts.put(i, part);
            part.datasheet().price().flatMap(price -> part.datasheet().currency()).ifPresent(currency -> currencies.merge(currency, 1, Integer::sum));
            List<Arrangement> arrangements = task.space().arrangements(part);
            most[0] = Math.max(most[0], arrangements.stream().mapToInt(Arrangement::columns).max().orElse(0) * largest(part));
            if (watch.cancelled()) {
                return cancelled();
            }
        }
        if (!(most[0] > 0)) {
            for (int i = 0; i < task.parts().size(); i++) {
                rejected.addAll(new Looked(List.of(), List.of(new Rejected(parts.get(i).id(), Optional.empty(), tooLarge(parts.get(i)),
                        OptionalDouble.empty(), true, Sentence.EMPTY)), 0).rejected());
            }
            return new Selection(List.of(), List.of(), List.of(), List.of(), List.of(), rejected, List.of(), new Selection.Counts(task.parts().size(), 0, 0, 0, 0, 0, 0),
                    List.of(), List.of(Finding.caution(task.bank(), "none of the parts fits into the room").remedy("give it more room, or widen the filter")), false);
        }
        scoring = Scoring.of(engine, task.bank(), task.weights(), Scoring.currency(currencies));
        if (!scoring.findings().isEmpty()) {
            return nothing(scoring.findings().toArray(Finding[]::new));
        }
        Design free = task.design().withControlLaws(Placement.of(task.design(), task.bank(), task.parts().getFirst(), Arrangement.SINGLE, 1).controlLaws());
        List<FigureKind> known = engine.analyses().stream().flatMap(analysis -> analysis.figures().stream()).toList();
        List<Ask> asks = Judgement.requirements(free, known).stream().flatMap(requirement -> known.stream()
                .filter(figure -> figure.id().equals(requirement.figure()) && Ask.isFlowOrThermal(figure.id())).limit(1)
                .flatMap(figure -> Ask.sides(requirement, figure).stream())).toList();
        ExecutorService workers = Executors.newFixedThreadPool(Math.min(WINDOW, 2 * Runtime.getRuntime().availableProcessors()), work -> {
            Thread thread = new Thread(work, "tramontane choice");
            thread.setDaemon(true);
            return thread;
        });
        try {
            progress(0.01, "reducing the design");
            asksNothing = asks.isEmpty();
            reduction = Reduction.of(engine, free, passage(), asks, most[0], new Silent(watch));
            screen = new Screen(free, passage(), kind, laws, reduction, task.lowest());
            prepareBounds(free);
            Set<String> analyses = new LinkedHashSet<>();
            engine.analyses().stream().filter(analysis -> analysis.figures().stream().anyMatch(figure -> asks.stream()
                    .anyMatch(ask -> ask.kind().id().equals(figure.id())))).forEach(analysis -> analyses.add(analysis.id()));
            Set<String> wanted = new HashSet<>(scoring.figures());
            Judgement.requirements(free, known).forEach(requirement -> wanted.add(requirement.figure()));
            judging = new Judging(engine, task.design(), task.bank(), asks, analyses, task.design().workingConditions().stream().map(Condition::id).toList(),
                    scoring, wanted, task.lowest(), task.certain(), watch);
            return choose(workers);
        } finally {
            workers.shutdownNow();
        }
    }

    /** The parts, made side by side, as a list that makes them when asked is slow at. */
    private List<AirMover> made() {
        AirMover[] made = new AirMover[task.parts().size()];
        IntStream.range(0, made.length).parallel().forEach(i -> made[i] = watch.cancelled() ? null : task.parts().get(i));
        if (watch.cancelled()) {
            throw new Cancelled();
        }
        return Arrays.asList(made);
    }

    /** Free delivery at twice the rated speed: more than it can give. */
    private static double largest(AirMover part) {
        return part.curves().stream().mapToDouble(curve -> {
            double ratio = curve.speed().isPresent() && part.ratedSpeedSi().isPresent() ? part.ratedSpeedSi().get() / curve.speed().get().si() : 1;
            return curve.flow().size() == 0 ? 0 : 2 * ratio * curve.flow().si().get(curve.flow().size() - 1);
        }).max().orElse(0);
    }

    private Selection choose(ExecutorService workers) {
        List<Prospect> prospects = new ArrayList<>();
        int arranged = 0;
        int fitting = 0;
        int done = 0;
        boolean probed = false;
        while (done < task.parts().size()) {
            int end = Math.min(task.parts().size(), done == 0 ? FIRST : done + CHUNK);
            Looked[] looked = new Looked[end - done];
            int from = done;
            all(workers, IntStream.range(0, WINDOW).<Callable<Void>>mapToObj(lane -> () -> {
                for (int i = lane; i < looked.length && !watch.cancelled(); i += WINDOW) {
                    looked[i] = look(from + i);
                }
                return null;
            }).toList());
            if (watch.cancelled()) {
                throw new Cancelled();
            }
            for (Looked each : looked) {
                prospects.addAll(each.prospects());
                rejected.addAll(each.rejected());
                arranged += each.arranged();
                fitting += each.arranged() > 0 ? 1 : 0;
            }
            may = prospects.size();
            if (!probed) {
                Optional<Prospect> first = prospects.stream().filter(each -> screen.isAdjustable(each.part, each.arrangement)).min(BEST_FIRST);
                first.ifPresent(each -> judging.probe(each.part, each.arrangement));
                probed = first.isPresent();
            }
            if (done == 0) {
                judge(workers, prospects.stream().sorted(BEST_FIRST).limit(WINDOW).toList());
            }
            done = end;
            progress(0.05 + 0.35 * done / task.parts().size(), "looking at parts");
        }
        prospects.sort(BEST_FIRST);
        List<Candidate> ranked = rank(workers, prospects);
        List<Candidate> front = front(workers, prospects);
        Set<Object> onFront = new LinkedHashSet<>(front.stream().map(CandidateSearch::name).toList());
        List<Candidate> listed = ranked.stream().map(candidate -> candidate.withFront(onFront.contains(name(candidate)))).toList();
        List<Passed> passed = prospects.stream().filter(prospect -> !judged.containsKey(prospect))
                .map(prospect -> new Passed(prospect.part.id(), prospect.arrangement, prospect.found.setting())).toList();
        progress(0.95, "looking at what fails");
        List<Rejected> nearest = nearest(workers, prospects);
        judged.values().forEach(each -> each.rejected().ifPresent(rejected::add));
        Selection.Counts counts = new Selection.Counts(task.parts().size(), fitting, arranged, prospects.size(), judged.size(), allMeeting().size(),
                unjudged(allMeeting()));
        List<Sentence> why = Explaining.of(screen, task.bank(), listed, allMeeting());
        progress(1, "");
        return new Selection(reduction.needs(), scoring.criteria(), listed, front, passed, rejected, nearest, counts, why, notes(listed), false);
    }

    private static int unjudged(List<Candidate> candidates) {
        return (int) candidates.stream().filter(candidate -> candidate.unjudged() > 0).count();
    }

    /** How far it has come; what is turned down late does not count back. */
    private void progress(double fraction, String message) {
        shown = Math.max(shown, fraction);
        watch.progress(shown, message);
    }

    private static List<Object> name(Candidate candidate) {
        return List.of(candidate.part().id(), candidate.arrangement());
    }

    /** All that meet everything, best first. */
    private List<Candidate> allMeeting() {
        if (meeting == null) {
            meeting = judged.values().stream().flatMap(each -> each.candidate().stream()).sorted(Candidate.BEST_FIRST).toList();
        }
        return meeting;
    }

    private void keep(Prospect prospect, Judging.Judged answer) {
        judged.put(prospect, answer);
        meeting = null;
    }

    private Looked look(int index) {
        AirMover part = parts.get(index);
        List<Arrangement> arrangements = task.space().arrangements(part);
        if (arrangements.isEmpty()) {
            return new Looked(List.of(), List.of(new Rejected(part.id(), Optional.empty(), tooLarge(part), OptionalDouble.empty(), true, Sentence.EMPTY)), 0);
        }
        List<Prospect> prospects = new ArrayList<>();
        List<Rejected> turnedDown = new ArrayList<>();
        for (Arrangement arrangement : arrangements) {
            Screen.Found found = screen.look(part, arrangement);
            if (found.passes() || task.exactly() && found.fault().isEmpty()) {
                Supplier<List<FigureBound.Duty>> duties = once(() -> screen.duties(part, arrangement, found));
                Map<String, Double> best = scoring.best(scoring.ofPart(part, arrangement), found.power(),
                        id -> bound(id, part, arrangement, duties));
                prospects.add(new Prospect(index, part, arrangement, found, best, scoring));
            } else {
                turnedDown.add(new Rejected(part.id(), Optional.of(arrangement), reason(part, arrangement, found),
                        found.fault().isPresent() || Double.isInfinite(found.setting()) ? OptionalDouble.empty() : OptionalDouble.of(found.setting()),
                        false, Sentence.EMPTY));
            }
        }
        return new Looked(prospects, turnedDown, arrangements.size());
    }

    private static <T> Supplier<T> once(Supplier<T> made) {
        List<T> kept = new ArrayList<>(1);
        return () -> {
            if (kept.isEmpty()) {
                kept.add(made.get());
            }
            return kept.getFirst();
        };
    }

    /** Has those that say beforehand how good criteria may come out look at the design; one that fails says nothing. */
    private void prepareBounds(Design free) {
        for (String figure : scoring.figures()) {
            Optional.ofNullable(bounds.get(figure)).ifPresent(bound -> {
                try {
                    prepared.put(figure, bound.of(free, task.bank()));
                } catch (RuntimeException | LinkageError e) { // its candidates are judged exactly, as if there were none
                    prepared.remove(figure);
                }
            });
        }
    }

    /** The best that a figure may come to; one whose bound fails is judged exactly like one that has none. */
    private FigureBound.Best bound(String figure, AirMover part, Arrangement arrangement, Supplier<List<FigureBound.Duty>> duties) {
        FigureBound.Bound bound = prepared.get(figure);
        if (bound == null) {
            return FigureBound.Best.OPEN;
        }
        try {
            return bound.best(part, arrangement, duties.get());
        } catch (RuntimeException | LinkageError e) {
            return FigureBound.Best.OPEN;
        }
    }

    private Sentence tooLarge(AirMover part) {
        if (part.width().isEmpty() || part.height().isEmpty() || part.depth().isEmpty() && task.space().depth().isPresent()) {
            return Sentence.of("it does not state the size of its frame, so that nothing tells whether it fits");
        }
        List<Object> words = new ArrayList<>(List.of("a frame of ", length(part.width()), " × ", length(part.height())));
        part.depth().ifPresent(depth -> words.addAll(List.of(" × ", length(part.depth()))));
        words.add(" does not fit into the room of ");
        words.add(task.space().width().<Object>map(si -> new Amount(si, QuantityKind.LENGTH)).orElse("any width"));
        words.add(" × ");
        words.add(task.space().height().<Object>map(si -> new Amount(si, QuantityKind.LENGTH)).orElse("any height"));
        task.space().depth().ifPresent(si -> words.addAll(List.of(" × ", new Amount(si, QuantityKind.LENGTH))));
        return Sentence.of(words.toArray());
    }

    private static Amount length(Optional<Quantity> length) {
        return new Amount(length.orElseThrow().si(), QuantityKind.LENGTH);
    }

    /** Why the reduced design turns it down. */
    private Sentence reason(AirMover part, Arrangement arrangement, Screen.Found found) {
        if (found.fault().isPresent()) {
            return Sentence.of(part.id() + " " + found.fault().get());
        }
        Reduction.Group group = screen.groups().get(found.group());
        Need need = group.need().orElseThrow();
        BankLoad load = screen.load(found.group());
        String where = group.declared();
        if (need.flow().isEmpty()) {
            Figure last = need.nearest().orElseThrow();
            return Sentence.of("no flow is enough in " + where + ": " + last.kind().label() + at(last) + " is ", amount(last), " at ",
                    new Amount(load.points().getLast().flow(), QuantityKind.FLOW), " where", limit(need), " is required",
                    reduction.ask(need).map(ask -> Off.where(last.value(), ask)).orElse(Sentence.EMPTY));
        }
        if (group.failed() >= arrangement.movers()) {
            return Sentence.of("in " + where + " none of its movers is left, and ", new Amount(need.flow().getAsDouble(), QuantityKind.FLOW), " are needed");
        }
        if (found.free()) {
            return Sentence.of("in " + where + " it moves no more than ", new Amount(found.reached(), QuantityKind.FLOW),
                    " even against no pressure, where ", new Amount(need.flow().getAsDouble(), QuantityKind.FLOW), " are needed",
                    Off.where(found.reached(), need.flow().getAsDouble(), QuantityKind.FLOW));
        }
        boolean isFlow = reduction.ask(need).map(Ask::isFlowOfBank).orElse(true);
        Optional<Figure> there = found.reached() > 0 && !isFlow ? need.nearest().flatMap(figure -> reduction.ask(need).flatMap(ask -> load.figure(ask, found.reached())))
                : Optional.empty();
        List<Object> words = new ArrayList<>(List.of("in " + where + " it gives ", new Amount(found.reached(), QuantityKind.FLOW), " at full speed where ",
                new Amount(need.flow().getAsDouble(), QuantityKind.FLOW), " are needed", Off.where(found.reached(), need.flow().getAsDouble(), QuantityKind.FLOW)));
        there.ifPresent(figure -> words.addAll(List.of(": " + figure.kind().label() + at(figure) + " would be ", amount(figure), " where")));
        there.ifPresent(figure -> words.add(limit(need)));
        there.ifPresent(figure -> words.add(" is required"));
        reduction.ask(need).ifPresent(ask -> there.ifPresent(figure -> words.add(Off.where(figure.value(), ask))));
        return Sentence.of(words.toArray());
    }

    private static String at(Figure figure) {
        return figure.place().isEmpty() ? "" : " at " + figure.place();
    }

    private static Amount amount(Figure figure) {
        return new Amount(figure.value(), figure.kind().quantity());
    }

    private Sentence limit(Need need) {
        return reduction.ask(need).map(Ask::limit).orElse(Sentence.EMPTY);
    }

    /** Judges prospects exactly, side by side. */
    private void judge(ExecutorService workers, List<Prospect> some) {
        List<Prospect> open = some.stream().filter(prospect -> !judged.containsKey(prospect)).toList();
        List<Judging.Judged> answers = all(workers, open.stream().<Callable<Judging.Judged>>map(prospect -> () -> judge(prospect)).toList());
        for (int i = 0; i < open.size(); i++) {
            keep(open.get(i), answers.get(i));
            answers.get(i).candidate().ifPresent(watch::found);
        }
        if (!open.isEmpty()) {
            watch.judged(judged.size(), may);
        }
    }

    private Judging.Judged judge(Prospect prospect) {
        try {
            return judging.judge(prospect.part, prospect.arrangement, Math.min(1, prospect.found.likely()), order(prospect.found),
                    screen.isAdjustable(prospect.part, prospect.arrangement));
        } catch (Cancelled e) {
            throw e;
        } catch (RuntimeException | LinkageError e) { // one part must not end the choice among the others
            return new Judging.Judged(Optional.empty(), Optional.of(new Rejected(prospect.part.id(), Optional.of(prospect.arrangement),
                    Sentence.of("it could not be judged" + (e.getMessage() == null ? "" : ": " + e.getMessage())), OptionalDouble.empty(), true, Sentence.EMPTY)),
                    Double.MAX_VALUE, false);
        }
    }

    private List<String> order(Screen.Found found) {
        return found.group() < 0 ? List.of() : List.of(screen.groups().get(found.group()).declared());
    }

    private List<Candidate> rank(ExecutorService workers, List<Prospect> prospects) {
        int next = 0;
        while (true) {
            List<Candidate> best = allMeeting();
            boolean enough = best.size() >= task.listed();
            if (next < prospects.size() && (!enough || task.exactly() || mayComeBefore(prospects.get(next), best.get(Math.max(0, task.listed() - 1))))) {
                List<Prospect> window = prospects.subList(next, Math.min(prospects.size(), next + WINDOW));
                judge(workers, window);
                next += window.size();
                progress(0.4 + 0.3 * Math.min(1, (double) best.size() / Math.max(1, task.listed())), "judging candidates");
                continue;
            }
            // what the other analyses find may turn a listed one down; then the search goes on
            List<Prospect> whole = judged.entrySet().stream().filter(entry -> entry.getValue().candidate().isPresent())
                    .sorted(Comparator.comparing(entry -> entry.getValue().candidate().get(), Candidate.BEST_FIRST)).limit(task.listed())
                    .filter(entry -> entry.getValue().candidate().get().evaluation().isEmpty()).map(Map.Entry::getKey).toList();
            if (whole.isEmpty()) {
                return best.stream().limit(task.listed()).toList();
            }
            List<Judging.Judged> answers = all(workers, whole.stream().<Callable<Judging.Judged>>map(prospect -> () ->
                    judging.confirmed(judged.get(prospect).candidate().orElseThrow())).toList());
            for (int i = 0; i < whole.size(); i++) {
                keep(whole.get(i), answers.get(i));
                confirmed.add(whole.get(i));
            }
        }
    }

    private static boolean mayComeBefore(Prospect prospect, Candidate last) {
        return prospect.unknown < last.unknown() || prospect.unknown == last.unknown() && prospect.steps <= last.steps();
    }

    /** All candidates that no other dominates; those that may be among them are judged. */
    private List<Candidate> front(ExecutorService workers, List<Prospect> prospects) {
        List<Prospect> window = new ArrayList<>();
        int seen = 0;
        for (Prospect prospect : prospects) {
            seen++;
            if (!confirmed.contains(prospect) && mayBeOnFront(prospect)) {
                window.add(prospect);
            }
            if (window.size() == WINDOW || seen == prospects.size() && !window.isEmpty()) {
                judge(workers, window);
                confirm(workers, window);
                window.clear();
                progress(0.7 + 0.25 * seen / prospects.size(), "looking for trade-offs");
            }
        }
        List<Candidate> all = confirmed.stream().flatMap(prospect -> judged.get(prospect).candidate().stream()).sorted(Candidate.BEST_FIRST).toList();
        return all.stream().filter(candidate -> all.stream().noneMatch(other -> scoring.dominates(other.values(), candidate.values())))
                .map(candidate -> candidate.withFront(true)).toList();
    }

    /** Whether none that is confirmed dominates what a prospect came to, or comes to at best. */
    private boolean mayBeOnFront(Prospect prospect) {
        Judging.Judged known = judged.get(prospect);
        if (known != null && known.candidate().isEmpty()) {
            return false;
        }
        Map<String, Double> values = known == null ? prospect.best : known.candidate().orElseThrow().values();
        return confirmed.stream().map(other -> judged.get(other).candidate()).flatMap(Optional::stream)
                .noneMatch(other -> scoring.dominates(other.values(), values));
    }

    /** Has all analyses judge those that may still be on the front, side by side. */
    private void confirm(ExecutorService workers, List<Prospect> some) {
        List<Prospect> open = some.stream().filter(prospect -> !confirmed.contains(prospect) && mayBeOnFront(prospect)).toList();
        List<Judging.Judged> answers = all(workers, open.stream().<Callable<Judging.Judged>>map(prospect -> () ->
                judging.confirmed(judged.get(prospect).candidate().orElseThrow())).toList());
        for (int i = 0; i < open.size(); i++) {
            keep(open.get(i), answers.get(i));
            confirmed.add(open.get(i));
        }
    }

    /** Of each part that has no candidate the arrangement that lacks least; of these the nearest, judged exactly. */
    private List<Rejected> nearest(ExecutorService workers, List<Prospect> prospects) {
        record Miss(String part, Arrangement arrangement, double lack, Optional<Judging.Judged> exact) {
        }
        Set<String> good = new LinkedHashSet<>(allMeeting().stream().map(candidate -> candidate.part().id()).toList());
        prospects.stream().filter(prospect -> !judged.containsKey(prospect)).forEach(prospect -> good.add(prospect.part.id()));
        Map<String, Miss> byPart = new LinkedHashMap<>();
        Comparator<Miss> least = Comparator.comparingDouble(Miss::lack);
        List<Miss> all = new ArrayList<>();
        rejected.stream().filter(each -> each.arrangement().isPresent() && each.speed().isPresent())
                .forEach(each -> all.add(new Miss(each.part(), each.arrangement().get(), each.speed().getAsDouble() - 1, Optional.empty())));
        judged.forEach((prospect, answer) -> answer.rejected().ifPresent(each -> all.add(new Miss(prospect.part.id(), prospect.arrangement,
                answer.lack(), Optional.of(answer)))));
        all.stream().filter(miss -> !good.contains(miss.part())).forEach(miss -> byPart.merge(miss.part(), miss, (a, b) -> least.compare(a, b) <= 0 ? a : b));
        List<Miss> nearest = byPart.values().stream().sorted(least).limit(task.misses()).toList();
        Map<String, AirMover> byId = new HashMap<>();
        parts.values().forEach(part -> byId.putIfAbsent(part.id(), part));
        return all(workers, nearest.stream().<Callable<Optional<Rejected>>>map(miss -> () -> {
            AirMover part = byId.get(miss.part());
            Optional<Judging.Judged> exact = miss.exact().or(() -> judging.atFull(part, miss.arrangement()));
            return exact.flatMap(answer -> answer.rejected().map(each -> {
                double speed = answer.slow() && reduction.isComplete() ? screen.speedNeeded(part, miss.arrangement()) : Double.POSITIVE_INFINITY;
                boolean would = speed > 1 && !Double.isInfinite(speed);
                return new Rejected(each.part(), each.arrangement(), each.reason(), would ? OptionalDouble.of(speed) : OptionalDouble.empty(), true,
                        would ? remedy(part, miss.arrangement(), speed) : each.remedy(), each.setting());
            }));
        }).toList()).stream().flatMap(Optional::stream).toList();
    }

    /** What would have to change for one that falls short. */
    private Sentence remedy(AirMover part, Arrangement arrangement, double speed) {
        List<Object> words = new ArrayList<>(List.of("it would do with ", new Amount(speed - 1, QuantityKind.FRACTION), " more speed"));
        OptionalDouble less = screen.pressureToSpare(part, arrangement);
        if (less.isPresent() && less.getAsDouble() <= MOST_LESS) {
            words.addAll(List.of(", or if the air path took ", new Amount(less.getAsDouble(), QuantityKind.FRACTION), " less pressure at the flow needed"));
        }
        return Sentence.of(words.toArray());
    }

    private List<Finding> notes(List<Candidate> listed) {
        List<Finding> notes = new ArrayList<>();
        if (task.design().controlLaws().stream().anyMatch(law -> law.banks().contains(task.bank()))) {
            notes.add(Finding.note(task.bank(), "control laws of the bank are left out: candidates run at one speed, the lowest that is enough in every condition")
                    .remedy("give the one that is chosen a control law again"));
        }
        if (screen.groups().size() < reduction.groups().size()) {
            String where = reduction.groups().stream().filter(group -> group.need().isEmpty()).map(Reduction.Group::declared).distinct()
                    .collect(Collectors.joining(", "));
            notes.add(Finding.note(task.bank(), "what " + where + (where.contains(",") ? " need" : " needs")
                    + " does not follow from the flow of the bank alone, so nothing is turned down for it beforehand; it is judged exactly"));
        }
        if (asksNothing) {
            notes.add(Finding.caution("", "nothing asks for a flow: any mover does, at the lowest speed that is looked at")
                    .remedy("require a flow, an air temperature or limits of heat sources"));
        }
        List<String> silent = task.certain() ? listed.stream().map(Candidate::part).filter(part -> part.curves().stream().noneMatch(curve -> curve.tolerance().isPresent()))
                .map(AirMover::id).distinct().toList() : List.of();
        if (!silent.isEmpty()) {
            notes.add(Finding.caution(task.bank(), String.join(", ", silent) + (silent.size() == 1 ? " states" : " state")
                    + " no tolerance of pressure, and so may look better beside those that do").remedy("state the tolerance of their curves; 5 to 15 % is usual"));
        }
        return notes;
    }

    private Selection nothing(Finding... why) {
        return new Selection(List.of(), scoring == null ? List.of() : scoring.criteria(), List.of(), List.of(), List.of(), List.of(), List.of(),
                new Selection.Counts(task.parts().size(), 0, 0, 0, 0, 0, 0), List.of(), Arrays.asList(why), false);
    }

    private Selection cancelled() {
        List<Candidate> found = allMeeting();
        return new Selection(reduction == null ? List.of() : reduction.needs(), scoring == null ? List.of() : scoring.criteria(),
                found.stream().limit(task.listed()).toList(), List.of(), List.of(), rejected, List.of(),
                new Selection.Counts(task.parts().size(), 0, 0, 0, judged.size(), found.size(), unjudged(found)), List.of(), List.of(), true);
    }

    /** Runs jobs side by side and waits for all; their answers in their order. */
    private static <R> List<R> all(ExecutorService workers, List<Callable<R>> jobs) {
        try {
            List<R> answers = new ArrayList<>();
            for (Future<R> future : workers.invokeAll(jobs)) {
                answers.add(future.get());
            }
            return answers;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new Cancelled();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException runtime) {
                throw runtime;
            }
            throw new IllegalStateException(e.getCause());
        }
    }
}
