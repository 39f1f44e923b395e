package tramontane.airflow.internal;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import tramontane.airflow.AirPathSolution;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Run;
import tramontane.model.Passage;
import tramontane.model.Quantity;

/**
 * How an air path works if things are a little other than stated.
 *
 * @param lessPressure flow of each bank, m³/s, with 10 % less pressure at equal flow
 * @param morePressure flow of each bank, m³/s, with 10 % more
 * @param opened       the passage with the largest drop, opened by 10 %; empty where there are not two to choose from
 * @param bands        figures with bounds from the stated tolerances
 * @param tolerances   the stated tolerances by passage
 */
record Variations(Map<String, Double> lessPressure, Map<String, Double> morePressure, Optional<Opened> opened, Bands bands,
        Map<String, Double> tolerances) {

    /** Relative change of a bank's pressure whose effect is always shown; the usual tolerance of a mover's curve. */
    static final double PRESSURE = 0.1;
    /** Relative change of area whose gain is shown. */
    private static final double OPENED = 0.1;
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
        Function<Map<String, Double>, Optional<AirflowReading>> with = factors -> {
            run.check();
            AirPathSolution solution = reading.model().at(reading.speeds(), factors)
                    .near(reading.model().temperatures(), reading.solution(), run::cancelled);
            return solution.point().map(point -> new AirflowReading(reading.design(), reading.model(), reading.solver(),
                    reading.speeds(), solution));
        };
        Map<String, Double> less = new LinkedHashMap<>();
        Map<String, Double> more = new LinkedHashMap<>();
        for (OperatingPoint.BankPoint bank : reading.point().banks()) {
            if (bank.speed() > 0) {
                with.apply(Map.of(bank.bank(), 1 - PRESSURE)).flatMap(other -> other.point().bank(bank.bank()))
                        .ifPresent(other -> less.put(bank.bank(), other.flow()));
                with.apply(Map.of(bank.bank(), 1 + PRESSURE)).flatMap(other -> other.point().bank(bank.bank()))
                        .ifPresent(other -> more.put(bank.bank(), other.flow()));
            }
        }
        Optional<Opened> opened = narrowest(reading).flatMap(flow -> with.apply(Map.of(flow.passage(),
                1 / ((1 + OPENED) * (1 + OPENED)))).map(other -> new Opened(flow.passage(), Math.abs(flow.drop()),
                        other.intake() / other.outside().density())));
        Map<String, Double> tolerances = tolerances(reading);
        Bands bands = Bands.of(reading.figures(), tolerances, factors -> with.apply(factors)
                .map(other -> new Bands.Found(other.figures(), other.solution().complete())));
        return new Variations(less, more, opened, bands, tolerances);
    }

    /** The passage with the largest drop of those that take part; leaks, flaps and banks left out. */
    private static Optional<OperatingPoint.PassageFlow> narrowest(AirflowReading reading) {
        double largest = reading.point().passages().stream().mapToDouble(flow -> Math.abs(flow.massFlow())).max().orElse(0);
        int others = 0;
        OperatingPoint.PassageFlow narrowest = null;
        for (OperatingPoint.PassageFlow flow : reading.point().passages()) {
            Passage passage = reading.passage(flow);
            if (!passage.isBank() && !passage.kind().equals(PassageKind.GAP) && !passage.kind().equals(FlapKind.NAME)
                    && largest > 0 && Math.abs(flow.massFlow()) >= TAKES_PART * largest) {
                others++;
                narrowest = narrowest == null || Math.abs(flow.drop()) > Math.abs(narrowest.drop()) ? flow : narrowest;
            }
        }
        return others < 2 ? Optional.empty() : Optional.of(narrowest);
    }

    private static Map<String, Double> tolerances(AirflowReading reading) {
        Map<String, Double> tolerances = new LinkedHashMap<>();
        for (OperatingPoint.PassageFlow flow : reading.point().passages()) {
            Passage passage = reading.passage(flow);
            double tolerance = passage.isBank() ? reading.bank(passage.id()).mover().curves().stream()
                    .flatMap(curve -> curve.tolerance().stream()).mapToDouble(Quantity::si).max().orElse(0)
                    : passage.tolerance().map(Quantity::si).orElse(0.0);
            if (tolerance > 0) {
                tolerances.put(passage.id(), tolerance);
            }
        }
        return tolerances;
    }
}
