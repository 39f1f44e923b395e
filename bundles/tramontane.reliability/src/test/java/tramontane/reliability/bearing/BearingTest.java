package tramontane.reliability.bearing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.reliability.statistics.Weibull;

/** Factors of life, rolling bearings and small motors against published tables and independent computation. */
class BearingTest {

    private static final double EV = 1.602176634e-19;
    private static final double ZERO = 273.15;

    /** Computed apart from k = 8.617333262e-5 eV/K; NIST/SEMATECH e-Handbook prints 133 and 17 597 for the first two, with rounded constants. */
    @ParameterizedTest
    @CsvSource({"0.5, 25, 125, 132.66461", "1.0, 25, 125, 17599.900", "0.7, 40, 70, 9.658394", "0.4, 40, 60, 2.434805", "0.5, 40, 70, 5.052467",
        "0.3, 40, 70, 2.643030"})
    void arrheniusAccelerates(double electronVolts, double use, double test, double factor) {
        assertEquals(factor, LifeFactor.arrhenius(electronVolts * EV, test + ZERO, use + ZERO), 1e-6 * factor);
        assertEquals(1 / factor, LifeFactor.arrhenius(electronVolts * EV, use + ZERO, test + ZERO), 1e-6 / factor);
    }

    @ParameterizedTest
    @CsvSource({"1.5, 30, 3.375", "2, 30, 8", "1.5, 20, 2.25", "1.5, -15, 0.5443311"})
    void ruleOfTenKelvin(double factor, double hotter, double acceleration) {
        assertEquals(acceleration, 1 / LifeFactor.perTenKelvin(factor, 313.15, 313.15 + hotter), 1e-6 * acceleration);
    }

    /** The energies at which both laws agree over ten kelvin: they do not anywhere else. */
    @ParameterizedTest
    @CsvSource({"1.5, 40, 0.353576", "1.5, 60, 0.399439", "2, 40, 0.604442"})
    void theTwoLawsAgreeLocallyOnly(double factor, double from, double electronVolts) {
        double low = from + ZERO;
        assertEquals(LifeFactor.perTenKelvin(factor, low, low + 10), LifeFactor.arrhenius(electronVolts * EV, low, low + 10), 1e-5);
        assertTrue(Math.abs(LifeFactor.perTenKelvin(factor, low, low + 60) / LifeFactor.arrhenius(electronVolts * EV, low, low + 60) - 1) > 0.05);
    }

    /** From the relation by hand: 2450 (1/353.15 - 1/343.15) = -0.2021729, -0.301 · 0.864 · 0.5 = -0.1300320; sum -0.3322049. */
    @Test
    void greaseAgesWithTemperatureAndSpeed() {
        assertEquals(Math.pow(10, -0.3322049), LifeFactor.grease(343.15, 353.15, 5000, 10000, 10000), 1e-6);
        assertEquals(1, LifeFactor.grease(343.15, 343.15, 5000, 5000, 10000), 1e-15);
        assertEquals(Math.pow(10, -0.2021729), LifeFactor.grease(343.15, 353.15, 5000, 9000, Double.POSITIVE_INFINITY), 1e-6);
    }

    /** ISO 281: worked examples. */
    @ParameterizedTest
    @CsvSource({"16000, 2000, 1450, 512e6, 5885.057", "4500, 250, 3000, 5832e6, 32400", "600, 12, 3000, 125000e6, 694444.4"})
    void ballBearingLives(double rating, double load, double rpm, double revolutions, double hours) {
        assertEquals(revolutions, RollingBearing.BALL.revolutions(rating, load), 1e-6 * revolutions);
        assertEquals(hours, RollingBearing.BALL.life(rating, load, rpm * Math.PI / 30) / 3600, 1e-6 * hours);
    }

    /** The old table of a1 as the Weibull distribution of shape 1.5 gives it. */
    @ParameterizedTest
    @CsvSource({"0.05, 0.618854", "0.01, 0.208770"})
    void shapeOfBearingLives(double failed, double a1) {
        assertEquals(a1, Weibull.through(1, 0.1, RollingBearing.SHAPE).life(failed), 1e-6);
    }

    /** Two alike: 2^(-9/10) of one. */
    @Test
    void twoBearingsLastShorterThanOne() {
        assertEquals(0.535887, RollingBearing.BALL.together(List.of(1.0, 1.0)), 1e-6);
        assertEquals(7, RollingBearing.BALL.together(List.of(7.0)), 1e-12);
        assertEquals(25, RollingBearing.load(10, 5, 1, 3), 1e-12);
    }

