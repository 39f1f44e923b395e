package tramontane.physics;

/**
 * Sound power of fans from what they deliver, and of one fan from that of a geometrically similar one.
 *
 * <p>Source: the handbook law Lw = K + 10 lg Q + 20 lg Δp, with a specific level K of each type of fan (R. D. Madison, "Fan
 * Engineering", 1949; also in VDI 3731 and the ASHRAE Handbook, HVAC Applications, chapter on noise; form from memory). With
 * the {@link FanLaws} it gives 50 lg of speed, 70 lg of diameter, 20 lg of density. Small axial fans are often fitted with 55 to
 * 60 lg of speed. Valid at one point of rating, which means at like points of the curves; levels are in dB re 1 pW.
 */
public final class FanNoise {

    private FanNoise() {
    }

    /**
     * Sound power level of a fan that delivers a flow at a pressure: K + 10 lg Q + 20 lg Δp.
     *
     * @param specific specific level K of its type, dB, with flow in m³/s and pressure in Pa
     * @param flow     m³/s, positive
     * @param pressure Pa, positive
     * @return dB
     */
    public static double level(double specific, double flow, double pressure) {
        if (!(flow > 0 && pressure > 0) || !Double.isFinite(specific + flow + pressure)) {
            throw new IllegalArgumentException("specific level " + specific + " must be finite, flow " + flow + " and pressure "
                    + pressure + " positive");
        }
        return specific + 10 * Math.log10(flow) + 20 * Math.log10(pressure);
    }

    /**
     * Lw2 − Lw1 = 50 lg(n2/n1) + 70 lg(D2/D1) + 20 lg(ρ2/ρ1).
     *
     * @param speed    ratio of speeds, positive
     * @param diameter ratio of impeller diameters, positive
     * @param density  ratio of densities, positive
     * @return level of the other fan less that of the first one at a like point, dB
     */
    public static double difference(double speed, double diameter, double density) {
        if (!(speed > 0 && diameter > 0 && density > 0) || !Double.isFinite(speed + diameter + density)) {
            throw new IllegalArgumentException("ratios of speed " + speed + ", diameter " + diameter + ", density "
                    + density + " must be positive");
        }
        return 50 * Math.log10(speed) + 70 * Math.log10(diameter) + 20 * Math.log10(density);
    }

    /**
     * Ratio of speeds at which a similar fan has the same flow at a like point: (D2/D1)⁻³. Its pressure is then (D2/D1)⁻⁴ times,
     * its sound power level −80 lg(D2/D1) apart.
     *
     * @param diameter ratio of impeller diameters, positive
     */
    public static double speedAtEqualFlow(double diameter) {
        return 1 / FanLaws.flowRatio(1, diameter);
    }
}
