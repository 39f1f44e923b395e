package tramontane.reliability.statistics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * Maximum likelihood of {@code ln T = x·b + σ Z} for censored lives at different stresses, and bounds on what follows from it.
 *
 * <p>Rows that are alike are merged and put in order first, so that the result does not depend, to the last bit, on how units were listed.
 */
final class Regression {

    /** Logarithms of times beyond this are reported as no time or no end. */
    private static final double LOG_LIMIT = 700;
    /** Standardised times beyond this are reported as survival 1 or 0. */
    private static final double STANDARD_LIMIT = 45;
    private static final double SPREAD_LIMIT = 30;
    private static final double COEFFICIENT_LIMIT = 1e6;
    private static final double LEAST_INFORMATION = 1e-7;
    private static final String WITHOUT_SPREAD =
            "all that was seen agrees with no spread of lives at all: the shape has no finite maximum of likelihood; "
                    + "give the shape, or run on";
    private static final NormalDistribution NORMAL = new NormalDistribution();

    /**
     * Some units alike.
     *
     * @param seen what was seen of them
     * @param x    what they were run at; begins with 1
     */
    record Row(Observation seen, double[] x) {
    }

    private final Family family;
    private final Family.Seen[] seen;
    private final double[] first;
    private final double[] second;
    private final double[] count;
    private final double[][] x;
    private final double centre;
    private final double[] centreOfX;
    private final double range;
    private final double constant;
    private final double tau;
    private final double failures;

    /** @param spread the σ that is known, if it is */
    Regression(Family family, List<Row> rows, OptionalDouble spread) {
        this.family = family;
        this.tau = family.shapeKnown() ? 1 : 1 / spread.orElse(Double.NaN);
        List<Row> merged = merged(rows);
        int n = merged.size();
        int p = rows.get(0).x().length;
        seen = new Family.Seen[n];
        first = new double[n];
        second = new double[n];
        count = new double[n];
        x = new double[n][];
        centreOfX = new double[p];
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        double sum = 0;
        double times = 0;
        double logs = 0;
        double failed = 0;
        double units = 0;
        for (int i = 0; i < n; i++) {
            Observation each = merged.get(i).seen();
            seen[i] = each.exact() ? Family.Seen.FAILED : each.survived() ? Family.Seen.SURVIVED
                    : each.from() == 0 ? Family.Seen.FAILED_BEFORE : Family.Seen.BETWEEN;
            count[i] = each.count();
            units += count[i];
            if (seen[i] != Family.Seen.FAILED_BEFORE) {
                first[i] = Math.log(each.from());
                low = Math.min(low, first[i]);
                high = Math.max(high, first[i]);
                sum += count[i] * first[i];
                times += count[i];
            }
            if (seen[i] == Family.Seen.FAILED_BEFORE || seen[i] == Family.Seen.BETWEEN) {
                second[i] = Math.log(each.to());
                low = Math.min(low, second[i]);
                high = Math.max(high, second[i]);
                sum += count[i] * second[i];
                times += count[i];
            }
            if (seen[i] == Family.Seen.FAILED) {
                logs -= count[i] * first[i];
            }
            if (seen[i] != Family.Seen.SURVIVED) {
                failed += count[i];
            }
            for (int j = 1; j < p; j++) {
                centreOfX[j] += count[i] * merged.get(i).x()[j];
            }
        }
        centre = times == 0 ? 0 : sum / times;
        range = high > low ? high - low : 1;
        constant = logs;
        failures = failed;
        for (int j = 1; j < p; j++) {
            centreOfX[j] /= units;
        }
        for (int i = 0; i < n; i++) {
            first[i] = seen[i] == Family.Seen.FAILED_BEFORE ? 0 : first[i] - centre;
            second[i] = seen[i] == Family.Seen.FAILED_BEFORE || seen[i] == Family.Seen.BETWEEN ? second[i] - centre : 0;
            x[i] = centred(merged.get(i).x());
        }
    }

