package tramontane.selection.cli.internal;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import tramontane.analysis.Engine;
import tramontane.analysis.Finding;
import tramontane.analysis.Severity;
import tramontane.catalogue.Catalogue;
import tramontane.catalogue.Plausibility;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.FindingLines;
import tramontane.cli.terminal.JsonDocument;
import tramontane.cli.terminal.Messages;
import tramontane.cli.terminal.Options;
import tramontane.cli.terminal.Options.Format;
import tramontane.cli.terminal.Syntax;
import tramontane.cli.terminal.Wrapping;
import tramontane.model.Problem;
import tramontane.physics.units.UnitSystem;

/** Says which files are damaged, which parts stand twice and whose figures cannot be true. */
final class CheckParts extends CatalogueVerb {

    private static final int MOST = 200;

    CheckParts(CatalogueFolders folders, Engine engine) {
        super("check", "Check the files of a catalogue and the figures of its parts.", folders, engine);
    }

    @Override
    protected Syntax syntax() {
        Syntax syntax = new Syntax(name());
        CatalogueFolders.folders(syntax);
        return CatalogueFolders.filter(syntax)
                .option(Options.FORMAT, "FORMAT", "text (standard) or json.")
                .option(Options.UNITS, "UNITS", "metric (standard), us or si; json is always SI.")
                .footer("With --where the figures of these parts only are looked at, but all files.",
                        "",
                        "Exit code: 0 if there is nothing but cautions; 1 if a file or a part has errors;",
                        "2 for mistakes in the command line or a filter.");
    }

    @Override
    protected int run(Syntax.Given given, Console console) throws Ending {
        Format format = Options.format(given, Format.TEXT, Format.JSON);
        UnitSystem units = Options.units(given, UnitSystem.METRIC);
        Catalogue catalogue = catalogue(given);
        List<Finding> findings = new ArrayList<>();
        for (int part : selected(given, catalogue)) {
            findings.addAll(Plausibility.of(catalogue.part(part)));
        }
        findings.sort(Comparator.comparing(Finding::severity).reversed());
        long files = IntStream.range(0, catalogue.size()).mapToObj(catalogue::file).distinct().count();
        if (format == Format.JSON) {
            console.data().print(JsonDocument.of(json -> {
                json.beginObject().name("format").value(1).name("parts").value(catalogue.size()).name("files").value(files);
                ChoiceJson.problems(json, catalogue.problems());
                findings(json, findings);
                json.endObject();
            }));
        } else {
            text(catalogue, findings, files, units, console);
        }
        boolean errors = catalogue.problems().stream().anyMatch(Problem::isError)
                || findings.stream().anyMatch(finding -> finding.severity() == Severity.ERROR || finding.severity() == Severity.NOT_MET);
        return errors ? ExitCode.NOT_MET : ExitCode.FINE;
    }

    private static void text(Catalogue catalogue, List<Finding> findings, long files, UnitSystem units, Console console) {
        List<Problem> problems = catalogue.problems();
        for (Problem problem : problems.subList(0, Math.min(MOST, problems.size()))) {
            Wrapping.hanging(problem.isError() ? "error    " : "caution  ", problem.sentence(), console.width()).forEach(console.out()::println);
        }
        if (problems.size() > MOST) {
            console.out().println("and " + (problems.size() - MOST) + " more in files; --format json gives all.");
        }
        if (!findings.isEmpty()) {
            if (!problems.isEmpty()) {
                console.out().println();
            }
            console.out().println("Plausibility");
            FindingLines.of(findings.subList(0, Math.min(MOST, findings.size())), units, console.width()).forEach(console.out()::println);
            if (findings.size() > MOST) {
                console.out().println("  and " + (findings.size() - MOST) + " more; --format json gives all.");
            }
        }
        if (!problems.isEmpty() || !findings.isEmpty()) {
            console.out().println();
        }
        long errors = findings.stream().filter(finding -> finding.severity() == Severity.ERROR || finding.severity() == Severity.NOT_MET).count();
        String figures = findings.isEmpty() ? "all figures can be true together" : Messages.count(errors, "part figure") + " impossible, "
                + (findings.size() - errors) + " unlikely";
        Wrapping.lines(Messages.count(catalogue.size(), "part") + " in " + Messages.count(files, "file") + ": " + Messages.count(problems) + " in files, "
                + figures + ".", console.width()).forEach(console.out()::println);
    }

    static void findings(JsonWriter json, List<Finding> findings) throws IOException {
        json.name("findings").beginArray();
        for (Finding finding : findings) {
            json.beginObject().name("severity").value(finding.severity().word()).name("message").value(finding.message().in(UnitSystem.SI))
                    .name("place").value(finding.place()).name("condition").value(finding.condition())
                    .name("remedy").value(finding.remedy().in(UnitSystem.SI)).name("source").value(finding.source()).endObject();
        }
        json.endArray();
    }
}
