package tramontane.selection.internal;

import java.util.ArrayList;
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
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tramontane.analysis.Amount;
import tramontane.analysis.Cancelled;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Sentence;
import tramontane.analysis.Severity;
import tramontane.analysis.Verdict;
import tramontane.model.AirMover;
import tramontane.model.Design;
import tramontane.model.Requirement;
import tramontane.selection.Arrangement;
import tramontane.selection.Candidate;
import tramontane.selection.Placement;
import tramontane.selection.Rejected;

/**
 * Judges one candidate exactly: the lowest setting with which all holds that more speed is for, then what else is required and
 * weighed; and, for those that come into question, what all other analyses find.
 */
final class Judging {

    /** Settings are found to a part in so many; what is given holds, and one part less does not. */
    private static final int GRAIN = 1000;
    /** How far from a guess the first step goes. */
    private static final int STEP = 1;
    /** Setting that full speed is compared with. */
    private static final int PROBE = 800;

    private final Engine engine;
    private final Design design;
    private final String bank;
    private final Set<String> analyses;
    private final List<String> conditions;
    private final Scoring scoring;
    private final int lowest;
    /** What is required of flow and temperature, each limit by itself. */
    private final List<Ask> sides;
    /** Of these, by place, what more speed is not for. */
    private final Set<List<Object>> unhelped = new HashSet<>();
    private final Map<String, String> labels = new HashMap<>();
    private final Set<String> wanted;
    private final boolean certain;
    /** The analyses that give these. */
    private final Set<String> counting;
    /** Cancels with the whole; how far one candidate has come nobody wants to know. */
    private final Engine.Watch silent;

    /**
     * A judge.
     *
     * @param sides      what is required of flow and temperature, each limit by itself
     * @param analyses   the ids of those that give what is required of flow and temperature
     * @param conditions the ids of the conditions
     * @param wanted     the ids of the figures that are required, or weighed
     * @param lowest     lowest setting
     * @param certain    whether bounds must hold, too
     */
    Judging(Engine engine, Design design, String bank, List<Ask> sides, Set<String> analyses, List<String> conditions, Scoring scoring, Set<String> wanted,
            double lowest, boolean certain, Engine.Watch watch) {
        this.engine = engine;
        this.design = design;
        this.bank = bank;
        this.sides = sides;
        this.analyses = analyses;
        engine.analyses().forEach(analysis -> analysis.figures().forEach(figure -> labels.putIfAbsent(figure.id(), figure.label())));
        this.conditions = conditions;
        this.scoring = scoring;
        this.lowest = Math.max(1, (int) Math.ceil(lowest * GRAIN - 1e-9));
        this.wanted = wanted;
        this.certain = certain;
        this.counting = Stream.concat(analyses.stream(), engine.analyses().stream().filter(analysis -> analysis.figures().stream()
                .anyMatch(figure -> wanted.contains(figure.id()))).map(Engine.Loaded::id)).collect(Collectors.toSet());
        this.silent = new Silent(watch);
    }

    /**
     * How it came out.
     *
     * @param candidate where all holds
     * @param rejected  where not
     * @param lack      how far it is off, as a share; for the order of misses
     * @param slow      whether more speed would be for it
     */
    record Judged(Optional<Candidate> candidate, Optional<Rejected> rejected, double lack, boolean slow) {
    }

    /**
     * What is required of flow and temperature, and more speed is for, in one condition at one setting.
     *
     * @param margin the least, over what counts as wholly off
     * @param side   what has it
     * @param figure its figure
     * @param silent why something could not be judged, which counts as failing
     */
    private record Tried(double margin, Optional<Ask> side, Optional<Figure> figure, Optional<Sentence> silent) {
        boolean holds() {
            return margin >= 0;
        }
    }

    /** One candidate at any setting. */
    private final class Trying {

        private final AirMover part;
        private final Arrangement arrangement;
        private final Map<List<Object>, Tried> tried = new HashMap<>();

