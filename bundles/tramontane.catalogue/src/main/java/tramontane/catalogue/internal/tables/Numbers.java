package tramontane.catalogue.internal.tables;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tramontane.model.FormReader;
import tramontane.model.Value;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Unit;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.Units;

/**
 * Reads the numbers of a table with the decimal mark that the table uses.
 *
 * @param comma  whether its decimal mark is a comma
 * @param reason why a number with the other mark is refused: what goes behind "; expected …"
 */
record Numbers(boolean comma, String reason) {

    /** A number as people write it, thousands separators included, so that they can be named. */
    private static final String NUMBER = "[+\\-−]?[.,]?[0-9][0-9.,]*+(?:['’][0-9][0-9.,]*+){0,20}+(?:[eE][+\\-−]?[0-9]++)?+";
    private static final Pattern NUMBER_FIRST = Pattern.compile("(" + NUMBER + ")(?!/)\\s*(.*)", Pattern.DOTALL);
    private static final Pattern NUMBER_HERE = Pattern.compile("\\s*(" + NUMBER + ")(?!/)");
    private static final Pattern ALONE = Pattern.compile(NUMBER);
    private static final Pattern WITH_COMMA = Pattern.compile("[+\\-−]?[0-9]*,[0-9]+(?:[eE].*)?");
    private static final Pattern WITH_POINT = Pattern.compile("[+\\-−]?[0-9]*\\.[0-9]+(?:[eE].*)?");
    /** What may as well be thousands. */
    private static final Pattern GROUP = Pattern.compile("[+\\-−]?[1-9][0-9]{0,2},[0-9]{3}");

    /** A longer number explains nothing. */
    private static final int LONGEST_EXAMPLE = 20;

    /** With a decimal point. */
    static final Numbers POINT = new Numbers(false, "a decimal point");

    /** Numbers that one cell holds, as they are written in files. */
    record Written(List<String> numbers, String unit, double[] si) {

        int size() {
            return numbers.size();
        }

        /** The number at a place, with its unit. */
        String at(int place) {
            return unit.isEmpty() ? numbers.get(place) : numbers.get(place) + " " + unit;
        }
    }

    /** Whether a text begins with a number. */
    static boolean begins(String text) {
        return NUMBER_FIRST.matcher(text).matches();
    }

    /**
     * Finds the decimal mark of a table.
     *
     * @param cells   the cells that hold numbers, with the line of each
     * @param setting {@code auto}, {@code point} or {@code comma}
     * @param apart   what stands between cells: with a comma, numbers have a point where nothing else is set
     */
    static Numbers of(List<LinedText> cells, String setting, char apart) {
        if (setting.equals("comma")) {
            return new Numbers(true, "a decimal comma, as the settings say");
        }
        if (setting.equals("point")) {
            return new Numbers(false, "a decimal point, as the settings say");
        }
        if (apart == ',') {
            return new Numbers(false, "a decimal point, as commas stand between the cells of this table; or \"decimal\" in the settings");
        }
        Optional<LinedText> comma = first(cells, WITH_COMMA);
        Optional<LinedText> point = first(cells, WITH_POINT);
        if (comma.isPresent() && point.isPresent()) {
            return new Numbers(false, "one decimal mark throughout, as " + FormReader.describe(new Value.Text(point.get().text()))
                    + " in line " + point.get().line() + " has a point");
        }
        if (comma.isPresent() && numbers(cells, WITH_COMMA).allMatch(each -> GROUP.matcher(each.text()).matches())) {
            return new Numbers(false, "it without a thousands separator, or \"decimal\" in the settings to be comma, if that is what it is");
        }
        return comma.isPresent() ? new Numbers(true, "a decimal comma, as in "
                + FormReader.describe(new Value.Text(comma.get().text())) + " in line " + comma.get().line()) : POINT;
    }

    private static Optional<LinedText> first(List<LinedText> cells, Pattern pattern) {
        return numbers(cells, pattern).findFirst();
    }

    private static Stream<LinedText> numbers(List<LinedText> cells, Pattern pattern) {
        return cells.stream().flatMap(cell -> Stream.of(cell.text().strip().split("[\\s;]+"))
                .map(word -> NUMBER_FIRST.matcher(word)).filter(Matcher::matches)
                .map(found -> new LinedText(cell.line(), found.group(1)))).filter(each -> pattern.matcher(each.text()).matches());
    }

    /**
     * One quantity.
     *
     * @param cell   the cell
     * @param kind   what is expected
     * @param column the column's unit; empty for none
     */
    Value quantity(String cell, QuantityKind kind, String column) throws BadCell {
        String text = cell.strip();
        Matcher found = NUMBER_FIRST.matcher(text);
        if (!found.matches()) {
            throw new BadCell(quote(text) + " is not a number; expected " + article(kind.name()) + inUnit(kind, column));
        }
        String number = plain(found.group(1), text);
        String own = found.group(2).strip();
        if (ALONE.matcher(own.split("\\s", 2)[0]).matches() && !own.isEmpty()) {
            throw new BadCell(quote(text) + " has more than one number; expected one, without thousands separators");
        }
        String unit = own.isEmpty() ? column : own;
        String written = own.isEmpty() || !found.group(1).equals(number) ? joined(number, unit) : text;
        double si = parse(written, kind, text)[0];
        return unit.isEmpty() ? literal(number, si) : new Value.Text(written);
    }

