package tramontane.cli.internal;

import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.internal.output.CsvFigures;
import tramontane.cli.internal.output.JsonReport;
import tramontane.cli.terminal.DesignSource;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.Messages;
import tramontane.cli.terminal.Options;
import tramontane.cli.terminal.Options.Format;
import tramontane.cli.terminal.Syntax;
import tramontane.cli.terminal.TerminalVerb;
import tramontane.model.Design;

/** Says everything that is wrong with a design file, without solving it. */
final class Validate extends TerminalVerb {

    private final Surroundings surroundings;

    Validate(Surroundings surroundings) {
        super("validate", "Check a design file without solving it.");
        this.surroundings = surroundings;
    }

    @Override
    protected Syntax syntax() {
        return new Syntax(name())
                .parameter("FILE", "A design file, or the name of a sample.")
                .option(Options.FORMAT, "FORMAT", "text (standard), json or csv.")
                .option(Options.MAX_SIZE, "SIZE", "Refuse design files larger than this; standard 64MB.")
                .footer("Exit code: 0 if the file can be solved, cautions or not; 2 if it has errors.");
    }

    @Override
    protected int run(Syntax.Given given, Console console) throws Ending {
        Format format = Options.format(given, Format.TEXT, Format.JSON, Format.CSV);
        DesignSource source = DesignSource.open(given.parameter(0), surroundings.samples(), Options.maxSize(given),
                surroundings.needEngine());
        switch (format) {
            case TEXT -> {
                source.print(console.out());
                console.out().println((source.problems().isEmpty() ? source.name() + ": " : "")
                        + Messages.count(source.problems()) + ".");
            }
            case JSON -> console.data().print(
                    JsonReport.of(source.design().map(Design::name).orElse(""), source.problems()));
            case CSV -> console.data().print(CsvFigures.problems(source.problems()));
        }
        return source.sound() ? ExitCode.FINE : ExitCode.BAD_INPUT;
    }
}
