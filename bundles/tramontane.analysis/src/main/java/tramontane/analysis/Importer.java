package tramontane.analysis;

import java.util.List;
import org.osgi.annotation.versioning.ConsumerType;
import tramontane.model.AirMover;
import tramontane.model.Form;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Values;

/**
 * Turns a file of another format into parts and passages; implemented by extensions and registered as a service.
 *
 * <p>A pure function of the bytes and the settings, so that an import can be redone exactly.
 *
 * <pre>{@code
 * @Component
 * public final class TwoColumns implements Importer {
 *     private static final Form SETTINGS = Form.of("two columns", "Flow in m³/h and pressure in Pa, one point in a line.",
 *             Field.words("part", "part", "Part number of the mover.").mandatory());
 *
 *     public String id() { return "lab.twoColumns"; }
 *     public String label() { return "table of flow and pressure"; }
 *     public List<String> endings() { return List.of(".txt"); }
 *     public Form settings() { return SETTINGS; }
 *
 *     public Imported read(String name, byte[] content, Values settings) {
 *         List<Problem> problems = new ArrayList<>();
 *         … // for a bad line: problems.add(Problem.error(name + ", line 7", "\"12;x\" has no pressure; expected two numbers"))
 *         return new Imported(List.of(mover), List.of(), problems);
 *     }
 * }
 * }</pre>
 */
@ConsumerType
public interface Importer {

    /** Its own name, unique among importers. */
    String id();

    /** What people read, lower case: what it reads. */
    String label();

    /** Endings of the files it reads, with the dot: {@code .csv}. */
    List<String> endings();

    /** The settings it takes. */
    Form settings();

    /**
     * Reads a file.
     *
     * @param name     the file's name, for messages
     * @param content  its bytes
     * @param settings values of {@link #settings}
     */
    Imported read(String name, byte[] content, Values settings);

    /**
     * What was read.
     *
     * @param movers   air movers
     * @param passages passages, their bays left empty
     * @param problems bad rows by line and column; an error means that nothing was taken
     */
    record Imported(List<AirMover> movers, List<Passage> passages, List<Problem> problems) {
        public Imported {
            movers = List.copyOf(movers);
            passages = List.copyOf(passages);
            problems = List.copyOf(problems);
        }
    }
}
