package tramontane.drive;

import java.util.Optional;

/**
 * How a mover is fed, and how fast it turns so. All movers of a bank are fed alike.
 *
 * @param source    voltage of the supply, without sign, V; empty where nothing says what it is
 * @param sent      what the control lets through of it, V
 * @param terminals voltage at the terminals of the mover, V
 * @param frequency of an alternating supply, Hz
 * @param setting   speed setting that it is given
 * @param current   current of one mover that the drop of voltage was computed with, A
 * @param full      speed that it would have at that voltage and full setting, rad/s
 * @param speed     rad/s; 0 where it stands
 * @param standing  why it stands
 */
public record Feeding(Optional<Double> source, Optional<Double> sent, Optional<Double> terminals, Optional<Double> frequency, double setting,
        Optional<Double> current, double full, double speed, Standing standing) {

    /** Why a mover stands. */
    public enum Standing {
        /** It turns. */
        NOT,
        /** It is set to nothing. */
        OFF,
        /** It would run on, but does not start from rest. */
        DOES_NOT_START,
        /** It has too little to run at all. */
        STALLS
    }

    /** What is lost in wires and resistors, V; empty where it is not known. */
    public Optional<Double> drop() {
        return sent.flatMap(volts -> terminals.map(left -> volts - left));
    }
}
