package tramontane.acoustics.internal.path;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.DoubleStream;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import tramontane.physics.sound.Bands;

/** What holds for the way of sound through any box. */
class SoundPathPropertiesTest {

    private static final int TRIES = 60;

    /** A box with a way outside from each bay, by others or by itself. */
    private record Box(List<Double> linings, List<String[]> passages, List<Double> areas, List<Double> losses) {

        static Box random(int bays, long seed, boolean lined, boolean lossy) {
            Random random = new Random(seed);
            List<Double> linings = new ArrayList<>();
            List<String[]> passages = new ArrayList<>();
            for (int bay = 0; bay < bays; bay++) {
                linings.add(lined && random.nextBoolean() ? random.nextDouble() : 0);
                passages.add(new String[] {"b" + bay, bay == 0 ? "outside" : "b" + random.nextInt(bay)});
            }
            for (int extra = 0; extra < bays; extra++) {
                int from = random.nextInt(bays);
                int to = random.nextInt(bays + 1);
                passages.add(new String[] {"b" + from, to == bays ? "outside" : "b" + (to == from ? (to + 1) % bays : to)});
            }
            List<Double> areas = passages.stream().map(each -> 0.001 + 0.1 * random.nextDouble()).toList();
            List<Double> losses = passages.stream().map(each -> lossy && random.nextBoolean() ? 30 * random.nextDouble() : 0).toList();
            return new Box(linings, passages, areas, losses);
        }

        SoundPath follow() {
            StringBuilder bays = new StringBuilder();
            for (int bay = 0; bay < linings.size(); bay++) {
                bays.append(bay == 0 ? "" : ", ").append(Boxes.bay("b" + bay, linings.get(bay)));
            }
            List<String> written = new ArrayList<>();
            for (int p = 0; p < passages.size(); p++) {
                String[] ends = passages.get(p);
                String noise = losses.get(p) == 0 ? "" : "'insertionLoss': " + losses.get(p);
                written.add(p % 3 == 1 ? Boxes.bank("p" + p, ends[0], ends[1], "'area':"
                        + " " + areas.get(p) + (noise.isEmpty() ? "" : ", " + noise))
                        : Boxes.hole("p" + p, ends[0], ends[1], areas.get(p), noise));
            }
            return Boxes.follow(Boxes.path(bays.toString(), written.toArray(String[]::new)));
        }

        Box withLoss(int passage, double more) {
            List<Double> changed = new ArrayList<>(losses);
            changed.set(passage, losses.get(passage) + more);
            return new Box(linings, passages, areas, changed);
        }

        Box withLining(int bay, double more) {
            List<Double> changed = new ArrayList<>(linings);
            changed.set(bay, linings.get(bay) + more);
            return new Box(changed, passages, areas, losses);
        }

        Box larger(double factor) {
            return new Box(linings, passages, areas.stream().map(area -> factor * area).toList(), losses);
        }
    }

    private static double[] all(SoundPath path) {
        return path.banks().stream().flatMapToDouble(bank -> path.openings().stream().flatMapToDouble(
                opening -> DoubleStream.of(path.share(bank, opening)))).toArray();
    }

    @Property(tries = TRIES)
    void withoutAbsorptionAllPowerLeaves(@ForAll @IntRange(min = 2, max = 12) int bays, @ForAll long seed) {
        SoundPath path = Box.random(bays, seed, false, false).follow();
        for (String bank : path.banks()) {
            for (int third = 0; third < Bands.THIRDS; third++) {
                int at = third;
                assertEquals(1, path.openings().stream().mapToDouble(each -> path.share(bank, each)[at]).sum(), 1e-10);
            }
        }
        assertEquals(List.of(), path.findings());
    }

    @Example
    void roundingMakesNoMoreOfIt() {
        noMoreLeavesThanThereIs(2, 116911);
    }

    @Property(tries = TRIES)
    void noMoreLeavesThanThereIs(@ForAll @IntRange(min = 2, max = 12) int bays, @ForAll long seed) {
        SoundPath path = Box.random(bays, seed, true, true).follow();
        for (String bank : path.banks()) {
            assertTrue(path.openings().stream().mapToDouble(each -> path.share(bank, each)[0]).sum() <= 1 + 1e-12);
        }
        for (double share : all(path)) {
            assertTrue(share >= 0 && share <= 1);
        }
    }

