package tramontane.desktop.internal.pages;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Severity;
import tramontane.analysis.Verdict;
import tramontane.desktop.Results;
import tramontane.desktop.Scene;
import tramontane.model.AirMover;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.ControlLaw;
import tramontane.model.Design;
import tramontane.model.HeatSource;
import tramontane.model.MissionPhase;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.model.Value;
import tramontane.model.edit.Subject;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/** What the design tree shows. */
public final class DesignTree {

    /** What is said of something. */
    private record Said(Severity severity, boolean stale, String why) {
        static Said worse(Said one, Said other) {
            return other.severity().compareTo(one.severity()) > 0 ? other : one;
        }
    }

    private final Design design;
    private final Known known;
    private final UnitSystem units;
    private final Map<Subject, Said> bySubject = new HashMap<>();
    private final Map<String, Said> byPlace = new HashMap<>();

    private DesignTree(Scene scene, Known known) {
        this.design = scene.document().design();
        this.known = known;
        this.units = scene.units();
        for (Problem problem : scene.document().problems()) {
            Severity severity = problem.isMissing() ? Severity.NOT_JUDGED : problem.isError() ? Severity.ERROR : Severity.CAUTION;
            Subject.at(design, problem.place()).ifPresent(subject -> say(bySubject, subject, new Said(severity, false, problem.message())));
        }
        String condition = scene.condition();
        for (Results.Known<Finding> finding : scene.results().findings()) {
            boolean here = finding.value().condition().isEmpty() || finding.value().condition().equals(scene.front());
            if (here && !finding.value().place().isEmpty() && finding.value().severity() != Severity.NOTE) {
                say(byPlace, finding.value().place(), new Said(finding.value().severity(), finding.stale(), finding.value().message().in(units)));
            }
        }
        for (Results.Known<Verdict> verdict : scene.results().verdicts()) {
            Said said = new Said(verdict.value().severity(), verdict.stale(), verdict.value().requirement().figure() + " " + verdict.value().reason());
            say(bySubject, Subject.condition(verdict.value().condition()), said);
            if (verdict.value().condition().isEmpty() || verdict.value().condition().equals(condition)) {
                int index = design.requirements().indexOf(verdict.value().requirement());
                if (index >= 0) {
                    say(bySubject, new Subject(Subject.Kind.REQUIREMENT, Integer.toString(index)), said);
                }
                verdict.value().figure().filter(figure -> !figure.place().isEmpty()).ifPresent(figure -> say(byPlace, figure.place(), said));
            }
        }
    }

    private static <K> void say(Map<K, Said> said, K of, Said what) {
        said.merge(of, what, Said::worse);
    }

    /**
     * The tree of a scene.
     *
     * @param scene  what is shown
     * @param known  what is loaded
     * @param search words that all must be found in a line's name, kind or values, or those of a line beneath it; blank for all
     */
    public static List<TreeNode> of(Scene scene, Known known, String search) {
        List<TreeNode> all = new DesignTree(scene, known).roots();
        String[] words = search.strip().toLowerCase(Locale.ROOT).split("\\s+");
        return search.isBlank() ? all : all.stream().flatMap(node -> found(node, words, scene.document().design()).stream()).toList();
    }

    private static Optional<TreeNode> found(TreeNode node, String[] words, Design design) {
        if (node.subject().filter(subject -> matches(node, subject, words, design)).isPresent()) {
            return Optional.of(node);
        }
        List<TreeNode> children = node.children().stream().flatMap(child -> found(child, words, design).stream()).toList();
        return children.isEmpty() ? Optional.empty() : Optional.of(node.with(children));
    }

    private static boolean matches(TreeNode node, Subject subject, String[] words, Design design) {
        StringBuilder text = new StringBuilder(node.label()).append(' ').append(node.detail()).append(' ').append(subject.kind().noun());
        subject.tree(design).ifPresent(tree -> flatten(tree, text));
        String all = text.toString().toLowerCase(Locale.ROOT);
        return Stream.of(words).allMatch(all::contains);
    }

    private static void flatten(Value value, StringBuilder text) {
        switch (value) {
            case Value.Text(String words) -> text.append(' ').append(words);
            case Value.Num(String literal) -> text.append(' ').append(literal);
            case Value.Items(List<Value> items) -> items.forEach(item -> flatten(item, text));
            case Value.Tree tree -> tree.members().forEach((name, inner) -> flatten(inner, text));
            default -> {
                // nothing to find
            }
        }
    }

