package tramontane.desktop.internal.judging;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tramontane.analysis.Amount;
import tramontane.analysis.Engine;
import tramontane.analysis.Finding;
import tramontane.analysis.Sentence;
import tramontane.analysis.Severity;
import tramontane.desktop.Results.Known;
import tramontane.desktop.Scene;
import tramontane.desktop.Sheet;
import tramontane.model.Problem;
import tramontane.model.edit.Subject;

/**
 * Lists mistakes in the design and findings about it, what is said in several conditions once. Requirements that are not met are left to
 * the matrix.
 */
final class FindingsPresenter {

    private static final List<Sheet.Column> COLUMNS = List.of(Sheet.Column.words("severity"), Sheet.Column.words("what"),
            Sheet.Column.words("where"), Sheet.Column.words("conditions"), Sheet.Column.words("what to do"));

    private final Scene scene;
    private final Places places;

    /** A finding without its amounts. */
    private record Words(Severity severity, String place, List<Object> message, List<Object> remedy, String source) {

        static Words of(Finding finding) {
            return new Words(finding.severity(), finding.place(), texts(finding.message()), texts(finding.remedy()), finding.source());
        }

        private static List<Object> texts(Sentence sentence) {
            return sentence.parts().stream().map(part -> part instanceof Amount ? "" : part).toList();
        }
    }

    /** A row before it is laid out. */
    private record Line(Object key, Severity severity, boolean mistake, int rank, String what, String where, String conditions, String remedy,
            boolean stale, Set<String> cases, Findings.Target target) {
    }

    private FindingsPresenter(Scene scene) {
        this.scene = scene;
        places = Places.of(scene.document().design());
    }

    /** The findings of a scene that pass a filter. */
    static Findings of(Scene scene, Findings.Filter filter) {
        return new FindingsPresenter(scene).findings(filter);
    }

    private Findings findings(Findings.Filter filter) {
        List<Line> lines = new ArrayList<>(mistakes());
        lines.addAll(found());
        lines.sort(Comparator.comparing(Line::severity).reversed().thenComparing(line -> !line.mistake()).thenComparing(Line::rank));
        Map<Findings.Level, Integer> counts = new EnumMap<>(Findings.Level.class);
        Map<Object, Findings.Target> targets = new HashMap<>();
        List<Sheet.Row> rows = new ArrayList<>();
        for (Line line : lines) {
            Findings.Level level = Findings.Level.of(line.severity());
            counts.merge(level, 1, Integer::sum);
            if (!filter.hidden().contains(level) && (!filter.frontOnly() || line.cases().isEmpty() || line.cases().contains(scene.front())
                    || line.cases().contains(scene.condition())) && says(line, filter.text())) {
                rows.add(new Sheet.Row(line.key(), List.of(
                        Sheet.Cell.of(line.mistake() && line.severity() == Severity.ERROR ? "mistake" : line.severity().word())
                                .mark(line.severity()).stale(line.stale()),
                        Sheet.Cell.of(line.what()).stale(line.stale()), Sheet.Cell.of(line.where()).stale(line.stale()),
                        Sheet.Cell.of(line.conditions()).stale(line.stale()), Sheet.Cell.of(line.remedy()).stale(line.stale()))));
                targets.put(line.key(), line.target());
            }
        }
        return new Findings(new Sheet(COLUMNS, rows), targets, counts, rows.isEmpty() ? empty(lines.size()) : "");
    }

    private String empty(int all) {
        return all > 0 ? "Nothing of " + all + (all == 1 ? " finding" : " findings") + " passes the filter."
                : scene.results().running() ? "Computing…"
                : scene.results().now().isPresent() ? "Nothing to report."
                : "Nothing was computed yet. What analyses find, and mistakes in the design, are listed here.";
    }

    private static boolean says(Line line, String text) {
        String all = (line.what() + " " + line.where() + " " + line.conditions() + " " + line.remedy()).toLowerCase(Locale.ROOT);
        for (String word : text.toLowerCase(Locale.ROOT).strip().split("\\s+")) {
            if (!all.contains(word)) {
                return false;
            }
        }
        return true;
    }

