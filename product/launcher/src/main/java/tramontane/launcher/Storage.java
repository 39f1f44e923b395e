package tramontane.launcher;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Optional;
import java.util.zip.CRC32C;

/**
 * The folder that one running framework writes to, outside the install folder. Each install has a folder of its own in
 * the user's cache with numbered slots; a lock on a file beside the slot keeps two programs apart that run at once. Where
 * nothing can be written there, a temporary folder stands in and goes away again.
 */
final class Storage implements AutoCloseable {
    private static final int SLOTS = 256;

    private final Path folder;
    private final Optional<FileChannel> lock;

    private Storage(Path folder, Optional<FileChannel> lock) {
        this.folder = folder;
        this.lock = lock;
    }

    /**
     * Takes a free slot.
     *
     * @param caches the user's cache folder
     * @param install the install folder, absolute
     */
    static Storage open(Path caches, Path install) throws IOException {
        try {
            Path own = Files.createDirectories(caches.resolve("tramontane").resolve(name(install)));
            for (int slot = 0; slot < SLOTS; slot++) {
                Optional<FileChannel> lock = lock(own.resolve(slot + ".lock"));
                if (lock.isPresent()) {
                    return inSlot(own.resolve(Integer.toString(slot)), lock.get());
                }
            }
        } catch (IOException notWritable) {
            // Told nobody: the temporary folder does as well, it only costs some time.
        }
        return new Storage(Files.createTempDirectory("tramontane"), Optional.empty());
    }

    private static Storage inSlot(Path slot, FileChannel lock) throws IOException {
        try {
            // Found out now rather than by the framework: a full disk, or a folder that somebody else owns.
            Files.createDirectories(slot);
            Path trial = slot.resolve("trial");
            Files.deleteIfExists(trial);
            Files.delete(Files.createFile(trial));
            return new Storage(slot, Optional.of(lock));
        } catch (IOException notWritable) {
            lock.close();
            throw notWritable;
        }
    }

    private static Optional<FileChannel> lock(Path file) throws IOException {
        FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        try {
            FileLock lock = channel.tryLock();
            if (lock != null) {
                return Optional.of(channel);
            }
        } catch (OverlappingFileLockException takenByThisProcess) {
            // The next slot is as good.
        }
        channel.close();
        return Optional.empty();
    }

    /** A short name for an install folder; two installs rarely share one, and then they only share slots. */
    private static String name(Path install) {
        CRC32C sum = new CRC32C();
        sum.update(install.toString().getBytes(StandardCharsets.UTF_8));
        return String.format("%08x", sum.getValue());
    }

    Path folder() {
        return folder;
    }

    /** Whether the folder is a temporary one, to be removed even if the program is interrupted. */
    boolean temporary() {
        return lock.isEmpty();
    }

    /** Gives the slot free, or removes the temporary folder as far as that is possible: the work is done either way. */
    @Override
    public void close() {
        try {
            if (lock.isPresent()) {
                lock.get().close();
            } else {
                remove(folder);
            }
        } catch (IOException inUse) {
            // A bundle still writes there; the system's own clean-up of temporary folders will have it.
        }
    }

    private static void remove(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        Files.walkFileTree(folder, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                Files.deleteIfExists(file);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path visited, IOException exception) throws IOException {
                Files.deleteIfExists(visited);
                return FileVisitResult.CONTINUE;
            }
        });
    }
}
