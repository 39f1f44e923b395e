package tramontane.model.edit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import tramontane.model.AirPath;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.FormReader;
import tramontane.model.MissionPhase;
import tramontane.model.Noun;
import tramontane.model.Problem;
import tramontane.model.References;
import tramontane.model.Requirement;
import tramontane.model.Shape;
import tramontane.model.Value;

/**
 * Edits of designs.
 *
 * <pre>{@code
 * Edits edits = new Edits(forms);
 * Edit edit = edits.rename(design, Subject.passage("grille"), "inlet");
 * edit.design().ifPresentOrElse(changed -> undo.push(changed, edit.what()), () -> say(edit.message()));
 * }</pre>
 *
 * @param forms the fields that loaded bundles add; names within them are followed, too
 */
public record Edits(Forms forms) {

    /** The member of an air path that says where bays and passages are drawn. */
    private static final String LAYOUT = "layout";

    public Edits {
        Objects.requireNonNull(forms);
    }

    /** Ends an edit with the sentence that says why. */
    private static final class Refusal extends Exception {
        private static final long serialVersionUID = 1L;

        Refusal(String sentence) {
            super(sentence, null, false, false);
        }
    }

    /** An edit that may end in a refusal. */
    private interface Change {
        Edit made() throws Refusal;
    }

    private static Edit attempt(String what, Change change) {
        try {
            return change.made();
        } catch (Refusal refusal) {
            return Edit.refused(what, refusal.getMessage());
        }
    }

    // ---- one field

    /**
     * Sets a field, or takes it out.
     *
     * @param design  the design
     * @param subject what has the field; setting its {@code id} renames it
     * @param path    the field, of the subject itself or of something within it; objects and lists on the way that are not
     *                there yet are made, and the place behind the last item of a list adds one
     * @param value   what is to stand there, as it would be written in a file; empty for "not given"
     */
    public Edit set(Design design, Subject subject, FieldPath path, Optional<Value> value) {
        return attempt("change " + path, () -> {
            Noun noun = existing(design, subject);
            if (path.isWhole()) {
                throw new Refusal(subject.title(design) + " is set field by field");
            }
            if (path.equals(FieldPath.of("id")) && subject.kind().isNamed()) {
                return rename(design, subject, value.map(Edits::plain).orElse(""));
            }
            Form form = subject.kind().form();
            if (subject.kind() == Subject.Kind.DESIGN && path.steps().getFirst() instanceof FieldPath.Member(String name)
                    && form.field(name).isEmpty() && Design.FORM.field(name).isPresent()) {
                throw new Refusal(name + " is not set as a whole; its parts are edited one by one");
            }
            Value.Tree before = noun.tree();
            Value.Tree after = inTree(Optional.of(form), before, path.steps(), value);
            if (value.isEmpty()) {
                mustBeGiven(design, subject, path, before, after);
            } else {
                mustFit(design, subject, path, before, after);
            }
            return Edit.of("change " + label(subject, before, path) + " of " + subject.title(design), with(design, subject, after))
                    .selecting(subject);
        });
    }

    /**
     * A design with a value put in the place of another one without a question whether it fits: a section that was brought to its
     * newest version as it stood.
     *
     * @param design  the design
     * @param subject what has the field
     * @param path    the field; nothing is changed where it is not there
     * @param value   what is to stand there
     */
    public static Design replaced(Design design, Subject subject, FieldPath path, Value value) {
        Optional<Value.Tree> tree = subject.tree(design).filter(object -> path.in(object).isPresent());
        try {
            return tree.isEmpty() || path.isWhole() ? design
                    : with(design, subject, new Edits(Forms.NONE).inTree(Optional.empty(), tree.get(), path.steps(), Optional.of(value)));
        } catch (Refusal cannotBe) {
            return design;
        }
    }

    private static String plain(Value value) {
        return value instanceof Value.Text(String text) ? text : "";
    }

