package tramontane.airflow.internal;

import static tramontane.airflow.internal.Amounts.flow;
import static tramontane.airflow.internal.Amounts.pressure;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tramontane.airflow.AirPathSolution;
import tramontane.airflow.DutyPoint;
import tramontane.airflow.JointState;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Severity;
import tramontane.model.Bay;
import tramontane.model.HeatSource;
import tramontane.model.Passage;
import tramontane.model.Value;
import tramontane.physics.units.QuantityKind;

/** What an engineer should know about a solved air path beyond its figures. */
final class AirflowFindings {

    /** States that are listed at most. */
    private static final int MOST_STATES = 8;

    private final AirflowReading reading;
    private final List<Finding> findings = new ArrayList<>();

    private AirflowFindings(AirflowReading reading) {
        this.reading = reading;
    }

    static List<Finding> of(AirflowReading reading, boolean heatFollowed) {
        AirflowFindings findings = new AirflowFindings(reading);
        reading.point().banks().forEach(findings::bank);
        findings.states();
        findings.findings.addAll(BankFindings.direction(reading));
        if (!heatFollowed || reading.design().heatSources().stream().anyMatch(source -> source.into().isEmpty())) {
            findings.heatWithoutAir();
        }
        findings.findings.addAll(reading.model().findings(reading.point()));
        findings.continuing();
        findings.closed();
        return List.copyOf(findings.findings);
    }

    private void note(String place, Object... message) {
        findings.add(Finding.note(place, message));
    }

    private void caution(String place, String remedy, String source, Object... message) {
        findings.add(Finding.caution(place, message).remedy(remedy).source(source));
    }

    private void bank(OperatingPoint.BankPoint point) {
        Bank bank = reading.bank(point.bank());
        findings.addAll(BankFindings.of(reading, point));
        freeAir(bank);
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
        String limit = solution.complete() ? "" : "; there may be more, for the search has a limit: " + solution.limit();
        if (solution.states().size() == 1) {
            note(place, curves + (banks.size() == 1 ? ", but meets the system curve once" : ", but there is one joint duty point")
                    + limit);
        } else {
            List<Object> words = new ArrayList<>(List.of(curves + "; there are " + solution.states().size()
                    + (banks.size() == 1 ? " duty points: " : " joint duty points: ")));
            for (JointState state : shown(solution)) {
                for (DutyPoint point : state.points()) {
                    words.addAll(List.of(banks.size() == 1 ? "" : point.bank() + " ", flow(point.flow()), " at ",
                            pressure(point.pressure()), banks.size() == 1 ? "" : " and "));
                }
                words.removeLast();
                words.add((state.even() ? "" : ", unevenly shared") + (state.stable() ? " (stable" : " (unstable")
                        + (state == reached ? ", judged)" : ")"));
                words.add("; ");
            }
            words.removeLast();
            words.add((solution.states().size() > MOST_STATES ? " and so on" : "")
                    + "; judged is the one first met from standstill"
                    + (reading.followed() ? ", followed as the air grows warmer" : "") + limit);
            caution(place, "lower the resistance, so that the duty point lies beyond the dip", "common practice; stable means"
                    + " statically stable: a small change of flow dies away", words.toArray());
        }
        if (!reached.stable()) {
            caution(place, "change the resistance", "", "the duty point of bank " + place + " is not statically stable");
        }
    }

    /** The first states, and the one reached. */
    private static List<JointState> shown(AirPathSolution solution) {
        List<JointState> shown = new ArrayList<>(solution.states().subList(0, Math.min(MOST_STATES, solution.states().size())));
        if (solution.reached() >= MOST_STATES) {
            shown.add(solution.states().get(solution.reached()));
        }
        return shown;
    }

    /** Passages whose air is said to go on into the next where there is no one next, or one that takes it as coming from rest. */
    private void continuing() {
        for (OperatingPoint.PassageFlow flow : reading.point().passages()) {
            Passage passage = reading.passage(flow);
            String next = flow.massFlow() >= 0 ? passage.to() : passage.from();
            if (flow.massFlow() == 0 || next.equals(Bay.OUTSIDE) || !passage.parameters().get(ExitHead.NAME)
                    .filter(new Value.Flag(true)::equals).isPresent()) {
                continue;
            }
            List<Passage> others = reading.design().airPath().passages().stream().filter(other -> !other.id().equals(passage.id()))
                    .filter(other -> other.from().equals(next) || other.to().equals(next)).toList();
            if (others.size() > 1) {
                caution(passage.id(), "leave out continues, or give the two a bay of their own", "", "passage " + passage.id()
                        + " is said to continue into the next, but more than one meets it in bay " + next
                        + ", where its velocity head is lost");
            } else if (others.size() == 1 && others.getFirst().kind().matches("duct|card cage")
                    && !others.getFirst().parameters().get("inletLoss").filter(AirflowFindings::isZero).isPresent()) {
                caution(others.getFirst().id(), "set its inletLoss to 0", "", "passage " + passage.id() + " continues into "
                        + others.getFirst().id() + ", which has an inlet loss as from a bay");
            }
        }
    }

    private static boolean isZero(Value value) {
        return value instanceof Value.Num num && num.number() == 0 || value instanceof Value.Text text && text.text().equals("0");
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
}
