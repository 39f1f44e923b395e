package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Severity;
import tramontane.drive.BankDrive;
import tramontane.drive.Control;
import tramontane.drive.DriveState;
import tramontane.drive.Feeding;
import tramontane.drive.MoverDrive;
import tramontane.drive.Supplies;
import tramontane.model.AirMover;
import tramontane.model.Condition;
import tramontane.model.FailedMover;
import tramontane.model.MoverCurve;
import tramontane.model.Quantity;
import tramontane.physics.electric.Fuse;
import tramontane.physics.electric.InductionMotor;
import tramontane.physics.units.QuantityKind;

/** What there is to say of how movers are fed in a condition. */
final class SupplyFindings {

    private static final String PRACTICE = "common practice";
    private static final String IEC_60364 = "IEC 60364-5-52, Annex G (from memory): 5 % for other uses than lighting";
    private static final String FUSES = "common practice, as in UL 248-14, by which a fuse is loaded to 75 % of its rating for long; fuses to"
            + " IEC 60127 may carry more";

    /** Share of the voltage that may be lost in wires. */
    private static final double MOST_LOST = 0.05;
    /** Share of the voltage whose loss is worth mending. */
    private static final double MUCH_LOST = 0.02;
    /** Share of the measured speed below which power by the cube alone misleads. */
    private static final double FAR_SLOWER = 0.6;
    /** Factor of slip on the power from which it is said. */
    private static final double SLIPS = 1.05;
    /** Shortest times after which fuses may open, s, at 2.75, 4 and 10 times their rating, and the longest at 2.1 times. */
    private static final double[] QUICK_GATES = {0.05, 0.01, 0, 1800};
    private static final double[] SLOW_GATES = {0.4, 0.15, 0.02, 120};
    private static final double[] TIMES = {2.75, 4, 10};
    /** Load of a supply for long from which little is left for ageing and heat. */
    private static final double HIGH_LOAD = 0.8;
    /** Load of a fuse for long. */
    private static final double FUSE_LOAD = 0.75;
    /** Starting current over the rated one of a fuse from which it may open. */
    private static final double QUICK_FUSE = 2.1;
    /** Share of its melting integral that a fuse stands again and again. */
    private static final double PULSED_FUSE = 0.3;
    /** Relative range of voltage that a part is taken to stand that states none. */
    static final double ASSUMED_RANGE = 0.1;
    /** Voltage over the rated one from which, and below which, it is taken for the wrong supply whatever else is stated. */
    private static final double FAR_ABOVE = 1.5;
    private static final double FAR_BELOW = 0.5;

    private final Feeds feeds;
    private final Condition condition;
    private final List<Finding> findings = new ArrayList<>();

    SupplyFindings(Feeds feeds, Condition condition) {
        this.feeds = feeds;
        this.condition = condition;
    }

    List<Finding> of(List<Feeds.Bank> banks, DriveState state) {
        banks.forEach(bank -> {
            standing(bank);
            voltage(bank);
            lost(bank);
            frequency(bank);
            slip(bank);
            warm(bank);
            extrapolated(bank);
            windmilling(bank);
            retries(bank);
        });
        for (DriveState.Load load : state.supplies()) {
            Supplies.Source source = feeds.supplies().source(load.supply()).orElseThrow();
            List<Feeds.Bank> fed = Feeds.of(source, banks);
            if (!fed.isEmpty()) {
                load(source, load, fed);
                fuse(source, load, fed);
            }
        }
        return List.copyOf(findings);
    }

