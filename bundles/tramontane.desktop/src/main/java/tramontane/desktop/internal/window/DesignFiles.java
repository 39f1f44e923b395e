package tramontane.desktop.internal.window;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import tramontane.desktop.Jobs;
import tramontane.desktop.internal.documents.OpenDesign;
import tramontane.desktop.internal.documents.Session;
import tramontane.desktop.internal.window.Notice.Action;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.model.file.DesignFile;
import tramontane.model.file.Loaded;

/**
 * Design files: opened, saved, watched for changes by others. Reading and writing is done off the UI thread; everything else here is on it.
 */
final class DesignFiles {

    private final Session session;
    private final Jobs jobs;
    private final Questions questions;
    private final Consumer<Notice> notices;
    private final BiConsumer<String, Throwable> failed;
    private final Consumer<Path> used;
    private final Map<String, FileTime> stamps = new HashMap<>();
    /** Designs whose file was changed outside while they had unsaved changes, and nobody has said yet what holds. */
    private final Set<String> disputed = ConcurrentHashMap.newKeySet();

    /**
     * No files yet.
     *
     * @param used is told of files that were opened or saved
     */
    DesignFiles(Session session, Jobs jobs, Questions questions, Consumer<Notice> notices, BiConsumer<String, Throwable> failed,
            Consumer<Path> used) {
        this.session = session;
        this.jobs = jobs;
        this.questions = questions;
        this.notices = notices;
        this.failed = failed;
        this.used = used;
    }

    /** What was read, and when it was last changed. */
    private record Content(Loaded loaded, FileTime stamp) {
    }

    private static Content read(Path file) {
        FileTime stamp = stamp(file);
        return new Content(DesignFile.read(file), stamp);
    }

    private static FileTime stamp(Path file) {
        try {
            return Files.getLastModifiedTime(file);
        } catch (IOException gone) {
            return FileTime.fromMillis(0);
        }
    }

    /** Opens a file, or brings it to the front where it is open. */
    void open(Path path) {
        Path file = path.toAbsolutePath().normalize();
        Optional<OpenDesign> already = session.of(file);
        if (already.isPresent()) {
            session.show(already.get().key());
            return;
        }
        jobs.quietly(watch -> read(file), content -> opened(file, content, false));
    }

    /** Opens a sample as a design of its own, so that saving asks for a place. */
    void openSample(Path file) {
        jobs.quietly(watch -> read(file), content -> opened(file, content, true));
    }

    private void opened(Path file, Content content, boolean sample) {
        Loaded loaded = content.loaded();
        if (loaded.draft().isEmpty()) {
            notices.accept(Notice.error(file.getFileName() + " cannot be opened: " + first(loaded.problems())));
            return;
        }
        Design design = loaded.draft().get();
        long wrong = loaded.problems().stream().filter(Problem::isError).count();
        if (sample) {
            session.open(Optional.empty(), design, Optional.of(design));
            return;
        }
        // what could not be read is not in the design: saving over it would lose it
        boolean whole = wrong == 0;
        session.open(whole ? Optional.of(file) : Optional.empty(), design, whole ? Optional.of(design) : Optional.empty());
        used.accept(file);
        if (whole) {
            stamps.put(session.front().key(), content.stamp());
        } else {
            notices.accept(Notice.error(file.getFileName() + " has " + wrong + (wrong == 1 ? " mistake" : " mistakes")
                    + "; what could be read is opened as a new design, and the file stays as it is. " + first(loaded.problems())));
        }
    }

    private static String first(List<Problem> problems) {
        return problems.stream().filter(Problem::isError).findFirst().or(() -> problems.stream().findFirst())
                .map(Problem::sentence).map(text -> text.endsWith(".") ? text : text + ".").orElse("It is empty.");
    }

    /** Saves the design in front where it is kept, or asks where. */
    void save() {
        save(session.front(), () -> { });
    }

    /** Saves a design and goes on once that is done. */
    void save(OpenDesign design, Runnable then) {
        if (design.file().isPresent()) {
            write(design, design.file().get(), false, then);
        } else {
            saveAs(design, then);
        }
    }

    /** Asks where, and saves there. */
    void saveAs(OpenDesign design, Runnable then) {
        Optional<Path> chosen = questions.save(design.file().map(Path::getParent), design.document().label(), DesignFile.ENDING, "Design")
                .map(file -> file.toAbsolutePath().normalize());
        if (chosen.isEmpty()) {
            return;
        }
        Path file = chosen.get();
        if (session.of(file).filter(other -> !other.key().equals(design.key())).isPresent()) {
            notices.accept(Notice.error(file.getFileName() + " is open, too; close it first, or save under another name."));
            return;
        }
        write(design, file, true, then);
    }

    /** The file of a design is as it stands there now. */
    void known(String key, Path file) {
        stamps.put(key, stamp(file));
    }