        Trying(AirMover part, Arrangement arrangement) {
            this.part = part;
            this.arrangement = arrangement;
        }

        Design at(int k) {
            return Placement.of(design, bank, part, arrangement, (double) k / GRAIN);
        }

        Tried in(String condition, int k) {
            return tried.computeIfAbsent(List.of(condition, k), key -> margin(evaluate(at(k), analyses, Set.of(condition), !certain), condition));
        }

        boolean holds(String condition, int k) {
            return in(condition, k).holds();
        }

        /** The lowest setting that holds in a condition, from a guess on; one that holds not even at full is empty. */
        Optional<Integer> least(String condition, int guess, boolean down) {
            int high;
            int low;
            if (holds(condition, guess)) {
                if (!down) {
                    return Optional.of(guess);
                }
                high = guess;
                low = guess;
                for (int step = STEP; low > lowest && holds(condition, low); step *= 2) {
                    high = low;
                    low = Math.max(lowest, low - step);
                }
                if (holds(condition, low)) {
                    return Optional.of(low);
                }
            } else {
                low = guess;
                high = guess;
                for (int step = STEP; high < GRAIN && !holds(condition, high); step *= 2) {
                    low = high;
                    high = Math.min(GRAIN, high + step);
                }
                if (!holds(condition, high)) {
                    return Optional.empty();
                }
            }
            boolean straight = true;
            while (high - low > 1) {
                int width = high - low;
                double below = in(condition, low).margin();
                double above = in(condition, high).margin();
                int middle = straight && below > Double.NEGATIVE_INFINITY ? (int) Math.ceil(low + width * -below / (above - below)) : low + width / 2;
                middle = Math.max(low + 1, Math.min(high - 1, middle));
                if (holds(condition, middle)) {
                    high = middle;
                    if (high - low > 1 && !holds(condition, high - 1)) {
                        low = high - 1;
                    } else if (high - low > 1) {
                        high--;
                    }
                } else {
                    low = middle;
                }
                straight = high - low < width / 2;
            }
            return Optional.of(high);
        }
    }

    /**
     * Judges.
     *
     * @param part        the part
     * @param arrangement how it is arranged
     * @param guess       of its setting
     * @param order       the conditions, those first that probably decide
     * @param adjustable  whether its speed follows a setting
     */
    Judged judge(AirMover part, Arrangement arrangement, double guess, List<String> order, boolean adjustable) {
        Trying trying = new Trying(part, arrangement);
        int k = adjustable ? Math.max(lowest, Math.min(GRAIN, (int) Math.ceil(guess * GRAIN))) : GRAIN;
        List<String> open = new ArrayList<>(analyses.isEmpty() ? List.of() : order(order));
        if (open.isEmpty()) {
            k = adjustable ? lowest : GRAIN;
        }
        boolean down = adjustable;
        while (true) {
            if (!open.isEmpty()) {
                Optional<Integer> least = trying.least(open.getFirst(), k, down);
                if (least.isEmpty()) {
                    return slow(part, arrangement, trying.in(open.getFirst(), GRAIN));
                }
                k = least.get();
                down = false;
            }
            Design with = trying.at(k);
            Evaluation evaluation = evaluate(with, counting, Set.of(), !certain);
            // as a rule the first condition decides, and the others hold with it; else the first of them that does not is next
            int last = k;
            Optional<String> fails = open.stream().filter(condition -> !margin(evaluation, condition).holds()).findFirst();
            if (fails.isEmpty() || last == GRAIN) {
                return outcome(part, arrangement, k, adjustable, with, evaluation, Optional.empty());
            }
            open.remove(fails.get());
            open.addFirst(fails.get());
            k++;
        }
    }

    /** Has all analyses judge a candidate, which may still turn it down. */
    Judged confirmed(Candidate candidate) {
        Evaluation evaluation = evaluate(candidate.design(), Set.of(), Set.of(), !certain);
        return outcome(candidate.part(), candidate.arrangement(), (int) Math.round(candidate.setting() * GRAIN), candidate.adjustable(),
                candidate.design(), evaluation, Optional.of(evaluation));
    }

