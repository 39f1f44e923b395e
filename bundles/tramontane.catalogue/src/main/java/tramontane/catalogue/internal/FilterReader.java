package tramontane.catalogue.internal;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Spelling;
import tramontane.model.Value;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.Units;

/** Reads a filter as people write it: a descent through or, and, not and conditions. */
public final class FilterReader {

    private static final Set<String> JOINS = Set.of("and", "or");

    /** Parentheses and "not" within one another. */
    private static final int DEEPEST = 100;

    /** What is wrong, at one place of the text. */
    private static final class Wrong extends Exception {
        private static final long serialVersionUID = 1L;
        private final int at;

        Wrong(int at, String message) {
            super(message);
            this.at = at;
        }
    }

    /**
     * A field that there is.
     *
     * @param path its path
     * @param kind its kind of quantity; empty for a text
     */
    public record Known(String path, Optional<QuantityKind> kind) {
    }

    /**
     * What was read.
     *
     * @param test    the test; empty where the text is none
     * @param problem what is wrong with it
     */
    public record Result(Optional<PartQuestion> test, Optional<Problem> problem) {
    }

    /** A value as it was written: from where, what, and whether between quotation marks. */
    private record Written(int at, String text, boolean quoted) {
    }

    private final String text;
    private final Function<String, Optional<Known>> fields;
    private final Supplier<Collection<String>> names;
    private int at;
    private int depth;

    private FilterReader(String text, Function<String, Optional<Known>> fields, Supplier<Collection<String>> names) {
        this.text = text;
        this.fields = fields;
        this.names = names;
    }

    /**
     * Reads a filter.
     *
     * @param text   as people write it
     * @param fields finds a field by its name
     * @param names  the names of all fields, asked where one is misspelt
     */
    public static Result read(String text, Function<String, Optional<Known>> fields, Supplier<Collection<String>> names) {
        FilterReader reader = new FilterReader(text, fields, names);
        try {
            return new Result(Optional.of(reader.whole()), Optional.empty());
        } catch (Wrong e) {
            return new Result(Optional.empty(), Optional.of(Problem.error("character " + (e.at + 1), e.getMessage())));
        }
    }

    private PartQuestion whole() throws Wrong {
        space();
        if (at == text.length()) {
            return new PartQuestion.All(List.of());
        }
        PartQuestion test = any();
        if (at < text.length()) {
            throw new Wrong(at, quote(text.charAt(at) == ')' ? ")" : rest()) + " follows a whole condition; expected and, or, or nothing more");
        }
        return test;
    }

    private PartQuestion any() throws Wrong {
        List<PartQuestion> tests = new ArrayList<>(List.of(all()));
        while (word("or")) {
            tests.add(all());
        }
        return tests.size() == 1 ? tests.getFirst() : new PartQuestion.Any(tests);
    }

    private PartQuestion all() throws Wrong {
        List<PartQuestion> tests = new ArrayList<>(List.of(one()));
        while (word("and")) {
            tests.add(one());
        }
        return tests.size() == 1 ? tests.getFirst() : new PartQuestion.All(tests);
    }

    private PartQuestion one() throws Wrong {
        if (++depth > DEEPEST) {
            throw new Wrong(at, "is nested too deep; expected at most " + DEEPEST + " levels");
        }
        PartQuestion test = simple();
        depth--;
        return test;
    }

    private PartQuestion simple() throws Wrong {
        if (word("not")) {
            return new PartQuestion.Not(one());
        }
        if (at < text.length() && text.charAt(at) == '(') {
            int open = at++;
            space();
            PartQuestion test = any();
            if (at == text.length() || text.charAt(at) != ')') {
                throw new Wrong(at < text.length() ? at : open, "the parenthesis at character " + (open + 1)
                        + " is not closed; expected and, or, or a closing parenthesis");
            }
            at++;
            space();
            return test;
        }
        if (word("has")) {
            int start = at;
            String name = name();
            if (fields.apply(name).isEmpty() && names.get().stream().noneMatch(each -> within(each, name))) {
                throw unknown(start, name);
            }
            return new PartQuestion.Has(fields.apply(name).map(Known::path).orElse(name), name);
        }
        int start = at;
        String name = name();
        Known field = fields.apply(name).orElseThrow(() -> unknown(start, name));
        if (word("in")) {
            return in(field, name);
        }
        return comparison(field, name);
    }

    private static boolean within(String field, String object) {
        return field.startsWith(object + ".") || ("sections." + field).startsWith(object + ".");
    }

    private Wrong unknown(int start, String name) {
        return new Wrong(start, quote(name) + " is no field of the parts" + Spelling.hint(name, names.get()) + "; expected one such as width, "
                + "freeDelivery or bearing");
    }

    private String name() throws Wrong {
        int start = at;
        while (at < text.length() && (Character.isLetterOrDigit(text.charAt(at)) || "_-.".indexOf(text.charAt(at)) >= 0)) {
            at++;
        }
        if (at == start) {
            throw new Wrong(start, (at == text.length() ? "the text ends" : quote(rest()) + " stands here") + "; expected a field, not, has or (");
        }
        String name = text.substring(start, at);
        space();
        return name;
    }

