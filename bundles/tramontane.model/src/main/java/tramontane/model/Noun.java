package tramontane.model;

import java.util.Collection;
import java.util.Optional;

/** A record of the model that keeps what it does not know. */
public interface Noun {

    /** The name of the member that holds the sections. */
    String SECTIONS = "sections";

    /** Members of the file that the model itself does not know, among them {@code sections}, {@code notes}, {@code layout}. */
    Value.Tree more();

    /** The whole as it stands in a file, an object even where a file may hold it in a shorter way. */
    Value.Tree tree();

    /**
     * The part of this noun that belongs to one analysis, as written.
     *
     * @param name the section type's name, for example {@code noise}
     */
    default Optional<Value> section(String name) {
        return more().tree(SECTIONS).flatMap(sections -> sections.get(name));
    }

    /**
     * Of the members that the model does not know, sections of some names alone: what is left for who reads nothing else.
     *
     * @param names the section types' names
     */
    default Value.Tree only(Collection<String> names) {
        Value.Tree sections = Value.Tree.EMPTY;
        for (String name : names) {
            sections = section(name).isPresent() ? sections.with(name, section(name).get()) : sections;
        }
        return sections.isEmpty() ? Value.Tree.EMPTY : Value.Tree.EMPTY.with(SECTIONS, sections);
    }
}
