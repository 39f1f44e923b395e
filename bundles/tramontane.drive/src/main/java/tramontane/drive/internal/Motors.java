package tramontane.drive.internal;

import java.util.Optional;
import tramontane.drive.MoverDrive;
import tramontane.model.AirMover;
import tramontane.model.MoverCurve;
import tramontane.physics.electric.InductionMotor;

/** The induction motor of a part. */
final class Motors {

    private Motors() {
    }

    /** The motor of a part that says how many poles it has; empty where it says too little, or turns too fast for one. */
    static Optional<InductionMotor> of(AirMover mover, MoverDrive part) {
        double speed = mover.ratedSpeedSi().orElse(0.0);
        if (part.control().poles().isEmpty() || part.supply().voltage().isEmpty() || part.supply().frequencies().isEmpty() || !(speed > 0)) {
            return Optional.empty();
        }
        int pairs = part.control().poles().get() / 2;
        double frequency = part.supply().frequencies().getFirst();
        return speed < InductionMotor.synchronous(frequency, pairs) ? Optional.of(new InductionMotor(pairs, speed,
                Math.abs(part.supply().voltage().get()), frequency, density(mover), part.control().breakdown())) : Optional.empty();
    }

    /** Density of the air that loads it at rated speed, kg/m³. */
    static double density(AirMover mover) {
        return mover.curves().isEmpty() ? MoverCurve.STANDARD_DENSITY : mover.curves().getFirst().statedDensity();
    }
}
