package tramontane.analysis;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.stream.Collectors;
import tramontane.physics.units.QuantityKind;

/**
 * Steps of a {@link Trace} as somebody reads them: what each is called, what kind of quantity it gives, and which step stands behind an
 * input. Command line, window and reports tell the same by it.
 */
public final class Derivation {

    /** Nothing is told. */
    public static final Derivation NOTHING = of(List.of(), List.of());

    private final List<Trace.Step> steps;
    private final Map<String, FigureKind> known = new HashMap<>();
    private final Map<String, List<Trace.Step>> byName;
    private final Map<String, QuantityKind> quantities = new HashMap<>();

    private Derivation(List<Trace.Step> steps, Collection<FigureKind> known) {
        this.steps = List.copyOf(steps);
        known.forEach(kind -> this.known.putIfAbsent(kind.id(), kind));
        byName = this.steps.stream().collect(Collectors.groupingBy(Trace.Step::figure));
        // a value on the way is of the kind that others take it for: best those that name it as their source
        this.steps.forEach(step -> step.inputs().forEach(term -> quantities.putIfAbsent(term.from(), term.quantity())));
        this.steps.forEach(step -> step.inputs().forEach(term -> quantities.putIfAbsent(source(term), term.quantity())));
        this.steps.forEach(step -> step.inputs().forEach(term -> quantities.putIfAbsent(term.name(), term.quantity())));
        this.known.forEach((id, kind) -> quantities.put(id, kind.quantity()));
    }

    /** What a term comes from, without its place. */
    private static String source(Trace.Term term) {
        int at = term.from().indexOf(Trace.AT);
        return at > 0 ? term.from().substring(0, at) : term.from();
    }

    /**
     * What is to be read.
     *
     * @param steps in the order they were taken, as {@link Engine#trace} gives them
     * @param known the figures that anything loaded can give, for their labels and quantities
     */
    public static Derivation of(List<Trace.Step> steps, Collection<FigureKind> known) {
        return new Derivation(steps, known);
    }

    /** The steps, in the order they were taken. */
    public List<Trace.Step> steps() {
        return steps;
    }

    /** The steps that gave a figure; none where nothing says how it came about. */
    public List<Trace.Step> of(String figure, String place) {
        return byName.getOrDefault(figure, List.of()).stream().filter(step -> step.place().equals(place)).toList();
    }

    /** The steps that an input of a step names: those of a figure at the place it says, else at that of the step, else anywhere. */
    public List<Trace.Step> behind(Trace.Step step, Trace.Term term) {
        String from = term.from();
        int at = from.indexOf(Trace.AT);
        if (at > 0 && byName.containsKey(from.substring(0, at))) {
            return of(from.substring(0, at), from.substring(at + Trace.AT.length()));
        }
        List<Trace.Step> here = of(from, step.place());
        return here.isEmpty() ? byName.getOrDefault(from, List.of()) : here;
    }

    /** The figure that an input names, whether a step here gives it or another analysis does. */
    public Optional<FigureKind> figure(Trace.Term term) {
        return Optional.ofNullable(known.get(source(term)));
    }

    /** What a step gives, in words: {@code flow at fans}. */
    public String name(Trace.Step step) {
        FigureKind kind = known.get(step.figure());
        return (kind == null ? step.figure() : kind.label()) + (step.place().isEmpty() ? "" : Trace.AT + step.place());
    }

    /** The kind of quantity that a step gives; empty where nothing tells. */
    public Optional<QuantityKind> quantity(Trace.Step step) {
        return Optional.ofNullable(quantities.get(step.figure()));
    }

    /**
     * What a step gave, as text.
     *
     * @param step   the step
     * @param format writes a finite value, SI units, with its unit
     */
    public String value(Trace.Step step, BiFunction<Double, QuantityKind, String> format) {
        return !Double.isFinite(step.value()) ? "no finite number" : quantity(step).map(kind -> format.apply(step.value(), kind))
                .orElseGet(() -> format.apply(step.value(), QuantityKind.NUMBER) + " (SI units)");
    }

    /**
     * What went into a step, as text.
     *
     * @param term   the input
     * @param format writes a finite value, SI units, with its unit
     */
    public static String value(Trace.Term term, BiFunction<Double, QuantityKind, String> format) {
        return !Double.isFinite(term.value()) ? "no finite number" : format.apply(term.value(), term.quantity());
    }

    /**
     * A step in words.
     *
     * @param heading what it gives: {@code flow at fans = 335 m³/h}
     * @param by      the formula with its name; only the name where it was told before
     * @param with    one text per input: {@code speed = 4200 rpm   from air mover Garbin 120-38}
     * @param holds   where the formula holds; empty where it always does, or where it was told before
     * @param source  where the formula is published; empty where it was told before
     */
    public record Block(String heading, String by, List<String> with, String holds, String source) {
        public Block {
            with = List.copyOf(with);
        }
    }

    /**
     * All steps in words, each formula told once.
     *
     * @param format writes a finite value, SI units, with its unit
     */
    public List<Block> blocks(BiFunction<Double, QuantityKind, String> format) {
        List<Block> blocks = new ArrayList<>();
        Map<Relation, Integer> firstStep = new HashMap<>();
        for (Trace.Step step : steps) {
            Relation relation = step.relation();
            Integer told = firstStep.putIfAbsent(relation, blocks.size() + 1);
            blocks.add(new Block(name(step) + " = " + value(step, format),
                    relation.name() + (told == null ? ": " + relation.formula() : ", as in step " + told),
                    step.inputs().stream().map(term -> term.name() + " = " + value(term, format)
                            + (term.from().isEmpty() ? "" : "   from " + term.from())).toList(),
                    told == null ? relation.validity() : "", told == null ? relation.source() : ""));
        }
        return List.copyOf(blocks);
    }
}
