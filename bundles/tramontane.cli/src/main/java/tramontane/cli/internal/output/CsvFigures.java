package tramontane.cli.internal.output;

import java.util.List;
import java.util.OptionalDouble;
import tramontane.analysis.Figure;
import tramontane.cli.terminal.CsvRows;
import tramontane.model.Problem;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Unit;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/** Figures and problems as comma-separated values: RFC 4180, the header first, lines ended by CR LF. */
public final class CsvFigures {

    private CsvFigures() {
    }

    /**
     * The figures, one in a row, with all their digits.
     *
     * @param figures the figures
     * @param units   the units of the numbers; for {@link UnitSystem#SI} without exception, rad/s too
     */
    public static String of(List<Figure> figures, UnitSystem units) {
        CsvRows rows = new CsvRows();
        rows.row("id", "label", "place", "condition", "value", "lower", "upper", "unit");
        for (Figure figure : figures) {
            QuantityKind kind = figure.kind().quantity();
            rows.row(figure.kind().id(), figure.kind().label(), figure.place(), figure.condition(),
                    number(OptionalDouble.of(figure.value()), kind, units), number(figure.lower(), kind, units),
                    number(figure.upper(), kind, units), unit(kind, units));
        }
        return rows.toString();
    }

    /** What is wrong with a file, one problem in a row. */
    public static String problems(List<Problem> problems) {
        CsvRows rows = new CsvRows();
        rows.row("severity", "place", "message");
        problems.forEach(problem -> rows.row(JsonReport.word(problem.severity()), problem.place(), problem.message()));
        return rows.toString();
    }

    private static String number(OptionalDouble si, QuantityKind kind, UnitSystem units) {
        if (si.isEmpty()) {
            return "";
        }
        return Double.toString(units == UnitSystem.SI ? si.getAsDouble() : Units.toDisplay(si.getAsDouble(), kind, units));
    }

    private static String unit(QuantityKind kind, UnitSystem units) {
        if (units == UnitSystem.SI) {
            return kind.siUnit();
        }
        Unit unit = Units.display(kind, units);
        return unit.symbol().isEmpty() ? "1" : unit.symbol();
    }
}
