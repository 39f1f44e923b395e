package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.Severity;
import tramontane.drive.BankDrive;
import tramontane.drive.Control;
import tramontane.drive.Current;
import tramontane.drive.MoverDrive;
import tramontane.drive.Signal;
import tramontane.drive.Supplies;
import tramontane.model.Condition;
import tramontane.model.ControlLaw;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.physics.electric.Cable;
import tramontane.physics.units.QuantityKind;

/** What does not go together: parts and supplies, wishes and wires, laws and thresholds. */
final class FitFindings {

    private static final String PRACTICE = "common practice";
    private static final String PWM = "4-Wire Pulse Width Modulation (PWM) Controlled Fans Specification, rev. 1.3, 2005: 25 kHz, 21 to 28 kHz";
    /** Frequencies of modulation that a part takes which states none, Hz. */
    static final double LEAST_MODULATION = 21_000;
    static final double MOST_MODULATION = 28_000;
    /** Frequency above which hardly anybody hears it, Hz. */
    private static final double AUDIBLE = 20_000;
    /** Relative difference within which a mains frequency is the same. */
    static final double SAME_FREQUENCY = 0.05;
    private static final double ROUNDING = 1e-9;

    private final Design design;
    private final List<FitAnalysis.Fitted> banks;
    private final Decoding decoding;
    private final List<Finding> findings = new ArrayList<>();

    FitFindings(Design design, List<FitAnalysis.Fitted> banks, Decoding decoding) {
        this.design = design;
        this.banks = banks;
        this.decoding = decoding;
    }

    List<Finding> all() {
        for (FitAnalysis.Fitted bank : banks) {
            if (bank.part().isEmpty()) {
                add(Finding.of(Severity.NOT_JUDGED, bank.bank().id(), "nothing says how the movers of " + bank.who() + " are driven")
                        .remedy("give the part " + bank.mover().id() + " a drive section"));
                continue;
            }
            MoverDrive part = bank.part().get();
            bank.source().ifPresent(source -> supply(bank, part, source));
            unfed(bank);
            motor(bank, part);
            control(bank, part);
            watch(bank, part);
            unsignalled(bank, part);
            modulation(bank, part);
            kick(bank, part);
            wire(bank);
            lowest(bank, part);
        }
        hazards();
        design.controlLaws().forEach(this::falling);
        severalSupplies();
        return List.copyOf(findings);
    }

    private void supply(FitAnalysis.Fitted bank, MoverDrive part, Supplies.Source source) {
        Current takes = part.supply().current();
        String from = "supply " + source.id();
        if (takes != source.current()) {
            String remedy = takes == Current.AC && source.current() == Current.THREE_PHASE
                    ? "feed it between one phase and neutral, and state that as a supply of its own"
                    : "take a part for " + source.current().word() + ", or a supply that gives " + takes.word();
            add(Finding.of(Severity.NOT_MET, bank.bank().id(), bank.who() + " takes " + takes.word() + ", but " + from + " gives "
                    + source.current().word()).remedy(remedy));
            return;
        }
        range(bank, part, source);
        if (takes.alternating() && Banks.control(part, bank.drive()) != Control.FREQUENCY && source.frequency().isPresent()
                && !part.supply().frequencies().isEmpty()) {
            double given = source.frequency().get();
            double nearest = part.supply().frequencies().stream().min(Comparator.comparingDouble(rated -> Math.abs(rated - given))).orElseThrow();
            if (Math.abs(nearest - given) > SAME_FREQUENCY * nearest) {
                add(Finding.of(Severity.NOT_MET, bank.bank().id(), bank.who() + " is rated for ", hertz(nearest), ", but " + from + " gives ",
                        hertz(given))
                        .remedy("take a part for ", hertz(given), ": at another frequency an AC motor has another speed, current and heat"));
            }
        }
        boolean earthedPositive = source.current() == Current.DC && source.voltage() < 0 && part.supply().voltage().filter(volts -> volts > 0)
                .isPresent();
        boolean signals = Banks.control(part, bank.drive()).ownWire() || bank.drive().watch() != Signal.NONE;
        if (earthedPositive && signals) {
            add(Finding.caution(bank.bank().id(), "the positive pole of " + from + " is earthed, so that signals of " + bank.who()
                    + " refer to its negative wire, at ", volts(source.voltage()))
                            .remedy("let control and tacho wires pass an isolator, or take a part"
                    + " whose signals are isolated").source(PRACTICE));
        }
    }