    private void standing(Feeds.Bank bank) {
        Feeding feeding = bank.feeding();
        if (bank.feed().running() + movers(bank) == 0) {
            return;
        }
        MoverDrive.SpeedControl control = bank.part().control();
        String what = "the movers of bank " + bank.passage().id() + " (" + bank.mover().id() + ")";
        boolean byVoltage = feeding.terminals().filter(volts -> control.stallVoltage().filter(least -> volts < least).isPresent()).isPresent();
        switch (feeding.standing()) {
            case DOES_NOT_START -> add(control.startSetting().filter(least -> Math.max(feeding.setting(), bank.drive().kick().orElse(0.0)) < least
                    && !Banks.control(bank.part(), bank.drive()).onSupply()).isPresent()
                    ? Finding.of(Severity.NOT_MET, bank.passage().id(), what + " do not start from rest: they are set to ",
                            share(feeding.setting()), " and need ",
                    share(control.startSetting().get())).remedy("raise the lowest setting to ", share(control.startSetting().get()),
                    ", or give a start pulse (kick) of as much")
                    : Finding.of(Severity.NOT_MET, bank.passage().id(), what + " do not start from rest: ", feeding.sent().map(SupplyFindings::volts)
                    .<Object>map(amount -> amount).orElse("what they are sent"), dropsAtRest(bank)
                            ? " are sent, and too little is left while they stand: they need " : " are sent, and they need ",
                    volts(control.startVoltage().orElse(0.0))).remedy(bank.drive().resistor() > 0 ? new Object[] {"take a smaller resistor"}
                    : new Object[] {"raise the lowest setting, or give a start pulse (kick) of at least ", share(startShare(bank))}));
            case STALLS -> add(feeding.terminals().isPresent() && control.stallVoltage().isPresent() && byVoltage
                    ? Finding.of(Severity.NOT_MET, bank.passage().id(), what + " stand: they get ", volts(feeding.terminals().get()),
                    ", below the ", volts(control.stallVoltage().get()), " at which they stall").remedy("raise the setting, or ", way(bank))
                    : control.stopSetting().isPresent() ? Finding.of(Severity.NOT_MET, bank.passage().id(), what + " stand: they are set to ",
                    share(feeding.setting()), ", below the ", share(control.stopSetting().get()), " at which they stop").remedy("raise the setting")
                    : Finding.of(Severity.NOT_MET, bank.passage().id(), what + " stand", feeding.terminals().isPresent() ? ": they get " : "",
                    feeding.terminals().<Object>map(SupplyFindings::volts).orElse(""), feeding.terminals().isPresent() ? ", too little to run" : "")
                    .remedy(way(bank)));
            case OFF -> add(feeding.source().filter(volts -> volts == 0).isPresent()
                    ? Finding.of(Severity.NOT_MET, bank.passage().id(), what + " stand: their supply gives nothing")
                            .remedy("feed them from two supplies, or let"
                            + " others carry the load") : Finding.note(bank.passage().id(), what + " are switched off by their setting"));
            case NOT -> {
                // it runs
            }
        }
    }

    /** Whether wires or resistors take a part of the voltage before movers turn. */
    private static boolean dropsAtRest(Feeds.Bank bank) {
        return FitFindings.sent(bank.passage(), bank.drive(), bank.part(), 0) > 0;
    }

    /** Movers that are fed though none turns. */
    private int movers(Feeds.Bank bank) {
        return Banks.running(bank.passage(), condition);
    }

    /** The share of the supply that starts movers. */
    private static double startShare(Feeds.Bank bank) {
        double sent = bank.feeding().source().orElse(1.0);
        return Math.min(1, FitFindings.sent(bank.passage(), bank.drive(), bank.part(), bank.part().control().startVoltage().orElse(0.0)) / sent);
    }