    private void write(OpenDesign open, Path file, boolean over, Runnable then) {
        Design design = open.design();
        FileTime known = stamps.get(open.key());
        jobs.quietly(watch -> {
            if (!over && (disputed.contains(open.key()) || known != null && Files.exists(file) && !stamp(file).equals(known))) {
                return Optional.<IOException>of(new ChangedOutside());
            }
            try {
                DesignFile.save(design, file);
                return Optional.<IOException>empty();
            } catch (IOException e) {
                return Optional.of(e);
            }
        }, problem -> {
            if (problem.isPresent() && problem.get() instanceof ChangedOutside) {
                if (questions.choose("Changed outside", file.getFileName() + " was changed by another program. Replace what it holds now?",
                        List.of("Cancel", "Replace")) == 1) {
                    write(open, file, true, then);
                }
                return;
            }
            if (problem.isPresent()) {
                failed.accept(problem.get().getMessage() + ". The design is still open; save it elsewhere with \"Save as\".", problem.get());
                return;
            }
            stamps.put(open.key(), stamp(file));
            disputed.remove(open.key());
            session.saved(open.key(), file, design);
            used.accept(file);
            notices.accept(Notice.of("Saved " + file.getFileName() + "."));
            then.run();
        });
    }

    /** Looks whether anybody else has changed the files of the open designs. */
    void look() {
        for (OpenDesign open : session.open()) {
            FileTime known = stamps.get(open.key());
            if (open.file().isEmpty() || known == null) {
                continue;
            }
            Path file = open.file().get();
            jobs.quietly(watch -> stamp(file).equals(known) ? Optional.<Content>empty() : Optional.of(read(file)),
                    content -> content.ifPresent(there -> changedOutside(open.key(), file, there)));
        }
    }

    private void changedOutside(String key, Path file, Content content) {
        Optional<OpenDesign> still = session.open().stream().filter(each -> each.key().equals(key)).findFirst();
        if (still.isEmpty() || content.stamp().equals(stamps.get(key))) {
            return;
        }
        stamps.put(key, content.stamp());
        OpenDesign open = still.get();
        Optional<Design> holds = content.loaded().design();
        if (holds.isPresent() && holds.get().equals(open.design())) {
            session.found(key, holds);
            return;
        }
        boolean unsaved = open.changed();
        session.found(key, holds);
        if (holds.isEmpty()) {
            notices.accept(Notice.error(file.getFileName() + (Files.exists(file) ? " was changed by another program and cannot"
                    + " be read any more" : " is gone") + ". The design is still here; save it to keep it."));
        } else if (unsaved) {
            disputed.add(key);
            notices.accept(new Notice(file.getFileName() + " was changed by another program; you have unsaved changes, too.", true,
                    List.of(new Action("Take the file's", () -> take(key, holds.get())), new Action("Keep mine", () -> disputed.remove(key)))));
        } else {
            take(key, holds.get());
            notices.accept(Notice.of(file.getFileName() + " was changed by another program and is shown as it is now. Undo takes it back."));
        }
    }

    private void take(String key, Design design) {
        disputed.remove(key);
        session.show(key);
        session.edit("take over the file's changes", design);
    }

    /** Takes what the file of the design in front holds, as a step that can be taken back. */
    void reload() {
        OpenDesign open = session.front();
        open.file().ifPresent(file -> jobs.quietly(watch -> read(file), content -> {
            if (content.loaded().design().isEmpty()) {
                notices.accept(Notice.error(file.getFileName() + " cannot be read: " + first(content.loaded().problems())));
                return;
            }
            stamps.put(open.key(), content.stamp());
            session.found(open.key(), content.loaded().design());
            take(open.key(), content.loaded().design().get());
        }));
    }

    /** Closes a design; asks where it has unsaved changes. */
    void close(OpenDesign open) {
        if (!open.changed()) {
            session.close(open.key());
            return;
        }
        session.show(open.key());
        switch (questions.choose("Unsaved changes", "Save the changes of " + open.document().label() + "?",
                List.of("Save", "Discard", "Cancel"))) {
            case 0 -> save(open, () -> session.close(open.key()));
            case 1 -> session.close(open.key());
            default -> {
                // it stays open
            }
        }
    }

    /**
     * Asks about all unsaved changes.
     *
     * @param then what to do once nothing can be lost any more; not done where the question was left
     */
    void settleAll(Runnable then) {
        List<OpenDesign> unsaved = session.open().stream().filter(OpenDesign::changed).toList();
        if (unsaved.isEmpty()) {
            then.run();
            return;
        }
        String names = String.join(", ", unsaved.stream().map(each -> each.document().label()).toList());
        switch (questions.choose("Unsaved changes", "Save the changes of " + names + "?", List.of("Save", "Discard", "Cancel"))) {
            case 0 -> saveNext(unsaved, 0, then);
            case 1 -> then.run();
            default -> {
                // nothing is closed
            }
        }
    }

    private void saveNext(List<OpenDesign> designs, int next, Runnable then) {
        if (next == designs.size()) {
            then.run();
        } else {
            save(designs.get(next), () -> saveNext(designs, next + 1, then));
        }
    }

    /** The file is not as it was last seen. */
    private static final class ChangedOutside extends IOException {
        private static final long serialVersionUID = 1L;
    }
}
