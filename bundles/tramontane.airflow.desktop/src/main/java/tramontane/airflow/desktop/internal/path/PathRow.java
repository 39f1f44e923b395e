package tramontane.airflow.desktop.internal.path;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/**
 * A passage as a row of a table.
 *
 * @param target what it is in the picture
 * @param cells  texts in the order of {@link #COLUMNS}; empty where nothing is known
 */
record PathRow(PathTarget target, List<String> cells) {

    /** The heads of the columns. */
    static final List<String> COLUMNS = List.of("passage", "kind", "from", "to", "flow", "drop", "velocity", "temperature");
    /** The first column of numbers. */
    static final int NUMBERS = 4;
    private static final int DIGITS = 3;

    PathRow {
        cells = List.copyOf(cells);
    }

    /** The rows of a design, in its order. */
    static List<PathRow> of(Design design, AirValues values, UnitSystem units) {
        List<PathRow> rows = new ArrayList<>();
        List<Passage> passages = design.airPath().passages();
        for (int i = 0; i < passages.size(); i++) {
            Passage passage = passages.get(i);
            Optional<AirValues.PassageAir> air = Optional.ofNullable(values.passages().get(passage.id()));
            Optional<AirValues.BayAir> entering = air.flatMap(each -> Optional.ofNullable(values.bays()
                    .get(each.reverse() ? passage.to() : passage.from())));
            rows.add(new PathRow(new PathTarget.Joint(i), List.of(passage.id(), passage.kind(), passage.from(), passage.to(),
                    air.map(each -> (each.reverse() ? "reverse " : "") + number(Math.abs(each.flow()), QuantityKind.FLOW, units)).orElse(""),
                    air.map(each -> number(each.drop(), QuantityKind.PRESSURE, units)).orElse(""),
                    air.filter(each -> each.velocity().isPresent())
                            .map(each -> number(each.velocity().getAsDouble(), QuantityKind.VELOCITY, units)).orElse(""),
                    entering.map(each -> number(each.temperature(), QuantityKind.TEMPERATURE, units)).orElse(""))));
        }
        return List.copyOf(rows);
    }

    private static String number(double si, QuantityKind kind, UnitSystem units) {
        return Double.isFinite(si) ? PathSketch.minus(Units.format(si, kind, units, DIGITS)) : "";
    }

    /** The same as a sentence, for who hears it. */
    String spoken() {
        StringBuilder text = new StringBuilder("passage ").append(cells.get(0)).append(", ").append(cells.get(1)).append(", from ")
                .append(cells.get(2)).append(" to ").append(cells.get(3));
        for (int column = NUMBERS; column < cells.size(); column++) {
            if (!cells.get(column).isEmpty()) {
                text.append(", ").append(COLUMNS.get(column)).append(' ').append(cells.get(column));
            }
        }
        return text.toString();
    }
}
