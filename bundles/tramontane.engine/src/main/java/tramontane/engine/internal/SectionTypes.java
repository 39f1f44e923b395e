package tramontane.engine.internal;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tramontane.analysis.SectionType;
import tramontane.analysis.SectionType.Owner;
import tramontane.model.Problem;

/**
 * The section types that count, told apart by name and owner.
 *
 * @param byName those of each name by what may carry them
 */
record SectionTypes(Map<String, Map<Owner, Extension<SectionType<?>>>> byName) {

    /**
     * Sorts section types by name and owner.
     *
     * @param extensions what is loaded
     * @param problems   receives which of them throw, and which clash
     */
    static SectionTypes of(List<Extension<SectionType<?>>> extensions, List<Problem> problems) {
        Map<String, Map<Owner, Extension<SectionType<?>>>> byName = new TreeMap<>();
        for (Extension<SectionType<?>> extension : ranked(extensions)) {
            try {
                String name = extension.service().form().name();
                List<Owner> owners = extension.service().owners().stream().sorted().toList();
                Map<Owner, Extension<SectionType<?>>> known = byName.computeIfAbsent(name,
                        each -> new EnumMap<>(Owner.class));
                for (Owner owner : owners) {
                    Extension<SectionType<?>> used = known.putIfAbsent(owner, extension);
                    if (used != null) {
                        problems.add(Problem.caution("", "section " + name + " of " + owner.words() + " is given by bundles "
                                + used.bundle() + " and " + extension.bundle() + "; that of " + used.bundle() + " is used"));
                    }
                }
            } catch (Throwable e) { // whatever an extension does wrong must not reach the others
                problems.add(Problem.caution("", Failure.sentence("a section type of bundle " + extension.bundle(), e)));
            }
        }
        byName.values().removeIf(Map::isEmpty);
        return new SectionTypes(byName);
    }

    private static List<Extension<SectionType<?>>> ranked(Collection<Extension<SectionType<?>>> extensions) {
        return extensions.stream().sorted((a, b) -> a == b ? 0 : a.before(b) ? -1 : 1).toList();
    }

    /** Each type once, by name, within it in the order in which they count. */
    List<SectionType<?>> services() {
        List<SectionType<?>> services = new ArrayList<>();
        byName.values().forEach(known -> ranked(known.values()).stream().distinct()
                .forEach(extension -> services.add(extension.service())));
        return List.copyOf(services);
    }
}
