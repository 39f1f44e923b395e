package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import tramontane.analysis.FlowLaw;

class BankLawTest {

    private static final double MU = 1.8e-5;
    private static final MoverCharacteristic MOVER = MoverCharacteristic.of(Cases.mover(), Cases.SPEED);

    private static final FlapLaw FLAP = FlapLaw.of(0.008, 1.5, 0.01, 2.914, 2);

    private static double pressure(FlowLaw law, double flow) {
        FlowLaw.Drop drop = new FlowLaw.Drop();
        law.at(flow, 1.2, MU, drop);
        return drop.pressure();
    }

    private static double slope(FlowLaw law, double flow) {
        FlowLaw.Drop drop = new FlowLaw.Drop();
        law.at(flow, 1.2, MU, drop);
        return drop.slope();
    }

    @Property
    void likeMoversAddFlowsSideBySideAndPressuresBehindOneAnother(@ForAll @DoubleRange(min = -0.3, max = 0.3) @Scale(15) double flow,
            @ForAll @IntRange(min = 1, max = 6) int columns, @ForAll @IntRange(min = 1, max = 3) int series) {
        BankLaw bank = BankLaw.of(Optional.of(MOVER), columns, series, Map.of());
        assertEquals(series * pressure(MOVER, flow / columns), pressure(bank, flow), 1e-9);
        assertEquals(series * slope(MOVER, flow / columns) / columns, slope(bank, flow), 1e-6);
    }

    private static BankLaw random(int columns, int series, Random random) {
        Map<Integer, LocalLoss> standing = new HashMap<>();
        for (int position = 1; position <= columns * series; position++) {
            if (random.nextInt(3) == 0) {
                standing.put(position, LocalLoss.of(new double[] {2.9, 5.8, 8.7}[random.nextInt(3)], 0.008));
            }
        }
        // half of them with flaps, all with stages that give less than alone
        return BankLaw.of(Optional.of(MOVER), columns, standing, new BankLaw.Build(series, 1 - 0.5 * random.nextDouble(),
                random.nextBoolean() ? Optional.of(FLAP) : Optional.empty()));
    }

    @Property(tries = 500)
    void unlikeColumnsShareOnePressureAndAllOfTheFlow(@ForAll @DoubleRange(min = -0.3, max = 0.5) @Scale(15) double flow,
            @ForAll @IntRange(min = 1, max = 5) int columns, @ForAll @IntRange(min = 1, max = 3) int series, @ForAll long seed) {
        BankLaw bank = random(columns, series, new Random(seed));
        double common = pressure(bank, flow);
        double sum = 0;
        for (int column = 0; column < columns; column++) {
            double through = bank.columnFlow(column, flow, 1.2, MU);
            sum += through;
            double drop = 0;
            for (int position = column * series + 1; position <= (column + 1) * series; position++) {
                Optional<LocalLoss> still = bank.standing(position);
                drop += still.isPresent() ? pressure(still.get(), through) : bank.stage(position) * pressure(MOVER, through);
            }
            drop += bank.flap().isPresent() ? pressure(FLAP, through) : 0;
            assertEquals(common, drop, 1e-9 * (1 + Math.abs(common)));
        }
        assertEquals(flow, sum, 1e-12);
    }

    @Property(tries = 500)
    void keepsTheContractWithFailedMovers(@ForAll @DoubleRange(min = -0.3, max = 0.5) @Scale(15) double flow,
            @ForAll @IntRange(min = 1, max = 5) int columns, @ForAll @IntRange(min = 1, max = 3) int series, @ForAll long seed) {
        BankLaw bank = random(columns, series, new Random(seed));
        assertTrue(bank.increasing() && bank.defined());
        double h = 1e-6;
        double numeric = (pressure(bank, flow + h) - pressure(bank, flow - h)) / (2 * h);
        double slope = slope(bank, flow);
        double bend = Math.max(Math.abs(slope(bank, flow + h) - slope), Math.abs(slope(bank, flow - h) - slope));
        assertTrue(slope > 0);
        assertEquals(numeric, slope, 1e-6 * slope + bend + 1e-12 * Math.abs(pressure(bank, flow)) / h + 1e-2);
    }

    /** The first that runs gives all, each behind it a part; those that stand still do not count. */
    @Test
    void moversBehindARunningOneGiveLess() {
        LocalLoss hole = LocalLoss.of(2.914, 0.008);
        BankLaw bank = BankLaw.of(Optional.of(MOVER), 2, Map.of(1, hole, 5, hole), new BankLaw.Build(3, 0.7, Optional.empty()));
        assertEquals(List.of(1.0, 1.0, 0.7, 1.0, 0.7, 0.7), IntStream.rangeClosed(1, 6).mapToObj(bank::stage).toList());
    }

    @Test
    void aFlapShutsAFailedColumn() {
        LocalLoss hole = LocalLoss.of(2.914, 0.008);
        BankLaw bank = BankLaw.of(Optional.of(MOVER), 2, Map.of(2, hole), new BankLaw.Build(1, 1, Optional.of(FLAP)));
        double back = bank.columnFlow(1, 0, 1.2, MU);
        // through the leak of a hundredth of 80 cm² at some 80 Pa, √(2 · 80/(2.914 · 1.2)) = 6.8 m/s
        assertEquals(-6.76 * 0.00008, back, 0.02 * 6.76 * 0.00008);
    }

    @Test
    void aStandingMoverLetsAirBack() {
        LocalLoss hole = LocalLoss.of(2.914, 0.008);
        BankLaw bank = BankLaw.of(Optional.of(MOVER), 2, 1, Map.of(2, hole));
        double forward = bank.columnFlow(0, 0, 1.2, MU);
        double back = bank.columnFlow(1, 0, 1.2, MU);
        assertEquals(0, forward + back, 1e-12);
        assertTrue(forward > 0.03 && back < -0.03);
        assertTrue(-pressure(bank, 0) < 40);
    }

    @Test
    void aDippingCurveHasNoUniqueShareBetweenUnlikeColumns() {
        MoverCharacteristic dipping = MoverCharacteristic.of(Cases.dipping(), Cases.SPEED);
        LocalLoss hole = LocalLoss.of(2.914, 0.008);
        assertFalse(BankLaw.of(Optional.of(dipping), 2, 1, Map.of(2, hole)).defined());
        assertTrue(BankLaw.of(Optional.of(dipping), 2, 1, Map.of()).defined());
        assertFalse(BankLaw.of(Optional.of(dipping), 2, 1, Map.of()).increasing());
        assertTrue(BankLaw.of(Optional.empty(), 1, 1, Map.of(1, hole)).increasing());
    }
}
