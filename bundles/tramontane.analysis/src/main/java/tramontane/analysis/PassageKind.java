package tramontane.analysis;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.osgi.annotation.versioning.ConsumerType;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Form;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Values;

/**
 * A kind of passage: its fields and its flow law; implemented by extensions and registered as a service.
 *
 * <pre>{@code
 * @Component
 * public final class Honeycomb implements PassageKind {
 *     private static final Form FORM = Form.of("honeycomb", "A flow straightener of round cells.",
 *             Field.amount("area", "area", QuantityKind.AREA, Range.POSITIVE, "Open area.").mandatory());
 *
 *     public Form form() { return FORM; }
 *     public FlowLaw law(Values values, Setting setting) {
 *         double area = values.si("area");
 *         return (flow, density, viscosity, drop) -> …;
 *     }
 * }
 * }</pre>
 */
@ConsumerType
public interface PassageKind {

    /** Name of the kind of passage that is a filter: what others look for who ask about dust. */
    String FILTER = "filter";
    /** Name of the kind of passage that is a leak: what others look for who ask about short circuits of air. */
    String GAP = "gap";

    /** Its fields beyond those that every passage has; the form's name is the kind's name in files. */
    Form form();

    /**
     * The flow law of one passage in one condition.
     *
     * @param values  the passage's parameters, read without errors
     * @param setting the passage, its design and condition
     */
    FlowLaw law(Values values, Setting setting);

    /**
     * The free cross-section through which the air of one passage goes, for the velocity at what stands in it.
     *
     * @param values  the passage's parameters, read without errors
     * @param setting the passage, its design and condition
     * @return m²; empty for a kind that has none
     */
    default OptionalDouble flowArea(Values values, Setting setting) {
        return OptionalDouble.empty();
    }

    /**
     * What is wrong with parameters that are each in range but do not fit together.
     *
     * @param values  the passage's parameters as far as they could be read
     * @param setting the passage and its design
     * @param place   where they stand in the file, to be put in front of each problem's place
     */
    default List<Problem> check(Values values, Setting setting, String place) {
        return List.of();
    }

    /**
     * What an engineer should know about one passage at the flow that was found: a law used outside its range, a filter at its
     * limit. Places are filled in by whoever asks.
     *
     * @param values  the passage's parameters, read without errors
     * @param setting the passage, its design and condition
     * @param flow    its flow and pressure drop
     */
    default List<Finding> findings(Values values, Setting setting, OperatingPoint.PassageFlow flow) {
        return List.of();
    }

    /**
     * Where the flow law of one passage comes from, for who asks about its pressure drop.
     *
     * @param values  the passage's parameters, read without errors
     * @param setting the passage, its design and condition
     * @return the relation and what goes into it beside flow, density and viscosity; empty where nothing is said
     */
    default Optional<Origin> origin(Values values, Setting setting) {
        return Optional.empty();
    }

    /**
     * Where a flow law comes from.
     *
     * @param relation the formula of the pressure drop
     * @param inputs   what goes into it beside flow, density and viscosity
     */
    record Origin(Relation relation, List<Trace.Term> inputs) {
        public Origin {
            inputs = List.copyOf(inputs);
        }
    }

    /**
     * What surrounds a passage.
     *
     * @param design    the design; for a check the whole design, for a law what the solving analysis reads
     * @param condition the condition, failed movers all concrete
     * @param passage   the passage
     */
    record Setting(Design design, Condition condition, Passage passage) {
    }
}
