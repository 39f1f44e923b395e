package tramontane.acoustics;

import java.util.List;
import java.util.Optional;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.NoiseCriterion;
import tramontane.physics.sound.NoiseRating;
import tramontane.physics.sound.Rating;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.Weighting;

/**
 * The noise of a design in one condition: at its sources, where it leaves, and where somebody listens.
 *
 * @param banks     banks of which something is known, in the order of the design; those that stand still are silent
 * @param unknown   banks that run and of whose noise nothing is known; with any, openings and positions are empty
 * @param openings  what leaves by each opening
 * @param positions what is heard at each position
 */
public record NoiseState(List<BankNoise> banks, List<String> unknown, List<OpeningNoise> openings, List<PositionNoise> positions) {

    /** Of a design that says nothing of noise. */
    public static final NoiseState NONE = new NoiseState(List.of(), List.of(), List.of(), List.of());

    public NoiseState {
        banks = List.copyOf(banks);
        unknown = List.copyOf(unknown);
        openings = List.copyOf(openings);
        positions = List.copyOf(positions);
    }

    /** Whether no mover runs, though something is known of the noise of all that could. */
    public boolean silent() {
        return unknown.isEmpty() && !banks.isEmpty() && banks.stream().allMatch(bank -> bank.movers().isEmpty());
    }

    /** The position of that name. */
    public Optional<PositionNoise> position(String id) {
        return positions.stream().filter(each -> each.position().equals(id)).findFirst();
    }

    /** The bank of that name. */
    public Optional<BankNoise> bank(String id) {
        return banks.stream().filter(each -> each.bank().equals(id)).findFirst();
    }

    /**
     * Sound power of a bank.
     *
     * @param bank    its id
     * @param movers  what each running mover gives
     * @param noise   all together without tones, ratio over 1 pW
     * @param tones   tones of all; those of one frequency are one
     * @param below   how far the level may be lower, dB
     * @param above   how far it may be higher, dB
     * @param tonal   whether all tones that may stand out are stated, that of the blades among them
     * @param blades  number of blades, where stated
     * @param speed   of the movers that run, of the last one where they differ, rad/s; 0 where none does
     */
    public record BankNoise(String bank, List<Emission> movers, Spectrum noise, List<Emission.Tone> tones, double below, double above,
            boolean tonal, Optional<Integer> blades, double speed) {
        public BankNoise {
            movers = List.copyOf(movers);
            tones = List.copyOf(tones);
        }

        /** Noise and tones. */
        public Spectrum total() {
            return whole(noise, tones);
        }

        /** Blade passing frequency, Hz; empty where no mover runs or the number of blades is not stated. */
        public Optional<Double> bladeFrequency() {
            return speed > 0 ? blades.map(number -> number * speed / (2 * Math.PI)) : Optional.empty();
        }
    }

    /**
     * What leaves by an opening.
     *
     * @param passage the passage that ends outside; a bank where its rotor does
     * @param power   sound power, ratio over 1 pW, tones included
     * @param below   how far its A-weighted level may be lower, dB
     * @param above   how far it may be higher, dB
     */
    public record OpeningNoise(String passage, Spectrum power, double below, double above) {
    }

    /**
     * What is heard of one bank by one opening.
     *
     * @param bank    the bank
     * @param opening the passage by which it leaves
     * @param noise   without tones, mean square of pressure over (20 µPa)²
     * @param tones   its tones, of pressure
     * @param below   how far it may be lower, dB
     * @param above   how far it may be higher, dB
     */
    public record Part(String bank, String opening, Spectrum noise, List<Emission.Tone> tones, double below, double above) {
        public Part {
            tones = List.copyOf(tones);
        }

        /** Noise and tones. */
        public Spectrum total() {
            return whole(noise, tones);
        }
    }

    /**
     * A tone as it is heard, within the range of ECMA-418-1.
     *
     * @param frequency  Hz
     * @param level      sound pressure level, dB
     * @param toNoise    tone-to-noise ratio, dB
     * @param prominence prominence ratio, dB
     * @param excess     by how much the higher of both stands above what makes a tone prominent, dB; below zero for none; of the
     *                   tone-to-noise ratio alone where that is below {@link tramontane.physics.sound.ToneInNoise#LEAST_RATIO}, since such a tone is not heard
     */
    public record Heard(double frequency, double level, double toNoise, double prominence, double excess) {
        /** Whether it is prominent by ECMA-418-1. */
        public boolean prominent() {
            return excess >= 0;
        }
    }

    /**
     * What is heard at a position.
     *
     * @param position its id
     * @param parts    by bank and opening
     * @param noise    all together without tones
     * @param total    all together
     * @param tones    tones, from the lowest up
     * @param level    A-weighted sound pressure level, dB
     * @param lower    how low it may be, dB
     * @param upper    how high it may be, dB
     * @param shape    how far levels of single bands may be off beyond that, dB: where spectra are assumed
     */
    public record PositionNoise(String position, List<Part> parts, Spectrum noise, Spectrum total, List<Heard> tones, double level,
            double lower, double upper, double shape) {
        public PositionNoise {
            parts = List.copyOf(parts);
            tones = List.copyOf(tones);
        }

        /** C-weighted level, dB. */
        public double weightedC() {
            return total.level(Weighting.C);
        }

        /** Noise rating. */
        public Optional<Rating> noiseRating() {
            return NoiseRating.of(total.octaves());
        }

        /** Noise criterion. */
        public Optional<Rating> noiseCriterion() {
            return NoiseCriterion.of(total.octaves());
        }

        /** The A-weighted level without one of the parts, dB; negative infinity where it is the only one. */
        public double without(Part part) {
            double rest = 0;
            for (Part each : parts) {
                rest += each == part ? 0 : each.total().power(Weighting.A);
            }
            return Levels.of(rest);
        }
    }

    static Spectrum whole(Spectrum noise, List<Emission.Tone> tones) {
        Spectrum sum = noise;
        for (Emission.Tone tone : tones) {
            sum = sum.plus(tone.frequency(), tone.power());
        }
        return sum;
    }
}
