package tramontane.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.analysis.Chart.Axis;
import tramontane.analysis.Chart.Band;
import tramontane.analysis.Chart.Extent;
import tramontane.analysis.Chart.Look;
import tramontane.analysis.Chart.Mark;
import tramontane.analysis.Chart.Points;
import tramontane.analysis.Chart.Region;
import tramontane.analysis.Chart.Role;
import tramontane.analysis.Chart.Series;
import tramontane.analysis.Chart.Shape;
import tramontane.analysis.Chart.Side;
import tramontane.physics.units.QuantityKind;

class ChartTest {

    private static final Chart EMPTY = Chart.of("fans", new Axis("flow", QuantityKind.FLOW), new Axis("static pressure", QuantityKind.PRESSURE));

    private static Points points(double... xy) {
        double[] x = new double[xy.length / 2];
        double[] y = new double[xy.length / 2];
        for (int i = 0; i < x.length; i++) {
            x[i] = xy[2 * i];
            y[i] = xy[2 * i + 1];
        }
        return Points.of(x, y);
    }

    private static Series line(double... xy) {
        return new Series("bank", Role.CURVE, Look.line(0), points(xy));
    }

    @Test
    void anAutomaticAxisHoldsEverything() {
        Chart chart = EMPTY.with(line(0, 50, 0.1, 0)).with(new Mark("duty point", 0.12, 60, Shape.DISC, 0));
        assertEquals(new Extent(0, 0.126), chart.extent());
        assertEquals(new Extent(0, 63), chart.extent(Side.LEFT));
    }

    @Test
    void anAutomaticAxisHasRoomOnBothSidesWhereNothingStartsAtZero() {
        Chart chart = EMPTY.with(line(-1, 10, 1, 20));
        assertEquals(new Extent(-1.1, 1.1), chart.extent());
        assertEquals(new Extent(9.5, 20.5), chart.extent(Side.LEFT));
    }

    @Test
    void anAxisOfOneValueHasAnExtent() {
        Extent extent = EMPTY.with(line(5, 7)).extent();
        assertTrue(extent.from() < 5 && extent.to() > 5);
        assertTrue(EMPTY.with(line(0, 0)).extent().holds(0));
        assertEquals(new Extent(0, 1.05), EMPTY.extent());
    }

    @Test
    void anAxisThatStartsAtNothingDoesSoDespiteRounding() {
        assertEquals(0, EMPTY.with(line(-1e-17, 10, 1, -1e-12)).extent().from());
        assertEquals(0, EMPTY.with(line(-1e-17, 10, 1, -1e-12)).extent(Side.LEFT).from());
        assertEquals(0, EMPTY.with(line(0, -10, 1, 1e-12)).extent(Side.LEFT).to());
    }

    @Test
    void noSignIsCutInHalf() {
        Chart chart = EMPTY.with(line(0, 50, 0.1, 0));
        assertEquals(0, chart.with(new Mark("duty point", 0.05, 25, Shape.DISC, 0)).extent(Side.LEFT).from());
        assertEquals(-2.5, chart.with(new Mark("duty point", 0.1, 0, Shape.DISC, 0)).extent(Side.LEFT).from(), 1e-12);
        assertEquals(-0.005, chart.with(new Mark("at rest", 0, 50, Shape.DISC, 0)).extent().from(), 1e-12);
    }

    @Test
    void aStatedExtentIsKept() {
        Chart chart = EMPTY.with(line(0, 50, 0.1, 0)).within(new Extent(0.02, 0.03), new Extent(10, 20));
        assertEquals(new Extent(0.02, 0.03), chart.extent());
        assertEquals(new Extent(10, 20), chart.extent(Side.LEFT));
    }

    @Test
    void theRightAxisHoldsWhatIsMeasuredOnItAlone() {
        Chart chart = EMPTY.withRight(new Axis("efficiency", QuantityKind.FRACTION)).with(line(0, 50, 0.1, 0))
                .with(new Series("efficiency", Role.BESIDE, Look.line(1), Side.RIGHT, points(0, 0, 0.1, 0.4), 2));
        assertEquals(50 * 1.05, chart.extent(Side.LEFT).to(), 1e-12);
        assertEquals(0.4 * 1.05, chart.extent(Side.RIGHT).to(), 1e-12);
    }

