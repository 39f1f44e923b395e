package tramontane.acoustics.cli.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import tramontane.analysis.Table;
import tramontane.cli.Console;
import tramontane.cli.ExitCode;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.JsonDocument;
import tramontane.cli.terminal.Options;
import tramontane.cli.terminal.Options.Format;
import tramontane.cli.terminal.Syntax;
import tramontane.cli.terminal.TerminalVerb;
import tramontane.cli.terminal.Wrapping;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.NoiseCriterion;
import tramontane.physics.sound.NoiseRating;
import tramontane.physics.sound.Rating;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.Weighting;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.Units;

/** Weighted levels and ratings of band levels. */
final class Rate extends TerminalVerb {

    private static final String LOWEST = "--lowest";
    private static final String THIRDS = "--thirds";
    private static final double LOUDEST = 300;
    /** Levels in this unit are A-weighted. */
    private static final Pattern WEIGHTED = Pattern.compile("dB\\s*\\(?\\s*A", Pattern.CASE_INSENSITIVE);
    private static final String TAKEN_OFF = "The levels are in dB(A): they were taken as A-weighted, and the weighting at the middle of"
            + " each band was taken off them.";

    Rate() {
        super("sound rate", "Weighted levels, noise rating and noise criterion of band levels.");
    }

    @Override
    protected Syntax syntax() {
        return new Syntax(name())
                .parameter("LEVELS", "Sound pressure levels of neighbouring octaves, from the lowest up, as one text: \"45 48 46 44 dB\"."
                        + " In dB(A) they are taken as A-weighted, and the weighting is taken off them.")
                .option(LOWEST, "BAND", "Middle frequency of the first band; standard 63 Hz, with --thirds 50 Hz.")
                .flag(THIRDS, "The levels are of third-octaves.")
                .option(Options.FORMAT, "FORMAT", "text (standard) or json.")
                .footer("NR is the noise rating of ISO/R 1996:1971, NC the noise criterion by the tangent",
                        "method; the octave that reaches the highest curve decides.",
                        "",
                        "Exit codes:",
                        "  0  rated",
                        "  2  the command line has mistakes",
                        "",
                        "Examples:",
                        "  tramontane sound rate \"45 48 46 44 42 38 33 27 dB\"",
                        "  tramontane sound rate \"38 36 35 dB\" --lowest \"500 Hz\" --thirds --format json");
    }

    /** A rating and what it is called. */
    private record Named(String label, Optional<Rating> rating) {
    }

    @Override
    protected int run(Syntax.Given given, Console console) throws Ending {
        Format format = Options.format(given, Format.TEXT, Format.JSON);
        boolean thirds = given.flag(THIRDS);
        double[] levels = levels(given.parameter(0));
        boolean weighted = WEIGHTED.matcher(given.parameter(0)).find();
        int first = first(given, thirds);
        int room = (thirds ? Bands.THIRDS : Bands.OCTAVES) - first;
        if (levels.length > room) {
            String band = thirds ? "third-octave" : "octave";
            throw Ending.badInput("LEVELS has " + levels.length + " values from the " + band + " of " + name(first, thirds)
                    + ", beyond that of "
                    + name(first + room - 1, thirds) + "; at most " + room + " were expected. " + LOWEST + " says where they begin.");
        }
        if (weighted) {
            for (int i = 0; i < levels.length; i++) {
                levels[i] -= Weighting.A.level(Bands.middle(thirds ? first + i : 3 * (first + i) + 1));
            }
        }
        Spectrum spectrum = thirds ? Spectrum.ofThirds(first, levels) : Spectrum.ofOctaves(first, levels);
        int from = thirds ? first / 3 : first;
        int to = thirds ? (first + levels.length - 1) / 3 : first + levels.length - 1;
        List<Named> ratings = List.of(new Named("NR", NoiseRating.of(spectrum)), new Named("NC", NoiseCriterion.of(spectrum)));
        if (format == Format.JSON) {
            console.data().print(json(spectrum, weighted, from, to, ratings));
        } else {
            text(spectrum, from, to, ratings, console);
            if (weighted) {
                console.out().println();
                Wrapping.lines(console.shown(TAKEN_OFF), console.width()).forEach(console.out()::println);
            }
        }
        return ExitCode.FINE;
    }

