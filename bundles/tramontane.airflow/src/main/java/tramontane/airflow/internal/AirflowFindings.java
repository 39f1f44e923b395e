package tramontane.airflow.internal;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tramontane.airflow.AirPathSolution;
import tramontane.airflow.DutyPoint;
import tramontane.airflow.JointState;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Severity;
import tramontane.model.Bay;
import tramontane.model.FailedMover;
import tramontane.model.HeatSource;
import tramontane.model.Passage;
import tramontane.physics.units.QuantityKind;

/** What an engineer should know about a solved air path beyond its figures. */
final class AirflowFindings {

    /** How far, over the measured speed, a curve may be scaled without remark. */
    private static final double FAR = 0.5;
    /** States that are listed at most. */
    private static final int MOST_STATES = 8;
    private static final String TEST_STANDARD = "ISO 5801:2017; ANSI/AMCA 210";
    private static final String ASSUMED = "common practice; the values are assumed";

    private final AirflowReading reading;
    private final List<Finding> findings = new ArrayList<>();

    private AirflowFindings(AirflowReading reading) {
        this.reading = reading;
    }

    static List<Finding> of(AirflowReading reading) {
        AirflowFindings findings = new AirflowFindings(reading);
        reading.point().banks().forEach(findings::bank);
        findings.states();
        findings.heatWithoutAir();
        findings.findings.addAll(reading.model().findings(reading.point()));
        findings.closed();
        findings.largestLoss();
        return List.copyOf(findings.findings);
    }

    private void note(String place, Object... message) {
        findings.add(Finding.note(place, message));
    }

    private void caution(String place, String remedy, String source, Object... message) {
        findings.add(Finding.caution(place, message).remedy(remedy).source(source));
    }

    private static Amount flow(double si) {
        return new Amount(si, QuantityKind.FLOW);
    }

    private static Amount pressure(double si) {
        return new Amount(si, QuantityKind.PRESSURE);
    }

    private static Amount speed(double si) {
        return new Amount(si, QuantityKind.ROTATIONAL_SPEED);
    }

    private static String percent(double share) {
        return Math.round(100 * share) + " %";
    }

    private void bank(OperatingPoint.BankPoint point) {
        Bank bank = reading.bank(point.bank());
        double speed = reading.speeds().get(point.bank());
        if (!(speed > 0)) {
            caution(bank.id(), "give it a speed setting", "", "bank " + bank.id() + " stands still: its speed is zero");
        } else if (bank.failed().size() < bank.positions()) {
            running(point, bank, MoverCharacteristic.of(bank.mover(), speed));
        }
        supply(bank, speed);
        efficiency(point);
        standing(point, bank, speed);
        freeAir(bank);
    }

    private void supply(Bank bank, double speed) {
        boolean said = reading.condition().supplyVoltage().isPresent() || reading.condition().supplyFrequency().isPresent();
        if (said && speed == bank.ratedSpeed() * reading.condition().speedSetting()) {
            caution(bank.id(), "say the speed setting that belongs to this supply", "", "the supply of the condition does not"
                    + " change the speed of bank " + bank.id() + ": no loaded speed law knows its movers");
        }
    }

    /** Heat that no air takes up. */
    private void heatWithoutAir() {
        double heat = reading.heat();
        if (heat > 0 && !(reading.intake() > 0)) {
            findings.add(Finding.of(Severity.NOT_MET, "", "no air goes through the equipment while its sources give off ",
                    new Amount(heat, QuantityKind.POWER), ": the rise of the air has no bound").remedy("make way for air"));
            return;
        }
        Map<String, Double> through = new HashMap<>();
        for (OperatingPoint.PassageFlow flow : reading.point().passages()) {
            Passage passage = reading.passage(flow);
            through.put(passage.id(), Math.abs(flow.flow()));
            for (String bay : List.of(passage.from(), passage.to())) {
                through.merge(bay, Math.abs(flow.flow()), Math::max);
            }
        }
        for (HeatSource source : reading.design().heatSources()) {
            for (HeatSource.Share share : source.into()) {
                if (reading.condition().heat(source) > 0 && through.getOrDefault(share.place(), 1.0) == 0) {
                    caution(share.place(), "give " + share.place() + " a way in and a way out", "", "no air goes through "
                            + share.place() + ", into which " + source.id() + " gives its heat");
                }
            }
        }
    }

