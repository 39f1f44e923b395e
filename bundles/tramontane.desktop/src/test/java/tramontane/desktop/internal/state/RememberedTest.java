package tramontane.desktop.internal.state;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tramontane.desktop.Spot;
import tramontane.desktop.internal.layout.Arrangement;
import tramontane.physics.units.UnitSystem;

class RememberedTest {

    @TempDir
    Path folder;

    private Remembered some() {
        return Remembered.NOTHING.used(Path.of("/designs/box.tramontane.json")).with(UnitSystem.US).with(Remembered.Colours.DARK)
                .with("chart", "zoom", "0 1").with(Arrangement.standard(Map.of(Spot.LEFT, List.of("tree"))),
                        Optional.of(List.of(1, 2, 1300, 800)), false);
    }

    @Test
    void whatIsKeptIsReadAgain() throws IOException {
        Path file = folder.resolve("desktop.json");
        some().save(file);
        assertEquals(new Remembered.Read(some(), ""), Remembered.read(file));
    }

    @Test
    void theFirstStartHasNothing() {
        assertEquals(new Remembered.Read(Remembered.NOTHING, ""), Remembered.read(folder.resolve("desktop.json")));
        assertFalse(Remembered.NOTHING.started());
    }

    @Test
    void aBrokenFileGivesTheOneBeforeAndSaysSo() throws IOException {
        Path file = folder.resolve("desktop.json");
        some().save(file);
        some().with(UnitSystem.SI).save(file);
        Files.writeString(file, "{\"format\": 1, \"layout\": [");
        Remembered.Read read = Remembered.read(file);
        assertEquals(some(), read.value());
        assertTrue(read.note().contains("an earlier one is used"), read.note());
        some().save(file);
        assertEquals(some(), Remembered.read(file).value(), "a broken file is not kept as the one before");
        assertTrue(Files.readString(folder.resolve("desktop.json.previous")).contains("US"));
    }

    @Test
    void recentFilesAreNewestFirstOnceEachAndFew() {
        Remembered many = Remembered.NOTHING;
        for (int i = 0; i < 20; i++) {
            many = many.used(Path.of("/d/" + i));
        }
        assertEquals(Remembered.MOST_RECENT, many.recent().size());
        assertEquals(Path.of("/d/15"), many.used(Path.of("/d/15")).recent().getFirst());
        assertEquals(Remembered.MOST_RECENT, many.used(Path.of("/d/15")).recent().size());
        assertFalse(many.forgotten(Path.of("/d/19")).recent().contains(Path.of("/d/19")));
    }

    @Test
    void aLayoutThatIsNoneLeavesTheRest() throws IOException {
        Path file = folder.resolve("desktop.json");
        some().save(file);
        Files.writeString(file, Files.readString(file).replace("\"bottom\"", "\"elsewhere\""));
        Remembered read = Remembered.read(file).value();
        assertEquals(Optional.empty(), read.arrangement());
        assertEquals(some().recent(), read.recent());
    }
}