    /** A bank whose current nobody counts. */
    private void unfed(FitAnalysis.Fitted bank) {
        List<String> supplies = decoding.supplies(design).list().stream().map(Supplies.Source::id).toList();
        if (bank.drive().supply().isEmpty() && !supplies.isEmpty()) {
            add(Finding.note(bank.bank().id(), bank.who() + " names no supply, so that its current counts in none")
                    .remedy("let its drive section say supply: "
                    + String.join(" or ", supplies)));
        }
    }

    private void range(FitAnalysis.Fitted bank, MoverDrive part, Supplies.Source source) {
        double nominal = Math.abs(source.voltage());
        double low = nominal * (1 - source.below());
        double high = nominal * (1 + source.above());
        Optional<Double> rated = part.supply().voltage().map(Math::abs);
        Optional<Double> least = part.supply().lowest().or(() -> rated.map(each -> each * (1 - SupplyFindings.ASSUMED_RANGE)));
        Optional<Double> most = part.supply().highest().or(() -> rated.map(each -> each * (1 + SupplyFindings.ASSUMED_RANGE)));
        // what is out of range at nominal voltage is said in each condition
        if (most.filter(top -> nominal <= top * (1 + ROUNDING) && high > top * (1 + ROUNDING)).isPresent()) {
            add(Finding.of(part.supply().highest().isPresent() ? Severity.NOT_MET : Severity.CAUTION, bank.bank().id(), "supply " + source.id()
                    + " may give ", volts(high), ", more than the ", volts(most.get()), " that " + bank.mover().id() + " of bank " + bank.bank().id()
                    + (part.supply().highest().isPresent() ? " stands" : " is assumed to stand"))
                    .remedy("take a part with a wider range, or a supply that is held closer"));
        }
        if (!Banks.control(part, bank.drive()).onSupply()
                && least.filter(bottom -> nominal >= bottom * (1 - ROUNDING) && low < bottom * (1 - ROUNDING)).isPresent()) {
            add(Finding.of(part.supply().lowest().isPresent() ? Severity.NOT_MET : Severity.CAUTION, bank.bank().id(), "supply " + source.id()
                    + " may give no more than ", volts(low), ", less than the ", volts(least.get()), " that " + bank.mover().id() + " of bank "
                    + bank.bank().id() + (part.supply().lowest().isPresent() ? " needs" : " is assumed to need"))
                    .remedy("take a part with a wider range, or a supply that is held closer"));
        }
    }

    /** What the part says of its motor against what it says of its supply. */
    private void motor(FitAnalysis.Fitted bank, MoverDrive part) {
        boolean alternating = part.supply().current().alternating();
        bank.mover().motor().filter(motor -> motor.startsWith("DC") && alternating || motor.equals("AC") && !alternating).ifPresent(motor ->
                add(Finding.caution(bank.bank().id(), bank.who() + " has a motor of the type " + motor + ", but its drive section takes "
                        + part.supply().current().word()).remedy("correct one of both; a brushless motor that is fed with AC is of type EC")));
        if (part.supply().protection().filter("none"::equals).isPresent()) {
            add(Finding.caution(bank.bank().id(), "nothing protects the motors of " + bank.who() + " when a rotor is held: they may overheat and"
                    + " catch fire").remedy("take a part with locked-rotor protection, or cut each off by its alarm or a fuse of its own")
                    .source("IEC 60335-1, clause 19, and IEC 62368-1 ask for it (from memory)"));
        }
    }

