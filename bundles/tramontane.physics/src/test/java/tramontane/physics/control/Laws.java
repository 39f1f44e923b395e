package tramontane.physics.control;

import java.util.function.DoubleUnaryOperator;

/** Speed laws that remember. Each serves one run. */
final class Laws {

    private Laws() {
    }

    /**
     * A law with play: rising temperature takes the setting along {@code up}, falling temperature along the same curve moved down by
     * the hysteresis, and in between the setting stays. The play element, or backlash, of hysteresis (e.g. M. A. Krasnosel'skii,
     * A. V. Pokrovskii, Systems with Hysteresis, from memory).
     *
     * @param up         setting against sensor temperature (K) as it rises; never falling
     * @param hysteresis by how much colder it must be for the same setting on the way down, K, not negative
     * @param start      setting before the first temperature
     */
    static LoopSimulation.Law play(DoubleUnaryOperator up, double hysteresis, double start) {
        Inputs.notNegative("hysteresis", hysteresis);
        return new Play(up, hysteresis, Inputs.finite("setting", start));
    }

    private static final class Play implements LoopSimulation.Law {

        private final DoubleUnaryOperator up;
        private final double hysteresis;
        private double setting;

        Play(DoubleUnaryOperator up, double hysteresis, double start) {
            this.up = up;
            this.hysteresis = hysteresis;
            setting = start;
        }

        @Override
        public double next(double sensorTemperature) {
            double least = up.applyAsDouble(sensorTemperature);
            double most = up.applyAsDouble(sensorTemperature + hysteresis);
            setting = Math.max(least, Math.min(most, setting));
            return setting;
        }
    }
}
