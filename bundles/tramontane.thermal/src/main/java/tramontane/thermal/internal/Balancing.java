package tramontane.thermal.internal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.airflow.AirPathModel;
import tramontane.airflow.AirPathSolution;
import tramontane.airflow.Feed;
import tramontane.analysis.Cases;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Sections;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.model.Quantity;
import tramontane.model.Value;
import tramontane.thermal.AirBalance;
import tramontane.thermal.Drive;
import tramontane.thermal.PartState;
import tramontane.thermal.ThermalState;

/** Energy balances of a design in one condition at given flows. */
public final class Balancing {

    /** The highest rise that is followed, K; air that would be warmer counts as without bound. */
    public static final double HIGHEST = 400;
    private static final double LOWEST = -80;
    /** Rise that a bay is given while looking, where nothing carries its heat off, K. */
    private static final double STAND_IN = 60;
    /** Flow over the largest one that counts as none: mass balances close to no better. */
    private static final double NO_FLOW = 1e-9;
    /** Mass flow that counts as none whatever the largest, kg/s. */
    private static final double LEAST_FLOW = 1e-12;

    private final Condition condition;
    private final AirPathModel path;
    private final Parts parts;
    private final List<Bay> bays;
    private final Map<String, Integer> bayNumber = new HashMap<>();
    private final List<Passage> passages;
    private final int[] firstWay;
    private final AirBalance balance;
    private final int ways;
    private final double[] heat;
    private final List<EnclosureSection.Enclosure> enclosures = new ArrayList<>();
    private final List<List<WallModel>> walls = new ArrayList<>();
    private final boolean walled;

    /** Energy balances of a design. */
    public Balancing(Design design, Condition condition, AirPathModel path, Parts parts) {
        this.condition = condition;
        this.path = path;
        this.parts = parts;
        bays = design.airPath().bays();
        bayNumber.put(Bay.OUTSIDE, AirBalance.OUTSIDE);
        double sun = Sections.decode(new SunSection(), condition).map(section -> section.irradiance().si()).orElse(0.0);
        boolean any = false;
        for (Bay bay : bays) {
            bayNumber.putIfAbsent(bay.id(), bayNumber.size() - 1);
            EnclosureSection.Enclosure enclosure = Sections.decode(new EnclosureSection(), bay)
                    .orElse(EnclosureSection.Enclosure.NONE);
            enclosures.add(enclosure);
            walls.add(enclosure.walls().stream().map(wall -> new WallModel(wall, path.outside(), sun)).toList());
            any |= !enclosure.walls().isEmpty();
        }
        walled = any;
        passages = path.passages();
        firstWay = new int[passages.size() + 1];
        for (int p = 0; p < passages.size(); p++) {
            firstWay[p + 1] = firstWay[p] + (passages.get(p).isBank() ? columns(passages.get(p)) : 1);
        }
        ways = firstWay[passages.size()];
        int[] from = new int[ways];
        int[] to = new int[ways];
        for (int p = 0; p < passages.size(); p++) {
            for (int w = firstWay[p]; w < firstWay[p + 1]; w++) {
                from[w] = bayNumber.get(passages.get(p).from());
                to[w] = bayNumber.get(passages.get(p).to());
            }
        }
        balance = new AirBalance(bays.size(), from, to);
        heat = parts.heat();
    }

    /** Movers side by side. */
    private static int columns(Passage bank) {
        int series = bank.parameters().get("series").filter(Value.Num.class::isInstance)
                .map(value -> (int) ((Value.Num) value).number()).orElse(1);
        return Cases.positions(bank) / Math.max(1, series);
    }

    /** The bay from which a bank draws. */
    public int inletBay(String bank) {
        return bayNumber.get(path.passage(bank).from());
    }

    /** Temperatures brought to where there are properties of air, K; those without bound to a stand-in. */
    public double[] held(double[] temperatures) {
        double[] held = temperatures.clone();
        for (int i = 0; i < held.length; i++) {
            double outside = condition.temperature();
            held[i] = Double.isNaN(held[i]) ? outside + STAND_IN : Math.max(outside + LOWEST, Math.min(outside + HIGHEST, held[i]));
        }
        return held;
    }

