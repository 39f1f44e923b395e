package tramontane.catalogue.internal.tables;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import tramontane.analysis.Importer.Imported;
import tramontane.analysis.SectionType;
import tramontane.catalogue.PartTable;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Range;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.model.file.Limits;
import tramontane.model.file.TreeFile;
import tramontane.physics.units.QuantityKind;

/** Small tables for tests, and a section that they may have fields of. */
final class Tables {

    private static final Form SUPPLY = Form.of("supply", "What it takes.",
            Field.choice("current", "kind of current", List.of("AC", "DC"), "What it is fed with.").mandatory(),
            Field.amount("voltage", "rated voltage", QuantityKind.VOLTAGE, Range.ANY, "Rated voltage."),
            Field.amounts("frequency", "rated frequency", QuantityKind.FREQUENCY, Range.POSITIVE, 1, "One or several."));

    private static final Form STEP = Form.of("step", "One step.",
            Field.amount("share", "share", QuantityKind.FRACTION, Range.SHARE, "How much."),
            Field.words("remark", "remark", "What is said of it."));

    private static final Form FORM = Form.of("winding", "A section for tests.",
            Field.whole("wires", "wires", 2, 12, "How many wires."),
            Field.yesNo("sealed", "sealed", "Whether it is sealed."),
            Field.words("remark", "remark", "Anything."),
            Field.part("supply", "supply", SUPPLY, "What it takes."),
            Field.parts("steps", "steps", STEP, "Steps."));

    /** A section type as an extension brings it. */
    static final SectionType<Values> MOTOR = new SectionType<>() {
        @Override
        public Form form() {
            return FORM;
        }

        @Override
        public Set<Owner> owners() {
            return Set.of(Owner.MOVER);
        }

        @Override
        public Values decode(Values values) {
            return values;
        }

        @Override
        public Value.Tree encode(Values section) {
            return Value.Tree.EMPTY;
        }
    };

    static final List<SectionType<?>> SECTIONS = List.of(MOTOR);

    private Tables() {
    }

    static Values settings(Form form, String json) {
        List<Problem> problems = new ArrayList<>();
        TreeFile.Read read = TreeFile.parse(json.getBytes(StandardCharsets.UTF_8), Limits.STANDARD);
        problems.addAll(read.problems());
        Values values = FormReader.read(form, read.tree().orElse(Value.Tree.EMPTY), "", problems);
        if (!problems.isEmpty()) {
            throw new IllegalArgumentException("the settings of this test are wrong: " + problems);
        }
        return values;
    }

    static Imported read(String table) {
        return read(table, "{}");
    }

    static Imported read(String table, String settings) {
        return PartTable.read("parts.csv", table.getBytes(StandardCharsets.UTF_8), settings(PartTable.MAPPING, settings), SECTIONS);
    }

    static List<String> sentences(Imported imported) {
        return imported.problems().stream().map(problem -> problem.severity() + " " + problem.sentence()).toList();
    }
}
