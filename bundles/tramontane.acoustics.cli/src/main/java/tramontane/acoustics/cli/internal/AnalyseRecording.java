package tramontane.acoustics.cli.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import tramontane.acoustics.RecordedNoise;
import tramontane.acoustics.recording.Calibration;
import tramontane.acoustics.recording.Calibrator;
import tramontane.acoustics.recording.Measured;
import tramontane.acoustics.recording.NoiseFromRecording;
import tramontane.acoustics.recording.Recording;
import tramontane.acoustics.recording.RecordingAnalysis;
import tramontane.acoustics.recording.RecordingException;
import tramontane.analysis.Cancelled;
import tramontane.analysis.Engine;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.terminal.Delivery;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.Options;
import tramontane.cli.terminal.QuietWatch;
import tramontane.cli.terminal.Syntax;
import tramontane.cli.terminal.TerminalVerb;
import tramontane.model.Value;
import tramontane.model.file.TreeFile;
import tramontane.physics.units.QuantityKind;

/** What is in a recording, and what it says of a part. */
final class AnalyseRecording extends TerminalVerb {

    private static final String FULL_SCALE = "--full-scale";
    private static final String SENSITIVITY = "--sensitivity";
    private static final String VOLTAGE = "--full-scale-voltage";
    private static final String CALIBRATOR = "--calibrator";
    private static final String CALIBRATOR_LEVEL = "--calibrator-level";
    private static final String CALIBRATOR_FREQUENCY = "--calibrator-frequency";
    private static final String CHANNEL = "--channel";
    private static final String BACKGROUND = "--background";
    private static final String DISTANCE = "--distance";
    private static final String FIELD = "--field";
    private static final String SPEED = "--speed";
    private static final String FLOW = "--flow";
    private static final String BLADES = "--blades";
    private static final String TOLERANCE = "--tolerance";
    private static final String OUTPUT = "--output";
    private static final String QUIET = "--quiet";
    private static final List<String> FIELDS = List.of("free field", "half-space");
    private static final String SECTION = "section";
    private static final List<String> FORMATS = List.of("text", "json", "csv", SECTION);
    /** Pressure at the microphone does not depend on it; from that far no microphone is too near. */
    private static final double FAR = 1000;

    private final Optional<Path> samples;
    private final Engine engine;

    AnalyseRecording(Optional<Path> samples, Engine engine) {
        super("sound recording", "Levels, bands and tones of a recording; the noise of a part out of it.");
        this.samples = samples;
        this.engine = engine;
    }

