package tramontane.thermal.internal.time;

import org.hipparchus.ode.OrdinaryDifferentialEquation;

/**
 * Bodies that hold heat, joined by resistances, in air at given flows: C dT/dt = heat that comes less heat that goes, for each.
 * While flows and resistances stand still it is linear.
 *
 * <p>Heat of a part enters at its junction; links without a body between them act in series; what has no body at all gives its
 * heat to the air at once.
 */
final class Network implements OrdinaryDifferentialEquation {

    /** Resistance between bodies, or from one to the air, below which none is followed, K/W. */
    private static final double LEAST = 1e-9;

    private final Bodies bodies;
    private final Contacts contacts;
    private final AirSystem air;
    private final double outside;
    private final double[] power;
    private final double[][] resistance;
    private final int[] chainGiver;
    private final double[] next;
    private final double[] rises;

    /**
     * Bodies in air.
     *
     * @param bodies     what holds heat
     * @param contacts   where heat goes into air
     * @param air        the air
     * @param outside    temperature outside, K
     * @param power      heat that goes through the chain of each part, W
     * @param resistance resistances of the chain of each part, from the junction outwards, K/W; null where they are not known
     */
    Network(Bodies bodies, Contacts contacts, AirSystem air, double outside, double[] power, double[][] resistance) {
        this.bodies = bodies;
        this.contacts = contacts;
        this.air = air;
        this.outside = outside;
        this.power = power;
        this.resistance = resistance;
        rises = new double[bodies.size()];
        next = new double[bodies.size()];
        for (int i = 0; i < next.length; i++) {
            Bodies.Node node = bodies.nodes().get(i);
            boolean inner = node.part() >= 0 && bodies.last(node.part()) != i;
            next[i] = inner ? conductance(resistance[node.part()], node.link(), bodies.nodes().get(i + 1).link()) : 0;
        }
        chainGiver = new int[bodies.size()];
        for (int g = 0; g < contacts.givers().size(); g++) {
            if (contacts.givers().get(g).body() >= 0) {
                chainGiver[contacts.givers().get(g).body()] = g;
            }
        }
    }

    /** Conductance of the links from one to before another, W/K. */
    static double conductance(double[] resistance, int from, int to) {
        if (resistance == null) {
            return 0;
        }
        double sum = 0;
        for (int i = from; i < Math.min(to, resistance.length); i++) {
            sum += resistance[i];
        }
        return 1 / Math.max(LEAST, sum);
    }

    /** Conductance of each giver that is a body to its air, W/K. */
    static double[] conductances(Bodies bodies, Contacts contacts, double[][] resistance) {
        double[] conductance = new double[contacts.givers().size()];
        for (int g = 0; g < conductance.length; g++) {
            int body = contacts.givers().get(g).body();
            if (body >= 0) {
                Bodies.Node node = bodies.nodes().get(body);
                conductance[g] = node.part() < 0 ? node.conductance()
                        : conductance(resistance[node.part()], node.link(), Integer.MAX_VALUE);
            }
        }
        return conductance;
    }

    @Override
    public int getDimension() {
        return bodies.size();
    }

    private double[] air(double[] temperatures) {
        for (int i = 0; i < rises.length; i++) {
            rises[i] = temperatures[i] - outside;
        }
        return air.solve(rises);
    }

    /** Heat that comes to each body less heat that goes, W. */
    double[] heats(double[] temperatures) {
        double[] given = air(temperatures);
        double[] heats = new double[temperatures.length];
        for (int i = 0; i < heats.length; i++) {
            int part = bodies.nodes().get(i).part();
            if (part >= 0 && bodies.ofPart()[part][0] == i) {
                heats[i] += power[part];
            }
            if (next[i] > 0) {
                double flow = next[i] * (temperatures[i] - temperatures[i + 1]);
                heats[i] -= flow;
                heats[i + 1] += flow;
            } else if (part < 0 || bodies.last(part) == i) {
                heats[i] -= given[chainGiver[i]];
            }
        }
        return heats;
    }

    @Override
    public double[] computeDerivatives(double time, double[] temperatures) {
        double[] rates = heats(temperatures);
        for (int i = 0; i < rates.length; i++) {
            rates[i] /= bodies.nodes().get(i).capacity();
        }
        return rates;
    }

    /**
     * Temperatures of all that does not hold heat.
     *
     * @param bay      of each bay, K; NaN where it has no bound
     * @param local    of the air at each part, K; NaN where none goes by it
     * @param junction of each part, K; NaN where it cannot be told
     * @param surface  of the surface of each part that touches the air, K
     * @param given    heat that each part's chain gives off, W
     */
    record Reading(double[] bay, double[] local, double[] junction, double[] surface, double[] given) {
    }

    /** Reads temperatures. */
    Reading read(double[] temperatures) {
        double[] given = air(temperatures).clone();
        int parts = power.length;
        Reading reading = new Reading(new double[contacts.bays()], new double[parts], new double[parts], new double[parts], new double[parts]);
        for (int i = 0; i < reading.bay.length; i++) {
            reading.bay[i] = outside + air.rise(i);
        }
        for (int g = 0; g < given.length; g++) {
            Contacts.Giver giver = contacts.givers().get(g);
            if (giver.part() >= 0 && giver.chain()) {
                reading.given[giver.part()] = given[g];
            }
        }
        for (int k = 0; k < parts; k++) {
            double local = outside + air.local(k);
            int[] own = bodies.ofPart()[k];
            double[] chain = resistance[k];
            reading.local[k] = local;
            if (chain == null) {
                reading.junction[k] = Double.NaN;
                reading.surface[k] = Double.NaN;
            } else if (own.length == 0) {
                reading.junction[k] = local + rise(power[k], chain, 0, chain.length);
                reading.surface[k] = local + rise(power[k], chain, Math.max(0, chain.length - 1), chain.length);
            } else {
                int first = bodies.nodes().get(own[0]).link();
                int last = bodies.nodes().get(own[own.length - 1]).link();
                reading.junction[k] = temperatures[own[0]] + rise(power[k], chain, 0, first);
                reading.surface[k] = temperatures[own[own.length - 1]] - rise(reading.given[k], chain, last, chain.length - 1);
            }
        }
        return reading;
    }

    private static double rise(double heat, double[] resistance, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += heat == 0 ? 0 : heat * resistance[i];
        }
        return Double.isInfinite(sum) ? Double.NaN : sum;
    }

    /** The time constant of the body that would follow its neighbours most quickly if they and the air at it stood still, s. */
    double quickest() {
        double[] leaves = next.clone();
        double[] toAir = conductances(bodies, contacts, resistance);
        double fastest = 0;
        for (int i = 0; i < leaves.length; i++) {
            leaves[i] += (i > 0 ? next[i - 1] : 0) + toAir[chainGiver[i]] * (contacts.givers().get(chainGiver[i]).body() == i ? 1 : 0);
            fastest = Math.max(fastest, leaves[i] / bodies.nodes().get(i).capacity());
        }
        return 1 / fastest;
    }

    /** The air. */
    AirSystem air() {
        return air;
    }

    double outside() {
        return outside;
    }

    Bodies bodies() {
        return bodies;
    }
}
