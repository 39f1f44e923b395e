package tramontane.reliability.charts;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import tramontane.analysis.Chart;
import tramontane.analysis.Chart.Axis;
import tramontane.analysis.Chart.Band;
import tramontane.analysis.Chart.Extent;
import tramontane.analysis.Chart.Look;
import tramontane.analysis.Chart.Mark;
import tramontane.analysis.Chart.Points;
import tramontane.analysis.Chart.Region;
import tramontane.analysis.Chart.Role;
import tramontane.analysis.Chart.Scale;
import tramontane.analysis.Chart.Series;
import tramontane.analysis.Chart.Shape;
import tramontane.analysis.Chart.Style;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Unit;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;
import tramontane.reliability.statistics.LifeDistribution;

/** Charts of lives: what was observed and the distributions through it, survival over the years, life against temperature. */
public final class LifeCharts {

    /** Share failed by the characteristic life of a Weibull or exponential distribution. */
    public static final double CHARACTERISTIC = -Math.expm1(-1);

    private static final double TENTH = 0.1;
    /** Least and most of a fitted line, shares failed. */
    private static final double FIRST = 0.01;
    private static final double LAST = 0.99;
    private static final int STEPS = 100;
    private static final Unit YEAR = Units.of(QuantityKind.TIME).stream().filter(unit -> unit.symbol().equals("year")).findFirst().orElseThrow();
    /** Above so many years time is in years. */
    private static final double IN_YEARS = 3;

    private LifeCharts() {
    }

    /**
     * Units of a test that failed, each at the share of all that had failed by then.
     *
     * @param name   what they are, as the legend says it
     * @param points times, s, and shares failed
     */
    public record Observed(String name, Points points) {
        public Observed {
            Objects.requireNonNull(name);
            Objects.requireNonNull(points);
        }

        /**
         * From arrays.
         *
         * @param times  s
         * @param failed shares, as many
         */
        public static Observed of(String name, double[] times, double[] failed) {
            return new Observed(name, Points.of(times, failed));
        }
    }

    /**
     * A distribution fitted to what was observed.
     *
     * @param name         what it is, as the legend says it
     * @param distribution of times in s
     * @param bounds       between which it lies; empty where nobody knows
     */
    public record Fit(String name, LifeDistribution distribution, Optional<Bounds> bounds) {
        public Fit {
            Objects.requireNonNull(name);
            Objects.requireNonNull(distribution);
            Objects.requireNonNull(bounds);
        }

        /** A fit without bounds. */
        public Fit(String name, LifeDistribution distribution) {
            this(name, distribution, Optional.empty());
        }

        /**
         * This fit with bounds of its times.
         *
         * @param of     what they are, as the legend says it: confidence and sides
         * @param failed shares
         * @param lower  least time by which so many have failed, s, finite
         * @param upper  most time, s, finite
         */
        public Fit with(String of, double[] failed, double[] lower, double[] upper) {
            // at a time the fewest have failed where lives are longest
            return new Fit(name, distribution, Optional.of(new Bounds(of, Points.of(upper, failed), Points.of(lower, failed))));
        }
    }

    /**
     * A curve over time or temperature.
     *
     * @param name   what it is, as the legend says it
     * @param points two or more, rising along the axis below
     * @param bounds between which it lies; empty where nobody knows
     */
    public record Curve(String name, Points points, Optional<Bounds> bounds) {
        public Curve {
            Objects.requireNonNull(name);
            Objects.requireNonNull(bounds);
            if (points.size() < 2 || !points.rising()) {
                throw new IllegalArgumentException("curve " + name + " needs two points or more that rise along the axis below");
            }
        }

        /**
         * From arrays.
         *
         * @param x along the axis below, SI
         * @param y upwards, SI, as many
         */
        public static Curve of(String name, double[] x, double[] y) {
            return new Curve(name, Points.of(x, y), Optional.empty());
        }

