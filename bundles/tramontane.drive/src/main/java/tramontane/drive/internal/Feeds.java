package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.SpeedLaw;
import tramontane.drive.BankDrive;
import tramontane.drive.Control;
import tramontane.drive.DriveState;
import tramontane.drive.Feeding;
import tramontane.drive.MoverDrive;
import tramontane.drive.Signal;
import tramontane.drive.Supplies;
import tramontane.model.AirMover;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.Passage;
import tramontane.model.Quantity;
import tramontane.physics.electric.Electricity;

/** How all banks are fed at an operating point, and what their supplies carry. */
final class Feeds {

    private final Design design;
    private final Condition condition;
    private final OperatingPoint point;
    private final Decoding decoding;
    private final Supplies supplies;

    /** One bank with what belongs to it. */
    record Bank(Passage passage, AirMover mover, MoverDrive part, BankDrive drive, OperatingPoint.BankPoint point, Feeding feeding,
            DriveState.BankFeed feed) {

        /** Current of one mover while it runs up, A. */
        Optional<Double> starting() {
            return part.supply().start().or(part.supply()::locked);
        }
    }

    Feeds(Design design, Condition condition, OperatingPoint point, Decoding decoding) {
        this.design = design;
        this.condition = condition;
        this.point = point;
        this.decoding = decoding;
        supplies = decoding.supplies(design);
    }

    /** What the condition says of single supplies. */
    tramontane.drive.SupplyLevels levels() {
        return decoding.levels(condition);
    }

    Supplies supplies() {
        return supplies;
    }

    /** The banks whose part says something of its drive. */
    List<Bank> banks() {
        List<Bank> banks = new ArrayList<>();
        for (OperatingPoint.BankPoint each : point.banks()) {
            design.airPath().passages().stream().filter(passage -> passage.id().equals(each.bank())).findFirst()
                    .ifPresent(passage -> design.airMover(Banks.mover(passage)).ifPresent(mover -> decoding.mover(mover)
                            .ifPresent(part -> banks.add(bank(passage, mover, part, each)))));
        }
        return banks;
    }

    private Bank bank(Passage passage, AirMover mover, MoverDrive part, OperatingPoint.BankPoint at) {
        BankDrive drive = decoding.bank(passage);
        Feeding feeding = FedSpeed.of(new SpeedLaw.Supply(design, passage, mover, condition, at.setting(), at.density(), at.temperature()),
                decoding).orElseThrow();
        int running = (int) at.movers().stream().filter(OperatingPoint.MoverPoint::running).count();
        int locked = (int) condition.failed().stream().filter(each -> each.state() == FailedMover.State.LOCKED
                && each.bank().orElse(passage.id()).equals(passage.id())).count();
        Optional<Double> each = at.movers().stream().filter(OperatingPoint.MoverPoint::running).findFirst()
                .flatMap(first -> first.power().isPresent() ? Optional.of(mean(at) * slip(mover, part, feeding, at.speed()))
                        : Optional.empty());
        Electric electric = electric(part, Wiring.of(drive, part.supply().current()), feeding, running, each);
        Optional<Double> pulses = part.signal().kind() == Signal.SPEED && running > 0 && at.speed() > 0
                ? Optional.of(Electricity.pulses(at.speed(), part.signal().pulses())) : Optional.empty();
        Optional<Double> power = each.map(watts -> running * watts).or(() -> running == 0 ? Optional.of(0.0) : Optional.empty());
        // of what is sent, the mover gets the share that its voltage is
        Optional<Double> drawn = running == 0 ? Optional.of(0.0) : power.map(watts -> feeding.sent().filter(volts -> volts > 0)
                .flatMap(sent -> electric.terminals().filter(left -> left > 0).map(left -> watts * sent / left)).orElse(watts));
        return new Bank(passage, mover, part, drive, at, feeding, new DriveState.BankFeed(passage.id(), feeding, running, locked,
                power, drawn, running == 0 ? Optional.empty() : electric.current(), running == 0 ? Optional.empty() : electric.terminals(), pulses));
    }

    /**
     * Input of an induction motor that is slowed down by its voltage, over the cube of its speed: what its field turns with is not the
     * rotor's speed but its own, so P/P_1 = (n/n_1)² f/f_1. 1 for other motors.
     */
    static double slip(AirMover mover, MoverDrive part, Feeding feeding, double speed) {
        if (part.control().poles().isEmpty() || !part.supply().current().alternating() || part.supply().frequencies().isEmpty() || !(speed > 0)) {
            return 1;
        }
        double rated = mover.ratedSpeedSi().orElse(speed);
        double first = part.supply().frequencies().getFirst();
        return rated / speed * feeding.frequency().orElse(first) / first;
    }