    private List<TreeNode> roots() {
        List<TreeNode> bays = new ArrayList<>(List.of(node("bays", Subject.OUTSIDE)));
        bays.addAll(nodes("bays", Subject.Kind.BAY));
        List<TreeNode> passages = nodes("passages", Subject.Kind.PASSAGE);
        List<TreeNode> banks = Subject.Kind.PASSAGE.subjects(design).stream()
                .filter(subject -> subject.noun(design).filter(noun -> noun instanceof Passage passage && passage.isBank()).isPresent())
                .map(subject -> node("banks", subject)).toList();
        List<TreeNode> conditions = design.conditions().isEmpty() ? List.of(new TreeNode("conditions/", Optional.empty(), Optional.empty(),
                Condition.NOMINAL.id(), "20 °C, sea level; none is stated", "condition", Optional.empty(), false, "", List.of()))
                : nodes("conditions", Subject.Kind.CONDITION);
        return List.of(node("design", Subject.DESIGN), node("equipment", Subject.EQUIPMENT),
                group("path", "Air path", "passage", Optional.empty(), List.of(
                        group("bays", "Bays", "bay", Optional.of(Subject.Kind.BAY), bays),
                        group("passages", "Passages", "passage", Optional.of(Subject.Kind.PASSAGE), passages))),
                group("sources", "Heat sources", "heat", Optional.of(Subject.Kind.HEAT_SOURCE), nodes("sources", Subject.Kind.HEAT_SOURCE)),
                group("banks", "Banks", "bank", Optional.of(Subject.Kind.PASSAGE), banks),
                group("movers", "Air movers", "mover", Optional.of(Subject.Kind.AIR_MOVER), nodes("movers", Subject.Kind.AIR_MOVER)),
                group("conditions", "Conditions", "condition", Optional.of(Subject.Kind.CONDITION), conditions),
                group("mission", "Mission profile", "mission", Optional.of(Subject.Kind.MISSION_PHASE), nodes("mission", Subject.Kind.MISSION_PHASE)),
                group("laws", "Control laws", "control", Optional.of(Subject.Kind.CONTROL_LAW), nodes("laws", Subject.Kind.CONTROL_LAW)),
                group("requirements", "Requirements", "requirement", Optional.of(Subject.Kind.REQUIREMENT),
                        nodes("requirements", Subject.Kind.REQUIREMENT)));
    }

    /** A heading, marked by the worst beneath it where that asks to be looked at. */
    private static TreeNode group(String key, String label, String icon, Optional<Subject.Kind> adds, List<TreeNode> children) {
        Optional<TreeNode> worst = children.stream().filter(child -> child.severity().filter(each -> each.compareTo(Severity.NOTE) > 0).isPresent())
                .max(Comparator.comparing(child -> child.severity().orElseThrow()));
        boolean own = adds.isPresent();
        long count = children.stream().filter(child -> child.subject().filter(subject -> !subject.isOutside()).isPresent()).count();
        return new TreeNode("group/" + key, Optional.empty(), adds, label, own ? Long.toString(count) : "", icon,
                worst.flatMap(TreeNode::severity), worst.map(TreeNode::stale).orElse(false),
                worst.map(child -> child.label() + ": " + child.why()).orElse(""), children);
    }

    private List<TreeNode> nodes(String group, Subject.Kind kind) {
        return kind.subjects(design).stream().map(subject -> node(group, subject)).toList();
    }

    private TreeNode node(String group, Subject subject) {
        boolean placed = subject.kind().isNamed() && subject.kind() != Subject.Kind.CONDITION && subject.kind() != Subject.Kind.AIR_MOVER;
        Optional<Said> said = Stream.of(Optional.ofNullable(bySubject.get(subject)),
                placed ? Optional.ofNullable(byPlace.get(subject.id())) : Optional.<Said>empty()).flatMap(Optional::stream).reduce(Said::worse);
        String label = subject.isOutside() ? Bay.OUTSIDE : subject.kind() == Subject.Kind.DESIGN && design.name().isBlank() ? "Design"
                : subject.kind() == Subject.Kind.EQUIPMENT && design.equipment().name().isBlank() ? "Equipment"
                : subject.kind() == Subject.Kind.REQUIREMENT ? requirement(subject) : subject.title(design);
        return new TreeNode(group + "/" + subject.id() + "/" + subject.nth(), Optional.of(subject), Optional.empty(), label, detail(subject),
                icon(subject), said.map(Said::severity), said.map(Said::stale).orElse(false), said.map(Said::why).orElse(""), List.of());
    }

    private String requirement(Subject subject) {
        Requirement requirement = (Requirement) subject.noun(design).orElseThrow();
        String what = known.figures().stream().filter(kind -> kind.id().equals(requirement.figure())).map(FigureKind::label).findFirst()
                .orElse(requirement.figure().isBlank() ? "requirement" : requirement.figure());
        return what + (requirement.place().equals(Requirement.WORST) ? "" : " at " + requirement.place());
    }

    private String icon(Subject subject) {
        return switch (subject.kind()) {
            case DESIGN -> "design";
            case EQUIPMENT -> "equipment";
            case AIR_MOVER -> "mover";
            case BAY -> subject.isOutside() ? "outside" : "bay";
            case PASSAGE -> subject.noun(design).filter(noun -> noun instanceof Passage passage && passage.isBank()).isPresent() ? "bank" : "passage";
            case HEAT_SOURCE -> "heat";
            case CONDITION -> "condition";
            case MISSION_PHASE -> "mission";
            case CONTROL_LAW -> "control";
            case REQUIREMENT -> "requirement";
        };
    }

