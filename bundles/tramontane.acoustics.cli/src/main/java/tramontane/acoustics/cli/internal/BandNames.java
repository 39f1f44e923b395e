package tramontane.acoustics.cli.internal;

import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import tramontane.physics.sound.Bands;

/** Bands by what people call them. */
final class BandNames {

    /** How far a frequency may be off the name of its band: exact middles are, by up to 1 %. */
    private static final double NEAR = 0.02;

    private BandNames() {
    }

    /** The band of that middle frequency; empty where there is none. */
    static OptionalInt find(double frequency, boolean thirds) {
        return IntStream.range(0, thirds ? Bands.THIRDS : Bands.OCTAVES)
                .filter(band -> Math.abs(frequency / (thirds ? Bands.nominal(band) : Bands.nominalOctave(band)) - 1) <= NEAR).findFirst();
    }

    /** All names, from the lowest up. */
    static List<String> all(boolean thirds) {
        return IntStream.range(0, thirds ? Bands.THIRDS : Bands.OCTAVES)
                .mapToObj(band -> thirds ? Bands.name(band) : Bands.octaveName(band)).toList();
    }
}
