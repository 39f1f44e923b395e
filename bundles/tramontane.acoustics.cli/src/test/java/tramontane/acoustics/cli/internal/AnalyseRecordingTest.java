package tramontane.acoustics.cli.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.cli.terminal.Ending;
import tramontane.model.Design;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.file.DesignFile;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.ToneInNoise;
import tramontane.physics.sound.Weighting;

class AnalyseRecordingTest {

    private static final String DESIGN = """
            {"format": 1, "name": "box", "airMovers": [
              {"id": "A 1", "curves": [{"speed": "2700 rpm", "flow": "0 35 cfm", "pressure": "50 0 Pa"}], "notes": "kept",
               "sections": {"drive": {"wires": 4.0}, "lab": [1, 2.50]}},
              {"id": "A 2", "curves": [{"speed": "2700 rpm", "flow": "0 35 cfm", "pressure": "50 0 Pa"}],
               "sections": {"noise": {"soundPower": "42 dB"}}}],
             "airPath": {"bays": [], "passages": []}, "lab": {"shelf": 7}}
            """;

    @TempDir
    private Path folder;
    private final FakeEngine engine = new FakeEngine();
    private final MemoryConsole console = new MemoryConsole(100);
    private Sound sound;
    private String design;

    @BeforeEach
    void open() throws IOException {
        Path samples = Files.createDirectory(folder.resolve("samples"));
        Files.writeString(samples.resolve("shipped.tramontane.json"), DESIGN);
        design = Files.writeString(folder.resolve("box.tramontane.json"), DESIGN).toString();
        sound = new Sound(Optional.of(samples), engine);
    }

    private int run(String... arguments) throws Ending {
        List<String> all = new ArrayList<>(List.of("recording"));
        all.addAll(Arrays.asList(arguments));
        return sound.run(all, console);
    }

    private String refused(int code, String... arguments) {
        Ending ending = assertThrows(Ending.class, () -> run(arguments));
        assertEquals(code, ending.code());
        return ending.getMessage();
    }

    private JsonObject json(String... arguments) throws Ending {
        MemoryConsole own = new MemoryConsole(100);
        List<String> all = new ArrayList<>(List.of("recording"));
        all.addAll(Arrays.asList(arguments));
        all.addAll(List.of("--format", "json"));
        assertEquals(0, sound.run(all, own));
        return JsonParser.parseString(own.written()).getAsJsonObject();
    }

    private Path file(String name) {
        return folder.resolve(name);
    }

    @Test
    void whatWasRenderedIsReadBack() throws Ending {
        Path wav = file("noise.wav");
        String fullScale = Recordings.render(List.of(wav), List.of(Recordings.sound(Recordings.NOISE)));
        JsonObject json = json(wav.toString(), "--full-scale", fullScale);
        JsonArray thirds = json.getAsJsonArray("thirds");
        assertEquals(Bands.THIRDS, thirds.size());
        for (int third = 0; third < Bands.THIRDS; third++) {
            JsonObject band = thirds.get(third).getAsJsonObject();
            assertEquals(Bands.nominal(third), band.get("third").getAsDouble());
            assertEquals(Recordings.NOISE.level(third), band.get("level").getAsDouble(), 0.2, Bands.nominal(third) + " Hz");
            assertTrue(band.get("deviation").getAsDouble() > 0);
        }
        JsonArray octaves = json.getAsJsonArray("octaves");
        for (int octave = 0; octave < Bands.OCTAVES; octave++) {
            assertEquals(Recordings.NOISE.octave(octave), octaves.get(octave).getAsJsonObject().get("level").getAsDouble(), 0.2);
        }
        assertEquals(Recordings.NOISE.level(Weighting.A), json.get("levelA").getAsDouble(), 0.2);
        assertEquals(Recordings.NOISE.level(Weighting.C), json.get("levelC").getAsDouble(), 0.2);
        assertEquals(Recordings.NOISE.level(), json.get("levelZ").getAsDouble(), 0.2);
        assertTrue(json.get("fastA").getAsDouble() > json.get("levelA").getAsDouble());
        assertEquals(0, json.getAsJsonArray("tones").size());
    }

