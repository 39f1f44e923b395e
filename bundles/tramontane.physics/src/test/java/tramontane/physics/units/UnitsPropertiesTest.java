package tramontane.physics.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

class UnitsPropertiesTest {

    @Provide
    Arbitrary<QuantityKind> kinds() {
        return Arbitraries.of(QuantityKind.standard());
    }

    @Provide
    Arbitrary<Double> sizes() {
        return Arbitraries.doubles().between(-12, 12).map(exponent -> Math.pow(10, exponent));
    }

    @Property
    void whatIsWrittenIsReadBackWithinHalfTheLastDigit(@ForAll("kinds") QuantityKind kind,
            @ForAll("sizes") double size, @ForAll boolean negative, @ForAll("systems") UnitSystem system,
            @ForAll @IntRange(min = 2, max = 12) int digits) {
        double si = negative ? -size : size;
        double back = Units.parse(Units.format(si, kind, system, digits), kind);
        double allowed = 0.5000001 * Math.pow(10, 1 - digits) * size;
        if (Units.display(kind, system).shift() != 0 || kind.equals(QuantityKind.LEVEL)) {
            // digits less two behind the point, fewer for large numbers, but never before the point
            double shown = Math.abs(Units.toDisplay(si, kind, system));
            double step = Math.min(1, Math.max(Math.pow(10, 2 - digits), shown * Math.pow(10, 1 - digits)));
            double unit = Units.fromDisplay(1, kind, system) - Units.fromDisplay(0, kind, system);
            allowed = unit * (0.5000001 * step + 1e-15 * (shown + 500));
        }
        assertEquals(si, back, allowed);
    }

    @Property
    void displayIsTurnedRound(@ForAll("kinds") QuantityKind kind,
            @ForAll @DoubleRange(min = -1e6, max = 1e6) double si, @ForAll("systems") UnitSystem system) {
        double shown = Units.toDisplay(si, kind, system);
        assertEquals(si, Units.fromDisplay(shown, kind, system), 1e-14 * Math.abs(si) + 1e-12);
    }

    @Property
    void anyTextIsReadOrRefusedInOneShortLine(@ForAll String text, @ForAll("kinds") QuantityKind kind) {
        try {
            assertTrue(Double.isFinite(Units.parse(text, kind)));
        } catch (UnitException refused) {
            assertTrue(refused.getMessage().length() < 250 && !refused.getMessage().contains("\n"));
        }
    }

    @Provide
    Arbitrary<UnitSystem> systems() {
        UnitSystem own = UnitSystem.METRIC;
        for (QuantityKind kind : QuantityKind.standard()) {
            own = own.with(kind, Units.of(kind).getLast());
        }
        return Arbitraries.of(UnitSystem.SI, UnitSystem.METRIC, UnitSystem.US, own);
    }
}