        /**
         * This curve with bounds.
         *
         * @param of    what they are, as the legend says it: confidence and sides
         * @param x     along the axis below, SI
         * @param lower least value, SI
         * @param upper most value, SI
         */
        public Curve with(String of, double[] x, double[] lower, double[] upper) {
            return new Curve(name, points, Optional.of(new Bounds(of, Points.of(x, lower), Points.of(x, upper))));
        }
    }

    /**
     * Bounds of a curve.
     *
     * @param name  what they are, as the legend says it
     * @param lower the lower edge
     * @param upper the upper edge
     */
    public record Bounds(String name, Points lower, Points upper) {
        public Bounds {
            Objects.requireNonNull(name);
            Objects.requireNonNull(lower);
            Objects.requireNonNull(upper);
        }

        private Band band(int colour) {
            return new Band(name, lower, upper, colour);
        }
    }

    /**
     * Life in a condition.
     *
     * @param name        of the condition
     * @param temperature of the air, K
     * @param life        s, above zero
     */
    public record Condition(String name, double temperature, double life) {
    }

    /**
     * A probability plot: shares failed against time, on the scales on which the distribution is a straight line. What was observed
     * are signs, distributions are lines from 1 % (exponential: 0) to 99 % and as far as there are signs, each with marks at L10 and at
     * 63.2 %.
     *
     * @param title    what it shows
     * @param scale    of shares: {@link Scale#WEIBULL} or {@link Scale#NORMAL}, both with logarithmic time, or
     *                 {@link Scale#EXPONENTIAL} with linear time
     * @param observed what was observed; shares of 0 and 1 are left out where the scale cannot show them
     * @param fits     distributions; one of the same place in its list as what was observed has its colour
     */
    public static Chart probability(String title, Scale scale, List<Observed> observed, List<Fit> fits) {
        if (!scale.ofShares()) {
            throw new IllegalArgumentException("a probability plot has a scale of shares, got " + scale);
        }
        Axis time = new Axis("time", QuantityKind.TIME, scale == Scale.EXPONENTIAL ? Scale.LINEAR : Scale.LOG);
        Chart chart = Chart.of(title, time, new Axis("failed", QuantityKind.FRACTION, scale));
        double[] shares = observed.stream().flatMapToDouble(each -> each.points().ys()).filter(scale::shows).toArray();
        double[] seen = steps(scale, scale == Scale.EXPONENTIAL ? 0 : Math.min(FIRST, positive(shares)), Math.max(LAST, Arrays.stream(shares).max().orElse(LAST)));
        for (int i = 0; i < fits.size(); i++) {
            Fit fit = fits.get(i);
            if (fit.bounds().isPresent()) {
                chart = chart.with(fit.bounds().get().band(i));
            }
            chart = chart.with(new Series(fit.name(), Role.CURVE, new Look(style(i), i, false),
                    Points.of(Arrays.stream(seen).map(fit.distribution()::life).toArray(), seen)));
        }
        for (int i = 0; i < observed.size(); i++) {
            chart = chart.with(new Series(observed.get(i).name(), Role.SCATTER, Look.marks(i, sign(i)), observed.get(i).points()));
        }
        for (int i = 0; i < fits.size(); i++) {
            LifeDistribution distribution = fits.get(i).distribution();
            String of = fits.size() == 1 ? "" : ", " + fits.get(i).name();
            chart = chart.with(new Mark("63.2 %" + of, distribution.life(CHARACTERISTIC), CHARACTERISTIC, Shape.RING, i))
                    .with(new Mark("L10" + of, distribution.life(TENTH), TENTH, Shape.DIAMOND, i));
        }
        return chart;
    }

    private static double positive(double[] shares) {
        return Arrays.stream(shares).filter(share -> share > 0).min().orElse(FIRST);
    }

    private static double[] steps(Scale scale, double from, double to) {
        Extent all = new Extent(from, to);
        return IntStream.rangeClosed(0, STEPS).mapToDouble(i -> i == 0 ? from : i == STEPS ? to : scale.at(all, i / (double) STEPS)).toArray();
    }

