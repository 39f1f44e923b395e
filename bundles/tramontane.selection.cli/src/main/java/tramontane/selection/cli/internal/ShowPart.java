package tramontane.selection.cli.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import tramontane.analysis.Amount;
import tramontane.analysis.Engine;
import tramontane.analysis.Finding;
import tramontane.analysis.Table;
import tramontane.catalogue.Catalogue;
import tramontane.catalogue.CatalogueField;
import tramontane.catalogue.Plausibility;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.FindingLines;
import tramontane.cli.terminal.JsonDocument;
import tramontane.cli.terminal.Numbers;
import tramontane.cli.terminal.Options;
import tramontane.cli.terminal.Options.Format;
import tramontane.cli.terminal.Syntax;
import tramontane.cli.terminal.TextTable;
import tramontane.cli.terminal.Wrapping;
import tramontane.model.AirMover;
import tramontane.model.Datasheet;
import tramontane.model.MoverCurve;
import tramontane.model.Quantity;
import tramontane.model.Spelling;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;

/** Shows all that a part says, and what to think of it. */
final class ShowPart extends CatalogueVerb {

    ShowPart(CatalogueFolders folders, Engine engine) {
        super("show", "Show all that a part says, where it comes from, and whether it can be true.", folders, engine);
    }

    @Override
    protected Syntax syntax() {
        return CatalogueFolders.folders(new Syntax(name()).parameter("PART", "The part's id."))
                .option(Options.FORMAT, "FORMAT", "text (standard) or json.")
                .option(Options.UNITS, "UNITS", "metric (standard), us or si; json is always SI.")
                .footer("Exit code: 0; 2 where there is no such part.");
    }

    @Override
    protected int run(Syntax.Given given, Console console) throws Ending {
        Format format = Options.format(given, Format.TEXT, Format.JSON);
        UnitSystem units = Options.units(given, UnitSystem.METRIC);
        Catalogue catalogue = catalogue(given);
        String id = given.parameter(0);
        OptionalInt found = catalogue.index(id);
        if (found.isEmpty()) {
            List<String> ids = IntStream.range(0, catalogue.size()).mapToObj(catalogue::id).toList();
            throw Ending.badInput(id + ": there is no such part in the catalogue" + ids.stream().filter(id::equalsIgnoreCase).findFirst()
                    .or(() -> Spelling.nearest(id, ids)).map(near -> "; did you mean " + near + "?").orElse("; \"tramontane catalogue list\" lists all."));
        }
        int part = found.getAsInt();
        List<CatalogueField> fields = catalogue.fields().stream().filter(field -> FieldCells.says(catalogue, part, field)).toList();
        AirMover mover = catalogue.part(part);
        List<Finding> findings = Plausibility.of(mover);
        if (format == Format.JSON) {
            console.data().print(json(catalogue, part, mover, fields, findings));
        } else {
            text(catalogue, part, mover, fields, findings, units, console);
        }
        return ExitCode.FINE;
    }

    private static Optional<Datasheet.Origin> origin(AirMover mover, CatalogueField field) {
        return field.isDerived() || field.path().equals("id") ? Optional.empty() : mover.datasheet().origin(field.path());
    }

    private static void text(Catalogue catalogue, int part, AirMover mover, List<CatalogueField> fields, List<Finding> findings, UnitSystem units, Console console) {
        console.out().println(mover.id() + (catalogue.file(part).toString().isEmpty() ? "" : "   (" + catalogue.file(part) + ")"));
        List<List<Table.Cell>> rows = new ArrayList<>();
        List<String> sources = new ArrayList<>();
        for (CatalogueField field : fields) {
            Table.Cell cell = catalogue.cell(part, field);
            Optional<Datasheet.Origin> origin = origin(mover, field);
            rows.add(List.of(new Table.Words(field.name()), new Table.Words(field.label().equals(field.name()) ? "" : field.label()), cell,
                    new Table.Words(field.isDerived() ? "from its curves" : origin.map(each -> words(each, sources)).orElse("")),
                    origin.filter(each -> cell instanceof Amount).flatMap(Datasheet.Origin::tolerance).<Table.Cell>map(tolerance -> new Amount(tolerance.si(), QuantityKind.FRACTION))
                            .orElse(new Table.Empty())));
        }
        print(new Table("What it says", List.of(new Table.Column("field", false), new Table.Column("what it is", false), new Table.Column("value", false),
                new Table.Column("from", false), new Table.Column("tolerance", true)), rows), 1, units, console);
        for (int i = 0; i < sources.size(); i++) {
            Wrapping.hanging("[" + (i + 1) + "] ", sources.get(i), console.width()).forEach(console.out()::println);
        }
        for (int i = 0; i < mover.curves().size(); i++) {
            print(curve(mover.curves().get(i), mover.curves().size() == 1 ? "Curve" : "Curve " + (i + 1), units), 1, units, console);
        }
        console.out().println();
        if (findings.isEmpty()) {
            console.out().println("Its figures can be true together.");
        } else {
            console.out().println("Plausibility");
            FindingLines.of(findings, units, console.width()).forEach(console.out()::println);
        }
    }

