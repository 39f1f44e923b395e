package tramontane.physics;

import java.util.ArrayList;
import java.util.List;

/**
 * A smooth curve through points that never overshoots them: piecewise cubic Hermite, rising where the points rise and
 * falling where they fall, with its peaks and dips at points.
 *
 * <p>Slopes at inner points are the weighted harmonic mean of F. N. Fritsch, J. Butland, "A method for constructing
 * local monotone piecewise cubic interpolants", SIAM J. Sci. Stat. Comput. 5 (1984) 300-304; slopes at the ends are the
 * three-point formula with the limits of C. Moler, "Numerical Computing with MATLAB" (2004) section 3.4. This keeps
 * each piece in the region of F. N. Fritsch, R. E. Carlson, SIAM J. Numer. Anal. 17 (1980) 238-246.
 *
 * <p>Outside the points the curve goes on as a straight line. With {@link #withEnds} the line may have another slope;
 * then the slope changes evenly over one end interval's length outside, so that the curve between the points stays as
 * it is and value and slope have no jump anywhere.
 */
public final class MonotoneCurve {

    private final double[] x;
    private final double[] y;
    private final double[] d;
    private final double leftSlope;
    private final double rightSlope;

    private MonotoneCurve(double[] x, double[] y, double[] d, double leftSlope, double rightSlope) {
        this.x = x;
        this.y = y;
        this.d = d;
        this.leftSlope = leftSlope;
        this.rightSlope = rightSlope;
    }

    /**
     * A local peak or dip strictly between the ends.
     *
     * @param x    place; the middle where several neighbouring points are level
     * @param y    value
     * @param peak whether it is a peak, else a dip
     */
    public record Extremum(double x, double y, boolean peak) {
    }

    /**
     * Curve through points.
     *
     * @param x strictly increasing, at least two
     * @param y as many values
     * @return the curve, with straight ends of the slope it has there
     */
    public static MonotoneCurve of(double[] x, double[] y) {
        if (x.length != y.length || x.length < 2) {
            throw new IllegalArgumentException(
                    "a curve needs two points or more, got " + x.length + " x and " + y.length + " y");
        }
        double[] xs = x.clone();
        double[] ys = y.clone();
        int n = xs.length;
        double[] h = new double[n - 1];
        double[] m = new double[n - 1];
        for (int i = 0; i < n - 1; i++) {
            h[i] = xs[i + 1] - xs[i];
            m[i] = (ys[i + 1] - ys[i]) / h[i];
            if (!(h[i] > 0) || !Double.isFinite(h[i]) || !Double.isFinite(m[i])) {
                throw new IllegalArgumentException("points " + i + " and " + (i + 1) + " of a curve: (" + xs[i] + ", "
                        + ys[i] + ") and (" + xs[i + 1] + ", " + ys[i + 1] + "); x must increase, all be finite");
            }
        }
        double[] d = new double[n];
        if (n == 2) {
            d[0] = m[0];
            d[1] = m[0];
        } else {
            for (int i = 1; i < n - 1; i++) {
                d[i] = innerSlope(h[i - 1], h[i], m[i - 1], m[i]);
            }
            d[0] = endSlope(h[0], h[1], m[0], m[1]);
            d[n - 1] = endSlope(h[n - 2], h[n - 3], m[n - 2], m[n - 3]);
        }
        return new MonotoneCurve(xs, ys, d, d[0], d[n - 1]);
    }

    private static double innerSlope(double h0, double h1, double m0, double m1) {
        if (m0 == 0 || m1 == 0 || m0 > 0 != m1 > 0) {
            return 0;
        }
        double w0 = 2 * h1 + h0;
        double w1 = h1 + 2 * h0;
        return (w0 + w1) / (w0 / m0 + w1 / m1);
    }

    private static double endSlope(double h0, double h1, double m0, double m1) {
        double slope = ((2 * h0 + h1) * m0 - h0 * m1) / (h0 + h1);
        if (Math.signum(slope) != Math.signum(m0)) {
            return 0;
        }
        if (Math.signum(m0) != Math.signum(m1) && Math.abs(slope) > 3 * Math.abs(m0)) {
            return 3 * m0;
        }
        return slope;
    }

    /**
     * The same curve with other straight lines outside its points.
     *
     * @param left  slope far below the first point
     * @param right slope far above the last point
     * @return the curve
     */
    public MonotoneCurve withEnds(double left, double right) {
        if (!Double.isFinite(left) || !Double.isFinite(right)) {
            throw new IllegalArgumentException("end slopes must be finite, got " + left + " and " + right);
        }
        return new MonotoneCurve(x, y, d, left, right);
    }

