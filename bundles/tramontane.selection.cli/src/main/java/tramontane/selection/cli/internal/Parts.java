package tramontane.selection.cli.internal;

import java.util.List;
import org.osgi.framework.BundleContext;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import org.osgi.service.component.annotations.ReferenceCardinality;
import org.osgi.service.component.annotations.ReferencePolicyOption;
import tramontane.analysis.Engine;
import tramontane.analysis.Importer;
import tramontane.cli.Verb;
import tramontane.cli.terminal.VerbGroup;

/** Everything about catalogues. */
@Component(service = Verb.class)
public final class Parts extends VerbGroup {

    /** Made by Declarative Services; with other importers another one is made. */
    @Activate
    public Parts(BundleContext context, @Reference Engine engine,
            @Reference(cardinality = ReferenceCardinality.MULTIPLE, policyOption = ReferencePolicyOption.GREEDY) List<Importer> importers) {
        this(CatalogueFolders.of(context), engine, importers);
    }

    Parts(CatalogueFolders folders, Engine engine, List<Importer> importers) {
        super("catalogue", "List, show, check, import and export the parts of a catalogue.",
                List.of(new ListParts(folders, engine), new ShowPart(folders, engine), new CheckParts(folders, engine), new ListFields(folders, engine),
                        new ImportParts(importers), new ExportParts(folders, engine)),
                "A catalogue is folders of JSON files, one part or one family of parts in each.", "",
                "Examples:",
                "  tramontane catalogue list --where \"type = axial and width <= 92 mm\" --sort freeDelivery",
                "  tramontane catalogue check --catalogue parts --only",
                "  tramontane catalogue import list.csv --as parts-table --output parts/list.json");
    }
}
