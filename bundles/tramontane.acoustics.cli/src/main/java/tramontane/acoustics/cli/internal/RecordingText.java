package tramontane.acoustics.cli.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import tramontane.acoustics.cli.internal.AnalyseRecording.Report;
import tramontane.acoustics.recording.Measured;
import tramontane.acoustics.recording.NoiseFromRecording;
import tramontane.analysis.Table;
import tramontane.cli.terminal.Messages;
import tramontane.cli.terminal.TextTable;
import tramontane.cli.terminal.Wrapping;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.ToneInNoise;
import tramontane.physics.sound.Weighting;
import tramontane.physics.units.UnitSystem;

/** What is in a recording, for people. */
final class RecordingText {

    private RecordingText() {
    }

    /**
     * The lines.
     *
     * @param report what came out
     * @param next   whether to say how it gets into a design
     * @param width  columns that a line may have
     * @param shown  what the terminal shows of a text
     */
    static List<String> lines(Report report, boolean next, int width, UnaryOperator<String> shown) {
        Measured measured = report.measured();
        List<String> lines = new ArrayList<>();
        lines.add(shown.apply(String.format(Locale.ROOT, "%s: %s, %d Hz, %s, %.1f s", measured.name(), report.recording().coding().words(),
                measured.sampleRate(), Messages.count(measured.channels(), "channel"), measured.duration())));
        if (measured.channels() > 1) {
            lines.add(measured.channel().isPresent() ? "Channel " + (measured.channel().getAsInt() + 1) + " of " + measured.channels() + "."
                    : "Mean power of all channels.");
        }
        for (String sentence : List.of("Calibration: " + measured.calibration().words() + "; levels are in " + measured.calibration()
                .unit() + ".", Double.isFinite(measured.peak()) ? String.format(Locale.ROOT, "Largest sample: %.1f dB re full scale.",
                measured.peak()) : "All samples are zero.")) {
            lines.addAll(Wrapping.lines(shown.apply(sentence), width));
        }
        table(levels(measured), lines, width, shown);
        table(report.background().isPresent() ? withoutBackground(report) : bands(measured), lines, width, shown);
        if (measured.tones().isEmpty()) {
            lines.addAll(List.of("", "No tones stand out."));
        } else {
            table(tones(measured), lines, width, shown);
        }
        if (report.part().isPresent()) {
            table(part(report.noise().orElseThrow()), lines, width, shown);
            if (next) {
                lines.addAll(Wrapping.lines("Next: --format section prints it as the section of a part, --into DESIGN --part ID puts"
                        + " it into a design.", width));
            }
        }
        List<String> cautions = report.cautions();
        if (!cautions.isEmpty()) {
            lines.addAll(List.of("", "To know before"));
            cautions.forEach(caution -> lines.addAll(Wrapping.hanging("  ", shown.apply(caution), width)));
        }
        return lines;
    }

    private static void table(Table table, List<String> lines, int width, UnaryOperator<String> shown) {
        lines.add("");
        lines.addAll(TextTable.lines(table, 1, width, UnitSystem.METRIC, shown));
    }

    private static Table levels(Measured measured) {
        return new Table("Levels", Cells.columns("level", "what it is", "#value"), List.of(
                row("LAeq", "A-weighted, mean of the whole", measured.levelA()),
                row("LCeq", "C-weighted, mean of the whole", measured.levelC()),
                row("LZeq", "unweighted, mean of the whole", measured.level()), row("LAFmax", "A-weighted, fast, highest",
                measured.fastA())));
    }

    private static List<Table.Cell> row(String name, String what, double level) {
        return List.of(Cells.words(name), Cells.words(what), Cells.level(level));
    }

    private static Table bands(Measured measured) {
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (Measured.Band band : measured.bands()) {
            int octave = band.third() / 3;
            OptionalDouble level = band.third() % 3 == 1 ? measured.octave(octave) : OptionalDouble.empty();
            rows.add(List.of(Cells.words(Bands.name(band.third())), Cells.level(band.level()), chance(band.level(), band.deviation()),
                    Cells.words(level.isPresent() ? Bands.octaveName(octave) : ""),
                    level.isPresent() ? Cells.level(level.getAsDouble()) : new Table.Empty(),
                    level.isPresent() ? chance(level.getAsDouble(), deviation(measured, octave)) : new Table.Empty()));
        }
        return new Table("Bands", Cells.columns("#third", "#level", "#± [dB]", "#octave", "#level", "#± [dB]"), rows);
    }