    @Test
    void nothingIsMeasuredOnAnAxisThatIsNotThere() {
        assertThrows(IllegalArgumentException.class,
                () -> EMPTY.with(new Series("efficiency", Role.BESIDE, Look.line(1), Side.RIGHT, points(0, 0), 2)));
        assertThrows(IllegalArgumentException.class, () -> EMPTY.with(new Mark("best", 0, 0, Shape.DIAMOND, 0, Side.RIGHT)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void valuesAreFinite(double value) {
        assertThrows(IllegalArgumentException.class, () -> points(value, 0));
        assertThrows(IllegalArgumentException.class, () -> points(0, value));
        assertThrows(IllegalArgumentException.class, () -> new Mark("duty point", value, 0, Shape.DISC, 0));
        assertThrows(IllegalArgumentException.class, () -> new Mark("duty point", 0, value, Shape.DISC, 0));
        assertThrows(IllegalArgumentException.class, () -> new Region("stall", OptionalDouble.of(value), OptionalDouble.empty()));
        assertThrows(IllegalArgumentException.class, () -> new Extent(value, value));
    }

    @Test
    void thereAreAsManyValuesOneWayAsTheOther() {
        assertThrows(IllegalArgumentException.class, () -> Points.of(new double[2], new double[3]));
    }

    @Test
    void extentsAndRegionsDoNotGoBackwards() {
        assertThrows(IllegalArgumentException.class, () -> new Extent(1, 1));
        assertThrows(IllegalArgumentException.class, () -> new Extent(-Double.MAX_VALUE, Double.MAX_VALUE));
        assertThrows(IllegalArgumentException.class, () -> new Region("stall", OptionalDouble.of(2), OptionalDouble.of(1)));
    }

    @Test
    void bandsHaveTwoEdges() {
        assertThrows(IllegalArgumentException.class, () -> new Band("tolerance", points(0, 1), points(0, 2, 1, 2), 0));
    }

    @Test
    void pointsDoNotChangeWithTheArraysTheyCameFrom() {
        double[] x = {0, 1};
        Points points = Points.of(x, new double[] {5, 6});
        x[0] = 9;
        assertEquals(points(0, 5, 1, 6), points);
        assertEquals(points(0, 5, 1, 6).hashCode(), points.hashCode());
        assertNotEquals(points(0, 5, 1, 7), points);
    }

    @Test
    void aValueIsReadOffBetweenPoints() {
        Points points = points(0, 50, 2, 40, 2, 30, 4, 0);
        assertEquals(OptionalDouble.of(45), points.at(1));
        assertEquals(OptionalDouble.of(50), points.at(0));
        assertEquals(OptionalDouble.of(15), points.at(3));
        assertEquals(OptionalDouble.of(0), points.at(4));
        assertEquals(OptionalDouble.empty(), points.at(4.1));
        assertEquals(OptionalDouble.empty(), points.at(-0.1));
        assertEquals(OptionalDouble.empty(), points().at(0));
        assertEquals(OptionalDouble.of(3), points(1, 3).at(1));
        assertTrue(points.rising());
    }

    @Test
    void ofALineThatFoldsBackTheFirstValueAlongItIsRead() {
        Points folded = points(0, 10, 4, 6, 2, 4, 6, 0);
        assertFalse(folded.rising());
        assertEquals(OptionalDouble.of(7), folded.at(3));
        assertEquals(OptionalDouble.of(1), folded.at(5));
        assertEquals(OptionalDouble.empty(), folded.at(7));
    }

    @Test
    void nothingIsReadOffBetweenSingleThings() {
        assertEquals(OptionalDouble.empty(), new Series("parts", Role.SCATTER, Look.marks(0), points(0, 1, 2, 3)).at(1));
    }

    @Test
    void eachOfSeveralThingsMayHaveAName() {
        Series parts = Series.things("parts", Look.marks(0, Chart.Shape.RING), points(0, 1, 2, 3), List.of("one", "two"));
        assertEquals("parts: two", parts.words(1));
        assertEquals("parts", new Series("parts", Role.SCATTER, Look.marks(0), points(0, 1, 2, 3)).words(1));
        assertThrows(IllegalArgumentException.class, () -> Series.things("parts", Look.marks(0), points(0, 1, 2, 3), List.of("one")));
    }

    @Test
    void readingPrecisionIsSomeDigits() {
        assertThrows(IllegalArgumentException.class, () -> new Series("bank", Role.CURVE, Look.line(0), Side.LEFT, points(0, 1), 0));
        assertThrows(IllegalArgumentException.class, () -> Look.line(-1));
    }

    @Test
    void listsAreCopied() {
        List<Series> series = new java.util.ArrayList<>(List.of(line(0, 1)));
        Chart chart = new Chart("fans", EMPTY.x(), EMPTY.y(), Optional.empty(), series, List.of(), List.of(), List.of());
        series.clear();
        assertEquals(1, chart.series().size());
    }
}
