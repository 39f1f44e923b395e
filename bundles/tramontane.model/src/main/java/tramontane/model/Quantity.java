package tramontane.model;

import java.util.Objects;

/**
 * A number in SI units together with how it was written.
 *
 * @param si      the value in SI units (kelvin, radians, m³/s …), finite
 * @param written what stands in the file: a plain SI number or a text with a unit
 */
public record Quantity(double si, Value written) {

    public Quantity {
        if (!Double.isFinite(si)) {
            throw new IllegalArgumentException("a quantity is a finite number, got " + si);
        }
        Objects.requireNonNull(written);
    }

    /** A quantity written as a plain SI number. */
    public static Quantity of(double si) {
        return new Quantity(si, Value.Num.of(si));
    }

    /**
     * A quantity written with a unit.
     *
     * @param si      the value in SI units
     * @param written the same value as text, for example {@code "35 cfm"}
     */
    public static Quantity of(double si, String written) {
        return new Quantity(si, new Value.Text(written));
    }

    /** This quantity where the value is unchanged (so that its writing is kept), else a plain SI number. */
    public Quantity withSi(double changed) {
        return changed == si ? this : of(changed);
    }
}
