package tramontane.selection.desktop.internal;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BiPredicate;
import java.util.regex.Pattern;
import tramontane.catalogue.Catalogue;
import tramontane.catalogue.PartFilter;
import tramontane.model.Problem;

/**
 * What is looked for in a table of parts: plain words, all of which must occur, or a filter as catalogues are asked.
 *
 * @param passes  whether a row passes, by its part's id and its text in lower case
 * @param problem what is wrong with a filter; it then takes everything, so that nothing vanishes while it is being typed
 */
record Finder(BiPredicate<String, String> passes, Optional<String> problem) {

    /** What plain words do not have: a comparison, or a word of the language at its place. */
    private static final Pattern FILTER = Pattern.compile("[=<>~]|^\\s*(not\\s+)?has\\s+\\S|\\sin\\s+\\S");

    static final Finder ALL = new Finder((part, text) -> true, Optional.empty());

    /** Whether a text is meant as a filter, not as words. */
    static boolean isFilter(String text) {
        return FILTER.matcher(text).find();
    }

    /**
     * Reads what was typed.
     *
     * @param text      as people write it
     * @param catalogue what says which fields there are; without it a filter cannot be read
     */
    static Finder of(String text, Optional<Catalogue> catalogue) {
        if (text.isBlank()) {
            return ALL;
        }
        if (!isFilter(text) || catalogue.isEmpty()) {
            List<String> words = Arrays.stream(text.toLowerCase(Locale.ROOT).strip().split("\\s+")).toList();
            return new Finder((part, row) -> words.stream().allMatch(row::contains), Optional.empty());
        }
        Catalogue parts = catalogue.get();
        PartFilter.Read read = PartFilter.parse(text, parts);
        return read.filter().map(filter -> new Finder((part, row) -> parts.index(part).stream().anyMatch(index -> filter.why(index, parts).isEmpty()),
                Optional.empty())).orElseGet(() -> new Finder(ALL.passes(), read.problem().map(Problem::sentence)));
    }
}
