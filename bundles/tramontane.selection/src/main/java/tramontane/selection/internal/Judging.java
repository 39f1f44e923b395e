package tramontane.selection.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
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
import tramontane.physics.units.QuantityKind;
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

    private final Engine engine;
    private final Design design;
    private final String bank;
    private final Set<String> analyses;
    private final List<String> conditions;
    private final Scoring scoring;
    private final int lowest;
    private final Set<String> wanted;
    private final boolean certain;
    /** The analyses that give these. */
    private final Set<String> counting;
    /** Cancels with the whole; how far one candidate has come nobody wants to know. */
    private final Engine.Watch silent;

    /**
     * A judge.
     *
     * @param analyses   the ids of those that give what is required of flow and temperature
     * @param conditions the ids of the conditions
     * @param wanted     the ids of the figures that are required, or weighed
     * @param lowest     lowest setting
     * @param certain    whether bounds must hold, too
     */
    Judging(Engine engine, Design design, String bank, Set<String> analyses, List<String> conditions, Scoring scoring, Set<String> wanted,
            double lowest, boolean certain, Engine.Watch watch) {
        this.engine = engine;
        this.design = design;
        this.bank = bank;
        this.analyses = analyses;
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
     */
    record Judged(Optional<Candidate> candidate, Optional<Rejected> rejected, double lack) {
    }

    /** What is required of flow and temperature in one condition at one setting. */
    private record Tried(double margin, Optional<Verdict> worst) {
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
            return tried.computeIfAbsent(List.of(condition, k), key -> margin(evaluate(at(k), analyses, Set.of(condition), !certain).verdicts()));
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
                    return rejected(part, arrangement, trying.in(open.getFirst(), GRAIN).worst().orElseThrow(), " at full speed");
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
        return margin(evaluation.verdicts()).worst().filter(verdict -> fails(verdict))
                .map(worst -> rejected(part, arrangement, worst, " at full speed"));
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
            return rejected(part, arrangement, failing.get(), at);
        }
        Optional<Finding> against = evaluation.findings().stream().filter(finding -> finding.severity() == Severity.NOT_MET
                || finding.severity() == Severity.ERROR).findFirst();
        if (against.isPresent()) {
            return new Judged(Optional.empty(), Optional.of(new Rejected(part.id(), Optional.of(arrangement), against.get().message(),
                    OptionalDouble.empty(), true, against.get().remedy())), 1);
        }
        Map<String, Double> values = scoring.values(part, arrangement, evaluation);
        double speed = evaluation.cases().stream().flatMap(each -> evaluation.data(OperatingPoint.class, each.concrete().id()).stream())
                .flatMap(point -> point.bank(bank).stream()).mapToDouble(OperatingPoint.BankPoint::speed).max().orElse(0);
        Optional<Verdict> tightest = evaluation.verdicts().stream().filter(verdict -> verdict.figure().isPresent())
                .min(Comparator.comparingDouble(this::share));
        int unjudged = (int) evaluation.verdicts().stream().filter(verdict -> verdict.severity() == Severity.NOT_JUDGED).count();
        return new Judged(Optional.of(new Candidate(part, arrangement, (double) k / GRAIN, speed, adjustable, values, scoring.steps(values),
                scoring.unknown(values), false, tightest, unjudged, with, kept)), Optional.empty(), 0);
    }

    private Judged rejected(AirMover part, Arrangement arrangement, Verdict verdict, String at) {
        return new Judged(Optional.empty(), Optional.of(new Rejected(part.id(), Optional.of(arrangement), sentence(verdict, at),
                OptionalDouble.empty(), true, Sentence.EMPTY)), Math.abs(share(verdict)));
    }

    /** A verdict that does not hold, in one sentence. */
    static Sentence sentence(Verdict verdict, String at) {
        Optional<Figure> figure = verdict.figure();
        if (figure.isEmpty()) {
            return Sentence.of(verdict.requirement().figure() + (verdict.condition().isEmpty() ? "" : " in " + verdict.condition())
                    + " is not judged: " + verdict.reason());
        }
        QuantityKind quantity = figure.get().kind().quantity();
        Optional<Ask> ask = Ask.of(verdict.requirement(), figure.get().kind());
        String place = figure.get().place().isEmpty() ? "" : " at " + figure.get().place();
        String where = figure.get().condition().isEmpty() ? "" : " in " + figure.get().condition();
        List<Object> parts = new ArrayList<>(List.of(figure.get().kind().label() + place + where + " is ", new Amount(figure.get().value(), quantity),
                at + " where"));
        ask.ifPresent(each -> parts.addAll(each.limit().parts()));
        parts.add(" is required");
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

    /** Whether a verdict turns a candidate down. */
    private boolean fails(Verdict verdict) {
        return verdict.severity() == Severity.NOT_MET || Ask.isFlowOrThermal(verdict.requirement().figure())
                && (verdict.severity() == Severity.NOT_JUDGED || certain && verdict.severity() == Severity.CAUTION);
    }

    private Tried margin(Evaluation evaluation, String condition) {
        return margin(evaluation.verdicts().stream().filter(verdict -> verdict.condition().equals(condition) || verdict.condition().isEmpty()).toList());
    }

    private Tried margin(List<Verdict> verdicts) {
        Optional<Verdict> worst = verdicts.stream().filter(verdict -> Ask.isFlowOrThermal(verdict.requirement().figure()))
                .min(Comparator.comparingDouble(verdict -> verdict.severity() == Severity.NOT_JUDGED ? Double.NEGATIVE_INFINITY : share(verdict)));
        return new Tried(worst.map(verdict -> verdict.severity() == Severity.NOT_JUDGED ? Double.NEGATIVE_INFINITY : share(verdict))
                .orElse(Double.POSITIVE_INFINITY), worst);
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
