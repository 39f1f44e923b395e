package tramontane.cli.terminal;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import tramontane.analysis.Engine;
import tramontane.model.AirMover;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.ControlLaw;
import tramontane.model.Design;
import tramontane.model.HeatSource;
import tramontane.model.Passage;
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
public record DesignSource(String name, Path path, Optional<Design> design, List<Problem> problems) {

    private static final Pattern ENTRY = Pattern.compile("([a-zA-Z.]+)\\[(\\d{1,8})]");

    public DesignSource {
        problems = List.copyOf(problems);
    }

    /**
     * Finds, reads and checks a design.
     *
     * @param name    a file; where there is none of that name, a sample
     * @param samples the folder of samples
     * @param maxSize the largest size to read, bytes
     * @param engine  checks the design
     * @throws Ending where there is no such file; what is wrong in it is among the {@link #problems}
     */
    public static DesignSource open(String name, Optional<Path> samples, long maxSize, Engine engine) throws Ending {
        return open(name, samples, maxSize, engine::check);
    }

    /**
     * The same for who checks another way than {@link Engine#check} does.
     *
     * @param check gives what is wrong with a design beside what reading it says
     */
    public static DesignSource open(String name, Optional<Path> samples, long maxSize, Function<Design, List<Problem>> check)
            throws Ending {
        Path path = find(name, samples);
        Loaded read = DesignFile.read(path, Limits.STANDARD.withBytes(maxSize));
        Optional<Design> design = read.design().or(read::draft);
        Set<Problem> consequences = read.consequences();
        Stream<Problem> all = Stream.concat(read.problems().stream(),
                design.map(check).orElse(List.of()).stream().filter(problem -> !consequences.contains(problem)));
        List<Problem> problems = all.distinct().sorted((a, b) -> NaturalOrder.compare(a.place(), b.place())).toList();
        return new DesignSource(name, path, design, problems);
    }

    /** Prints what is wrong, a line each. */
    public void print(PrintWriter to) {
        Messages.print(to, name, sentences(), problems);
    }

    /** What is wrong, a sentence each, with the name of what a place in a list is. */
    public List<String> sentences() {
        return problems.stream().map(problem -> problem.place().isEmpty() ? problem.message()
                : problem.place() + named(problem.place()) + ": " + problem.message()).toList();
    }

    /** The id behind {@code airPath.passages[3]}, which nobody wants to count out. */
    private String named(String place) {
        Matcher entry = ENTRY.matcher(place);
        if (design.isEmpty() || !entry.lookingAt()) {
            return "";
        }
        Design read = design.get();
        List<String> ids = switch (entry.group(1)) {
            case "airMovers" -> read.airMovers().stream().map(AirMover::id).toList();
            case "airPath.bays" -> read.airPath().bays().stream().map(Bay::id).toList();
            case "airPath.passages" -> read.airPath().passages().stream().map(Passage::id).toList();
            case "heatSources" -> read.heatSources().stream().map(HeatSource::id).toList();
            case "conditions" -> read.conditions().stream().map(Condition::id).toList();
            case "controlLaws" -> read.controlLaws().stream().map(ControlLaw::id).toList();
            default -> List.of();
        };
        int at = Integer.parseInt(entry.group(2));
        return at < ids.size() && !ids.get(at).isBlank() ? " (" + ids.get(at) + ")" : "";
    }

    /** Whether it can be judged. */
    public boolean sound() {
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
            Path whole = Path.of(name + DesignFile.ENDING);
            if (Files.isRegularFile(whole)) {
                return whole;
            }
            Optional<Path> sample = samples.filter(folder -> path.getNameCount() == 1 && !path.isAbsolute())
                    .flatMap(folder -> Stream.of(folder.resolve(name + DesignFile.ENDING), folder.resolve(name))
                            .filter(Files::isRegularFile).findFirst());
            if (sample.isPresent()) {
                return sample.get();
            }
        } catch (InvalidPathException impossible) {
            throw Ending.badInput(name + ": no file can have this name"
                    + (name.chars().anyMatch(c -> c > 126) ? " in this locale; set LC_ALL=C.UTF-8 for other letters." : "."));
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