    /**
     * Several numbers with one unit.
     *
     * @param cell   numbers with spaces or semicolons between
     * @param kind   what is expected
     * @param column the column's unit; empty for none
     */
    Written list(String cell, QuantityKind kind, String column) throws BadCell {
        String text = cell.strip();
        List<String> numbers = new ArrayList<>();
        String apart = text.replace(';', ' ');
        Matcher found = NUMBER_HERE.matcher(apart).useTransparentBounds(true);
        int end = 0;
        // a loop in code: one in the expression would need as much stack as there are numbers
        while (found.region(end, text.length()).lookingAt() && (end == 0 || Character.isWhitespace(apart.charAt(end)))) {
            numbers.add(plain(found.group(1), text));
            end = found.end();
        }
        if (numbers.isEmpty()) {
            throw new BadCell(quote(text) + " is not a number; expected " + article(kind.name()) + inUnit(kind, column)
                    + ", or several with spaces between");
        }
        String unit = text.substring(end).isBlank() ? column : text.substring(end).strip();
        return new Written(numbers, unit, parse(joined(String.join(" ", numbers), unit), kind, text));
    }

    /** A whole number. */
    Value whole(String cell) throws BadCell {
        String text = cell.strip();
        if (!text.matches("[+\\-−]?[0-9]{1,9}")) {
            throw new BadCell(quote(text) + " is not a whole number; expected one, such as 12");
        }
        return new Value.Num(Integer.toString(Integer.parseInt(text.replace('−', '-'))));
    }

    /** Refuses what is no unit of a kind. */
    static void unit(String unit, QuantityKind kind) throws BadCell {
        try {
            Units.parse("1 " + unit, kind);
        } catch (UnitException e) {
            throw new BadCell("the unit " + quote(unit) + " is not one of " + article(kind.name()) + "; expected "
                    + (symbols(kind).isEmpty() ? "none" : "one of " + symbols(kind)));
        }
    }

    /** The number with a decimal point. */
    private String plain(String number, String cell) throws BadCell {
        String marks = number.replaceAll("[^.,'’]", "");
        if (marks.length() > 1 || marks.contains("'") || marks.contains("’")) {
            boolean same = marks.chars().distinct().count() == 1;
            int last = Math.max(number.lastIndexOf(','), number.lastIndexOf('.'));
            String bare = number.replaceAll("[.,'’]", "");
            int digitsBehind = number.substring(last + 1).replaceAll("['’]", "").length();
            String shown = same ? bare : bare.substring(0, bare.length() - digitsBehind) + (comma ? "," : ".")
                    + bare.substring(bare.length() - digitsBehind);
            throw new BadCell(quote(cell) + " has thousands separators; expected the number without them"
                    + (shown.length() > LONGEST_EXAMPLE ? "" : ", such as " + shown));
        }
        if (number.contains(comma ? "." : ",")) {
            if (!comma && reason.startsWith("it ")) {
                throw new BadCell(quote(cell) + (number.length() > LONGEST_EXAMPLE ? " may have a thousands separator"
                        : " may mean " + number.replace(",", "") + " or " + number.replace(',', '.'))
                        + "; expected " + reason);
            }
            throw new BadCell(quote(cell) + " has a decimal " + (comma ? "point" : "comma") + "; expected " + reason);
        }
        return number.replace(',', '.');
    }

    private double[] parse(String written, QuantityKind kind, String cell) throws BadCell {
        try {
            return Units.parseList(written, kind);
        } catch (UnitException e) {
            if (e.getMessage().contains("has no unit")) {
                throw BadCell.withoutUnit(quote(cell) + " has no unit; expected one of " + symbols(kind)
                        + ", behind the number, in the heading or in the settings");
            }
            // what was read may have another decimal mark or the column's unit; quoted is what stands there
            throw new BadCell(quote(cell) + e.getMessage().substring(e.getMessage().lastIndexOf('"') + 1));
        }
    }

    private static String inUnit(QuantityKind kind, String column) {
        return column.isEmpty() ? symbols(kind).isEmpty() ? "" : ", a number with one of " + symbols(kind) : " in " + column;
    }

    private static String symbols(QuantityKind kind) {
        return Units.of(kind).stream().map(Unit::symbol).filter(symbol -> !symbol.isEmpty()).collect(Collectors.joining(", "));
    }

    private static String joined(String numbers, String unit) {
        return unit.isEmpty() ? numbers : numbers + " " + unit;
    }

    private static Value literal(String number, double si) {
        return Value.Num.numberEnd(number, 0) == number.length() && number.length() <= Value.Num.LONGEST ? new Value.Num(number)
                : Value.Num.of(si);
    }

    /** A list as it stands in a file. */
    static Value value(Written list) {
        return list.unit().isEmpty() ? new Value.Items(range(list)) : new Value.Text(String.join(" ", list.numbers()) + " " + list.unit());
    }

    private static List<Value> range(Written list) {
        List<Value> values = new ArrayList<>();
        for (int i = 0; i < list.size(); i++) {
            values.add(literal(list.numbers().get(i), list.si()[i]));
        }
        return values;
    }

    /** A number for a cell: all digits that count and no noise behind them. */
    static String shown(double number) {
        if (number == 0) {
            return "0";
        }
        BigDecimal rounded = new BigDecimal(number).round(new MathContext(15, RoundingMode.HALF_EVEN)).stripTrailingZeros();
        int magnitude = rounded.precision() - rounded.scale() - 1;
        return magnitude < -4 || magnitude > 6 ? rounded.toString().replace("E", "e") : rounded.toPlainString();
    }

    private static String quote(String text) {
        return FormReader.describe(new Value.Text(text));
    }

    static String article(String noun) {
        return ("aeiou".indexOf(Character.toLowerCase(noun.charAt(0))) >= 0 ? "an " : "a ") + noun;
    }

    /** A text and the line it stands in. */
    record LinedText(int line, String text) {
    }
}
