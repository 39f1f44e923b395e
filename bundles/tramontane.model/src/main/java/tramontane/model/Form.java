package tramontane.model;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The fields of one kind of object, in the order in which they are shown and written.
 *
 * @param name   what such an object is called in messages: {@code condition}
 * @param help   one sentence on what it is
 * @param open   whether members that it does not list belong to somebody else (a passage's parameters) and are no mistake here
 * @param fields its fields, no name twice
 */
public record Form(String name, String help, boolean open, List<Field> fields) {

    public Form {
        fields = List.copyOf(fields);
        Set<String> names = new HashSet<>();
        for (Field field : fields) {
            if (!names.add(field.name())) {
                throw new IllegalArgumentException("form " + name + " has field " + field.name() + " twice");
            }
        }
    }

    /** A form of these fields. */
    public static Form of(String name, String help, Field... fields) {
        return new Form(name, help, false, List.of(fields));
    }

    /** A form of these fields beside others that somebody else knows. */
    public static Form open(String name, String help, Field... fields) {
        return new Form(name, help, true, List.of(fields));
    }

    /** The field of that name. */
    public Optional<Field> field(String name) {
        for (Field field : fields) { // asked for every value that is read
            if (field.name().equals(name)) {
                return Optional.of(field);
            }
        }
        return Optional.empty();
    }
}
