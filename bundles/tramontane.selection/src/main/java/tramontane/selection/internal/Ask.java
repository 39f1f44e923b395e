package tramontane.selection.internal;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tramontane.analysis.Amount;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Judgement;
import tramontane.analysis.Sentence;
import tramontane.model.Passage;
import tramontane.model.Requirement;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitException;

/**
 * A requirement on flow or temperature.
 *
 * @param requirement the requirement
 * @param kind        its figure
 * @param least       lower limit, SI
 * @param most        upper limit, SI
 */
record Ask(Requirement requirement, FigureKind kind, Optional<Double> least, Optional<Double> most) {

    private static final String AIRFLOW = "airflow.";
    private static final String THERMAL = "thermal.";
    /** What depends on time, and so on when a mover fails. */
    private static final List<String> IN_TIME = List.of("thermal.time.", "thermal.control.");
    /** Figures of the bank itself that are the flow through it. */
    private static final List<String> FLOWS = List.of("airflow.bank.flow", "airflow.bank.standardFlow");
    private static final String BANK = "airflow.bank.";
    /** Kelvin that a temperature is off by for which it counts as wholly off. */
    private static final double WHOLE = 50;

    /** Whether a figure is one of flow or temperature, which more speed is for. */
    static boolean isFlowOrThermal(String figure) {
        return figure.startsWith(AIRFLOW) || figure.startsWith(THERMAL);
    }

    /** The sides of a requirement, lower and upper limit; none where its limits cannot be read. */
    static List<Ask> sides(Requirement requirement, FigureKind kind) {
        return of(requirement, kind).map(both -> both.least().isPresent() && both.most().isPresent()
                ? List.of(new Ask(requirement, kind, both.least(), Optional.empty()), new Ask(requirement, kind, Optional.empty(), both.most()))
                : List.of(both)).orElse(List.of());
    }

    /** A requirement, unless its limits cannot be read. */
    static Optional<Ask> of(Requirement requirement, FigureKind kind) {
        try {
            return Optional.of(new Ask(requirement, kind, requirement.atLeast().map(limit -> Judgement.limit(limit, kind)),
                    requirement.atMost().map(limit -> Judgement.limit(limit, kind))));
        } catch (UnitException e) {
            return Optional.empty(); // judged as such
        }
    }

    /** Whether its figure follows from the flow through a bank alone, whatever moves it. */
    boolean followsFlow(Passage bank, boolean onlyBank) {
        String id = kind.id();
        if (IN_TIME.stream().anyMatch(id::startsWith) || !isFlowOrThermal(id)) {
            return false;
        }
        boolean here = requirement.place().equals(bank.id()) || requirement.place().equals(Requirement.WORST) && onlyBank;
        return id.startsWith(BANK) ? here && FLOWS.contains(id) : !requirement.place().equals(bank.id());
    }

    /** Whether its figure is the flow through the bank itself. */
    boolean isFlowOfBank() {
        return FLOWS.contains(kind.id());
    }

    /** How far a value is inside the limits, SI; negative outside. */
    double margin(double value) {
        return Math.min(least.map(limit -> value - limit).orElse(Double.POSITIVE_INFINITY),
                most.map(limit -> limit - value).orElse(Double.POSITIVE_INFINITY));
    }

    /** A margin over what counts as wholly off. */
    double share(double margin) {
        return margin / scale(kind.quantity(), least.or(() -> most).orElse(1.0));
    }

    /** What a margin of a quantity is measured by. */
    static double scale(QuantityKind quantity, double limit) {
        return quantity.equals(QuantityKind.TEMPERATURE) || limit == 0 ? WHOLE : Math.abs(limit);
    }

    /** Whether a place is one of those that it is about. */
    boolean isAbout(String place) {
        return requirement.place().equals(Requirement.WORST) || requirement.place().equals(place);
    }

    /** Of figures the one that is worst at a place that counts. */
    Optional<Figure> worst(List<Figure> figures) {
        return figures.stream().filter(figure -> figure.kind().id().equals(kind.id()) && isAbout(figure.place())).min(Comparator.comparingDouble(figure -> margin(figure.value())));
    }

    /** {@code junction temperature at frame grabber at most 100 °C}. */
    Sentence words() {
        return Sentence.of(kind.label(), requirement.place().equals(Requirement.WORST) ? "" : " at " + requirement.place(),
                limit());
    }

    Sentence limit() {
        Object[] parts = least.isPresent() && most.isPresent()
                ? new Object[] {" from ", new Amount(least.get(), kind.quantity()), " to ", new Amount(most.get(), kind.quantity())}
                : least.isPresent() ? new Object[] {" at least ", new Amount(least.get(), kind.quantity())}
                : most.isPresent() ? new Object[] {" at most ", new Amount(most.get(), kind.quantity())} : new Object[] {""};
        return Sentence.of(parts);
    }
}