    @Override
    protected Syntax syntax() {
        Syntax syntax = new Syntax(name())
                .parameter("FILE", "A WAV file.")
                .option(FULL_SCALE, "LEVEL", "Calibration: the sound pressure level of a full-scale sine, \"120 dB\".")
                .option(SENSITIVITY, "SENSITIVITY", "Calibration: that of the microphone, \"50 mV/Pa\" or \"-26 dB re 1 V/Pa\".")
                .option(VOLTAGE, "VOLTAGE", "With --sensitivity: the peak voltage of full scale, \"10 V\".")
                .option(CALIBRATOR, "FILE", "Calibration: a recording of a sound calibrator with the same gain.")
                .option(CALIBRATOR_LEVEL, "LEVEL", "With --calibrator: the level it makes; standard 94 dB.")
                .option(CALIBRATOR_FREQUENCY, "FREQUENCY", "With --calibrator: the frequency it makes; standard 1000 Hz.")
                .option(CHANNEL, "NUMBER", "Look at this channel, from 1; standard the mean power of all.")
                .option(BACKGROUND, "FILE", "A recording of the background with the part off; it is taken off.")
                .option(DISTANCE, "LENGTH", "For a part: from it to the microphone, \"1 m\".")
                .option(FIELD, "FIELD", "For a part: free field, or half-space over a plane that reflects.")
                .option(SPEED, "SPEED", "For a part: at which it ran, \"2700 rpm\".")
                .option(FLOW, "FLOW", "For a part: the flow at which it worked; free delivery where not given.")
                .option(BLADES, "NUMBER", "For a part: the blades of its rotor; its tones then follow the speed by their order.")
                .option(TOLERANCE, "LEVEL", "For a part: how far its levels may be off; standard 3 dB.");
        return PartInDesign.options(syntax)
                .option(Options.FORMAT, "FORMAT", "text (standard), json, csv (third-octaves), or section: the section \"noise\" of"
                        + " the part.")
                .option(OUTPUT, "FILE", "Write to this file instead of the terminal; with --into the design.")
                .option(Options.MAX_SIZE, "SIZE", "Refuse design files larger than this; standard 64MB.")
                .flag(QUIET, "Print no progress, no cautions beside results and no confirmations.")
                .footer("Without calibration levels are in dB re a full-scale sine. ± is one standard",
                        "deviation of a level of noise by chance: the longer the recording the less.",
                        "Tones are judged by ECMA-418-1; one 80 dB(A) below the whole, or in a calibrated",
                        "recording below the threshold of hearing (ISO 389-7, from memory), is not called",
                        "prominent. Background is taken off as ISO 3744 has it.",
                        "",
                        "Exit codes:",
                        "  0  analysed, and written where that was asked for",
                        "  2  the command line or a file has mistakes; nothing was written",
                        "  3  a fault in the program or its surroundings",
                        "  4  the recording says nothing of the part; nothing was written",
                        "  130  stopped by Ctrl-C",
                        "",
                        "Examples:",
                        "  tramontane sound recording fan.wav --calibrator calibrator.wav",
                        "  tramontane sound recording fan.wav --full-scale \"120 dB\" --background off.wav",
                        "                             --format csv --output fan.csv",
                        "  tramontane sound recording fan.wav --full-scale \"120 dB\" --distance \"1 m\"",
                        "                             --field half-space --speed \"2700 rpm\"",
                        "                             --format section");
    }

    /** Where a part was recorded. */
    private record Place(double distance, NoiseFromRecording.Field field, double speed, RecordedNoise.Stated stated) {
    }

    /** A recording and the file that it is in. */
    private record Opened(String file, Path path, Recording recording) {
    }

    /** All files that go in. */
    private record Inputs(Opened main, Optional<Opened> calibrator, Optional<Opened> background) {

        double duration() {
            return main.recording().duration() + calibrator.map(each -> each.recording().duration()).orElse(0.0)
                    + background.map(each -> each.recording().duration()).orElse(0.0);
        }
    }

    @Override
    protected int run(Syntax.Given given, Console console) throws Ending {
        String format = format(given);
        boolean quiet = given.flag(QUIET);
        Optional<Place> place = place(given);
        Optional<Calibration> stated = stated(given);
        if (place.isEmpty() && (format.equals(SECTION) || given.option(PartInDesign.INTO).isPresent())) {
            throw Ending.badInput((format.equals(SECTION) ? Options.FORMAT + " " + SECTION : PartInDesign.INTO) + " needs " + DISTANCE
                    + ", " + FIELD + " and " + SPEED + ": where the part was recorded.");
        }
        if ((place.isPresent() || given.option(BACKGROUND).isPresent()) && stated.isEmpty() && given.option(CALIBRATOR).isEmpty()) {
            throw Ending.badInput((place.isPresent() ? "The noise of a part" : BACKGROUND) + " needs calibrated levels; give " + FULL_SCALE
                    + ", " + SENSITIVITY + " or " + CALIBRATOR + ".");
        }
        Inputs files = files(given);
        OptionalInt channel = channel(given, files);
        Optional<PartInDesign> into = PartInDesign.of(given, samples, engine, console);
        if (into.isPresent() && !into.get().sound()) {
            return ExitCode.BAD_INPUT;
        }
        Optional<Path> target = Optional.empty();
        if (given.option(OUTPUT).isPresent() && into.isEmpty()) {
            target = Optional.of(Delivery.target(given.option(OUTPUT).get()));
        }
        keepRecordings(files, target.or(() -> into.map(PartInDesign::target)), given);
        Engine.Watch watch = quiet ? new QuietWatch(console.watch()) : console.watch();
        Report report = report(given, files, stated, channel, place, watch);
        Optional<RecordedNoise> part = place.map(where -> RecordedNoise.of(report.noise().orElseThrow(), where.stated()));
        if (part.isPresent() && part.get().section().isEmpty()) {
            throw Ending.notComputed(files.main().file() + ": " + part.get().notes().getFirst());
        }
        if (console.watch().cancelled()) {
            throw new Cancelled();
        }
        Optional<String> blades = into.flatMap(design -> design.otherBlades(place.flatMap(where -> where.stated().blades())));
        Report whole = part.isPresent() ? report.with(blades.map(part.get()::with).orElse(part.get())) : report;
        deliver(whole, format, target, quiet, into.isPresent(), console);
        if (into.isPresent()) {
            into.get().put(part.flatMap(RecordedNoise::section).orElseThrow(), quiet, engine, console);
        }
        return ExitCode.FINE;
    }

