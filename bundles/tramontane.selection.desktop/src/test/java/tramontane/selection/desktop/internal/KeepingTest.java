package tramontane.selection.desktop.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.model.Value;
import tramontane.model.file.DesignFile;
import tramontane.selection.Criterion;
import tramontane.selection.Duty;
import tramontane.selection.Task;

class KeepingTest {

    private static final Set<String> TOLD = Set.of("airflow.bank.flow");

    /** The form as a view has it where nothing loaded tells noise or life. */
    private static Asked form(Design design) {
        Asked asked = Asked.of(design, Duty.BANK);
        for (String criterion : Task.EVEN.keySet()) {
            String field = Asked.weight(criterion);
            boolean silent = criterion.equals(Criterion.NOISE) || criterion.equals(Criterion.LIFE);
            asked = silent ? asked.without(field) : asked.texts().containsKey(field) ? asked : asked.with(field, "0");
        }
        return asked;
    }

    private static Design with(Value.Tree section) {
        Passage bank = Given.duty().airPath().passage(Duty.BANK).orElseThrow();
        return Given.duty().withAirPath(Given.duty().airPath().withPassage(bank.withParameters(bank.parameters().with("sections", Value.Tree.EMPTY.with("selection", section)))));
    }

    private static Value.Tree section(Design design) {
        return design.airPath().passage(Duty.BANK).orElseThrow().section("selection").map(Value.Tree.class::cast).orElse(Value.Tree.EMPTY);
    }

    private static Design kept(Design design, Asked asked) {
        return Keeping.in(design, asked, TOLD).orElseThrow();
    }

    @Test
    void whereNothingIsAskedNothingIsWritten() {
        assertEquals(Given.duty(), kept(Given.duty(), form(Given.duty())));
        assertEquals(Given.duty(), kept(with(Value.Tree.EMPTY.with("movers", Value.Num.of(3))), form(Given.duty())), "nor is anything left of an earlier wish");
    }

    @Test
    void whatDiffersIsWrittenAsTyped() {
        Asked asked = form(Given.duty()).with(Asked.WIDTH, "26 cm").with(Asked.HEIGHT, "100 mm").with(Asked.WHERE, " type = axial ").with(Asked.LOWEST, "30 %")
                .with(Asked.weight("cost"), "3").with(Asked.weight("mass"), "0").with(Asked.weight("airflow.bank.flow"), "2");
        assertEquals("""
                {"openingWidth":"26 cm","openingHeight":"100 mm","lowestSpeed":"30 %","where":"type = axial",\
                "weights":[{"of":"power","weight":1},{"of":"cost","weight":3},{"of":"size","weight":1},{"of":"airflow.bank.flow","weight":2}]}""",
                flat(kept(Given.duty(), asked)));
    }

    private static String flat(Design design) {
        String text = DesignFile.write(design);
        int from = text.indexOf("\"selection\"");
        String after = text.substring(text.indexOf('{', from)).replaceAll("\\s*([{}\\[\\],:])\\s*", "$1");
        int depth = 0;
        for (int i = 0; i < after.length(); i++) {
            depth += after.charAt(i) == '{' ? 1 : after.charAt(i) == '}' ? -1 : 0;
            if (depth == 0) {
                return after.substring(0, i + 1);
            }
        }
        throw new AssertionError(text);
    }

