package tramontane.acoustics.cli.internal;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.Syntax;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.Units;

/** Quantities on the command line. */
final class Amounts {

    /** As data sheets of microphones state it. */
    private static final Pattern RELATIVE = Pattern.compile("([+-]?[0-9.]+)\\s*dB(\\s*re\\s*1?\\s*V/Pa)?");
    private static final Pattern PER_PASCAL = Pattern.compile("(.*)/\\s*Pa");
    private static final double LOUDEST = 300;

    private Amounts() {
    }

    /** A quantity, SI; empty where the option is not given. */
    static Optional<Double> of(Syntax.Given given, String option, QuantityKind kind) throws Ending {
        Optional<String> text = given.option(option);
        try {
            return text.map(written -> Units.parse(written, kind));
        } catch (UnitException wrong) {
            throw Ending.badInput(option + " " + wrong.getMessage() + ".");
        }
    }

    /** The same above zero. */
    static Optional<Double> positive(Syntax.Given given, String option, QuantityKind kind) throws Ending {
        Optional<Double> value = of(given, option, kind);
        if (value.filter(each -> !(each > 0)).isPresent()) {
            throw Ending.badInput(option + " \"" + given.option(option).orElse("") + "\" must be above zero.");
        }
        return value;
    }

    /** A level that can be, dB. */
    static Optional<Double> level(Syntax.Given given, String option) throws Ending {
        return between(given, option, QuantityKind.LEVEL, -LOUDEST, LOUDEST, "dB");
    }

    /** A quantity between two others, SI. */
    static Optional<Double> between(Syntax.Given given, String option, QuantityKind kind, double least, double most,
            String unit) throws Ending {
        Optional<Double> value = of(given, option, kind);
        if (value.filter(each -> !(each >= least && each <= most)).isPresent()) {
            throw Ending.badInput(option + " \"" + given.option(option).orElse("") + "\" is out of range; it must be " + plain(least)
                    + " to " + plain(most) + " " + unit + ".");
        }
        return value;
    }

    /** A whole number. */
    static Optional<Integer> whole(Syntax.Given given, String option, int least, int most) throws Ending {
        Optional<String> text = given.option(option);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        String digits = text.get().strip();
        if (!digits.isEmpty() && digits.length() < 6 && digits.chars().allMatch(c -> c >= '0' && c <= '9')) {
            int number = Integer.parseInt(digits);
            if (number >= least && number <= most) {
                return Optional.of(number);
            }
        }
        throw Ending.badInput(option + " \"" + text.get() + "\" is no whole number from " + least + " to " + most + ".");
    }

    /** Sensitivity of a microphone, V/Pa: {@code 50 mV/Pa}, {@code -26 dB re 1 V/Pa}. */
    static Optional<Double> sensitivity(Syntax.Given given, String option) throws Ending {
        Optional<String> text = given.option(option);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        String written = text.get().strip();
        Matcher relative = RELATIVE.matcher(written);
        Matcher voltage = PER_PASCAL.matcher(written);
        try {
            double value = relative.matches() ? Math.pow(10, Units.parse(relative.group(1), QuantityKind.NUMBER) / 20)
                    : voltage.matches() ? Units.parse(voltage.group(1).strip(), QuantityKind.VOLTAGE) : Double.NaN;
            if (value > 0 && value < Double.POSITIVE_INFINITY) {
                return Optional.of(value);
            }
        } catch (UnitException wrong) {
            // said below
        }
        throw Ending.badInput(option + " \"" + text.get()
                + "\" is no sensitivity; write for example \"50 mV/Pa\" or \"-26 dB re 1 V/Pa\".");
    }

    private static String plain(double number) {
        return number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number);
    }
}
