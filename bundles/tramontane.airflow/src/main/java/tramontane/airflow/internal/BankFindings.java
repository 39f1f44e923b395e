package tramontane.airflow.internal;

import static tramontane.airflow.internal.Amounts.density;
import static tramontane.airflow.internal.Amounts.flow;
import static tramontane.airflow.internal.Amounts.fraction;
import static tramontane.airflow.internal.Amounts.frequency;
import static tramontane.airflow.internal.Amounts.length;
import static tramontane.airflow.internal.Amounts.speed;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Severity;
import tramontane.analysis.SpeedLaw;
import tramontane.model.AirMover;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.FailedMover;
import tramontane.model.MoverCurve;
import tramontane.model.Passage;
import tramontane.model.Quantity;
import tramontane.physics.Air;
import tramontane.physics.units.QuantityKind;

/**
 * What an engineer should know about a bank itself: how far its curves are stretched, what its supply does, how it is fitted,
 * and what its failed movers do.
 */
final class BankFindings {

    /** How far, over the measured speed, a curve may be scaled without remark. */
    private static final double FAR = 0.5;
    /** How far, over the stated density, a curve may be scaled without remark. */
    private static final double FAR_DENSITY = 0.3;
    /** How far, over the measured size, a curve may be scaled with no more than a note. */
    private static final double FAR_SIZE = 0.25;
    /** Rotors below this, m, depart from the fan laws when their Reynolds number falls. */
    private static final double SMALL = 0.08;
    private static final double LEAST_REYNOLDS = 0.7;
    /** How far the density may be off before the speed of an unregulated motor is noticeably. */
    private static final double FAR_FOR_MOTOR = 0.1;
    /** Room in front of a mover, over the width of its frame, that it needs to draw freely. */
    private static final double ROOM = 0.5;
    /** Voltage off the measured one, over it, at which a regulated motor may no longer hold its speed. */
    private static final double FAR_VOLTAGE = 0.2;
    /** Air that comes back, over that which goes forwards, worth a caution. */
    private static final double LEAST_BACK = 0.005;
    private static final double MEASUREMENT_TEMPERATURE = 293.15;

    private static final Set<String> REGULATED = Set.of("DC regulated", "EC");

    private static final String TEST_STANDARD = "ISO 5801:2017; ANSI/AMCA 210";
    private static final String LIMITED = TEST_STANDARD + "; the limit is common practice";
    private static final String PRACTICE = "common practice";
    private static final String DATA_SHEET = "data sheet of the part";
    /** By how many kelvin a temperature may be off by rounding. */
    private static final double ROUNDING = 1e-6;
    private static final String ASSUMED = "common practice; the values are assumed";

    private final AirflowReading reading;
    private final OperatingPoint.BankPoint point;
    private final Bank bank;
    private final double speed;
    private final List<Finding> findings = new ArrayList<>();

    private BankFindings(AirflowReading reading, OperatingPoint.BankPoint point) {
        this.reading = reading;
        this.point = point;
        bank = reading.bank(point.bank());
        speed = reading.speeds().get(point.bank());
    }

    /** What there is to say of one bank. */
    static List<Finding> of(AirflowReading reading, OperatingPoint.BankPoint point) {
        BankFindings findings = new BankFindings(reading, point);
        findings.all();
        return List.copyOf(findings.findings);
    }

    /** Bays that have no way but through banks which all blow into them, or all draw from them. */
    static List<Finding> direction(AirflowReading reading) {
        List<Finding> findings = new ArrayList<>();
        for (Bay bay : reading.model().bays()) {
            List<Passage> ends = reading.design().airPath().passages().stream()
                    .filter(passage -> passage.from().equals(bay.id()) != passage.to().equals(bay.id())).toList();
            boolean in = ends.stream().allMatch(passage -> passage.to().equals(bay.id()));
            if (!ends.isEmpty() && ends.stream().allMatch(Passage::isBank)
                    && (in || ends.stream().allMatch(passage -> passage.from().equals(bay.id())))) {
                findings.add(Finding.caution(bay.id(), "bay " + bay.id() + " has no passages but banks, and "
                        + (ends.size() == 1 ? "that one, " : "all of them, ") + ends.stream().map(Passage::id)
                                .collect(Collectors.joining(", ")) + (ends.size() == 1 ? ", " : ", each ")
                        + (in ? (ends.size() == 1 ? "blows into it" : "blow into it") : (ends.size() == 1 ? "draws from it"
                                : "draw from it")) + ", so that they only work against one another")
                        .remedy("turn one round, or add the passage that is missing"));
            }
        }
        return findings;
    }

