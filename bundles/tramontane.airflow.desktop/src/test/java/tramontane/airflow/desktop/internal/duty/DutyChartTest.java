package tramontane.airflow.desktop.internal.duty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tramontane.analysis.Chart;
import tramontane.analysis.Chart.Mark;
import tramontane.analysis.Chart.Points;
import tramontane.analysis.Chart.Role;
import tramontane.analysis.Chart.Series;
import tramontane.analysis.Chart.Shape;
import tramontane.analysis.Chart.Side;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.OperatingPoint;

class DutyChartTest {

    /** What can be seen in a drawing 1000 points wide. */
    private static final double PRECISION = 1e-3;

    /** Straight from 100 Pa to 0.1 m³/s at 3000 rpm, blown into a square resistance. */
    private static final String STRAIGHT = """
            {'format': 1,
             'airMovers': [{'id': 'F', 'width': '120 mm', 'height': '120 mm', 'ratedSpeed': '3000 rpm',
               'curves': [{'density': '1.2 kg/m³', 'flow': '0 0.05 0.1 m³/s', 'pressure': '100 50 0 Pa', 'power': '10 10 10 W', 'tolerance': '10 %'}]}],
             'airPath': {'bays': ['box'], 'passages': [
               {'id': 'fans', 'kind': 'bank', 'from': 'outside', 'to': 'box', 'mover': 'F'},
               {'id': 'out', 'kind': 'measured resistance', 'from': 'box', 'to': 'outside', 'quadratic': 10000}]},
             'conditions': [{'id': 'plain', 'pressure': '101325 Pa'}, {'id': 'hot day', 'outsideTemperature': '55 °C'},
                            {'id': 'slow', 'speed': '70 %'}]}
            """;

    /** Two movers with a dip, several duty points. */
    private static final String DIP = """
            {'format': 1,
             'airMovers': [{'id': 'F', 'width': '120 mm', 'height': '120 mm', 'ratedSpeed': '3000 rpm',
               'curves': [{'density': '1.2 kg/m³', 'flow': '0 0.01 0.015 0.025 0.04 0.05 m³/s', 'pressure': '80 60 18 60 40 0 Pa'}]}],
             'airPath': {'bays': ['box'], 'passages': [
               {'id': 'fans', 'kind': 'bank', 'from': 'outside', 'to': 'box', 'mover': 'F', 'across': 2},
               {'id': 'out', 'kind': 'measured resistance', 'from': 'box', 'to': 'outside', 'quadratic': 21250}]}}
            """;

    private static DutyChart.Asked asked(String bank, String front, String... others) {
        return new DutyChart.Asked(bank, front, Set.of(others), true, true, true);
    }

    private static Chart chart(Evaluation evaluation, DutyChart.Asked asked) {
        DutyChart.Answer answer = DutyChart.of(evaluation, asked, Evaluated.PHYSICS, () -> false);
        return answer.chart().orElseThrow(() -> new AssertionError(answer.why()));
    }

    /** Distance of a point from the nearest of some lines, over the extents of the chart. */
    private static double off(Chart chart, List<Series> lines, double x, double y) {
        double wide = chart.extent().length();
        double high = chart.extent(Side.LEFT).length();
        double least = Double.POSITIVE_INFINITY;
        for (Series series : lines) {
            Points line = series.points();
            for (int i = 1; i < line.size(); i++) {
                double x1 = line.x(i - 1) / wide;
                double y1 = line.y(i - 1) / high;
                double dx = line.x(i) / wide - x1;
                double dy = line.y(i) / high - y1;
                double px = x / wide - x1;
                double py = y / high - y1;
                double along = dx == 0 && dy == 0 ? 0 : Math.clamp((px * dx + py * dy) / (dx * dx + dy * dy), 0, 1);
                least = Math.min(least, Math.hypot(px - along * dx, py - along * dy));
            }
        }
        return least;
    }

    private static List<Series> bank(Chart chart) {
        return chart.series().stream().filter(each -> each.role() == Role.CURVE && each.look().colour() == 0 && !each.look().faint()).toList();
    }

    private static List<Series> system(Chart chart, String caseId) {
        return chart.series().stream().filter(each -> each.name().equals("system, " + caseId)).toList();
    }

    private static Mark mark(Chart chart, String label) {
        return chart.marks().stream().filter(mark -> mark.label().equals(label)).findFirst()
                .orElseThrow(() -> new AssertionError(chart.marks().toString()));
    }

