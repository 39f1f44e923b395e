package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import tramontane.airflow.BankCurve;
import tramontane.analysis.Chart;
import tramontane.analysis.FlowLaw;

/**
 * Follows a bank's curve for a drawing.
 *
 * <p>A bank with one answer at every flow is asked at many flows. Unlike columns with a dip are not: they have a pressure in
 * common, at which each may be on any stretch of its own curve. For each choice of stretches the pressures that all of them reach
 * make a piece of the curve.
 */
public final class BankTrace {

    /** Points of a piece; closer at its ends, where a curve turns. */
    private static final int POINTS = 60;
    /** Points between two measured ones, so that a straight line between them is off by less than a thousandth. */
    private static final int STEPS = 24;
    private static final int MOST_PIECES = 200;
    private static final int HALVINGS = 60;

    private final double density;
    private final double viscosity;
    private final double from;
    private final double to;
    private final FlowLaw.Drop drop = new FlowLaw.Drop();
    private final List<Chart.Points> pieces = new ArrayList<>();
    private final List<Chart.Points> powers = new ArrayList<>();
    private boolean powered = true;

    private BankTrace(double density, double viscosity, double from, double to) {
        this.density = density;
        this.viscosity = viscosity;
        this.from = from;
        this.to = to;
    }

    /**
     * The curve of a bank.
     *
     * @param law       the bank
     * @param density   at its inlet, kg/m³
     * @param viscosity dynamic viscosity there, Pa s
     * @param from      least flow, m³/s
     * @param to        largest flow, m³/s
     */
    public static BankCurve of(BankLaw law, double density, double viscosity, double from, double to) {
        BankTrace trace = new BankTrace(density, viscosity, from, to);
        if (law.defined()) {
            trace.follow(law);
        } else {
            List<BankLaw> parts = law.parts(false).laws();
            trace.choose(parts, parts.stream().map(trace::stretches).toList(), new ArrayList<>());
        }
        return trace.curve(trace.stallFlow(law));
    }

    /**
     * The piece of a bank's curve on which its columns are that do not share its flow evenly.
     *
     * @param law   the bank
     * @param flows flow of each column, m³/s
     * @return as of the whole curve; without stall flow
     */
    public static BankCurve along(BankLaw law, double[] flows, double density, double viscosity, double from, double to) {
        BankTrace trace = new BankTrace(density, viscosity, from, to);
        BankLaw.Parts parts = law.parts(true);
        List<Segment> chosen = new ArrayList<>();
        for (int p = 0; p < parts.laws().size(); p++) {
            int part = p;
            double flow = IntStream.range(0, flows.length).filter(c -> parts.partOf()[c] == part).mapToDouble(c -> flows[c]).sum();
            chosen.add(Segment.nearest(trace.stretches(parts.laws().get(p)), flow));
        }
        trace.piece(parts.laws(), chosen);
        return trace.curve(OptionalDouble.empty());
    }

    private BankCurve curve(OptionalDouble stallFlow) {
        return new BankCurve(pieces, powered && !powers.isEmpty() ? Optional.of(powers) : Optional.empty(), stallFlow);
    }

    private List<Segment> stretches(BankLaw part) {
        return part.increasing() ? List.of(new Segment(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, true))
                : Segment.of(part, density, viscosity);
    }

    private void follow(BankLaw law) {
        DoubleStream inside = law.mover().isEmpty() ? DoubleStream.empty() : IntStream.range(0, law.mover().get().points())
                .mapToDouble(i -> law.mover().get().flow(i) * law.width());
        double[] knots = DoubleStream.concat(DoubleStream.of(from, Math.clamp(0, from, to), to),
                inside.filter(flow -> flow > from && flow < to)).sorted().distinct().toArray();
        int steps = STEPS;
        double[] flows = IntStream.rangeClosed(0, (knots.length - 1) * steps).mapToDouble(i -> {
            int k = Math.min(i / steps, knots.length - 2);
            return knots.length == 1 ? knots[0] : knots[k] + (knots[k + 1] - knots[k]) * (i - k * steps) / steps;
        }).toArray();
        double[] pressures = Arrays.stream(flows).map(flow -> -dropAt(law, flow)).toArray();
        add(flows, pressures, Arrays.stream(flows).map(flow -> power(law, flow)).toArray());
    }

    private double dropAt(BankLaw law, double flow) {
        law.at(flow, density, viscosity, drop);
        return drop.pressure();
    }

    private double power(BankLaw law, double flow) {
        OptionalDouble power = law.power(flow, density, viscosity);
        powered &= power.isPresent();
        return power.orElse(0);
    }

