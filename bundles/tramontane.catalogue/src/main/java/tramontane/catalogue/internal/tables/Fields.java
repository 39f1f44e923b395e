package tramontane.catalogue.internal.tables;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import tramontane.analysis.SectionType;
import tramontane.model.AirMover;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Noun;
import tramontane.model.Shape;
import tramontane.model.Spelling;

/** The fields that a part may have, its sections included, and which of them a heading means. */
final class Fields {

    /** Members of a part that anything may stand in. */
    private static final Set<String> FREE = Set.of("notes", "layout", "$schema");

    /** Deep enough for any form; one that holds itself would have no end. */
    private static final int DEEPEST = 6;

    private final Map<String, SectionType<?>> sections = new TreeMap<>();
    private final Map<String, List<Known>> byAlias = new LinkedHashMap<>();

    /**
     * A field and where it stands.
     *
     * @param path  where
     * @param field what it is; empty where nothing knows it
     * @param rank  whose it is: fields of the part itself are meant before those of curves, sections and origins
     */
    record Known(FieldPath path, Optional<Field> field, int rank) {
    }

    /** What a heading means. */
    sealed interface Meaning {
    }

    /** One field. */
    record Clear(Known known) implements Meaning {
    }

    /** Several fields. */
    record Several(List<String> paths) implements Meaning {
    }

    /** No field; the nearest one where there is one. */
    record Unknown(Optional<String> nearest) implements Meaning {
    }

    /** @param types section types; those that no air mover carries are left out, of two of one name the first is taken */
    Fields(List<SectionType<?>> types) {
        for (SectionType<?> type : types) {
            try {
                if (type.owners().contains(SectionType.Owner.MOVER)) {
                    sections.putIfAbsent(type.form().name(), type);
                }
            } catch (RuntimeException | LinkageError e) { // a stranger's mistake; the engine tells of it
                continue;
            }
        }
        FieldPath root = new FieldPath(List.of());
        collect(AirMover.FORM, root, "", 0, 0);
        sections.forEach((name, type) -> collect(type.form(), root.with(FieldPath.Step.of(Noun.SECTIONS)).with(FieldPath.Step.of(name)),
                name, 2, 0));
    }

    /** The section types by name. */
    Map<String, SectionType<?>> sections() {
        return Map.copyOf(sections);
    }

    private void collect(Form form, FieldPath place, String labels, int rank, int depth) {
        for (Field field : form.fields()) {
            boolean isList = field.shape() instanceof Shape.Parts;
            FieldPath path = place.with(new FieldPath.Step(field.name(), isList ? 0 : -1, false));
            String label = labels + " " + field.label();
            Optional<Form> inner = inner(field);
            if (inner.isPresent() && depth < DEEPEST) {
                collect(inner.get(), path, label, rank > 0 ? rank : field.name().equals("curves") ? 1 : 3, depth + 1);
                continue;
            }
            Known known = new Known(path, Optional.of(field), rank);
            Set<String> aliases = new LinkedHashSet<>(List.of(bare(path.text()), bare(field.name()), bare(field.label()), bare(label)));
            aliases.forEach(alias -> byAlias.computeIfAbsent(alias, each -> new ArrayList<>()).add(known));
        }
    }

    /** Paths of all fields that are not objects themselves, in the order of the forms. */
    List<FieldPath> leaves() {
        return byAlias.values().stream().flatMap(List::stream).map(Known::path).distinct().toList();
    }

    /** What a heading without its unit means. */
    Meaning meaning(String heading) {
        Optional<Known> walked = FieldPath.parse(heading.strip()).flatMap(this::walk);
        if (walked.isPresent()) {
            return new Clear(walked.get());
        }
        List<Known> found = byAlias.getOrDefault(bare(heading), List.of());
        int best = found.stream().mapToInt(Known::rank).min().orElse(0);
        List<Known> nearest = found.stream().filter(known -> known.rank() == best).toList();
        if (nearest.isEmpty()) {
            return new Unknown(Spelling.nearest(bare(heading), byAlias.keySet())
                    .map(alias -> byAlias.get(alias).stream().min(Comparator.comparingInt(Known::rank)).orElseThrow().path().text()));
        }
        return nearest.size() == 1 ? new Clear(nearest.getFirst())
                : new Several(nearest.stream().map(known -> known.path().text()).toList());
    }

