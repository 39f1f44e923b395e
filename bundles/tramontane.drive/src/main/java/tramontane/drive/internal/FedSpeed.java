package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.airflow.SupplySpeed;
import tramontane.analysis.Relation;
import tramontane.analysis.SpeedLaw;
import tramontane.analysis.Trace;
import tramontane.drive.BankDrive;
import tramontane.drive.Control;
import tramontane.drive.Current;
import tramontane.drive.Feeding;
import tramontane.drive.MoverDrive;
import tramontane.drive.Supplies;
import tramontane.drive.SupplyLevels;
import tramontane.model.AirMover;
import tramontane.model.MoverCurve;
import tramontane.model.Quantities;
import tramontane.model.Quantity;
import tramontane.physics.units.QuantityKind;

/**
 * The speed of a mover from how it is fed and what its control is set to.
 *
 * <p>The supply's voltage, lowered by the control, by resistors and by the wire, gives the full speed; the control takes its part of
 * that. What a mover takes to start, it is taken to start from rest with. The current that drops voltage is that of the rated load
 * carried over by the fan laws: torque with the square of speed, power with its cube.
 */
final class FedSpeed {

    static final Relation DUTY = new Relation("speed by setting", "n = n(s) n_full / n_rated",
            "characteristic of the part; straight between its points", "");
    static final Relation PROPORTIONAL = new Relation("speed by setting", "n = max(n_lowest, s n_full)",
            "4-Wire Pulse Width Modulation (PWM) Controlled Fans Specification, rev. 1.3, 2005: speed over its highest within 10 % of duty",
            "where the part has no characteristic of its own");
    static final Relation GRADE = new Relation("speed grade", "the slowest grade not below s n_fastest", "characteristic of the part", "");
    static final Relation SUPPLY = new Relation("speed at a voltage", "n = n_full(U)",
            "speed of the part at the voltage that is left at its terminals", "U above the start voltage");
    static final Relation FULL = new Relation("uncontrolled speed", "n = n_full", "the part has no speed control", "");
    static final Relation THERMISTOR = new Relation("speed by hub temperature", "n = n(T) n_full / n_rated",
            "characteristic of the part; its sensor is taken to be at the temperature of the air that enters", "steady");
    static final Relation TORQUE = new Relation("speed at a held torque", "n = n_full √(s ρ1/ρ)",
            "torque of a fan goes with ρ n² (fan laws, ISO 5801)", "torque held by the electronics of the part");
    static final Relation STANDS = new Relation("standing rotor", "n = 0", "start and stall thresholds of the part", "");

    /** Grades count as fast enough when they miss what is asked for by no more than this share. */
    private static final double ROUNDING = 1e-9;
    /** Share of its rated voltage from which a motor with electronics is taken to hold its speed that states no lowest voltage. */
    private static final double HELD_FROM = 0.5;
    /** Share of that voltage below which it stands; between, it slows down (assumed). */
    private static final double CUT_OUT = 0.5;

    private final SpeedLaw.Supply supply;
    private final MoverDrive part;
    private final BankDrive bank;
    private final Optional<Supplies.Source> source;
    private final Optional<SupplyLevels.Level> level;
    private final Wiring wiring;
    private final int running;
    private final AirMover mover;
    private final Control kind;
    private final Optional<Double> given;

    private FedSpeed(SpeedLaw.Supply supply, MoverDrive part, Decoding decoding) {
        this(supply, part, decoding, Optional.empty());
    }

    private FedSpeed(SpeedLaw.Supply supply, MoverDrive part, Decoding decoding, Optional<Double> given) {
        this.given = given;
        this.supply = supply;
        this.part = part;
        bank = decoding.bank(supply.bank());
        source = bank.supply().flatMap(decoding.supplies(supply.design())::source);
        level = bank.supply().flatMap(decoding.levels(supply.condition())::of);
        wiring = Wiring.of(bank, part.supply().current());
        running = Math.max(1, Banks.running(supply.bank(), supply.condition()));
        kind = Banks.control(part, bank);
        mover = stated(supply.mover(), part.supply().voltage().map(Math::abs));
    }

