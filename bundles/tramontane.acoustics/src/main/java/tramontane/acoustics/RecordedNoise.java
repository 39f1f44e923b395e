package tramontane.acoustics;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import tramontane.acoustics.recording.NoiseFromRecording;
import tramontane.model.Value;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.Weighting;

/**
 * What a recording gives, as the section {@code noise} of the part that was recorded: third-octaves and tones of sound pressure at its
 * distance, in the units that people read, levels rounded to 0.1 dB.
 *
 * <p>Each band holds its noise and the tones in it. A tone beside the edge of two bands is in the one where it is: filters read it in
 * both, and a part would be louder by it than it is. A band whose tones are much louder than its noise has more digits, so that the
 * noise is still there when the tones are taken out. A tone within 1 % of a multiple of the blade passing frequency, up to the tenth,
 * has an order; beyond the tenth nearly every tone would be that near to one. Where the blades are known, another tone within 1 % of
 * 100 Hz or 120 Hz or up to four times these is taken for the hum of the mains, which does not follow the speed.
 *
 * @param section empty where nothing can be said of the part
 * @param notes   what to know before it is used, a sentence each
 */
public record RecordedNoise(Optional<Value.Tree> section, List<String> notes) {

    /** Name of the section of a part. */
    public static final String SECTION = MoverNoise.SECTION;
    /** How far levels may be off where nothing is stated, dB: twice the deviation of reproducibility of ISO 3744. */
    public static final double USUAL_TOLERANCE = 3;

    /** Least and most that a level of a section can be, dB. */
    private static final double LEAST = -50;
    private static final double MOST = 160;
    /** How near noise beside tones must come out, dB, and digits behind the point that it may take. */
    private static final double CLOSE = 0.1;
    private static final int MOST_DECIMALS = 4;
    private static final double NEAR_MULTIPLE = 0.01;
    private static final int HIGHEST_MULTIPLE = 10;
    /** Hum of mains of 50 Hz and 60 Hz, Hz. */
    private static final List<Integer> HUM = List.of(100, 120);
    private static final int HIGHEST_HUM = 4;

    public RecordedNoise {
        notes = List.copyOf(notes);
    }

    /** The same with a further note. */
    public RecordedNoise with(String note) {
        List<String> all = new ArrayList<>(notes);
        all.add(note);
        return new RecordedNoise(section, all);
    }

    /**
     * What a recording does not tell.
     *
     * @param flow      at which the part worked, m³/s; empty for free delivery
     * @param blades    number of blades of its rotor
     * @param tolerance how far levels may be off, dB, not negative
     */
    public record Stated(Optional<Double> flow, Optional<Integer> blades, double tolerance) {

        /** Nothing. */
        public static final Stated NOTHING = new Stated(Optional.empty(), Optional.empty(), USUAL_TOLERANCE);

        /** Refuses what cannot be. */
        public Stated {
            if (flow.filter(each -> !(each >= 0)).isPresent() || blades.filter(each -> each < 1).isPresent() || !(tolerance >= 0)) {
                throw new IllegalArgumentException("flow " + flow + " m³/s, blades " + blades + " and tolerance " + tolerance
                        + " dB cannot be negative");
            }
        }
    }

    /**
     * The section of a part.
     *
     * @param noise  what was recorded
     * @param stated what is known beside it
     */
    public static RecordedNoise of(NoiseFromRecording noise, Stated stated) {
        List<String> notes = new ArrayList<>();
        Spectrum alone = noise.pressureOfNoise();
        Spectrum bands = alone;
        List<Value> tones = new ArrayList<>();
        List<String> hum = new ArrayList<>();
        List<String> free = new ArrayList<>();
        boolean ofBlades = false;
        for (NoiseFromRecording.Tone tone : noise.tones()) {
            OptionalInt order = order(tone.frequency(), noise.speed(), stated.blades());
            double frequency = order.isPresent() ? order.getAsInt() * noise.speed() / (2 * Math.PI) : tone.frequency();
            bands = bands.plus(frequency, Levels.power(rounded(tone.level(), 1).doubleValue()));
            boolean fixed = stated.blades().isPresent() && order.isEmpty() && hum(tone.frequency());
            tones.add(tone(tone, order, fixed));
            if (order.isPresent()) {
                ofBlades = true;
            } else if (fixed) {
                hum.add(number(tone.frequency(), 4) + " Hz");
            } else {
                free.add(number(tone.frequency(), 4) + " Hz");
            }
        }
        int first = 0;
        int end = Bands.THIRDS;
        while (first < end && !(bands.level(first) > LEAST)) {
            first++;
        }
        while (end > first && !(bands.level(end - 1) > LEAST)) {
            end--;
        }
        if (first == end) {
            return new RecordedNoise(Optional.empty(),
                    List.of("There is no sound in the recording, so that nothing can be said of the part."));
        }
        List<String> levels = new ArrayList<>();
        for (int third = first; third < end; third++) {
            if (bands.level(third) > MOST) {
                return new RecordedNoise(Optional.empty(), List.of("The band of " + number(Bands.nominal(third), 5) + " Hz has "
                        + level(bands.level(third)) + ", more than any part makes; the calibration must be wrong."));
            }
            levels.add(band(bands, alone, third));
        }
        if (!noise.tones().isEmpty() && noise.tones().stream().anyMatch(NoiseFromRecording.Tone::upperBound)) {
            notes.add("The background has some of the tones too (" + noise.tones().stream().filter(NoiseFromRecording.Tone::upperBound)
                    .map(tone -> number(tone.frequency(), 4) + " Hz").collect(Collectors.joining(", "))
                    + "): take out of the section what is not" + " of the part.");
        }
        if (!noise.tones().isEmpty()) {
            notes.addAll(ofTones(noise, stated, hum, free, ofBlades));
        }
        Value.Tree tree = Value.Tree.EMPTY;
        if (stated.blades().isPresent()) {
            tree = tree.with("blades", new Value.Num(String.valueOf(stated.blades().get())));
        }
        String whole = level(bands.level(Weighting.A));
        if (!whole.equals(level(noise.levelA()))) {
            notes.add("The level in the section, " + whole + ", is that of the bands written there, where each tone is in one band; filters"
                    + " read some of them twice, which makes " + level(noise.levelA()) + ".");
        }
        tree = tree.with("speed", text(number(noise.speed() * 30 / Math.PI, 5) + " rpm"));
        tree = stated.flow().isPresent() ? tree.with("flow", text(number(stated.flow().get() * 3600, 5) + " m³/h"))
                : tree.with("at", text(MoverNoise.Place.FREE_DELIVERY.word()));
        tree = tree.with("soundPressure", text(whole)).with("distance", text(number(noise.distance(), 4) + " m"))
                .with("field", text(field(noise.field()).word())).with("thirds", text(String.join(" ", levels) + " dB"))
                .with("lowestThird", text(number(Bands.nominal(first), 5) + " Hz"));
        if (!tones.isEmpty()) {
            tree = tree.with("tones", new Value.Items(tones));
        }
        return new RecordedNoise(Optional.of(tree.with("tolerance", text(number(stated.tolerance(), 3) + " dB"))), notes);
    }