    private double[] centred(double[] stress) {
        double[] result = stress.clone();
        for (int j = 1; j < result.length; j++) {
            result[j] -= centreOfX[j];
        }
        return result;
    }

    private static List<Row> merged(List<Row> rows) {
        List<Row> sorted = new ArrayList<>(rows.size());
        for (Row each : rows) {
            // Units that were never run say nothing.
            if (!(each.seen().survived() && each.seen().from() == 0)) {
                sorted.add(each);
            }
        }
        sorted.sort(Comparator.comparing(Row::x, Arrays::compare)
                .thenComparingDouble(each -> each.seen().from()).thenComparingDouble(each -> each.seen().to()));
        List<Row> result = new ArrayList<>(sorted.size());
        for (Row each : sorted) {
            if (!result.isEmpty()) {
                Row last = result.get(result.size() - 1);
                Observation a = last.seen();
                Observation b = each.seen();
                if (a.from() == b.from() && a.to() == b.to() && Arrays.equals(last.x(), each.x())) {
                    result.set(result.size() - 1, new Row(a.times(a.count() + b.count()), last.x()));
                    continue;
                }
            }
            result.add(each);
        }
        return result;
    }

    private double[] ones() {
        double[] result = new double[count.length];
        Arrays.fill(result, 1);
        return result;
    }

    /** Fits; says why there is no maximum where there is none. */
    Outcome<Solution> solve() {
        if (failures == 0) {
            return none(Outcome.Reason.NO_FAILURE,
                    "no unit failed: a fit needs failures, zero-failure methods tell what such a test proves");
        }
        if (Arrays.stream(seen).allMatch(each -> each == Family.Seen.FAILED_BEFORE)) {
            return none(Outcome.Reason.ALL_FAILED_BEFORE,
                    "every unit had failed when first looked at: that bounds lives from above only, and nothing tells how short they are");
        }
        int p = centreOfX.length;
        if (p == 1 && Double.isNaN(tau)) {
            Outcome<Solution> obstacle = obstacle();
            if (obstacle != null) {
                return obstacle;
            }
        }
        if (p == 2 && Double.isNaN(tau) && oneLineAgrees()) {
            return none(Outcome.Reason.NO_SPREAD, WITHOUT_SPREAD);
        }
        Likelihood likelihood = new Likelihood(family, seen, first, second, x, count, ones(), constant, tau, 0, false);
        Newton.Maximum maximum = Newton.maximise(likelihood, start(p), range);
        switch (maximum.end()) {
            case RUNS_AWAY -> {
                return none(Outcome.Reason.NO_SPREAD, WITHOUT_SPREAD);
            }
            case VANISHES -> {
                return none(Outcome.Reason.INFINITE_SPREAD,
                        "later looks found no more failed than earlier ones: the spread of lives has no maximum of likelihood");
            }
            case NOT_CONVERGED -> {
                return none(Outcome.Reason.NOT_CONVERGED, "no maximum of likelihood was found within " + Newton.ITERATIONS + " steps");
            }
            case CONVERGED -> {
            }
        }
        double[] size = new double[likelihood.dimension()];
        if (p > 1) {
            for (int j = 0; j < p; j++) {
                double largest = 0;
                for (double[] row : x) {
                    largest = Math.max(largest, Math.abs(row[j]));
                }
                size[j] = largest == 0 ? 1 : failures * largest * largest;
            }
        }
        double[][] covariance = Newton.covariance(maximum.place().hessian, size, LEAST_INFORMATION);
        if (covariance.length == 0) {
            return none(p > 1 ? Outcome.Reason.NOT_DETERMINED : Outcome.Reason.NOT_CONVERGED, p > 1
                    ? "the failures do not determine the effect of the stress: it needs failures at two different stresses or more"
                    : "the failures do not determine scale and shape");
        }
        Solution solution = new Solution(maximum, covariance);
        if (Math.abs(solution.location(centreOfX)) > LOG_LIMIT || solution.spread() > 1 / Double.MIN_NORMAL) {
            return none(Outcome.Reason.INFINITE_SPREAD, "the most likely scale lies beyond all times a number can hold");
        }
        return new Outcome.Found<>(solution);
    }

