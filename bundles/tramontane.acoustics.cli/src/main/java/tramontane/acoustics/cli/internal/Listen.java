package tramontane.acoustics.cli.internal;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tramontane.acoustics.Emission;
import tramontane.acoustics.NoiseState;
import tramontane.acoustics.recording.Synthesis;
import tramontane.acoustics.recording.WavWriter;
import tramontane.analysis.Cancelled;
import tramontane.analysis.Cases;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Finding;
import tramontane.analysis.Severity;
import tramontane.analysis.Table;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.terminal.Delivery;
import tramontane.cli.terminal.DesignSource;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.FindingLines;
import tramontane.cli.terminal.JsonDocument;
import tramontane.cli.terminal.Messages;
import tramontane.cli.terminal.Options;
import tramontane.cli.terminal.Options.Format;
import tramontane.cli.terminal.QuietWatch;
import tramontane.cli.terminal.Syntax;
import tramontane.cli.terminal.TerminalVerb;
import tramontane.cli.terminal.Wrapping;
import tramontane.model.Design;
import tramontane.model.Spelling;
import tramontane.model.file.DesignFile;
import tramontane.physics.sound.ToneInNoise;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;

/** Makes heard what was computed. */
final class Listen extends TerminalVerb {

    private static final String CONDITION = "--condition";
    private static final String AT = "--at";
    private static final String SECONDS = "--seconds";
    private static final String OUTPUT = "--output";
    private static final String LIMIT = "--limit";
    private static final String LOOP = "--loop";
    private static final String REPLACE = "--replace";
    private static final String QUIET = "--quiet";
    /** All sounds are in memory together, 0.4 MB for each second. */
    private static final double MOST_SECONDS = 600;
    /** Tones nearer than this are one, as the analysis has it, Hz. */
    private static final double SAME_FREQUENCY = 0.01;
    /** Part of the work that solving takes, about. */
    private static final double SOLVED = 0.6;
    private static final double RENDERED = 0.9;

    private final Optional<Path> samples;
    private final Engine engine;

    Listen(Optional<Path> samples, Engine engine) {
        super("sound listen", "Write what is heard of designs as WAV files, at their right relative level.");
        this.samples = samples;
        this.engine = engine;
    }

    @Override
    protected Syntax syntax() {
        return new Syntax(name())
                .parameter("DESIGN", "A design file, or the name of a sample.")
                .furtherParameters("MORE", "Further designs to compare it with.")
                .options(CONDITION, "ID", "A condition, or one of its cases; may be given several times. Standard is the first of each design."
                        + " Of cases that are alike, such as which one of six like movers has failed, the first is heard.")
                .options(AT, "POSITION", "Where somebody listens; may be given several times. Standard is the first position of each"
                        + " design.")
                .option(OUTPUT, "FOLDER", "The folder to write to; must be given.")
                .option(SECONDS, "NUMBER", "How long each sound lasts, 1 to 120 s; standard 10.")
                .option(LIMIT, "LEVEL", "Level of the loudest sound re a full-scale sine, at most \"-3 dB\"; standard \"-26 dB\".")
                .flag(LOOP, "Sounds that repeat without a seam; they last what is nearest of 1.37, 2.73, 5.46, 10.92 and 21.85 s.")
                .flag(REPLACE, "Write over files that are there already.")
                .option(Options.FORMAT, "FORMAT", "text (standard) or json.")
                .option(Options.MAX_SIZE, "SIZE", "Refuse design files larger than this; standard 64MB.")
                .option(Options.TIME_LIMIT, "TIME", "Give up an analysis that takes longer than this; standard 5min.")
                .flag(QUIET, "Print no progress and no cautions of designs.")
                .footer("All sounds of one call have one gain, so that they are heard at their right",
                        "relative level. Files are named after design, condition and position; names",
                        "that would be alike are numbered. What was assumed of a sound is said.",
                        Synthesis.HEARING_CAUTION,
                        "",
                        "Exit codes:",
                        "  0  written",
                        "  2  the command line or a file has mistakes; nothing was written",
                        "  3  a fault in the program or its surroundings",
                        "  4  the noise could not be computed, or there is none; nothing was written",
                        "  130  stopped by Ctrl-C",
                        "",
                        "Examples:",
                        "  tramontane sound listen cabinet --output sounds",
                        "  tramontane sound listen cabinet --condition nominal --condition \"night, slow\"",
                        "                          --at technician --output sounds",
                        "  tramontane sound listen before.tramontane.json after.tramontane.json",
                        "                          --output sounds");
    }

