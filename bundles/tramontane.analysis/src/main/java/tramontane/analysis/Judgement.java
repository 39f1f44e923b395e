package tramontane.analysis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import tramontane.model.Design;
import tramontane.model.HeatSource;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.model.Spelling;
import tramontane.model.Value;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.Units;

/** Judges requirements by figures; the one place where that is done. */
public final class Judgement {

    /** The figure by which the limits of heat sources are judged. */
    public static final String COMPONENT_TEMPERATURE = "thermal.junction.temperature";

    /** Limits closer than this are the same, K; the same temperature written in two units differs by rounding. */
    private static final double SAME_LIMIT = 1e-6;

    /** To single precision, so that of cases that differ by rounding alone the first is named. */
    private static final Comparator<Judged> WORST_FIRST = Comparator.comparing(Judged::severity).reversed()
            .thenComparing(judged -> (float) judged.margin());

    private final Cases cases;
    private final List<Engine.Loaded> asked;
    private final Map<String, FigureKind> known = new LinkedHashMap<>();
    private final Map<String, List<Figure>> figures = new HashMap<>();
    private final Map<List<String>, Evaluation.Status> ends = new HashMap<>();
    private final Map<List<String>, List<Finding>> untold = new HashMap<>();

    private Judgement(Cases cases, List<Evaluation.Outcome> outcomes, List<Engine.Loaded> asked, List<FigureKind> known) {
        this.cases = cases;
        this.asked = asked;
        known.forEach(kind -> this.known.putIfAbsent(kind.id(), kind));
        for (Evaluation.Outcome outcome : outcomes) {
            ends.put(List.of(outcome.analysis(), outcome.condition()), outcome.status());
            untold.put(List.of(outcome.analysis(), outcome.condition()), outcome.result().findings().stream()
                    .filter(finding -> finding.severity() == Severity.NOT_JUDGED && !finding.place().isEmpty()).toList());
            outcome.result().figures().forEach(figure ->
                    figures.computeIfAbsent(figure.kind().id(), id -> new ArrayList<>()).add(figure));
        }
    }

    /**
     * All that a design requires: its requirements as written, then the limit of each heat source, in the order of the design.
     *
     * <p>A heat source's limit requires of {@link #COMPONENT_TEMPERATURE} at that source to be at most the limit in all
     * conditions. It is left out where a written requirement says the same, and where nothing loaded can give that figure.
     *
     * @param design the design
     * @param known  the figures that anything loaded can give
     */
    public static List<Requirement> requirements(Design design, List<FigureKind> known) {
        List<Requirement> all = new ArrayList<>(design.requirements());
        known.stream().filter(kind -> kind.id().equals(COMPONENT_TEMPERATURE)).findFirst().ifPresent(kind -> {
            for (HeatSource source : design.heatSources()) {
                source.limit().filter(limit -> !source.id().isEmpty()
                        && design.requirements().stream().noneMatch(written -> says(written, source.id(), limit, kind, design)))
                        .ifPresent(limit -> all.add(new Requirement(COMPONENT_TEMPERATURE, source.id(), Optional.empty(),
                                Optional.of(limit), List.of(), Value.Tree.EMPTY)));
            }
        });
        return List.copyOf(all);
    }

    /** Whether a written requirement holds a heat source to its limit in every condition. */
    private static boolean says(Requirement written, String source, Quantity limit, FigureKind kind, Design design) {
        return written.figure().equals(kind.id()) && written.place().equals(source)
                && design.workingConditions().stream().allMatch(condition -> written.appliesIn(condition.id()))
                && written.atMost().filter(most -> same(most, limit, kind)).isPresent();
    }

    private static boolean same(Quantity one, Quantity other, FigureKind kind) {
        try {
            return Math.abs(limit(one, kind) - limit(other, kind)) < SAME_LIMIT;
        } catch (UnitException e) {
            return false; // one that does not fit the figure is not judged, and the other must be
        }
    }

    /**
     * One verdict per requirement and condition that it holds in; a figure of the design as a whole is judged once, with an
     * empty condition.
     *
     * <p>Judged is what {@link #requirements} lists, limits of heat sources included.
     *
     * <p>Of several cases of a condition, and of several places where {@link Requirement#WORST} is asked for, the worst
     * decides. What is missing is never taken for met: where an analysis that can give the figure gave no data in a case, or says
     * of a place that counts, by a finding of severity {@link Severity#NOT_JUDGED} there, that it could not be told, the verdict is
     * not judged, unless another case or place already fails.
     *
     * @param design   the design
     * @param cases    the cases that were to be computed
     * @param outcomes what was computed
     * @param asked    the analyses that were to run
     * @param known    the figures that anything loaded can give
     */
    public static List<Verdict> judge(Design design, Cases cases, List<Evaluation.Outcome> outcomes,
            List<Engine.Loaded> asked, List<FigureKind> known) {
        Judgement judgement = new Judgement(cases, outcomes, asked, known);
        return requirements(design, known).stream().flatMap(requirement -> judgement.conditions(requirement).stream()
                .map(condition -> judgement.verdict(requirement, condition))).toList();
    }