    private static Outcome<Solution> none(Outcome.Reason reason, String sentence) {
        return new Outcome.NotFound<>(reason, sentence);
    }

    /**
     * The likelihood of one location and one spread has a maximum if, and only if, no single time agrees with all that was seen (else
     * the spread shrinks to zero), and, where there are only units that had failed and units that lived at one look, the former were
     * looked at later on average of the logarithm (else the spread grows without end).
     */
    private Outcome<Solution> obstacle() {
        double livedUntil = Double.NEGATIVE_INFINITY;
        double failedBy = Double.POSITIVE_INFINITY;
        boolean oneLook = true;
        double lookFailed = 0;
        double unitsFailed = 0;
        double lookLived = 0;
        double unitsLived = 0;
        boolean allExact = true;
        for (int i = 0; i < count.length; i++) {
            switch (seen[i]) {
                case FAILED -> {
                    livedUntil = Math.max(livedUntil, first[i]);
                    failedBy = Math.min(failedBy, first[i]);
                    oneLook = false;
                }
                case SURVIVED -> {
                    livedUntil = Math.max(livedUntil, first[i]);
                    lookLived += count[i] * first[i];
                    unitsLived += count[i];
                }
                case FAILED_BEFORE -> {
                    failedBy = Math.min(failedBy, second[i]);
                    lookFailed += count[i] * second[i];
                    unitsFailed += count[i];
                    allExact = false;
                }
                case BETWEEN -> {
                    livedUntil = Math.max(livedUntil, first[i]);
                    failedBy = Math.min(failedBy, second[i]);
                    oneLook = false;
                    allExact = false;
                }
            }
        }
        if (livedUntil <= failedBy) {
            return none(Outcome.Reason.NO_SPREAD, allExact
                    ? "all failures are at one time, and none of the others lived longer: the shape has no finite maximum of likelihood; "
                            + "give the shape, or run on"
                    : "one single time of failure agrees with all that was seen: the shape has no finite maximum of likelihood; "
                            + "look more often, or give the shape");
        }
        if (oneLook && !(lookFailed / unitsFailed > lookLived / unitsLived)) {
            return none(Outcome.Reason.INFINITE_SPREAD,
                    "units that had failed were looked at no later than those that still lived: "
                            + "the spread of lives has no maximum of likelihood");
        }
        return null;
    }

    /**
     * Whether a straight line of ln(time) over the one stress passes through all that was seen, so that there need be no spread. A slope s
     * is possible if {@code s (x_j - x_i)} is not above what lies between the latest life at i and the earliest end at j, for all pairs.
     */
    private boolean oneLineAgrees() {
        List<double[]> levels = new ArrayList<>();
        for (int i = 0; i < count.length; i++) {
            if (levels.isEmpty() || levels.get(levels.size() - 1)[0] != x[i][1]) {
                levels.add(new double[] {x[i][1], Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY});
            }
            double[] level = levels.get(levels.size() - 1);
            if (seen[i] != Family.Seen.FAILED_BEFORE) {
                level[1] = Math.max(level[1], first[i]);
            }
            if (seen[i] != Family.Seen.SURVIVED) {
                level[2] = Math.min(level[2], seen[i] == Family.Seen.FAILED ? first[i] : second[i]);
            }
        }
        double steepest = Double.POSITIVE_INFINITY;
        double flattest = Double.NEGATIVE_INFINITY;
        for (double[] i : levels) {
            if (i[1] > i[2]) {
                return false;
            }
            for (double[] j : levels) {
                if (j[0] > i[0]) {
                    steepest = Math.min(steepest, (j[2] - i[1]) / (j[0] - i[0]));
                } else if (j[0] < i[0]) {
                    flattest = Math.max(flattest, (j[2] - i[1]) / (j[0] - i[0]));
                }
            }
        }
        return flattest <= steepest;
    }