    static Stream<Path> samples() throws IOException {
        return Evaluated.samples().stream();
    }

    @ParameterizedTest
    @MethodSource("samples")
    void everyDutyPointOfASampleLiesWhereTheCurvesCross(Path sample) {
        Evaluation evaluation = Evaluated.of(Evaluated.sample(sample));
        Set<String> ids = evaluation.cases().stream().map(each -> each.concrete().id()).collect(Collectors.toSet());
        int seen = 0;
        for (Engine.Case each : evaluation.cases()) {
            OperatingPoint point = evaluation.data(OperatingPoint.class, each.concrete().id()).orElseThrow();
            for (OperatingPoint.BankPoint bank : point.banks()) {
                Chart chart = chart(evaluation, new DutyChart.Asked(bank.bank(), each.concrete().id(), ids, true, true, true));
                Mark duty = mark(chart, bank.stable() ? "duty point" : "unstable duty point");
                assertEquals(bank.flow(), duty.x());
                assertEquals(bank.pressure(), duty.y());
                assertEquals(bank.stable() ? Shape.DISC : Shape.RING, duty.shape());
                double fromBank = off(chart, bank(chart), duty.x(), duty.y());
                double fromSystem = off(chart, system(chart, each.concrete().id()), duty.x(), duty.y());
                assertTrue(fromBank < PRECISION, () -> each.concrete().id() + ": off the bank's curve by " + fromBank);
                assertTrue(fromSystem < PRECISION, () -> each.concrete().id() + ": off the system curve by " + fromSystem);
                for (Engine.Case other : evaluation.cases()) {
                    String id = other.concrete().id();
                    if (!id.equals(each.concrete().id())) {
                        Mark there = mark(chart, "duty point, " + id);
                        assertTrue(off(chart, system(chart, id), there.x(), there.y()) < PRECISION);
                        List<Series> own = chart.series().stream().filter(line -> line.name().equals(bank.bank() + ", " + id)).toList();
                        // one that cannot be told from the curve in front is not drawn, so the point lies on that but for what can be seen
                        assertTrue(off(chart, own.isEmpty() ? bank(chart) : own, there.x(), there.y()) < (own.isEmpty() ? 0.01 : PRECISION));
                    }
                }
                seen++;
            }
        }
        assertTrue(seen > 0);
    }

    @Test
    void aStraightCurveMeetsASquareWhereTheFormulaSays() {
        Evaluation evaluation = Evaluated.of(Evaluated.design(STRAIGHT));
        Chart chart = chart(evaluation, asked("fans", "plain"));
        double density = evaluation.data(OperatingPoint.class, "plain").orElseThrow().banks().getFirst().density();
        // r (100 - 1000 q) = r 10⁴ q², r the density over 1.2 kg/m³, which both follow
        double flow = (-1000 + Math.sqrt(1000 * 1000 + 4 * 1e4 * 100)) / (2 * 1e4);
        Mark duty = mark(chart, "duty point");
        assertEquals(flow, duty.x(), 1e-6 * flow);
        assertEquals(density / 1.2 * 1e4 * flow * flow, duty.y(), 1e-4);
        assertEquals(duty.y(), bank(chart).getFirst().at(flow).orElseThrow(), 1e-3);
        assertEquals(duty.y(), system(chart, "plain").getFirst().at(flow).orElseThrow(), 1e-3);
        for (double q : new double[] {0, 0.02, 0.04, 0.06, 0.09}) {
            assertEquals(density / 1.2 * (100 - 1000 * q), bank(chart).getFirst().at(q).orElseThrow(), 1e-3);
            // the square is drawn in pieces of 0.003 m³/s, which lie above it by a quarter of their square at most
            assertEquals(density / 1.2 * 1e4 * q * q, system(chart, "plain").getFirst().at(q).orElseThrow(), 1e4 * 0.003 * 0.003 / 4);
        }
    }

