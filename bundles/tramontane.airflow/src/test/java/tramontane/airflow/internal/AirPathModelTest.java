package tramontane.airflow.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tramontane.airflow.AirPathModel;
import tramontane.airflow.AirPathSolution;
import tramontane.airflow.AirPathSolver;
import tramontane.airflow.Feed;
import tramontane.airflow.NetworkSolver;
import tramontane.airflow.SpeedLaws;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.SpeedLaw;
import tramontane.model.AirPath;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Quantity;
import tramontane.model.Value;

/** The pure function that a coupled loop uses: this network at these bay temperatures and speeds. */
class AirPathModelTest {

    private static Bay bay(String id, double height) {
        return new Bay(id, Optional.of(Quantity.of(height)), Value.Tree.EMPTY);
    }

    private static Design chimney() {
        return Cases.design(Cases.mover(), List.of(), Cases.square("in", "outside", "lower", 1e3),
                Cases.square("shaft", "lower", "upper", 1e3), Cases.square("out", "upper", "outside", 1e3))
                .withAirPath(new AirPath(List.of(bay("lower", 0.1), bay("upper", 0.6)), List.of(
                        Cases.square("in", "outside", "lower", 1e3), Cases.square("shaft", "lower", "upper", 1e3),
                        Cases.square("out", "upper", "outside", 1e3)), Value.Tree.EMPTY));
    }

    @Test
    void heatedAirRisesByItself() {
        AirPathModel model = AirPathModel.of(chimney(), Condition.NOMINAL, Cases.KINDS);
        OperatingPoint point = model.at(Map.of()).solve(new double[] {323.15, 333.15}).point().orElseThrow();
        double outside = model.outside().density();
        double lower = model.outside().heatedTo(323.15).density();
        double upper = model.outside().heatedTo(333.15).density();
        // each b ρ/1.2 q² at the density of the air that enters it; the shaft of 0.5 m holds air of the lower bay
        double drive = (outside - lower) * 9.80665 * 0.5;
        double mass = Math.sqrt(drive * 1.2 / 1e3 / (1 / outside + 1 / lower + 1 / upper));
        // the square law turns linear below 1e-4 Pa; here it works at some 0.1 Pa
        assertEquals(mass, point.passage("shaft").orElseThrow().massFlow(), 1e-5 * mass);
        assertEquals(mass / upper, point.passage("out").orElseThrow().flow(), 1e-5 * mass);
        assertEquals(333.15, point.bay("upper").orElseThrow().temperature());
        assertEquals(upper, point.bay("upper").orElseThrow().density());
    }

    @Test
    void atOutsideTemperatureNothingRises() {
        AirPathModel model = AirPathModel.of(chimney(), Condition.NOMINAL, Cases.KINDS);
        assertEquals(0, model.at(Map.of()).solve(model.temperatures()).point().orElseThrow().passage("shaft").orElseThrow().flow());
    }

    @Test
    void aSuckingBankTakesWarmAirAtItsInlet() {
        Design design = Cases.design(Cases.mover(), List.of("box"), Cases.square("vent", "outside", "box", 2e4),
                Cases.bank("fans", "box", "outside"));
        AirPathModel model = AirPathModel.of(design, Condition.NOMINAL, Cases.KINDS);
        OperatingPoint.BankPoint bank = model.at(Map.of("fans", Cases.SPEED)).solve(new double[] {343.15}).point().orElseThrow()
                .bank("fans").orElseThrow();
        assertEquals(343.15, bank.temperature());
        assertEquals(model.outside().heatedTo(343.15).density(), bank.density(), 1e-12);
        assertEquals(bank.massFlow() / bank.density(), bank.flow(), 1e-15);
    }