    @Test
    void theTextSaysAllInItsOrder() throws Ending {
        Path wav = file("fan.wav");
        String fullScale = Recordings.render(List.of(wav), List.of(Recordings.sound(Recordings.NOISE,
                new ToneInNoise.Tone(315, Levels.power(56)))));
        assertEquals(0, run(wav.toString(), "--full-scale", fullScale));
        String text = console.printed();
        int at = -1;
        for (String part : List.of("fan.wav: PCM 24 bit, 48000 Hz, 1 channel, 10.0 s", "Calibration: a full-scale sine is ",
                "levels are in dB re 20 µPa.",
                "Levels", "LAeq", "LCeq", "LZeq", "LAFmax", "Bands", "25 Hz", "1.25 kHz", "20 kHz", "Tones", "315.0 Hz", "yes")) {
            int next = text.indexOf(part, at + 1);
            assertTrue(next > at, part + " is not there, or not in its place:\n" + text);
            at = next;
        }
        assertEquals("", console.errors());
        assertEquals(List.of("analysing fan.wav"), console.progress.stream().distinct().toList());
    }

    @ParameterizedTest
    @ValueSource(ints = {80, 100, 120})
    void noLineIsTooLong(int width) throws Ending {
        Path wav = file("fan.wav");
        Path off = file("off.wav");
        String fullScale = Recordings.render(List.of(wav, off), List.of(Recordings.sound(Recordings.NOISE,
                new ToneInNoise.Tone(315, Levels.power(56))), Recordings.sound(Recordings.NOISE.gained(-10))));
        MemoryConsole narrow = new MemoryConsole(width);
        sound.run(List.of("recording", wav.toString(), "--full-scale", fullScale, "--background", off.toString(), "--distance", "1 m",
                "--field", "half-space", "--speed", "2700 rpm"), narrow);
        narrow.printed().lines().forEach(line -> assertTrue(line.codePointCount(0, line.length()) <= width, line));
        assertTrue(narrow.printed().contains("The part, half-space, 1 m, 2700 rpm"), narrow.printed());
        assertTrue(narrow.printed().contains("To know before\n  Below 86 Hz the microphone is nearer"), narrow.printed());
    }

    /** A sine of half of full scale is 6.02 dB below a full-scale sine. */
    @Test
    void calibrationsAgree() throws Ending {
        String sine = Recordings.sines(file("sine.wav"), 4, 1000, 0.5);
        assertEquals(-6.02, json(sine).get("levelZ").getAsDouble(), 0.01);
        assertEquals(113.98, json(sine, "--full-scale", "120 dB").get("levelZ").getAsDouble(), 0.01);
        // 0.5 · 10 V / 50 mV/Pa = 100 Pa in its peak, 70.7 Pa: 20 lg(70.7/20e-6) = 130.97 dB
        for (String sensitivity : List.of("50 mV/Pa", "0.05 V/Pa", "-26.0206 dB re 1 V/Pa", "-26.0206dB")) {
            assertEquals(130.97, json(sine, "--sensitivity=" + sensitivity, "--full-scale-voltage", "10 V").get("levelZ").getAsDouble(),
                    0.01);
        }
        String calibrator = Recordings.sines(file("calibrator.wav"), 4, 1000, 0.1);
        JsonObject json = json(sine, "--calibrator", calibrator);
        // five times its amplitude
        assertEquals(94 + 13.98, json.get("levelZ").getAsDouble(), 0.01);
        assertTrue(json.getAsJsonObject("calibration").get("words").getAsString().contains("calibrator.wav"));
        assertEquals(114 + 13.98, json(sine, "--calibrator", calibrator, "--calibrator-level", "114 dB").get("levelZ").getAsDouble(), 0.01);
    }

