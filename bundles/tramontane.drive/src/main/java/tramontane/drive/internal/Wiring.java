package tramontane.drive.internal;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import tramontane.drive.BankDrive;
import tramontane.drive.Current;
import tramontane.drive.MoverDrive;
import tramontane.physics.RootSearch;
import tramontane.physics.electric.Cable;

/**
 * What lies between a supply and the movers of a bank.
 *
 * @param perMover  resistance in which the current of one mover alone drops voltage, Ω; the way back counted
 * @param together  resistance in which the current of all movers does, Ω
 * @param cable     the wire, where one is stated and known
 */
record Wiring(double perMover, double together, Optional<Cable> cable) {

    /** Places at which a voltage is looked for that agrees, and how closely it is to agree. */
    private static final int PLACES = 64;
    private static final double AGREED = 1e-13;

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

    /**
     * The voltage that is left at the end, V: the highest that agrees with the current it lets flow; 0 where none does.
     *
     * @param sent    what is sent, V
     * @param current of each mover, A, in phase with the voltage, by the voltage at its terminals
     * @param running movers that run
     */
    double left(double sent, DoubleUnaryOperator current, int running) {
        if (perMover == 0 && together == 0 || sent == 0) {
            return sent;
        }
        DoubleUnaryOperator excess = volts -> sent - drop(current.applyAsDouble(volts), running) - volts;
        double high = sent;
        double atHigh = excess.applyAsDouble(high);
        if (atHigh >= 0) {
            return sent;
        }
        for (int i = PLACES - 1; i > 0; i--) {
            double low = sent * i / PLACES;
            double atLow = excess.applyAsDouble(low);
            if (atLow >= 0) {
                return RootSearch.between(excess, low, high, atLow, atHigh, AGREED * sent, 0).at();
            }
            high = low;
            atHigh = atLow;
        }
        return 0;
    }

    /**
     * What is lost on the way to rotors that do not turn yet, V; empty where nothing says what they take then.
     *
     * @param part   what the part says
     * @param bank   what its bank says; movers that start one after another draw alone
     * @param movers that start together otherwise
     */
    Optional<Double> dropAtRest(MoverDrive part, BankDrive bank, int movers) {
        double factor = part.supply().current().alternating() ? part.supply().powerFactor().orElse(1.0) : 1;
        return part.supply().start().or(part.supply()::locked).map(amps -> drop(amps * factor, bank.interval() > 0 ? 1 : movers));
    }

    /** What the current of each mover loses on its way, V, so many of them running. */
    double drop(double current, int running) {
        return current * (perMover + together * running);
    }
}