    /** The air that the movers work in against what their data sheet allows. */
    private void temperature() {
        bank.mover().datasheet().highestTemperature().map(Quantity::si).filter(highest -> point.temperature() > highest + ROUNDING).ifPresent(highest ->
                findings.add(Finding.of(Severity.NOT_MET, bank.id(), "the movers of bank " + bank.id() + " work in air of ", temperature(point.temperature()),
                        "; their data sheet allows ", temperature(highest), " at most").remedy("take a part for warmer air, or put it where the air is cooler")
                        .source(DATA_SHEET)));
        bank.mover().datasheet().lowestTemperature().map(Quantity::si).filter(lowest -> point.temperature() < lowest - ROUNDING).ifPresent(lowest ->
                findings.add(Finding.of(Severity.NOT_MET, bank.id(), "the movers of bank " + bank.id() + " work in air of ", temperature(point.temperature()),
                        "; their data sheet allows ", temperature(lowest), " at least").remedy("take a part for colder air, or let it rest until it is warmer")
                        .source(DATA_SHEET)));
    }

    private static Amount temperature(double kelvin) {
        return new Amount(kelvin, QuantityKind.TEMPERATURE);
    }

    private void all() {
        temperature();
        if (!(speed > 0)) {
            caution("give it a speed setting", "", "bank " + bank.id() + " stands still: its speed is zero");
        } else if (bank.failed().size() < bank.positions()) {
            MoverCharacteristic mover = bank.characteristic(speed);
            scaling(mover);
            running(mover);
        }
        alike();
        supply();
        size();
        fitting();
        flaps();
        efficiency();
        standing();
    }

    private void note(String source, Object... message) {
        findings.add(Finding.note(bank.id(), message).source(source));
    }

    private void caution(String remedy, String source, Object... message) {
        findings.add(Finding.caution(bank.id(), message).remedy(remedy).source(source));
    }

    private static String percent(double share) {
        return Math.round(100 * share) + " %";
    }

    private static boolean far(double ratio, double limit) {
        return ratio < 1 - limit || ratio > 1 + limit;
    }

    // how far the curves are stretched

    private void scaling(MoverCharacteristic mover) {
        double ratio = mover.speed() / mover.measuredSpeed();
        boolean farInSpeed = mover.shares().size() == 1 && far(ratio, FAR);
        boolean farInDensity = far(point.density() / mover.statedDensity(), FAR_DENSITY);
        OptionalDouble reynolds = smallReynolds(mover);
        if (reynolds.isPresent()) {
            caution("add a curve measured near that speed and density", "ISO 5801:2017 and ANSI/AMCA 210 for the fan laws; the "
                    + "limits are common practice", "bank " + bank.id() + " turns at ", speed(mover.speed()), " in air of ",
                    density(point.density()), ", which is ", fraction(reynolds.getAsDouble()),
                    " of the lowest Reynolds number its movers were measured at: so small ones, of ", length(rotor().orElseThrow()),
                    ", then give less than the fan laws say");
        }
        if (farInSpeed && (reynolds.isEmpty() || ratio > 1)) {
            caution("add a curve measured near that speed", TEST_STANDARD, "bank " + bank.id() + " turns at ",
                    speed(mover.speed()), "; the nearest curve was measured at ", speed(mover.measuredSpeed()),
                    ", too far for the fan laws to be trusted");
        }
        if (farInDensity && (reynolds.isEmpty() || point.density() > mover.statedDensity())) {
            caution("add a curve measured near that density", LIMITED, "bank " + bank.id() + " works in air of ",
                    density(point.density()), "; its curve is stated for ", density(mover.statedDensity()),
                    ", so far off that the fan laws should be checked");
        }
    }

