package tramontane.analysis;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.osgi.annotation.versioning.ConsumerType;
import tramontane.model.Design;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Values;

/**
 * Turns results into a file for other programs; implemented by extensions and registered as a service.
 *
 * <p>A pure function of the design, its evaluation and the settings, so that an export can be redone exactly. Callers find
 * exporters by {@link Engine#exporters}, where one that throws harms nobody.
 *
 * <pre>{@code
 * @Component
 * public final class FlowList implements Exporter {
 *     public String id() { return "lab.flows"; }
 *     public String label() { return "flow of each bank"; }
 *     public String ending() { return "csv"; }
 *     public Set<Class<?>> reads() { return Set.of(OperatingPoint.class); }
 *
 *     public Exported write(Design design, Evaluation evaluation, Values settings) {
 *         List<String> lines = new ArrayList<>();
 *         for (Engine.Case each : evaluation.cases()) {
 *             String id = each.concrete().id();
 *             evaluation.data(OperatingPoint.class, id).ifPresent(point -> point.banks().forEach(
 *                     bank -> lines.add(id + "," + bank.bank() + "," + bank.flow() + "\r\n")));
 *         }
 *         return lines.isEmpty() ? Exported.nothing(Problem.error("", "no condition has an operating point"))
 *                 : Exported.of(String.join("", lines));
 *     }
 * }
 * }</pre>
 */
@ConsumerType
public interface Exporter {

    /** Its own name, unique among exporters. */
    String id();

    /** What people read, lower case: what it writes, for example {@code control law as a table}. */
    String label();

    /** The ending of the files it writes, without the dot: {@code csv}. */
    String ending();

    /** The settings it takes; none where it is not overridden. */
    default Form settings() {
        return Form.of("settings", "There is nothing to set.");
    }

    /**
     * The types of data that it reads in the evaluation, so that nothing else has to be computed: figures, findings and data of
     * analyses that these do not need may be missing. Where it is empty, everything is computed.
     */
    default Set<Class<?>> reads() {
        return Set.of();
    }

    /**
     * Writes.
     *
     * @param design     a design without errors
     * @param evaluation what its run gave; data may be missing where an analysis had no answer
     * @param settings   values of {@link #settings}, read without errors
     */
    Exported write(Design design, Evaluation evaluation, Values settings);

    /**
     * What was written.
     *
     * @param text     the content of the file; empty where there is nothing to write
     * @param problems why there is nothing, or cautions about what there is
     */
    record Exported(String text, List<Problem> problems) {

        public Exported {
            Objects.requireNonNull(text);
            problems = List.copyOf(problems);
            if (!text.isEmpty() && problems.stream().anyMatch(Problem::isError)) {
                throw new IllegalArgumentException("a text with an error: nothing can be exported then; got "
                        + problems.stream().filter(Problem::isError).findFirst().orElseThrow().sentence());
            }
        }

        /** A file. */
        public static Exported of(String text) {
            return new Exported(text, List.of());
        }

        /** No file, and why. */
        public static Exported nothing(Problem... why) {
            return new Exported("", List.of(why));
        }
    }
}