    /** What is asked of one design. */
    private record Asked(String stem, DesignSource source, List<Engine.Case> cases) {

        Design design() {
            return source.design().orElseThrow();
        }
    }

    /** One sound. */
    private record Heard(String design, String condition, NoiseState.PositionNoise at, Assumed assumed, Path file, boolean numbered) {

        String name() {
            return file.getFileName().toString();
        }

        boolean silent() {
            return at.level() == Double.NEGATIVE_INFINITY;
        }

        Heard named(Path other) {
            return new Heard(design, condition, at, assumed, other, true);
        }
    }

    /** Banks that are heard, and of which the spectrum is that of a type of fan, and not all tones are known. */
    private record Assumed(Set<String> spectrum, Set<String> tones) {

        static Assumed of(NoiseState state, NoiseState.PositionNoise at) {
            Set<String> spectrum = new LinkedHashSet<>();
            Set<String> tones = new LinkedHashSet<>();
            for (NoiseState.Part part : at.parts()) {
                state.bank(part.bank()).filter(bank -> !bank.movers().isEmpty()).ifPresent(bank -> {
                    if (bank.movers().stream().anyMatch(mover -> mover.assumed().contains(Emission.Assumed.SPECTRUM))) {
                        spectrum.add(bank.bank());
                    }
                    if (!bank.tonal()) {
                        tones.add(bank.bank());
                    }
                });
            }
            return new Assumed(spectrum, tones);
        }

        /** In a few words; empty where nothing is. */
        String words() {
            if (!spectrum.isEmpty() && spectrum.equals(tones)) {
                return "of " + String.join(", ", spectrum) + " the spectrum is assumed and not all tones are known";
            }
            return Stream.of(spectrum.isEmpty() ? "" : "of " + String.join(", ", spectrum) + " the spectrum is assumed",
                    tones.isEmpty() ? "" : "of " + String.join(", ", tones) + " not all tones are known").filter(each -> !each.isEmpty())
                    .collect(Collectors.joining("; "));
        }
    }

    @Override
    protected int run(Syntax.Given given, Console console) throws Ending {
        Format format = Options.format(given, Format.TEXT, Format.JSON);
        Duration timeLimit = Options.timeLimit(given, Engine.Request.TIME_LIMIT);
        double seconds = Amounts.between(given, SECONDS, QuantityKind.NUMBER, 1, Synthesis.LONGEST, "s")
                .orElse(Synthesis.Request.USUAL.seconds());
        double limit = Amounts.between(given, LIMIT, QuantityKind.LEVEL, -120, -3, "dB").orElse(Synthesis.USUAL_LIMIT);
        boolean quiet = given.flag(QUIET);
        Path folder = folder(given);
        Set<String> givers = engine.givers(Set.of(NoiseState.class));
        if (givers.isEmpty()) {
            throw Ending.broken("No analysis of noise is loaded; \"tramontane modules\" shows why.");
        }
        List<Asked> asked = new ArrayList<>();
        boolean sound = read(given, given.parameter(0), quiet, asked, console);
        for (String name : given.furtherParameters(1)) {
            sound &= read(given, name, quiet, asked, console);
        }
        if (!sound) {
            return ExitCode.BAD_INPUT;
        }
        Engine.Watch watch = quiet ? new QuietWatch(console.watch()) : console.watch();
        List<Heard> heard = new ArrayList<>();
        for (int i = 0; i < asked.size(); i++) {
            double from = SOLVED * i / asked.size();
            heard.addAll(heard(asked.get(i), given, folder, givers, timeLimit, part(watch, from, SOLVED / asked.size())));
        }
        heard = numbered(heard);
        check(heard, seconds, given.flag(REPLACE));
        Synthesis.Request usual = Synthesis.Request.USUAL;
        Synthesis.Rendered rendered = Synthesis.render(heard.stream().map(Listen::sound).toList(),
                new Synthesis.Request(usual.sampleRate(), seconds, given.flag(LOOP), usual.fade(), limit, usual.seed()),
                new Stage(watch, SOLVED, RENDERED, "making sound"));
        write(heard, rendered, folder, new Stage(watch, RENDERED, 1, "writing"));
        if (format == Format.JSON) {
            console.data().print(json(heard, rendered));
            console.err().println(Synthesis.HEARING_CAUTION);
        } else {
            text(heard, rendered, folder, console);
        }
        return ExitCode.FINE;
    }

