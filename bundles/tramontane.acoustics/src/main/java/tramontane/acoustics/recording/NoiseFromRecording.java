package tramontane.acoustics.recording;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.ToneInNoise;
import tramontane.physics.sound.Weighting;

/**
 * Noise of a part by a recording at a distance.
 *
 * <p>Background is taken off as ISO 3744:2010, 8.2.3 does, limits from memory: nothing where it is more than 15 dB below, else
 * K1 = −10 lg(1 − 10^(−ΔL/10)); where it is less than 6 dB below, K1 is that of 6 dB, 1.26 dB, and the level is an upper bound.
 *
 * @param distance   from the part to the microphone, m
 * @param field      how sound spreads there
 * @param speed      of the part, rad/s
 * @param bands      sound pressure levels at the distance, tones included
 * @param noise      the same without the tones: where there are any near, from the lines without those of the tones; a tone that is heard
 *                   as one with a stronger is not named and stays
 * @param tones      that stand out and are not drowned, by frequency
 * @param levelA     A-weighted sound pressure level of the bands, dB re 20 µPa
 * @param background whether it was taken off
 * @param cautions   what to know before the figures are used, a sentence each
 */
public record NoiseFromRecording(double distance, Field field, double speed, List<Band> bands, List<Band> noise,
        List<Tone> tones, double levelA, boolean background, List<String> cautions) {

    /** Least difference at which background is taken off as it is, dB. */
    public static final double LEAST_DIFFERENCE = 6;
    /** Difference from which on background does not count, dB. */
    public static final double AMPLE_DIFFERENCE = 15;

    /** How sound spreads. */
    public enum Field {
        /** To all sides, 4πr². */
        FREE(4 * Math.PI),
        /** Over a plane that reflects, 2πr². */
        HALF_SPACE(2 * Math.PI);

        private final double angle;

        Field(double angle) {
            this.angle = angle;
        }

        /** @param distance m
         *  @return surface that the sound goes through, m² */
        public double surface(double distance) {
            return angle * distance * distance;
        }
    }

    /**
     * Level of a third-octave.
     *
     * @param third      which, of {@link Bands}
     * @param level      sound pressure level, dB re 20 µPa
     * @param deviation  by which it differs by chance, one standard deviation, dB; that of the background included
     * @param taken      K1, what was taken off for the background, dB
     * @param upperBound whether the background was too loud to know more
     */
    public record Band(int third, double level, double deviation, double taken, boolean upperBound) {
    }

    /**
     * A tone.
     *
     * @param frequency  Hz
     * @param level      sound pressure level, dB re 20 µPa
     * @param prominent  whether it is prominent by ECMA-418-1 and can be heard, in the recording as it is
     * @param upperBound whether the background has that tone too, less than {@value #LEAST_DIFFERENCE} dB softer
     */
    public record Tone(double frequency, double level, boolean prominent, boolean upperBound) {
    }

    /** Copies its lists. */
    public NoiseFromRecording {
        bands = List.copyOf(bands);
        noise = List.copyOf(noise);
        tones = List.copyOf(tones);
        cautions = List.copyOf(cautions);
    }

    /**
     * Noise of a part without knowing the background.
     *
     * @param measured what was recorded, calibrated
     * @param distance m, positive
     * @param field    how sound spreads there
     * @param speed    of the part, rad/s, positive
     * @throws RecordingException where the recording is not calibrated
     */
    public static NoiseFromRecording of(Measured measured, double distance, Field field, double speed) throws RecordingException {
        return of(measured, Optional.empty(), distance, field, speed);
    }

    /**
     * Noise of a part with the background taken off.
     *
     * @param measured   what was recorded, calibrated
     * @param background recorded at the same place with the part off, calibrated
     * @param distance   m, positive
     * @param field      how sound spreads there
     * @param speed      of the part, rad/s, positive
     * @throws RecordingException where a recording is not calibrated, or the background has not the bands
     */
    public static NoiseFromRecording of(Measured measured, Measured background, double distance, Field field, double speed)
            throws RecordingException {
        return of(measured, Optional.of(background), distance, field, speed);
    }

    private static NoiseFromRecording of(Measured measured, Optional<Measured> background, double distance, Field field, double speed)
            throws RecordingException {
        if (!(distance > 0) || !(speed > 0) || Double.isInfinite(distance) || Double.isInfinite(speed)) {
            throw new IllegalArgumentException("distance " + distance + " m and speed " + speed + " rad/s must be positive");
        }
        calibrated(measured);
        List<String> cautions = new ArrayList<>(measured.cautions());
        if (background.isPresent()) {
            calibrated(background.get());
            for (String each : background.get().cautions()) {
                cautions.add("Background: " + each);
            }
        } else {
            cautions.add("The background was not recorded; it is in the levels.");
        }
        Optional<List<Measured.Band>> other = background.isPresent() ? Optional.of(background.get().bands()) : Optional.empty();
        List<Band> bands = without(measured.bands(), other);
        List<Band> noise = without(toneless(measured), background.map(NoiseFromRecording::toneless));
        List<Double> bounds = bands.stream().filter(Band::upperBound).map(band -> Bands.nominal(band.third())).toList();
        if (!bounds.isEmpty()) {
            cautions.add(said("In %d of %d bands the background is less than %.0f dB below: their levels are upper bounds.", bounds.size(),
                    bands.size(), LEAST_DIFFERENCE));
        }
        // ISO 3745 asks for a quarter of the wavelength; sound in air at 20 °C
        double near = 343.2 / (4 * distance);
        if (near > Bands.lower(0)) {
            cautions.add(said("Below %.0f Hz the microphone is nearer than a quarter of the wavelength; levels there tell little"
                    + " about other distances.", near));
        }
        return new NoiseFromRecording(distance, field, speed, bands, noise, tones(measured, background),
                spectrum(bands).level(Weighting.A), background.isPresent(), cautions);
    }

    private static void calibrated(Measured measured) throws RecordingException {
        if (!measured.calibration().absolute()) {
            throw new RecordingException("The recording " + measured.name() + " is not calibrated, so that it gives no sound pressure; a"
                    + " calibration was expected");
        }
    }

    private static List<Band> without(List<Measured.Band> bands, Optional<List<Measured.Band>> background) throws RecordingException {
        List<Band> result = new ArrayList<>();
        for (Measured.Band band : bands) {
            if (background.isEmpty()) {
                result.add(new Band(band.third(), band.level(), band.deviation(), 0, false));
                continue;
            }
            Measured.Band other = background.get().stream().filter(each -> each.third() == band.third()).findFirst()
                    .orElseThrow(() -> new RecordingException(said("The background recording does not have the band of %.0f Hz; a"
                            + " sample rate as high as that of the other was expected", Bands.nominal(band.third()))));
            result.add(without(band, other));
        }
        return result;
    }

    /** The bands without tones. */
    private static List<Measured.Band> toneless(Measured measured) {
        Lines lines = measured.lines();
        List<ToneInNoise.Prominence> tones = heard(measured);
        for (ToneInNoise.Prominence tone : tones) {
            lines = lines.without(tone.frequency(), tone.width() / 2 + 2 * lines.resolution());
        }
        List<Measured.Band> bands = new ArrayList<>();
        for (Measured.Band band : measured.bands()) {
            // the skirts of its filter let a tone in up to two bands away
            boolean near = tones.stream().anyMatch(tone -> Math.abs(Bands.position(tone.frequency()) - band.third()) < 2.5);
            bands.add(near ? new Measured.Band(band.third(), Levels.of(lines.between(Bands.lower(band.third()), Bands.upper(band.third()))),
                    band.deviation(), band.time()) : band);
        }
        return bands;
    }

    private static Band without(Measured.Band band, Measured.Band background) {
        double difference = band.level() - background.level();
        // both silent: nothing to tell them apart
        if (Double.isNaN(difference) || difference < LEAST_DIFFERENCE) {
            double taken = correction(LEAST_DIFFERENCE);
            return new Band(band.third(), band.level() - taken, band.deviation(), taken, true);
        }
        if (difference > AMPLE_DIFFERENCE) {
            return new Band(band.third(), band.level(), band.deviation(), 0, false);
        }
        double rest = 1 - Levels.power(-difference);
        double deviation = Math.hypot(band.deviation(), background.deviation() * Levels.power(-difference)) / rest;
        return new Band(band.third(), band.level() - correction(difference), deviation, correction(difference), false);
    }

    /** K1, dB. */
    static double correction(double difference) {
        return -Levels.of(1 - Levels.power(-difference));
    }

    /** Those that the rest drowns are of no use to a part; they stay in its bands. */
    private static List<ToneInNoise.Prominence> heard(Measured measured) {
        return measured.tones().stream().filter(tone -> !measured.drowned(tone)).toList();
    }

    private static List<Tone> tones(Measured measured, Optional<Measured> background) {
        List<Tone> tones = new ArrayList<>();
        double near = 2 * measured.lines().resolution();
        for (ToneInNoise.Prominence tone : heard(measured)) {
            double other = background.stream().flatMap(each -> each.tones().stream())
                    .filter(each -> Math.abs(each.frequency() - tone.frequency()) <= Math.max(near, 0.005 * tone.frequency()))
                    .mapToDouble(ToneInNoise.Prominence::level).max().orElse(Double.NEGATIVE_INFINITY);
            double difference = tone.level() - other;
            double taken = difference > AMPLE_DIFFERENCE ? 0 : correction(Math.max(LEAST_DIFFERENCE, difference));
            tones.add(new Tone(tone.frequency(), tone.level() - taken, measured.prominent(tone), difference < LEAST_DIFFERENCE));
        }
        return tones;
    }

    /** @return sound pressure at the distance with the tones, re (20 µPa)² */
    public Spectrum pressure() {
        return spectrum(bands);
    }

    /** @return sound pressure at the distance without the tones, re (20 µPa)² */
    public Spectrum pressureOfNoise() {
        return spectrum(noise);
    }

    private static Spectrum spectrum(List<Band> bands) {
        double[] power = new double[Bands.THIRDS];
        bands.forEach(band -> power[band.third()] = Levels.power(band.level()));
        return Spectrum.of(power);
    }

    /** @return sound power with the tones, re 1 pW, as if the part sounded equally in all directions of the field */
    public Spectrum power() {
        return pressure().times(field.surface(distance));
    }

    private static String said(String format, Object... arguments) {
        return String.format(Locale.ROOT, format, arguments);
    }
}
