package tramontane.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Properties;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlatformTest {
    private static String named(String name, String architecture) {
        Properties properties = new Properties();
        properties.setProperty("os.name", name);
        properties.setProperty("os.arch", architecture);
        return Platform.of(properties).toString();
    }

    /** Left: what Java calls them. */
    @ParameterizedTest
    @CsvSource({
        "Linux, amd64, linux-x86_64",
        "Linux, aarch64, linux-aarch64",
        "Windows 11, amd64, windows-x86_64",
        "Windows Server 2022, aarch64, windows-aarch64",
        "Mac OS X, x86_64, macos-x86_64",
        "Mac OS X, aarch64, macos-aarch64",
        "Darwin, arm64, macos-aarch64"})
    void platformsThatHaveAWindow(String name, String architecture, String folder) {
        assertEquals(folder, named(name, architecture));
    }

    @ParameterizedTest
    @CsvSource({
        "FreeBSD, amd64, freebsd-x86_64",
        "Linux, riscv64, linux-riscv64",
        "Linux, ppc64le, linux-ppc64le",
        "z/OS, s390x, z_os-s390x",
        "../.., ../x, _-_x"})
    void othersKeepTheirNameAsFarAsAFolderMayHaveIt(String name, String architecture, String folder) {
        assertEquals(folder, named(name, architecture));
    }

    @Test
    void withoutPropertiesItIsUnknown() {
        assertEquals("unknown-unknown", Platform.of(new Properties()).toString());
    }
}
