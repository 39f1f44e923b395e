package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import tramontane.airflow.Network;
import tramontane.airflow.NetworkAir;
import tramontane.airflow.NetworkLoad;
import tramontane.airflow.NetworkSolution;
import tramontane.airflow.NetworkSolver;
import tramontane.analysis.FlowLaw;
import tramontane.model.AirMover;
import tramontane.model.FailedMover;

/** What holds of any network of real passages, flaps and banks, some movers of which have failed. */
class NetworkPropertiesTest {

    private static final int OUT = Network.OUTSIDE;
    private static final double DENSITY = 1.2;
    private static final double MU = 1.8e-5;

    /** A bank that can be made anew at another speed. */
    private record Fans(Bank bank, double speed) {
    }

    /** A branch: a passage's law, or a bank. */
    private record Drawn(int from, int to, Optional<FlowLaw> passage, Optional<Fans> fans) {

        Network.Branch at(double speedRatio) {
            return new Network.Branch(from + "-" + to, from, to,
                    passage.orElseGet(() -> fans.get().bank().law(fans.get().speed() * speedRatio)));
        }
    }

    /** c ρ |q| q, with a slope at rest that no test sees. */
    private static FlowLaw square(double c) {
        return (flow, density, viscosity, drop) -> {
            double size = Math.sqrt(flow * flow + 1e-16);
            drop.set(c * density * size * flow, c * density * (size + flow * flow / size));
        };
    }

    private static FlowLaw times(double factor, FlowLaw law) {
        return (flow, density, viscosity, drop) -> {
            law.at(flow, density, viscosity, drop);
            drop.set(factor * drop.pressure(), factor * drop.slope());
        };
    }

    private static FlowLaw backwards(FlowLaw law) {
        return (flow, density, viscosity, drop) -> {
            law.at(-flow, density, viscosity, drop);
            drop.set(-drop.pressure(), drop.slope());
        };
    }

    private static FlowLaw passage(Random random, boolean flaps) {
        double area = 2e-3 * Math.exp(random.nextGaussian());
        if (flaps && random.nextInt(4) == 0) {
            return FlapLaw.of(area, 1 + 2 * random.nextDouble(), 0.01 + 0.2 * random.nextDouble(), 2.7, 0.5 + 10 * random.nextDouble());
        }
        return random.nextBoolean() ? LocalLoss.of(1 + 3 * random.nextDouble(), area) : square(1 / (area * area));
    }

    private static Fans fans(Random random) {
        int n = 5 + random.nextInt(5);
        double largest = 0.03 * Math.exp(0.5 * random.nextGaussian());
        double highest = 80 * Math.exp(0.5 * random.nextGaussian());
        double[] flow = new double[n];
        double[] pressure = new double[n];
        pressure[0] = highest;
        for (int i = 1; i < n; i++) {
            flow[i] = flow[i - 1] + largest / n * (0.5 + random.nextDouble());
            pressure[i] = pressure[i - 1] - highest / n * (0.2 + random.nextDouble());
        }
        AirMover mover = Cases.part(Cases.curve(Cases.SPEED, 1.15, flow, pressure, new double[0]));
        int columns = 1 + random.nextInt(4);
        int series = 1 + random.nextInt(2);
        Map<Integer, FailedMover.State> failed = new HashMap<>();
        for (int position = 1; position <= columns * series; position++) {
            if (random.nextInt(5) == 0) {
                failed.put(position, FailedMover.State.values()[random.nextInt(3)]);
            }
        }
        return new Fans(Cases.bank("fans", mover, columns, series, failed), Cases.SPEED * (0.5 + random.nextDouble()));
    }

