package tramontane.catalogue.internal;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/** What a filter asks of a part; holds no catalogue, so that one filter serves several. */
public sealed interface PartQuestion {

    /** Two quantities that differ by less, over the larger, are equal: the same length in mm and in inches. */
    double EQUAL = 1e-9;

    /**
     * The values of the parts.
     *
     * @param columns the values
     * @param column  the column of a field; empty where no part has it
     * @param within  the columns of all fields within an object
     */
    record Values(Columns columns, Function<String, OptionalInt> column, Function<String, int[]> within) {
    }

    /** The test on some parts. */
    IntPredicate on(Values values);

    /** Why a part does not pass; empty where it does. */
    Optional<String> why(Values values, int part);

    /** What is wanted, in words that go behind "wanted". */
    String wanted();

    /** What a part must not fulfil. */
    record Not(PartQuestion test) implements PartQuestion {

        @Override
        public IntPredicate on(Values values) {
            return test.on(values).negate();
        }

        @Override
        public Optional<String> why(Values values, int part) {
            return test.on(values).test(part) ? Optional.of(test.is(values, part) + ", wanted not " + test.wanted()) : Optional.empty();
        }

        @Override
        public String wanted() {
            return "not " + test.wanted();
        }

        @Override
        public String is(Values values, int part) {
            return test.is(values, part);
        }
    }

    /** What a part says on the matter: {@code width is 92.0 mm}. */
    String is(Values values, int part);

    /** All of several tests. */
    record All(List<PartQuestion> tests) implements PartQuestion {

        public All {
            tests = List.copyOf(tests);
        }

        @Override
        public IntPredicate on(Values values) {
            return tests.stream().map(test -> test.on(values)).reduce(part -> true, IntPredicate::and);
        }

        @Override
        public Optional<String> why(Values values, int part) {
            return tests.stream().flatMap(test -> test.why(values, part).stream()).findFirst();
        }

        @Override
        public String wanted() {
            return tests.isEmpty() ? "anything" : "all of (" + tests.stream().map(test -> test.field() + test.wanted())
                    .collect(Collectors.joining("; ")) + ")";
        }

        @Override
        public String is(Values values, int part) {
            return tests.isEmpty() ? "it is a part" : tests.stream().map(test -> test.is(values, part)).collect(Collectors.joining(" and "));
        }
    }

    /** One of several tests. */
    record Any(List<PartQuestion> tests) implements PartQuestion {

        public Any {
            tests = List.copyOf(tests);
        }

        @Override
        public IntPredicate on(Values values) {
            return tests.stream().map(test -> test.on(values)).reduce(IntPredicate::or).orElseThrow();
        }

        @Override
        public Optional<String> why(Values values, int part) {
            List<Optional<String>> reasons = tests.stream().map(test -> test.why(values, part)).toList();
            return reasons.stream().allMatch(Optional::isPresent) ? Optional.of(reasons.stream().map(Optional::get)
                    .collect(Collectors.joining("; and "))) : Optional.empty();
        }

        @Override
        public String wanted() {
            return "any of (" + tests.stream().map(test -> test.field() + test.wanted()).collect(Collectors.joining("; ")) + ")";
        }

        @Override
        public String is(Values values, int part) {
            IntPredicate[] passes = tests.stream().map(test -> test.on(values)).toArray(IntPredicate[]::new);
            return tests.get(Math.max(0, IntStream.range(0, passes.length).filter(i -> passes[i].test(part)).findFirst()
                    .orElse(0))).is(values, part);
        }
    }

    /** The field that a simple test is about, with a space behind; nothing for others. */
    default String field() {
        return "";
    }

    /** How a quantity is compared. */
    enum Comparison {
        /** Equal. */
        EQUALS("="),
        /** Not equal. */
        OTHER("other than "),
        /** Less. */
        LESS("less than "),
        /** Less or equal. */
        AT_MOST("at most "),
        /** More. */
        MORE("more than "),
        /** More or equal. */
        AT_LEAST("at least ");

        private final String words;

        Comparison(String words) {
            this.words = words.equals("=") ? "" : words;
        }

