package tramontane.thermal.internal.links;

import java.util.List;
import tramontane.analysis.AirStream;
import tramontane.analysis.LinkKind;
import tramontane.model.Field;
import tramontane.model.Problem;
import tramontane.model.Range;
import tramontane.model.Values;
import tramontane.physics.units.QuantityKind;

/**
 * The velocity of the air at a component: stated, or from the flow of its place and a cross-section, which is the place's own
 * where the link gives none.
 */
final class Approach {

    static final Field FLOW_AREA = Field.amount("flowArea", "flow area", QuantityKind.AREA, Range.POSITIVE,
            "Cross-section through which the air of its place goes by it, for its velocity; that of the place where not given.");

    static final Field VELOCITY = Field.amount("velocity", "velocity", QuantityKind.VELOCITY, Range.POSITIVE,
            "Velocity of the air at it, where that is known; it holds whatever the flow.");

    private Approach() {
    }

    static List<Problem> check(LinkKind.Setting setting, String place) {
        return Checks.atMostOne(setting, place, "the velocity at it", List.of(List.of("velocity"), List.of("flowArea")));
    }

    /** Whether the velocity is stated, and so does not follow the flow. */
    static boolean stated(Values values) {
        return values.has("velocity");
    }

    /**
     * The velocity.
     *
     * @param values of a form with {@link #FLOW_AREA} and {@link #VELOCITY}
     * @param air    the air at the component
     * @return m/s; NaN where it is not known
     */
    static double velocity(Values values, AirStream air) {
        return stated(values) ? values.si("velocity") : values.has("flowArea") ? air.flow() / values.si("flowArea") : air.velocity();
    }
}
