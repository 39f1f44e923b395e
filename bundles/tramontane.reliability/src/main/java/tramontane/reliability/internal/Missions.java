package tramontane.reliability.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tramontane.model.MissionPhase;
import tramontane.reliability.LifeState;
import tramontane.reliability.LifeState.Spread;
import tramontane.reliability.MissionLife;

/** Adds up lives over the phases of a mission. */
final class Missions {

    private Missions() {
    }

    /**
     * One case of a phase.
     *
     * @param phase the phase
     * @param time  its share of the time of the phase, in a year, s
     * @param state lives in it
     */
    record Part(MissionPhase phase, double time, LifeState state) {
    }

    /** A mover in one case. */
    private record Run(Part part, LifeState.MoverState mover) {
    }

    /** The movers of a bank over all parts of the mission. */
    static MissionLife.BankMission bank(String bank, String part, List<Part> parts) {
        Map<Integer, List<Run>> byPosition = new TreeMap<>();
        for (Part each : parts) {
            each.state().bank(bank).ifPresent(state -> state.movers().forEach(mover ->
                    byPosition.computeIfAbsent(mover.position(), position -> new ArrayList<>()).add(new Run(each, mover))));
        }
        List<MissionLife.MoverMission> movers = new ArrayList<>();
        byPosition.forEach((position, runs) -> mover(position, runs).ifPresent(movers::add));
        return new MissionLife.BankMission(bank, part, movers);
    }

    private static Optional<MissionLife.MoverMission> mover(int position, List<Run> runs) {
        double running = runs.stream().mapToDouble(run -> run.part().time()).sum();
        if (!(running > 0)) {
            return Optional.empty();
        }
        Spread spread = Spread.mixture(runs.stream().map(run -> run.part().time()).toList(), runs.stream().map(run -> run.mover().spread()).toList());
        Map<MissionPhase, List<Run>> byPhase = new LinkedHashMap<>();
        runs.forEach(run -> byPhase.computeIfAbsent(run.part().phase(), phase -> new ArrayList<>()).add(run));
        List<MissionLife.PhaseLife> phases = byPhase.entrySet().stream().map(entry -> phase(entry.getKey(), entry.getValue())).toList();
        return Optional.of(new MissionLife.MoverMission(position, running, spread, phases));
    }

    private static MissionLife.PhaseLife phase(MissionPhase phase, List<Run> runs) {
        double time = runs.stream().mapToDouble(run -> run.part().time()).sum();
        Spread spread = Spread.mixture(runs.stream().map(run -> run.part().time()).toList(), runs.stream().map(run -> run.mover().spread()).toList());
        return new MissionLife.PhaseLife(phase.condition(), time, runs.stream().mapToDouble(run -> run.part().time() * run.mover().temperature()).sum() / time,
                runs.stream().mapToDouble(run -> run.part().time() * run.mover().speed()).sum() / time, spread.value(lives -> lives.life(0.1)));
    }
}