    @Test
    void otherSpeedsFollowTheFanLaws() {
        Chart chart = chart(Evaluated.of(Evaluated.design(STRAIGHT)), asked("fans", "plain"));
        Series full = bank(chart).getFirst();
        assertEquals("fans, 3000 rpm", full.name());
        List<Series> others = chart.series().stream().filter(each -> each.name().startsWith("at ")).toList();
        assertEquals(List.of("at 80 %, 2400 rpm", "at 60 %, 1800 rpm", "at 40 %, 1200 rpm"), others.stream().map(Series::name).toList());
        double[] settings = {0.8, 0.6, 0.4};
        for (int i = 0; i < settings.length; i++) {
            double s = settings[i];
            assertTrue(others.get(i).look().faint());
            for (double q : new double[] {0, 0.03, 0.07}) {
                assertEquals(s * s * full.at(q).orElseThrow(), others.get(i).at(s * q).orElseThrow(), 1e-3);
            }
        }
    }

    @Test
    void atASetSpeedTheCurveAtFullSpeedIsAnother() {
        Chart chart = chart(Evaluated.of(Evaluated.design(STRAIGHT)), asked("fans", "slow"));
        assertEquals("fans, 2100 rpm", bank(chart).getFirst().name());
        assertEquals(List.of("at 100 %, 3000 rpm", "at 80 %, 2400 rpm", "at 60 %, 1800 rpm", "at 40 %, 1200 rpm"),
                chart.series().stream().map(Series::name).filter(name -> name.startsWith("at ")).toList());
    }

    @Test
    void theToleranceIsThatOfTheCurve() {
        Chart chart = chart(Evaluated.of(Evaluated.design(STRAIGHT)), asked("fans", "plain"));
        assertEquals(1, chart.bands().size());
        assertEquals("tolerance ±10 %", chart.bands().getFirst().name());
        for (double q : new double[] {0, 0.04, 0.08}) {
            double pressure = bank(chart).getFirst().at(q).orElseThrow();
            assertEquals(0.9 * pressure, chart.bands().getFirst().lower().at(q).orElseThrow(), 1e-6);
            assertEquals(1.1 * pressure, chart.bands().getFirst().upper().at(q).orElseThrow(), 1e-6);
        }
    }

    @Test
    void efficiencyIsAirPowerOverElectricalPower() {
        Evaluation evaluation = Evaluated.of(Evaluated.design(STRAIGHT));
        Chart chart = chart(evaluation, asked("fans", "plain"));
        Series efficiency = chart.series().stream().filter(each -> each.side() == Side.RIGHT).findFirst().orElseThrow();
        double density = evaluation.data(OperatingPoint.class, "plain").orElseThrow().banks().getFirst().density() / 1.2;
        assertEquals(density * 0.05 * 50 / (10 * density), efficiency.at(0.05).orElseThrow(), 1e-6);
        assertTrue(chart(evaluation, new DutyChart.Asked("fans", "plain", Set.of(), false, false, false)).right().isEmpty());
    }

    @Test
    void theOtherCaseHasASystemCurveAndABankCurveWhereThatDiffers() {
        Chart chart = chart(Evaluated.of(Evaluated.design(STRAIGHT)), asked("fans", "plain", "hot day", "slow"));
        List<String> names = chart.series().stream().map(Series::name).toList();
        assertTrue(names.containsAll(List.of("system, plain", "system, hot day", "system, slow", "fans, hot day", "fans, slow")), names.toString());
        assertEquals(names.size(), names.stream().distinct().count());
        Set<Integer> colours = chart.series().stream().filter(each -> each.role() == Role.SYSTEM).map(each -> each.look().colour())
                .collect(Collectors.toSet());
        assertEquals(3, colours.size(), "each system curve has its colour");
    }

    @Test
    void allDutyPointsOfACurveWithADipAreMarked() {
        Evaluation evaluation = Evaluated.of(Evaluated.design(DIP));
        String front = evaluation.cases().getFirst().concrete().id();
        Chart chart = chart(evaluation, asked("fans", front));
        assertEquals("stall region", chart.regions().getFirst().label());
        assertEquals(0.05, chart.regions().getFirst().to().orElseThrow(), 1e-6);
        assertTrue(chart.marks().size() >= 3, () -> chart.marks().toString());
        assertEquals(1, chart.marks().stream().filter(mark -> mark.label().equals("duty point")).count());
        assertTrue(chart.marks().stream().anyMatch(mark -> mark.label().equals("unstable duty point")));
        for (Mark mark : chart.marks()) {
            assertEquals(mark.label().startsWith("unstable"), mark.shape() == Shape.RING, mark.toString());
            assertTrue(off(chart, system(chart, front), mark.x(), mark.y()) < PRECISION, mark.toString());
            if (!mark.label().contains("unevenly")) {
                assertTrue(off(chart, bank(chart), mark.x(), mark.y()) < PRECISION, mark.toString());
            }
        }
    }

