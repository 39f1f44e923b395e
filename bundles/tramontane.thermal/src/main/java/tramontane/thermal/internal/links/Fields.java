package tramontane.thermal.internal.links;

import java.util.List;
import java.util.stream.Stream;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Range;
import tramontane.physics.units.QuantityKind;

/** Fields that several kinds of link have. */
final class Fields {

    /** Extruded alloys have 160 to 220 W/(m K) (common practice). */
    static final Field SINK_CONDUCTIVITY = Field.amount("conductivity", "conductivity", QuantityKind.CONDUCTIVITY, Range.POSITIVE,
            "Thermal conductivity of the sink; 200 W/(m K) is common practice for extruded aluminium, 390 for copper.")
            .standard("200 W/(m K)");

    private Fields() {
    }

    static Field length(String name, String label, String help) {
        return Field.amount(name, label, QuantityKind.LENGTH, Range.POSITIVE, help);
    }

    /** A form of sizes and what comes after them. */
    static Form form(String name, String help, List<Field> sizes, Field... more) {
        return Form.of(name, help, Stream.concat(sizes.stream(), Stream.of(more)).toArray(Field[]::new));
    }
}
