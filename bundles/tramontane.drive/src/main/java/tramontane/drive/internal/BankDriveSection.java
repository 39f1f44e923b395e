package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.SectionType;
import tramontane.drive.BankDrive;
import tramontane.drive.Control;
import tramontane.drive.Signal;
import tramontane.model.Design;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Range;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.model.Written;
import tramontane.physics.units.QuantityKind;

/** How a bank is fed, controlled and watched. */
@Component(service = SectionType.class)
public final class BankDriveSection implements SectionType<BankDrive> {

    private static final String SHARED = "one for all";

    private static final Form WIRE = Form.of("wire", "The wires that feed the movers.",
            Field.amount("area", "cross-section", QuantityKind.AREA, Range.POSITIVE, "Nominal cross-section by IEC 60228, for example \"0.5 mm²\"."),
            Field.whole("gauge", "gauge", 0, 40, "AWG number, instead of the cross-section."),
            Field.choice("conductor", "conductor", BankDrive.Wire.CONDUCTORS, "Kind of conductor: flexible is class 5 and 6, solid or stranded"
                    + " class 1 and 2.").standard("flexible"),
            Field.amount("length", "length", QuantityKind.LENGTH, Range.NOT_NEGATIVE, "Length one way; the way back is added.").mandatory(),
            Field.amount("temperature", "temperature", QuantityKind.TEMPERATURE, Range.between(200, 500), "Temperature of the conductor.")
                    .standard("20 °C"));

    private static final Form ALARM = Form.of("alarm", "When a mover is taken for failed.",
            Field.amount("speed", "alarm speed", QuantityKind.ROTATIONAL_SPEED, Range.POSITIVE, "Speed below which a mover is taken for failed."),
            Field.amount("share", "alarm share", QuantityKind.FRACTION, Range.PART_OF_ONE,
                    "The same as a share of the speed that is asked for, instead of a fixed speed."),
            Field.amount("tolerance", "tolerance", QuantityKind.FRACTION, Range.between(0, 0.5), "Relative tolerance of the threshold.")
                    .standard("2 %"),
            Field.amount("gate", "gate time", QuantityKind.TIME, Range.POSITIVE,
                    "Time in which pulses are counted, which is off by up to one pulse; leave it out where the time between pulses is measured."),
            Field.amount("delay", "delay", QuantityKind.TIME, Range.NOT_NEGATIVE, "Time that it must last.").standard("0 s"));

    private static final Form FORM = Form.of(MoverDriveSection.NAME, "How a bank is fed, controlled and watched.",
            Field.words("supply", "supply", "Name of its supply among those of the design."),
            Field.choice("wiring", "wiring", List.of("each its own", SHARED), "Whether each mover has wires of its own from the supply.")
                    .standard("each its own"),
            Field.part("wire", "wire", WIRE, "The wires that feed it."),
            Field.amount("resistor", "series resistor", QuantityKind.RESISTANCE, Range.NOT_NEGATIVE,
                    "Resistor in series with each pair of wires that lowers the voltage.").standard("0 Ω"),
            Field.choice("control", "control", Control.words(), "How the design means to set its speed; as the part can where not given."),
            Field.amount("modulation", "modulation", QuantityKind.FREQUENCY, Range.POSITIVE,
                    "Frequency of the modulation that the controller gives."),
            Field.choice("watch", "watch", Signal.words(), "What the design wants to know of each mover.").standard(Signal.NONE.word()),
            Field.part("alarm", "alarm", ALARM, "When a mover is taken for failed."),
            Field.amount("interval", "start interval", QuantityKind.TIME, Range.NOT_NEGATIVE,
                    "Time between the starts of two movers; all at once where it is 0.").standard("0 s"),
            Field.amount("kick", "start pulse", QuantityKind.FRACTION, Range.PART_OF_ONE, "Setting that starts the movers from rest."),
            Field.amount("kickTime", "time of the start pulse", QuantityKind.TIME, Range.POSITIVE, "How long that lasts."));

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Set<Owner> owners() {
        return Set.of(Owner.PASSAGE);
    }

    @Override
    public BankDrive decode(Values v) {
        return new BankDrive(v.ifText("supply").filter(name -> !name.isEmpty()), v.text("wiring").equals(SHARED),
                v.part("wire").map(wire -> new BankDrive.Wire(MoverDriveSection.si(wire, "area"), wire.ifWhole("gauge"),
                        wire.text("conductor"), wire.si("length"), wire.si("temperature"))), v.si("resistor"),
                v.has("control") ? Optional.of(Control.named(v.text("control"))) : Optional.empty(), MoverDriveSection.si(v, "modulation"),
                Signal.named(v.text("watch")), v.part("alarm").map(alarm -> new BankDrive.Alarm(MoverDriveSection.si(alarm, "speed"),
                        MoverDriveSection.si(alarm, "share"), alarm.si("tolerance"), MoverDriveSection.si(alarm, "gate"), alarm.si("delay"))),
                v.si("interval"), MoverDriveSection.si(v, "kick"), MoverDriveSection.si(v, "kickTime"));
    }

    @Override
    public List<Problem> check(Values values, Design design, String place) {
        List<Problem> problems = new ArrayList<>(check(values, place));
        values.ifText("supply").filter(name -> !name.isEmpty()).ifPresent(name -> SuppliesSection.unknown(name, design, place + ".supply", problems));
        return problems;
    }

    @Override
    public List<Problem> check(Values values, String place) {
        List<Problem> problems = new ArrayList<>();
        values.part("wire").ifPresent(wire -> {
            String at = place + ".wire";
            if (wire.has("area") == wire.has("gauge")) {
                problems.add(Problem.error(at, wire.has("area") ? "has an area and a gauge; expected one of them"
                        : "has neither area nor gauge; expected one of them"));
            }
        });
        values.part("alarm").ifPresent(alarm -> {
            if (alarm.has("speed") == alarm.has("share")) {
                problems.add(Problem.error(place + ".alarm", alarm.has("speed") ? "has a speed and a share; expected one of them"
                        : "has neither speed nor share; expected one of them"));
            }
        });
        if (values.has("kick") != values.has("kickTime")) {
            problems.add(Problem.error(place, "has " + (values.has("kick") ? "kick without kickTime" : "kickTime without kick")
                    + "; expected both or neither"));
        }
        return problems;
    }

    @Override
    public Value.Tree encode(BankDrive bank) {
        return new Written().text("supply", bank.supply()).text("wiring", bank.shared() ? SHARED : "")
                .part("wire", bank.wire().map(wire -> new Written().number("area", wire.area()).whole("gauge", wire.gauge())
                        .text("conductor", wire.conductor()).number("length", wire.length()).number("temperature", wire.temperature()).tree())
                        .orElse(Value.Tree.EMPTY))
                .number("resistor", bank.resistor()).text("control", bank.control().map(Control::word)).number("modulation", bank.modulation())
                .text("watch", bank.watch().word())
                .part("alarm", bank.alarm().map(alarm -> new Written().number("speed", alarm.speed()).number("share", alarm.share())
                        .number("tolerance", alarm.tolerance()).number("gate", alarm.gate()).number("delay", alarm.delay()).tree())
                        .orElse(Value.Tree.EMPTY))
                .number("interval", bank.interval()).number("kick", bank.kick()).number("kickTime", bank.kickTime()).tree();
    }
}
