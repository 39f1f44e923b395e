package tramontane.drive;

import java.util.List;
import java.util.stream.Stream;

/** How the speed of a mover can be set. */
public enum Control {
    /** Not at all. */
    NONE("none", false),
    /** In fixed grades, by taps or switched windings. */
    GRADES("speed grades", true),
    /** By a lowered supply voltage. */
    VOLTAGE("voltage", false),
    /** By pulses of the supply itself. */
    PULSED_SUPPLY("pulsed supply", false),
    /** By the duty of a pulse-width modulated signal on a wire of its own. */
    DUTY("duty", true),
    /** By a voltage on a wire of its own, such as 0 to 10 V. */
    CONTROL_VOLTAGE("control voltage", true),
    /** By the frequency of an alternating supply. */
    FREQUENCY("frequency", false),
    /** By a torque that its electronics hold. */
    TORQUE("torque", true),
    /** By a temperature sensor in its hub. */
    THERMISTOR("thermistor", false),
    /** By messages on a bus. */
    BUS("bus", true);

    private final String word;
    private final boolean ownWire;

    Control(String word, boolean ownWire) {
        this.word = word;
        this.ownWire = ownWire;
    }

    /** As it is written and read. */
    public String word() {
        return word;
    }

    /** Whether it takes a wire beside those of the supply. */
    public boolean ownWire() {
        return ownWire;
    }

    /** Whether it acts on the supply of the mover. */
    public boolean onSupply() {
        return this == VOLTAGE || this == PULSED_SUPPLY || this == FREQUENCY;
    }

    /** Whether the speed setting of the condition or of a control law reaches it. */
    public boolean followsSetting() {
        return this != NONE && this != THERMISTOR;
    }

    /** All words. */
    public static List<String> words() {
        return Stream.of(values()).map(Control::word).toList();
    }

    /** The one that is written so. */
    public static Control named(String word) {
        return Stream.of(values()).filter(each -> each.word.equals(word)).findFirst().orElse(NONE);
    }
}
