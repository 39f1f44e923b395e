package tramontane.model.edit;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.FormReader;
import tramontane.model.Link;
import tramontane.model.Noun;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Shape;
import tramontane.model.Value;

/**
 * The fields that loaded bundles add to those of the model.
 *
 * @param passages the parameters of passage kinds, by the kind's name
 * @param links    the parameters of link kinds, by the kind's name
 * @param sections the sections that things of each kind may have, by the section's name
 */
public record Forms(Map<String, Form> passages, Map<String, Form> links, Map<Subject.Kind, Map<String, Form>> sections) {

    /** Nothing is loaded. */
    public static final Forms NONE = new Forms(Map.of(), Map.of(), Map.of());

    public Forms {
        passages = ordered(passages);
        links = ordered(links);
        LinkedHashMap<Subject.Kind, Map<String, Form>> each = new LinkedHashMap<>();
        sections.forEach((kind, forms) -> each.put(kind, ordered(forms)));
        sections = Collections.unmodifiableMap(each);
    }

    private static Map<String, Form> ordered(Map<String, Form> forms) {
        return Collections.unmodifiableMap(new LinkedHashMap<>(forms));
    }

    /** The sections that things of a kind may have. */
    public Map<String, Form> sections(Subject.Kind kind) {
        return sections.getOrDefault(kind, Map.of());
    }

    /**
     * The form of the parameters that an object's own kind brings; empty where it is of no kind that is known.
     *
     * @param form the fields that every such object has
     * @param tree the object
     */
    public Optional<Form> kind(Form form, Value.Tree tree) {
        Map<String, Form> kinds = form.equals(Passage.FORM) ? passages : form.equals(Link.FORM) ? links : Map.of();
        return tree.text("kind").map(kinds::get);
    }

    /**
     * All fields of an object: its own, those of its kind, and its sections as parts of one member.
     *
     * @param form the fields that every such object has
     * @param tree the object
     */
    public Form whole(Form form, Value.Tree tree) {
        Optional<Form> kind = form.open() ? kind(form, tree) : Optional.empty();
        Map<String, Form> owned = tree.get(Noun.SECTIONS).isEmpty() ? Map.of() : owned(form);
        if (kind.isEmpty() && owned.isEmpty()) {
            return form;
        }
        List<Field> fields = new ArrayList<>(form.fields());
        Set<String> names = new LinkedHashSet<>(fields.stream().map(Field::name).toList());
        kind.ifPresent(more -> more.fields().stream().filter(field -> names.add(field.name())).forEach(fields::add));
        if (!owned.isEmpty() && names.add(Noun.SECTIONS)) {
            List<Field> parts = owned.entrySet().stream()
                    .map(section -> Field.part(section.getKey(), section.getKey(), section.getValue(), section.getValue().help())).toList();
            fields.add(Field.part(Noun.SECTIONS, "sections", new Form("sections", "What belongs to one analysis each.", true, parts), ""));
        }
        return new Form(form.name(), form.help(), form.open() && kind.isEmpty(), fields);
    }

    private Map<String, Form> owned(Form form) {
        for (Map.Entry<Subject.Kind, Map<String, Form>> each : sections.entrySet()) {
            if (each.getKey().form().equals(form)) {
                return each.getValue();
            }
        }
        return Map.of();
    }

    /**
     * The form of the object that a path leads to or goes through.
     *
     * @param form the fields of the object that it begins at
     * @param tree that object
     * @param path the path to an object within it
     * @return all fields of that object; empty where it is not known what stands there
     */
    public Optional<Form> at(Form form, Value.Tree tree, FieldPath path) {
        Form here = whole(form, tree);
        if (path.isWhole()) {
            return Optional.of(here);
        }
        if (!(path.steps().getFirst() instanceof FieldPath.Member(String name))) {
            return Optional.empty();
        }
        Optional<Field> field = here.field(name);
        int used = 1;
        Form inner;
        Value.Tree object;
        switch (field.map(Field::shape).orElse(null)) {
            case Shape.Part(Form part) -> {
                inner = part;
                object = tree.tree(name).orElse(Value.Tree.EMPTY);
            }
            case Shape.Parts(Form part, String shorthand) when path.steps().size() > 1 -> {
                inner = part;
                used = 2;
                object = new FieldPath(path.steps().subList(0, 2)).in(tree)
                        .map(value -> full(value, shorthand)).orElse(Value.Tree.EMPTY);
            }
            case null, default -> {
                return Optional.empty();
            }
        }
        return at(inner, object, new FieldPath(path.steps().subList(used, path.steps().size())));
    }

    /** An object that may be written as the bare value of one of its fields. */
    static Value.Tree full(Value value, String shorthand) {
        return value instanceof Value.Tree tree ? tree
                : shorthand.isEmpty() ? Value.Tree.EMPTY : Value.Tree.EMPTY.with(shorthand, value);
    }

    /**
     * What is wrong with an object and with all objects within it, the parameters of kinds and known sections included.
     *
     * @param form  the fields that every such object has
     * @param tree  the object
     * @param place where it stands
     */
    public List<Problem> check(Form form, Value.Tree tree, String place) {
        Set<Problem> problems = new LinkedHashSet<>();
        check(form, tree, place, problems);
        return List.copyOf(problems);
    }

    private void check(Form form, Value.Tree tree, String place, Set<Problem> problems) {
        Form whole = whole(form, tree);
        List<Problem> found = new ArrayList<>();
        FormReader.read(whole, tree, place, found);
        problems.addAll(found);
        for (Field field : whole.fields()) {
            String at = Problem.place(place, field.name());
            switch (field.shape()) {
                case Shape.Part(Form part) when tree.get(field.name()).orElse(null) instanceof Value.Tree inner ->
                        within(part, inner, at, problems);
                case Shape.Parts parts when tree.get(field.name()).orElse(null) instanceof Value.Items(List<Value> items) -> {
                    for (int i = 0; i < items.size(); i++) {
                        if (items.get(i) instanceof Value.Tree inner) {
                            within(parts.form(), inner, at + "[" + i + "]", problems);
                        }
                    }
                }
                default -> {
                    // read above
                }
            }
        }
    }

    /** What the form of the object around it has not read: the fields of a kind. */
    private void within(Form form, Value.Tree tree, String place, Set<Problem> problems) {
        if (form.open() || form.fields().stream().anyMatch(field -> field.shape() instanceof Shape.Part || field.shape() instanceof Shape.Parts)) {
            check(form, tree, place, problems);
        }
    }
}
