package tramontane.engine.internal;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tramontane.analysis.Analysis;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Exporter;
import tramontane.analysis.Finding;
import tramontane.analysis.LinkKind;
import tramontane.analysis.PassageKind;
import tramontane.analysis.SectionType;
import tramontane.model.AirPath;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.Form;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.model.Value;

/** An engine with toys that can be loaded and unloaded, without a framework. */
final class Bench {

    static final int THREADS = 4;

    private final List<Extension<Analysis<?>>> analyses = new ArrayList<>();
    private final List<Extension<PassageKind>> passageKinds = new ArrayList<>();
    private final List<Extension<LinkKind>> linkKinds = new ArrayList<>();
    private final List<Extension<SectionType<?>>> sectionTypes = new ArrayList<>();
    private final List<Extension<Exporter>> exporters = new ArrayList<>();
    private long next = 1;
    final IsolatingEngine engine;

    /** Toy designs are not sound in all respects; only tests of the check itself want to hear of it. */
    private static final ModelChecks LENIENT = new ModelChecks() {
        @Override
        public List<Problem> consistency(Design design) {
            return List.of();
        }

        @Override
        public List<Problem> references(Form form, Value.Tree tree, Design design, String place) {
            return List.of();
        }
    };

    Bench(int threads) {
        this(threads, LENIENT);
    }

    Bench(int threads, ModelChecks model) {
        engine = new IsolatingEngine(this::extensions, this::exporters, model, threads);
    }

    static Bench with(Analysis<?>... toys) {
        Bench bench = new Bench(THREADS);
        for (Analysis<?> toy : toys) {
            bench.load(toy, 0);
        }
        return bench;
    }

    private synchronized List<Extension<Exporter>> exporters() {
        return List.copyOf(exporters);
    }

    private synchronized Extensions extensions() {
        return new Extensions(analyses, passageKinds, linkKinds, sectionTypes, List.of(), List.of());
    }

    /** Loads a toy from a bundle of its own. */
    Bench load(Analysis<?> toy, int ranking) {
        String id;
        try {
            id = toy.id();
        } catch (RuntimeException e) {
            id = "nameless";
        }
        return load(toy, ranking, "lab." + id + " 1.0.0");
    }

    synchronized Bench load(Analysis<?> toy, int ranking, String bundle) {
        analyses.add(new Extension<>(toy, next++, ranking, bundle));
        return this;
    }

    synchronized Bench load(PassageKind kind) {
        passageKinds.add(new Extension<>(kind, next++, 0, "lab.kinds 1.0.0"));
        return this;
    }

    synchronized Bench load(LinkKind kind) {
        linkKinds.add(new Extension<>(kind, next++, 0, "lab.links 1.0.0"));
        return this;
    }

    synchronized Bench load(SectionType<?> type) {
        return load(type, 0, "lab.sections 1.0.0");
    }

    synchronized Bench load(SectionType<?> type, int ranking, String bundle) {
        sectionTypes.add(new Extension<>(type, next++, ranking, bundle));
        return this;
    }

    synchronized Bench load(Exporter exporter, int ranking, String bundle) {
        exporters.add(new Extension<>(exporter, next++, ranking, bundle));
        return this;
    }

    Bench unload(Analysis<?> toy) {
        synchronized (this) {
            analyses.removeIf(extension -> extension.service() == toy);
        }
        engine.refresh();
        return this;
    }

    Evaluation run(Design design) {
        return engine.evaluate(Engine.Request.all(design), Engine.Watch.NONE);
    }

    Evaluation run(Design design, Set<String> analyses, Set<String> conditions) {
        return engine.evaluate(new Engine.Request(design, analyses, conditions, Engine.Request.TIME_LIMIT), Engine.Watch.NONE);
    }

    Evaluation run(Design design, Duration limit) {
        return engine.evaluate(new Engine.Request(design, Set.of(), Set.of(), limit), Engine.Watch.NONE);
    }

    static Evaluation.Outcome outcome(Evaluation evaluation, String analysis, String condition) {
        return evaluation.outcomes().stream().filter(each -> each.analysis().equals(analysis)
                && each.condition().equals(condition)).findFirst().orElseThrow();
    }

    static Evaluation.Status status(Evaluation evaluation, String analysis) {
        return evaluation.outcomes().stream().filter(each -> each.analysis().equals(analysis)).findFirst().orElseThrow().status();
    }

    static List<String> messages(Evaluation evaluation) {
        return evaluation.findings().stream().map(finding -> finding.message().toString()).toList();
    }

    static Design conditions(String... ids) {
        return Design.EMPTY.withConditions(Arrays.stream(ids).map(Condition::named).toList());
    }

    /** A design with a bank of three movers of which any one has failed, and a condition in which none has. */
    static Design oneOfThree() {
        Passage fans = new Passage("fans", Passage.BANK, "outside", "box",
                Value.Tree.EMPTY.with("across", Value.Num.of(3)));
        return Design.EMPTY.withAirPath(new AirPath(List.of(), List.of(fans), Value.Tree.EMPTY)).withConditions(List.of(
                Condition.named("all well"), Condition.named("any one failed").with("any one failed", List.of(
                        new FailedMover(Optional.of("fans"), Optional.empty(), FailedMover.State.LOCKED)))));
    }

    static Requirement atLeast(String figure, double limit) {
        return new Requirement(figure, Requirement.WORST, Optional.of(Quantity.of(limit)), Optional.empty(), List.of(),
                Value.Tree.EMPTY);
    }
}
