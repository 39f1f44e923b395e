package tramontane.airflow;

import java.util.Optional;
import tramontane.airflow.internal.SpeedAtSupply;
import tramontane.analysis.SpeedLaw;

/**
 * The speed that a part's own data give at a supply: from curves measured at several voltages or frequencies, and for an
 * unregulated DC motor from its no-load speed. For speed laws to build on that know what feeds a mover: one that lowers the
 * voltage by the drop of a wire asks here for the speed at what is left.
 *
 * <pre>{@code
 * Condition behindWire = supply.condition().withSupplyVoltage(Quantity.of(volts - drop));
 * Optional<Double> speed = SupplySpeed.speed(supply.withCondition(behindWire));
 * }</pre>
 *
 * <p>The speed of an unregulated motor follows voltage and air by {@link tramontane.physics.electric.DcMotor}.
 *
 * <p>Rated speed is the one that the part states, or else that of its first curve; rated voltage that of the curve whose speed
 * is nearest to it. Without a voltage of the supply the speed under load is the rated one. A part that was measured at several
 * frequencies turns at the speed of its curves of the frequency that is taken, also where the supply states none.
 *
 * <p>The speed setting multiplies what comes out, since it is a part of the speed at full setting.
 */
public final class SupplySpeed {

    private SupplySpeed() {
    }

    /**
     * The speed, rad/s; empty where the part's data do not say how it follows the supply.
     *
     * @param supply what the mover is fed with and works against; of the condition the supply voltage and frequency are read, and
     *               neither the design, nor the bank, nor the temperature
     */
    public static Optional<Double> speed(SpeedLaw.Supply supply) {
        return SpeedAtSupply.of(supply).map(SpeedAtSupply::speed);
    }

    /** Whether the voltage of the supply decides that speed. */
    public static boolean followsVoltage(SpeedLaw.Supply supply) {
        return SpeedAtSupply.of(supply).map(SpeedAtSupply::byVoltage).orElse(false);
    }

    /**
     * Where that speed comes from.
     *
     * @param supply the same
     * @return empty where there is no speed
     */
    public static Optional<SpeedLaw.Origin> origin(SpeedLaw.Supply supply) {
        return SpeedAtSupply.of(supply).map(answer -> new SpeedLaw.Origin(answer.relation(), answer.inputs()));
    }
}
