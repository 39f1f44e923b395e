package tramontane.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StorageTest {
    @TempDir
    private Path caches;

    @Test
    void eachUserOfAnInstallHasASlotAndAFreedOneIsTakenAgain() throws IOException {
        Path install = Path.of("/opt/tramontane");
        try (Storage first = Storage.open(caches, install)) {
            Path second;
            try (Storage other = Storage.open(caches, install)) {
                second = other.folder();
                assertNotEquals(first.folder(), second);
            }
            try (Storage third = Storage.open(caches, install)) {
                assertEquals(second, third.folder());
            }
        }
    }

    @Test
    void installsHaveFoldersOfTheirOwn() throws IOException {
        try (Storage one = Storage.open(caches, Path.of("/opt/a")); Storage other = Storage.open(caches, Path.of("/opt/b"))) {
            assertNotEquals(one.folder().getParent(), other.folder().getParent());
            assertTrue(one.folder().startsWith(caches));
        }
    }

    @Test
    void whereNothingCanBeWrittenATemporaryFolderComesAndGoes() throws IOException {
        Path file = Files.createFile(caches.resolve("a file, no folder"));
        Path folder;
        try (Storage storage = Storage.open(file, Path.of("/opt/a"))) {
            folder = storage.folder();
            assertTrue(storage.temporary());
            Files.createDirectories(folder.resolve("bundle1"));
            Files.writeString(folder.resolve("bundle1/data"), "x");
        }
        assertFalse(Files.exists(folder));
    }
}
