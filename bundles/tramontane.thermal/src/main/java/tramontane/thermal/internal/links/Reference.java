package tramontane.thermal.internal.links;

import java.util.List;
import tramontane.model.Field;
import tramontane.model.Values;

/** Which air a stated or measured resistance counts from. */
final class Reference {

    private static final String INLET = "inlet air";

    /** Data sheets measure against the air that comes to the sink (common practice). */
    static final Field FIELD = Field.choice("reference", "reference", List.of(INLET, "mean air"),
            "Which air it counts from: that which comes to its place, as data sheets measure, or the mean of it along the place.")
            .standard(INLET);

    private Reference() {
    }

    static boolean inlet(Values values) {
        return values.text("reference").equals(INLET);
    }
}
