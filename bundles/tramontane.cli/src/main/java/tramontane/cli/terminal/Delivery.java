package tramontane.cli.terminal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** Writes results to a file, all or nothing: beside its place first, then moved over. */
public final class Delivery {

    private Delivery() {
    }

    /**
     * The file to write to.
     *
     * @param name  as the user named it
     * @param input the design, which is never written over
     * @throws Ending where nothing can be written; found out before anything is computed
     */
    public static Path target(String name, Path input) throws Ending {
        Path target = target(name);
        try {
            if (Files.exists(target) && Files.isSameFile(target, input)) {
                throw Ending.badInput("--output " + name + ": this is the design itself, which is not written over.");
            }
            return target;
        } catch (IOException failed) {
            throw Ending.badInput("--output " + name + ": " + failed.getMessage() + ".");
        }
    }

    /** The same where no file went in. */
    public static Path target(String name) throws Ending {
        try {
            Path target = Path.of(name).toAbsolutePath();
            if (Files.isDirectory(target)) {
                throw Ending.badInput("--output " + name + ": this is a folder; name a file in it.");
            }
            if (!Files.isDirectory(target.getParent())) {
                throw Ending.badInput("--output " + name + ": the folder " + target.getParent() + " does not exist.");
            }
            return target;
        } catch (InvalidPathException impossible) {
            throw Ending.badInput("--output " + name + ": no file can have this name.");
        }
    }

    /**
     * The folder to write to; it need not be there, but the one around it must.
     *
     * @param option how the user named it: {@code --output}
     * @param name   as the user named it
     * @throws Ending where nothing can be written; found out before anything is computed
     */
    public static Path folder(String option, String name) throws Ending {
        try {
            Path folder = Path.of(name).toAbsolutePath().normalize();
            if (Files.exists(folder) && !Files.isDirectory(folder)) {
                throw Ending.badInput(option + " " + name + ": this is a file; name a folder.");
            }
            if (!Files.exists(folder) && !Files.isDirectory(folder.getParent())) {
                throw Ending.badInput(option + " " + name + ": the folder " + folder.getParent() + " does not exist.");
            }
            return folder;
        } catch (InvalidPathException impossible) {
            throw Ending.badInput(option + " " + name + ": no folder can have this name.");
        }
    }

    /**
     * Writes a text in UTF-8.
     *
     * @throws Ending where it could not be written; an old file is still there then
     */
    public static void write(Path target, String text) throws Ending {
        Path beside = null;
        try {
            // a link stays a link: what it points to is written
            Path place = Files.exists(target) ? target.toRealPath() : target;
            if (Files.exists(place) && !Files.isRegularFile(place)) {
                Files.writeString(place, text); // a device or a pipe
                return;
            }
            beside = place.resolveSibling("." + place.getFileName() + "." + ProcessHandle.current().pid() + ".part");
            try (FileChannel channel = FileChannel.open(beside, StandardOpenOption.CREATE, StandardOpenOption.WRITE,
                    StandardOpenOption.TRUNCATE_EXISTING)) {
                ByteBuffer bytes = StandardCharsets.UTF_8.encode(text);
                while (bytes.hasRemaining()) {
                    channel.write(bytes);
                }
                channel.force(true);
            }
            move(beside, place);
        } catch (IOException failed) {
            throw Ending.broken("The results could not be written to " + target + ": "
                    + (failed instanceof AccessDeniedException ? "permission denied" : failed.getMessage()) + ".");
        } finally {
            discard(beside);
        }
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException plain) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private static void discard(Path beside) {
        try {
            if (beside != null) {
                Files.deleteIfExists(beside);
            }
        } catch (IOException stays) {
            // a left-over that hides behind a dot; the user has been told of the failure itself
        }
    }
}
