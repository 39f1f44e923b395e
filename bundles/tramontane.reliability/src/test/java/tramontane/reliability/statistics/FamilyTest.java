package tramontane.reliability.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.EnumSource;

class FamilyTest {

    private static void near(double expected, double actual) {
        // A logarithm of a number near 1 is as good as that number; all else relative.
        assertEquals(expected, actual, 4e-15 * Math.abs(expected) + 2e-16);
    }

    /** mpmath, 60 digits: family.py beside the table. */
    @ParameterizedTest
    @CsvFileSource(resources = "family.csv", numLinesToSkip = 2)
    void logarithmsHoldFarIntoTheTails(Family family, double z, double density, double survival, double failed) {
        near(density, family.logDensity(z));
        near(survival, family.logSurvival(z));
        near(failed, family.logFailed(z));
        assertEquals(Math.exp(density - survival), family.hazard(z), 1e-12 * family.hazard(z) + 1e-300);
    }

    @ParameterizedTest
    @EnumSource(Family.class)
    void derivativesAreThoseOfTheValue(Family family) {
        double[][] times = {{-9, -8.5}, {-3, 1}, {-0.3, 0.2}, {0.4, 0.5}, {1, 1.9}, {-1e-3, 1e-3}, {-20, 2}, {1.5, 1.5 + 0x1p-15}};
        for (Family.Seen seen : Family.Seen.values()) {
            for (double[] z : times) {
                double[] here = new double[6];
                boolean narrow = family.contribution(seen, z[0], z[1], here);
                double h = 0x1p-20;
                double[] above = new double[6];
                double[] below = new double[6];
                family.contribution(seen, z[0] + h, z[1] + h, above);
                family.contribution(seen, z[0] - h, z[1] - h, below);
                String where = seen + " at " + z[0] + " " + z[1];
                double slope = here[1] + here[2];
                assertEquals((above[0] - below[0]) / (2 * h), slope, 2e-7 * (1 + Math.abs(slope)), where);
                double curvature = here[3] + 2 * here[4] + here[5];
                assertEquals((above[1] + above[2] - below[1] - below[2]) / (2 * h), curvature, 2e-6 * (1 + Math.abs(curvature)), where);
                if (seen == Family.Seen.BETWEEN && !narrow) {
                    family.contribution(seen, z[0], z[1] + h * (z[1] - z[0]), above);
                    family.contribution(seen, z[0], z[1] - h * (z[1] - z[0]), below);
                    double step = 2 * h * (z[1] - z[0]);
                    assertEquals((above[0] - below[0]) / step, here[2], 1e-5 * (1 + Math.abs(here[2])), where);
                    assertEquals((above[2] - below[2]) / step, here[5], 1e-5 * (1 + Math.abs(here[5])), where);
                    assertEquals((above[1] - below[1]) / step, here[4], 1e-5 * (1 + Math.abs(here[4])), where);
                }
            }
        }
    }

    @ParameterizedTest
    @EnumSource(Family.class)
    void narrowIntervalsGoOverIntoWideOnes(Family family) {
        for (double z : new double[] {-6, -1, 0, 0.7, 2}) {
            double[] narrow = new double[6];
            double[] wide = new double[6];
            double slope = 1 + Math.abs(family.logDensitySlope(z));
            double first = z;
            assertTrue(family.contribution(Family.Seen.BETWEEN, first, first + 0.99e-4 / slope, narrow));
            assertTrue(!family.contribution(Family.Seen.BETWEEN, first, first + 1.05e-4 / slope, wide));
            assertEquals(Math.log(1.05 / 0.99), wide[0] - narrow[0], 1e-5);
            assertEquals(narrow[1], wide[1] + wide[2], 2e-5 * slope);
        }
    }

    @ParameterizedTest
    @EnumSource(Family.class)
    void aDistributionHasTheSurvivalOfItsStandardisedTime(Family family) {
        double spread = family.shapeKnown() ? 1 : 0.4;
        LifeDistribution life = family.distribution(5, spread);
        for (double failed : new double[] {0.001, 0.1, 0.5, 0.9, 0.999}) {
            double z = family.quantile(failed);
            assertEquals(1 - failed, family.survival(z), 1e-12);
            assertEquals(Math.exp(5 + spread * z), life.life(failed), 1e-9 * life.life(failed));
            assertEquals(family.survival(z), life.survival(life.life(failed)), 1e-9);
        }
        assertEquals(life.mean(), Math.exp(5 + family.logMean(spread)[0]), 1e-9 * life.mean());
        assertEquals(spread, family.spread(family.shape(spread)), 1e-15);
    }

    @Test
    void wordsAreLowerCase() {
        assertEquals("weibull", Family.WEIBULL.word());
        assertThrows(IllegalArgumentException.class, () -> Family.EXPONENTIAL.distribution(3, 0.5));
    }
}
