package tramontane.acoustics;

import java.util.Arrays;
import java.util.List;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.Spectrum;

/**
 * Values by band as written in a design: one for each of a run of octaves or third-octaves, or one alone for all bands.
 *
 * @param octaves whether each value is of an octave, not of a third-octave; true for one alone
 * @param lowest  middle frequency of the first band, Hz; {@link #STANDARD_LOWEST} for one alone
 * @param values  the values, at least one; their unit is that of the field that they stand in
 */
public record Banded(boolean octaves, double lowest, List<Double> values) {

    /** The first band where none is stated, Hz. */
    public static final double STANDARD_LOWEST = 63;

    public Banded {
        values = List.copyOf(values);
        if (values.isEmpty() || !(lowest > 0)) {
            throw new IllegalArgumentException("values by band need a value and a frequency above 0, got " + values + " from "
                    + lowest + " Hz");
        }
        if (values.size() == 1) {
            octaves = true;
            lowest = STANDARD_LOWEST;
        }
    }

    /** One value for all bands. */
    public static Banded always(double value) {
        return new Banded(true, STANDARD_LOWEST, List.of(value));
    }

    /** Whether one value holds in all bands. */
    public boolean single() {
        return values.size() == 1;
    }

    /** The band of the first value in the count of {@link Bands}: a third-octave or an octave; beyond its ends where the frequency is. */
    public int first() {
        double position = Bands.position(lowest);
        return (int) Math.round(octaves ? (position - 1) / 3 : position);
    }

    /**
     * The value in each third-octave of {@link Bands}; that of an octave in each of its three.
     *
     * @param beyond the value below the first band and above the last
     */
    public double[] thirds(double beyond) {
        double[] thirds = new double[Bands.THIRDS];
        int width = octaves ? 3 : 1;
        for (int third = 0; third < thirds.length; third++) {
            int index = Math.floorDiv(third, width) - first();
            thirds[third] = single() ? values.getFirst() : index < 0 || index >= values.size() ? beyond : values.get(index);
        }
        return thirds;
    }

    /** The value in each third-octave of {@link Bands}; below the first band and above the last that of the nearest. */
    public double[] held() {
        double[] thirds = new double[Bands.THIRDS];
        int width = octaves ? 3 : 1;
        Arrays.setAll(thirds, third -> values.get(Math.clamp(Math.floorDiv(third, width) - first(), 0, values.size() - 1)));
        return thirds;
    }

    /** These values as levels in dB: a spectrum with nothing beyond them. One alone is the level of every octave. */
    public Spectrum spectrum() {
        if (single()) {
            double[] levels = new double[Bands.OCTAVES];
            Arrays.fill(levels, values.getFirst());
            return Spectrum.ofOctaves(0, levels);
        }
        int count = octaves ? Bands.OCTAVES : Bands.THIRDS;
        int from = Math.clamp(first(), 0, count);
        int to = Math.clamp((long) first() + values.size(), from, count);
        double[] levels = new double[to - from];
        Arrays.setAll(levels, i -> values.get(from + i - first()));
        return octaves ? Spectrum.ofOctaves(from, levels) : Spectrum.ofThirds(from, levels);
    }
}
