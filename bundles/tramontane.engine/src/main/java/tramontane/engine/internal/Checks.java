package tramontane.engine.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import tramontane.analysis.Cases;
import tramontane.analysis.Judgement;
import tramontane.analysis.LinkKind;
import tramontane.analysis.PassageKind;
import tramontane.analysis.SectionType;
import tramontane.analysis.SectionType.Owner;
import tramontane.analysis.Sections;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.Form;
import tramontane.model.FormReader;
import tramontane.model.HeatSource;
import tramontane.model.Link;
import tramontane.model.Noun;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Spelling;
import tramontane.model.Value;
import tramontane.model.Values;

/** Checks a design with everything that is loaded: the model, the passage kinds, the link kinds, the section types. */
final class Checks {

    /** So many kinds are named as examples; a sentence with more is not read. */
    private static final int NAMED_KINDS = 5;

    private final ModelChecks model;
    private final Design design;
    private final Consumer<String> doing;
    private final List<Problem> problems = new ArrayList<>();

    private Checks(ModelChecks model, Design design, Consumer<String> doing) {
        this.model = model;
        this.design = design;
        this.doing = doing;
    }

    /**
     * Checks a design.
     *
     * @param design     the design
     * @param loadout    what is loaded
     * @param model      the checks of the model itself
     * @param doing      receives what is being called, for whoever has to say why it takes so long
     */
    static List<Problem> of(Design design, Loadout loadout, ModelChecks model, Consumer<String> doing) {
        Checks checks = new Checks(model, design, doing);
        checks.problems.addAll(model.consistency(design));
        checks.problems.addAll(Judgement.check(design, loadout.figures()));
        checks.failedMovers();
        checks.passages(named(loadout.extensions().passageKinds(), PassageKind::form, checks.problems, "a passage kind"));
        checks.links(named(loadout.extensions().linkKinds(), LinkKind::form, checks.problems, "a link kind"));
        checks.sections(SectionTypes.of(loadout.extensions().sectionTypes(), checks.problems));
        return List.copyOf(checks.problems);
    }

    /** Asks an extension for its form. */
    @FunctionalInterface
    interface FormOf<S> {
        Form of(S service);
    }

    /** The extensions that count, by the names of their forms. */
    static <S> Map<String, Extension<S>> named(List<Extension<S>> extensions, FormOf<? super S> form,
            List<Problem> problems, String what) {
        Map<String, Extension<S>> named = new TreeMap<>();
        for (Extension<S> extension : extensions) {
            try {
                named.merge(form.of(extension.service()).name(), extension, (a, b) -> a.before(b) ? a : b);
            } catch (Throwable e) { // whatever an extension does wrong must not reach the others
                problems.add(Problem.caution("", Failure.sentence(what + " of bundle " + extension.bundle(), e)));
            }
        }
        return named;
    }

    private void failedMovers() {
        for (int i = 0; i < design.conditions().size(); i++) {
            Condition condition = design.conditions().get(i);
            for (int j = 0; j < condition.failed().size(); j++) {
                failedMover(condition.failed().get(j), "conditions[" + i + "].failed[" + j + "]");
            }
            String place = "conditions[" + i + "].failed";
            Cases.of(design.withConditions(List.of(condition)), Set.of()).findings().stream()
                    .filter(finding -> problems.stream().noneMatch(problem -> problem.place().startsWith(place)))
                    .forEach(finding -> problems.add(Problem.caution(place, finding.message().toString())));
        }
    }

    private void failedMover(FailedMover failed, String place) {
        if (failed.bank().isPresent()) {
            Optional<Passage> bank = design.airPath().banks().stream().filter(each -> each.id().equals(failed.bank().get()))
                    .findFirst();
            int position = failed.position().orElse(1);
            bank.filter(each -> position > Cases.positions(each)).ifPresent(each -> problems.add(Problem.error(
                    place + ".position", "is " + position + "; expected a position in bank " + each.id() + ", "
                            + (Cases.positions(each) == 1 ? "which has position 1 only" : "1 to " + Cases.positions(each)))));
        } else if (design.airPath().banks().stream().noneMatch(each ->
                failed.position().map(position -> position <= Cases.positions(each)).orElse(true))) {
            problems.add(Problem.error(place, design.airPath().banks().isEmpty()
                    ? "fails a mover, but the design has no bank"
                    : "fails position " + failed.position().orElse(1) + ", but no bank has that many"));
        }
    }

    private void passages(Map<String, Extension<PassageKind>> kinds) {
        Condition condition = firstCondition();
        for (int i = 0; i < design.airPath().passages().size(); i++) {
            Passage passage = design.airPath().passages().get(i);
            String place = "airPath.passages[" + i + "]";
            Optional<Extension<PassageKind>> known = known(kinds, passage.kind(), "passage kind", "the design", place);
            known.ifPresent(kind -> guarded("passage kind " + passage.kind() + " of bundle " + kind.bundle(), place, () ->
                    parameters(kind.service().form(), passage.parameters(), place, values -> kind.service().check(values,
                            new PassageKind.Setting(design, condition, passage), place))));
        }
    }