    private void voltage(Feeds.Bank bank) {
        if (bank.feed().terminals().isEmpty() || bank.feed().running() == 0) {
            return;
        }
        MoverDrive.Intake supply = bank.part().supply();
        Control control = Banks.control(bank.part(), bank.drive());
        boolean pulsed = control == Control.PULSED_SUPPLY;
        double rest = bank.feed().terminals().get();
        // pulses come with all of the voltage; at another frequency a motor needs as much less
        double volts = pulsed ? bank.feeding().source().orElse(rest) : control == Control.FREQUENCY && bank.feeding().frequency().isPresent()
                && !supply.frequencies().isEmpty() ? rest * supply.frequencies().getFirst() / bank.feeding().frequency().get() : rest;
        Optional<Double> rated = supply.voltage().map(Math::abs);
        boolean stated = supply.highest().isPresent();
        Optional<Double> highest = supply.highest().or(() -> rated.map(each -> each * (1 + ASSUMED_RANGE)));
        Optional<Double> lowest = supply.lowest().or(() -> rated.map(each -> each * (1 - ASSUMED_RANGE)));
        String what = "the movers of bank " + bank.passage().id() + " (" + bank.mover().id() + ") get " + (pulsed ? "pulses of " : "");
        Severity beyond = rated.filter(each -> volts > FAR_ABOVE * each || volts < FAR_BELOW * each).isPresent() ? Severity.NOT_MET
                : Severity.CAUTION;
        highest.filter(most -> volts > most * (1 + 1e-9)).ifPresent(most -> add((stated ? Finding.of(Severity.NOT_MET, bank.passage().id(),
                what, volts(volts), ", more than the ", volts(most), " that they stand")
                : Finding.of(beyond, bank.passage().id(), what, volts(volts), ", and nothing says that they stand more than ", volts(most))
                        .source("10 % above rated voltage where nothing is stated: " + PRACTICE))
                .remedy("feed them with ", volts(rated.orElse(most)))));
        boolean lowered = control == Control.VOLTAGE || pulsed;
        if (!lowered || supply.lowest().isPresent()) {
            lowest.filter(least -> volts < least * (1 - 1e-9)).ifPresent(least -> add((supply.lowest().isPresent()
                    ? Finding.of(Severity.NOT_MET, bank.passage().id(), what, volts(volts), ", less than the ", volts(least),
                            " that they need to run")
                    : Finding.of(beyond, bank.passage().id(), what, volts(volts), ", and nothing says that they run below ", volts(least))
                            .source("10 % below rated voltage where nothing is stated: " + PRACTICE))
                    .remedy(way(bank))));
        }
    }

    /** How more voltage comes to a bank: what loses most of it is named. */
    private static String way(Feeds.Bank bank) {
        boolean much = DriveAnalysis.lost(bank.feed()).or(() -> bank.feeding().drop().flatMap(drop -> bank.feeding().sent().filter(sent -> sent > 0)
                .map(sent -> drop / sent))).filter(share -> share > MUCH_LOST).isPresent();
        return !much ? "feed them with more, or take a part for this voltage" : bank.drive().resistor() > 0 ? "take a smaller resistor"
                : "take a thicker or shorter wire";
    }

    /** A held mover that tries again by itself. */
    private void retries(Feeds.Bank bank) {
        if (bank.feed().locked() > 0 && bank.part().supply().retry().isPresent()) {
            add(Finding.note(bank.passage().id(), "a held mover of bank " + bank.passage().id() + " (" + bank.mover().id()
                    + ") tries to start again every ",
                    seconds(bank.part().supply().retry().get()), "; its locked current, which is counted as lasting, flows only then"));
        }
    }

    private void frequency(Feeds.Bank bank) {
        List<Double> rated = bank.part().supply().frequencies();
        if (rated.isEmpty() || bank.feeding().frequency().isEmpty() || Banks.control(bank.part(), bank.drive()) == Control.FREQUENCY
                || bank.feed().running() == 0) {
            return;
        }
        double given = bank.feeding().frequency().get();
        Optional<Double> nominal = bank.drive().supply().flatMap(feeds.supplies()::source).flatMap(Supplies.Source::frequency);
        boolean same = rated.stream().anyMatch(each -> Math.abs(each - given) <= FitFindings.SAME_FREQUENCY * each);
        if (!same && nominal.filter(each -> each == given).isEmpty()) { // that of the supply itself is said once for all
            add(Finding.of(Severity.NOT_MET, bank.passage().id(), "the movers of bank " + bank.passage().id() + " (" + bank.mover().id() + ") get ",
                    new Amount(given, QuantityKind.FREQUENCY), ", for which they are not rated")
                            .remedy("take a part for it: at another frequency an AC"
                    + " motor has another speed, current and heat"));
        }
    }

