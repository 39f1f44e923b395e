package tramontane.catalogue;

import java.util.Optional;
import tramontane.physics.units.QuantityKind;

/**
 * One field that parts of a catalogue can be compared by.
 *
 * @param path      its place in a part: {@code width}, {@code sections.drive.supply.voltage}
 * @param label     what people read: {@code frame width}
 * @param kind      what kind of quantity it is; empty for a text
 * @param isDerived whether it follows from others, see {@link Derived}
 */
public record CatalogueField(String path, String label, Optional<QuantityKind> kind, boolean isDerived) {

    private static final String SECTIONS = "sections.";

    /** Its path without {@code sections.}, as it may be written in a filter. */
    public String name() {
        return path.startsWith(SECTIONS) ? path.substring(SECTIONS.length()) : path;
    }
}
