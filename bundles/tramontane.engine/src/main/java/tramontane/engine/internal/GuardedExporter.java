package tramontane.engine.internal;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Exporter;
import tramontane.model.Design;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Values;

/**
 * An exporter of another bundle, asked once for what it says of itself; what it throws becomes an error that names it.
 *
 * @param extension the exporter
 * @param id        its id; the name of its class where it has none
 * @param label     its label
 * @param ending    its ending
 * @param settings  its settings
 * @param reads     the types that it reads
 * @param fault     why it cannot be used; empty where it can
 */
record GuardedExporter(Extension<Exporter> extension, String id, String label, String ending, Form settings,
        Set<Class<?>> reads, String fault) implements Exporter {

    /** The exporters that count, by their ids. */
    static List<Exporter> all(List<Extension<Exporter>> extensions) {
        Map<String, GuardedExporter> all = new TreeMap<>();
        for (Extension<Exporter> extension : extensions) {
            GuardedExporter exporter = of(extension);
            all.merge(exporter.id(), exporter, (a, b) -> a.extension().before(b.extension()) ? a : b);
        }
        return List.copyOf(all.values());
    }

    private static GuardedExporter of(Extension<Exporter> extension) {
        Exporter exporter = extension.service();
        String id = exporter.getClass().getName();
        try {
            id = Objects.requireNonNull(exporter.id(), "id() gave nothing");
            return new GuardedExporter(extension, id, Objects.requireNonNull(exporter.label(), "label() gave nothing"),
                    Objects.requireNonNull(exporter.ending(), "ending() gave nothing"),
                    Objects.requireNonNull(exporter.settings(), "settings() gave nothing"),
                    Set.copyOf(Objects.requireNonNull(exporter.reads(), "reads() gave nothing")), "");
        } catch (Throwable e) { // whatever an extension does wrong must not reach the others
            return new GuardedExporter(extension, id, "broken", "", Form.of("settings", "Not known."), Set.of(),
                    Failure.sentence(name(id, extension), e));
        }
    }

    private static String name(String id, Extension<Exporter> extension) {
        return "exporter " + id + " of bundle " + extension.bundle();
    }

    @Override
    public Exported write(Design design, Evaluation evaluation, Values values) {
        if (!fault.isEmpty()) {
            return Exported.nothing(Problem.error("", fault));
        }
        try {
            Exported exported = Objects.requireNonNull(extension.service().write(design, evaluation, values), "write() gave nothing");
            return exported.text().isEmpty() && exported.problems().isEmpty()
                    ? Exported.nothing(Problem.error("", name(id, extension) + " gave no text and does not say why")) : exported;
        } catch (Throwable e) { // whatever an extension does wrong must not reach the others
            return Exported.nothing(Problem.error("", Failure.sentence(name(id, extension), e)));
        }
    }
}
