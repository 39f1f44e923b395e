package tramontane.desktop.internal.documents;

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
import tramontane.desktop.internal.documents.Recovery.Unsaved;
import tramontane.model.Design;

class RecoveryTest {

    @TempDir
    Path all;

    private static final Design DESIGN = Design.EMPTY.withName("half done");

    @Test
    void aRunThatGoesOnIsNotTakenOver() throws IOException {
        try (Recovery running = Recovery.begin(all)) {
            running.keep(Map.of("a", new Unsaved(Optional.empty(), DESIGN)));
            assertEquals(Map.of(), Recovery.left(all));
        }
    }

    @Test
    void whatARunLeftThatDidNotEndWellIsFound() throws IOException {
        Recovery ended = Recovery.begin(all);
        ended.keep(Map.of("a", new Unsaved(Optional.of(Path.of("box.tramontane.json")), DESIGN)));
        ended.leave();
        Map<Path, List<Unsaved>> found = Recovery.left(all);
        assertEquals(List.of(new Unsaved(Optional.of(Path.of("box.tramontane.json")), DESIGN)), found.values().iterator().next());
        Path left = found.keySet().iterator().next();
        Recovery.forget(left);
        assertFalse(Files.exists(left));
    }

    @Test
    void whatWasSavedIsKeptNoLonger() throws IOException {
        try (Recovery running = Recovery.begin(all)) {
            running.keep(Map.of("a", new Unsaved(Optional.empty(), DESIGN), "b", new Unsaved(Optional.empty(), DESIGN)));
            assertEquals(2, copies());
            running.keep(Map.of("b", new Unsaved(Optional.empty(), DESIGN)));
            assertEquals(1, copies());
        }
        assertEquals(0, copies());
        try (var runs = Files.list(all)) {
            assertTrue(runs.findAny().isEmpty(), "a run that ends well leaves nothing");
        }
    }

    private long copies() throws IOException {
        try (var files = Files.walk(all)) {
            return files.filter(file -> file.toString().endsWith(".recovery.json")).count();
        }
    }
}
