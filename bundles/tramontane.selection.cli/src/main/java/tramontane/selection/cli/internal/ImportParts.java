package tramontane.selection.cli.internal;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import tramontane.analysis.Importer;
import tramontane.analysis.Table;
import tramontane.catalogue.PartFile;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.terminal.Delivery;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.Messages;
import tramontane.cli.terminal.Options;
import tramontane.cli.terminal.Settings;
import tramontane.cli.terminal.Syntax;
import tramontane.cli.terminal.TerminalVerb;
import tramontane.cli.terminal.TextTable;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Spelling;
import tramontane.model.Value;
import tramontane.model.file.Limits;
import tramontane.model.file.TreeFile;
import tramontane.physics.units.UnitSystem;

/** Makes a catalogue file out of a file of another form. */
final class ImportParts extends TerminalVerb {

    private static final String AS = "--as";
    private static final String MAPPING = "--mapping";
    private static final String OUTPUT = "--output";
    private static final String REPLACE = "--replace";

    private final List<Importer> importers;

    ImportParts(List<Importer> importers) {
        super("catalogue import", "Make a file of the catalogue out of a table or of the points of a curve.");
        this.importers = List.copyOf(importers);
    }

    @Override
    protected Syntax syntax() {
        return new Syntax(name())
                .optionalParameter("FILE", "The file to read.")
                .option(AS, "ID", "The importer; \"tramontane catalogue import\" alone lists them and their settings.")
                .option(MAPPING, "FILE.json", "Settings kept in a file: JSON with the settings of the importer as members.")
                .options(Settings.SET, "NAME=VALUE", "A setting of the importer; may be given several times and takes the place of the mapping's.")
                .option(OUTPUT, "FILE.json", "The catalogue file to write; the parts are only checked where none is named.")
                .flag(REPLACE, "Write over a file that is there already.")
                .option(Options.MAX_SIZE, "SIZE", "Refuse files larger than this; standard 64MB.")
                .flag("--quiet", "Print no cautions and no confirmation.")
                .footer("Exit codes:",
                        "  0  everything was understood, cautions or not",
                        "  2  the command line, the mapping or the file has mistakes; nothing was written",
                        "  3  the file could not be written",
                        "",
                        "Examples:",
                        "  tramontane catalogue import list.csv --as parts-table --output parts/list.json",
                        "  tramontane catalogue import curve.txt --as points --set part=\"Garbin 92-25\" --set flowUnit=m3/h --set pressureUnit=Pa");
    }

    @Override
    protected int run(Syntax.Given given, Console console) throws Ending {
        if (given.option(AS).isEmpty()) {
            return list(given, console);
        }
        Importer importer = importer(given.option(AS).get());
        String name = given.parameter(0);
        if (name.isEmpty()) {
            throw Ending.badInput("catalogue import: FILE is missing. See \"tramontane help catalogue import\".");
        }
        Value.Tree set = Settings.written(importer.settings(), "importer " + importer.id(), given.options(Settings.SET));
        Value.Tree settings = given.option(MAPPING).isPresent() ? mapping(given.option(MAPPING).get()) : Value.Tree.EMPTY;
        for (Map.Entry<String, Value> each : set.members().entrySet()) {
            settings = settings.with(each.getKey(), each.getValue());
        }
        Optional<Path> target = Optional.empty();
        if (given.option(OUTPUT).isPresent()) {
            target = Optional.of(Delivery.target(given.option(OUTPUT).get()));
            if (Files.exists(target.get()) && !given.flag(REPLACE)) {
                throw Ending.badInput(OUTPUT + " " + given.option(OUTPUT).get() + ": there is a file of that name; " + REPLACE + " writes over it.");
            }
        }
        byte[] content = bytes(name, Options.maxSize(given));
        Importer.Imported imported = importer.read(name, content, Settings.read(importer.settings(), settings));
        List<Problem> problems = imported.problems();
        boolean wrong = problems.stream().anyMatch(Problem::isError);
        if (wrong || !given.flag("--quiet")) {
            for (Problem problem : problems) {
                console.err().println((problem.isError() ? "" : "caution: ") + problem.sentence());
            }
        }
        if (wrong || imported.movers().isEmpty()) {
            console.err().println((wrong ? Messages.count(problems) : name + " holds no parts") + "; nothing was written.");
            return ExitCode.BAD_INPUT;
        }
        if (!imported.passages().isEmpty() && !given.flag("--quiet")) {
            console.err().println("caution: " + Messages.count(imported.passages().size(), "passage") + " of the file left out, since a catalogue holds parts only");
        }
        String parts = Messages.count(imported.movers().size(), "part");
        if (target.isEmpty()) {
            console.out().println(parts + " understood; " + OUTPUT + " FILE.json writes " + (imported.movers().size() == 1 ? "it" : "them") + ".");
            return ExitCode.FINE;
        }
        try {
            PartFile.save(target.get(), imported.movers());
        } catch (IOException failed) {
            throw Ending.broken("The parts could not be written to " + target.get() + ": " + failed.getMessage() + ".");
        }
        if (!given.flag("--quiet")) {
            console.err().println(parts + " written to " + target.get() + ".");
        }
        return ExitCode.FINE;
    }