    /** Diameter of the rotor, or where it is not stated the width of the frame, m. */
    private Optional<Double> rotor() {
        return bank.mover().rotorDiameter().or(bank.mover()::width).map(Quantity::si);
    }

    /** Reynolds number ρ n D²/μ of small movers over the lowest that was measured, where it is far below that. */
    private OptionalDouble smallReynolds(MoverCharacteristic mover) {
        if (rotor().filter(diameter -> diameter < SMALL).isEmpty()) {
            return OptionalDouble.empty();
        }
        double lowest = Double.POSITIVE_INFINITY;
        for (MoverCurve curve : curves().curves()) {
            double size = MoverCharacteristic.sizeRatio(bank.mover(), curve);
            double measured = curve.speed().map(Quantity::si).orElse(bank.ratedSpeed());
            lowest = Math.min(lowest, curve.statedDensity() * measured / (size * size));
        }
        double ratio = point.density() * mover.speed() / lowest * Air.viscosity(MEASUREMENT_TEMPERATURE)
                / Air.viscosity(point.temperature());
        return ratio < LEAST_REYNOLDS ? OptionalDouble.of(ratio) : OptionalDouble.empty();
    }

    private MeasuredCurves curves() {
        return MeasuredCurves.of(bank.mover(), bank.supply());
    }

    private void size() {
        AirMover mover = bank.mover();
        List<MoverCurve> sized = curves().curves().stream().filter(curve -> curve.rotorDiameter().isPresent()).toList();
        if (sized.isEmpty()) {
            return;
        }
        double measured = sized.getFirst().rotorDiameter().orElseThrow().si();
        if (mover.rotorDiameter().isEmpty()) {
            caution("state the rotorDiameter of the part", TEST_STANDARD, "the curve of bank " + bank.id()
                    + " was measured on a rotor of ", length(measured), "; air mover " + mover.id()
                    + " does not state its own, which is taken as the same");
            return;
        }
        for (MoverCurve curve : sized) {
            double ratio = MoverCharacteristic.sizeRatio(mover, curve);
            double diameter = curve.rotorDiameter().orElseThrow().si();
            Object[] words = {"the curve of bank " + bank.id() + " was measured on a rotor of ", length(diameter),
                "; the fan laws bring it to one of ", length(mover.rotorDiameter().get().si()),
                far(ratio, FAR_SIZE) ? ", too far for them to be trusted" : ", as far as it is geometrically similar"};
            if (far(ratio, FAR_SIZE)) {
                caution("use a curve measured nearer that size", LIMITED, words);
                return;
            }
            if (ratio != 1) {
                note(TEST_STANDARD, words);
                return;
            }
        }
    }

    private void running(MoverCharacteristic mover) {
        List<OperatingPoint.MoverPoint> running = point.movers().stream().filter(OperatingPoint.MoverPoint::running).toList();
        double tiny = 1e-9 * mover.lastFlow();
        double none = -1e-9 * IntStream.range(0, mover.points()).mapToDouble(mover::pressure).max().orElseThrow();
        which(running.stream().filter(each -> each.flow() < -tiny)).ifPresent(positions -> caution(
                "lower the pressure behind it, or use a mover of higher pressure", "", "air goes backwards through "
                        + positions.words() + " of bank " + bank.id() + positions.either(
                                ", though it runs: the pressure against it is above its shut-off",
                                ", though they run: the pressure against them is above their shut-off")));
        which(running.stream().filter(each -> each.flow() >= -tiny && each.pressure() < none)).ifPresent(positions -> caution(
                "use movers of more flow there, or fewer beside them", "", positions.words() + " of bank "
                        + bank.id() + positions.either(" works beyond free delivery: other movers push more air through it than "
                                + "it moves by itself, and it acts as a resistance", " work beyond free delivery: other movers "
                                + "push more air through them than they move by themselves, and they act as resistances")));
        which(running.stream().filter(each -> each.pressure() >= none && (each.flow() > mover.lastFlow() + tiny
                || each.flow() >= -tiny && each.flow() < mover.firstFlow() - tiny))).ifPresent(positions -> caution(
                "add points to the curve", "", positions.words() + " of bank " + bank.id()
                        + positions.either(" works", " work") + " outside the measured flows, from ",
                flow(mover.firstFlow()), " to ", flow(mover.lastFlow()), " at this speed; the curve is continued"));
    }