    @Test
    void aFailedMoverBendsTheCurve() {
        Evaluation evaluation = Evaluated.of(Evaluated.design(DIP.replace("}]}}", "}]}, 'conditions': [{'id': 'one off', 'failed': "
                + "[{'bank': 'fans', 'position': 1, 'state': 'locked'}]}]}")));
        Chart chart = chart(evaluation, asked("fans", "one off"));
        Mark duty = mark(chart, "duty point");
        assertTrue(off(chart, bank(chart), duty.x(), duty.y()) < PRECISION);
        assertTrue(off(chart, system(chart, "one off"), duty.x(), duty.y()) < PRECISION);
        // air comes back through the mover that stands, so at rest there is less pressure than one mover gives
        assertTrue(bank(chart).stream().allMatch(piece -> piece.points().ys().max().orElse(0) < 78));
    }

    @Test
    void nothingIsDrawnBelowNothing() {
        Chart chart = chart(Evaluated.of(Evaluated.design(STRAIGHT)), asked("fans", "plain", "hot day"));
        chart.series().stream().filter(each -> each.side() == Side.LEFT).forEach(each ->
                assertTrue(each.points().ys().min().orElseThrow() >= -1e-9, each::name));
        assertEquals(0, chart.extent(Side.LEFT).from());
        assertEquals(0, chart.extent().from());
    }

    @Test
    void itSaysWhyThereIsNoChart() {
        Evaluation evaluation = Evaluated.of(Evaluated.design(STRAIGHT));
        assertEquals("The design has no bank rear.", DutyChart.of(evaluation, asked("rear", "plain"), Evaluated.PHYSICS, () -> false).why());
        assertEquals("Case noon has not been computed yet.", DutyChart.of(evaluation, asked("fans", "noon"), Evaluated.PHYSICS, () -> false).why());
        DutyChart.Answer unknown = DutyChart.of(evaluation, asked("fans", "plain"), new DutyChart.Physics(List.of(), List.of()), () -> false);
        assertEquals("The curves of bank fans cannot be made from what is loaded now.", unknown.why());
        Evaluation broken = Evaluated.of(Evaluated.design(STRAIGHT.replace("'quadratic': 10000", "'quadratic': -5")
                .replace("'kind': 'measured resistance'", "'kind': 'maze'")));
        String why = DutyChart.of(broken, asked("fans", "plain"), Evaluated.PHYSICS, () -> false).why();
        assertTrue(why.startsWith("No duty point in case plain: ") && why.contains("maze"), why);
    }

    @Test
    void whoNoLongerWantsItGetsNone() {
        DutyChart.Answer answer = DutyChart.of(Evaluated.of(Evaluated.design(DIP)), asked("fans", "nominal"), Evaluated.PHYSICS, () -> true);
        assertTrue(answer.chart().isEmpty());
        assertFalse(answer.why().isEmpty());
    }

    @Test
    void aLineIsCutWhereItLeaves() {
        Points line = Points.of(new double[] {0, 1, 2, 3, 4}, new double[] {-2, 2, 4, 2, -2});
        assertEquals(Points.of(new double[] {0.5, 1, 2, 3, 3.5}, new double[] {0, 2, 4, 2, 0}), DutyChart.within(line, 0, 10));
        assertEquals(line, DutyChart.within(line, -2, 4));
        assertEquals(0, DutyChart.within(line, 5, 6).size());
    }

    /** Not judged, as it hangs on the machine; prints what a chart takes of a processor once everything is warm. */
    public static void main(String[] args) {
        Evaluation evaluation = Evaluated.of(Evaluated.sample(Path.of("../../product/samples/observatory.tramontane.json")));
        Set<String> ids = evaluation.cases().stream().map(each -> each.concrete().id()).collect(Collectors.toSet());
        double[] millis = new double[300];
        for (int i = 0; i < millis.length; i++) {
            long begin = java.lang.management.ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            chart(evaluation, new DutyChart.Asked("fans", "nominal", ids, true, true, true));
            millis[i] = (java.lang.management.ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - begin) / 1e6;
        }
        java.util.Arrays.sort(millis, 100, 300);
        System.out.printf("first %.1f ms, then median %.2f ms, slowest %.2f ms%n", millis[0], millis[200], millis[299]);
    }
}
