package tramontane.model;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What {@link FormReader} read from one object: typed values by field name.
 *
 * <p>Getters named {@code ...if} give what was written, if it was; {@link #si} also applies the field's standard value.
 */
public final class Values {

    private final Form form;
    private final Map<String, Object> read;
    private final Set<String> unread;
    private final Value.Tree rest;

    Values(Form form, Map<String, Object> read, Set<String> unread, Value.Tree rest) {
        this.form = form;
        this.read = new LinkedHashMap<>(read);
        this.unread = Set.copyOf(unread);
        this.rest = rest;
    }

    /** In the place of what could not be read at all. */
    static Values unreadable(Form form) {
        return new Values(form, Map.of(), form.fields().stream().map(Field::name).collect(Collectors.toSet()), Value.Tree.EMPTY);
    }

    /** The members that the form does not know, as written. */
    public Value.Tree rest() {
        return rest;
    }

    /** Whether the field was written and could be read. */
    public boolean has(String field) {
        return read.containsKey(field);
    }

    /**
     * Whether the field was written and could not be read, which has been reported: nothing should call it missing then. So are all
     * fields of what could not be read as a whole.
     */
    public boolean unreadable(String field) {
        return unread.contains(known(field));
    }

    /** The text, choice or reference of a field. */
    public Optional<String> ifText(String field) {
        return get(field, String.class);
    }

    /** The text of a field or of its standard value; empty text for neither. */
    public String text(String field) {
        return ifText(field).orElseGet(() -> standard(field)
                .map(value -> value instanceof Value.Text text ? text.text() : "").orElse(""));
    }

    /** The quantity of a field. */
    public Optional<Quantity> ifQuantity(String field) {
        return get(field, Quantity.class);
    }

    /**
     * The SI value of a quantity field or of its standard value.
     *
     * @throws IllegalStateException for a field that has neither; ask {@link #has} first
     */
    public double si(String field) {
        return ifQuantity(field).or(() -> standardQuantity(field)).map(Quantity::si).orElseThrow(
                () -> new IllegalStateException(form.name() + " has no " + field + " and no standard value for it"));
    }

    /** The quantities of a field. */
    public Optional<Quantities> ifQuantities(String field) {
        return get(field, Quantities.class);
    }

    /** The whole number of a field or of its standard value. */
    public int whole(String field) {
        return get(field, Integer.class).or(() -> standard(field)
                .map(value -> value instanceof Value.Num num ? (int) num.number() : null)).orElseThrow(
                () -> new IllegalStateException(form.name() + " has no " + field + " and no standard value for it"));
    }

    /** The whole number of a field, if one is written. */
    public Optional<Integer> ifWhole(String field) {
        return read.get(known(field)) instanceof Integer whole ? Optional.of(whole) : Optional.empty();
    }

    /** Whether a yes-or-no field is on; off where it is not written. */
    public boolean on(String field) {
        return get(field, Boolean.class).orElse(false);
    }

    /** The object of a field. */
    public Optional<Values> part(String field) {
        return get(field, Values.class);
    }

    /** The objects of a list field; empty where it is not written. */
    public List<Values> parts(String field) {
        return list(field, Values.class);
    }

    /** The names of a list field; empty where it is not written. */
    public List<String> names(String field) {
        return list(field, String.class);
    }

    /** Quantities by name; empty where it is not written. */
    public Map<String, Quantity> byName(String field) {
        if (!(read.get(field) instanceof Map<?, ?> map)) {
            return Map.of();
        }
        Map<String, Quantity> result = new LinkedHashMap<>();
        map.forEach((name, quantity) -> result.put((String) name, (Quantity) quantity));
        return result;
    }

    /** A field that keeps anything as written. */
    public Optional<Value> anything(String field) {
        return get(field, Value.class);
    }

    private <T> Optional<T> get(String field, Class<T> type) {
        return Optional.ofNullable(read.get(known(field))).map(type::cast);
    }

    private <T> List<T> list(String field, Class<T> type) {
        return read.get(known(field)) instanceof List<?> list ? list.stream().<T>map(type::cast).toList() : List.of();
    }

    private String known(String field) {
        if (form.field(field).isEmpty()) {
            throw new IllegalArgumentException("form " + form.name() + " has no field " + field);
        }
        return field;
    }

    private Optional<Value> standard(String field) {
        return form.field(field).flatMap(Field::standard);
    }

    private Optional<Quantity> standardQuantity(String field) {
        return form.field(field).flatMap(known -> known.standard()
                .flatMap(value -> known.shape() instanceof Shape.Amount amount
                        ? FormReader.quantity(value, amount.kind()) : Optional.empty()));
    }
}
