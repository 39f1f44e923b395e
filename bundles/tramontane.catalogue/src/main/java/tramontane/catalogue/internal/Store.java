package tramontane.catalogue.internal;

import java.io.FileInputStream;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemLoopException;
import java.nio.file.FileVisitOption;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.LinkedBlockingQueue;
import tramontane.model.AirMover;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.file.Limits;
import tramontane.model.file.TreeFile;

/** The parts of some folders, each with its values by column; read by as many threads as there are processors. */
public final class Store {

    private static final String ENDING = ".json";
    private static final String DESIGN = ".tramontane.json";

    /** Further problems are counted. */
    private static final int MOST_PROBLEMS = 10_000;

    private final List<StoredPart> parts;
    private final Map<String, Integer> byId;
    private final FieldTree fields;
    private final Columns columns;
    private final List<Problem> problems;

    /** A file that was found, and what it holds once that was read. */
    private static final class Found {

        /** Says that no more files follow. */
        private static final Found LAST = new Found(Path.of(""), "", -1);

        private final Path path;
        /** Its name in problems. */
        private final String name;
        /** Its size where it may be read quickly, else -1. */
        private final long size;
        private Content content;

        private Found(Path path, String name, long size) {
            this.path = path;
            this.name = name;
            this.size = size;
        }

        private Content takeContent() {
            Content taken = content;
            content = null;
            return taken;
        }
    }

    /**
     * What a file holds.
     *
     * @param family   whether it holds a list of parts
     * @param parts    its sound parts
     * @param problems what is wrong, with places in the file
     */
    record Content(boolean family, List<StoredPart> parts, List<Problem> problems) {
    }

    private Store(Collection<StoredPart> parts, FieldTree fields, List<Problem> problems) {
        this.parts = parts.stream().sorted(Comparator.comparing(StoredPart::id)).toList();
        this.byId = HashMap.newHashMap(parts.size());
        for (int i = 0; i < this.parts.size(); i++) {
            byId.put(this.parts.get(i).id(), i);
        }
        this.fields = fields;
        this.columns = Columns.of(this.parts, fields.columns().size());
        this.problems = limited(problems);
    }

    private static List<Problem> limited(List<Problem> problems) {
        if (problems.size() <= MOST_PROBLEMS) {
            return List.copyOf(problems);
        }
        List<Problem> kept = new ArrayList<>(problems.subList(0, MOST_PROBLEMS));
        List<Problem> dropped = problems.subList(MOST_PROBLEMS, problems.size());
        String more = "and " + dropped.size() + " more problems, which are not listed";
        kept.add(dropped.stream().anyMatch(Problem::isError) ? Problem.error("", more) : Problem.caution("", more));
        return List.copyOf(kept);
    }

    /** A store of parts that are there already; of several with one id the first. */
    public static Store of(List<AirMover> movers, FieldTree fields) {
        List<Problem> problems = new ArrayList<>();
        Map<String, StoredPart> byId = HashMap.newHashMap(movers.size());
        ThoroughReader reader = new ThoroughReader(fields);
        for (int i = 0; i < movers.size(); i++) {
            AirMover mover = movers.get(i);
            StoredPart earlier = byId.get(mover.id());
            if (earlier == null) {
                byId.put(mover.id(), StoredPart.held(mover, reader.row(mover, mover.tree()), i, Path.of("")));
            } else {
                problems.add(Problem.error(PartTrees.PARTS + "[" + i + "]", taken(mover.id(), PartTrees.PARTS + "[" + earlier.which() + "]")));
            }
        }
        return new Store(byId.values(), fields, problems);
    }

    private static String taken(String id, String where) {
        return FormReader.describe(new Value.Text(id)) + " is the id of " + where
                + " already, which counts; expected an id that no other part has";
    }

