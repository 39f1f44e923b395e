package tramontane.acoustics.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.acoustics.Emission;
import tramontane.acoustics.MoverNoise;
import tramontane.acoustics.RecordedNoise;
import tramontane.acoustics.recording.Calibration;
import tramontane.acoustics.recording.NoiseFromRecording;
import tramontane.acoustics.recording.Progress;
import tramontane.acoustics.recording.Recording;
import tramontane.acoustics.recording.RecordingAnalysis;
import tramontane.acoustics.recording.Synthesis;
import tramontane.acoustics.recording.WavWriter;
import tramontane.analysis.Sections;
import tramontane.model.AirMover;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.ToneInNoise;

class RecordedNoiseTest {

    /** 2700 rpm. */
    private static final double SPEED = 90 * Math.PI;
    private static final Spectrum NOISE = Spectrum.ofOctaves(0, 38, 40, 42, 43, 41, 38, 34, 29, 23, 17);

    @TempDir
    private Path folder;

    /** Rendered, recorded, and taken for a part. */
    private NoiseFromRecording recorded(double distance, NoiseFromRecording.Field field, double... tones) throws IOException {
        List<ToneInNoise.Tone> list = new ArrayList<>();
        for (int i = 0; i < tones.length; i += 2) {
            list.add(new ToneInNoise.Tone(tones[i], Levels.power(tones[i + 1])));
        }
        Synthesis.Rendered rendered = Synthesis.render(List.of(new Synthesis.Sound("part", NOISE, list)), Synthesis.Request.USUAL,
                Progress.SILENT);
        Path file = folder.resolve("part.wav");
        rendered.sounds().getFirst().write(file, WavWriter.Depth.BITS_24);
        return NoiseFromRecording.of(RecordingAnalysis.analyse(Recording.open(file), OptionalInt.empty(),
                Calibration.ofFullScaleSine(rendered.fullScale()), Progress.SILENT), distance, field, SPEED);
    }

    private static AirMover part(Value.Tree section) {
        AirMover part = Movers.part("");
        Value.Tree more = part.more().with("sections", Value.Tree.EMPTY.with(RecordedNoise.SECTION, section));
        return new AirMover(part.id(), part.maker(), part.type(), part.width(), part.height(), part.depth(), part.rotorDiameter(),
                part.openArea(),
                part.ratedSpeed(), part.motor(), part.noLoadSpeed(), part.category(), part.lockedLoss(), part.freewheelingLoss(),
                part.ratedPower(), part.fixedLoss(), part.datasheet(), part.curves(), more);
    }

    private static MoverNoise read(Value.Tree section) {
        List<Problem> problems = new ArrayList<>();
        MoverNoiseSection type = new MoverNoiseSection();
        MoverNoise noise = Sections.read(type, section, "noise", problems).map(values -> {
            problems.addAll(type.check(values, "noise"));
            return type.decode(values);
        }).orElseThrow(() -> new AssertionError(problems.toString()));
        assertEquals(List.of(), problems);
        return noise;
    }

    /** By hand: 10 lg 4π 1.5² = 14.514 dB, 10 lg 2π 0.5² = 1.961 dB. */
    @ParameterizedTest
    @CsvSource({"FREE, 1.5, 14.514", "HALF_SPACE, 0.5, 1.961"})
    void thePartSoundsAsItWasRecorded(NoiseFromRecording.Field field, double distance, double above) throws IOException {
        // 354.5 Hz lies beside the edge of two bands, 354.8 Hz: their filters both read it
        NoiseFromRecording recorded = recorded(distance, field, 315, 52, 354.5, 50, 2000, 45);
        Value.Tree section = RecordedNoise.of(recorded, new RecordedNoise.Stated(Optional.of(0.02), Optional.of(7), 2)).section()
                .orElseThrow();
        MoverNoise noise = read(section);
        AirMover part = part(section);
        Emission emission = SoundSource.of(part, noise).orElseThrow().at(SPEED, 0.02, 1.2, SoundSource.Obstacles.NONE);
        for (int third = 0; third < Bands.THIRDS; third++) {
            // rounding; beside tones noise may be off by 0.1 dB
            assertEquals(recorded.pressureOfNoise().level(third) + above, emission.noise().level(third), 0.11,
                    Bands.nominal(third) + " Hz");
            // beside tones noise comes from the lines of a band, elsewhere from its filter, which lets in some of its neighbours
            assertEquals(NOISE.level(third) + above, emission.noise().level(third), 0.5, Bands.nominal(third) + " Hz");
        }
        assertEquals(3, emission.tones().size());
        double[] frequencies = {315, 354.5, 2000};
        double[] levels = {52, 50, 45};
        for (int i = 0; i < 3; i++) {
            assertEquals(frequencies[i], emission.tones().get(i).frequency(), 0.1);
            assertEquals(levels[i] + above, Levels.of(emission.tones().get(i).power()), 0.15);
        }
        assertEquals(7, emission.tones().getFirst().order());
        assertEquals(2, emission.below());
        assertEquals(recorded.power().level(), emission.total().level(), 0.1);
    }

