package tramontane.acoustics.internal;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tramontane.model.AirMover;
import tramontane.model.MoverCurve;
import tramontane.model.Quantity;
import tramontane.physics.MonotoneCurve;

/**
 * How far from its best point a part works: its curve by flow coefficient, flow over speed, so that like points of all speeds are one.
 * The flow coefficient is that of the part's own size, m³/s per rad/s.
 */
final class Characteristic {

    private static final int STEPS = 200;

    private final MonotoneCurve pressure; // over (rad/s)²
    private final Optional<MonotoneCurve> power; // over (rad/s)³
    private final double free;
    private final double best;
    private final double peak;

    private Characteristic(MonotoneCurve pressure, Optional<MonotoneCurve> power) {
        this.pressure = pressure;
        this.power = power;
        double last = pressure.lastX();
        double end = last;
        for (int i = STEPS; i > 0 && pressure.value(end) < 0; i--) {
            end = last * i / STEPS;
        }
        free = end;
        double highest = 0;
        double at = 0;
        for (int i = 0; i <= STEPS; i++) {
            double flow = end * i / STEPS;
            double efficiency = product(flow);
            if (efficiency > highest) {
                highest = efficiency;
                at = flow;
            }
        }
        best = at;
        peak = highest;
    }

    /**
     * That of a part at a speed: of its curve at the nearest speed.
     *
     * @return empty where the part has no curve, or no speed
     */
    static Optional<Characteristic> of(AirMover part, double speed) {
        return part.curves().stream().filter(curve -> speed(part, curve).isPresent() && curve.flow().size() >= 2
                        && curve.flow().size() == curve.pressure().size() && curve.flow().si().getLast() > 0)
                .min(Comparator.comparingDouble(curve -> Math.abs(Math.log(speed(part, curve).get() / speed))))
                .map(curve -> of(part, curve));
    }

    private static Characteristic of(AirMover part, MoverCurve curve) {
        double speed = speed(part, curve).orElseThrow();
        double size = curve.rotorDiameter().flatMap(measured -> part.rotorDiameter().map(own -> own.si() / measured.si())).orElse(1.0);
        double[] flow = curve.flow().toArray();
        double[] pressure = curve.pressure().toArray();
        for (int i = 0; i < flow.length; i++) {
            flow[i] *= size * size * size / speed;
            pressure[i] /= speed * speed;
        }
        Optional<MonotoneCurve> power = curve.power().filter(some -> some.size() == flow.length
                && some.si().stream().allMatch(watts -> watts > 0)).map(some -> MonotoneCurve.of(flow, some.toArray()));
        return new Characteristic(MonotoneCurve.of(flow, pressure), power);
    }

    /**
     * The flow coefficient from which on like movers side by side share a flow evenly: where the last fall of the pressure gets below
     * all that lies left of it. Flows at any higher pressure are smaller then, so that no others come to the same sum.
     *
     * @return 0 where the pressure falls all along; infinite where nothing says so
     */
    static double even(AirMover part) {
        double most = 0;
        for (MoverCurve curve : part.curves()) {
            List<Double> flow = curve.flow().si();
            List<Double> pressure = curve.pressure().si();
            if (speed(part, curve).isEmpty() || flow.isEmpty() || flow.size() != pressure.size()) {
                return Double.POSITIVE_INFINITY;
            }
            int peak = pressure.size() - 1;
            while (peak > 0 && pressure.get(peak - 1) >= pressure.get(peak)) {
                peak--;
            }
            if (peak > 0) {
                double lowest = pressure.subList(0, peak).stream().mapToDouble(Double::doubleValue).min().orElseThrow();
                int at = peak;
                while (at < pressure.size() && pressure.get(at) >= lowest) {
                    at++;
                }
                double size = curve.rotorDiameter().flatMap(measured -> part.rotorDiameter().map(own -> own.si() / measured.si())).orElse(1.0);
                most = Math.max(most, at == flow.size() ? Double.POSITIVE_INFINITY : flow.get(at) * size * size * size / speed(part, curve).orElseThrow());
            }
        }
        return most;
    }

    private static Optional<Double> speed(AirMover part, MoverCurve curve) {
        return curve.speed().map(Quantity::si).or(part::ratedSpeedSi);
    }

    /** Static efficiency but for a factor; flow times pressure where no power is stated. */
    private double product(double flow) {
        return Math.max(0, flow * pressure.value(flow)) / power.map(watts -> watts.value(flow)).orElse(1.0);
    }

    /** Flow coefficient without pressure. */
    double free() {
        return free;
    }

    /** Flow coefficient where the static efficiency is highest. */
    double best() {
        return best;
    }

    /** Static efficiency over its highest, 0 to 1; 0 at no flow. */
    double efficiency(double flow) {
        return peak > 0 ? Math.clamp(product(Math.max(0, flow)) / peak, 0, 1) : 1;
    }
}
