package tramontane.airflow.internal;

import java.util.List;
import tramontane.model.Field;
import tramontane.model.Problem;
import tramontane.model.Range;
import tramontane.model.Values;
import tramontane.physics.DuctFriction;
import tramontane.physics.units.QuantityKind;

/** Fields that several kinds of passage have. */
final class Fields {

    /** Galvanised sheet is the medium smooth duct of the ASHRAE Handbook, Fundamentals (from memory). */
    static final Field ROUGHNESS = Field.amount("roughness", "roughness", QuantityKind.LENGTH, Range.NOT_NEGATIVE,
            "Height of the roughness of its walls: 0.09 mm for galvanised sheet, 0.0015 mm for smooth plastic.").standard("0.09 mm");

    static final Field INLET_LOSS = Field.amount("inletLoss", "inlet loss coefficient", QuantityKind.NUMBER, Range.NOT_NEGATIVE,
            "Drop of total pressure at the entry over the velocity head inside: 0.5 for a sharp edge in a bay, 0.05 for a "
                    + "rounded one, 0 where another passage continues into it.").standard(0.5);

    private Fields() {
    }

    /** Whether walls are smooth enough for the laws of ducts. */
    static List<Problem> checkRoughness(Values values, String place, CrossSection section) {
        double most = DuctFriction.ROUGHEST * section.diameter();
        return values.si("roughness") <= most ? List.of() : List.of(Problem.error(Problem.place(place, "roughness"), "is "
                + (values.has("roughness") ? "" : "taken as 0.09 mm, ") + "more than a tenth of the hydraulic diameter; expected at "
                + "most " + (float) (1000 * most) + " mm"));
    }
}
