package tramontane.thermal.internal.links;

import java.util.ArrayList;
import java.util.List;
import tramontane.analysis.AirStream;
import tramontane.analysis.Finding;
import tramontane.analysis.LinkKind;
import tramontane.model.Field;
import tramontane.model.Range;
import tramontane.model.Values;
import tramontane.physics.units.QuantityKind;

/** What is worth saying of links of several kinds. */
final class Remarks {

    /** Velocity below which the air that a warm part moves itself is no longer to be left out, m/s; common practice. */
    private static final double SLOW = 0.2;
    /** Flow over the stated one from which a stated resistance counts as used where it was measured; common practice. */
    private static final double ENOUGH = 0.9;
    /** Pressure over that at sea level below which air is called thin. */
    private static final double THIN = 0.98;

    static final Field STATED_FLOW = Field.amount("flow", "flow", QuantityKind.FLOW, Range.POSITIVE,
            "Flow at its place, at sea level, for which it is stated; there is a caution where the flow is less.");

    private Remarks() {
    }

    /** What a sentence calls a link: {@code board of cpu}. */
    static String name(LinkKind.Setting setting) {
        return setting.link().kind() + " of " + setting.source().id();
    }

    /** Whether the air of a condition is so much thinner than at sea level that a sentence should say so. */
    static boolean thin(LinkKind.Setting setting) {
        return Place.thinness(setting.condition()) < THIN;
    }

    /** What is to be said of a velocity: that it is low, or that it does not follow the flow. */
    static List<Finding> approach(Values values, LinkKind.Setting setting, AirStream air) {
        List<Finding> findings = new ArrayList<>(slow(setting, Approach.velocity(values, air)));
        if (Approach.stated(values)) {
            findings.add(Finding.note(setting.source().id(), "the velocity at " + name(setting)
                    + " is stated and does not follow the flow").remedy("give flowArea in its place").source("common practice"));
        }
        return findings;
    }

    /** A note where air is so slow that relations of forced flow overstate the temperature. */
    static List<Finding> slow(LinkKind.Setting setting, double velocity) {
        return !(velocity < SLOW) ? List.of() : List.of(Finding.note(setting.source().id(), "the air goes by "
                + name(setting) + " at ", Amounts.velocity(velocity), ", so slowly that the air it warms would rise by itself; its "
                + "temperature is overstated").remedy("take its temperature as an upper bound")
                .source("common practice: natural convection counts below 0.2 m/s"));
    }

    /** A caution where a value that is stated for one flow is used where less air comes, or none. */
    static List<Finding> stated(Values values, LinkKind.Setting setting, AirStream air) {
        String place = setting.source().id();
        if (values.has("flow") && air.flow() * Place.thinness(setting.condition()) < ENOUGH * values.si("flow")) {
            return List.of(Finding.caution(place, name(setting) + " is stated for a flow of ", Amounts.flow(values.si("flow")),
                    " but has only ", Amounts.flow(air.flow()), thin(setting) ? " of thinner air" : "")
                    .remedy("state it for the flow that there is, or use a kind of link that follows the flow")
                    .source("common practice"));
        }
        return air.flow() > 0 ? List.of() : List.of(Finding.caution(place, name(setting)
                + " is taken as stated, though no air goes by it")
                .remedy("make sure that it is stated for still air").source("common practice"));
    }
}
