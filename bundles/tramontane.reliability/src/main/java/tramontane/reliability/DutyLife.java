package tramontane.reliability;

import java.util.List;
import tramontane.reliability.bearing.SmallMotor;
import tramontane.reliability.statistics.LifeDistribution;
import tramontane.reliability.statistics.Weibull;

/** Lives of movers that work at one duty all the time, or in a fixed mixture of duties. Times in s. */
public sealed interface DutyLife {

    /** How the lives are spread. */
    LifeDistribution distribution();

    /**
     * Movers that age: each duty uses up its share of life, whichever comes first.
     *
     * @param distribution the lives
     */
    record Aged(Weibull distribution) implements DutyLife {
    }

    /**
     * Movers that fail at the rate of a handbook.
     *
     * @param bearing    characteristic life of the bearings, h
     * @param winding    characteristic life of the windings, h
     * @param motor      kind of motor
     * @param designLife running time that the rate is the mean of, h
     */
    record AtRate(double bearing, double winding, SmallMotor motor, double designLife) implements DutyLife {
        @Override
        public LifeDistribution distribution() {
            return motor.lives(bearing, winding, designLife).scaled(3600);
        }
    }

    /**
     * The lives over a mixture of duties: {@code 1/L = Σ share/L_i}.
     *
     * <p>Miner's sum (M. A. Miner, "Cumulative Damage in Fatigue", J. Appl. Mech. 12, 1945); for the characteristic lives of MIL-HDBK-217F its
     * formula for cycled temperature, section 12.1, which is the same sum.
     *
     * @param shares of the time at each duty, some above zero; they need not sum to one
     * @param lives  at each duty, all of one kind and one shape
     */
    static DutyLife mixture(List<Double> shares, List<? extends DutyLife> lives) {
        if (lives.getFirst() instanceof AtRate first) {
            List<AtRate> rates = lives.stream().map(AtRate.class::cast).toList();
            return new AtRate(SmallMotor.cycle(shares, rates.stream().map(AtRate::bearing).toList()),
                    SmallMotor.cycle(shares, rates.stream().map(AtRate::winding).toList()), first.motor(), first.designLife());
        }
        List<Weibull> aged = lives.stream().map(life -> ((Aged) life).distribution()).toList();
        return new Aged(new Weibull(SmallMotor.cycle(shares, aged.stream().map(Weibull::scale).toList()), aged.getFirst().shape()));
    }
}