    private static String format(Syntax.Given given) throws Ending {
        String word = given.option(Options.FORMAT).orElse("text");
        if (!FORMATS.contains(word)) {
            throw Ending.badInput(Options.FORMAT + " \"" + word + "\" is not known; it is one of " + String.join(", ", FORMATS) + ".");
        }
        return word;
    }

    /** Where the part was recorded; empty where no part is meant. */
    private static Optional<Place> place(Syntax.Given given) throws Ending {
        List<String> needed = List.of(DISTANCE, FIELD, SPEED);
        List<String> missing = needed.stream().filter(option -> given.option(option).isEmpty()).toList();
        Optional<String> any = Arrays.asList(DISTANCE, FIELD, SPEED, FLOW, BLADES, TOLERANCE).stream()
                .filter(option -> given.option(option).isPresent()).findFirst();
        if (any.isEmpty()) {
            return Optional.empty();
        }
        if (!missing.isEmpty()) {
            throw Ending.badInput("For the noise of a part " + DISTANCE + ", " + FIELD + " and " + SPEED + " belong together; missing: "
                    + String.join(", ", missing) + ".");
        }
        String field = given.option(FIELD).orElseThrow().strip();
        if (!FIELDS.contains(field)) {
            throw Ending.badInput(FIELD + " \"" + field + "\" is not known; it is \"free field\" or \"half-space\".");
        }
        double distance = Amounts.positive(given, DISTANCE, QuantityKind.LENGTH).orElseThrow();
        double speed = Amounts.positive(given, SPEED, QuantityKind.ROTATIONAL_SPEED).orElseThrow();
        Optional<Double> flow = Amounts.between(given, FLOW, QuantityKind.FLOW, 0, 1000, "m³/s");
        Optional<Integer> blades = Amounts.whole(given, BLADES, 1, 200);
        double tolerance = Amounts.between(given, TOLERANCE, QuantityKind.LEVEL, 0, 20, "dB").orElse(RecordedNoise.USUAL_TOLERANCE);
        return Optional.of(new Place(distance, field.equals(FIELDS.getFirst()) ? NoiseFromRecording.Field.FREE
                : NoiseFromRecording.Field.HALF_SPACE, speed, new RecordedNoise.Stated(flow, blades, tolerance)));
    }

    /** The calibration that the command line states; empty where there is none, or a recording of a calibrator. */
    private static Optional<Calibration> stated(Syntax.Given given) throws Ending {
        List<String> ways = List.of(FULL_SCALE, SENSITIVITY, CALIBRATOR).stream().filter(option -> given.option(option).isPresent())
                .toList();
        if (ways.size() > 1) {
            throw Ending.badInput("Choose one calibration of " + String.join(" and ", ways) + ".");
        }
        if (given.option(SENSITIVITY).isPresent() != given.option(VOLTAGE).isPresent()) {
            throw Ending.badInput(SENSITIVITY + " and " + VOLTAGE + " belong together; "
                    + (given.option(VOLTAGE).isEmpty() ? VOLTAGE : SENSITIVITY) + " is missing.");
        }
        for (String option : List.of(CALIBRATOR_LEVEL, CALIBRATOR_FREQUENCY)) {
            if (given.option(option).isPresent() && given.option(CALIBRATOR).isEmpty()) {
                throw Ending.badInput(option + " goes with " + CALIBRATOR + " FILE.");
            }
        }
        if (given.option(SENSITIVITY).isPresent()) {
            return Optional.of(Calibration.ofMicrophone(Amounts.sensitivity(given, SENSITIVITY).orElseThrow(),
                    Amounts.positive(given, VOLTAGE, QuantityKind.VOLTAGE).orElseThrow()));
        }
        return Amounts.level(given, FULL_SCALE).map(Calibration::ofFullScaleSine);
    }

