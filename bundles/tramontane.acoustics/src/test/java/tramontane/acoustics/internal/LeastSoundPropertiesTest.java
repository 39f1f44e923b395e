package tramontane.acoustics.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import tramontane.acoustics.Emission;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.Levels;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.Weighting;

/** The least that a source gives over a range of speeds and flows is no more than what it gives anywhere in it. */
class LeastSoundPropertiesTest {

    private static final double DENSITY = 1.1;
    private static final int LOOKS = 60;

    private static String levels(Random random) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 8; i++) {
            text.append(Math.round(200 + 300 * random.nextDouble()) / 10.0).append(' ');
        }
        return "'octaves': '" + text + "dB'";
    }

    private static String tones(Random random) {
        return random.nextBoolean() ? "" : ", 'tones': [{'order': 7, 'level': '" + (30 + random.nextInt(15)) + " dB'}"
                + (random.nextBoolean() ? ", {'frequency': '3 kHz', 'level': '28 dB', 'fixed': true}" : "") + "]";
    }

    private static String point(Random random, int speed, double flow) {
        String level = random.nextInt(4) == 0 ? "'soundPower': '" + (35 + random.nextInt(20)) + " dB'" : levels(random);
        return "{'speed': '" + speed + " rpm', 'flow': '" + flow + " m³/s', " + level + tones(random) + "}";
    }

    /** One point, several flows at one speed, or several speeds. */
    private static SoundSource source(Random random) {
        return Movers.source(switch (random.nextInt(4)) {
            case 0 -> "'soundPower': '46 dB', 'exponent': " + (30 + random.nextInt(50));
            case 1 -> levels(random) + tones(random) + ", 'at': '" + (random.nextBoolean() ? "best point" : "free delivery") + "'";
            case 2 -> "'points': [" + point(random, 3000, 0.015) + ", " + point(random, 3000, 0.03) + ", " + point(random, 3000, 0.045) + "]";
            default -> "'exponent': 55, 'points': [" + point(random, 1500, 0.01) + ", " + point(random, 2200, 0.02) + ", " + point(random, 2200, 0.035) + ", "
                    + point(random, 3000, 0.04) + "]";
        });
    }

    /** A path that takes some bands nearly away and lets their neighbours through. */
    private static double[][] weights(Random random) {
        double[][] rows = new double[2][Bands.THIRDS];
        for (double[] row : rows) {
            for (int third = 0; third < row.length; third++) {
                row[third] = Weighting.A.factor(third) * Levels.power(-30 * random.nextDouble());
            }
        }
        return rows;
    }

    private static double heard(Emission emission, double[] weights) {
        Spectrum total = emission.total();
        double sum = 0;
        for (int third = 0; third < weights.length; third++) {
            sum += total.power(third) * weights[third];
        }
        return sum;
    }

    @Property(tries = 400)
    void nowhereInTheRangeIsItSofter(@ForAll long seed, @ForAll @DoubleRange(min = 0.2, max = 1.2) double slow, @ForAll @DoubleRange(min = 1, max = 3) double times,
            @ForAll @DoubleRange(min = 0, max = 0.05) double from, @ForAll @DoubleRange(min = 0, max = 0.03) double wide) {
        Random random = new Random(seed);
        SoundSource source = source(random);
        double[][] weights = weights(random);
        double slowest = slow * Movers.RATED;
        SoundSource.Obstacles obstacles = new SoundSource.Obstacles(0.02 + 0.2 * random.nextDouble(), Double.POSITIVE_INFINITY);
        double most = random.nextInt(5) == 0 ? Double.POSITIVE_INFINITY : (from + wide) / Movers.RATED;
        double[] least = new LeastSound(source).of(new LeastSound.Range(slowest, slowest * times, from / Movers.RATED, most, false), DENSITY, obstacles, weights);
        for (int i = 0; i < LOOKS; i++) {
            double speed = i == 0 ? slowest : i == 1 ? slowest * times : slowest * Math.pow(times, random.nextDouble());
            double flow = from / Movers.RATED + random.nextDouble() * (Math.min(most, 0.06 / Movers.RATED) - from / Movers.RATED);
            Emission there = source.at(speed, flow * speed, DENSITY, obstacles);
            for (int row = 0; row < weights.length; row++) {
                assertTrue(least[row] >= 0 && least[row] <= heard(there, weights[row]) * (1 + 1e-9), least[row] + " against " + heard(there, weights[row])
                        + " at " + speed / Movers.RATED + ", " + flow * Movers.RATED);
            }
        }
    }

    /** Between two measured speeds a band that is silent at one of them comes up geometrically, far below its share by power. */
    @Test
    void aBandThatIsSilentAtOneSpeedIsNotOverrated() {
        nowhereInTheRangeIsItSofter(-920943, 0.48, 1.17, 0.02, 0.02);
    }

    /**
     * Without a path that favours some bands, a level alone rises by the law: the least is at the lowest speed, and is met but for what is
     * kept free for the shape of the spectrum between two speeds, 0.08 dB.
     */
    @Test
    void aLevelAloneIsLeastAtTheLowestSpeed() {
        SoundSource source = Movers.source("'soundPower': '46 dB'");
        double[] a = new double[Bands.THIRDS];
        for (int third = 0; third < a.length; third++) {
            a[third] = Weighting.A.factor(third);
        }
        double least = new LeastSound(source).of(new LeastSound.Range(Movers.RATED / 2, Movers.RATED, 0.03 / Movers.RATED, 0.05 / Movers.RATED, false), 1.2,
                SoundSource.Obstacles.NONE, new double[][] {a})[0];
        assertEquals(46 - 15.0515 - 0.08, Levels.of(least), 1e-4); // 50 lg 0.5
        double left = new LeastSound(source).of(new LeastSound.Range(Movers.RATED / 2, Movers.RATED, 0.01 / Movers.RATED, 0.01 / Movers.RATED, false), 1.2,
                SoundSource.Obstacles.NONE, new double[][] {a})[0];
        assertEquals(source.at(Movers.RATED / 2, 0.005, 1.2, SoundSource.Obstacles.NONE).level() - 0.08, Levels.of(left), 1e-4);
    }

    /** Of several that share a flow in any way the mean power is no less. */
    @Property(tries = 200)
    void howeverSeveralShareAFlowTheyAreNotSofter(@ForAll long seed, @ForAll @DoubleRange(min = 0, max = 0.05) double mean) {
        Random random = new Random(seed);
        SoundSource source = source(random);
        double[][] weights = weights(random);
        double[] least = new LeastSound(source).of(new LeastSound.Range(Movers.RATED, Movers.RATED, mean / Movers.RATED, mean / Movers.RATED, true), DENSITY,
                SoundSource.Obstacles.NONE, weights);
        for (int i = 0; i < LOOKS; i++) {
            double apart = random.nextDouble() * mean;
            int left = 1 + random.nextInt(3);
            int right = 1 + random.nextInt(3);
            Emission one = source.at(Movers.RATED, mean - apart, DENSITY, SoundSource.Obstacles.NONE);
            Emission other = source.at(Movers.RATED, mean + apart * left / right, DENSITY, SoundSource.Obstacles.NONE);
            for (int row = 0; row < weights.length; row++) {
                double heard = (left * heard(one, weights[row]) + right * heard(other, weights[row])) / (left + right);
                assertTrue(least[row] <= heard * (1 + 1e-9), () -> mean + " and " + apart);
            }
        }
    }
}
