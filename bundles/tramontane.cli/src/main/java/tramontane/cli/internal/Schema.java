package tramontane.cli.internal;

import java.util.Comparator;
import java.util.Map;
import java.util.TreeMap;
import tramontane.analysis.Engine;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.model.Form;

/** Prints the JSON Schema of design files, as far as what is loaded knows them. */
final class Schema extends OwnVerb {

    private final Surroundings surroundings;
    private final Writer writer;

    /** Makes a JSON Schema. */
    @FunctionalInterface
    interface Writer {
        /** The schema for designs with these passage kinds and sections. */
        String design(Map<String, Form> kinds, Map<String, Form> sections);
    }

    Schema(Surroundings surroundings, Writer writer) {
        super("schema", "Print the JSON Schema of design files, for editors that check while you type.");
        this.surroundings = surroundings;
        this.writer = writer;
    }

    @Override
    Syntax syntax() {
        return new Syntax(name()).footer("Example:", "  tramontane schema > design.schema.json");
    }

    @Override
    int run(Syntax.Given given, Console console) throws Ending {
        Engine engine = surroundings.needEngine();
        Map<String, Form> kinds = new TreeMap<>(Comparator.naturalOrder());
        engine.passageKinds().forEach((name, kind) -> kinds.put(name, kind.form()));
        Map<String, Form> sections = new TreeMap<>(Comparator.naturalOrder());
        engine.sectionTypes().forEach((name, section) -> sections.put(name, section.form()));
        String schema = writer.design(kinds, sections);
        console.data().print(schema.endsWith("\n") ? schema : schema + "\n");
        return ExitCode.FINE;
    }
}
