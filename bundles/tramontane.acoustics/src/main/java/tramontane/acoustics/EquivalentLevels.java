package tramontane.acoustics;

import java.util.List;
import java.util.function.ToDoubleFunction;
import tramontane.physics.sound.Levels;

/**
 * A-weighted sound pressure levels over the mission.
 *
 * @param positions each listening position
 */
public record EquivalentLevels(List<AtPosition> positions) {

    public EquivalentLevels {
        positions = List.copyOf(positions);
    }

    /**
     * A phase of the mission as it is heard.
     *
     * @param condition its condition
     * @param time      how long it lasts in a year, s
     * @param level     dB; negative infinity for silence
     * @param lower     how low it may be, dB
     * @param upper     how high it may be, dB
     */
    public record Phase(String condition, double time, double level, double lower, double upper) {
    }

    /**
     * All phases at a position; together they last longer than no time.
     *
     * @param position its id
     * @param phases   in the order of the mission
     */
    public record AtPosition(String position, List<Phase> phases) {
        public AtPosition {
            phases = List.copyOf(phases);
        }

        /** The equivalent level, dB. */
        public double level() {
            return mean(Phase::level);
        }

        /** How low it may be, dB. */
        public double lower() {
            return mean(Phase::lower);
        }

        /** How high it may be, dB. */
        public double upper() {
            return mean(Phase::upper);
        }

        private double mean(ToDoubleFunction<Phase> level) {
            double power = 0;
            double time = 0;
            for (Phase phase : phases) {
                power += phase.time() * Levels.power(level.applyAsDouble(phase));
                time += phase.time();
            }
            return Levels.of(power / time);
        }
    }
}
