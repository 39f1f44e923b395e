package tramontane.acoustics.recording;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RecordingTest {

    private static double[] chance(int count, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        return Wav.signal(count, i -> random.nextDouble(-1, 1));
    }

    @ParameterizedTest
    @CsvSource({"1,8", "1,16", "1,24", "1,32", "3,32", "3,64"})
    void everyCodingGivesWhatWasWritten(int tag, int bits) throws IOException {
        double step = tag == 3 ? bits == 32 ? 0x1p-24 : 0 : Math.scalb(1.0, 1 - bits);
        for (boolean extended : new boolean[] {false, true}) {
            for (int channels = 1; channels <= 3; channels++) {
                double[][] written = new double[channels][];
                for (int c = 0; c < channels; c++) {
                    written[c] = chance(2001, c);
                    written[c][0] = -1;
                }
                Wav wav = Wav.of(44100, tag, bits, written);
                wav.extended = extended;
                Recording recording = wav.recording();
                assertEquals(44100, recording.sampleRate());
                assertEquals(channels, recording.channels());
                assertEquals(2001, recording.frames());
                assertEquals(new Recording.Coding(tag == 3, bits), recording.coding());
                assertEquals(List.of(), recording.cautions());
                double[][] read = Wav.all(recording);
                for (int c = 0; c < channels; c++) {
                    assertArrayEquals(written[c], read[c], step);
                    assertEquals(-1, read[c][0]);
                }
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"8,1", "8,2", "16,1", "16,2", "24,2", "32,2"})
    void agreesWithTheReaderOfTheJavaMachine(int bits, int channels) throws Exception {
        byte[] noise = new byte[bits / 8 * channels * 1000];
        new Random(bits).nextBytes(noise);
        AudioFormat format = new AudioFormat(bits == 8 ? AudioFormat.Encoding.PCM_UNSIGNED : AudioFormat.Encoding.PCM_SIGNED, 48000, bits,
                channels, bits / 8 * channels, 48000, false);
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        AudioSystem.write(new AudioInputStream(new ByteArrayInputStream(noise), format, 1000), AudioFileFormat.Type.WAVE, file);
        double[][] read = Wav.all(Recording.of("theirs", file.toByteArray()));
        for (int i = 0; i < 1000; i++) {
            for (int c = 0; c < channels; c++) {
                long value = 0;
                int at = (i * channels + c) * bits / 8;
                for (int k = 0; k < bits / 8; k++) {
                    value |= (noise[at + k] & 0xFFL) << 8 * k;
                }
                value = bits == 8 ? value - 128 : value << 64 - bits >> 64 - bits;
                assertEquals(value / Math.scalb(1.0, bits - 1), read[c][i]);
            }
        }
    }

    @Test
    void theJavaMachineReadsWhatWeWrite(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("ours.wav");
        double[][] samples = {chance(70001, 1), chance(70001, 2), chance(70001, 3)};
        for (WavWriter.Depth depth : WavWriter.Depth.values()) {
            try (WavWriter writer = WavWriter.create(file, 96000, 3, depth, 7)) {
                writer.write(samples, 0, 1000);
                writer.write(samples, 1000, 69001);
            }
            int bytes = depth == WavWriter.Depth.BITS_16 ? 2 : 3;
            try (AudioInputStream theirs = AudioSystem.getAudioInputStream(file.toFile())) {
                assertEquals(70001, theirs.getFrameLength());
                assertEquals(96000, theirs.getFormat().getSampleRate());
                assertEquals(3, theirs.getFormat().getChannels());
                assertEquals(8 * bytes, theirs.getFormat().getSampleSizeInBits());
                byte[] all = theirs.readAllBytes();
                assertEquals(70001 * 3 * bytes, all.length);
                int last = all.length - bytes;
                int value = all[last + bytes - 1];
                for (int k = bytes - 2; k >= 0; k--) {
                    value = value << 8 | all[last + k] & 0xFF;
                }
                assertEquals(samples[2][70000], value / Math.scalb(1.0, 8 * bytes - 1), 2 / Math.scalb(1.0, 8 * bytes - 1));
            }
            assertEquals(44 + 70001 * 3 * bytes + (bytes == 3 ? 1 : 0), Files.size(file));
            assertEquals(List.of(), Recording.open(file).cautions());
            assertArrayEquals(samples[1], Wav.all(Recording.open(file))[1], 1.5 / Math.scalb(1.0, 8 * bytes - 1));
        }
    }

    @Test
    void ditherKeepsWhatIsBelowAStep(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("soft.wav");
        double[] sine = Wav.sine(48000, 4, 1000, 0.4 * 0x1p-15);
        try (WavWriter writer = WavWriter.create(file, 48000, 1, WavWriter.Depth.BITS_16, 1)) {
            writer.write(new double[][] {sine}, 0, sine.length);
        }
        double[] read = Wav.all(Recording.open(file))[0];
        double correlation = 0;
        double square = 0;
        for (int i = 0; i < sine.length; i++) {
            correlation += sine[i] * read[i];
            square += sine[i] * sine[i];
        }
        // noise of dither and rounding together is a half step; over 192000 samples 0.004 of the sine
        assertEquals(1, correlation / square, 0.016);
    }

    @Test
    void theWriterAcceptsNothingBeyondFullScale(@TempDir Path folder) throws IOException {
        try (WavWriter writer = WavWriter.create(folder.resolve("x.wav"), 48000, 1, WavWriter.Depth.BITS_24, 1)) {
            assertThrows(IllegalArgumentException.class, () -> writer.write(new double[][] {{1.01}}, 0, 1));
            assertThrows(IllegalArgumentException.class, () -> writer.write(new double[][] {{Double.NaN}}, 0, 1));
        }
    }

    @Test
    void unknownChunksAndPaddingAreSkipped() throws IOException {
        double[] written = chance(501, 5);
        Wav wav = Wav.of(48000, 1, 24, written);
        wav.before = Wav.chunk("bext", 7, new byte[7]);
        wav.after = Wav.chunk("LIST", 3, new byte[3]);
        assertArrayEquals(written, Wav.all(wav.recording())[0], 0x1p-23);
        assertEquals(501, wav.recording().frames());
    }

    @ParameterizedTest
    @CsvSource({"0", "4294967295"})
    void aRecordingThatWasNeverClosedIsUnderstood(long stated) throws IOException {
        double[] written = chance(48000, 6);
        Wav wav = Wav.of(48000, 1, 16, written);
        wav.stated = stated;
        Recording recording = wav.recording();
        assertEquals(48000, recording.frames());
        assertEquals(List.of("The recording was never closed: its header does not say how long it is; all 1.000 s up to the end of the file"
                + " are used."), recording.cautions());
        assertArrayEquals(written, Wav.all(recording)[0], 0x1p-15);
    }

    @Test
    void anEmptyDataChunkBeforeOthersIsEmpty() {
        Wav wav = new Wav();
        wav.after = Wav.chunk("LIST", 4, new byte[4]);
        assertSays(wav, "The file holds no samples (at byte 44)");
    }

    @Test
    void largeFilesAreRead() throws IOException {
        double[] written = chance(100, 7);
        Wav wav = Wav.of(48000, 1, 16, written);
        wav.riff = "RF64";
        wav.stated = 0xFFFFFFFFL;
        ByteBuffer lengths = ByteBuffer.allocate(28).order(ByteOrder.LITTLE_ENDIAN);
        lengths.putLong(280).putLong(200).putLong(100).putInt(0);
        wav.before = Wav.chunk("ds64", 28, lengths.array());
        wav.after = Wav.chunk("LIST", 4, new byte[4]);
        assertEquals(100, wav.recording().frames());
        assertEquals(List.of(), wav.recording().cautions());
        assertArrayEquals(written, Wav.all(wav.recording())[0], 0x1p-15);
        wav.before = new byte[0];
        assertSays(wav, "This RF64 file does not say how long its samples are; a ds64 chunk was expected before data (at byte 36)");
        lengths.putLong(8, 100_000_000_000L);
        wav.before = Wav.chunk("ds64", 28, lengths.array());
        assertSays(wav, "The file is cut off: 0.002 s of 1041666.7 s are there (at byte 292)");
    }

    @Test
    void aLeftOverPartOfASampleIsToldOf() throws IOException {
        Wav wav = Wav.of(48000, 1, 16, chance(100, 8), chance(100, 9));
        wav.samples = Arrays.copyOf(wav.samples, 402);
        assertEquals(100, wav.recording().frames());
        assertEquals(List.of("The last 2 bytes are less than a sample of every channel and are left out."), wav.recording().cautions());
        wav.samples = Arrays.copyOf(wav.samples, 401);
        assertEquals(List.of("The last byte is less than a sample of every channel and is left out."), wav.recording().cautions());
    }

    private static void assertSays(Wav wav, String message) {
        assertEquals(message, assertThrows(RecordingException.class, wav::recording).getMessage());
    }

    private static void assertSays(byte[] file, String message) {
        assertEquals(message, assertThrows(RecordingException.class, () -> Recording.of("test", file)).getMessage());
    }

    @Test
    void everyFaultIsOneClearSentence() {
        assertSays(new byte[0], "The file is empty; a WAV file was expected");
        assertSays("RIFF".getBytes(), "The file ends within the header of a WAV file: 4 of 12 bytes are there (at byte 0)");
        assertSays("OggS and so on".getBytes(), "This is not a WAV file: it begins with OggS, where RIFF was expected (at byte 0)");
        assertSays(new byte[100], "This is not a WAV file: it begins with bytes 00 00 00 00, where RIFF was expected (at byte 0)");
        Wav wav = Wav.of(48000, 1, 16, chance(48000, 1));
        wav.wave = "AVI ";
        assertSays(wav, "This RIFF file holds bytes 41 56 49 20, where WAVE was expected (at byte 8)");
        wav.wave = "WAVE";
        wav.riff = "RIFX";
        assertSays(wav, "This is a WAV file with the high byte first (RIFX); RIFF was expected (at byte 0)");
        wav.riff = "RIFF";
        wav.cut = 24000;
        assertSays(wav, "The file is cut off: 0.750 s of 1.000 s are there (at byte 72044)");
        wav.cut = 96010;
        assertSays(wav, "The file ends within how samples are kept: 14 of 16 bytes are there (at byte 20)");
        wav.cut = 96005;
        assertSays(wav, "The file ends before its samples; a data chunk was expected (at byte 36)");
        wav.cut = 96000;
        assertSays(wav, "The file is cut off: 0.000 s of 1.000 s are there (at byte 44)");
        wav.cut = 0;
        wav.tag = 0x55;
        assertSays(wav, "Samples are compressed or coded (format 0x0055, MPEG layer 3); PCM (0x0001) or floating point (0x0003)"
                + " was expected (at byte 20)");
        wav.tag = 1;
        wav.channels = 0;
        assertSays(wav, "The file states 0 channels; 1 to 64 were expected (at byte 22)");
        wav.channels = 1;
        wav.rate = 0;
        assertSays(wav, "The file states a sample rate of 0 Hz; 2000 to 768000 Hz were expected (at byte 24)");
        wav.rate = 0xFFFFFFFFL;
        assertSays(wav, "The file states a sample rate of 4294967295 Hz; 2000 to 768000 Hz were expected (at byte 24)");
        wav.rate = 48000;
        wav.align = 3;
        assertSays(wav, "The file states 3 bytes for the samples of one moment; 1 × 2 = 2 were expected (at byte 32)");
        wav.align = -1;
        wav.bits = 20;
        assertSays(wav, "A sample has 20 bits; 8, 16, 24 or 32 were expected (at byte 34)");
        wav.bits = 16;
        wav.samples = new byte[0];
        assertSays(wav, "The file holds no samples (at byte 44)");
        wav.extended = true;
        wav.valid = 17;
        assertSays(wav, "Of 16 bits of a sample 17 are said to count (at byte 38)");
    }

    @Test
    void whatIsNoNumberIsFound() throws IOException {
        for (int bits : new int[] {32, 64}) {
            for (double odd : new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
                double[] left = new double[50000];
                double[] right = new double[50000];
                right[40000] = odd;
                Recording recording = Wav.of(48000, 3, bits, left, right).recording();
                String message = assertThrows(RecordingException.class, () -> Wav.all(recording)).getMessage();
                assertEquals("Sample 40000 of channel 2 is " + odd + ", where numbers about -1 to 1 were expected (at byte "
                        + (44 + 80001 * bits / 8) + ")", message);
            }
        }
    }

    @Test
    void aFileThatShrinksIsToldOf(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("shrinks.wav");
        byte[] bytes = Wav.of(48000, 1, 16, chance(48000, 1)).bytes();
        Files.write(file, bytes);
        Recording recording = Recording.open(file);
        Files.write(file, Arrays.copyOf(bytes, 48044));
        assertEquals("The file became shorter while it was read: 0.500 s of 1.000 s could be read (at byte 48044)",
                assertThrows(RecordingException.class, () -> Wav.all(recording)).getMessage());
    }

    @Test
    void chunksWithoutEndAreNotLookedAtWithoutEnd() {
        byte[] chunks = new byte[8 * 20000];
        for (int i = 0; i < chunks.length; i += 8) {
            Arrays.fill(chunks, i, i + 4, (byte) 'A');
        }
        Wav wav = Wav.of(48000, 1, 16, new double[10]);
        wav.before = chunks;
        assertSays(wav, "The file has more than 10000 chunks before its samples; a data chunk was expected (at byte 80012)");
    }

    /** Nothing but our exception, no loop, no memory by what a header claims. */
    @Test
    void chanceFilesGiveNothingButASentence() {
        Random random = new Random(20);
        Assertions.assertTimeout(Duration.ofSeconds(60), () -> {
            int understood = 0;
            int refused = 0;
            for (int i = 0; i < 30000; i++) {
                byte[] file = fuzzed(random, i);
                try {
                    double[][] read = Wav.all(Recording.of("chance", file));
                    assertTrue((long) read.length * read[0].length <= file.length);
                    understood++;
                } catch (RecordingException wrong) {
                    assertFalse(wrong.getMessage().isBlank());
                    refused++;
                }
            }
            assertTrue(understood > 1000 && refused > 1000, understood + " understood, " + refused + " refused");
        });
    }

    private static byte[] fuzzed(Random random, int i) {
        if (i % 10 == 0) {
            byte[] file = new byte[random.nextInt(200)];
            random.nextBytes(file);
            return file;
        }
        int tag = random.nextInt(3) == 0 ? 3 : 1;
        int bits = tag == 3 ? 32 << random.nextInt(2) : 8 << random.nextInt(2);
        Wav wav = Wav.of(48000, tag, bits, chance(random.nextInt(40) + 1, i), new double[40]);
        wav.extended = random.nextBoolean();
        if (random.nextBoolean()) {
            wav.before = Wav.chunk("JUNK", 5, new byte[5]);
        }
        if (random.nextInt(5) == 0) {
            wav.riff = "RF64";
        }
        byte[] file = wav.bytes();
        if (random.nextBoolean()) {
            file = Arrays.copyOf(file, random.nextInt(file.length + 1));
        }
        for (int k = random.nextInt(4); k > 0 && file.length > 0; k--) {
            file[random.nextInt(Math.min(file.length, random.nextBoolean() ? 70 : file.length))] = random.nextBoolean() ? (byte) -1
                    : (byte) random.nextInt(256);
        }
        return file;
    }
}
