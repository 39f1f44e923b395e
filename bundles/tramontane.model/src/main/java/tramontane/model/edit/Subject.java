package tramontane.model.edit;

import java.util.Objects;

/**
 * Something in a design that can be selected and edited.
 *
 * @param kind what kind of thing
 * @param id   its id; of a requirement and of a phase of the mission, which have none, its place in the list from 0; empty for the design
 *             and its equipment
 */
public record Subject(Kind kind, String id) {

    /** Kinds of things. */
    public enum Kind {
        /** The design as a whole. */
        DESIGN,
        /** The equipment. */
        EQUIPMENT,
        /** An air mover. */
        AIR_MOVER,
        /** A bay. */
        BAY,
        /** A passage, banks among them. */
        PASSAGE,
        /** A heat source. */
        HEAT_SOURCE,
        /** A condition. */
        CONDITION,
        /** A phase of the mission profile. */
        MISSION_PHASE,
        /** A control law. */
        CONTROL_LAW,
        /** A requirement. */
        REQUIREMENT
    }

    public Subject {
        Objects.requireNonNull(kind);
        Objects.requireNonNull(id);
    }

    /** The design as a whole. */
    public static final Subject DESIGN = new Subject(Kind.DESIGN, "");
}