    private PartQuestion comparison(Known field, String name) throws Wrong {
        int start = at;
        while (at < text.length() && "=!<>~≤≥≠".indexOf(text.charAt(at)) >= 0) {
            at++;
        }
        String sign = text.substring(start, at);
        space();
        if (sign.isEmpty()) {
            throw new Wrong(start, (start == text.length() ? "the text ends" : quote(rest()) + " stands here") + " behind " + name
                    + "; expected one of = != < <= > >= ~ in");
        }
        PartQuestion.Comparison comparison = switch (sign) {
            case "=", "==" -> PartQuestion.Comparison.EQUALS;
            case "!=", "≠" -> PartQuestion.Comparison.OTHER;
            case "<" -> PartQuestion.Comparison.LESS;
            case "<=", "≤" -> PartQuestion.Comparison.AT_MOST;
            case ">" -> PartQuestion.Comparison.MORE;
            case ">=", "≥" -> PartQuestion.Comparison.AT_LEAST;
            case "~" -> null;
            default -> throw new Wrong(start, quote(sign) + " is no comparison; expected one of = != < <= > >= ~ in");
        };
        if (field.kind().isPresent()) {
            if (comparison == null) {
                throw new Wrong(start, name + " is a " + field.kind().get().name() + ", in which nothing can be contained; expected one of = "
                        + "!= < <= > >= in");
            }
            return new PartQuestion.Limit(field.path(), name, field.kind().get(), comparison, quantity(value(false), field.kind().get()));
        }
        Written wished = value(false);
        return switch (comparison) {
            case null -> new PartQuestion.Contains(field.path(), name, wished.text());
            case EQUALS -> new PartQuestion.OneText(field.path(), name, List.of(wished.text()), false);
            case OTHER -> new PartQuestion.OneText(field.path(), name, List.of(wished.text()), true);
            default -> throw new Wrong(start, name + " is a text, which is neither less nor more; expected one of = != ~ in");
        };
    }

    private PartQuestion in(Known field, String name) throws Wrong {
        List<Written> wished = new ArrayList<>();
        wished.add(value(true));
        while (at < text.length() && text.charAt(at) == ',') {
            at++;
            space();
            wished.add(value(true));
        }
        if (field.kind().isEmpty()) {
            return new PartQuestion.OneText(field.path(), name, wished.stream().map(Written::text).toList(), false);
        }
        QuantityKind kind = field.kind().get();
        Written first = wished.getFirst();
        int dots = first.text().indexOf("..");
        if (wished.size() == 1 && dots >= 0) {
            String low = first.text().substring(0, dots).strip();
            Written high = new Written(first.at() + dots + 2, first.text().substring(dots + 2).strip(), false);
            double most = quantity(high, kind);
            // 24..48 V: the unit stands once
            boolean bare = Value.Num.numberEnd(low, 0) == low.length() && !low.isEmpty();
            String unit = high.text().substring(Value.Num.numberEnd(high.text(), 0));
            double least = quantity(new Written(first.at(), bare ? low + unit : low, false), kind);
            if (least > most) {
                throw new Wrong(first.at(), quote(first.text()) + " begins above its end; expected the smaller value first");
            }
            return new PartQuestion.Between(field.path(), name, kind, least, most);
        }
        List<Double> numbers = new ArrayList<>();
        for (Written each : wished) {
            numbers.add(quantity(each, kind));
        }
        return new PartQuestion.OneNumber(field.path(), name, kind, numbers);
    }

    private static double quantity(Written written, QuantityKind kind) throws Wrong {
        try {
            return Units.parse(written.text(), kind);
        } catch (UnitException e) {
            throw new Wrong(written.at(), e.getMessage());
        }
    }

    /** A value: up to the next and, or, closing parenthesis, or comma in a list. */
    private Written value(boolean list) throws Wrong {
        int start = at;
        if (at < text.length() && (text.charAt(at) == '"' || text.charAt(at) == '\'')) {
            int end = text.indexOf(text.charAt(at), at + 1);
            if (end < 0) {
                throw new Wrong(start, "the quotation mark is not closed; expected another one");
            }
            at = end + 1;
            space();
            return new Written(start, text.substring(start + 1, end), true);
        }
        int open = 0;
        while (at < text.length()) {
            char c = text.charAt(at);
            if (c == ')' && open == 0 || c == ',' && list || (isSpace(c) || at == start) && joins()) {
                break;
            }
            open += c == '(' ? 1 : c == ')' ? -1 : 0;
            at++;
        }
        String value = text.substring(start, at).strip();
        if (value.isEmpty()) {
            throw new Wrong(start, (start == text.length() ? "the text ends" : quote(rest()) + " stands here") + "; expected a value");
        }
        space();
        return new Written(start, value, false);
    }

    /** Whether "and" or "or" follows the space here. */
    private boolean joins() {
        int start = at;
        while (start < text.length() && isSpace(text.charAt(start))) {
            start++;
        }
        int end = start;
        while (end < text.length() && Character.isLetter(text.charAt(end))) {
            end++;
        }
        return JOINS.contains(text.substring(start, end)) && ends(end);
    }

    private boolean ends(int end) {
        return end == text.length() || isSpace(text.charAt(end)) || text.charAt(end) == '(';
    }

    private boolean word(String word) {
        if (text.startsWith(word, at) && ends(at + word.length())) {
            at += word.length();
            space();
            return true;
        }
        return false;
    }

    private void space() {
        while (at < text.length() && isSpace(text.charAt(at))) {
            at++;
        }
    }

    private static boolean isSpace(char c) {
        return Character.isWhitespace(c) || Character.isSpaceChar(c);
    }

    private String rest() {
        return text.substring(at);
    }

    private static String quote(String text) {
        return FormReader.describe(new Value.Text(text));
    }
}