    private void control(FitAnalysis.Fitted bank, MoverDrive part) {
        Control own = part.control().kind();
        Control wanted = bank.drive().control().orElse(own);
        Control real = Banks.control(part, bank.drive());
        List<String> setBy = settersOf(bank.bank().id());
        boolean alternating = part.supply().current().alternating();
        if (wanted != real) {
            add(Finding.of(Severity.NOT_MET, bank.bank().id(), bank.who() + " is to be controlled by " + wanted.word() + ", but "
                    + has(bank, part) + "; " + missing(wanted)).remedy(wayOut(wanted, part, bank)));
            return;
        }
        if (!real.followsSetting() && !setBy.isEmpty()) {
            add(Finding.of(Severity.NOT_MET, bank.bank().id(), String.join(" and ", setBy) + (setBy.size() == 1 ? " sets" : " set") + " the speed of "
                    + bank.who() + ", but " + (real == Control.THERMISTOR ? "it follows the sensor in its hub"
                    : bank.drive().control().isPresent() ? "the bank is not to be controlled" : has(bank, part) + "; " + missing(Control.DUTY)))
                    .remedy(bank.drive().control().isPresent() && own.followsSetting() ? "let the bank be controlled by " + own.word()
                            : wayOut(Control.DUTY, part, bank)));
        }
        if (real == Control.FREQUENCY && !alternating) {
            add(Finding.of(Severity.NOT_MET, bank.bank().id(), bank.who() + " is to be controlled by frequency, but takes DC").remedy("control it by "
                    + (own == Control.NONE || own == Control.FREQUENCY ? "voltage" : own.word())));
        } else if (real == Control.PULSED_SUPPLY && alternating) {
            add(Finding.of(Severity.NOT_MET, bank.bank().id(), bank.who() + " is to be controlled by a pulsed supply, but takes AC").remedy(
                    "control it by voltage or frequency"));
        } else if (real.onSupply() && real != own && alternating && bank.mover().motor().filter("EC"::equals).isPresent()) {
            add(Finding.of(Severity.NOT_MET, bank.bank().id(), bank.who() + " makes its own DC from the mains, so that a changed "
                    + (real == Control.FREQUENCY ? "frequency does not slow it down" : "voltage hardly slows it down, and may harm it"))
                    .remedy(own.followsSetting() ? "control it by " + own.word() : "take one with a control wire").source(PRACTICE));
        } else if (real == Control.VOLTAGE && real != own && part.control().startVoltage().isEmpty()) {
            add(Finding.caution(bank.bank().id(), bank.who() + " is to be controlled by voltage, and nothing says from which voltage it starts")
                    .remedy("measure its start and stall voltage and give them in its drive section; half of the rated voltage is often enough")
                    .source(PRACTICE));
        }
        if (real == Control.PULSED_SUPPLY) {
            pulsed(bank);
        }
    }

    private void pulsed(FitAnalysis.Fitted bank) {
        Optional<Double> modulation = bank.drive().modulation();
        Finding heard = modulation.isEmpty() ? Finding.caution(bank.bank().id(), "the pulsed supply of " + bank.who() + " may be heard")
                : Finding.caution(bank.bank().id(), "the supply of " + bank.who() + " is pulsed at ", hertz(modulation.get()),
                        ", which may be heard");
        if (modulation.filter(hertz -> hertz > AUDIBLE).isEmpty()) {
            add(heard.remedy("take a part with a control wire of its own, or smooth the pulses to a voltage").source(PRACTICE));
        } else {
            add(Finding.caution(bank.bank().id(), "the supply of " + bank.who() + " is pulsed at ", hertz(modulation.get()), ": fast pulses heat its"
                    + " electronics, if its maker allows them at all").remedy("ask the maker, or smooth the pulses to a voltage").source(PRACTICE));
        }
    }

    private void watch(FitAnalysis.Fitted bank, MoverDrive part) {
        Signal wanted = bank.drive().watch();
        Signal told = part.signal().kind();
        if (!told.tells(wanted)) {
            String lacks = wanted == Signal.SPEED ? "a tacho wire" : "a wire for a locked-rotor or tacho signal";
            boolean control = bank.drive().control().filter(Control::ownWire).isPresent() && !part.control().kind().ownWire();
            int wires = part.neededWires() - (told == Signal.NONE ? 0 : 1) + 1 + (control ? 1 : 0);
            add(Finding.of(Severity.NOT_MET, bank.bank().id(), "the " + (wanted == Signal.SPEED ? "speed" : "standstill") + " of each mover of "
                    + bank.who() + " is to be watched, but " + has(bank, part) + "; missing is " + lacks)
                    .remedy("take a part with " + wires + " wires" + (told == Signal.LOCKED_ROTOR ? ", a tacho among them" : "")
                            + ", or watch it otherwise, as by a"
                            + " pressure or flow switch"));
        } else if (wanted != Signal.NONE && Banks.control(part, bank.drive()) == Control.PULSED_SUPPLY) {
            add(Finding.of(Severity.NOT_MET, bank.bank().id(), "the signal of " + bank.who() + " cannot be read while its supply is pulsed: between"
                    + " pulses its electronics have no supply").remedy("take a part with a control wire of its own (4 wires), smooth the pulses to a"
                    + " voltage, or hold the supply on while the signal is read").source(PRACTICE));
        }
    }

