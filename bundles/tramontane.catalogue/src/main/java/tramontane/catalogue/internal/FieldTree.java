package tramontane.catalogue.internal;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import tramontane.analysis.SectionType;
import tramontane.model.AirMover;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Noun;
import tramontane.model.Shape;
import tramontane.physics.units.QuantityKind;

/** The fields of parts: those of the form, of known sections, derived ones, and what else occurs; safe for several threads. */
public final class FieldTree {

    /** The derived fields, in the order of {@link #DERIVED}. */
    private static final List<String> DERIVED_LABELS = List.of("free delivery", "shut-off pressure", "flow at best efficiency",
            "pressure at best efficiency", "best efficiency", "specific speed", "tip speed");

    private static final List<QuantityKind> DERIVED_KINDS = List.of(QuantityKind.FLOW, QuantityKind.PRESSURE, QuantityKind.FLOW,
            QuantityKind.PRESSURE, QuantityKind.FRACTION, QuantityKind.NUMBER, QuantityKind.VELOCITY);

    /** Names of the derived fields; their columns are the first ones. */
    public static final List<String> DERIVED = List.of("freeDelivery", "shutOff", "bestFlow", "bestPressure", "bestEfficiency",
            "specificSpeed", "tipSpeed");

    /** More paths than these are no fields: a catalogue of so many different members is not one that anybody filters by them. */
    private static final int MOST = 2000;

    /** Members whose names could not be written in a filter are no fields. */
    private static final Pattern NAME = Pattern.compile("[\\p{L}_][\\p{L}\\p{N}_-]*");

    private final Map<String, SectionType<?>> sections = new LinkedHashMap<>();
    private final Map<String, FieldColumn> byPath = new ConcurrentHashMap<>();
    private final List<FieldColumn> columns = new ArrayList<>();

    /** The fields of parts with sections of these types. */
    public FieldTree(Collection<? extends SectionType<?>> types) {
        for (int i = 0; i < DERIVED.size(); i++) {
            add(FieldColumn.derived(columns.size(), DERIVED.get(i), DERIVED_LABELS.get(i), DERIVED_KINDS.get(i)));
        }
        form(AirMover.FORM, "");
        for (SectionType<?> type : types) {
            if (type.owners().contains(SectionType.Owner.MOVER) && sections.putIfAbsent(type.form().name(), type) == null) {
                form(type.form(), Noun.SECTIONS + "." + type.form().name() + ".");
            }
        }
    }

    private void form(Form form, String before) {
        for (Field field : form.fields()) {
            if (field.shape() instanceof Shape.Part(Form inner)) {
                form(inner, before + field.name() + ".");
            } else if (isScalar(field.shape()) && !byPath.containsKey(before + field.name())) {
                add(FieldColumn.formed(columns.size(), before + field.name(), field.label(), kind(field.shape())));
            }
        }
    }

    /** Whether a field of that shape has one value, which can be compared. */
    static boolean isScalar(Shape shape) {
        return switch (shape) {
            case Shape.Words words -> true;
            case Shape.Choice choice -> true;
            case Shape.YesNo yesNo -> true;
            case Shape.Whole whole -> true;
            case Shape.Amount amount -> true;
            case Shape.Reference reference -> true;
            default -> false;
        };
    }

    private static Optional<QuantityKind> kind(Shape shape) {
        return switch (shape) {
            case Shape.Amount(QuantityKind kind, var range) -> Optional.of(kind);
            case Shape.Whole whole -> Optional.of(QuantityKind.COUNT);
            default -> Optional.empty();
        };
    }

    private void add(FieldColumn column) {
        columns.add(column);
        byPath.put(column.path(), column);
    }

    /** The section types that are known, by name. */
    public Map<String, SectionType<?>> sections() {
        return sections;
    }

    /** The column of a path that some form lists. */
    Optional<FieldColumn> column(String path) {
        return Optional.ofNullable(byPath.get(path));
    }

    /** The column of a path that no form lists, made where it is new; empty where it cannot be a field. */
    Optional<FieldColumn> free(String path) {
        FieldColumn known = byPath.get(path);
        if (known != null) {
            return Optional.of(known).filter(column -> !column.isDerived());
        }
        for (String name : path.split("\\.", -1)) {
            if (!NAME.matcher(name).matches()) {
                return Optional.empty();
            }
        }
        synchronized (columns) {
            if (!byPath.containsKey(path) && columns.size() < MOST) {
                add(FieldColumn.free(columns.size(), path));
            }
        }
        return Optional.ofNullable(byPath.get(path));
    }

    /** All columns, by number. */
    public List<FieldColumn> columns() {
        synchronized (columns) {
            return List.copyOf(columns);
        }
    }
}