    /**
     * Says of everything that {@link #requirements} lists that it is not judged.
     *
     * @param design     the design
     * @param known      the figures that anything loaded can give
     * @param conditions ids of the conditions
     * @param reason     why
     */
    public static List<Verdict> none(Design design, List<FigureKind> known, List<String> conditions, String reason) {
        return requirements(design, known).stream().flatMap(requirement -> conditions.stream().filter(requirement::appliesIn)
                .map(condition -> notJudged(requirement, condition, reason))).toList();
    }

    /**
     * What keeps the limits of requirements from being compared with the figures that are known.
     *
     * @param design the design
     * @param known  the figures that anything loaded can give
     */
    public static List<Problem> check(Design design, List<FigureKind> known) {
        List<Problem> problems = new ArrayList<>();
        for (int i = 0; i < design.requirements().size(); i++) {
            Requirement requirement = design.requirements().get(i);
            String place = "requirements[" + i + "]";
            known.stream().filter(kind -> kind.id().equals(requirement.figure())).findFirst().ifPresentOrElse(kind -> {
                requirement.atLeast().ifPresent(limit -> limit(limit, kind, place + ".atLeast", problems));
                requirement.atMost().ifPresent(limit -> limit(limit, kind, place + ".atMost", problems));
            }, () -> problems.add(Problem.caution(place + ".figure", '"' + requirement.figure()
                    + "\" is no figure that anything loaded here gives; the requirement is not judged"
                    + Spelling.hint(requirement.figure(), known.stream().map(FigureKind::id).toList()))));
        }
        return List.copyOf(problems);
    }

    private static void limit(Quantity limit, FigureKind kind, String place, List<Problem> problems) {
        try {
            limit(limit, kind);
        } catch (UnitException e) {
            problems.add(Problem.error(place, e.getMessage()));
        }
    }

    private List<String> conditions(Requirement requirement) {
        List<Engine.Loaded> givers = givers(requirement.figure());
        boolean once = !givers.isEmpty() && givers.stream().allMatch(giver -> giver.scope() == Scope.DESIGN)
                && figures(requirement.figure()).stream().allMatch(figure -> figure.condition().isEmpty());
        return once ? List.of("") : cases.conditions().stream().filter(requirement::appliesIn).toList();
    }

    private List<Engine.Loaded> givers(String figure) {
        return asked.stream().filter(each -> each.figures().stream().anyMatch(kind -> kind.id().equals(figure))).toList();
    }

    private List<Figure> figures(String id) {
        return figures.getOrDefault(id, List.of());
    }

    private Verdict verdict(Requirement requirement, String condition) {
        String id = requirement.figure();
        FigureKind kind = known.get(id);
        if (kind == null) {
            return notJudged(requirement, condition, "nothing loaded gives a figure " + id + suggestion(id));
        }
        Optional<Double> least;
        Optional<Double> most;
        try {
            least = requirement.atLeast().map(limit -> limit(limit, kind));
            most = requirement.atMost().map(limit -> limit(limit, kind));
        } catch (UnitException e) {
            return notJudged(requirement, condition, "the limit does not fit the figure: " + e.getMessage());
        }
        if (least.isEmpty() && most.isEmpty()) {
            return notJudged(requirement, condition, "the requirement has no limit");
        }
        List<String> caseIds = condition.isEmpty() ? List.of("")
                : cases.of(condition).stream().map(each -> each.concrete().id()).toList();
        if (caseIds.isEmpty()) {
            return notJudged(requirement, condition, "the condition has no case that could be computed");
        }
        Set<String> inCase = new HashSet<>(caseIds);
        inCase.add("");
        boolean anywhere = requirement.place().equals(Requirement.WORST);
        List<Judged> judged = figures(id).stream().filter(figure -> inCase.contains(figure.condition()))
                .filter(figure -> anywhere || figure.place().equals(requirement.place()))
                .map(figure -> Judged.of(figure, least, most)).sorted(WORST_FIRST).toList();
        Optional<Judged> worst = judged.stream().findFirst();
        if (worst.isEmpty() || worst.get().severity() != Severity.NOT_MET) {
            Optional<String> gap = gap(id, caseIds, anywhere, judged).or(() -> untold(requirement, caseIds));
            if (gap.isPresent()) {
                return notJudged(requirement, condition, gap.get());
            }
        }
        return worst.map(decides -> new Verdict(requirement, condition, decides.severity(), Optional.of(decides.figure()),
                decides.margin(), reason(decides, judged, caseIds))).orElseGet(() -> notJudged(requirement, condition,
                anywhere ? "no place has this figure" : "there is no such figure at " + requirement.place()
                        + places(id, inCase)));
    }

