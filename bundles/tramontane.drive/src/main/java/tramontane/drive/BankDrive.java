package tramontane.drive;

import java.util.Optional;

/**
 * How a bank is fed, controlled and watched.
 *
 * @param supply     name of its supply among those of the design
 * @param shared     whether one pair of wires feeds all of its movers, instead of one pair each
 * @param wire       the wire; empty where nothing is said
 * @param resistor   resistance in series with each wire pair, Ω
 * @param control    how the design means to set its speed; empty where nothing is said
 * @param modulation frequency of the modulation that the controller gives, Hz
 * @param watch      what the design wants to know of each mover
 * @param alarm      when it takes a mover for failed; empty where nothing is said
 * @param interval   time between the starts of two movers, s; 0 where all start at once
 * @param kick       setting that starts the movers from rest; empty where none does
 * @param kickTime   for how long, s
 */
public record BankDrive(Optional<String> supply, boolean shared, Optional<Wire> wire, double resistor, Optional<Control> control,
        Optional<Double> modulation, Signal watch, Optional<Alarm> alarm, double interval, Optional<Double> kick,
        Optional<Double> kickTime) {

    /** Of which nothing is said. */
    public static final BankDrive NONE = new BankDrive(Optional.empty(), false, Optional.empty(), 0, Optional.empty(), Optional.empty(),
            Signal.NONE, Optional.empty(), 0, Optional.empty(), Optional.empty());

    /**
     * A pair of wires, or three.
     *
     * @param area        cross-section of each, m²; nominal by IEC 60228
     * @param gauge       AWG number, where it is given instead
     * @param conductor   kind of conductor: one of {@link #CONDUCTORS}
     * @param length      one way, m
     * @param temperature of the conductor, K
     */
    public record Wire(Optional<Double> area, Optional<Integer> gauge, String conductor, double length, double temperature) {

        /** Kinds of conductor by IEC 60228. */
        public static final java.util.List<String> CONDUCTORS = java.util.List.of("flexible", "flexible, tinned", "solid or stranded");
    }

    /**
     * When a mover is taken for failed.
     *
     * @param speed     speed below which it is, rad/s
     * @param share     the same as a share of the speed that is asked for; one of both is given
     * @param tolerance relative tolerance of the threshold
     * @param gate      time in which pulses are counted, s; empty where their distance is measured
     * @param delay     time that it must last, s
     */
    public record Alarm(Optional<Double> speed, Optional<Double> share, double tolerance, Optional<Double> gate, double delay) {
    }
}
