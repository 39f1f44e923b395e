package tramontane.model.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import tramontane.model.Design;
import tramontane.model.Problem;

class SaveTest {

    @TempDir
    Path folder;

    private static final Design DESIGN = Design.EMPTY.withName("new");

    private List<String> files() throws IOException {
        try (var files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    private static String problem(Path file) {
        Loaded loaded = DesignFile.read(file);
        assertTrue(loaded.draft().isEmpty());
        return String.join("\n", loaded.problems().stream().map(Problem::sentence).toList());
    }

    @Test
    void aDesignIsSavedAndReadBack() throws IOException {
        Path file = folder.resolve("a.tramontane.json");
        Design design = DesignFile.parse(DesignFileTest.rack()).design().orElseThrow();
        DesignFile.save(design, file);
        assertEquals(design, DesignFile.read(file).design().orElseThrow());
        DesignFile.save(DESIGN, file);
        assertEquals(DESIGN, DesignFile.read(file).design().orElseThrow());
        assertEquals(List.of("a.tramontane.json"), files());
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void permissionsStay() throws IOException {
        Path file = Files.writeString(folder.resolve("a"), "old");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r-----"));
        DesignFile.save(DESIGN, file);
        assertEquals("rw-r-----", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
        // a new file gets what any other program's new file gets
        Path other = folder.resolve("b");
        DesignFile.save(DESIGN, other);
        assertEquals(Files.getPosixFilePermissions(Files.writeString(folder.resolve("c"), "")),
                Files.getPosixFilePermissions(other));
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void aLinkStaysALink() throws IOException {
        Path real = Files.writeString(Files.createDirectory(folder.resolve("real")).resolve("a"), "old");
        Path link = Files.createSymbolicLink(folder.resolve("link"), Path.of("real", "a"));
        DesignFile.save(DESIGN, link);
        assertTrue(Files.isSymbolicLink(link));
        assertEquals(DESIGN, DesignFile.read(real).design().orElseThrow());
        Path early = Files.createSymbolicLink(folder.resolve("early"), Path.of("real", "later"));
        DesignFile.save(DESIGN, early);
        assertTrue(Files.isSymbolicLink(early) && Files.isRegularFile(folder.resolve("real/later"), LinkOption.NOFOLLOW_LINKS));
        Path ring = Files.createSymbolicLink(folder.resolve("ring"), Path.of("ring"));
        assertEquals("ring cannot be saved: its links lead in a ring",
                assertThrows(IOException.class, () -> DesignFile.save(DESIGN, ring)).getMessage());
    }

    @Test
    void aFailureHalfwayLeavesTheOldFileAndNothingBeside() throws IOException {
        Path file = Files.writeString(folder.resolve("a"), "old");
        IOException failure = assertThrows(IOException.class, () -> SafeFile.replace(file, out -> {
            out.write(new byte[1 << 20]);
            out.flush();
            throw new IOException("no space left");
        }));
        assertEquals("a cannot be saved: no space left", failure.getMessage());
        assertEquals("old", Files.readString(file));
        assertThrows(IllegalStateException.class, () -> SafeFile.replace(file, out -> {
            throw new IllegalStateException();
        }));
        assertEquals(List.of("a"), files());
    }

    @Test
    void whereNothingCanBeSavedASentenceSaysWhy() throws IOException {
        assertEquals("a cannot be saved: there is no such file or folder", assertThrows(IOException.class,
                () -> DesignFile.save(DESIGN, folder.resolve("missing/a"))).getMessage());
        Path taken = Files.createDirectory(folder.resolve("taken"));
        assertEquals("taken cannot be saved: it is a folder",
                assertThrows(IOException.class, () -> DesignFile.save(DESIGN, taken)).getMessage());
        assertEquals(List.of("taken"), files());
    }

    @Test
    void aFileThatCannotBeReadIsAProblem() throws IOException {
        assertEquals("a cannot be read: there is no such file or folder", problem(folder.resolve("a")));
        assertEquals("b is a folder; expected a file", problem(Files.createDirectory(folder.resolve("b"))));
        assertEquals("c cannot be read: there is no such file or folder", problem(folder.resolve("b/d/c")));
        assertEquals("the file is empty; expected an object { … }", problem(Files.createFile(folder.resolve("d"))));
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void aDeviceIsNotReadForever() {
        assertEquals("zero is a device or pipe; expected a file", problem(Path.of("/dev/zero")));
    }

    @Test
    void aFileAboveTheLimitIsRefusedUnread() throws IOException {
        Path file = folder.resolve("huge");
        try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
            sparse.setLength(1L << 36); // far more than memory: reading it would fail
        }
        assertEquals("huge has 68719476736 bytes; expected 67108864 at most", problem(file));
        Files.writeString(file, "{\"format\": 1}");
        Loaded loaded = DesignFile.read(file, Limits.STANDARD.withBytes(12));
        assertEquals("huge has 13 bytes; expected 12 at most", loaded.problems().getFirst().sentence());
        assertTrue(DesignFile.read(file, Limits.STANDARD.withBytes(13)).design().isPresent());
        assertFalse(DesignFile.parse(Files.readAllBytes(file), Limits.STANDARD.withBytes(12)).design().isPresent());
    }
}
