package tramontane.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CoordinatesTest {
    /** The three forms of OSGi Compendium Release 8.1, section 159.2.2; the paths are Maven's default layout. */
    @ParameterizedTest
    @CsvSource({
        "org.acme:fan:1.2.0, org/acme/fan/1.2.0/fan-1.2.0.jar",
        "org.acme:fan:zip:1.2.0, org/acme/fan/1.2.0/fan-1.2.0.zip",
        "org.acme:fan:jar:linux:1.2.0, org/acme/fan/1.2.0/fan-1.2.0-linux.jar"})
    void namesAFileOfTheRepository(String text, String path) {
        Coordinates coordinates = Coordinates.parse(text);
        assertEquals(Path.of("repo").resolve(path), coordinates.in(Path.of("repo")));
        assertEquals(text, coordinates.toString());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "fan", "org.acme:fan", "org.acme::1", "a:b:c:d:e:f", "a:../../b:1", "a:.b:1"})
    void refusesWhatIsNoCoordinateOrLeadsOutOfTheRepository(String text) {
        String message = assertThrows(IllegalArgumentException.class, () -> Coordinates.parse(text)).getMessage();
        assertTrue(message.contains("group:artifact:version"), message);
    }
}