    private static List<String> ofTones(NoiseFromRecording noise, Stated stated, List<String> hum, List<String> free, boolean ofBlades) {
        if (stated.blades().isEmpty()) {
            List<String> mains = noise.tones().stream().filter(tone -> hum(tone.frequency()))
                    .map(tone -> number(tone.frequency(), 4) + " Hz")
                    .toList();
            return List.of("The number of blades is not known, so that tones have no order; all follow the speed: set \"fixed\" for those"
                    + " that do not" + (mains.isEmpty() ? "." : ", perhaps " + String.join(", ", mains) + " of the mains."));
        }
        List<String> notes = new ArrayList<>();
        if (!ofBlades) {
            notes.add("No tone is near a multiple of the blade passing frequency, " + number(stated.blades().get() * noise.speed()
                    / (2 * Math.PI), 4) + " Hz of " + stated.blades().get() + (stated.blades().get() == 1 ? " blade" : " blades") + " at "
                    + number(noise.speed() * 30 / Math.PI, 5) + " rpm: are blades and speed right?");
        }
        if (!hum.isEmpty()) {
            notes.add(String.join(", ", hum) + (hum.size() == 1 ? " is" : " are") + " taken for hum of the mains and fixed, so that neither"
                    + " pitch nor level follows the speed.");
        }
        if (!free.isEmpty()) {
            notes.add(String.join(", ", free) + (free.size() == 1 ? " is no multiple of the blades and follows" : " are no multiples of the"
                    + " blades and follow") + " the speed; set \"fixed\" if " + (free.size() == 1 ? "it does" : "they do") + " not.");
        }
        return notes;
    }

    private static boolean hum(double frequency) {
        return HUM.stream().anyMatch(lowest -> {
            long times = Math.round(frequency / lowest);
            return times >= 1 && times <= HIGHEST_HUM && Math.abs(frequency - times * lowest) <= NEAR_MULTIPLE * times * lowest;
        });
    }

    private static MoverNoise.Field field(NoiseFromRecording.Field field) {
        return switch (field) {
            case FREE -> MoverNoise.Field.FREE;
            case HALF_SPACE -> MoverNoise.Field.HALF_SPACE;
        };
    }

    private static Value.Tree tone(NoiseFromRecording.Tone tone, OptionalInt order, boolean fixed) {
        Value.Tree tree = order.isPresent() ? Value.Tree.EMPTY.with("order", new Value.Num(String.valueOf(order.getAsInt())))
                : Value.Tree.EMPTY.with("frequency", text(number(tone.frequency(), 4) + " Hz"));
        tree = tree.with("level", text(level(tone.level())));
        return fixed ? tree.with("fixed", new Value.Flag(true)) : tree;
    }

    private static OptionalInt order(double frequency, double speed, Optional<Integer> blades) {
        if (blades.isEmpty()) {
            return OptionalInt.empty();
        }
        double times = frequency * 2 * Math.PI / (speed * blades.get());
        long whole = Math.round(times);
        return whole >= 1 && whole <= HIGHEST_MULTIPLE && Math.abs(times - whole) <= NEAR_MULTIPLE * whole
                ? OptionalInt.of((int) whole * blades.get()) : OptionalInt.empty();
    }

    private static Value text(String text) {
        return new Value.Text(text);
    }

    private static String band(Spectrum bands, Spectrum alone, int third) {
        double level = Math.max(LEAST, bands.level(third));
        double tones = bands.power(third) - alone.power(third);
        int decimals = 1;
        while (decimals < MOST_DECIMALS && tones > 0 && !(Math.abs(Levels.of(Math.max(0,
                Levels.power(rounded(level, decimals).doubleValue()) - tones))
                - alone.level(third)) <= CLOSE)) {
            decimals++;
        }
        return rounded(level, decimals).toPlainString();
    }

    private static String level(double level) {
        return rounded(level, 1).toPlainString() + " dB";
    }

    private static BigDecimal rounded(double level, int decimals) {
        return BigDecimal.valueOf(level).setScale(decimals, RoundingMode.HALF_UP);
    }

    /** As many digits as asked for, without zeros at the end. */
    private static String number(double value, int digits) {
        return value == 0 ? "0" : BigDecimal.valueOf(value).round(new MathContext(digits, RoundingMode.HALF_UP)).stripTrailingZeros()
                .toPlainString();
    }
}
