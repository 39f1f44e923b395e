package tramontane.analysis;

import java.util.List;

/**
 * What an analysis needs before it runs.
 *
 * @param results types of data that must be there; without them it does not run and its figures are not judged
 * @param figures ids of figures that it reads if something gives them
 */
public record Needs(List<Class<?>> results, List<String> figures) {

    /** Needs nothing but the design. */
    public static final Needs NOTHING = new Needs(List.of(), List.of());

    public Needs {
        results = List.copyOf(results);
        figures = List.copyOf(figures);
    }

    /** Needs data of these types. */
    public static Needs results(Class<?>... types) {
        return new Needs(List.of(types), List.of());
    }

    /** The same, and reads these figures if something gives them. */
    public Needs andFigures(String... ids) {
        return new Needs(results, List.of(ids));
    }
}