    /** How it fails at full speed, in all conditions; empty where it does not. */
    Optional<Judged> atFull(AirMover part, Arrangement arrangement) {
        Evaluation evaluation = evaluate(new Trying(part, arrangement).at(GRAIN), analyses, Set.of(), !certain);
        return conditions.stream().map(condition -> margin(evaluation, condition)).filter(tried -> !tried.holds())
                .min(Comparator.comparingDouble(Tried::margin)).map(worst -> slow(part, arrangement, worst));
    }

    private List<String> order(List<String> first) {
        Set<String> all = new LinkedHashSet<>(first);
        all.retainAll(new HashSet<>(conditions));
        all.addAll(conditions);
        return new ArrayList<>(all);
    }

    private Judged outcome(AirMover part, Arrangement arrangement, int k, boolean adjustable, Design with, Evaluation evaluation,
            Optional<Evaluation> kept) {
        Optional<Verdict> failing = evaluation.verdicts().stream().filter(this::fails).min(Comparator.comparingDouble(this::share));
        String at = k == GRAIN ? " at full speed" : " at the lowest speed that is enough for flow and temperature";
        if (failing.isPresent()) {
            return rejected(part, arrangement, failing.get(), at, evaluation, (double) k / GRAIN);
        }
        Optional<Finding> against = evaluation.findings().stream().filter(finding -> finding.severity() == Severity.NOT_MET
                || finding.severity() == Severity.ERROR).findFirst();
        if (against.isPresent()) {
            return new Judged(Optional.empty(), Optional.of(new Rejected(part.id(), Optional.of(arrangement), against.get().message(),
                    OptionalDouble.empty(), true, against.get().remedy(), OptionalDouble.of((double) k / GRAIN))), 1, false);
        }
        Map<String, Double> values = scoring.values(part, arrangement, evaluation);
        double speed = evaluation.cases().stream().flatMap(each -> evaluation.data(OperatingPoint.class, each.concrete().id()).stream())
                .flatMap(point -> point.bank(bank).stream()).mapToDouble(OperatingPoint.BankPoint::speed).max().orElse(0);
        Optional<Verdict> tightest = evaluation.verdicts().stream().filter(verdict -> verdict.figure().isPresent())
                .min(Comparator.comparingDouble(this::share));
        int unjudged = (int) evaluation.verdicts().stream().filter(verdict -> verdict.severity() == Severity.NOT_JUDGED).count();
        return new Judged(Optional.of(new Candidate(part, arrangement, (double) k / GRAIN, speed, adjustable, values, scoring.steps(values),
                scoring.unknown(values), false, tightest, unjudged, with, kept)), Optional.empty(), 0, false);
    }

    private Judged rejected(AirMover part, Arrangement arrangement, Verdict verdict, String at, Evaluation evaluation, double setting) {
        return new Judged(Optional.empty(), Optional.of(new Rejected(part.id(), Optional.of(arrangement), sentence(verdict, at),
                OptionalDouble.empty(), true, cause(verdict, evaluation), OptionalDouble.of(setting))), Math.abs(share(verdict)), false);
    }