    private void unsignalled(FitAnalysis.Fitted bank, MoverDrive part) {
        if (part.control().stopsUnsignalled() && Banks.control(part, bank.drive()).ownWire()) {
            add(Finding.caution(bank.bank().id(), bank.who() + " stops when its control wire breaks or its controller resets")
                    .remedy("take a part that goes to"
                    + " full speed then, or let a resistor on the wire do it").source(PRACTICE));
        }
    }

    private void modulation(FitAnalysis.Fitted bank, MoverDrive part) {
        if (Banks.control(part, bank.drive()) != Control.DUTY || bank.drive().modulation().isEmpty()) {
            return;
        }
        double given = bank.drive().modulation().get();
        MoverDrive.SpeedControl control = part.control();
        boolean stated = control.leastFrequency().isPresent() || control.mostFrequency().isPresent();
        double least = control.leastFrequency().orElse(stated ? 0 : LEAST_MODULATION);
        double most = control.mostFrequency().orElse(stated ? Double.POSITIVE_INFINITY : MOST_MODULATION);
        if (given < least * (1 - ROUNDING) || given > most * (1 + ROUNDING)) {
            Object[] from = given < least ? new Object[] {", below the ", hertz(least)} : new Object[] {", above the ", hertz(most)};
            Finding finding = Finding.of(stated ? Severity.NOT_MET : Severity.CAUTION, bank.bank().id(), "the controller of " + bank.who()
                    + " modulates at ", hertz(given), from[0], from[1], stated ? " that the part takes" : " that 4-wire parts commonly take")
                    .remedy("set it to ", hertz(Math.clamp(25_000, least, most)));
            add(stated ? finding : finding.source(PWM));
        }
    }

    private void kick(FitAnalysis.Fitted bank, MoverDrive part) {
        if (bank.drive().kick().isEmpty()) {
            return;
        }
        double kick = bank.drive().kick().get();
        Control real = Banks.control(part, bank.drive());
        Optional<Double> needed = real.onSupply() ? part.control().startVoltage().map(start -> sent(bank, part, start))
                .flatMap(start -> worst(bank, part).map(full -> start / full))
                : real == part.control().kind() ? part.control().startSetting() : Optional.empty();
        needed.filter(least -> kick < least).ifPresent(least -> add(Finding.of(Severity.NOT_MET, bank.bank().id(), "the start pulse of " + bank.who()
                + ", ", share(kick), ", is below the ", share(least), " from which it starts").remedy("raise it")));
        Optional<Double> time = part.supply().startTime();
        time.filter(start -> bank.drive().kickTime().filter(held -> held < start).isPresent())
                .ifPresent(start -> add(Finding.caution(bank.bank().id(),
                "the start pulse of " + bank.who() + " lasts ", seconds(bank.drive().kickTime().orElseThrow()), ", shorter than the ", seconds(start),
                " that the part takes to run up").remedy("let it last as long")));
    }

    private void wire(FitAnalysis.Fitted bank) {
        Optional<BankDrive.Wire> unknown = bank.drive().wire().filter(wire -> Wiring.cable(wire).isEmpty());
        unknown.ifPresent(wire -> {
            Cable.Conductor conductor = Wiring.conductor(wire.conductor());
            double area = wire.area().orElse(0.0);
            List<Double> near = Cable.areas(conductor).stream().sorted(Comparator.comparingDouble(each -> Math.abs(Math.log(each / area))))
                    .limit(2).sorted().toList();
            add(Finding.of(Severity.NOT_JUDGED, bank.bank().id(), "IEC 60228 has no " + wire.conductor() + " conductor of " + square(area)
                    + ", so that what the wire of " + bank.who() + " loses is left out").remedy("take " + square(near.getFirst()) + " or "
                    + square(near.getLast())));
        });
    }