    @Test
    void theSectionIsWrittenAsPeopleReadIt() throws IOException {
        NoiseFromRecording recorded = recorded(1, NoiseFromRecording.Field.FREE, 317, 52, 630, 44, 1400, 44);
        Value.Tree section = RecordedNoise.of(recorded, new RecordedNoise.Stated(Optional.empty(), Optional.of(7), 3)).section()
                .orElseThrow();
        assertEquals(List.of("blades", "speed", "at", "soundPressure", "distance", "field", "thirds", "lowestThird", "tones", "tolerance"),
                List.copyOf(section.members().keySet()));
        assertEquals(Optional.of("2700 rpm"), section.text("speed"));
        assertEquals(Optional.of("free delivery"), section.text("at"));
        assertEquals(Optional.of("1 m"), section.text("distance"));
        assertEquals(Optional.of("free field"), section.text("field"));
        assertEquals(Optional.of("25 Hz"), section.text("lowestThird"));
        assertEquals(Optional.of("3 dB"), section.text("tolerance"));
        assertTrue(section.text("thirds").orElseThrow().matches("(-?\\d+\\.\\d{1,4} ){30}dB"), section.toString());
        List<Value> tones = ((Value.Items) section.get("tones").orElseThrow()).values();
        // 317 Hz is 0.6 % off seven times 45 Hz; 1400 Hz lies between four and five times that
        assertEquals(Optional.of(new Value.Num("7")), ((Value.Tree) tones.get(0)).get("order"));
        assertEquals(Optional.of(new Value.Num("14")), ((Value.Tree) tones.get(1)).get("order"));
        assertEquals(Optional.of("1400 Hz"), ((Value.Tree) tones.get(2)).text("frequency"));
    }

    @Test
    void withoutBladesTonesHaveFrequencies() throws IOException {
        Value.Tree section = RecordedNoise.of(recorded(1, NoiseFromRecording.Field.FREE, 315, 52), RecordedNoise.Stated.NOTHING).section()
                .orElseThrow();
        assertEquals(Optional.of("315 Hz"), ((Value.Tree) ((Value.Items) section.get("tones").orElseThrow()).values().getFirst())
                .text("frequency"));
        assertTrue(section.get("blades").isEmpty());
        read(section);
    }

    @Test
    void softSoundsReadBack() {
        NoiseFromRecording soft = noise(List.of(band(4, -60), band(5, -20.04), band(6, -80), band(7, 0.04),
                band(8, Double.NEGATIVE_INFINITY)));
        Value.Tree section = RecordedNoise.of(soft, RecordedNoise.Stated.NOTHING).section().orElseThrow();
        assertEquals(Optional.of("-20.0 -50.0 0.0 dB"), section.text("thirds"));
        assertEquals(Optional.of("80 Hz"), section.text("lowestThird"));
    }

    @Test
    void silenceIsNoPart() {
        RecordedNoise nothing = RecordedNoise.of(noise(List.of(band(4, Double.NEGATIVE_INFINITY))), RecordedNoise.Stated.NOTHING);
        assertTrue(nothing.section().isEmpty());
        assertEquals(List.of("There is no sound in the recording, so that nothing can be said of the part."), nothing.notes());
    }

    @Test
    void noPartIsThatLoud() {
        RecordedNoise nothing = RecordedNoise.of(noise(List.of(band(16, 170))), RecordedNoise.Stated.NOTHING);
        assertTrue(nothing.section().isEmpty());
        assertEquals(List.of("The band of 1000 Hz has 170.0 dB, more than any part makes; the calibration must be wrong."),
                nothing.notes());
    }

