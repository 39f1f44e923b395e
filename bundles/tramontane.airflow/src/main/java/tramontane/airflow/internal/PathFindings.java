package tramontane.airflow.internal;

import static tramontane.airflow.internal.Amounts.flow;
import static tramontane.airflow.internal.Amounts.fraction;
import static tramontane.airflow.internal.Amounts.pressure;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import tramontane.analysis.Finding;
import tramontane.analysis.OperatingPoint;
import tramontane.model.Bay;
import tramontane.model.Passage;

/** What an engineer should know about the way the air takes: where it is lost, drawn back, shared badly, or close to a stall. */
final class PathFindings {

    /** Distance to the pressure peak, over the flow, below which a duty point is close to the stall region. */
    private static final double NEAR_STALL = 0.1;
    /** Efficiency over the best one below which a bank works far from where it works well. */
    private static final double FAR_FROM_BEST = 0.75;
    /** Shares of flow from which a leak or return is more than a note, and below which it is nothing. */
    private static final double MUCH = 0.05;
    private static final double LITTLE = 0.001;
    /** Smallest over largest flow of movers side by side below which they share unequally. */
    private static final double UNEQUAL = 0.9;
    /** Pressure below outside from which dust is drawn in, Pa. */
    private static final double SUCKS = 0.5;
    /** Distance beyond added-up bounds, over their width, from which they are not linear. */
    private static final double BENT = 0.1;
    private static final String PRACTICE = "common practice";

    private final AirflowReading reading;
    private final Variations variations;
    private final List<Finding> findings = new ArrayList<>();

    private PathFindings(AirflowReading reading, Variations variations) {
        this.reading = reading;
        this.variations = variations;
    }

    static List<Finding> of(AirflowReading reading, Variations variations) {
        PathFindings path = new PathFindings(reading, variations);
        for (OperatingPoint.BankPoint bank : reading.point().banks()) {
            if (bank.speed() > 0) {
                path.stall(bank);
                path.best(bank);
                path.drawnBack(bank);
                path.shares(bank);
            }
        }
        path.sharesOfBanks();
        path.gaps();
        path.dust();
        path.narrowest();
        path.bands();
        return List.copyOf(path.findings);
    }

    private void note(String place, String remedy, String source, Object... message) {
        findings.add(Finding.note(place, message).remedy(remedy).source(source));
    }

    private void caution(String place, String remedy, String source, Object... message) {
        findings.add(Finding.caution(place, message).remedy(remedy).source(source));
    }

    private void stall(OperatingPoint.BankPoint point) {
        OptionalDouble margin = reading.stallMargin(point);
        if (margin.isEmpty() || margin.getAsDouble() >= NEAR_STALL) {
            return;
        }
        double peak = reading.peakFlow(point).orElseThrow();
        String remedy = "lower the resistance, or use a mover whose pressure peak lies at less flow";
        if (margin.getAsDouble() < 0) {
            caution(point.bank(), remedy, PRACTICE + ": the stall region is that of flows below the pressure peak right of the dip",
                    "bank " + point.bank() + " works in the stall region of its movers, whose pressure peak lies at ", flow(peak),
                    " a mover: expect noise, vibration and unsteady flow");
        } else {
            caution(point.bank(), remedy, PRACTICE, "bank " + point.bank() + " works only ", fraction(margin.getAsDouble()),
                    " of its flow above the stall region of its movers");
        }
    }

    private void best(OperatingPoint.BankPoint point) {
        OptionalDouble efficiency = AirflowReading.efficiency(point);
        Optional<MoverCharacteristic.Best> best = reading.best(point);
        if (efficiency.isPresent() && best.isPresent() && point.movers().stream().allMatch(OperatingPoint.MoverPoint::running)
                && reading.bank(point.bank()).fitting().flap().isEmpty()
                && efficiency.getAsDouble() < FAR_FROM_BEST * best.get().efficiency()) {
            note(point.bank(), "a mover whose best flow is nearer needs less power", "", "bank " + point.bank() + " works at a"
                    + " static efficiency of ", fraction(efficiency.getAsDouble()), "; its movers are best at ",
                    flow(best.get().flow()), " each, with ", fraction(best.get().efficiency()));
        }
    }

