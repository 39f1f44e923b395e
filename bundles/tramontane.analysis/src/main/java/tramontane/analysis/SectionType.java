package tramontane.analysis;

import java.util.List;
import java.util.Set;
import org.osgi.annotation.versioning.ConsumerType;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.Values;

/**
 * A section: the part of a design, part, passage, bay or condition that belongs to one analysis; implemented by extensions
 * and registered as a service.
 *
 * <p>A section stands under {@code sections} of whatever carries it: {@code "sections": {"dust": {"load": "1e-7 kg/m³"}}}.
 * The model keeps every section as written, known or not. The owner decodes on demand, with
 * {@code Sections.decode(type, condition)}. From the form alone come checking,
 * JSON Schema, property pages and help.
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
        DESIGN,
        /** The equipment. */
        EQUIPMENT,
        /** An air mover. */
        MOVER,
        /** A bay. */
        BAY,
        /** A passage. */
        PASSAGE,
        /** A heat source. */
        HEAT_SOURCE,
        /** A condition. */
        CONDITION,
        /** A control law. */
        CONTROL_LAW
    }

    /** Its fields; the form's name is the section's name in files. */
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
}
