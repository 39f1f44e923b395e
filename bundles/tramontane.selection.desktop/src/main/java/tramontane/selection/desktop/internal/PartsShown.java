package tramontane.selection.desktop.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import tramontane.analysis.Better;
import tramontane.analysis.Table;
import tramontane.catalogue.Catalogue;
import tramontane.catalogue.CatalogueField;
import tramontane.physics.units.UnitSystem;

/**
 * All that the view of the catalogue shows, at one moment.
 *
 * @param catalogue the parts; empty while they are being read
 * @param columns   what is shown of them
 * @param parts     the numbers of those that are shown, in order
 * @param order     how they are sorted
 * @param find      what is looked for, words or a filter
 * @param problem   what is wrong with that
 * @param selected  the id of the part whose sheet is shown
 * @param sheet     its sheet
 * @param units     in which everything is shown
 */
record PartsShown(Optional<Catalogue> catalogue, List<Column> columns, List<Integer> parts, Order order, String find, Optional<String> problem,
        Optional<String> selected, Explanation sheet, UnitSystem units) {

    static final PartsShown NOTHING = new PartsShown(Optional.empty(), List.of(), List.of(), new Order("id", false), "", Optional.empty(), Optional.empty(),
            Explanation.NONE, UnitSystem.METRIC);

    /** As the command line lists them. */
    private static final List<String> USUAL = List.of("maker", "type", "width", "height", "depth", "ratedSpeed", "freeDelivery", "shutOff", "ratedPower", "bestEfficiency",
            "price", "mass", "bearing", "status");

    PartsShown {
        columns = List.copyOf(columns);
        parts = List.copyOf(parts);
    }

    PartsShown catalogue(Catalogue changed) {
        List<Column> shown = new ArrayList<>(List.of(Column.words("id", "part", "The part's id.")));
        for (String name : USUAL) {
            changed.field(name).filter(field -> IntStream.range(0, changed.size()).anyMatch(part -> !(changed.cell(part, field) instanceof Table.Empty)))
                    .ifPresent(field -> shown.add(new Column(field.path(), field.label() + (field.path().equals("price") ? currency(changed) : ""),
                            field.kind().isPresent(), field.kind(), Better.NEITHER, field.label() + (field.isDerived() ? ", from its curves" : "") + "; in filters " + field.name())));
        }
        return new PartsShown(Optional.of(changed), shown, parts, order, find, problem, selected, sheet, units).listed().sheet(selected);
    }

    private static String currency(Catalogue catalogue) {
        List<String> all = IntStream.range(0, catalogue.size()).filter(part -> Double.isFinite(catalogue.number(part, "price")))
                .mapToObj(part -> catalogue.text(part, "currency").orElse("")).distinct().toList();
        return all.size() == 1 && !all.getFirst().isEmpty() ? " [" + all.getFirst() + "]" : "";
    }

    PartsShown find(String changed) {
        return new PartsShown(catalogue, columns, parts, order, changed, problem, selected, sheet, units).listed();
    }

    PartsShown sort(String column) {
        return new PartsShown(catalogue, columns, parts, order.clicked(column), find, problem, selected, sheet, units).listed();
    }

    PartsShown units(UnitSystem changed) {
        return new PartsShown(catalogue, columns, parts, order, find, problem, selected, sheet, changed);
    }

    /** With the sheet of another part. */
    PartsShown sheet(Optional<String> id) {
        Explanation told = catalogue.flatMap(all -> id.flatMap(each -> all.index(each).stream().mapToObj(part -> PartSheet.of(all, part)).findFirst())).orElse(Explanation.NONE);
        return new PartsShown(catalogue, columns, parts, order, find, problem, id, told, units);
    }

    private PartsShown listed() {
        if (catalogue.isEmpty()) {
            return this;
        }
        Catalogue all = catalogue.get();
        Finder finder = Finder.of(find, catalogue);
        List<Integer> some = IntStream.range(0, all.size()).filter(part -> finder.passes().test(all.id(part), find.isBlank() ? "" : words(all, part))).boxed().toList();
        return new PartsShown(catalogue, columns, order.sorted(some, part -> cell(part, order.column())), order, find, finder.problem(), selected, sheet, units);
    }

    private static String words(Catalogue all, int part) {
        StringBuilder words = new StringBuilder(all.id(part));
        for (CatalogueField field : all.fields()) {
            all.text(part, field.path()).ifPresent(text -> words.append(' ').append(text));
        }
        return words.toString().toLowerCase(Locale.ROOT);
    }

    Table.Cell cell(int part, String column) {
        Catalogue all = catalogue.orElseThrow();
        return column.equals("id") ? new Table.Words(all.id(part)) : all.field(column).map(field -> all.cell(part, field)).orElse(new Table.Empty());
    }

    /** How many there are and what is wrong with files, in one sentence. */
    String words() {
        if (catalogue.isEmpty()) {
            return "reading the catalogue";
        }
        int all = catalogue.get().size();
        long errors = catalogue.get().problems().stream().filter(problem -> problem.isError()).count();
        return (parts.size() == all ? all + (all == 1 ? " part" : " parts") : parts.size() + " of " + all + " parts")
                + (errors == 0 ? "" : "; " + errors + (errors == 1 ? " error" : " errors") + " in files, the first: "
                + catalogue.get().problems().stream().filter(problem -> problem.isError()).findFirst().orElseThrow().sentence());
    }

    /** What stands in the place of the table; empty where there are rows. */
    Optional<Candidates.Empty> empty() {
        if (catalogue.isEmpty()) {
            return Optional.of(new Candidates.Empty("Reading the catalogue", "The parts are being read from their files.", "", Candidates.Action.NONE));
        }
        if (catalogue.get().size() == 0) {
            return Optional.of(new Candidates.Empty("No parts", "Put files of parts into your own folder; they are read as soon as they are there.", "open the folder",
                    Candidates.Action.OPEN_FOLDER));
        }
        return parts.isEmpty() ? Optional.of(new Candidates.Empty("Nothing found", "None of " + catalogue.get().size() + " parts fits what is looked for.", "show all",
                Candidates.Action.CLEAR_FIND)) : Optional.empty();
    }
}