    private void drawnBack(OperatingPoint.BankPoint point) {
        OptionalDouble share = reading.drawnBack(point);
        if (share.isEmpty() || share.getAsDouble() < LITTLE) {
            return;
        }
        Object[] words = {"", fraction(share.getAsDouble()), " of the air that bank " + point.bank()
                + " draws has been through it before"};
        if (share.getAsDouble() >= MUCH) {
            caution(point.bank(), "part exhaust and inlet by a wall, or lead the exhaust away", PRACTICE, words);
        } else {
            note(point.bank(), "", "", words);
        }
    }

    private void shares(OperatingPoint.BankPoint point) {
        List<OperatingPoint.MoverPoint> running = point.movers().stream().filter(OperatingPoint.MoverPoint::running).toList();
        double least = running.stream().mapToDouble(OperatingPoint.MoverPoint::flow).min().orElse(0);
        double most = running.stream().mapToDouble(OperatingPoint.MoverPoint::flow).max().orElse(0);
        if (most > 0 && least < UNEQUAL * most) {
            caution(point.bank(), "make the way of the air to each of them alike, or lower the resistance", "", "the movers of bank " + point.bank() + " that run share its flow unequally, from ",
                    flow(least), " to ", flow(most), " each");
        }
    }

    /** Banks of one part that end in one bay. */
    private void sharesOfBanks() {
        Map<List<String>, List<OperatingPoint.BankPoint>> beside = new HashMap<>();
        for (OperatingPoint.BankPoint bank : reading.point().banks()) {
            Passage passage = reading.model().passage(bank.bank());
            if (bank.speed() > 0 && bank.flow() > 0) {
                beside.computeIfAbsent(List.of("from", passage.from(), reading.bank(bank.bank()).mover().id()),
                        key -> new ArrayList<>()).add(bank);
                beside.computeIfAbsent(List.of("to", passage.to(), reading.bank(bank.bank()).mover().id()),
                        key -> new ArrayList<>()).add(bank);
            }
        }
        Set<String> said = new HashSet<>();
        for (List<OperatingPoint.BankPoint> banks : reading.point().banks().stream().flatMap(bank -> beside.values().stream()
                .filter(group -> group.getFirst() == bank)).toList()) {
            double least = banks.stream().mapToDouble(this::each).min().orElse(0);
            double most = banks.stream().mapToDouble(this::each).max().orElse(0);
            String names = banks.stream().map(OperatingPoint.BankPoint::bank).collect(Collectors.joining(", "));
            if (banks.size() > 1 && least < UNEQUAL * most && said.add(names)) {
                caution(banks.getFirst().bank(), "make the ways of the air to them alike", "", "the banks " + names
                        + ", which stand side by side, share the flow unequally, from ", flow(least), " to ", flow(most),
                        " a mover");
            }
        }
    }

    private double each(OperatingPoint.BankPoint bank) {
        return bank.flow() / reading.bank(bank.bank()).columns();
    }

    private void gaps() {
        OptionalDouble share = reading.gapShare();
        if (share.isEmpty() || share.getAsDouble() < LITTLE) {
            return;
        }
        List<OperatingPoint.PassageFlow> gaps = reading.gaps();
        Object[] words = {(gaps.size() == 1 ? "gap " + gaps.getFirst().passage() + " takes " : "gaps "
                + gaps.stream().map(OperatingPoint.PassageFlow::passage).collect(Collectors.joining(", ")) + " take "),
                flow(reading.gapFlow() / reading.outside().density()), ", ",
                fraction(share.getAsDouble()), " of the flow from outside"};
        if (share.getAsDouble() >= MUCH) {
            caution(gaps.getFirst().passage(), "seal gaps where their air cools nothing", PRACTICE, words);
        } else {
            note(gaps.getFirst().passage(), "", "", words);
        }
    }