    private List<Line> mistakes() {
        List<Line> lines = new ArrayList<>();
        Map<Problem, Integer> seen = new HashMap<>();
        for (Problem problem : scene.document().problems()) {
            Optional<Subject> subject = Subject.at(scene.document().design(), problem.place());
            String where = subject.map(each -> where(each, problem.place())).orElse(problem.place());
            String what = MatrixPresenter.sentence(problem.isMissing() ? field(problem.place()) + " " + problem.message() : problem.message());
            lines.add(new Line(List.of(problem, seen.merge(problem, 1, Integer::sum)), problem.isError() ? Severity.ERROR : Severity.CAUTION, true,
                    lines.size(), what, where, "", "", false, Set.of(),
                    new Findings.Target(subject, Optional.empty(), what + "\n" + problem.place())));
        }
        return lines;
    }

    /** The thing and the member in it. */
    private String where(Subject subject, String place) {
        String title = subject.title(scene.document().design());
        String own = subject.place(scene.document().design());
        String member = place.startsWith(own) ? place.substring(own.length()).replaceFirst("^\\.", "") : place;
        return member.isEmpty() ? title : title + ", " + member;
    }

    private static String field(String place) {
        return place.substring(place.lastIndexOf('.') + 1);
    }

    private List<Line> found() {
        Map<Words, List<Known<Finding>>> groups = new LinkedHashMap<>();
        for (Known<Finding> each : scene.results().findings()) {
            if (each.value().severity() != Severity.MET) {
                groups.computeIfAbsent(Words.of(each.value()), words -> new ArrayList<>()).add(each);
            }
        }
        return groups.entrySet().stream().map(group -> line(group.getKey(), group.getValue())).toList();
    }

    private Line line(Words words, List<Known<Finding>> group) {
        // what is said of the case in front stands for the others
        Known<Finding> shown = group.stream().filter(each -> each.value().condition().equals(scene.front()))
                .findFirst().orElse(group.getFirst());
        Finding finding = shown.value();
        String what = MatrixPresenter.sentence(finding.message().in(scene.units()));
        String remedy = MatrixPresenter.sentence(finding.remedy().in(scene.units()));
        Set<String> cases = new LinkedHashSet<>();
        group.forEach(each -> cases.add(each.value().condition()));
        boolean same = group.stream().allMatch(each -> each.value().message().in(scene.units()).equals(finding.message().in(scene.units()))
                && each.value().remedy().in(scene.units()).equals(finding.remedy().in(scene.units())));
        String conditions = cases.contains("") ? "" : names(cases) + (same ? "" : "; numbers of " + finding.condition());
        if (cases.contains("")) {
            cases.clear();
        }
        String source = finding.source().isEmpty() ? "" : "\n" + finding.source();
        return new Line(words, words.severity(), false, places.rank(words.place()), what, words.place(), conditions, remedy,
                shown.stale(), cases, new Findings.Target(places.subject(words.place()),
                        Optional.of(finding.condition()).filter(each -> !each.isEmpty()),
                        what + (remedy.isEmpty() ? "" : "\n" + remedy) + (conditions.isEmpty() ? "" : "\n" + conditions) + source));
    }

    /** Names of conditions, all cases of one taken together. */
    private String names(Set<String> ids) {
        Map<String, Set<String>> byCondition = new LinkedHashMap<>();
        for (Engine.Case each : scene.results().cases()) {
            byCondition.computeIfAbsent(each.declared(), declared -> new LinkedHashSet<>()).add(each.concrete().id());
        }
        List<String> names = new ArrayList<>();
        Set<String> left = new LinkedHashSet<>(ids);
        boolean all = byCondition.size() > 1;
        for (Map.Entry<String, Set<String>> entry : byCondition.entrySet()) {
            boolean whole = ids.contains(entry.getKey()) || ids.containsAll(entry.getValue());
            all &= whole;
            if (whole) {
                names.add(entry.getKey());
            } else {
                entry.getValue().stream().filter(ids::contains).forEach(names::add);
            }
            left.removeAll(entry.getValue());
            left.remove(entry.getKey());
        }
        names.addAll(left);
        return all && left.isEmpty() ? "all conditions" : String.join(", ", names);
    }
}
