package tramontane.physics.heat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** Heat transfer against solutions of the equations that the relations stand for (heat.py). */
class SolvedHeatTest {

    @ParameterizedTest
    @CsvFileSource(resources = "heat.csv", delimiter = ';')
    void agreesWithTheEquations(String what, double first, double second, double third, double value) {
        switch (what) {
            // the constant 0.332 is the wall shear of Blasius, rounded
            case "blasius shear" -> assertEquals(value, FlatPlate.localLaminar(1, 1), 2e-4 * value);
            case "plate" -> plate(first, value);
            case "plate of even flux" -> assertEquals(value, FlatPlate.localEvenFlux(1, first), (first < 0.75 ? 0.0095 : 0.023) * value);
            case "rectangle, even temperature" -> assertEquals(value, Channels.developedEvenTemperature(first), 0.0021 * value);
            case "rectangle, even flux" -> assertEquals(value, Channels.developedEvenFlux(first), 0.001 * value);
            case "plates, developed velocity" -> developedVelocity(first, value);
            case "plates, from the entry" -> fromTheEntry(first, second, value);
            case "fin efficiency" -> assertEquals(value, Fin.efficiency(first), 1e-8);
            case "pin" -> pin(first, second, third, value);
            case "spreading mean" -> spreading(false, first, second, third, value);
            case "spreading maximum" -> spreading(true, first, second, third, value);
            case "half-space mean" -> assertEquals(value, Spreading.HALF_SPACE_MEAN, 1e-8);
            case "half-space centre" -> assertEquals(value, Spreading.HALF_SPACE_CENTRE, 1e-8);
            case "bypass" -> bypass(first, second, third, value);
            case "ESDU bank" -> bank(first, second == 1, value);
            default -> throw new AssertionError(what);
        }
    }

    /** 0.7 % in air; the power 1/3 of Pr is that of large Pr, so it is high below 1 and 2 % low above. */
    private static void plate(double prandtl, double value) {
        assertEquals(value, FlatPlate.localLaminar(1, prandtl), (prandtl > 0.65 && prandtl < 1.5 ? 0.0075 : 0.02) * value);
        // mean over the length of what goes with 1/√x
        assertEquals(2 * value, FlatPlate.laminar(1, prandtl), (prandtl > 0.65 && prandtl < 1.5 ? 0.0075 : 0.02) * 2 * value);
    }

    /** Stephan's form at large Pr, where the velocity develops first: close from y 20 down, then more and more low. */
    private static void developedVelocity(double y, double value) {
        double off = Channels.laminar(y / 1000, 1000, 1, 0) / value - 1;
        assertTrue(off < 0 && off > (y <= 20 ? -0.01 : y <= 50 ? -0.04 : y <= 100 ? -0.09 : -0.32), "off by " + off);
    }

    private static void fromTheEntry(double y, double prandtl, double value) {
        double off = Channels.laminar(y / prandtl, prandtl, 1, 0) / value - 1;
        double low = prandtl < 0.5 ? -0.14 : prandtl <= 1 ? -0.062 : prandtl <= 10 ? -0.043 : -0.32;
        double high = prandtl < 0.5 ? 0.06 : 0.01;
        assertTrue(off >= low && off <= high, "off by " + off);
    }

    /** Exact with the tip; the corrected length of PinFins costs 0.004 %. */
    private static void pin(double h, double diameter, double length, double value) {
        double section = Math.PI / 4 * diameter * diameter;
        assertEquals(value, Fin.conductance(h, Math.PI * diameter, 180, section, length), 1e-7 * value);
        PinFins one = new PinFins(false, 1, 1, diameter, length, 2 * diameter, 3 * diameter, 180);
        double base = h * (6 * diameter * diameter - section);
        assertEquals(value, one.conductance(h) - base, 1e-4 * value);
    }

    /** Plate of 1 m radius, k 1: the fits of Lee et al., within the figures that stand in the Javadoc. */
    private static void spreading(boolean maximum, double epsilon, double tau, double biot, double value) {
        double source = Math.PI * epsilon * epsilon;
        double beyond = 1 / (Math.PI * biot);
        double lee = epsilon * (maximum ? Spreading.maximum(source, Math.PI, tau, 1, beyond) : Spreading.mean(source, Math.PI, tau, 1, beyond));
        double off = lee / value - 1;
        double ofWhole = (lee - value) / (value + epsilon * (Spreading.through(Math.PI, tau, 1) + beyond));
        double low;
        double high;
        if (epsilon > 0.65) {
            low = -0.35;
            high = maximum ? 0.74 : 0.58;
        } else if (maximum) {
            low = biot < 0.5 ? -0.07 : -0.10;
            high = biot < 0.5 ? 0.12 : 0.49;
        } else {
            low = -0.09;
            high = biot < 0.5 ? 0.041 : tau > 0.09 ? 0.10 : 0.23;
        }
        assertTrue(off >= low && off <= high, "off by " + off);
        if (biot < 0.5) {
            assertTrue(epsilon > 0.65 ? Math.abs(ofWhole) < 0.012 : ofWhole > -0.032 && ofWhole < 0.062, "off by " + ofWhole + " of the whole");
        }
    }

    /** The same losses with laminar friction only; turbulence adds nothing at these Reynolds numbers, far below 2300. */
    private static void bypass(double flow, double width, double height, double value) {
        Bypass bypass = new Bypass(new PlateFins(16, 0.0008, 0.060, 0.025, 0.060, 180), width, height, 0.004);
        assertEquals(value, bypass.share(flow, 1.6e-5), 1e-5 * value);
    }

    /** Another relation for the same banks, itself good to 15 %: pitches of 1.5:1 staggered, square in line. */
    private static void bank(double reynolds, boolean staggered, double value) {
        PinFins bank = new PinFins(staggered, 10, 20, 0.01, 0.03, staggered ? 0.03 : 0.02, 0.02, 200);
        assertEquals(value, bank.nusselt(reynolds, 0.71), 0.15 * value);
    }
}
