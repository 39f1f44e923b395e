package tramontane.drive.internal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tramontane.airflow.AirflowStudy;
import tramontane.analysis.Amount;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Run;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.Requirement;
import tramontane.physics.units.QuantityKind;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalState;

/** What the requirements of a design ask of a state, and which of them more speed helps. */
final class Wishes {

    /** Ids of figures that the air flow gives. */
    private static final Set<String> OF_FLOWS = AirflowStudy.figures().stream().map(FigureKind::id).collect(Collectors.toUnmodifiableSet());
    /** Figures of this bundle, which ask about laws themselves or say nothing of cooling. */
    private static final String OWN = "drive.";
    /** Kelvin that stand for all of a quantity that is no temperature. */
    private static final double ALL_OF_IT = 100;
    /** Least difference of two margins that counts, K. */
    private static final double SAME = 1e-9;

    private final Design design;
    private final Run run;
    private final double reserve;
    private final Map<String, String> labels = new HashMap<>();

    /**
     * Those of a design.
     *
     * @param design  the design
     * @param run     who asks
     * @param reserve that temperatures are to leave, K; other margins get it on top, so that it asks nothing of them
     */
    Wishes(Design design, Run run, double reserve) {
        this.design = design;
        this.run = run;
        this.reserve = reserve;
    }

    /** A state, and the design whose control laws hold it there. */
    record At(Design design, Condition condition, ThermalModel model, ThermalState state) {
    }

    /** Those that hold in a condition, but for what this bundle gives itself. */
    List<Requirement> in(String declared) {
        return design.requirements().stream().filter(each -> each.appliesIn(declared) && !each.figure().startsWith(OWN)).toList();
    }

    /**
     * Those that more speed helps: their margin is larger at full speed than at the lowest. Where there is no state at the lowest, it
     * is those that ask for flow and against warmth.
     */
    List<Requirement> helped(String declared, At full, Optional<At> low) {
        List<Requirement> helped = new ArrayList<>();
        for (Requirement each : in(declared)) {
            double most = margin(each, full);
            double least = low.map(there -> margin(each, there)).orElse(Double.NaN);
            boolean flows = each.atLeast().isPresent() && each.atMost().isEmpty();
            if (Double.isFinite(most) && (Double.isFinite(least) ? most > least + SAME : flows || isTemperature(each, full))) {
                helped.add(each);
            }
        }
        return helped;
    }

    private boolean isTemperature(Requirement requirement, At at) {
        return requirement.atMost().isPresent() && figures(requirement, at).stream().map(figure -> figure.kind().quantity())
                .allMatch(kind -> kind.equals(QuantityKind.TEMPERATURE) || kind.equals(QuantityKind.TEMPERATURE_DIFFERENCE));
    }

    /** The least margin of some, K; infinite where none has a figure; too little where a duty point is unstable. */
    double margin(List<Requirement> some, At at) {
        double least = unstable(at.state()) ? reserve - 1 : Double.POSITIVE_INFINITY;
        for (Requirement each : some) {
            least = Math.min(least, margin(each, at));
        }
        return least;
    }

    /** Whether a bank works where a small change of flow grows, or is blown backwards by others while it runs. */
    static boolean unstable(ThermalState state) {
        return state.point().banks().stream().anyMatch(bank -> bank.speed() > 0 && (!bank.stable() || bank.flow() < 0));
    }

    /** The margin of one, K, others than temperatures made comparable; infinite where nothing gives its figure. */
    double margin(Requirement requirement, At at) {
        double least = Double.POSITIVE_INFINITY;
        for (Figure figure : figures(requirement, at)) {
            least = Math.min(least, requirement.atMost().map(most -> margin(figure, most.si() - figure.value(), most.si()))
                    .orElse(Double.POSITIVE_INFINITY));
            least = Math.min(least, requirement.atLeast().map(most -> margin(figure, figure.value() - most.si(), most.si()))
                    .orElse(Double.POSITIVE_INFINITY));
        }
        return least;
    }

    private double margin(Figure figure, double margin, double limit) {
        QuantityKind kind = figure.kind().quantity();
        return kind.equals(QuantityKind.TEMPERATURE) ? margin : reserve + (kind.equals(QuantityKind.TEMPERATURE_DIFFERENCE) ? margin
                : ALL_OF_IT * margin / Math.max(Math.abs(limit), Math.abs(figure.value()) + Double.MIN_NORMAL));
    }

    private List<Figure> figures(Requirement requirement, At at) {
        String id = requirement.figure();
        List<Figure> flows = OF_FLOWS.contains(id) ? at.model().flowFigures(at.state()).stream().filter(figure -> figure.kind().id()
                .equals(id)).toList()
                : List.of();
        List<Figure> figures = (flows.isEmpty() ? run.figures(at.design(), at.condition(), id) : flows).stream()
                .filter(figure -> requirement.place().equals(Requirement.WORST) || requirement.place().equals(figure.place())).toList();
        figures.stream().findFirst().ifPresent(figure -> labels.putIfAbsent(id, figure.kind().label()));
        return figures;
    }

    /** How people call one. */
    String name(Requirement requirement) {
        String label = labels.getOrDefault(requirement.figure(), requirement.figure());
        return requirement.place().equals(Requirement.WORST) ? label : label + " at " + requirement.place();
    }

    /** What a figure is, and what it should be, for a sentence; of several places the worst. */
    Object[] amounts(Requirement requirement, At at) {
        Figure worst = figures(requirement, at).stream().min(java.util.Comparator.comparingDouble(figure -> Math.min(requirement.atMost()
                .map(most -> most.si() - figure.value()).orElse(Double.POSITIVE_INFINITY), requirement.atLeast()
                        .map(most -> figure.value() - most.si())
                        .orElse(Double.POSITIVE_INFINITY)))).orElseThrow();
        QuantityKind kind = worst.kind().quantity();
        boolean high = requirement.atMost().filter(most -> worst.value() > most.si()).isPresent();
        double limit = (high ? requirement.atMost() : requirement.atLeast().or(requirement::atMost)).orElseThrow().si();
        return new Object[] {new Amount(worst.value(), kind), high ? " where at most " : " where at least ", new Amount(limit, kind), " is required"};
    }
}