    /** MIL-HDBK-217F Notice 2, table 12.1: printed to two digits; beside it what its formulas give, computed apart and printed to five digits. */
    @ParameterizedTest
    @CsvSource({"0, 3600, 3574.4, 6.4e6, 6.3636e6", "10, 13000, 12598.6, 3.2e6, 3.1523e6", "20, 39000, 38827.6, 1.6e6, 1.6382e6",
        "30, 78000, 78255.0, 8.9e5, 8.8895e5", "40, 80000, 80224.8, 5.0e5, 5.0159e5", "50, 55000, 55234.8, 2.9e5, 2.9323e5",
        "60, 35000, 34605.7, 1.8e5, 1.7704e5", "70, 22000, 21700.9, 1.1e5, 1.1008e5", "80, 14000, 13890.4, 7.0e4, 7.0316e4",
        "90, 9100, 9099.4, 4.6e4, 4.6038e4", "100, 6100, 6095.4, 3.1e4, 3.0834e4", "110, 4200, 4169.0, 2.1e4, 2.1089e4",
        "120, 2900, 2907.0, 1.5e4, 1.4705e4", "130, 2100, 2063.6, 1.0e4, 1.0438e4", "140, 1500, 1489.4, 7.5e3, 7.5339e3"})
    void characteristicLivesOfTheHandbook(double celsius, double bearingTable, double bearing, double windingTable, double winding) {
        assertEquals(bearing, SmallMotor.bearing(celsius + ZERO), 0.05 + 1e-9);
        assertEquals(winding, SmallMotor.winding(celsius + ZERO), 5e-5 * winding);
        assertEquals(bearingTable, SmallMotor.bearing(celsius + ZERO), 0.05 * bearingTable);
        assertEquals(windingTable, SmallMotor.winding(celsius + ZERO), 0.05 * windingTable);
    }

    /** General motor, failures per million hours; computed apart from the formulas and tables of the handbook. */
    @ParameterizedTest
    @CsvSource({"40, 43800, 3.58147", "50, 20000, 3.35693", "60, 10000, 4.16559", "30, 10000, 1.14179"})
    void failureRatesOfMotors(double celsius, double designLife, double rate) {
        double kelvin = celsius + ZERO;
        SmallMotor motor = new SmallMotor(SmallMotor.Kind.ELECTRICAL);
        double computed = motor.rate(SmallMotor.bearing(kelvin), SmallMotor.winding(kelvin), designLife);
        assertEquals(rate, 1e6 * computed, 1e-4 * rate);
        assertEquals(1 / computed, motor.lives(SmallMotor.bearing(kelvin), SmallMotor.winding(kelvin), designLife).mean(), 1e-6 / computed);
    }

    @Test
    void cycleOfTemperatures() {
        assertEquals(41995.10, SmallMotor.cycle(List.of(2.0, 5.0, 1.0), List.of(SmallMotor.bearing(25 + ZERO), SmallMotor.bearing(60 + ZERO),
                SmallMotor.bearing(40 + ZERO))), 1e-5 * 41995);
    }

    /** Grease is stiff in the cold and dries out in the heat. */
    @Test
    void bearingsOfMotorsLastLongestNear35Degrees() {
        double best = 0;
        for (int celsius = 0; celsius <= 140; celsius++) {
            best = SmallMotor.bearing(celsius + ZERO) > SmallMotor.bearing(best + ZERO) ? celsius : best;
        }
        assertEquals(35, best, 1);
    }

    @ParameterizedTest
    @CsvSource({"0.0, 0.13", "0.1, 0.13", "0.105, 0.15", "0.2, 0.15", "0.45, 0.41", "0.9, 0.76", "0.91, 1.0", "7, 1.0"})
    void factorsOfTheHandbook(double ratio, double factor) {
        assertEquals(factor, SmallMotor.factor(ratio));
    }

    @Property
    void lifeFallsWithTemperatureAndSpeed(@ForAll @DoubleRange(min = 260, max = 390) double temperature,
            @ForAll @DoubleRange(min = 0.1, max = 60) double hotter, @ForAll @DoubleRange(min = 1.01, max = 3) double factor,
            @ForAll @DoubleRange(min = 0.1, max = 2) double exponent) {
        assertTrue(LifeFactor.perTenKelvin(factor, 313, temperature + hotter) < LifeFactor.perTenKelvin(factor, 313, temperature));
        assertTrue(LifeFactor.arrhenius(factor * 0.3 * EV, 313, temperature + hotter) < LifeFactor.arrhenius(factor * 0.3 * EV, 313, temperature));
        assertTrue(LifeFactor.grease(313, temperature + hotter, 100, 100, 400) < LifeFactor.grease(313, temperature, 100, 100, 400));
        assertTrue(LifeFactor.speed(exponent, 100, 100 * factor) < 1);
        assertTrue(SmallMotor.winding(temperature + hotter) < SmallMotor.winding(temperature));
        assertTrue(RollingBearing.ROLLER.revolutions(1000, 10 * factor) < RollingBearing.ROLLER.revolutions(1000, 10));
    }
}