    private Value.Tree inTree(Optional<Form> form, Value.Tree tree, List<FieldPath.Step> steps, Optional<Value> value) throws Refusal {
        if (!(steps.getFirst() instanceof FieldPath.Member(String name))) {
            throw new Refusal("a list is expected where " + form.map(Form::name).orElse("an object") + " stands");
        }
        if (steps.size() == 1) {
            return value.map(given -> tree.with(name, given)).orElseGet(() -> tree.without(name));
        }
        Optional<Form> whole = form.map(known -> forms.whole(known, name.equals(Noun.SECTIONS) && tree.get(name).isEmpty()
                ? tree.with(name, Value.Tree.EMPTY) : tree));
        Shape shape = whole.flatMap(known -> known.field(name)).map(Field::shape).orElse(new Shape.Anything());
        Value there = tree.get(name).orElse(null);
        List<FieldPath.Step> rest = steps.subList(1, steps.size());
        if (there == null && value.isEmpty()) {
            return tree;
        }
        Value changed = switch (rest.getFirst()) {
            case FieldPath.Member member when there == null || there instanceof Value.Tree -> inTree(
                    shape instanceof Shape.Part(Form part) ? Optional.of(part) : Optional.empty(),
                    there instanceof Value.Tree inner ? inner : Value.Tree.EMPTY, rest, value);
            case FieldPath.Item(int index) when there == null || there instanceof Value.Items ->
                    inList(shape, there instanceof Value.Items(List<Value> items) ? items : List.of(), index, rest.subList(1, rest.size()), value);
            default -> throw new Refusal(name + " is " + FormReader.describe(there) + ", of which nothing is set by itself");
        };
        boolean nothing = changed instanceof Value.Items(List<Value> items) && items.isEmpty()
                || changed instanceof Value.Tree inner && inner.isEmpty() && name.equals(Noun.SECTIONS);
        return nothing ? tree.without(name) : tree.with(name, changed);
    }

    private Value inList(Shape shape, List<Value> items, int index, List<FieldPath.Step> rest, Optional<Value> value) throws Refusal {
        List<Value> changed = new ArrayList<>(items);
        if (index > items.size() || index == items.size() && value.isEmpty()) {
            throw new Refusal("there is no item " + (index + 1) + "; the list has " + items.size());
        }
        Optional<Value> item;
        if (rest.isEmpty()) {
            item = value;
        } else if (shape instanceof Shape.Parts(Form form, String shorthand)) {
            Value.Tree object = index < items.size() ? Forms.full(items.get(index), shorthand) : Value.Tree.EMPTY;
            item = Optional.of(inTree(Optional.of(form), object, rest, value));
        } else if (index < items.size() && items.get(index) instanceof Value.Tree object) {
            item = Optional.of(inTree(Optional.empty(), object, rest, value));
        } else {
            throw new Refusal("item " + (index + 1) + " has no fields");
        }
        if (index < items.size()) {
            changed.remove(index);
        }
        item.ifPresent(given -> changed.add(index, given));
        return new Value.Items(changed);
    }

    /** Refuses a value that would be a new mistake; mistakes that stood there before are no reason. */
    private void mustFit(Design design, Subject subject, FieldPath path, Value.Tree before, Value.Tree after) throws Refusal {
        Form form = subject.kind().form();
        String at = path.place("");
        Set<Problem> known = new HashSet<>(forms.check(form, before, ""));
        for (Problem problem : forms.check(form, after, "")) {
            boolean here = problem.place().startsWith(at) || at.startsWith(problem.place());
            if (problem.isError() && !problem.isMissing() && here && !known.contains(problem)) {
                throw new Refusal(subject.title(design) + ", " + label(subject, after, path) + ": " + problem.message());
            }
        }
    }

    /** Refuses to leave out what the model cannot hold as left out. */
    private void mustBeGiven(Design design, Subject subject, FieldPath path, Value.Tree before, Value.Tree after) throws Refusal {
        Optional<Form> form = forms.at(subject.kind().form(), before, path.parent());
        boolean required = path.steps().getLast() instanceof FieldPath.Member(String name)
                && form.flatMap(known -> known.field(name)).filter(Field::required).isPresent();
        Value.Tree kept = subject.kind().read(after).tree();
        if (required && path.in(kept).filter(value -> !value.equals(new Value.Items(List.of()))).isPresent()) {
            throw new Refusal(subject.title(design) + ", " + label(subject, before, path) + ": must be given; expected "
                    + form.flatMap(known -> known.field(((FieldPath.Member) path.steps().getLast()).name()))
                            .map(field -> FormReader.expected(field.shape())).orElse("a value"));
        }
    }

