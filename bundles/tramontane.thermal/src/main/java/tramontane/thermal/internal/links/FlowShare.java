package tramontane.thermal.internal.links;

import java.util.List;
import tramontane.analysis.AirStream;
import tramontane.analysis.Finding;
import tramontane.analysis.LinkKind;
import tramontane.model.Field;
import tramontane.model.Range;
import tramontane.model.Values;
import tramontane.physics.units.QuantityKind;

/** The part of the air of a place that comes to a heat sink. */
final class FlowShare {

    static final Field FIELD = Field.amount("flowShare", "flow share", QuantityKind.FRACTION, Range.PART_OF_ONE,
            "Part of the flow of its place that comes to it.").standard("100 %");

    private FlowShare() {
    }

    /** What comes to the sink, m³/s. */
    static double flow(Values values, AirStream air) {
        return values.si("flowShare") * air.flow();
    }

    /**
     * A caution where all air of a place is taken to come to a sink only because nothing else is said. On a passage of kind heat
     * sink that is what the passage is.
     *
     * @param otherwise what else would say it: {@code , or the size of its duct}; empty for nothing
     */
    static List<Finding> assumed(Values values, LinkKind.Setting setting, AirStream air, String otherwise) {
        Place place = Place.of(setting);
        return values.has("flowShare") || place.is(Place.HEAT_SINK) ? List.of() : List.of(Finding.caution(setting.source().id(),
                "all air of " + place.name() + ", ", Amounts.flow(air.flow()), ", is taken to go through " + Remarks.name(setting))
                .remedy("give flowShare, the part of it that does" + otherwise).source("common practice"));
    }
}
