package tramontane.desktop.internal.judging;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Judgement;
import tramontane.analysis.Severity;
import tramontane.analysis.Verdict;
import tramontane.desktop.FigureKey;
import tramontane.desktop.FigureText;
import tramontane.desktop.Results.Known;
import tramontane.desktop.Scene;
import tramontane.desktop.Sheet;
import tramontane.model.Condition;
import tramontane.model.Problem;
import tramontane.model.Requirement;
import tramontane.model.edit.Subject;
import tramontane.physics.units.UnitSystem;

/** Lays verdicts out by requirement and condition, in the order of the design whatever has been computed. */
final class MatrixPresenter {

    static final String REQUIREMENT = "requirement";
    static final String LIMIT = "limit";
    static final String ALL = "all";

    private static final String CONDITION = "condition ";
    /** The condition of figures of the design as a whole. */
    private static final String WHOLE = "";
    private static final int MOST_REMEDIES = 3;

    private final Scene scene;
    private final Map<String, FigureKind> known = new HashMap<>();
    private final Places places;
    private final List<String> conditions;
    private final List<Requirement> requirements;
    private final Map<List<Object>, Known<Verdict>> verdicts = new HashMap<>();
    private final Map<List<Object>, Known<Verdict>> alike = new HashMap<>();
    private final Map<Matrix.Place, Supplier<Matrix.Reason>> reasons = new HashMap<>();
    private final List<Finding> remedies;
    private final Set<String> placed = new LinkedHashSet<>();

    private MatrixPresenter(Scene scene, List<FigureKind> kinds) {
        this.scene = scene;
        kinds.forEach(kind -> known.putIfAbsent(kind.id(), kind));
        places = Places.of(scene.document().design());
        requirements = Judgement.requirements(scene.document().design(), kinds);
        boolean whole = false;
        for (Known<Verdict> each : scene.results().verdicts()) {
            Verdict verdict = each.value();
            verdicts.putIfAbsent(List.of(verdict.requirement(), verdict.condition()), each);
            alike.putIfAbsent(List.of(verdict.requirement().figure(), verdict.requirement().place(), verdict.condition()),
                    new Known<>(verdict, true));
            whole |= verdict.condition().equals(WHOLE) && requirements.contains(verdict.requirement());
            verdict.figure().filter(figure -> !figure.place().isEmpty()).ifPresent(figure -> placed.add(figure.kind().id()));
        }
        List<String> all = new ArrayList<>(scene.document().design().workingConditions().stream().map(Condition::id).distinct().toList());
        if (whole) {
            all.addFirst(WHOLE);
        }
        conditions = List.copyOf(all);
        remedies = scene.results().findings().stream().map(Known::value)
                .filter(finding -> !finding.remedy().isEmpty() && finding.severity().compareTo(Severity.CAUTION) >= 0).toList();
    }

    /**
     * The matrix of a scene.
     *
     * @param kinds the figures that anything loaded can give
     */
    static Matrix of(Scene scene, List<FigureKind> kinds) {
        return new MatrixPresenter(scene, kinds).matrix();
    }

    private Matrix matrix() {
        if (requirements.isEmpty()) {
            return new Matrix(Sheet.EMPTY, Map.of(), Map.of(), "Nothing is required yet. Add a requirement to the design, or a limit to a heat "
                    + "source, and it is judged here in every condition.");
        }
        List<Sheet.Column> columns = new ArrayList<>(List.of(Sheet.Column.words(REQUIREMENT), Sheet.Column.words(LIMIT)));
        Map<String, String> byColumn = new LinkedHashMap<>();
        String front = scene.condition();
        for (String condition : conditions) {
            String key = CONDITION + condition;
            byColumn.put(key, condition);
            columns.add(new Sheet.Column(key, condition.equals(WHOLE) ? "whole design" : condition, false, condition.equals(front),
                    condition.equals(WHOLE) ? "" : condition.equals(front) ? "In front: " + scene.front() : "Click to bring it to the front"));
        }
        List<Sheet.Row> rows = new ArrayList<>();
        Map<List<Object>, Integer> seen = new HashMap<>();
        for (Requirement requirement : requirements) {
            List<Object> about = List.of(requirement.figure(), requirement.place(), requirement.conditions());
            rows.add(row(List.of(about, seen.merge(about, 1, Integer::sum)), requirement));
        }
        if (rows.size() > 1) {
            rows.addFirst(all());
        }
        return new Matrix(new Sheet(columns, rows), byColumn, Map.copyOf(reasons), "");
    }

