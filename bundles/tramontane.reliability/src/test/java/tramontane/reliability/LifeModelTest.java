package tramontane.reliability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.model.AirMover;
import tramontane.model.Quantity;
import tramontane.model.Value;
import tramontane.reliability.LifeState.Spread;
import tramontane.reliability.bearing.RollingBearing;
import tramontane.reliability.bearing.SmallMotor;

/** Lives at duties and over missions. */
class LifeModelTest {

    private static final double ZERO = 273.15;
    private static final double HOUR = 3600;
    private static final double EV = 1.602176634e-19;

    private static AirMover part() {
        return new AirMover("part", "", Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                Optional.of(Quantity.of(300)), Optional.empty(), List.of(), Value.Tree.EMPTY);
    }

    private static MoverLife rated(double hours, Statistic statistic, Optional<Double> shape, MoverLife.Law law, Optional<Double> factor, Optional<Double> energy,
            Optional<Double> exponent) {
        return new MoverLife(Optional.of(hours * HOUR), statistic, Optional.of(40 + ZERO), Optional.empty(), Optional.empty(), Optional.empty(), shape, List.of(),
                law, factor, energy, Optional.of(600.0), 0, exponent, RollingBearing.BALL, Optional.of(600.0), List.of(12.0), SmallMotor.Kind.ELECTRICAL,
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
    }

    private static LifeModel model(MoverLife life) {
        return LifeModel.of(part(), life, Optional.of(43800 * HOUR)).orElseThrow();
    }

    private static double hours(DutyLife life) {
        return life.distribution().life(0.1) / HOUR;
    }

    /** L10 70 000 h at 40 °C, factor 1.5, then 0.5 eV; 5 % at 70, 25 % at 55, 50 % at 40, 20 % at 25 °C. Computed apart by hand and with SciPy. */
    @ParameterizedTest
    @CsvSource({"factor, 56593.300", "Arrhenius, 49487.485"})
    void missionByMinersSum(String law, double hours) {
        boolean factor = law.equals("factor");
        LifeModel model = model(rated(70000, Statistic.L10, Optional.of(2.0), factor ? MoverLife.Law.TEN_KELVIN : MoverLife.Law.ARRHENIUS,
                factor ? Optional.of(1.5) : Optional.empty(), Optional.of(0.5 * EV), Optional.of(0.0)));
        List<Double> shares = List.of(0.05, 0.25, 0.5, 0.2);
        List<DutyLife> lives = List.of(70.0, 55.0, 40.0, 25.0).stream().map(celsius -> model.at(model.nominal(), celsius + ZERO, 300)).toList();
        if (factor) {
            assertEquals(20740.741, hours(lives.get(0)), 1e-3);
            assertEquals(38103.174, hours(lives.get(1)), 1e-3);
            assertEquals(128598.211, hours(lives.get(3)), 1e-3);
        }
        assertEquals(hours, hours(DutyLife.mixture(shares, lives)), 1e-6 * hours);
        assertEquals(hours, hours(DutyLife.mixture(shares.stream().map(share -> 8760 * share).toList(), lives)), 1e-6 * hours);
    }

    @Test
    void ratedLifeIsKeptWhereItWasRated() {
        for (Statistic statistic : Statistic.values()) {
            DutyLife life = model(rated(60000, statistic, Optional.of(1.5), MoverLife.Law.TEN_KELVIN, Optional.of(1.5), Optional.empty(), Optional.of(1.0)))
                    .at(new LifeModel.Parameters(1.5, 1.5, 1, true), 40 + ZERO, 300);
            double stated = switch (statistic) {
                case L1 -> life.distribution().life(0.01);
                case L10 -> life.distribution().life(0.1);
                case L50 -> life.distribution().life(0.5);
                case MEAN -> life.distribution().mean();
            };
            assertEquals(60000, stated / HOUR, 1e-6);
        }
    }

    /** 4.04681: mean over L10 at shape 1.5, SciPy. */
    @Test
    void aMeanIsNoL10() {
        LifeModel model = model(rated(60000, Statistic.MEAN, Optional.of(1.5), MoverLife.Law.TEN_KELVIN, Optional.of(1.5), Optional.empty(), Optional.of(1.0)));
        assertEquals(60000 / 4.04681, hours(model.at(model.nominal(), 40 + ZERO, 300)), 0.1);
    }

    /** MIL-HDBK-217F: cycle 2 h at 25, 5 h at 60, 1 h at 40 °C has bearings of 41995.10 h. */
    @Test
    void aHandbookMixesCharacteristicLives() {
        LifeModel model = model(rated(1, Statistic.L10, Optional.empty(), MoverLife.Law.HANDBOOK, Optional.empty(), Optional.empty(), Optional.empty()));
        DutyLife.AtRate mixed = (DutyLife.AtRate) DutyLife.mixture(List.of(2.0, 5.0, 1.0), List.of(25.0, 60.0, 40.0).stream()
                .map(celsius -> model.at(model.nominal(), celsius + ZERO, 300)).toList());
        assertEquals(41995.10, mixed.bearing(), 0.01);
        assertEquals(1e6 / 3.58147, model.at(model.nominal(), 40 + ZERO, 300).distribution().mean() / HOUR, 10);
    }

    @Test
    void whatIsNotStatedWidensTheBounds() {
        LifeModel known = model(rated(60000, Statistic.L10, Optional.of(2.0), MoverLife.Law.TEN_KELVIN, Optional.of(1.5), Optional.empty(), Optional.of(1.0)));
        LifeModel unknown = model(rated(60000, Statistic.L10, Optional.empty(), MoverLife.Law.TEN_KELVIN, Optional.empty(), Optional.empty(), Optional.empty()));
        assertEquals(2, known.corners().size());
        assertEquals(16, unknown.corners().size());
        Spread hot = spread(unknown, 60, 300);
        assertEquals(60000 / 2.25, hot.value(lives -> lives.life(0.1)) / HOUR, 1e-6);
        assertEquals(60000 / 4.0, hot.lower(lives -> lives.life(0.1)) / HOUR, 1e-6);
        assertEquals(60000 / 1.69, hot.upper(lives -> lives.life(0.1)) / HOUR, 1e-6);
        Spread cold = spread(known, 20, 300);
        assertEquals(60000 * 2.25, cold.value(lives -> lives.life(0.1)) / HOUR, 1e-6);
        assertEquals(60000, cold.lower(lives -> lives.life(0.1)) / HOUR, 1e-6);
        Spread slow = spread(unknown, 40, 150);
        assertEquals(120000, slow.value(lives -> lives.life(0.1)) / HOUR, 1e-6);
        assertEquals(60000, slow.lower(lives -> lives.life(0.1)) / HOUR, 1e-6);
    }

    private static Spread spread(LifeModel model, double celsius, double speed) {
        return new Spread(model.at(model.nominal(), celsius + ZERO, speed), model.corners().stream().map(corner -> model.at(corner, celsius + ZERO, speed)).toList());
    }

    @Test
    void whatALawLacksLeavesLifeUnknown() {
        MoverLife none = new MoverLife(Optional.empty(), Statistic.L10, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                List.of(), MoverLife.Law.TEN_KELVIN, Optional.empty(), Optional.empty(), Optional.empty(), 0, Optional.empty(), RollingBearing.BALL,
                Optional.empty(), List.of(), SmallMotor.Kind.ELECTRICAL, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
        assertTrue(LifeModel.of(part(), none, Optional.of(1.0)).isEmpty());
        assertTrue(LifeModel.of(part(), rated(1, Statistic.L10, Optional.empty(), MoverLife.Law.ARRHENIUS, Optional.empty(), Optional.empty(), Optional.empty()),
                Optional.empty()).isEmpty());
        assertTrue(LifeModel.of(part(), rated(1, Statistic.L10, Optional.empty(), MoverLife.Law.HANDBOOK, Optional.empty(), Optional.empty(), Optional.empty()),
                Optional.empty()).isEmpty());
    }

    @Property
    void lifeFallsWithTemperatureAndL1L10L50AreInOrder(@ForAll @DoubleRange(min = 250, max = 360) double temperature,
            @ForAll @DoubleRange(min = 0.5, max = 50) double hotter, @ForAll @DoubleRange(min = 50, max = 900) double speed) {
        for (MoverLife.Law law : List.of(MoverLife.Law.TEN_KELVIN, MoverLife.Law.ARRHENIUS, MoverLife.Law.GREASE)) {
            LifeModel model = model(rated(60000, Statistic.L10, Optional.empty(), law, Optional.empty(), Optional.of(0.4 * EV), Optional.empty()));
            DutyLife cooler = model.at(model.nominal(), temperature, speed);
            assertTrue(hours(model.at(model.nominal(), temperature + hotter, speed)) < hours(cooler));
            assertTrue(cooler.distribution().life(0.01) < cooler.distribution().life(0.1));
            assertTrue(cooler.distribution().life(0.1) < cooler.distribution().life(0.5));
            Spread spread = spread(model, temperature - ZERO, speed);
            assertTrue(spread.lower(lives -> lives.life(0.1)) <= spread.value(lives -> lives.life(0.1)));
            assertTrue(spread.upper(lives -> lives.mean()) >= spread.value(lives -> lives.mean()));
        }
    }

    /** A mixture lies between its parts, and does not care for how time is divided. */
    @Property
    void aMixtureLiesBetweenItsParts(@ForAll @DoubleRange(min = 250, max = 360) double one, @ForAll @DoubleRange(min = 250, max = 360) double other,
            @ForAll @DoubleRange(min = 0.01, max = 0.99) double share) {
        LifeModel model = model(rated(60000, Statistic.L10, Optional.empty(), MoverLife.Law.TEN_KELVIN, Optional.empty(), Optional.empty(), Optional.empty()));
        DutyLife first = model.at(model.nominal(), one, 300);
        DutyLife second = model.at(model.nominal(), other, 300);
        double mixed = hours(DutyLife.mixture(List.of(share, 1 - share), List.of(first, second)));
        assertTrue(mixed >= Math.min(hours(first), hours(second)) * (1 - 1e-12) && mixed <= Math.max(hours(first), hours(second)) * (1 + 1e-12));
        List<Double> split = new ArrayList<>(List.of(1 - share));
        List<DutyLife> lives = new ArrayList<>(List.of(second));
        IntStream.range(0, 4).forEach(i -> {
            split.add(share / 4);
            lives.add(first);
        });
        assertEquals(mixed, hours(DutyLife.mixture(split, lives)), 1e-9 * mixed);
    }
}