    /** An induction motor that its voltage slows down beyond breakdown still drives a fan, but hardly any of its input gets there. */
    private void slip(Feeds.Bank bank) {
        Optional<InductionMotor> motor = Motors.of(bank.mover(), bank.part());
        if (motor.isEmpty() || bank.feed().running() == 0 || bank.feeding().frequency().isEmpty()) {
            return;
        }
        double hertz = bank.feeding().frequency().get();
        double slip = 1 - bank.point().speed() / InductionMotor.synchronous(hertz, motor.get().pairs());
        if (slip > motor.get().breakdownSlip() * motor.get().frequency() / hertz) {
            add(Finding.caution(bank.passage().id(), "the motors of bank " + bank.passage().id() + " (" + bank.mover().id() + ") slip by ",
                    share(slip),
                    ", beyond breakdown: they run warm, and what their rotors do not turn into motion heats them")
                            .remedy("slow them down by frequency, or less")
                    .source("Kloss's formula; small fan motors run so in practice"));
        }
    }

    /** Duty power by the cube of the speed is not what such a motor takes. */
    private void warm(Feeds.Bank bank) {
        double factor = bank.feed().running() > 0 ? Feeds.slip(bank.mover(), bank.part(), bank.feeding(), bank.point().speed()) : 1;
        if (factor > SLIPS && bank.feed().power().isPresent()) {
            add(Finding.note(bank.passage().id(), "the motors of bank " + bank.passage().id() + " (" + bank.mover().id() + ") take ",
                    new Amount(bank.feed().power().get(), QuantityKind.POWER), ", ", new Amount(factor, QuantityKind.NUMBER),
                            " times what the cube of their speed"
                    + " gives at the duty point: the rest is slip, heats them, and is not in the heat of the movers").source("P = T ω_s: textbook"));
        }
    }

    /** Power far below measured speeds, of a part that says nothing of fixed losses. */
    private void extrapolated(Feeds.Bank bank) {
        double ratio = bank.mover().curves().stream().filter(curve -> curve.power().isPresent()).flatMap(curve -> curve.speed()
                .or(bank.mover()::ratedSpeed)
                .stream()).mapToDouble(Quantity::si).map(speed -> bank.point().speed() / speed).boxed()
                .min(java.util.Comparator.comparingDouble(each -> Math.abs(Math.log(each)))).orElse(1.0);
        if (bank.feed().running() > 0 && bank.mover().fixedLoss().isEmpty() && ratio < FAR_SLOWER) {
            add(Finding.caution(bank.passage().id(), "the power of bank " + bank.passage().id() + " (" + bank.mover().id() + ") at ", share(ratio),
                    " of the speed it was measured at goes with the cube alone, and is too low: motors and electronics lose something at any speed")
                    .remedy("state the fixedLoss of the part, or a curve at low speed").source(PRACTICE));
        }
    }

    private void lost(Feeds.Bank bank) {
        BankDrive drive = bank.drive();
        if (drive.wire().isPresent() && bank.feed().current().isEmpty() && bank.feed().running() > 0) {
            add(Finding.note(bank.passage().id(), "what the wire of bank " + bank.passage().id() + " loses is left out: nothing says what current "
                    + bank.mover().id() + " takes").remedy("give the rated current in the drive section of the part, or the power with its curves"));
        }
        if (drive.wire().isEmpty() || drive.resistor() > 0) {
            return;
        }
        DriveAnalysis.lost(bank.feed()).filter(share -> share > MOST_LOST).ifPresent(share -> {
            double over = share / MOST_LOST;
            add(Finding.caution(bank.passage().id(), "the wire of bank " + bank.passage().id() + " loses ", share(share), " of the voltage")
                    .remedy("take ", new Amount(over, QuantityKind.NUMBER), " times the cross-section, or a shorter wire").source(IEC_60364));
        });
    }