    private static double[] levels(String text) throws Ending {
        try {
            double[] levels = Units.parseList(text, QuantityKind.LEVEL);
            for (double level : levels) {
                if (Math.abs(level) > LOUDEST) {
                    throw Ending.badInput("LEVELS has " + level + " dB, which no sound has.");
                }
            }
            return levels;
        } catch (UnitException wrong) {
            throw Ending.badInput("LEVELS: " + wrong.getMessage() + ". Write them as one text, for example \"45 48 46 44 dB\".");
        }
    }

    private static int first(Syntax.Given given, boolean thirds) throws Ending {
        double lowest = Amounts.positive(given, LOWEST, QuantityKind.FREQUENCY).orElse(thirds ? 50.0 : 63.0);
        OptionalInt first = BandNames.find(lowest, thirds);
        if (first.isEmpty()) {
            throw Ending.badInput(LOWEST + " \"" + given.option(LOWEST).orElse("") + "\" is no middle frequency of "
                    + (thirds ? "a third-octave" : "an octave") + "; it is one of " + String.join(", ", BandNames.all(thirds)) + ".");
        }
        return first.getAsInt();
    }

    private static String name(int band, boolean thirds) {
        return thirds ? Bands.name(band) : Bands.octaveName(band);
    }

    private static void text(Spectrum spectrum, int from, int to, List<Named> ratings, Console console) {
        List<List<Table.Cell>> rows = new ArrayList<>();
        for (int octave = from; octave <= to; octave++) {
            double level = spectrum.octave(octave);
            rows.add(List.of(Cells.words(Bands.octaveName(octave)), Cells.level(level), Cells.level(spectrum.octave(octave, Weighting.A)),
                    rates(octave, NoiseRating.FIRST, NoiseRating.LAST) ? Cells.rating(NoiseRating.band(octave, level)) : new Table.Empty(),
                    rates(octave, NoiseCriterion.FIRST, NoiseCriterion.LAST) ? Cells.rating(NoiseCriterion.band(octave, level))
                    : new Table.Empty()));
        }
        Cells.print(new Table("Octaves", Cells.columns("#octave", "#level", "#A-weighted", "#NR", "#NC"), rows), console);
        console.out().println();
        List<List<Table.Cell>> all = new ArrayList<>(List.of(
                List.of(Cells.words("A-weighted level"), Cells.level(spectrum.level(Weighting.A)), new Table.Empty()),
                List.of(Cells.words("C-weighted level"), Cells.level(spectrum.level(Weighting.C)), new Table.Empty()),
                List.of(Cells.words("unweighted level"), Cells.level(spectrum.level()), new Table.Empty())));
        ratings.forEach(each -> all.add(List.of(Cells.words(each.label()), each.rating().map(rating -> Cells.rating(rating.value()))
                .orElse(new Table.Empty()), Cells.words(decides(each.rating())))));
        Cells.print(new Table("All together", Cells.columns("what", "#value", "decided by"), all), console);
    }

    private static String decides(Optional<Rating> rating) {
        return rating.map(each -> Bands.octaveName(each.octave()) + (each.tabulated() ? ""
                : "; beyond the curves laid down, continued straight")).orElse("no octave that counts");
    }

    private static boolean rates(int octave, int first, int last) {
        return octave >= first && octave <= last;
    }

    private static String json(Spectrum spectrum, boolean weighted, int from, int to, List<Named> ratings) {
        return JsonDocument.of(json -> {
            json.beginObject().name("format").value(1).name("givenWeighting").value(weighted ? "A" : "none").name("levelA");
            JsonDocument.number(json, spectrum.level(Weighting.A));
            json.name("levelC");
            JsonDocument.number(json, spectrum.level(Weighting.C));
            json.name("levelZ");
            JsonDocument.number(json, spectrum.level());
            for (Named each : ratings) {
                json.name(each.label().toLowerCase(java.util.Locale.ROOT));
                if (each.rating().isEmpty()) {
                    json.nullValue();
                    continue;
                }
                Rating rating = each.rating().get();
                json.beginObject().name("value").value(rating.value()).name("octave").value(Bands.nominalOctave(rating.octave()))
                        .name("tabulated").value(rating.tabulated()).endObject();
            }
            json.name("octaves").beginArray();
            for (int octave = from; octave <= to; octave++) {
                json.beginObject().name("octave").value(Bands.nominalOctave(octave)).name("level");
                JsonDocument.number(json, spectrum.octave(octave));
                json.endObject();
            }
            json.endArray().endObject();
        });
    }
}