    /** Movers of one bank may share the flow unevenly; the wires see their mean. */
    private static double mean(OperatingPoint.BankPoint at) {
        return at.movers().stream().filter(OperatingPoint.MoverPoint::running).mapToDouble(mover -> mover.power().orElse(0)).average().orElse(0);
    }

    /** Current and voltage that agree with each other and with the wire. */
    private record Electric(Optional<Double> current, Optional<Double> terminals) {
    }

    private static Electric electric(MoverDrive part, Wiring wiring, Feeding feeding, int running, Optional<Double> power) {
        if (feeding.sent().isEmpty()) {
            return new Electric(feeding.current(), Optional.empty());
        }
        if (power.isEmpty()) {
            return new Electric(feeding.current(), feeding.terminals());
        }
        double sent = feeding.sent().get();
        double factor = part.supply().current().alternating() ? part.supply().powerFactor().orElse(1.0) : 1;
        double phases = part.supply().current().phases();
        double volts = wiring.left(sent, left -> factor * Electricity.current(power.get(), left, factor, phases), running);
        return volts > 0 ? new Electric(Optional.of(Electricity.current(power.get(), volts, factor, phases)), Optional.of(volts))
                : new Electric(Optional.empty(), Optional.empty()); // the wire carries no such power
    }

    /** What the supplies carry. */
    List<DriveState.Load> loads(List<Bank> banks) {
        return supplies.list().stream().map(source -> load(source, of(source, banks))).toList();
    }

    static List<Bank> of(Supplies.Source source, List<Bank> banks) {
        return banks.stream().filter(bank -> bank.drive().supply().filter(source.id()::equals).isPresent()).toList();
    }

    private DriveState.Load load(Supplies.Source source, List<Bank> banks) {
        Optional<Double> running = sum(banks.stream().map(this::running).toList());
        Optional<Double> fullest = sum(banks.stream().map(bank -> fullest(bank, source)).toList());
        Optional<Double> starting = sequence(banks, Bank::starting, bank -> bank.part().supply().startTime().orElse(0.0));
        Optional<Double> inrush = sequence(banks, bank -> bank.part().supply().inrush(), bank -> bank.part().supply().inrushTime().orElse(0.0));
        Optional<Double> power = sum(banks.stream().map(bank -> bank.feed().drawn()).toList()).map(watts -> watts / source.efficiency());
        return new DriveState.Load(source.id(), running, fullest, starting, inrush, source.most().map(most -> most * derating(source)), power);
    }

    /** What is left of the current that a supply gives, in the air that it stands in. */
    double derating(Supplies.Source source) {
        return source.derateFrom().map(from -> Math.max(0, 1 - source.derate() * Math.max(0, temperature(source) - from))).orElse(1.0);
    }

    /** Temperature of the air that a supply stands in, K. */
    double temperature(Supplies.Source source) {
        return source.place().flatMap(point::bay).map(OperatingPoint.BayState::temperature).orElse(condition.temperature());
    }

    /** What a bank takes while it runs, A. */
    private Optional<Double> running(Bank bank) {
        Optional<Double> turning = bank.feed().running() == 0 ? Optional.of(0.0) : bank.feed().current()
                .map(amps -> amps * pulsed(bank) * bank.feed().running());
        return sum(List.of(turning, held(bank)));
    }

    /** What movers take that are fed and do not turn: those whose rotor is held, and those that have too little voltage to start, A. */
    private Optional<Double> held(Bank bank) {
        int standing = bank.feed().locked() + (stuck(bank) ? Banks.running(bank.passage(), condition) : 0);
        return standing == 0 ? Optional.of(0.0) : bank.part().supply().locked().map(amps -> amps * standing);
    }

    /** Whether its movers stand under voltage; those that their control lets stand are off. */
    private static boolean stuck(Bank bank) {
        MoverDrive.SpeedControl control = bank.part().control();
        double setting = Math.max(bank.feeding().setting(), bank.drive().kick().orElse(0.0));
        boolean byControl = !Banks.control(bank.part(), bank.drive()).onSupply() && (control.startSetting().filter(least -> setting < least)
                .isPresent()
                || control.stopSetting().filter(least -> bank.feeding().setting() < least).isPresent());
        return (bank.feeding().standing() == Feeding.Standing.DOES_NOT_START || bank.feeding().standing() == Feeding.Standing.STALLS) && !byControl;
    }

