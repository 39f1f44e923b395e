package tramontane.physics.heat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleUnaryOperator;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;

/** What holds for any heat transfer: rising, continuous, with the right limits. */
class HeatPropertiesTest {

    /** A Nusselt number against Re, Re* or Ra, to where it is asked, with the places at which its pieces meet. */
    record Relation(String name, double most, double[] joins, DoubleUnaryOperator nusselt) {
        @Override
        public String toString() {
            return name;
        }
    }

    @Provide
    Arbitrary<Relation> relations() {
        double pr = 0.71;
        return Arbitraries.of(
                new Relation("plate", 1e8, new double[] {FlatPlate.TRANSITION}, x -> FlatPlate.mean(x, pr)),
                new Relation("plate, laminar", 1e8, new double[] {}, x -> FlatPlate.laminar(x, pr)),
                new Relation("plate, turbulent", 1e8, new double[] {}, x -> FlatPlate.turbulent(x, pr)),
                new Relation("plate of even flux", 1e8, new double[] {}, x -> FlatPlate.localEvenFlux(x, pr)),
                new Relation("plate fins", 1e6, new double[] {}, x -> PlateFins.nusselt(x, pr)),
                new Relation("cylinder", 1e7, new double[] {}, x -> CrossFlow.cylinder(x, pr)),
                new Relation("Dittus-Boelter", 1e7, new double[] {}, x -> Channels.dittusBoelter(x, pr)),
                new Relation("upright plate", 1e12, new double[] {}, x -> NaturalConvection.verticalPlate(x, pr)),
                new Relation("upright plate, laminar", 1e9, new double[] {}, x -> NaturalConvection.verticalPlateLaminar(x, pr)),
                new Relation("lying cylinder", 1e12, new double[] {}, x -> NaturalConvection.horizontalCylinder(x, pr)),
                new Relation("face up", 1e11, new double[] {Math.pow(3.6, 12), 1e7}, NaturalConvection::hotFaceUp),
                new Relation("face down", 1e9, new double[] {}, NaturalConvection::hotFaceDown));
    }

    @Property
    void nusseltNumbersRise(@ForAll("relations") Relation relation, @ForAll @Scale(6) @DoubleRange(min = -9, max = 1) double exponent) {
        double x = relation.most() * Math.pow(10, Math.min(0, exponent));
        rises(relation.nusselt(), x);
    }

    @Property
    void nusseltNumbersAreContinuous(@ForAll("relations") Relation relation) {
        for (double join : relation.joins()) {
            continuous(relation.nusselt(), join);
        }
        finiteAtRest(relation.nusselt());
    }