    /** Settings that a law may give and at which the movers stand. */
    private void lowest(FitAnalysis.Fitted bank, MoverDrive part) {
        Control real = Banks.control(part, bank.drive());
        for (ControlLaw law : design.controlLaws()) {
            double[] settings = law.speed().toArray();
            if (!real.followsSetting() || !Decoding.drives(law, bank.bank().id()) || settings.length == 0) {
                continue;
            }
            Optional<Double> start = startSetting(part, bank);
            double low = java.util.Arrays.stream(settings).min().orElseThrow();
            Optional<Double> least = lowestSetting(part, bank);
            if (least.isEmpty() || low >= least.get() * (1 - ROUNDING)) {
                continue;
            }
            boolean starts = start.filter(from -> low < from).isPresent();
            Object[] below = {"control law " + law.id() + " goes down to ", share(low), ", below the ", share(least.get()),
                starts ? " from which " + bank.who() + " starts" : " at which " + bank.who() + " stops"};
            boolean off = low == 0;
            add((off ? Finding.caution(bank.bank().id(), below) : Finding.of(Severity.NOT_MET, bank.bank().id(), below)).remedy(
                    "raise its lowest setting to ", share(Math.min(1, least.get())), off ? ", or let it step from nothing to that"
                            : bank.drive().kick().isEmpty() && starts ? ", or give a start pulse (kick)" : ""));
        }
    }

    /** The lowest setting at which the movers of a bank start, or keep running where a pulse starts them. */
    static Optional<Double> lowestSetting(MoverDrive part, FitAnalysis.Fitted bank) {
        Control real = Banks.control(part, bank.drive());
        Optional<Double> stop = real.onSupply() ? part.control().stallVoltage().flatMap(least -> worst(bank, part).map(full -> least / full))
                : real == part.control().kind() ? part.control().stopSetting() : Optional.empty();
        return Stream.concat(startSetting(part, bank).stream(), stop.stream()).max(Comparator.naturalOrder());
    }

    /** The lowest setting from which the movers of a bank start; empty where nothing says so, or a pulse starts them. */
    private static Optional<Double> startSetting(MoverDrive part, FitAnalysis.Fitted bank) {
        Control real = Banks.control(part, bank.drive());
        double kick = bank.drive().kick().orElse(0.0);
        if (real.onSupply()) {
            return worst(bank, part).flatMap(full -> part.control().startVoltage().map(least -> sent(bank, part, least))
                    .filter(least -> kick * full < least)
                    .map(least -> least / full));
        }
        return real == part.control().kind() ? part.control().startSetting().filter(least -> kick < least) : Optional.empty();
    }

    /** Nominal voltage before the control, V. */
    private static Optional<Double> volts(FitAnalysis.Fitted bank, MoverDrive part) {
        return bank.source().map(Supplies.Source::voltage).or(part.supply()::voltage).map(Math::abs);
    }

    /** The lowest that it may be in any condition, V. */
    private static Optional<Double> worst(FitAnalysis.Fitted bank, MoverDrive part) {
        Optional<Double> usual = volts(bank, part).map(full -> full * (1 - bank.source().map(Supplies.Source::below).orElse(0.0)));
        return usual.map(full -> bank.stated().map(stated -> Math.min(full, stated)).orElse(full));
    }

    /** What must be sent so that a voltage is left at rotors at rest: wires and resistors take their part at the starting current, V. */
    static double sent(FitAnalysis.Fitted bank, MoverDrive part, double volts) {
        return sent(bank.bank(), bank.drive(), part, volts);
    }

    static double sent(Passage bank, BankDrive drive, MoverDrive part, double volts) {
        return volts + Wiring.of(drive, part.supply().current()).dropAtRest(part, drive, Banks.positions(bank)).orElse(0.0);
    }

    private void falling(ControlLaw law) {
        double[] temperature = law.temperature().toArray();
        double[] setting = law.speed().toArray();
        for (int i = 1; i < Math.min(temperature.length, setting.length); i++) {
            if (setting[i] < setting[i - 1]) {
                String who = banks.stream().filter(bank -> Decoding.drives(law, bank.bank().id())).map(FitAnalysis.Fitted::who)
                        .collect(Collectors.joining(" and "));
                add(Finding.of(Severity.NOT_MET, "", "control law " + law.id() + (who.isEmpty() ? "" : " of " + who) + " falls from ",
                        share(setting[i - 1]), " at ", kelvin(temperature[i - 1]), " to ", share(setting[i]), " at ", kelvin(temperature[i]),
                        ": the warmer its sensor, the less air").remedy("let the setting rise with temperature, or stay"));
                return;
            }
        }
    }

