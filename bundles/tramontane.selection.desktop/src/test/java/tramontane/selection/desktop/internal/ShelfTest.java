package tramontane.selection.desktop.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tramontane.catalogue.PartFile;

class ShelfTest {

    private final AtOnce desktop = new AtOnce();

    @Test
    void theCatalogueIsReadAgainOnlyWhenItsFilesHaveChanged(@TempDir Path home) throws IOException {
        List<Integer> sizes = new ArrayList<>();
        Shelf shelf = new Shelf(Folders.of(name -> null, home), Given.ENGINE::sectionTypes);
        shelf.watch(catalogue -> sizes.add(catalogue.size()));
        shelf.look(desktop);
        assertEquals(List.of(0), sizes, "the user's own folder need not exist");
        Files.createDirectories(home.resolve("catalogue"));
        PartFile.save(home.resolve("catalogue/own.json"), List.of(Given.parts().getFirst()));
        shelf.look(desktop);
        shelf.look(desktop);
        assertEquals(List.of(0, 1), sizes);
        PartFile.save(home.resolve("catalogue/own.json"), Given.parts());
        shelf.look(desktop);
        assertEquals(List.of(0, 1, 4), sizes);
        List<Integer> late = new ArrayList<>();
        shelf.watch(catalogue -> late.add(catalogue.size()));
        assertEquals(List.of(4), late, "who comes later is handed it at once");
    }

    @Test
    void foldersAreThoseOfTheCommandLine(@TempDir Path home) {
        assertEquals(Optional.of(Path.of("/opt/t/catalogue")), Folders.of(Map.of("tramontane.install", "/opt/t")::get, home).shipped());
        assertEquals(Optional.of(Path.of("/lab/parts")), Folders.of(Map.of("tramontane.install", "/opt/t", "tramontane.catalogue", "/lab/parts")::get, home).shipped());
        assertEquals(home.resolve("catalogue"), Folders.of(name -> null, home).own());
    }
}