    /** What the air of each way carries and takes up. */
    private record Ways(double[] capacity, double[] massFlow, double[] heat, double movers) {
    }

    private Ways ways(OperatingPoint point, double[] heat) {
        double specificHeat = path.outside().specificHeat();
        Ways all = new Ways(new double[ways], new double[ways], new double[ways], movers(point));
        int bank = 0;
        for (int p = 0; p < passages.size(); p++) {
            double put = heat[bays.size() + p];
            if (passages.get(p).isBank()) {
                OperatingPoint.BankPoint there = point.banks().get(bank++);
                double[] flows = path.columnFlows(there);
                int columns = flows.length;
                int series = there.movers().size() / columns;
                double through = 0;
                for (int c = 0; c < columns; c++) {
                    all.massFlow[firstWay[p] + c] = flows[c];
                    through += Math.abs(flows[c]);
                }
                for (int c = 0; c < columns; c++) {
                    all.heat[firstWay[p] + c] = put * (through > 0 ? Math.abs(all.massFlow[firstWay[p] + c]) / through : 1.0 / columns);
                }
                for (OperatingPoint.MoverPoint mover : there.movers()) {
                    all.heat[firstWay[p] + (mover.position() - 1) / series] += mover.power().orElse(0);
                }
            } else {
                all.massFlow[firstWay[p]] = point.passages().get(p).massFlow();
                all.heat[firstWay[p]] = put;
            }
        }
        double largest = 0;
        for (int w = 0; w < ways; w++) {
            largest = Math.max(largest, Math.abs(all.massFlow[w]));
        }
        for (int w = 0; w < ways; w++) {
            if (Math.abs(all.massFlow[w]) <= Math.max(LEAST_FLOW, NO_FLOW * largest)) {
                all.massFlow[w] = 0;
            }
            all.capacity[w] = specificHeat * all.massFlow[w];
        }
        return all;
    }

    /**
     * What the air of each way carries at given flows. A passage is one way, a bank one for each column.
     *
     * @param passage  the place of its passage among all, bays before passages
     * @param from     the bay where it begins, or {@link AirBalance#OUTSIDE}
     * @param to       the bay where it ends
     * @param capacity heat carried per kelvin, W/K, positive from its first to its second bay
     * @param massFlow kg/s
     * @param share    part of the heat put into the passage that the way takes up
     * @param movers   heat of the movers in it, W
     */
    public record Carried(int[] passage, int[] from, int[] to, double[] capacity, double[] massFlow, double[] share, double[] movers) {
    }

    /** What the air of each way carries at given flows. */
    public Carried carried(OperatingPoint point) {
        int places = bays.size() + passages.size();
        double[] one = new double[places];
        java.util.Arrays.fill(one, 1);
        Ways none = ways(point, new double[places]);
        double[] share = ways(point, one).heat();
        int[] passage = new int[ways];
        int[] from = new int[ways];
        int[] to = new int[ways];
        for (int p = 0; p < passages.size(); p++) {
            for (int w = firstWay[p]; w < firstWay[p + 1]; w++) {
                passage[w] = bays.size() + p;
                from[w] = bayNumber.get(passages.get(p).from());
                to[w] = bayNumber.get(passages.get(p).to());
                share[w] -= none.heat()[w];
            }
        }
        return new Carried(passage, from, to, none.capacity(), none.massFlow(), share, none.heat());
    }

    /** What leaves through walls at given flows. */
    public AirBalance.Walls walls(OperatingPoint point) {
        return walled ? walls(ways(point, heat)) : AirBalance.Walls.NONE;
    }

    private static double movers(OperatingPoint point) {
        return point.banks().stream().flatMap(bank -> bank.movers().stream()).mapToDouble(mover -> mover.power().orElse(0)).sum();
    }

    /** Temperatures of the bays above outside at given flows. */
    public AirBalance.Rises rises(OperatingPoint point) {
        return rises(ways(point, heat), heat);
    }

