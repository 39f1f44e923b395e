package tramontane.reliability.statistics;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import tramontane.model.Problem;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Unit;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.Units;

/** Numbers of one text, with a decimal comma or point alike in all of them, and what is wrong with them. */
final class LifeCells {

    /** Problems beyond these are counted only. */
    static final int MOST_PROBLEMS = 100;

    private static final Pattern NUMBER = Pattern.compile("([+\\-−]?(?:\\d+(?:[.,]\\d*)?|[.,]\\d+)(?:[eE][+\\-−]?\\d+)?)(.*)",
            Pattern.DOTALL);
    /** Behind which a comma may part thousands. */
    private static final Pattern THOUSANDS = Pattern.compile("[+\\-−]?[1-9]\\d{0,2},\\d{3}");
    private static final int LONGEST_QUOTE = 40;
    private static final double LONGEST_TIME = 1e6 * 8760 * 3600;
    private static final int LONGEST_CELL = 200;

    private final List<Problem> problems = new ArrayList<>();
    private final List<Problem> cautions = new ArrayList<>();
    /** Commas that may part thousands; other commas in the text tell that they do not. */
    private final List<Problem> unclear = new ArrayList<>();
    private int beyond;
    private Optional<String> comma = Optional.empty();
    private Optional<String> point = Optional.empty();

    /** A number as written, and what stands behind it. */
    record Written(String number, String behind) {
    }

    void error(String place, String message) {
        if (problems.size() < MOST_PROBLEMS) {
            problems.add(Problem.error(place, message));
        } else {
            beyond++;
        }
    }

    void caution(String place, String message) {
        if (cautions.size() < MOST_PROBLEMS) {
            cautions.add(Problem.caution(place, message));
        }
    }

    boolean sound() {
        return problems.isEmpty();
    }

    /** All, errors first. */
    List<Problem> all(String name) {
        List<Problem> all = new ArrayList<>(problems);
        if (beyond > 0) {
            all.add(Problem.error(name, "has " + beyond + " more mistakes; these are not listed"));
        }
        all.addAll(cautions);
        return all;
    }

    /** Number and rest; empty where no number begins it, which is a problem then. */
    Optional<Written> written(String place, String cell, String expected) {
        Matcher matcher = NUMBER.matcher(cell.length() > LONGEST_CELL ? cell.substring(0, LONGEST_CELL) : cell);
        if (!matcher.matches()) {
            error(place, quote(cell) + " is not a number; expected " + expected);
            return Optional.empty();
        }
        String number = matcher.group(1);
        if (THOUSANDS.matcher(number).matches()) {
            unclear.add(Problem.error(place, quote(number) + " may be " + number.replace(',', '.') + " or " + number.replace(",", "")
                    + "; expected it without a comma"));
        } else if (number.contains(",")) {
            comma = comma.or(() -> Optional.of(place + " has " + quote(number)));
        } else if (number.contains(".")) {
            point = point.or(() -> Optional.of(place + " has " + quote(number)));
        }
        return Optional.of(new Written(number.replace(',', '.').replace('−', '-'), matcher.group(2).strip()));
    }

    /** Whether decimals are written in one way, and one that is clear; a problem where not. Called when all numbers were seen. */
    void oneDecimalSign(String name) {
        if (comma.isEmpty()) {
            unclear.forEach(each -> error(each.place(), each.message()));
        }
        if (comma.isPresent() && point.isPresent()) {
            error(name, "decimals are written with a comma and with a point: " + comma.get() + ", " + point.get()
                    + "; expected one of the two throughout");
        }
    }

    /** The unit of a kind by one of its spellings. */
    static Optional<Unit> unit(String symbol, QuantityKind kind) {
        if (symbol.isBlank() || symbol.length() > LONGEST_CELL || !Character.isLetter(symbol.strip().charAt(0))
                && "°º˚%".indexOf(symbol.strip().charAt(0)) < 0) {
            return Optional.empty();
        }
        try {
            double one = Units.parse("1 " + symbol, kind);
            return Units.of(kind).stream().filter(each -> !each.symbol().isEmpty() && each.toSi(1) == one).findFirst();
        } catch (UnitException wrong) {
            return Optional.empty();
        }
    }

    static String units(QuantityKind kind) {
        return Units.of(kind).stream().map(Unit::symbol).filter(symbol -> !symbol.isEmpty()).collect(Collectors.joining(", "));
    }

    /** A number in SI; empty where it is out of range, which is a problem then. */
    OptionalDouble si(String place, String number, Unit unit, QuantityKind kind) {
        try {
            double si = Units.parse(number + " " + unit.symbol(), kind);
            if (kind.equals(QuantityKind.TIME) && si > LONGEST_TIME) {
                error(place, "is " + quote(number + " " + unit.symbol()) + "; expected a time of 1000000 years at most");
                return OptionalDouble.empty();
            }
            return OptionalDouble.of(si);
        } catch (UnitException wrong) {
            error(place, wrong.getMessage());
            return OptionalDouble.empty();
        }
    }

    /** The text between quotation marks, short and in one line whatever it holds. */
    static String quote(String text) {
        StringBuilder quoted = new StringBuilder("\"");
        for (int i = 0; i < text.length(); i++) {
            if (i == LONGEST_QUOTE) {
                quoted.append('…');
                break;
            }
            char c = text.charAt(i);
            quoted.append(Character.isISOControl(c) || Character.isSurrogate(c) ? '?' : c);
        }
        return quoted.append('"').toString();
    }
}
