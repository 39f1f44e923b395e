package tramontane.analysis;

import java.util.Objects;
import tramontane.physics.units.QuantityKind;

/**
 * A named quantity that an analysis can give.
 *
 * @param id       its name in requirements, for example {@code airflow.bank.flow}
 * @param label    what people read, lower case, for example {@code flow}
 * @param quantity what kind of quantity it is
 * @param better   which way is better
 * @param help     one sentence: what it is and at which place
 */
public record FigureKind(String id, String label, QuantityKind quantity, Better better, String help) {

    public FigureKind {
        Objects.requireNonNull(id);
        Objects.requireNonNull(label);
        Objects.requireNonNull(quantity);
        Objects.requireNonNull(better);
        Objects.requireNonNull(help);
    }
}
