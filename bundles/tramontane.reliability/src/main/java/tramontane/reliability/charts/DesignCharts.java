package tramontane.reliability.charts;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import tramontane.analysis.Chart;
import tramontane.reliability.LifeModel;
import tramontane.reliability.SystemLife;
import tramontane.reliability.system.SystemSurvival;

/** Charts of the life of a design. */
public final class DesignCharts {

    private static final int POINTS = 120;
    private static final String BOUNDS = "bounds of ";
    private static final String WHOLE = "all banks";
    /** Temperatures that life is drawn for at least, K: -10 to 70 °C. */
    private static final double COLDEST = 263.15;
    private static final double WARMEST = 343.15;
    private static final double BESIDE = 10;

    private DesignCharts() {
    }

    /**
     * Survival over the years, of each bank and of the whole equipment, with what is uncertain about it.
     *
     * @param life        what happens when movers fail
     * @param serviceLife how long the equipment is to serve, s
     * @param interval    time between visits at which all movers are exchanged, s
     */
    public static Chart survival(SystemLife life, double serviceLife, Optional<Double> interval) {
        double[] times = new double[POINTS + 1];
        for (int i = 0; i <= POINTS; i++) {
            times[i] = serviceLife * 1.25 * i / POINTS;
        }
        List<LifeCharts.Curve> curves = new ArrayList<>();
        for (SystemLife.Group group : life.groups()) {
            String name = group.place().isEmpty() ? WHOLE : group.place();
            double[] nominal = survival(group.survival(), times, interval);
            double[] lower = nominal.clone();
            double[] upper = nominal.clone();
            for (SystemSurvival corner : group.corners()) {
                double[] other = survival(corner, times, interval);
                for (int i = 0; i < times.length; i++) {
                    lower[i] = Math.min(lower[i], other[i]);
                    upper[i] = Math.max(upper[i], other[i]);
                }
            }
            LifeCharts.Curve curve = LifeCharts.Curve.of(name, times, nominal);
            curves.add(group.corners().isEmpty() ? curve : curve.with(BOUNDS + name, times, lower, upper));
        }
        return LifeCharts.survival("Survival" + (interval.isPresent() ? " with visits" : ""), curves, serviceLife);
    }

    private static double[] survival(SystemSurvival system, double[] times, Optional<Double> interval) {
        return interval.map(visits -> DoubleStream.of(times).map(time -> system.survival(time, visits)).toArray()).orElseGet(() -> system
                .at(DoubleStream.of(times).boxed().toList()).stream().mapToDouble(SystemSurvival.Point::survival).toArray());
    }

    /**
     * Life L10 of a part against the temperature of the air at it.
     *
     * @param part       what the part is called
     * @param model      its life
     * @param speed      at which it turns, rad/s
     * @param conditions where it works, with its life there; other speeds put them beside the curve
     */
    public static Chart temperature(String part, LifeModel model, double speed, List<LifeCharts.Condition> conditions) {
        double[] temperatures = new double[POINTS + 1];
        double from = Math.min(COLDEST, conditions.stream().mapToDouble(LifeCharts.Condition::temperature).min().orElse(COLDEST) - BESIDE);
        double to = Math.max(WARMEST, conditions.stream().mapToDouble(LifeCharts.Condition::temperature).max().orElse(WARMEST) + BESIDE);
        for (int i = 0; i <= POINTS; i++) {
            temperatures[i] = from + (to - from) * i / POINTS;
        }
        double[] nominal = lives(temperatures, temperature -> life(model, model.nominal(), temperature, speed));
        double[] lower = nominal.clone();
        double[] upper = nominal.clone();
        for (LifeModel.Parameters corner : model.corners()) {
            double[] other = lives(temperatures, temperature -> life(model, corner, temperature, speed));
            for (int i = 0; i < temperatures.length; i++) {
                lower[i] = Math.min(lower[i], other[i]);
                upper[i] = Math.max(upper[i], other[i]);
            }
        }
        LifeCharts.Curve curve = LifeCharts.Curve.of(part, temperatures, nominal).with(BOUNDS + part, temperatures, lower, upper);
        OptionalDouble rated = model.life().testedAt().or(model::ratedAt).filter(at -> model.ratedAt().isPresent()).map(OptionalDouble::of).orElse(OptionalDouble.empty());
        return LifeCharts.temperature("Life against temperature, " + part + ", " + model.life().law().word(), "life L10", List.of(curve), rated, conditions);
    }

    private static double life(LifeModel model, LifeModel.Parameters by, double temperature, double speed) {
        return model.at(by, temperature, speed).distribution().life(0.1);
    }

    private static double[] lives(double[] temperatures, DoubleUnaryOperator life) {
        return DoubleStream.of(temperatures).map(life).toArray();
    }
}