    private Sheet.Row row(Object key, Requirement requirement) {
        Optional<FigureKind> kind = Optional.ofNullable(known.get(requirement.figure()));
        String limits = Limits.words(requirement, kind, scene.units());
        String name = name(requirement);
        List<Sheet.Cell> cells = new ArrayList<>(List.of(Sheet.Cell.of(name), Sheet.Cell.of(Limits.brief(requirement, kind, scene.units()))));
        Optional<Subject> subject = places.subject(requirement.place());
        for (String column : List.of(REQUIREMENT, LIMIT)) {
            reasons.put(new Matrix.Place(key, column), () -> new Matrix.Reason(name, Optional.empty(), List.of(capital(limits) + " is required"
                    + (requirement.conditions().isEmpty() ? " in all conditions." : " in " + String.join(", ", requirement.conditions()) + "."),
                    kind.map(FigureKind::help).orElse("Nothing loaded gives a figure " + requirement.figure() + ".")),
                    Optional.empty(), subject, Optional.empty(), ""));
        }
        for (String condition : conditions) {
            cells.add(cell(new Matrix.Place(key, CONDITION + condition), name, limits, requirement, condition));
        }
        return new Sheet.Row(key, cells);
    }

    private Optional<Known<Verdict>> verdict(Requirement requirement, String condition) {
        return Optional.ofNullable(verdicts.get(List.of(requirement, condition)))
                // a limit that was changed a moment ago
                .or(() -> applies(requirement, condition)
                        ? Optional.ofNullable(alike.get(List.of(requirement.figure(), requirement.place(), condition))) : Optional.empty());
    }

    private static boolean applies(Requirement requirement, String condition) {
        return condition.equals(WHOLE) || requirement.appliesIn(condition);
    }

    private Sheet.Cell cell(Matrix.Place at, String name, String limits, Requirement requirement, String condition) {
        Optional<Known<Verdict>> found = verdict(requirement, condition);
        String where = condition.equals(WHOLE) ? "" : " in " + condition;
        if (found.isPresent()) {
            Verdict verdict = found.get().value();
            reasons.put(at, () -> reason(name, limits, where, verdict, found.get().stale()));
            Sheet.Cell cell = Sheet.Cell.of(verdict.severity().word() + verdict.figure().filter(figure -> verdict.severity() != Severity.NOT_JUDGED)
                    .map(figure -> "  " + Limits.value(verdict, figure, scene.units())).orElse("")).mark(verdict.severity()).stale(found.get().stale());
            return verdict.figure().map(figure -> cell.figure(FigureKey.of(figure))).orElse(cell);
        }
        boolean elsewhere = !applies(requirement, condition) || condition.equals(WHOLE) || verdict(requirement, WHOLE).isPresent();
        if (elsewhere) {
            reasons.put(at, () -> new Matrix.Reason(name + where, Optional.empty(), List.of(!applies(requirement, condition)
                    ? "Not required in this condition; it is in " + String.join(", ", requirement.conditions()) + "."
                    : condition.equals(WHOLE) ? "This figure is one of single conditions." : "This figure is one of the design as a whole."),
                    Optional.empty(), places.subject(requirement.place()), front(condition), ""));
            return Sheet.Cell.of("—");
        }
        boolean mistakes = mistakes();
        boolean coming = coming();
        reasons.put(at, () -> new Matrix.Reason(name + where, coming ? Optional.empty() : Optional.of(Severity.NOT_JUDGED),
                List.of(coming ? "Being computed." : mistakes ? "Not judged: the design has mistakes; the findings list them."
                        : "Not judged: it was not computed."), Optional.empty(), places.subject(requirement.place()), front(condition), ""));
        return coming ? Sheet.Cell.of("…").stale(true) : Sheet.Cell.of(Severity.NOT_JUDGED.word()).mark(Severity.NOT_JUDGED);
    }

    private boolean mistakes() {
        return scene.document().problems().stream().anyMatch(Problem::isError);
    }

    /** Whether what is not known yet is going to be. */
    private boolean coming() {
        return scene.results().running() || scene.results().now().isEmpty() && !mistakes();
    }

    private static Optional<String> front(String condition) {
        return condition.equals(WHOLE) ? Optional.empty() : Optional.of(condition);
    }

    private Matrix.Reason reason(String name, String limits, String where, Verdict verdict, boolean stale) {
        UnitSystem units = scene.units();
        List<String> lines = new ArrayList<>();
        Optional<Figure> figure = verdict.figure();
        if (verdict.severity() == Severity.NOT_JUDGED || figure.isEmpty()) {
            lines.add("Not judged: " + sentence(verdict.reason()));
        } else {
            Figure decided = figure.get();
            lines.add(Limits.value(verdict, decided, units) + " where " + limits + " is required: " + Limits.margin(verdict, decided, units) + ".");
            Limits.bounds(decided, units).ifPresent(bounds -> lines.add("It may be " + bounds + "."));
            if (verdict.severity() == Severity.CAUTION || verdict.reason().contains("worst of")) {
                lines.add(sentence("it " + verdict.reason()));
            }
        }
        lines.addAll(todo(verdict));
        if (stale) {
            lines.add("This belongs to the design as it was before the last change.");
        }
        String place = figure.map(Figure::place).filter(each -> !each.isEmpty())
                .orElse(verdict.requirement().place().equals(Requirement.WORST) ? "" : verdict.requirement().place());
        return new Matrix.Reason(label(verdict.requirement()) + (place.isEmpty() ? "" : " at " + place) + where,
                Optional.of(verdict.severity()), lines, figure.map(FigureKey::of), places.subject(place),
                figure.map(Figure::condition).filter(each -> !each.isEmpty()).or(() -> front(verdict.condition())),
                figure.map(each -> FigureText.full(each, units)).orElse(""));
    }

