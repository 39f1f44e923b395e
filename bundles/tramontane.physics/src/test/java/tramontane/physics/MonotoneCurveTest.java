package tramontane.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class MonotoneCurveTest {

    private static final double[] X = {0, 1, 3, 4};
    private static final double[] FALLING = {9, 8, 3, 0};

    /** SciPy PchipInterpolator; both use the same formulas, so only rounding separates them. */
    @ParameterizedTest
    @CsvFileSource(resources = "pchip.csv", delimiter = ';')
    void agreesWithAnIndependentImplementation(String curve, String xs, String ys, double at, double value,
            double slope) {
        MonotoneCurve tested = MonotoneCurve.of(numbers(xs), numbers(ys));
        double size = Arrays.stream(numbers(ys)).map(Math::abs).max().orElseThrow();
        assertEquals(value, tested.value(at), 1e-12 * size, curve);
        assertEquals(slope, tested.slope(at), 1e-11 * Math.max(Math.abs(slope), size), curve);
    }

    private static double[] numbers(String text) {
        return Arrays.stream(text.split(" ")).mapToDouble(Double::parseDouble).toArray();
    }

    @Test
    void goesOnStraightOutside() {
        MonotoneCurve curve = MonotoneCurve.of(X, FALLING);
        double end = curve.slope(4);
        assertEquals(end, curve.slope(100));
        assertEquals(0 + end * 96, curve.value(100), 1e-9);
        assertEquals(9 + curve.slope(0) * -10, curve.value(-10), 1e-12);
    }

    @Test
    void otherEndsLeaveTheCurveBetweenItsPointsAlone() {
        MonotoneCurve plain = MonotoneCurve.of(X, FALLING);
        MonotoneCurve steep = plain.withEnds(-7, -50);
        for (double at = 0; at <= 4; at += 0.125) {
            assertEquals(plain.value(at), steep.value(at));
            assertEquals(plain.slope(at), steep.slope(at));
        }
        assertEquals(-7, steep.slope(-20));
        assertEquals(-50, steep.slope(20));
        // even change of slope over the width 1 of the last interval, then straight
        assertEquals(0.5 * (plain.slope(4) - 50) - 50 * 15, steep.value(20), 1e-9);
    }

    @Test
    void saysWhetherItFallsEverywhere() {
        assertTrue(MonotoneCurve.of(X, FALLING).isStrictlyDecreasing());
        assertFalse(MonotoneCurve.of(X, FALLING).withEnds(0, -1).isStrictlyDecreasing());
        assertFalse(MonotoneCurve.of(X, new double[] {9, 3, 3, 0}).isStrictlyDecreasing());
        assertFalse(MonotoneCurve.of(X, new double[] {9, 3, 4, 0}).isStrictlyDecreasing());
        // a level start: slope zero at the first point, so it must be told how to go on
        MonotoneCurve level = MonotoneCurve.of(new double[] {0, 1, 2}, new double[] {10, 9.9, 0});
        assertEquals(0, level.slope(0));
        assertFalse(level.isStrictlyDecreasing());
        assertTrue(level.withEnds(-1, -10).isStrictlyDecreasing());
    }

    @Test
    void listsPeaksAndDips() {
        double[] x = {0, 1, 2, 3, 4, 5, 6, 7};
        assertEquals(List.of(new MonotoneCurve.Extremum(2, 1, false), new MonotoneCurve.Extremum(4.5, 6, true)),
                MonotoneCurve.of(x, new double[] {5, 3, 1, 2, 6, 6, 2, 2}).extrema());
        assertEquals(List.of(), MonotoneCurve.of(X, FALLING).extrema());
        assertEquals(List.of(), MonotoneCurve.of(x, new double[] {1, 1, 2, 2, 3, 3, 4, 4}).extrema());
        assertEquals(List.of(), MonotoneCurve.of(x, new double[8]).extrema());
    }

    @Test
    void refusesBrokenPoints() {
        assertThrows(IllegalArgumentException.class, () -> MonotoneCurve.of(new double[1], new double[1]));
        assertThrows(IllegalArgumentException.class, () -> MonotoneCurve.of(new double[2], new double[3]));
        assertThrows(IllegalArgumentException.class, () -> MonotoneCurve.of(new double[] {1, 1}, new double[2]));
        assertThrows(IllegalArgumentException.class,
                () -> MonotoneCurve.of(new double[] {0, Double.NaN}, new double[2]));
        assertThrows(IllegalArgumentException.class,
                () -> MonotoneCurve.of(new double[] {0, 1}, new double[] {0, Double.POSITIVE_INFINITY}));
        assertThrows(IllegalArgumentException.class,
                () -> MonotoneCurve.of(X, FALLING).withEnds(Double.NaN, 0));
        assertThrows(IllegalArgumentException.class, () -> MonotoneCurve.of(X, FALLING).scaled(-1, 1));
    }

    @Test
    void doesNotShareTheArraysItWasGiven() {
        double[] y = FALLING.clone();
        MonotoneCurve curve = MonotoneCurve.of(X, y);
        y[1] = 1000;
        assertEquals(8, curve.value(1));
    }

    @Provide
    Arbitrary<double[]> steps() {
        return Arbitraries.doubles().between(0.01, 100).array(double[].class).ofMinSize(2).ofMaxSize(12);
    }

    @Provide
    Arbitrary<double[]> values() {
        return Arbitraries.doubles().between(-100, 100).array(double[].class).ofMinSize(2).ofMaxSize(12);
    }

    @Property
    void neverOvershootsItsPoints(@ForAll("steps") double[] steps, @ForAll("values") double[] values,
            @ForAll @DoubleRange(min = 0, max = 1) double part) {
        MonotoneCurve curve = curve(steps, values);
        for (int i = 1; i < curve.size(); i++) {
            double at = curve.x(i - 1) + part * (curve.x(i) - curve.x(i - 1));
            double low = Math.min(curve.y(i - 1), curve.y(i));
            double high = Math.max(curve.y(i - 1), curve.y(i));
            assertTrue(curve.value(at) >= low - 1e-10 && curve.value(at) <= high + 1e-10);
            assertTrue(curve.slope(at) * (curve.y(i) - curve.y(i - 1)) >= -1e-7);
        }
    }

    @Property
    void valueAndSlopeHaveNoJumpAnywhere(@ForAll("steps") double[] steps, @ForAll("values") double[] values,
            @ForAll @DoubleRange(min = -50, max = 50) double left, @ForAll @DoubleRange(min = -50, max = 50) double right) {
        MonotoneCurve curve = curve(steps, values).withEnds(left, right);
        int n = curve.size();
        double[] seams = new double[n + 2];
        for (int i = 0; i < n; i++) {
            seams[i] = curve.x(i);
        }
        seams[n] = 2 * curve.x(0) - curve.x(1);
        seams[n + 1] = 2 * curve.x(n - 1) - curve.x(n - 2);
        for (double seam : seams) {
            double below = Math.nextDown(seam);
            double above = Math.nextUp(seam);
            double scale = 1 + Math.abs(curve.value(seam)) + Math.abs(curve.slope(seam));
            assertEquals(curve.value(below), curve.value(above), 1e-9 * scale);
            assertEquals(curve.slope(below), curve.slope(above), 1e-6 * scale);
        }
    }

    @Property
    void slopeIsTheDerivativeOfTheValue(@ForAll("steps") double[] steps, @ForAll("values") double[] values,
            @ForAll @DoubleRange(min = -0.5, max = 1.5) double part) {
        MonotoneCurve curve = curve(steps, values).withEnds(-3, 2);
        double at = curve.firstX() + part * (curve.lastX() - curve.firstX());
        double h = 1e-6;
        double secant = (curve.value(at + h) - curve.value(at - h)) / (2 * h);
        // between the slopes on both sides, since the second derivative may be large in short intervals
        double low = Math.min(curve.slope(at - h), Math.min(curve.slope(at), curve.slope(at + h)));
        double high = Math.max(curve.slope(at - h), Math.max(curve.slope(at), curve.slope(at + h)));
        double rounding = 1e-5 * (1 + Math.abs(curve.slope(at)));
        assertTrue(secant >= low - rounding && secant <= high + rounding, secant + " " + low + " " + high);
    }

    @Property
    void stretchingTheCurveStretchesItsPoints(@ForAll("steps") double[] steps, @ForAll("values") double[] values,
            @ForAll @DoubleRange(min = 0.1, max = 10) double xFactor, @ForAll @DoubleRange(min = 0.1, max = 10) double yFactor,
            @ForAll @DoubleRange(min = -0.5, max = 1.5) double part) {
        MonotoneCurve curve = curve(steps, values).withEnds(-3, 2);
        double at = curve.firstX() + part * (curve.lastX() - curve.firstX());
        double expected = yFactor * curve.value(at);
        assertEquals(expected, curve.scaled(xFactor, yFactor).value(xFactor * at), 1e-8 * (1 + Math.abs(expected)));
    }

    private static MonotoneCurve curve(double[] steps, double[] values) {
        int n = Math.min(steps.length, values.length);
        double[] x = new double[n];
        for (int i = 1; i < n; i++) {
            x[i] = x[i - 1] + steps[i];
        }
        return MonotoneCurve.of(x, Arrays.copyOf(values, n));
    }
}