    /** What people call a field: {@code static pressure of curve 2}. */
    private String label(Subject subject, Value.Tree tree, FieldPath path) {
        FieldPath at = path;
        int number = 0;
        while (at.steps().size() > 1 && at.steps().getLast() instanceof FieldPath.Item(int index)) {
            number = index + 1;
            at = at.parent();
        }
        if (!(at.steps().getLast() instanceof FieldPath.Member(String name))) {
            return "item " + number;
        }
        String label = forms.at(subject.kind().form(), tree, at.parent()).flatMap(form -> form.field(name)).map(Field::label).orElse(name);
        String within = "";
        for (FieldPath outer = at.parent(); !outer.isWhole(); outer = outer.parent()) {
            if (outer.steps().getLast() instanceof FieldPath.Item(int index)) {
                within = forms.at(subject.kind().form(), tree, outer).map(form -> " of " + form.name() + " " + (index + 1)).orElse("");
                break;
            }
        }
        return label + (number > 0 ? " " + number : "") + within;
    }

    // ---- things as a whole

    /**
     * Adds a thing.
     *
     * @param design the design
     * @param kind   what kind of thing
     * @param tree   what is said of it, as it would be written in a file; what it must have and is not said of it gets a value
     *               to begin with where the model asks for one. Its id is made a fresh one where it is taken
     * @param after  the thing of the same kind that it comes behind; last where empty or of another kind
     */
    public Edit add(Design design, Subject.Kind kind, Value.Tree tree, Optional<Subject> after) {
        return attempt("add " + kind.noun(), () -> {
            if (!kind.isListed()) {
                throw new Refusal("a design has one " + kind.noun() + " only");
            }
            Value.Tree begun = begun(design, kind, tree);
            mustBeSound(kind, begun);
            String id = begun.text("id").orElse("");
            return inserted(design, List.of(new Thing(kind, begun)), after, "add " + (id.isEmpty() ? kind.noun() : id));
        });
    }

    private void mustBeSound(Subject.Kind kind, Value.Tree tree) throws Refusal {
        for (Problem problem : forms.check(kind.form(), tree, "")) {
            if (problem.isError() && !problem.isMissing()) {
                throw new Refusal(tree.text("id").orElse(kind.noun()) + ", " + problem.sentence());
            }
        }
    }

    private Value.Tree begun(Design design, Subject.Kind kind, Value.Tree tree) {
        Value.Tree begun = tree;
        if (kind.isNamed() && tree.text("id").filter(id -> !id.isBlank()).isEmpty()) {
            // the first condition makes the one explicit that held so far, so that what names it still finds it
            String id = kind == Subject.Kind.CONDITION && design.conditions().isEmpty() ? Condition.NOMINAL.id()
                    : kind == Subject.Kind.PASSAGE ? tree.text("kind").filter(name -> !name.isBlank()).orElse(kind.noun()) : kind.noun();
            begun = Value.Tree.EMPTY.with("id", new Value.Text(id)).with(tree.without("id"));
        }
        if (kind == Subject.Kind.HEAT_SOURCE && tree.get("power").isEmpty()) {
            begun = begun.with("power", new Value.Text("0 W"));
        }
        if (kind == Subject.Kind.MISSION_PHASE) {
            begun = tree.get("condition").isPresent() ? begun
                    : begun.with("condition", new Value.Text(design.workingConditions().getFirst().id()));
            begun = tree.get("timePerYear").isPresent() ? begun : begun.with("timePerYear", new Value.Text("0 h"));
        }
        return begun;
    }

    /** A thing that is to be put into a design. */
    private record Thing(Subject.Kind kind, Value.Tree tree) {
    }

