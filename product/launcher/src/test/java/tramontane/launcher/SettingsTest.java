package tramontane.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SettingsTest {
    @TempDir
    private Path install;

    private Settings of(Map<String, String> environment, String... line) {
        Properties system = new Properties();
        system.setProperty("tramontane.install", install.toString());
        system.setProperty("user.home", install.resolve("user").toString());
        return Settings.of(line, environment, system);
    }

    @Test
    void ownOptionsAreTakenOutWhereverTheyStand() {
        Settings settings = of(Map.of(), "--extensions", "/a", "solve", "--debug", "x.json", "--extensions=/b");
        assertEquals(List.of(Path.of("/a"), Path.of("/b")), settings.extensions());
        assertEquals(List.of("solve", "x.json"), settings.arguments());
        assertTrue(settings.debug());
        assertEquals("cli", settings.entry());
    }

    @Test
    void afterTwoDashesNothingIsTaken() {
        Settings settings = of(Map.of(), "solve", "--", "--debug", "--extensions");
        assertEquals(List.of("solve", "--", "--debug", "--extensions"), settings.arguments());
        assertFalse(settings.debug());
    }

    @Test
    void aFolderIsMissed() {
        assertThrows(IllegalArgumentException.class, () -> of(Map.of(), "solve", "--extensions"));
    }

    @Test
    void foldersOfTheUserFollowTheEnvironment() {
        assertEquals(install.resolve("user/.tramontane"), of(Map.of()).home());
        assertEquals(install.resolve("user/.cache"), of(Map.of()).caches());
        assertEquals(Path.of("/me/.tramontane"), of(Map.of("HOME", "/me")).home());
        Settings given = of(Map.of("HOME", "/me", "TRAMONTANE_HOME", "/h", "XDG_CACHE_HOME", "/c"));
        assertEquals(Path.of("/h"), given.home());
        assertEquals(Path.of("/c"), given.caches());
    }

    /** XDG Base Directory Specification 0.8: "All paths must be absolute"; others are to be ignored. */
    @Test
    void aRelativeCacheFolderIsIgnored() {
        assertEquals(install.resolve("user/.cache"), of(Map.of("XDG_CACHE_HOME", "c")).caches());
    }
}