    /** Positions by name, and whether it is one. */
    private record Which(String words, boolean one) {

        String either(String singular, String plural) {
            return one ? singular : plural;
        }
    }

    /** Names positions; {@code position 2}, {@code positions 1, 2}; empty for none. */
    private static Optional<Which> which(Stream<OperatingPoint.MoverPoint> movers) {
        List<String> positions = movers.map(each -> String.valueOf(each.position())).toList();
        return positions.isEmpty() ? Optional.empty()
                : Optional.of(new Which((positions.size() == 1 ? "position " : "positions ") + String.join(", ", positions),
                        positions.size() == 1));
    }

    // supply

    /** Curves of one speed, of which only the first is used. */
    private void alike() {
        List<MoverCurve> all = bank.mover().curves();
        curves().curves().stream().collect(Collectors.groupingBy(curve -> curve.speed().map(Quantity::si).orElse(bank.ratedSpeed()),
                TreeMap::new, Collectors.toList())).forEach((measured, same) -> {
            if (same.size() > 1) {
                String numbers = IntStream.range(0, all.size()).filter(i -> same.stream().anyMatch(each -> each == all.get(i)))
                        .mapToObj(i -> String.valueOf(i + 1)).collect(Collectors.joining(", "));
                caution("state the speed of each curve", "", "curves " + numbers + " of air mover " + bank.mover().id()
                        + " cannot be told apart, since all count as measured at ", speed(measured), "; curve "
                        + numbers.substring(0, numbers.indexOf(',')) + " is used in bank " + bank.id());
            }
        });
    }

    private void supply() {
        Condition condition = reading.condition();
        Optional<Double> voltage = condition.supplyVoltage().map(Quantity::si);
        if (!curves().asked()) {
            caution("add a curve measured at that frequency", PRACTICE, "no curve of bank " + bank.id() + " was measured at ",
                    frequency(bank.supply().orElseThrow()), "; those at ", frequency(curves().frequency().orElseThrow()),
                    " are used");
        }
        if (bank.supply().isEmpty() && curves().several()) {
            caution("state the supplyFrequency of the condition", "", "the movers of bank " + bank.id()
                    + " were measured at several frequencies, and the condition states none; the curves at ",
                    frequency(curves().frequency().orElseThrow()), " are used");
        }
        Optional<SpeedLaw> law = reading.law(bank.id());
        if (law.filter(decided -> !(decided instanceof SupplySpeedLaw)).isPresent()) {
            return; // one that knows more has decided
        }
        Optional<SpeedAtSupply> ours = law.flatMap(decided -> SpeedAtSupply.of(reading.supply(bank.id())));
        List<Double> voltages = curves().curves().stream().flatMap(curve -> curve.voltage().stream()).map(Quantity::si).toList();
        boolean byVoltage = ours.map(SpeedAtSupply::byVoltage).orElse(false);
        if (bank.mover().motor().filter(REGULATED::contains).isPresent()) {
            // holds its speed by itself
            if (voltage.isPresent() && !byVoltage && !voltages.isEmpty()
                    && voltages.stream().allMatch(each -> far(voltage.get() / each, FAR_VOLTAGE))) {
                note(PRACTICE, "the regulated motors of bank " + bank.id() + " are taken to hold their speed at ",
                        new Amount(voltage.get(), QuantityKind.VOLTAGE), ", far from the voltage they were measured at");
            }
            return;
        }
        boolean measuredThere = voltage.isPresent() && (voltages.isEmpty() && curves().frequency().isPresent()
                || voltages.stream().anyMatch(each -> MeasuredCurves.same(voltage.get(), each)));
        boolean idleVoltage = voltage.isPresent() && !measuredThere && !byVoltage;
        // a frequency that curves were measured at has chosen among them
        boolean idleFrequency = bank.supply().isPresent() && curves().frequency().isEmpty();
        boolean allIdle = (voltage.isEmpty() || idleVoltage) && (bank.supply().isEmpty() || idleFrequency);
        if (idleVoltage || idleFrequency) {
            caution("say the speed setting that belongs to this supply", "", "the supply "
                    + (allIdle ? "" : idleVoltage ? "voltage " : "frequency ") + "of the condition does not change the speed of bank "
                    + bank.id() + ": " + (allIdle ? "no loaded speed law knows its movers" : "no loaded speed law knows how its "
                            + "movers follow it"));
        }
        motor();
    }

