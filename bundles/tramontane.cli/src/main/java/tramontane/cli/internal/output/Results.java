package tramontane.cli.internal.output;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Verdict;

/**
 * What a run gave, with the words that the loaded analyses have for it.
 *
 * @param file       the design's file as the user named it
 * @param evaluation what the engine gave
 * @param analyses   the loaded analyses
 */
public record Results(String file, Evaluation evaluation, List<Engine.Loaded> analyses) {

    public Results {
        analyses = List.copyOf(analyses);
    }

    /**
     * The one case that stands for a condition in tables.
     *
     * @param declared the condition
     * @param id       the case
     * @param of       how many cases the condition stands for
     */
    record Shown(String declared, String id, int of) {

        /** The case without the condition's name in front. */
        String detail() {
            return Results.detail(declared, id);
        }
    }

    static String detail(String declared, String id) {
        String lead = declared + ": ";
        return id.startsWith(lead) ? id.substring(lead.length()) : id;
    }

    /** These results with cautions about the file among the findings. */
    public Results with(List<String> cautions) {
        List<Finding> findings = new ArrayList<>(evaluation.findings());
        cautions.forEach(sentence -> findings.add(Finding.caution("", sentence)));
        return new Results(file, new Evaluation(evaluation.design(), evaluation.cases(), evaluation.outcomes(), findings,
                evaluation.verdicts(), evaluation.cancelled()), analyses);
    }

    /** Whether a figure may be one of single places, as far as is known; one of the whole design has no worst place. */
    boolean hasPlaces(String figure) {
        List<String> places = evaluation.figures().stream().filter(each -> each.kind().id().equals(figure))
                .map(Figure::place).toList();
        return places.isEmpty() || places.stream().anyMatch(place -> !place.isEmpty());
    }

    /** The ids of the cases by condition, both in the order of the design. */
    public Map<String, List<String>> casesByCondition() {
        Map<String, List<String>> cases = new LinkedHashMap<>();
        for (Engine.Case each : evaluation.cases()) {
            cases.computeIfAbsent(each.declared(), declared -> new ArrayList<>()).add(each.concrete().id());
        }
        return cases;
    }

    /** The conditions that something was judged or computed in. */
    List<String> conditions() {
        Set<String> conditions = new LinkedHashSet<>(casesByCondition().keySet());
        evaluation.verdicts().forEach(verdict -> conditions.add(verdict.condition()));
        return List.copyOf(conditions);
    }

    /** One case for each condition: the one that decides the worst verdict, else the one with the least flow. */
    List<Shown> shown() {
        List<Shown> shown = new ArrayList<>();
        casesByCondition().forEach((declared, ids) -> shown.add(new Shown(declared, worst(declared, ids), ids.size())));
        return shown;
    }

    private String worst(String declared, List<String> ids) {
        if (ids.size() == 1) {
            return ids.getFirst();
        }
        Optional<String> deciding = evaluation.verdicts().stream().filter(verdict -> verdict.condition().equals(declared))
                .filter(verdict -> verdict.figure().filter(figure -> ids.contains(figure.condition())).isPresent())
                // of equals max would take the last
                .reduce((one, other) -> other.severity().compareTo(one.severity()) > 0 ? other : one)
                .flatMap(Verdict::figure).map(figure -> figure.condition());
        return deciding.orElseGet(() -> ids.stream().filter(id -> point(id).isPresent())
                .min(Comparator.comparingDouble(this::massFlow)).orElse(ids.getFirst()));
    }

    Optional<OperatingPoint> point(String condition) {
        return evaluation.data(OperatingPoint.class, condition);
    }

    private double massFlow(String condition) {
        return point(condition).stream().flatMap(point -> point.banks().stream())
                .mapToDouble(OperatingPoint.BankPoint::massFlow).sum();
    }

    /** The kind of a figure by its id, as computed or as some loaded analysis says. */
    Optional<FigureKind> kind(String id) {
        return evaluation.figures().stream().map(figure -> figure.kind()).filter(kind -> kind.id().equals(id)).findFirst()
                .or(() -> analyses.stream().flatMap(analysis -> analysis.figures().stream())
                        .filter(kind -> kind.id().equals(id)).findFirst());
    }

    /** What people call an analysis. */
    String label(String analysis) {
        return analyses.stream().filter(loaded -> loaded.id().equals(analysis)).map(Engine.Loaded::label).findFirst()
                .orElse(analysis);
    }
}
