package tramontane.desktop.internal.state;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import tramontane.desktop.internal.layout.Arrangement;
import tramontane.model.Value;
import tramontane.model.file.Limits;
import tramontane.model.file.TreeFile;
import tramontane.physics.units.UnitSystem;

/**
 * What the window keeps from one start to the next. Immutable.
 *
 * @param arrangement where the views stand; empty for the standard layout
 * @param bounds      place and size of the window: x, y, width, height; empty for the system's choice
 * @param maximised   whether the window fills the screen
 * @param recent      design files used lately, newest first
 * @param units       the units shown
 * @param colours     light, dark, or as the system has it
 * @param started     whether the window was ever opened before
 * @param memory      what views keep, by view and name
 */
public record Remembered(Optional<Arrangement> arrangement, Optional<List<Integer>> bounds, boolean maximised, List<Path> recent,
        UnitSystem units, Colours colours, boolean started, Value.Tree memory) {

    /** How many recent files are kept. */
    public static final int MOST_RECENT = 12;

    private static final String WINDOW = "tramontane.window";
    private static final String VIEWS = "views";

    /** Which colours are wanted. */
    public enum Colours {
        /** As the system has it. */
        SYSTEM,
        /** Dark text on light ground. */
        LIGHT,
        /** Light text on dark ground. */
        DARK
    }

    /** The first start. */
    public static final Remembered NOTHING = new Remembered(Optional.empty(), Optional.empty(), false, List.of(), UnitSystem.METRIC,
            Colours.SYSTEM, false, Value.Tree.EMPTY);

    public Remembered {
        recent = List.copyOf(recent);
    }

    /**
     * What was read.
     *
     * @param value what is known; the standard where the file could not be read
     * @param note  what to tell the user about it; empty where there is nothing
     */
    public record Read(Remembered value, String note) {
    }

    /** Reads the file; where it cannot be understood the one before it, and where that cannot either the standard. */
    public static Read read(Path file) {
        if (!Files.exists(file)) {
            return new Read(NOTHING, "");
        }
        Optional<Remembered> kept = parse(file);
        if (kept.isPresent()) {
            return new Read(kept.get(), "");
        }
        Optional<Remembered> older = parse(previous(file));
        return new Read(older.orElse(NOTHING), "The layout of the window could not be read from " + file.getFileName()
                + (older.isPresent() ? "; an earlier one is used." : "; the standard layout is used."));
    }

    private static Path previous(Path file) {
        return file.resolveSibling(file.getFileName() + ".previous");
    }

    private static Optional<Remembered> parse(Path file) {
        TreeFile.Read read = TreeFile.read(file, Limits.STANDARD);
        if (read.tree().isEmpty() || read.problems().stream().anyMatch(problem -> problem.isError())) {
            return Optional.empty();
        }
        try {
            Value.Tree tree = read.tree().get();
            List<Path> recent = new ArrayList<>();
            if (tree.get("recent").orElse(null) instanceof Value.Items items) {
                items.values().forEach(each -> recent.add(Path.of(((Value.Text) each).text())));
            }
            Optional<List<Integer>> bounds = tree.get("bounds").map(value -> ((Value.Items) value).values().stream()
                    .map(each -> (int) ((Value.Num) each).number()).toList()).filter(list -> list.size() == 4);
            return Optional.of(new Remembered(tree.tree("layout").flatMap(Arrangement::of), bounds, flag(tree, "maximised"), recent,
                    tree.text("units").flatMap(UnitSystem::parse).orElse(UnitSystem.METRIC),
                    tree.text("colours").map(Colours::valueOf).orElse(Colours.SYSTEM), true,
                    tree.tree("memory").orElse(Value.Tree.EMPTY)));
        } catch (RuntimeException notOurs) {
            return Optional.empty();
        }
    }

    private static boolean flag(Value.Tree tree, String name) {
        return tree.get(name).orElse(null) instanceof Value.Flag flag && flag.on();
    }

    /**
     * Keeps it in a file; what stood there is kept as the one before.
     *
     * @throws IOException if it cannot be written
     */
    public void save(Path file) throws IOException {
        Files.createDirectories(file.toAbsolutePath().getParent());
        if (parse(file).isPresent()) {
            Files.copy(file, previous(file), StandardCopyOption.REPLACE_EXISTING);
        }
        TreeFile.save(tree(), file);
    }

    private Value.Tree tree() {
        Value.Tree tree = Value.Tree.EMPTY.with("format", Value.Num.of(1));
        if (arrangement.isPresent()) {
            tree = tree.with("layout", arrangement.get().tree());
        }
        if (bounds.isPresent()) {
            tree = tree.with("bounds", new Value.Items(bounds.get().stream().<Value>map(Value.Num::of).toList()));
        }
        return tree.with("maximised", new Value.Flag(maximised))
                .with("recent", new Value.Items(recent.stream().<Value>map(path -> new Value.Text(path.toString())).toList()))
                .with("units", new Value.Text(units.text())).with("colours", new Value.Text(colours.name())).with("memory", memory);
    }

    /** This with a file used now. */
    public Remembered used(Path file) {
        List<Path> files = new ArrayList<>(recent);
        files.remove(file);
        files.addFirst(file);
        return new Remembered(arrangement, bounds, maximised, files.subList(0, Math.min(MOST_RECENT, files.size())), units, colours,
                started, memory);
    }

    /** This without a recent file that is gone. */
    public Remembered forgotten(Path file) {
        return new Remembered(arrangement, bounds, maximised, recent.stream().filter(each -> !each.equals(file)).toList(), units, colours,
                started, memory);
    }

    /** This with other units. */
    public Remembered with(UnitSystem shown) {
        return new Remembered(arrangement, bounds, maximised, recent, shown, colours, started, memory);
    }

    /** This with other colours. */
    public Remembered with(Colours wanted) {
        return new Remembered(arrangement, bounds, maximised, recent, units, wanted, started, memory);
    }

    /** This with the window as it stands. */
    public Remembered with(Arrangement stands, Optional<List<Integer>> where, boolean fills) {
        return new Remembered(Optional.of(stands), where, fills, recent, units, colours, true, memory);
    }

    /** The views that there were when the layout was kept. */
    public Set<String> views() {
        return memory(WINDOW, VIEWS).map(text -> Set.of(text.split("\n"))).orElse(Set.of());
    }

    /** This with the views that there are. */
    public Remembered withViews(Collection<String> there) {
        Set<String> all = new TreeSet<>(views());
        all.addAll(there);
        all.remove("");
        return all.equals(views()) ? this : with(WINDOW, VIEWS, String.join("\n", all));
    }

    /** What a view keeps under a name. */
    public Optional<String> memory(String view, String name) {
        return memory.tree(view).flatMap(tree -> tree.text(name));
    }

    /** This with a text that a view keeps. */
    public Remembered with(String view, String name, String text) {
        return new Remembered(arrangement, bounds, maximised, recent, units, colours, started,
                memory.with(view, memory.tree(view).orElse(Value.Tree.EMPTY).with(name, new Value.Text(text))));
    }
}
