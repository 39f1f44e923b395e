package tramontane.thermal;

import java.util.Arrays;
import java.util.List;

/**
 * The bodies of a design at given speed settings as a linear system, as a control law sees it: dT/dt = A T + f, and its sensor
 * reads c T + d, with T the temperatures of all bodies.
 *
 * <p>A body is what holds heat: the hot side of a link with a heat capacity, the chassis of a bay. Air follows the bodies at once, so
 * a sensor in air may read a change of the settings before any body has changed: see {@link #reads}.
 *
 * <p>Flows, resistances and tangents of walls are those at rest at these settings. Near rest it is as exact as those stand still:
 * what a temperature changes of a flow, as by buoyancy, or of a resistance, as with natural convection, shows in the plants of other
 * settings but not in A. Of two plants at settings s - h and s + h, with T the rest at s between them, the change of rates with the
 * setting is (rates₊(T) - rates₋(T)) / 2h and that of the sensor (reads₊(T) - reads₋(T)) / 2h; with the former as g and the latter
 * as e, e - c A⁻¹ g is the slope of what the sensor reads at rest, without error but that of the difference.
 *
 * <p>Bodies may follow each other very quickly, so whoever integrates takes a method for stiff systems. Arrays that it gives are
 * copies.
 *
 * @param bodies what holds heat, as people call it, which may be alike for two; there may be none, then the sensor reads d
 * @param a      rate of change of each body per kelvin of each other, row by row, 1/s; all its eigenvalues lie left of 0
 * @param f      rates of change were all bodies at 0 K, K/s
 * @param c      change of what the sensor reads with the temperature of each body
 * @param d      what the sensor would read were all bodies at 0 K, K
 * @param rest   temperatures at which all rates vanish, K
 * @param sensed what the sensor reads there, K
 */
public record LinearPlant(List<String> bodies, double[][] a, double[] f, double[] c, double d, double[] rest, double sensed) {

    public LinearPlant {
        bodies = List.copyOf(bodies);
        int n = bodies.size();
        if (a.length != n || Arrays.stream(a).anyMatch(row -> row.length != n) || f.length != n || c.length != n || rest.length != n) {
            throw new IllegalArgumentException("expected all of size " + n + ", got " + a.length + " rows, " + f.length + " rates, "
                    + c.length
                    + " changes of the sensor and " + rest.length + " temperatures at rest");
        }
        a = copy(a);
        f = f.clone();
        c = c.clone();
        rest = rest.clone();
    }

    private static double[][] copy(double[][] rows) {
        return Arrays.stream(rows).map(double[]::clone).toArray(double[][]::new);
    }

    /** Number of bodies. */
    public int size() {
        return bodies.size();
    }

    @Override
    public double[][] a() {
        return copy(a);
    }

    @Override
    public double[] f() {
        return f.clone();
    }

    @Override
    public double[] c() {
        return c.clone();
    }

    @Override
    public double[] rest() {
        return rest.clone();
    }

    /**
     * Rates of change, K/s.
     *
     * @param temperatures of the bodies, K
     */
    public double[] rates(double[] temperatures) {
        double[] rates = f.clone();
        for (int i = 0; i < rates.length; i++) {
            for (int j = 0; j < rates.length; j++) {
                rates[i] += a[i][j] * temperatures[j];
            }
        }
        return rates;
    }

    /**
     * What the sensor reads, K.
     *
     * @param temperatures of the bodies, K
     */
    public double reads(double[] temperatures) {
        double reads = d;
        for (int i = 0; i < c.length; i++) {
            reads += c[i] * temperatures[i];
        }
        return reads;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof LinearPlant plant && bodies.equals(plant.bodies) && Arrays.deepEquals(a, plant.a) && Arrays.equals(f,
                plant.f)
                && Arrays.equals(c, plant.c) && d == plant.d && Arrays.equals(rest, plant.rest) && sensed == plant.sensed;
    }

    @Override
    public int hashCode() {
        return 31 * (31 * bodies.hashCode() + Arrays.hashCode(rest)) + Arrays.deepHashCode(a);
    }

    @Override
    public String toString() {
        return "LinearPlant of " + bodies + " at rest at " + Arrays.toString(rest) + " K, sensor at " + sensed + " K";
    }
}