    @Test
    void aCalibratorIsNotJustAnySound() {
        String sine = Recordings.sines(file("sine.wav"), 4, 1000, 0.5);
        String other = Recordings.sines(file("other.wav"), 4, 440, 0.5);
        String said = refused(2, sine, "--calibrator", other);
        assertTrue(said.contains("other.wav: this cannot be used as the recording of a calibrator. Its tone is at 440.0 Hz, not at"
                + " 1000.0 Hz."), said);
    }

    @Test
    void channelsAreCountedFromOne() throws Ending {
        String two = Recordings.sines(file("two.wav"), 2, 1000, 0.5, 0.05);
        assertEquals(-6.02, json(two, "--channel", "1").get("levelZ").getAsDouble(), 0.01);
        JsonObject second = json(two, "--channel", "2");
        assertEquals(-26.02, second.get("levelZ").getAsDouble(), 0.01);
        assertEquals(2, second.get("channel").getAsInt());
        // (0.25 + 0.0025)/2
        assertEquals(-8.99, json(two).get("levelZ").getAsDouble(), 0.01);
        assertTrue(json(two).get("channel").isJsonNull());
        String said = refused(2, two, "--channel", "3");
        assertTrue(said.endsWith("two.wav has 2 channels only."), said);
        run(two);
        assertTrue(console.printed().contains("Mean power of all channels."), console.printed());
    }

    @Test
    void backgroundIsTakenOff() throws Ending {
        Path on = file("on.wav");
        Path off = file("off.wav");
        // 10 dB below the part alone; both together are 0.41 dB above it
        Spectrum both = Recordings.NOISE.plus(Recordings.NOISE.gained(-10));
        String fullScale = Recordings.render(List.of(on, off), List.of(Recordings.sound(both),
                Recordings.sound(Recordings.NOISE.gained(-10))));
        for (JsonElement each : json(on.toString(), "--full-scale", fullScale, "--background", off.toString()).getAsJsonArray("thirds")) {
            JsonObject third = each.getAsJsonObject();
            assertEquals(third.get("level").getAsDouble() - 0.414, third.get("without").getAsDouble(), 0.02);
            assertFalse(third.get("atMost").getAsBoolean());
        }
        // the part off is as loud as on: only an upper bound is known
        JsonObject same = json(on.toString(), "--full-scale", fullScale, "--background", on.toString());
        same.getAsJsonArray("thirds").forEach(third -> assertTrue(third.getAsJsonObject().get("atMost").getAsBoolean()));
        assertTrue(same.getAsJsonArray("cautions").toString().contains("In 30 of 30 bands the background is less than 6 dB below"),
                same.toString());
    }

    @Test
    void programsReadThirdOctavesAsATable() throws Exception {
        String wav = Recordings.sines(file("sine.wav"), 2, 1000, 0.5);
        Path out = file("out.csv");
        assertEquals(0, run(wav, "--full-scale", "120 dB", "--format", "csv", "--output", out.toString()));
        List<String> rows = Files.readAllLines(out);
        assertEquals("third [Hz],level [dB re 20 µPa],deviation [dB]", rows.getFirst());
        assertEquals(31, rows.size());
        assertTrue(rows.get(17).startsWith("1000.0,113.9"), rows.get(17));
        assertTrue(console.errors().contains("caution: "), console.errors());
        assertTrue(console.errors().endsWith("Written to " + out + ".\n"), console.errors());
    }

    private String[] part(String... more) {
        Path wav = file("fan.wav");
        String fullScale = Recordings.render(List.of(wav), List.of(Recordings.sound(Recordings.NOISE,
                new ToneInNoise.Tone(315, Levels.power(56)))));
        List<String> all = new ArrayList<>(List.of(wav.toString(), "--full-scale", fullScale, "--distance", "1.5 m", "--field",
                "half-space", "--speed", "2700 rpm"));
        all.addAll(Arrays.asList(more));
        return all.toArray(String[]::new);
    }