    /** How a figure was come by, with the number of its source, each of which is told once. */
    private static String words(Datasheet.Origin origin, List<String> sources) {
        return origin.from().orElse("") + origin.source().map(source -> {
            if (!sources.contains(source)) {
                sources.add(source);
            }
            return " [" + (sources.indexOf(source) + 1) + "]";
        }).orElse("");
    }

    private static Table curve(MoverCurve curve, String name, UnitSystem units) {
        List<String> at = new ArrayList<>();
        curve.speed().ifPresent(speed -> at.add(Numbers.text(speed.si(), QuantityKind.ROTATIONAL_SPEED, units)));
        curve.voltage().ifPresent(voltage -> at.add(Numbers.text(voltage.si(), QuantityKind.VOLTAGE, units)));
        curve.frequency().ifPresent(frequency -> at.add(Numbers.text(frequency.si(), QuantityKind.FREQUENCY, units)));
        at.add(Numbers.text(curve.statedDensity(), QuantityKind.DENSITY, units));
        double[] flow = curve.flow().toArray();
        double[] pressure = curve.pressure().toArray();
        Optional<double[]> power = curve.power().map(each -> each.toArray());
        List<Table.Column> columns = new ArrayList<>(List.of(new Table.Column("flow", true), new Table.Column("pressure", true)));
        power.ifPresent(each -> columns.add(new Table.Column("power", true)));
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (int i = 0; i < Math.min(flow.length, pressure.length); i++) {
            List<Table.Cell> row = new ArrayList<>(List.of(new Amount(flow[i], QuantityKind.FLOW), new Amount(pressure[i], QuantityKind.PRESSURE)));
            int point = i;
            power.ifPresent(each -> row.add(point < each.length ? new Amount(each[point], QuantityKind.POWER) : new Table.Empty()));
            rows.add(row);
        }
        return new Table(name + " at " + String.join(", ", at), columns, rows);
    }

    private static void print(Table table, int keys, UnitSystem units, Console console) {
        console.out().println();
        TextTable.lines(table, keys, console.width(), units, console::shown).forEach(console.out()::println);
    }

    private static String json(Catalogue catalogue, int part, AirMover mover, List<CatalogueField> fields, List<Finding> findings) {
        return JsonDocument.of(json -> {
            json.beginObject().name("format").value(1).name("id").value(mover.id()).name("file").value(catalogue.file(part).toString())
                    .name("fields").beginArray();
            for (CatalogueField field : fields) {
                json.beginObject().name("field").value(field.path()).name("label").value(field.label());
                switch (catalogue.cell(part, field)) {
                    case Amount amount -> json.name("value").value(amount.si()).name("unit").value(amount.quantity().siUnit());
                    case Table.Words words -> json.name("value").value(words.text());
                    default -> { }
                }
                json.name("derived").value(field.isDerived());
                Optional<Datasheet.Origin> origin = origin(mover, field);
                if (origin.flatMap(Datasheet.Origin::from).isPresent()) {
                    json.name("from").value(origin.flatMap(Datasheet.Origin::from).get());
                }
                Optional<Quantity> tolerance = origin.flatMap(Datasheet.Origin::tolerance);
                if (tolerance.isPresent()) {
                    json.name("tolerance").value(tolerance.get().si());
                }
                if (origin.flatMap(Datasheet.Origin::source).isPresent()) {
                    json.name("source").value(origin.flatMap(Datasheet.Origin::source).get());
                }
                json.endObject();
            }
            json.endArray();
            CheckParts.findings(json, findings);
            json.endObject();
        });
    }
}
