package tramontane.physics.units;

/**
 * One unit and its way to SI: {@code si = (written + shift) * numerator / denominator}.
 *
 * <p>Numerator and denominator are kept apart so that an exact definition such as 1/3600 stays exact.
 *
 * @param symbol      how the unit is shown, for example {@code m³/h}; empty where a number has no unit
 * @param shift       what is added first, in this unit; only for temperatures with another zero
 * @param numerator   positive factor
 * @param denominator positive divisor
 */
public record Unit(String symbol, double shift, double numerator, double denominator) {

    /** Refuses factors that cannot be turned round. */
    public Unit {
        if (symbol == null || !Double.isFinite(shift) || !(numerator > 0) || !(denominator > 0)
                || Double.isInfinite(numerator) || Double.isInfinite(denominator)) {
            throw new IllegalArgumentException(
                    "unit " + symbol + ": shift " + shift + ", factor " + numerator + "/" + denominator);
        }
    }

    /** @param value a number in this unit
     *  @return the same in SI */
    public double toSi(double value) {
        return (value + shift) * numerator / denominator;
    }

    /** @param si a number in SI
     *  @return the same in this unit */
    public double fromSi(double si) {
        return si * denominator / numerator - shift;
    }
}
