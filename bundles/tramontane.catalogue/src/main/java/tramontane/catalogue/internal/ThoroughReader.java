package tramontane.catalogue.internal;

import java.util.ArrayList;
import java.util.Optional;
import tramontane.analysis.SectionType;
import tramontane.analysis.Sections;
import tramontane.model.AirMover;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.FormReader;
import tramontane.model.Noun;
import tramontane.model.Quantity;
import tramontane.model.Shape;
import tramontane.model.Value;

/** Takes the values of a part by column from its tree of values. Belongs to one thread. */
final class ThoroughReader {

    private final FieldTree fields;
    private final PartRow.Builder row = new PartRow.Builder();
    private final FreeValues free = new FreeValues();

    ThoroughReader(FieldTree fields) {
        this.fields = fields;
    }

    /**
     * The values of a part.
     *
     * @param part the part
     * @param tree what its file says of it
     */
    PartRow row(AirMover part, Value.Tree tree) {
        row.clear();
        form(AirMover.FORM, tree, "", true);
        QuickReader.derived(row, CurveFigures.of(part), part.ratedSpeedSi().orElse(Double.NaN),
                part.rotorDiameter().map(Quantity::si).orElse(Double.NaN));
        return row.build();
    }

    private void form(Form form, Value.Tree tree, String before, boolean part) {
        tree.members().forEach((name, value) -> {
            Optional<Field> field = form.field(name);
            if (field.isPresent()) {
                if (field.get().shape() instanceof Shape.Part(Form inner)) {
                    if (value instanceof Value.Tree object) {
                        form(inner, object, before + name + ".", false);
                    }
                } else {
                    fields.column(before + name).ifPresent(column -> scalar(field.get().shape(), value, column.number()));
                }
            } else if (part && name.equals(Noun.SECTIONS) && value instanceof Value.Tree sections) {
                sections.members().forEach(this::section);
            } else if (!Node.EVERYWHERE.contains(name) && !name.equals(Noun.SECTIONS)) {
                free(value, before + name);
            }
        });
    }

    private void section(String name, Value value) {
        SectionType<?> type = fields.sections().get(name);
        String path = Noun.SECTIONS + "." + name;
        if (type == null) {
            free(value, path);
            return;
        }
        try {
            Sections.current(type, value, "", new ArrayList<>()).ifPresent(tree -> form(type.form(),
                    type.form().field("version").isPresent() ? tree : tree.without("version"), path + ".", false));
        } catch (RuntimeException e) {
            // the code of an extension, on whatever stands in the file; told where the part is judged
            return;
        }
    }

    private void scalar(Shape shape, Value value, int column) {
        switch (shape) {
            case Shape.Amount(var kind, var range) -> FormReader.quantity(value, kind).ifPresent(
                    quantity -> row.set(column, quantity.si()));
            case Shape.Whole whole when value instanceof Value.Num num -> row.set(column, num.number() + 0.0);
            case Shape.YesNo yesNo when value instanceof Value.Flag flag -> row.set(column, String.valueOf(flag.on()));
            default -> {
                if (value instanceof Value.Text(String text)) {
                    row.set(column, text);
                }
            }
        }
    }

    private void free(Value value, String path) {
        switch (value) {
            case Value.Tree tree -> tree.members().forEach((name, inner) -> free(inner, path + "." + name));
            case Value.Text(String text) -> fields.free(path).ifPresent(field -> free.text(row, field, text));
            case Value.Num num -> fields.free(path).ifPresent(field -> free.number(row, field, num.number()));
            case Value.Flag(boolean on) -> fields.free(path).ifPresent(field -> row.set(field.number(), String.valueOf(on)));
            case Value.Items items -> {
                return; // a list is no single value
            }
            case Value.Nothing nothing -> {
                return;
            }
        }
    }
}
