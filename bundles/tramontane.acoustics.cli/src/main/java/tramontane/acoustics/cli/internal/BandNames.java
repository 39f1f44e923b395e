package tramontane.acoustics.cli.internal;

import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import tramontane.physics.sound.Bands;

/** What bands are called. */
final class BandNames {

    /** How far a frequency may be off the name of its band: exact middles are, by up to 1 %. */
    private static final double NEAR = 0.02;

    private BandNames() {
    }

    /** Of a third-octave: 31.5 Hz, 1.25 kHz. */
    static String third(int third) {
        return hertz(Bands.nominal(third));
    }

    /** Of an octave. */
    static String octave(int octave) {
        return hertz(Bands.nominalOctave(octave));
    }

    /** The band of that middle frequency; empty where there is none. */
    static OptionalInt find(double frequency, boolean thirds) {
        return IntStream.range(0, thirds ? Bands.THIRDS : Bands.OCTAVES)
                .filter(band -> Math.abs(frequency / (thirds ? Bands.nominal(band) : Bands.nominalOctave(band)) - 1) <= NEAR).findFirst();
    }

    /** All names, from the lowest up. */
    static List<String> all(boolean thirds) {
        return IntStream.range(0, thirds ? Bands.THIRDS : Bands.OCTAVES).mapToObj(band -> thirds ? third(band) : octave(band)).toList();
    }

    private static String hertz(double frequency) {
        double shown = frequency >= 1000 ? frequency / 1000 : frequency;
        return (shown == Math.rint(shown) ? Long.toString((long) shown) : Double.toString(shown)) + (frequency >= 1000 ? " kHz" : " Hz");
    }
}
