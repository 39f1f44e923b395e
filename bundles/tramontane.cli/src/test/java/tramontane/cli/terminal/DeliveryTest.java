package tramontane.cli.terminal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DeliveryTest {

    @TempDir
    private Path folder;

    private long files() throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.count();
        }
    }

    @Test
    void replacesAnOldFile() throws Exception {
        Path file = Files.writeString(folder.resolve("out"), "a much longer old text");
        Delivery.write(file, "m³/h");
        assertEquals("m³/h", Files.readString(file));
        assertEquals(1, files());
    }

    @Test
    void writesWhatALinkPointsTo() throws Exception {
        Path file = Files.writeString(folder.resolve("real"), "old");
        Path link = Files.createSymbolicLink(folder.resolve("link"), file);
        Delivery.write(link, "new");
        assertTrue(Files.isSymbolicLink(link));
        assertEquals("new", Files.readString(file));
    }

    @Test
    void aFailureLeavesTheOldFileAndNothingBeside() throws Exception {
        Path busy = Files.createDirectory(folder.resolve("busy"));
        Files.writeString(busy.resolve("x"), "kept");
        Ending ending = assertThrows(Ending.class, () -> Delivery.write(busy.resolve("x").resolve("y"), "new"));
        assertEquals(3, ending.code());
        assertEquals("kept", Files.readString(busy.resolve("x")));
        assertEquals(1, files());
    }
}
