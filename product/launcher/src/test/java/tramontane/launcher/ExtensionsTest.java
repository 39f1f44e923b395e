package tramontane.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ExtensionsTest {

    @TempDir
    Path folder;

    private Path bundle(String file, String name, String version) throws IOException {
        Path jar = folder.resolve(file);
        TrialInstall.bundle(jar, name, "Bundle-Version: " + version);
        return jar;
    }

    @Test
    void ofSeveralVersionsTheNewestIsTaken() throws IOException {
        Path old = bundle("kit-1.9.0.jar", "lab.kit", "1.9.0");
        Path recent = bundle("kit-1.10.0.jar", "lab.kit", "1.10.0");
        Path other = bundle("other.jar", "lab.other", "1.0.0");
        Path broken = Files.writeString(folder.resolve("broken.jar"), "no jar");
        Extensions chosen = Extensions.of(List.of(old, recent, other, broken));
        assertEquals(List.of(recent, other, broken), chosen.jars());
        assertEquals(Map.of(old, "it holds version 1.9.0 of bundle lab.kit, and " + recent + " holds version 1.10.0"),
                chosen.older());
    }
}
