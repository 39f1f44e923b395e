package tramontane.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class AirTest {

    /**
     * CIPM-2007 (Picard et al., Metrologia 45 (2008) 149-155), recalculated from its constants outside this program.
     */
    @ParameterizedTest
    @CsvSource({
        "101325, 20, 0.50, 2339.163, 0.01158934, 1.199314",
        "101325, 20, 0.00, 2339.163, 0,          1.204557",
        "101325, 25, 0.50, 3169.757, 0.01570647, 1.177315",
        "101325, 23, 0.40, 2810.905, 0.01114206, 1.187330",
        "100000, 20, 0.50, 2339.163, 0.01174241, 1.183557",
        "110000, 27, 1.00, 3567.938, 0.03258118, 1.261552",
        "60000,  15, 0.00, 1705.669, 0,          0.725577",
        "95000,  35, 0.80, 5628.865, 0.04760427, 1.055066",
    })
    void densityOfMoistAir(double pressure, double celsius, double humidity, double saturation, double fraction,
            double density) {
        double temperature = celsius + 273.15;
        assertEquals(saturation, Air.saturationPressure(temperature), 1e-6 * saturation);
        assertEquals(fraction, Air.vapourFraction(pressure, temperature, humidity), 1e-6 * fraction);
        assertEquals(density, Air.moistDensity(pressure, temperature, humidity), 1e-6 * density);
        assertEquals(density, new AirState(pressure, temperature, humidity).density(), 1e-6 * density);
    }

    /** Relative sensitivities at 101325 Pa, 20 °C, humidity 0.5, derived from CIPM-2007. */
    @Test
    void densityChangesAsItShould() {
        double rho = Air.moistDensity(101325, 293.15, 0.5);
        assertEquals(9.916e-6, (Air.moistDensity(101335, 293.15, 0.5) - Air.moistDensity(101315, 293.15, 0.5)) / 20 / rho,
                1e-8);
        assertEquals(-3.692e-3, (Air.moistDensity(101325, 293.25, 0.5) - Air.moistDensity(101325, 293.05, 0.5)) / 0.2 / rho,
                4e-6);
        assertEquals(-8.730e-3, (Air.moistDensity(101325, 293.15, 0.51) - Air.moistDensity(101325, 293.15, 0.49)) / 0.02 / rho,
                9e-6);
    }

    /** Far outside the range of CIPM-2007: ideal dry air and ideal vapour side by side. */
    @Test
    void densityStaysNearIdealMoistAirOutsideItsRange() {
        for (double celsius = -40; celsius <= 85; celsius += 5) {
            for (double pressure = 50_000; pressure <= 110_000; pressure += 10_000) {
                for (double humidity = 0; humidity <= 1; humidity += 0.25) {
                    double temperature = celsius + 273.15;
                    double vapour = humidity * Air.saturationPressure(temperature);
                    if (vapour > 0.5 * pressure) {
                        continue; // more steam than air
                    }
                    double ideal = (pressure - 0.37803 * vapour) / (Air.GAS_CONSTANT * temperature);
                    assertEquals(ideal, Air.moistDensity(pressure, temperature, humidity), 2e-3 * ideal,
                            celsius + " °C " + pressure + " Pa " + humidity);
                }
            }
        }
    }

    /** ISO 2533:1975, geopotential altitude. */
    @ParameterizedTest
    @CsvSource({
        "-300, 290.1000, 104981.2, 1.260672, 341.4435, 1.79877e-5, 0.0254790",
        "0,    288.1500, 101325.0, 1.225000, 340.2940, 1.78938e-5, 0.0253259",
        "500,  284.9000, 95460.8,  1.167269, 338.3695, 1.77366e-5, 0.0250700",
        "1000, 281.6500, 89874.6,  1.111643, 336.4340, 1.75785e-5, 0.0248133",
        "2000, 275.1500, 79495.2,  1.006490, 332.5292, 1.72596e-5, 0.0242974",
        "3000, 268.6500, 70108.5,  0.909122, 328.5779, 1.69372e-5, 0.0237782",
        "5000, 255.6500, 54019.9,  0.736116, 320.5294, 1.62812e-5, 0.0227298",
    })
    void standardAtmosphere(double altitude, double temperature, double pressure, double density, double sound,
            double viscosity, double conductivity) {
        assertEquals(temperature, Air.standardTemperature(altitude), 1e-9);
        assertEquals(pressure, Air.standardPressure(altitude), 1e-5 * pressure);
        assertEquals(density, Air.standardPressure(altitude) / (Air.GAS_CONSTANT * temperature), 1e-5 * density);
        assertEquals(sound, Air.speedOfSound(temperature), 1e-5 * sound);
        assertEquals(viscosity, Air.viscosity(temperature), 1e-5 * viscosity);
        assertEquals(conductivity, Air.conductivity(temperature), 1e-5 * conductivity);
    }

    /** ISO 2533:1975, geometric altitude. */
    @ParameterizedTest
    @CsvSource({"1000, 89876.3", "3000, 70121.1", "5000, 54048.3"})
    void geometricAltitudeIsNotGeopotential(double altitude, double pressure) {
        assertEquals(pressure, AirState.atAltitude(altitude, 298.15, 0).pressure(), 1e-6 * pressure);
    }

    /** ISO 2533:1975: 22 632.0 Pa at 11 km, 5474.87 Pa at 20 km (table, from memory). */
    @Test
    void pressureFallsExponentiallyAboveTheTropopause() {
        assertEquals(22632.0, Air.standardPressure(11000), 0.3);
        assertEquals(Air.standardPressure(11000), Air.standardPressure(Math.nextUp(11000.0)), 1e-6);
        assertEquals(5474.87, Air.standardPressure(20000), 0.1);
        assertEquals(4996.070, Air.geopotential(5000), 1e-3);
    }

    /** ISO 2533:1975 formulas, cp 1006 J/(kg K). */
    @ParameterizedTest
    @CsvSource({
        "250,    1.5991e-5, 0.02227, 0.7224",
        "273.15, 1.7161e-5, 0.02414, 0.7152",
        "293.15, 1.8134e-5, 0.02572, 0.7093",
        "300,    1.8460e-5, 0.02625, 0.7074",
        "313.15, 1.9076e-5, 0.02727, 0.7038",
        "350,    2.0736e-5, 0.03004, 0.6943",
        "400,    2.2853e-5, 0.03366, 0.6831",
    })
    void transportProperties(double temperature, double viscosity, double conductivity, double prandtl) {
        // 1e-4 and half a unit of the last printed digit
        assertEquals(viscosity, Air.viscosity(temperature), 1e-4 * viscosity);
        assertEquals(conductivity, Air.conductivity(temperature), 1e-4 * conductivity + 5e-6);
        assertEquals(prandtl, Air.prandtl(temperature), 1e-4 * prandtl + 5e-5);
    }

    /** Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, table A.4: dry air. */
    @ParameterizedTest
    @CsvSource({"250, 1006, 159.6e-7, 22.3e-3, 0.720", "300, 1007, 184.6e-7, 26.3e-3, 0.707",
        "350, 1009, 208.2e-7, 30.0e-3, 0.700"})
    void agreesWithTheTextbook(double temperature, double specificHeat, double viscosity, double conductivity,
            double prandtl) {
        assertEquals(specificHeat, Air.specificHeat(0), 0.003 * specificHeat);
        assertEquals(viscosity, Air.viscosity(temperature), 0.005 * viscosity);
        assertEquals(conductivity, Air.conductivity(temperature), 0.003 * conductivity);
        assertEquals(prandtl, Air.prandtl(temperature), 0.009 * prandtl);
    }

    /** ASHRAE Fundamentals, moist air at 25 °C, 50 %, 101325 Pa: 0.009 881 kg water per kg dry air, dew point 13.864 °C. */
    @Test
    void vapourRaisesSpecificHeatAndGivesADewPoint() {
        double w = 0.0098810;
        assertEquals((1006 + 1860 * w) / (1 + w), new AirState(101325, 298.15, 0.5).specificHeat(), 0.1);
        assertEquals(13.864, Air.dewPoint(298.15, 0.5).orElseThrow() - 273.15, 0.01);
        assertTrue(Air.dewPoint(298.15, 0).isEmpty());
    }

    @ParameterizedTest
    @ValueSource(doubles = {233.15, 273.15, 298.15, 358.15})
    void dewPointIsWhereTheVapourSaturates(double temperature) {
        assertEquals(temperature, Air.dewPoint(temperature, 1).orElseThrow(), 1e-9);
        for (double humidity : new double[] {1e-4, 0.01, 0.3, 0.99}) {
            double dew = Air.dewPoint(temperature, humidity).orElseThrow();
            double vapour = humidity * Air.saturationPressure(temperature);
            assertEquals(vapour, Air.saturationPressure(dew), 1e-9 * vapour);
        }
    }

    /** IAPWS: 57.87 kPa at 85 °C (steam table). */
    @Test
    void saturationHoldsUpToHotElectronics() {
        assertEquals(57867, Air.saturationPressure(358.15), 0.003 * 57867);
    }

    @Test
    void heatingKeepsTheWater() {
        AirState cold = new AirState(101325, 293.15, 0.5);
        AirState hot = cold.heatedTo(333.15);
        assertEquals(Air.vapourFraction(101325, 293.15, 0.5), Air.vapourFraction(101325, 333.15, hot.humidity()), 1e-12);
        assertEquals(0.5, hot.heatedTo(293.15).humidity(), 1e-12);
        assertEquals(1, hot.heatedTo(273.15).humidity());
        assertEquals(cold.density() * 293.15 / 333.15, hot.density(), 1e-3 * hot.density());
    }

    @Test
    void refusesWhatIsNoAir() {
        assertThrows(IllegalArgumentException.class, () -> new AirState(0, 293, 0.5));
        assertThrows(IllegalArgumentException.class, () -> new AirState(Double.NaN, 293, 0.5));
        assertThrows(IllegalArgumentException.class, () -> new AirState(1e5, 0, 0.5));
        assertThrows(IllegalArgumentException.class, () -> new AirState(1e5, Double.POSITIVE_INFINITY, 0.5));
        assertThrows(IllegalArgumentException.class, () -> new AirState(1e5, 293, 1.01));
        assertThrows(IllegalArgumentException.class, () -> new AirState(1e5, 293, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> new AirState(5e4, 358.15, 1));
        assertThrows(IllegalArgumentException.class, () -> AirState.atAltitude(30_000, 293, 0.5));
        assertThrows(IllegalArgumentException.class, () -> Air.viscosity(-1));
    }
}
