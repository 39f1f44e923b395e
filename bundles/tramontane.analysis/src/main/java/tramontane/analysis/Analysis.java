package tramontane.analysis;

import java.util.List;
import org.osgi.annotation.versioning.ConsumerType;
import tramontane.model.Design;

/**
 * Computes one kind of result from a design; implemented by extensions and registered as a service.
 *
 * <p>{@link #run} is a pure function of what it is handed: no clock, no state, no input or output, a fixed seed where it
 * samples. The engine decides when and how often it runs, keeps what it gave, and survives what it throws.
 *
 * <pre>{@code
 * @Component
 * public final class AirChanges implements Analysis<AirChanges.Rate> {
 *     public record Rate(double perSecond) { }
 *
 *     private static final FigureKind RATE = new FigureKind("example.air.changes", "air changes",
 *             QuantityKind.FREQUENCY, Better.HIGHER, "How often per second the air of the box is renewed.");
 *
 *     public String id() { return "example.airChanges"; }
 *     public String label() { return "air changes"; }
 *     public Scope scope() { return Scope.CONDITION; }
 *     public Class<Rate> gives() { return Rate.class; }
 *     public Needs needs() { return Needs.results(OperatingPoint.class); }
 *     public List<FigureKind> figures() { return List.of(RATE); }
 *
 *     public Result<Rate> run(Input input, Run run) {
 *         double flow = input.result(OperatingPoint.class).banks().get(0).flow();
 *         double rate = flow / 0.05;
 *         return Result.of(new Rate(rate)).with(Figure.of(RATE, "box", rate));
 *     }
 * }
 * }</pre>
 *
 * @param <T> the type of its typed data; an immutable record
 */
@ConsumerType
public interface Analysis<T> {

    /** Its own name, unique among all analyses, for example {@code airflow}. */
    String id();

    /** What people read, lower case, for example {@code air flow}. */
    String label();

    /** Whether it runs once per condition or once per design. */
    Scope scope();

    /**
     * The type of its data, by which others ask for it.
     *
     * <p>Where several analyses give the same type, the one with the highest service ranking is used, and may itself need
     * that type: it then receives what the next lower one gave. Figures that both declare come from the higher ranked alone;
     * where that was computed and declares all figures of the lower one, the lower one's findings other than errors are left
     * out, so that it must say anew what still holds.
     */
    Class<T> gives();

    /** What must be there, or may be there, before it runs. */
    default Needs needs() {
        return Needs.NOTHING;
    }

    /** The figures it can give. */
    List<FigureKind> figures();

    /**
     * Whether it leaves something out in runs that are {@link Run#brief}; only then some are. Worth it where bounds or findings cost
     * much. One that asks "what if" itself should not.
     */
    default boolean mayBeBrief() {
        return false;
    }

    /**
     * The part of a design that it reads; a change elsewhere does not make it run again.
     *
     * <p>{@link #run} is handed just this, so that it cannot read what it did not declare. The design passed in has no
     * notes and layout, no name of its own and of its equipment any more, and for {@link Scope#CONDITION} holds the one
     * condition only, its failed movers all concrete, and the requirements that hold in it. An analysis that asks "what if" with the design it was handed keeps
     * what the asked one reads, too.
     *
     * @param design the design without what is cosmetic
     * @return the same with everything left out that this analysis does not read
     */
    default Design reads(Design design) {
        return design;
    }

    /**
     * Computes the result.
     *
     * @param input the design, the condition if any, and the results it needs
     * @param run   cancel, progress, trace and "what if"
     * @return figures, findings and data; {@link Result#notComputed} where there is no honest answer
     * @throws Cancelled when {@link Run#check} says so; let it pass
     */
    Result<T> run(Input input, Run run);
}