    @Test
    void theSectionCanBePasted() throws Ending {
        assertEquals(0, run(part("--blades", "7", "--flow", "20 m³/h", "--tolerance", "2 dB", "--format", "section")));
        JsonObject section = JsonParser.parseString(console.written()).getAsJsonObject().getAsJsonObject("noise");
        assertEquals("2700 rpm", section.get("speed").getAsString());
        assertEquals("20 m³/h", section.get("flow").getAsString());
        assertEquals("1.5 m", section.get("distance").getAsString());
        assertEquals("half-space", section.get("field").getAsString());
        assertEquals("2 dB", section.get("tolerance").getAsString());
        assertEquals(7, section.get("blades").getAsInt());
        assertEquals(7, section.getAsJsonArray("tones").get(0).getAsJsonObject().get("order").getAsInt());
        assertTrue(console.errors().contains("caution: The background was not recorded"), console.errors());
    }

    @Test
    void thePartOfADesignGetsItsNoise() throws Exception {
        Path out = file("out.tramontane.json");
        JsonObject report = json(part("--blades", "7", "--into", design, "--part", "A 1", "--output", out.toString()));
        Design changed = DesignFile.read(out).design().orElseThrow();
        Value.Tree sections = changed.airMover("A 1").orElseThrow().more().tree("sections").orElseThrow();
        assertEquals(List.of("drive", "lab", "noise"), List.copyOf(sections.members().keySet()));
        JsonObject written = JsonParser.parseString(Files.readString(out)).getAsJsonObject().getAsJsonArray("airMovers").get(0)
                .getAsJsonObject();
        assertEquals(report.getAsJsonObject("part").getAsJsonObject("section"), written.getAsJsonObject("sections")
                .getAsJsonObject("noise"));
        // nothing else is another
        Value.Tree before = DesignFile.parse(DESIGN).design().orElseThrow().tree();
        Value.Tree more = changed.airMover("A 1").orElseThrow().more();
        Design back = changed.withAirMovers(List.of(DesignFile.parse(DESIGN).design().orElseThrow().airMovers().get(0),
                changed.airMovers().get(1)));
        assertEquals(before, back.tree());
        assertEquals(Optional.of("kept"), more.text("notes"));
        assertEquals(DESIGN, Files.readString(Path.of(design)));
    }

    @Test
    void otherBladesThanTheDesignHasAreTold() throws Exception {
        Files.writeString(Path.of(design), DESIGN.replace("\"soundPower\"", "\"blades\": 5, \"soundPower\""));
        String out = file("out.tramontane.json").toString();
        String cautions = json(part("--blades", "7", "--into", design, "--part", "A 2", "--output", out)).get("cautions").toString();
        assertTrue(cautions.contains("The design states 5 blades of A 2, the command line 7: 7 is written."), cautions);
        cautions = json(part("--into", design, "--part", "A 2", "--output", out, "--replace")).get("cautions").toString();
        assertTrue(cautions.contains("The design states 5 blades of A 2; without --blades they are not kept"), cautions);
        cautions = json(part("--blades", "5", "--into", design, "--part", "A 2", "--output", out, "--replace")).get("cautions").toString();
        assertFalse(cautions.contains("The design states"), cautions);
        assertTrue(cautions.contains("No tone is near a multiple of the blade passing frequency, 225 Hz of 5 blades at 2700 rpm"),
                cautions);
    }

    /** A tone of 360 Hz is weighted by 1.2 dB less than its band of 400 Hz. */
    @Test
    void whyLevelsDifferIsSaid() throws Ending {
        Path wav = file("edge.wav");
        String fullScale = Recordings.render(List.of(wav), List.of(Recordings.sound(Recordings.NOISE,
                new ToneInNoise.Tone(360, Levels.power(70)))));
        String cautions = json(wav.toString(), "--full-scale", fullScale, "--distance", "1 m", "--field", "half-space", "--speed",
                "2700 rpm").get("cautions").toString();
        assertTrue(cautions.matches(".*LpA of the part, 6\\d\\.\\d dB, is that of the bands, weighted at their middles; LAeq, 6\\d\\.\\d dB.*"),
                cautions);
        assertTrue(cautions.contains("is that of the bands written there"), cautions);
    }

