package tramontane.catalogue;

import java.nio.file.Path;
import java.util.AbstractList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tramontane.analysis.Amount;
import tramontane.analysis.SectionType;
import tramontane.analysis.Table;
import tramontane.catalogue.internal.Columns;
import tramontane.catalogue.internal.FieldColumn;
import tramontane.catalogue.internal.FieldTree;
import tramontane.catalogue.internal.Store;
import tramontane.model.AirMover;
import tramontane.model.Problem;

/**
 * The parts of one or more folders of plain files, in the order of their ids. Immutable, safe for several threads.
 *
 * <p>What a part says of each field is held in columns, so that filters are quick; a part itself is made from the bytes of its file
 * when somebody asks for it. Files that change later do not change the catalogue.
 */
public final class Catalogue {

    private final Store store;
    private final Columns columns;
    private final List<CatalogueField> fields;
    private final Map<String, Integer> columnByName;
    private final Map<String, CatalogueField> fieldByName;

    private Catalogue(Store store) {
        this.store = store;
        columns = store.columns();
        List<FieldColumn> known = store.fields().columns();
        // free fields come as threads meet them; what no part has after all is none
        List<FieldColumn> shown = Stream.concat(known.stream().filter(FieldColumn::isFormed), known.stream()
                .filter(column -> !column.isFormed() && columns.isFilled(column.number())).sorted(Comparator.comparing(FieldColumn::path)))
                .toList();
        fields = shown.stream().map(column -> new CatalogueField(column.path(), column.label(), column.kind(), column.isDerived()))
                .toList();
        columnByName = names(shown, FieldColumn::path, FieldColumn::number);
        fieldByName = names(fields, CatalogueField::path, field -> field);
    }

    /**
     * Reads all {@code *.json} files of folders and of the folders in them, in the order of their names; designs
     * ({@code *.tramontane.json}) and hidden files and folders are left out. A part of a later folder takes the place of one with
     * the same id of an earlier folder, whole. What is damaged is named among the {@link #problems}, and the rest is read.
     *
     * @param folders  folders, for example that of the product, then that of the lab
     * @param sections the section types that are loaded; those that an air mover does not carry do not count
     */
    public static Catalogue read(List<Path> folders, Collection<? extends SectionType<?>> sections) {
        return new Catalogue(Store.read(folders, new FieldTree(sections)));
    }

    /**
     * A catalogue of parts that are there already; of several with one id the first.
     *
     * @param parts    the parts
     * @param sections the section types that are loaded
     */
    public static Catalogue of(List<AirMover> parts, Collection<? extends SectionType<?>> sections) {
        return new Catalogue(Store.of(parts, new FieldTree(sections)));
    }

    /** Things by path, and by path without {@code sections.} where nothing else is called so. */
    private static <T, V> Map<String, V> names(List<T> things, Function<T, String> path, Function<T, V> value) {
        Map<String, V> names = things.stream().collect(Collectors.toMap(
                thing -> new CatalogueField(path.apply(thing), "", Optional.empty(), false).name(), value, (first, second) -> first));
        things.forEach(thing -> names.put(path.apply(thing), value.apply(thing)));
        return Map.copyOf(names);
    }

    /** How many parts there are. */
    public int size() {
        return store.size();
    }

    /** The id of a part, counted from 0. */
    public String id(int part) {
        return store.id(part);
    }

    /** A part, made anew at each call. */
    public AirMover part(int part) {
        return store.part(part);
    }

    /** The part of that id. */
    public Optional<AirMover> part(String id) {
        OptionalInt index = index(id);
        return index.isPresent() ? Optional.of(part(index.getAsInt())) : Optional.empty();
    }

    /** The number of the part of that id. */
    public OptionalInt index(String id) {
        return store.index(id);
    }

    /** The file that a part stands in; the empty path for a part that came from no file. */
    public Path file(int part) {
        return store.file(part);
    }

    /** What is wrong with files and parts; the place of each is the name of the file, a comma, and the place in it. */
    public List<Problem> problems() {
        return store.problems();
    }

    /**
     * The fields that parts can be compared by: the derived ones, those of the form of an air mover, those of the sections that
     * are known, then every single value that occurs in sections and members that nothing knows.
     */
    public List<CatalogueField> fields() {
        return fields;
    }

    /** The field of that path, {@code sections.} may be left out. */
    public Optional<CatalogueField> field(String path) {
        return Optional.ofNullable(fieldByName.get(path));
    }

    /**
     * A number.
     *
     * @param part  number of the part
     * @param field path of the field
     * @return value in SI units; NaN where the part does not give it or the field is a text
     */
    public double number(int part, String field) {
        Integer column = columnByName.get(field);
        return column == null ? Double.NaN : columns.number(column, part);
    }

    /**
     * A text.
     *
     * @param part  number of the part
     * @param field path of the field
     * @return the text; {@code true} or {@code false} for a field of that sort; empty for a quantity of a known field
     */
    public Optional<String> text(int part, String field) {
        Integer column = columnByName.get(field);
        return column == null ? Optional.empty() : Optional.ofNullable(columns.text(column, part));
    }

    /** What a part says of a field, to be shown; {@link Table.Empty} where it says nothing. */
    public Table.Cell cell(int part, CatalogueField field) {
        double number = number(part, field.path());
        if (field.kind().isPresent() && Double.isFinite(number)) {
            return new Amount(number, field.kind().get());
        }
        return text(part, field.path()).<Table.Cell>map(Table.Words::new).orElseGet(() -> Double.isFinite(number)
                ? new Table.Words(number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number)) : new Table.Empty());
    }

    /** Parts by their numbers, each made anew when the list is asked for it. */
    public List<AirMover> parts(int[] numbers) {
        int[] chosen = numbers.clone();
        return new AbstractList<>() {
            @Override
            public AirMover get(int index) {
                return part(chosen[index]);
            }

            @Override
            public int size() {
                return chosen.length;
            }
        };
    }

    /** The numbers of all parts that pass a filter, rising. */
    public int[] select(PartFilter filter) {
        IntPredicate passes = filter.on(this);
        return IntStream.range(0, size()).filter(passes).toArray();
    }

    /** The column of a field; empty for a field that no part has. */
    OptionalInt column(String field) {
        Integer column = columnByName.get(field);
        return column == null || !columns.isFilled(column) ? OptionalInt.empty() : OptionalInt.of(column);
    }

    /** The columns of all fields within an object, such as {@code drive.supply}. */
    int[] columnsWithin(String object) {
        String path = object + ".";
        return fields.stream().filter(field -> field.path().startsWith(path) || field.name().startsWith(path))
                .mapToInt(field -> columnByName.get(field.path())).filter(columns::isFilled).toArray();
    }

    Columns columns() {
        return columns;
    }
}
