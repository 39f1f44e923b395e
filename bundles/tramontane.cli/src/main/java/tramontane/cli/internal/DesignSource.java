package tramontane.cli.internal;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import tramontane.analysis.Engine;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.model.file.DesignFile;
import tramontane.model.file.Limits;
import tramontane.model.file.Loaded;

/**
 * A design file that somebody named, read and checked.
 *
 * @param name     as the user named it
 * @param path     where it is
 * @param design   the design, or what could be read of it
 * @param problems everything that is wrong, each thing once, in the order of the places
 */
record DesignSource(String name, Path path, Optional<Design> design, List<Problem> problems) {

    DesignSource {
        problems = List.copyOf(problems);
    }

    /**
     * Finds, reads and checks a design.
     *
     * @param name    a file; where there is none of that name, a sample
     * @param samples the folder of samples
     * @param maxSize the largest size to read, bytes
     * @param engine  checks the design
     */
    static DesignSource open(String name, Optional<Path> samples, long maxSize, Engine engine) throws Ending {
        Path path = find(name, samples);
        Loaded read = DesignFile.read(path, Limits.STANDARD.withBytes(maxSize));
        Optional<Design> design = read.design().or(read::draft);
        Set<Problem> consequences = read.consequences();
        Stream<Problem> all = Stream.concat(read.problems().stream(),
                design.map(engine::check).orElse(List.of()).stream().filter(problem -> !consequences.contains(problem)));
        List<Problem> problems = all.distinct().sorted((a, b) -> NaturalOrder.compare(a.place(), b.place())).toList();
        return new DesignSource(name, path, design, problems);
    }

    /** Whether it can be judged. */
    boolean sound() {
        return design.isPresent() && problems.stream().noneMatch(Problem::isError);
    }

    private static Path find(String name, Optional<Path> samples) throws Ending {
        try {
            Path path = Path.of(name);
            if (Files.isDirectory(path)) {
                throw Ending.badInput(name + ": this is a folder; a design file was expected.");
            }
            if (Files.exists(path)) {
                return path;
            }
            Optional<Path> sample = samples.filter(folder -> path.getNameCount() == 1 && !path.isAbsolute())
                    .flatMap(folder -> Stream.of(folder.resolve(name + DesignFile.ENDING), folder.resolve(name))
                            .filter(Files::isRegularFile).findFirst());
            if (sample.isPresent()) {
                return sample.get();
            }
        } catch (InvalidPathException impossible) {
            throw Ending.badInput(name + ": no file can have this name.");
        }
        List<String> known = samples.map(DesignSource::names).orElse(List.of());
        throw Ending.badInput(name + ": there is no such file" + (known.isEmpty() ? "."
                : ", and no sample of that name. Samples: " + String.join(", ", known) + "."));
    }

    private static List<String> names(Path folder) {
        List<String> names = new ArrayList<>();
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "*" + DesignFile.ENDING)) {
            files.forEach(file -> {
                String name = file.getFileName().toString();
                names.add(name.substring(0, name.length() - DesignFile.ENDING.length()));
            });
        } catch (IOException unreadable) {
            return List.of();
        }
        names.sort(null);
        return names;
    }
}
