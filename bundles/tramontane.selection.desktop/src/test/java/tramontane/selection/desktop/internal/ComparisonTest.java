package tramontane.selection.desktop.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tramontane.physics.units.UnitSystem;

class ComparisonTest {

    private static Listing listing() {
        return Listing.of(Given.done(), Given.duty(), Optional.of(Given.catalogue()), Listing.BY_RANK, "", false, UnitSystem.METRIC);
    }

    private static Comparison of(int... rows) {
        Listing listing = listing();
        return Comparison.of(java.util.Arrays.stream(rows).mapToObj(listing.rows()::get).toList(), listing.columns(), Optional.of(Given.catalogue()), UnitSystem.METRIC);
    }

    private static Comparison.Line line(Comparison comparison, String label) {
        return comparison.lines().stream().filter(line -> line.label().equals(label)).findFirst().orElseThrow();
    }

    @Test
    void theBestIsMarkedByAWord() {
        Comparison comparison = of(0, 1, 2);
        assertEquals(List.of("Garbin 40", "Garbin 92", "Garbin 120"), comparison.heads());
        assertEquals(List.of("10.0 W", "20.0 W", "5.00 W  best"), texts(line(comparison, "power")));
        assertEquals(Set.of(0), line(comparison, "price [EUR]").best(), "what is not known is not best");
        assertEquals(Set.of(1), line(comparison, "to spare").best(), "more to spare is better");
        assertEquals(Set.of(), line(comparison, "frame width").best(), "neither way is better");
    }

    private static List<String> texts(Comparison.Line line) {
        return java.util.stream.IntStream.range(0, line.cells().size()).mapToObj(i -> line.text(i, UnitSystem.METRIC)).toList();
    }

    @Test
    void whatDiffersComesFirst() {
        List<Boolean> differs = of(0, 1).lines().stream().map(Comparison.Line::differs).toList();
        assertEquals(differs.stream().sorted(java.util.Comparator.reverseOrder()).toList(), differs);
        assertTrue(differs.contains(true) && differs.contains(false));
        assertEquals("power", of(0, 1).lines().getFirst().label(), "what one is best in comes before names");
        assertTrue(of(0, 0).lines().stream().noneMatch(line -> line.differs() || !line.best().isEmpty()), "equals have no best");
    }

    @Test
    void itTakesTwoToSix() {
        assertEquals(Comparison.NONE, of(0));
        Comparison six = of(0, 1, 2, 0, 1, 2, 0);
        assertEquals(6, six.heads().size());
        assertEquals("Garbin 40, single", six.heads().getFirst(), "with its arrangement where the part alone does not tell them apart");
    }
}