    private static List<Drawn> draw(int bays, Random random, boolean flaps) {
        List<Drawn> drawn = new ArrayList<>();
        for (int i = 0; i < bays; i++) {
            drawn.add(new Drawn(i, random.nextInt(i + 1) - 1, Optional.of(passage(random, flaps)), Optional.empty()));
        }
        for (int k = 0; k < bays + 1; k++) {
            drawn.add(new Drawn(random.nextInt(bays + 1) - 1, random.nextInt(bays), Optional.of(passage(random, flaps)),
                    Optional.empty()));
        }
        for (int k = 0; k < 1 + bays / 4; k++) {
            boolean blows = random.nextBoolean();
            int bay = random.nextInt(bays);
            drawn.add(new Drawn(blows ? OUT : bay, blows ? bay : random.nextInt(bay + 1) - 1, Optional.empty(),
                    Optional.of(fans(random))));
        }
        return drawn;
    }

    private static Network network(int bays, double[] height, List<Network.Branch> branches) {
        List<Network.Bay> list = new ArrayList<>();
        for (int i = 0; i < bays; i++) {
            list.add(new Network.Bay("bay " + i, height[i]));
        }
        return new Network(list, branches);
    }

    private static Network network(int bays, List<Network.Branch> branches) {
        return network(bays, new double[bays], branches);
    }

    private static Network network(int bays, List<Drawn> drawn, double speedRatio) {
        return network(bays, drawn.stream().map(each -> each.at(speedRatio)).toList());
    }

    private static NetworkLoad air(int bays, double density, double viscosity) {
        return NetworkLoad.of(NetworkAir.uniform(bays, density, viscosity));
    }

    private static NetworkSolution solved(Network network, NetworkLoad load) {
        NetworkSolution solution = NetworkSolver.solve(network, load, NetworkSolver.Settings.STANDARD);
        assertEquals(Optional.empty(), solution.why());
        return solution;
    }

    // with every mover failed nothing flows, and rounding is all there is

    private static double largest(NetworkSolution solution) {
        double largest = 1e-9;
        for (int e = 0; e < solution.branches(); e++) {
            largest = Math.max(largest, Math.abs(solution.massFlow(e)));
        }
        return largest;
    }

    private static double highest(NetworkSolution solution) {
        double highest = 1e-6;
        for (int e = 0; e < solution.branches(); e++) {
            highest = Math.max(highest, Math.abs(solution.drop(e)));
        }
        return highest;
    }

    private static void balances(Network network, NetworkSolution solution) {
        double[] balance = new double[solution.bays()];
        for (int e = 0; e < solution.branches(); e++) {
            Network.Branch branch = network.branches().get(e);
            if (branch.from() != OUT) {
                balance[branch.from()] -= solution.massFlow(e);
            }
            if (branch.to() != OUT) {
                balance[branch.to()] += solution.massFlow(e);
            }
        }
        for (double each : balance) {
            assertEquals(0, each, 1e-9 * largest(solution));
        }
    }

    @Property(tries = 300)
    void massBalancesWithFlapsFailedMoversAndOneAir(@ForAll @IntRange(min = 1, max = 12) int bays, @ForAll long seed) {
        Network network = network(bays, draw(bays, new Random(seed), true), 1);
        balances(network, solved(network, air(bays, DENSITY, MU)));
    }

    @Property(tries = 300)
    void massBalancesWithUnlikeAirAtAnyHeight(@ForAll @IntRange(min = 1, max = 12) int bays, @ForAll long seed) {
        Random random = new Random(seed);
        List<Drawn> drawn = draw(bays, random, true);
        double[] height = random.doubles(bays, 0, 1.5).toArray();
        double[] density = random.doubles(bays, 1, 1.2).toArray();
        double[] viscosity = random.doubles(bays, 1.8e-5, 2e-5).toArray();
        Network network = network(bays, height, drawn.stream().map(each -> each.at(1)).toList());
        balances(network, solved(network, NetworkLoad.of(NetworkAir.of(density, viscosity, DENSITY, MU))));
    }

    // series and parallel

    /** A tree of square resistances between two bays, its flows to be expected, and the one resistance that it comes to. */
    private static final class Tree {

