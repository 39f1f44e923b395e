package tramontane.airflow.desktop.internal.path;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.model.Bay;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.FormReader;
import tramontane.model.Passage;
import tramontane.model.Problem;
import tramontane.model.Values;

/**
 * What is known of the air in one case.
 *
 * @param caseId   the case, as {@code hot day} or {@code any one failed: fans 1 locked}
 * @param passages by id of passage; empty where nothing is solved
 * @param bays     by id of bay, outside among them
 * @param banks    by id of bank
 * @param failed   movers that have failed in this case, by bank and position, solved or not
 * @param stale    whether the values belong to an earlier state of the design
 */
record AirValues(String caseId, Map<String, PassageAir> passages, Map<String, BayAir> bays, Map<String, OperatingPoint.BankPoint> banks,
        Map<String, Map<Integer, FailedMover.State>> failed, boolean stale) {

    /** Air that moves no more than this stands still, kg/s. */
    private static final double STILL = 1e-9;

    /** Nothing solved, nothing failed. */
    static final AirValues NONE = new AirValues("", Map.of(), Map.of(), Map.of(), Map.of(), false);

    /**
     * The air in a passage.
     *
     * @param massFlow kg/s, positive from its first to its second bay
     * @param flow     m³/s at the density of the air that enters it
     * @param drop     of total pressure from its first to its second bay, Pa
     * @param velocity mean velocity in its free cross-section, m/s, where its kind has one
     * @param flowSaid the figure of its flow, with bounds where it has some
     * @param dropSaid the figure of its drop
     */
    record PassageAir(double massFlow, double flow, double drop, OptionalDouble velocity, Optional<Figure> flowSaid,
            Optional<Figure> dropSaid) {

        /** Whether air goes against the direction in which the passage is written. */
        boolean reverse() {
            return massFlow < 0;
        }
    }

    /**
     * The air in a bay.
     *
     * @param pressure        above the air outside, Pa
     * @param temperature     K; NaN where no air moves
     * @param pressureSaid    the figure of its pressure
     * @param temperatureSaid the figure of its temperature
     */
    record BayAir(double pressure, double temperature, Optional<Figure> pressureSaid, Optional<Figure> temperatureSaid) {
    }

    AirValues {
        passages = Map.copyOf(passages);
        bays = Map.copyOf(bays);
        banks = Map.copyOf(banks);
        failed = Map.copyOf(failed);
    }

    /** Whether there are values. */
    boolean solved() {
        return !passages.isEmpty();
    }

    /** The same, known to belong to an earlier state of the design or not. */
    AirValues stale(boolean old) {
        return new AirValues(caseId, passages, bays, banks, failed, old);
    }

    /** The values of a case. */
    static AirValues of(Evaluation evaluation, String caseId, Map<String, PassageKind> kinds) {
        Optional<Condition> condition = evaluation.cases().stream().map(each -> each.concrete())
                .filter(concrete -> concrete.id().equals(caseId)).findFirst();
        Map<String, Map<Integer, FailedMover.State>> failed = condition.map(AirValues::failed).orElse(Map.of());
        Optional<OperatingPoint> point = evaluation.data(OperatingPoint.class, caseId);
        if (point.isEmpty() || condition.isEmpty()) {
            return new AirValues(caseId, Map.of(), Map.of(), Map.of(), failed, false);
        }
        Map<String, Figure> flows = evaluation.figures("airflow.passage.flow", caseId);
        Map<String, Figure> drops = evaluation.figures("airflow.passage.drop", caseId);
        Map<String, Figure> pressures = evaluation.figures("airflow.bay.pressure", caseId);
        Map<String, Figure> temperatures = evaluation.figures("thermal.air.temperature", caseId);
        Map<String, PassageAir> passages = new LinkedHashMap<>();
        for (OperatingPoint.PassageFlow each : point.get().passages()) {
            OptionalDouble velocity = evaluation.design().airPath().passage(each.passage())
                    .map(passage -> velocity(evaluation.design(), condition.get(), passage, each.flow(), kinds)).orElse(OptionalDouble.empty());
            passages.put(each.passage(), new PassageAir(each.massFlow(), each.flow(), each.drop(), velocity,
                    Optional.ofNullable(flows.get(each.passage())), Optional.ofNullable(drops.get(each.passage()))));
        }
        Map<String, BayAir> bays = new LinkedHashMap<>();
        point.get().bays().forEach(bay -> {
            // air that does not move has no temperature of its own: what a run takes to begin with says nothing
            boolean moves = bay.bay().equals(Bay.OUTSIDE) || evaluation.design().airPath().passages().stream()
                    .filter(passage -> passage.from().equals(bay.bay()) || passage.to().equals(bay.bay()))
                    .anyMatch(passage -> passages.containsKey(passage.id()) && Math.abs(passages.get(passage.id()).massFlow()) > STILL);
            bays.put(bay.bay(), new BayAir(bay.pressure(), moves ? bay.temperature() : Double.NaN,
                    Optional.ofNullable(pressures.get(bay.bay())), Optional.ofNullable(temperatures.get(bay.bay()))));
        });
        Map<String, OperatingPoint.BankPoint> banks = new LinkedHashMap<>();
        point.get().banks().forEach(bank -> banks.put(bank.bank(), bank));
        return new AirValues(caseId, passages, bays, banks, failed, false);
    }

    private static Map<String, Map<Integer, FailedMover.State>> failed(Condition condition) {
        Map<String, Map<Integer, FailedMover.State>> failed = new LinkedHashMap<>();
        condition.failed().stream().filter(FailedMover::isConcrete).forEach(mover -> failed
                .computeIfAbsent(mover.bank().orElseThrow(), bank -> new LinkedHashMap<>())
                .put(mover.position().orElseThrow(), mover.state()));
        return failed;
    }

    private static OptionalDouble velocity(Design design, Condition condition, Passage passage, double flow,
            Map<String, PassageKind> kinds) {
        PassageKind kind = kinds.get(passage.kind());
        if (kind == null) {
            return OptionalDouble.empty();
        }
        try {
            List<Problem> problems = new ArrayList<>();
            Values values = FormReader.read(kind.form(), passage.parameters(), "", problems);
            if (problems.stream().anyMatch(Problem::isError)) {
                return OptionalDouble.empty();
            }
            OptionalDouble area = kind.flowArea(values, new PassageKind.Setting(design, condition, passage));
            double velocity = area.isPresent() ? Math.abs(flow) / area.getAsDouble() : Double.NaN;
            return Double.isFinite(velocity) ? OptionalDouble.of(velocity) : OptionalDouble.empty();
        } catch (RuntimeException | LinkageError e) { // a stranger's kind; the engine says what is wrong with it
            return OptionalDouble.empty();
        }
    }
}
