package tramontane.analysis;

import java.util.List;
import java.util.Set;
import org.osgi.annotation.versioning.ConsumerType;
import tramontane.model.AirMover;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.ControlLaw;
import tramontane.model.Design;
import tramontane.model.Equipment;
import tramontane.model.Form;
import tramontane.model.HeatSource;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.model.edit.Subject;

/**
 * A section: the part of a design, part, passage, bay or condition that belongs to one analysis; implemented by extensions
 * and registered as a service.
 *
 * <p>A section stands under {@code sections} of whatever carries it: {@code "sections": {"dust": {"load": "1e-7 kg/m³"}}}.
 * The model keeps every section as written, known or not. The owner decodes on demand, with
 * {@code Sections.decode(type, condition)}. From the form alone come checking,
 * JSON Schema, property pages and help.
 *
 * <p>Two types may have one name where different things carry them, so that one analysis may call all its sections by its own
 * name. Two of one name that may both be carried by the same thing clash: the one with the higher service ranking is used
 * there, else the one that came first.
 *
 * <pre>{@code
 * @Component(service = SectionType.class)
 * public final class DustSection implements SectionType<DustSection.Dust> {
 *     public record Dust(double load) { }
 *     private static final Form FORM = Form.of("dust", "Dust in the air outside.",
 *             Field.amount("load", "dust load", QuantityKind.DENSITY, Range.NOT_NEGATIVE, "Dust per volume of air.").mandatory());
 *
 *     public Form form() { return FORM; }
 *     public Set<Owner> owners() { return Set.of(Owner.CONDITION); }
 *     public Dust decode(Values values) { return new Dust(values.si("load")); }
 *     public Value.Tree encode(Dust dust) { return Value.Tree.EMPTY.with("load", Value.Num.of(dust.load())); }
 * }
 * }</pre>
 *
 * @param <T> what a section decodes to; an immutable record
 */
@ConsumerType
public interface SectionType<T> {

    /** What may carry a section. */
    enum Owner {
        /** The design itself. */
        DESIGN("the", Design.FORM, Subject.Kind.DESIGN),
        /** The equipment. */
        EQUIPMENT("the", Equipment.FORM, Subject.Kind.EQUIPMENT),
        /** An air mover. */
        MOVER("an", AirMover.FORM, Subject.Kind.AIR_MOVER),
        /** A bay. */
        BAY("a", Bay.FORM, Subject.Kind.BAY),
        /** A passage. */
        PASSAGE("a", Passage.FORM, Subject.Kind.PASSAGE),
        /** A heat source. */
        HEAT_SOURCE("a", HeatSource.FORM, Subject.Kind.HEAT_SOURCE),
        /** A condition. */
        CONDITION("a", Condition.FORM, Subject.Kind.CONDITION),
        /** A control law. */
        CONTROL_LAW("a", ControlLaw.FORM, Subject.Kind.CONTROL_LAW);

        private final String article;
        private final Form form;
        private final Subject.Kind subjects;

        Owner(String article, Form form, Subject.Kind subjects) {
            this.article = article;
            this.form = form;
            this.subjects = subjects;
        }

        /** The form of what carries the section. */
        public Form form() {
            return form;
        }

        /** What is edited where the section is. */
        public Subject.Kind subjects() {
            return subjects;
        }

        /** How sentences call it: {@code an air mover}. */
        public String words() {
            return article + " " + form.name();
        }
    }

    /** Its fields; the form's name is the section's name in files. Only types with other owners may have the same. */
    Form form();

    /** What may carry it. */
    Set<Owner> owners();

    /** The version that {@link #encode} writes in member {@code version}; a section without that member is version 1. */
    default int version() {
        return 1;
    }

    /**
     * Brings a section to the next version.
     *
     * @param tree    the section as written, of version {@code version}
     * @param version below {@link #version()}
     */
    default Value.Tree migrate(Value.Tree tree, int version) {
        return tree;
    }

    /** Decodes values that were read without errors. */
    T decode(Values values);

    /** The section as it is written. */
    Value.Tree encode(T section);

    /** What is wrong with values that are each in range but do not fit together. */
    default List<Problem> check(Values values, String place) {
        return List.of();
    }

    /**
     * What is wrong with values that are each in range but do not fit together, or not to the rest of the design, such as a
     * name that nothing in a section elsewhere answers to. Asked instead of {@link #check(Values, String)}, which it calls
     * where it is not overridden.
     *
     * @param values what could be read of the section
     * @param design the design that it stands in
     * @param place  where it stands
     */
    default List<Problem> check(Values values, Design design, String place) {
        return check(values, place);
    }
}
