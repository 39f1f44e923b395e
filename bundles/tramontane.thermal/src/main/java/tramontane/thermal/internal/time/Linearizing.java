package tramontane.thermal.internal.time;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import tramontane.analysis.Finding;
import tramontane.analysis.Severity;
import tramontane.model.ControlLaw;
import tramontane.thermal.AirBalance;
import tramontane.thermal.Drive;
import tramontane.thermal.LinearPlant;
import tramontane.thermal.Linearization;
import tramontane.thermal.Loop;
import tramontane.thermal.PartState;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalState;
import tramontane.thermal.internal.Balancing;
import tramontane.thermal.internal.Controls;
import tramontane.thermal.internal.Margins;
import tramontane.thermal.internal.Parts;
import tramontane.thermal.internal.ThermalFindings;

/** The bodies of a design around where they rest, as a linear system. */
public final class Linearizing {

    /** Part of a body's own rate that counts as lost to outside; less is rounding. */
    private static final double LOST = 1e-10;

    private final ThermalModel model;
    private final ControlLaw law;
    private final ThermalState state;
    private final Bodies bodies;
    private final double[][] chains;
    private final double outside;

    private Linearizing(ThermalModel model, ControlLaw law, ThermalState state) {
        this.model = model;
        this.law = law;
        this.state = state;
        outside = model.condition().temperature();
        List<Parts.Part> parts = model.parts().list();
        chains = new double[parts.size()][];
        boolean[] untold = new boolean[parts.size()];
        for (int k = 0; k < chains.length; k++) {
            PartState part = state.parts().get(k);
            chains[k] = part.fault().isPresent() ? null : part.links().stream().mapToDouble(PartState.LinkState::resistance).toArray();
            untold[k] = part.fault().isPresent() && !Margins.uncooled(parts.get(k), part, model);
        }
        // as in time: of what nobody states the resistance the heat goes into the air at once
        bodies = Bodies.of(Bodies.of(model).nodes().stream().filter(node -> node.part() < 0 || !untold[node.part()]).toList(),
        parts.size());
    }

    /** See {@link ThermalModel#plant}. */
    public static Linearization of(ThermalModel model, ControlLaw law, Drive drive, Optional<ThermalState> near, BooleanSupplier stop) {
        Loop loop = model.at(drive, near, stop);
        if (loop.state().isEmpty()) {
            List<Finding> why = !loop.obstacles().isEmpty() || stop.getAsBoolean() ? loop.obstacles()
                    : List.of(ThermalFindings.hunting(model, loop));
            return new Linearization(drive, Optional.empty(), Optional.empty(), why);
        }
        ThermalState state = loop.state().get();
        List<Finding> why = obstacles(model, law, state);
        if (!why.isEmpty()) {
            return new Linearization(drive, loop.state(), Optional.empty(), why);
        }
        return new Linearizing(model, law, state).run(drive);
    }

    private static List<Finding> obstacles(ThermalModel model, ControlLaw law, ThermalState state) {
        if (!model.parts().nowhere().isEmpty()) {
            return List.of(ThermalFindings.nowhere(model.parts().nowhere()));
        }
        if (!state.balance().unbounded().isEmpty()) {
            return List.of(ThermalFindings.unbounded(state.balance().unbounded()));
        }
        return Controls.sensor(law, state, model).isEmpty() ? List.of(Controls.blind(law, state)) : List.of();
    }

    /** See {@link ThermalModel#drive}. */
    public static Drive drive(ThermalModel model, ControlLaw law, ThermalState rest, double setting) {
        Regulation regulation = new Regulation(model.controls().laws(), 0);
        double[] settings = regulation.at(rest, model).setting();
        Map<String, Double> changed = new HashMap<>();
        for (String bank : Controls.banks(law, model.path())) {
            double most = setting;
            for (int i = 0; i < settings.length; i++) {
                Controls.Control other = regulation.laws().get(i);
                most = other.banks().contains(bank) && !other.law().id().equals(law.id()) ? Math.max(most, settings[i]) : most;
            }
            changed.put(bank, most);
        }
        return rest.drive().with(changed);
    }

    /** See {@link ThermalModel#plants}. */
    public static List<Linearization> all(ThermalModel model, ControlLaw law, List<Double> settings, ThermalState rest,
            BooleanSupplier stop) {
        List<Linearization> all = new ArrayList<>();
        ThermalState near = rest;
        for (double setting : settings) {
            Linearization one = of(model, law, drive(model, law, rest, setting), Optional.of(near), stop);
            all.add(one);
            near = one.state().orElse(near);
        }
        return all;
    }

