package tramontane.model.file;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.util.UUID;

/** Reads and replaces whole files, with sentences for what can go wrong. */
final class SafeFile {

    /** A chain of links longer than this is taken for a ring. */
    private static final int MOST_LINKS = 40;

    /** Writes the content of a file. */
    interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    private SafeFile() {
    }

    /** All bytes of a file, refused before reading where it is larger than allowed. */
    static byte[] read(Path file, long most) throws IOException {
        if (Files.isDirectory(file)) {
            throw new IOException(name(file) + " is a folder; expected a file");
        }
        try {
            long size = Files.size(file);
            if (size > most) {
                throw new IOException(name(file) + " has " + size + " bytes; expected " + most + " at most");
            }
            if (!Files.isRegularFile(file)) {
                throw new IOException(name(file) + " is a device or pipe; expected a file");
            }
            try (var in = Files.newInputStream(file)) {
                // it may grow while it is read
                byte[] bytes = in.readNBytes(Math.toIntExact(most + 1));
                if (bytes.length > most) {
                    throw new IOException(name(file) + " has more than " + most + " bytes; expected " + most + " at most");
                }
                return bytes;
            }
        } catch (FileSystemException e) {
            throw new IOException(name(file) + " cannot be read: " + reason(e), e);
        }
    }

    /**
     * Puts a file in the place of an older one, or makes it: written beside, flushed to the disk, moved over in one step. When
     * anything fails, the older file is as it was and nothing is left beside it. A link stays a link; permissions stay.
     */
    static void replace(Path file, Content content) throws IOException {
        try {
            Path target = target(file);
            if (Files.isDirectory(target)) {
                throw new IOException("it is a folder");
            }
            if (Files.exists(target) && !Files.isWritable(target)) {
                throw new AccessDeniedException(target.toString());
            }
            Path beside = target.resolveSibling("." + target.getFileName() + "." + UUID.randomUUID() + ".part");
            try {
                write(beside, target, content);
                Files.move(beside, target, StandardCopyOption.ATOMIC_MOVE);
            } catch (IOException | RuntimeException e) {
                discard(beside, e);
                throw e;
            }
            flushFolder(target);
        } catch (IOException e) {
            throw new IOException(name(file) + " cannot be saved: " + reason(e), e);
        }
    }

    /** The file that links lead to, whether it exists or not. */
    private static Path target(Path file) throws IOException {
        Path target = file.toAbsolutePath();
        for (int links = 0; Files.isSymbolicLink(target); links++) {
            if (links == MOST_LINKS) {
                throw new IOException("its links lead in a ring");
            }
            target = target.resolveSibling(Files.readSymbolicLink(target));
        }
        return target;
    }

    private static void write(Path beside, Path target, Content content) throws IOException {
        try (FileChannel channel = FileChannel.open(beside, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            keepPermissions(target, beside); // before there is anything in it to be read
            OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel), 1 << 16);
            content.writeTo(out);
            out.flush();
            channel.force(true);
        }
    }

    private static void keepPermissions(Path from, Path to) throws IOException {
        PosixFileAttributeView old = Files.getFileAttributeView(from, PosixFileAttributeView.class);
        PosixFileAttributeView changed = Files.getFileAttributeView(to, PosixFileAttributeView.class);
        if (Files.exists(from) && old != null && changed != null) {
            changed.setPermissions(old.readAttributes().permissions());
        }
    }

    private static void discard(Path beside, Exception cause) {
        try {
            Files.deleteIfExists(beside);
        } catch (IOException e) {
            cause.addSuppressed(e);
        }
    }

    /** Makes the new name itself safe; systems that cannot do this for a folder do without. */
    private static void flushFolder(Path target) {
        try (FileChannel folder = FileChannel.open(target.getParent(), StandardOpenOption.READ)) {
            folder.force(true);
        } catch (IOException e) {
            // the file is complete in any case
        }
    }

    private static String name(Path file) {
        return file.getFileName() == null ? file.toString() : file.getFileName().toString();
    }

    /** What went wrong, in words. */
    private static String reason(IOException e) {
        return switch (e) {
            case NoSuchFileException missing -> "there is no such file or folder";
            case AccessDeniedException denied -> "permission is missing";
            case FileSystemException other when other.getReason() != null -> other.getReason();
            case FileSystemException other -> "the file system refused";
            default -> e.getMessage() == null ? "input or output failed" : e.getMessage();
        };
    }
}
