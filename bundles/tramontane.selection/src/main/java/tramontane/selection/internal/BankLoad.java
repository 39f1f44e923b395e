package tramontane.selection.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import tramontane.analysis.Figure;
import tramontane.analysis.OperatingPoint;
import tramontane.physics.Air;
import tramontane.physics.MonotoneCurve;

/** What a bank has to work against in one condition, and what comes of its flow: sampled, and interpolated between. */
final class BankLoad {

    private final List<Point> points;
    /** Pressure over flow: a straight line for a resistance with a linear and a square term. */
    private final MonotoneCurve resistance;
    private final MonotoneCurve density;
    private final MonotoneCurve temperature;
    private final Map<Ask, MonotoneCurve> figures = new HashMap<>();

    /**
     * The design with one flow imposed.
     *
     * @param flow        of the bank at its inlet, m³/s
     * @param pressure    fan static pressure that it takes, Pa
     * @param density     at the bank's inlet, kg/m³
     * @param temperature there, K
     * @param figures     by what asks for it, the worst that counts
     */
    record Point(double flow, double pressure, double density, double temperature, Map<Ask, Figure> figures) {

        Point {
            figures = Map.copyOf(figures);
        }

        static Point of(OperatingPoint.BankPoint bank, Map<Ask, Figure> figures) {
            return new Point(bank.flow(), bank.pressure(), bank.density(), bank.temperature(), figures);
        }
    }

    /** From points at two flows or more, in any order; of those at one flow the first counts. */
    BankLoad(List<Point> sampled) {
        List<Point> sorted = new ArrayList<>();
        sampled.stream().sorted(Comparator.comparingDouble(Point::flow)).forEach(point -> {
            if (sorted.isEmpty() || point.flow() > sorted.getLast().flow()) {
                sorted.add(point);
            }
        });
        points = List.copyOf(sorted);
        resistance = curve(points, point -> point.pressure() / point.flow());
        density = curve(points, Point::density);
        temperature = curve(points, Point::temperature);
        for (Ask ask : points.getFirst().figures().keySet()) {
            if (points.stream().allMatch(point -> point.figures().containsKey(ask))) {
                figures.put(ask, curve(points, point -> point.figures().get(ask).value()));
            }
        }
    }

    private static MonotoneCurve curve(List<Point> points, ToDoubleFunction<Point> value) {
        return MonotoneCurve.of(points.stream().mapToDouble(Point::flow).toArray(), points.stream().mapToDouble(value).toArray());
    }

    /** The points, by rising flow. */
    List<Point> points() {
        return points;
    }

    /** Whether the figure of a requirement is known at all flows. */
    boolean knows(Ask ask) {
        return figures.containsKey(ask);
    }

    /** Fan static pressure that a flow takes, Pa. */
    double pressure(double flow) {
        return flow * resistance.value(held(flow));
    }

    /** Density at the bank's inlet, kg/m³. */
    double density(double flow) {
        return density.value(held(flow));
    }

    /** Temperature at the bank's inlet, K. */
    double temperature(double flow) {
        return temperature.value(held(flow));
    }

    /** Dynamic viscosity at the bank's inlet, Pa s. */
    double viscosity(double flow) {
        return Air.viscosity(temperature(flow));
    }

    /** The figure of a requirement at a flow; empty beyond what was sampled. */
    Optional<Figure> figure(Ask ask, double flow) {
        return Optional.ofNullable(figures.get(ask)).filter(curve -> flow >= curve.firstX() && flow <= curve.lastX()).map(curve -> {
            Point near = points.stream().min(Comparator.comparingDouble(point -> Math.abs(Math.log(point.flow() / flow)))).orElseThrow();
            Figure figure = near.figures().get(ask);
            return Figure.of(figure.kind(), figure.place(), curve.value(held(flow)));
        });
    }

    /** Beyond what was sampled its ends count. */
    private double held(double flow) {
        return Math.max(points.getFirst().flow(), Math.min(points.getLast().flow(), flow));
    }
}
