package tramontane.model;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/**
 * A list of numbers of one kind in SI units together with how it was written.
 *
 * @param si      the values in SI units, each finite
 * @param written what stands in the file: a list of quantities, or one text with numbers and a unit at its end
 *                ({@code "0 20 40 60 cfm"})
 */
public record Quantities(List<Double> si, Value written) {

    public Quantities {
        si = List.copyOf(si);
        for (double value : si) {
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException("quantities are finite numbers, got " + si);
            }
        }
        Objects.requireNonNull(written);
    }

    /** Quantities written as a list of plain SI numbers. */
    public static Quantities of(double... si) {
        return new Quantities(Arrays.stream(si).boxed().toList(),
                new Value.Items(Arrays.stream(si).mapToObj(value -> (Value) Value.Num.of(value)).toList()));
    }

    /** How many. */
    public int size() {
        return si.size();
    }

    /** A fresh array of the values in SI units. */
    public double[] toArray() {
        return si.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
