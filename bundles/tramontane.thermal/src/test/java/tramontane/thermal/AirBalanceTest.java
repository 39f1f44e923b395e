package tramontane.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class AirBalanceTest {

    private static final int OUT = AirBalance.OUTSIDE;

    private static AirBalance.Rises solve(AirBalance balance, double[] capacity, double[] wayHeat, double... bayHeat) {
        return balance.solve(capacity, wayHeat, bayHeat, AirBalance.Walls.NONE);
    }

    @Test
    void airWarmsAlongAChain() {
        AirBalance chain = new AirBalance(2, new int[] {OUT, 0, 1}, new int[] {0, 1, OUT});
        AirBalance.Rises rises = solve(chain, new double[] {10, 10, 10}, new double[] {0, 30, 50}, 20, 0);
        assertEquals(2, rises.at(0), 1e-12);
        assertEquals(5, rises.at(1), 1e-12);
        assertEquals(100, rises.toAir(), 1e-12);
        assertEquals(0, rises.error(), 1e-12);
    }

    @Test
    void heatOfAMoverDrawnThroughWarmsNothingUpstream() {
        AirBalance box = new AirBalance(1, new int[] {OUT, 0}, new int[] {0, OUT});
        assertEquals(4, solve(box, new double[] {10, 10}, new double[] {0, 25}, 40).at(0), 1e-12);
        assertEquals(6.5, solve(box, new double[] {10, 10}, new double[] {25, 0}, 40).at(0), 1e-12, "blown in, it warms the box");
        assertEquals(6.5, solve(box, new double[] {-10, -10}, new double[] {0, 25}, 40).at(0), 1e-12, "and so where air goes backwards");
    }

    /** By hand: bay 0 gets 10 W/K from outside and 5 W/K back from bay 1, which gets 15 and gives off 5 back and 10 out. */
    @Test
    void airThatGoesRoundComesBackWarm() {
        AirBalance ring = new AirBalance(2, new int[] {OUT, 0, 1, 1}, new int[] {0, 1, 0, OUT});
        AirBalance.Rises rises = solve(ring, new double[] {10, 15, 5, 10}, new double[4], 60, 30);
        // 15 a = 5 b + 60, 15 b = 15 a + 30  =>  b = 9, a = 7
        assertEquals(7, rises.at(0), 1e-12);
        assertEquals(9, rises.at(1), 1e-12);
        assertEquals(90, rises.toAir(), 1e-12);
    }

    @Test
    void unequalWaysMixByTheHeatTheyCarry() {
        AirBalance mix = new AirBalance(3, new int[] {OUT, OUT, 0, 1, 2}, new int[] {0, 1, 2, 2, OUT});
        AirBalance.Rises rises = solve(mix, new double[] {10, 5, 10, 5, 15}, new double[5], 100, 20, 0);
        assertEquals((10 * 10 + 5 * 4) / 15.0, rises.at(2), 1e-12);
    }

    @Test
    void heatWithoutAWayOutHasNoBound() {
        AirBalance closed = new AirBalance(3, new int[] {OUT, 0, 1, 2}, new int[] {0, OUT, 2, 1});
        AirBalance.Rises rises = solve(closed, new double[] {10, 10, 3, 3}, new double[4], 20, 5, 0);
        assertEquals(2, rises.at(0), 1e-12);
        assertTrue(Double.isNaN(rises.at(1)));
        assertEquals("{1, 2}", rises.unbounded().toString());
        AirBalance.Rises cold = solve(closed, new double[] {10, 10, 3, 3}, new double[4], 20, 0, 0);
        assertTrue(cold.unbounded().isEmpty());
        assertEquals(0, cold.at(1), 0);
    }

    @Test
    void heatIntoStandingAirGoesToBothEnds() {
        AirBalance still = new AirBalance(2, new int[] {OUT, 0, OUT, 1, 0}, new int[] {0, OUT, 1, OUT, 1});
        AirBalance.Rises rises = solve(still, new double[] {10, 10, 5, 5, 0}, new double[] {0, 0, 0, 0, 10}, 0, 0);
        assertEquals(0.5, rises.at(0), 1e-12);
        assertEquals(1, rises.at(1), 1e-12);
    }

    @Test
    void wallsTakeTheirShare() {
        AirBalance box = new AirBalance(1, new int[] {OUT, 0}, new int[] {0, OUT});
        // 10 T + 0.5 T + 0.1 T^1.25 = 100
        AirBalance.Walls walls = (bay, rise, loss) -> loss.set(0.5 * rise + 0.1 * Math.signum(rise) * Math.pow(Math.abs(rise), 1.25),
                0.5 + 0.125 * Math.pow(Math.abs(rise), 0.25));
        AirBalance.Rises rises = box.solve(new double[] {10, 10}, new double[2], new double[] {100}, walls);
        double t = rises.at(0);
        assertTrue(rises.converged());
        assertEquals(100, 10.5 * t + 0.1 * Math.pow(t, 1.25), 1e-10);
        assertEquals(100, rises.toAir() + rises.toWalls(), 1e-10);
        AirBalance.Rises sealed = box.solve(new double[2], new double[2], new double[] {100}, walls);
        assertEquals(100, sealed.toWalls(), 1e-10, "a sealed box loses all through its walls");
    }

    @Test
    void numbersThatAreNoneAreRefused() {
        AirBalance box = new AirBalance(1, new int[] {OUT, 0}, new int[] {0, OUT});
        assertThrows(IllegalArgumentException.class, () -> solve(box, new double[] {Double.NaN, 1}, new double[2], 1));
        assertThrows(IllegalArgumentException.class, () -> new AirBalance(1, new int[] {1}, new int[] {OUT}));
    }

    /** A random network: air goes along random closed paths by outside, so that every bay is balanced. */
    private record Wild(int bays, int[] from, int[] to, double[] capacity, double[] wayHeat, double[] bayHeat) {
        static Wild of(int seed, int bays) {
            Random random = new Random(seed);
            List<int[]> ways = new ArrayList<>();
            List<Double> flows = new ArrayList<>();
            for (int path = 0; path < bays; path++) {
                double flow = 0.1 + random.nextDouble();
                int at = path % 3 == 2 ? random.nextInt(bays) : OUT;
                int first = at;
                for (int step = 0; step < 2 + random.nextInt(5); step++) {
                    int next = random.nextInt(bays);
                    if (next != at) {
                        ways.add(new int[] {at, next});
                        flows.add(flow);
                        at = next;
                    }
                }
                ways.add(new int[] {at, first});
                flows.add(flow);
            }
            int n = ways.size();
            Wild wild = new Wild(bays, new int[n], new int[n], new double[n], new double[n], new double[bays]);
            for (int e = 0; e < n; e++) {
                boolean turned = random.nextBoolean(); // the same air, told from the other end
                wild.from[e] = ways.get(e)[turned ? 1 : 0];
                wild.to[e] = ways.get(e)[turned ? 0 : 1];
                wild.capacity[e] = turned ? -flows.get(e) : flows.get(e);
                wild.wayHeat[e] = random.nextInt(3) == 0 ? 10 * random.nextDouble() : 0;
            }
            for (int i = 0; i < bays; i++) {
                wild.bayHeat[i] = random.nextInt(2) == 0 ? 10 * random.nextDouble() : 0;
            }
            return wild;
        }

        AirBalance.Rises rises(double factor, double flow) {
            double[] ways = wayHeat.clone();
            double[] heat = bayHeat.clone();
            double[] air = capacity.clone();
            java.util.Arrays.setAll(ways, e -> factor * wayHeat[e]);
            java.util.Arrays.setAll(heat, i -> factor * bayHeat[i]);
            java.util.Arrays.setAll(air, e -> flow * capacity[e]);
            return new AirBalance(bays, from, to).solve(air, ways, heat, AirBalance.Walls.NONE);
        }
    }


    @Property(tries = 300)
    void energyCloses(@ForAll int seed, @ForAll @IntRange(min = 1, max = 60) int bays) {
        Wild wild = Wild.of(seed, bays);
        AirBalance.Rises rises = wild.rises(1, 1);
        double heat = java.util.Arrays.stream(wild.bayHeat()).sum() + java.util.Arrays.stream(wild.wayHeat()).sum();
        if (rises.unbounded().isEmpty()) {
            assertEquals(0, rises.error(), 1e-9 * heat);
            assertEquals(heat, rises.toAir(), 1e-9 * heat);
        } else {
            assertFalse(Double.isFinite(rises.at(rises.unbounded().nextSetBit(0))));
        }
        for (int i = 0; i < bays; i++) {
            assertTrue(Double.isNaN(rises.at(i)) || rises.at(i) >= -1e-12 * (1 + heat), "no bay is colder than outside");
        }
    }

    @Property(tries = 200)
    void risesAreProportionalToHeatAndInverseToFlow(@ForAll int seed, @ForAll @IntRange(min = 1, max = 40) int bays) {
        Wild wild = Wild.of(seed, bays);
        AirBalance.Rises one = wild.rises(1, 1);
        AirBalance.Rises more = wild.rises(3, 2);
        for (int i = 0; i < bays; i++) {
            if (!Double.isNaN(one.at(i))) {
                assertEquals(1.5 * one.at(i), more.at(i), 1e-9 * (1 + one.at(i)));
            }
        }
    }

    @Property(tries = 200)
    void heatsSuperpose(@ForAll int seed, @ForAll @IntRange(min = 2, max = 40) int bays) {
        Wild wild = Wild.of(seed, bays);
        double[] first = wild.bayHeat().clone();
        java.util.Arrays.fill(first, bays / 2, bays, 0);
        double[] second = wild.bayHeat().clone();
        java.util.Arrays.fill(second, 0, bays / 2, 0);
        AirBalance balance = new AirBalance(bays, wild.from(), wild.to());
        AirBalance.Rises a = balance.solve(wild.capacity(), wild.wayHeat(), first, AirBalance.Walls.NONE);
        AirBalance.Rises b = balance.solve(wild.capacity(), new double[wild.from().length], second, AirBalance.Walls.NONE);
        AirBalance.Rises both = wild.rises(1, 1);
        for (int i = 0; i < bays; i++) {
            if (!Double.isNaN(both.at(i))) {
                assertEquals(both.at(i), a.at(i) + b.at(i), 1e-9 * (1 + both.at(i)));
            }
        }
    }
}
