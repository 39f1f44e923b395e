package tramontane.selection.cli.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import tramontane.analysis.Amount;
import tramontane.analysis.Engine;
import tramontane.analysis.Table;
import tramontane.catalogue.Catalogue;
import tramontane.catalogue.CatalogueField;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.terminal.CsvRows;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.JsonDocument;
import tramontane.cli.terminal.Messages;
import tramontane.cli.terminal.Options;
import tramontane.cli.terminal.Options.Format;
import tramontane.cli.terminal.Syntax;
import tramontane.cli.terminal.TextTable;
import tramontane.cli.terminal.Wrapping;
import tramontane.physics.units.UnitSystem;

/** Lists parts with what they say of some fields. */
final class ListParts extends CatalogueVerb {

    private static final List<String> USUAL = List.of("type", "width", "height", "depth", "ratedSpeed", "freeDelivery", "shutOff", "ratedPower", "price");
    private static final int MOST = 50;

    ListParts(CatalogueFolders folders, Engine engine) {
        super("list", "List parts with what they say of some fields.", folders, engine);
    }

    @Override
    protected Syntax syntax() {
        Syntax syntax = new Syntax(name());
        CatalogueFolders.folders(syntax);
        return CatalogueFolders.filter(syntax)
                .option("--fields", "A,B,C", "The fields to show; standard " + String.join(",", USUAL) + ".")
                .option("--sort", "FIELD", "Sort by this field, lowest first; parts that do not say it come last. Standard is the id.")
                .flag("--descending", "Sort highest first.")
                .option("--limit", "NUMBER", "Show no more parts than this; standard " + MOST + " for text, all for csv and json.")
                .option(Options.FORMAT, "FORMAT", "text (standard), csv or json.")
                .option(Options.UNITS, "UNITS", "metric (standard for text), us, or si (standard for csv); json is always SI.")
                .footer("Exit code: 0 also where no part passes; 2 for mistakes in the command line or a filter.",
                        "",
                        "Filters:",
                        "  width <= 80 mm and freeDelivery >= 100 m3/h",
                        "  bearing in ball, fluid-film and not status = ended",
                        "  drive.supply.voltage in 24..48 V or not has drive.supply",
                        "  (maker ~ \"gar\" or family = GX) and price < 20");
    }

    @Override
    protected int run(Syntax.Given given, Console console) throws Ending {
        Format format = Options.format(given, Format.TEXT, Format.CSV, Format.JSON);
        UnitSystem units = Options.units(given, format == Format.CSV ? UnitSystem.SI : UnitSystem.METRIC);
        Catalogue catalogue = catalogue(given);
        int[] selected = selected(given, catalogue);
        List<CatalogueField> fields = given.option("--fields").isPresent() ? FieldCells.fields(catalogue, "--fields", given.option("--fields").get())
                : USUAL.stream().flatMap(name -> catalogue.field(name).stream())
                .filter(field -> IntStream.of(selected).anyMatch(part -> FieldCells.says(catalogue, part, field))).toList();
        List<Integer> parts = sorted(given, catalogue, selected);
        int limit = given.option("--limit").isPresent() ? limit(given.option("--limit").get()) : format == Format.TEXT ? MOST : Integer.MAX_VALUE;
        List<Integer> listed = parts.subList(0, Math.min(limit, parts.size()));
        switch (format) {
            case TEXT -> text(catalogue, fields, listed, parts.size(), units, console);
            case CSV -> console.data().print(csv(catalogue, fields, listed, units));
            case JSON -> console.data().print(json(catalogue, fields, listed));
        }
        return ExitCode.FINE;
    }

    private static int limit(String text) throws Ending {
        if (text.isEmpty() || text.length() > 9 || !text.chars().allMatch(c -> c >= '0' && c <= '9')) {
            throw Ending.badInput("--limit \"" + text + "\" is no whole number.");
        }
        return Integer.parseInt(text);
    }

