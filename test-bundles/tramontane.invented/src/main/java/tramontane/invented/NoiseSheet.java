package tramontane.invented;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleFunction;
import tramontane.model.Value;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.FanSpectrum;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.Weighting;

/**
 * How a family states its noise, and what it states of each part: a level, a pressure at a distance, bands, or points of a test plenum.
 *
 * <p>Whatever is stated follows from one level of the air at the best point and rated speed: it follows the speed by the family's
 * exponent and stays from the best point to free delivery; left of that it rises by a part of {@link FanSpectrum#offPeak}. Bearings add
 * a floor. Spectra are those of {@link FanSpectrum}, with a tone of the blades. Levels are rounded to a half or a tenth of a decibel, which
 * leaves nothing of the last bits in which machines may differ.
 */
final class NoiseSheet {

    /** Ways in which such data come. */
    enum Way {
        /** A-weighted sound power at free delivery. */
        LEVEL,
        /** A-weighted sound pressure at 1 m, and nothing says in what field. */
        PRESSURE,
        /** A-weighted sound pressure at 1 m over a reflecting plane. */
        PRESSURE_OVER_PLANE,
        /** A-weighted sound power, and the hum at twice the frequency of mains. */
        HUM,
        /** A-weighted octaves at free delivery. */
        OCTAVES,
        /** Third-octaves at the best point, and a tone as an analyser shows it. */
        THIRDS,
        /** Octaves and tones over flow and speed, as in a test plenum by ISO 10302-1. */
        PLENUM;

        static Way of(Line line) {
            return switch (line) {
                case QUIET -> PRESSURE;
                case SCROLL -> PRESSURE_OVER_PLANE;
                case CABINET -> HUM;
                case BIG -> OCTAVES;
                case WHEEL_EC -> THIRDS;
                case WIDE, STATION, SLANT, DRUM, WHEEL -> PLENUM;
                default -> LEVEL;
            };
        }
    }

    /**
     * A part as its noise sees it.
     *
     * @param shape    of its rotor
     * @param power    electrical power at rated speed at each point of the shape, W
     * @param rpm      rated speed
     * @param air      A-weighted sound power level of its air at the best point at rated speed, dB
     * @param flow     writes a flow at rated speed that is given as a share of free delivery
     * @param pressure writes a pressure given as a share of that at no flow
     */
    record Part(Rotor.Shape shape, double[] power, double rpm, double air, DoubleFunction<String> flow, DoubleFunction<String> pressure) {

        double efficiency(int point) {
            return shape.flow()[point] * shape.pressure()[point] / power[point];
        }

        int best() {
            int best = 0;
            for (int i = 1; i < power.length; i++) {
                best = efficiency(i) > efficiency(best) ? i : best;
            }
            return best;
        }
    }

    /** Sound power level of bearing and electronics where the air is hardly heard, dB; a guess. */
    private static final double FLOOR = 16;

    /** Distance of sound pressure, in which power is above by 10 lg 4πr² or 2πr². */
    private static final double FREE_FIELD = 10 * StrictMath.log10(4 * Math.PI);

    private static final double OVER_PLANE = 10 * StrictMath.log10(2 * Math.PI);

    /** Speeds in a test plenum over the rated one. */
    private static final double[] SPEEDS = {1, 0.6};

    /** Efficiency over its highest of the point nearest to stall that is measured. */
    private static final double NEAR_STALL = 0.65;

    /** The hum of small motors is below their air, dB, A-weighted; a guess. */
    private static final double HUM = 14;

    /** Octave of 63 Hz; to 8 kHz there are eight. */
    private static final int LOWEST_OCTAVE = 1;

    private static final int OCTAVES = 8;

    /** Third of 50 Hz; to 10 kHz there are 24. */
    private static final int LOWEST_THIRD = 3;

    private static final int THIRDS = 24;

    private final Way way;
    private final Rotor rotor;
    private final int blades;
    private final double exponent;
    private final double tonality;
    private final double rise;
    private final int flows;