        private final Random random;
        private final List<Network.Branch> branches = new ArrayList<>();
        private final List<Double> share = new ArrayList<>();
        private int bays = 1;

        Tree(Random random) {
            this.random = random;
        }

        /** Resistances in series add up; side by side their 1/√c do. */
        double grow(int from, int to, int depth) {
            int kind = depth == 0 ? 0 : random.nextInt(3);
            if (kind == 0) {
                double c = Math.exp(random.nextGaussian());
                boolean turned = random.nextBoolean();
                branches.add(new Network.Branch("branch " + branches.size(), turned ? to : from, turned ? from : to, square(c)));
                share.add(turned ? -1.0 : 1.0);
                return c;
            }
            int first = share.size();
            if (kind == 1) {
                int middle = bays++;
                return grow(from, middle, depth - 1) + grow(middle, to, depth - 1);
            }
            double one = grow(from, to, depth - 1);
            int second = share.size();
            double other = grow(from, to, depth - 1);
            double both = Math.pow(1 / Math.sqrt(one) + 1 / Math.sqrt(other), -2);
            for (int i = first; i < share.size(); i++) {
                share.set(i, share.get(i) * Math.sqrt(both / (i < second ? one : other)));
            }
            return both;
        }
    }

    @Property(tries = 300)
    void seriesAndParallelReduceToOneResistance(@ForAll @IntRange(min = 0, max = 6) int depth,
            @ForAll @DoubleRange(min = 0.5, max = 2) double density, @ForAll long seed) {
        Tree tree = new Tree(new Random(seed));
        double c = tree.grow(0, OUT, depth);
        double flow = 10;
        double[] inflow = new double[tree.bays];
        inflow[0] = flow;
        NetworkSolution solution = solved(network(tree.bays, tree.branches), air(tree.bays, density, MU).withInflow(inflow));
        double expected = c * flow * flow / density;
        assertEquals(expected, solution.pressure(0), 1e-9 * expected);
        for (int e = 0; e < tree.share.size(); e++) {
            assertEquals(tree.share.get(e) * flow, solution.massFlow(e), 1e-9 * flow);
        }
    }

    @Property(tries = 200)
    void aBankSeesOnlyTheOneResistance(@ForAll @IntRange(min = 0, max = 5) int depth, @ForAll long seed) {
        Random random = new Random(seed);
        Tree tree = new Tree(random);
        double c = tree.grow(0, OUT, depth);
        Fans fans = fans(random);
        Network.Branch bank = new Network.Branch("bank", OUT, 0, fans.bank().law(fans.speed()));
        // to the size of a bank's flow
        double scale = 1e4;
        List<Network.Branch> branches = new ArrayList<>(List.of(bank));
        tree.branches.forEach(each -> branches.add(new Network.Branch(each.id(), each.from(), each.to(), times(scale, each.law()))));
        NetworkSolution whole = solved(network(tree.bays, branches), air(tree.bays, DENSITY, MU));
        NetworkSolution one = solved(network(1, List.of(bank, new Network.Branch("one", 0, OUT, square(scale * c)))),
                air(1, DENSITY, MU));
        assertEquals(one.massFlow(0), whole.massFlow(0), 1e-8 * one.massFlow(0));
        assertEquals(one.pressure(0), whole.pressure(0), 1e-8 * highest(one));
        for (int e = 0; e < tree.share.size(); e++) {
            assertEquals(tree.share.get(e) * one.massFlow(0), whole.massFlow(e + 1), 1e-8 * largest(one));
        }
    }

    // laws of similarity