    private Edit inserted(Design design, List<Thing> things, Optional<Subject> after, String phrase) {
        // names first, so that things that are put in together find each other under their new ones
        Map<Subject, String> fresh = new HashMap<>();
        Map<Subject.Kind, Set<String>> taken = new HashMap<>();
        List<Value.Tree> named = new ArrayList<>();
        for (Thing thing : things) {
            Optional<String> id = thing.kind().isNamed() ? thing.tree().text("id") : Optional.empty();
            if (id.isEmpty()) {
                named.add(thing.tree());
                continue;
            }
            Set<String> used = taken.computeIfAbsent(thing.kind(), kind -> taken(design, kind));
            String free = fresh(id.get(), used);
            for (Subject.Kind other : sharing(thing.kind())) {
                taken.computeIfAbsent(other, kind -> taken(design, kind)).add(free);
            }
            fresh.putIfAbsent(new Subject(thing.kind(), id.get()), free);
            named.add(thing.tree().with("id", new Value.Text(free)));
        }
        Design changed = design;
        List<Subject> subjects = new ArrayList<>();
        Map<Subject.Kind, Integer> next = new HashMap<>();
        Set<String> notes = new LinkedHashSet<>();
        for (int i = 0; i < things.size(); i++) {
            Subject.Kind kind = things.get(i).kind();
            Value.Tree tree = References.rename(kind.form(), named.get(i), "", forms::whole, (name, target, place) -> {
                List<Subject> meant = kinds(target).stream().map(each -> new Subject(each, name)).filter(fresh::containsKey).toList();
                return Optional.of(meant.isEmpty() ? name : fresh.get(meant.getFirst()));
            });
            List<Noun> all = new ArrayList<>(kind.of(changed));
            int at = next.containsKey(kind) ? next.get(kind)
                    : after.filter(subject -> subject.kind() == kind).map(subject -> subject.index(design))
                    .filter(OptionalInt::isPresent).map(index -> index.getAsInt() + 1).orElse(all.size());
            all.add(at, kind.read(tree));
            next.put(kind, at + 1);
            changed = kind.in(changed, all);
            subjects.add(kind.subjects(changed).get(at));
        }
        for (Subject subject : subjects) {
            notes.addAll(dangling(changed, subject));
        }
        return Edit.of(phrase, changed).selecting(subjects.toArray(Subject[]::new)).noting(notes);
    }

    /** What a thing names that its design does not have. */
    private List<String> dangling(Design design, Subject subject) {
        Set<String> notes = new LinkedHashSet<>();
        subject.tree(design).ifPresent(tree -> References.rename(subject.kind().form(), tree, "", forms::whole, (name, target, place) -> {
            if (!name.isBlank() && target != Shape.Target.ANYWHERE && !References.names(design, target).contains(name)) {
                notes.add(subject.title(design) + " names " + FormReader.describe(new Value.Text(name))
                        + ", which is no " + FormReader.name(target) + " of this design");
            }
            return Optional.of(name);
        }));
        return List.copyOf(notes);
    }

    /**
     * Takes things out, and with them what is about nothing else: the time in a condition, failed movers of a bank, heat
     * factors of a source, entries in lists of names that have others. Whatever else names them stays as it is and is noted.
     *
     * @param design   the design
     * @param subjects what to take out; what it does not have is passed over
     */
    public Edit remove(Design design, List<Subject> subjects) {
        return attempt("delete", () -> {
            List<Subject> gone = subjects.stream().filter(subject -> subject.index(design).isPresent()).distinct().toList();
            for (Subject subject : subjects) {
                if (subject.isOutside()) {
                    throw new Refusal("outside is always there; it cannot be deleted");
                }
                if (!subject.kind().isListed()) {
                    throw new Refusal("the " + subject.kind().noun() + " cannot be deleted");
                }
            }
            if (gone.isEmpty()) {
                throw new Refusal("nothing is selected that could be deleted");
            }
            Design changed = design;
            for (Subject.Kind kind : Subject.Kind.values()) {
                List<Subject> all = kind.subjects(design);
                List<Noun> kept = new ArrayList<>();
                for (int i = 0; i < all.size(); i++) {
                    if (!gone.contains(all.get(i))) {
                        kept.add(kind.of(design).get(i));
                    }
                }
                changed = kept.size() == all.size() ? changed : kind.in(changed, kept);
            }
            Set<String> notes = new LinkedHashSet<>();
            changed = withoutTraces(design, changed, gone, notes);
            String phrase = gone.size() == 1 ? "delete " + gone.getFirst().title(design) : "delete " + gone.size() + " things";
            return Edit.of(phrase, changed).noting(notes);
        });
    }