    /** From a short channel to an endless one, of any shape. */
    @Property
    void channelsRise(@ForAll @Scale(6) @DoubleRange(min = -2, max = 6.5) double exponent,
            @ForAll @Scale(6) @DoubleRange(min = -6, max = 0) double overLength,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 1) double aspect,
            @ForAll @Scale(6) @DoubleRange(min = 0.5, max = 10) double prandtl) {
        double over = Math.pow(10, overLength);
        DoubleUnaryOperator nusselt = x -> Channels.mean(x, prandtl, over, aspect);
        double reynolds = Math.pow(10, exponent);
        // straight, and level where a short channel would give less turbulent than laminar at 2300
        assertTrue(nusselt.applyAsDouble(reynolds * 1.001) >= nusselt.applyAsDouble(reynolds));
        continuous(nusselt, Channels.LAMINAR);
        continuous(nusselt, Channels.TURBULENT);
        finiteAtRest(nusselt);
        assertEquals(Channels.developedEvenTemperature(aspect), nusselt.applyAsDouble(0), 0);
        assertTrue(Channels.mean(reynolds, prandtl, over * 1.01, aspect) >= Channels.mean(reynolds, prandtl, over, aspect));
    }

    /** Level nowhere but there: a channel of more than ten diameters rises all along. */
    @Property
    void longChannelsRiseAllAlong(@ForAll @Scale(6) @DoubleRange(min = 0, max = 6.5) double exponent,
            @ForAll @Scale(6) @DoubleRange(min = -6, max = -1) double overLength,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 1) double aspect) {
        rises(x -> Channels.mean(x, 0.71, Math.pow(10, overLength), aspect), Math.pow(10, exponent));
    }

    @Property
    void turbulentChannelsRise(@ForAll @Scale(6) @DoubleRange(min = 2300, max = 5e6) double reynolds,
            @ForAll @Scale(6) @DoubleRange(min = 0.5, max = 100) double prandtl) {
        rises(x -> Channels.gnielinski(x, prandtl), reynolds);
    }

    @Property
    void banksRise(@ForAll("banks") PinFins bank, @ForAll @Scale(6) @DoubleRange(min = -3, max = 6.3) double exponent,
            @ForAll @Scale(6) @DoubleRange(min = 0.65, max = 10) double prandtl) {
        DoubleUnaryOperator nusselt = x -> bank.nusselt(x, prandtl);
        rises(nusselt, Math.pow(10, exponent));
        for (double join : bank.staggered() ? new double[] {500, 1000, 2e5} : new double[] {100, 1000, 2e5}) {
            continuous(nusselt, join / 1.25);
            continuous(nusselt, join);
            continuous(nusselt, join * 1.25);
        }
        finiteAtRest(nusselt);
        assertEquals(0, nusselt.applyAsDouble(0), 0);
    }

    /** Zukauskas' spread is 15 %: joining the pieces may not leave it, pitches 1:2 to 2:1, air. */
    @Property
    void joinedBanksStayWithinTheSpread(@ForAll("banks") PinFins bank, @ForAll @Scale(6) @DoubleRange(min = 0, max = 6.3) double exponent) {
        double reynolds = Math.pow(10, exponent);
        double ratio = Math.max(0.5, Math.min(2, bank.pitchAcross() / bank.pitchAlong()));
        double pitches = Math.pow(ratio, 0.2);
        double piece;
        if (bank.staggered()) {
            piece = Math.pow(0.71, 0.36) * (reynolds < 500 ? 1.04 * Math.pow(reynolds, 0.4) : reynolds < 1000 ? 0.71 * Math.sqrt(reynolds)
                    : reynolds < 2e5 ? 0.35 * pitches * Math.pow(reynolds, 0.6) : 0.031 * pitches * Math.pow(reynolds, 0.8));
        } else {
            piece = Math.pow(0.71, 0.36) * (reynolds < 100 ? 0.9 * Math.pow(reynolds, 0.4) : reynolds < 1000 ? 0.52 * Math.sqrt(reynolds)
                    : reynolds < 2e5 ? 0.27 * Math.pow(reynolds, 0.63) : 0.033 * Math.pow(reynolds, 0.8) * Math.pow(0.71, 0.04));
        }
        assertEquals(1, bank.nusselt(reynolds, 0.71) / (PinFins.rowFactor(bank.staggered(), bank.rows()) * piece), 0.1455);
    }

    @Property
    void moreRowsGiveMorePerPin(@ForAll boolean staggered, @ForAll @IntRange(min = 1, max = 40) int rows) {
        assertTrue(PinFins.rowFactor(staggered, rows + 1) >= PinFins.rowFactor(staggered, rows));
        assertTrue(PinFins.rowFactor(staggered, rows) <= 1);
    }

    @Property
    void conductanceOfBanksRisesWithFlow(@ForAll("banks") PinFins bank,
            @ForAll @Scale(6) @DoubleRange(min = -3, max = 1.5) double exponent) {
        rises(x -> bank.conductance(bank.coefficient(x, 1.6e-5, 0.026, 0.71)), Math.pow(10, exponent));
        assertEquals(0, bank.conductance(bank.coefficient(0, 1.6e-5, 0.026, 0.71)), 0);
        assertTrue(bank.contraction() > 1);
    }

    @Property
    void conductanceOfPlateFinsRisesWithFlow(@ForAll("sinks") PlateFins sink,
            @ForAll @Scale(6) @DoubleRange(min = -4, max = 2) double exponent) {
        double velocity = Math.pow(10, exponent);
        rises(x -> sink.conductance(sink.coefficient(x, 1.6e-5, 0.026, 0.71)), velocity);
        assertEquals(0, sink.conductance(sink.coefficient(0, 1.6e-5, 0.026, 0.71)), 0);
        // both sides of a gap give no more than air takes along that leaves as warm as they are: ρ cp u b with ρ cp = k Pr/ν
        double h = sink.coefficient(velocity, 1.6e-5, 0.026, 0.71);
        double carried = 0.026 * 0.71 / 1.6e-5 * velocity * sink.gap();
        assertTrue(h * 2 * sink.length() <= carried * (1 + 1e-9), h * 2 * sink.length() + " > " + carried);
    }

    /** Between fins far apart or in fast air each side is a flat plate; in slow air all of it gets as warm as they are. */
    @Property
    void plateFinsInTheLimits(@ForAll @Scale(6) @DoubleRange(min = 0.6, max = 10) double prandtl) {
        for (double modified : new double[] {1e-8, 1e-6, 1e-4}) {
            assertEquals(1, PlateFins.nusselt(modified, prandtl) / (modified * prandtl / 2), 1e-3);
        }
        for (double modified : new double[] {1e9, 1e11, 1e13}) {
            assertEquals(1, PlateFins.nusselt(modified, prandtl) / FlatPlate.laminar(modified, prandtl), 1e-4);
        }
    }

    @Property
    void efficiencyOfFins(@ForAll @Scale(6) @DoubleRange(min = -9, max = 4) double exponent) {
        double ml = Math.pow(10, exponent);
        double efficiency = Fin.efficiency(ml);
        assertTrue(efficiency > 0 && efficiency <= 1);
        assertTrue(Fin.efficiency(ml * 1.01) <= efficiency);
        assertEquals(1, Fin.efficiency(0), 0);
        continuous(Fin::efficiency, 1e-4);
    }

    /** A fin gives at most what it would if it were as warm as its base, and no less than its base without it. */
    @Property
    void heatOfFins(@ForAll @Scale(6) @DoubleRange(min = 0.1, max = 500) double h,
            @ForAll @Scale(6) @DoubleRange(min = 2, max = 400) double conductivity,
            @ForAll @Scale(6) @DoubleRange(min = 1e-4, max = 0.01) double diameter,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 0.3) double length) {
        double section = Math.PI / 4 * diameter * diameter;
        double heat = Fin.conductance(h, Math.PI * diameter, conductivity, section, length);
        assertTrue(heat > 0 && heat <= h * (Math.PI * diameter * length + section) * (1 + 1e-12));
        assertEquals(h * section, Fin.conductance(h, Math.PI * diameter, conductivity, section, 0), 1e-12 * h * section);
        assertEquals(0, Fin.conductance(0, Math.PI * diameter, conductivity, section, length), 0);
        // a fin pays as long as its end takes less than a fin without end: h D/4 < k, here always
        assertTrue(Fin.conductance(h, Math.PI * diameter, conductivity, section, length + 0.001) >= heat * (1 - 1e-12));
    }

    @Property
    void spreadingFallsWithTheSourceAndRisesWithWhatIsBeyond(@ForAll @Scale(6) @DoubleRange(min = 0.02, max = 0.98) double epsilon,
            @ForAll @Scale(6) @DoubleRange(min = -2, max = 1) double thickness,
            @ForAll @Scale(6) @DoubleRange(min = -4, max = 3) double beyond) {
        double tau = Math.pow(10, thickness);
        double r0 = Math.pow(10, beyond);
        double source = Math.PI * epsilon * epsilon;
        double mean = Spreading.mean(source, Math.PI, tau, 1, r0);
        double maximum = Spreading.maximum(source, Math.PI, tau, 1, r0);
        assertTrue(mean > 0 && mean < maximum);
        // in a thick plate what is beyond is no longer felt, but for rounding
        assertTrue(Spreading.mean(source, Math.PI, tau, 1, r0 * 1.1) >= mean * (1 - 1e-14));
        assertTrue(Spreading.maximum(source, Math.PI, tau, 1, r0 * 1.1) >= maximum * (1 - 1e-14));
        assertTrue(Spreading.mean(source * 1.01, Math.PI, tau, 1, r0) < mean);
        assertTrue(Spreading.maximum(source * 1.01, Math.PI, tau, 1, r0) < maximum);
        // ends of the range
        assertTrue(Spreading.mean(source, Math.PI, tau, 1, 0) <= mean * (1 + 1e-14));
        double insulated = Spreading.mean(source, Math.PI, tau, 1, Double.POSITIVE_INFINITY);
        assertTrue(insulated >= mean * (1 - 1e-12));
        assertEquals(insulated, Spreading.mean(source, Math.PI, tau, 1, 1e12), 1e-6 * insulated);
        // with dimensions: lengths by 1000, k by 100
        assertEquals(mean / 1e5, Spreading.mean(source * 1e6, Math.PI * 1e6, tau * 1e3, 100, r0 / 1e5), 1e-12 * mean / 1e5);
    }

    @Property
    void noSpreadingWhereTheSourceCoversThePlate(@ForAll @Scale(6) @DoubleRange(min = 1e-6, max = 10) double area,
            @ForAll @Scale(6) @DoubleRange(min = 1e-4, max = 1) double thickness,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 100) double beyond) {
        assertEquals(0, Spreading.mean(area, area, thickness, 1, beyond), 0);
        assertEquals(0, Spreading.maximum(area, area, thickness, 1, beyond), 0);
        assertTrue(Spreading.maximum(area * (1 - 1e-9), area, thickness, 1, beyond) < 1e-6 / Math.sqrt(area) * (1 + Math.sqrt(area) / thickness));
    }

    @Property
    void shareBetweenTheFins(@ForAll("sinks") PlateFins sink, @ForAll @Scale(6) @DoubleRange(min = 1, max = 3) double wider,
            @ForAll @Scale(6) @DoubleRange(min = 1.0001, max = 3) double higher,
            @ForAll @Scale(6) @DoubleRange(min = -9, max = -0.5) double exponent) {
        double base = 0.004;
        Bypass bypass = new Bypass(sink, sink.width() * wider, (sink.height() + base) * higher, base);
        double flow = Math.pow(10, exponent);
        double share = bypass.share(flow, 1.6e-5);
        assertTrue(share > 0 && share <= 1);
        // what goes between the fins and past them is the flow
        assertEquals(share * flow, bypass.velocity(flow, 1.6e-5) * sink.flowArea(), 1e-12 * flow);
        double past = flow - bypass.velocity(flow, 1.6e-5) * sink.flowArea();
        assertTrue(past >= -1e-12 * flow);
        // both ways take more of more air
        rises(x -> bypass.velocity(x, 1.6e-5), flow);
        assertTrue(flow * 1.02 - bypass.velocity(flow * 1.02, 1.6e-5) * sink.flowArea() >= past * (1 - 1e-6) - 1e-12 * flow);
        // only Reynolds numbers count
        assertEquals(share, bypass.share(flow * 10, 1.6e-4), 1e-9);
    }

    @Property
    void shareAtRest(@ForAll("sinks") PlateFins sink, @ForAll @Scale(6) @DoubleRange(min = 1, max = 3) double wider,
            @ForAll @Scale(6) @DoubleRange(min = 1.0001, max = 3) double higher) {
        Bypass bypass = new Bypass(sink, sink.width() * wider, (sink.height() + 0.004) * higher, 0.004);
        double atRest = bypass.share(0, 1.6e-5);
        assertTrue(atRest > 0 && atRest <= 1);
        assertEquals(0, bypass.velocity(0, 1.6e-5), 0);
        for (double flow : new double[] {1e-9, 1e-12, 1e-15, 1e-30}) {
            assertEquals(atRest, bypass.share(flow, 1.6e-5), 1e-3 * flow / 1e-9 + 1e-9);
        }
    }

    @Property
    void allGoesBetweenTheFinsOfASinkThatFillsItsDuct(@ForAll("sinks") PlateFins sink,
            @ForAll @Scale(6) @DoubleRange(min = -9, max = 0) double exponent) {
        double flow = Math.pow(10, exponent);
        Bypass full = new Bypass(sink, sink.width(), sink.height() + 0.004, 0.004);
        assertEquals(1, full.share(flow, 1.6e-5), 0);
        assertEquals(flow / sink.flowArea(), full.velocity(flow, 1.6e-5), 1e-12 * flow / sink.flowArea());
        Bypass nearly = new Bypass(sink, sink.width(), (sink.height() + 0.004) * (1 + 1e-6), 0.004);
        assertTrue(nearly.share(flow, 1.6e-5) > 0.999);
    }

    @Test
    void platesBetweenWhichNothingIsRadiated() {
        assertEquals(0, Radiation.flux(0.9, 300, 300), 0);
        assertEquals(-Radiation.flux(0.9, 300, 400), Radiation.flux(0.9, 400, 300), 1e-9);
        assertEquals(Radiation.flux(1, 400, 300), Radiation.betweenPlates(1, 1, 400, 300), 1e-9);
        assertEquals(Radiation.flux(1, 400, 300), Radiation.coefficient(400, 300) * 100, 1e-9);
    }

    /** More pins than fit an int. */
    @Test
    void manyPins() {
        PinFins one = new PinFins(false, 1, 1, 0.001, 0.02, 0.003, 0.003, 180);
        PinFins many = new PinFins(false, 100_000, 100_000, 0.001, 0.02, 0.003, 0.003, 180);
        assertEquals(1e10 * one.conductance(50), many.conductance(50), 1e-12 * many.conductance(50));
    }

    /** Cold or warm, it is the size of the difference that counts. */
    @Property
    void rayleighNumbers(@ForAll @Scale(6) @DoubleRange(min = 0, max = 300) double difference,
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 3) double length) {
        double rayleigh = NaturalConvection.rayleigh(difference, length, 300, 1.6e-5, 2.2e-5);
        assertEquals(rayleigh, NaturalConvection.rayleigh(-difference, length, 300, 1.6e-5, 2.2e-5), 0);
        assertEquals(8 * rayleigh, NaturalConvection.rayleigh(difference, 2 * length, 300, 1.6e-5, 2.2e-5), 1e-12 * 8 * rayleigh);
    }

    @Provide
    Arbitrary<PlateFins> sinks() {
        Arbitrary<Double> unit = Arbitraries.doubles().between(0, 1).ofScale(6);
        return unit.list().ofSize(4).map(u -> {
            double thickness = 0.0003 + 0.002 * u.get(0);
            double gap = 0.001 + 0.006 * u.get(1);
            int fins = 3 + (int) (20 * u.get(2));
            double height = 0.008 + 0.05 * u.get(3);
            return new PlateFins(fins, thickness, fins * thickness + (fins - 1) * gap, height, 0.02 + 0.2 * u.get(0), 180);
        });
    }

    @Provide
    Arbitrary<PinFins> banks() {
        Arbitrary<Double> unit = Arbitraries.doubles().between(0, 1).ofScale(6);
        return unit.list().ofSize(5).map(u -> {
            double diameter = 0.001 + 0.01 * u.get(0);
            return new PinFins(u.get(4) < 0.5, 1 + (int) (10 * u.get(0)), 1 + (int) (25 * u.get(1)), diameter, 0.03, diameter * (1.2 + 8 * u.get(2)),
                    diameter * (1.2 + 8 * u.get(3)), 180);
        });
    }

    private static void rises(DoubleUnaryOperator value, double x) {
        double before = value.applyAsDouble(x);
        double behind = value.applyAsDouble(x * 1.001);
        assertTrue(Double.isFinite(before) && before >= 0 && behind > before, before + " at " + x + ", then " + behind);
    }

    private static void continuous(DoubleUnaryOperator value, double join) {
        double before = value.applyAsDouble(join * (1 - 1e-12));
        assertEquals(before, value.applyAsDouble(join), 1e-9 * before);
        assertEquals(before, value.applyAsDouble(join * (1 + 1e-12)), 1e-9 * before);
    }

    private static void finiteAtRest(DoubleUnaryOperator value) {
        for (double x : new double[] {0, Double.MIN_VALUE, 1e-300, 1e-30, 1e-9}) {
            double nusselt = value.applyAsDouble(x);
            assertTrue(Double.isFinite(nusselt) && nusselt >= 0, nusselt + " at " + x);
        }
        assertEquals(value.applyAsDouble(0), value.applyAsDouble(1e-60), 1e-5);
    }
}
