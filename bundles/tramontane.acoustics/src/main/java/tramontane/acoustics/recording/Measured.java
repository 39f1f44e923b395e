package tramontane.acoustics.recording;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.HearingThreshold;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.ToneInNoise;
import tramontane.physics.sound.Weighting;

/**
 * What is in a recording. Levels are in the unit of its calibration, {@link Calibration#unit}; negative infinity is silence.
 *
 * @param name        of the recording
 * @param duration    s
 * @param sampleRate  Hz
 * @param channel     that was looked at, from 0; empty for the mean power of all
 * @param channels    how many there are
 * @param calibration what full scale means
 * @param level       LZeq, equivalent level without weighting from 0 Hz (exclusive) to half the sample rate, dB
 * @param levelA      LAeq, equivalent A-weighted level, dB
 * @param levelC      LCeq, equivalent C-weighted level, dB
 * @param fastA       LAFmax, highest A-weighted level with time weighting fast, dB; the detector starts from nothing after a tenth
 *                    of a second, in which the filter settles
 * @param bands       the third-octaves that the sample rate carries, from 25 Hz on
 * @param lines       power of lines, re (20 µPa)² or re a full-scale sine; their sum is that of {@code level}
 * @param lineShift   by what all lines were raised for that, dB; more than some tenths where the sound is not steady
 * @param pieces      how many spectra the lines are the mean of
 * @param tones       that stand out of the lines, by frequency, with their levels in dB; {@link #prominent} tells which are
 * @param peak        largest sample, offset included, dB re full scale
 * @param clipped     number of samples at full scale
 * @param offset      constant that was taken off the samples, that of the channel where it is largest, as a part of full scale
 * @param seconds     A-weighted levels of whole seconds one after another, dB
 * @param cautions    what to know before the figures are used, a sentence each
 */
public record Measured(String name, double duration, int sampleRate, OptionalInt channel, int channels, Calibration calibration,
        double level, double levelA, double levelC, double fastA, List<Band> bands, Lines lines, double lineShift, int pieces,
        List<ToneInNoise.Prominence> tones, double peak, long clipped, double offset, List<Double> seconds, List<String> cautions) {

    /** How far below the whole a tone is not heard, dB. */
    public static final double DROWNED = 80;

    /**
     * Level of a third-octave.
     *
     * @param third     which, of {@link Bands}
     * @param level     dB
     * @param deviation by which the level of noise differs by chance, one standard deviation, dB: 4.34/√(B T) with the width B in Hz
     * @param time      T that counts, s: the recording without the time in which the filter settles
     */
    public record Band(int third, double level, double deviation, double time) {

        static double deviation(int third, double time) {
            return 10 / Math.log(10) / Math.sqrt((Bands.upper(third) - Bands.lower(third)) * time);
        }
    }

    /** Copies its lists. */
    public Measured {
        bands = List.copyOf(bands);
        tones = List.copyOf(tones);
        seconds = List.copyOf(seconds);
        cautions = List.copyOf(cautions);
    }

    /**
     * Whether the rest drowns a tone, whatever its critical band has: whether it is {@value #DROWNED} dB or more below the whole, both
     * A-weighted. The limit is ours, generous: between the threshold of hearing and what is too loud to work in are some 80 dB(A).
     *
     * @param tone of this
     */
    public boolean drowned(ToneInNoise.Prominence tone) {
        return !(tone.level() + Weighting.A.level(tone.frequency()) > levelA - DROWNED);
    }

    /**
     * Whether a tone can be heard, which ECMA-418-1 asks before it calls one prominent: not drowned, and above the threshold of hearing
     * where the recording is calibrated.
     *
     * @param tone of this
     */
    public boolean audible(ToneInNoise.Prominence tone) {
        return !drowned(tone) && (!calibration.absolute() || tone.level() >= HearingThreshold.level(tone.frequency()));
    }

    /** Whether a tone of this is audible, and prominent by ECMA-418-1. */
    public boolean prominent(ToneInNoise.Prominence tone) {
        return tone.prominent() && audible(tone);
    }

    /** @return the bands as powers; nothing in those that were left out */
    public Spectrum spectrum() {
        double[] power = new double[Bands.THIRDS];
        bands.forEach(band -> power[band.third()] = Levels.power(band.level()));
        return Spectrum.of(power);
    }

    /** @return nominal middle frequencies of the bands that the sample rate does not carry, Hz */
    public List<Double> leftOut() {
        return leftOut(bands);
    }

    static List<Double> leftOut(List<Band> bands) {
        List<Double> left = new ArrayList<>();
        for (int third = 0; third < Bands.THIRDS; third++) {
            int which = third;
            if (bands.stream().noneMatch(band -> band.third() == which)) {
                left.add(Bands.nominal(third));
            }
        }
        return left;
    }

    /** @param octave of {@link Bands}
     *  @return its level, dB; empty unless all three of its thirds are there */
    public OptionalDouble octave(int octave) {
        double[] levels = bands.stream().filter(band -> band.third() / 3 == octave).mapToDouble(Band::level).toArray();
        return levels.length == 3 ? OptionalDouble.of(Levels.sum(levels)) : OptionalDouble.empty();
    }
}