    private Design withoutTraces(Design before, Design after, List<Subject> gone, Set<String> notes) {
        Set<String> conditions = lost(after, gone, Subject.Kind.CONDITION);
        Set<String> passages = lost(after, gone, Subject.Kind.PASSAGE);
        Design changed = after;
        List<MissionPhase> mission = after.mission().stream().filter(phase -> !conditions.contains(phase.condition())).toList();
        changed = mission.size() == after.mission().size() ? changed : changed.withMission(mission);
        List<Condition> kept = changed.conditions().stream().map(condition -> {
            List<FailedMover> failed = condition.failed().stream()
                    .filter(mover -> mover.bank().filter(passages::contains).isEmpty()).toList();
            return failed.size() == condition.failed().size() ? condition : condition.with(condition.id(), failed);
        }).toList();
        changed = kept.equals(changed.conditions()) ? changed : changed.withConditions(kept);
        Design left = changed;
        changed = renamed(changed, (name, target, place) -> {
            boolean meant = gone.stream().anyMatch(subject -> subject.id().equals(name) && kinds(target).contains(subject.kind()))
                    && !References.names(left, target).contains(name);
            return meant ? Optional.empty() : Optional.of(name);
        });
        Design cleaned = changed;
        for (Subject subject : Subject.all(cleaned)) {
            subject.tree(cleaned).ifPresent(tree -> References.rename(subject.kind().form(), tree, "", forms::whole, (name, target, place) -> {
                if (gone.stream().anyMatch(lost -> lost.id().equals(name) && kinds(target).contains(lost.kind()))
                        && !References.names(cleaned, target).contains(name)) {
                    notes.add(subject.title(cleaned) + " still names " + name);
                }
                return Optional.of(name);
            }));
        }
        for (Subject subject : gone) {
            boolean drawn = subject.kind() == Subject.Kind.BAY || subject.kind() == Subject.Kind.PASSAGE;
            if (drawn && !References.names(changed, Shape.Target.PLACE).contains(subject.id())) {
                changed = withLayout(changed, subject.id(), Optional.empty());
            }
        }
        return changed;
    }

    private static Set<String> lost(Design after, List<Subject> gone, Subject.Kind kind) {
        Set<String> ids = new HashSet<>(gone.stream().filter(subject -> subject.kind() == kind).map(Subject::id).toList());
        ids.removeAll(kind.ids(after));
        return ids;
    }

