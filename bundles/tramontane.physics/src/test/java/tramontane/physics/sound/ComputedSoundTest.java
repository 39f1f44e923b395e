package tramontane.physics.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class ComputedSoundTest {

    /** SciPy: Bessel functions, quadrature over the pattern, interpolation. */
    @ParameterizedTest
    @CsvFileSource(resources = "sound.csv", delimiter = ';')
    void agreesWithTheComputedTable(String what, double first, double second, double third, double expected) {
        switch (what) {
            // absolute against the envelope √(2/πx), as near a zero nothing else can be asked
            case "j1" -> assertEquals(expected, Piston.j1(first), 1e-14 + 3e-16 * Math.sqrt(first));
            case "piston on axis" -> assertEquals(expected, Piston.onAxis(first), 1e-10 * expected);
            case "piston pattern" -> assertEquals(expected, Piston.pattern(first, second), 1e-13);
            case "opening middle" -> assertEquals(expected, OpeningDirectivity.MIDDLE.factor(first, second, third), 1e-9 * expected);
            case "opening wall" -> assertEquals(expected, OpeningDirectivity.WALL.factor(first, second, third), 1e-9 * expected);
            case "nc limit" -> assertEquals(expected, NoiseCriterion.limit((int) first, second), 1e-12);
            case "nc band" -> assertEquals(expected, NoiseCriterion.band((int) first, second), 1e-9);
            case "fan spectrum" -> assertEquals(expected, FanSpectrum.of(first, second).power((int) third), 1e-11 * expected);
            case "off peak" -> assertEquals(expected, FanSpectrum.offPeak(first), 1e-12);
            default -> throw new IllegalArgumentException(what);
        }
    }

    /** Small against the wavelength a piston in a wall radiates evenly into the half space; large, Q goes to (ka)². */
    @Test
    void aPistonHasItsLimits() {
        assertEquals(2, Piston.onAxis(1e-6), 1e-9);
        assertEquals(1, Piston.onAxis(1000) / 1e6, 1e-3);
        assertEquals(2, Piston.factor(1, 0.001, 1.2, 343), 1e-6);
    }

    /** The trend of both on the axis of an opening in a wall; figures as in the description of the class. */
    @ParameterizedTest
    @CsvSource({"0.3142, 2.6, 1.2554", "0.8320, 4.0, 2.0496"})
    void anOpeningInAWallBundlesEarlierThanAPiston(double ka, double factor, double pistonKa) {
        double radius = 0.1;
        double frequency = ka * 343.2 / (2 * Math.PI * radius);
        assertEquals(factor, OpeningDirectivity.WALL.factor(frequency, Math.PI * radius * radius, 0), 1e-3);
        assertEquals(factor, Piston.onAxis(pistonKa), 1e-3);
    }

    @Property
    void anOpeningIsContinuousInAngle(@ForAll OpeningDirectivity opening, @ForAll @DoubleRange(min = 20, max = 20000) double frequency,
            @ForAll @DoubleRange(min = 0.01, max = 1) double side) {
        for (double seam : new double[] {Math.PI / 4, Math.PI / 2, 3 * Math.PI / 4}) {
            assertEquals(opening.factor(frequency, side * side, seam - 1e-9), opening.factor(frequency, side * side, seam + 1e-9), 1e-7);
        }
    }

    /** All directions together never have less power than the opening sends out, and at most 3.4 times as much. */
    @Property
    void anOpeningIsOnTheLoudSide(@ForAll OpeningDirectivity opening, @ForAll @DoubleRange(min = 20, max = 20000) double frequency,
            @ForAll @DoubleRange(min = 0.01, max = 1) double side) {
        double whole = 0;
        int steps = 2000;
        for (int i = 0; i < steps; i++) {
            double angle = Math.PI * (i + 0.5) / steps;
            whole += 0.5 * opening.factor(frequency, side * side, angle) * Math.sin(angle) * Math.PI / steps;
        }
        assertTrue(whole > 1 - 1e-5 && whole < 3.4, "" + whole);
        assertTrue(opening.factor(frequency, side * side, Math.PI) >= 1);
    }

    /** Small against the wavelength an opening knows no directions; larger, it is loudest ahead. */
    @Property
    void anOpeningIsNeverLouderBehindThanAhead(@ForAll OpeningDirectivity opening, @ForAll @DoubleRange(min = 20, max = 20000) double frequency,
            @ForAll @DoubleRange(min = 0.01, max = 1) double side, @ForAll @DoubleRange(min = 0, max = 1.57) double angle) {
        double area = side * side;
        double behind = opening.factor(frequency, area, Math.PI - angle);
        assertTrue(behind <= opening.factor(frequency, area, angle) && behind >= 1, behind + "");
        if (opening == OpeningDirectivity.MIDDLE) {
            assertTrue(opening.factor(frequency, area, angle) <= opening.factor(frequency, area, 0));
            assertEquals(1, opening.factor(31.5, 1e-4, angle));
        }
    }

    @Property
    void aFanSpectrumIsWhole(@ForAll @DoubleRange(min = 20, max = 3000) double speed,
            @ForAll @DoubleRange(min = -0.5, max = 0.6) double type) {
        assertEquals(1, FanSpectrum.of(speed, type).power(Weighting.Z), 1e-12);
    }

    /** St and C: twice the speed moves the spectrum up by an octave, as far as the bands go. */
    @Property
    void aFanSpectrumMovesWithSpeed(@ForAll @DoubleRange(min = 50, max = 500) double speed) {
        Spectrum slow = FanSpectrum.of(speed, FanSpectrum.AXIAL);
        Spectrum fast = FanSpectrum.of(speed * Math.pow(10, 0.3), FanSpectrum.AXIAL);
        for (int i = 1; i < Bands.THIRDS - 3; i++) {
            assertEquals(slow.level(i) - slow.level(i - 1), fast.level(i + 3) - fast.level(i + 2), 1e-9);
        }
    }

    /** Worked by hand: axial at 3000/min, 1 kHz: St 2 · 1000/314.159 = 6.3662, lg 0.80388, −5 − 5 · 0.50388² = −6.26948. */
    @Test
    void anOctaveFollowsTheParabola() {
        assertEquals(-6.26948, FanSpectrum.octaveLevel(1000, 100 * Math.PI, FanSpectrum.AXIAL), 1e-5);
        // thirds by the same parabola make octaves whose steps differ by less than 0.1 dB from it, more where it is steep
        Spectrum spectrum = FanSpectrum.of(100 * Math.PI, FanSpectrum.AXIAL);
        for (int octave = 1; octave < Bands.OCTAVES; octave++) {
            double step = FanSpectrum.octaveLevel(Bands.middle(3 * octave + 1), 100 * Math.PI, FanSpectrum.AXIAL)
                    - FanSpectrum.octaveLevel(Bands.middle(3 * octave - 2), 100 * Math.PI, FanSpectrum.AXIAL);
            assertEquals(step, spectrum.octave(octave) - spectrum.octave(octave - 1), 0.1);
        }
    }

    /** Middles of the steps of the handbook, from memory. */
    @ParameterizedTest
    @CsvSource({"1, 0", "0.95, 0", "0.87, 3", "0.795, 6", "0.695, 9", "0.595, 12", "0.52, 15", "0.3, 15", "0, 15", "1.2, 0", "-1, 15"})
    void offPeakGoesThroughTheSteps(double ratio, double level) {
        assertEquals(level, FanSpectrum.offPeak(ratio), 1e-12);
    }

    @Property
    void offPeakRisesAwayFromThePeak(@ForAll @DoubleRange(min = 0, max = 1) double ratio) {
        assertTrue(FanSpectrum.offPeak(ratio) >= FanSpectrum.offPeak(Math.min(1, ratio + 0.01)) - 1e-12);
    }

    @Test
    void refusesWhatIsOutside() {
        assertThrows(IllegalArgumentException.class, () -> OpeningDirectivity.WALL.factor(0, 1, 0));
        assertThrows(IllegalArgumentException.class, () -> OpeningDirectivity.WALL.factor(100, 1, 3.2));
        assertThrows(IllegalArgumentException.class, () -> Piston.pattern(1, 2));
        assertThrows(IllegalArgumentException.class, () -> Piston.onAxis(0));
        assertThrows(IllegalArgumentException.class, () -> FanSpectrum.of(0, 0.4));
        assertThrows(IllegalArgumentException.class, () -> FanSpectrum.offPeak(Double.NaN));
    }
}
