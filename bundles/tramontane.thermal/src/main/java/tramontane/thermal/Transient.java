package tramontane.thermal;

import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import tramontane.analysis.Finding;
import tramontane.analysis.Sentence;
import tramontane.thermal.internal.time.Simulation;

/**
 * Follows temperatures in time.
 *
 * <p>Bodies hold heat: what stands on the hot side of a link with a heat capacity, and the chassis of a bay. Air holds none, so it
 * follows them at once. Flows, resistances and speed settings are brought up to date whenever air temperatures or settings have
 * moved a little; in between the equations are linear and integrated by J. R. Dormand and P. J. Prince, "A family of embedded
 * Runge-Kutta formulae", J. Comput. Appl. Math. 6 (1980) 19-26, in the form of order 8 with error estimates of orders 5 and 3 (E.
 * Hairer, S. P. Nørsett, G. Wanner, "Solving Ordinary Differential Equations I", Springer 1993).
 *
 * <p>Bodies that follow the others within 1/{@value #QUICK} of the duration count as settled at once; what they hold is taken over
 * by those they follow. A control law is not switched back within that time either.
 *
 * <pre>{@code
 * List<Transient.Step> steps = List.of(new Transient.Step(0, warm, Sentence.of("cold start")),
 *         new Transient.Step(600, failed, Sentence.of("fans 1 fails")));
 * Transient outcome = Transient.of(steps, Transient.Start.COLD, 3600, () -> false);
 * outcome.history().flatMap(History::first);
 * }</pre>
 *
 * @param history   what happens; empty where it cannot be told, or was not wanted any more
 * @param obstacles why it cannot be told
 */
public record Transient(Optional<History> history, List<Finding> obstacles) {

    /** The duration over the time within which bodies count as settled. */
    public static final int QUICK = 2000;

    public Transient {
        obstacles = List.copyOf(obstacles);
    }

    /**
     * What holds from a time on.
     *
     * @param at    s
     * @param model the design in the condition that holds then
     * @param what  what changes, in words
     */
    public record Step(double at, ThermalModel model, Sentence what) {
    }

    /** How it begins. */
    public sealed interface Start permits At, Settled {
        /** All bodies at the temperature outside. */
        Start COLD = new At(Optional.empty());
        /** Where the first condition comes to rest. */
        Start SETTLED = new Settled();
    }

    /**
     * All bodies at one temperature.
     *
     * @param temperature K; that outside where not given
     */
    public record At(Optional<Double> temperature) implements Start {
    }

    /** Where the first condition comes to rest. */
    public record Settled() implements Start {
    }

    /**
     * Follows temperatures.
     *
     * @param steps    what holds from when on; the first from 0 on, all of the same design
     * @param start    how it begins
     * @param duration how long, s
     * @param stop     asked now and then whether the answer is no longer wanted
     */
    public static Transient of(List<Step> steps, Start start, double duration, BooleanSupplier stop) {
        return Simulation.run(List.copyOf(steps), start, duration, stop);
    }
}
