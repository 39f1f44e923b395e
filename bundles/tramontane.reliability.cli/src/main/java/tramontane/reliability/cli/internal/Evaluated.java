package tramontane.reliability.cli.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import tramontane.analysis.Chart.Scale;
import tramontane.cli.terminal.Ending;
import tramontane.physics.units.QuantityKind;
import tramontane.reliability.bearing.LifeFactor;
import tramontane.reliability.statistics.Acceleration;
import tramontane.reliability.statistics.Bounds;
import tramontane.reliability.statistics.Family;
import tramontane.reliability.statistics.GoodnessOfFit;
import tramontane.reliability.statistics.LifeData;
import tramontane.reliability.statistics.LifeDistribution;
import tramontane.reliability.statistics.LifeFit;
import tramontane.reliability.statistics.LifeTable;
import tramontane.reliability.statistics.MedianRanks;
import tramontane.reliability.statistics.Outcome;
import tramontane.reliability.statistics.PlotPoint;
import tramontane.reliability.statistics.ProbabilityPaper;
import tramontane.reliability.statistics.Quantity;
import tramontane.reliability.statistics.RankRegression;
import tramontane.reliability.statistics.RatioTest;
import tramontane.reliability.statistics.StressTest;
import tramontane.reliability.statistics.Turnbull;
import tramontane.reliability.statistics.Weibayes;

/**
 * A life test, evaluated.
 *
 * @param question what was asked
 * @param groups   what was on test, by temperature and speed
 * @param answers  for each group; for the use alone where that was asked for
 * @param effect   what temperature does, where tests at several temperatures show it
 * @param cautions sentences
 */
record Evaluated(Question question, List<LifeTable.Group> groups, List<Answer> answers, Optional<Effect> effect, List<String> cautions) {

    private static final double HOUR = 3600;
    private static final int FEW = 5;
    private static final double UNLIKELY = 0.05;
    /** Simulated tests take about a second for so many units. */
    private static final int MOST_SIMULATED = 300;
    private static final int SAMPLES = 499;
    private static final long SEED = 20261130;

    /**
     * A family put through what was seen.
     *
     * @param logLikelihood for times in hours; not a number for a line through ranks
     * @param bounds        none where the method gives none
     */
    record Estimate(Family family, LifeDistribution distribution, double shape, boolean shapeKnown, double logLikelihood, double aic,
            Optional<Function<Quantity, Bounds>> bounds, OptionalDouble shown, OptionalDouble correlation) {

        Bounds of(Quantity quantity) {
            return bounds.map(each -> each.apply(quantity)).orElseGet(() -> new Bounds(value(quantity), Double.NEGATIVE_INFINITY,
                    Double.POSITIVE_INFINITY));
        }

        private double value(Quantity quantity) {
            return switch (quantity) {
                case Quantity.Scale scale -> family == Family.LOGNORMAL ? distribution.life(0.5) : distribution.life(-Math.expm1(-1));
                case Quantity.Shape known -> shape;
                case Quantity.Life life -> distribution.life(life.failed());
                case Quantity.Survival survival -> distribution.survival(survival.time());
                case Quantity.Mean mean -> distribution.mean();
            };
        }
    }

    /** A family that could not be fitted. */
    record Without(Family family, String sentence) {
    }

    /**
     * What is known of units at one temperature.
     *
     * @param where       in words, with a capital; empty where there is but one
     * @param temperature K, where it is known
     * @param data        what was seen, as if at that temperature where it was not
     * @param estimates   the best one first; none where no unit failed
     * @param points      of a probability plot
     * @param ageing      exponential against Weibull
     * @param distance    of the best from what was seen
     */
    record Answer(String where, OptionalDouble temperature, OptionalDouble speed, LifeData data, List<Estimate> estimates,
            List<Without> without,
            List<PlotPoint> points, Optional<RatioTest> ageing, Optional<GoodnessOfFit.Distance> distance, Optional<Weibayes> known) {

        Estimate best() {
            return estimates.getFirst();
        }
    }

