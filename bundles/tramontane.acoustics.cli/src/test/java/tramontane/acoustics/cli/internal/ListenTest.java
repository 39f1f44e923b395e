package tramontane.acoustics.cli.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.acoustics.Emission;
import tramontane.acoustics.NoiseState;
import tramontane.acoustics.recording.Synthesis;
import tramontane.analysis.Finding;
import tramontane.cli.terminal.Ending;
import tramontane.model.Problem;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.Weighting;

class ListenTest {

    private static final String DESIGN = """
            {"format": 1, "name": "NAME", "airMovers": [{"id": "A", "curves": [{"flow": "0 35 cfm", "pressure": "50 0 Pa"}]}],
             "airPath": {"bays": ["b"], "passages": [
               {"id": "fans", "kind": "bank", "from": "b", "to": "outside", "mover": "A", "across": 2}]},
             "conditions": [{"id": "nominal"}, {"id": "night, slow"},
               {"id": "one failed", "failed": [{"bank": "fans", "position": "any one"}]}]}
            """;
    private static final Spectrum SOFT = Recordings.NOISE.gained(-13.7);

    @TempDir
    private Path folder;
    private final FakeEngine engine = new FakeEngine();
    private final MemoryConsole console = new MemoryConsole(100);
    private Sound sound;
    private String loud;
    private String soft;
    private Path out;

    @BeforeEach
    void open() throws IOException {
        loud = Files.writeString(folder.resolve("loud.tramontane.json"), DESIGN.replace("NAME", "loud")).toString();
        soft = Files.writeString(folder.resolve("soft.tramontane.json"), DESIGN.replace("NAME", "soft")).toString();
        out = folder.resolve("sounds");
        sound = new Sound(Optional.empty(), engine);
        engine.noise = (name, condition) -> Optional.of(state(name.equals("loud") ? Recordings.NOISE : SOFT));
    }

    private static NoiseState.PositionNoise position(String id, Spectrum noise, Emission.Tone... tones) {
        NoiseState.Part part = new NoiseState.Part("fans", "fans", noise.times(0.5), List.of(tones), 2, 2);
        NoiseState.Part other = new NoiseState.Part("fans", "grille", noise.times(0.5), List.of(tones), 2, 2);
        Spectrum total = part.total().plus(other.total());
        return new NoiseState.PositionNoise(id, List.of(part, other), noise, total, List.of(), total.level(Weighting.A), 0, 0, 0);
    }

    private static NoiseState state(Spectrum noise) {
        return new NoiseState(List.of(), List.of(), List.of(), List.of(position("operator", noise),
                position("round about", noise.gained(-6))));
    }

    private int run(String... arguments) throws Ending {
        List<String> all = new ArrayList<>(List.of("listen"));
        all.addAll(Arrays.asList(arguments));
        return sound.run(all, console);
    }

    private String refused(int code, String... arguments) {
        Ending ending = assertThrows(Ending.class, () -> run(arguments));
        assertEquals(code, ending.code(), ending.getMessage());
        return ending.getMessage();
    }

    private JsonObject recorded(String file, double fullScale) throws Ending {
        MemoryConsole own = new MemoryConsole(100);
        sound.run(List.of("recording", out.resolve(file).toString(), "--full-scale", String.format(Locale.ROOT, "%.3f dB", fullScale),
                "--format", "json"), own);
        return JsonParser.parseString(own.written()).getAsJsonObject();
    }