    private AirBalance.Rises rises(Ways all, double[] heat) {
        double[] bayHeat = java.util.Arrays.copyOf(heat, bays.size());
        AirBalance.Rises rises = balance.solve(all.capacity(), all.heat(), bayHeat, walled ? walls(all) : AirBalance.Walls.NONE);
        if (!rises.converged()) { // walls give off more the warmer it is, so this cannot be
            throw new IllegalStateException("walls and air did not come to agree, " + rises.error() + " W are left");
        }
        return rises;
    }

    private AirBalance.Walls walls(Ways all) {
        double[] through = new double[bays.size()];
        for (int w = 0; w < ways; w++) {
            Passage passage = passages.get(passageOf(w));
            int into = bayNumber.get(all.massFlow()[w] >= 0 ? passage.to() : passage.from());
            if (into != AirBalance.OUTSIDE) {
                through[into] += Math.abs(all.massFlow()[w]);
            }
        }
        return (bay, rise, loss) -> {
            double sum = 0;
            double slope = 0;
            double velocity = velocity(bay, through[bay], rise);
            for (WallModel wall : walls.get(bay)) {
                sum += wall.heat(condition.temperature() + rise, velocity);
                slope += wall.slope(condition.temperature() + rise, velocity);
            }
            loss.set(sum, slope);
        };
    }

    private double velocity(int bay, double massFlow, double rise) {
        return enclosures.get(bay).flowArea().map(Quantity::si).map(area -> massFlow / area
                / path.outside().heatedTo(condition.temperature() + Math.max(LOWEST, Math.min(HIGHEST, rise))).density()).orElse(0.0);
    }

    private int passageOf(int way) {
        int p = java.util.Arrays.binarySearch(firstWay, way);
        int at = p >= 0 ? p : -p - 2;
        return at;
    }

    /** The air at all places. */
    private Parts.Air air(Ways all, AirBalance.Rises rises) {
        int places = parts.places();
        Parts.Air air = new Parts.Air(new double[places], new double[places], new double[places], new double[places]);
        double outside = condition.temperature();
        double[] arriving = new double[bays.size()];
        for (int p = 0; p < passages.size(); p++) {
            int place = bays.size() + p;
            double net = 0;
            for (int w = firstWay[p]; w < firstWay[p + 1]; w++) {
                net += all.massFlow()[w];
            }
            int up = bayNumber.get(net >= 0 ? passages.get(p).from() : passages.get(p).to());
            for (int w = firstWay[p]; w < firstWay[p + 1]; w++) {
                double flow = all.massFlow()[w];
                if (flow >= 0 == net >= 0) {
                    air.massFlow()[place] += Math.abs(flow);
                    air.capacity()[place] += Math.abs(all.capacity()[w]);
                }
                int from = bayNumber.get(flow >= 0 ? passages.get(p).from() : passages.get(p).to());
                int into = bayNumber.get(flow >= 0 ? passages.get(p).to() : passages.get(p).from());
                if (flow == 0) {
                    for (int end : new int[] {from, into}) { // as the balance shares it out
                        if (end != AirBalance.OUTSIDE) {
                            arriving[end] += all.heat()[w] / 2;
                        }
                    }
                } else if (into != AirBalance.OUTSIDE) {
                    arriving[into] += Math.abs(all.capacity()[w]) * rises.at(from) + all.heat()[w];
                    air.massFlow()[into] += Math.abs(flow);
                    air.capacity()[into] += Math.abs(all.capacity()[w]);
                }
            }
            air.arriving()[place] = outside + rises.at(up);
        }
        for (int i = 0; i < bays.size(); i++) {
            air.mean()[i] = outside + rises.at(i);
            air.arriving()[i] = air.capacity()[i] > 0 ? outside + arriving[i] / air.capacity()[i] : air.mean()[i];
        }
        return air;
    }