    @Test
    void tonesThatTheBackgroundHasAreNamed() {
        NoiseFromRecording noise = new NoiseFromRecording(1, NoiseFromRecording.Field.FREE, SPEED, List.of(band(6, 30)),
                List.of(band(6, 30)),
                List.of(new NoiseFromRecording.Tone(100, 40, true, true), new NoiseFromRecording.Tone(315, 40, true, false)), 30, true,
                List.of());
        List<String> notes = RecordedNoise.of(noise, RecordedNoise.Stated.NOTHING).notes();
        assertEquals("The background has some of the tones too (100 Hz): take out of the section what is not of the part.",
                notes.getFirst());
    }

    private static NoiseFromRecording tones(double levelA, double... frequencies) {
        List<NoiseFromRecording.Tone> tones = new ArrayList<>();
        for (double frequency : frequencies) {
            tones.add(new NoiseFromRecording.Tone(frequency, 20, true, false));
        }
        return new NoiseFromRecording(1, NoiseFromRecording.Field.FREE, SPEED, List.of(band(16, 60)), List.of(band(16, 60)), tones, levelA,
                true, List.of());
    }

    private static RecordedNoise seven(NoiseFromRecording noise) {
        return RecordedNoise.of(noise, new RecordedNoise.Stated(Optional.empty(), Optional.of(7), 3));
    }

    /** 7 blades at 45 Hz: 315 Hz; 630 Hz is twice that, 1400 Hz no multiple. */
    @Test
    void humOfTheMainsStaysWhereItIs() {
        RecordedNoise noise = seven(tones(60, 100.4, 315, 482, 1400));
        assertEquals(List.of("100.4 Hz, 482 Hz are taken for hum of the mains and fixed, so that neither pitch nor level follows the"
                + " speed.", "1400 Hz is no multiple of the blades and follows the speed; set \"fixed\" if it does not."), noise.notes());
        MoverNoise read = read(noise.section().orElseThrow());
        assertEquals(List.of(true, false, true, false), read.measurements().getFirst().tones().stream().map(MoverNoise.Tone::fixed)
                .toList());
        Emission emission = SoundSource.of(part(noise.section().orElseThrow()), read).orElseThrow().at(SPEED / 2, 0.01, 1.2,
                SoundSource.Obstacles.NONE);
        assertEquals(List.of(100.4, 157.5, 482.0, 700.0), emission.tones().stream().map(tone -> Math.rint(10 * tone.frequency()) / 10)
                .sorted().toList());
        assertEquals(List.of(), seven(tones(60, 315, 630)).notes());
        // five times 120 Hz, and more than 1 % off
        assertEquals(1, seven(tones(60, 315, 600, 102)).notes().size());
    }

    @Test
    void bladesThatNoToneAgreesWithAreTold() {
        assertEquals(List.of("No tone is near a multiple of the blade passing frequency, 315 Hz of 7 blades at 2700 rpm: are blades and"
                + " speed right?", "405 Hz, 810 Hz are no multiples of the blades and follow the speed; set \"fixed\" if they do not."),
                seven(tones(60, 405, 810)).notes());
        assertEquals(List.of("The number of blades is not known, so that tones have no order; all follow the speed: set \"fixed\" for those"
                + " that do not, perhaps 100 Hz of the mains."),
                RecordedNoise.of(tones(60, 100, 315), RecordedNoise.Stated.NOTHING).notes());
        assertEquals(List.of(), seven(tones(60)).notes());
    }

    @Test
    void anotherLevelThanThatOfTheFiltersIsExplained() {
        assertEquals(List.of("The level in the section, 60.0 dB, is that of the bands written there, where each tone is in one band;"
                + " filters read some of them twice, which makes 60.1 dB."), seven(tones(60.1, 315)).notes());
    }

    @Test
    void whatCannotBeIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new RecordedNoise.Stated(Optional.of(-1.0), Optional.empty(), 3));
        assertThrows(IllegalArgumentException.class, () -> new RecordedNoise.Stated(Optional.empty(), Optional.of(0), 3));
        assertThrows(IllegalArgumentException.class, () -> new RecordedNoise.Stated(Optional.empty(), Optional.empty(), Double.NaN));
    }

    private static NoiseFromRecording noise(List<NoiseFromRecording.Band> bands) {
        return new NoiseFromRecording(1, NoiseFromRecording.Field.FREE, SPEED, bands, bands, List.of(), 0, false, List.of());
    }

    private static NoiseFromRecording.Band band(int third, double level) {
        return new NoiseFromRecording.Band(third, level, 0.1, 0, false);
    }
}
