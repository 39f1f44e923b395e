package tramontane.drive;

import java.util.List;
import java.util.Optional;

/**
 * What the motor of a part needs, understands and tells.
 *
 * @param wires   how many wires it has, that of protective earth not counted
 * @param supply  what it takes from its supply
 * @param control how its speed is set
 * @param signal  what it tells
 * @param restart highest backward speed from which it starts, rad/s; 0 if it must stand first
 */
public record MoverDrive(Optional<Integer> wires, Intake supply, SpeedControl control, Tacho signal, Optional<Double> restart) {

    /**
     * What it takes from its supply.
     *
     * @param current     kind of current
     * @param voltage     rated voltage, V; below zero for a supply whose positive pole is earthed
     * @param lowest      lowest voltage it runs at, V
     * @param highest     highest voltage it stands, V
     * @param frequencies rated frequencies, Hz
     * @param rated       current at rated voltage and speed, A
     * @param locked      current with the rotor held, A
     * @param inrush      peak of the current when switched on, A
     * @param inrushTime  time in which that dies away to 1/e, s
     * @param start       current while it runs up, A
     * @param startTime   time to run up from rest, s
     * @param powerFactor real over apparent power
     * @param protection  what saves it when its rotor is held
     * @param retry       time after which it tries again by itself, s
     */
    public record Intake(Current current, Optional<Double> voltage, Optional<Double> lowest, Optional<Double> highest,
            List<Double> frequencies, Optional<Double> rated, Optional<Double> locked, Optional<Double> inrush,
            Optional<Double> inrushTime, Optional<Double> start, Optional<Double> startTime, Optional<Double> powerFactor,
            Optional<String> protection, Optional<Double> retry) {
        public Intake {
            frequencies = List.copyOf(frequencies);
        }
    }

    /** What it does below the lowest setting of its curve. */
    public enum Below {
        /** Stays at its lowest speed. */
        HOLDS("holds"),
        /** Stays at its lowest speed, but stands at a setting of zero. */
        HOLDS_OFF_AT_ZERO("holds, off at zero"),
        /** Slows down until it stalls. */
        RUNS_DOWN("runs down");

        private final String word;

        Below(String word) {
            this.word = word;
        }

        /** As it is written and read. */
        public String word() {
            return word;
        }

        static Below named(String word) {
            return List.of(values()).stream().filter(each -> each.word.equals(word)).findFirst().orElse(HOLDS);
        }
    }

    /**
     * How its speed is set.
     *
     * @param kind           by what
     * @param settings       settings of its curve, each larger than the one before: duty, or control voltage over the highest
     * @param speeds         speed at each, rad/s; of fixed grades, the speed of each
     * @param temperatures   of a thermistor, temperature of the air at each speed, K
     * @param tolerance      relative tolerance of the speed
     * @param lowestSpeed    speed below which it is not meant to run, rad/s
     * @param startSetting   setting from which it starts from rest
     * @param stopSetting    setting below which it stands
     * @param startVoltage   voltage from which it starts from rest, V
     * @param stallVoltage   voltage below which it stands, V
     * @param below          what it does below the lowest setting of its curve
     * @param leastFrequency lowest frequency of modulation that it takes, Hz
     * @param mostFrequency  highest frequency of modulation that it takes, Hz
     * @param stopsUnsignalled whether it stands when its control wire is open
     * @param poles          number of poles of an induction motor
     * @param breakdown      breakdown torque of an induction motor over its rated one
     */
    public record SpeedControl(Control kind, List<Double> settings, List<Double> speeds, List<Double> temperatures, double tolerance,
            Optional<Double> lowestSpeed, Optional<Double> startSetting, Optional<Double> stopSetting, Optional<Double> startVoltage,
            Optional<Double> stallVoltage, Below below, Optional<Double> leastFrequency, Optional<Double> mostFrequency,
            boolean stopsUnsignalled, Optional<Integer> poles, double breakdown) {
        public SpeedControl {
            settings = List.copyOf(settings);
            speeds = List.copyOf(speeds);
            temperatures = List.copyOf(temperatures);
        }
    }

    /**
     * What it tells.
     *
     * @param kind   what
     * @param pulses pulses per revolution
     * @param locked speed below which its locked-rotor signal comes, rad/s
     */
    public record Tacho(Signal kind, int pulses, Optional<Double> locked) {
    }

    /** Wires that its supply takes. */
    public int supplyWires() {
        return supply.current() == Current.THREE_PHASE ? 3 : 2;
    }

    /** Wires that what it says of itself takes: a bus tells on the wires that it listens on. */
    public int neededWires() {
        int control = !this.control.kind().ownWire() ? 0 : this.control.kind() == Control.BUS ? 2
                : this.control.kind() == Control.GRADES ? Math.max(1, this.control.speeds().size() - 1) : 1;
        int signal = this.signal.kind() == Signal.NONE || this.control.kind() == Control.BUS ? 0 : 1;
        return supplyWires() + control + signal;
    }
}
