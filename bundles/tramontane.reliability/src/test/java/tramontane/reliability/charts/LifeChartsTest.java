package tramontane.reliability.charts;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import tramontane.analysis.Chart;
import tramontane.analysis.Chart.Extent;
import tramontane.analysis.Chart.Mark;
import tramontane.analysis.Chart.Points;
import tramontane.analysis.Chart.Scale;
import tramontane.analysis.Chart.Side;
import tramontane.physics.units.UnitSystem;
import tramontane.reliability.charts.LifeCharts.Condition;
import tramontane.reliability.charts.LifeCharts.Curve;
import tramontane.reliability.charts.LifeCharts.Fit;
import tramontane.reliability.charts.LifeCharts.Observed;
import tramontane.reliability.statistics.Exponential;
import tramontane.reliability.statistics.LifeDistribution;
import tramontane.reliability.statistics.Lognormal;
import tramontane.reliability.statistics.Weibull;
import tramontane.report.ChartColours;
import tramontane.report.ChartSvg;

class LifeChartsTest {

    private static final double HOUR = 3600;
    private static final double YEAR = 8760 * HOUR;
    private static final double[] TIMES = Arrays.stream(new double[] {16, 34, 53, 75, 93, 120}).map(hours -> hours * HOUR).toArray();
    /** Median ranks of six: qbeta(0.5, 1:6, 6:1) of R. */
    private static final double[] FAILED = {0.1091013, 0.26445, 0.4214072, 0.5785928, 0.73555, 0.8908987};
    private static final Weibull WEIBULL = new Weibull(73.5 * HOUR, 1.93);
    private static final Observed UNITS = Observed.of("failed units", TIMES, FAILED);

    private static List<String> texts(Chart chart) throws Exception {
        for (ChartColours colours : List.of(ChartColours.LIGHT, ChartColours.DARK)) {
            String svg = ChartSvg.of(chart, UnitSystem.METRIC, 720, 480, colours);
            assertFalse(svg.contains("NaN") || svg.contains("Infinity"));
        }
        Document document = DocumentBuilderFactory.newInstance().newDocumentBuilder()
                .parse(new InputSource(new StringReader(ChartSvg.of(chart, UnitSystem.METRIC, 720, 480, ChartColours.LIGHT))));
        NodeList nodes = document.getElementsByTagName("text");
        return IntStream.range(0, nodes.getLength()).mapToObj(i -> nodes.item(i).getTextContent()).toList();
    }

    private static void straight(Scale scale, LifeDistribution distribution) {
        Chart chart = LifeCharts.probability("six units", scale, List.of(UNITS), List.of(new Fit("fit", distribution)));
        Points line = chart.series().getFirst().points();
        Extent x = new Extent(line.x(1), line.x(line.size() - 1));
        Extent y = new Extent(line.y(1), line.y(line.size() - 1));
        for (int i = 1; i < line.size(); i++) {
            assertEquals(scale.share(y, line.y(i)), chart.x().scale().share(x, line.x(i)), 1e-9, scale.name());
        }
    }

    @Test
    void onItsOwnScaleADistributionIsAStraightLine() {
        straight(Scale.WEIBULL, WEIBULL);
        straight(Scale.NORMAL, new Lognormal(54 * HOUR, 0.72));
        straight(Scale.EXPONENTIAL, new Exponential(65 * HOUR));
        assertThrows(IllegalArgumentException.class, () -> LifeCharts.probability("", Scale.LOG, List.of(), List.of()));
    }

    @Test
    void aProbabilityPlotHasItsUnitsLineBandAndMarks() throws Exception {
        double[] shares = {0.01, 0.1, 0.5, 0.9, 0.99};
        double[] lower = Arrays.stream(shares).map(share -> WEIBULL.life(share) / 1.5).toArray();
        double[] upper = Arrays.stream(shares).map(share -> WEIBULL.life(share) * 1.5).toArray();
        Chart chart = LifeCharts.probability("six units", Scale.WEIBULL, List.of(UNITS),
                List.of(new Fit("Weibull", WEIBULL).with("90 % bounds", shares, lower, upper)));
        assertEquals(Points.of(TIMES, FAILED), chart.series().get(1).points());
        // by hand: 73.5 h (-ln 0.9)^(1/1.93)
        Mark tenth = chart.marks().getLast();
        assertEquals(22.9036, tenth.x() / HOUR, 1e-4);
        assertEquals(0.1, tenth.y());
        assertEquals(73.5, chart.marks().getFirst().x() / HOUR, 1e-9);
        for (double time : new double[] {20 * HOUR, 70 * HOUR}) {
            double low = chart.bands().getFirst().lower().at(time, Scale.LOG, Scale.WEIBULL).orElseThrow();
            double high = chart.bands().getFirst().upper().at(time, Scale.LOG, Scale.WEIBULL).orElseThrow();
            assertTrue(low < 1 - WEIBULL.survival(time) && 1 - WEIBULL.survival(time) < high);
        }
        List<String> texts = texts(chart);
        assertTrue(texts.containsAll(List.of("six units", "time (h)", "failed (%)", "L10", "63.2 %", "1", "10", "50", "63.2", "90", "99", "20", "100",
                "failed units", "Weibull", "90 % bounds")), texts.toString());
    }

