package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.model.AirMover;
import tramontane.model.Condition;
import tramontane.model.FormReader;
import tramontane.model.MoverCurve;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.model.Value;

/** Parts and supplies, written as in a file. */
final class Movers {

    private Movers() {
    }

    private static AirMover read(Value.Tree tree) {
        List<Problem> problems = new ArrayList<>();
        AirMover mover = AirMover.from(FormReader.read(AirMover.FORM, tree, "", problems));
        if (!problems.isEmpty()) {
            throw new AssertionError(problems.toString());
        }
        return mover;
    }

    /** A part with more said about it: {@code with(mover, "rotorDiameter", "60 mm")}. */
    static AirMover with(AirMover mover, Object... members) {
        return read(mover.tree().with(Cases.tree(members)));
    }

    /** A curve as it stands in a file. */
    static MoverCurve curve(Object... members) {
        Value.Tree tree = Cases.tree("id", "F").with("curves", new Value.Items(List.of(Cases.tree(members))));
        return read(tree).curves().getFirst();
    }

    /** Air of 1.2 kg/m³ and a supply. */
    static Condition supply(Optional<Double> voltage, Optional<Double> frequency) {
        Condition air = Cases.standardAir();
        return new Condition(air.id(), air.outsideTemperature(), air.altitude(), air.pressure(), air.humidity(), air.heatFactor(),
                air.heatFactors(), air.clogging(), voltage.map(Quantity::of), frequency.map(Quantity::of), air.speed(), air.failed(),
                air.more());
    }
}
