package tramontane.selection.cli.internal;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tramontane.analysis.Engine;
import tramontane.catalogue.Catalogue;
import tramontane.catalogue.PartTable;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.terminal.Delivery;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.Messages;
import tramontane.cli.terminal.Options;
import tramontane.cli.terminal.Syntax;
import tramontane.physics.units.UnitSystem;

/** Writes parts as a table that can be imported again. */
final class ExportParts extends CatalogueVerb {

    ExportParts(CatalogueFolders folders, Engine engine) {
        super("export", "Write parts as a table (CSV) that can be imported again.", folders, engine);
    }

    @Override
    protected Syntax syntax() {
        Syntax syntax = new Syntax(name());
        CatalogueFolders.folders(syntax);
        return CatalogueFolders.filter(syntax)
                .option("--fields", "A,B,C", "The columns beside the id; all fields that any part has where not given.")
                .option(Options.UNITS, "UNITS", "metric, us or si; as they are written in the catalogue where not given.")
                .option("--output", "FILE", "Write to this file instead of the terminal.")
                .flag("--quiet", "Print no confirmation.")
                .footer("Exit code: 0 if it is written; 2 for mistakes in the command line or where no part passes.");
    }

    @Override
    protected int run(Syntax.Given given, Console console) throws Ending {
        Optional<UnitSystem> units = given.option(Options.UNITS).isPresent() ? Optional.of(Options.units(given, UnitSystem.METRIC)) : Optional.empty();
        Catalogue catalogue = catalogue(given);
        Optional<Path> target = given.option("--output").isPresent() ? Optional.of(Delivery.target(given.option("--output").get())) : Optional.empty();
        int[] selected = selected(given, catalogue);
        if (selected.length == 0) {
            throw Ending.badInput("No part passes the filter; nothing was written.");
        }
        List<String> fields = given.option("--fields").map(names -> Stream.concat(Stream.of("id"), Stream.of(names.split(",")).map(String::strip)
                .filter(name -> !name.equals("id"))).toList()).orElse(List.of());
        String table;
        try {
            table = PartTable.write(IntStream.of(selected).mapToObj(catalogue::part).toList(), fields, units, engine().sectionTypes());
        } catch (IllegalArgumentException unknown) {
            throw Ending.badInput("--fields: " + unknown.getMessage() + ".");
        }
        if (target.isEmpty()) {
            console.data().print(table);
            return ExitCode.FINE;
        }
        Delivery.write(target.get(), table);
        if (!given.flag("--quiet")) {
            console.err().println(Messages.count(selected.length, "part") + " written to " + target.get() + ".");
        }
        return ExitCode.FINE;
    }
}
