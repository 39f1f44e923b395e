package tramontane.desktop.chart;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import java.util.Optional;

/** The kinds of file that a chart is saved as. */
enum ChartFile {
    /** A picture that stays sharp at any size. */
    SVG("SVG picture", ".svg"),
    /** A picture of points, two for each pixel of the screen at 100 %. */
    PNG("PNG picture", ".png"),
    /** Its numbers. */
    CSV("Numbers, comma-separated", ".csv");

    private final String label;
    private final String ending;

    ChartFile(String label, String ending) {
        this.label = label;
        this.ending = ending;
    }

    /** What people call it. */
    String label() {
        return label + " (*" + ending + ")";
    }

    /** How the names of such files end. */
    String ending() {
        return ending;
    }

    /** The kind that a file's name says; empty where it says none. */
    static Optional<ChartFile> of(String name) {
        for (ChartFile each : values()) {
            if (name.toLowerCase(Locale.ROOT).endsWith(each.ending)) {
                return Optional.of(each);
            }
        }
        return Optional.empty();
    }

    /** A name for a file out of words: without what file systems do not take. */
    static String name(String words) {
        String plain = words.replaceAll("[\\p{Cntrl}/\\\\:*?\"<>|]+", " ").strip().replaceAll("\\s+", " ");
        while (plain.startsWith(".")) {
            plain = plain.substring(1);
        }
        return plain.isBlank() ? "chart" : plain.substring(0, Math.min(plain.length(), 100)).strip();
    }

    /** Writes beside, then moves over, so that what was there stays whole until the new one is. */
    static void write(Path file, byte[] bytes) throws IOException {
        Path beside = Files.createTempFile(file.toAbsolutePath().getParent(), ".chart", ".part");
        try {
            try (FileChannel channel = FileChannel.open(beside, StandardOpenOption.WRITE);
                    OutputStream out = java.nio.channels.Channels.newOutputStream(channel)) {
                out.write(bytes);
                channel.force(true);
            }
            Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(beside);
        }
    }
}
