package tramontane.reliability.charts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import tramontane.analysis.Chart;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;
import tramontane.reliability.LifeModel;
import tramontane.reliability.LifeState;
import tramontane.reliability.LifeState.BankState;
import tramontane.reliability.LifeState.MoverState;
import tramontane.reliability.MoverLife;
import tramontane.reliability.SystemLife;
import tramontane.reliability.bearing.SmallMotor;
import tramontane.reliability.system.SystemSurvival;

/** Charts of the life of a design. */
public final class DesignCharts {

    private static final int POINTS = 120;
    private static final String BOUNDS = "bounds of ";
    private static final String WHOLE = "all banks";
    /** Degrees drawn on either side of what occurs, K. */
    private static final double BESIDE = 10;
    private static final double TENTH = 0.1;
    /** Kelvin, and share of speed, within which cases are alike. */
    private static final double ALIKE = 0.01;

    private DesignCharts() {
    }

    /**
     * Survival over the years, of each bank and of the whole equipment, with what is uncertain about it.
     *
     * @param life        what happens when movers fail
     * @param serviceLife how long the equipment is to serve, s
     */
    public static Chart survival(SystemLife life, double serviceLife) {
        double[] times = new double[POINTS + 1];
        for (int i = 0; i <= POINTS; i++) {
            times[i] = serviceLife * 1.25 * i / POINTS;
        }
        List<LifeCharts.Curve> curves = new ArrayList<>();
        for (SystemLife.Group group : life.groups()) {
            String name = group.place().isEmpty() ? WHOLE : group.place();
            double[] nominal = survival(group.survival(), times, life.interval());
            double[] lower = nominal.clone();
            double[] upper = nominal.clone();
            for (SystemSurvival corner : group.corners()) {
                widen(survival(corner, times, life.interval()), lower, upper);
            }
            LifeCharts.Curve curve = LifeCharts.Curve.of(name, times, nominal);
            curves.add(group.corners().isEmpty() ? curve : curve.with(BOUNDS + name, times, lower, upper));
        }
        return LifeCharts.survival("Survival" + (life.interval().isPresent() ? " with visits" : ""), curves, serviceLife);
    }

    private static double[] survival(SystemSurvival system, double[] times, Optional<Double> interval) {
        return interval.map(visits -> DoubleStream.of(times).map(time -> system.survival(time, visits)).toArray()).orElseGet(() -> system
                .at(DoubleStream.of(times).boxed().toList()).stream().mapToDouble(SystemSurvival.Point::survival).toArray());
    }

    /** A mover in a case. */
    private record Placed(String caseId, BankState bank, MoverState mover) {
    }

    /**
     * Life L10 of each part against the temperature of the air at it, with a mark for each case; of cases that are alike, such as which one of
     * six like movers has failed, for the first. Empty where no mover of a known life runs.
     *
     * @param title  what it shows
     * @param states lives by the id of the case
     */
    public static Optional<Chart> temperature(String title, Map<String, LifeState> states) {
        List<Placed> placed = new ArrayList<>();
        states.forEach((caseId, state) -> state.banks().forEach(bank -> bank.worst().ifPresent(mover -> add(placed, new Placed(caseId, bank, mover)))));
        if (placed.isEmpty()) {
            return Optional.empty();
        }
        Map<String, Placed> parts = new LinkedHashMap<>();
        placed.forEach(each -> parts.putIfAbsent(each.bank().part(), each));
        double coldest = placed.stream().mapToDouble(each -> each.mover().temperature()).min().orElseThrow();
        double warmest = placed.stream().mapToDouble(each -> each.mover().temperature()).max().orElseThrow();
        OptionalDouble rated = parts.values().stream().flatMap(each -> known(each.bank().model()).stream()).mapToDouble(each -> each).min();
        double from = Math.min(coldest, rated.orElse(coldest)) - BESIDE;
        double to = Math.max(warmest, rated.orElse(warmest)) + BESIDE;
        List<LifeCharts.Curve> curves = parts.values().stream().map(each -> curve(each, from, to)).toList();
        boolean several = placed.stream().map(each -> each.bank().bank()).distinct().count() > 1;
        List<LifeCharts.Condition> conditions = placed.stream().map(each -> new LifeCharts.Condition(each.caseId() + (several ? ", " + each.bank().bank() : ""),
                each.mover().temperature(), each.mover().spread().value(lives -> lives.life(TENTH)))).sorted(Comparator.comparingDouble(
                        LifeCharts.Condition::temperature)).toList();
        return Optional.of(LifeCharts.temperature(title, "life L10", curves, rated, conditions));
    }

    private static void add(List<Placed> placed, Placed next) {
        if (placed.stream().noneMatch(each -> each.bank().bank().equals(next.bank().bank()) && Math.abs(each.mover().temperature()
                - next.mover().temperature()) < ALIKE && Math.abs(each.mover().speed() / next.mover().speed() - 1) < ALIKE)) {
            placed.add(next);
        }
    }

    /** The temperature below which a life is extrapolated. */
    private static Optional<Double> known(LifeModel model) {
        return model.ratedAt().map(at -> model.life().testedAt().orElse(at));
    }

    /** A part at the speed of the first case that it is met in. */
    private static LifeCharts.Curve curve(Placed at, double from, double to) {
        LifeModel model = at.bank().model();
        double speed = at.mover().speed();
        boolean handbook = model.life().law() == MoverLife.Law.HANDBOOK;
        double low = handbook ? Math.max(from, SmallMotor.LOWEST) : from;
        double high = handbook ? Math.min(to, SmallMotor.HIGHEST) : to;
        double[] temperatures = IntStream.rangeClosed(0, POINTS).mapToDouble(i -> low + (high - low) * i / POINTS).toArray();
        double[] nominal = lives(model, model.nominal(), temperatures, speed);
        String name = at.bank().part() + " at " + Units.format(speed, QuantityKind.ROTATIONAL_SPEED, UnitSystem.METRIC, 4);
        LifeCharts.Curve curve = LifeCharts.Curve.of(name, temperatures, nominal);
        if (model.corners().size() < 2) {
            return curve;
        }
        double[] lower = nominal.clone();
        double[] upper = nominal.clone();
        model.corners().forEach(corner -> widen(lives(model, corner, temperatures, speed), lower, upper));
        return curve.with(BOUNDS + at.bank().part(), temperatures, lower, upper);
    }

    private static double[] lives(LifeModel model, LifeModel.Parameters by, double[] temperatures, double speed) {
        return DoubleStream.of(temperatures).map(temperature -> model.at(by, temperature, speed).distribution().life(TENTH)).toArray();
    }

    private static void widen(double[] values, double[] lower, double[] upper) {
        for (int i = 0; i < values.length; i++) {
            lower[i] = Math.min(lower[i], values[i]);
            upper[i] = Math.max(upper[i], values[i]);
        }
    }
}