    /** Bays behind a filter that draw unfiltered air. */
    private void dust() {
        for (OperatingPoint.PassageFlow filter : reading.point().passages()) {
            Passage passage = reading.passage(filter);
            String next = filter.massFlow() > 0 ? passage.to() : passage.from();
            if (!reading.filters(passage) || filter.massFlow() == 0 || blows(next)) {
                continue;
            }
            Optional<OperatingPoint.BayState> lowest = behind(next).stream().flatMap(bay -> reading.point().bay(bay).stream())
                    .min((a, b) -> Double.compare(a.pressure(), b.pressure()));
            if (lowest.isPresent() && lowest.get().pressure() < -SUCKS) {
                caution(lowest.get().bay(), "blow in through the filter rather than draw", PRACTICE, "behind the filter of passage "
                        + filter.passage() + ", bay " + lowest.get().bay() + " lies ", pressure(-lowest.get().pressure()),
                        " below the pressure outside: dust enters by every gap");
                return;
            }
        }
    }

    /** Whether a bay is but the room between filters and the movers behind them, which blow on. */
    private boolean blows(String bay) {
        List<Passage> ends = reading.point().passages().stream().map(reading::passage)
                .filter(passage -> passage.from().equals(bay) || passage.to().equals(bay)).toList();
        return ends.stream().anyMatch(Passage::isBank) && ends.stream().allMatch(end -> end.isBank() || reading.filters(end))
                && ends.stream().filter(Passage::isBank).noneMatch(bank -> bank.to().equals(Bay.OUTSIDE));
    }

    /** Bays that air reaches from a bay on. */
    private Set<String> behind(String first) {
        Set<String> reached = new HashSet<>();
        Deque<String> next = new ArrayDeque<>(List.of(first));
        while (!next.isEmpty()) {
            String bay = next.pop();
            if (bay.equals(Bay.OUTSIDE) || !reached.add(bay)) {
                continue;
            }
            for (OperatingPoint.PassageFlow flow : reading.point().passages()) {
                Passage passage = reading.passage(flow);
                if (flow.massFlow() > 0 && passage.from().equals(bay)) {
                    next.push(passage.to());
                } else if (flow.massFlow() < 0 && passage.to().equals(bay)) {
                    next.push(passage.from());
                }
            }
        }
        return reached;
    }

    private void narrowest() {
        variations.opened().ifPresent(opened -> {
            double now = reading.intake() / reading.outside().density();
            note(opened.passage(), "", "", "passage " + opened.passage() + " has the largest pressure drop, ",
                    pressure(opened.drop()), "; opened by 10 % in area it would bring the flow from outside from ", flow(now),
                    " to ", flow(opened.flow()));
        });
    }

    private void bands() {
        if (variations.tolerances().isEmpty()) {
            return;
        }
        Bands bands = variations.bands();
        note("", "", "bounds add up as if each tolerance were at its worst at once; samples check them",
                "the bounds of figures come from the tolerances of " + variations.tolerances().entrySet().stream()
                        .map(each -> each.getKey() + " (" + Math.round(1000 * each.getValue()) / 10.0 + " %)")
                        .collect(Collectors.joining(", ")));
        if (bands.beyond() > BENT) {
            note("", "", "", "the bounds of some figures do not simply add up, and were widened by what samples show");
        }
        if (bands.left() > 0) {
            caution("", "keep farther away from the dip of the curve", "", "within the tolerances a bank leaves its stretch of the"
                    + " curve and works at another duty point; the bounds contain both");
        }
        if (bands.without() > 0) {
            caution("", "", "", bands.without() + " combinations of the tolerances have no answer; the bounds leave them out");
        }
    }
}
