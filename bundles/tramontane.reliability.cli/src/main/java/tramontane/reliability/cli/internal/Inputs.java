package tramontane.reliability.cli.internal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import tramontane.cli.terminal.Ending;

/** Files that go in, and places of those that come out. */
final class Inputs {

    private static final int MOST_BYTES = 16 << 20;

    private Inputs() {
    }

    /** The text of a file; of standard input where it is called {@code -}. */
    static String text(String name, InputStream input) throws Ending {
        try {
            if (name.equals("-")) {
                return text(name, input.readNBytes(MOST_BYTES + 1));
            }
            Path path = Path.of(name);
            if (Files.isDirectory(path)) {
                throw Ending.badInput(name + ": this is a folder; a life test as text was expected.");
            }
            if (!Files.exists(path)) {
                throw Ending.badInput(name + ": there is no such file.");
            }
            try (InputStream file = Files.newInputStream(path)) {
                return text(name, file.readNBytes(MOST_BYTES + 1));
            }
        } catch (InvalidPathException impossible) {
            throw Ending.badInput(name + ": no file can have this name.");
        } catch (IOException failed) {
            throw Ending.badInput(name + ": it cannot be read: " + failed.getMessage() + ".");
        }
    }

    private static String text(String name, byte[] content) throws Ending {
        if (content.length > MOST_BYTES) {
            throw Ending.badInput(name + ": it is larger than 16 MB; a life test as text was expected.");
        }
        try {
            return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(content)).toString();
        } catch (CharacterCodingException other) {
            // as spreadsheets write it: the degree sign is the same
            return new String(content, Charset.forName("windows-1252"));
        }
    }

    /** The file to write a picture to; found out before anything is computed. */
    static Path target(String option, String name) throws Ending {
        try {
            Path target = Path.of(name).toAbsolutePath().normalize();
            if (Files.isDirectory(target)) {
                throw Ending.badInput(option + " " + name + ": this is a folder; name a file in it.");
            }
            if (!Files.isDirectory(target.getParent())) {
                throw Ending.badInput(option + " " + name + ": the folder " + target.getParent() + " does not exist.");
            }
            return target;
        } catch (InvalidPathException impossible) {
            throw Ending.badInput(option + " " + name + ": no file can have this name.");
        }
    }
}