    @Test
    void marksOfSeveralFitsSayWhichOnesTheyAre() {
        Chart chart = LifeCharts.probability("", Scale.NORMAL, List.of(UNITS),
                List.of(new Fit("lognormal", new Lognormal(54 * HOUR, 0.72)), new Fit("Weibull", WEIBULL)));
        assertEquals(List.of("63.2 %, lognormal", "L10, lognormal", "63.2 %, Weibull", "L10, Weibull"), chart.marks().stream().map(Mark::label).toList());
        assertEquals(2, chart.series().stream().limit(2).map(Chart.Series::look).distinct().count());
    }

    @Test
    void aPlotReachesAsFarAsItsUnits() {
        Chart chart = LifeCharts.probability("", Scale.WEIBULL, List.of(Observed.of("units", new double[] {HOUR, 500 * HOUR, 600 * HOUR},
                new double[] {0.0001, 0.9999, 1})), List.of(new Fit("", WEIBULL)));
        assertEquals(0.0001, chart.series().getFirst().points().y(0));
        assertTrue(chart.extent(Side.LEFT).holds(0.9999) && !chart.extent(Side.LEFT).holds(1));
    }

    @Test
    void survivalOverYearsIsInYears() throws Exception {
        double[] times = IntStream.rangeClosed(0, 80).mapToDouble(i -> i * 0.15 * YEAR).toArray();
        LifeDistribution life = new Weibull(10 * YEAR, 2);
        double[] shares = Arrays.stream(times).map(life::survival).toArray();
        Curve fan = Curve.of("one fan", times, shares).with("bounds", times, Arrays.stream(shares).map(share -> share * share).toArray(),
                Arrays.stream(shares).map(Math::sqrt).toArray());
        Chart chart = LifeCharts.survival("tray", List.of(fan), 6 * YEAR);
        assertEquals(new Extent(0, 12 * YEAR), chart.extent());
        assertEquals(Math.exp(-0.36), chart.marks().getFirst().y(), 1e-12);
        List<String> texts = texts(chart);
        assertTrue(texts.containsAll(List.of("time (year)", "survival (%)", "69.8 % at the end", "after the service life", "2", "12", "100")),
                texts.toString());
        assertTrue(ChartSvg.description(chart, UnitSystem.SI).contains("at 6.00 year"));
    }

    @Test
    void survivalOverHoursIsInHoursAndSeveralCurvesAreNamed() throws Exception {
        double[] times = {0, 10 * HOUR, 10 * HOUR, 100 * HOUR};
        Chart chart = LifeCharts.survival("", List.of(Curve.of("a", times, new double[] {1, 1, 0.5, 0.5}), Curve.of("b", times, new double[] {1, 1, 1, 1}),
                Curve.of("short", new double[] {0, HOUR}, new double[] {1, 0.9})), 50 * HOUR);
        assertEquals(List.of("a: 50.0 %", "b: 100 %"), chart.marks().stream().map(Mark::label).toList());
        assertTrue(texts(chart).contains("time (h)"));
        assertThrows(IllegalArgumentException.class, () -> LifeCharts.survival("", List.of(), 0));
    }

    @Test
    void belowTheRatedTemperatureLifeIsExtrapolated() throws Exception {
        double[] kelvin = IntStream.rangeClosed(0, 50).mapToDouble(i -> 293.15 + i).toArray();
        double[] life = Arrays.stream(kelvin).map(each -> 20_000 * HOUR * Math.exp(8000 * (1 / each - 1 / 333.15))).toArray();
        Chart chart = LifeCharts.temperature("fan", "life L10", List.of(Curve.of("L10", kelvin, life).with("0.6 to 0.8 eV", kelvin,
                Arrays.stream(life).map(each -> each / 2).toArray(), Arrays.stream(life).map(each -> each * 2).toArray())), OptionalDouble.of(313.15),
                List.of(new Condition("hot day", 318.15, life[25])));
        assertEquals(Scale.LOG, chart.y().scale());
        assertEquals(OptionalDouble.of(313.15), chart.regions().getFirst().to());
        List<String> texts = texts(chart);
        assertTrue(texts.containsAll(List.of("air temperature (°C)", "life L10 (h)", "extrapolated", "hot day", "10000", "20000", "100000")), texts.toString());
        assertTrue(LifeCharts.temperature("", "life", List.of(), OptionalDouble.empty(), List.of()).regions().isEmpty());
    }

    @Test
    void curvesRise() {
        assertThrows(IllegalArgumentException.class, () -> Curve.of("", new double[] {1, 0}, new double[] {1, 1}));
        assertThrows(IllegalArgumentException.class, () -> Curve.of("", new double[] {1}, new double[] {1}));
    }
}