    /** Why the figures at hand are not all there should be. */
    private Optional<String> gap(String id, List<String> caseIds, boolean anywhere, List<Judged> judged) {
        List<Engine.Loaded> givers = givers(id);
        if (givers.isEmpty()) {
            return Optional.of("none of the analyses that give this figure was run");
        }
        Set<String> having = new HashSet<>();
        judged.forEach(each -> having.add(each.figure().condition()));
        for (String caseId : caseIds) {
            // judged by other cases alone, one in which nothing can be said would pass for met
            boolean silent = !judged.isEmpty() && !having.contains(caseId) && !having.contains("");
            for (Engine.Loaded giver : givers) {
                String ran = giver.scope() == Scope.DESIGN ? "" : caseId;
                Evaluation.Status end = ends.get(List.of(giver.id(), ran));
                boolean there = !anywhere && (having.contains(caseId) || having.contains(""));
                if (end != Evaluation.Status.COMPUTED && !there) {
                    return Optional.of("could not be computed" + (caseIds.size() < 2 || ran.isEmpty() ? "" : " in " + ran) + ": analysis "
                            + giver.id() + " " + (end == null ? "was not finished" : switch (end) {
                                case COMPUTED -> "gave it";
                                case NOT_COMPUTED -> "found no answer";
                                case NOT_RUN -> "did not run";
                                case FAILED -> "failed";
                            }));
                }
            }
            if (silent) {
                return Optional.of("there is no such figure in " + caseId);
            }
        }
        return Optional.empty();
    }

    /** Why a figure could not be told at a place that counts, as the analysis that gives it says. */
    private Optional<String> untold(Requirement requirement, List<String> caseIds) {
        boolean anywhere = requirement.place().equals(Requirement.WORST);
        for (String caseId : caseIds) {
            for (Engine.Loaded giver : givers(requirement.figure())) {
                String ran = giver.scope() == Scope.DESIGN ? "" : caseId;
                for (Finding finding : untold.getOrDefault(List.of(giver.id(), ran), List.of())) {
                    boolean there = figures(requirement.figure()).stream().anyMatch(figure -> figure.place().equals(finding.place())
                            && (figure.condition().equals(caseId) || figure.condition().isEmpty()));
                    if (!there && (anywhere || finding.place().equals(requirement.place()))) {
                        return Optional.of("could not be told at " + finding.place() + (caseIds.size() < 2 ? "" : " in " + caseId));
                    }
                }
            }
        }
        return Optional.empty();
    }

    private static String reason(Judged decides, List<Judged> judged, List<String> caseIds) {
        long places = judged.stream().map(each -> each.figure().place()).distinct().count();
        String where = (decides.figure().place().isEmpty() ? "" : " at " + decides.figure().place())
                + (caseIds.size() > 1 ? " in " + decides.figure().condition() : "");
        String of = places > 1 && caseIds.size() > 1 ? ", the worst of " + places + " places and " + caseIds.size() + " cases"
                : places > 1 ? ", the worst of " + places + " places"
                : caseIds.size() > 1 ? ", the worst of " + caseIds.size() + " cases" : "";
        return switch (decides.severity()) {
            case MET -> "holds" + where + of;
            case CAUTION -> "holds" + where + of + ", but not at the edge of its uncertainty";
            default -> "does not hold" + where + of;
        };
    }

    private String places(String id, Set<String> inCase) {
        List<String> places = figures(id).stream().filter(figure -> inCase.contains(figure.condition())).map(Figure::place)
                .filter(place -> !place.isEmpty()).distinct().toList();
        return places.isEmpty() ? "" : "; it is known at " + String.join(", ", places.subList(0, Math.min(5, places.size())))
                + (places.size() > 5 ? " …" : "");
    }

    private static Verdict notJudged(Requirement requirement, String condition, String reason) {
        return new Verdict(requirement, condition, Severity.NOT_JUDGED, Optional.empty(), 0, reason);
    }

    /**
     * A limit read again now that its kind is known, so that "35 dB" is no flow.
     *
     * @return the limit in SI units
     * @throws UnitException where it does not fit the figure
     */
    public static double limit(Quantity limit, FigureKind kind) {
        return limit.written() instanceof Value.Text text ? Units.parse(text.text(), kind.quantity()) : limit.si();
    }

    private String suggestion(String id) {
        return Spelling.nearest(id, known.keySet()).map(other -> " (did you mean " + other + "?)").orElse("");
    }

    /** A figure against the limits. */
    private record Judged(Figure figure, Severity severity, double margin) {

        static Judged of(Figure figure, Optional<Double> least, Optional<Double> most) {
            double margin = margin(figure.value(), figure.value(), least, most);
            double edge = margin(edge(figure.lower(), figure), edge(figure.upper(), figure), least, most);
            return new Judged(figure, margin < 0 ? Severity.NOT_MET : edge < 0 ? Severity.CAUTION : Severity.MET, margin);
        }

        private static double edge(OptionalDouble bound, Figure figure) {
            return bound.orElse(figure.value());
        }

        private static double margin(double low, double high, Optional<Double> least, Optional<Double> most) {
            return Math.min(least.map(limit -> low - limit).orElse(Double.POSITIVE_INFINITY),
                    most.map(limit -> limit - high).orElse(Double.POSITIVE_INFINITY));
        }
    }
}
