package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.List;
import tramontane.analysis.FlowLaw;

/**
 * A stretch of flow on which a bank's curve falls, or rises, all the way.
 *
 * @param from    where it begins, m³/s; minus infinity for the first
 * @param to      where it ends, m³/s; infinity for the last
 * @param falling whether the bank's pressure falls there with flow
 */
public record Segment(double from, double to, boolean falling) {

    /** Looks between two measured points: a curve of third degree turns twice between them at most. */
    private static final int STEPS = 24;

    /** Whether a flow lies in it, to rounding over a scale of flows. */
    public boolean holds(double flow, double scale) {
        return flow >= from - 1e-9 * scale && flow <= to + 1e-9 * scale;
    }

    /**
     * The stretches of a bank's curve by rising flow; the first and the last fall.
     *
     * @param law       the bank's law
     * @param density   kg/m³
     * @param viscosity Pa s
     */
    public static List<Segment> of(BankLaw law, double density, double viscosity) {
        double[] places = places(law);
        FlowLaw.Drop drop = new FlowLaw.Drop();
        List<Segment> segments = new ArrayList<>();
        double begin = Double.NEGATIVE_INFINITY;
        boolean falling = true;
        for (int i = 1; i < places.length; i++) {
            boolean falls = falls(law, places[i], density, viscosity, drop);
            if (falls != falling) {
                double low = places[i - 1];
                double high = places[i];
                for (int k = 0; k < 100 && low < high; k++) {
                    double middle = low + (high - low) / 2;
                    if (middle == low || middle == high) {
                        break;
                    }
                    if (falls(law, middle, density, viscosity, drop) == falling) {
                        low = middle;
                    } else {
                        high = middle;
                    }
                }
                segments.add(new Segment(begin, low, falling));
                begin = low;
                falling = falls;
            }
        }
        segments.add(new Segment(begin, Double.POSITIVE_INFINITY, true));
        return List.copyOf(segments);
    }

    private static boolean falls(BankLaw law, double flow, double density, double viscosity, FlowLaw.Drop drop) {
        law.at(flow, density, viscosity, drop);
        return drop.slope() >= 0;
    }

    /** Flows at which to look, m³/s by rising flow: rest, the measured flows, steps between them, and some way backwards. */
    static double[] places(BankLaw law) {
        MoverCharacteristic mover = law.mover().orElseThrow();
        double largest = mover.lastFlow() * law.width();
        // a curve that rises from rest goes on falling a little way backwards
        int points = mover.points() + (mover.flow(0) > 0 ? 1 : 0);
        double[] places = new double[STEPS * points + 1];
        int n = 0;
        double before = -2 * largest;
        for (int i = 0; i < points; i++) {
            double next = i == 0 ? 0 : mover.flow(mover.flow(0) > 0 ? i - 1 : i) * law.width();
            for (int k = 0; k < STEPS; k++) {
                places[n++] = before + (next - before) * k / STEPS;
            }
            before = next;
        }
        places[n] = before;
        return places;
    }
}
