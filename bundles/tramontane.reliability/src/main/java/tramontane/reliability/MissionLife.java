package tramontane.reliability;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tramontane.reliability.LifeState.Spread;

/**
 * How long movers live over the mission.
 *
 * @param serviceLife how long the equipment is to serve, s
 * @param banks       banks whose lives are known in every phase
 */
public record MissionLife(Optional<Double> serviceLife, List<BankMission> banks) {

    /** A year, s: 8760 h. */
    public static final double YEAR = 8760 * 3600.0;

    public MissionLife {
        banks = List.copyOf(banks);
    }

    /** The bank of that id. */
    public Optional<BankMission> bank(String id) {
        return banks.stream().filter(bank -> bank.bank().equals(id)).findFirst();
    }

    /**
     * The movers of a bank over the mission.
     *
     * @param bank   its id
     * @param part   the id of their part
     * @param movers those that run in some phase, by position
     */
    public record BankMission(String bank, String part, List<MoverMission> movers) {
        public BankMission {
            movers = List.copyOf(movers);
        }

        /** The mover with the shortest life L10 in running time; empty where none ever runs. */
        public Optional<MoverMission> shortest() {
            return movers.stream().min(Comparator.comparingDouble(mover -> mover.spread().value(lives -> lives.life(0.1))));
        }

        /** The mover that fails first, with the shortest life in calendar time; empty where none ever runs. */
        public Optional<MoverMission> worst() {
            return movers.stream().min((one, other) -> Double.compare(one.calendar(0.1), other.calendar(0.1)));
        }

        /** The mover at a position; empty where it never runs. */
        public Optional<MoverMission> mover(int position) {
            return movers.stream().filter(mover -> mover.position() == position).findFirst();
        }
    }

    /**
     * A mover over the mission.
     *
     * @param position its position, counted from 1
     * @param running  running time in a year, above zero, s
     * @param spread   its lives in running time
     * @param phases   the phases in which it runs
     */
    public record MoverMission(int position, double running, Spread spread, List<PhaseLife> phases) {
        public MoverMission {
            phases = List.copyOf(phases);
        }

        /** Calendar time over running time. */
        public double stretch() {
            return YEAR / running;
        }

        /** Calendar time by which a share has failed, s. */
        public double calendar(double failed) {
            return stretch() * spread.value(lives -> lives.life(failed));
        }
    }

    /**
     * What a phase uses up.
     *
     * @param condition   its condition
     * @param running     running time in a year, s
     * @param temperature of the air at the mover, mean over the cases of the condition, K
     * @param speed       mean over the cases of the condition, rad/s
     * @param life        L10 in this phase, s
     */
    public record PhaseLife(String condition, double running, double temperature, double speed, double life) {
    }
}
