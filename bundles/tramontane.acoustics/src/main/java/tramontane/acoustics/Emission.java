package tramontane.acoustics;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.Weighting;

/**
 * Sound power of one mover where it works.
 *
 * @param noise   in third-octaves without its tones, ratio over 1 pW
 * @param tones   its tones, from the lowest up
 * @param terms   how its level came about
 * @param below   how far its levels may be lower, dB
 * @param above   how far its levels may be higher, dB
 * @param assumed what was assumed on the way
 */
public record Emission(Spectrum noise, List<Tone> tones, Terms terms, double below, double above, Set<Assumed> assumed) {

    public Emission {
        tones = List.copyOf(tones);
        assumed = assumed.isEmpty() ? Set.of() : java.util.Collections.unmodifiableSet(EnumSet.copyOf(assumed));
    }

    /**
     * A tone.
     *
     * @param frequency Hz
     * @param power     ratio over 1 pW
     * @param order     its frequency over that of the rotation; 0 for one that does not follow the speed
     */
    public record Tone(double frequency, double power, double order) {
    }

    /**
     * How the A-weighted level came about: their sum.
     *
     * @param stated     A-weighted level as measured, at the nearest speed, of power or pressure, dB
     * @param conversion from pressure to power, dB; 0 where power was stated
     * @param speed      for the speed and the bands that move with it, dB
     * @param size       for the size, dB
     * @param density    for the density of the air, dB
     * @param flow       for the distance from the point of measurement on the curve, dB
     * @param obstacle   for what stands near inlet and outlet, dB
     */
    public record Terms(double stated, double conversion, double speed, double size, double density, double flow, double obstacle) {
        /** The level. */
        public double sum() {
            return stated + conversion + speed + size + density + flow + obstacle;
        }
    }

    /** What may be assumed, none of it stated. */
    public enum Assumed {
        /** Sound pressure was measured in a free field. */
        FREE_FIELD,
        /** Measured at free delivery, used elsewhere. */
        FREE_DELIVERY,
        /** The shape of the spectrum is that of its type of fan. */
        SPECTRUM,
        /** The level beyond the speeds that were measured, by the sound law. */
        SPEED,
        /** The level left of the best point, by its efficiency. */
        EFFICIENCY,
        /** The level beyond the flows that were measured. */
        FLOW,
        /** What an obstacle near the rotor adds. */
        OBSTACLE,
        /** What was measured is as large as the part: the rotor of one is stated, that of the part is not. */
        SIZE,
        /** An obstacle adds nothing: neither rotor nor frame say of what size it is near. */
        OBSTACLE_SIZE
    }

    /** Everything, tones in their bands. */
    public Spectrum total() {
        Spectrum sum = noise;
        for (Tone tone : tones) {
            sum = sum.plus(tone.frequency(), tone.power());
        }
        return sum;
    }

    /** A-weighted sound power level, dB; negative infinity for silence. */
    public double level() {
        return total().level(Weighting.A);
    }
}
