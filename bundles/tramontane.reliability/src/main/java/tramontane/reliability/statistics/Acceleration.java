package tramontane.reliability.statistics;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.DoubleStream;

/**
 * How life falls with temperature (and speed): life tests at two or more temperatures, fitted together with one shape.
 *
 * <p>{@code ln(scale) = b0 + b1 x(T) + b2 ln n}, x by {@link Law}; the last term where tests ran at different speeds. The shape
 * is the same at all stresses: {@link #commonShape} and {@link #lawAgainstSeparateScales} test what is assumed here.
 *
 * <p>Source: W. Meeker, L. Escobar, "Statistical Methods for Reliability Data" (1998), chapters 18 and 19; W. Nelson, "Accelerated
 * Testing" (1990).
 *
 * @param family        which family
 * @param law           how life depends on temperature
 * @param tests         what was seen at which stress
 * @param givenShape    the shape, where it was given instead of estimated
 * @param coefficients  b0, b1 and, where speeds differ, b2
 * @param spread        σ, 1/β for Weibull
 * @param logLikelihood of all tests together
 * @param covariance    of the coefficients and, unless the shape is known, of ln σ
 * @param iterations    Newton steps made
 */
public record Acceleration(Family family, Law law, List<StressTest> tests, OptionalDouble givenShape, List<Double> coefficients,
        double spread, double logLikelihood, List<List<Double>> covariance, int iterations) {

    /** Boltzmann's constant in eV/K (CODATA 2018, exact). */
    public static final double BOLTZMANN = 8.617333262e-5;

    /** How life depends on temperature. */
    public enum Law {
        /** {@code x = 1/(kT)}: b1 is the activation energy in eV. */
        ARRHENIUS,
        /** {@code x = -T/(10 K)}: life is divided by {@code exp(b1)} for each 10 K more. */
        PER_TEN_KELVIN;

        double of(double temperature) {
            return this == ARRHENIUS ? 1 / (BOLTZMANN * temperature) : -temperature / 10;
        }
    }

    /** Copies lists in. */
    public Acceleration {
        tests = List.copyOf(tests);
        coefficients = List.copyOf(coefficients);
        covariance = covariance.stream().map(List::copyOf).toList();
    }

    /**
     * Fits the law with one shape for all.
     *
     * @param tests at two different temperatures or more; all or none with a speed
     */
    public static Outcome<Acceleration> of(List<StressTest> tests, Family family, Law law) {
        return fit(tests, family, law, OptionalDouble.empty());
    }

    /**
     * Fits the law for a shape that is known, β for Weibull, σ for lognormal.
     *
     * @param tests at two different temperatures or more; all or none with a speed
     * @param shape above zero
     */
    public static Outcome<Acceleration> ofShape(List<StressTest> tests, Family family, Law law, double shape) {
        Requires.positive("shape", shape);
        return fit(tests, family, law, OptionalDouble.of(shape));
    }

    private static Outcome<Acceleration> fit(List<StressTest> tests, Family family, Law law, OptionalDouble shape) {
        if (tests.stream().mapToDouble(StressTest::temperature).distinct().count() < 2) {
            return new Outcome.NotFound<>(Outcome.Reason.NOT_DETERMINED,
                    "an effect of temperature needs tests at two different temperatures or more");
        }
        return switch (regression(tests, family, law, shape).solve()) {
            case Outcome.NotFound<Regression.Solution>(Outcome.Reason reason, String sentence) -> new Outcome.NotFound<>(reason, sentence);
            case Outcome.Found<Regression.Solution>(Regression.Solution solution) ->
                new Outcome.Found<>(new Acceleration(family, law, tests, shape, DoubleStream.of(solution.coefficients()).boxed().toList(),
                        solution.spread(), solution.logLikelihood(), solution.covariance(), solution.iterations()));
        };
    }

    private static boolean speedsDiffer(List<StressTest> tests) {
        if (tests.stream().map(each -> each.speed().isPresent()).distinct().count() > 1) {
            throw new IllegalArgumentException("either all tests say their speed or none does");
        }
        return tests.stream().map(StressTest::speed).distinct().count() > 1;
    }

    private static double[] stress(Law law, double temperature, OptionalDouble speed) {
        double x = law.of(temperature);
        return speed.isPresent() ? new double[] {1, x, Math.log(speed.getAsDouble())} : new double[] {1, x};
    }

    private static Regression regression(List<StressTest> tests, Family family, Law law, OptionalDouble shape) {
        boolean speeds = speedsDiffer(tests);
        List<Regression.Row> rows = new ArrayList<>();
        for (StressTest test : tests) {
            double[] x = stress(law, test.temperature(), speeds ? test.speed() : OptionalDouble.empty());
            test.data().observations().forEach(each -> rows.add(new Regression.Row(each, x)));
        }
        return new Regression(family, rows,
                shape.isPresent() ? OptionalDouble.of(family.spread(shape.getAsDouble())) : OptionalDouble.empty());
    }

    private Regression.Solution solution() {
        return regression(tests, family, law, givenShape).solve().orElseThrow();
    }

    /** The shape at all stresses: β for Weibull, σ for lognormal, 1 for exponential. */
    public double shape() {
        return family.shape(spread);
    }

    /** Bounds of the shape at all stresses. */
    public Bounds shape(double confidence, Bounds.Method method) {
        return at(tests.get(0).temperature(), tests.get(0).speed()).bounds(Quantity.shape(), confidence, method);
    }

    /** Akaike's information criterion: of two fits to the same data prefer the lower. */
    public double aic() {
        return 2 * covariance.size() - 2 * logLikelihood;
    }

    /**
     * What temperature does: the activation energy in eV for {@link Law#ARRHENIUS}, the factor by which life falls with each 10 K more
     * for {@link Law#PER_TEN_KELVIN}. Bounds are two-sided; Fisher bounds are Wald bounds on b1.
     */
    public Bounds temperatureEffect(double confidence, Bounds.Method method) {
        Bounds b1 = coefficient(1, confidence, method);
        return law == Law.ARRHENIUS ? b1 : new Bounds(Math.exp(b1.estimate()), Math.exp(b1.lower()), Math.exp(b1.upper()));
    }

    /**
     * The power of speed with which life goes, below zero where faster units live shorter; two-sided bounds.
     *
     * @throws IllegalStateException where all tests ran at one speed
     */
    public Bounds speedExponent(double confidence, Bounds.Method method) {
        if (coefficients.size() < 3) {
            throw new IllegalStateException("the tests do not differ in speed");
        }
        return coefficient(2, confidence, method);
    }

    /**
     * How many times as long units live at one temperature as at another, at the same speed; two-sided bounds.
     *
     * @param use    in kelvin
     * @param tested in kelvin
     */
    public Bounds factor(double use, double tested, double confidence, Bounds.Method method) {
        Requires.positive("temperature", use);
        Requires.positive("temperature", tested);
        double by = law.of(use) - law.of(tested);
        if (by == 0) {
            return Bounds.known(1);
        }
        Bounds b1 = coefficient(1, confidence, method);
        double one = Math.exp(by * b1.lower());
        double other = Math.exp(by * b1.upper());
        return new Bounds(Math.exp(by * b1.estimate()), Math.min(one, other), Math.max(one, other));
    }

    private Bounds coefficient(int index, double confidence, Bounds.Method method) {
        Requires.share("confidence", confidence);
        double deviate = Regression.deviate((1 + confidence) / 2);
        return solution().coefficient(index, -deviate, deviate, method);
    }

    /**
     * Life at a temperature in kelvin.
     *
     * @throws IllegalArgumentException where the tests differ in speed
     */
    public Prediction at(double temperature) {
        return at(temperature, OptionalDouble.empty());
    }

    /** Life at a temperature in kelvin and a speed in the unit of the tests; the speed is ignored where tests do not differ in it. */
    public Prediction at(double temperature, double speed) {
        return at(temperature, OptionalDouble.of(speed));
    }

    private Prediction at(double temperature, OptionalDouble speed) {
        boolean speeds = coefficients.size() > 2;
        if (speeds && speed.isEmpty()) {
            throw new IllegalArgumentException("the tests differ in speed: say at which speed life is asked for");
        }
        return new Prediction(this, temperature, speeds ? speed : OptionalDouble.empty());
    }

    /**
     * Whether one shape for all stresses is tenable: one scale for each stress with one shape, against one shape for each, too.
     * A fit at each stress must exist.
     */
    public Outcome<RatioTest> commonShape() {
        if (family.shapeKnown() || givenShape.isPresent()) {
            return new Outcome.NotFound<>(Outcome.Reason.NOT_DETERMINED, "the shape is known, not estimated");
        }
        List<LifeData> levels = levels();
        double wide = 0;
        for (LifeData each : levels) {
            switch (LifeFit.of(each, family)) {
                case Outcome.NotFound<LifeFit>(Outcome.Reason reason, String sentence) -> {
                    return new Outcome.NotFound<>(reason, "one stress by itself: " + sentence);
                }
                case Outcome.Found<LifeFit>(LifeFit fit) -> wide += fit.logLikelihood();
            }
        }
        double separate = wide;
        return separateScales(levels, simple -> RatioTest.of(simple, separate, levels.size() - 1));
    }

    /**
     * Whether the law is tenable: it, against one scale for each stress, with one shape both times. Needs more stresses than the law has
     * coefficients: three temperatures or more.
     */
    public Outcome<RatioTest> lawAgainstSeparateScales() {
        List<LifeData> levels = levels();
        int degrees = levels.size() - coefficients.size();
        if (degrees < 1) {
            return new Outcome.NotFound<>(Outcome.Reason.NOT_DETERMINED,
                    "as many stresses as coefficients: any law of this kind goes through all of them");
        }
        return separateScales(levels, wide -> RatioTest.of(logLikelihood, wide, degrees));
    }

    private interface Judge {
        RatioTest of(double logLikelihood);
    }

    private Outcome<RatioTest> separateScales(List<LifeData> levels, Judge judge) {
        List<Regression.Row> rows = new ArrayList<>();
        for (int i = 0; i < levels.size(); i++) {
            double[] x = new double[levels.size()];
            x[0] = 1;
            if (i > 0) {
                x[i] = 1;
            }
            levels.get(i).observations().forEach(each -> rows.add(new Regression.Row(each, x)));
        }
        OptionalDouble known = givenShape.isPresent() ? OptionalDouble.of(spread) : OptionalDouble.empty();
        return switch (new Regression(family, rows, known).solve()) {
            case Outcome.NotFound<Regression.Solution>(Outcome.Reason reason, String sentence) -> new Outcome.NotFound<>(reason, sentence);
            case Outcome.Found<Regression.Solution>(Regression.Solution solution) ->
                new Outcome.Found<>(judge.of(solution.logLikelihood()));
        };
    }

    /** What was seen, by stress, coolest first. */
    private List<LifeData> levels() {
        TreeMap<Double, TreeMap<Double, List<Observation>>> sorted = new TreeMap<>();
        for (StressTest each : tests) {
            double speed = coefficients.size() > 2 ? each.speed().orElseThrow() : 0;
            sorted.computeIfAbsent(each.temperature(), key -> new TreeMap<>()).computeIfAbsent(speed, key -> new ArrayList<>())
                    .addAll(each.data().observations());
        }
        return sorted.values().stream().flatMap(each -> each.values().stream()).map(LifeData::new).toList();
    }

    /**
     * Life at one stress, as the law has it.
     *
     * @param acceleration the fit
     * @param temperature  in kelvin
     * @param speed        where the tests differ in speed
     */
    public record Prediction(Acceleration acceleration, double temperature, OptionalDouble speed) {

        /** Refuses stresses that are not above zero. */
        public Prediction {
            Requires.positive("temperature", temperature);
            if (speed.isPresent()) {
                Requires.positive("speed", speed.getAsDouble());
            }
        }

        private double[] stress() {
            return Acceleration.stress(acceleration.law, temperature, speed);
        }

        /** The distribution of lives there. */
        public LifeDistribution distribution() {
            double location = 0;
            double[] x = stress();
            for (int j = 0; j < x.length; j++) {
                location += x[j] * acceleration.coefficients.get(j);
            }
            return acceleration.family.distribution(location, acceleration.spread);
        }

        /**
         * Two-sided bounds; they hold if the law does, and say nothing of whether it does so far away.
         *
         * @throws ArithmeticException where a likelihood-ratio bound is not found within 200 steps
         */
        public Bounds bounds(Quantity quantity, double confidence, Bounds.Method method) {
            Requires.share("confidence", confidence);
            double deviate = Regression.deviate((1 + confidence) / 2);
            return acceleration.solution().bounds(quantity, stress(), -deviate, deviate, method);
        }

        /** The value above which the quantity lies, with a confidence. */
        public double lower(Quantity quantity, double confidence, Bounds.Method method) {
            double low = -Regression.deviate(confidence);
            return acceleration.solution().bounds(quantity, stress(), low, Double.POSITIVE_INFINITY, method).lower();
        }

        /** The value below which the quantity lies, with a confidence. */
        public double upper(Quantity quantity, double confidence, Bounds.Method method) {
            double high = Regression.deviate(confidence);
            return acceleration.solution().bounds(quantity, stress(), Double.NEGATIVE_INFINITY, high, method).upper();
        }

        /** How many kelvin outside the tested temperatures: below zero if cooler than all, above zero if warmer, 0 among them. */
        public double kelvinOutside() {
            double low = acceleration.tests.stream().mapToDouble(StressTest::temperature).min().orElseThrow();
            double high = acceleration.tests.stream().mapToDouble(StressTest::temperature).max().orElseThrow();
            return temperature < low ? temperature - low : temperature > high ? temperature - high : 0;
        }

        /** Ratio of the speed to the nearest tested one where it is slower or faster than all, 1 among them. */
        public double speedOutside() {
            if (speed.isEmpty()) {
                return 1;
            }
            double low = acceleration.tests.stream().mapToDouble(each -> each.speed().orElseThrow()).min().orElseThrow();
            double high = acceleration.tests.stream().mapToDouble(each -> each.speed().orElseThrow()).max().orElseThrow();
            double at = speed.getAsDouble();
            return at < low ? at / low : at > high ? at / high : 1;
        }

        /** Whether the stress lies outside of what was tested, so that the law carries the answer. */
        public boolean extrapolated() {
            return kelvinOutside() != 0 || speedOutside() != 1;
        }
    }
}
