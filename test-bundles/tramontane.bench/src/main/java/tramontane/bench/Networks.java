package tramontane.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import tramontane.airflow.Network;
import tramontane.analysis.FlowLaw;
import tramontane.physics.MonotoneCurve;
import tramontane.physics.Resistance;

/** The networks that are solved. */
final class Networks {

    private Networks() {
    }

    /** A local loss as openings and grilles have it: square, and linear in creeping flow. */
    private record Opening(double loss, double area, double diameter) implements FlowLaw {

        static Opening of(double loss, double area) {
            return new Opening(loss, area, Math.sqrt(4 * area / Math.PI));
        }

        @Override
        public void at(double flow, double density, double viscosity, Drop drop) {
            double coefficient = loss * density / (2 * area * area);
            double creeping = Resistance.TRANSITION_REYNOLDS * viscosity * area / (density * diameter);
            drop.set(Resistance.drop(flow, coefficient, creeping), Resistance.slope(flow, coefficient, creeping));
        }
    }

    /** A bank with a measured curve, m³/s and Pa, in air of 1.2 kg/m³. */
    private record Bank(MonotoneCurve curve) implements FlowLaw {

        static Bank of(double flow, double pressure) {
            double[] q = {0, 0.15, 0.3, 0.45, 0.6, 0.75, 0.9, 1};
            double[] p = {1, 0.93, 0.83, 0.76, 0.67, 0.5, 0.22, 0};
            for (int i = 0; i < q.length; i++) {
                q[i] *= flow;
                p[i] *= pressure;
            }
            return new Bank(MonotoneCurve.of(q, p));
        }

        @Override
        public void at(double flow, double density, double viscosity, Drop drop) {
            double scale = density / 1.2;
            drop.set(-scale * curve.value(flow), -scale * curve.slope(flow));
        }
    }

    /** Six passages in a row between outside and outside, one of them a bank. */
    static Network chain() {
        List<Network.Branch> branches = new ArrayList<>();
        for (int e = 0; e < 6; e++) {
            FlowLaw law = e == 2 ? Bank.of(0.06, 120) : Opening.of(2.9 - 0.2 * e, 0.004 + 0.0005 * e);
            branches.add(new Network.Branch("passage " + e, e - 1, e == 5 ? Network.OUTSIDE : e, law));
        }
        return new Network(bays(5), branches);
    }

    /**
     * Bays in a square, neighbours joined by openings of all sizes, one in about fifty open to the outside; a bank blows into
     * one corner and another sucks at the opposite one.
     */
    static Network grid(int side) {
        Random random = new Random(20260101);
        List<Network.Branch> branches = new ArrayList<>();
        for (int i = 0; i < side * side; i++) {
            if (i % side > 0) {
                branches.add(opening(i - 1, i, random));
            }
            if (i >= side) {
                branches.add(opening(i - side, i, random));
            }
            if (random.nextInt(50) == 0) {
                branches.add(opening(i, Network.OUTSIDE, random));
            }
        }
        branches.add(new Network.Branch("blowing", Network.OUTSIDE, 0, Bank.of(0.06, 120)));
        branches.add(new Network.Branch("sucking", side * side - 1, Network.OUTSIDE, Bank.of(0.05, 100)));
        return new Network(bays(side * side), branches);
    }

    private static Network.Branch opening(int from, int to, Random random) {
        double area = 0.002 * Math.exp(0.5 * random.nextGaussian());
        return new Network.Branch(from + " to " + to, from, to, Opening.of(1.5 + 1.5 * random.nextDouble(), area));
    }

    private static List<Network.Bay> bays(int count) {
        List<Network.Bay> bays = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            bays.add(new Network.Bay("bay " + i, 0));
        }
        return bays;
    }
}
