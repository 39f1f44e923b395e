package tramontane.catalogue.internal.tables;

import java.util.List;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import org.osgi.service.component.annotations.ReferenceCardinality;
import org.osgi.service.component.annotations.ReferencePolicyOption;
import tramontane.analysis.Importer;
import tramontane.analysis.SectionType;
import tramontane.model.Form;
import tramontane.model.Values;

/** Parts from a table: one row for each part, or one for each point of a curve. */
@Component(service = Importer.class)
public final class PartRows implements Importer {

    private final List<SectionType<?>> sections;

    /** @param sections the section types that are loaded; with others the framework makes another importer */
    @Activate
    public PartRows(@Reference(cardinality = ReferenceCardinality.MULTIPLE, policyOption = ReferencePolicyOption.GREEDY,
            service = SectionType.class) List<SectionType<?>> sections) {
        this.sections = List.copyOf(sections);
    }

    @Override
    public String id() {
        return "parts-table";
    }

    @Override
    public String label() {
        return "table of parts";
    }

    @Override
    public List<String> endings() {
        return List.of(".csv", ".tsv", ".txt");
    }

    @Override
    public Form settings() {
        return Settings.TABLE;
    }

    @Override
    public Imported read(String name, byte[] content, Values settings) {
        return TableReader.read(name, content, settings, sections);
    }
}
