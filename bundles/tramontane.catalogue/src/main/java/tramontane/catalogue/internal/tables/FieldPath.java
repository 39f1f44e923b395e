package tramontane.catalogue.internal.tables;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import tramontane.model.Problem;
import tramontane.model.Value;

/**
 * Where a value stands within a part: {@code width}, {@code sections.drive.supply.voltage}, {@code curves[1].flow}.
 *
 * <p>The first element of a list needs no number: {@code curves.flow}. A name that is no plain word, or that is meant although
 * nothing knows it, stands in quotation marks as in JSON.
 */
record FieldPath(List<Step> steps) {

    private static final Pattern PLAIN = Pattern.compile("[\\p{L}_$][\\p{L}\\p{N}_$-]*");

    /** Most elements of one list: no part has a million curves, but a misspelt heading could ask for them. */
    private static final int MOST_ELEMENTS = 1000;

    private static final int LONGEST_SHOWN = 80;

    /**
     * One name on the way.
     *
     * @param index    which element of the list of that name; below zero where none is said
     * @param isQuoted whether the name stood in quotation marks
     */
    record Step(String name, int index, boolean isQuoted) {

        static Step of(String name) {
            return new Step(name, -1, false);
        }

        Step at(int element) {
            return new Step(name, element, isQuoted);
        }
    }

    FieldPath {
        steps = List.copyOf(steps);
    }

    /** This path and one step more. */
    FieldPath with(Step step) {
        List<Step> longer = new ArrayList<>(steps);
        longer.add(step);
        return new FieldPath(longer);
    }

    Step first() {
        return steps.getFirst();
    }

    Step last() {
        return steps.getLast();
    }

    /** Reads a path; empty where the text is none. */
    static Optional<FieldPath> parse(String text) {
        List<Step> steps = new ArrayList<>();
        int at = 0;
        while (at <= text.length()) {
            boolean isQuoted = at < text.length() && text.charAt(at) == '"';
            int end = isQuoted ? endOfQuote(text, at) : endOfName(text, at);
            String raw = text.substring(at, end);
            Optional<String> name = isQuoted ? Json.read(raw).flatMap(value -> value instanceof Value.Text(String quoted)
                    ? Optional.of(quoted) : Optional.empty()) : Optional.of(raw.strip()).filter(plain -> !plain.isEmpty());
            if (name.isEmpty()) {
                return Optional.empty();
            }
            at = end;
            int index = -1;
            if (at < text.length() && text.charAt(at) == '[') {
                int close = text.indexOf(']', at);
                String digits = close < 0 ? "" : text.substring(at + 1, close);
                if (!digits.matches("[0-9]{1,4}") || Integer.parseInt(digits) >= MOST_ELEMENTS) {
                    return Optional.empty();
                }
                index = Integer.parseInt(digits);
                at = close + 1;
            }
            steps.add(new Step(name.get(), index, isQuoted));
            if (at == text.length()) {
                return Optional.of(new FieldPath(steps));
            }
            if (text.charAt(at) != '.') {
                return Optional.empty();
            }
            at++;
        }
        return Optional.empty();
    }

    private static int endOfName(String text, int from) {
        int at = from;
        while (at < text.length() && ".[]\"".indexOf(text.charAt(at)) < 0) {
            at++;
        }
        return at;
    }

    private static int endOfQuote(String text, int from) {
        int at = from + 1;
        while (at < text.length() && text.charAt(at) != '"') {
            at += text.charAt(at) == '\\' ? 2 : 1;
        }
        return Math.min(at + 1, text.length());
    }

    /** As a heading: {@link #parse} gives the same place again. */
    String text() {
        return steps.stream().map(step -> (step.isQuoted() || !PLAIN.matcher(step.name()).matches()
                ? Json.write(new Value.Text(step.name())) : step.name()) + (step.index() > 0 ? "[" + step.index() + "]" : ""))
                .collect(Collectors.joining("."));
    }

    /** For a sentence: short whatever it holds. */
    String shown() {
        String text = text();
        return text.length() <= LONGEST_SHOWN ? text : text.substring(0, LONGEST_SHOWN) + "…";
    }

    /** Tells it apart from every other path, whatever its names hold. */
    String key() {
        return steps.stream().map(step -> step.name().length() + ":" + step.name() + "[" + Math.max(step.index(), -1) + "]")
                .collect(Collectors.joining("."));
    }

    /** As problems of a part name it, every element of a list with its number. */
    String place() {
        String place = "";
        for (Step step : steps) {
            place = Problem.place(place, step.name()) + (step.index() >= 0 ? "[" + step.index() + "]" : "");
        }
        return place;
    }
}
