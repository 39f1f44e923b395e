package tramontane.catalogue;

import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import tramontane.catalogue.internal.FilterReader;
import tramontane.catalogue.internal.PartQuestion;
import tramontane.model.Problem;

/**
 * Which parts of a catalogue to take, as people write it.
 *
 * <pre>
 * width &lt;= 80 mm and freeDelivery &gt;= 100 m³/h
 * bearing in ball, fluid-film and not status = ended
 * drive.supply.voltage in 24..48 V or not has drive.supply
 * (maker ~ "gar" or family = GX) and price &lt; 20
 * </pre>
 *
 * <p>Conditions are joined by {@code and} and {@code or}, where {@code and} binds closer, turned round by {@code not}, grouped by
 * parentheses. A condition is {@code field op value} with one of {@code = != < <= > >=}, {@code ~} for "contains";
 * {@code field in from..to}, both ends included; {@code field in one, another}; {@code has field}. Quantities have their units;
 * texts are compared without regard to case and stand between quotation marks where they hold a word of this language, a comma or a
 * parenthesis. A comparison with a value that a part does not give is false. Two quantities are equal within 1e-9 of the larger.
 */
public final class PartFilter {

    private final String text;
    private final PartQuestion test;

    private PartFilter(String text, PartQuestion test) {
        this.text = text;
        this.test = test;
    }

    /**
     * What reading a filter gave.
     *
     * @param filter  the filter; empty where the text is none
     * @param problem what is wrong with the text, with the place as {@code character 12}; empty where nothing is
     */
    public record Read(Optional<PartFilter> filter, Optional<Problem> problem) {
    }

    /**
     * Reads a filter; a blank text takes all parts.
     *
     * @param text      as people write it
     * @param catalogue what it is to be used on: it says which fields there are
     */
    public static Read parse(String text, Catalogue catalogue) {
        List<CatalogueField> fields = catalogue.fields();
        FilterReader.Result result = FilterReader.read(text, name -> catalogue.field(name).map(field ->
                new FilterReader.Known(field.path(), field.kind())), () -> fields.stream().map(CatalogueField::name).toList());
        return new Read(result.test().map(test -> new PartFilter(text, test)), result.problem());
    }

    /**
     * Why a part does not pass, in one sentence: {@code width is 92.0 mm, wanted at most 80.0 mm}.
     *
     * @return empty where it passes
     */
    public Optional<String> why(int part, Catalogue catalogue) {
        return test.why(values(catalogue), part);
    }

    /** The test of a part by its number. */
    IntPredicate on(Catalogue catalogue) {
        return test.on(values(catalogue));
    }

    private static PartQuestion.Values values(Catalogue catalogue) {
        return new PartQuestion.Values(catalogue.columns(), catalogue::column, catalogue::columnsWithin);
    }

    /** The text that it was read from. */
    @Override
    public String toString() {
        return text;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PartFilter filter && test.equals(filter.test);
    }

    @Override
    public int hashCode() {
        return test.hashCode();
    }
}