    @Test
    void speedsThatAreGivenCount() {
        Design design = Cases.design(Cases.mover(), List.of("box"), Cases.square("vent", "outside", "box", 2e4),
                Cases.bank("fans", "box", "outside"));
        AirPathModel model = AirPathModel.of(design, Cases.standardAir(), Cases.KINDS);
        double full = model.at(model.speeds(List.of())).solve(model.temperatures()).point().orElseThrow().banks().getFirst().flow();
        double half = model.at(Map.of("fans", Cases.SPEED / 2)).solve(model.temperatures()).point().orElseThrow().banks().getFirst()
                .flow();
        assertEquals(full / 2, half, 1e-8);
        assertEquals(Map.of("fans", Cases.SPEED), model.speeds(List.of()));
    }

    @Test
    void aWarmStartGivesTheSame() {
        Design design = Cases.design(Cases.mover(), List.of("box"), Cases.square("vent", "outside", "box", 2e4),
                Cases.bank("fans", "box", "outside"));
        AirPathModel model = AirPathModel.of(design, Condition.NOMINAL, Cases.KINDS);
        AirPathSolver solver = model.at(model.speeds(List.of()));
        AirPathSolution cold = solver.solve(new double[] {320});
        AirPathSolution warm = solver.solve(new double[] {320}, NetworkSolver.Settings.STANDARD,
                solver.solve(new double[] {300}).network(), () -> false);
        assertEquals(cold.point().orElseThrow().banks().getFirst().flow(), warm.point().orElseThrow().banks().getFirst().flow(), 1e-12);
        assertTrue(warm.network().orElseThrow().iterations() <= cold.network().orElseThrow().iterations());
    }

    private static Design pushAndPull() {
        return Cases.design(Cases.mover(), List.of("box"), Cases.bank("in", "outside", "box"), Cases.bank("out", "box", "outside"));
    }

    @Test
    void eachBankHasASettingAndDensityOfItsOwn() {
        AirPathModel model = AirPathModel.of(pushAndPull(), Cases.standardAir().withSpeed(Quantity.of(0.8)), Cases.KINDS);
        SpeedLaw byDensity = supply -> Optional.of(100 * supply.setting() / supply.density());
        Map<String, Feed> feeds = Map.of("out", new Feed(0.5, 1.0, "control law fans"));
        Map<String, Double> speeds = model.speeds(List.of(byDensity), feeds);
        assertEquals(50, speeds.get("out"), 1e-12);
        assertEquals(100 * 0.8 / 1.2, speeds.get("in"), 1e-6);
        assertEquals(0.5 * Cases.SPEED, model.speeds(List.of(), feeds).get("out"), 1e-12);
        assertEquals(0.8 * Cases.SPEED, model.speeds(List.of(), feeds).get("in"), 1e-12);
        assertEquals(model.speeds(List.of(byDensity)), model.speeds(List.of(byDensity), Map.of("in", model.feed(), "out", model.feed())));
    }

    @Test
    void aFeedIsOfRealNumbers() {
        for (double wrong : new double[] {-0.1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThrows(IllegalArgumentException.class, () -> new Feed(wrong, 1.2, ""));
        }
        for (double wrong : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThrows(IllegalArgumentException.class, () -> new Feed(1, wrong, ""));
        }
        assertEquals(0, new Feed(0, 1.2, "").setting());
    }

    @Test
    void speedLawsAreAskedByRankThenByAge() {
        SpeedLaw low = supply -> Optional.of(1.0);
        SpeedLaw unranked = supply -> Optional.of(2.0);
        SpeedLaw later = supply -> Optional.of(3.0);
        SpeedLaw high = supply -> Optional.of(4.0);
        assertEquals(List.of(high, unranked, later, low), SpeedLaws.ranked(List.of(
                Map.entry(Map.of("service.ranking", -100, "service.id", 1L), low),
                Map.entry(Map.of("service.ranking", 0, "service.id", 9L), later),
                Map.entry(Map.of("service.id", 4L), unranked),
                Map.entry(Map.of("service.ranking", 7, "service.id", 12L), high))));
    }
}