    private Importer importer(String id) throws Ending {
        List<String> known = importers.stream().map(Importer::id).sorted().toList();
        return importers.stream().filter(each -> each.id().equals(id)).findFirst().orElseThrow(() -> Ending.badInput(AS + " " + id
                + ": there is no such importer" + Spelling.nearest(id, known).map(near -> "; did you mean " + near + "?")
                .orElse(known.isEmpty() ? "; none is loaded." : "; loaded are " + String.join(", ", known) + ".")));
    }

    private static Value.Tree mapping(String name) throws Ending {
        TreeFile.Read read = TreeFile.parse(bytes(name, Options.STANDARD_SIZE), Limits.STANDARD);
        Optional<Value.Tree> tree = read.tree();
        Optional<Problem> wrong = read.problems().stream().filter(Problem::isError).findFirst();
        if (tree.isEmpty() || wrong.isPresent()) {
            throw Ending.badInput(MAPPING + " " + name + ": " + wrong.map(Problem::sentence).orElse("it holds no object") + ".");
        }
        return tree.get();
    }

    private static byte[] bytes(String name, long most) throws Ending {
        try {
            Path path = Path.of(name);
            if (Files.isDirectory(path)) {
                throw Ending.badInput(name + ": this is a folder; a file was expected.");
            }
            if (Files.size(path) > most) {
                throw Ending.badInput(name + ": the file has " + Files.size(path) + " bytes; expected " + most + " at most.");
            }
            return Files.readAllBytes(path);
        } catch (InvalidPathException impossible) {
            throw Ending.badInput(name + ": no file can have this name.");
        } catch (NoSuchFileException missing) {
            throw Ending.badInput(name + ": there is no such file.");
        } catch (IOException unreadable) {
            throw Ending.badInput(name + ": the file cannot be read (" + unreadable.getMessage() + ").");
        }
    }

    /** Lists the importers; where a file was named, as an answer to a command line that says too little. */
    private int list(Syntax.Given given, Console console) {
        boolean asked = given.parameter(0).isEmpty();
        PrintWriter to = asked ? console.out() : console.err();
        if (!asked) {
            to.println("catalogue import: --as is missing. See \"tramontane help catalogue import\".");
        }
        if (importers.isEmpty()) {
            to.println("No importer is loaded.");
        } else {
            List<Importer> sorted = importers.stream().sorted(Comparator.comparing(Importer::id)).toList();
            print(new Table("Importers", columns("id", "what it reads", "endings"), sorted.stream()
                    .map(each -> cells(each.id(), each.label(), String.join(" ", each.endings()))).toList()), to, console);
            to.println();
            print(new Table("Settings", columns("importer", "name", "what it is", "standard"), sorted.stream().flatMap(each -> each.settings().fields().stream()
                    .map(field -> cells(each.id(), field.name(), field.help(), field.standard().map(FormReader::describe)
                            .orElse(field.required() ? "must be set" : "")))).toList()), to, console);
        }
        return asked ? ExitCode.FINE : ExitCode.BAD_INPUT;
    }

    private static void print(Table table, PrintWriter to, Console console) {
        TextTable.lines(table, 1, console.width(), UnitSystem.METRIC, console::shown).forEach(to::println);
    }

    private static List<Table.Column> columns(String... labels) {
        return Stream.of(labels).map(label -> new Table.Column(label, false)).toList();
    }

    private static List<Table.Cell> cells(String... texts) {
        return Stream.of(texts).<Table.Cell>map(Table.Words::new).toList();
    }
}