    private void hazards() {
        List<String> mains = new ArrayList<>();
        decoding.supplies(design).list().stream().filter(source -> source.current().hazardous(source.voltage()))
                .forEach(source -> mains.add("supply " + source.id()));
        banks.stream().filter(bank -> bank.source().isEmpty()).filter(bank -> bank.part().filter(part -> part.supply().voltage()
                .filter(volts -> part.supply().current().hazardous(volts)).isPresent()).isPresent()).forEach(bank -> mains.add(bank.who()));
        if (!mains.isEmpty()) {
            add(Finding.caution("", String.join(", ", mains) + (mains.size() == 1 ? " works" : " work") + " at a voltage that can kill")
                    .remedy("disconnect before any work, earth what is touchable, guard the blades; local codes and licensed electricians have the last word")
                    .source("IEC 61140 (limits from memory)"));
        }
    }

    private void severalSupplies() {
        for (Condition condition : design.conditions()) {
            long fed = banks.stream().flatMap(bank -> bank.source().stream()).map(Supplies.Source::id).distinct()
                    .filter(id -> decoding.levels(condition).of(id).isEmpty()).count();
            if (fed > 1 && (condition.supplyVoltage().isPresent() || condition.supplyFrequency().isPresent())) {
                add(Finding.caution("", "condition " + condition.id() + " states one supply voltage or frequency for movers of several supplies")
                        .remedy("state the supplies one by one in the drive section of the condition"));
            }
        }
    }

    /** What sets the speed of a bank to something else than full. */
    private List<String> settersOf(String bank) {
        List<String> all = new ArrayList<>();
        design.controlLaws().stream().filter(law -> Decoding.drives(law, bank)).forEach(law -> all.add("control law " + law.id()));
        design.conditions().stream().filter(condition -> condition.speedSetting() != 1).forEach(condition -> all.add("condition " + condition.id()));
        design.airPath().passages().stream().filter(passage -> passage.id().equals(bank) && Banks.slowed(passage))
                .forEach(passage -> all.add("its speed"));
        return all;
    }

    private static String has(FitAnalysis.Fitted bank, MoverDrive part) {
        String wires = part.wires().map(count -> " has " + count + " wires: ").orElse(" has ");
        List<String> what = new ArrayList<>();
        what.add("its supply");
        if (part.control().kind().ownWire()) {
            what.add("control by " + part.control().kind().word());
        }
        if (part.signal().kind() != Signal.NONE) {
            what.add(part.signal().kind() == Signal.SPEED ? "tacho" : "locked-rotor signal");
        }
        String last = what.size() > 1 ? " and " + what.removeLast() : " alone";
        return "the part" + wires + String.join(", ", what) + last;
    }

    private static String missing(Control wanted) {
        return wanted.ownWire() ? "missing is a wire for " + wanted.word() : "its speed cannot be set by " + wanted.word();
    }

    private static String wayOut(Control wanted, MoverDrive part, FitAnalysis.Fitted bank) {
        boolean alternating = part.supply().current().alternating();
        int wires = part.supplyWires() + 1 + (part.signal().kind() == Signal.NONE && bank.drive().watch() == Signal.NONE ? 0 : 1);
        String other = alternating ? ", or control this one by voltage or frequency if it stands that" : ", or control this one by a lowered voltage";
        return wanted.ownWire() ? "take a part with a wire for " + wanted.word() + " (" + wires + " wires or more)" + other
                : "take a part that is controlled by " + wanted.word();
    }

    private void add(Finding finding) {
        findings.add(finding);
    }

    private static Amount volts(double volts) {
        return new Amount(volts, QuantityKind.VOLTAGE);
    }

    /** A frequency; those of modulation are spoken of in kilohertz by everybody. */
    private static Object hertz(double hertz) {
        return hertz < 1000 ? new Amount(hertz, QuantityKind.FREQUENCY) : plain(hertz / 1000) + " kHz";
    }

    /** A cross-section of a wire, which everybody gives in mm². */
    private static String square(double area) {
        return plain(area * 1e6) + " mm²";
    }

    private static String plain(double number) {
        return new java.math.BigDecimal(number).round(new java.math.MathContext(3)).stripTrailingZeros().toPlainString();
    }

    private static Amount share(double share) {
        return new Amount(share, QuantityKind.FRACTION);
    }

    private static Amount seconds(double seconds) {
        return new Amount(seconds, QuantityKind.TIME);
    }

    private static Amount kelvin(double kelvin) {
        return new Amount(kelvin, QuantityKind.TEMPERATURE);
    }
}
