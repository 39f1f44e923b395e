package tramontane.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Chart;
import tramontane.analysis.Chart.Axis;
import tramontane.analysis.Chart.Look;
import tramontane.analysis.Chart.Mark;
import tramontane.analysis.Chart.Points;
import tramontane.analysis.Chart.Role;
import tramontane.analysis.Chart.Series;
import tramontane.analysis.Chart.Shape;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;

class ChartCsvTest {

    private static final Chart EMPTY = Chart.of("fans", new Axis("flow", QuantityKind.FLOW), new Axis("static pressure", QuantityKind.PRESSURE));

    private static Points points(double[] x, double... y) {
        return Points.of(x, y);
    }

    @Test
    void unitsStandInTheHeadsAndSeriesAtTheSamePlacesShareThese() {
        double[] x = {0, 0.1};
        Chart chart = EMPTY.with(new Series("bank", Role.CURVE, Look.line(0), points(x, 50, 0)))
                .with(new Series("system", Role.SYSTEM, Look.line(1), points(x, 0, 33.333333333)))
                .with(new Series("half", Role.SYSTEM, Look.line(2), points(new double[] {0.05}, 12.5)));
        assertEquals("""
                flow [m³/h],bank: static pressure [Pa],system: static pressure [Pa],flow [m³/h],half: static pressure [Pa]\r
                0,50,0,180,12.5\r
                360,0,33.333333,,\r
                """, ChartCsv.of(chart, UnitSystem.METRIC));
    }

    @Test
    void bandsMarksAndRegionsHaveColumnsOfTheirOwn() {
        double[] x = {0, 1};
        Chart chart = EMPTY.withRight(new Axis("efficiency", QuantityKind.FRACTION))
                .with(new Chart.Band("tolerance", points(x, 1, 2), points(x, 3, 4), 0))
                .with(new Mark("duty point", 0.5, 2, Shape.DISC, 0)).with(new Mark("best", 0.5, 0.25, Shape.DIAMOND, 0, Chart.Side.RIGHT))
                .with(new Chart.Region("stall region", OptionalDouble.empty(), OptionalDouble.of(0.25)));
        assertEquals("""
                flow [m³/s],"tolerance, lower: static pressure [Pa]","tolerance, upper: static pressure [Pa]",mark,flow [m³/s],\
                static pressure [Pa],efficiency [1],region,from flow [m³/s],to flow [m³/s]\r
                0,1,3,duty point,0.5,2,,stall region,,0.25\r
                1,2,4,best,0.5,,0.25,,,\r
                """, ChartCsv.of(chart, UnitSystem.SI));
    }

    @Test
    void namesOfThingsStandBeforeTheirPlaces() {
        double[] x = {1, 2};
        Chart chart = EMPTY.with(Series.things("small", Look.marks(0), points(x, 3, 4), java.util.List.of("one", "two")))
                .with(Series.things("large", Look.marks(1, Shape.RING), points(x, 5, 6), java.util.List.of("three", "four")));
        assertEquals("""
                small,flow [m³/s],small: static pressure [Pa],large,flow [m³/s],large: static pressure [Pa]\r
                one,1,3,three,1,5\r
                two,2,4,four,2,6\r
                """, ChartCsv.of(chart, UnitSystem.SI));
    }

    @Test
    void namesAreQuotedWhereNeeded() {
        Chart chart = EMPTY.with(new Series("a \"b\", c\nd", Role.CURVE, Look.line(0), points(new double[] {0}, 1e-20)));
        assertEquals("flow [m³/s],\"a \"\"b\"\", c\nd: static pressure [Pa]\"\r\n0,1E-20\r\n", ChartCsv.of(chart, UnitSystem.SI));
    }
}
