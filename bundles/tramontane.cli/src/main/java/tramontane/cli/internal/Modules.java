package tramontane.cli.internal;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import tramontane.analysis.Engine;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Table;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.JsonDocument;
import tramontane.cli.terminal.Options;
import tramontane.cli.terminal.Options.Format;
import tramontane.cli.terminal.Syntax;
import tramontane.cli.terminal.TerminalVerb;
import tramontane.cli.terminal.TextTable;
import tramontane.cli.terminal.Wrapping;
import tramontane.physics.units.UnitSystem;

/** Says what is loaded, and what is not and why. */
final class Modules extends TerminalVerb {

    private final Surroundings surroundings;

    Modules(Surroundings surroundings) {
        super("modules", "List what is loaded: bundles, analyses, figures; and why something is not.");
        this.surroundings = surroundings;
    }

    @Override
    protected Syntax syntax() {
        return new Syntax(name()).option(Options.FORMAT, "FORMAT", "text (standard) or json.")
                .footer("The ids of figures are what requirements name; the names of passage kinds",
                        "and link kinds are what passages and the links of chains name.");
    }

    @Override
    protected int run(Syntax.Given given, Console console) throws Ending {
        Format format = Options.format(given, Format.TEXT, Format.JSON);
        Inventory inventory = surroundings.inventory();
        if (format == Format.JSON) {
            console.data().print(JsonDocument.of(json -> json(json, inventory)));
        } else {
            text(inventory, console);
        }
        return ExitCode.FINE;
    }

    private void text(Inventory inventory, Console console) {
        PrintWriter out = console.out();
        print(console, new Table("Bundles", columns("bundle", "version", "state"), inventory.bundles().stream()
                .map(bundle -> cells(bundle.name(), bundle.version(), bundle.state())).toList()));
        print(console, new Table("Analyses", columns("id", "label", "runs once per", "bundle"), inventory.analyses().stream()
                .map(each -> cells(each.id(), each.label(), each.scope().name().toLowerCase(Locale.ROOT), each.bundle()))
                .toList()));
        print(console, new Table("Figures", columns("id", "label", "unit", "what it is"), inventory.analyses().stream()
                .flatMap(each -> each.figures().stream()).distinct()
                .map(kind -> cells(kind.id(), kind.label(), unit(kind), kind.help())).toList()));
        print(console, new Table("Extensions", columns("kind", "name", "what it is", "bundle"), inventory.extensions().stream()
                .map(each -> cells(each.kind(), each.fullName(), each.help(), each.bundle())).toList()));
        List<Inventory.Trouble> troubles = troubles(inventory);
        if (troubles.isEmpty()) {
            out.println("Everything that is installed runs.");
            return;
        }
        out.println("Not running");
        troubles.forEach(trouble -> Wrapping.hanging("  ", trouble.what() + ": " + trouble.reason() + ".", console.width())
                .forEach(out::println));
    }

    private static List<Inventory.Trouble> troubles(Inventory inventory) {
        return Stream.concat(inventory.troubles().stream(), inventory.analyses().stream()
                .filter(each -> each.barred().isPresent())
                .map(each -> new Inventory.Trouble("analysis " + each.id(), "it is barred: " + each.barred().get()))).toList();
    }

    private static String unit(FigureKind kind) {
        return kind.quantity().dimensionless() ? "" : kind.quantity().siUnit();
    }

    private static void print(Console console, Table table) {
        if (!table.rows().isEmpty()) {
            TextTable.lines(table, 1, console.width(), UnitSystem.METRIC, console::shown).forEach(console.out()::println);
            console.out().println();
        }
    }

    private static List<Table.Column> columns(String... labels) {
        return List.of(labels).stream().map(label -> new Table.Column(label, false)).toList();
    }

    private static List<Table.Cell> cells(String... texts) {
        return List.of(texts).stream().<Table.Cell>map(Table.Words::new).toList();
    }

    private void json(JsonWriter json, Inventory inventory) throws IOException {
        json.beginObject().name("format").value(1).name("version").value(surroundings.version()).name("bundles").beginArray();
        for (Inventory.Loaded bundle : inventory.bundles()) {
            json.beginObject().name("name").value(bundle.name()).name("version").value(bundle.version())
                    .name("state").value(bundle.state()).endObject();
        }
        json.endArray().name("analyses").beginArray();
        for (Engine.Loaded analysis : inventory.analyses()) {
            json.beginObject().name("id").value(analysis.id()).name("label").value(analysis.label())
                    .name("bundle").value(analysis.bundle())
                    .name("scope").value(analysis.scope().name().toLowerCase(Locale.ROOT)).name("figures").beginArray();
            for (FigureKind kind : analysis.figures()) {
                json.beginObject().name("id").value(kind.id()).name("label").value(kind.label())
                        .name("unit").value(kind.quantity().siUnit())
                        .name("better").value(kind.better().name().toLowerCase(Locale.ROOT))
                        .name("help").value(kind.help()).endObject();
            }
            json.endArray().endObject();
        }
        json.endArray().name("extensions").beginArray();
        for (Inventory.Extension extension : inventory.extensions()) {
            json.beginObject().name("kind").value(extension.kind()).name("name").value(extension.name());
            if (!extension.carriedBy().isEmpty()) {
                json.name("carriedBy").beginArray();
                for (String owner : extension.carriedBy()) {
                    json.value(owner);
                }
                json.endArray();
            }
            json.name("help").value(extension.help()).name("bundle").value(extension.bundle()).endObject();
        }
        json.endArray().name("notRunning").beginArray();
        for (Inventory.Trouble trouble : troubles(inventory)) {
            json.beginObject().name("what").value(trouble.what()).name("reason").value(trouble.reason()).endObject();
        }
        json.endArray().endObject();
    }
}
