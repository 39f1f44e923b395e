package tramontane.selection.cli.internal;

import tramontane.analysis.Engine;
import tramontane.catalogue.Catalogue;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.Syntax;
import tramontane.cli.terminal.TerminalVerb;

/** A verb that reads the catalogue. */
abstract class CatalogueVerb extends TerminalVerb {

    private final CatalogueFolders folders;
    private final Engine engine;

    CatalogueVerb(String name, String summary, CatalogueFolders folders, Engine engine) {
        super("catalogue " + name, summary);
        this.folders = folders;
        this.engine = engine;
    }

    final Engine engine() {
        return engine;
    }

    final Catalogue catalogue(Syntax.Given given) throws Ending {
        return folders.read(given, engine);
    }

    static int[] selected(Syntax.Given given, Catalogue catalogue) throws Ending {
        return catalogue.select(CatalogueFolders.filter(CatalogueFolders.written(given), true, catalogue));
    }
}
