package tramontane.acoustics.recording;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.function.IntToDoubleFunction;

/** Files to test with. */
final class Wav {

    int tag = 1;
    int bits = 16;
    int channels = 1;
    long rate = 48000;
    int align = -1;
    boolean extended;
    int valid = -1;
    String riff = "RIFF";
    String wave = "WAVE";
    byte[] before = {};
    byte[] after = {};
    byte[] samples = {};
    long stated = -1;
    int cut;

    static Wav of(int rate, int tag, int bits, double[]... channels) {
        Wav wav = new Wav();
        wav.rate = rate;
        wav.tag = tag;
        wav.bits = bits;
        wav.channels = channels.length;
        ByteBuffer all = ByteBuffer.allocate(channels[0].length * channels.length * bits / 8).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < channels[0].length; i++) {
            for (double[] channel : channels) {
                put(all, tag, bits, channel[i]);
            }
        }
        wav.samples = all.array();
        return wav;
    }

    private static void put(ByteBuffer all, int tag, int bits, double value) {
        if (tag == 3) {
            if (bits == 32) {
                all.putFloat((float) value);
            } else {
                all.putDouble(value);
            }
            return;
        }
        double steps = Math.scalb(1.0, bits - 1);
        long step = (long) Math.clamp(Math.rint(value * steps), -steps, steps - 1);
        if (bits == 8) {
            all.put((byte) (step + 128));
        } else {
            for (int shift = 0; shift < bits; shift += 8) {
                all.put((byte) (step >> shift));
            }
        }
    }

    static double[] signal(int count, IntToDoubleFunction value) {
        double[] samples = new double[count];
        for (int i = 0; i < count; i++) {
            samples[i] = value.applyAsDouble(i);
        }
        return samples;
    }

    static double[] sine(int rate, double seconds, double frequency, double amplitude) {
        return signal((int) Math.round(rate * seconds), i -> amplitude * Math.sin(2 * Math.PI * frequency * i / rate + 0.3));
    }

    static byte[] chunk(String id, long stated, byte[] content) {
        ByteBuffer chunk = ByteBuffer.allocate(8 + content.length + (content.length & 1)).order(ByteOrder.LITTLE_ENDIAN);
        chunk.put(id.getBytes(StandardCharsets.US_ASCII)).putInt((int) stated).put(content);
        return chunk.array();
    }

    byte[] bytes() {
        int width = align < 0 ? channels * bits / 8 : align;
        ByteBuffer fmt = ByteBuffer.allocate(extended ? 40 : 16).order(ByteOrder.LITTLE_ENDIAN);
        fmt.putShort((short) (extended ? 0xFFFE : tag)).putShort((short) channels).putInt((int) rate).putInt((int) (rate * width))
                .putShort((short) width).putShort((short) bits);
        if (extended) {
            fmt.putShort((short) 22).putShort((short) (valid < 0 ? bits : valid)).putInt(0).putShort((short) tag).putInt(0)
                    .put(new byte[] {0x10, 0, (byte) 0x80, 0, 0, (byte) 0xAA, 0, 0x38, (byte) 0x9B, 0x71});
        }
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        all.writeBytes(before);
        all.writeBytes(chunk("fmt ", fmt.capacity(), fmt.array()));
        all.writeBytes(chunk("data", stated < 0 ? samples.length : stated, samples));
        all.writeBytes(after);
        byte[] body = all.toByteArray();
        ByteBuffer file = ByteBuffer.allocate(12 + body.length - cut).order(ByteOrder.LITTLE_ENDIAN);
        file.put(riff.getBytes(StandardCharsets.US_ASCII)).putInt(body.length + 4).put(wave.getBytes(StandardCharsets.US_ASCII))
                .put(body, 0, body.length - cut);
        return file.array();
    }

    Recording recording() throws RecordingException {
        return Recording.of("test", bytes());
    }

    static double[][] all(Recording recording) throws IOException {
        double[][] all = new double[recording.channels()][(int) recording.frames()];
        double[][] block = new double[recording.channels()][777];
        int done = 0;
        try (Recording.Samples samples = recording.samples()) {
            for (int count = samples.read(block); count > 0; count = samples.read(block)) {
                for (int c = 0; c < block.length; c++) {
                    System.arraycopy(block[c], 0, all[c], done, count);
                }
                done += count;
            }
        }
        return all;
    }
}
