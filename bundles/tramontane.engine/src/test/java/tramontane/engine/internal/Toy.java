package tramontane.engine.internal;

import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import tramontane.analysis.Analysis;
import tramontane.analysis.Better;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Input;
import tramontane.analysis.Needs;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.model.Design;
import tramontane.physics.units.QuantityKind;

/** An analysis for tests, put together from parts; counts its runs. */
final class Toy<T> implements Analysis<T> {

    record Alpha(double value) {
    }

    record Beta(double value) {
    }

    record Gamma(double value) {
    }

    @FunctionalInterface
    interface Body<T> {
        Result<T> run(Input input, Run run);
    }

    final AtomicInteger runs = new AtomicInteger();
    private final String id;
    private final Class<T> gives;
    private final Scope scope;
    private final Needs needs;
    private final List<FigureKind> figures;
    private final UnaryOperator<Design> reads;
    private final Supplier<String> label;
    private final Body<T> body;
    private boolean brief;

    private Toy(String id, Class<T> gives, Scope scope, Needs needs, List<FigureKind> figures, UnaryOperator<Design> reads,
            Supplier<String> label, Body<T> body) {
        this.id = id;
        this.gives = gives;
        this.scope = scope;
        this.needs = needs;
        this.figures = figures;
        this.reads = reads;
        this.label = label;
        this.body = body;
    }

    static <T> Toy<T> of(String id, Class<T> gives, Body<T> body) {
        return new Toy<>(id, gives, Scope.CONDITION, Needs.NOTHING, List.of(), UnaryOperator.identity(), () -> "toy", body);
    }

    static <T> Toy<T> giving(String id, Class<T> gives, T data) {
        return of(id, gives, (input, run) -> Result.of(data));
    }

    static FigureKind figure(String id) {
        return new FigureKind(id, "toy figure", QuantityKind.NUMBER, Better.HIGHER, "A number.");
    }

    /** Leaves something out in brief runs. */
    Toy<T> mayLeaveOut() {
        brief = true;
        return this;
    }

    @Override
    public boolean mayBeBrief() {
        return brief;
    }

    Toy<T> designWide() {
        return new Toy<>(id, gives, Scope.DESIGN, needs, figures, reads, label, body);
    }

    Toy<T> needs(Class<?>... types) {
        return new Toy<>(id, gives, scope, new Needs(List.of(types), needs.figures()), figures, reads, label, body);
    }

    Toy<T> readsFigures(String... ids) {
        return new Toy<>(id, gives, scope, new Needs(needs.results(), List.of(ids)), figures, reads, label, body);
    }

    Toy<T> figures(FigureKind... kinds) {
        return new Toy<>(id, gives, scope, needs, List.of(kinds), reads, label, body);
    }

    Toy<T> reads(UnaryOperator<Design> part) {
        return new Toy<>(id, gives, scope, needs, figures, part, label, body);
    }

    Toy<T> label(Supplier<String> words) {
        return new Toy<>(id, gives, scope, needs, figures, reads, words, body);
    }

    @Override
    public String id() {
        return id;
    }

    @Override
    public String label() {
        return label.get();
    }

    @Override
    public Scope scope() {
        return scope;
    }

    @Override
    public Class<T> gives() {
        return gives;
    }

    @Override
    public Needs needs() {
        return needs;
    }

    @Override
    public List<FigureKind> figures() {
        return figures;
    }

    @Override
    public Design reads(Design design) {
        return reads.apply(design);
    }

    @Override
    public Result<T> run(Input input, Run run) {
        runs.incrementAndGet();
        return body.run(input, run);
    }
}
