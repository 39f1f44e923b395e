package tramontane.selection.cli.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import tramontane.analysis.Amount;
import tramontane.analysis.Engine;
import tramontane.analysis.Table;
import tramontane.catalogue.Catalogue;
import tramontane.catalogue.CatalogueField;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.Options;
import tramontane.cli.terminal.Syntax;
import tramontane.cli.terminal.TextTable;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/** Lists the fields that filters may name. */
final class ListFields extends CatalogueVerb {

    ListFields(CatalogueFolders folders, Engine engine) {
        super("fields", "List the fields that filters, --fields and --sort may name.", folders, engine);
    }

    @Override
    protected Syntax syntax() {
        return CatalogueFolders.folders(new Syntax(name()))
                .flag("--all", "Also fields that no part of the catalogue has.")
                .option(Options.UNITS, "UNITS", "metric (standard), us or si.");
    }

    @Override
    protected int run(Syntax.Given given, Console console) throws Ending {
        UnitSystem units = Options.units(given, UnitSystem.METRIC);
        Catalogue catalogue = catalogue(given);
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (CatalogueField field : catalogue.fields()) {
            long parts = IntStream.range(0, catalogue.size()).filter(part -> FieldCells.says(catalogue, part, field)).count();
            if (parts > 0 || given.flag("--all")) {
                rows.add(List.of(new Table.Words(field.name()), new Table.Words(field.label()),
                        new Table.Words(field.kind().map(kind -> unit(kind, units)).orElse("text")), new Amount(parts, QuantityKind.COUNT),
                        new Table.Words(field.isDerived() ? "from the curves" : "")));
            }
        }
        TextTable.lines(new Table("Fields", List.of(new Table.Column("field", false), new Table.Column("what it is", false), new Table.Column("unit", false),
                new Table.Column("parts that say it", true), new Table.Column("derived", false)), rows), 1, console.width(), units, console::shown)
                .forEach(console.out()::println);
        return ExitCode.FINE;
    }

    private static String unit(QuantityKind kind, UnitSystem units) {
        String unit = units == UnitSystem.SI ? kind.siUnit() : Units.display(kind, units).symbol();
        return unit.isEmpty() || unit.equals("1") ? "number" : unit;
    }
}
