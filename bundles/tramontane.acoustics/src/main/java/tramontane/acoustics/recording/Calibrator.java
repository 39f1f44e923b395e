package tramontane.acoustics.recording;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * What a recording of a sound calibrator says. It calibrates other recordings made with the same gain.
 *
 * @param frequency   of its strongest tone, Hz
 * @param level       of that tone, dB re a full-scale sine
 * @param share       of the tone in the power above 20 Hz
 * @param wander      difference of the loudest and the softest whole second, dB
 * @param problems    why it is not the recording of a calibrator, a sentence each
 * @param calibration empty where there are problems
 */
public record Calibrator(double frequency, double level, double share, double wander, List<String> problems,
        Optional<Calibration> calibration) {

    /** Level of the usual calibrator, dB re 20 µPa. */
    public static final double USUAL_LEVEL = 94;
    /** Its frequency, Hz. */
    public static final double USUAL_FREQUENCY = 1000;
    /** By which part the frequency may be off; from memory that of class 2, IEC 60942. */
    public static final double FREQUENCY_TOLERANCE = 0.02;
    /** Least part of the tone in all power: the rest is less than a tenth. */
    public static final double LEAST_SHARE = 0.9;
    /** Most that whole seconds may differ by, dB. */
    public static final double MOST_WANDER = 0.3;
    /** Shortest recording, s. */
    public static final double SHORTEST = 3;

    /** How far the lines of a tone reach to either side. */
    private static final int REACH = 4;

    /** Copies its list. */
    public Calibrator {
        problems = List.copyOf(problems);
    }

    /**
     * Looks at the recording of a calibrator.
     *
     * @param recording of it
     * @param channel   from 0; empty for the mean power of all
     * @param level     that the calibrator makes, dB re 20 µPa
     * @param frequency at which, Hz
     * @param progress  told how far it is; may end it
     */
    public static Calibrator of(Recording recording, OptionalInt channel, double level, double frequency, Progress progress)
            throws IOException {
        Measured measured = RecordingAnalysis.analyse(recording, channel, Calibration.NONE, progress);
        Lines lines = measured.lines();
        int first = (int) Math.ceil(20 / lines.resolution());
        int top = IntStream.range(first, lines.count()).reduce((a, b) -> lines.power(b) > lines.power(a) ? b : a).orElseThrow();
        double power = 0;
        double moment = 0;
        for (int i = Math.max(first, top - REACH); i <= Math.min(lines.count() - 1, top + REACH); i++) {
            power += lines.power(i);
            moment += lines.power(i) * lines.frequency(i);
        }
        double found = power > 0 ? moment / power : 0;
        double audible = lines.between(20, Double.POSITIVE_INFINITY);
        double share = audible > 0 ? Math.min(1, power / audible) : 0;
        double relative = 10 * Math.log10(power);
        double wander = measured.seconds().stream().mapToDouble(Double::doubleValue).max().orElse(0)
                - measured.seconds().stream().mapToDouble(Double::doubleValue).min().orElse(0);
        List<String> problems = new ArrayList<>();
        if (measured.duration() < SHORTEST) {
            problems.add(said("It lasts %.1f s; %.0f s or more are needed to see that it is steady.", measured.duration(), SHORTEST));
        }
        if (!(power > 0)) {
            problems.add("There is no sound in it.");
        } else if (share < LEAST_SHARE) {
            problems.add(said("Its strongest tone, at %.1f Hz, has %.0f %% of the power only; a calibrator makes one tone.", found,
                    100 * share));
        } else if (Math.abs(found - frequency) > FREQUENCY_TOLERANCE * frequency) {
            problems.add(said("Its tone is at %.1f Hz, not at %.1f Hz.", found, frequency));
        }
        if (!(wander <= MOST_WANDER)) {
            problems.add(said("Its level wanders by %.1f dB; a calibrator is steady.", wander));
        }
        if (measured.clipped() > 0) {
            problems.add(said("%d samples are at full scale, so that its level is not known.", measured.clipped()));
        }
        Optional<Calibration> calibration = problems.isEmpty() ? Optional.of(new Calibration(
                Calibration.ofFullScaleSine(level - relative).pascals(), true,
                said("calibrator %.1f dB re 20 µPa at %.0f Hz, recorded as %s", level, frequency, recording.name()))) : Optional.empty();
        return new Calibrator(found, relative, share, wander, problems, calibration);
    }

    private static String said(String format, Object... arguments) {
        return String.format(Locale.ROOT, format, arguments);
    }
}