    /**
     * The state at given flows.
     *
     * @param drive    what they hold for
     * @param point    the flows
     * @param feeds    what the banks are fed with
     * @param solution the solved air path they come from
     * @param steps    how often flows were solved
     */
    public ThermalState state(Drive drive, OperatingPoint point, Map<String, Feed> feeds, Optional<AirPathSolution> solution,
            int steps) {
        return state(drive, point, feeds, solution, steps, parts, heat);
    }

    /**
     * The state at given flows with other heats of the parts.
     *
     * @param other the same parts with other heats
     */
    public ThermalState state(OperatingPoint point, Parts other) {
        return state(Drive.STATED, point, Map.of(), Optional.empty(), 0, other, other.heat());
    }

    private ThermalState state(Drive drive, OperatingPoint point, Map<String, Feed> feeds, Optional<AirPathSolution> solution,
            int steps, Parts parts, double[] heat) {
        Ways all = ways(point, heat);
        AirBalance.Rises rises = rises(all, heat);
        List<Double> temperatures = new ArrayList<>();
        List<String> unbounded = new ArrayList<>();
        for (int i = 0; i < bays.size(); i++) {
            temperatures.add(condition.temperature() + rises.at(i));
            if (rises.unbounded().get(i) || rises.at(i) > HIGHEST) {
                unbounded.add(bays.get(i).id());
            }
        }
        Parts.Air air = air(all, rises);
        List<PartState> states = new ArrayList<>();
        double sources = 0;
        for (int k = 0; k < parts.list().size(); k++) {
            states.add(parts.state(k, air));
            sources += parts.list().get(k).heat();
        }
        OperatingPoint set = feeds.isEmpty() ? point : point.withSettings(bank -> feeds.get(bank).setting());
        return new ThermalState(drive, set, temperatures, states, wallStates(all, rises, air),
                new ThermalState.Balance(sources, all.movers(), rises.toAir(), rises.toWalls(), rises.error(), unbounded), feeds, solution, steps);
    }

    private List<ThermalState.WallState> wallStates(Ways all, AirBalance.Rises rises, Parts.Air air) {
        List<ThermalState.WallState> states = new ArrayList<>();
        for (int i = 0; i < bays.size(); i++) {
            if (Double.isNaN(rises.at(i))) {
                continue;
            }
            for (WallModel wall : walls.get(i)) {
                states.add(wall.state(bays.get(i).id(), condition.temperature() + rises.at(i),
                        velocity(i, air.massFlow()[i], rises.at(i))));
            }
        }
        return states;
    }

    /**
     * Mean temperature of the air in a passage, K: as it comes, warmed by half of what is put into it; of a bank, as it comes.
     * Empty for one that is not there or in which air stands.
     */
    public OptionalDouble passageAir(String id, ThermalState state) {
        for (int p = 0; p < passages.size(); p++) {
            Passage passage = passages.get(p);
            double flow = state.point().passages().get(p).massFlow();
            if (passage.id().equals(id) && Math.abs(flow) > LEAST_FLOW) {
                int up = bayNumber.get(flow >= 0 ? passage.from() : passage.to());
                double comes = up == AirBalance.OUTSIDE ? condition.temperature() : state.temperatures().get(up);
                double air = comes + (passage.isBank() ? 0 : 0.5 * heat[bays.size() + p] / (Math.abs(flow) * path.outside().specificHeat()));
                return Double.isNaN(air) ? OptionalDouble.empty() : OptionalDouble.of(air);
            }
        }
        return OptionalDouble.empty();
    }

    /** Mass flow of all air that leaves to outside, kg/s; of a bank that of each column, since a failed one may let air back in. */
    double leaving(OperatingPoint point) {
        Ways all = ways(point, heat);
        double sum = 0;
        for (int w = 0; w < ways; w++) {
            Passage passage = passages.get(passageOf(w));
            if ((all.massFlow()[w] >= 0 ? passage.to() : passage.from()).equals(Bay.OUTSIDE)) {
                sum += Math.abs(all.massFlow()[w]);
            }
        }
        return sum;
    }

    /** What surrounds the air of each bay. */
    public List<EnclosureSection.Enclosure> enclosures() {
        return enclosures;
    }
}
