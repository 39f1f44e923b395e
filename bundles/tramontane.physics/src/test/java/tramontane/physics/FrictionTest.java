package tramontane.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FrictionTest {

    /** From the formulas of Colebrook (1939), Haaland (1983), Churchill (1977); seven digits. */
    @ParameterizedTest
    @CsvSource({
        "4000, 0,    0.0399070, 0.0404228, 0.0405897",
        "4000, 0.01, 0.0490823, 0.0492358, 0.0505783",
        "1e4, 0.001, 0.0323818, 0.0321749, 0.0326902",
        "2e4, 0.005, 0.0344700, 0.0342773, 0.0349953",
        "1e5, 1e-4,  0.0185139, 0.0182651, 0.0184626",
        "1e5, 0.01,  0.0385035, 0.0385385, 0.0387336",
        "1e6, 1e-5,  0.0118695, 0.0117669, 0.0118582",
        "1e7, 0.001, 0.0196671, 0.0197019, 0.0196775",
    })
    void factors(double reynolds, double roughness, double colebrook, double haaland, double churchill) {
        assertEquals(colebrook, Friction.colebrook(reynolds, roughness), 1e-6 * colebrook + 5e-8);
        assertEquals(haaland, Friction.haaland(reynolds, roughness), 1e-6 * haaland + 5e-8);
        assertEquals(churchill, Friction.churchill(reynolds, roughness), 1e-6 * churchill + 5e-8);
    }

    /** Churchill (1977) in laminar flow. */
    @ParameterizedTest
    @CsvSource({"1000, 0, 0.0640000", "2000, 0.001, 0.0320433"})
    void laminarFactors(double reynolds, double roughness, double churchill) {
        assertEquals(churchill, Friction.churchill(reynolds, roughness), 1e-6 * churchill + 5e-8);
    }

    /** Blasius 1913, f = 0.3164/Re^0.25, is within some 3 % of Colebrook's smooth duct from 4e3 to 1e5. */
    @ParameterizedTest
    @CsvSource({"4000", "1e4", "3e4", "1e5"})
    void smoothDuctsAreNearBlasius(double reynolds) {
        double blasius = 0.3164 / Math.pow(reynolds, 0.25);
        assertEquals(blasius, Friction.colebrook(reynolds, 0), 0.03 * blasius);
    }

    /** Shah and London (1978), f Re of rectangular ducts, Fanning; the series and a spectral solution agree. */
    @ParameterizedTest
    @CsvSource({"1, 14.22708", "2, 15.54806", "3, 17.08967", "4, 18.23278", "6, 19.70220", "8, 20.58464", "10, 21.16888"})
    void rectangles(double longOverShort, double fanning) {
        double a = 1 / longOverShort;
        assertEquals(fanning, Friction.laminarRectangle(a) / 4, 1e-5);
        double polynomial = 24 * (1 + a * (-1.3553 + a * (1.9467 + a * (-1.7012 + a * (0.9564 - 0.2537 * a)))));
        assertEquals(polynomial, Friction.laminarRectangle(a) / 4, 1e-3 * polynomial);
    }

    @Test
    void parallelPlatesAreTheLimit() {
        assertEquals(96, Friction.laminarRectangle(0), 1e-12);
        assertEquals(96, Friction.laminarRectangle(1e-6), 3e-4);
    }

    /**
     * Shah (1978), f_app Re between parallel plates, Fanning, and the friction of a card channel of 0.2 m with 1 m/s of air of
     * 1.1614 kg/m³ and 1.846e-5 Pa s; also with a loss of 0.5 and 1.0 velocity heads.
     */
    @ParameterizedTest
    @CsvSource({
        "0.0127, 1598.03, 53.19443, 0.60882, 0.27469, 1.47987",
        "0.006,  754.97,  31.15649, 1.59764, 1.23067, 2.46869",
        "0.003,  377.49,  25.85509, 5.30317, 4.92267, 6.17422",
    })
    void cardChannels(double gap, double reynolds, double product, double drop, double developed, double whole) {
        double d = 2 * gap;
        double re = 1.1614 * d / 1.846e-5;
        assertEquals(reynolds, re, 0.005);
        LaminarFriction.Shah plates = new LaminarFriction.Shah(96, 0.674, 2.9e-5);
        assertEquals(product, plates.product(re * d / 0.2) / 4, 1e-4 * product);
        double head = 1.1614 / 2;
        double perProduct = 0.2 / d / re * head;
        DuctFriction friction = new DuctFriction(LaminarFriction.Shah.rectangle(0), 0.2 / d, 0);
        assertEquals(drop, friction.product(re) * perProduct, 1e-4 * drop);
        assertEquals(whole, friction.product(re) * perProduct + 1.5 * head, 1e-4 * whole);
        assertEquals(developed, new DuctFriction(new LaminarFriction.Developed(96), 1, 0).product(re) * perProduct, 1e-4 * developed);
    }

    /** Constants of Shah (1978): f Re (Fanning), K, C. */
    @ParameterizedTest
    @CsvSource({"0, 24, 0.674, 0.000029", "0.2, 19.071, 0.931, 0.000076", "0.5, 15.548, 1.28, 0.00021", "1, 14.227, 1.43, 0.00029"})
    void entryConstants(double aspect, double product, double entryLoss, double constant) {
        LaminarFriction.Shah shah = LaminarFriction.Shah.rectangle(aspect);
        assertEquals(product, shah.developed() / 4, 1e-4 * product);
        assertEquals(entryLoss, shah.entryLoss(), 1e-12);
        assertEquals(constant, shah.constant(), 1e-16);
    }

    /** Culham and Muzychka (2001), evaluated for three heat sinks: f Re and f_app, Fanning. */
    @ParameterizedTest
    @CsvSource({
        "0.00314667, 0.025, 0.060, 1192.125, 20.57026, 0.034965",
        "0.00314667, 0.025, 0.060, 2384.250, 20.57026, 0.023169",
        "0.00368421, 0.040, 0.150, 2274.015, 21.37015, 0.017955",
    })
    void finChannels(double width, double height, double length, double reynolds, double product, double apparent) {
        LaminarFriction.CulhamMuzychka channel = LaminarFriction.CulhamMuzychka.channel(width / height);
        assertEquals(product, channel.developed() / 4, 1e-4 * product);
        double d = 2 * width * height / (width + height);
        assertEquals(apparent, channel.product(reynolds * d / length) / 4 / reynolds, 1e-4 * apparent);
    }

    /**
     * Y. S. Muzychka, M. M. Yovanovich, J. Fluids Eng. 131 (2009) 061201, on the root of the area, for the same three channels:
     * f_app 0.034959, 0.023167, 0.017952.
     */
    @ParameterizedTest
    @CsvSource({
        "0.00314667, 0.025, 0.060, 1192.125, 0.034959",
        "0.00314667, 0.025, 0.060, 2384.250, 0.023167",
        "0.00368421, 0.040, 0.150, 2274.015, 0.017952",
    })
    void finChannelsAgreeWithAnotherModel(double width, double height, double length, double reynolds, double apparent) {
        double d = 2 * width * height / (width + height);
        double a = width / height;
        double root = Math.sqrt(width * height);
        double re = reynolds * root / d;
        double developed = 12 / (Math.sqrt(a) * (1 + a) * (1 - 192 * a / Math.pow(Math.PI, 5) * Math.tanh(Math.PI / (2 * a))));
        double other = Math.hypot(developed, 3.44 / Math.sqrt(length / (root * re))) / re;
        assertEquals(apparent, other, 1e-4 * apparent);
        LaminarFriction.CulhamMuzychka channel = LaminarFriction.CulhamMuzychka.channel(a);
        assertEquals(other, channel.product(reynolds * d / length) / 4 / reynolds, 3e-4 * apparent);
        // Shah's is a third opinion, 3.4 % lower at most here; the paper claims its own to be within 10 % of solutions and data
        // (from memory)
        assertEquals(other, LaminarFriction.Shah.rectangle(a).product(reynolds * d / length) / 4 / reynolds, 0.1 * apparent);
    }

    /** Both say the same of flow that is far from developed: the boundary layer of a flat plate, 3.44/√x. */
    @Test
    void shortDuctsAreFlatPlates() {
        double u = 1e5;
        double plate = 4 * 3.44 * Math.sqrt(u);
        assertEquals(plate, LaminarFriction.Shah.rectangle(0.3).product(u), 0.01 * plate);
        assertEquals(plate, LaminarFriction.Shah.round().product(u), 0.01 * plate);
        assertEquals(plate, LaminarFriction.CulhamMuzychka.channel(0.3).product(u), 0.01 * plate);
    }

    record Duct(DuctFriction friction) {
    }

    @Provide
    Arbitrary<Duct> ducts() {
        Arbitrary<LaminarFriction> laminar = Arbitraries.oneOf(
                Arbitraries.doubles().between(0, 1).map(LaminarFriction.Shah::rectangle),
                Arbitraries.doubles().between(0.01, 1).map(LaminarFriction.CulhamMuzychka::channel),
                Arbitraries.of(LaminarFriction.Shah.round(), new LaminarFriction.Developed(64)));
        return net.jqwik.api.Combinators.combine(laminar, Arbitraries.doubles().between(-2, 4), Arbitraries.doubles().between(0, 0.1))
                .as((flow, length, rough) -> new Duct(new DuctFriction(flow, Math.pow(10, length), rough)));
    }

    @Property
    void theDropRisesAndItsSlopeIsTheDerivative(@ForAll("ducts") Duct duct, @ForAll @DoubleRange(min = -6, max = 8) double exponent) {
        DuctFriction friction = duct.friction();
        double reynolds = Math.pow(10, exponent);
        double h = 1e-5 * reynolds;
        double above = friction.product(reynolds + h);
        double below = friction.product(reynolds - h);
        double slope = friction.slope(reynolds);
        double size = friction.product(reynolds) / reynolds;
        assertEquals((above - below) / (2 * h), slope, 1e-7 * size);
        assertTrue(friction.product(reynolds) + reynolds * slope > 0, () -> duct + " at " + reynolds);
    }

    @Property
    void atRestItIsTheDevelopedFlow(@ForAll("ducts") Duct duct) {
        double rest = duct.friction().product(0);
        assertEquals(rest, duct.friction().product(1e-9), 1e-5 * rest);
        assertTrue(rest >= 56 && rest <= 96.1);
        assertTrue(Double.isFinite(duct.friction().slope(0)));
    }

    @Test
    void refusesWhatIsNoDuct() {
        assertThrows(IllegalArgumentException.class, () -> Friction.laminarRectangle(1.1));
        assertThrows(IllegalArgumentException.class, () -> Friction.colebrook(0, 0));
        assertThrows(IllegalArgumentException.class, () -> Friction.haaland(1e5, -1));
        assertThrows(IllegalArgumentException.class, () -> new DuctFriction(LaminarFriction.Shah.round(), 0, 0));
        assertThrows(IllegalArgumentException.class, () -> new DuctFriction(LaminarFriction.Shah.round(), 1, 0.2));
        assertThrows(IllegalArgumentException.class, () -> LaminarFriction.CulhamMuzychka.channel(0));
    }

    /** Common practice: turbulent friction above Re 4000; S. W. Churchill, Chem. Eng. 84 (1977) no. 24, 91-92, for its value. */
    @Test
    void aShortDuctHasTurbulentFrictionAtHighReynoldsNumbers() {
        for (double length : new double[] {1, 2, 10, 100}) {
            DuctFriction duct = new DuctFriction(LaminarFriction.Shah.rectangle(0.3), length, 0.001);
            double reynolds = 12000;
            assertEquals(Friction.turbulentProduct(reynolds, 0.001), duct.product(reynolds),
                    0.01 * Friction.turbulentProduct(reynolds, 0.001), "length " + length);
            double before = 0;
            for (double re = 100; re < 1e5; re *= 1.02) {
                assertTrue(duct.product(re) * re > before);
                before = duct.product(re) * re;
                double step = 1e-5 * re;
                assertEquals((duct.product(re + step) - duct.product(re - step)) / (2 * step), duct.slope(re),
                        1e-6 * duct.product(re) / re);
            }
        }
    }
}
