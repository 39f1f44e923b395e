package tramontane.physics;

/** Loss of total pressure where a duct widens or narrows at once, on the velocity in the smaller section. Turbulent flow. */
public final class AreaChange {

    private AreaChange() {
    }

    /**
     * Sudden expansion: K = (1 - s)², the momentum balance of Borda and Carnot.
     *
     * @param ratio s, smaller over larger area, 0 to 1
     * @return K on the velocity in the smaller section
     */
    public static double expansion(double ratio) {
        requireRatio(ratio);
        return (1 - ratio) * (1 - ratio);
    }

    /**
     * Sudden contraction with sharp edges: K = 0.0696 (1 - β⁵) λ² + (λ - 1)², λ = 1 + 0.622 (1 - 0.215 β² - 0.785 β⁵), β = √s.
     * D. C. Rennels, H. M. Hudson, Pipe Flow: A Practical and Comprehensive Guide (2012), ch. 10. Other authors differ by up
     * to a third.
     *
     * @param ratio s, smaller over larger area, 0 to 1
     * @return K on the velocity in the smaller section
     */
    public static double contraction(double ratio) {
        requireRatio(ratio);
        double fifth = ratio * ratio * Math.sqrt(ratio);
        double jet = 1 + 0.622 * (1 - 0.215 * ratio - 0.785 * fifth);
        return 0.0696 * (1 - fifth) * jet * jet + (jet - 1) * (jet - 1);
    }

    private static void requireRatio(double ratio) {
        if (!(ratio >= 0 && ratio <= 1)) {
            throw new IllegalArgumentException("ratio of areas must be 0 to 1, got " + ratio);
        }
    }
}
