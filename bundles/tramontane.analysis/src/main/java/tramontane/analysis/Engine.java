package tramontane.analysis;

import java.time.Duration;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.osgi.annotation.versioning.ProviderType;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.edit.Edits;
import tramontane.model.edit.Forms;
import tramontane.model.edit.Subject;

/**
 * Checks designs and runs analyses on them; the one service that callers use.
 *
 * <pre>{@code
 * Loaded loaded = DesignFile.read(Path.of("cabinet.tramontane.json"));
 * Design design = loaded.design().orElseThrow();
 * if (engine.check(design).stream().noneMatch(Problem::isError)) {
 *     Evaluation evaluation = engine.evaluate(Engine.Request.all(design), Engine.Watch.NONE);
 *     evaluation.verdicts().forEach(verdict -> …);
 * }
 * }</pre>
 */
@ProviderType
public interface Engine {

    /**
     * Everything that is wrong with a design, the parameters of its passages and links and its sections included.
     *
     * @param design a design that could be read
     */
    List<Problem> check(Design design);

    /**
     * Runs analyses and judges the requirements. Blocks; gives control back within 100 ms of a cancel. The answer depends on
     * the request and the loaded bundles only, not on threads or time.
     *
     * @param request what to run
     * @param watch   progress and cancel
     */
    Evaluation evaluate(Request request, Watch watch);

    /**
     * Where a figure comes from: the analysis that gave it is run again with a recording trace.
     *
     * @param design    the design
     * @param condition the case's id as in {@link Figure#condition}
     * @param figure    the figure's id
     * @param place     the figure's place
     * @return the steps for that figure and the values on its way, in the order they were taken; empty if nothing gives it
     */
    List<Trace.Step> trace(Design design, String condition, String figure, String place);

    /** The loaded analyses, in the order of their ids. */
    List<Loaded> analyses();

    /** The loaded passage kinds by name. */
    Map<String, PassageKind> passageKinds();

    /** The loaded link kinds by name. */
    Map<String, LinkKind> linkKinds();

    /**
     * The loaded section types in the order of their names, told apart by name and {@link SectionType#owners owner}. A type
     * that clashes with one that counts for all its owners is left out; where they clash for some of them only, the one that
     * counts there comes first.
     */
    List<SectionType<?>> sectionTypes();

    /** The fields that the loaded passage kinds, link kinds and section types add to those of the model, for {@link Edits}. */
    default Forms forms() {
        Map<String, Form> passages = new LinkedHashMap<>();
        passageKinds().forEach((name, kind) -> passages.put(name, kind.form()));
        Map<String, Form> links = new LinkedHashMap<>();
        linkKinds().forEach((name, kind) -> links.put(name, kind.form()));
        Map<Subject.Kind, Map<String, Form>> sections = new EnumMap<>(Subject.Kind.class);
        for (SectionType<?> type : sectionTypes()) {
            for (SectionType.Owner owner : type.owners()) {
                sections.computeIfAbsent(owner.subjects(), kind -> new LinkedHashMap<>()).putIfAbsent(type.form().name(), type.form());
            }
        }
        return new Forms(passages, links, sections);
    }

    /**
     * The loaded exporters in the order of their ids. What one of them throws becomes an error that names it in what it
     * exported; of two with one id the one with the higher service ranking is used, else the one that came first.
     */
    List<Exporter> exporters();

    /**
     * The ids of the analyses whose data of these types count, for a {@link Request} that computes no more than is wanted.
     *
     * @param types types of data; what nothing gives is left out
     */
    Set<String> givers(Set<Class<?>> types);

    /**
     * What to run.
     *
     * @param design     the design; with errors in {@link Engine#check} nothing is run and nothing judged
     * @param analyses   ids of the analyses to run, with what they need or read if it is there, so that their figures are
     *                   the same as in a run of all; all where empty
     * @param conditions ids of the conditions; all where empty
     * @param timeLimit  how long one analysis may take before its result is dropped and it is barred
     * @param brief      whether bounds of figures, findings and tables may be left out, for who judges many designs: every
     *                   analysis runs {@link Run#brief} that knows such runs, a requirement that holds is met whatever its
     *                   bounds would say, and of cases that are alike one is run ({@link Cases#unlike})
     * @param wanted     the ids of figures that a brief run is for; others may be left out, too; all where empty
     */
    record Request(Design design, Set<String> analyses, Set<String> conditions, Duration timeLimit, boolean brief, Set<String> wanted) {

        /** How long one run of an analysis may take where nothing else is said. */
        public static final Duration TIME_LIMIT = Duration.ofMinutes(5);

        public Request {
            analyses = Set.copyOf(analyses);
            conditions = Set.copyOf(conditions);
            wanted = Set.copyOf(wanted);
        }

        /** All that there is to say. */
        public Request(Design design, Set<String> analyses, Set<String> conditions, Duration timeLimit) {
            this(design, analyses, conditions, timeLimit, false, Set.of());
        }

        /**
         * The same without bounds, findings and tables, where they can be left out.
         *
         * @param figures the ids of figures that are wanted; all where empty
         */
        public Request briefly(Set<String> figures) {
            return new Request(design, analyses, conditions, timeLimit, true, figures);
        }

        /** All analyses in all conditions. */
        public static Request all(Design design) {
            return new Request(design, Set.of(), Set.of(), TIME_LIMIT);
        }
    }

    /**
     * How a caller follows a run and ends it.
     *
     * <pre>{@code
     * AtomicBoolean stop = new AtomicBoolean();
     * Engine.Watch watch = new Engine.Watch() {
     *     public boolean cancelled() { return stop.get(); }
     *     public void progress(double fraction, String message) { bar.show(fraction, message); }
     * };
     * }</pre>
     */
    interface Watch {

        /** Watches nothing, never cancels. */
        Watch NONE = new Watch() {
            @Override
            public boolean cancelled() {
                return false;
            }

            @Override
            public void progress(double fraction, String message) {
                // nobody looks
            }
        };

        /** Whether the answer is no longer wanted; asked from several threads. */
        boolean cancelled();

        /**
         * How far it has come.
         *
         * @param fraction done, 0 to 1, never falling
         * @param message  what is being done
         */
        void progress(double fraction, String message);
    }

    /**
     * A single case to compute: a condition whose failed movers are all concrete.
     *
     * @param declared the id of the condition in the design
     * @param concrete the condition to compute; its id is the declared one where that is concrete itself, else the declared
     *                 one with the failed position: {@code any one failed: fans 2 locked}
     */
    record Case(String declared, Condition concrete) {
    }

    /**
     * A loaded analysis.
     *
     * @param id      its id
     * @param label   its label
     * @param bundle  symbolic name and version of the bundle it came from
     * @param scope   its scope
     * @param figures the figures it can give
     * @param barred  why it does not run, or not any more; empty while it does
     */
    record Loaded(String id, String label, String bundle, Scope scope, List<FigureKind> figures, Optional<String> barred) {
        public Loaded {
            figures = List.copyOf(figures);
        }
    }
}