    /**
     * Of a figure of another analysis, which more speed is not for, what is found of the bank in the condition where it fails: the first
     * that one should look at, by the analysis that gives the figure or else by any, and what to do about it.
     */
    private Sentence cause(Verdict verdict, Evaluation evaluation) {
        String where = verdict.figure().map(Figure::condition).orElse(verdict.condition());
        if (Ask.isFlowOrThermal(verdict.requirement().figure())) {
            return Sentence.EMPTY;
        }
        Set<String> givers = engine.analyses().stream().filter(analysis -> analysis.figures().stream().anyMatch(kind -> kind.id().equals(
                verdict.requirement().figure()))).map(Engine.Loaded::id).collect(Collectors.toSet());
        Stream<Finding> own = evaluation.outcomes().stream().filter(outcome -> givers.contains(outcome.analysis()))
                .flatMap(outcome -> outcome.result().findings().stream().map(finding -> finding.condition().isEmpty() ? finding.in(outcome.condition()) : finding));
        return Stream.concat(own, evaluation.findings().stream()).filter(finding -> finding.severity() == Severity.CAUTION && finding.place().equals(bank))
                .filter(finding -> where.isEmpty() || finding.condition().isEmpty() || finding.condition().equals(where) || finding.condition().equals(verdict.condition()))
                .findFirst().map(finding -> Sentence.of("what is found of " + bank + (finding.condition().isEmpty() ? "" : " in " + finding.condition()) + ": ",
                        finding.message(), finding.remedy().isEmpty() ? "" : "; ", finding.remedy())).orElse(Sentence.EMPTY);
    }

    /** One that is too slow at full speed. */
    private Judged slow(AirMover part, Arrangement arrangement, Tried tried) {
        if (tried.silent().isPresent()) {
            return new Judged(Optional.empty(), Optional.of(new Rejected(part.id(), Optional.of(arrangement), tried.silent().get(), OptionalDouble.empty(), true,
                    Sentence.EMPTY, OptionalDouble.of(1))), Double.MAX_VALUE, false);
        }
        return new Judged(Optional.empty(), Optional.of(new Rejected(part.id(), Optional.of(arrangement), sentence(tried.side(), tried.figure().orElseThrow(),
                " at full speed"), OptionalDouble.empty(), true, Sentence.EMPTY, OptionalDouble.of(1))), Math.abs(tried.margin()), true);
    }

    /** A verdict that does not hold, in one sentence. */
    private Sentence sentence(Verdict verdict, String at) {
        return verdict.figure().map(figure -> sentence(Ask.of(verdict.requirement(), figure.kind()), figure, at)).orElseGet(() -> Sentence.of(
                labels.getOrDefault(verdict.requirement().figure(), verdict.requirement().figure())
                        + (verdict.requirement().place().equals(Requirement.WORST) ? "" : " at " + verdict.requirement().place()) + (verdict.condition().isEmpty() ? ""
                        : " in " + verdict.condition()) + " is not judged: " + verdict.reason()));
    }

    private static Sentence sentence(Optional<Ask> ask, Figure figure, String at) {
        String place = figure.place().isEmpty() ? "" : " at " + figure.place();
        String where = figure.condition().isEmpty() ? "" : " in " + figure.condition();
        // where the figure itself would do, the edge of its bounds does not
        boolean bound = ask.filter(each -> each.margin(figure.value()) >= 0 && edge(each, figure) < 0).isPresent();
        double value = !bound ? figure.value() : ask.get().margin(figure.upper().orElse(figure.value())) < 0 ? figure.upper().getAsDouble()
                : figure.lower().orElse(figure.value());
        List<Object> parts = new ArrayList<>(List.of(figure.kind().label() + place + where + (bound ? " may be " : " is "),
                new Amount(value, figure.kind().quantity()), at + " where"));
        ask.ifPresent(each -> parts.addAll(each.limit().parts()));
        parts.add(" is required");
        ask.ifPresent(each -> parts.add(Off.where(value, each)));
        return Sentence.of(parts.toArray());
    }

    /** How far inside the limit, over what counts as wholly off; at the edge of the bounds where these count. */
    private double share(Verdict verdict) {
        return verdict.figure().isEmpty() ? -1 : Ask.of(verdict.requirement(), verdict.figure().get().kind())
                .map(ask -> ask.share(certain ? edge(ask, verdict.figure().get()) : verdict.margin())).orElse(-1.0);
    }

    private static double edge(Ask ask, Figure figure) {
        return Math.min(ask.margin(figure.lower().orElse(figure.value())), ask.margin(figure.upper().orElse(figure.value())));
    }

