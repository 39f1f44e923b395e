package tramontane.physics.control;

/**
 * Roots of a real polynomial in the right half plane, without finding them: Routh's table. The number of changes of sign in its first
 * column is the number of roots with a positive real part.
 *
 * <p>Where a row begins with p zeros, (-1)ᵖ times the row moved left by p is added to it: M. Benidir, B. Picinbono, Extended table for
 * eliminating the singularities in Routh's array, IEEE Trans. Automatic Control 35 (1990) 218-222 (from memory). Where a row is all
 * zero, it is replaced by the derivative of the polynomial of the row above (e.g. K. Ogata, Modern Control Engineering, ch. 5). A
 * number counts as zero below 1e-12 of what it is the difference of, so roots this close to the imaginary axis are not told from
 * roots on it.
 */
public final class RouthHurwitz {

    private static final double ZERO = 1e-12;

    /**
     * What the table says.
     *
     * @param changes  changes of sign in the first column
     * @param singular whether a zero stood in it
     */
    private record Column(int changes, boolean singular) {
    }

    private RouthHurwitz() {
    }

    /**
     * Whether all roots have a negative real part: whatever moves by this characteristic polynomial dies away. A root on the imaginary
     * axis is not stable; a constant other than zero is.
     *
     * @param coefficients highest power first; leading zeros are left out
     * @throws IllegalArgumentException where all are zero or one is not finite
     */
    public static boolean stable(double... coefficients) {
        Column column = column(coefficients);
        return column.changes == 0 && !column.singular;
    }

    /**
     * How many roots have a positive real part.
     *
     * @param coefficients highest power first; leading zeros are left out
     * @throws IllegalArgumentException where all are zero or one is not finite
     */
    public static int unstableRoots(double... coefficients) {
        return column(coefficients).changes;
    }

    private static Column column(double[] coefficients) {
        int first = 0;
        int last = coefficients.length - 1;
        for (double coefficient : coefficients) {
            Inputs.finite("coefficient", coefficient);
        }
        while (first <= last && coefficients[first] == 0) {
            first++;
        }
        // a zero at the end is a root at zero
        while (last > first && coefficients[last] == 0) {
            last--;
        }
        if (first > last) {
            throw new IllegalArgumentException("a polynomial of " + coefficients.length + " zeros has no roots to count");
        }
        boolean singular = last < coefficients.length - 1;
        int degree = last - first;
        double[] above = new double[degree / 2 + 2];
        double[] row = new double[degree / 2 + 2];
        for (int i = 0; i <= degree; i++) {
            (i % 2 == 0 ? above : row)[i / 2] = coefficients[first + i];
        }
        int changes = 0;
        for (int power = degree - 1; power >= 0; power--) {
            int entries = power / 2 + 1;
            int zeros = 0;
            while (zeros < entries && row[zeros] == 0) {
                zeros++;
            }
            if (zeros == entries) {
                singular = true;
                for (int i = 0; i < entries; i++) {
                    row[i] = (power + 1 - 2 * i) * above[i];
                }
            } else if (zeros > 0) {
                singular = true;
                double sign = zeros % 2 == 0 ? 1 : -1;
                for (int i = 0; i + zeros < entries; i++) {
                    row[i] += sign * row[i + zeros];
                }
            }
            changes += above[0] > 0 == row[0] > 0 ? 0 : 1;
            double[] next = new double[above.length];
            double factor = above[0] / row[0];
            for (int i = 0; i + 1 < above.length; i++) {
                double product = factor * row[i + 1];
                double difference = above[i + 1] - product;
                next[i] = Math.abs(difference) <= ZERO * (Math.abs(above[i + 1]) + Math.abs(product)) ? 0 : difference;
            }
            above = row;
            row = next;
        }
        return new Column(changes, singular);
    }
}
