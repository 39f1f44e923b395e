package tramontane.engine.internal;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import tramontane.analysis.Analysis;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Exporter;
import tramontane.analysis.LinkKind;
import tramontane.analysis.PassageKind;
import tramontane.analysis.SectionType;
import tramontane.analysis.Trace;
import tramontane.model.Design;
import tramontane.model.Problem;

/**
 * Runs analyses side by side and keeps them apart: one that throws, hangs or leaves does not touch the others.
 *
 * <p>What is loaded is taken once at the beginning of each evaluation, so that a bundle that comes or goes meanwhile changes
 * nothing in it.
 */
final class IsolatingEngine implements Engine {

    /** How many results are kept. */
    static final int KEPT = 2000;

    private final Supplier<Extensions> extensions;
    private final Supplier<List<Extension<Exporter>>> exporters;
    private final ModelChecks model;
    private final Workers workers;
    private final Memo memo = new Memo(KEPT);
    private final Bars bars = new Bars();
    private final Map<Long, Card> cards = new ConcurrentHashMap<>();
    private volatile Loadout last;

    /**
     * An engine.
     *
     * @param extensions what is loaded at the moment
     * @param exporters  the exporters at the moment
     * @param model      the checks of the model itself
     * @param threads    how many analyses may run side by side
     */
    IsolatingEngine(Supplier<Extensions> extensions, Supplier<List<Extension<Exporter>>> exporters, ModelChecks model,
            int threads) {
        this.extensions = extensions;
        this.exporters = exporters;
        this.model = model;
        this.workers = new Workers(threads);
    }

    @Override
    public List<Problem> check(Design design) {
        return Checks.of(design, loadout(), model, what -> { });
    }

    @Override
    public Evaluation evaluate(Request request, Watch watch) {
        return new Evaluating(request, workers, memo, bars, this::loadout, loadout -> job ->
                Checks.of(request.design(), loadout, model, what -> job.progress(0, what))).run(watch);
    }

    @Override
    public List<Trace.Step> trace(Design design, String condition, String figure, String place) {
        CompletableFuture<List<Trace.Step>> steps = new CompletableFuture<>();
        Job job = new Job(running -> {
            try {
                Loadout loadout = loadout();
                steps.complete(Tracing.of(new Session(loadout.order(), memo, bars, loadout.extensions(), false), running, design,
                        condition, figure, place));
            } catch (Throwable e) { // the caller waits for it
                steps.completeExceptionally(e);
            } finally {
                memo.leave(running);
            }
        });
        workers.submit(job);
        try {
            return steps.get(Request.TIME_LIMIT.toMillis(), TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (ExecutionException e) {
            Failure.sentence("tracing", e.getCause());
        } catch (TimeoutException e) {
            job.top().ifPresent(frame -> bars.bar(frame.card(), Request.TIME_LIMIT));
        }
        workers.giveUp(job);
        memo.leave(job);
        return List.of();
    }

    @Override
    public List<Loaded> analyses() {
        return loadout().all().stream().map(card -> card.loaded(bars.reason(card.bundle()))).toList();
    }

    @Override
    public Map<String, PassageKind> passageKinds() {
        return services(Checks.named(extensions.get().passageKinds(), PassageKind::form, new ArrayList<>(), "a passage kind"));
    }

    @Override
    public Map<String, LinkKind> linkKinds() {
        return services(Checks.named(extensions.get().linkKinds(), LinkKind::form, new ArrayList<>(), "a link kind"));
    }

    @Override
    public List<SectionType<?>> sectionTypes() {
        return SectionTypes.of(extensions.get().sectionTypes(), new ArrayList<>()).services();
    }

    @Override
    public List<Exporter> exporters() {
        return GuardedExporter.all(exporters.get());
    }

    @Override
    public Set<String> givers(Set<Class<?>> types) {
        Order order = loadout().order();
        return types.stream().flatMap(type -> order.giver(type).stream()).map(Card::id).collect(Collectors.toUnmodifiableSet());
    }

    /** Lets go of what is not loaded any more. */
    void refresh() {
        List<Long> live = extensions.get().analysisIds();
        cards.keySet().retainAll(live);
        memo.retain(live);
        last = null;
    }

    private static <S> Map<String, S> services(Map<String, Extension<S>> named) {
        Map<String, S> services = new TreeMap<>();
        named.forEach((name, extension) -> services.put(name, extension.service()));
        return Collections.unmodifiableMap(services);
    }

    private Loadout loadout() {
        Extensions now = extensions.get();
        Loadout known = last;
        if (known != null && known.extensions().equals(now)) {
            return known;
        }
        List<Card> asked = now.analyses().stream().map(this::card).toList();
        memo.retain(now.analysisIds());
        Loadout made = Loadout.of(now, asked);
        last = made;
        return made;
    }

    private Card card(Extension<Analysis<?>> extension) {
        Card known = cards.get(extension.id());
        if (known == null || known.extension() != extension) {
            known = Card.of(extension);
            cards.put(extension.id(), known);
        }
        return known;
    }
}
