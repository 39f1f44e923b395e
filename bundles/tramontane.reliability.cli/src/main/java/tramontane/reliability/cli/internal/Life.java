package tramontane.reliability.cli.internal;

import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.osgi.framework.BundleContext;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import tramontane.analysis.Engine;
import tramontane.cli.Verb;
import tramontane.cli.terminal.Installation;
import tramontane.cli.terminal.VerbGroup;

/** Everything about lives: tests, plans, redundancy, relations, charts. */
@Component(service = Verb.class)
public final class Life extends VerbGroup {

    /** Made by Declarative Services. */
    @Activate
    public Life(BundleContext context, @Reference Engine engine) {
        this(Installation.samples(context), engine, System.in);
    }

    Life(Optional<Path> samples, Engine engine, InputStream input) {
        super("life", "Evaluate and plan life tests; redundancy, life by temperature, charts of life.",
                List.of(new EvaluateTest(input), new PlanTest(), new JudgeRedundancy(), new ApplyLaw(), new DrawCharts(samples, engine)),
                "Life L10 is the time by which 10 % of alike units have failed.", "",
                "Examples:",
                "  tramontane life test test.csv --chart test.svg",
                "  tramontane life plan --life \"60000 h\" --units 20 --shape 3",
                "  tramontane life redundancy --needed 3 --of 4 --life \"60000 h\" --shape 3",
                "  tramontane life bearing --life \"60000 h\" --rated-at \"40 °C\" --at \"55 °C\"",
                "  tramontane life charts cabinet --output charts");
    }
}
