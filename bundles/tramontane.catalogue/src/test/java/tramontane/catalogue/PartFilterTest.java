package tramontane.catalogue;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Filters: what they select, what they say. */
class PartFilterTest {

    @TempDir
    static Path folder;

    private static Catalogue catalogue;

    @BeforeAll
    static void makeCatalogue() throws IOException {
        Files.writeString(folder.resolve("parts.json"), """
                {"parts": [
                 {"id": "a", "maker": "Garbin", "width": "40 mm", "bearing": "ball", "price": 5, "status": "current",
                  "sections": {"motor": {"maker": "Ponente", "wires": 2, "supply": {"current": "DC", "voltage": "12 V"}}, "lab": {"seal": "felt and wax", "drift": "2 mm"}},
                  "curves": [{"speed": "6000 rpm", "flow": "0 5 10 m³/h", "pressure": "50 30 0 Pa"}]},
                 {"id": "b", "maker": "Garbin", "width": "80 mm", "bearing": "fluid-film", "price": 8.5, "status": "current",
                  "sections": {"motor": {"maker": "Ponente", "wires": 3, "supply": {"current": "DC", "voltage": "24 V"}}},
                  "curves": [{"speed": "3000 rpm", "flow": "0 50 100 m³/h", "pressure": "60 40 0 Pa"}]},
                 {"id": "c", "maker": "Levanter", "width": "92 mm", "bearing": "sleeve", "status": "ended",
                  "sections": {"motor": {"maker": "Ostro", "wires": 4, "reversible": true, "supply": {"current": "DC", "voltage": "48 V"}}},
                  "curves": [{"speed": "3000 rpm", "flow": "0 100 200 m³/h", "pressure": "70 40 0 Pa"}]},
                 {"id": "d", "maker": "LEVANTER (Sud)", "price": 30,
                  "curves": [{"speed": "3000 rpm", "flow": "0 100 200 m³/h", "pressure": "100 70 30 Pa"}]}]}""");
        catalogue = Catalogue.read(List.of(folder), List.of(new MotorSection(1)));
        assertEquals(List.of(), catalogue.problems());
    }

    private static PartFilter filter(String text) {
        PartFilter.Read read = PartFilter.parse(text, catalogue);
        assertEquals(Optional.empty(), read.problem());
        return read.filter().orElseThrow();
    }

    private static String selected(String text) {
        return Arrays.stream(catalogue.select(filter(text))).mapToObj(catalogue::id).collect(Collectors.joining());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            ``                                       | abcd
            width <= 80 mm                           | ab
            width <= 8 cm                            | ab
            width < 80 mm                            | a
            width<80mm                               | a
            width > 80 mm                            | c
            width >= 0.08 m                          | bc
            width ≥ 80 mm                            | bc
            width = 80 mm                            | b
            width = 3.1496062992126 in               | b
            width != 80 mm                           | ac
            width in 40..80 mm                       | ab
            width in 4 cm..80 mm                     | ab
            width in 41 .. 79 mm                     | ``
            width in 40 mm, 92 mm                    | ac
            price < 10                               | ab
            price in 8.5..30                         | bd
            freeDelivery >= 100 m³/h                 | bc
            freeDelivery >= 100 m3/h                 | bc
            freeDelivery > 100 m³/h                  | c
            freeDelivery >= 58.8 cfm                 | bc
            shutOff > 55 Pa                          | bcd
            bearing = ball                           | a
            bearing = BALL                           | a
            bearing in ball, fluid-film              | ab
            bearing in "ball" , 'sleeve'             | ac
            bearing in ball, sleeve and width > 50 mm | c
            bearing in ball or width > 90 mm         | ac
            (bearing in ball, "sleeve") and width > 50 mm | c
            width in 40..80 mm and bearing = ball    | a
            bearing != ball                          | bc
            maker ~ "levan"                          | cd
            maker = "LEVANTER (sud)"                 | d
            maker = LEVANTER (Sud)                   | d
            (maker = LEVANTER (Sud) or width < 1 m)  | abcd
            id = a                                   | a
            motor.wires >= 3                         | bc
            motor.supply.voltage in 24..48 V         | bc
            sections.motor.supply.voltage = 24 V     | b
            motor.supply.current = dc                | abc
            motor.reversible = true                  | c
            lab.seal ~ wax                           | a
            lab.seal = "felt and wax"                | a
            lab.drift < 3 mm                         | a
            has price                                | abd
            has motor                                | abc
            has motor.supply                         | abc
            has sections.lab                         | a
            not has price                            | c
            not price < 10                           | cd
            not (price < 10 or status = ended)       | d
            not not price < 10                       | ab
            width < 1 m and price < 10 and wires_ or price > 20 | !
            width < 50 mm or width > 90 mm           | ac
            width < 50 mm or width > 60 mm and price < 10 | ab
            (width < 50 mm or width > 60 mm) and status = ended | c
            has tipSpeed                             | ``
            """)
    void selects(String text, String ids) {
        if (ids.equals("!")) {
            assertTrue(PartFilter.parse(text, catalogue).problem().isPresent());
            return;
        }
        assertEquals(ids, selected(text));
        PartFilter filter = filter(text);
        assertEquals(text, filter.toString());
        for (int i = 0; i < catalogue.size(); i++) {
            assertEquals(ids.contains(catalogue.id(i)), filter.why(i, catalogue).isEmpty(), text + " on " + catalogue.id(i));
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            wdith < 3 mm                | character 1: "wdith" is no field of the parts (did you mean "width"?); expected one such as width, freeDelivery or bearing
            width < 3 mm and motr = 3   | character 18: "motr" is no field of the parts (did you mean "motor"?); expected one such as width, freeDelivery or bearing
            has wdith                   | character 5: "wdith" is no field of the parts (did you mean "width"?); expected one such as width, freeDelivery or bearing
            width < 3 kg                | character 9: "3 kg" is not a length; expected a number with one of m, mm, cm, µm, km, in, ft
            width < 3                   | character 9: "3" has no unit; expected a number with one of m, mm, cm, µm, km, in, ft
            width < broad               | character 9: "broad" does not begin with a number; expected a number with one of m, mm, cm, µm, km, in, ft
            width in 3..2 mm            | character 10: "3..2 mm" begins above its end; expected the smaller value first
            width in 3..                | character 13: a length is missing; expected a number with one of m, mm, cm, µm, km, in, ft
            width ~ 3                   | character 7: width is a length, in which nothing can be contained; expected one of = != < <= > >= in
            width =< 3 mm               | character 7: "=<" is no comparison; expected one of = != < <= > >= ~ in
            width                       | character 6: the text ends behind width; expected one of = != < <= > >= ~ in
            width <                     | character 8: the text ends; expected a value
            width < and price < 3       | character 9: "and price < 3" stands here; expected a value
            bearing < ball              | character 9: bearing is a text, which is neither less nor more; expected one of = != ~ in
            bearing = "ball             | character 11: the quotation mark is not closed; expected another one
            bearing in ball,            | character 17: the text ends; expected a value
            (width < 3 mm               | character 1: the parenthesis at character 1 is not closed; expected and, or, or a closing parenthesis
            width < 3 mm)               | character 13: ")" follows a whole condition; expected and, or, or nothing more
            bearing = "ball" sleeve     | character 18: "sleeve" follows a whole condition; expected and, or, or nothing more
            and                         | character 1: "and" is no field of the parts; expected one such as width, freeDelivery or bearing
            not                         | character 4: the text ends; expected a field, not, has or (
            = 3                         | character 1: "= 3" stands here; expected a field, not, has or (
            """)
    void saysWhatIsWrongAndWhere(String text, String sentence) {
        PartFilter.Read read = PartFilter.parse(text, catalogue);
        assertEquals(Optional.empty(), read.filter());
        assertEquals(sentence, read.problem().orElseThrow().sentence());
    }