    /**
     * The same curve on stretched axes, as the fan laws stretch them.
     *
     * @param xFactor positive
     * @param yFactor positive
     * @return the curve
     */
    public MonotoneCurve scaled(double xFactor, double yFactor) {
        if (!(xFactor > 0 && yFactor > 0) || Double.isInfinite(xFactor) || Double.isInfinite(yFactor)) {
            throw new IllegalArgumentException("factors must be above zero, got " + xFactor + " and " + yFactor);
        }
        double slopeFactor = yFactor / xFactor;
        return new MonotoneCurve(times(x, xFactor), times(y, yFactor), times(d, slopeFactor), leftSlope * slopeFactor,
                rightSlope * slopeFactor);
    }

    private static double[] times(double[] values, double factor) {
        double[] scaled = values.clone();
        for (int i = 0; i < scaled.length; i++) {
            scaled[i] *= factor;
        }
        return scaled;
    }

    /** @param at any finite place
     *  @return value there */
    public double value(double at) {
        int n = x.length;
        if (at < x[0]) {
            return outside(at - x[0], x[0] - x[1], y[0], d[0], leftSlope);
        }
        if (at > x[n - 1]) {
            return outside(at - x[n - 1], x[n - 1] - x[n - 2], y[n - 1], d[n - 1], rightSlope);
        }
        int i = interval(at);
        double h = x[i + 1] - x[i];
        double s = (at - x[i]) / h;
        double r = 1 - s;
        // Hermite in the form that meets both ends exactly
        return r * r * ((1 + 2 * s) * y[i] + s * h * d[i]) + s * s * ((1 + 2 * r) * y[i + 1] - r * h * d[i + 1]);
    }

    /** @param at any finite place
     *  @return slope there */
    public double slope(double at) {
        int n = x.length;
        if (at < x[0]) {
            return outsideSlope(at - x[0], x[0] - x[1], d[0], leftSlope);
        }
        if (at > x[n - 1]) {
            return outsideSlope(at - x[n - 1], x[n - 1] - x[n - 2], d[n - 1], rightSlope);
        }
        int i = interval(at);
        double h = x[i + 1] - x[i];
        double s = (at - x[i]) / h;
        double r = 1 - s;
        return 6 * s * r * (y[i + 1] - y[i]) / h + r * (1 - 3 * s) * d[i] + s * (1 - 3 * r) * d[i + 1];
    }

    /** Distance t and blending width w have the same sign: both point away from the curve. */
    private static double outside(double t, double w, double end, double from, double to) {
        if (from == to) {
            return end + from * t;
        }
        return Math.abs(t) < Math.abs(w) ? end + from * t + (to - from) * t * t / (2 * w)
                : end + to * t + (from - to) * w / 2;
    }

    private static double outsideSlope(double t, double w, double from, double to) {
        return Math.abs(t) < Math.abs(w) ? from + (to - from) * t / w : to;
    }

    private int interval(double at) {
        int low = 0;
        int high = x.length - 1;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (at < x[middle]) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return low;
    }

    /** @return whether the value falls everywhere, outside the points too */
    public boolean isStrictlyDecreasing() {
        for (int i = 1; i < y.length; i++) {
            if (!(y[i] < y[i - 1])) {
                return false;
            }
        }
        return leftSlope < 0 && rightSlope < 0;
    }

    /** @return peaks and dips between the ends, from left to right */
    public List<Extremum> extrema() {
        List<Extremum> found = new ArrayList<>();
        int before = 0; // last point before the present level run
        while (before < y.length - 1 && y[before + 1] == y[before]) {
            before++;
        }
        int first = before + 1;
        while (first < y.length) {
            int last = first;
            while (last + 1 < y.length && y[last + 1] == y[first]) {
                last++;
            }
            if (last + 1 < y.length && y[first] > y[before] != y[last + 1] > y[first]) {
                found.add(new Extremum((x[first] + x[last]) / 2, y[first], y[first] > y[before]));
            }
            before = last;
            first = last + 1;
        }
        return List.copyOf(found);
    }

    /** @return number of points */
    public int size() {
        return x.length;
    }

    /** @param i index from 0
     *  @return x of that point */
    public double x(int i) {
        return x[i];
    }

    /** @param i index from 0
     *  @return y of that point */
    public double y(int i) {
        return y[i];
    }

    /** @return x of the first point */
    public double firstX() {
        return x[0];
    }

    /** @return x of the last point */
    public double lastX() {
        return x[x.length - 1];
    }
}