    private static Path folder(Syntax.Given given) throws Ending {
        String name = given.option(OUTPUT).orElseThrow(() -> Ending.badInput("sound listen: " + OUTPUT + " FOLDER is missing."
                + " See \"tramontane help sound listen\"."));
        return Delivery.folder(OUTPUT, name);
    }

    private static Engine.Watch part(Engine.Watch watch, double from, double share) {
        return new Engine.Watch() {
            @Override
            public boolean cancelled() {
                return watch.cancelled();
            }

            @Override
            public void progress(double fraction, String message) {
                watch.progress(from + share * fraction, message);
            }
        };
    }

    /** Reads a design; false where it has mistakes, which are printed. */
    private boolean read(Syntax.Given given, String name, boolean quiet, List<Asked> asked, Console console) throws Ending {
        DesignSource source = DesignSource.open(name, samples, Options.maxSize(given), engine);
        if (!source.sound()) {
            source.print(console.err());
            console.err().println(Messages.count(source.problems()) + "; nothing was solved and the file is untouched.");
            return false;
        }
        if (!quiet) {
            source.print(console.err());
        }
        String file = source.path().getFileName().toString();
        String stem = file.endsWith(DesignFile.ENDING) ? file.substring(0, file.length() - DesignFile.ENDING.length()) : file;
        String free = stem;
        for (int i = 2; taken(free, asked); i++) {
            free = stem + " " + i;
        }
        asked.add(new Asked(free, source, cases(source.design().orElseThrow(), name, given.options(CONDITION))));
        return true;
    }

    private static boolean taken(String stem, List<Asked> asked) {
        return asked.stream().anyMatch(each -> plain(each.stem()).equalsIgnoreCase(plain(stem)));
    }

    private static List<Engine.Case> cases(Design design, String name, List<String> wanted) throws Ending {
        List<Engine.Case> all = Cases.of(design, Set.of()).list();
        Cases unlike = Cases.unlike(design, Set.of());
        Set<Engine.Case> chosen = new LinkedHashSet<>();
        if (wanted.isEmpty()) {
            chosen.add(all.stream().findFirst().orElseThrow(() -> Ending.notComputed(name + ": none of its conditions can be computed.")));
        }
        for (String id : wanted) {
            List<Engine.Case> named = all.stream().filter(each -> each.concrete().id().equals(id)).toList();
            List<Engine.Case> found = named.isEmpty() ? unlike.of(id) : named;
            if (found.isEmpty()) {
                List<String> known = all.stream().map(Engine.Case::declared).distinct().toList();
                List<String> ids = new ArrayList<>(known);
                all.forEach(each -> ids.add(each.concrete().id()));
                throw Ending.badInput(CONDITION + " " + id + ": " + name + " has no such condition" + Spelling.nearest(id, ids)
                        .map(near -> "; did you mean \"" + near + "\"?").orElse("; it has " + String.join("; ", known) + "."));
            }
            chosen.addAll(found);
        }
        return List.copyOf(chosen);
    }

    private List<Heard> heard(Asked asked, Syntax.Given given, Path folder, Set<String> givers, Duration timeLimit, Engine.Watch watch)
            throws Ending {
        Set<String> conditions = new LinkedHashSet<>();
        asked.cases().forEach(each -> conditions.add(each.declared()));
        Evaluation evaluation = engine.evaluate(new Engine.Request(asked.design(), givers, conditions, timeLimit), watch);
        if (evaluation.cancelled() || watch.cancelled()) {
            throw new Cancelled();
        }
        List<Heard> heard = new ArrayList<>();
        for (Engine.Case each : asked.cases()) {
            String id = each.concrete().id();
            NoiseState state = state(asked, evaluation, id);
            for (NoiseState.PositionNoise position : positions(asked, state, given.options(AT))) {
                heard.add(new Heard(asked.stem(), id, position, Assumed.of(state, position), folder.resolve(plain(asked.stem()) + "-"
                        + plain(id) + "-" + plain(position.position()) + ".wav"), false));
            }
        }
        return heard;
    }