    /** How it is fed; empty for a part that says nothing of its drive. */
    static Optional<Feeding> of(SpeedLaw.Supply supply, Decoding decoding) {
        return decoding.mover(supply.mover()).map(part -> new FedSpeed(supply, part, decoding).feeding());
    }

    /** The same where the supply gives another voltage than stated. */
    static Optional<Feeding> at(double volts, SpeedLaw.Supply supply, Decoding decoding) {
        return decoding.mover(supply.mover()).map(part -> new FedSpeed(supply, part, decoding, Optional.of(volts)).feeding());
    }

    /** Where the speed comes from. */
    static Optional<SpeedLaw.Origin> origin(SpeedLaw.Supply supply, Decoding decoding) {
        return decoding.mover(supply.mover()).map(part -> {
            FedSpeed fed = new FedSpeed(supply, part, decoding);
            return fed.origin(fed.feeding());
        });
    }

    /** The part with its rated voltage at curves that state none: they are those of the data sheet. */
    private static AirMover stated(AirMover mover, Optional<Double> rated) {
        if (rated.isEmpty() || mover.curves().stream().anyMatch(curve -> curve.voltage().isPresent())) {
            return mover;
        }
        List<MoverCurve> curves = mover.curves().stream().map(curve -> curve.withVoltage(Quantity.of(rated.get()))).toList();
        return mover.withCurves(curves);
    }

    private Feeding feeding() {
        double setting = kind.followsSetting() ? supply.setting() : 1;
        Optional<Double> volts = sourceVoltage();
        boolean lowered = kind.onSupply();
        Optional<Double> sent = volts.map(each -> lowered ? setting * each : each);
        Optional<Double> frequency = frequency().map(each -> kind == Control.FREQUENCY ? setting * each : each);
        if (lowered && setting == 0 || volts.filter(each -> each == 0).isPresent()) {
            return new Feeding(volts, sent, sent, frequency, setting, Optional.of(0.0), 0, 0, Feeding.Standing.OFF);
        }
        Terminals at = terminals(sent, frequency, setting);
        Feeding.Standing standing = standing(at, setting, sent, frequency);
        double speed = standing == Feeding.Standing.NOT ? at.speed() : 0;
        return new Feeding(volts, sent, at.volts(), frequency, setting, at.current(), at.full(), speed,
                standing == Feeding.Standing.NOT && speed == 0 ? Feeding.Standing.STALLS : standing);
    }

    /** What is left at the terminals, and what comes of it. */
    private record Terminals(Optional<Double> volts, Optional<Double> current, double full, double speed) {
    }

    private Terminals terminals(Optional<Double> sent, Optional<Double> frequency, double setting) {
        Optional<Double> volts = sent.map(each -> wiring.left(each, left -> {
            Optional<Double> at = Optional.of(left);
            return current(controlled(full(at, frequency), setting, at), at).map(amps -> amps * powerFactor()).orElse(0.0);
        }, running));
        if (sent.isPresent() && sent.get() > 0 && volts.get() == 0) { // so thin a wire carries no motor
            return new Terminals(volts, Optional.of(0.0), 0, 0);
        }
        double full = full(volts, frequency);
        double speed = controlled(full, setting, volts);
        return new Terminals(volts, current(speed, volts), full, speed);
    }

    /** Voltage of the supply without sign: that of the condition, else that of the supply, else that the part is rated for. */
    private Optional<Double> sourceVoltage() {
        return given.or(() -> level.flatMap(SupplyLevels.Level::voltage)).or(() -> supply.condition().supplyVoltage().map(Quantity::si))
                .or(() -> source.map(Supplies.Source::voltage)).or(part.supply()::voltage).map(Math::abs);
    }