    private double[] start(int p) {
        double sum = 0;
        double units = 0;
        double[] rough = new double[count.length];
        for (int i = 0; i < count.length; i++) {
            rough[i] = switch (seen[i]) {
                case FAILED, SURVIVED -> first[i];
                case FAILED_BEFORE -> second[i];
                case BETWEEN -> (first[i] + second[i]) / 2;
            };
            sum += count[i] * rough[i];
            units += count[i];
        }
        double middle = sum / units;
        double squares = 0;
        for (int i = 0; i < count.length; i++) {
            squares += count[i] * (rough[i] - middle) * (rough[i] - middle);
        }
        double[] theta = new double[p + 1];
        theta[p] = Double.isNaN(tau) ? 1 / Math.max(0.8 * Math.sqrt(squares / units), 0.05 * range) : tau;
        if (family == Family.LOGNORMAL) {
            double failed = Math.min(Math.max(failures / units, 1e-6), 0.5);
            theta[0] = theta[p] * middle - family.quantile(failed);
        } else {
            double top = Double.NEGATIVE_INFINITY;
            for (double each : rough) {
                top = Math.max(top, each);
            }
            double weight = 0;
            for (int i = 0; i < count.length; i++) {
                weight += count[i] * Math.exp(theta[p] * (rough[i] - top));
            }
            theta[0] = theta[p] * top + Math.log(weight / failures);
        }
        return theta;
    }

    /** The standard normal deviate of a confidence. */
    static double deviate(double confidence) {
        Requires.share("confidence", confidence);
        return NORMAL.inverseCumulativeProbability(confidence);
    }

    /** The fit, in centred numbers, and what follows. */
    final class Solution {

        private final double[] theta;
        private final double logLikelihood;
        private final int iterations;
        private final double spread;
        private final double[] b;
        /** Of b (centred), then of ln σ unless σ is known. */
        private final double[][] covariance;

        private Solution(Newton.Maximum maximum, double[][] inner) {
            int p = centreOfX.length;
            boolean free = Double.isNaN(tau);
            theta = maximum.place().theta;
            logLikelihood = maximum.place().value;
            iterations = maximum.iterations();
            spread = 1 / (free ? theta[p] : tau);
            b = new double[p];
            for (int j = 0; j < p; j++) {
                b[j] = theta[j] * spread;
            }
            int m = theta.length;
            double[][] by = new double[m][m];
            for (int j = 0; j < p; j++) {
                by[j][j] = spread;
                if (free) {
                    by[j][p] = -b[j] * spread;
                }
            }
            if (free) {
                by[p][p] = -spread;
            }
            covariance = new double[m][m];
            for (int j = 0; j < m; j++) {
                for (int k = 0; k < m; k++) {
                    double sum = 0;
                    for (int r = 0; r < m; r++) {
                        for (int c = 0; c < m; c++) {
                            sum += by[j][r] * inner[r][c] * by[k][c];
                        }
                    }
                    covariance[j][k] = sum;
                }
            }
        }

        double logLikelihood() {
            return logLikelihood;
        }

        /** Estimated parameters. */
        int parameters() {
            return theta.length;
        }

        int iterations() {
            return iterations;
        }

        double spread() {
            return spread;
        }

        /** The coefficients for numbers as given, not centred. */
        double[] coefficients() {
            double[] result = b.clone();
            result[0] += centre;
            for (int j = 1; j < b.length; j++) {
                result[0] -= b[j] * centreOfX[j];
            }
            return result;
        }

