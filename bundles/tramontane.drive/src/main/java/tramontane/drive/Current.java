package tramontane.drive;

import java.util.List;
import java.util.stream.Stream;

/** Kinds of current. */
public enum Current {
    /** Direct current. */
    DC("DC"),
    /** Single-phase alternating current. */
    AC("AC"),
    /** Three-phase alternating current. */
    THREE_PHASE("three-phase AC");

    /** Up to this, V, direct current counts as extra-low voltage (ES1 and SELV in dry places, IEC 61140, from memory). */
    public static final double EXTRA_LOW_DC = 60;
    /** Up to this, V r.m.s., alternating current counts as extra-low voltage (IEC 61140: 25 V in the dry; from memory). */
    public static final double EXTRA_LOW_AC = 25;

    private final String word;

    Current(String word) {
        this.word = word;
    }

    /** As it is written and read. */
    public String word() {
        return word;
    }

    /** Whether it alternates. */
    public boolean alternating() {
        return this != DC;
    }

    /** Factor of its power on voltage times current: 1, or √3 for three phases between which the voltage is. */
    public double phases() {
        return this == THREE_PHASE ? Math.sqrt(3) : 1;
    }

    /** Whether a voltage of it can kill, as that of mains does. */
    public boolean hazardous(double voltage) {
        return Math.abs(voltage) > (alternating() ? EXTRA_LOW_AC : EXTRA_LOW_DC);
    }

    /** All words. */
    public static List<String> words() {
        return Stream.of(values()).map(Current::word).toList();
    }

    /** The one that is written so. */
    public static Current named(String word) {
        return Stream.of(values()).filter(each -> each.word.equals(word)).findFirst().orElse(DC);
    }
}