    /** What findings at the same place and case say to do, where something is to be done. */
    private List<String> todo(Verdict verdict) {
        if (verdict.severity() == Severity.MET) {
            return List.of();
        }
        String place = verdict.figure().map(Figure::place).orElse(verdict.requirement().place());
        String caseId = verdict.figure().map(Figure::condition).orElse(verdict.condition());
        return remedies.stream().filter(finding -> finding.condition().isEmpty() || finding.condition().equals(caseId)
                        || finding.condition().equals(verdict.condition()))
                .filter(finding -> finding.place().isEmpty() || finding.place().equals(place))
                // what is said of the very place first
                .sorted(Comparator.comparing((Finding finding) -> finding.place().isEmpty()).thenComparing(Comparator.comparing(Finding::severity)
                        .reversed())).map(finding -> "To do: " + sentence(finding.remedy().in(scene.units()))).distinct().limit(MOST_REMEDIES).toList();
    }

    private Sheet.Row all() {
        List<Sheet.Cell> cells = new ArrayList<>(List.of(Sheet.Cell.of("all").bold(), Sheet.Cell.EMPTY));
        for (String column : List.of(REQUIREMENT, LIMIT)) {
            reasons.put(new Matrix.Place(ALL, column), () -> new Matrix.Reason("All requirements", Optional.empty(),
                    List.of("The worst of each condition."), Optional.empty(), Optional.empty(), Optional.empty(), ""));
        }
        for (String condition : conditions) {
            List<Known<Verdict>> here = requirements.stream().flatMap(requirement -> verdict(requirement, condition).stream()).toList();
            Matrix.Place at = new Matrix.Place(ALL, CONDITION + condition);
            String title = "All requirements" + (condition.equals(WHOLE) ? "" : " in " + condition);
            List<String> missing = condition.equals(WHOLE) ? List.of() : requirements.stream()
                    .filter(requirement -> requirement.appliesIn(condition) && verdict(requirement, condition).isEmpty()
                            && verdict(requirement, WHOLE).isEmpty()).map(this::name).toList();
            boolean unknown = !missing.isEmpty() && !coming();
            Optional<Severity> worst = Stream.concat(here.stream().map(each -> each.value().severity()),
                    Stream.of(Severity.NOT_JUDGED).filter(none -> unknown)).max(Comparator.naturalOrder());
            if (worst.isEmpty()) {
                cells.add(missing.isEmpty() ? Sheet.Cell.of("—") : Sheet.Cell.of("…").stale(true));
                reasons.put(at, () -> new Matrix.Reason(title, Optional.empty(), List.of(missing.isEmpty() ? "Nothing is judged here."
                        : "Being computed."), Optional.empty(), Optional.empty(), front(condition), ""));
                continue;
            }
            List<String> bad = new ArrayList<>(here.stream().map(Known::value).filter(verdict -> verdict.severity() == worst.get())
                    .map(this::brief).toList());
            if (worst.get() == Severity.NOT_JUDGED) {
                bad.addAll(missing);
            }
            int all = here.size() + missing.size();
            boolean stale = here.stream().anyMatch(Known::stale) || !missing.isEmpty() && !unknown;
            cells.add(Sheet.Cell.of(worst.get().word() + (worst.get() == Severity.MET ? "" : "  " + bad.size() + " of " + all)).bold()
                    .mark(worst.get()).stale(stale));
            reasons.put(at, () -> new Matrix.Reason(title, worst, worst.get() == Severity.MET ? List.of(missing.isEmpty() ? "All " + all + " hold."
                    : here.size() + " of " + all + " hold; the others are being computed.")
                    : List.of(capital(worst.get().word()) + ": " + String.join("; ", bad) + "."),
                    Optional.empty(), Optional.empty(), front(condition), ""));
        }
        return new Sheet.Row(ALL, cells);
    }

    private String brief(Verdict verdict) {
        return name(verdict.requirement()) + verdict.figure().map(figure -> " " + Limits.value(verdict, figure, scene.units())).orElse("");
    }

    private String name(Requirement requirement) {
        String place = requirement.place();
        return label(requirement) + (!place.equals(Requirement.WORST) ? ", " + place : placed.contains(requirement.figure()) ? ", worst place" : "");
    }

    /** The figure's label, with its id where another figure that is required has the same. */
    private String label(Requirement requirement) {
        String id = requirement.figure();
        String label = Optional.ofNullable(known.get(id)).map(FigureKind::label).orElse(id);
        boolean ambiguous = requirements.stream().map(Requirement::figure).anyMatch(other -> !other.equals(id)
                && Optional.ofNullable(known.get(other)).map(FigureKind::label).orElse(other).equals(label));
        return ambiguous ? label + " (" + id + ")" : label;
    }

    static String sentence(String words) {
        return words.isEmpty() ? "" : capital(words) + (words.endsWith(".") ? "" : ".");
    }

    private static String capital(String words) {
        return words.isEmpty() ? words : Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