    /** Reads folders; parts of a later one take the place of those with the same id. */
    public static Store read(List<Path> folders, FieldTree fields) {
        List<Problem> problems = new ArrayList<>();
        List<Integer> ends = new ArrayList<>();
        List<Found> files = new ArrayList<>();
        try (Reading reading = new Reading(fields)) {
            for (Path folder : folders) {
                String before = folders.size() > 1 && folder.getFileName() != null ? folder.getFileName() + "/" : "";
                files.addAll(files(folder, before, problems, reading));
                ends.add(files.size());
            }
        }
        Map<String, StoredPart> all = new HashMap<>();
        int next = 0;
        for (int end : ends) {
            Map<String, Integer> fileOf = new HashMap<>();
            for (; next < end; next++) {
                String name = files.get(next).name;
                Content content = files.get(next).takeContent();
                List<Problem> wrong = new ArrayList<>(content.problems());
                for (StoredPart part : content.parts()) {
                    Integer earlier = fileOf.putIfAbsent(part.id(), next);
                    if (earlier == null) {
                        all.put(part.id(), part);
                    } else {
                        wrong.add(Problem.error(content.family() ? PartTrees.PARTS + "[" + part.which() + "].id" : "id",
                                taken(part.id(), earlier == next ? "an earlier part of this file" : "a part in " + files.get(earlier).name)));
                    }
                }
                for (Problem problem : wrong) {
                    problems.add(new Problem(problem.severity(), problem.place().isEmpty() ? name : name + ", " + problem.place(),
                            problem.message(), problem.isMissing()));
                }
            }
        }
        return new Store(all.values(), fields, problems);
    }