    /**
     * Survival over time: the share still running, with marks at the end of the mission. Time is in years where it goes beyond three.
     *
     * @param title   what it shows
     * @param curves  over time, s, shares that survive; stairs have two points at each step
     * @param mission how long they must last, s, above zero
     */
    public static Chart survival(String title, List<Curve> curves, double mission) {
        if (!(mission > 0) || !Double.isFinite(mission)) {
            throw new IllegalArgumentException("a mission has a length above zero, got " + mission + " s");
        }
        double end = Math.max(mission, curves.stream().flatMapToDouble(curve -> curve.points().xs()).max().orElse(mission));
        Axis time = new Axis("time", QuantityKind.TIME, Optional.of(new Extent(0, end)));
        Chart chart = Chart.of(title, end > YEAR.toSi(IN_YEARS) ? time.in(YEAR) : time,
                new Axis("survival", QuantityKind.PROBABILITY, Optional.of(new Extent(floor(curves), 1))));
        if (mission < end) {
            chart = chart.with(new Region("after the service life", OptionalDouble.of(mission), OptionalDouble.empty()));
        }
        chart = lines(chart, curves);
        for (int i = 0; i < curves.size(); i++) {
            OptionalDouble left = curves.get(i).points().at(mission);
            if (left.isPresent()) {
                String share = Units.format(left.getAsDouble(), QuantityKind.PROBABILITY, UnitSystem.METRIC, 3);
                chart = chart.with(new Mark(curves.size() == 1 ? share + " at the end" : curves.get(i).name() + ": " + share, mission,
                        left.getAsDouble(), Shape.DIAMOND, i));
            }
        }
        return chart;
    }

    /** Where the axis of survival begins: at nothing, or so far up that what is lost can be seen. */
    private static double floor(List<Curve> curves) {
        double least = curves.stream().flatMapToDouble(curve -> DoubleStream.concat(curve.points().ys(), curve.bounds().stream()
                .flatMapToDouble(bounds -> bounds.lower().ys()))).min().orElse(0);
        return DoubleStream.of(0.999, 0.99, 0.9, 0.5).filter(floor -> least > floor).findFirst().orElse(0);
    }

    /**
     * Life against the temperature of the air; life on a logarithmic axis.
     *
     * @param title      what it shows
     * @param life       which life, for example "life L10"
     * @param curves     over temperature, K, lives, s
     * @param rated      the temperature at which life was rated or tested, K: below it, life is extrapolated; empty where nobody knows
     * @param conditions marks
     */
    public static Chart temperature(String title, String life, List<Curve> curves, OptionalDouble rated, List<Condition> conditions) {
        Chart chart = lines(Chart.of(title, new Axis("air temperature", QuantityKind.TEMPERATURE), new Axis(life, QuantityKind.TIME, Scale.LOG)),
                curves);
        if (rated.isPresent()) {
            chart = chart.with(new Region("extrapolated", OptionalDouble.empty(), rated));
        }
        for (Condition condition : conditions) {
            chart = chart.with(new Mark(condition.name(), condition.temperature(), condition.life(), Shape.DISC, curves.size()));
        }
        return chart;
    }

    private static Chart lines(Chart empty, List<Curve> curves) {
        Chart chart = empty;
        for (int i = 0; i < curves.size(); i++) {
            if (curves.get(i).bounds().isPresent()) {
                chart = chart.with(curves.get(i).bounds().get().band(i));
            }
            chart = chart.with(new Series(curves.get(i).name(), Role.CURVE, new Look(style(i), i, false), curves.get(i).points()));
        }
        return chart;
    }

    /** Lines differ by more than their colour. */
    private static Style style(int number) {
        return List.of(Style.LINE, Style.DASHED, Style.DOTTED).get(number % 3);
    }

    private static Shape sign(int number) {
        return List.of(Shape.DISC, Shape.SQUARE, Shape.TRIANGLE, Shape.CROSS).get(number % 4);
    }
}
