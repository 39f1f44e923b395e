package tramontane.cli.internal.output;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tramontane.analysis.Amount;
import tramontane.analysis.Figure;
import tramontane.analysis.Finding;
import tramontane.analysis.Sentence;
import tramontane.analysis.Severity;
import tramontane.cli.terminal.FindingLines;
import tramontane.physics.units.UnitSystem;

/** Findings from worst to least, what holds in several conditions said once. */
final class Findings {

    private static final int MOST_CONDITIONS = 5;

    private final Results results;
    private final UnitSystem units;
    private final Map<Words, Group> groups = new LinkedHashMap<>();

    /** A finding without its amounts. */
    private record Words(Severity severity, String place, List<Object> message, List<Object> remedy, String source) {

        static Words of(Finding finding) {
            return new Words(finding.severity(), finding.place(), texts(finding.message()), texts(finding.remedy()),
                    finding.source());
        }

        private static List<Object> texts(Sentence sentence) {
            return sentence.parts().stream().map(part -> part instanceof Amount ? "" : part).toList();
        }
    }

    /** Findings of the same words: the first of them, where it holds, and where others hold that differ in their amounts. */
    private record Group(Finding first, Set<String> holds, Set<String> others) {
    }

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
            Group group = groups.computeIfAbsent(Words.of(finding), words ->
                    new Group(finding.in(""), new LinkedHashSet<>(), new LinkedHashSet<>()));
            // as it is read, so that rounding does not make two of one
            boolean same = FindingLines.sentence(group.first(), units).equals(FindingLines.sentence(finding, units))
                    && group.first().remedy().in(units).equals(finding.remedy().in(units));
            (same ? group.holds() : group.others()).add(finding.condition());
        }
    }

    private List<String> lines(int width) {
        if (groups.isEmpty()) {
            return List.of();
        }
        List<String> lines = new ArrayList<>(List.of("Findings"));
        lines.addAll(FindingLines.of(groups.values().stream()
                .sorted(Comparator.comparing((Group group) -> group.first().severity()).reversed()).map(this::placed).toList(), units, width));
        return lines;
    }

    /** What was found, with where it holds at the end of the sentence. */
    private Finding placed(Group group) {
        Finding first = group.first();
        return new Finding(first.severity(), Sentence.of(FindingLines.sentence(first, units), where(group)), "", "", first.remedy(), first.source());
    }

    private String where(Group group) {
        String others = names(group.others());
        String holds = group.holds().contains("") || others.isEmpty() && onlyOneCase() ? "" : names(group.holds());
        return holds.isEmpty() ? "" : " (in " + holds + (others.isEmpty() ? "" : "; with other numbers in " + others) + ")";
    }

    /** A name in a list: in quotes where it holds a comma of its own. */
    private static String plain(String name) {
        return name.contains(",") ? '"' + name + '"' : name;
    }

    private boolean onlyOneCase() {
        Map<String, List<String>> byCondition = results.casesByCondition();
        return byCondition.size() < 2 && byCondition.values().stream().allMatch(ids -> ids.size() < 2);
    }

    /** Names of conditions, all cases of one taken together. */
    private String names(Set<String> holds) {
        Map<String, List<String>> byCondition = results.casesByCondition();
        if (holds.isEmpty()) {
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
            return whole == 1 ? plain(names.getFirst()) : "all conditions";
        }
        int more = names.size() - MOST_CONDITIONS;
        String list = (more > 1 ? names.subList(0, MOST_CONDITIONS) : names).stream().map(Findings::plain).collect(java.util.stream.Collectors.joining(", "));
        return list + (more > 1 ? " and " + more + " more" : "");
    }
}