    /** The files of a folder and the folders in it, by name. */
    private static List<Found> files(Path folder, String before, List<Problem> problems, Reading reading) {
        List<Found> files = new ArrayList<>();
        if (!Files.isDirectory(folder)) {
            problems.add(Problem.error(folder.toString(), Files.exists(folder) ? "is no folder; expected a folder of catalogue files"
                    : "there is no such folder"));
            return files;
        }
        int skipped = folder.toString().length() + (folder.toString().endsWith("/") ? 0 : 1);
        try {
            Files.walkFileTree(folder, EnumSet.of(FileVisitOption.FOLLOW_LINKS), Integer.MAX_VALUE, new SimpleFileVisitor<>() {
                @Override
                public FileVisitResult preVisitDirectory(Path inner, BasicFileAttributes attributes) {
                    return !inner.equals(folder) && inner.getFileName().toString().startsWith(".") ? FileVisitResult.SKIP_SUBTREE
                            : FileVisitResult.CONTINUE;
                }

                @Override
                public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                    String name = file.getFileName().toString();
                    if (name.endsWith(ENDING) && !name.endsWith(DESIGN) && !name.startsWith(".")) {
                        Found found = new Found(file, name(file), attributes.isRegularFile() ? attributes.size() : -1);
                        files.add(found);
                        reading.add(found);
                    }
                    return FileVisitResult.CONTINUE;
                }

                @Override
                public FileVisitResult visitFileFailed(Path file, IOException e) {
                    if (file.equals(folder) || !file.getFileName().toString().startsWith(".")) {
                        problems.add(Problem.error(file.equals(folder) ? folder.toString() : name(file), reason(e)));
                    }
                    return FileVisitResult.CONTINUE;
                }

                private String name(Path file) {
                    return before + file.toString().substring(skipped);
                }
            });
        } catch (IOException e) {
            problems.add(Problem.error(folder.toString(), reason(e)));
        }
        files.sort(Comparator.comparing(file -> file.name));
        return files;
    }

    private static String reason(IOException e) {
        return "cannot be read: " + switch (e) {
            case AccessDeniedException denied -> "permission is missing";
            case FileSystemLoopException ring -> "its links lead in a ring";
            default -> e.getMessage() == null ? "input failed" : e.getMessage();
        };
    }

    /** Reads files on all processors while others are still looked for. */
    private static final class Reading implements AutoCloseable {

        private final FieldTree fields;
        private final LinkedBlockingQueue<Found> files = new LinkedBlockingQueue<>();
        private final List<CompletableFuture<Void>> others = new ArrayList<>();

        Reading(FieldTree fields) {
            this.fields = fields;
            for (int i = 1; i < Runtime.getRuntime().availableProcessors(); i++) {
                others.add(CompletableFuture.runAsync(this::work, task -> Thread.ofPlatform().daemon().name("catalogue").start(task)));
            }
        }

        void add(Found file) {
            files.add(file);
        }

        private void work() {
            QuickReader quick = new QuickReader(fields);
            ThoroughReader thorough = new ThoroughReader(fields);
            try {
                for (Found file = files.take(); file != Found.LAST; file = files.take()) {
                    file.content = Store.content(file, fields, quick, thorough);
                }
            } catch (InterruptedException e) {
                throw new IllegalStateException("interrupted while reading a catalogue", e);
            } finally {
                files.add(Found.LAST); // for the next one
            }
        }

        /** Takes part in reading what is left, and waits for the others. */
        @Override
        public void close() {
            files.add(Found.LAST);
            work();
            try {
                others.forEach(CompletableFuture::join);
            } catch (CompletionException e) {
                if (e.getCause() instanceof Error error) {
                    throw error;
                }
                throw e;
            }
        }
    }

    private static Content content(Found file, FieldTree fields, QuickReader quick, ThoroughReader thorough) {
        if (file.size >= 0 && file.size <= Limits.STANDARD.bytes()) {
            try (FileInputStream in = new FileInputStream(file.path.toFile())) {
                // a file that grows while it is read is damaged, and found to be so
                return content(file.path, in.readNBytes((int) file.size), fields, quick, thorough);
            } catch (IOException | UnsupportedOperationException e) {
                // read again below, for the words
            }
        }
        return thorough(file.path, TreeFile.read(file.path, Limits.STANDARD), fields, thorough);
    }

    /** The content of a file that is of a size to be read. */
    static Content content(Path path, byte[] bytes, FieldTree fields, QuickReader quick, ThoroughReader thorough) {
        FileIndex index;
        try {
            index = FileIndex.of(bytes);
        } catch (Odd e) {
            return thorough(path, TreeFile.parse(bytes, Limits.STANDARD), fields, thorough);
        }
        StoredFile stored = new StoredFile(path, bytes, index);
        int[] shared = index.shared();
        StoredPart[] parts = new StoredPart[index.size()];
        PartTrees trees = null;
        LinkedHashSet<Problem> problems = new LinkedHashSet<>();
        for (int i = 0; i < parts.length; i++) {
            try {
                QuickReader.Part part = quick.read(bytes, index, shared, i);
                parts[i] = StoredPart.lazy(part.id(), part.row(), stored, i);
            } catch (Odd e) {
                if (trees == null) {
                    trees = PartTrees.of(TreeFile.parse(bytes, Limits.STANDARD));
                    problems.addAll(trees.problems());
                }
                if (trees.size() != parts.length) {
                    return new Content(false, List.of(), List.copyOf(problems)); // nothing of the file is to be used
                }
                PartTrees.Part part = trees.part(i, fields.sections().values());
                problems.addAll(part.problems());
                if (part.mover().isPresent()) {
                    AirMover mover = part.mover().get();
                    parts[i] = StoredPart.lazy(mover.id(), thorough.row(mover, part.tree()), stored, i);
                }
            }
        }
        return new Content(index.family(), Arrays.stream(parts).filter(Objects::nonNull).toList(), List.copyOf(problems));
    }

    private static Content thorough(Path path, TreeFile.Read read, FieldTree fields, ThoroughReader thorough) {
        PartTrees trees = PartTrees.of(read);
        LinkedHashSet<Problem> problems = new LinkedHashSet<>(trees.problems());
        List<StoredPart> parts = new ArrayList<>();
        for (int i = 0; i < trees.size(); i++) {
            PartTrees.Part part = trees.part(i, fields.sections().values());
            problems.addAll(part.problems());
            if (part.mover().isPresent()) {
                parts.add(StoredPart.held(part.mover().get(), thorough.row(part.mover().get(), part.tree()), i, path));
            }
        }
        return new Content(trees.family(), parts, List.copyOf(problems));
    }

    /** How many parts there are. */
    public int size() {
        return parts.size();
    }

    /** The id of a part. */
    public String id(int part) {
        return parts.get(part).id();
    }

    /** A part, made anew from its file. */
    public AirMover part(int part) {
        return parts.get(part).mover();
    }

    /** The file of a part; empty for none. */
    public Path file(int part) {
        return parts.get(part).path();
    }

    /** Where the part of that id stands. */
    public OptionalInt index(String id) {
        return Optional.ofNullable(byId.get(id)).map(OptionalInt::of).orElse(OptionalInt.empty());
    }

    /** The fields of all parts. */
    public FieldTree fields() {
        return fields;
    }

    /** The values of all parts. */
    public Columns columns() {
        return columns;
    }

    /** What is wrong with files and parts. */
    public List<Problem> problems() {
        return problems;
    }
}
