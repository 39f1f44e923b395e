package tramontane.engine.test;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.osgi.framework.BundleContext;
import tramontane.model.Design;
import tramontane.model.Requirement;
import tramontane.model.file.DesignFile;
import tramontane.model.file.Limits;
import tramontane.model.file.Loaded;

/** Designs for tests: the shipped samples. */
final class Designs {

    private Designs() {
    }

    static List<Path> samples(BundleContext context) throws java.io.IOException {
        try (Stream<Path> files = Files.list(Path.of(context.getProperty("tramontane.samples")))) {
            return files.filter(file -> file.toString().endsWith(".tramontane.json")).sorted().toList();
        }
    }

    static Design sample(BundleContext context, String name) {
        Loaded loaded = DesignFile.read(Path.of(context.getProperty("tramontane.samples"), name + ".tramontane.json"),
                Limits.STANDARD);
        assertEquals(List.of(), loaded.problems());
        return loaded.design().orElseThrow();
    }

    static Design requiring(Design design, Requirement... requirements) {
        return design.withRequirements(List.of(requirements));
    }
}
