package tramontane.drive.internal;

import java.util.Optional;
import tramontane.drive.BankDrive;
import tramontane.drive.Current;
import tramontane.physics.electric.Cable;

/**
 * What lies between a supply and the movers of a bank.
 *
 * @param perMover  resistance in which the current of one mover alone drops voltage, Ω; the way back counted
 * @param together  resistance in which the current of all movers does, Ω
 * @param cable     the wire, where one is stated and known
 */
record Wiring(double perMover, double together, Optional<Cable> cable) {

    /** The wiring of a bank. */
    static Wiring of(BankDrive bank, Current current) {
        Optional<Cable> cable = bank.wire().flatMap(Wiring::cable);
        double wire = cable.isEmpty() ? 0 : cable.get().resistance(bank.wire().get().temperature()) * bank.wire().get().length()
                * (current == Current.THREE_PHASE ? Math.sqrt(3) : 2);
        return bank.shared() ? new Wiring(bank.resistor(), wire, cable) : new Wiring(wire + bank.resistor(), 0, cable);
    }

    /** The cable that a wire is; empty where no table knows it. */
    static Optional<Cable> cable(BankDrive.Wire wire) {
        return wire.area().isPresent() ? Cable.of(wire.area().get(), conductor(wire.conductor())) : wire.gauge().map(Cable::awg);
    }

    static Cable.Conductor conductor(String word) {
        return switch (BankDrive.Wire.CONDUCTORS.indexOf(word)) {
            case 1 -> Cable.Conductor.FLEXIBLE_TINNED;
            case 2 -> Cable.Conductor.SOLID_OR_STRANDED;
            default -> Cable.Conductor.FLEXIBLE;
        };
    }

    /** What the current of each mover loses on its way, V, so many of them running. */
    double drop(double current, int running) {
        return current * (perMover + together * running);
    }
}
