package tramontane.desktop.internal.documents;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import tramontane.model.Design;
import tramontane.model.Value;
import tramontane.model.file.DesignFile;
import tramontane.model.file.Limits;
import tramontane.model.file.Loaded;
import tramontane.model.file.TreeFile;

/**
 * Copies of designs with unsaved changes, kept outside the designs' own files so that a program that ends without warning loses next to
 * nothing.
 *
 * <p>Each run has a folder of its own with a lock that the system releases when the run ends, however it does. Folders that nobody holds
 * are left from runs that did not end well.
 */
public final class Recovery implements AutoCloseable {

    private static final String LOCK = "lock";
    private static final String ENDING = ".recovery.json";

    /**
     * A design with unsaved changes.
     *
     * @param file   where it is kept
     * @param design the design
     */
    public record Unsaved(Optional<Path> file, Design design) {
    }

    private final Path folder;
    private final FileChannel lock;
    private final Map<String, Design> written = new HashMap<>();

    private Recovery(Path folder, FileChannel lock) {
        this.folder = folder;
        this.lock = lock;
    }

    /**
     * Begins to keep copies.
     *
     * @param all the folder of all runs
     * @throws IOException if it cannot be written to
     */
    public static Recovery begin(Path all) throws IOException {
        Path own = Files.createDirectories(all.resolve(UUID.randomUUID().toString()));
        FileChannel channel = FileChannel.open(own.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        channel.lock();
        return new Recovery(own, channel);
    }

    /**
     * Takes over what runs left behind that did not end well. Their copies stay until {@link #forget} is called, so that nothing is lost
     * where this run does not end well either.
     *
     * @param all the folder of all runs
     * @return what they left, by the folder it lies in
     */
    public static Map<Path, List<Unsaved>> left(Path all) {
        Map<Path, List<Unsaved>> left = new HashMap<>();
        if (!Files.isDirectory(all)) {
            return left;
        }
        try (DirectoryStream<Path> runs = Files.newDirectoryStream(all)) {
            for (Path run : runs) {
                if (Files.isDirectory(run) && abandoned(run)) {
                    left.put(run, read(run));
                }
            }
        } catch (IOException unreadable) {
            // then there is nothing that could be taken over
        }
        return left;
    }

    private static boolean abandoned(Path run) {
        try (FileChannel channel = FileChannel.open(run.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
                FileLock free = channel.tryLock()) {
            return free != null;
        } catch (IOException | OverlappingFileLockException held) {
            return false;
        }
    }

    private static List<Unsaved> read(Path run) {
        List<Unsaved> designs = new ArrayList<>();
        try (DirectoryStream<Path> copies = Files.newDirectoryStream(run, "*" + ENDING)) {
            for (Path copy : copies) {
                TreeFile.read(copy, Limits.STANDARD).tree().ifPresent(tree -> tree.tree("design").ifPresent(kept -> {
                    Loaded loaded = DesignFile.parse(TreeFile.write(kept));
                    loaded.draft().ifPresent(design -> designs.add(new Unsaved(tree.text("file").map(Path::of), design)));
                }));
            }
        } catch (IOException unreadable) {
            // what could be read is what there is
        }
        return designs;
    }

    /** Removes what was left by a run, once it is kept elsewhere. */
    public static void forget(Path run) {
        try (DirectoryStream<Path> files = Files.newDirectoryStream(run)) {
            for (Path file : files) {
                Files.deleteIfExists(file);
            }
            Files.deleteIfExists(run);
        } catch (IOException inUse) {
            // it will be offered again, which harms nobody
        }
    }

    /**
     * Brings the copies up to date; what has not changed since is not written again.
     *
     * @param unsaved all designs with unsaved changes, by a key that stays the same
     * @throws IOException if one cannot be written; the others are
     */
    public synchronized void keep(Map<String, Unsaved> unsaved) throws IOException {
        IOException failed = null;
        for (Map.Entry<String, Unsaved> each : unsaved.entrySet()) {
            Design design = each.getValue().design();
            if (written.get(each.getKey()) == design) {
                continue;
            }
            try {
                Value.Tree tree = Value.Tree.EMPTY;
                if (each.getValue().file().isPresent()) {
                    tree = tree.with("file", new Value.Text(each.getValue().file().get().toString()));
                }
                TreeFile.save(tree.with("design", design.tree()), copy(each.getKey()));
                written.put(each.getKey(), design);
            } catch (IOException e) {
                failed = e;
            }
        }
        Set<String> saved = new HashSet<>(written.keySet());
        saved.removeAll(unsaved.keySet());
        for (String key : saved) {
            Files.deleteIfExists(copy(key));
            written.remove(key);
        }
        if (failed != null) {
            throw failed;
        }
    }

    private Path copy(String key) {
        return folder.resolve(key + ENDING);
    }

    /** Ends well: nothing is left behind. */
    @Override
    public synchronized void close() {
        leave();
        forget(folder);
    }

    /** Ends and leaves the copies to whoever comes next. */
    public synchronized void leave() {
        try {
            lock.close();
        } catch (IOException e) {
            // the system releases it in any case
        }
    }
}
