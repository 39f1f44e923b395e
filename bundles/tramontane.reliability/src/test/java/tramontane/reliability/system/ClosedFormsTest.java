package tramontane.reliability.system;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

import tramontane.reliability.statistics.Exponential;
import tramontane.reliability.statistics.LifeDistribution;
import tramontane.reliability.statistics.Weibull;

class ClosedFormsTest {

    /** Binomial sums in SciPy, failure rate 1e-5 per h. */
    @ParameterizedTest
    @CsvSource({"1, 2, 1.5, 0.992965363, 0.874206", "2, 3, 0.833333, 0.980076116, 0.711850", "3, 4, 0.583333, 0.962363832, 0.554691",
        "4, 5, 0.45, 0.940728223, 0.419467", "5, 6, 0.366667, 0.915952009, 0.310387", "2, 4, 1.083333, 0.997788401, 0.869009"})
    void exponential(int needed, int units, double mean, double year, double five) {
        KOutOfN system = new KOutOfN(needed, units);
        LifeDistribution life = new Exponential(1e5);
        assertEquals(mean * 1e5, system.meanWithoutAgeing(1e5), 0.1);
        assertEquals(year, system.survival(life, 8760), 1e-6);
        assertEquals(five, system.survival(life, 43800), 1e-6);
        assertEquals(1 - year, system.failed(life, 8760), 1e-6);
        assertEquals(system.meanWithoutAgeing(1e5), SystemSurvival.of(needed, units, life).mean(), 1e-3);
    }

    /** SciPy, Weibull of shape 3 and L10 60 000 h. */
    @ParameterizedTest
    @CsvSource({"1, 1, 0.95984158", "1, 2, 0.99838730", "3, 4, 0.99083411", "4, 5, 0.98512969"})
    void weibull(int needed, int units, double survival) {
        LifeDistribution life = Weibull.through(60000, 0.1, 3);
        assertEquals(survival, new KOutOfN(needed, units).survival(life, 43800), 1e-6);
        assertEquals(survival, SystemSurvival.of(needed, units, life).survival(43800), 1e-6);
    }

    /** NIST/SEMATECH e-Handbook 8.1.8.5: F = 1 - (1 + λt) exp(-λt). */
    @Test
    void standby() {
        assertEquals(0.9279785, KOutOfN.standbySurvival(2, 1e5, 43800), 1e-6);
        assertEquals(1 - 1.438 * Math.exp(-0.438), KOutOfN.standbyFailed(2, 1e5, 43800), 1e-14);
        double small = 1e-6;
        assertEquals(small * small / 2 - small * small * small / 3, KOutOfN.standbyFailed(2, 1, small), 1e-24);
    }

    static Stream<List<String>> poisson() {
        return Golden.rows("poisson.csv");
    }

    /** SciPy, stats.poisson: golden.py. */
    @ParameterizedTest
    @MethodSource("poisson")
    void spares(List<String> row) {
        double[] cell = row.stream().mapToDouble(Double::parseDouble).toArray();
        Spares spares = new Spares(cell[0], 0);
        assertEquals((int) cell[2], spares.needed(cell[1]));
        assertEquals(cell[3], spares.shortage((int) cell[2]), 1e-9 * cell[3]);
        assertEquals((int) cell[2] + 12, spares.withBatch(12).needed(cell[1]));
        assertEquals(1, spares.withBatch(12).shortage(11));
    }

    @Test
    void sparesOfAFleet() {
        assertEquals(new Spares(4e-5 * 720 * 100, 0), Spares.of(4e-5, 720, 100));
        assertEquals(0, new Spares(0, 0).needed(0.99));
        assertThrows(IllegalArgumentException.class, () -> new Spares(1, 0).needed(1));
    }

    @Test
    void longestIntervals() {
        MaintenanceInterval service = new MaintenanceInterval(SystemSurvival.of(1, 1, new Exponential(1)));
        assertEquals(1 + Math.expm1(-0.3) / 0.3, service.unavailability(0.3), 1e-9);
        for (double wanted : new double[] {1e-6, 0.01, 0.3}) {
            double interval = service.longestForUnavailability(wanted);
            assertEquals(wanted, service.unavailability(interval), 1e-8 * wanted);
        }
        assertEquals(service.longestForUnavailability(0.01), service.longestForAvailability(0.99), 1e-10);
        assertEquals(-Math.log(0.9), service.longestForSurvival(0.9), 1e-9);
        assertEquals(1 - (1 - Math.exp(-50)) / 50, service.unavailability(50), 1e-9);
        for (SystemSurvival system : Sharing.CASES.values()) {
            MaintenanceInterval shared = new MaintenanceInterval(system);
            assertEquals(0.999, shared.availability(shared.longestForAvailability(0.999)), 1e-9);
        }
    }

    @Test
    void exchanges() {
        LifeDistribution steady = new Exponential(10);
        // Without wear, a visit finds a unit failed with probability 1 - exp(-τ/θ).
        assertEquals(-Math.expm1(-0.3) / 3, MaintenanceInterval.exchangesAtVisits(steady, 3), 1e-13);
        assertEquals(0.1, MaintenanceInterval.exchangesOnFailure(steady), 0);
        LifeDistribution wear = new Weibull(1, 3);
        assertEquals(1 / (wear.mean() + 0.5e-3), MaintenanceInterval.exchangesAtVisits(wear, 1e-3), 1e-8);
        assertEquals(1 / (wear.mean() + 0.5e-7), MaintenanceInterval.exchangesAtVisits(wear, 1e-7), 1e-12);
        assertTrue(MaintenanceInterval.exchangesAtVisits(wear, 0.5) < MaintenanceInterval.exchangesOnFailure(wear));
        assertEquals(4 * 50 / 2.0, new MaintenanceInterval(SystemSurvival.of(3, 4, wear)).exchangesOfAll(2, 50), 0);
    }
}