    /** Movers that air turns backwards: their motors must brake them before they start. */
    private void windmilling(Feeds.Bank bank) {
        Optional<Double> rated = bank.mover().ratedSpeedSi();
        double free = freeFlow(bank.mover());
        if (rated.isEmpty() || !(free > 0)) {
            return;
        }
        for (OperatingPoint.MoverPoint mover : bank.point().movers()) {
            boolean held = condition.failed().stream().anyMatch(each -> each.bank().orElse(bank.passage().id()).equals(bank.passage().id())
                    && each.position().filter(position -> position == mover.position()).isPresent()
                            && each.state() != FailedMover.State.FREEWHEELING);
            if (mover.running() || held || !(mover.flow() < 0)) {
                continue;
            }
            double backwards = rated.get() * -mover.flow() / free;
            Optional<Double> restart = bank.part().restart();
            Object[] turns = {"air blows back through a failed mover of bank " + bank.passage().id() + ", which turns backwards at about ",
                    new Amount(backwards, QuantityKind.ROTATIONAL_SPEED)};
            String source = "estimate: a rotor that air turns freely has the flow coefficient of free delivery (fan laws; friction left out)";
            if (restart.isEmpty()) {
                add(Finding.caution(bank.passage().id(), join(turns, "; nothing says whether " + bank.mover().id() + " starts against that"))
                        .remedy("ask its maker, state it as restart in its drive section, or fit flaps").source(source));
            } else if (backwards > restart.get()) {
                add(Finding.caution(bank.passage().id(), join(turns, "; " + bank.mover().id() + " starts only up to ",
                        new Amount(restart.get(), QuantityKind.ROTATIONAL_SPEED))).remedy("fit flaps, or stop the others while it starts")
                                .source(source));
            } else {
                add(Finding.note(bank.passage().id(), join(turns, "; " + bank.mover().id() + " starts up to ",
                        new Amount(restart.get(), QuantityKind.ROTATIONAL_SPEED))).source(source));
            }
        }
    }

    private static Object[] join(Object[] first, Object... then) {
        List<Object> all = new ArrayList<>(List.of(first));
        all.addAll(List.of(then));
        return all.toArray();
    }

    /** Free delivery at rated speed, m³/s; 0 for a part without a curve. */
    static double freeFlow(AirMover mover) {
        if (mover.curves().isEmpty()) {
            return 0;
        }
        MoverCurve curve = mover.curves().getFirst();
        double[] flow = curve.flow().toArray();
        double speed = curve.speed().map(Quantity::si).or(mover::ratedSpeedSi).orElse(1.0);
        return flow.length == 0 ? 0 : flow[flow.length - 1] * mover.ratedSpeedSi().orElse(speed) / speed;
    }

    private void load(Supplies.Source source, DriveState.Load load, List<Feeds.Bank> banks) {
        String what = "supply " + source.id();
        if (load.running().isEmpty()) {
            add(Finding.of(Severity.NOT_JUDGED, source.id(), what + " cannot be judged: nothing says what current "
                    + who(banks.stream().filter(bank -> bank.feed().current().isEmpty() && bank.feed().running() > 0).toList(),
                    banks.stream().filter(bank -> bank.feed().locked() > 0).toList()) + " takes")
                    .remedy("give rated and locked currents in the drive section of the part"));
            return;
        }
        double running = load.running().get();
        load.most().ifPresent(most -> {
            boolean derated = source.most().filter(full -> most < full).isPresent();
            Object[] rest = derated ? new Object[] {" that are left at ", new Amount(feeds.temperature(source), QuantityKind.TEMPERATURE)}
                    : new Object[] {" that it gives for long"};
            if (running > most) {
                add(Finding.of(Severity.NOT_MET, source.id(), join(join(new Object[] {what + " is to give ", amps(running),
                        ", more than the ", amps(most)},
                        rest))).remedy(derated ? "take a larger supply, or put it where it is cooler" : "take a larger supply, or split the movers"));
            } else if (running > HIGH_LOAD * most) {
                add(Finding.caution(source.id(), join(join(new Object[] {what + " gives ", amps(running), ", ", share(running / most), " of the ",
                        amps(most)}, rest))).remedy("leave a fifth of it free").source(PRACTICE));
            }
        });
        load.fullest().filter(full -> full > running * (1 + 1e-6)).ifPresent(full -> load.most().filter(most -> full > most
                && running <= most).ifPresent(most ->
                add(Finding.caution(source.id(), what + " is to give ", amps(full),
                        " with all movers at full speed, as when a sensor fails, more than the ",
                        amps(most), derated(source, most)).remedy("take a supply that can, or limit the highest setting"))));
        starting(source, load, banks, what);
    }