        /** Covariance of the coefficients for numbers as given, then of ln σ unless it is known. */
        List<List<Double>> covariance() {
            int m = theta.length;
            double[][] by = new double[m][m];
            for (int j = 0; j < m; j++) {
                by[j][j] = 1;
            }
            for (int j = 1; j < b.length; j++) {
                by[0][j] = -centreOfX[j];
            }
            List<List<Double>> result = new ArrayList<>(m);
            for (int j = 0; j < m; j++) {
                List<Double> row = new ArrayList<>(m);
                for (int k = 0; k < m; k++) {
                    double sum = 0;
                    for (int r = 0; r < m; r++) {
                        for (int c = 0; c < m; c++) {
                            sum += by[j][r] * covariance[r][c] * by[k][c];
                        }
                    }
                    row.add(sum);
                }
                result.add(List.copyOf(row));
            }
            return List.copyOf(result);
        }

        /** μ at a stress. */
        double location(double[] stress) {
            double[] at = centred(stress);
            double sum = centre;
            for (int j = 0; j < b.length; j++) {
                sum += at[j] * b[j];
            }
            return sum;
        }

        /** What is asked for, with a bound at a deviate each; minus infinity and infinity give open ends. */
        Bounds bounds(Quantity quantity, double[] stress, double low, double high, Bounds.Method method) {
            return switch (quantity) {
                case Quantity.Shape() -> {
                    if (!Double.isNaN(tau)) {
                        yield Bounds.known(family.shape(spread));
                    }
                    boolean falling = family == Family.WEIBULL;
                    Profile profile = new SpreadProfile();
                    double a = profile.bound(falling ? -high : low, method);
                    double c = profile.bound(falling ? -low : high, method);
                    yield new Bounds(family.shape(spread), family.shape(Math.exp(falling ? c : a)),
                            family.shape(Math.exp(falling ? a : c)));
                }
                case Quantity.Survival(double time) -> {
                    Profile profile = new SurvivalProfile(Math.log(time) - centre, centred(stress));
                    yield new Bounds(family.survival(profile.estimate()), family.survival(profile.bound(-low, method)),
                            family.survival(profile.bound(-high, method)));
                }
                case Quantity.Scale() -> life(new LifeProfile(centred(stress), 0, false), low, high, method);
                case Quantity.Life(double failed) ->
                    life(new LifeProfile(centred(stress), family.quantile(failed), false), low, high, method);
                case Quantity.Mean() -> life(new LifeProfile(centred(stress), 0, true), low, high, method);
            };
        }

        private Bounds life(Profile profile, double low, double high, Bounds.Method method) {
            return new Bounds(Math.exp(profile.estimate() + centre), Math.exp(profile.bound(low, method) + centre),
                    Math.exp(profile.bound(high, method) + centre));
        }

        /** A coefficient other than the first. */
        Bounds coefficient(int j, double low, double high, Bounds.Method method) {
            Profile profile = new CoefficientProfile(j);
            return new Bounds(profile.estimate(), profile.bound(low, method), profile.bound(high, method));
        }

        private double standardError(double[] gradient) {
            double sum = 0;
            for (int j = 0; j < gradient.length; j++) {
                for (int k = 0; k < gradient.length; k++) {
                    sum += gradient[j] * covariance[j][k] * gradient[k];
                }
            }
            return Math.sqrt(sum);
        }

        /** Likelihood against one number q, all else at its most likely; q such that its estimate is nearly normal. */
        private abstract class Profile {

            private double[] warm;

            abstract double estimate();

            abstract double[] gradient();

            abstract double lowest();

            abstract double highest();

            /** The likelihood with q held. */
            abstract Likelihood held(double q);

            /** Theta of the estimate without what q replaces. */
            abstract double[] rest();

            /** Derivative of the held maximum by q. */
            abstract double slope(Likelihood.Place place, Likelihood likelihood);

            final double tau(Likelihood.Place place, Likelihood likelihood) {
                return likelihood.tauFree() ? place.theta[place.theta.length - 1] : likelihood.tau();
            }

            /** The q at which the signed root of the deviance (or its Wald approximation) is a given number. */
            final double bound(double deviate, Bounds.Method method) {
                if (Double.isInfinite(deviate)) {
                    return deviate;
                }
                double error = standardError(gradient());
                if (deviate == 0 || method == Bounds.Method.FISHER || Math.abs(deviate) < 1e-5) {
                    return estimate() + deviate * error;
                }
                return search(deviate, error);
            }