    private String detail(Subject subject) {
        return switch (subject.noun(design).orElse(null)) {
            case Passage passage when passage.isBank() -> passage.parameters().text("mover").orElse("no air mover yet");
            case Passage passage -> passage.kind().isBlank() ? "no kind yet" : passage.kind().equals(passage.id()) ? "" : passage.kind();
            case HeatSource source -> shown(source.power(), QuantityKind.POWER);
            case Condition condition -> shown(condition.outsideTemperature().orElse(Quantity.of(condition.temperature())), QuantityKind.TEMPERATURE);
            case MissionPhase phase -> shown(phase.timePerYear(), QuantityKind.TIME);
            case ControlLaw law -> law.sensor();
            case AirMover mover -> mover.type().orElse("");
            case Requirement requirement -> limits(requirement);
            case null, default -> "";
        };
    }

    private String shown(Quantity quantity, QuantityKind kind) {
        return Shown.of(quantity, kind, units).together();
    }

    private String limits(Requirement requirement) {
        Optional<QuantityKind> kind = known.figures().stream().filter(each -> each.id().equals(requirement.figure()))
                .map(FigureKind::quantity).findFirst();
        return Stream.of(requirement.atLeast().map(limit -> "≥ " + limit(limit, kind)), requirement.atMost().map(limit -> "≤ " + limit(limit, kind)))
                .flatMap(Optional::stream).reduce((one, other) -> one + ", " + other).orElse("no limit yet");
    }

    private String limit(Quantity limit, Optional<QuantityKind> kind) {
        if (limit.written() instanceof Value.Text(String text)) {
            try {
                return kind.map(known -> Shown.of(new Quantity(Units.parse(text, known), limit.written()), known, units).together()).orElse(text);
            } catch (UnitException e) {
                return text;
            }
        }
        return kind.map(known -> shown(limit, known)).orElseGet(() -> ((Value.Num) limit.written()).literal());
    }

    /**
     * Something that can be added.
     *
     * @param group what it is one of, sentence case; its own label where it is the only one
     * @param label what people read
     * @param kind  what kind of thing it makes
     * @param tree  what is said of it to begin with
     */
    public record Addition(String group, String label, Subject.Kind kind, Value.Tree tree) {
    }

    /**
     * All that can be added, what fits what is selected first within its group.
     *
     * @param design   the design
     * @param known    what is loaded
     * @param selected what is selected; a new passage begins where it ends
     */
    public static List<Addition> additions(Design design, Known known, Optional<Subject> selected) {
        List<Addition> all = new ArrayList<>();
        all.add(new Addition("Bay", "Bay", Subject.Kind.BAY, Value.Tree.EMPTY));
        String from = selected.flatMap(subject -> subject.isOutside() ? Optional.of(Bay.OUTSIDE) : subject.noun(design).flatMap(noun -> switch (noun) {
            case Bay bay -> Optional.of(bay.id());
            case Passage passage -> Optional.of(passage.to());
            default -> Optional.<String>empty();
        })).filter(bay -> !bay.isEmpty()).orElse(Bay.OUTSIDE);
        known.forms().passages().keySet().forEach(kind -> all.add(new Addition("Passage", kind, Subject.Kind.PASSAGE,
                Value.Tree.EMPTY.with("kind", new Value.Text(kind)).with("from", new Value.Text(from)))));
        for (Subject.Kind kind : List.of(Subject.Kind.HEAT_SOURCE, Subject.Kind.AIR_MOVER, Subject.Kind.CONDITION, Subject.Kind.MISSION_PHASE,
                Subject.Kind.CONTROL_LAW, Subject.Kind.REQUIREMENT)) {
            String label = Character.toUpperCase(kind.noun().charAt(0)) + kind.noun().substring(1);
            all.add(new Addition(label, label, kind, Value.Tree.EMPTY));
        }
        return all;
    }

    /**
     * What can be done with what is selected.
     *
     * @param rename    whether it has a name to be changed
     * @param delete    whether it can be taken out
     * @param copy      whether it can be copied and duplicated
     * @param add       what kind of thing "add" makes here; empty for none
     */
    public record Possible(boolean rename, boolean delete, boolean copy, Optional<Subject.Kind> add) {

        /** What can be done with a line of the tree. */
        public static Possible with(TreeNode node) {
            Optional<Subject> subject = node.subject().filter(each -> !each.isOutside());
            boolean listed = subject.filter(each -> each.kind().isListed()).isPresent();
            boolean named = subject.filter(each -> each.kind().isNamed() || !each.kind().isListed()).isPresent();
            Optional<Subject.Kind> add = node.adds().or(() -> node.subject().map(Subject::kind).filter(Subject.Kind::isListed));
            return new Possible(named, listed, listed, add);
        }
    }
}
