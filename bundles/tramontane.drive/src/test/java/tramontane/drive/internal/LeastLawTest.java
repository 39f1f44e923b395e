package tramontane.drive.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import tramontane.drive.ComputedLaws;
import tramontane.model.ControlLaw;
import tramontane.model.Quantities;
import tramontane.model.Quantity;
import tramontane.model.Value;
import tramontane.thermal.LawCurve;

/** The lowest law through what is needed. */
class LeastLawTest {

    @Provide
    Arbitrary<List<LeastLaw.Need>> needs() {
        return Combinators.combine(Arbitraries.doubles().between(280, 350).ofScale(3), Arbitraries.doubles().between(0.1, 1).ofScale(4))
                .as(LeastLaw.Need::new).list().ofMinSize(1).ofMaxSize(12);
    }

    /** The lowest there is: max over needs of s above theirs, of s - k (T_c - T) below. */
    private static double least(List<LeastLaw.Need> needs, double lowest, double slope, double at) {
        return Math.max(lowest, needs.stream().mapToDouble(need -> need.setting() - slope * Math.max(0, need.temperature() - at)).max().orElse(0));
    }

    @Property
    void itGivesWhatIsNeededNeverFallsAndIsNoSteeper(@ForAll("needs") List<LeastLaw.Need> needs, @ForAll @DoubleRange(min = 0.01,
            max = 0.5) double slope,
            @ForAll @DoubleRange(min = 0, max = 0.3) double lowest) {
        List<ComputedLaws.Point> points = LeastLaw.points(needs, lowest, LeastLaw.Steepness.of(slope), 0);
        for (int i = 1; i < points.size(); i++) {
            double width = points.get(i).temperature() - points.get(i - 1).temperature();
            double rise = points.get(i).setting() - points.get(i - 1).setting();
            assertTrue(width > 0, points::toString);
            assertTrue(rise >= -1e-12 && rise <= slope * width * (1 + 1e-9), points::toString);
        }
        assertEquals(1, points.size() == 1 ? 1 : points.getLast().setting(), 1e-9);
        double last = needs.stream().mapToDouble(LeastLaw.Need::temperature).max().orElseThrow();
        double highest = needs.stream().mapToDouble(LeastLaw.Need::setting).max().orElseThrow();
        LawCurve curve = curve(points, 0);
        for (double at = 270; at <= last; at += 0.37) {
            double floor = least(needs, lowest, slope, at);
            double given = curve.up(at);
            assertTrue(given >= floor - 2e-6, at + " K: " + given + " below " + floor + " " + points);
            // level pieces of up to 1 K are left out, so that it rises at most that much earlier
            double full = Math.max(lowest, highest) + slope * Math.max(0, at + 1 - last);
            double early = Math.min(1, Math.max(least(needs, lowest, slope, at + 1), at + 1 > last ? full : 0));
            assertTrue(given <= Math.max(floor, early) + 2e-6, at + " K: " + given + " above " + early + " " + points);
        }
    }

    /** With a hysteresis no rise is so narrow that it would be a switch. */
    @Property
    void noRiseIsASwitch(@ForAll("needs") List<LeastLaw.Need> needs, @ForAll @DoubleRange(min = 0.01, max = 0.5) double slope,
            @ForAll @DoubleRange(min = 0.1, max = 4) double hysteresis) {
        List<ComputedLaws.Point> points = LeastLaw.points(needs, 0.1, new LeastLaw.Steepness(new double[] {0.1, 0.3, 0.6, 1},
                new double[] {slope, 0.5 * slope, 2 * slope}), hysteresis);
        LawCurve curve = curve(points, hysteresis);
        assertEquals(1, curve.stages(), points::toString);
        needs.forEach(need -> assertTrue(curve.up(need.temperature()) >= need.setting() - 2e-6, () -> need + " " + points));
    }

    private static LawCurve curve(List<ComputedLaws.Point> points, double hysteresis) {
        return LawCurve.of(new ControlLaw("law", "box", List.of(), Quantities.of(points.stream().mapToDouble(ComputedLaws.Point::temperature)
                .toArray()),
                Quantities.of(points.stream().mapToDouble(ComputedLaws.Point::setting).toArray()), java.util.Optional.of(Quantity.of(hysteresis)),
                java.util.Optional.empty(), java.util.Optional.empty(), Value.Tree.EMPTY));
    }

    /** By hand: 40 % at 300 K, 80 % at 320 K, 10 %/K: level from 300 to 316 K, then up through 80 % and on to full speed at 322 K. */
    @Test
    void twoNeedsFarApart() {
        List<ComputedLaws.Point> points = LeastLaw.points(List.of(new LeastLaw.Need(320, 0.8), new LeastLaw.Need(300, 0.4)), 0.2,
                LeastLaw.Steepness.of(0.1), 0);
        assertEquals(List.of(298.0, 300.0, 316.0, 320.0, 322.0), points.stream().map(point -> Math.round(1e6 * point.temperature()) / 1e6).toList());
        assertEquals(List.of(0.2, 0.4, 0.4, 0.8, 1.0), points.stream().map(point -> Math.round(1e6 * point.setting()) / 1e6).toList());
    }

    /** By hand: 80 % at 320 K; 5 %/K up to 50 %, 10 %/K above: 50 % at 317 K, 20 % at 311 K; full speed at 322 K. */
    @Test
    void steeperWhereItMayBe() {
        List<ComputedLaws.Point> points = LeastLaw.points(List.of(new LeastLaw.Need(320, 0.8)), 0.2,
                new LeastLaw.Steepness(new double[] {0.2, 0.5, 1}, new double[] {0.05, 0.1}), 0);
        assertEquals(List.of(311.0, 317.0, 320.0, 322.0), points.stream().map(point -> Math.round(1e6 * point.temperature()) / 1e6).toList());
        assertEquals(List.of(0.2, 0.5, 0.8, 1.0), points.stream().map(point -> Math.round(1e6 * point.setting()) / 1e6).toList());
    }

    /** With 8 K of hysteresis each rise takes 8.4 K; what lies 16 K below stays where it is. */
    @Test
    void aWideHysteresisLeavesWhatItDoesNotMeet() {
        List<ComputedLaws.Point> points = LeastLaw.points(List.of(new LeastLaw.Need(320, 0.8), new LeastLaw.Need(300, 0.4)), 0.2,
                LeastLaw.Steepness.of(0.1), 8);
        assertEquals(List.of(291.6, 300.0, 311.6, 320.0, 328.4), points.stream().map(point -> Math.round(1e6 * point.temperature()) / 1e6).toList());
        assertEquals(List.of(0.2, 0.4, 0.4, 0.8, 1.0), points.stream().map(point -> Math.round(1e6 * point.setting()) / 1e6).toList());
    }

    @Test
    void aWarmerNeedForLessDoesNotLowerIt() {
        List<ComputedLaws.Point> points = LeastLaw.points(List.of(new LeastLaw.Need(300, 0.7), new LeastLaw.Need(310, 0.3)), 0.2,
                LeastLaw.Steepness.of(0.1), 0);
        assertEquals(0.7, curve(points, 0).up(310), 1e-12);
    }
}
