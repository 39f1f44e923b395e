package tramontane.cli.internal;

import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;
import tramontane.analysis.Engine;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.Syntax;
import tramontane.cli.terminal.TerminalVerb;
import tramontane.model.Form;
import tramontane.model.file.JsonSchema;
import tramontane.model.file.TreeFile;

/** Prints the JSON Schema of design files, as far as what is loaded knows them. */
final class Schema extends TerminalVerb {

    private final Surroundings surroundings;

    Schema(Surroundings surroundings) {
        super("schema", "Print the JSON Schema of design files, for editors that check while you type.");
        this.surroundings = surroundings;
    }

    @Override
    protected Syntax syntax() {
        return new Syntax(name()).footer("Example:", "  tramontane schema > design.schema.json");
    }

    @Override
    protected int run(Syntax.Given given, Console console) throws Ending {
        Engine engine = surroundings.needEngine();
        Map<String, Form> passages = new TreeMap<>();
        engine.passageKinds().forEach((name, kind) -> passages.put(name, kind.form()));
        Map<String, Form> links = new TreeMap<>();
        engine.linkKinds().forEach((name, kind) -> links.put(name, kind.form()));
        Map<Form, Map<String, Form>> sections = new HashMap<>();
        // of two that clash the first counts
        engine.sectionTypes().forEach(section -> section.owners().forEach(owner -> sections
                .computeIfAbsent(owner.form(), form -> new TreeMap<>()).putIfAbsent(section.form().name(), section.form())));
        console.data().print(TreeFile.write(JsonSchema.design(passages, links, sections)));
        return ExitCode.FINE;
    }
}