    /** The field at a path that follows the forms, upper and lower case aside. */
    Optional<Known> walk(FieldPath asked) {
        FieldPath path = new FieldPath(List.of());
        Optional<Form> form = Optional.of(AirMover.FORM);
        boolean inSection = false;
        for (int i = 0; i < asked.steps().size(); i++) {
            FieldPath.Step step = asked.steps().get(i);
            boolean isLast = i == asked.steps().size() - 1;
            boolean isTop = path.steps().isEmpty();
            // a part has a field motor, and a section may have that name, too
            Optional<Field> field = form.flatMap(within -> field(within, step))
                    .filter(found -> isLast || !isTop || inner(found).isPresent());
            if (form.isPresent() && field.isPresent()) {
                Optional<Form> inner = inner(field.get());
                boolean isList = field.get().shape() instanceof Shape.Parts;
                if (step.index() >= 0 && !isList || !isLast && inner.isEmpty()) {
                    return Optional.empty();
                }
                // the list as a whole where it stands last and no element is asked for
                int index = isList ? isLast ? step.index() : Math.max(step.index(), 0) : -1;
                path = path.with(new FieldPath.Step(field.get().name(), index, false));
                if (isLast) {
                    return index >= 0 ? Optional.empty() : Optional.of(new Known(path, field, 0));
                }
                form = inner;
                continue;
            }
            if (step.index() >= 0) {
                return Optional.empty();
            }
            if (form.isEmpty()) {
                path = path.with(step);
                continue;
            }
            Optional<String> section = isTop && !step.isQuoted() && !isLast
                    ? sections.keySet().stream().filter(name -> name.equalsIgnoreCase(step.name())).findFirst() : Optional.empty();
            if (isTop && step.name().equals(Noun.SECTIONS) && !isLast) {
                FieldPath.Step name = asked.steps().get(++i);
                if (name.index() >= 0) {
                    return Optional.empty();
                }
                path = path.with(FieldPath.Step.of(Noun.SECTIONS)).with(name);
                form = Optional.ofNullable(sections.get(name.name())).map(SectionType::form);
                inSection = true;
            } else if (section.isPresent()) {
                path = path.with(FieldPath.Step.of(Noun.SECTIONS)).with(FieldPath.Step.of(section.get()));
                form = Optional.of(sections.get(section.get()).form());
                inSection = true;
            } else if (step.isQuoted() || inSection || FREE.contains(step.name())) {
                path = path.with(step);
                form = Optional.empty();
            } else {
                return Optional.empty();
            }
        }
        return Optional.of(new Known(path, Optional.empty(), 0));
    }

    private static Optional<Field> field(Form form, FieldPath.Step step) {
        Optional<Field> exact = form.field(step.name());
        if (exact.isPresent() || step.isQuoted()) {
            return exact;
        }
        return form.fields().stream().filter(field -> bare(field.name()).equals(bare(step.name()))
                || bare(field.label()).equals(bare(step.name()))).findFirst();
    }

    /** The form within a field. */
    static Optional<Form> inner(Field field) {
        return switch (field.shape()) {
            case Shape.Part(Form form) -> Optional.of(form);
            case Shape.Parts(Form form, String shorthand) -> Optional.of(form);
            default -> Optional.empty();
        };
    }

    /** A name without case, spaces, hyphens and the like. */
    private static String bare(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("[\\s_.\\p{Pd}]+", "");
    }

    /** Whether a free member may stand in a part under its own name. */
    static boolean isFree(String name) {
        return FREE.contains(name);
    }
}
