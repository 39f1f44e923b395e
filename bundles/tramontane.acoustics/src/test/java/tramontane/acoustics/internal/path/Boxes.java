package tramontane.acoustics.internal.path;

import java.util.List;
import java.util.OptionalDouble;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.PassageKind;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Range;
import tramontane.model.Values;
import tramontane.model.file.DesignFile;
import tramontane.model.file.Loaded;
import tramontane.physics.units.QuantityKind;

/** Designs written as files, with single quotes. */
final class Boxes {

    /** Passages of kind hole state their area; of kind bend they have none; kind broken fails when it is asked. */
    static final List<PassageKind> KINDS = List.of(new Kind("hole"), new Kind("bend"), new Kind("broken"));

    /** A mover with an open area of 80 cm². */
    private static final String MOVER = "{'id': 'F', 'openArea': '80 cm²', 'ratedSpeed': '3000 rpm', 'curves': [{'flow': '0 0.02"
            + " 0.05 m³/s',"
            + " 'pressure': '100 60 0 Pa'}]}";

    private Boxes() {
    }

    private record Kind(String name) implements PassageKind {
        @Override
        public Form form() {
            return Form.of(name, "A passage.", name.equals("hole")
                    ? new Field[] {Field.amount("area", "area", QuantityKind.AREA, Range.POSITIVE, "Open"
                            + " area.").mandatory()} : new Field[0]);
        }

        @Override
        public FlowLaw law(Values values, Setting setting) {
            throw new UnsupportedOperationException("sound asks for no pressure");
        }

        @Override
        public OptionalDouble flowArea(Values values, Setting setting) {
            if (name.equals("broken")) {
                throw new IllegalStateException("broken");
            }
            return name.equals("hole") ? OptionalDouble.of(values.si("area")) : OptionalDouble.empty();
        }
    }

    static Design design(String json) {
        Loaded loaded = DesignFile.parse(("{'format': 1, " + json + "}").replace('\'', '"'));
        return loaded.editable().orElseThrow(() -> new IllegalArgumentException(loaded.problems().toString()));
    }

    /** Bays and passages with commas between, members of each without braces. */
    static Design path(String bays, String... passages) {
        return pathWith(MOVER, bays, passages);
    }

    static Design pathWith(String mover, String bays, String... passages) {
        return design("'airMovers': [" + mover + "], 'airPath': {'bays': [" + bays + "], 'passages': [{"
                + String.join("}, {", passages) + "}]}");
    }

    static String hole(String id, String from, String to, double area, String noise) {
        return "'id': '" + id + "', 'kind': 'hole', 'from': '" + from + "', 'to': '" + to + "', 'area': " + area + ", 'sections':"
                + " {'noise': {"
                + noise + "}}";
    }

    static String bank(String id, String from, String to, String noise) {
        return "'id': '" + id + "', 'kind': 'bank', 'mover': 'F', 'from': '" + from + "', 'to': '" + to + "', 'sections': {'noise':"
                + " {" + noise
                + "}}";
    }

    /** A bay with a lining of that absorption area. */
    static String bay(String id, double lining) {
        return lining == 0 ? "'" + id + "'" : "{'id': '" + id + "', 'sections': {'noise': {'area': " + lining + ", 'absorption': 1}}}";
    }

    static SoundPath follow(Design design) {
        return SoundPath.of(design, Condition.NOMINAL, KINDS);
    }
}
