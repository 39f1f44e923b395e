package tramontane.acoustics;

import java.util.List;
import java.util.Optional;

/**
 * What is known of the noise of a part.
 *
 * @param measurements where it was measured and what came out; empty where nothing usable is stated
 * @param blades       number of blades of its rotor
 * @param exponent     by how many lg of the speed its level rises beyond the speeds that were measured
 */
public record MoverNoise(List<Measurement> measurements, Optional<Integer> blades, double exponent) {

    /** What sections about noise are called, whatever carries them: parts, passages, bays and designs. */
    public static final String SECTION = "noise";

    /** Of which nothing is known. */
    public static final MoverNoise NONE = new MoverNoise(List.of(), Optional.empty(), 50);

    public MoverNoise {
        measurements = List.copyOf(measurements);
    }

    /** Where a mover worked when it was measured, if its flow is not stated. */
    public enum Place {
        /** Without any resistance, the usual case of data sheets. */
        FREE_DELIVERY("free delivery"),
        /** Where its efficiency is highest. */
        BEST_POINT("best point");

        private final String word;

        Place(String word) {
            this.word = word;
        }

        /** As it is written and read. */
        public String word() {
            return word;
        }
    }

    /** What a sound pressure was measured in. */
    public enum Field {
        /** No surface near: 10 lg 4πr² between power and pressure. */
        FREE("free field"),
        /** Over a reflecting plane: 10 lg 2πr². */
        HALF_SPACE("half-space");

        private final String word;

        Field(String word) {
            this.word = word;
        }

        /** As it is written and read. */
        public String word() {
            return word;
        }
    }

    /**
     * From where a sound pressure was measured.
     *
     * @param metres distance from the mover, m
     * @param field  what it was measured in; empty where nothing says so
     */
    public record Distance(double metres, Optional<Field> field) {
    }

    /**
     * Levels at one speed and one flow.
     *
     * @param speed         of the rotor, rad/s; the rated one where not given
     * @param flow          m³/s, where stated
     * @param place         where it worked, if no flow is stated
     * @param level         A-weighted level, dB
     * @param distance      where levels are sound pressure levels; empty where they are sound power levels
     * @param bands         band levels without weighting, dB; empty where none are stated
     * @param octaves       whether the bands are octaves, else thirds
     * @param first         the first band, as counted by {@link tramontane.physics.sound.Bands}
     * @param tones         tones that stand out, their levels included in the band levels and in the A-weighted level
     * @param density       of the air, kg/m³
     * @param rotorDiameter of the mover that was measured, m; the part itself where not given
     * @param tolerance     how far the levels may be off, dB
     */
    public record Measurement(Optional<Double> speed, Optional<Double> flow, Place place, Optional<Double> level,
            Optional<Distance> distance, List<Double> bands, boolean octaves, int first, List<Tone> tones, double density,
            Optional<Double> rotorDiameter, double tolerance) {
        public Measurement {
            bands = List.copyOf(bands);
            tones = List.copyOf(tones);
        }
    }

    /**
     * A tone.
     *
     * @param order     its frequency over that of the rotation: the number of blades for the blade passing frequency; empty where
     *                  the frequency is stated
     * @param frequency Hz at the speed of the measurement, where stated
     * @param level     without weighting, dB, of power or pressure as the bands are
     * @param fixed     whether it does not follow the speed, neither in frequency nor in level, as mains hum
     */
    public record Tone(Optional<Double> order, Optional<Double> frequency, double level, boolean fixed) {
    }
}
