package tramontane.cli.terminal;

import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/** The meaning of option values that several verbs share. */
public final class Options {

    /** The option for the form of output. */
    public static final String FORMAT = "--format";
    /** The option for the units. */
    public static final String UNITS = "--units";
    /** The option for the largest file to read. */
    public static final String MAX_SIZE = "--max-size";
    /** The option for how long an analysis may take. */
    public static final String TIME_LIMIT = "--time-limit";

    /** The largest design file that is read where nothing else is said, bytes. */
    public static final long STANDARD_SIZE = 64L << 20;

    private static final Map<String, Integer> POWERS = Map.of("", 0, "b", 0, "kb", 10, "mb", 20, "gb", 30);

    private Options() {
    }

    /** Forms of output. */
    public enum Format {
        TEXT, JSON, CSV;

        /** As it is written on the command line. */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** The form of output, text where none is given. */
    public static Format format(Syntax.Given given, Format... allowed) throws Ending {
        String word = given.option(FORMAT).orElse(Format.TEXT.word());
        for (Format each : allowed) {
            if (each.word().equals(word)) {
                return each;
            }
        }
        throw wrong(FORMAT, word, List.of(allowed).stream().map(Format::word).toList());
    }

    /** The units to show numbers in. */
    public static UnitSystem units(Syntax.Given given, UnitSystem standard) throws Ending {
        String word = given.option(UNITS).orElse("");
        return switch (word) {
            case "" -> standard;
            case "si" -> UnitSystem.SI;
            case "metric" -> UnitSystem.METRIC;
            case "us" -> UnitSystem.US;
            default -> throw wrong(UNITS, word, List.of("si", "metric", "us"));
        };
    }

    /** The largest file to read, bytes. */
    public static long maxSize(Syntax.Given given) throws Ending {
        String text = given.option(MAX_SIZE).orElse("");
        if (text.isEmpty()) {
            return STANDARD_SIZE;
        }
        int digits = 0;
        while (digits < text.length() && text.charAt(digits) >= '0' && text.charAt(digits) <= '9') {
            digits++;
        }
        Integer power = POWERS.get(text.substring(digits).strip().toLowerCase(Locale.ROOT));
        // 12 digits of GB are still within a long
        if (digits == 0 || digits > 9 || power == null || Long.parseLong(text.substring(0, digits)) == 0) {
            throw Ending.badInput(MAX_SIZE + " \"" + text + "\" is not a size; write a whole number with kB, MB or GB, "
                    + "for example 64MB.");
        }
        return Long.parseLong(text.substring(0, digits)) << power;
    }

    /** How long one analysis may take. */
    public static Duration timeLimit(Syntax.Given given, Duration standard) throws Ending {
        String text = given.option(TIME_LIMIT).orElse("");
        if (text.isEmpty()) {
            return standard;
        }
        try {
            double seconds = Units.parse(text, QuantityKind.TIME);
            if (!(seconds >= 0.001 && seconds <= Integer.MAX_VALUE)) {
                throw Ending.badInput(TIME_LIMIT + " \"" + text + "\" must be at least 1 ms and at most 68 years.");
            }
            return Duration.ofMillis(Math.round(seconds * 1000));
        } catch (UnitException wrong) {
            throw Ending.badInput(TIME_LIMIT + " " + wrong.getMessage() + ".");
        }
    }

    private static Ending wrong(String option, String word, List<String> known) {
        return Ending.badInput(option + " \"" + word + "\" is not known; it is one of " + String.join(", ", known) + ".");
    }
}