    private Linearization run(Drive drive) {
        int n = bodies.size();
        Contacts contacts = Contacts.of(model.parts(), bodies);
        Network network = network(contacts, false);
        Network apart = network(contacts, true);
        Sensor sensor = Sensor.of(law, model);
        double[] cold = new double[n];
        Arrays.fill(cold, outside);
        double[] still = network.computeDerivatives(0, cold);
        double reads = sensor.read(network, network.read(cold));
        double[][] a = new double[n][n];
        double[] c = new double[n];
        double[] rises = new double[n];
        for (int j = 0; j < n; j++) {
            rises[j] = 1;
            double[] rates = apart.computeDerivatives(0, rises);
            for (int i = 0; i < n; i++) {
                a[i][j] = rates[i];
            }
            c[j] = sensor.read(apart, apart.read(rises));
            rises[j] = 0;
        }
        Optional<Finding> uncooled = uncooled(a);
        if (uncooled.isPresent()) {
            return new Linearization(drive, Optional.of(state), Optional.empty(), List.of(uncooled.get()));
        }
        double[] f = new double[n];
        double d = reads;
        for (int i = 0; i < n; i++) {
            f[i] = still[i] - outside * Arrays.stream(a[i]).sum();
            d -= outside * c[i];
        }
        double[] rest = rest(a, still);
        double sensed = reads;
        for (int i = 0; i < n; i++) {
            sensed += c[i] * (rest[i] - outside);
        }
        LinearPlant plant = new LinearPlant(bodies.nodes().stream().map(Bodies.Node::name).toList(), a, f, c, d, rest, sensed);
        return new Linearization(drive, Optional.of(state), Optional.of(plant), List.of());
    }

    /**
     * The bodies in air as it is at rest.
     *
     * @param apart whether all heat is left out and temperatures count from outside, so that what is left is in proportion to them
     */
    private Network network(Contacts contacts, boolean apart) {
        Balancing.Carried carried = model.balancing().carried(state.point());
        AirSystem.Passing passing = AirSystem.Passing.of(contacts, carried);
        int bays = contacts.bays();
        double[] wallHeat = new double[bays];
        double[] wallSlope = new double[bays];
        AirBalance.Walls walls = model.balancing().walls(state.point());
        AirBalance.Loss loss = new AirBalance.Loss();
        for (int i = 0; walls != AirBalance.Walls.NONE && i < bays; i++) {
            double rise = state.temperatures().get(i) - outside;
            walls.at(i, rise, loss);
            wallSlope[i] = loss.slope();
            wallHeat[i] = apart ? 0 : loss.heat() - loss.slope() * rise;
        }
        double[] heat = new double[contacts.givers().size()];
        for (int p = 0, g = 0; p < contacts.places(); p++) {
            for (Parts.Share share : model.parts().shares(p)) {
                heat[g++] = apart ? 0 : share.heat();
            }
        }
        Balancing.Carried taken = !apart ? carried : new Balancing.Carried(carried.passage(), carried.from(), carried.to(),
                carried.capacity(),
                carried.massFlow(), carried.share(), new double[carried.movers().length]);
        AirSystem system = new AirSystem(contacts, passing, taken, Network.conductances(bodies, contacts, chains), heat, wallHeat,
                wallSlope);
        double[] power = model.parts().list().stream().mapToDouble(part -> apart ? 0 : part.chainHeat()).toArray();
        return new Network(bodies, contacts, system, apart ? 0 : outside, power, chains);
    }

    /** Rises at which all rates vanish, from outside. */
    private double[] rest(double[][] a, double[] still) {
        int n = still.length;
        double[] matrix = new double[n * n];
        double[] rest = new double[n];
        for (int i = 0; i < n; i++) {
            System.arraycopy(a[i], 0, matrix, i * n, n);
            rest[i] = -still[i];
        }
        new Factors(matrix, n).solve(rest);
        for (int i = 0; i < n; i++) {
            rest[i] += outside;
        }
        return rest;
    }

    /** A body that loses heat neither to outside nor to one that does. */
    private Optional<Finding> uncooled(double[][] a) {
        int n = a.length;
        boolean[] cooled = new boolean[n];
        boolean more = true;
        while (more) {
            more = false;
            for (int i = 0; i < n; i++) {
                if (!cooled[i] && cools(a[i], i, cooled)) {
                    cooled[i] = true;
                    more = true;
                }
            }
        }
        for (int i = 0; i < n; i++) {
            if (!cooled[i]) {
                String name = bodies.nodes().get(i).name();
                return Optional.of(Finding.of(Severity.NOT_JUDGED, law.sensor(), "at these speed settings nothing carries heat off "
                        + name + ", so it comes to rest nowhere")
                        .remedy("let the law keep some speed, or state how that loses heat to still air"));
            }
        }
        return Optional.empty();
    }

    private static boolean cools(double[] rates, int i, boolean[] cooled) {
        double kept = 0;
        boolean joined = false;
        for (int j = 0; j < rates.length; j++) {
            kept += j == i ? 0 : rates[j];
            joined |= j != i && cooled[j] && rates[j] > -LOST * rates[i];
        }
        return rates[i] < 0 && (joined || -rates[i] - kept > -LOST * rates[i]);
    }
}
