package tramontane.selection.cli.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.analysis.Table;
import tramontane.catalogue.Catalogue;
import tramontane.catalogue.CatalogueField;
import tramontane.cli.terminal.Ending;
import tramontane.model.Spelling;

/** What parts of a catalogue say, as cells. */
final class FieldCells {

    private FieldCells() {
    }

    static boolean says(Catalogue catalogue, int part, CatalogueField field) {
        return !(catalogue.cell(part, field) instanceof Table.Empty);
    }

    /** The fields that names mean. */
    static List<CatalogueField> fields(Catalogue catalogue, String option, String names) throws Ending {
        List<CatalogueField> fields = new ArrayList<>();
        for (String name : names.split(",", -1)) {
            fields.add(field(catalogue, option, name.strip()));
        }
        return fields;
    }

    static CatalogueField field(Catalogue catalogue, String option, String name) throws Ending {
        Optional<CatalogueField> field = catalogue.field(name);
        if (field.isEmpty()) {
            throw Ending.badInput(option + " \"" + name + "\": no part has such a field" + Spelling.nearest(name,
                    catalogue.fields().stream().map(CatalogueField::name).toList()).map(near -> "; did you mean " + near + "?")
                    .orElse("; \"tramontane catalogue fields\" lists them."));
        }
        return field.get();
    }
}