    private static List<Integer> sorted(Syntax.Given given, Catalogue catalogue, int[] selected) throws Ending {
        List<Integer> parts = new ArrayList<>(IntStream.of(selected).boxed().toList());
        Optional<String> by = given.option("--sort");
        boolean down = given.flag("--descending");
        if (by.isEmpty()) {
            return down ? parts.reversed() : parts;
        }
        CatalogueField field = FieldCells.field(catalogue, "--sort", by.get());
        Comparator<Integer> numbers = Comparator.comparingDouble(part -> catalogue.number(part, field.path()));
        Comparator<Integer> texts = Comparator.comparing(part -> catalogue.text(part, field.path()).orElse(""));
        Comparator<Integer> order = field.kind().isPresent() ? numbers : texts;
        Comparator<Integer> silentLast = Comparator.comparing(part -> !FieldCells.says(catalogue, part, field));
        parts.sort(silentLast.thenComparing(down ? order.reversed() : order));
        return parts;
    }

    private static void text(Catalogue catalogue, List<CatalogueField> fields, List<Integer> parts, int all, UnitSystem units, Console console) {
        if (!parts.isEmpty()) {
            List<Table.Column> columns = new ArrayList<>(List.of(new Table.Column("part", false)));
            fields.forEach(field -> columns.add(new Table.Column(field.label() + (field.path().equals("price") ? currency(catalogue, parts) : ""),
                    field.kind().isPresent())));
            List<List<Table.Cell>> rows = new ArrayList<>();
            for (int part : parts) {
                List<Table.Cell> row = new ArrayList<>(List.of(new Table.Words(catalogue.id(part))));
                fields.forEach(field -> row.add(catalogue.cell(part, field)));
                rows.add(row);
            }
            TextTable.lines(new Table("Parts", columns, rows), 1, console.width(), units, console::shown).forEach(console.out()::println);
            console.out().println();
        }
        String how = all == catalogue.size() ? "" : " of " + catalogue.size() + (all == 1 ? " passes" : " pass") + " the filter";
        String more = parts.size() < all ? "; the first " + parts.size() + " are shown, --limit shows more" : "";
        Wrapping.lines((all == catalogue.size() ? Messages.count(all, "part") : all + how) + more + ".", console.width()).forEach(console.out()::println);
        long errors = catalogue.problems().stream().filter(each -> each.isError()).count();
        if (errors > 0) {
            console.err().println("caution: " + Messages.count(errors, "error") + " in the catalogue's files; \"tramontane catalogue check\" says which.");
        }
    }

    /** The currency of all prices of parts, where they have one in common. */
    private static String currency(Catalogue catalogue, List<Integer> parts) {
        List<String> all = parts.stream().filter(part -> Double.isFinite(catalogue.number(part, "price")))
                .map(part -> catalogue.text(part, "currency").orElse("")).distinct().toList();
        return all.size() == 1 && !all.getFirst().isEmpty() ? " " + all.getFirst() : "";
    }

    private static String csv(Catalogue catalogue, List<CatalogueField> fields, List<Integer> parts, UnitSystem units) {
        CsvRows rows = new CsvRows();
        List<String> head = new ArrayList<>(List.of("id"));
        fields.forEach(field -> head.add(field.name() + field.kind().map(kind -> " " + ChoiceCsv.bracket(kind, units)).orElse("")));
        rows.row(head.toArray(String[]::new));
        for (int part : parts) {
            List<String> row = new ArrayList<>(List.of(catalogue.id(part)));
            fields.forEach(field -> row.add(switch (catalogue.cell(part, field)) {
                case Amount amount -> ChoiceCsv.number(amount.si(), amount.quantity(), units);
                case Table.Words words -> words.text();
                default -> "";
            }));
            rows.row(row.toArray(String[]::new));
        }
        return rows.toString();
    }

    private static String json(Catalogue catalogue, List<CatalogueField> fields, List<Integer> parts) {
        return JsonDocument.of(json -> {
            json.beginObject().name("format").value(1).name("parts").beginArray();
            for (int part : parts) {
                json.beginObject().name("id").value(catalogue.id(part)).name("file").value(catalogue.file(part).toString()).name("values").beginObject();
                for (CatalogueField field : fields) {
                    switch (catalogue.cell(part, field)) {
                        case Amount amount -> json.name(field.name()).value(amount.si());
                        case Table.Words words -> json.name(field.name()).value(words.text());
                        default -> { }
                    }
                }
                json.endObject().endObject();
            }
            json.endArray();
            ChoiceJson.problems(json, catalogue.problems());
            json.endObject();
        });
    }
}
