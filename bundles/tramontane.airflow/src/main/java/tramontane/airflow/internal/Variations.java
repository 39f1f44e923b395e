package tramontane.airflow.internal;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.airflow.AirPathSolution;
import tramontane.airflow.AirPathSolver;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Run;
import tramontane.model.Passage;
import tramontane.model.Quantity;

/**
 * How an air path works if things are a little other than stated, at the temperatures of its bays and speeds of its movers as
 * they are: less flow does not make the air warmer here, nor a controlled mover faster.
 *
 * @param lessPressure flow of each bank, m³/s, with 10 % less pressure at equal flow
 * @param morePressure flow of each bank, m³/s, with 10 % more
 * @param opened       the passage with the largest drop, opened by 10 %; empty where there are not two to choose from, or
 *                     opening the largest ones gains nothing
 * @param bands        figures with bounds from the stated tolerances
 * @param tolerances   the stated tolerances by passage
 */
record Variations(Map<String, Double> lessPressure, Map<String, Double> morePressure, Optional<Opened> opened, Bands bands,
        Map<String, Double> tolerances) {

    /** Relative change of a bank's pressure whose effect is always shown; the usual tolerance of a mover's curve. */
    static final double PRESSURE = 0.1;
    /** Relative change of area whose gain is shown. */
    private static final double OPENED = 0.1;
    /** Passages that are tried. */
    private static final int MOST_OPENED = 4;
    /** Flow over the largest one that a passage must take for its drop to be of interest. */
    private static final double TAKES_PART = 0.1;

    /**
     * The passage with the largest drop.
     *
     * @param passage its id
     * @param drop    Pa
     * @param flow    flow from outside, m³/s, with it opened by 10 % in area
     */
    record Opened(String passage, double drop, double flow) {
    }

    /** Tries them all. */
    static Variations of(AirflowReading reading, Run run) {
        Other other = new Other(reading, run);
        Map<String, Double> less = new LinkedHashMap<>();
        Map<String, Double> more = new LinkedHashMap<>();
        for (OperatingPoint.BankPoint bank : reading.point().banks()) {
            if (bank.speed() > 0 && (run.wants(Figures.LESS_PRESSURE.id()) || run.wants(Figures.MORE_PRESSURE.id()))) {
                other.at(Map.of(bank.bank(), 1 - PRESSURE)).flatMap(there -> there.point().bank(bank.bank()))
                        .ifPresent(there -> less.put(bank.bank(), there.flow()));
                other.at(Map.of(bank.bank(), 1 + PRESSURE)).flatMap(there -> there.point().bank(bank.bank()))
                        .ifPresent(there -> more.put(bank.bank(), there.flow()));
            }
        }
        Map<String, Double> tolerances = run.brief() ? Map.of() : tolerances(reading);
        Bands bands = Bands.of(reading.figures(), tolerances, factors -> other.at(factors)
                .map(there -> new Bands.Found(there.figures(), there.solution().complete())));
        return new Variations(less, more, run.brief() ? Optional.empty() : opened(reading, other), bands, tolerances);
    }

    /**
     * The air path with something changed. Banks whose curves have a dip start from standstill, since with less pressure they
     * may not come to where they are; passages that are changed alone are left out of that, for the sake of time.
     */
    private record Other(AirflowReading reading, Run run) {

        Optional<AirflowReading> at(Map<String, Double> pressure) {
            boolean fromRest = pressure.size() > 1
                    || pressure.keySet().stream().anyMatch(id -> reading.model().passage(id).isBank());
            return at(pressure, Map.of(), fromRest);
        }

        Optional<AirflowReading> opened(String passage) {
            return at(Map.of(), Map.of(passage, 1 + OPENED), false);
        }

        private Optional<AirflowReading> at(Map<String, Double> pressure, Map<String, Double> area, boolean fromRest) {
            run.check();
            AirPathSolver solver = reading.model().at(reading.speeds(), pressure, area);
            double[] temperatures = reading.temperatures();
            AirPathSolution solution = fromRest ? solver.fromRest(temperatures, reading.solution(), run::cancelled)
                    : solver.near(temperatures, reading.solution(), run::cancelled);
            return solution.point().map(point -> reading.with(solver, solution, pressure));
        }
    }

    /** The passage with the largest drop of those that are worth opening; leaks, flaps and banks left out. */
    private static Optional<Opened> opened(AirflowReading reading, Other other) {
        double largest = reading.point().passages().stream().mapToDouble(flow -> Math.abs(flow.massFlow())).max().orElse(0);
        List<OperatingPoint.PassageFlow> narrow = reading.point().passages().stream().filter(flow -> {
            Passage passage = reading.passage(flow);
            return !passage.isBank() && !passage.kind().equals(PassageKind.GAP) && !passage.kind().equals(FlapKind.NAME)
                    && largest > 0 && Math.abs(flow.massFlow()) >= TAKES_PART * largest;
        }).sorted(Comparator.comparingDouble(flow -> -Math.abs(flow.drop()))).toList();
        for (OperatingPoint.PassageFlow flow : narrow.size() < 2 ? List.<OperatingPoint.PassageFlow>of()
                : narrow.subList(0, Math.min(MOST_OPENED, narrow.size()))) {
            Optional<AirflowReading> there = other.opened(flow.passage());
            // a way round that takes air from where it cools would only lose
            if (there.isPresent() && there.get().intake() > reading.intake()) {
                return Optional.of(new Opened(flow.passage(), Math.abs(flow.drop()),
                        there.get().intake() / reading.outside().density()));
            }
        }
        return Optional.empty();
    }

    private static Map<String, Double> tolerances(AirflowReading reading) {
        Map<String, Double> tolerances = new LinkedHashMap<>();
        for (OperatingPoint.PassageFlow flow : reading.point().passages()) {
            Passage passage = reading.passage(flow);
            double tolerance = passage.isBank() ? reading.bank(passage.id()).tolerance(reading.point().bank(passage.id()).orElseThrow().speed())
                    : passage.tolerance().map(Quantity::si).orElse(0.0);
            if (tolerance > 0) {
                tolerances.put(passage.id(), tolerance);
            }
        }
        return tolerances;
    }
}
