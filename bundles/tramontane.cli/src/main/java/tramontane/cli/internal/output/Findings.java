package tramontane.cli.internal.output;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tramontane.analysis.Finding;
import tramontane.analysis.Severity;
import tramontane.analysis.Verdict;
import tramontane.model.Requirement;

/** Findings from worst to least, what holds in several conditions said once. */
final class Findings {

    private static final int MOST_CONDITIONS = 5;

    private final Results results;
    private final Map<Finding, Set<String>> conditions = new LinkedHashMap<>();

    private Findings(Results results) {
        this.results = results;
    }

    /**
     * The lines, the heading first; none where nothing was found.
     *
     * @param results what the engine gave
     * @param width   columns that a line may have
     */
    static List<String> lines(Results results, int width) {
        Findings findings = new Findings(results);
        results.evaluation().findings().forEach(findings::add);
        results.evaluation().verdicts().stream()
                .filter(verdict -> !verdict.reason().isEmpty() && !said(results.evaluation().findings(), verdict))
                .forEach(findings::add);
        return findings.lines(width);
    }

    /** Whether the engine has said so in the same words. */
    private static boolean said(List<Finding> findings, Verdict verdict) {
        return findings.stream().anyMatch(finding -> finding.severity() == verdict.severity()
                && finding.message().equals(verdict.reason()));
    }

    private void add(Finding finding) {
        // that a requirement is met stands in the table above
        if (finding.severity() != Severity.MET) {
            conditions.computeIfAbsent(finding.in(""), same -> new LinkedHashSet<>()).add(finding.condition());
        }
    }

    /** A verdict other than met is a finding too. */
    private void add(Verdict verdict) {
        String place = verdict.requirement().place();
        add(new Finding(verdict.severity(), verdict.reason(), place.equals(Requirement.WORST) ? "" : place,
                verdict.condition(), "", ""));
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
                        lines.addAll(Wrapping.hanging(indent, finding.remedy()
                                + (finding.source().isEmpty() ? "" : " [" + finding.source() + "]"), width));
                    } else if (!finding.source().isEmpty()) {
                        lines.addAll(Wrapping.hanging(indent, "[" + finding.source() + "]", width));
                    }
                });
        return lines;
    }

    private static String sentence(Finding finding) {
        return finding.place().isEmpty() || finding.message().startsWith(finding.place()) ? finding.message()
                : finding.place() + ": " + finding.message();
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
