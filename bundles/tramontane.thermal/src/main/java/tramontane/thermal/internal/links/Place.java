package tramontane.thermal.internal.links;

import java.util.ArrayList;
import java.util.Optional;
import tramontane.analysis.LinkKind;
import tramontane.model.Condition;
import tramontane.model.Form;
import tramontane.model.FormReader;
import tramontane.model.Passage;
import tramontane.model.Quantity;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.physics.Air;

/**
 * Where a heat source stands.
 *
 * @param id      of the bay or passage; empty where the source does not say
 * @param passage the passage, where it is one
 */
record Place(String id, Optional<Passage> passage) {

    /** A passage through a heat sink, whose shape a link may take over. */
    static final String HEAT_SINK = "heat sink";
    /** A passage through a cage of boards, whose shape a link may take over. */
    static final String CARD_CAGE = "card cage";

    static Place of(LinkKind.Setting setting) {
        String id = setting.source().into().isEmpty() ? "" : setting.source().into().getFirst().place();
        return new Place(id, setting.design().airPath().passage(id));
    }

    /** Whether it is a passage of a kind. */
    boolean is(String kind) {
        return passage.filter(found -> found.kind().equals(kind)).isPresent();
    }

    /** What people read: {@code passage sink}. */
    String name() {
        return id.isEmpty() ? "its place" : (passage.isPresent() ? "passage " : "bay ") + id;
    }

    /** What a passage of a kind says of itself; nothing where the source stands elsewhere. What is wrong there is said there. */
    Values parameters(String kind, Form form) {
        return FormReader.read(form, is(kind) ? passage.orElseThrow().parameters() : Value.Tree.EMPTY, "", new ArrayList<>());
    }

    /** Whether a passage of a kind has a member, readable or not. */
    boolean states(String kind, String member) {
        return is(kind) && passage.orElseThrow().parameters().get(member).isPresent();
    }

    /** Barometric pressure of a condition over that at sea level: the mass of air at equal volume and temperature. */
    static double thinness(Condition condition) {
        return condition.pressure().map(Quantity::si).orElseGet(
                () -> Air.standardPressure(Air.geopotential(condition.altitudeMetres()))) / Air.STANDARD_PRESSURE;
    }
}