    /** What is missing to tell how the speed of an unregulated motor follows its load. */
    private void motor() {
        AirMover mover = bank.mover();
        if (!(speed > 0) || !SpeedAtSupply.isUnregulated(mover)) {
            return;
        }
        MoverCurve first = curves().curves().getFirst();
        double measured = bank.ratedSpeed();
        if (mover.noLoadSpeed().isPresent() && mover.noLoadSpeed().get().si() <= measured) {
            caution("correct the noLoadSpeed of the part", "", "air mover " + mover.id() + " of bank " + bank.id()
                    + " states a no-load speed of ", speed(mover.noLoadSpeed().get().si()), ", not above its rated one, ",
                    speed(measured), "; it is not used");
        } else if (mover.noLoadSpeed().isEmpty() && far(point.density() / first.statedDensity(), FAR_FOR_MOTOR)) {
            caution("state the noLoadSpeed of the part", PRACTICE, "bank " + bank.id() + " has unregulated DC motors, which turn "
                    + "faster in thinner air; at ", density(point.density()), " instead of ", density(first.statedDensity()),
                    " this is not accounted for");
        }
    }

    // how it is fitted

    private void fitting() {
        Bank.Fitting fitting = bank.fitting();
        if (bank.series() > 1 && fitting.stage() == 1) {
            String ideal = "the movers one behind another in bank " + bank.id() + " are taken as ideal: each gives all of its "
                    + "pressure";
            if (fitting.straightener()) {
                note(PRACTICE, ideal);
            } else {
                caution("state a stageFactor from a test, or fit a straightener", PRACTICE, ideal
                        + ", but swirl from one takes pressure from the next");
            }
        }
        boolean derated = !fitting.derating().equals(MoverCharacteristic.Derating.NONE);
        if (derated) {
            note(PRACTICE, "the curve of bank " + bank.id() + " is derated to ", fraction(fitting.derating().flow()),
                    " of its flow and ", fraction(fitting.derating().pressure()), " of its pressure");
        }
        Optional<Double> width = bank.mover().width().map(Quantity::si);
        if (!derated && fitting.clearance().isPresent() && width.isPresent() && fitting.clearance().get() < ROOM * width.get()) {
            caution("give it more room, or state flowFactor and pressureFactor from a test", PRACTICE, "in front of bank " + bank.id()
                    + " are ", length(fitting.clearance().get()), ", less than half the width of its movers, ",
                    length(width.get()), ": they give less than their curve says");
        }
        String stands = fitting.installation();
        bank.mover().category().filter(measured -> !measured.equals(stands)).ifPresent(measured -> caution(
                "use a curve measured as category " + stands, "ISO 5801:2017", "bank " + bank.id() + " is fitted as category "
                        + stands + ", but its curve was measured as category " + measured + (ductedOutlet(measured)
                                == ductedOutlet(stands) ? ": the air comes in otherwise" : ductedOutlet(measured)
                                        ? ": a ducted outlet shows more pressure than a free one gives"
                                        : ": a free outlet shows less pressure than a ducted one gives")));
    }

    private static boolean ductedOutlet(String category) {
        return category.equals("B") || category.equals("D");
    }

