package tramontane.reliability.cli.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.Syntax;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.Units;

/** Quantities on the command line. */
final class Amounts {

    /** A million years, s: no life is longer. */
    static final double LONGEST = 8760 * 3600.0 * 1e6;
    static final double STEEPEST = 100;
    static final double FLATTEST = 0.05;

    private Amounts() {
    }

    static Optional<Double> of(Syntax.Given given, String option, QuantityKind kind) throws Ending {
        Optional<String> text = given.option(option);
        return text.isPresent() ? Optional.of(parse(option, text.get(), kind)) : Optional.empty();
    }

    private static double parse(String option, String text, QuantityKind kind) throws Ending {
        try {
            return Units.parse(text, kind);
        } catch (UnitException wrong) {
            throw Ending.badInput(option + " " + wrong.getMessage() + ".");
        }
    }

    /** A quantity above zero, SI; empty where the option is not given. */
    static Optional<Double> positive(Syntax.Given given, String option, QuantityKind kind) throws Ending {
        Optional<Double> value = of(given, option, kind);
        if (value.filter(each -> !(each > 0)).isPresent()) {
            throw Ending.badInput(option + " \"" + given.option(option).orElse("") + "\" must be above "
                    + (kind.equals(QuantityKind.TEMPERATURE) ? "absolute zero." : "zero."));
        }
        return value;
    }

    /** A time above zero and at most a million years, s. */
    static Optional<Double> time(Syntax.Given given, String option) throws Ending {
        Optional<String> text = given.option(option);
        return text.isPresent() ? Optional.of(time(option, text.get())) : Optional.empty();
    }

    private static double time(String option, String text) throws Ending {
        double value = parse(option, text, QuantityKind.TIME);
        if (!(value > 0) || value > LONGEST) {
            throw Ending.badInput(option + " \"" + text + "\" is out of range; it must be above zero and at most 1000000 years.");
        }
        return value;
    }

    /** Times of an option that may be given several times, rising. */
    static List<Double> times(Syntax.Given given, String option) throws Ending {
        List<Double> times = new ArrayList<>();
        for (String text : given.options(option)) {
            times.add(time(option, text));
        }
        return times.stream().distinct().sorted().toList();
    }

    /** A share between 0 and 1, both left out. */
    static Optional<Double> share(Syntax.Given given, String option, String example) throws Ending {
        Optional<Double> value = of(given, option, QuantityKind.FRACTION);
        if (value.filter(each -> !(each > 0 && each < 1)).isPresent()) {
            throw Ending.badInput(option + " \"" + given.option(option).orElse("")
                    + "\" must lie between 0 and 100 %, both left out; write for"
                    + " example \"" + example + "\".");
        }
        return value;
    }

    /** A number within bounds. */
    static Optional<Double> between(Syntax.Given given, String option, double least, double most) throws Ending {
        Optional<Double> value = of(given, option, QuantityKind.NUMBER);
        if (value.filter(each -> !(each >= least && each <= most)).isPresent()) {
            throw Ending.badInput(option + " \"" + given.option(option).orElse("") + "\" is out of range; it must be " + plain(least)
                    + " to "
                    + plain(most) + ".");
        }
        return value;
    }

    /** A Weibull shape, or the spread of a lognormal distribution. */
    static Optional<Double> shape(Syntax.Given given, String option) throws Ending {
        return between(given, option, FLATTEST, STEEPEST);
    }

    /** A whole number. */
    static Optional<Integer> whole(Syntax.Given given, String option, int least, int most) throws Ending {
        Optional<String> text = given.option(option);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        String digits = text.get().strip();
        if (!digits.isEmpty() && digits.length() < 9 && digits.chars().allMatch(c -> c >= '0' && c <= '9')) {
            int number = Integer.parseInt(digits);
            if (number >= least && number <= most) {
                return Optional.of(number);
            }
        }
        throw Ending.badInput(option + " \"" + text.get() + "\" is no whole number from " + least + " to " + most + ".");
    }

    /** One of some words; the first where the option is not given. */
    static String word(Syntax.Given given, String option, String... words) throws Ending {
        String word = given.option(option).map(String::strip).orElse(words[0]);
        for (String each : words) {
            if (each.equals(word)) {
                return word;
            }
        }
        throw Ending.badInput(option + " \"" + word + "\" is not known; it is one of " + String.join(", ", words) + ".");
    }

    /** The value of an option that must be given. */
    static <T> T needed(Optional<T> value, String verb, String option, String what) throws Ending {
        return value.orElseThrow(() -> Ending.badInput(verb + ": " + option + " is missing: " + what + ". See \"tramontane help " + verb
                + "\"."));
    }

    private static String plain(double number) {
        return number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number);
    }
}