    private Optional<Double> frequency() {
        return !part.supply().current().alternating() ? Optional.empty() : level.flatMap(SupplyLevels.Level::frequency)
                .or(() -> supply.condition().supplyFrequency().map(Quantity::si)).or(() -> source.flatMap(Supplies.Source::frequency))
                .or(() -> part.supply().frequencies().stream().findFirst());
    }

    private double powerFactor() {
        return part.supply().current().alternating() ? part.supply().powerFactor().orElse(1.0) : 1;
    }

    private double rated() {
        return mover.ratedSpeedSi().orElse(0.0);
    }

    private Optional<Double> ratedVoltage() {
        return part.supply().voltage().map(Math::abs);
    }

    private double ratedDensity() {
        return Motors.density(mover);
    }

    /** The speed at full setting, rad/s. */
    private double full(Optional<Double> volts, Optional<Double> frequency) {
        Optional<Double> turning = inductionMotor(volts, frequency);
        if (turning.isPresent()) {
            return turning.get();
        }
        SpeedLaw.Supply there = supply.withMover(mover).withSetting(1);
        if (volts.isPresent()) {
            there = there.withCondition(supply.condition().withSupplyVoltage(Quantity.of(volts.get())));
        }
        Optional<Double> known = SupplySpeed.speed(there);
        double nominal = known.orElse(rated());
        if (followsVoltage() && volts.isPresent() && ratedVoltage().isPresent() && !SupplySpeed.followsVoltage(there)) {
            nominal *= volts.get() / ratedVoltage().get();
        }
        if (!followsVoltage() && volts.isPresent()) { // electronics hold the speed as long as the voltage is enough
            double enough = part.supply().lowest().or(() -> ratedVoltage().map(each -> HELD_FROM * each)).orElse(0.0);
            double share = enough > 0 ? effective(volts.get(), frequency) / enough : 1;
            nominal *= share >= 1 ? 1 : share >= CUT_OUT ? share : 0;
        }
        boolean byFrequency = kind == Control.FREQUENCY && frequency.isPresent() && frequency().isPresent();
        return byFrequency ? nominal * frequency.get() / frequency().get() : nominal;
    }

    /** A voltage as thresholds of the part count it: a motor at another frequency needs as much less voltage. */
    private double effective(double volts, Optional<Double> frequency) {
        Optional<Double> rated = part.supply().frequencies().stream().findFirst().or(this::frequency);
        return kind == Control.FREQUENCY && frequency.filter(hertz -> hertz > 0).isPresent() && rated.isPresent()
                ? volts * rated.get() / frequency.get() : volts;
    }

    /** Whether the speed of its motor follows its voltage. */
    private boolean followsVoltage() {
        return kind == Control.VOLTAGE || kind == Control.PULSED_SUPPLY
                || mover.motor().filter(AirMover.DC_UNREGULATED::equals).isPresent();
    }

    private Optional<Double> inductionMotor(Optional<Double> volts, Optional<Double> frequency) {
        return volts.isEmpty() || frequency.isEmpty() ? Optional.empty()
                : Motors.of(mover, part).map(motor -> motor.running(volts.get(), frequency.get(), supply.density()).speed());
    }

    /** What the control makes of the full speed, rad/s. */
    private double controlled(double full, double setting, Optional<Double> volts) {
        MoverDrive.SpeedControl control = part.control();
        double scale = rated() > 0 ? full / rated() : 1;
        return switch (kind) {
            case NONE, FREQUENCY -> full;
            case VOLTAGE, PULSED_SUPPLY -> volts.flatMap(each -> ratedVoltage().map(nominal -> each / nominal)).flatMap(this::byCurve)
                    .orElse(full);
            case THERMISTOR -> scale * along(control.temperatures(), control.speeds(), supply.temperature());
            case GRADES -> scale * grade(control.speeds(), setting);
            case TORQUE -> Math.min(full * Math.sqrt(setting * ratedDensity() / supply.density()),
                    control.speeds().isEmpty() ? Double.POSITIVE_INFINITY : scale * control.speeds().getLast());
            case DUTY, CONTROL_VOLTAGE, BUS -> byCurve(setting).map(speed -> scale * speed)
                    .orElseGet(() -> Math.max(control.lowestSpeed().orElse(0.0), setting * full));
        };
    }

