package tramontane.desktop.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tramontane.analysis.Chart;
import tramontane.analysis.Chart.Axis;
import tramontane.analysis.Chart.Extent;
import tramontane.analysis.Chart.Look;
import tramontane.analysis.Chart.Mark;
import tramontane.analysis.Chart.Points;
import tramontane.analysis.Chart.Role;
import tramontane.analysis.Chart.Series;
import tramontane.analysis.Chart.Shape;
import tramontane.analysis.Chart.Side;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;

class ChartStateTest {

    private static final Chart CHART = Chart.of("fans", new Axis("flow", QuantityKind.FLOW, Optional.of(new Extent(0, 10))),
            new Axis("static pressure", QuantityKind.PRESSURE, Optional.of(new Extent(0, 100))))
            .withRight(new Axis("efficiency", QuantityKind.FRACTION, Optional.of(new Extent(0, 0.5))))
            .with(new Series("bank", Role.CURVE, Look.line(0), Points.of(new double[] {0, 10}, new double[] {100, 0})))
            .with(new Series("efficiency", Role.BESIDE, Look.line(1), Side.RIGHT, Points.of(new double[] {2, 8}, new double[] {0.1, 0.4}), 2))
            .with(new Mark("duty point", 6, 40, Shape.DISC, 0)).with(new Mark("unstable duty point", 3, 70, Shape.RING, 0));

    private static final ChartState STATE = ChartState.EMPTY.with(Optional.of(CHART));

    private static void sees(double x1, double x2, double y1, double y2, ChartState state) {
        Chart seen = state.seen().orElseThrow();
        assertEquals(x1, seen.extent().from(), 1e-9);
        assertEquals(x2, seen.extent().to(), 1e-9);
        assertEquals(y1, seen.extent(Side.LEFT).from(), 1e-9);
        assertEquals(y2, seen.extent(Side.LEFT).to(), 1e-9);
    }

    @Test
    void zoomingLeavesThePlaceWhereItIs() {
        ChartState closer = STATE.zoom(2, 0.25, 0.5);
        sees(1.25, 6.25, 25, 75, closer);
        sees(0, 10, 0, 100, closer.zoom(0.5, 0.25, 0.5));
    }

    @Test
    void aRectangleIsSeenWhicheverWayItWasDrawn() {
        sees(2, 6, 10, 40, STATE.zoomTo(0.6, 0.1, 0.2, 0.4));
        assertSame(STATE, STATE.zoomTo(0.5, 0.1, 0.5, 0.4));
    }

    @Test
    void panningMovesWhatIsSeen() {
        sees(1, 11, -20, 80, STATE.pan(0.1, -0.2));
    }

    @Test
    void theRightAxisKeepsInStep() {
        Extent right = STATE.zoomTo(0, 0.2, 1, 0.6).seen().orElseThrow().extent(Side.RIGHT);
        assertEquals(0.1, right.from(), 1e-12);
        assertEquals(0.3, right.to(), 1e-12);
    }

    @Test
    void theWindowStaysWhileChartsComeAndGoUntilAllIsSeenAgain() {
        ChartState zoomed = STATE.zoomTo(0.2, 0.1, 0.6, 0.4);
        ChartState later = zoomed.with(Optional.empty()).with(Optional.of(CHART.with(new Mark("best", 9, 9, Shape.DIAMOND, 1))));
        sees(2, 6, 10, 40, later);
        sees(0, 10, 0, 100, later.fit());
    }

    @Test
    void nobodyGetsLost() {
        ChartState far = STATE;
        ChartState near = STATE;
        for (int i = 0; i < 200; i++) {
            far = far.zoom(1 / ChartState.STEP, 0.5, 0.5);
            near = near.zoom(ChartState.STEP, 0.3, 0.3);
        }
        assertTrue(far.seen().orElseThrow().extent().length() < 201);
        assertTrue(near.seen().orElseThrow().extent().length() > 0.0009);
        assertSame(ChartState.EMPTY, ChartState.EMPTY.zoom(2, 0, 0).pan(1, 1).step(1).toMark(true));
    }

    @Test
    void valuesAreReadOffWithTheirUnits() {
        ChartState state = STATE.at(5);
        assertEquals("flow 5.00 m³/s   bank 50.0 Pa   efficiency 25 %", state.reading(UnitSystem.METRIC.with(QuantityKind.FLOW,
                tramontane.physics.units.Units.display(QuantityKind.FLOW, UnitSystem.SI))));
        assertEquals(List.of("flow", "bank"), STATE.at(1).readings().stream().map(ChartState.Reading::name).toList());
        assertEquals("", STATE.reading(UnitSystem.SI));
        assertEquals("", ChartState.EMPTY.at(1).reading(UnitSystem.SI));
    }

    @Test
    void asLongAsNobodyPointsTheForemostMarkIsSaid() {
        assertEquals("unstable duty point   flow 3.00 m³/s   static pressure 70.0 Pa", STATE.foremost(UnitSystem.SI));
        assertEquals("", ChartState.EMPTY.foremost(UnitSystem.SI));
    }