    @Test
    void whatIsReplacedIsTold() throws Exception {
        assertEquals(0, run(part("--into", design, "--part", "A 2", "--in-place")));
        assertTrue(console.errors().endsWith("The design with the noise of A 2 is written to " + design
                + "; what the part said of its noise before is replaced.\n"), console.errors());
        Design changed = DesignFile.read(Path.of(design)).design().orElseThrow();
        Value.Tree noise = (Value.Tree) changed.airMover("A 2").orElseThrow().section("noise").orElseThrow();
        assertTrue(noise.get("soundPower").isEmpty());
        assertEquals(Optional.of("2700 rpm"), noise.text("speed"));
        assertTrue(changed.airMover("A 1").orElseThrow().section("noise").isEmpty());
    }

    @Test
    void noFileIsWrittenOverUntold() throws Exception {
        Path other = Files.writeString(file("other.json"), "kept");
        assertTrue(refused(2, part("--into", design, "--part", "A 1", "--output", other.toString())).contains("--replace writes over it"));
        assertTrue(refused(2, part("--into", design, "--part", "A 1", "--output", design)).contains("this is the design itself"));
        assertTrue(refused(2, part("--into", "shipped", "--part", "A 1", "--in-place")).contains("is a sample"));
        assertTrue(refused(2, part("--output", file("fan.wav").toString())).contains("this is a recording, which is not written over"));
        assertTrue(refused(2, part("--into", design, "--part", "A 1", "--replace", "--output", file("fan.wav").toString()))
                .contains("this is a recording"));
        assertEquals("kept", Files.readString(other));
        assertEquals(0, run(part("--into", design, "--part", "A 1", "--output", other.toString(), "--replace")));
        assertTrue(Files.readString(other).contains("half-space"));
    }

    @Test
    void aDesignWithMistakesStaysAsItIs() throws Exception {
        engine.problems.add(Problem.error("airMovers[0]", "is wrong"));
        assertEquals(2, run(part("--into", design, "--part", "A 1", "--in-place")));
        assertTrue(console.errors().contains("airMovers[0] (A 1): is wrong"), console.errors());
        assertEquals(DESIGN, Files.readString(Path.of(design)));
    }

    @Test
    void silenceIsShownAsSuch() throws Ending {
        String silent = Recordings.sines(file("silent.wav"), 2, 1000, 0);
        run(silent);
        String text = console.printed();
        assertTrue(text.contains("All samples are zero."), text);
        assertFalse(text.contains("Infinity"), text);
        assertTrue(text.lines().anyMatch(line -> line.matches(" *31\\.5 Hz +silent +31\\.5 Hz +silent")), text);
        JsonObject json = json(silent);
        for (String bands : List.of("octaves", "thirds")) {
            assertTrue(json.getAsJsonArray(bands).get(0).getAsJsonObject().get("deviation").isJsonNull());
        }
        assertTrue(json.get("peak").isJsonNull());
    }

    /** A tone of 200 Hz with 9 dB, where 14.4 dB are heard, and one 84 dB below the loudest. */
    @Test
    void whyAToneIsNotProminentIsSaid() throws Ending {
        Path wav = file("tones.wav");
        String fullScale = Recordings.render(List.of(wav), List.of(Recordings.sound(Spectrum.SILENCE,
                new ToneInNoise.Tone(1000, Levels.power(64)), new ToneInNoise.Tone(200, Levels.power(9)),
                new ToneInNoise.Tone(4000, Levels.power(-20)))));
        run(wav.toString(), "--full-scale", fullScale);
        String text = console.printed();
        assertTrue(text.lines().anyMatch(line -> line.contains("200.0 Hz") && line.endsWith("no, below the threshold of hearing")), text);
        assertTrue(text.lines().anyMatch(line -> line.contains("4000.0 Hz") && line.endsWith("no, far below the rest")), text);
        assertTrue(text.lines().anyMatch(line -> line.contains("1000.0 Hz") && line.endsWith("yes")), text);
        JsonArray tones = json(wav.toString(), "--full-scale", fullScale).getAsJsonArray("tones");
        assertFalse(tones.get(0).getAsJsonObject().get("audible").getAsBoolean());
        assertFalse(tones.get(0).getAsJsonObject().get("prominent").getAsBoolean());
        assertTrue(tones.get(1).getAsJsonObject().get("prominent").getAsBoolean());
    }