    private void choose(List<BankLaw> parts, List<List<Segment>> stretches, List<Segment> chosen) {
        if (chosen.size() == parts.size()) {
            piece(parts, chosen);
            return;
        }
        for (Segment segment : stretches.get(chosen.size())) {
            if (pieces.size() < MOST_PIECES) {
                chosen.add(segment);
                choose(parts, stretches, chosen);
                chosen.removeLast();
            }
        }
    }

    /** The pressures that all parts reach on their stretches, and the flows there. */
    private void piece(List<BankLaw> parts, List<Segment> chosen) {
        double far = 2 * Math.max(Math.abs(from), Math.abs(to));
        double low = Double.NEGATIVE_INFINITY;
        double high = Double.POSITIVE_INFINITY;
        for (int i = 0; i < parts.size(); i++) {
            double one = dropAt(parts.get(i), Math.max(chosen.get(i).from(), -far));
            double other = dropAt(parts.get(i), Math.min(chosen.get(i).to(), far));
            low = Math.max(low, Math.min(one, other));
            high = Math.min(high, Math.max(one, other));
        }
        if (!(low < high)) {
            return;
        }
        List<double[]> points = new ArrayList<>();
        for (double common : pressures(parts, chosen, far, low, high)) {
            double flow = 0;
            double power = 0;
            for (int i = 0; i < parts.size(); i++) {
                double each = flowAt(parts.get(i), common, Math.max(chosen.get(i).from(), -far), Math.min(chosen.get(i).to(), far));
                flow += each;
                power += power(parts.get(i), each);
            }
            if (flow >= from && flow <= to) {
                points.add(new double[] {flow, -common, power});
            }
        }
        if (points.size() > 1) {
            add(points.stream().mapToDouble(point -> point[0]).toArray(), points.stream().mapToDouble(point -> point[1]).toArray(),
                    points.stream().mapToDouble(point -> point[2]).toArray());
        }
    }

    /** Drops at which to look, between two of them: at even flows of each part, and close to the ends, where a curve turns. */
    private double[] pressures(List<BankLaw> parts, List<Segment> chosen, double far, double low, double high) {
        DoubleStream.Builder all = DoubleStream.builder();
        for (int k = 0; k <= POINTS; k++) {
            all.add((low + high) / 2 - (high - low) / 2 * Math.cos(Math.PI * k / POINTS));
        }
        for (int i = 0; i < parts.size(); i++) {
            double begin = Math.max(chosen.get(i).from(), -far);
            double end = Math.min(chosen.get(i).to(), far);
            BankLaw part = parts.get(i);
            DoubleStream knots = part.mover().isEmpty() ? IntStream.rangeClosed(0, 4 * POINTS).mapToDouble(k -> begin + (end - begin) * k / (4 * POINTS))
                    : Arrays.stream(Segment.places(part));
            knots.filter(flow -> flow > begin && flow < end).map(flow -> dropAt(part, flow)).filter(each -> each > low && each < high)
                    .forEach(all::add);
        }
        return all.build().sorted().toArray();
    }

    /** The flow at which a part has a drop, on a stretch on which that falls or rises all the way; by halving. */
    private double flowAt(BankLaw part, double wanted, double begin, double end) {
        double low = begin;
        double high = end;
        boolean rises = dropAt(part, end) > dropAt(part, begin);
        for (int i = 0; i < HALVINGS; i++) {
            double middle = low + (high - low) / 2;
            if (dropAt(part, middle) < wanted == rises) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low + (high - low) / 2;
    }

    private void add(double[] flows, double[] pressures, double[] power) {
        pieces.add(Chart.Points.of(flows, pressures));
        powers.add(Chart.Points.of(flows, power));
    }

    /** The flow of the bank with all its running movers at their peak. */
    private OptionalDouble stallFlow(BankLaw law) {
        OptionalDouble peak = law.mover().map(MoverCharacteristic::peakFlow).orElse(OptionalDouble.empty());
        if (peak.isEmpty() || law.increasing()) {
            return OptionalDouble.empty();
        }
        if (law.defined()) {
            return OptionalDouble.of(peak.getAsDouble() * law.width());
        }
        List<BankLaw> parts = law.parts(false).laws();
        List<BankLaw> running = parts.stream().filter(part -> !part.increasing()).toList();
        if (running.size() != 1) {
            return OptionalDouble.empty();
        }
        double flow = peak.getAsDouble() * running.getFirst().width();
        double common = dropAt(running.getFirst(), flow);
        double far = 2 * Math.max(Math.abs(from), Math.abs(to));
        return OptionalDouble.of(flow + parts.stream().filter(part -> part != running.getFirst())
                .mapToDouble(part -> flowAt(part, common, -far, far)).sum());
    }
}