    private void links(Map<String, Extension<LinkKind>> kinds) {
        Condition condition = firstCondition();
        for (int i = 0; i < design.heatSources().size(); i++) {
            HeatSource source = design.heatSources().get(i);
            for (int j = 0; j < source.chain().size(); j++) {
                Link link = source.chain().get(j);
                boolean last = j == source.chain().size() - 1;
                String place = "heatSources[" + i + "].chain[" + j + "]";
                Optional<Extension<LinkKind>> known = known(kinds, link.kind(), "link kind", "the temperature of its heat source",
                        place);
                known.ifPresent(kind -> guarded("link kind " + link.kind() + " of bundle " + kind.bundle(), place, () -> {
                    boolean toAir = kind.service().step() == LinkKind.Step.SURFACE;
                    if (toAir && !last) {
                        problems.add(Problem.error(place, "is the way to the air; expected it last in its chain"));
                    } else if (!toAir && last) {
                        problems.add(Problem.error(place, "ends before the air; expected a last link that goes from a surface"
                                + " to the air" + waysToAir(kinds)));
                    }
                    parameters(kind.service().form(), link.parameters(), place, values -> kind.service().check(values,
                            new LinkKind.Setting(design, condition, source, link), place));
                }));
            }
        }
    }

    /** Some of the loaded kinds that may end a chain. */
    private static String waysToAir(Map<String, Extension<LinkKind>> kinds) {
        List<String> names = new ArrayList<>();
        kinds.forEach((name, kind) -> {
            try {
                if (kind.service().step() == LinkKind.Step.SURFACE) {
                    names.add(name);
                }
            } catch (Throwable e) { // said of the links that are of this kind; here another kind is in question
                return;
            }
        });
        int shown = Math.min(names.size(), NAMED_KINDS);
        if (shown < 2) {
            return names.isEmpty() ? "" : ", such as " + names.getFirst();
        }
        return ", such as " + String.join(", ", names.subList(0, shown - 1)) + " or " + names.get(shown - 1);
    }

    private Condition firstCondition() {
        return Cases.of(design, Set.of()).list().stream().findFirst().map(each -> each.concrete()).orElse(Condition.NOMINAL);
    }

    /** The kind of that name; where there is none, that is said. That the name itself is missing, its reader has said. */
    private <K> Optional<Extension<K>> known(Map<String, Extension<K>> kinds, String name, String noun, String unjudged,
            String place) {
        Extension<K> kind = kinds.get(name);
        if (kind == null && !name.isBlank()) {
            problems.add(Problem.caution(place + ".kind", '"' + name + "\" is no " + noun + " that anything loaded here knows; "
                    + unjudged + " is not judged until a bundle that gives it is loaded" + Spelling.hint(name, kinds.keySet())
                    + (kinds.isEmpty() ? "" : "; loaded are " + String.join(", ", kinds.keySet()))));
        }
        return Optional.ofNullable(kind);
    }

    /** Reads the parameters of a passage or link by the form of its kind, and lets the kind check what could be read. */
    private void parameters(Form form, Value.Tree parameters, String place, Function<Values, List<Problem>> check) {
        int before = problems.size();
        Values values = FormReader.read(form, parameters, place, problems);
        // what cannot be read would only be reported a second time, as missing
        boolean readable = problems.subList(before, problems.size()).stream()
                .allMatch(problem -> problem.isMissing() || !problem.isError());
        problems.addAll(model.references(form, parameters, design, place));
        if (readable) {
            problems.addAll(check.apply(values));
        }
    }

    private void sections(SectionTypes types) {
        sections(types, design, Owner.DESIGN, "");
        sections(types, design.equipment(), Owner.EQUIPMENT, "equipment.");
        each(types, design.airMovers(), Owner.MOVER, "airMovers");
        each(types, design.airPath().bays(), Owner.BAY, "airPath.bays");
        each(types, design.airPath().passages(), Owner.PASSAGE, "airPath.passages");
        each(types, design.heatSources(), Owner.HEAT_SOURCE, "heatSources");
        each(types, design.conditions(), Owner.CONDITION, "conditions");
        each(types, design.controlLaws(), Owner.CONTROL_LAW, "controlLaws");
    }

    private void each(SectionTypes types, List<? extends Noun> nouns, Owner owner, String list) {
        for (int i = 0; i < nouns.size(); i++) {
            sections(types, nouns.get(i), owner, list + "[" + i + "].");
        }
    }

    private void sections(SectionTypes types, Noun noun, Owner owner, String prefix) {
        noun.more().tree(Noun.SECTIONS).ifPresent(sections -> sections.members().forEach((name, written) -> {
            Map<Owner, Extension<SectionType<?>>> known = types.byName().getOrDefault(name, Map.of());
            Extension<SectionType<?>> type = known.get(owner);
            String place = prefix + Noun.SECTIONS + "." + name;
            if (known.isEmpty()) {
                problems.add(Problem.caution(place, "is a section that nothing loaded here knows; it is kept, but not used"
                        + Spelling.hint(name, types.byName().keySet())));
            } else if (type == null) {
                problems.add(Problem.caution(place, "is kept, but not used here; a section " + name + " belongs to "
                        + known.keySet().stream().map(Owner::words).collect(Collectors.joining(" or "))));
            } else {
                guarded("section type " + name + " of bundle " + type.bundle(), place,
                        () -> section(type.service(), written, place));
            }
        }));
    }

    private void section(SectionType<?> type, Value written, String place) {
        Optional<Value.Tree> current = Sections.current(type, written, place, problems);
        if (current.isPresent()) {
            Optional<Values> values = Sections.read(type, written, place, problems);
            problems.addAll(model.references(type.form(), current.get(), design, place));
            values.ifPresent(read -> problems.addAll(type.check(read, design, place)));
        }
    }

    private void guarded(String what, String place, Runnable check) {
        doing.accept(what);
        try {
            check.run();
        } catch (Throwable e) { // whatever an extension does wrong must not reach the others
            problems.add(Problem.caution(place, "could not be checked: " + Failure.sentence(what, e)));
        }
    }
}