    /** Where an opening is given six side by side and two in series are looked at anyway, and a fifth is the lowest speed anyway. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"sideBySide|6|false", "sideBySide|5|true", "inSeries|2|false", "inSeries|1|true", "movers|12|false", "movers|11|true",
            "lowestSpeed|20 %|false", "lowestSpeed|0.2|false", "lowestSpeed|21 %|true"})
    void whatWouldBeSoAnywayIsNotWritten(String field, String text, boolean written) {
        Asked asked = form(Given.duty()).with(Asked.WIDTH, "0.3 m").with(Asked.HEIGHT, "0.3 m").with(field, text);
        assertEquals(written, section(kept(Given.duty(), asked)).get(field).isPresent());
    }

    @Test
    void whatHasNoFieldStays() {
        Value.Tree noise = Value.Tree.EMPTY.with("of", new Value.Text("noise")).with("weight", Value.Num.of(4));
        Design design = with(Value.Tree.EMPTY.with("weights", new Value.Items(List.of(noise))).with("whoAsked", new Value.Text("the lab")));
        Value.Tree section = section(kept(design, form(design).with(Asked.MOVERS, "2")));
        assertEquals(Optional.of(new Value.Text("the lab")), section.get("whoAsked"));
        assertEquals(Optional.of(new Value.Items(List.of(noise))), section.get("weights"));
    }

    @Test
    void thatNothingCountsIsKept() {
        Asked asked = form(Given.duty());
        for (String criterion : asked.weighed()) {
            asked = asked.with(Asked.weight(criterion), "0");
        }
        assertEquals(asked, form(kept(Given.duty(), asked)));
    }

    @Test
    void nothingIsWrittenOverWhatCannotBeRead() {
        assertEquals(Optional.empty(), Keeping.in(with(Value.Tree.EMPTY.with("movers", new Value.Text("many"))), form(Given.duty()), TOLD));
        assertEquals(Optional.empty(), Keeping.in(Given.duty(), form(Given.duty()).with(Asked.MOVERS, "many"), TOLD));
        assertEquals(Optional.empty(), Keeping.in(Design.EMPTY, form(Given.duty()), TOLD));
    }

    /** What is kept, written to a file and read again fills the form so that the same is asked. */
    @Property(tries = 200)
    void whatIsKeptIsAskedAgain(@ForAll("typed") Map<String, String> typed) {
        Asked asked = form(Given.duty());
        for (Map.Entry<String, String> each : typed.entrySet()) {
            asked = asked.with(each.getKey(), each.getValue());
        }
        Design again = DesignFile.parse(DesignFile.write(kept(Given.duty(), asked))).design().orElseThrow();
        Map<String, String> problems = new LinkedHashMap<>();
        var before = asked.wish(TOLD, problems);
        var after = form(again).wish(TOLD, problems);
        assertEquals(Map.of(), problems);
        assertEquals(before.space(), after.space());
        assertEquals(before.lowestSetting(), after.lowestSetting());
        assertEquals(before.where(), after.where());
        assertEquals(positive(before.weights()), positive(after.weights()));
        assertEquals(again, kept(again, form(again)), "kept once more it stays");
    }

    private static Map<String, Double> positive(Map<String, Double> weights) {
        Map<String, Double> positive = new LinkedHashMap<>(weights);
        positive.values().removeIf(weight -> weight == 0);
        return positive;
    }

    @Provide
    Arbitrary<Map<String, String>> typed() {
        Arbitrary<String> size = Arbitraries.of("250 mm", "310 mm", "4 in", "30 cm");
        Arbitrary<String> count = Arbitraries.of("", "1", "2", "4", "6", "12");
        Arbitrary<String> weight = Arbitraries.of("", "0", "1", "2.5");
        return Arbitraries.of(true, false).flatMap(opening -> size.flatMap(width -> size.flatMap(height -> count.list().ofSize(3).flatMap(counts -> weight.list().ofSize(5).flatMap(
                weights -> Arbitraries.of("", "0.2", "15 %", "100 %").flatMap(lowest -> Arbitraries.of("", "type = axial or width > 50 mm").map(where -> {
                    Map<String, String> texts = new LinkedHashMap<>();
                    if (opening) {
                        texts.put(Asked.WIDTH, width);
                        texts.put(Asked.HEIGHT, height);
                    }
                    texts.put(Asked.SIDE_BY_SIDE, counts.get(0));
                    texts.put(Asked.IN_SERIES, counts.get(1));
                    texts.put(Asked.MOVERS, counts.get(2));
                    texts.put(Asked.LOWEST, lowest);
                    texts.put(Asked.WHERE, where);
                    List<String> criteria = List.of("power", "cost", "size", "mass", "airflow.bank.flow");
                    for (int i = 0; i < criteria.size(); i++) {
                        texts.put(Asked.weight(criteria.get(i)), weights.get(i));
                    }
                    return texts;
                })))))));
    }
}
