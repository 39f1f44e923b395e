package tramontane.physics.electric;

/** What a pulse of current does to a fuse: the integral of the square of the current over time. */
public final class Fuse {

    private Fuse() {
    }

    /**
     * Of a current that dies away exponentially: ∫ (I e^(-t/τ))² dt = I² τ/2.
     *
     * @param peak I, A
     * @param time τ, in which it falls to 1/e, s
     * @return A² s
     */
    public static double decaying(double peak, double time) {
        return peak * peak * time / 2;
    }

    /**
     * Of a current that stands for a time: I² t.
     *
     * @param current A
     * @param time    s
     * @return A² s
     */
    public static double standing(double current, double time) {
        return current * current * time;
    }
}
