package tramontane.acoustics.recording;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Bytes of a file or in memory, read at any place. */
interface Bytes extends Closeable {

    /** Where bytes can be opened again. */
    @FunctionalInterface
    interface Source {
        Bytes open() throws IOException;
    }

    long size() throws IOException;

    /** Reads as many as there are, up to {@code count}; fewer only at the end. */
    int read(long position, byte[] into, int count) throws IOException;

    static Source of(Path file) {
        return () -> {
            FileChannel channel = FileChannel.open(file, StandardOpenOption.READ);
            return new Bytes() {
                @Override
                public long size() throws IOException {
                    return channel.size();
                }

                @Override
                public int read(long position, byte[] into, int count) throws IOException {
                    ByteBuffer buffer = ByteBuffer.wrap(into, 0, count);
                    while (buffer.hasRemaining() && channel.read(buffer, position + buffer.position()) > 0) {
                        continue;
                    }
                    return buffer.position();
                }

                @Override
                public void close() throws IOException {
                    channel.close();
                }
            };
        };
    }

    static Source of(byte[] all) {
        return () -> new Bytes() {
            @Override
            public long size() {
                return all.length;
            }

            @Override
            public int read(long position, byte[] into, int count) {
                int there = Math.clamp(all.length - position, 0, count);
                System.arraycopy(all, (int) Math.min(position, all.length), into, 0, there);
                return there;
            }

            @Override
            public void close() {
                // nothing is held
            }
        };
    }
}
