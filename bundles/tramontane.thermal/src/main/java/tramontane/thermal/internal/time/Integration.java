package tramontane.thermal.internal.time;

import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.hipparchus.ode.sampling.ODEStateInterpolator;

/** Integrates over one piece of time, in which flows, resistances and settings stand still. */
final class Integration {

    /** Error of a temperature within one step that is aimed at, K. */
    static final double ERROR = 1e-8;
    /**
     * Longest step over the time within which the quickest body follows its neighbours when they stand still; half of what is
     * stable, as two bodies may follow each other twice as quickly. What is closer than its error is amplified by longer ones.
     */
    private static final double STABLE = 3;
    private static final int HALVINGS = 50;

    private final Plant plant;
    private final Extremes extremes;
    private final double shortest;

    /**
     * What comes of a piece.
     *
     * @param time         where it ends, s
     * @param temperatures of the bodies there, K
     * @param reading      of all else
     * @param trips        whether it was ended because a control law is to be switched
     */
    record Piece(double time, double[] temperatures, Network.Reading reading, boolean trips) {
    }

    /**
     * An integration.
     *
     * @param plant    whose control laws are watched
     * @param extremes receives what it meets
     * @param shortest time within which nothing settles that is followed, s
     */
    Integration(Plant plant, Extremes extremes, double shortest) {
        this.plant = plant;
        this.extremes = extremes;
        this.shortest = shortest;
    }

    /** Goes from one time to another, or to where a control law is to be switched. */
    Piece run(Plant.Held held, Regulation.State laws, double[] temperatures, double from, double to) {
        Network network = held.network();
        Network.Reading first = network.read(temperatures);
        if (temperatures.length == 0) { // all follows at once, and nothing moves while it is held
            boolean trips = trips(network, first, laws, to);
            extremes.step(from, to, first.junction(), first.junction(), first.junction(), (part, time) -> first.junction()[part]);
            return new Piece(to, temperatures, first, trips);
        }
        double longest = Math.min(to - from, Math.max(STABLE * network.quickest(), shortest));
        DormandPrince853Integrator integrator = new DormandPrince853Integrator(0, longest, ERROR, 0);
        integrator.setInitialStepSize(longest);
        Watch watch = new Watch(network, laws, first);
        integrator.addStepHandler(watch::step);
        ODEStateAndDerivative end = integrator.integrate(network, new ODEState(from, temperatures), to);
        return watch.ended != null ? watch.ended : new Piece(to, end.getPrimaryState(), network.read(end.getPrimaryState()), false);
    }

    private boolean trips(Network network, Network.Reading reading, Regulation.State laws, double time) {
        double[] sensors = plant.sensors(network, reading);
        for (int i = 0; i < sensors.length; i++) {
            if (plant.regulation().trips(i, laws, sensors[i], time)) {
                return true;
            }
        }
        return false;
    }

    /** Looks at each step. */
    private final class Watch {
        private final Network network;
        private final Regulation.State laws;
        private Network.Reading last;
        private Piece ended;

        Watch(Network network, Regulation.State laws, Network.Reading first) {
            this.network = network;
            this.laws = laws;
            last = first;
        }

        void step(ODEStateInterpolator step) {
            if (ended != null) {
                return;
            }
            double from = step.getPreviousState().getTime();
            double to = step.getCurrentState().getTime();
            double[] state = step.getCurrentState().getPrimaryState();
            Network.Reading end = network.read(state);
            double until = to;
            if (plant != null && trips(network, end, laws, to)) {
                double before = from;
                for (int i = 0; i < HALVINGS && until - before > 0; i++) {
                    double middle = 0.5 * (before + until);
                    if (trips(network, network.read(at(step, middle)), laws, middle)) {
                        until = middle;
                    } else {
                        before = middle;
                    }
                }
                state = at(step, until);
                end = network.read(state);
                ended = new Piece(until, state, end, true);
            }
            double middle = 0.5 * (from + until);
            extremes.step(from, until, last.junction(), network.read(at(step, middle)).junction(), end.junction(),
                    (part, time) -> network.read(at(step, time)).junction()[part]);
            last = end;
        }

        private double[] at(ODEStateInterpolator step, double time) {
            return step.getInterpolatedState(time).getPrimaryState();
        }
    }
}
