package tramontane.invented;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tramontane.catalogue.Plausibility;
import tramontane.model.AirMover;
import tramontane.model.FormReader;
import tramontane.model.MoverCurve;
import tramontane.model.Quantities;
import tramontane.model.Value;

class SlippedDecimalPointTest {

    /**
     * A decimal point that slipped, in parts that are sound: how often it is found. A tenth of the flow passes in centrifugal blowers,
     * whose range of flow coefficients is wider than that.
     */
    @ParameterizedTest
    @ValueSource(strings = {"flow", "pressure", "speed", "rotorDiameter"})
    void aSlippedDecimalPointIsFound(String field) {
        List<AirMover> parts = InventedCatalogue.parts(500, InventedCatalogue.SEED);
        int found = 0;
        for (AirMover mover : parts) {
            for (double factor : new double[] {0.1, 10}) {
                found += Plausibility.of(slipped(mover, field, factor)).isEmpty() ? 0 : 1;
            }
        }
        System.out.printf("decimal point of %s slipped either way: found in %.1f %% of %d%n", field, 100.0 * found / (2 * parts.size()),
                2 * parts.size());
        assertTrue(found >= 0.9 * 2 * parts.size(), found + " found of " + 2 * parts.size());
    }

    private static AirMover slipped(AirMover mover, String field, double factor) {
        UnaryOperator<Quantities> slip = values -> Quantities.of(values.si().stream().mapToDouble(value -> value * factor).toArray());
        if (field.equals("rotorDiameter")) {
            return AirMover.from(FormReader.read(AirMover.FORM, mover.tree().with(field, Value.Num.of(mover.rotorDiameter().orElseThrow().si() * factor)), "", new ArrayList<>()));
        }
        return mover.withCurves(mover.curves().stream().map(curve -> new MoverCurve(
                field.equals("speed") ? curve.speed().map(speed -> speed.withSi(speed.si() * factor)) : curve.speed(), curve.voltage(),
                curve.frequency(), curve.density(), curve.rotorDiameter(), field.equals("flow") ? slip.apply(curve.flow()) : curve.flow(),
                field.equals("pressure") ? slip.apply(curve.pressure()) : curve.pressure(), curve.power(), curve.tolerance(), curve.more()))
                .toList());
    }
}
