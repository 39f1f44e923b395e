package tramontane.selection.desktop.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import tramontane.analysis.SectionType;
import tramontane.catalogue.Catalogue;

/**
 * The catalogue as it is now: read once in the background for all who look at it, and again when its files have changed. On the UI
 * thread only.
 */
final class Shelf {

    private final Folders folders;
    private final Supplier<? extends Collection<? extends SectionType<?>>> sections;
    private final List<Consumer<Catalogue>> readers = new ArrayList<>();
    private Optional<Read> now = Optional.empty();
    private boolean reading;

    /** A catalogue and what tells whether its files have changed since. */
    private record Read(Map<Path, List<Long>> stamp, Optional<Catalogue> catalogue) {
    }

    /**
     * A catalogue that nobody has looked at yet.
     *
     * @param folders  where it lies
     * @param sections the section types that are loaded
     */
    Shelf(Folders folders, Supplier<? extends Collection<? extends SectionType<?>>> sections) {
        this.folders = folders;
        this.sections = sections;
    }

    Folders folders() {
        return folders;
    }

    /** Hands the catalogue to somebody, at once where it is known, and each time it changes. */
    void watch(Consumer<Catalogue> reader) {
        readers.add(reader);
        now.flatMap(Read::catalogue).ifPresent(reader);
    }

    void leave(Consumer<Catalogue> reader) {
        readers.remove(reader);
    }

    boolean isWatched() {
        return !readers.isEmpty();
    }

    /** Looks whether files have changed, and reads them again if they have. */
    void look(Desktop desktop) {
        if (reading) {
            return;
        }
        reading = true;
        Optional<Map<Path, List<Long>>> known = now.map(Read::stamp);
        desktop.quietly(() -> {
            Map<Path, List<Long>> stamp = folders.stamp();
            return known.filter(stamp::equals).isPresent() ? new Read(stamp, Optional.empty())
                    : new Read(stamp, Optional.of(Catalogue.read(folders.readable(), sections.get())));
        }, read -> {
            reading = false;
            read.catalogue().ifPresent(catalogue -> {
                now = Optional.of(read);
                List.copyOf(readers).forEach(reader -> reader.accept(catalogue));
            });
        });
    }
}