    /**
     * Gives a thing another name, and with it everything that names it: passages, banks, heat sources, conditions, control
     * laws, requirements, the parameters of passage and link kinds, sections, and the drawing of the air path. What may as well
     * mean something else of the same name is left and noted.
     *
     * @param design  the design
     * @param subject the thing
     * @param name    its new name; blanks around it are left out
     */
    public Edit rename(Design design, Subject subject, String name) {
        return attempt("rename " + subject.title(design), () -> {
            if (subject.isOutside()) {
                throw new Refusal("outside is the air around the equipment; it cannot be renamed");
            }
            Noun noun = existing(design, subject);
            String stripped = name.strip();
            if (!subject.kind().isListed()) {
                return set(design, subject, FieldPath.of("name"), stripped.isEmpty() ? Optional.empty() : Optional.of(new Value.Text(stripped)));
            }
            if (!subject.kind().isNamed()) {
                throw new Refusal("a " + subject.kind().noun() + " has no name of its own");
            }
            String phrase = "rename " + subject.title(design);
            if (stripped.equals(subject.id())) {
                return Edit.of(phrase, design).selecting(subject);
            }
            mustBeFree(design, subject, stripped);
            Set<String> notes = new LinkedHashSet<>();
            int index = subject.index(design).orElseThrow();
            Design changed = subject.id().isEmpty() ? design : renamed(design, (written, target, place) -> {
                if (!written.equals(subject.id()) || !kinds(target).contains(subject.kind())) {
                    return Optional.of(written);
                }
                Meaning meaning = meaning(design, subject, target);
                if (meaning == Meaning.UNCLEAR) {
                    notes.add(place + " still names " + written + ", as something else has that name, too");
                }
                return Optional.of(meaning == Meaning.MEANT ? stripped : written);
            });
            List<Noun> all = new ArrayList<>(subject.kind().of(changed));
            all.set(index, subject.kind().read(all.get(index).tree().with("id", new Value.Text(stripped))));
            changed = subject.kind().in(changed, all);
            boolean drawn = subject.kind() == Subject.Kind.BAY || subject.kind() == Subject.Kind.PASSAGE;
            if (drawn && !References.names(changed, Shape.Target.PLACE).contains(subject.id())) {
                changed = withLayout(changed, subject.id(), Optional.of(stripped));
            }
            return Edit.of(phrase, changed).selecting(subject.kind().subjects(changed).get(index)).noting(notes);
        });
    }

    private static void mustBeFree(Design design, Subject subject, String name) throws Refusal {
        if (name.isEmpty()) {
            throw new Refusal("a " + subject.kind().noun() + " must have a name; expected a text");
        }
        if (name.chars().anyMatch(Character::isISOControl)) {
            throw new Refusal("a name stands in one line; expected no line breaks or tabs in it");
        }
        if (sharing(subject.kind()).contains(Subject.Kind.BAY) && name.equals(Bay.OUTSIDE)) {
            throw new Refusal("\"outside\" is the air around the equipment; expected another name");
        }
        if (subject.kind() != Subject.Kind.CONDITION && name.equals(Requirement.WORST)) {
            throw new Refusal("\"worst\" stands for the worst of all places in requirements; expected another name");
        }
        for (Subject.Kind kind : sharing(subject.kind())) {
            if (kind.ids(design).contains(name)) {
                throw new Refusal(FormReader.describe(new Value.Text(name)) + " is the name of a " + kind.noun()
                        + " already; expected a name that no other " + (sharing(subject.kind()).size() > 1 ? "bay or passage" : kind.noun()) + " has");
            }
        }
    }

    /** Adds a copy of each thing behind it. */
    public Edit duplicate(Design design, List<Subject> subjects) {
        return attempt("duplicate", () -> {
            List<Thing> things = things(design, subjects);
            if (things.isEmpty()) {
                throw new Refusal("nothing is selected that could be duplicated");
            }
            String phrase = things.size() == 1 ? "duplicate " + subjects.getFirst().title(design) : "duplicate " + things.size() + " things";
            return inserted(design, things, Optional.of(subjects.getLast()), phrase);
        });
    }

    /**
     * Moves a thing within its list.
     *
     * @param design  the design
     * @param subject the thing
     * @param index   where it is to stand, counted from 0 without it; the nearest place there is
     */
    public Edit move(Design design, Subject subject, int index) {
        return attempt("move " + subject.title(design), () -> {
            Noun noun = existing(design, subject);
            if (!subject.kind().isListed()) {
                throw new Refusal("the " + subject.kind().noun() + " has its place");
            }
            List<Noun> all = new ArrayList<>(subject.kind().of(design));
            int from = subject.index(design).orElseThrow();
            all.remove(from);
            int to = Math.clamp(index, 0, all.size());
            all.add(to, noun);
            Design changed = from == to ? design : subject.kind().in(design, all);
            return Edit.of("move " + subject.title(design), changed).selecting(subject.kind().subjects(changed).get(to));
        });
    }

    // ---- clipboard

