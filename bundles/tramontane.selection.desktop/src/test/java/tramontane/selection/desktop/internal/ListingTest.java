package tramontane.selection.desktop.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.physics.units.UnitSystem;

class ListingTest {

    private static Listing listing(Choosing choosing, String find, boolean leftOut) {
        return Listing.of(choosing, Given.duty(), Optional.of(Given.catalogue()), Listing.BY_RANK, find, leftOut, UnitSystem.METRIC);
    }

    private static List<String> parts(Listing listing) {
        return listing.rows().stream().map(row -> row.key().part()).toList();
    }

    @Test
    void eachValueHasItsUnitAndThreeDigits() {
        Listing listing = listing(Given.done(), "", false);
        Row first = listing.rows().getFirst();
        assertEquals(List.of("1", "Garbin 40", "single", "90.0 %", "2860 rpm", "100", "Pareto set", "Garbin", "10.0 W", "3.00", "flow at movers in nominal", "0.200 %"),
                listing.columns().stream().map(column -> first.text(column.id(), UnitSystem.METRIC)).toList());
        assertEquals(List.of("rank", "part", "arrangement", "setting", "speed", "merit", "trade-off", "maker", "power", "price [EUR]", "tightest requirement", "to spare"),
                listing.columns().stream().map(Column::label).toList());
        // 2 and 2.83 times the first, weighed alike, are the square root of 5.67 times it
        assertEquals("42", listing.rows().get(1).text(Listing.MERIT, UnitSystem.METRIC));
        assertEquals("", listing.rows().get(2).text(Listing.MERIT, UnitSystem.METRIC), "less is known of it, so it has none");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"power|false|Garbin 120, Garbin 40, Garbin 92", "power|true|Garbin 92, Garbin 40, Garbin 120",
            "cost|true|Garbin 92, Garbin 40, Garbin 120", "cost|false|Garbin 40, Garbin 92, Garbin 120", "part|false|Garbin 40, Garbin 92, Garbin 120",
            "spare|true|Garbin 92, Garbin 120, Garbin 40", "nothing|true|Garbin 40, Garbin 92, Garbin 120"})
    void itSortsByAnyColumn(String column, boolean descending, String expected) {
        Listing listing = Listing.of(Given.done(), Given.duty(), Optional.of(Given.catalogue()), new Order(column, descending), "", false, UnitSystem.METRIC);
        assertEquals(expected, String.join(", ", parts(listing)));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"garbin|Garbin 40, Garbin 92, Garbin 120", "gar 92|Garbin 92", "width > 90 mm|Garbin 92, Garbin 120", "price < 5|Garbin 40",
            "pareto|Garbin 40, Garbin 120", "nothing like it|''", "type in axial|Garbin 40, Garbin 92, Garbin 120", "not has price|Garbin 120"})
    void itIsSearchedByWordsAndByTheFilterOfTheCatalogue(String find, String expected) {
        Listing listing = listing(Given.done(), find, false);
        assertEquals(expected, String.join(", ", parts(listing)));
        assertEquals(3, listing.all());
        assertEquals(Optional.empty(), listing.problem());
    }

    @Test
    void aFilterThatCannotBeReadTakesNothingAway() {
        Listing listing = listing(Given.done(), "width > ", false);
        assertEquals(3, listing.rows().size());
        assertTrue(listing.problem().isPresent());
        assertTrue(listing(Given.done(), "wdth > 3 mm", false).problem().orElseThrow().contains("width"), "it says what may be meant");
    }

    @Test
    void whatWasLeftOutIsShownWithItsReason() {
        Listing listing = listing(Given.done(), "", true);
        assertEquals(List.of("Garbin 40", "Garbin 92", "Garbin 120", "Suvel 120", "Suvel 120"), parts(listing));
        assertEquals("may do; comes behind all that are listed", listing.rows().get(3).text(Listing.REASON, UnitSystem.METRIC));
        assertEquals("it gives 180 m³/h where 288 m³/h are needed; it would do with 60.0 % more speed", listing.rows().get(4).text(Listing.REASON, UnitSystem.METRIC));
        assertEquals("Suvel", listing.rows().get(4).text(Listing.MAKER, UnitSystem.METRIC));
        assertEquals(List.of("Suvel 120"), parts(listing(Given.done(), "more speed", true)), "reasons are searched, too");
    }

    @Test
    void whileItRunsThoseFoundSoFarAreListedBestFirst() {
        Choosing running = Choosing.started(Given.task());
        assertEquals(0, listing(running, "", false).rows().size());
        for (int i = 2; i >= 0; i--) {
            running = running.found(Given.candidates().get(i));
        }
        assertEquals(parts(listing(Given.done(), "", false)), parts(listing(running, "", false)));
        assertEquals(Listing.EMPTY, listing(Choosing.NOT_STARTED, "", false));
    }
}