    /** What temperature does. */
    record Effect(Acceleration acceleration, Bounds energy, Bounds perTenKelvin, Optional<RatioTest> commonShape, Optional<RatioTest> law) {
    }

    static Scale scale(Family family) {
        return switch (family) {
            case WEIBULL -> Scale.WEIBULL;
            case LOGNORMAL -> Scale.NORMAL;
            case EXPONENTIAL -> Scale.EXPONENTIAL;
        };
    }

    static Evaluated of(List<LifeTable.Group> written, Question question) throws Ending {
        List<LifeTable.Group> groups = written.stream().map(group -> group.temperature().isPresent() || question.testedAt().isEmpty()
                ? group
                : new LifeTable.Group(question.testedAt(), group.speed(), group.data())).toList();
        List<String> cautions = new ArrayList<>();
        Optional<Effect> effect = Optional.empty();
        List<Answer> answers = new ArrayList<>();
        boolean several = groups.stream().map(LifeTable.Group::temperature).distinct().count() > 1;
        if (several && !question.ranks() && (question.use().isEmpty() || question.use().get().factor().isEmpty())) {
            effect = effect(groups, question);
            effect.ifPresent(found -> cautions.addAll(cautions(found)));
        }
        if (question.use().isEmpty()) {
            for (LifeTable.Group group : groups) {
                answers.add(tested(where(group, groups.size()), group.temperature(), group.speed(), group.data(), question));
            }
        } else {
            answers.add(use(groups, question, question.use().get(), cautions));
        }
        answers.forEach(each -> cautions.addAll(cautions(each, question)));
        return new Evaluated(question, groups, List.copyOf(answers), effect, cautions.stream().map(Cells::capital).distinct().toList());
    }

    private static String where(LifeTable.Group group, int groups) {
        if (groups == 1) {
            return "";
        }
        List<String> words = new ArrayList<>();
        group.temperature().ifPresent(value -> words.add(Cells.text(value, QuantityKind.TEMPERATURE)));
        group.speed().ifPresent(value -> words.add(Cells.text(value, QuantityKind.ROTATIONAL_SPEED)));
        return "At " + String.join(" and ", words);
    }

    private static Optional<Effect> effect(List<LifeTable.Group> groups, Question question) {
        List<StressTest> tests = groups.stream().map(group -> group.stress().orElseThrow()).toList();
        Family family = question.families().getFirst();
        Acceleration.Law law = question.use().map(Question.Use::law).orElse(Acceleration.Law.ARRHENIUS);
        Optional<Acceleration> arrhenius = accelerated(tests, family, Acceleration.Law.ARRHENIUS, question).found();
        Optional<Acceleration> perTen = accelerated(tests, family, Acceleration.Law.PER_TEN_KELVIN, question).found();
        if (arrhenius.isEmpty() || perTen.isEmpty()) {
            return Optional.empty();
        }
        Acceleration chosen = law == Acceleration.Law.ARRHENIUS ? arrhenius.get() : perTen.get();
        return Optional.of(new Effect(chosen, arrhenius.get().temperatureEffect(question.confidence(), question.method()),
                perTen.get().temperatureEffect(question.confidence(), question.method()), chosen.commonShape().found(),
                chosen.lawAgainstSeparateScales().found()));
    }

    private static Outcome<Acceleration> accelerated(List<StressTest> tests, Family family, Acceleration.Law law, Question question) {
        return question.shape().isPresent() && family != Family.EXPONENTIAL ? Acceleration.ofShape(tests, family, law, question.shape()
                .getAsDouble())
                : Acceleration.of(tests, family, law);
    }

