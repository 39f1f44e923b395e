package tramontane.drive.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Better;
import tramontane.analysis.Cases;
import tramontane.analysis.Engine;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Run;
import tramontane.analysis.Table;
import tramontane.analysis.Trace;
import tramontane.drive.DriveState;
import tramontane.drive.EnergyUse;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.physics.units.QuantityKind;

/** Energy and money of a year. */
class EnergyAnalysisTest {

    private static final String PART = "'supply': {'current': 'DC', 'voltage': '24 V'}, 'control': {'kind': 'duty'}";
    private static final String CONDITIONS = "{'id': 'day', 'speed': 1}, {'id': 'night', 'speed': 0.5}";
    private static final String MISSION = ", 'mission': [{'condition': 'day', 'timePerYear': '4000 h'}, {'condition': 'night', 'timePerYear': '4000 h'}]";

    /** Answers what if with the drive at the air flow, and with a noise that goes with 50 lg n. */
    private record Answering(boolean noise, Trace trace) implements Run {
        private static final FigureKind LEVEL = new FigureKind("acoustics.level", "level", QuantityKind.LEVEL, Better.LOWER, "");

        @Override
        public boolean cancelled() {
            return false;
        }

        @Override
        public void progress(double fraction, String message) {
            // nobody looks
        }

        @Override
        public <R> Optional<R> ask(Design design, Condition condition, Class<R> type) {
            return Optional.of(type.cast(Boxes.drive(design.withConditions(List.of(condition))).data()));
        }

        @Override
        public List<Figure> figures(Design design, Condition condition, String id) {
            return noise && id.equals(LEVEL.id()) ? List.of(Figure.of(LEVEL, "desk", 40 + 50 * Math.log10(condition.speedSetting()))) : List.of();
        }
    }

    private static Boxes.Told<EnergyUse> energy(Design design, boolean noise) {
        Map<String, Object> states = new LinkedHashMap<>();
        List<Engine.Case> cases = Cases.of(design, Set.of()).list();
        for (int i = 0; i < cases.size(); i++) {
            states.put(cases.get(i).concrete().id(), Boxes.drive(design, i).data());
        }
        Map<String, DriveState> typed = new LinkedHashMap<>();
        states.forEach((id, state) -> typed.put(id, (DriveState) state));
        List<Trace.Step> steps = new ArrayList<>();
        return Boxes.run(new EnergyAnalysis(), design, Optional.empty(), typed, new Answering(noise, Trace.into(steps)), steps);
    }

    /** 12 W by day, an eighth by night (cube of the speed), 80 % efficiency: 60 kWh and 7.5 of 120 kWh at 0.25 EUR. */
    @Test
    void halfTheSpeedAtNight() {
        Design design = Boxes.Box.of(PART, "'supply': 'main'").withConditions(CONDITIONS).withSupplies("'supplies': [{'id': 'main', 'current': 'DC',"
                + " 'voltage': '24 V', 'efficiency': '80 %'}], 'price': 0.25, 'currency': 'EUR'").with(MISSION).design();
        double air = Boxes.points(design).get("day").bank("fans").orElseThrow().density() / 1.2;
        Boxes.Told<EnergyUse> told = energy(design, false);
        double kilowattHour = 3.6e6;
        assertEquals(67.5 * air, told.figure("drive.energy", "") / kilowattHour, 1e-9);
        assertEquals(120 * air, told.figure("drive.energy.full", "") / kilowattHour, 1e-9);
        assertEquals(52.5 * air, told.figure("drive.energy.saved", "") / kilowattHour, 1e-9);
        assertEquals(16.875 * air, told.figure("drive.cost", ""), 1e-9);
        assertEquals(13.125 * air, told.figure("drive.cost.saved", ""), 1e-9);
        assertEquals(List.of(), told.sentences());
        Table table = told.result().overviews().getFirst().table();
        assertEquals(3, table.rows().size());
        assertTrue(table.columns().stream().anyMatch(column -> column.label().equals("saved EUR")));
        assertEquals(5, told.steps().size());
    }

    @Test
    void noiseIsShownWhereSomethingTellsIt() {
        Design design = Boxes.Box.of(PART, "").withConditions(CONDITIONS).with(MISSION).design();
        assertEquals(1, energy(design, false).result().overviews().size());
        Table others = energy(design, true).result().overviews().getLast().table();
        assertEquals(2, others.rows().size());
        assertEquals(new tramontane.analysis.Amount(40 + 50 * Math.log10(0.5), QuantityKind.LEVEL), others.rows().getLast().get(3));
        assertEquals(new tramontane.analysis.Amount(40, QuantityKind.LEVEL), others.rows().getLast().get(4));
    }

    @Test
    void withoutAMissionOrAPowerThereIsNoYear() {
        assertEquals(List.of("note: the energy of a year is not computed: the design has no mission | state how long each condition lasts in a year"),
                energy(Boxes.Box.of(PART, "").withConditions(CONDITIONS).design(), false).sentences());
        Design silent = Boxes.Box.of(PART, "").withPart(Boxes.PART.replace(", 'power': '6 6 6 W'", "")).withConditions(CONDITIONS)
                .with(MISSION).design();
        assertEquals(List.of("not judged: the energy of a year is not known: nothing says what the movers take in day, night, those of fans | give the power with"
                + " the curves of the part, or its ratedPower"), energy(silent, false).sentences());
        assertEquals(List.of(), energy(Boxes.Box.of("", "").withConditions(CONDITIONS).with(MISSION).design(), false).data().phases());
    }

    @Test
    void aYearIsNoLongerThanThat() {
        Design design = Boxes.Box.of(PART, "").withConditions(CONDITIONS).with(MISSION.replace("4000 h", "6000 h")).design();
        assertTrue(energy(design, false).sentences().getFirst().startsWith("caution: the mission lasts "), energy(design, false).sentences()
                .toString());
        assertEquals(OptionalDouble.empty(), energy(design, false).result().figures().getFirst().lower());
    }
}
