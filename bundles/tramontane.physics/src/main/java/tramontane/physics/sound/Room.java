package tramontane.physics.sound;

import static tramontane.physics.sound.Inputs.positive;

import java.util.Arrays;

/**
 * A box-shaped room with a diffuse field: sound comes straight from the source and, evenly from all sides, back from the walls.
 *
 * <p>Lp = Lw + 10 lg(Q/(4πr²) + 4/Rc), Rc = Sα/(1 − α). Source: Kuttruff, Room Acoustics, and L. L. Beranek, Noise and Vibration
 * Control; Sabine's T = 24 ln 10 V/(cSα) (formulas from memory). Valid where no dimension is much larger than the others (1:3),
 * α is below about 0.3 and alike on all sides, and above Schroeder's frequency 2000 √(T/V), Hz with T in s, V in m³: 260 Hz in an
 * office of 60 m³ with 1 s. In flat or damped rooms the level goes on falling with distance; this is then too high far off.
 *
 * @param length     m, positive
 * @param width      m, positive
 * @param height     m, positive
 * @param absorption mean absorption coefficient α of all surfaces in each of the {@value Bands#THIRDS} thirds, above 0, at most 1
 */
public record Room(double length, double width, double height, double[] absorption) {

    /** 24 ln 10: in Sabine's formula, where sixty decibels are 6 ln 10 of energy and the mean free path is 4V/S. */
    private static final double SABINE = 24 * Math.log(10);

    /** Refuses what is no room. */
    public Room {
        positive("length", length);
        positive("width", width);
        positive("height", height);
        if (absorption.length != Bands.THIRDS) {
            throw new IllegalArgumentException("absorption has " + Bands.THIRDS + " bands, got " + absorption.length);
        }
        absorption = absorption.clone();
        for (int i = 0; i < absorption.length; i++) {
            if (!(absorption[i] > 0 && absorption[i] <= 1)) {
                throw new IllegalArgumentException("absorption at " + Bands.nominal(i) + " Hz must be above 0 and at most 1, got "
                        + absorption[i]);
            }
        }
    }

    /**
     * A room with one absorption in all bands.
     *
     * @param length     m
     * @param width      m
     * @param height     m
     * @param absorption mean coefficient
     */
    public static Room of(double length, double width, double height, double absorption) {
        double[] all = new double[Bands.THIRDS];
        Arrays.fill(all, absorption);
        return new Room(length, width, height, all);
    }

    /**
     * A room of which the reverberation is known. Refuses a time shorter than that of fully absorbing walls, where Sabine's formula
     * no longer means anything.
     *
     * @param length        m
     * @param width         m
     * @param height        m
     * @param reverberation time for 60 dB in each third, s, positive
     * @param speed         of sound, m/s, positive
     */
    public static Room ofReverberation(double length, double width, double height, double[] reverberation, double speed) {
        double volume = length * width * height;
        double surface = 2 * (length * width + width * height + height * length);
        double[] absorption = new double[reverberation.length];
        for (int i = 0; i < absorption.length; i++) {
            absorption[i] = absorptionArea(volume, positive("reverberation time", reverberation[i]), speed) / surface;
        }
        return new Room(length, width, height, absorption);
    }

    /**
     * Equivalent absorption area after Sabine: A = 24 ln 10 V/(cT), m².
     *
     * @param volume        m³, positive
     * @param reverberation time for 60 dB, s, positive
     * @param speed         of sound, m/s, positive
     */
    public static double absorptionArea(double volume, double reverberation, double speed) {
        return SABINE * positive("volume", volume) / (positive("speed of sound", speed)
                * positive("reverberation time", reverberation));
    }

    /** @return m³ */
    public double volume() {
        return length * width * height;
    }

    /** @return all six sides, m² */
    public double surface() {
        return 2 * (length * width + width * height + height * length);
    }

    /** @return a copy */
    @Override
    public double[] absorption() {
        return absorption.clone();
    }

    /** @param third a band
     *  @return equivalent absorption area A = Sα, m² */
    public double absorptionArea(int third) {
        return surface() * absorption[third];
    }

    /** @param third a band
     *  @return room constant Rc = Sα/(1 − α), m²; infinity where all is absorbed */
    public double constant(int third) {
        return absorptionArea(third) / (1 - absorption[third]);
    }

    /** @param third a band
     *  @param speed of sound, m/s, positive
     *  @return time for 60 dB after Sabine, s */
    public double reverberation(int third, double speed) {
        return SABINE * volume() / (positive("speed of sound", speed) * absorptionArea(third));
    }

    /**
     * Mean square of sound pressure over (20 µPa)² for a sound power of 1 pW: Q/(4πr²) + 4/Rc, 1/m².
     *
     * @param directivity Q of the source towards the place, positive
     * @param distance    from it, m, positive
     * @param third       a band
     */
    public double transfer(double directivity, double distance, int third) {
        return Spreading.factor(directivity, distance) + reverberant(third);
    }

    /** @param third a band
     *  @return what the walls throw back of a sound power of 1 pW, everywhere the same: 4/Rc, 1/m² */
    public double reverberant(int third) {
        return 4 * (1 - absorption[third]) / absorptionArea(third);
    }

    /** @param directivity Q of the source, positive
     *  @param third       a band
     *  @return distance at which as much comes straight as from the walls: √(Q Rc/16π), m; infinity where all is absorbed */
    public double criticalDistance(double directivity, int third) {
        return Math.sqrt(positive("directivity factor", directivity) * constant(third) / (16 * Math.PI));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Room room && length == room.length && width == room.width && height == room.height
                && Arrays.equals(absorption, room.absorption);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(new double[] {length, width, height, Arrays.hashCode(absorption)});
    }

    @Override
    public String toString() {
        return "Room[" + length + " x " + width + " x " + height + " m, absorption " + Arrays.toString(absorption) + "]";
    }
}