    private static Answer use(List<LifeTable.Group> groups, Question question, Question.Use use, List<String> cautions) throws Ending {
        String where = "At " + Cells.text(use.temperature(), QuantityKind.TEMPERATURE);
        if (groups.stream().anyMatch(group -> group.temperature().isEmpty())) {
            throw Ending.badInput("--at needs the temperature of the test: a column \"temperature [°C]\" in the file, or --test-at \"70"
                    + " °C\".");
        }
        double low = groups.stream().mapToDouble(group -> group.temperature().getAsDouble()).min().orElseThrow();
        double high = groups.stream().mapToDouble(group -> group.temperature().getAsDouble()).max().orElseThrow();
        double outside = use.temperature() < low ? low - use.temperature() : use.temperature() > high ? use.temperature() - high : 0;
        if (outside > 0) {
            cautions.add(where.substring(3) + " lies " + Cells.text(outside, QuantityKind.TEMPERATURE_DIFFERENCE)
                    + " outside of the tested "
                    + Cells.text(low, QuantityKind.TEMPERATURE) + (high > low ? " to " + Cells.text(high, QuantityKind.TEMPERATURE) : "")
                    + ": the law carries the answer, and bounds say nothing of whether it holds there.");
        }
        if (use.factor().isPresent()) {
            double factor = use.factor().getAsDouble();
            List<LifeTable.Group> moved = groups.stream().map(group -> new LifeTable.Group(OptionalDouble.of(use.temperature()),
                    group.speed(),
                    group.data().scaled(use.law() == Acceleration.Law.ARRHENIUS
                            ? LifeFactor.arrhenius(factor, group.temperature().getAsDouble(), use.temperature())
                            : LifeFactor.perTenKelvin(factor, group.temperature().getAsDouble(), use.temperature())))).toList();
            if (moved.stream().map(LifeTable.Group::speed).distinct().count() > 1) {
                cautions.add("Units ran at different speeds; they were taken together as if speed did not matter.");
            }
            return tested(where, OptionalDouble.of(use.temperature()), OptionalDouble.empty(), new LifeData(moved.stream()
                    .flatMap(group -> group.data().observations().stream()).toList()), question);
        }
        if (groups.stream().map(LifeTable.Group::temperature).distinct().count() < 2) {
            throw Ending.badInput("--at needs units tested at two temperatures or more, or a known relation: --factor 1.5 (per 10 K) or"
                    + " --energy"
                    + " \"0.4 eV\". All units ran at " + Cells.text(low, QuantityKind.TEMPERATURE) + ".");
        }
        if (question.ranks()) {
            throw Ending.badInput("--method ranks fits one temperature; with --at give --factor or --energy, or use --method likelihood.");
        }
        boolean speeds = groups.stream().map(LifeTable.Group::speed).distinct().count() > 1;
        if (speeds && use.speed().isEmpty()) {
            throw Ending.badInput("The units ran at different speeds; --speed must say at which life is asked for, for example \"3000"
                    + " rpm\".");
        }
        return predicted(where, groups, question, use, speeds);
    }

