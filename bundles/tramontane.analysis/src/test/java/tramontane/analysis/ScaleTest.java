package tramontane.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import tramontane.analysis.Chart.Axis;
import tramontane.analysis.Chart.Extent;
import tramontane.analysis.Chart.Look;
import tramontane.analysis.Chart.Mark;
import tramontane.analysis.Chart.Points;
import tramontane.analysis.Chart.Role;
import tramontane.analysis.Chart.Scale;
import tramontane.analysis.Chart.Series;
import tramontane.analysis.Chart.Shape;
import tramontane.analysis.Chart.Side;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Unit;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

class ScaleTest {

    private static final Unit YEAR = Units.of(QuantityKind.TIME).stream().filter(unit -> unit.symbol().equals("year")).findFirst().orElseThrow();

    private static Chart weibull(double[] times, double[] failed) {
        return Chart.of("life", new Axis("time", QuantityKind.TIME, Scale.LOG), new Axis("failed", QuantityKind.FRACTION, Scale.WEIBULL))
                .with(new Series("units", Role.CURVE, Look.line(0), Points.of(times, failed)));
    }

    /** Of NORMAL: SciPy 1.x, scipy.stats.norm.ppf; of the others by hand from their definitions. */
    @ParameterizedTest
    @CsvSource({"LINEAR, -3, -3", "LOG, 1000, 3", "LOG, 0.01, -2", "WEIBULL, 0.1, -2.2503673273124454", "WEIBULL, 0.5, -0.36651292058166435",
        "EXPONENTIAL, 0, 0", "EXPONENTIAL, 0.1, 0.10536051565782628", "EXPONENTIAL, 0.99, 4.605170185988091",
        "NORMAL, 1e-12, -7.034483825301131", "NORMAL, 1e-6, -4.753424308822899", "NORMAL, 0.001, -3.090232306167813",
        "NORMAL, 0.01, -2.3263478740408408", "NORMAL, 0.1, -1.2815515655446004", "NORMAL, 0.3, -0.5244005127080409", "NORMAL, 0.5, 0",
        "NORMAL, 0.632, 0.3371550769952773", "NORMAL, 0.9, 1.2815515655446004", "NORMAL, 0.999, 3.090232306167813",
        "NORMAL, 0.999999999, 5.997807019601637"})
    void aValueLiesAt(Scale scale, double value, double position) {
        assertEquals(position, scale.to(value), 1e-14 * Math.max(1, Math.abs(position)) + 1e-15);
    }

    /** SciPy 1.x, scipy.stats.norm.cdf. */
    @ParameterizedTest
    @CsvSource({"-8, 6.22096057427174e-16", "-5, 2.866515718791933e-07", "-3.001, 0.0013454728250849653", "-3, 0.0013498980316300933",
        "-2.999, 0.0013543365337271057", "-1, 0.15865525393145707", "0, 0.5", "0.5, 0.6914624612740131", "2, 0.9772498680518208",
        "3.001, 0.998654527174915", "6, 0.9999999990134123"})
    void aShareOfTheNormalDistributionLiesBelow(double z, double share) {
        assertEquals(share, Scale.NORMAL.from(z), 1e-12 * share);
    }