            private double search(double deviate, double error) {
                double wanted = Math.abs(deviate);
                double sign = Math.signum(deviate);
                double limit = sign > 0 ? highest() - estimate() : estimate() - lowest();
                double inner = 0;
                double innerRoot = 0;
                double outer = Double.NaN;
                double distance = Math.min(wanted * error, limit);
                warm = rest();
                for (int iteration = 0; iteration < 200; iteration++) {
                    double q = estimate() + sign * distance;
                    Likelihood likelihood = held(q);
                    Newton.Maximum maximum = Newton.maximise(likelihood, warm, range);
                    Likelihood.Place place = maximum.place();
                    if (maximum.end() == Newton.End.NOT_CONVERGED || !Double.isFinite(place.value)) {
                        // Too far for the place to start from: go half the way, from where the next start is nearer.
                        if (distance - inner < 1e-12 * (1 + distance)) {
                            throw new ArithmeticException("the likelihood was not maximised beside its maximum");
                        }
                        outer = Double.isNaN(outer) ? distance : Math.min(outer, distance);
                        distance = (inner + distance) / 2;
                        continue;
                    }
                    double root = Math.sqrt(2 * Math.max(0, logLikelihood - place.value));
                    double rise = root > 0 ? -sign * slope(place, likelihood) / root : 0;
                    if (Math.abs(root - wanted) < 1e-10 * wanted) {
                        return q;
                    }
                    if (root < wanted) {
                        if (distance >= limit) {
                            return sign * Double.POSITIVE_INFINITY;
                        }
                        inner = distance;
                        innerRoot = root;
                        warm = place.theta.clone();
                    } else {
                        outer = distance;
                    }
                    double next = rise > 0 ? distance + (wanted - root) / rise : Double.NaN;
                    if (Double.isNaN(outer)) {
                        double least = 1.1 * inner;
                        double most = 5 * inner;
                        distance = Math.min(next >= least && next <= most ? next : next < least ? least : most, limit);
                    } else {
                        if (outer - inner < 1e-14 * outer) {
                            return q;
                        }
                        distance = next > inner && next < outer && iteration < 100 ? next : (inner + outer) / 2;
                    }
                }
                throw new ArithmeticException("a likelihood-ratio bound was not found, last root " + innerRoot + " of " + wanted);
            }
        }

        /** Logarithm of the time by which a share has failed, or of mean life. */
        private final class LifeProfile extends Profile {

            private final double[] at;
            private final double shift;
            private final boolean mean;

            LifeProfile(double[] at, double shift, boolean mean) {
                this.at = at;
                this.shift = shift;
                this.mean = mean;
            }

            @Override
            double estimate() {
                double sum = mean ? family.logMean(spread)[0] : spread * shift;
                for (int j = 0; j < b.length; j++) {
                    sum += at[j] * b[j];
                }
                return sum;
            }

            @Override
            double[] gradient() {
                double[] result = Arrays.copyOf(at, theta.length);
                if (theta.length > b.length) {
                    result[b.length] = spread * (mean ? family.logMean(spread)[1] : shift);
                }
                return result;
            }

            @Override
            double lowest() {
                return -LOG_LIMIT - centre;
            }

            @Override
            double highest() {
                return LOG_LIMIT - centre;
            }

            @Override
            Likelihood held(double q) {
                return moved(q, at, shift, mean);
            }

            @Override
            double[] rest() {
                return Arrays.copyOfRange(theta, 1, theta.length);
            }

            @Override
            double slope(Likelihood.Place place, Likelihood likelihood) {
                return -tau(place, likelihood) * place.along;
            }
        }

        /** Standardised time: its survival is the one at a time. */
        private final class SurvivalProfile extends Profile {

            private final double time;
            private final double[] at;

            SurvivalProfile(double time, double[] at) {
                this.time = time;
                this.at = at;
            }