    private void efficiency(OperatingPoint.BankPoint point) {
        OptionalDouble efficiency = AirflowReading.efficiency(point);
        if (efficiency.isPresent() && efficiency.getAsDouble() > 1) {
            caution(point.bank(), "check the units of flow, pressure and power of its mover", "conservation of energy",
                    "bank " + point.bank() + " would give more power to the air than it takes: its efficiency is ",
                    new Amount(efficiency.getAsDouble(), QuantityKind.FRACTION));
        }
    }

    private void running(OperatingPoint.BankPoint point, Bank bank, MoverCharacteristic mover) {
        double ratio = mover.speed() / mover.measuredSpeed();
        if (ratio < 1 - FAR || ratio > 1 + FAR) {
            caution(bank.id(), "add a curve measured near that speed", TEST_STANDARD, "bank " + bank.id() + " turns at ",
                    speed(mover.speed()), "; the nearest curve was measured at ", speed(mover.measuredSpeed()),
                    ", too far for the fan laws to be trusted");
        }
        List<OperatingPoint.MoverPoint> running = point.movers().stream().filter(OperatingPoint.MoverPoint::running).toList();
        double tiny = 1e-9 * mover.lastFlow();
        which(running.stream().filter(each -> each.flow() < -tiny)).ifPresent(positions -> caution(bank.id(),
                "lower the pressure behind it, or use a mover of higher pressure", "", "air goes backwards through "
                        + positions + " of bank " + bank.id()
                        + ", though it runs: the pressure against it is above its shut-off"));
        which(running.stream().filter(each -> each.flow() >= -tiny && each.pressure() < 0)).ifPresent(positions -> caution(
                bank.id(), "use movers of more flow there, or fewer beside them", "", positions + " of bank " + bank.id()
                        + " works beyond free delivery: other movers push more air through it than it moves by itself,"
                        + " and it acts as a resistance"));
        which(running.stream().filter(each -> each.pressure() >= 0 && (each.flow() > mover.lastFlow() + tiny
                || each.flow() >= -tiny && each.flow() < mover.firstFlow() - tiny))).ifPresent(positions -> caution(bank.id(),
                "add points to the curve", "", positions + " of bank " + bank.id() + " works outside the measured flows, from ",
                flow(mover.firstFlow()), " to ", flow(mover.lastFlow()), " at this speed; the curve is continued"));
    }

    /** Names positions; {@code position 2}, {@code positions 1, 2}; empty for none. */
    private static Optional<String> which(Stream<OperatingPoint.MoverPoint> movers) {
        List<String> positions = movers.map(each -> String.valueOf(each.position())).toList();
        return positions.isEmpty() ? Optional.empty()
                : Optional.of((positions.size() == 1 ? "position " : "positions ") + String.join(", ", positions));
    }

    private void standing(OperatingPoint.BankPoint point, Bank bank, double speed) {
        List<OperatingPoint.MoverPoint> still = point.movers().stream().filter(each -> !each.running()).toList();
        if (still.isEmpty()) {
            return;
        }
        Set<FailedMover.State> states = still.stream().map(each -> bank.standing(each.position(), speed).orElseThrow())
                .collect(Collectors.toCollection(TreeSet::new));
        if (still.size() == bank.positions() && speed > 0) {
            caution(bank.id(), "", "", "no mover of bank " + bank.id() + " runs: all have failed");
        }
        // without the position, which the case is named by, so that what holds for all is said once
        findings.add(Finding.note(bank.id(), (still.size() == 1 ? "the mover that stands still in bank "
                : "each mover that stands still in bank ") + bank.id() + " is taken as an opening of ", new Amount(bank.openArea().orElseThrow(), QuantityKind.AREA),
                (bank.mover().openArea().isEmpty() ? " (" + percent(Bank.ASSUMED_OPEN) + " of its frame, assumed)" : "")
                + " with loss coefficient " + states.stream().map(state -> String.format(Locale.ROOT, "%.1f (%s)",
                        Bank.loss(state), state.word())).collect(Collectors.joining(", "))).source(ASSUMED));
        // the first mover of each column speaks for it
        List<OperatingPoint.MoverPoint> columns = point.movers().stream()
                .filter(each -> (each.position() - 1) % bank.series() == 0).toList();
        double back = columns.stream().mapToDouble(each -> Math.max(0, -each.flow())).sum();
        double forward = columns.stream().mapToDouble(each -> Math.max(0, each.flow())).sum();
        if (point.speed() > 0 && back > 1e-6 * forward && forward > 0) {
            caution(bank.id(), "fit flaps that close when a mover fails", "", percent(back / forward)
                    + " of the air that bank " + bank.id() + " moves comes back through "
                    + (still.size() == 1 ? "the failed position" : which(columns.stream().filter(each -> each.flow() < 0))
                            .orElseThrow()));
        }
    }

