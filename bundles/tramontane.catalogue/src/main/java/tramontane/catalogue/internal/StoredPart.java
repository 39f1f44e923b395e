package tramontane.catalogue.internal;

import java.nio.file.Path;
import java.util.Optional;
import tramontane.model.AirMover;

/** One sound part of a catalogue: its values by column, and the way to the rest of it. */
final class StoredPart {

    private final String id;
    private final StoredFile file;
    private final int which;
    private final Path path;
    private final Optional<AirMover> held;
    private PartRow row;

    private StoredPart(String id, PartRow row, StoredFile file, int which, Path path, Optional<AirMover> held) {
        this.id = id;
        this.row = row;
        this.file = file;
        this.which = which;
        this.path = path;
        this.held = held;
    }

    /** A part that is made from its file when asked for. */
    static StoredPart lazy(String id, PartRow row, StoredFile file, int which) {
        return new StoredPart(id, row, file, which, file.path(), Optional.empty());
    }

    /** A part that is there already. */
    static StoredPart held(AirMover mover, PartRow row, int which, Path path) {
        return new StoredPart(mover.id(), row, null, which, path, Optional.of(mover));
    }

    String id() {
        return id;
    }

    /** Its number in its file. */
    int which() {
        return which;
    }

    Path path() {
        return path;
    }

    AirMover mover() {
        return held.orElseGet(() -> file.part(which));
    }

    /** Its values, to be taken once while the columns are made. */
    PartRow takeRow() {
        PartRow taken = row;
        row = null;
        return taken;
    }
}