    private void flaps() {
        bank.fitting().flap().ifPresent(flap -> note(flap.assumed() ? ASSUMED : "", "each column of bank " + bank.id()
                + " has a flap of loss coefficient " + String.format(Locale.ROOT, "%.2f", flap.loss()) + " on ",
                new Amount(bank.openArea().orElseThrow(), QuantityKind.AREA), openAreaAssumed() + ", lifted by ",
                new Amount(flap.lifting(), QuantityKind.PRESSURE), ", which leaks through ", fraction(flap.leak()), " of that"));
    }

    private String openAreaAssumed() {
        return bank.mover().openArea().isEmpty() ? " (" + percent(Bank.ASSUMED_OPEN) + " of its frame, assumed)" : "";
    }

    private void efficiency() {
        OptionalDouble efficiency = AirflowReading.efficiency(point);
        if (efficiency.isPresent() && efficiency.getAsDouble() > 1) {
            caution("check the units of flow, pressure and power of its mover", "conservation of energy",
                    "bank " + point.bank() + " would give more power to the air than it takes: its efficiency is ",
                    fraction(efficiency.getAsDouble()));
        }
    }

    // movers that stand still

    private void standing() {
        List<OperatingPoint.MoverPoint> still = point.movers().stream().filter(each -> !each.running()).toList();
        if (still.isEmpty()) {
            return;
        }
        Set<FailedMover.State> states = still.stream().map(each -> bank.standing(each.position(), speed).orElseThrow())
                .collect(Collectors.toCollection(TreeSet::new));
        if (still.size() == bank.positions() && speed > 0) {
            caution("", "", "no mover of bank " + bank.id() + " runs: all have failed");
        }
        boolean measured = bank.mover().openArea().isPresent()
                && states.stream().allMatch(state -> bank.statedLoss(state).isPresent());
        backwards();
        // without the position, which the case is named by, so that what holds for all is said once
        note(measured ? "" : ASSUMED, (still.size() == 1 ? "the mover that stands still in bank "
                : "each mover that stands still in bank ") + bank.id() + " is taken as an opening of ",
                new Amount(bank.openArea().orElseThrow(), QuantityKind.AREA), openAreaAssumed()
                + " with loss coefficient " + states.stream().map(state -> String.format(Locale.ROOT, "%.1f (%s)",
                        bank.loss(state), state.word())).collect(Collectors.joining(", ")));
        // the first mover of each column speaks for it
        List<OperatingPoint.MoverPoint> columns = point.movers().stream()
                .filter(each -> (each.position() - 1) % bank.series() == 0).toList();
        double back = columns.stream().mapToDouble(each -> Math.max(0, -each.flow())).sum();
        double forward = columns.stream().mapToDouble(each -> Math.max(0, each.flow())).sum();
        if (point.speed() > 0 && back > 1e-6 * forward && forward > 0) {
            String where = still.size() == 1 ? "the failed position"
                    : which(columns.stream().filter(each -> each.flow() < 0)).orElseThrow().words();
            if (bank.fitting().flap().isPresent()) {
                note("", fraction(back / forward), " of the air that bank " + bank.id()
                        + " moves comes back through the leak of the shut flap at " + where);
            } else if (back > LEAST_BACK * forward) {
                caution("fit flaps that close when a mover fails", "", fraction(back / forward), " of the air that bank "
                        + bank.id() + " moves comes back through " + where);
            }
        }
    }

    /** Air that other banks blow back through one of which nothing runs. */
    private void backwards() {
        double most = reading.point().banks().stream().filter(each -> each.speed() > 0).mapToDouble(OperatingPoint.BankPoint::flow)
                .max().orElse(0);
        if (point.movers().stream().noneMatch(OperatingPoint.MoverPoint::running) && most > 0 && -point.flow() > LEAST_BACK * most) {
            caution("fit flaps that close when its movers stand still", "", "air goes backwards through bank " + bank.id()
                    + ", whose movers stand still: ", flow(-point.flow()));
        }
    }
}
