package tramontane.drive;

import java.util.List;
import java.util.Optional;

/**
 * How all banks are fed in one condition, and what their supplies carry.
 *
 * @param banks    banks whose part says something of its drive, in the order of the design
 * @param supplies the supplies of the design
 * @param power    what all movers take from the mains, W: those without a stated supply count as they are; empty where that of a
 *                 bank is not known, or no bank says anything
 */
public record DriveState(List<BankFeed> banks, List<Load> supplies, Optional<Double> power) {

    public DriveState {
        banks = List.copyOf(banks);
        supplies = List.copyOf(supplies);
    }

    /**
     * One bank.
     *
     * @param bank      its id
     * @param feeding   what each mover gets by its speed law
     * @param running   movers that turn under power
     * @param locked    movers whose rotor is held while they are fed
     * @param power     electrical input of the bank, W; empty where nothing says it
     * @param drawn     that with what wires and resistors lose, W
     * @param current   current of each running mover, A; empty where nothing says it
     * @param terminals voltage at its terminals, V; empty where nothing says it
     * @param pulses    frequency of the pulses of each running mover, Hz; empty where it gives none
     */
    public record BankFeed(String bank, Feeding feeding, int running, int locked, Optional<Double> power, Optional<Double> drawn,
            Optional<Double> current,
            Optional<Double> terminals, Optional<Double> pulses) {
    }

    /**
     * One supply.
     *
     * @param supply   its name
     * @param running  current while all run, A; empty where that of a bank is not known
     * @param fullest  the same with all movers that have not failed at full setting, at the end of the supply's tolerance that takes most, A
     * @param starting highest current while they run up, A
     * @param inrush   highest peak when they are switched on, A
     * @param most     what it gives for long where it stands, A
     * @param power    what it takes from the mains, W
     */
    public record Load(String supply, Optional<Double> running, Optional<Double> fullest, Optional<Double> starting, Optional<Double> inrush,
            Optional<Double> most,
            Optional<Double> power) {
    }

    /** The bank of that id. */
    public Optional<BankFeed> bank(String id) {
        return banks.stream().filter(bank -> bank.bank().equals(id)).findFirst();
    }
}