        private boolean holds(double value, double limit) {
            // a tolerance on both sides of equality, so that exactly one of <, = and > holds; false for NaN
            double near = EQUAL * Math.max(Math.abs(value), Math.abs(limit));
            return switch (this) {
                case EQUALS -> Math.abs(value - limit) <= near;
                case OTHER -> Math.abs(value - limit) > near;
                case LESS -> value < limit - near;
                case AT_MOST -> value <= limit + near;
                case MORE -> value > limit + near;
                case AT_LEAST -> value >= limit - near;
            };
        }
    }

    /**
     * A quantity against a limit.
     *
     * @param path       path of the field
     * @param name       the field as it was written
     * @param kind       kind of quantity
     * @param comparison how it is compared
     * @param limit      the limit, SI
     */
    record Limit(String path, String name, QuantityKind kind, Comparison comparison, double limit) implements PartQuestion {

        @Override
        public IntPredicate on(Values values) {
            OptionalInt column = values.column.apply(path);
            if (column.isEmpty()) {
                return part -> false;
            }
            int at = column.getAsInt();
            return part -> comparison.holds(values.columns.number(at, part), limit);
        }

        @Override
        public Optional<String> why(Values values, int part) {
            return on(values).test(part) ? Optional.empty()
                    : Optional.of(is(values, part) + ", wanted " + comparison.words + shown(limit, kind, digits(values, part)));
        }

        /** So many digits that the value does not look like the limit. */
        private int digits(Values values, int part) {
            double value = PartQuestion.number(values, path, part);
            int digits = 3;
            while (digits < 12 && value != limit && !Double.isNaN(value) && shown(value, kind, digits).equals(shown(limit, kind, digits))) {
                digits++;
            }
            return digits;
        }

        @Override
        public String wanted() {
            return comparison.words + shown(limit, kind, 3);
        }

        @Override
        public String is(Values values, int part) {
            return said(values, path, name, kind, part, digits(values, part));
        }

        @Override
        public String field() {
            return name + " ";
        }
    }

    /**
     * A quantity within two limits, both included.
     *
     * @param path  path of the field
     * @param name  the field as it was written
     * @param kind  kind of quantity
     * @param least lower limit, SI
     * @param most  upper limit, SI
     */
    record Between(String path, String name, QuantityKind kind, double least, double most) implements PartQuestion {

        @Override
        public IntPredicate on(Values values) {
            return new Limit(path, name, kind, Comparison.AT_LEAST, least).on(values)
                    .and(new Limit(path, name, kind, Comparison.AT_MOST, most).on(values));
        }

        @Override
        public Optional<String> why(Values values, int part) {
            return on(values).test(part) ? Optional.empty() : Optional.of(is(values, part) + ", wanted " + wanted());
        }

        @Override
        public String wanted() {
            return "from " + shown(least, kind, 3) + " to " + shown(most, kind, 3);
        }

        @Override
        public String is(Values values, int part) {
            double value = PartQuestion.number(values, path, part);
            double near = Math.abs(value - least) < Math.abs(value - most) ? least : most;
            return said(values, path, name, kind, part, new Limit(path, name, kind, Comparison.AT_MOST, near).digits(values, part));
        }

        @Override
        public String field() {
            return name + " ";
        }
    }

    /**
     * A quantity that is one of several.
     *
     * @param path   path of the field
     * @param name   the field as it was written
     * @param kind   kind of quantity
     * @param wished the values, SI
     */
    record OneNumber(String path, String name, QuantityKind kind, List<Double> wished) implements PartQuestion {

        public OneNumber {
            wished = List.copyOf(wished);
        }

        @Override
        public IntPredicate on(Values values) {
            return wished.stream().map(each -> new Limit(path, name, kind, Comparison.EQUALS, each).on(values)).reduce(IntPredicate::or)
                    .orElseThrow();
        }

        @Override
        public Optional<String> why(Values values, int part) {
            return on(values).test(part) ? Optional.empty() : Optional.of(is(values, part) + ", wanted " + wanted());
        }

        @Override
        public String wanted() {
            return wished.stream().map(each -> shown(each, kind, 3)).collect(Collectors.joining(" or "));
        }

        @Override
        public String is(Values values, int part) {
            return said(values, path, name, kind, part, 3);
        }

        @Override
        public String field() {
            return name + " ";
        }
    }

