package tramontane.drive;

import java.util.List;
import java.util.Optional;

/**
 * Whether the parts fit the supplies, the control and the watch that the design wants.
 *
 * @param banks banks of which something is said, in the order of the design
 */
public record DriveFit(List<Bank> banks) {

    public DriveFit {
        banks = List.copyOf(banks);
    }

    /**
     * One bank.
     *
     * @param bank    its id
     * @param control how its speed is set in truth: not at all where the design wants what the part cannot
     * @param wanted  what the design wants to know of each mover
     * @param told    what the part tells
     * @param wires   how many wires the part has, where it says so
     */
    public record Bank(String bank, Control control, Signal wanted, Signal told, Optional<Integer> wires) {

        /** Whether a speed setting reaches the movers. */
        public boolean controlled() {
            return control.followsSetting();
        }

        /** Whether the design gets to know what it wants. */
        public boolean watched() {
            return told.tells(wanted);
        }
    }

    /** The bank of that id. */
    public Optional<Bank> bank(String id) {
        return banks.stream().filter(bank -> bank.bank().equals(id)).findFirst();
    }
}