    /**
     * @param line     of products
     * @param exponent of speed that levels of the air follow, in lg
     * @param random   of noise alone, so that other figures do not hang on it
     */
    NoiseSheet(Line line, double exponent, Random random) {
        random.nextInt(); // the first of neighbouring seeds are alike
        way = Way.of(line);
        rotor = line.rotor();
        this.exponent = Double.parseDouble(Members.rounded(exponent, 3));
        int[] range = switch (rotor) {
            case AXIAL -> new int[] {5, 9};
            case MIXED -> new int[] {7, 11};
            case FORWARD -> new int[] {30, 50};
            case BACKWARD -> new int[] {6, 9};
            case CROSS -> new int[] {24, 36};
        };
        blades = range[0] + random.nextInt(range[1] - range[0] + 1);
        tonality = -6 + 7 * random.nextDouble();
        rise = 0.5 + 0.4 * random.nextDouble();
        flows = 3 + random.nextInt(2);
    }

    /** Where its figures come from. */
    Value.Tree origin(String family) {
        Members origin = new Members().text("of", "sections.noise");
        return way == Way.PLENUM
                ? origin.text("from", "measured").text("source", "test plenum of the invented lab, report " + family + "-N").tree()
                : origin.text("from", "datasheet").text("source", "invented data sheet " + family).tree();
    }

    /** The section of a part. */
    Members section(Part part) {
        Members noise = new Members().number("blades", Integer.toString(blades));
        String speed = rpm(part.rpm());
        double level = level(part.air());
        switch (way) {
            case LEVEL -> noise.text("soundPower", half(level)).text("speed", speed).text("at", "free delivery");
            case PRESSURE -> noise.text("soundPressure", half(level - FREE_FIELD)).text("distance", "1 m").text("speed", speed)
                    .text("at", "free delivery");
            case PRESSURE_OVER_PLANE -> noise.text("soundPressure", half(level - OVER_PLANE)).text("distance", "1 m")
                    .text("field", "half-space").text("speed", speed).text("at", "free delivery");
            case HUM -> {
                double hum = level - HUM - Weighting.A.level(100);
                Members tone = new Members().text("frequency", "100 Hz").text("level", half(hum)).flag("fixed", true);
                noise.text("soundPower", half(sum(level, level - HUM))).text("speed", speed).text("at", "free delivery")
                        .items("tones", List.of(tone.tree()));
            }
            case OCTAVES -> {
                double[] bands = rounded(scaled(octaves(part.rpm()), level), 10);
                double[] weighted = new double[bands.length];
                for (int i = 0; i < bands.length; i++) {
                    weighted[i] = bands[i] + Weighting.A.level(Bands.middle(3 * (LOWEST_OCTAVE + i) + 1));
                }
                noise.text("soundPower", tenth(weighted(bands))).text("speed", speed).text("at", "free delivery")
                        .text("octaves", list(weighted)).text("bandWeighting", "A");
            }
            case THIRDS -> thirds(noise, part, level);
            case PLENUM -> noise.number("exponent", Members.rounded(exponent, 3)).text("tolerance", "2 dB").items("points", points(part));
        }
        return noise;
    }

    private void thirds(Members noise, Part part, double level) {
        Spectrum shape = shape(part.rpm());
        double frequency = Math.rint(blades * part.rpm() / 60);
        int third = Bands.third(frequency);
        double tone = shape.power(third) * Levels.power(tonality + 3); // a third holds less of the other noise than an octave
        Spectrum whole = Spectrum.of(cut(shape.plus(frequency, tone).toArray()));
        double gain = level - whole.level(Weighting.A);
        double[] bands = new double[THIRDS];
        for (int i = 0; i < bands.length; i++) {
            bands[i] = Math.rint(2 * (whole.level(LOWEST_THIRD + i) + gain)) / 2;
        }
        noise.text("soundPower", tenth(Spectrum.ofThirds(LOWEST_THIRD, bands).level(Weighting.A))).text("speed", rpm(part.rpm()))
                .text("at", "best point").text("thirds", list(bands)).text("lowestThird", "50 Hz").items("tones", List.of(new Members()
                        .text("frequency", Members.rounded(frequency, 6) + " Hz").text("level", half(Levels.of(tone) + gain)).tree()));
    }