    private static NoiseState state(Asked asked, Evaluation evaluation, String id) throws Ending {
        String where = asked.source().name() + ", " + id + ": ";
        Optional<NoiseState> state = evaluation.data(NoiseState.class, id);
        if (state.isEmpty()) {
            throw Ending.notComputed(where + "its noise could not be computed" + evaluation.findings().stream()
                    .filter(finding -> finding.severity() == Severity.ERROR && (finding.condition().isEmpty() || finding.condition()
                    .equals(id))).findFirst().map(Listen::because).orElse("."));
        }
        if (!state.get().unknown().isEmpty()) {
            throw Ending.notComputed(where + "nothing is known of the noise of " + String.join(", ", state.get().unknown())
                    + "; give the part there a section \"noise\", by its data sheet or by \"tramontane sound recording\".");
        }
        if (state.get().positions().isEmpty()) {
            throw Ending.notComputed(where + "the design says nothing of noise; give the part of its bank a section \"noise\","
                    + " by its data sheet or by \"tramontane sound recording\", and the design one that says where somebody listens.");
        }
        return state.get();
    }

    private static String because(Finding finding) {
        return ": " + FindingLines.sentence(finding, UnitSystem.METRIC) + ".";
    }

    private static List<NoiseState.PositionNoise> positions(Asked asked, NoiseState state, List<String> wanted) throws Ending {
        if (wanted.isEmpty()) {
            return List.of(state.positions().getFirst());
        }
        Set<NoiseState.PositionNoise> chosen = new LinkedHashSet<>();
        for (String id : wanted) {
            List<String> known = state.positions().stream().map(NoiseState.PositionNoise::position).toList();
            chosen.add(state.position(id).orElseThrow(() -> Ending.badInput(AT + " " + id + ": " + asked.source().name()
                    + " has no such position" + Spelling.nearest(id, known).map(near -> "; did you mean \"" + near + "\"?")
                    .orElse("; it has " + String.join("; ", known) + "."))));
        }
        return List.copyOf(chosen);
    }

    /** As a part of a file's name: letters, digits and dots, what else there is becomes one underline. */
    private static String plain(String text) {
        String plain = text.replaceAll("[^\\p{L}\\p{N}.]+", "_").replaceAll("^[_.]+|[_.]+$", "");
        return plain.isEmpty() ? "unnamed" : plain;
    }

    /** With a number behind names that others have, whatever their case: some file systems do not tell it apart. */
    private static List<Heard> numbered(List<Heard> heard) {
        Set<String> taken = new HashSet<>();
        List<Heard> numbered = new ArrayList<>();
        for (Heard each : heard) {
            Heard free = each;
            for (int i = 2; !taken.add(free.name().toLowerCase(Locale.ROOT)); i++) {
                String stem = each.name().substring(0, each.name().length() - ".wav".length());
                free = each.named(each.file().resolveSibling(stem + "_" + i + ".wav"));
            }
            numbered.add(free);
        }
        return numbered;
    }

    /** Whether all can be made and written; found out before. */
    private static void check(List<Heard> heard, double seconds, boolean replace) throws Ending {
        if (heard.stream().allMatch(Heard::silent)) {
            throw Ending.notComputed("There is nothing to hear: no mover runs in " + heard.stream().map(each -> each.design() + ", "
                    + each.condition()).distinct().collect(Collectors.joining("; ")) + ". Nothing was written; choose a condition in"
                    + " which movers run with " + CONDITION + ".");
        }
        if (heard.size() * seconds > MOST_SECONDS) {
            throw Ending.badInput(heard.size() + " sounds of " + Math.round(seconds) + " s are more than the " + Math.round(MOST_SECONDS)
                    + " s that are made at once; name fewer conditions and positions, or make them shorter with " + SECONDS + ".");
        }
        for (Heard each : heard) {
            if (Files.exists(each.file()) && !replace) {
                throw Ending.badInput(each.file() + ": there is a file of that name; " + REPLACE + " writes over it.");
            }
        }
    }

