package tramontane.analysis;

import java.util.List;
import java.util.Optional;
import org.osgi.annotation.versioning.ConsumerType;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Form;
import tramontane.model.HeatSource;
import tramontane.model.Link;
import tramontane.model.Problem;
import tramontane.model.Values;

/**
 * A kind of link in the chain from junction to air: its fields and its thermal resistance; implemented by extensions and
 * registered as a service.
 *
 * <pre>{@code
 * @Component
 * public final class HeatPipe implements LinkKind {
 *     private static final Form FORM = Form.of("heat pipe", "A heat pipe between two plates.",
 *             Field.amount("resistance", "resistance", QuantityKind.THERMAL_RESISTANCE, Range.POSITIVE, "Between its ends.")
 *                     .mandatory());
 *
 *     public Form form() { return FORM; }
 *     public Step step() { return Step.SPREADING; }
 *     public LinkLaw law(Values values, Setting setting) {
 *         double resistance = values.si("resistance");
 *         return (air, beyond) -> resistance;
 *     }
 * }
 * }</pre>
 */
@ConsumerType
public interface LinkKind {

    /** Which step of the temperature budget a link belongs to, from the junction outwards. */
    enum Step {
        /** Within the package, junction to case. */
        PACKAGE("junction to case"),
        /** Between two surfaces that touch. */
        INTERFACE("interface"),
        /** Spreading and conduction in a plate. */
        SPREADING("spreading"),
        /** From a surface to the air: a heat sink, a board, a bare package. The last link of a chain. */
        SURFACE("surface to air");

        private final String label;

        Step(String label) {
            this.label = label;
        }

        /** What people read, lower case. */
        public String label() {
            return label;
        }
    }

    /** Its fields beyond those that every link has; the form's name is the kind's name in files. */
    Form form();

    /** Which step of the temperature budget it belongs to. */
    Step step();

    /**
     * The resistance of one link in one condition.
     *
     * @param values  the link's parameters, read without errors
     * @param setting the link, its source, design and condition
     */
    LinkLaw law(Values values, Setting setting);

    /**
     * Whether its resistance counts from the air that comes to it, so that it contains how the air warms along it. Else it
     * counts from the mean of the air along it.
     *
     * @param values  the link's parameters, read without errors
     * @param setting the link, its source, design and condition
     */
    default boolean fromInlet(Values values, Setting setting) {
        return false;
    }

    /**
     * What is wrong with parameters that are each in range but do not fit together.
     *
     * @param values  the link's parameters as far as they could be read
     * @param setting the link and its design
     * @param place   where they stand in the file, to be put in front of each problem's place
     */
    default List<Problem> check(Values values, Setting setting, String place) {
        return List.of();
    }

    /**
     * What an engineer should know about one link in the air that was found: a relation used outside its range.
     *
     * @param values  the link's parameters, read without errors
     * @param setting the link, its source, design and condition
     * @param air     the air at it
     */
    default List<Finding> findings(Values values, Setting setting, AirStream air) {
        return List.of();
    }

    /**
     * Where the resistance of one link comes from, for who asks about a temperature.
     *
     * @param values  the link's parameters, read without errors
     * @param setting the link, its source, design and condition
     * @param air     the air at it
     * @return the relation and what goes into it; empty where nothing is said
     */
    default Optional<PassageKind.Origin> origin(Values values, Setting setting, AirStream air) {
        return Optional.empty();
    }

    /**
     * What surrounds a link.
     *
     * @param design    the design; for a check the whole design, for a law what the solving analysis reads
     * @param condition the condition
     * @param source    the heat source in whose chain it is
     * @param link      the link
     */
    record Setting(Design design, Condition condition, HeatSource source, Link link) {
    }
}