    /** Without the bands that are not stated. */
    private static double[] cut(double[] power) {
        for (int i = 0; i < power.length; i++) {
            power[i] = i < LOWEST_THIRD || i >= LOWEST_THIRD + THIRDS ? 0 : power[i];
        }
        return power;
    }

    private List<Value.Tree> points(Part part) {
        int best = part.best();
        int stall = 0;
        while (stall < best - 1 && part.efficiency(stall) < NEAR_STALL * part.efficiency(best)) {
            stall++;
        }
        List<Integer> places = new ArrayList<>(List.of(part.power().length - 1, best));
        if (flows > 3 && stall < best - 1) {
            places.add((stall + best) / 2);
        }
        places.add(stall);
        List<Value.Tree> points = new ArrayList<>();
        for (double share : SPEEDS) {
            double rpm = Double.parseDouble(Members.rounded(part.rpm() * share, 4));
            double ratio = rpm / part.rpm();
            for (int place : places) {
                double louder = place < best ? rise * FanSpectrum.offPeak(part.efficiency(place) / part.efficiency(best)) : 0;
                double level = level(part.air() + exponent * StrictMath.log10(ratio) + louder);
                points.add(point(part, rpm, ratio, place, level, tonality + 0.2 * louder));
            }
        }
        return points;
    }

    private Value.Tree point(Part part, double rpm, double ratio, int place, double level, double prominence) {
        double[] octaves = octaves(rpm);
        int with = Bands.third(blades * rpm / 60) / 3 - LOWEST_OCTAVE;
        double tone = octaves[with] + prominence;
        octaves[with] = sum(octaves[with], tone);
        double gain = level - weighted(octaves);
        double[] bands = rounded(scaled(octaves, level), 10);
        return new Members().text("speed", rpm(rpm)).text("flow", part.flow().apply(part.shape().flow()[place] * ratio))
                .text("pressure", part.pressure().apply(part.shape().pressure()[place] * ratio * ratio))
                .text("soundPower", tenth(weighted(bands))).text("octaves", list(bands))
                .items("tones", List.of(new Members().number("order", Integer.toString(blades)).text("level", tenth(tone + gain)).tree()))
                .tree();
    }

    /** Of air and bearings together. */
    private static double level(double air) {
        return sum(air, FLOOR);
    }

    private static double sum(double one, double other) {
        return 10 * StrictMath.log10(StrictMath.pow(10, one / 10) + StrictMath.pow(10, other / 10));
    }

    private Spectrum shape(double rpm) {
        return FanSpectrum.of(rpm * Math.PI / 30, switch (rotor) {
            case AXIAL, MIXED -> FanSpectrum.AXIAL;
            case FORWARD, CROSS -> FanSpectrum.FORWARD_CURVED;
            case BACKWARD -> FanSpectrum.BACKWARD_CURVED;
        });
    }

    private double[] octaves(double rpm) {
        Spectrum shape = shape(rpm);
        double[] levels = new double[OCTAVES];
        for (int i = 0; i < levels.length; i++) {
            levels[i] = shape.octave(LOWEST_OCTAVE + i);
        }
        return levels;
    }

    private static double weighted(double[] octaves) {
        return Spectrum.ofOctaves(LOWEST_OCTAVE, octaves).level(Weighting.A);
    }

    /** With an A-weighted level. */
    private static double[] scaled(double[] octaves, double level) {
        double gain = level - weighted(octaves);
        double[] scaled = octaves.clone();
        for (int i = 0; i < scaled.length; i++) {
            scaled[i] += gain;
        }
        return scaled;
    }

    private static double[] rounded(double[] levels, double steps) {
        double[] rounded = levels.clone();
        for (int i = 0; i < rounded.length; i++) {
            rounded[i] = Math.rint(steps * rounded[i]) / steps;
        }
        return rounded;
    }

    private static String half(double level) {
        return Members.rounded(Math.rint(2 * level) / 2, 4) + " dB";
    }

    private static String tenth(double level) {
        return Members.rounded(Math.rint(10 * level) / 10, 4) + " dB";
    }

    private static String list(double[] levels) {
        return Members.list(rounded(levels, 10), 1, 4, "dB");
    }

    private static String rpm(double rpm) {
        return Members.rounded(rpm, 6) + " rpm";
    }
}