    @Test
    void deepNestingIsRefused() {
        assertEquals("character 101: is nested too deep; expected at most 100 levels",
                PartFilter.parse("(".repeat(100_000), catalogue).problem().orElseThrow().sentence());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            c | width <= 80 mm                             | width is 92.0 mm, wanted at most 80.0 mm
            c | width < 92.0 mm                            | width is 92.0 mm, wanted less than 92.0 mm
            c | width <= 91.99 mm                          | width is 92.00 mm, wanted at most 91.99 mm
            d | width <= 80 mm                             | width is not given, wanted at most 80.0 mm
            a | freeDelivery >= 100 m³/h                   | freeDelivery is 10.0 m³/h, wanted at least 100 m³/h
            a | width > 50 mm and price > 10               | width is 40.0 mm, wanted more than 50.0 mm
            b | width > 50 mm and price > 10               | price is 8.50, wanted more than 10.0
            a | motor.supply.voltage in 24..48 V           | motor.supply.voltage is 12.0 V, wanted from 24.0 V to 48.0 V
            c | bearing in ball, fluid-film                | bearing is sleeve, wanted ball or fluid-film
            a | bearing != ball                            | bearing is ball, wanted other than ball
            a | maker ~ levan                              | maker is Garbin, wanted one with "levan" in it
            c | has price                                  | price is not given
            a | not has price                              | price is given, wanted not given
            a | not width < 50 mm                          | width is 40.0 mm, wanted not less than 50.0 mm
            a | width > 50 mm or bearing = sleeve          | width is 40.0 mm, wanted more than 50.0 mm; and bearing is ball, wanted sleeve
            a | not (width < 50 mm and bearing = ball)     | width is 40.0 mm and bearing is ball, wanted not all of (width less than 50.0 mm; bearing ball)
            a | motor.wires in 3, 4                        | motor.wires is 2, wanted 3 or 4
            """)
    void saysWhyAPartDoesNotPass(String id, String text, String sentence) {
        assertEquals(Optional.of(sentence), filter(text).why(catalogue.index(id).orElseThrow(), catalogue));
    }

    @Test
    void filtersServeOtherCatalogues() throws IOException {
        PartFilter filter = filter("lab.drift < 3 mm or width <= 40 mm");
        Catalogue small = Catalogue.of(List.of(catalogue.part(0), catalogue.part(3)), List.of());
        assertArrayEquals(new int[] {0}, small.select(filter));
        assertEquals(filter, filter("lab.drift < 3 mm or width  <= 4 cm"));
    }

    /** Exactly one of less, equal and more holds of a value that is given, in whatever unit it is written. */
    @Property(tries = 300)
    void lessEqualOrMore(@ForAll @IntRange(min = 1, max = 200) int tenths) {
        String limit = String.format(Locale.ROOT, "%.1f cm", tenths / 10.0);
        String less = selected("width < " + limit);
        String equal = selected("width = " + limit);
        String more = selected("width > " + limit);
        assertEquals(3, less.length() + equal.length() + more.length());
        assertEquals(selected("width <= " + limit).length(), less.length() + equal.length());
        assertEquals(selected("width >= " + limit).length(), more.length() + equal.length());
        assertEquals(selected("width != " + limit).length(), 3 - equal.length());
    }
}
