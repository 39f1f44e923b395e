package tramontane.acoustics.recording;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * A WAV file whose header was understood. Its samples are read in blocks, as often as wanted, so that the length of a recording needs
 * no memory. Immutable.
 *
 * <p>Understood are RIFF, RF64 and BW64 files of PCM with 8, 16, 24 or 32 bits and of floating point with 32 or 64 bits, with 1 to
 * {@value #MOST_CHANNELS} channels. A file whose header was never completed, as when a recorder lost power, is understood with a caution.
 */
public final class Recording {

    /** Most channels that are understood. */
    public static final int MOST_CHANNELS = 64;
    /** Lowest sample rate that is understood, Hz. */
    public static final int LOWEST_RATE = 2000;
    /** Highest sample rate that is understood, Hz. */
    public static final int HIGHEST_RATE = 768000;

    /** Most chunks that are looked at for the samples; recorders write some ten. */
    private static final int MOST_CHUNKS = 10000;
    private static final long OPEN_ENDED = 0xFFFFFFFFL;
    private static final int PCM = 1;
    private static final int FLOAT = 3;
    private static final int EXTENSIBLE = 0xFFFE;
    /** Bytes 2 to 15 of the identifier of a format that has a tag, in the order of the file. */
    private static final byte[] TAGGED = {0, 0, 0, 0, 0x10, 0, (byte) 0x80, 0, 0, (byte) 0xAA, 0, 0x38, (byte) 0x9B, 0x71};

    /**
     * How samples are kept.
     *
     * @param floating whether as floating point numbers
     * @param bits     8, 16, 24 or 32; floating 32 or 64
     */
    public record Coding(boolean floating, int bits) {

        int bytes() {
            return bits / 8;
        }

        /** @return as read aloud: PCM 16 bit */
        public String words() {
            return (floating ? "float " : "PCM ") + bits + " bit";
        }
    }

    private final String name;
    private final Bytes.Source source;
    private final Coding coding;
    private final int sampleRate;
    private final int channels;
    private final long start;
    private final long frames;
    private final List<String> cautions;

    private Recording(String name, Bytes.Source source, Coding coding, int sampleRate, int channels, long start, long frames,
            List<String> cautions) {
        this.name = name;
        this.source = source;
        this.coding = coding;
        this.sampleRate = sampleRate;
        this.channels = channels;
        this.start = start;
        this.frames = frames;
        this.cautions = List.copyOf(cautions);
    }

    /**
     * Understands the header of a file; its samples are not read yet.
     *
     * @throws RecordingException where the file is not a recording that is understood
     * @throws IOException        where it cannot be read
     */
    public static Recording open(Path file) throws IOException {
        return understand(String.valueOf(file.getFileName()), Bytes.of(file));
    }

    /**
     * Understands the header of a file in memory.
     *
     * @param name  what it is called
     * @param bytes the file, not copied
     * @throws RecordingException where that is not a recording that is understood
     */
    public static Recording of(String name, byte[] bytes) throws RecordingException {
        try {
            return understand(name, Bytes.of(bytes));
        } catch (RecordingException wrong) {
            throw wrong;
        } catch (IOException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    /** @return name of its file */
    public String name() {
        return name;
    }

    /** @return how samples are kept */
    public Coding coding() {
        return coding;
    }

    /** @return samples of a channel per second, Hz */
    public int sampleRate() {
        return sampleRate;
    }

    /** @return number of channels, 1 or more */
    public int channels() {
        return channels;
    }

    /** @return number of samples of each channel, 1 or more */
    public long frames() {
        return frames;
    }

    /** @return how long it lasts, s */
    public double duration() {
        return frames / (double) sampleRate;
    }

    /** @return what is odd about the file without making it useless, a sentence each */
    public List<String> cautions() {
        return cautions;
    }

    /** Starts to read from the beginning. */
    public Samples samples() throws IOException {
        return new Samples(source.open());
    }

    /** The samples, in their order. */
    public final class Samples implements Closeable {

        private static final int BLOCK = 1 << 16;

        private final Bytes bytes;
        private final byte[] block = new byte[Math.max(1, BLOCK / (coding.bytes() * channels)) * coding.bytes() * channels];
        private final ByteBuffer view = ByteBuffer.wrap(block).order(ByteOrder.LITTLE_ENDIAN);
        private long done;

        private Samples(Bytes bytes) {
            this.bytes = bytes;
        }

        /**
         * Reads on.
         *
         * @param into for each channel, room for samples; full scale is 1
         * @return how many samples of each channel were read, 0 at the end
         * @throws RecordingException where the file has no number or ends before it should
         */
        public int read(double[][] into) throws IOException {
            int width = coding.bytes() * channels;
            int count = (int) Math.min(Math.min(into[0].length, block.length / width), frames - done);
            if (count == 0) {
                return 0;
            }
            long position = start + done * width;
            int got = bytes.read(position, block, count * width);
            if (got < count * width) {
                throw new RecordingException("The file became shorter while it was read: " + seconds(done + got / width, sampleRate)
                        + " of " + seconds(frames, sampleRate) + " could be read", position + got);
            }
            for (int channel = 0; channel < channels; channel++) {
                decode(channel * coding.bytes(), width, count, into[channel]);
            }
            if (coding.floating()) {
                refuseWhatIsNoNumber(into, count, position);
            }
            done += count;
            return count;
        }

        private void decode(int first, int width, int count, double[] to) {
            int at = first;
            switch (coding.bits() + (coding.floating() ? 1 : 0)) {
                case 8 -> {
                    for (int i = 0; i < count; i++, at += width) {
                        to[i] = ((block[at] & 0xFF) - 128) * 0x1p-7;
                    }
                }
                case 16 -> {
                    for (int i = 0; i < count; i++, at += width) {
                        to[i] = (short) (block[at] & 0xFF | block[at + 1] << 8) * 0x1p-15;
                    }
                }
                case 24 -> {
                    for (int i = 0; i < count; i++, at += width) {
                        to[i] = (block[at] & 0xFF | (block[at + 1] & 0xFF) << 8 | block[at + 2] << 16) * 0x1p-23;
                    }
                }
                case 32 -> {
                    for (int i = 0; i < count; i++, at += width) {
                        to[i] = view.getInt(at) * 0x1p-31;
                    }
                }
                case 33 -> {
                    for (int i = 0; i < count; i++, at += width) {
                        to[i] = view.getFloat(at);
                    }
                }
                default -> {
                    for (int i = 0; i < count; i++, at += width) {
                        to[i] = view.getDouble(at);
                    }
                }
            }
        }

        private void refuseWhatIsNoNumber(double[][] into, int count, long position) throws RecordingException {
            for (int i = 0; i < count; i++) {
                for (int channel = 0; channel < channels; channel++) {
                    // far beyond any converter, and squares of it still are numbers
                    if (!(Math.abs(into[channel][i]) <= 1e6)) {
                        throw new RecordingException("Sample " + (done + i) + " of channel " + (channel + 1) + " is " + into[channel][i]
                                + ", where numbers about -1 to 1 were expected",
                                position + (long) coding.bytes() * (i * (long) channels + channel));
                    }
                }
            }
        }

        @Override
        public void close() throws IOException {
            bytes.close();
        }
    }

    /** What the format chunk says. */
    private record Format(Coding coding, int sampleRate, int channels) {
    }

    private static Recording understand(String name, Bytes.Source source) throws IOException {
        try (Bytes bytes = source.open()) {
            return new Header(bytes).recording(name, source);
        }
    }

    /** Reads the header; each chunk takes eight bytes or more of the file, so that it ends. */
    private static final class Header {

        private final Bytes bytes;
        private final long size;
        private final List<String> cautions = new ArrayList<>();

        Header(Bytes bytes) throws IOException {
            this.bytes = bytes;
            size = bytes.size();
        }

        Recording recording(String name, Bytes.Source source) throws IOException {
            if (size == 0) {
                throw new RecordingException("The file is empty; a WAV file was expected");
            }
            byte[] head = need(0, 12, "the header of a WAV file");
            String kind = text(head, 0);
            boolean large = kind.equals("RF64") || kind.equals("BW64");
            if (kind.equals("RIFX")) {
                throw new RecordingException("This is a WAV file with the high byte first (RIFX); RIFF was expected", 0);
            }
            if (!kind.equals("RIFF") && !large) {
                throw new RecordingException("This is not a WAV file: it begins with " + shown(head, 0) + ", where RIFF was expected", 0);
            }
            if (!text(head, 8).equals("WAVE")) {
                throw new RecordingException("This RIFF file holds " + shown(head, 8) + ", where WAVE was expected", 8);
            }
            Format format = null;
            long largeData = -1;
            long at = 12;
            for (int number = 0; at + 8 <= size; number++) {
                if (number == MOST_CHUNKS) {
                    throw new RecordingException("The file has more than " + MOST_CHUNKS
                            + " chunks before its samples; a data chunk was expected", at);
                }
                byte[] chunk = need(at, 8, "a chunk");
                String id = text(chunk, 0);
                long stated = unsigned(chunk, 4);
                if (id.equals("data")) {
                    if (format == null) {
                        throw new RecordingException("The samples come before the chunk that says how they are kept; fmt was"
                                + " expected before data", at);
                    }
                    if (large && stated == OPEN_ENDED) {
                        if (largeData < 0) {
                            throw new RecordingException("This RF64 file does not say how long its samples are; a ds64 chunk was"
                                    + " expected before data", at);
                        }
                        stated = largeData;
                    }
                    return data(name, source, format, at + 8, stated);
                }
                if (id.equals("fmt ")) {
                    format = format(at + 8, stated);
                } else if (id.equals("ds64") && large && stated >= 16) {
                    largeData = ByteBuffer.wrap(need(at + 8, 16, "the lengths of an RF64 file")).order(ByteOrder.LITTLE_ENDIAN).getLong(8);
                    if (largeData < 0) {
                        throw new RecordingException("This RF64 file states more samples than any file can hold", at + 16);
                    }
                }
                at += 8 + stated + (stated & 1);
            }
            if (format == null) {
                throw new RecordingException("The file ends before it says how samples are kept; a fmt chunk was expected",
                        Math.min(at, size));
            }
            throw new RecordingException("The file ends before its samples; a data chunk was expected", Math.min(at, size));
        }

        private Format format(long at, long stated) throws IOException {
            if (stated < 16) {
                throw new RecordingException("The fmt chunk states " + stated + " bytes, where 16 or more were expected", at - 4);
            }
            byte[] fmt = need(at, 16, "how samples are kept");
            int tag = (int) (unsigned(fmt, 0) & 0xFFFF);
            int channels = (int) (unsigned(fmt, 0) >> 16);
            long rate = unsigned(fmt, 4);
            int align = (int) (unsigned(fmt, 12) & 0xFFFF);
            int bits = (int) (unsigned(fmt, 12) >> 16);
            if (tag == EXTENSIBLE) {
                if (stated < 40) {
                    throw new RecordingException("The extended fmt chunk states " + stated + " bytes, where 40 were expected", at - 4);
                }
                byte[] more = need(at + 16, 24, "how samples are kept");
                int valid = (int) (unsigned(more, 0) >> 16);
                if (!Arrays.equals(more, 10, 24, TAGGED, 0, 14)) {
                    throw new RecordingException("Samples are kept in a format without a number; PCM or floating point was expected",
                            at + 24);
                }
                tag = (int) (unsigned(more, 8) & 0xFFFF);
                if (valid > bits) {
                    throw new RecordingException("Of " + bits + " bits of a sample " + valid + " are said to count", at + 18);
                }
            }
            if (tag != PCM && tag != FLOAT) {
                throw new RecordingException(String.format(Locale.ROOT,
                        "Samples are compressed or coded (format 0x%04X, %s); PCM (0x0001) or"
                        + " floating point (0x0003) was expected", tag, called(tag)), at);
            }
            Coding coding = new Coding(tag == FLOAT, bits);
            if (coding.floating() ? bits != 32 && bits != 64 : bits != 8 && bits != 16 && bits != 24 && bits != 32) {
                throw new RecordingException("A sample has " + bits + " bits; " + (coding.floating() ? "32 or 64" : "8, 16, 24 or 32")
                        + " were expected", at + 14);
            }
            if (channels < 1 || channels > MOST_CHANNELS) {
                throw new RecordingException("The file states " + channels + " channels; 1 to " + MOST_CHANNELS + " were expected", at + 2);
            }
            if (rate < LOWEST_RATE || rate > HIGHEST_RATE) {
                throw new RecordingException("The file states a sample rate of " + rate + " Hz; " + LOWEST_RATE + " to " + HIGHEST_RATE
                        + " Hz were expected", at + 4);
            }
            if (align != channels * coding.bytes()) {
                throw new RecordingException("The file states " + align + " bytes for the samples of one moment; " + channels + " × "
                        + coding.bytes() + " = " + channels * coding.bytes() + " were expected", at + 12);
            }
            return new Format(coding, (int) rate, channels);
        }

        private Recording data(String name, Bytes.Source source, Format format, long at, long stated) throws IOException {
            int width = format.coding().bytes() * format.channels();
            long there = size - at;
            long length = stated;
            if (stated == OPEN_ENDED || stated == 0 && there > 0 && !chunks(at)) {
                length = there;
                cautions.add("The recording was never closed: its header does not say how long it is; all " + seconds(there / width,
                        format.sampleRate()) + " up to the end of the file are used.");
            }
            if (length == 0) {
                throw new RecordingException("The file holds no samples", at);
            }
            if (length > there) {
                throw new RecordingException("The file is cut off: " + seconds(there / width, format.sampleRate()) + " of "
                        + seconds(length / width, format.sampleRate()) + " are there", size);
            }
            if (length < width) {
                throw new RecordingException("The file holds " + length + " bytes of samples, less than the " + width
                        + " of one moment", at);
            }
            if (length % width != 0) {
                long rest = length % width;
                cautions.add((rest == 1 ? "The last byte is less than a sample of every channel and is left out."
                        : "The last " + rest + " bytes are less than a sample of every channel and are left out."));
            }
            return new Recording(name, source, format.coding(), format.sampleRate(), format.channels(), at, length / width, cautions);
        }

        /** Whether chunks, one behind another, go from here to the end: then an empty data chunk is meant. */
        private boolean chunks(long from) throws IOException {
            long at = from;
            for (int number = 0; at + 8 <= size && number < MOST_CHUNKS; number++) {
                byte[] chunk = need(at, 8, "a chunk");
                for (int i = 0; i < 4; i++) {
                    if (chunk[i] < ' ' || chunk[i] > '~') {
                        return false;
                    }
                }
                long stated = unsigned(chunk, 4);
                at += 8 + stated + (stated & 1);
            }
            return at == size || at == size + 1;
        }

        private byte[] need(long at, int count, String what) throws IOException {
            byte[] got = new byte[count];
            int there = at < size ? bytes.read(at, got, count) : 0;
            if (there < count) {
                throw new RecordingException("The file ends within " + what + ": " + there + " of " + count + " bytes are there", at);
            }
            return got;
        }
    }

    private static long unsigned(byte[] from, int at) {
        return ByteBuffer.wrap(from).order(ByteOrder.LITTLE_ENDIAN).getInt(at) & 0xFFFFFFFFL;
    }

    private static String text(byte[] from, int at) {
        return new String(from, at, 4, StandardCharsets.ISO_8859_1);
    }

    /** As text where that can be read, else the bytes. */
    private static String shown(byte[] from, int at) {
        StringBuilder hex = new StringBuilder("bytes");
        boolean plain = true;
        for (int i = at; i < at + 4; i++) {
            plain &= from[i] > ' ' && from[i] <= '~';
            hex.append(String.format(Locale.ROOT, " %02X", from[i] & 0xFF));
        }
        return plain ? text(from, at) : hex.toString();
    }

    private static String called(int tag) {
        return switch (tag) {
            case 0x0002 -> "ADPCM";
            case 0x0006 -> "A-law";
            case 0x0007 -> "µ-law";
            case 0x0011 -> "IMA ADPCM";
            case 0x0031 -> "GSM 6.10";
            case 0x0050 -> "MPEG";
            case 0x0055 -> "MPEG layer 3";
            default -> "unknown";
        };
    }

    private static String seconds(long frames, int rate) {
        double seconds = frames / (double) rate;
        return String.format(Locale.ROOT, seconds < 10 ? "%.3f s" : "%.1f s", seconds);
    }
}