    private static Inputs files(Syntax.Given given) throws Ending {
        Opened main = open(given.parameter(0));
        Optional<Opened> calibrator = given.option(CALIBRATOR).isPresent() ? Optional.of(open(given.option(CALIBRATOR).get()))
                : Optional.empty();
        Optional<Opened> background = given.option(BACKGROUND).isPresent() ? Optional.of(open(given.option(BACKGROUND).get()))
                : Optional.empty();
        return new Inputs(main, calibrator, background);
    }

    private static Opened open(String name) throws Ending {
        try {
            Path path = Path.of(name);
            if (Files.isDirectory(path)) {
                throw Ending.badInput(name + ": this is a folder; a WAV file was expected.");
            }
            return new Opened(name, path, Recording.open(path));
        } catch (InvalidPathException impossible) {
            throw Ending.badInput(name + ": no file can have this name.");
        } catch (IOException failed) {
            throw unusable(name, failed);
        }
    }

    private static Ending unusable(String file, IOException failed) {
        return switch (failed) {
            case RecordingException wrong -> Ending.badInput(file + ": " + wrong.getMessage() + ".");
            case NoSuchFileException missing -> Ending.badInput(file + ": there is no such file.");
            default -> Ending.broken(file + " could not be read: " + failed.getMessage() + ".");
        };
    }

    /** The channel to look at, from 0. */
    private static OptionalInt channel(Syntax.Given given, Inputs files) throws Ending {
        Optional<Integer> number = Amounts.whole(given, CHANNEL, 1, Recording.MOST_CHANNELS);
        for (Optional<Opened> each : List.of(Optional.of(files.main()), files.calibrator(), files.background())) {
            if (number.isPresent() && each.isPresent() && number.get() > each.get().recording().channels()) {
                int channels = each.get().recording().channels();
                throw Ending.badInput(CHANNEL + " " + number.get() + ": " + each.get().file() + " has "
                        + (channels == 1 ? "one channel only." : channels + " channels only."));
            }
        }
        return number.map(each -> OptionalInt.of(each - 1)).orElse(OptionalInt.empty());
    }

    /** No recording is ever written over. */
    private static void keepRecordings(Inputs files, Optional<Path> target, Syntax.Given given) throws Ending {
        for (Optional<Opened> each : List.of(Optional.of(files.main()), files.calibrator(), files.background())) {
            try {
                if (each.isPresent() && target.isPresent() && Files.exists(target.get())
                        && Files.isSameFile(target.get(), each.get().path())) {
                    throw Ending.badInput(OUTPUT + " " + given.option(OUTPUT).orElse("")
                            + ": this is a recording, which is not written over.");
                }
            } catch (IOException failed) {
                throw Ending.badInput(OUTPUT + " " + given.option(OUTPUT).orElse("") + ": " + failed.getMessage() + ".");
            }
        }
    }

    private static Report report(Syntax.Given given, Inputs files, Optional<Calibration> stated, OptionalInt channel, Optional<Place> place,
            Engine.Watch watch) throws Ending {
        double all = files.duration();
        double done = 0;
        Calibration calibration = stated.orElse(Calibration.NONE);
        if (files.calibrator().isPresent()) {
            Opened from = files.calibrator().get();
            calibration = calibration(given, from, channel, new Stage(watch, 0, from.recording().duration() / all,
                    "listening to the calibrator"));
            done = from.recording().duration() / all;
        }
        double next = done + files.main().recording().duration() / all;
        Measured measured = analyse(files.main(), channel, calibration, new Stage(watch, done, next,
                "analysing " + files.main().recording().name()));
        Optional<Measured> background = Optional.empty();
        if (files.background().isPresent()) {
            background = Optional.of(analyse(files.background().get(), channel, calibration,
                    new Stage(watch, next, 1, "analysing the background")));
        }
        Optional<NoiseFromRecording> noise = Optional.empty();
        if (place.isPresent() || background.isPresent()) {
            noise = Optional.of(noise(files.main().file(), measured, background, place));
        }
        return new Report(files.main().recording(), measured, background, noise, Optional.empty());
    }