    /**
     * Things as a text that {@link #paste} understands, in the order of the design; empty where none of them can be copied.
     *
     * @param design   the design
     * @param subjects what to copy; the design itself, its equipment and outside are passed over
     */
    public Optional<String> copy(Design design, List<Subject> subjects) {
        List<Subject> ordered = Subject.all(design).stream().filter(subjects::contains).toList();
        List<Thing> things = things(design, ordered);
        return things.isEmpty() ? Optional.empty()
                : Optional.of(Clipping.write(things.stream().map(thing -> new Clipping.Entry(thing.kind(), thing.tree())).toList()));
    }

    private static List<Thing> things(Design design, List<Subject> subjects) {
        return subjects.stream().filter(subject -> subject.kind().isListed())
                .flatMap(subject -> subject.tree(design).map(tree -> new Thing(subject.kind(), tree)).stream()).toList();
    }

    /** Whether a text holds things that were copied. */
    public static boolean canPaste(String text) {
        return Clipping.read(text).isPresent();
    }

    /**
     * Puts things in that were copied, from this design or from another. Taken ids become fresh ones; names among the things
     * follow. What a thing names that this design does not have is noted.
     *
     * @param design the design
     * @param text   what {@link #copy} gave
     * @param after  the thing that those of its kind come behind; last where empty
     */
    public Edit paste(Design design, String text, Optional<Subject> after) {
        return attempt("paste", () -> {
            List<Clipping.Entry> entries = Clipping.read(text)
                    .orElseThrow(() -> new Refusal("the clipboard holds nothing that was copied from a design"));
            List<Thing> things = new ArrayList<>();
            for (Clipping.Entry entry : entries) {
                mustBeSound(entry.kind(), entry.tree());
                things.add(new Thing(entry.kind(), begun(design, entry.kind(), entry.tree())));
            }
            String phrase = things.size() == 1 ? "paste " + things.getFirst().tree().text("id").orElse(things.getFirst().kind().noun())
                    : "paste " + things.size() + " things";
            return inserted(design, things, after, phrase);
        });
    }

    // ---- names

    /**
     * A name that nothing of its kind has yet: the one wanted, or that with a number behind it.
     *
     * @param design the design
     * @param kind   what kind of thing is to have it
     * @param wanted the name to begin with
     */
    public static String freshId(Design design, Subject.Kind kind, String wanted) {
        return fresh(wanted, taken(design, kind));
    }

    private static String fresh(String wanted, Set<String> taken) {
        if (!taken.contains(wanted)) {
            return wanted;
        }
        String base = wanted.replaceFirst(" [0-9]{1,9}$", "");
        int number = 2;
        while (taken.contains(base + " " + number)) {
            number++;
        }
        return base + " " + number;
    }

    private static Set<String> taken(Design design, Subject.Kind kind) {
        Set<String> taken = new HashSet<>();
        sharing(kind).forEach(each -> taken.addAll(each.ids(design)));
        if (sharing(kind).contains(Subject.Kind.BAY)) {
            taken.add(Bay.OUTSIDE);
        }
        return taken;
    }

    /** Kinds whose ids must differ: bays and passages, as heat goes into either by its id alone. */
    private static List<Subject.Kind> sharing(Subject.Kind kind) {
        return kind == Subject.Kind.BAY || kind == Subject.Kind.PASSAGE ? List.of(Subject.Kind.BAY, Subject.Kind.PASSAGE) : List.of(kind);
    }

    /** What a reference may mean; where only one of several things of a name can be meant, that first. */
    private static List<Subject.Kind> kinds(Shape.Target target) {
        return switch (target) {
            case BAY -> List.of(Subject.Kind.BAY);
            case PASSAGE, BANK -> List.of(Subject.Kind.PASSAGE);
            case MOVER -> List.of(Subject.Kind.AIR_MOVER);
            case HEAT_SOURCE -> List.of(Subject.Kind.HEAT_SOURCE);
            case CONDITION -> List.of(Subject.Kind.CONDITION);
            case CONTROL_LAW -> List.of(Subject.Kind.CONTROL_LAW);
            case PLACE -> List.of(Subject.Kind.BAY, Subject.Kind.PASSAGE);
            case SENSOR -> List.of(Subject.Kind.HEAT_SOURCE, Subject.Kind.BAY, Subject.Kind.PASSAGE);
            case ANYWHERE -> List.of(Subject.Kind.BAY, Subject.Kind.PASSAGE, Subject.Kind.HEAT_SOURCE, Subject.Kind.CONTROL_LAW);
        };
    }

