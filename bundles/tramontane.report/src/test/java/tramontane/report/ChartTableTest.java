package tramontane.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Amount;
import tramontane.analysis.Chart;
import tramontane.analysis.Chart.Axis;
import tramontane.analysis.Chart.Look;
import tramontane.analysis.Chart.Mark;
import tramontane.analysis.Chart.Points;
import tramontane.analysis.Chart.Role;
import tramontane.analysis.Chart.Series;
import tramontane.analysis.Chart.Shape;
import tramontane.analysis.Table;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;

class ChartTableTest {

    private static final Chart CHART = Chart.of("fans", new Axis("flow", QuantityKind.FLOW), new Axis("static pressure", QuantityKind.PRESSURE))
            .with(new Series("bank", Role.CURVE, Look.line(0), Points.of(new double[] {0, 0.1}, new double[] {50, 0})))
            .with(new Mark("duty point", 0.05, 25, Shape.DISC, 0));

    @Test
    void marksComeFirstThenValuesAtRoundPlacesOfTheReadersUnits() {
        Table table = ChartTable.of(CHART, UnitSystem.METRIC);
        assertEquals(List.of("", "flow", "static pressure", "bank"), table.columns().stream().map(Table.Column::label).toList());
        assertEquals(List.of(new Table.Words("duty point"), new Amount(0.05, QuantityKind.FLOW), new Amount(25, QuantityKind.PRESSURE),
                new Table.Empty()), table.rows().getFirst());
        Amount second = (Amount) table.rows().get(2).get(1);
        assertEquals(20 / 3600.0, second.si(), 1e-12);
        assertEquals(50 - 500 * 20 / 3600.0, ((Amount) table.rows().get(2).get(3)).si(), 1e-9);
        assertTrue(table.rows().size() > 10 && table.rows().size() < 26);
    }

    @Test
    void onlyWhatIsShownIsListed() {
        Table table = ChartTable.of(CHART.within(new Chart.Extent(0.02, 0.04), new Chart.Extent(0, 50)), UnitSystem.SI);
        table.rows().stream().skip(1).forEach(row -> {
            double flow = ((Amount) row.get(1)).si();
            assertTrue(flow > 0.0199 && flow < 0.0401);
        });
    }

    @Test
    void singleThingsAreListedOneByOne() {
        Table table = ChartTable.of(Chart.of("parts", CHART.x(), CHART.y()).with(new Series("part", Role.SCATTER, Look.marks(0),
                Points.of(new double[] {1, 2}, new double[] {3, 4}))), UnitSystem.SI);
        assertEquals(2, table.rows().size());
        assertEquals(List.of(new Table.Words("part"), new Amount(2, QuantityKind.FLOW), new Amount(4, QuantityKind.PRESSURE)), table.rows().get(1));
    }

    @Test
    void onOtherScalesPlacesAreRoundAndValuesThoseOfTheLineAsDrawn() {
        Chart life = Chart.of("life", new Axis("time", QuantityKind.TIME, Chart.Scale.LOG), new Axis("failed", QuantityKind.FRACTION, Chart.Scale.WEIBULL))
                .with(new Series("fit", Role.CURVE, Look.line(0), Points.of(new double[] {3600, 360_000}, new double[] {0.1, 0.9})));
        List<List<Table.Cell>> rows = ChartTable.of(life, UnitSystem.METRIC).rows();
        assertTrue(rows.size() >= 10 && rows.size() <= 24, () -> rows.size() + " rows");
        double middle = Chart.Scale.WEIBULL.from((Chart.Scale.WEIBULL.to(0.1) + Chart.Scale.WEIBULL.to(0.9)) / 2);
        assertEquals(middle, rows.stream().filter(row -> row.get(1).equals(new Amount(36_000, QuantityKind.TIME)))
                .mapToDouble(row -> ((Amount) row.get(2)).si()).findFirst().orElseThrow(), 1e-12);
    }

    @Test
    void anAxisWithAUnitOfItsOwnIsListedInIt() {
        Axis years = new Axis("time", QuantityKind.TIME).in(tramontane.physics.units.Units.of(QuantityKind.TIME).stream()
                .filter(unit -> unit.symbol().equals("year")).findFirst().orElseThrow());
        double year = 8760 * 3600.0;
        Chart chart = Chart.of("survival", years, new Axis("still running", QuantityKind.FRACTION))
                .with(new Series("fan", Role.CURVE, Look.line(0), Points.of(new double[] {0, 10 * year}, new double[] {1, 0})));
        Table table = ChartTable.of(chart, UnitSystem.METRIC);
        assertEquals(List.of(new Table.Empty(), new Table.Words("5.00 year"), new Amount(0.5, QuantityKind.FRACTION)), table.rows().get(10));
        assertTrue(ChartCsv.of(chart, UnitSystem.METRIC).startsWith("time [year],fan: still running [%]\r\n0,100\r\n10,0\r\n"));
    }

    @Test
    void eachThingIsListedByItsName() {
        Table table = ChartTable.of(Chart.of("parts", CHART.x(), CHART.y()).with(Series.things("small", Look.marks(0, Shape.RING),
                Points.of(new double[] {1, 2}, new double[] {3, 4}), List.of("one", "two"))), UnitSystem.SI);
        assertEquals(List.of(new Table.Words("small: one"), new Table.Words("small: two")), table.rows().stream().map(List::getFirst).toList());
    }
}
