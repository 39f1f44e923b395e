package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.SectionType;
import tramontane.drive.Control;
import tramontane.drive.Current;
import tramontane.drive.MoverDrive;
import tramontane.drive.Signal;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Quantities;
import tramontane.model.Quantity;
import tramontane.model.Range;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.model.Written;
import tramontane.physics.units.QuantityKind;

/** What the motor of a part needs, understands and tells. */
@Component(service = SectionType.class)
public final class MoverDriveSection implements SectionType<MoverDrive> {

    /** The name of all sections of this bundle. */
    public static final String NAME = "drive";

    /** What saves a motor whose rotor is held. */
    static final List<String> PROTECTIONS = List.of("impedance", "thermal cut-out", "electronic", "none");

    private static final String OPEN = "stops";

    private static final Form SUPPLY = Form.of("supply", "What the part takes from its supply.",
            Field.choice("current", "kind of current", Current.words(), "What it is fed with. Electronically commutated movers take AC or DC.")
                    .mandatory(),
            Field.amount("voltage", "rated voltage", QuantityKind.VOLTAGE, Range.ANY,
                    "Rated voltage; below zero for a supply whose positive pole is earthed. Between phases for three-phase AC."),
            Field.amount("lowest", "lowest voltage", QuantityKind.VOLTAGE, Range.NOT_NEGATIVE, "Lowest voltage it runs at, without sign."),
            Field.amount("highest", "highest voltage", QuantityKind.VOLTAGE, Range.POSITIVE, "Highest voltage it stands, without sign."),
            Field.amounts("frequency", "rated frequency", QuantityKind.FREQUENCY, Range.POSITIVE, 1, "One or several, for example \"50 60 Hz\"."),
            Field.amount("rated", "rated current", QuantityKind.CURRENT, Range.POSITIVE, "Current at rated voltage and speed."),
            Field.amount("locked", "locked-rotor current", QuantityKind.CURRENT, Range.POSITIVE, "Current with the rotor held."),
            Field.amount("inrush", "inrush current", QuantityKind.CURRENT, Range.POSITIVE, "Peak of the current when it is switched on."),
            Field.amount("inrushTime", "inrush time", QuantityKind.TIME, Range.POSITIVE, "Time in which the inrush dies away to 37 %."),
            Field.amount("start", "starting current", QuantityKind.CURRENT, Range.POSITIVE,
                    "Current while it runs up; the locked-rotor current where not given."),
            Field.amount("startTime", "starting time", QuantityKind.TIME, Range.POSITIVE, "Time to run up from rest."),
            Field.amount("powerFactor", "power factor", QuantityKind.FRACTION, Range.PART_OF_ONE,
                    "Real over apparent power on AC; 1 where not given, and then the current is too low."),
            Field.choice("protection", "locked-rotor protection", PROTECTIONS, "What saves the motor when its rotor is held."),
            Field.amount("retry", "retry time", QuantityKind.TIME, Range.POSITIVE, "Time after which it tries again by itself."));

