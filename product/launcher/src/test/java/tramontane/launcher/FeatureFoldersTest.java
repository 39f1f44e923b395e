package tramontane.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FeatureFoldersTest {
    @TempDir
    private Path features;

    @BeforeEach
    void layOut() throws IOException {
        for (String folder : List.of("cli", "desktop/linux-x86_64", "desktop/macos-aarch64")) {
            Files.createDirectories(features.resolve(folder));
        }
        Files.createFile(features.resolve("base.json"));
    }

    private FeatureFolders on(String system, String processor) {
        return new FeatureFolders(features, new Platform(system, processor));
    }

    private List<String> names(List<Path> folders) {
        return folders.stream().map(folder -> features.relativize(folder).toString().replace('\\', '/')).toList();
    }

    @Test
    void anEntryIsGivenItsOwnAndThatOfThePlatform() {
        FeatureFolders folders = on("linux", "x86_64");
        assertEquals(List.of("", "cli"), names(folders.with("cli")));
        assertEquals(List.of("desktop", "desktop/linux-x86_64"), names(folders.without("cli")));
        assertEquals(List.of("", "desktop", "desktop/linux-x86_64"), names(folders.with("desktop")));
        assertEquals(List.of("cli"), names(folders.without("desktop")));
    }

    @Test
    void anEntryWithoutAFolderIsGivenAll() {
        assertEquals(List.of("", "cli", "desktop", "desktop/linux-x86_64"), names(on("linux", "x86_64").with("tests")));
        assertEquals(List.of(), on("linux", "x86_64").without("tests"));
    }

    @Test
    void aMachineWithoutPartsHasNoWindowButACommandLine() {
        FeatureFolders folders = on("freebsd", "x86_64");
        assertEquals(List.of("", "desktop"), names(folders.with("desktop")));
        assertEquals(Optional.empty(), folders.missing("cli"));
        assertEquals(Optional.of("the desktop cannot open a window on freebsd-x86_64, as this installation has what that needs for "
                + "linux-x86_64, macos-aarch64 only; the command line works here"), folders.missing("desktop"));
        assertEquals(Optional.empty(), on("macos", "aarch64").missing("desktop"));
    }

    @Test
    void withoutFoldersThereIsNothingToChoose() {
        FeatureFolders none = new FeatureFolders(features.resolve("nowhere"), new Platform("linux", "x86_64"));
        assertEquals(List.of(features.resolve("nowhere")), none.with("desktop"));
        assertEquals(List.of(), none.without("desktop"));
        assertEquals(Optional.empty(), none.missing("desktop"));
    }
}