    /** What can be said of the states of banks whose curves do not fall all the way. */
    private void states() {
        AirPathSolution solution = reading.solution();
        if (solution.states().isEmpty()) {
            return;
        }
        JointState reached = solution.states().get(solution.reached());
        List<String> banks = reached.points().stream().map(DutyPoint::bank).toList();
        String place = banks.getFirst();
        String curves = banks.size() == 1 ? "the curve of bank " + place + " does not fall all the way"
                : "the curves of banks " + String.join(", ", banks) + " do not fall all the way";
        String limit = solution.complete() ? "" : "; the search met its limit, so that there may be more";
        if (solution.states().size() == 1) {
            note(place, curves + (banks.size() == 1 ? ", but meets the system curve once" : ", but there is one joint duty point")
                    + limit);
        } else {
            List<Object> words = new ArrayList<>(List.of(curves + "; there are " + solution.states().size()
                    + (banks.size() == 1 ? " duty points: " : " joint duty points: ")));
            for (JointState state : solution.states().subList(0, Math.min(MOST_STATES, solution.states().size()))) {
                for (DutyPoint point : state.points()) {
                    words.addAll(List.of(banks.size() == 1 ? "" : point.bank() + " ", flow(point.flow()), " at ",
                            pressure(point.pressure()), banks.size() == 1 ? "" : " and "));
                }
                words.removeLast();
                words.add((state.even() ? "" : ", unevenly shared") + (state.stable() ? " (stable)" : " (unstable)"));
                words.add("; ");
            }
            words.removeLast();
            words.add((solution.states().size() > MOST_STATES ? " and so on" : "")
                    + "; judged is the one first met from standstill, ");
            for (DutyPoint point : reached.points()) {
                words.addAll(List.of(banks.size() == 1 ? "" : point.bank() + " ", flow(point.flow()), ", "));
            }
            words.removeLast();
            words.add(limit);
            caution(place, "lower the resistance, so that the duty point lies beyond the dip", "common practice; stable means"
                    + " statically stable: a small change of flow dies away", words.toArray());
        }
        if (!reached.stable()) {
            caution(place, "change the resistance", "", "the duty point of bank " + place + " is not statically stable");
        }
    }

    private void freeAir(Bank bank) {
        if (AirflowReading.fromOutsideToOutside(reading.model().passage(bank.id()))) {
            List<Object> words = new ArrayList<>(List.of("bank " + bank.id()
                    + " goes from outside to outside, so that no resistance is known; its flow is free delivery, the most there"
                    + " can be, and a rise of the air the least"));
            reading.pressureAvailable().ifPresent(available -> words.addAll(List.of("; at the flow needed, ",
                    flow(reading.flowNeeded().orElseThrow()), ", the air path may ask for ", pressure(available))));
            caution(bank.id(), "add the resistance of the air path", "", words.toArray());
        }
    }

    /** Bays that no chain of passages joins to the outside. */
    private void closed() {
        Map<String, List<String>> beside = new HashMap<>();
        for (Passage passage : reading.design().airPath().passages()) {
            beside.computeIfAbsent(passage.from(), bay -> new ArrayList<>()).add(passage.to());
            beside.computeIfAbsent(passage.to(), bay -> new ArrayList<>()).add(passage.from());
        }
        Set<String> open = new HashSet<>();
        Deque<String> next = new ArrayDeque<>(List.of(Bay.OUTSIDE));
        while (!next.isEmpty()) {
            String bay = next.pop();
            if (open.add(bay)) {
                beside.getOrDefault(bay, List.of()).forEach(next::push);
            }
        }
        List<String> closed = reading.model().bays().stream().map(Bay::id).filter(bay -> !open.contains(bay)).toList();
        if (!closed.isEmpty()) {
            note(closed.getFirst(), (closed.size() == 1 ? "bay " + closed.getFirst() + " has" : "bays "
                    + String.join(", ", closed) + " have")
                    + " no way to the outside; pressures there are counted from one of them");
        }
    }

    private void largestLoss() {
        reading.largestLoss().ifPresent(passage -> findings.add(Finding.note(passage, "passage " + passage
                + " takes the largest part of the air power lost in all passages").remedy("open it up first")));
    }
}