    /** Share of the time in which a mover takes its current. */
    private static double pulsed(Bank bank) {
        return Banks.control(bank.part(), bank.drive()) == Control.PULSED_SUPPLY ? bank.feeding().setting() : 1;
    }

    /** What a bank takes with all that has not failed at full setting, at the end of the tolerance that takes most, A. */
    private Optional<Double> fullest(Bank bank, Supplies.Source source) {
        int movers = Banks.running(bank.passage(), condition);
        if (movers == 0 || bank.feeding().source().isEmpty()) {
            return movers == 0 ? Optional.of(0.0) : Optional.empty();
        }
        MoverDrive.SpeedControl control = bank.part().control();
        double warm = control.kind() == Control.THERMISTOR && !control.temperatures().isEmpty() ? control.temperatures().getLast()
                : bank.point().temperature();
        SpeedLaw.Supply full = new SpeedLaw.Supply(design, bank.passage(), bank.mover(), condition, 1, bank.point().density(), warm);
        Wiring wiring = Wiring.of(bank.drive(), bank.part().supply().current());
        double fixed = bank.mover().fixedLoss().map(Quantity::si).orElse(0.0);
        double now = bank.point().speed();
        Optional<Double> most = Optional.empty();
        for (double factor : new double[] {1 - source.below(), 1 + source.above()}) {
            Feeding feeding = FedSpeed.at(bank.feeding().source().get() * factor, full, decoding).orElseThrow();
            Optional<Double> power = bank.feed().running() > 0 && now > 0 ? bank.feed().power().map(watts -> (fixed
                    + Math.max(0, watts / bank.feed().running() / slip(bank.mover(), bank.part(), bank.feeding(), now) - fixed)
                    * Math.pow(feeding.speed() / now, 3)) * slip(bank.mover(), bank.part(), feeding, feeding.speed())) : Optional.empty();
            Optional<Double> amps = electric(bank.part(), wiring, feeding, movers, power).current();
            most = amps.isPresent() ? Optional.of(Math.max(most.orElse(0.0), amps.get() * movers)) : most;
        }
        Optional<Double> locked = bank.feed().locked() == 0 ? Optional.of(0.0) : bank.part().supply().locked().map(amps -> amps * bank.feed()
                .locked());
        return most.flatMap(turning -> locked.map(held -> turning + held));
    }

    private static Optional<Double> sum(List<Optional<Double>> all) {
        return all.stream().allMatch(Optional::isPresent) ? Optional.of(all.stream().mapToDouble(Optional::get).sum()) : Optional.empty();
    }

    /**
     * The highest current while movers start. Banks that state an interval start mover by mover, one bank after another, while those
     * that state none start all at once with the first.
     */
    private static Optional<Double> sequence(List<Bank> banks, java.util.function.Function<Bank, Optional<Double>> start,
            java.util.function.Function<Bank, Double> time) {
        List<Double> times = new ArrayList<>(); // when each starts
        List<double[]> each = new ArrayList<>(); // current while it starts, thereafter, and how long it starts
        double next = 0;
        for (Bank bank : banks) {
            int movers = bank.feed().running();
            Optional<Double> starting = start.apply(bank);
            if (movers > 0 && (starting.isEmpty() || bank.feed().current().isEmpty())) {
                return Optional.empty();
            }
            for (int k = 0; k < movers; k++) {
                times.add(bank.drive().interval() > 0 ? next : 0.0);
                next += bank.drive().interval();
                each.add(new double[] {Math.max(starting.get(), bank.feed().current().get()), bank.feed().current().get(), time.apply(bank)});
            }
        }
        double most = 0;
        for (double now : times) { // it can only rise when another starts
            double sum = 0;
            for (int i = 0; i < each.size(); i++) {
                double since = now - times.get(i);
                sum += since < 0 ? 0 : since == 0 || since < each.get(i)[2] ? each.get(i)[0] : each.get(i)[1];
            }
            most = Math.max(most, sum);
        }
        double held = banks.stream().mapToDouble(bank -> bank.feed().locked() * bank.part().supply().locked().orElse(0.0)).sum();
        return Optional.of(most + held);
    }
}
