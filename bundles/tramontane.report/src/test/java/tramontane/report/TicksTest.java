package tramontane.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.analysis.Chart.Axis;
import tramontane.analysis.Chart.Extent;
import tramontane.analysis.Chart.Scale;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Unit;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

class TicksTest {

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            0      | 100    | 6  | 0 20 40 60 80 100
            0      | 100    | 5  | 0 50 100
            0      | 1      | 6  | 0.0 0.2 0.4 0.6 0.8 1.0
            0      | 0.3    | 4  | 0.0 0.1 0.2 0.3
            0      | 347    | 8  | 0 50 100 150 200 250 300
            -5     | 12     | 5  | −5 0 5 10
            0.013  | 0.0171 | 6  | 0.013 0.014 0.015 0.016 0.017
            98     | 102    | 5  | 98 99 100 101 102
            0      | 2e7    | 5  | 0.0 0.5e7 1.0e7 1.5e7 2.0e7
            0      | 3e-6   | 4  | 0 1e-6 2e-6 3e-6
            -3e-6  | 0      | 4  | −3e-6 −2e-6 −1e-6 0
            999    | 1001   | 2  | 1000
            0      | 1e-300 | 3  | 0.0 0.5e-300 1.0e-300
            """)
    void marksStandAtRoundNumbers(double from, double to, int most, String labels) {
        assertEquals(labels, String.join(" ", Ticks.of(from, to, most).labels()));
    }

    @Test
    void marksLieWithinAndAreFewAndEven() {
        Random random = new Random(7);
        for (int i = 0; i < 10_000; i++) {
            double from = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(12) - 6);
            double to = from + random.nextDouble() * Math.pow(10, random.nextInt(12) - 6) + 1e-9;
            int most = 2 + random.nextInt(12);
            Ticks ticks = Ticks.of(from, to, most);
            int count = ticks.values().size();
            assertTrue(count >= 1 && count <= most, () -> count + " ticks of at most " + most);
            // 2.5 is the farthest from one nice step to the next
            assertTrue(count + 1 >= (most + 1) / 2.5 - 1, () -> "only " + count + " of " + most);
            for (int k = 0; k < count; k++) {
                double value = ticks.values().get(k);
                double slack = 1e-8 * ticks.step();
                assertTrue(value >= from - slack && value <= to + slack);
                if (k > 0) {
                    assertEquals(ticks.step(), value - ticks.values().get(k - 1), 1e-9 * Math.max(Math.abs(from), Math.abs(to)));
                }
            }
        }
    }

    @Test
    void labelsReadAsTheirValues() {
        for (double to : new double[] {1e-9, 3.7e-5, 0.012, 0.9, 17, 4_321, 123_456, 9.9e8}) {
            Ticks ticks = Ticks.of(-to / 3, to, 7);
            for (int i = 0; i < ticks.values().size(); i++) {
                assertEquals(ticks.values().get(i), Double.parseDouble(ticks.labels().get(i).replace('−', '-')), 1e-12 * to);
            }
            assertEquals(ticks.labels().size(), ticks.labels().stream().distinct().count());
        }
    }

    /** An axis 100 long with labels that take as much each. */
    private static String labels(Axis axis, double from, double to, double room) {
        Extent extent = new Extent(axis.si(from, UnitSystem.METRIC), axis.si(to, UnitSystem.METRIC));
        return String.join(" ", Ticks.along(axis, extent, UnitSystem.METRIC, 100, label -> room).labels());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            1      | 1000   | 5   | 1 2 5 10 20 50 100 200 500 1000
            1      | 1000   | 20  | 1 10 100 1000
            1      | 1e6    | 20  | 1 100 10000 1000000
            1      | 1e9    | 20  | 1 100 1e4 1e6 1e8
            0.001  | 10     | 20  | 0.001 0.01 0.1 1 10
            1e-8   | 1e-2   | 15  | 1e-8 1e-7 1e-6 1e-5 1e-4 0.001 0.01
            16     | 120    | 10  | 20 50 100
            30     | 45     | 20  | 30 35 40 45
            31     | 33     | 30  | 31 32 33
            8      | 12     | 60  | 10
            0.98   | 11     | 60  | 1 10
            """)
    void onALogarithmicAxisMarksStandAtPowersOfTenInTheUnitShown(double from, double to, double room, String labels) {
        assertEquals(labels, labels(new Axis("time", QuantityKind.TIME, Scale.LOG), from, to, room));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            WEIBULL     | 0.08 | 99.95 | 1  | 0.1 0.5 1 2 5 10 20 30 50 63.2 70 80 90 95 99 99.9
            WEIBULL     | 0.08 | 99.95 | 10 | 0.1 1 10 30 63.2 99
            WEIBULL     | 0.8  | 99.5  | 9  | 1 2 5 10 20 63.2 90 99
            NORMAL      | 0.8  | 99.2  | 6  | 1 5 10 20 30 50 63.2 80 90 95 99
            EXPONENTIAL | 0    | 99.5  | 10 | 0 63.2 80 90 95 99
            WEIBULL     | 11   | 19    | 10 | 11 12 13 14 15 16 17 18 19
            NORMAL      | 40   | 61    | 20 | 40 45 50 55 60
            NORMAL      | 1e-5 | 0.2   | 10 | 0.00001 0.0001 0.001 0.01 0.1
            """)
    void onAnAxisOfSharesMarksStandWhereTheyUsuallyDo(Scale scale, double from, double to, double room, String labels) {
        assertEquals(labels, labels(new Axis("failed", QuantityKind.FRACTION, scale), from, to, room));
    }

    @Test
    void marksAreRoundInTheUnitShown() {
        Axis time = new Axis("time", QuantityKind.TIME, Scale.LOG);
        Unit year = Units.of(QuantityKind.TIME).stream().filter(unit -> unit.symbol().equals("year")).findFirst().orElseThrow();
        Extent extent = new Extent(3600, 3.6e9);
        assertEquals(List.of(1.0, 10.0, 100.0, 1000.0, 1e4, 1e5, 1e6), Ticks.along(time, extent, UnitSystem.METRIC, 100, label -> 12).values());
        assertEquals(List.of(1e4, 1e5, 1e6, 1e7, 1e8, 1e9), Ticks.along(time, extent, UnitSystem.SI, 100, label -> 12).values());
        assertEquals(List.of(0.001, 0.01, 0.1, 1.0, 10.0, 100.0), Ticks.along(time.in(year), extent, UnitSystem.US, 100, label -> 12).values());
        Axis share = new Axis("failed", QuantityKind.FRACTION, Scale.WEIBULL);
        assertEquals(List.of("0.01", "0.02", "0.05", "0.1", "0.2", "0.632", "0.9", "0.99"),
                Ticks.along(share, new Extent(0.008, 0.995), UnitSystem.SI, 100, label -> 10).labels());
    }

    @Test
    void labelsOfNoScaleRunIntoEachOtherAndMarksLieWithin() {
        Random random = new Random(11);
        for (int run = 0; run < 20_000; run++) {
            Scale scale = Scale.values()[random.nextInt(5)];
            Axis axis = new Axis("failed", QuantityKind.FRACTION, scale);
            Optional<Extent> part = scale.part(new Extent(0.01, 0.99), -4 * random.nextDouble(), Math.pow(10, -6 * random.nextDouble()));
            if (part.isEmpty()) {
                continue;
            }
            Extent extent = part.get();
            double length = 50 + random.nextInt(1000);
            ToDoubleFunction<String> room = label -> 12 + 7 * label.length();
            UnitSystem units = UnitSystem.values()[run % 3];
            Ticks ticks = Ticks.along(axis, extent, units, length, room);
            double last = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < ticks.values().size(); i++) {
                double place = scale.share(extent, axis.si(ticks.values().get(i), units)) * length;
                double half = room.applyAsDouble(ticks.labels().get(i)) / 2;
                assertTrue(place > -1e-6 * length && place < length * (1 + 1e-6), () -> scale + " " + extent + " " + ticks);
                assertTrue(place - half >= last - 1e-6, () -> scale + " " + extent + " " + ticks + " along " + length);
                last = place + half;
            }
        }
    }

    @Test
    void anAxisHasALength() {
        assertThrows(IllegalArgumentException.class, () -> Ticks.of(1, 1, 5));
        assertThrows(IllegalArgumentException.class, () -> Ticks.of(0, Double.NaN, 5));
        assertThrows(IllegalArgumentException.class, () -> Ticks.of(0, 1, 1));
    }
}
