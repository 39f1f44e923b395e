package tramontane.catalogue.internal;

import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import tramontane.model.AirMover;
import tramontane.model.Value;
import tramontane.model.file.Limits;
import tramontane.model.file.TreeFile;

/** The bytes of a file that parts are made from when somebody asks for them. */
final class StoredFile {

    private final Path path;
    private final byte[] bytes;
    private final FileIndex index;
    private volatile Value.Tree shared;

    StoredFile(Path path, byte[] bytes, FileIndex index) {
        this.path = path;
        this.bytes = bytes;
        this.index = index;
    }

    Path path() {
        return path;
    }

    /** Makes a part that is known to be sound. */
    AirMover part(int which) {
        Value.Tree own = own(which);
        return PartTrees.part(shared(), index.family() ? own : own.without(PartTrees.FORMAT_MEMBER), "", List.of()).mover()
                .orElseThrow(() -> new IllegalStateException("part " + which + " of " + path + " was sound when it was read"));
    }

    /** What the family says: made by whichever thread comes first, the same for all. */
    private Value.Tree shared() {
        Value.Tree known = shared;
        if (known == null) {
            int[] members = index.shared();
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            out.write('{');
            for (int i = 0; i < members.length; i += 2) {
                if (i > 0) {
                    out.write(',');
                }
                out.write(bytes, members[i], members[i + 1] - members[i]);
            }
            out.write('}');
            known = TreeFile.parse(out.toByteArray(), Limits.STANDARD).tree().orElseThrow();
            shared = known;
        }
        return known;
    }

    private Value.Tree own(int which) {
        return TreeFile.parse(Arrays.copyOfRange(bytes, index.start(which), index.end(which)), Limits.STANDARD).tree()
                .orElseThrow(() -> new IllegalStateException(path + " was JSON when it was read"));
    }
}