    private static NoiseFromRecording noise(String file, Measured measured, Optional<Measured> background,
            Optional<Place> place) throws Ending {
        double distance = place.map(Place::distance).orElse(FAR);
        NoiseFromRecording.Field field = place.map(Place::field).orElse(NoiseFromRecording.Field.FREE);
        double speed = place.map(Place::speed).orElse(1.0);
        try {
            return background.isPresent() ? NoiseFromRecording.of(measured, background.get(), distance, field, speed)
                    : NoiseFromRecording.of(measured, distance, field, speed);
        } catch (RecordingException wrong) {
            throw unusable(file, wrong);
        }
    }

    private static Measured analyse(Opened from, OptionalInt channel, Calibration calibration, Stage stage) throws Ending {
        try {
            return RecordingAnalysis.analyse(from.recording(), channel, calibration, stage);
        } catch (IOException failed) {
            throw unusable(from.file(), failed);
        }
    }

    private static Calibration calibration(Syntax.Given given, Opened from, OptionalInt channel, Stage stage) throws Ending {
        double level = Amounts.level(given, CALIBRATOR_LEVEL).orElse(Calibrator.USUAL_LEVEL);
        double frequency = Amounts.between(given, CALIBRATOR_FREQUENCY, QuantityKind.FREQUENCY, 20, 20000, "Hz")
                .orElse(Calibrator.USUAL_FREQUENCY);
        try {
            Calibrator calibrator = Calibrator.of(from.recording(), channel, level, frequency, stage);
            if (calibrator.calibration().isEmpty()) {
                throw Ending.badInput(from.file() + ": this cannot be used as the recording of a calibrator. "
                        + String.join(" ", calibrator.problems()));
            }
            return calibrator.calibration().get();
        } catch (IOException failed) {
            throw unusable(from.file(), failed);
        }
    }

    private static void deliver(Report report, String format, Optional<Path> target, boolean quiet, boolean into,
            Console console) throws Ending {
        if (!format.equals("text") && !format.equals("json") && !quiet) {
            report.cautions().forEach(caution -> console.err().println("caution: " + caution));
        }
        if (format.equals("text") && target.isEmpty()) {
            RecordingText.lines(report, !into, console.width(), console::shown).forEach(console.out()::println);
            return;
        }
        String text = switch (format) {
            case "json" -> RecordingJson.of(report);
            case "csv" -> RecordingJson.csv(report);
            case SECTION -> section(report.part().flatMap(RecordedNoise::section).orElseThrow());
            default -> String.join("\n", RecordingText.lines(report, !into, console.width(), line -> line)) + "\n";
        };
        if (target.isEmpty()) {
            console.data().print(text);
            return;
        }
        Delivery.write(target.get(), text);
        if (!quiet) {
            console.err().println(String.format(Locale.ROOT, "Written to %s.", target.get()));
        }
    }

    /** With its name, to be pasted among the sections of a part. */
    private static String section(Value.Tree section) {
        return TreeFile.write(Value.Tree.EMPTY.with(RecordedNoise.SECTION, section)).stripTrailing() + "\n";
    }

    /** What came out. */
    record Report(Recording recording, Measured measured, Optional<Measured> background, Optional<NoiseFromRecording> noise,
            Optional<RecordedNoise> part) {

        Report with(RecordedNoise found) {
            return new Report(recording, measured, background, noise, Optional.of(found));
        }

        List<String> cautions() {
            List<String> all = new ArrayList<>(noise.map(NoiseFromRecording::cautions).orElse(measured.cautions()));
            part.ifPresent(each -> all.addAll(each.notes()));
            if (part.isPresent() && background.isEmpty()) {
                double ofBands = noise.orElseThrow().levelA();
                if (Math.rint(10 * ofBands) != Math.rint(10 * measured.levelA())) {
                    all.add(String.format(Locale.ROOT, "LpA of the part, %.1f dB, is that of the bands, weighted at their middles;"
                            + " LAeq, %.1f dB, is weighted at each frequency.", ofBands, measured.levelA()));
                }
            }
            return all;
        }
    }
}