    @Property(tries = 200)
    void denserAirTakesTheSameWay(@ForAll @IntRange(min = 1, max = 12) int bays,
            @ForAll @DoubleRange(min = 0.3, max = 3) double ratio, @ForAll long seed) {
        List<Drawn> drawn = draw(bays, new Random(seed), false);
        Network network = network(bays, drawn, 1);
        NetworkSolution plain = solved(network, air(bays, DENSITY, MU));
        // at equal kinematic viscosity creeping flow is similar, too
        NetworkSolution other = solved(network, air(bays, DENSITY * ratio, MU * ratio));
        for (int e = 0; e < plain.branches(); e++) {
            assertEquals(plain.flow(e), other.flow(e), 1e-8 * largest(plain) / DENSITY);
        }
        for (int i = 0; i < bays; i++) {
            assertEquals(ratio * plain.pressure(i), other.pressure(i), 1e-8 * ratio * highest(plain));
        }
    }

    @Property(tries = 200)
    void flowsFollowTheSpeedAndPressuresItsSquare(@ForAll @IntRange(min = 1, max = 12) int bays,
            @ForAll @DoubleRange(min = 0.3, max = 3) double ratio, @ForAll long seed) {
        List<Drawn> drawn = draw(bays, new Random(seed), false);
        NetworkSolution plain = solved(network(bays, drawn, 1), air(bays, DENSITY, MU));
        // at equal Reynolds numbers creeping flow is similar, too
        NetworkSolution other = solved(network(bays, drawn, ratio), air(bays, DENSITY, MU * ratio));
        for (int e = 0; e < plain.branches(); e++) {
            assertEquals(ratio * plain.flow(e), other.flow(e), 1e-8 * ratio * largest(plain) / DENSITY);
        }
        for (int i = 0; i < bays; i++) {
            assertEquals(ratio * ratio * plain.pressure(i), other.pressure(i), 1e-8 * ratio * ratio * highest(plain));
        }
    }

    @Property(tries = 200)
    void allDropsTimesAFactorMeanAllPressuresTimesIt(@ForAll @IntRange(min = 1, max = 12) int bays,
            @ForAll @DoubleRange(min = 0.05, max = 20) double factor, @ForAll long seed) {
        Network network = network(bays, draw(bays, new Random(seed), true), 1);
        NetworkSolution plain = solved(network, air(bays, DENSITY, MU));
        NetworkSolution scaled = solved(network(bays, network.branches().stream().map(each -> new Network.Branch(each.id(),
                each.from(), each.to(), times(factor, each.law()))).toList()), air(bays, DENSITY, MU));
        for (int e = 0; e < plain.branches(); e++) {
            assertEquals(plain.massFlow(e), scaled.massFlow(e), 1e-8 * largest(plain));
        }
        for (int i = 0; i < bays; i++) {
            assertEquals(factor * plain.pressure(i), scaled.pressure(i), 1e-8 * factor * highest(plain));
        }
    }

    /** Air put in at a given rate goes the same way whatever all resistances are multiplied by. */
    @Property(tries = 200)
    void allResistancesTimesAFactorLeaveGivenAirItsWay(@ForAll @IntRange(min = 1, max = 12) int bays,
            @ForAll @DoubleRange(min = 0.05, max = 20) double factor, @ForAll long seed) {
        Random random = new Random(seed);
        List<Network.Branch> branches = draw(bays, random, false).stream().filter(each -> each.passage().isPresent())
                .map(each -> each.at(1)).toList();
        double[] inflow = new double[bays];
        Arrays.setAll(inflow, i -> 0.05 * random.nextGaussian());
        NetworkSolution plain = solved(network(bays, branches), air(bays, DENSITY, MU).withInflow(inflow));
        NetworkSolution scaled = solved(network(bays, branches.stream().map(each -> new Network.Branch(each.id(), each.from(),
                each.to(), times(factor, each.law()))).toList()), air(bays, DENSITY, MU).withInflow(inflow));
        for (int e = 0; e < plain.branches(); e++) {
            assertEquals(plain.massFlow(e), scaled.massFlow(e), 1e-8 * largest(plain));
            assertEquals(factor * plain.drop(e), scaled.drop(e), 1e-8 * factor * highest(plain));
        }
    }

