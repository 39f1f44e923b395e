package tramontane.reliability.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static tramontane.reliability.statistics.Bounds.Method.LIKELIHOOD_RATIO;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Against R, survival::survreg and likelihood-ratio bounds by a profile in R: lifefit.R beside the tables. */
class LifeFitGoldenTest {

    private static final double TOLERANCE = 1e-5;

    /** What R fitted; fields that it left empty are NaN. */
    record Golden(String set, Family family, Map<String, Double> numbers, List<StressTest> tests) {

        double at(String column) {
            return numbers.get(column);
        }

        boolean stressed() {
            return !Double.isNaN(at("b1"));
        }

        LifeData data() {
            return tests.get(0).data();
        }

        @Override
        public String toString() {
            return set + " " + family.word();
        }
    }

    private static List<String[]> table(String name) throws IOException {
        try (BufferedReader reader = new BufferedReader(
                new InputStreamReader(LifeFitGoldenTest.class.getResourceAsStream(name), StandardCharsets.UTF_8))) {
            return reader.lines().filter(each -> !each.startsWith("#")).map(each -> each.split(",", -1)).toList();
        }
    }

    private static double number(String text) {
        return text.isEmpty() ? Double.NaN : text.equals("Inf") ? Double.POSITIVE_INFINITY : Double.parseDouble(text);
    }

    static Stream<Golden> golden() throws IOException {
        Map<String, Map<Double, List<Observation>>> data = new LinkedHashMap<>();
        table("lifefit-data.csv").stream().skip(1).forEach(row -> data.computeIfAbsent(row[0], key -> new LinkedHashMap<>())
                .computeIfAbsent(number(row[4]), key -> new ArrayList<>())
                .add(new Observation(number(row[1]), number(row[2]), (int) number(row[3]))));
        List<String[]> rows = table("lifefit-golden.csv");
        String[] head = rows.get(0);
        return rows.stream().skip(1).map(row -> {
            Map<String, Double> numbers = new LinkedHashMap<>();
            for (int i = 2; i < head.length; i++) {
                numbers.put(head[i], number(row[i]));
            }
            List<StressTest> tests = data.get(row[0]).entrySet().stream()
                    .map(each -> StressTest.at(temperature(row[0], each.getKey()), new LifeData(each.getValue()))).toList();
            return new Golden(row[0], Family.valueOf(row[1].toUpperCase(Locale.ROOT)), numbers, tests);
        });
    }

    private static double temperature(String set, double x) {
        return set.startsWith("arrhenius") ? 1 / (Acceleration.BOLTZMANN * x) : set.startsWith("tenkelvin") ? 10 * x : 300;
    }

    static Stream<Golden> alike() throws IOException {
        return golden().filter(each -> !each.stressed());
    }

    static Stream<Golden> stressed() throws IOException {
        return golden().filter(Golden::stressed);
    }

    private static void near(String what, double expected, double actual) {
        if (Double.isInfinite(expected)) {
            assertEquals(expected, actual, what);
        } else {
            assertEquals(expected, actual, TOLERANCE * Math.abs(expected), what);
        }
    }

    @Test
    void tableIsLarge() throws IOException {
        assertTrue(golden().map(Golden::set).distinct().count() >= 35);
        assertTrue(golden().count() >= 105);
    }

    @ParameterizedTest
    @MethodSource("alike")
    void fitsAgree(Golden golden) {
        LifeFit fit = LifeFit.of(golden.data(), golden.family()).orElseThrow();
        near("location", golden.at("b0"), fit.location());
        near("spread", golden.at("sigma"), fit.spread());
        near("log-likelihood", golden.at("loglik"), fit.logLikelihood());
        near("variance of location", golden.at("v00"), fit.covariance().get(0).get(0));
        if (!golden.family().shapeKnown()) {
            double size = Math.sqrt(golden.at("v00") * golden.at("vss"));
            assertEquals(golden.at("v01"), fit.covariance().get(0).get(1), TOLERANCE * size);
            near("variance of ln spread", golden.at("vss"), fit.covariance().get(1).get(1));
        }
    }

    @ParameterizedTest
    @MethodSource("alike")
    void likelihoodRatioBoundsAgree(Golden golden) {
        LifeFit fit = LifeFit.of(golden.data(), golden.family()).orElseThrow();
        Bounds life = fit.bounds(Quantity.life(0.1), 0.9, LIKELIHOOD_RATIO);
        near("L10 lower", golden.at("l10low"), life.lower());
        near("L10 upper", golden.at("l10high"), life.upper());
        Bounds mean = fit.bounds(Quantity.mean(), 0.9, LIKELIHOOD_RATIO);
        near("mean lower", golden.at("meanlow"), mean.lower());
        near("mean upper", golden.at("meanhigh"), mean.upper());
        Bounds survival = fit.bounds(Quantity.survival(golden.at("time")), 0.9, LIKELIHOOD_RATIO);
        near("survival lower", golden.at("survlow"), survival.lower());
        near("survival upper", golden.at("survhigh"), survival.upper());
        if (!golden.family().shapeKnown()) {
            Bounds shape = fit.bounds(Quantity.shape(), 0.9, LIKELIHOOD_RATIO);
            boolean weibull = golden.family() == Family.WEIBULL;
            near("shape lower", weibull ? 1 / golden.at("sigmahigh") : golden.at("sigmalow"), shape.lower());
            near("shape upper", weibull ? 1 / golden.at("sigmalow") : golden.at("sigmahigh"), shape.upper());
        }
    }

    @ParameterizedTest
    @MethodSource("stressed")
    void accelerationAgrees(Golden golden) {
        boolean arrhenius = golden.set().startsWith("arrhenius");
        Acceleration fit = Acceleration.of(golden.tests(), golden.family(),
                arrhenius ? Acceleration.Law.ARRHENIUS : Acceleration.Law.PER_TEN_KELVIN).orElseThrow();
        double sign = arrhenius ? 1 : -1;
        near("b0", golden.at("b0"), fit.coefficients().get(0));
        near("b1", golden.at("b1"), sign * fit.coefficients().get(1));
        near("spread", golden.at("sigma"), fit.spread());
        near("log-likelihood", golden.at("loglik"), fit.logLikelihood());
        near("variance of b0", golden.at("v00"), fit.covariance().get(0).get(0));
        near("covariance", golden.at("v01"), sign * fit.covariance().get(0).get(1));
        near("variance of b1", golden.at("v11"), fit.covariance().get(1).get(1));
        if (!golden.family().shapeKnown()) {
            near("variance of ln spread", golden.at("vss"), fit.covariance().get(2).get(2));
        }
        Bounds effect = fit.temperatureEffect(0.9, LIKELIHOOD_RATIO);
        near("effect lower", arrhenius ? golden.at("b1low") : Math.exp(-golden.at("b1high")), effect.lower());
        near("effect upper", arrhenius ? golden.at("b1high") : Math.exp(-golden.at("b1low")), effect.upper());
    }
}