    private List<String> written() throws IOException {
        try (Stream<Path> files = Files.list(out)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void twoDesignsKeepTheirRelativeLevel() throws Exception {
        assertEquals(0, run(loud, soft, "--output", out.toString(), "--format", "json"));
        JsonObject json = JsonParser.parseString(console.written()).getAsJsonObject();
        JsonArray sounds = json.getAsJsonArray("sounds");
        assertEquals(List.of("loud-nominal-operator.wav", "soft-nominal-operator.wav"), written());
        assertEquals(0, sounds.get(0).getAsJsonObject().get("toLoudest").getAsDouble());
        assertEquals(-13.7, sounds.get(1).getAsJsonObject().get("toLoudest").getAsDouble(), 1e-9);
        assertEquals(-26, sounds.get(0).getAsJsonObject().get("toFullScale").getAsDouble(), 1e-6);
        assertEquals(-39.7, sounds.get(1).getAsJsonObject().get("toFullScale").getAsDouble(), 0.1);
        double fullScale = json.get("fullScaleSine").getAsDouble();
        double first = recorded("loud-nominal-operator.wav", fullScale).get("levelA").getAsDouble();
        double second = recorded("soft-nominal-operator.wav", fullScale).get("levelA").getAsDouble();
        assertEquals(13.7, first - second, 0.1);
        assertEquals(Recordings.NOISE.level(Weighting.A), first, 0.2);
        assertTrue(console.errors().contains(Synthesis.HEARING_CAUTION), console.errors());
        assertEquals(List.of(Set.of("acoustics"), Set.of("acoustics")), engine.requests.stream().map(request -> request.analyses())
                .toList());
        assertEquals(Set.of("nominal"), engine.requests.getFirst().conditions());
    }

    /** 50 dB by each of two openings are 53 dB. */
    @Test
    void tonesOfOneFrequencyAreOne() throws Exception {
        engine.noise = (name, condition) -> Optional.of(new NoiseState(List.of(), List.of(), List.of(),
                List.of(position("operator", Recordings.NOISE,
                new Emission.Tone(466.7, Levels.power(50), 7), new Emission.Tone(933.4, Levels.power(46), 14)))));
        assertEquals(0, run(loud, "--output", out.toString(), "--format", "json"));
        double fullScale = JsonParser.parseString(console.written()).getAsJsonObject().get("fullScaleSine").getAsDouble();
        JsonArray tones = recorded("loud-nominal-operator.wav", fullScale).getAsJsonArray("tones");
        assertEquals(2, tones.size());
        assertEquals(466.7, tones.get(0).getAsJsonObject().get("frequency").getAsDouble(), 0.1);
        assertEquals(53.0, tones.get(0).getAsJsonObject().get("level").getAsDouble(), 0.2);
        assertEquals(49.0, tones.get(1).getAsJsonObject().get("level").getAsDouble(), 0.2);
    }

    @Test
    void theTableSaysWhatIsHeard() throws Exception {
        assertEquals(0, run(loud, "--condition", "nominal", "--condition", "night, slow", "--at", "operator", "--at", "round about",
                "--seconds", "2", "--output", out.toString()));
        assertEquals(List.of("loud-night_slow-operator.wav", "loud-night_slow-round_about.wav", "loud-nominal-operator.wav",
                "loud-nominal-round_about.wav"), written());
        String text = console.printed();
        assertTrue(text.startsWith("Sounds in " + out), text);
        assertTrue(text.lines().anyMatch(line -> line.matches("loud-nominal-round_about.wav +4\\d\\.\\d +-6\\.0 +-32\\.0")), text);
        assertTrue(text.contains("A full-scale sine stands for "), text);
        assertTrue(text.replace('\n', ' ').endsWith(Synthesis.HEARING_CAUTION + " "), text);
        // a second of two channels would be larger
        assertEquals(44 + 3 * 2 * 48000, Files.size(out.resolve("loud-nominal-operator.wav")));
    }

    @Test
    void casesOfAConditionAreHeardOneByOne() throws Exception {
        run(loud, "--condition", "one failed", "--seconds", "1", "--output", out.toString());
        // side by side they are alike
        assertEquals(List.of("loud-one_failed_fans_1_locked-operator.wav"), written());
        run(loud, "--condition", "one failed: fans 2 locked", "--seconds", "1", "--output", out.toString(), "--limit", "-40 dB");
        assertEquals(List.of("loud-one_failed_fans_1_locked-operator.wav", "loud-one_failed_fans_2_locked-operator.wav"), written());
        assertTrue(console.printed().lines().anyMatch(line ->
                line.matches("loud-one_failed_fans_2_locked-operator.wav +\\d+\\.\\d +0 +-40\\.0")),
                console.printed());
    }

    @Test
    void likeNamesAreToldApart() throws Exception {
        Path other = Files.createDirectory(folder.resolve("other")).resolve("loud.tramontane.json");
        Files.copy(Path.of(soft), other);
        run(loud, other.toString(), "--seconds", "1", "--output", out.toString());
        assertEquals(List.of("loud-nominal-operator.wav", "loud_2-nominal-operator.wav"), written());
    }

    @Test
    void namesThatWouldBeAlikeAreNumbered() throws Exception {
        engine.noise = (name, condition) -> Optional.of(new NoiseState(List.of(), List.of(), List.of(),
                List.of(position("???", SOFT), position("!!!", Recordings.NOISE), position("a", SOFT), position("A", SOFT))));
        assertEquals(0, run(loud, "--at", "???", "--at", "!!!", "--at", "a", "--at", "A", "--seconds", "1", "--output", out.toString()));
        assertEquals(List.of("loud-nominal-A_2.wav", "loud-nominal-a.wav", "loud-nominal-unnamed.wav", "loud-nominal-unnamed_2.wav"),
                written());
        String text = console.printed();
        assertTrue(text.contains("loud-nominal-unnamed_2.wav: nominal, at !!!.\n"), text);
        // one gain for both
        assertTrue(text.lines().anyMatch(line -> line.matches("loud-nominal-unnamed.wav +\\d+\\.\\d +-13\\.7 +-39\\.7")), text);
    }

    @Test
    void whatWasAssumedIsSaidOfEachFile() throws Exception {
        Emission.Terms terms = new Emission.Terms(50, 0, 0, 0, 0, 0, 0);
        Emission mover = new Emission(Recordings.NOISE, List.of(), terms, 3, 3, Set.of(Emission.Assumed.SPECTRUM));
        Emission known = new Emission(Recordings.NOISE, List.of(new Emission.Tone(315, 1, 7)), terms, 3, 3, Set.of());
        engine.noise = (name, condition) -> Optional.of(new NoiseState(List.of(new NoiseState.BankNoise("fans",
                List.of(name.equals("loud") ? mover : known), Recordings.NOISE, List.of(), 3, 3, name.equals("soft"), Optional.empty(), 280)), List.of(),
                List.of(), List.of(position("operator", Recordings.NOISE))));
        assertEquals(0, run(loud, soft, "--seconds", "1", "--output", out.toString()));
        assertTrue(console.printed().contains("loud-nominal-operator.wav: of fans the spectrum is assumed and not all tones are known.\n"),
                console.printed());
        assertFalse(console.printed().contains("soft-nominal-operator.wav: "), console.printed());
        MemoryConsole own = new MemoryConsole(100);
        sound.run(List.of("listen", loud, soft, "--seconds", "1", "--output", out.toString(), "--replace", "--format", "json"), own);
        JsonArray sounds = JsonParser.parseString(own.written()).getAsJsonObject().getAsJsonArray("sounds");
        for (String what : List.of("spectrumAssumed", "tonesNotKnown")) {
            assertEquals("[\"fans\"]", sounds.get(0).getAsJsonObject().getAsJsonArray(what).toString());
            assertEquals("[]", sounds.get(1).getAsJsonObject().getAsJsonArray(what).toString());
        }
    }

    @Test
    void whatPeaksDoToTheLevelIsSaid() throws Exception {
        run(loud, "--seconds", "2", "--limit", "-3 dB", "--output", out.toString());
        assertTrue(console.printed().replace('\n', ' ').matches(".*The loudest sound is at -(8|9|10|11|12)\\.\\d dB re a full-scale sine"
                + " instead of -3\\.0 dB: with more its peaks would be cut off\\..*"), console.printed());
    }

    /** 5.46 s are 2^18 samples, three bytes each. */
    @Test
    void aLoopHasWholePeriods() throws Exception {
        engine.noise = (name, condition) -> Optional.of(new NoiseState(List.of(), List.of(), List.of(),
                List.of(position("operator", Recordings.NOISE, new Emission.Tone(333.333, Levels.power(50), 7)))));
        run(loud, "--loop", "--seconds", "5", "--output", out.toString());
        assertEquals(44 + 3 * (1 << 18), Files.size(out.resolve("loud-nominal-operator.wav")));
        String text = console.printed().replace('\n', ' ');
        assertTrue(text.contains("The loop lasts 5.46 s instead of 5.00 s."), text);
        assertTrue(text.contains("the tone at 333.333 Hz moved to 333.252 Hz so that the loop has no seam."), text);
    }

    @Test
    void whatIsThereIsKept() throws Exception {
        Files.createDirectory(out);
        Path there = Files.writeString(out.resolve("loud-nominal-operator.wav"), "kept");
        assertTrue(refused(2, loud, soft, "--output", out.toString()).contains("--replace writes over it"));
        assertEquals("kept", Files.readString(there));
        assertEquals(List.of("loud-nominal-operator.wav"), written());
        assertEquals(0, run(loud, soft, "--seconds", "1", "--output", out.toString(), "--replace"));
        assertEquals(2, written().size());
        assertTrue(Files.size(there) > 100_000);
    }

    @Test
    void whoHasNoNoiseIsTold() {
        engine.noise = (name, condition) -> Optional.of(NoiseState.NONE);
        assertTrue(refused(4, loud, "--output", out.toString())
                .contains("loud.tramontane.json, nominal: the design says nothing of noise; give the part"));
        engine.noise = (name, condition) -> Optional.of(new NoiseState(List.of(), List.of("fans"), List.of(), List.of()));
        assertTrue(refused(4, loud, "--output", out.toString())
                .contains("nothing is known of the noise of fans; give the part there a section"));
        engine.noise = (name, condition) -> Optional.empty();
        engine.findings.add(Finding.error("fans", "no operating point was found"));
        assertTrue(refused(4, loud, "--output", out.toString())
                .contains("its noise could not be computed: fans: no operating point was found."));
        engine.noise = (name, condition) -> Optional.of(state(Spectrum.SILENCE));
        assertEquals("There is nothing to hear: no mover runs in loud, nominal; soft, nominal. Nothing was written; choose a condition in"
                + " which movers run with --condition.", refused(4, loud, soft, "--output", out.toString()));
        engine.givers = Set.of();
        assertTrue(refused(3, loud, "--output", out.toString()).contains("No analysis of noise is loaded"));
        assertFalse(Files.exists(out));
    }

    @Test
    void aSilentDesignBesideASoundingOneIsSilent() throws Exception {
        engine.noise = (name, condition) -> Optional.of(state(name.equals("loud") ? Recordings.NOISE : Spectrum.SILENCE));
        assertEquals(0, run(loud, soft, "--seconds", "1", "--output", out.toString()));
        assertTrue(console.printed().lines().anyMatch(line -> line.matches("soft-nominal-operator.wav +silent +silent +silent")),
                console.printed());
    }

    @Test
    void aDesignWithMistakesIsRefused() throws Ending {
        engine.problems.add(Problem.error("conditions[0]", "is wrong"));
        assertEquals(2, run(loud, "--output", out.toString()));
        assertTrue(console.errors().endsWith("1 error; nothing was solved and the file is untouched.\n"), console.errors());
    }

    @Test
    void ctrlCEndsIt() {
        console.stop = true;
        assertThrows(CancellationException.class, () -> run(loud, "--output", out.toString()));
        assertFalse(Files.exists(out));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            --condition=nominel           | did you mean "nominal"?
            --condition=dawn              | it has nominal; night, slow; one failed
            --at=operater                 | did you mean "operator"?
            --at=roof                     | it has operator; round about
            --seconds=0.5                 | it must be 1 to 120 s
            --limit=0 dB                  | it must be -120 to -3 dB
            --format=csv                  | text, json""")
    void mistakesAreNamed(String option, String sentence) {
        String said = refused(2, loud, option, "--output", out.toString());
        assertTrue(said.contains(sentence), said);
        assertFalse(Files.exists(out));
    }

    @Test
    void foldersAreChecked() throws Exception {
        assertTrue(refused(2, loud).contains("--output FOLDER is missing"));
        assertTrue(refused(2, loud, "--output", loud).contains("this is a file; name a folder"));
        assertTrue(refused(2, loud, "--output", folder.resolve("a/b").toString()).contains("does not exist"));
        assertTrue(refused(2, loud, "--condition", "nominal", "--seconds", "120", "--at", "operator", "--at", "round about", "--condition",
                "night, slow",
                "--condition", "one failed", "--output", out.toString()).contains("6 sounds of 120 s are more than the 600 s"));
    }
}