            @Override
            double estimate() {
                double sum = time;
                for (int j = 0; j < b.length; j++) {
                    sum -= at[j] * b[j];
                }
                return sum / spread;
            }

            @Override
            double[] gradient() {
                double[] result = new double[theta.length];
                for (int j = 0; j < b.length; j++) {
                    result[j] = -at[j] / spread;
                }
                if (theta.length > b.length) {
                    result[b.length] = -estimate();
                }
                return result;
            }

            @Override
            double lowest() {
                return Math.min(-STANDARD_LIMIT, estimate() - 1);
            }

            @Override
            double highest() {
                return Math.max(STANDARD_LIMIT, estimate() + 1);
            }

            @Override
            Likelihood held(double q) {
                return moved(time, at, q, false);
            }

            @Override
            double[] rest() {
                return Arrays.copyOfRange(theta, 1, theta.length);
            }

            @Override
            double slope(Likelihood.Place place, Likelihood likelihood) {
                return place.along;
            }
        }

        /** ln σ. */
        private final class SpreadProfile extends Profile {

            @Override
            double estimate() {
                return Math.log(spread);
            }

            @Override
            double[] gradient() {
                double[] result = new double[theta.length];
                result[b.length] = 1;
                return result;
            }

            @Override
            double lowest() {
                return estimate() - SPREAD_LIMIT;
            }

            @Override
            double highest() {
                return estimate() + SPREAD_LIMIT;
            }

            @Override
            Likelihood held(double q) {
                return new Likelihood(family, seen, first, second, x, count, ones(), constant, Math.exp(-q), 0, false);
            }

            @Override
            double[] rest() {
                return Arrays.copyOf(theta, b.length);
            }

            @Override
            double slope(Likelihood.Place place, Likelihood likelihood) {
                return -likelihood.tau() * place.byTau;
            }
        }

        /** A coefficient. */
        private final class CoefficientProfile extends Profile {

            private final int index;

            CoefficientProfile(int index) {
                this.index = index;
            }

            @Override
            double estimate() {
                return b[index];
            }

            @Override
            double[] gradient() {
                double[] result = new double[theta.length];
                result[index] = 1;
                return result;
            }

            @Override
            double lowest() {
                return estimate() - COEFFICIENT_LIMIT * standardError(gradient());
            }

            @Override
            double highest() {
                return estimate() + COEFFICIENT_LIMIT * standardError(gradient());
            }

            @Override
            Likelihood held(double q) {
                int n = count.length;
                double[] one = new double[n];
                double[] two = new double[n];
                double[] along = new double[n];
                double[][] w = new double[n][];
                for (int i = 0; i < n; i++) {
                    along[i] = x[i][index];
                    one[i] = first[i] - q * along[i];
                    two[i] = second[i] - q * along[i];
                    w[i] = without(x[i], index);
                }
                return new Likelihood(family, seen, one, two, w, count, along, constant, tau, 0, false);
            }

            @Override
            double[] rest() {
                return without(theta, index);
            }

            @Override
            double slope(Likelihood.Place place, Likelihood likelihood) {
                return -tau(place, likelihood) * place.along;
            }
        }
    }

    private Likelihood moved(double q, double[] at, double shift, boolean mean) {
        int n = count.length;
        double[] one = new double[n];
        double[] two = new double[n];
        double[][] w = new double[n][at.length - 1];
        for (int i = 0; i < n; i++) {
            one[i] = first[i] - q;
            two[i] = second[i] - q;
            for (int j = 1; j < at.length; j++) {
                w[i][j - 1] = x[i][j] - at[j];
            }
        }
        return new Likelihood(family, seen, one, two, w, count, ones(), constant, tau, shift, mean);
    }

    private static double[] without(double[] values, int index) {
        double[] result = new double[values.length - 1];
        System.arraycopy(values, 0, result, 0, index);
        System.arraycopy(values, index + 1, result, index, result.length - index);
        return result;
    }
}