    // single branches

    @Property(tries = 300)
    void moreResistanceNeverMeansMoreFlow(@ForAll @IntRange(min = 1, max = 12) int bays,
            @ForAll @DoubleRange(min = 1.01, max = 1000) double factor, @ForAll long seed) {
        Random random = new Random(seed);
        Network network = network(bays, draw(bays, random, true), 1);
        int which = random.nextInt(2 * bays + 1);
        List<Network.Branch> branches = new ArrayList<>(network.branches());
        Network.Branch raised = branches.get(which);
        branches.set(which, new Network.Branch(raised.id(), raised.from(), raised.to(), times(factor, raised.law())));
        NetworkSolution plain = solved(network, air(bays, DENSITY, MU));
        NetworkSolution other = solved(network(bays, branches), air(bays, DENSITY, MU));
        double before = plain.massFlow(which);
        double after = other.massFlow(which);
        double rounding = 1e-9 * largest(plain);
        assertTrue(Math.abs(after) <= Math.abs(before) + rounding, before + " became " + after);
        // nor does it turn
        assertTrue(before * after >= 0 || Math.abs(before) <= rounding && Math.abs(after) <= rounding);
    }

    @Property(tries = 200)
    void aBranchDefinedBackwardsTurnsItsSignOnly(@ForAll @IntRange(min = 1, max = 12) int bays, @ForAll long seed) {
        Random random = new Random(seed);
        Network network = network(bays, draw(bays, random, true), 1);
        boolean[] turned = new boolean[network.branches().size()];
        List<Network.Branch> branches = new ArrayList<>(network.branches());
        for (int e = 0; e < turned.length; e++) {
            turned[e] = random.nextBoolean();
            Network.Branch each = branches.get(e);
            if (turned[e]) {
                branches.set(e, new Network.Branch(each.id(), each.to(), each.from(), backwards(each.law())));
            }
        }
        NetworkSolution plain = solved(network, air(bays, DENSITY, MU));
        NetworkSolution other = solved(network(bays, branches), air(bays, DENSITY, MU));
        for (int e = 0; e < turned.length; e++) {
            assertEquals(turned[e] ? -plain.massFlow(e) : plain.massFlow(e), other.massFlow(e), 1e-8 * largest(plain));
        }
        for (int i = 0; i < bays; i++) {
            assertEquals(plain.pressure(i), other.pressure(i), 1e-8 * highest(plain));
        }
    }

    /** In unlike air, too: a passage takes the air of the bay upstream, from whichever end it is counted. */
    @Property(tries = 200)
    void inUnlikeAirAPassageDefinedBackwardsTurnsItsSignOnly(@ForAll @IntRange(min = 1, max = 12) int bays, @ForAll long seed) {
        Random random = new Random(seed);
        List<Network.Branch> branches = draw(bays, random, false).stream().filter(each -> each.passage().isPresent())
                .map(each -> each.at(1)).toList();
        double[] inflow = new double[bays];
        Arrays.setAll(inflow, i -> 0.05 * random.nextGaussian());
        double[] density = random.doubles(bays, 1, 1.2).toArray();
        double[] viscosity = random.doubles(bays, 1.8e-5, 2e-5).toArray();
        NetworkLoad load = NetworkLoad.of(NetworkAir.of(density, viscosity, DENSITY, MU)).withInflow(inflow);
        NetworkSolution plain = solved(network(bays, branches), load);
        NetworkSolution other = solved(network(bays, branches.stream().map(each -> new Network.Branch(each.id(), each.to(),
                each.from(), backwards(each.law()))).toList()), load);
        for (int e = 0; e < plain.branches(); e++) {
            assertEquals(-plain.massFlow(e), other.massFlow(e), 1e-8 * largest(plain));
            assertEquals(-plain.flow(e), other.flow(e), 1e-8 * largest(plain));
        }
    }
}
