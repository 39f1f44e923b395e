package tramontane.airflow.internal;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tramontane.airflow.DutyPoint;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Severity;
import tramontane.model.Bay;
import tramontane.model.HeatSource;
import tramontane.model.Passage;
import tramontane.physics.units.QuantityKind;

/** What an engineer should know about a solved air path beyond its figures. */
final class AirflowFindings {

    private final AirflowReading reading;
    private final List<Finding> findings = new ArrayList<>();

    private AirflowFindings(AirflowReading reading) {
        this.reading = reading;
    }

    static List<Finding> of(AirflowReading reading) {
        AirflowFindings findings = new AirflowFindings(reading);
        reading.point().banks().forEach(findings::bank);
        findings.findings.addAll(BankFindings.direction(reading));
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

    private void bank(OperatingPoint.BankPoint point) {
        Bank bank = reading.bank(point.bank());
        findings.addAll(BankFindings.of(reading, point));
        dip(point, bank);
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

    private void dip(OperatingPoint.BankPoint point, Bank bank) {
        List<DutyPoint> crossings = reading.solution().dutyPoints().stream()
                .filter(each -> each.bank().equals(point.bank())).toList();
        if (crossings.isEmpty()) {
            return;
        }
        if (!reading.solution().complete()) {
            several(bank, crossings.get(0), crossings.get(1));
            return;
        }
        String beside = bank.columns() > 1 ? "; movers side by side may then share the flow unevenly" : "";
        if (crossings.size() == 1) {
            note(bank.id(), "the curve of bank " + bank.id() + " does not fall all the way, but meets the system curve once,"
                    + " as far as a scan shows that may miss two crossings very close together" + beside);
        } else {
            List<Object> words = new ArrayList<>(List.of("the curve of bank " + bank.id() + " meets the system curve "
                    + crossings.size() + " times: "));
            for (DutyPoint crossing : crossings) {
                words.addAll(List.of(flow(crossing.flow()), " at ", pressure(crossing.pressure()),
                        crossing.stable() ? " (stable)" : " (unstable)", ", "));
            }
            words.removeLast();
            words.addAll(List.of("; judged is the one reached from rest, ", flow(point.flow()), beside));
            caution(bank.id(), "lower the resistance, so that the duty point lies beyond the dip", "common practice",
                    words.toArray());
        }
        if (!point.stable()) {
            caution(bank.id(), "change the resistance", "", "the duty point of bank " + bank.id() + " is not stable");
        }
    }

    private void several(Bank bank, DutyPoint fromRest, DutyPoint fromFull) {
        String curve = "the curve of bank " + bank.id() + " does not fall all the way, nor do those of movers it works with; ";
        if (Math.abs(fromRest.flow() - fromFull.flow()) <= 1e-6 * Math.abs(fromFull.flow())) {
            note(bank.id(), curve + "from rest and from full flow it settles at the same duty point, but there may be others");
        } else {
            caution(bank.id(), "lower the resistance, so that the duty points lie beyond the dips", "common practice",
                    curve + "from rest it settles at ", flow(fromRest.flow()), ", from full flow at ", flow(fromFull.flow()),
                    "; judged is the first, and there may be others");
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
