package tramontane.cli.internal.output;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.Severity;
import tramontane.physics.units.UnitSystem;

/** Findings from worst to least, what holds in several conditions said once. */
final class Findings {

    private static final int MOST_CONDITIONS = 5;

    private final Results results;
    private final UnitSystem units;
    private final Map<Finding, Set<String>> conditions = new LinkedHashMap<>();

    private Findings(Results results, UnitSystem units) {
        this.results = results;
        this.units = units;
    }

    /**
     * The lines, the heading first; none where nothing was found.
     *
     * @param results what the engine gave
     * @param units   how quantities are shown
     * @param width   columns that a line may have
     */
    static List<String> lines(Results results, UnitSystem units, int width) {
        Findings findings = new Findings(results, units);
        results.evaluation().findings().forEach(findings::add);
        Requirements requirements = new Requirements(results, units);
        results.evaluation().verdicts().stream().filter(verdict -> verdict.severity() != Severity.MET).forEach(verdict ->
                findings.add(Finding.of(verdict.severity(), "", requirements.sentence(verdict))
                        .in(verdict.figure().map(Figure::condition).orElse(verdict.condition()))));
        return findings.lines(width);
    }

    private void add(Finding finding) {
        // that a requirement is met stands in the table above
        if (finding.severity() != Severity.MET) {
            conditions.computeIfAbsent(finding.in(""), same -> new LinkedHashSet<>()).add(finding.condition());
        }
    }

    private List<String> lines(int width) {
        if (conditions.isEmpty()) {
            return List.of();
        }
        List<String> lines = new ArrayList<>(List.of("Findings"));
        int lead = conditions.keySet().stream().mapToInt(finding -> finding.severity().word().length()).max().orElse(0);
        conditions.entrySet().stream()
                .sorted(Comparator.comparing((Map.Entry<Finding, Set<String>> entry) -> entry.getKey().severity()).reversed())
                .forEach(entry -> {
                    Finding finding = entry.getKey();
                    String word = finding.severity().word();
                    String first = "  " + word + " ".repeat(lead - word.length()) + "  ";
                    lines.addAll(Wrapping.hanging(first, sentence(finding) + where(entry.getValue()), width));
                    String indent = " ".repeat(first.length() + 2);
                    if (!finding.remedy().isEmpty()) {
                        lines.addAll(Wrapping.hanging(indent, finding.remedy().in(units)
                                + (finding.source().isEmpty() ? "" : " [" + finding.source() + "]"), width));
                    } else if (!finding.source().isEmpty()) {
                        lines.addAll(Wrapping.hanging(indent, "[" + finding.source() + "]", width));
                    }
                });
        return lines;
    }

    private String sentence(Finding finding) {
        String message = finding.message().in(units);
        return finding.place().isEmpty() || message.contains(finding.place()) ? message : finding.place() + ": " + message;
    }

    /** In which conditions, all cases of one taken together. */
    private String where(Set<String> holds) {
        Map<String, List<String>> byCondition = results.casesByCondition();
        if (holds.contains("") || byCondition.size() < 2 && byCondition.values().stream().allMatch(ids -> ids.size() < 2)) {
            return "";
        }
        List<String> names = new ArrayList<>();
        int whole = 0;
        Set<String> known = new LinkedHashSet<>();
        for (Map.Entry<String, List<String>> entry : byCondition.entrySet()) {
            known.addAll(entry.getValue());
            known.add(entry.getKey());
            if (holds.contains(entry.getKey()) || holds.containsAll(entry.getValue())) {
                names.add(entry.getKey());
                whole++;
            } else {
                entry.getValue().stream().filter(holds::contains).forEach(names::add);
            }
        }
        holds.stream().filter(id -> !known.contains(id)).forEach(names::add);
        if (whole == byCondition.size() && names.size() == whole) {
            return whole == 1 ? "" : " (in all conditions)";
        }
        int more = names.size() - MOST_CONDITIONS;
        String list = String.join(", ", more > 1 ? names.subList(0, MOST_CONDITIONS) : names);
        return " (in " + list + (more > 1 ? " and " + more + " more" : "") + ")";
    }
}
