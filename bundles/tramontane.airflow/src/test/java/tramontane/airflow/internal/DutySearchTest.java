package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import tramontane.airflow.Network;
import tramontane.airflow.NetworkAir;
import tramontane.airflow.NetworkLoad;
import tramontane.airflow.NetworkSolver;
import tramontane.analysis.FlowLaw;

/** One bank of any curve on a square resistance, beside a bank that falls all the way. */
class DutySearchTest {

    private static final double DENSITY = 1.2;
    private static final double MU = 1.8e-5;

    private record Drawn(BankLaw bank, FlowLaw vent, FlowLaw other) {

        NetworkSolver solver() {
            return NetworkSolver.of(new Network(List.of(new Network.Bay("box", 0)), List.of(
                    new Network.Branch("bank", Network.OUTSIDE, 0, bank), new Network.Branch("vent", 0, Network.OUTSIDE, vent),
                    new Network.Branch("other", Network.OUTSIDE, 0, other))));
        }

        DutySearch.Found search() {
            return DutySearch.search(solver(), NetworkLoad.of(NetworkAir.uniform(1, DENSITY, MU)),
                    NetworkSolver.Settings.STANDARD, 0, bank, DENSITY, MU, () -> false);
        }

        /** What the bank gives more than is asked of it, from an independent bisection for the pressure in the box. */
        double excess(double flow) {
            double low = -1e5;
            double high = 1e5;
            for (int i = 0; i < 200; i++) {
                double pressure = (low + high) / 2;
                if (inverse(vent, pressure) - inverse(other, -pressure) > flow) {
                    high = pressure;
                } else {
                    low = pressure;
                }
            }
            return -drop(bank, flow) - low;
        }
    }

    private static double drop(FlowLaw law, double flow) {
        FlowLaw.Drop drop = new FlowLaw.Drop();
        law.at(flow, DENSITY, MU, drop);
        return drop.pressure();
    }

    private static double inverse(FlowLaw law, double drop) {
        double low = -10;
        double high = 10;
        for (int i = 0; i < 100; i++) {
            double flow = (low + high) / 2;
            if (drop(law, flow) > drop) {
                high = flow;
            } else {
                low = flow;
            }
        }
        return low;
    }

    private static Drawn draw(long seed) {
        Random random = new Random(seed);
        double[] flow = new double[6];
        double[] pressure = new double[6];
        for (int i = 0; i < 6; i++) {
            flow[i] = i == 0 ? 0 : flow[i - 1] + 0.002 + 0.01 * random.nextDouble();
            pressure[i] = 5 + 80 * random.nextDouble();
        }
        BankLaw bank = BankLaw.of(Optional.of(MoverCharacteristic.of(
                Cases.part(Cases.curve(Cases.SPEED, DENSITY, flow, pressure, new double[0])), Cases.SPEED)), 1, 1, Map.of());
        FlowLaw other = BankLaw.of(Optional.of(MoverCharacteristic.of(Cases.mover(), Cases.SPEED)), 1, 1, Map.of());
        return new Drawn(bank, LocalLoss.of(2.9, 0.002 + 0.01 * random.nextDouble()), other);
    }

    @Property(tries = 60)
    void everyCrossingIsOneAndTheyTakeTurns(@ForAll long seed) {
        Drawn drawn = draw(seed);
        DutySearch.Found found = drawn.search();
        assertTrue(found.failed().isEmpty());
        assertEquals(1, found.crossings().size() % 2);
        for (int i = 0; i < found.crossings().size(); i++) {
            DutySearch.Crossing crossing = found.crossings().get(i);
            double flow = crossing.solution().flow(0);
            assertEquals(0, drawn.excess(flow), 1e-5);
            assertEquals(i % 2 == 0, crossing.stable());
            assertTrue(i == 0 || flow > found.crossings().get(i - 1).solution().flow(0));
        }
        assertTrue(found.crossings().get(found.reached()).stable());
    }

    @Property(tries = 30)
    void theOneReachedFromRestLiesBehindNoOther(@ForAll long seed) {
        Drawn drawn = draw(seed);
        DutySearch.Found found = drawn.search();
        double reached = found.crossings().get(found.reached()).solution().flow(0);
        double sign = Math.signum(drawn.excess(0));
        assertEquals(sign, Math.signum(reached));
        // all the way from rest to there the bank gives more than is asked, or less all the way
        for (int i = 1; i < 200; i++) {
            assertEquals(sign, Math.signum(drawn.excess(reached * i / 200)));
        }
    }
}