    /** The speed of the part's own curve, rad/s. */
    private Optional<Double> byCurve(double setting) {
        MoverDrive.SpeedControl control = part.control();
        if (kind != control.kind() || control.settings().isEmpty() || control.settings().size() != control.speeds().size()) {
            return Optional.empty();
        }
        double first = control.settings().getFirst();
        if (setting < first && control.below() == MoverDrive.Below.RUNS_DOWN) {
            return Optional.of(control.speeds().getFirst() * setting / first);
        }
        return Optional.of(along(control.settings(), control.speeds(), setting));
    }

    private static double grade(List<Double> grades, double setting) {
        double wanted = setting * grades.getLast();
        return setting == 0 ? 0 : grades.stream().filter(speed -> speed >= wanted * (1 - ROUNDING)).findFirst().orElse(grades.getLast());
    }

    static double along(List<Double> x, List<Double> y, double at) {
        if (at <= x.getFirst()) {
            return y.getFirst();
        }
        for (int i = 1; i < x.size(); i++) {
            if (at <= x.get(i)) {
                return y.get(i - 1) + (y.get(i) - y.get(i - 1)) * (at - x.get(i - 1)) / (x.get(i) - x.get(i - 1));
            }
        }
        return y.getLast();
    }

    /** The current of one mover that turns so fast, A; empty where the part does not say enough. */
    private Optional<Double> current(double speed, Optional<Double> volts) {
        Optional<Double> atRated = ratedPower().flatMap(power -> ratedVoltage().map(each -> power / (each * powerFactor() * phases())))
                .or(part.supply()::rated);
        double ratio = rated() > 0 ? speed / rated() : 1;
        double load = ratio * ratio * supply.density() / ratedDensity();
        boolean electronic = part.supply().current() == Current.DC || mover.motor().filter("EC"::equals).isPresent();
        boolean holdsSpeed = !followsVoltage() && electronic && volts.isPresent() && ratedVoltage().isPresent();
        // a motor that follows its voltage takes the current that makes its torque, a regulated one that which makes its power
        return atRated.map(amps -> holdsSpeed && volts.get() > 0 ? amps * load * ratio * ratedVoltage().get() / volts.get() : amps * load);
    }

    private double phases() {
        return part.supply().current() == Current.THREE_PHASE ? Math.sqrt(3) : 1;
    }

    private Optional<Double> ratedPower() {
        return mover.curves().stream().flatMap(curve -> curve.power().stream()).findFirst().map(Quantities::toArray)
                .map(array -> java.util.Arrays.stream(array).average().orElse(0)).or(() -> mover.ratedPower().map(Quantity::si));
    }

    /** Why it stands, if it does. */
    private Feeding.Standing standing(Terminals at, double setting, Optional<Double> sent, Optional<Double> frequency) {
        return kind.followsSetting() && !kind.onSupply() ? bySetting(setting)
                .or(() -> byVoltage(at, sent, frequency)).orElse(Feeding.Standing.NOT) : byVoltage(at, sent, frequency).orElse(Feeding.Standing.NOT);
    }

    private Optional<Feeding.Standing> bySetting(double setting) {
        MoverDrive.SpeedControl control = part.control();
        boolean signal = kind == Control.DUTY || kind == Control.CONTROL_VOLTAGE;
        boolean stops = !signal || control.below() != MoverDrive.Below.HOLDS || control.stopSetting().isPresent();
        if (setting == 0 && stops) {
            return Optional.of(Feeding.Standing.OFF);
        }
        if (control.stopSetting().filter(least -> setting < least).isPresent()) {
            return Optional.of(Feeding.Standing.STALLS);
        }
        double starting = Math.max(setting, bank.kick().orElse(0.0));
        return control.startSetting().filter(least -> starting < least).map(least -> Feeding.Standing.DOES_NOT_START);
    }

