package tramontane.selection.desktop.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Amount;
import tramontane.analysis.Better;
import tramontane.analysis.Chart;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;

class ScatterTest {

    @Test
    void itMarksTheParetoSetAndLeavesOutWhatIsNotKnown() {
        Listing listing = Listing.of(Given.done(), Given.duty(), Optional.of(Given.catalogue()), Listing.BY_RANK, "", false, UnitSystem.METRIC);
        Key second = listing.rows().get(1).key();
        Scatter scatter = Scatter.of(listing, "", "", List.of(second));
        assertEquals("power", scatter.x().orElseThrow().id());
        assertEquals("cost", scatter.y().orElseThrow().id());
        assertEquals(2, scatter.points().size());
        assertEquals(1, scatter.silent());
        assertEquals(List.of(true, false), scatter.points().stream().map(Scatter.Point::front).toList());
        assertEquals(List.of(false, true), scatter.points().stream().map(Scatter.Point::selected).toList());
        assertEquals(List.of(scatter.points().getFirst()), scatter.edge());
        assertEquals(List.of(), Scatter.of(listing, "speed", "cost", List.of()).edge(), "neither way of a speed is better");
        assertEquals(Scatter.EMPTY, Scatter.of(Listing.EMPTY, "power", "cost", List.of()));
    }

    @Test
    void theChartTellsTheParetoSetByShapeAndWordAndNamesEachCandidate() {
        Listing listing = Listing.of(Given.done(), Given.duty(), Optional.of(Given.catalogue()), Listing.BY_RANK, "", false, UnitSystem.METRIC);
        List<Key> keys = listing.rows().stream().map(Row::key).toList();
        Scatter scatter = Scatter.of(listing, "power", "spare", List.of(keys.get(1)));
        Chart chart = scatter.chart().orElseThrow();
        assertEquals(List.of("best trade-off of these two", "not in the Pareto set", "Pareto set"), chart.series().stream().map(Chart.Series::name).toList());
        Chart.Series behind = chart.series().get(1);
        Chart.Series front = chart.series().get(2);
        assertEquals(Chart.Shape.RING, behind.look().sign());
        assertEquals(Chart.Shape.DISC, front.look().sign());
        assertEquals(List.of("1 Garbin 40, single", "3 Garbin 120, single"), front.words());
        assertEquals(Optional.of(keys.get(2)), scatter.key(front, 1));
        assertEquals(Optional.of(keys.get(1)), scatter.key(behind, 0));
        assertEquals(Optional.empty(), scatter.key(chart.series().getFirst(), 0));
        assertEquals(List.of("2 Garbin 92, single"), chart.marks().stream().map(Chart.Mark::label).toList());
        assertEquals("1 candidate has no value of one of the two", Scatter.of(listing, "power", "cost", List.of()).words());
        assertEquals(Optional.empty(), Scatter.EMPTY.chart());
    }

    /** The edge is what nothing dominates, by its definition. */
    @Property
    void theEdgeIsWhatNothingIsBetterThan(@ForAll @Size(min = 2, max = 25) List<@IntRange(max = 9) Integer> numbers, @ForAll boolean more) {
        List<Integer> others = new ArrayList<>(numbers);
        Collections.rotate(others, 1);
        Column x = Column.amounts("x", "x", QuantityKind.POWER, Better.LOWER, "");
        Column y = Column.amounts("y", "y", QuantityKind.FLOW, more ? Better.HIGHER : Better.LOWER, "");
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < numbers.size(); i++) {
            rows.add(new Row(new Key("part " + i, Optional.empty()), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                    Map.of("x", new Amount(numbers.get(i), QuantityKind.POWER), "y", new Amount(others.get(i), QuantityKind.FLOW))));
        }
        Scatter scatter = Scatter.of(new Listing(List.of(x, y), rows, rows.size(), Optional.empty(), false), "x", "y", List.of());
        List<List<Double>> expected = scatter.points().stream().filter(point -> scatter.points().stream().noneMatch(other -> better(other, point, more)))
                .map(point -> List.of(point.x(), point.y())).distinct().sorted(java.util.Comparator.comparing(List::getFirst)).toList();
        assertEquals(expected, scatter.edge().stream().map(point -> List.of(point.x(), point.y())).toList());
    }

    private static boolean better(Scatter.Point one, Scatter.Point other, boolean more) {
        double a = more ? -one.y() : one.y();
        double b = more ? -other.y() : other.y();
        return one.x() <= other.x() && a <= b && (one.x() < other.x() || a < b);
    }
}
