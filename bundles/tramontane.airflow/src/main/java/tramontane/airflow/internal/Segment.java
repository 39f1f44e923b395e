package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
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
    private static final int MOST_BEYOND = 60;

    /** Whether a flow lies in it, to rounding over a scale of flows. */
    public boolean holds(double flow, double scale) {
        return flow >= from - 1e-9 * scale && flow <= to + 1e-9 * scale;
    }

    /** Of stretches that follow each other the one that holds a flow; at the place where two meet the falling one. */
    public static Segment nearest(List<Segment> stretches, double flow) {
        Segment found = stretches.getFirst();
        for (Segment each : stretches) {
            if (flow > each.from || flow == each.from && each.falling) {
                found = each;
            }
        }
        return found;
    }

    /**
     * The stretches of a bank's curve by rising flow; the first and the last fall.
     *
     * @param law       the bank's law
     * @param density   kg/m³
     * @param viscosity Pa s
     */
    public static List<Segment> of(BankLaw law, double density, double viscosity) {
        double[] places = withEnds(law, density, viscosity);
        FlowLaw.Drop drop = new FlowLaw.Drop();
        List<Segment> segments = new ArrayList<>();
        double begin = Double.NEGATIVE_INFINITY;
        boolean falling = true;
        for (int i = 1; i < places.length; i++) {
            boolean falls = falls(law, places[i], density, viscosity, drop);
            if (falls != falling) {
                double end = turn(law, places[i - 1], places[i], falling, density, viscosity, drop);
                segments.add(new Segment(begin, end, falling));
                begin = end;
                falling = falls;
            }
        }
        segments.add(new Segment(begin, Double.POSITIVE_INFINITY, true));
        return List.copyOf(segments);
    }

    /** The places with others before and behind, so that the curve falls at both ends; where it goes on as a resistance it does. */
    private static double[] withEnds(BankLaw law, double density, double viscosity) {
        double[] places = places(law);
        FlowLaw.Drop drop = new FlowLaw.Drop();
        List<Double> before = new ArrayList<>();
        List<Double> behind = new ArrayList<>();
        double step = places[places.length - 1];
        for (double at = places[0]; before.size() < MOST_BEYOND && !falls(law, at, density, viscosity, drop); step *= 2) {
            at -= step;
            before.addFirst(at);
        }
        step = places[places.length - 1] / STEPS;
        for (double at = places[places.length - 1]; behind.size() < MOST_BEYOND && !falls(law, at, density, viscosity, drop);
                step *= 2) {
            at += step;
            behind.add(at);
        }
        return DoubleStream.concat(DoubleStream.concat(before.stream().mapToDouble(Double::doubleValue),
                DoubleStream.of(places)), behind.stream().mapToDouble(Double::doubleValue)).toArray();
    }

    /** Where between two flows the curve turns. */
    private static double turn(BankLaw law, double from, double to, boolean falling, double density, double viscosity,
            FlowLaw.Drop drop) {
        double low = from;
        double high = to;
        while (true) {
            double middle = low + (high - low) / 2;
            if (!(middle > low && middle < high)) {
                return low;
            }
            if (falls(law, middle, density, viscosity, drop) == falling) {
                low = middle;
            } else {
                high = middle;
            }
        }
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