    private Optional<Feeding.Standing> byVoltage(Terminals at, Optional<Double> sent, Optional<Double> frequency) {
        if (at.volts().isEmpty()) {
            return Optional.empty();
        }
        MoverDrive.SpeedControl control = part.control();
        double volts = effective(at.volts().get(), frequency);
        if (control.stallVoltage().filter(least -> volts < least).isPresent()) {
            return Optional.of(Feeding.Standing.STALLS);
        }
        double kick = !kind.onSupply() ? 0 : bank.kick().flatMap(share -> sourceVoltage().map(each -> share * each)).orElse(0.0);
        double starting = effective(atRest(Math.max(sent.orElse(at.volts().get()), kick)).orElse(Math.max(at.volts().get(), kick)), frequency);
        return control.startVoltage().filter(least -> starting < least).map(least -> Feeding.Standing.DOES_NOT_START);
    }

    /**
     * What is left of a voltage at a rotor that does not turn yet; those that start together draw it together. Empty where
     * nothing says its current.
     */
    private Optional<Double> atRest(double sent) {
        return wiring.dropAtRest(part, bank, running).map(drop -> Math.max(0, sent - drop));
    }

    private SpeedLaw.Origin origin(Feeding fed) {
        String place = "air mover " + mover.id();
        List<Trace.Term> inputs = new ArrayList<>();
        fed.source().ifPresent(volts -> inputs.add(new Trace.Term("voltage of the supply", QuantityKind.VOLTAGE, volts, sourceName())));
        fed.drop().filter(drop -> drop > 0).ifPresent(drop -> inputs.add(new Trace.Term("voltage lost on the way", QuantityKind.VOLTAGE, drop,
                "bank " + supply.bank().id())));
        fed.terminals().ifPresent(volts -> inputs.add(new Trace.Term("voltage at the terminals U", QuantityKind.VOLTAGE, volts,
                "bank " + supply.bank().id())));
        inputs.add(new Trace.Term("full speed at that voltage n_full", QuantityKind.ROTATIONAL_SPEED, fed.full(), place));
        inputs.add(new Trace.Term("rated speed n_rated", QuantityKind.ROTATIONAL_SPEED, rated(), place));
        boolean curve = byCurve(fed.setting()).isPresent();
        Relation relation = fed.standing() != Feeding.Standing.NOT ? STANDS : switch (kind) {
            case NONE -> FULL;
            case VOLTAGE, PULSED_SUPPLY, FREQUENCY -> SUPPLY;
            case THERMISTOR -> THERMISTOR;
            case GRADES -> GRADE;
            case TORQUE -> TORQUE;
            case DUTY, CONTROL_VOLTAGE, BUS -> curve ? DUTY : PROPORTIONAL;
        };
        if (kind == Control.THERMISTOR) {
            inputs.add(new Trace.Term("temperature of the air T", QuantityKind.TEMPERATURE, supply.temperature(), "air at the inlet"));
        }
        if (kind == Control.TORQUE) {
            inputs.add(new Trace.Term("density of the air ρ", QuantityKind.DENSITY, supply.density(), "air at the inlet"));
            inputs.add(new Trace.Term("density of the curve ρ1", QuantityKind.DENSITY, ratedDensity(), place));
        }
        return new SpeedLaw.Origin(relation, inputs);
    }

    private String sourceName() {
        return level.flatMap(SupplyLevels.Level::voltage).isPresent() || supply.condition().supplyVoltage().isPresent()
                ? "condition " + supply.condition().id() : source.map(each -> "supply " + each.id()).orElse("air mover " + mover.id());
    }
}