    @Test
    void ofAThingItsNameAndItsPlaceAreSaid() {
        Series parts = Series.things("parts", Look.marks(2), Points.of(new double[] {1, 2}, new double[] {30, 40}), List.of("one", "two"));
        assertEquals("parts: two   flow 2.00 m³/s   static pressure 40.0 Pa", ChartState.EMPTY.with(Optional.of(CHART.with(parts))).reading(parts, 1, UnitSystem.SI));
    }

    @Test
    void theCursorStartsAtTheForemostMarkAndKeepsWithinWhatIsSeen() {
        assertEquals(OptionalDouble.of(3), STATE.step(1).cursor());
        assertEquals(3.1, STATE.at(3).step(1).cursor().orElseThrow(), 1e-12);
        assertEquals(OptionalDouble.of(10), STATE.at(9.99).step(5).cursor());
        assertEquals(OptionalDouble.empty(), STATE.at(3).withoutCursor().cursor());
    }

    @Test
    void theCursorGoesFromMarkToMark() {
        assertEquals(OptionalDouble.of(3), STATE.toMark(true).cursor());
        assertEquals(OptionalDouble.of(6), STATE.toMark(true).toMark(true).cursor());
        assertEquals(OptionalDouble.of(6), STATE.toMark(true).toMark(true).toMark(true).cursor());
        assertEquals(OptionalDouble.of(3), STATE.at(5).toMark(false).cursor());
        assertEquals(OptionalDouble.of(6), STATE.toMark(false).cursor());
    }

    private static final Chart LIFE = Chart.of("life", new Axis("time", QuantityKind.TIME, Optional.of(new Extent(1, 10_000)), Chart.Scale.LOG, Optional.empty()),
            new Axis("failed", QuantityKind.FRACTION, Optional.of(new Extent(0.01, 0.99)), Chart.Scale.WEIBULL, Optional.empty()))
            .with(new Series("fit", Role.CURVE, Look.line(0), Points.of(new double[] {1, 10_000}, new double[] {0.01, 0.99})));

    @Test
    void gesturesGoByWhatIsSeenOfAScale() {
        ChartState life = ChartState.EMPTY.with(Optional.of(LIFE));
        Extent zoomed = life.zoom(2, 0.5, 0.5).seen().orElseThrow().extent();
        assertEquals(10, zoomed.from(), 1e-9);
        assertEquals(1000, zoomed.to(), 1e-9);
        assertEquals(100, life.pan(0.5, 0).seen().orElseThrow().extent().from(), 1e-9);
        Extent up = life.zoomTo(0, 0.25, 0.5, 0.75).seen().orElseThrow().extent(Side.LEFT);
        assertEquals(0.25, Chart.Scale.WEIBULL.share(new Extent(0.01, 0.99), up.from()), 1e-12);
        assertEquals(0.75, Chart.Scale.WEIBULL.share(new Extent(0.01, 0.99), up.to()), 1e-12);
        assertEquals(100, life.step(1).cursor().orElseThrow(), 1e-9, "the middle of what is seen");
        assertEquals(1000, life.at(100).step(25).cursor().orElseThrow(), 1e-9);
        assertEquals(1, life.at(0).step(-1).cursor().orElseThrow(), 1e-12);
        double middle = Chart.Scale.WEIBULL.at(new Extent(0.01, 0.99), 0.5);
        assertEquals(middle, life.at(100).readings().get(1).si(), 1e-12, "on the line as drawn");
    }

    @Test
    void nobodyLeavesWhatAScaleCanShow() {
        ChartState life = ChartState.EMPTY.with(Optional.of(LIFE));
        for (int i = 0; i < 200; i++) {
            life = life.zoom(1 / ChartState.STEP, 0.5, 0.5).pan(0.1, 0.1);
            Chart seen = life.seen().orElseThrow();
            assertTrue(seen.x().scale().shows(seen.extent()) && seen.y().scale().shows(seen.extent(Side.LEFT)));
        }
        assertTrue(life.zoom(ChartState.STEP, 0.5, 0.5).window().isPresent());
        // a window chosen on another chart that this one cannot show
        ChartState other = STATE.pan(-0.5, -0.5).with(Optional.of(LIFE));
        assertEquals(new Extent(1, 10_000), other.seen().orElseThrow().extent());
        assertTrue(other.zoom(2, 0.5, 0.5).seen().orElseThrow().extent().holds(100));
    }

    @Test
    void filesGetNamesThatFileSystemsTake() {
        assertEquals("fans, any one failed fans 1 locked", ChartFile.name("fans, any one failed: fans 1/locked"));
        assertEquals("chart", ChartFile.name("...:"));
        assertEquals(Optional.of(ChartFile.PNG), ChartFile.of("a.b.PNG"));
        assertEquals(Optional.empty(), ChartFile.of("a.txt"));
    }

    @Test
    void aFileIsReplacedAsAWhole(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("chart.csv");
        ChartFile.write(file, "one".getBytes());
        ChartFile.write(file, "two".getBytes());
        assertEquals("two", Files.readString(file));
        try (var files = Files.list(folder)) {
            assertEquals(1, files.count());
        }
    }
}