    @Property(tries = 300)
    void aScaleRisesAndIsItsInverseTurnedRound(@ForAll @IntRange(min = 1, max = 999_999_999) int first,
            @ForAll @IntRange(min = 1, max = 999_999_999) int second) {
        double one = first * 1e-9;
        double other = second * 1e-9;
        for (Scale scale : Scale.values()) {
            assertEquals(one, scale.from(scale.to(one)), 1e-12);
            if (first != second) {
                assertEquals(one < other, scale.to(one) < scale.to(other), () -> scale + " of " + one + " and " + other);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"LOG, 0, false", "LOG, -1, false", "LOG, 1e-300, true", "WEIBULL, 0, false", "WEIBULL, 1, false", "WEIBULL, 0.5, true",
        "NORMAL, 0, false", "NORMAL, 1, false", "NORMAL, 1.5, false", "EXPONENTIAL, 0, true", "EXPONENTIAL, -0.1, false", "EXPONENTIAL, 1, false",
        "LINEAR, -5, true"})
    void whatCannotBeShownLiesAtInfinityAndNeverNowhere(Scale scale, double value, boolean shown) {
        assertEquals(shown, scale.shows(value));
        assertFalse(Double.isNaN(scale.to(value)));
        assertFalse(Double.isNaN(scale.share(new Extent(0.1, 0.5), value)));
    }

    @ParameterizedTest
    @EnumSource(Scale.class)
    void sharesOfAStretchComeBack(Scale scale) {
        Extent extent = new Extent(0.02, 0.95);
        assertEquals(0, scale.share(extent, 0.02));
        assertEquals(1, scale.share(extent, 0.95));
        assertEquals(0.3, scale.share(extent, scale.at(extent, 0.3)), 1e-13);
    }

    @Test
    void anAutomaticAxisHasItsRoomInTheSpaceOfTheScale() {
        Chart chart = weibull(new double[] {0, 100, 10_000}, new double[] {0, 0.1, 0.9});
        assertEquals(Math.pow(10, 1.9), chart.extent().from(), 1e-9);
        assertEquals(Math.pow(10, 4.1), chart.extent().to(), 1e-7);
        double room = 0.05 * (Scale.WEIBULL.to(0.9) - Scale.WEIBULL.to(0.1));
        assertEquals(Scale.WEIBULL.to(0.1) - room, Scale.WEIBULL.to(chart.extent(Side.LEFT).from()), 1e-12);
        assertEquals(Scale.WEIBULL.to(0.9) + room, Scale.WEIBULL.to(chart.extent(Side.LEFT).to()), 1e-12);
    }

    @ParameterizedTest
    @EnumSource(Scale.class)
    void thereIsAnExtentWhateverThereIs(Scale scale) {
        Axis axis = new Axis("failed", QuantityKind.FRACTION, scale);
        for (double[] values : new double[][] {{}, {0}, {0, 1}, {0.3}, {Math.nextDown(1.0)}, {1e-300, Math.nextDown(1.0)}, {-1, 2}}) {
            Chart chart = Chart.of("", axis, axis).with(new Series("", Role.SCATTER, Look.marks(0), Points.of(values, values)));
            assertTrue(scale.shows(chart.extent()), () -> scale + " " + chart.extent());
            for (double value : values) {
                assertTrue(!scale.shows(value) || chart.extent().holds(value));
            }
        }
    }

    @Test
    void anAxisRefusesWhatItsScaleCannotShow() {
        Axis log = new Axis("time", QuantityKind.TIME, Scale.LOG);
        assertThrows(IllegalArgumentException.class, () -> log.showing(new Extent(0, 1)));
        assertThrows(IllegalArgumentException.class, () -> new Axis("time", QuantityKind.TIME, Scale.WEIBULL));
        assertThrows(IllegalArgumentException.class, () -> new Axis("failed", QuantityKind.FRACTION, Scale.NORMAL).showing(new Extent(0.5, 1)));
        assertThrows(IllegalArgumentException.class, () -> new Axis("flow", QuantityKind.FLOW).in(YEAR));
    }

    @Test
    void aPartThatCannotBeShownIsNone() {
        assertEquals(Optional.empty(), Scale.WEIBULL.part(new Extent(0.1, 0.9), 0, 50));
        assertEquals(Optional.empty(), Scale.LOG.part(new Extent(1, 10), -400, 1));
        assertEquals(0.1, Scale.LOG.part(new Extent(1, 10), -1, 1).orElseThrow().from(), 1e-15);
    }

    @Test
    void valuesAreReadOffTheLineAsDrawn() {
        Chart chart = weibull(new double[] {0, 100, 10_000, 20_000}, new double[] {0, 0.1, 0.9, 1});
        Series line = chart.series().getFirst();
        double middle = Scale.WEIBULL.from((Scale.WEIBULL.to(0.1) + Scale.WEIBULL.to(0.9)) / 2);
        assertEquals(middle, chart.at(line, 1000).orElseThrow(), 1e-12);
        assertEquals(OptionalDouble.of(0.1), chart.at(line, 100));
        assertEquals(OptionalDouble.of(0.9), chart.at(line, 10_000));
        for (double nowhere : new double[] {-1, 0, 50, 15_000, 20_000, 30_000}) {
            assertEquals(OptionalDouble.empty(), chart.at(line, nowhere), () -> "at " + nowhere);
        }
        assertEquals(OptionalDouble.empty(), chart.with(new Mark("L10", 100, 0.1, Shape.DISC, 0)).at(new Series("parts", Role.SCATTER, Look.marks(0),
                line.points()), 100));
    }

    @Test
    void aUnitOfItsOwnWinsOverThatOfTheReader() {
        Axis years = new Axis("time", QuantityKind.TIME).in(YEAR);
        for (UnitSystem system : UnitSystem.values()) {
            assertEquals(2, years.shown(2 * 8760 * 3600.0, system), 1e-12);
            assertEquals(2 * 8760 * 3600.0, years.si(2, system), 1e-6);
            assertEquals("2.00 year", years.format(2 * 8760 * 3600.0, system, 3));
        }
        assertEquals(YEAR, years.showing(new Extent(0, 1)).unit().orElseThrow());
        assertEquals(20, new Axis("time", QuantityKind.TIME).shown(72_000, UnitSystem.METRIC), 1e-12);
    }
}