    private static Synthesis.Sound sound(Heard heard) {
        List<ToneInNoise.Tone> tones = new ArrayList<>();
        for (NoiseState.Part part : heard.at().parts()) {
            for (Emission.Tone tone : part.tones()) {
                int same = 0;
                while (same < tones.size() && Math.abs(tones.get(same).frequency() - tone.frequency()) >= SAME_FREQUENCY) {
                    same++;
                }
                if (same < tones.size()) {
                    tones.set(same, new ToneInNoise.Tone(tones.get(same).frequency(), tones.get(same).power() + tone.power()));
                } else {
                    tones.add(new ToneInNoise.Tone(tone.frequency(), tone.power()));
                }
            }
        }
        return new Synthesis.Sound(heard.name(), heard.at().noise(), tones);
    }

    private static void write(List<Heard> heard, Synthesis.Rendered rendered, Path folder, Stage stage) throws Ending {
        try {
            if (!Files.isDirectory(folder)) {
                Files.createDirectory(folder);
            }
            for (int i = 0; i < heard.size(); i++) {
                stage.at(i / (double) heard.size());
                Path file = heard.get(i).file();
                Path beside = file.resolveSibling("." + file.getFileName() + "." + ProcessHandle.current().pid() + ".part");
                try {
                    rendered.sounds().get(i).write(beside, WavWriter.Depth.BITS_24);
                    Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
                } finally {
                    Files.deleteIfExists(beside);
                }
            }
            stage.at(1);
        } catch (IOException failed) {
            throw Ending.broken("The sounds could not be written to " + folder + ": " + failed.getMessage() + ".");
        }
    }

    private static double loudest(List<Heard> heard) {
        return heard.stream().mapToDouble(each -> each.at().level()).max().orElseThrow();
    }

    private static void text(List<Heard> heard, Synthesis.Rendered rendered, Path folder, Console console) {
        double loudest = loudest(heard);
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (int i = 0; i < heard.size(); i++) {
            rows.add(List.of(Cells.words(heard.get(i).name()), Cells.level(heard.get(i).at().level()),
                    Cells.level(heard.get(i).at().level() - loudest), Cells.level(rendered.sounds().get(i).level())));
        }
        Cells.print(new Table("Sounds in " + folder, Cells.columns("file", "#A-weighted, as heard there", "#to the loudest",
                "#unweighted, re full scale"), rows), console);
        console.out().println();
        List<String> sentences = new ArrayList<>();
        for (Heard each : heard) {
            if (each.numbered()) {
                sentences.add(each.name() + ": " + each.condition() + ", at " + each.at().position() + ".");
            }
            if (!each.assumed().words().isEmpty()) {
                sentences.add(each.name() + ": " + each.assumed().words() + ".");
            }
        }
        sentences.addAll(rendered.notes());
        sentences.add(String.format(Locale.ROOT, "A full-scale sine stands for %.2f dB re 20 µPa in all of them; read their levels"
                + " with sound recording FILE --full-scale \"%.2f dB\".", rendered.fullScale(), rendered.fullScale()));
        sentences.add(Synthesis.HEARING_CAUTION);
        sentences.forEach(sentence -> Wrapping.lines(console.shown(sentence), console.width()).forEach(console.out()::println));
    }

    private static String json(List<Heard> heard, Synthesis.Rendered rendered) {
        double loudest = loudest(heard);
        return JsonDocument.of(json -> {
            json.beginObject().name("format").value(1).name("fullScaleSine").value(rendered.fullScale()).name("sounds").beginArray();
            for (int i = 0; i < heard.size(); i++) {
                Heard each = heard.get(i);
                json.beginObject().name("file").value(each.file().toString()).name("design").value(each.design()).name("condition")
                        .value(each.condition()).name("position").value(each.at().position()).name("levelA");
                JsonDocument.number(json, each.at().level());
                json.name("toLoudest");
                JsonDocument.number(json, each.at().level() - loudest);
                json.name("toFullScale");
                JsonDocument.number(json, rendered.sounds().get(i).level());
                names(json.name("spectrumAssumed"), each.assumed().spectrum());
                names(json.name("tonesNotKnown"), each.assumed().tones());
                json.endObject();
            }
            json.endArray().name("notes").beginArray();
            for (String note : rendered.notes()) {
                json.value(note);
            }
            json.endArray().endObject();
        });
    }

    private static void names(JsonWriter json, Set<String> names) throws IOException {
        json.beginArray();
        for (String name : names) {
            json.value(name);
        }
        json.endArray();
    }
}