    @Test
    void silenceIsNoNoiseOfAPart() {
        String silent = Recordings.sines(file("silent.wav"), 2, 1000, 0);
        String said = refused(4, silent, "--full-scale", "120 dB", "--distance", "1 m", "--field", "free field", "--speed", "2700 rpm");
        assertTrue(said.endsWith("silent.wav: There is no sound in the recording, so that nothing can be said of the part."), said);
    }

    @Test
    void brokenRecordingsAreRefused() throws IOException {
        assertTrue(refused(2, Files.writeString(file("text.wav"), "this is no sound at all").toString()).contains(
                "text.wav: This is not a WAV file: it begins with this, where RIFF was expected"));
        Path cut = Path.of(Recordings.sines(file("cut.wav"), 2, 1000, 0.5));
        Files.write(cut, Arrays.copyOf(Files.readAllBytes(cut), 100_000));
        assertTrue(refused(2, cut.toString()).contains("cut.wav: The file is cut off: 0.694 s of 2.000 s are there"));
        assertTrue(refused(2, Recordings.sines(file("short.wav"), 0.3, 1000, 0.5)).contains("short.wav: The recording lasts 0.300 s"));
        assertTrue(refused(2, file("nix.wav").toString()).endsWith("nix.wav: there is no such file."));
        assertTrue(refused(2, folder.toString()).contains("this is a folder"));
    }

    @Test
    void ctrlCEndsIt() {
        console.stop = true;
        String sine = Recordings.sines(file("sine.wav"), 2, 1000, 0.5);
        assertThrows(CancellationException.class, () -> run(sine));
        assertEquals("", console.printed());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            --full-scale 120                                    | --full-scale
            --full-scale 120dB --calibrator x.wav               | Choose one calibration of --full-scale and --calibrator
            --sensitivity 50mV/Pa                               | --full-scale-voltage is missing
            --full-scale-voltage 10V                            | --sensitivity is missing
            --sensitivity 50 --full-scale-voltage 10V           | is no sensitivity; write for example "50 mV/Pa"
            --sensitivity 0V/Pa --full-scale-voltage 10V        | is no sensitivity
            --calibrator-level 94dB                             | goes with --calibrator FILE
            --channel 0                                         | no whole number from 1
            --background x.wav                                  | --background needs calibrated levels
            --distance 1m                                       | missing: --field, --speed
            --blades 7                                          | missing: --distance, --field, --speed
            --distance 1m --field half --speed 9rpm             | "free field" or "half-space"
            --distance 0m --field half-space --speed 9rpm       | must be above zero
            --distance 1m --field half-space --speed 9rpm       | The noise of a part needs calibrated levels
            --format section                                    | --format section needs --distance, --field and --speed
            --format xml                                        | text, json, csv, section
            --into box                                          | --into needs --distance
            --in-place                                          | --in-place goes with --into DESIGN
            --part x                                            | --part goes with --into DESIGN
            --calibrator nix.wav                                | nix.wav: there is no such file
            --distanc 1m                                        | did you mean --distance?""")
    void mistakesAreNamed(String arguments, String sentence) {
        String sine = Recordings.sines(file("sine.wav"), 1, 1000, 0.5);
        List<String> all = new ArrayList<>(List.of(sine));
        all.addAll(List.of(arguments.split(" ")));
        String said = refused(2, all.toArray(String[]::new));
        assertTrue(said.contains(sentence), said);
    }

    @Test
    void partsAreNamed() {
        assertTrue(refused(2, part("--into", design, "--in-place")).contains("The design has 2 parts; name one with --part: A 1, A 2."));
        assertTrue(refused(2, part("--into", design, "--part", "A 12", "--in-place")).contains("did you mean A 1?"));
        assertTrue(refused(2, part("--into", design, "--part", "A 1")).contains("--into needs --output FILE or --in-place"));
    }
}