    /** Whether a verdict turns a candidate down; where all must hold for certain, so does one that nobody can tell. */
    private boolean fails(Verdict verdict) {
        return verdict.severity() == Severity.NOT_MET || certain && verdict.severity() == Severity.CAUTION
                || verdict.severity() == Severity.NOT_JUDGED && (certain || Ask.isFlowOrThermal(verdict.requirement().figure()));
    }

    /** The margin in one condition. */
    private Tried margin(Evaluation evaluation, String condition) {
        Optional<Verdict> silent = evaluation.verdicts().stream().filter(verdict -> verdict.severity() == Severity.NOT_JUDGED
                && Ask.isFlowOrThermal(verdict.requirement().figure()) && (verdict.condition().equals(condition) || verdict.condition().isEmpty())).findFirst();
        if (silent.isPresent()) {
            return new Tried(Double.NEGATIVE_INFINITY, Optional.empty(), Optional.empty(), Optional.of(evaluation.findings().stream()
                    .filter(finding -> finding.severity() == Severity.ERROR).map(Finding::message).findFirst().orElseGet(() -> sentence(silent.get(), ""))));
        }
        Tried least = new Tried(Double.POSITIVE_INFINITY, Optional.empty(), Optional.empty(), Optional.empty());
        for (Placed placed : placed(evaluation, condition)) {
            if (!unhelped.contains(placed.name())) {
                double margin = placed.side().share(certain ? edge(placed.side(), placed.figure()) : placed.side().margin(placed.figure().value()));
                least = margin < least.margin() ? new Tried(margin, Optional.of(placed.side()), Optional.of(placed.figure()), Optional.empty()) : least;
            }
        }
        return least;
    }

    /** A figure that a side of a requirement is about. */
    private record Placed(Ask side, Figure figure) {
        List<Object> name() {
            return List.of(side, figure.place());
        }
    }

    private List<Placed> placed(Evaluation evaluation, String condition) {
        Set<String> cases = evaluation.cases().stream().filter(each -> each.declared().equals(condition)).map(each -> each.concrete().id())
                .collect(Collectors.toCollection(HashSet::new));
        cases.add("");
        List<Placed> all = new ArrayList<>();
        List<Figure> figures = evaluation.figures();
        for (Ask side : sides) {
            if (side.requirement().appliesIn(condition)) {
                figures.stream().filter(figure -> figure.kind().id().equals(side.kind().id()) && cases.contains(figure.condition())
                        && side.isAbout(figure.place())).forEach(figure -> all.add(new Placed(side, figure)));
            }
        }
        return all;
    }

    /**
     * Finds out what more speed is not for, by one candidate at full speed and somewhat slower: what has less to spare at full speed,
     * as an upper limit of power or flow, or the flow of a bank beside. That is judged at the lowest speed that the rest needs.
     */
    void probe(AirMover part, Arrangement arrangement) {
        if (analyses.isEmpty()) {
            return;
        }
        Trying trying = new Trying(part, arrangement);
        Evaluation slower = evaluate(trying.at(PROBE), analyses, Set.of(), true);
        Evaluation full = evaluate(trying.at(GRAIN), analyses, Set.of(), true);
        Map<List<Object>, Double> gain = new LinkedHashMap<>();
        for (String condition : conditions) {
            placed(full, condition).forEach(each -> gain.merge(each.name(), each.side().share(each.side().margin(each.figure().value())), Double::sum));
            placed(slower, condition).forEach(each -> gain.merge(each.name(), -each.side().share(each.side().margin(each.figure().value())), Double::sum));
        }
        gain.forEach((name, more) -> {
            if (more < -1e-9) {
                unhelped.add(name);
            }
        });
    }

    private Evaluation evaluate(Design with, Set<String> some, Set<String> where, boolean brief) {
        Engine.Request request = new Engine.Request(with, some, where, Engine.Request.TIME_LIMIT);
        Evaluation evaluation = engine.evaluate(brief ? request.briefly(wanted) : request, silent);
        if (evaluation.cancelled()) {
            throw new Cancelled();
        }
        return evaluation;
    }
}