    private static Answer predicted(String where, List<LifeTable.Group> groups, Question question, Question.Use use, boolean speeds) {
        List<StressTest> tests = groups.stream().map(group -> group.stress().orElseThrow()).toList();
        LifeData all = new LifeData(groups.stream().flatMap(group -> group.data().observations().stream()).toList());
        List<Estimate> estimates = new ArrayList<>();
        List<Without> without = new ArrayList<>();
        for (Family family : question.families()) {
            switch (accelerated(tests, family, use.law(), question)) {
                case Outcome.NotFound<Acceleration>(Outcome.Reason reason, String sentence) -> without.add(new Without(family, sentence));
                case Outcome.Found<Acceleration>(Acceleration fit) -> {
                    Acceleration.Prediction there = speeds ? fit.at(use.temperature(), use.speed().getAsDouble())
                            : fit.at(use.temperature());
                    double correction = exact(all) * Math.log(HOUR);
                    estimates.add(new Estimate(family, there.distribution(), fit.shape(), fit.givenShape().isPresent(),
                            fit.logLikelihood() + correction, fit.aic() - 2 * correction,
                            Optional.of(quantity -> there.bounds(quantity, question.confidence(), question.method())),
                            OptionalDouble.of(there.lower(Quantity.life(0.1), question.confidence(), question.method())),
                            OptionalDouble.empty()));
                }
            }
        }
        estimates.sort((one, other) -> Double.compare(one.aic(), other.aic()));
        return new Answer(where, OptionalDouble.of(use.temperature()), use.speed(), all, estimates, without, List.of(), Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /** Failures known to the moment: each has its density in the likelihood. */
    private static int exact(LifeData data) {
        return data.observations().stream().filter(each -> each.exact()).mapToInt(each -> each.count()).sum();
    }

    private static Answer tested(String where, OptionalDouble temperature, OptionalDouble speed, LifeData data, Question question) {
        List<Estimate> estimates = new ArrayList<>();
        List<Without> without = new ArrayList<>();
        List<PlotPoint> points = data.failures() == 0 ? List.of() : data.exact()
                ? MedianRanks.of(data, MedianRanks.Method.BENARD).points() : Turnbull.of(data).points();
        Optional<GoodnessOfFit.Distance> distance = Optional.empty();
        for (Family family : question.families()) {
            if (question.ranks()) {
                try {
                    RankRegression line = RankRegression.of(MedianRanks.of(data, MedianRanks.Method.BENARD), paper(family),
                            RankRegression.Direction.X_ON_Y);
                    estimates.add(new Estimate(family, line.distribution(), shape(line.distribution()), false, Double.NaN, Double.NaN,
                            Optional.empty(), OptionalDouble.empty(), OptionalDouble.of(line.correlation())));
                } catch (IllegalArgumentException none) {
                    without.add(new Without(family, none.getMessage()));
                }
                continue;
            }
            switch (fit(data, family, question.shape())) {
                case Outcome.NotFound<LifeFit>(Outcome.Reason reason, String sentence) -> without.add(new Without(family, sentence));
                case Outcome.Found<LifeFit>(LifeFit fit) -> estimates.add(estimate(fit, question));
            }
        }
        estimates.sort((one, other) -> question.ranks() ? Double.compare(other.correlation().getAsDouble(), one.correlation().getAsDouble())
                : Double.compare(one.aic(), other.aic()));
        if (!question.ranks() && !estimates.isEmpty() && data.exact() && data.units() <= MOST_SIMULATED) {
            distance = fit(data, estimates.getFirst().family(), question.shape()).found()
                    .flatMap(fit -> GoodnessOfFit.andersonDarling(fit, SAMPLES, SEED).found());
        }
        Optional<Weibayes> known = question.shape().isPresent() && !question.ranks() && question.families().contains(Family.WEIBULL)
                && data.observations().stream().anyMatch(each -> each.from() > 0)
                ? Optional.of(Weibayes.cautious(data, question.shape().getAsDouble())) : Optional.empty();
        return new Answer(where, temperature, speed, data, List.copyOf(estimates), List.copyOf(without), points,
                question.ranks() ? Optional.empty() : GoodnessOfFit.exponentialAgainstWeibull(data).found(), distance, known);
    }

    private static Outcome<LifeFit> fit(LifeData data, Family family, OptionalDouble shape) {
        return shape.isPresent() && family != Family.EXPONENTIAL ? LifeFit.ofShape(data, family, shape.getAsDouble()) : LifeFit.of(data,
                family);
    }

    private static Estimate estimate(LifeFit fit, Question question) {
        double correction = exact(fit.data()) * Math.log(HOUR);
        OptionalDouble correlation = correlation(fit);
        return new Estimate(fit.family(), fit.distribution(), fit.shape(), fit.givenShape().isPresent(), fit.logLikelihood() + correction,
                fit.aic() - 2 * correction, Optional.of(quantity -> fit.bounds(quantity, question.confidence(), question.method())),
                OptionalDouble.of(fit.lower(Quantity.life(0.1), question.confidence(), question.method())), correlation);
    }

    private static OptionalDouble correlation(LifeFit fit) {
        if (!fit.data().exact()) {
            return OptionalDouble.empty();
        }
        try {
            return OptionalDouble.of(RankRegression.of(MedianRanks.of(fit.data(), MedianRanks.Method.BENARD), paper(fit.family()),
                    RankRegression.Direction.X_ON_Y).correlation());
        } catch (IllegalArgumentException tooFew) {
            return OptionalDouble.empty();
        }
    }

    private static ProbabilityPaper paper(Family family) {
        return ProbabilityPaper.valueOf(family.name());
    }

    private static double shape(LifeDistribution distribution) {
        return switch (distribution) {
            case tramontane.reliability.statistics.Weibull weibull -> weibull.shape();
            case tramontane.reliability.statistics.Lognormal lognormal -> lognormal.spread();
            default -> 1;
        };
    }

    private static List<String> cautions(Effect effect) {
        List<String> cautions = new ArrayList<>();
        effect.commonShape().filter(test -> test.p() < UNLIKELY).ifPresent(test -> cautions.add("The shape differs between the temperatures"
                + " (p "
                + Cells.plain(test.p()) + "): units may fail in another way where it is hotter, and one law for all may mislead."));
        effect.law().filter(test -> test.p() < UNLIKELY).ifPresent(test -> cautions.add("Lives do not follow the law of temperature well (p"
                + " "
                + Cells.plain(test.p()) + ")."));
        return cautions;
    }

    private static List<String> cautions(Answer answer, Question question) {
        List<String> cautions = new ArrayList<>();
        String lead = answer.where().isEmpty() ? "" : answer.where() + ": ";
        int failures = answer.data().failures();
        if (failures > 0 && failures < FEW) {
            cautions.add(lead + "only " + failures + (failures == 1 ? " unit has" : " units have") + " failed; bounds are rough"
                    + (question.shape().isPresent() ? "." : ", and those of a known shape (--shape) would be better founded."));
        }
        if (answer.estimates().isEmpty()) {
            return cautions;
        }
        double first = 0.5 / answer.data().units();
        List<String> early = question.lives().stream().filter(life -> !life.mean() && life.failed() < first).map(Question.Named::name)
                .toList();
        if (!early.isEmpty()) {
            cautions.add(lead + String.join(", ", early) + (early.size() == 1 ? " lies" : " lie") + " before any of " + answer.data()
                    .units()
                    + " units is expected to fail: the distribution carries the answer, not the data.");
        }
        double longest = answer.data().observations().stream().mapToDouble(each -> each.survived() ? each.from() : each.to()).max()
                .orElseThrow();
        if (!answer.points().isEmpty()) {
            LifeDistribution best = answer.best().distribution();
            List<String> late = question.lives().stream().filter(life -> (life.mean() ? best.mean() : best.life(life.failed())) > longest)
                    .map(life -> life.mean() ? "the mean" : life.name()).collect(Collectors.toCollection(ArrayList::new));
            question.times().stream().filter(time -> time > longest).forEach(time -> late.add("survival at " + question.time(time)));
            if (!late.isEmpty()) {
                cautions.add(lead + String.join(", ", late) + (late.size() == 1 ? " lies" : " lie") + " beyond the longest time on test, "
                        + question.time(longest) + ": extrapolated.");
            }
        }
        answer.distance().filter(each -> each.p() < UNLIKELY).ifPresent(each -> cautions.add(lead + "the " + answer.best().family().word()
                + " distribution fits badly (p " + Cells.plain(each.p()) + "); look at the chart for units that fail in different ways."));
        return cautions;
    }

    /** Numbers of all groups by what they are. */
    Map<String, Long> counts() {
        Map<String, Long> counts = new LinkedHashMap<>();
        counts.put("units", groups.stream().mapToLong(group -> group.data().units()).sum());
        counts.put("failures", groups.stream().mapToLong(group -> group.data().failures()).sum());
        return counts;
    }
}