    @Property(tries = TRIES)
    void moreInsertionLossLetsNoMoreOutAnywhere(@ForAll @IntRange(min = 2, max = 8) int bays, @ForAll long seed,
            @ForAll @DoubleRange(min = 0.1, max = 30) double more) {
        Box box = Box.random(bays, seed, true, true);
        noMore(all(box.follow()), all(box.withLoss(new Random(seed).nextInt(box.passages().size()), more).follow()));
    }

    @Property(tries = TRIES)
    void moreLiningLetsNoMoreOutAnywhere(@ForAll @IntRange(min = 2, max = 8) int bays, @ForAll long seed,
            @ForAll @DoubleRange(min = 0.01, max = 10) double more) {
        Box box = Box.random(bays, seed, true, true);
        noMore(all(box.follow()), all(box.withLining(new Random(seed).nextInt(bays), more).follow()));
    }

    private static void noMore(double[] before, double[] after) {
        assertEquals(before.length, after.length);
        for (int i = 0; i < before.length; i++) {
            assertTrue(after[i] <= before[i] * (1 + 1e-11), after[i] + " after " + before[i]);
        }
    }

    @Property(tries = TRIES)
    void onlyRatiosOfAreasCountWithoutLining(@ForAll @IntRange(min = 2, max = 8) int bays, @ForAll long seed,
            @ForAll @DoubleRange(min = 0.1, max = 10) double factor) {
        Box box = Box.random(bays, seed, false, true);
        double[] small = all(box.follow());
        double[] large = all(box.larger(factor).follow());
        for (int i = 0; i < small.length; i++) {
            assertEquals(small[i], large[i], 1e-11);
        }
    }

    /** A stated loss may be too high by its tolerance: what comes out then is within that of the opening. */
    @Property(tries = TRIES)
    void theToleranceHoldsWhateverLossIsTooHigh(@ForAll @IntRange(min = 2, max = 8) int bays, @ForAll long seed) {
        Box box = Box.random(bays, seed, true, true);
        SoundPath stated = box.follow();
        Box lower = box;
        for (int p = 0; p < box.losses().size(); p++) {
            lower = lower.withLoss(p, -Math.min(2, box.losses().get(p)));
        }
        SoundPath truth = lower.follow();
        for (String bank : stated.banks()) {
            for (int o = 0; o < stated.openings().size(); o++) {
                Opening opening = stated.openings().get(o);
                double share = stated.share(bank, opening)[0];
                assertTrue(truth.share(bank, truth.openings().get(o))[0] <= share * Math.pow(10, opening.tolerance() / 10) * (1 + 1e-9));
            }
        }
    }

    /** What one bay gets of the sound of another is what the other gets of its own: the matrix and its solution are symmetric. */
    @Property(tries = TRIES)
    void bothWaysAreAlike(@ForAll @IntRange(min = 1, max = 30) int bays, @ForAll long seed) {
        Random random = new Random(seed);
        double[][] matrix = new double[bays][];
        double[][] full = new double[bays][bays];
        for (int i = 0; i < bays; i++) {
            for (int j = 0; j < i; j++) {
                full[i][j] = random.nextInt(3) == 0 ? -random.nextDouble() : 0;
                full[j][i] = full[i][j];
            }
        }
        for (int i = 0; i < bays; i++) {
            full[i][i] = 0.01 + random.nextDouble() - DoubleStream.of(full[i]).sum();
        }
        for (int i = 0; i < bays; i++) {
            matrix[i] = Arrays.copyOf(full[i], i + 1);
        }
        EnergyBalance balance = EnergyBalance.factor(matrix);
        double[][] inverse = new double[bays][];
        for (int i = 0; i < bays; i++) {
            inverse[i] = balance.solve(i);
        }
        for (int i = 0; i < bays; i++) {
            for (int j = 0; j < bays; j++) {
                double product = 0;
                for (int k = 0; k < bays; k++) {
                    product += full[j][k] * inverse[i][k];
                }
                assertEquals(i == j ? 1 : 0, product, 1e-9);
                assertEquals(inverse[i][j], inverse[j][i], 1e-9 * inverse[i][i]);
            }
        }
    }
}