    private static String derated(Supplies.Source source, double most) {
        return source.most().filter(full -> most < full).isPresent() ? " that are left in warm air" : " that it gives for long";
    }

    private void starting(Supplies.Source source, DriveState.Load load, List<Feeds.Bank> banks, String what) {
        if (source.peak().isEmpty() && source.most().isEmpty()) {
            return;
        }
        if (load.starting().isEmpty()) {
            add(Finding.note(source.id(), "whether " + what + " starts its movers cannot be told: nothing says what current " + who(banks.stream()
                    .filter(bank -> bank.starting().isEmpty()).toList(), List.of()) + " takes then")
                    .remedy("give the start or locked current in the drive section of the part"));
            return;
        }
        double starting = load.starting().get();
        boolean brief = source.peak().isPresent();
        double most = source.peak().map(peak -> peak * feeds.derating(source)).or(load::most).orElseThrow();
        double longest = banks.stream().mapToDouble(bank -> bank.part().supply().startTime().orElse(0.0)).max().orElse(0);
        boolean together = banks.stream().anyMatch(bank -> bank.drive().interval() < longest || bank.drive().interval() == 0);
        int movers = banks.stream().mapToInt(bank -> bank.feed().running()).sum();
        if (starting > most) {
            Finding finding = Finding.of(Severity.NOT_MET, source.id(), what + " is to give ", amps(starting),
                    " while its movers start, more than the ",
                    amps(most), brief ? " that it gives for a short time" : " that it gives");
            add(together && movers > 1 ? finding.remedy("start them one after another, with an interval of " + (longest > 0 ? "at least "
                    : "their starting time"),
                    longest > 0 ? new Amount(longest, QuantityKind.TIME) : "") : finding.remedy("take a larger supply"));
        } else if (brief && source.peakTime().filter(time -> time < longest).isPresent() && load.most().filter(steady -> starting > steady)
                .isPresent()) {
            add(Finding.caution(source.id(), what + " gives its peak for ", seconds(source.peakTime().get()), ", but the movers take ",
                    seconds(longest), " to start").remedy("start them one after another"));
        }
    }

    private void fuse(Supplies.Source source, DriveState.Load load, List<Feeds.Bank> banks) {
        if (source.fuse().isEmpty() || load.running().isEmpty()) {
            return;
        }
        Supplies.Fuse fuse = source.fuse().get();
        double running = load.running().get();
        String what = "the fuse of supply " + source.id();
        if (running > fuse.rated()) {
            add(Finding.of(Severity.NOT_MET, source.id(), what + " carries ", amps(running), ", more than its ", amps(fuse.rated()))
                    .remedy("take one of ", amps(running / FUSE_LOAD), " or the next larger, if the wires allow it").source(FUSES));
        } else if (running > FUSE_LOAD * fuse.rated()) {
            add(Finding.caution(source.id(), what + " carries ", share(running / fuse.rated()), " of its ", amps(fuse.rated()), " for long")
                    .remedy("take one of ", amps(running / FUSE_LOAD), " or the next larger, if the wires allow it").source(FUSES));
        }
        load.fullest().filter(full -> full > FUSE_LOAD * fuse.rated() && running <= FUSE_LOAD * fuse.rated())
                .ifPresent(full -> add(Finding.caution(source.id(),
                what + " carries ", amps(full), " with all movers at full speed, as when a sensor fails, ", share(full / fuse.rated()), " of its ",
                amps(fuse.rated())).remedy("take one of ", amps(full / FUSE_LOAD), " or the next larger, if the wires allow it").source(FUSES)));
        starting(source, fuse, load, banks, what);
        if (fuse.melting().isEmpty() && load.inrush().filter(peak -> peak > fuse.rated()).isPresent()) {
            add(Finding.note(source.id(), "whether ", what + " stands the inrush of ", amps(load.inrush().get()),
                    " cannot be told: nothing says its melting"
                    + " integral").remedy("give melting, in A² s, from its data sheet"));
        }
        if (fuse.melting().isPresent() && load.inrush().isPresent()) {
            double time = banks.stream().mapToDouble(bank -> bank.part().supply().inrushTime().orElse(0.0)).max().orElse(0);
            double melts = Fuse.decaying(load.inrush().get(), time);
            if (time > 0 && melts > PULSED_FUSE * fuse.melting().get()) {
                add(Finding.of(melts > fuse.melting().get() ? Severity.NOT_MET : Severity.CAUTION, source.id(), "the inrush melts ",
                        share(melts / fuse.melting().get()), " of the melting integral of " + what).remedy((fuse.slow()
                                ? "take a fuse with a larger melting integral" : "take a time-lag fuse")
                        + ", or switch the movers on one after another")
                                .source("up to some 30 % for a fuse that is to stand it again and again: " + PRACTICE));
            }
        }
    }

