package tramontane.drive;

import java.util.List;
import java.util.Optional;

/**
 * Which speed tells failed movers from healthy ones, over all cases of a design.
 *
 * @param banks the banks whose movers are watched, in the order of the design
 */
public record AlarmWindow(List<Bank> banks) {

    public AlarmWindow {
        banks = List.copyOf(banks);
    }

    /**
     * One bank.
     *
     * @param bank    its id
     * @param lowest  lowest speed of a healthy mover, its tolerance taken off, rad/s
     * @param failed  highest speed of a failed mover that air turns, rad/s; 0 where none is
     * @param from    lowest threshold that a failed mover never passes, rad/s, or share of the speed asked for
     * @param to      highest threshold that a healthy mover never falls below; not above {@code from} where there is none
     * @param byShare whether thresholds are shares of the speed that is asked for
     * @param stated  the threshold of the design, in the same measure
     */
    public record Bank(String bank, double lowest, double failed, double from, double to, boolean byShare, Optional<Double> stated) {

        /** Whether any threshold tells them apart. */
        public boolean possible() {
            return from < to;
        }

        /** Whether the threshold of the design does. */
        public boolean holds() {
            return stated.filter(threshold -> threshold > from && threshold < to).isPresent();
        }
    }

    /** The bank of that id. */
    public Optional<Bank> bank(String id) {
        return banks.stream().filter(bank -> bank.bank().equals(id)).findFirst();
    }
}