    private static final Form CONTROL = Form.of("control", "How the speed of the part is set.",
            Field.choice("kind", "kind of control", Control.words(), "By what the speed is set.").mandatory(),
            Field.increasing("setting", "settings", QuantityKind.FRACTION, Range.between(0, 1.5), 2,
                    "Settings of its curve: duty, or control voltage over the highest one."),
            Field.amounts("speed", "speeds", QuantityKind.ROTATIONAL_SPEED, Range.NOT_NEGATIVE, 1,
                    "Speed at each setting or temperature, at rated supply; of speed grades, the speed of each."),
            Field.increasing("temperature", "temperatures", QuantityKind.TEMPERATURE, Range.POSITIVE, 1,
                    "Temperature of the air at each speed, for a thermistor."),
            Field.amount("tolerance", "speed tolerance", QuantityKind.FRACTION, Range.between(0, 0.5),
                    "Relative tolerance of the speed.").standard("10 %"),
            Field.amount("lowestSpeed", "lowest speed", QuantityKind.ROTATIONAL_SPEED, Range.NOT_NEGATIVE,
                    "Speed below which it is not meant to run."),
            Field.amount("startSetting", "start setting", QuantityKind.FRACTION, Range.SHARE, "Setting from which it starts from rest."),
            Field.amount("stopSetting", "stop setting", QuantityKind.FRACTION, Range.SHARE, "Setting below which it stands."),
            Field.amount("startVoltage", "start voltage", QuantityKind.VOLTAGE, Range.NOT_NEGATIVE, "Voltage from which it starts from rest."),
            Field.amount("stallVoltage", "stall voltage", QuantityKind.VOLTAGE, Range.NOT_NEGATIVE, "Voltage below which it comes to a stand."),
            Field.choice("below", "below the curve", Stream.of(MoverDrive.Below.values()).map(MoverDrive.Below::word).toList(),
                    "What it does below the lowest setting of its curve.").standard("holds"),
            Field.amount("leastFrequency", "lowest modulation", QuantityKind.FREQUENCY, Range.POSITIVE,
                    "Lowest frequency of modulation that it takes; 21 kHz where not given."),
            Field.amount("mostFrequency", "highest modulation", QuantityKind.FREQUENCY, Range.POSITIVE,
                    "Highest frequency of modulation that it takes; 28 kHz where not given."),
            Field.choice("unsignalled", "with an open wire", List.of("full speed", OPEN), "What it does when its control wire is open.")
                    .standard("full speed"),
            Field.whole("poles", "poles", 2, 48, "Number of poles of an induction motor: its speed then follows voltage, frequency and load."),
            Field.amount("breakdown", "breakdown torque", QuantityKind.NUMBER, Range.above(1),
                    "Breakdown torque of an induction motor over its rated torque; assumed where not given.").standard(2));

    private static final Form SIGNAL = Form.of("signal", "What the part tells of itself.",
            Field.choice("kind", "kind of signal", Signal.words(), "Its speed, by pulses or on its bus, or that its rotor stands.").mandatory(),
            Field.whole("pulses", "pulses per turn", 1, 64, "Pulses per revolution.").standard(2),
            Field.amount("lockedBelow", "locked below", QuantityKind.ROTATIONAL_SPEED, Range.NOT_NEGATIVE,
                    "Speed below which its locked-rotor signal comes."));

    private static final Form FORM = Form.of(NAME, "What the motor of a part needs, understands and tells.",
            Field.whole("wires", "wires", 2, 12, "How many wires it has, protective earth not counted."),
            Field.part("supply", "supply", SUPPLY, "What it takes from its supply."),
            Field.part("control", "control", CONTROL, "How its speed is set; not at all where not given."),
            Field.part("signal", "signal", SIGNAL, "What it tells of itself; nothing where not given."),
            Field.amount("restart", "restart while turning backwards", QuantityKind.ROTATIONAL_SPEED, Range.NOT_NEGATIVE,
                    "Highest backward speed from which it starts; 0 if it must stand first."));

