package tramontane.selection.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;

class OffTest {

    @Test
    void whatReadsLikeItsLimitTellsHowFarItIsOff() {
        assertEquals(", 0.0400 K off", Off.where(12.04, 12, QuantityKind.TEMPERATURE_DIFFERENCE).in(UnitSystem.METRIC));
        assertEquals(", 0.0400 K off", Off.where(325.19, 325.15, QuantityKind.TEMPERATURE).in(UnitSystem.METRIC));
        assertEquals(", less than 0.1 dB off", Off.where(40.03, 40, QuantityKind.LEVEL).in(UnitSystem.METRIC));
        assertEquals(", 0.200 % off", Off.where(0.0998, 0.1, QuantityKind.FLOW).in(UnitSystem.METRIC));
    }

    @Test
    void whatReadsOtherwiseNeedsNoMore() {
        assertEquals("", Off.where(12.4, 12, QuantityKind.TEMPERATURE_DIFFERENCE).toString());
        assertEquals("", Off.where(12, 12, QuantityKind.TEMPERATURE_DIFFERENCE).toString());
    }
}