    /** Of an octave by those of its thirds, which are independent. */
    static double deviation(Measured measured, int octave) {
        double power = 0;
        double squares = 0;
        for (Measured.Band band : measured.bands()) {
            if (band.third() / 3 == octave) {
                double own = Levels.power(band.level());
                power += own;
                squares += Math.pow(own * band.deviation(), 2);
            }
        }
        return power > 0 ? Math.sqrt(squares) / power : 0;
    }

    private static Table withoutBackground(Report report) {
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (NoiseFromRecording.Band band : report.noise().orElseThrow().bands()) {
            rows.add(List.of(Cells.words(Bands.name(band.third())), Cells.level(level(report.measured(), band.third())),
                    Cells.level(level(report.background().orElseThrow(), band.third())), Cells.level(band.level()),
                    chance(band.level(), band.deviation()), Cells.words(band.upperBound() ? "at most" : "")));
        }
        return new Table("Bands with and without the background", Cells.columns("#third", "#recorded", "#background", "#without",
                "#± [dB]", "known"), rows);
    }

    /** To 0.01 dB: that of high bands is less than 0.1 dB. Silence has none. */
    private static Table.Cell chance(double level, double deviation) {
        return !Double.isFinite(level) ? new Table.Empty() : Cells.words(String.format(Locale.ROOT, "%.2f", deviation));
    }

    static double level(Measured measured, int third) {
        return measured.bands().stream().filter(band -> band.third() == third).mapToDouble(Measured.Band::level).findFirst()
                .orElse(Double.NEGATIVE_INFINITY);
    }

    private static Table tones(Measured measured) {
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (ToneInNoise.Prominence tone : measured.tones()) {
            rows.add(List.of(Cells.words(String.format(Locale.ROOT, "%.1f Hz", tone.frequency())), Cells.level(tone.level()),
                    Cells.level(tone.toneToNoise()), Cells.level(tone.prominenceRatio()), Cells.words(prominent(measured, tone)
                    + (tone.together() > 1 ? "; " + tone.together() + " heard as one" : ""))));
        }
        return new Table("Tones", Cells.columns("#frequency", "#level", "#to noise", "#prominence", "prominent"), rows);
    }

    private static String prominent(Measured measured, ToneInNoise.Prominence tone) {
        if (!measured.prominent(tone)) {
            return !tone.prominent() ? "no" : measured.drowned(tone) ? "no, far below the rest" : "no, below the threshold of hearing";
        }
        return tone.prominentByToneToNoise() == tone.prominentByProminenceRatio() ? "yes" : tone.prominentByToneToNoise() ? "yes, to noise"
                : "yes, prominence";
    }

    private static Table part(NoiseFromRecording noise) {
        String where = String.format(Locale.ROOT, "%s, %s m, %s rpm", noise.field() == NoiseFromRecording.Field.FREE ? "free field"
                : "half-space", plain(noise.distance()), plain(noise.speed() * 30 / Math.PI));
        return new Table("The part, " + where, Cells.columns("level", "what it is", "#value"), List.of(
                row("LpA", noise.background() ? "sound pressure, A-weighted, without the background"
                : "sound pressure, A-weighted, background included",
                        noise.levelA()),
                row("LWA", "sound power, A-weighted, if it sounds alike in all directions", noise.power().level(Weighting.A))));
    }

    private static String plain(double value) {
        double rounded = Math.rint(1000 * value) / 1000;
        return rounded == Math.rint(rounded) ? Long.toString((long) rounded) : Double.toString(rounded);
    }

    /** Finite levels alone. */
    static Optional<Double> finite(double level) {
        return Double.isFinite(level) ? Optional.of(level) : Optional.empty();
    }
}