    /**
     * What the starting current does to a fuse. By the gates of IEC 60127-2 (from memory) a fuse may open from 2.1 times its rating on:
     * quick-acting ones within 30 min, and at 2.75, 4 and 10 times after 50, 10 and 0 ms; time-lag ones within 2 min, and after 0.4, 0.15 and
     * 0.02 s.
     */
    private void starting(Supplies.Source source, Supplies.Fuse fuse, DriveState.Load load, List<Feeds.Bank> banks, String what) {
        double longest = banks.stream().mapToDouble(bank -> bank.part().supply().startTime().orElse(0.0)).max().orElse(0);
        if (load.starting().isEmpty()) {
            return; // what is missing is said of the supply
        }
        double starting = load.starting().get();
        double times = starting / fuse.rated();
        Object[] sees = {what + ", " + (fuse.slow() ? "time-lag" : "quick-acting") + ", sees ", amps(starting), " while the movers start, ",
            new Amount(times, QuantityKind.NUMBER), " times its rating"};
        String gates = "gates of IEC 60127-2 (from memory)";
        String remedy = (fuse.slow() ? "take a larger fuse if the wires allow it" : "take a time-lag fuse")
                + ", or start the movers one after another";
        double melts = longest > 0 ? fuse.melting().map(integral -> Fuse.standing(starting, longest) / integral).orElse(0.0) : 0;
        double[] gate = fuse.slow() ? SLOW_GATES : QUICK_GATES;
        boolean opens = longest > gate[TIMES.length];
        for (int i = 0; i < TIMES.length; i++) {
            opens |= times > TIMES[i] && longest > gate[i];
        }
        if (times > QUICK_FUSE) {
            add((opens || melts > 1 ? Finding.of(Severity.NOT_MET, source.id(), join(sees, longest > 0 ? ", for " : "", longest > 0
                    ? seconds(longest) : "",
                    ": it may open")) : Finding.caution(source.id(), join(sees, longest > 0 ? ": it may open if that lasts"
                            : ", and nothing says for how long: it may open"))).remedy(remedy).source(gates));
        }
    }

    private static String who(List<Feeds.Bank> running, List<Feeds.Bank> locked) {
        List<String> all = new ArrayList<>();
        running.forEach(bank -> all.add(bank.mover().id()));
        locked.stream().filter(bank -> bank.part().supply().locked().isEmpty()).forEach(bank -> all.add(bank.mover().id() + " with its rotor held"));
        return String.join(" and ", all.stream().distinct().toList());
    }

    private void add(Finding finding) {
        findings.add(finding);
    }

    private static Amount volts(double volts) {
        return new Amount(volts, QuantityKind.VOLTAGE);
    }

    private static Amount amps(double amps) {
        return new Amount(amps, QuantityKind.CURRENT);
    }

    private static Amount share(double share) {
        return new Amount(share, QuantityKind.FRACTION);
    }

    private static Amount seconds(double seconds) {
        return new Amount(seconds, QuantityKind.TIME);
    }
}
