package tramontane.catalogue.internal;

import java.util.List;
import java.util.Optional;
import tramontane.physics.units.QuantityKind;

/** What is known of one scalar path of parts, and which number its values go by. */
public final class FieldColumn {

    private final int number;
    private final String path;
    private final String label;
    private final boolean formed;
    private final boolean derived;
    private volatile List<QuantityKind> kinds;
    private volatile boolean plain;

    private FieldColumn(int number, String path, String label, Optional<QuantityKind> kind, boolean formed, boolean derived) {
        this.number = number;
        this.path = path;
        this.label = label;
        this.kinds = kind.map(List::of).orElse(null);
        this.formed = formed;
        this.derived = derived;
    }

    static FieldColumn formed(int number, String path, String label, Optional<QuantityKind> kind) {
        return new FieldColumn(number, path, label, kind, true, false);
    }

    static FieldColumn derived(int number, String path, String label, QuantityKind kind) {
        return new FieldColumn(number, path, label, Optional.of(kind), true, true);
    }

    static FieldColumn free(int number, String path) {
        return new FieldColumn(number, path, path.substring(path.lastIndexOf('.') + 1), Optional.empty(), false, false);
    }

    /** Its number, from 0. */
    public int number() {
        return number;
    }

    /** Its path in a part: {@code sections.drive.wires}. */
    public String path() {
        return path;
    }

    /** What people read. */
    public String label() {
        return label;
    }

    /** Whether it follows from others. */
    public boolean isDerived() {
        return derived;
    }

    /** Whether a form lists it, or it is derived. */
    public boolean isFormed() {
        return formed;
    }

    /** The kind of quantity, if all of its values may be of one; a plain number where nothing says more. */
    public Optional<QuantityKind> kind() {
        List<QuantityKind> known = kinds;
        return known != null ? known.stream().findFirst() : plain ? Optional.of(QuantityKind.NUMBER) : Optional.empty();
    }

    /** A value of a free path that may be of these kinds. */
    void narrow(List<QuantityKind> seen) {
        List<QuantityKind> known = kinds;
        if (formed || seen.equals(known)) {
            return;
        }
        synchronized (this) {
            kinds = kinds == null ? seen : kinds.stream().filter(seen::contains).toList();
        }
    }

    /** A value of a free path that is a bare number. */
    void bare() {
        if (!plain) {
            plain = true;
        }
    }
}