    /**
     * A text that is one of several.
     *
     * @param path   path of the field
     * @param name   the field as it was written
     * @param wished the texts
     * @param negate whether it is to be another one
     */
    record OneText(String path, String name, List<String> wished, boolean negate) implements PartQuestion {

        public OneText {
            wished = List.copyOf(wished);
        }

        @Override
        public IntPredicate on(Values values) {
            OptionalInt column = values.column.apply(path);
            if (column.isEmpty()) {
                return part -> false;
            }
            int at = column.getAsInt();
            String[] all = wished.toArray(String[]::new);
            return part -> {
                String text = values.columns.text(at, part);
                if (text == null) {
                    return false;
                }
                for (String each : all) {
                    if (text.equalsIgnoreCase(each)) {
                        return !negate;
                    }
                }
                return negate;
            };
        }

        @Override
        public Optional<String> why(Values values, int part) {
            return on(values).test(part) ? Optional.empty() : Optional.of(is(values, part) + ", wanted " + wanted());
        }

        @Override
        public String wanted() {
            return (negate ? "other than " : "") + String.join(" or ", wished);
        }

        @Override
        public String is(Values values, int part) {
            return said(values, path, name, part);
        }

        @Override
        public String field() {
            return name + " ";
        }
    }

    /**
     * A text within a text.
     *
     * @param path   path of the field
     * @param name   the field as it was written
     * @param wished what it is to contain
     */
    record Contains(String path, String name, String wished) implements PartQuestion {

        @Override
        public IntPredicate on(Values values) {
            OptionalInt column = values.column.apply(path);
            if (column.isEmpty()) {
                return part -> false;
            }
            int at = column.getAsInt();
            return part -> {
                String text = values.columns.text(at, part);
                return text != null && contains(text, wished);
            };
        }

        private static boolean contains(String text, String wished) {
            for (int i = 0; i <= text.length() - wished.length(); i++) {
                if (text.regionMatches(true, i, wished, 0, wished.length())) {
                    return true;
                }
            }
            return false;
        }

        @Override
        public Optional<String> why(Values values, int part) {
            return on(values).test(part) ? Optional.empty() : Optional.of(is(values, part) + ", wanted " + wanted());
        }

        @Override
        public String wanted() {
            return "one with \"" + wished + "\" in it";
        }

        @Override
        public String is(Values values, int part) {
            return said(values, path, name, part);
        }

        @Override
        public String field() {
            return name + " ";
        }
    }

    /**
     * A field, or anything in an object, that is given.
     *
     * @param path path of the field or object
     * @param name as it was written
     */
    record Has(String path, String name) implements PartQuestion {

        @Override
        public IntPredicate on(Values values) {
            OptionalInt own = values.column.apply(path);
            int[] columns = own.isPresent() ? new int[] {own.getAsInt()} : values.within.apply(path);
            return part -> Arrays.stream(columns).anyMatch(column -> !Double.isNaN(values.columns.number(column, part))
                    || values.columns.text(column, part) != null);
        }

        @Override
        public Optional<String> why(Values values, int part) {
            return on(values).test(part) ? Optional.empty() : Optional.of(is(values, part));
        }

        @Override
        public String wanted() {
            return "given";
        }

        @Override
        public String is(Values values, int part) {
            return name + (on(values).test(part) ? " is given" : " is not given");
        }

        @Override
        public String field() {
            return name + " ";
        }
    }

    private static double number(Values values, String path, int part) {
        OptionalInt column = values.column.apply(path);
        return column.isPresent() ? values.columns.number(column.getAsInt(), part) : Double.NaN;
    }

    private static String said(Values values, String path, String name, QuantityKind kind, int part, int digits) {
        double number = number(values, path, part);
        return Double.isNaN(number) ? said(values, path, name, part) : name + " is " + shown(number, kind, digits);
    }

    private static String said(Values values, String path, String name, int part) {
        OptionalInt column = values.column.apply(path);
        String text = column.isPresent() ? values.columns.text(column.getAsInt(), part) : null;
        return name + (text == null ? " is not given" : " is " + text);
    }

    private static String shown(double si, QuantityKind kind, int digits) {
        return Units.format(si, kind, UnitSystem.METRIC, digits);
    }
}
