package tramontane.catalogue.internal.tables;

import java.util.List;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.MoverCurve;
import tramontane.model.Range;
import tramontane.physics.units.QuantityKind;

/** What may be set for an import: forms of mapping files and of dialogs. */
public final class Settings {

    static final String AUTO = "auto";

    private static final Field DECIMAL = Field.choice("decimal", "decimal mark", List.of(AUTO, "point", "comma"),
            "What stands before the decimals; found in the table where not given.").standard(AUTO);

    private static final Form COLUMN = Form.of("column", "What one column of the table holds.",
            Field.words("column", "column", "The column's heading, with its unit or without it.").mandatory(),
            Field.words("field", "field", "The field of the part, such as width, curves.flow or drive.supply.voltage; where not given, "
                    + "the column is not read."),
            Field.words("unit", "unit", "The unit of its numbers where cells have none; that of the heading where not given."));

    private static final Form CONSTANT = Form.of("constant", "A value that all rows share where they have none of their own.",
            Field.words("field", "field", "The field of the part, such as maker or curves.speed.").mandatory(),
            Field.words("value", "value", "The value as in a cell, with its unit: 2400 rpm.").mandatory());

    /** For a table of parts. */
    public static final Form TABLE = Form.of("mapping", "How a table becomes parts.",
            Field.choice("delimiter", "separator", List.of(AUTO, "semicolon", "comma", "tab"),
                    "What stands between cells; found in the heading where not given.").standard(AUTO),
            DECIMAL,
            Field.choice("encoding", "encoding", List.of(AUTO, "UTF-8", "windows-1252"),
                    "How letters are written; UTF-8, else windows-1252, where not given.").standard(AUTO),
            Field.whole("skip", "lines to skip", 0, 10_000, "Lines before the heading.").standard(0),
            Field.parts("columns", "columns", COLUMN, "Columns whose heading does not name their field."),
            Field.parts("constants", "constants", CONSTANT, "Values that all rows share."));

    /** For points as they are pasted. */
    public static final Form POINTS = Form.of("points", "How pasted points become a curve.",
            Field.words("part", "part", "Part number.").mandatory(),
            Field.words("maker", "maker", "Who makes it."),
            Field.words("flowUnit", "unit of flow", "Unit of the flows where the text has none."),
            Field.words("pressureUnit", "unit of pressure", "Unit of the pressures where the text has none."),
            Field.words("powerUnit", "unit of power", "Unit of the powers where the text has none; W where not given.").standard("W"),
            DECIMAL,
            conditionOf("speed", "speed", QuantityKind.ROTATIONAL_SPEED),
            conditionOf("voltage", "voltage", QuantityKind.VOLTAGE),
            conditionOf("frequency", "frequency", QuantityKind.FREQUENCY),
            conditionOf("density", "density", QuantityKind.DENSITY));

    /** What holds for all points of a curve. */
    static final List<String> CONDITIONS = List.of("speed", "voltage", "frequency", "density");

    private Settings() {
    }

    private static Field conditionOf(String name, String label, QuantityKind kind) {
        return Field.amount(name, label, kind, Range.POSITIVE, MoverCurve.FORM.field(name).orElseThrow().help());
    }

    /** The separator that a setting names. */
    static char separator(String delimiter, String text, int skipped) {
        return switch (delimiter) {
            case "semicolon" -> ';';
            case "comma" -> ',';
            case "tab" -> '\t';
            default -> TableText.separator(text, skipped);
        };
    }
}
