package tramontane.acoustics.recording;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.SplittableRandom;

/**
 * Writes a WAV file of PCM in blocks; its lengths are right after each block, so that a file that was left open can be read.
 * Not for several threads.
 */
public final class WavWriter implements Closeable {

    /** How samples are kept. */
    public enum Depth {
        /** With triangular dither of one step to either side, so that what is below a step is heard as it is, in noise. */
        BITS_16(2),
        /** Rounded: a step is below the noise of every converter. */
        BITS_24(3);

        private final int bytes;

        Depth(int bytes) {
            this.bytes = bytes;
        }

        double steps() {
            return 1L << 8 * bytes - 1;
        }
    }

    private static final int HEADER = 44;
    private static final int BLOCK = 1 << 16;

    private final FileChannel channel;
    private final Depth depth;
    private final int channels;
    private final SplittableRandom random;
    private final ByteBuffer buffer;
    private long written;

    private WavWriter(FileChannel channel, int sampleRate, int channels, Depth depth, long seed) throws IOException {
        this.channel = channel;
        this.depth = depth;
        this.channels = channels;
        random = new SplittableRandom(seed);
        buffer = ByteBuffer.allocate(Math.max(1, BLOCK / (depth.bytes * channels)) * depth.bytes * channels).order(ByteOrder.LITTLE_ENDIAN);
        ByteBuffer header = ByteBuffer.allocate(HEADER).order(ByteOrder.LITTLE_ENDIAN);
        header.put(ascii("RIFF")).putInt(HEADER - 8).put(ascii("WAVE")).put(ascii("fmt ")).putInt(16).putShort((short) 1)
                .putShort((short) channels).putInt(sampleRate).putInt(sampleRate * channels * depth.bytes)
                .putShort((short) (channels * depth.bytes)).putShort((short) (8 * depth.bytes)).put(ascii("data")).putInt(0).flip();
        put(header, 0);
    }

    /**
     * Begins a file; one that is there is replaced.
     *
     * @param file       where to
     * @param sampleRate Hz, positive
     * @param channels   1 to {@value Recording#MOST_CHANNELS}
     * @param depth      how samples are kept
     * @param seed       of the dither
     */
    public static WavWriter create(Path file, int sampleRate, int channels, Depth depth, long seed) throws IOException {
        if (sampleRate < 1 || channels < 1 || channels > Recording.MOST_CHANNELS) {
            throw new IllegalArgumentException("sample rate " + sampleRate + " Hz and " + channels + " channels cannot be written");
        }
        FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE,
                StandardOpenOption.TRUNCATE_EXISTING);
        try {
            return new WavWriter(channel, sampleRate, channels, depth, seed);
        } catch (IOException failed) {
            channel.close();
            throw failed;
        }
    }

    /**
     * Writes on.
     *
     * @param samples of each channel; full scale is 1, beyond which nothing is accepted
     * @param from    the first of them
     * @param count   how many
     */
    public void write(double[][] samples, int from, int count) throws IOException {
        if (samples.length != channels) {
            throw new IllegalArgumentException("expected " + channels + " channels, got " + samples.length);
        }
        if (HEADER + written + (long) count * channels * depth.bytes > 0xFFFFFFF0L) {
            throw new IOException("a WAV file cannot become longer than 4 GB");
        }
        for (int i = from; i < from + count; i++) {
            for (double[] each : samples) {
                put(each[i]);
            }
            if (!buffer.hasRemaining()) {
                drain();
            }
        }
        drain();
        lengths();
    }

    private void put(double sample) {
        if (!(Math.abs(sample) <= 1)) {
            throw new IllegalArgumentException("a sample of " + sample + " is beyond full scale");
        }
        double steps = depth.steps();
        double dither = depth == Depth.BITS_16 ? random.nextDouble() - random.nextDouble() : 0;
        int value = (int) Math.clamp(Math.rint(sample * steps + dither), -steps, steps - 1);
        buffer.putShort((short) value);
        if (depth == Depth.BITS_24) {
            buffer.put((byte) (value >> 16));
        }
    }

    private void drain() throws IOException {
        buffer.flip();
        int count = buffer.remaining();
        put(buffer, HEADER + written);
        written += count;
        buffer.clear();
    }

    private void lengths() throws IOException {
        long padding = written & 1;
        if (padding == 1) {
            put(ByteBuffer.wrap(new byte[1]), HEADER + written);
        }
        put(ByteBuffer.allocate(4).order(ByteOrder.LITTLE_ENDIAN).putInt(0, (int) (HEADER - 8 + written + padding)), 4);
        put(ByteBuffer.allocate(4).order(ByteOrder.LITTLE_ENDIAN).putInt(0, (int) written), HEADER - 4);
    }

    private void put(ByteBuffer what, long at) throws IOException {
        long position = at;
        while (what.hasRemaining()) {
            position += channel.write(what, position);
        }
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
