package tramontane.catalogue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.analysis.Importer.Imported;
import tramontane.analysis.SectionType;
import tramontane.catalogue.internal.tables.PointsReader;
import tramontane.catalogue.internal.tables.Settings;
import tramontane.catalogue.internal.tables.TableReader;
import tramontane.catalogue.internal.tables.TableWriter;
import tramontane.model.AirMover;
import tramontane.model.Form;
import tramontane.model.FormReader;
import tramontane.model.MoverCurve;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.model.file.Limits;
import tramontane.model.file.TreeFile;
import tramontane.physics.units.UnitSystem;

/**
 * Parts as tables: comma-separated values (RFC 4180) in and out, and points of a curve as they are pasted. Pure functions.
 *
 * <p>A heading is a field with the unit of its numbers: {@code width [mm]}, {@code frame width (mm)}, {@code curves.flow [m³/h]},
 * {@code sections.drive.supply.voltage}, short {@code drive.supply.voltage}; a second curve is {@code curves[1].flow}. A cell may
 * have a unit of its own, which then counts. A row is a part; several rows of one id are one part whose curves have a point in
 * each row.
 */
public final class PartTable {

    /** The settings of {@link #read}, also those of a mapping file that is kept beside its table. */
    public static final Form MAPPING = Settings.TABLE;

    /** The settings of {@link #curve}. */
    public static final Form POINTS = Settings.POINTS;

    private PartTable() {
    }

    /**
     * A pasted curve.
     *
     * @param curve    the curve; empty where there is an error
     * @param problems what is wrong, by line, and what was changed
     */
    public record Pasted(Optional<MoverCurve> curve, List<Problem> problems) {
        public Pasted {
            problems = List.copyOf(problems);
        }
    }

    /**
     * The mapping that a file holds: JSON with the members of {@link #MAPPING}.
     *
     * @param name     the file's name, for messages
     * @param content  its bytes
     * @param problems receives what is wrong; with an error the mapping is not to be used
     */
    public static Values mapping(String name, byte[] content, List<Problem> problems) {
        TreeFile.Read read = TreeFile.parse(content, Limits.STANDARD);
        List<Problem> found = new ArrayList<>(read.problems());
        Values values = FormReader.read(MAPPING, read.tree().orElse(Value.Tree.EMPTY), "", found);
        found.forEach(problem -> problems.add(new Problem(problem.severity(),
                problem.place().isEmpty() ? name : name + ", " + problem.place(), problem.message(), problem.isMissing())));
        return values;
    }

    /** The mapping without any settings: everything is found in the table. */
    public static Values automatic() {
        return FormReader.read(MAPPING, Value.Tree.EMPTY, "", new ArrayList<>());
    }

    /**
     * Reads a table of parts.
     *
     * @param name     the file's name, for messages
     * @param content  its bytes: UTF-8, UTF-16 with its mark, or windows-1252
     * @param mapping  values of {@link #MAPPING}
     * @param sections the section types that are known, so that their fields are understood
     * @return the parts with their quantities as written; with an error no part at all. Missing curves and the like are cautions
     */
    public static Imported read(String name, byte[] content, Values mapping, List<SectionType<?>> sections) {
        return TableReader.read(name, content, mapping, sections);
    }

    /**
     * Reads points as they are pasted from a data sheet or a spreadsheet: in each line flow, pressure and perhaps electrical power,
     * with semicolons, tabs, spaces or commas between; decimals with a point or a comma; with a heading that has units, or units
     * from the settings. The flows rise; where all fall, the curve is turned round.
     *
     * @param text     the text
     * @param settings values of {@link #POINTS}
     */
    public static Pasted curve(String text, Values settings) {
        PointsReader.Read read = PointsReader.read("points", text, settings);
        return new Pasted(read.part().map(part -> part.curves().getFirst()), read.problems());
    }

    /**
     * Reads points as they are pasted, as {@link #curve(String, Values)} does with units only.
     *
     * @param text         the text
     * @param flowUnit     unit of the flows where the text has none, such as {@code m³/h}; empty for none
     * @param pressureUnit unit of the pressures where the text has none; empty for none
     * @param powerUnit    unit of the powers where the text has none; W where empty
     */
    public static Pasted curve(String text, String flowUnit, String pressureUnit, String powerUnit) {
        Value.Tree settings = Value.Tree.EMPTY.with("part", new Value.Text("points")).with("flowUnit", new Value.Text(flowUnit))
                .with("pressureUnit", new Value.Text(pressureUnit)).with("powerUnit", new Value.Text(powerUnit));
        return curve(text, FormReader.read(POINTS, settings, "", new ArrayList<>()));
    }

    /**
     * Writes parts as a table that {@link #read} reads back: in each row a part, in each column a scalar field, points of a curve
     * as one cell of numbers with a unit. A text that a spreadsheet would take for a formula has an apostrophe before it.
     *
     * <p>As written, what is read back is equal: the same texts, the same values in SI; a plain SI number then has its SI unit.
     * In the units of a reader numbers have 15 digits.
     *
     * @param parts    the parts, each with an id of its own
     * @param fields   the columns as headings name them without unit; a whole object such as {@code sections.drive} too; all
     *                 fields that any part has where empty
     * @param units    the units of all numbers; as written where empty
     * @param sections the section types that are known; what they do not know is written as it stands
     * @throws IllegalArgumentException for a name that means no field, with a sentence for whoever gave it
     */
    public static String write(List<AirMover> parts, List<String> fields, Optional<UnitSystem> units, List<SectionType<?>> sections) {
        return TableWriter.write(parts, fields, units, sections);
    }
}