    private static final MoverDrive.Intake NO_INTAKE = new MoverDrive.Intake(Current.DC, Optional.empty(), Optional.empty(), Optional.empty(),
            List.of(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
            Optional.empty(), Optional.empty(), Optional.empty());

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Set<Owner> owners() {
        return Set.of(Owner.MOVER);
    }

    @Override
    public MoverDrive decode(Values values) {
        return new MoverDrive(values.ifWhole("wires"), values.part("supply").map(MoverDriveSection::intake).orElse(NO_INTAKE),
                control(values.part("control")), values.part("signal").map(MoverDriveSection::tacho)
                        .orElse(new MoverDrive.Tacho(Signal.NONE, 2, Optional.empty())), si(values, "restart"));
    }

    private static MoverDrive.Intake intake(Values v) {
        return new MoverDrive.Intake(Current.named(v.text("current")), si(v, "voltage"), si(v, "lowest"), si(v, "highest"),
                all(v, "frequency"), si(v, "rated"), si(v, "locked"), si(v, "inrush"), si(v, "inrushTime"), si(v, "start"),
                si(v, "startTime"), si(v, "powerFactor"), v.ifText("protection"), si(v, "retry"));
    }

    private static MoverDrive.SpeedControl control(Optional<Values> given) {
        if (given.isEmpty()) {
            List<Problem> none = new ArrayList<>(); // its standard values
            return control(FormReader.read(CONTROL, Value.Tree.EMPTY.with("kind", new Value.Text(Control.NONE.word())), "", none));
        }
        return control(given.get());
    }

    private static MoverDrive.SpeedControl control(Values v) {
        return new MoverDrive.SpeedControl(Control.named(v.text("kind")), all(v, "setting"), all(v, "speed"), all(v, "temperature"),
                v.si("tolerance"), si(v, "lowestSpeed"), si(v, "startSetting"), si(v, "stopSetting"), si(v, "startVoltage"),
                si(v, "stallVoltage"), below(v.text("below")), si(v, "leastFrequency"), si(v, "mostFrequency"),
                v.text("unsignalled").equals(OPEN), v.ifWhole("poles"), v.si("breakdown"));
    }

    private static MoverDrive.Below below(String word) {
        return Stream.of(MoverDrive.Below.values()).filter(each -> each.word().equals(word)).findFirst().orElse(MoverDrive.Below.HOLDS);
    }

    private static MoverDrive.Tacho tacho(Values v) {
        return new MoverDrive.Tacho(Signal.named(v.text("kind")), v.whole("pulses"), si(v, "lockedBelow"));
    }

    static Optional<Double> si(Values values, String field) {
        return values.ifQuantity(field).map(Quantity::si);
    }

    private static List<Double> all(Values values, String field) {
        return values.ifQuantities(field).map(Quantities::toArray).map(array -> java.util.Arrays.stream(array).boxed().toList())
                .orElse(List.of());
    }

    @Override
    public List<Problem> check(Values values, String place) {
        List<Problem> problems = new ArrayList<>();
        MoverDrive drive = decode(values);
        MoverDrive.Intake supply = drive.supply();
        if (supply.voltage().filter(volts -> volts == 0).isPresent()) {
            problems.add(Problem.error(place + ".supply.voltage", "is 0 V; expected its rated voltage"));
        }
        if (supply.lowest().isPresent() && supply.highest().isPresent() && supply.lowest().get() > supply.highest().get()) {
            problems.add(Problem.error(place + ".supply", "has a lowest voltage above the highest; expected them the other way round"));
        }
        supply.voltage().map(Math::abs).filter(volts -> supply.lowest().filter(low -> volts < low).isPresent()
                || supply.highest().filter(high -> volts > high).isPresent()).ifPresent(volts -> problems.add(Problem.error(
                place + ".supply.voltage", "lies outside of its own lowest and highest voltage; expected it between them")));
        MoverDrive.SpeedControl control = drive.control();
        String at = place + ".control";
        boolean byTemperature = control.kind() == Control.THERMISTOR;
        int settings = byTemperature ? control.temperatures().size() : control.settings().size();
        if (control.kind() == Control.GRADES && control.speeds().isEmpty()) {
            problems.add(Problem.error(at + ".speed", "is missing; expected the speed of each grade"));
        } else if (byTemperature && control.temperatures().isEmpty()) {
            problems.add(Problem.error(at + ".temperature", "is missing; expected temperatures with a speed at each"));
        } else if (control.kind() != Control.GRADES && control.speeds().size() != settings) {
            problems.add(Problem.error(at + ".speed", "has " + control.speeds().size() + (control.speeds().size() == 1 ? " value for "
                    : " values for ") + settings
                    + (byTemperature ? " temperatures" : " settings") + "; expected one for each"));
        }
        for (int i = 1; i < control.speeds().size(); i++) {
            if (control.speeds().get(i) < control.speeds().get(i - 1)) {
                problems.add(Problem.error(at + ".speed", "falls; expected speeds that rise or stay"));
                break;
            }
        }
        above(control.stopSetting(), control.startSetting(), at + ".stopSetting", "start setting", problems);
        above(control.stallVoltage(), control.startVoltage(), at + ".stallVoltage", "start voltage", problems);
        above(control.leastFrequency(), control.mostFrequency(), at + ".leastFrequency", "highest one", problems);
        if (drive.wires().isPresent() && drive.wires().get() < drive.neededWires()) {
            problems.add(Problem.error(place + ".wires", "is " + drive.wires().get() + ", but "
                    + needs(drive) + " takes " + drive.neededWires() + "; expected as many, or less control and signal"));
        }
        if (drive.signal().kind() == Signal.LOCKED_ROTOR && drive.signal().locked().isEmpty()) {
            problems.add(Problem.caution(place + ".signal.lockedBelow", "is missing; without it nobody can tell whether a slow mover sets the"
                    + " signal off"));
        }
        return problems;
    }

    /** What wires are for, in words. */
    static String needs(MoverDrive drive) {
        String supply = drive.supply().current() == Current.THREE_PHASE ? "a three-phase supply" : "a supply";
        String control = drive.control().kind().ownWire() ? " with control by " + drive.control().kind().word() : "";
        String signal = drive.signal().kind() == Signal.NONE ? "" : (control.isEmpty() ? " with" : " and") + " a "
                + drive.signal().kind().word() + " signal";
        return supply + control + signal;
    }

    private static void above(Optional<Double> lower, Optional<Double> upper, String place, String other, List<Problem> problems) {
        if (lower.isPresent() && upper.isPresent() && lower.get() > upper.get()) {
            problems.add(Problem.error(place, "lies above the " + other + "; expected it below"));
        }
    }

    @Override
    public Value.Tree encode(MoverDrive drive) {
        MoverDrive.Intake s = drive.supply();
        MoverDrive.SpeedControl c = drive.control();
        Value.Tree supply = s.equals(NO_INTAKE) ? Value.Tree.EMPTY : new Written().text("current", s.current().word())
                .number("voltage", s.voltage()).number("lowest", s.lowest()).number("highest", s.highest()).numbers("frequency", s.frequencies())
                .number("rated", s.rated()).number("locked", s.locked()).number("inrush", s.inrush()).number("inrushTime", s.inrushTime())
                .number("start", s.start()).number("startTime", s.startTime()).number("powerFactor", s.powerFactor())
                .text("protection", s.protection()).number("retry", s.retry()).tree();
        Value.Tree control = c.equals(control(Optional.empty())) ? Value.Tree.EMPTY : new Written().text("kind", c.kind().word())
                .numbers("setting", c.settings()).numbers("speed", c.speeds()).numbers("temperature", c.temperatures())
                .number("tolerance", c.tolerance()).number("lowestSpeed", c.lowestSpeed()).number("startSetting", c.startSetting())
                .number("stopSetting", c.stopSetting()).number("startVoltage", c.startVoltage()).number("stallVoltage", c.stallVoltage())
                .text("below", c.below().word()).number("leastFrequency", c.leastFrequency()).number("mostFrequency", c.mostFrequency())
                .text("unsignalled", c.stopsUnsignalled() ? OPEN : "full speed").whole("poles", c.poles()).number("breakdown", c.breakdown()).tree();
        Value.Tree signal = drive.signal().kind() == Signal.NONE ? Value.Tree.EMPTY : new Written().text("kind", drive.signal().kind().word())
                .number("pulses", drive.signal().pulses()).number("lockedBelow", drive.signal().locked()).tree();
        return new Written().whole("wires", drive.wires()).part("supply", supply).part("control", control).part("signal", signal)
                .number("restart", drive.restart()).tree();
    }
}