    /** Whether a name means a thing. */
    private enum Meaning {
        MEANT, NOT_MEANT, UNCLEAR
    }

    /** Whether a reference with the id of a thing means that thing and no other. */
    private static Meaning meaning(Design design, Subject subject, Shape.Target target) {
        if (subject.kind().ids(design).stream().filter(subject.id()::equals).count() > 1) {
            return Meaning.UNCLEAR;
        }
        List<Subject.Kind> having = kinds(target).stream().filter(kind -> kind.ids(design).contains(subject.id())).toList();
        if (target == Shape.Target.SENSOR && having.getFirst() == Subject.Kind.HEAT_SOURCE) {
            return subject.kind() == Subject.Kind.HEAT_SOURCE ? Meaning.MEANT : Meaning.NOT_MEANT;
        }
        return having.size() > 1 ? Meaning.UNCLEAR : Meaning.MEANT;
    }

    private Design renamed(Design design, References.Renaming renaming) {
        Design changed = design;
        for (Subject.Kind kind : Subject.Kind.values()) {
            List<? extends Noun> things = kind.of(design);
            List<Noun> kept = new ArrayList<>();
            boolean same = true;
            for (int i = 0; i < things.size(); i++) {
                Value.Tree tree = things.get(i).tree();
                String place = kind.isListed() ? kind.place() + "[" + i + "]" : kind.place();
                Value.Tree named = References.rename(kind.form(), tree, place, forms::whole, renaming);
                same &= named == tree;
                kept.add(named == tree ? things.get(i) : kind.read(named));
            }
            changed = same ? changed : kind.in(changed, kept);
        }
        return changed;
    }

    /** The drawing of the air path names bays and passages as its members, or as members of one object for each of the two. */
    private static Design withLayout(Design design, String id, Optional<String> changed) {
        AirPath path = design.airPath();
        Optional<Value.Tree> layout = path.more().tree(LAYOUT);
        if (layout.isEmpty()) {
            return design;
        }
        Value.Tree drawn = member(layout.get(), id, changed);
        for (String list : List.of("bays", "passages")) {
            Optional<Value.Tree> inner = drawn.tree(list);
            drawn = inner.isPresent() ? drawn.with(list, member(inner.get(), id, changed)) : drawn;
        }
        return drawn.equals(layout.get()) ? design
                : design.withAirPath(new AirPath(path.bays(), path.passages(), path.more().with(LAYOUT, drawn)));
    }

    private static Value.Tree member(Value.Tree tree, String name, Optional<String> changed) {
        if (tree.get(name).isEmpty() || changed.filter(other -> tree.get(other).isPresent()).isPresent()) {
            return tree;
        }
        LinkedHashMap<String, Value> members = new LinkedHashMap<>();
        tree.members().forEach((each, value) -> {
            if (!each.equals(name)) {
                members.put(each, value);
            } else if (changed.isPresent()) {
                members.put(changed.get(), value);
            }
        });
        return new Value.Tree(members);
    }

    private static Noun existing(Design design, Subject subject) throws Refusal {
        if (subject.isOutside() && subject.noun(design).isEmpty()) {
            throw new Refusal("outside is the air around the equipment; what it is like stands in the conditions");
        }
        return subject.noun(design).orElseThrow(() -> new Refusal("this design has no " + subject.kind().noun() + " "
                + FormReader.describe(new Value.Text(subject.id())) + " any more"));
    }

    private static Design with(Design design, Subject subject, Value.Tree tree) {
        List<Noun> all = new ArrayList<>(subject.kind().of(design));
        all.set(subject.index(design).orElseThrow(), subject.kind().read(tree));
        return subject.kind().in(design, all);
    }
}
