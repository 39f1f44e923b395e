package tramontane.selection.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import tramontane.analysis.Better;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.model.AirMover;
import tramontane.physics.units.QuantityKind;
import tramontane.selection.Arrangement;
import tramontane.selection.Criterion;
import tramontane.selection.FigureBound;

/** What candidates come to by the criteria that can be told, and which of them is better. */
final class Scoring {

    /** The figure of the electrical input of a bank. */
    static final String POWER_FIGURE = "airflow.bank.power";

    private static final List<Criterion> OF_THE_PART = List.of(
            new Criterion(Criterion.COST, "price", QuantityKind.NUMBER, Better.LOWER),
            new Criterion(Criterion.SIZE, "size", QuantityKind.VOLUME, Better.LOWER),
            new Criterion(Criterion.MASS, "mass", QuantityKind.MASS, Better.LOWER));
    private static final Map<String, String> NAMED = Map.of(Criterion.POWER, POWER_FIGURE, Criterion.NOISE, Criterion.NOISE_FIGURE,
            Criterion.LIFE, Criterion.LIFE_FIGURE);

    private final String bank;
    private final List<Criterion> criteria;
    private final Map<String, Double> weights;
    private final double sum;
    private final Optional<String> currency;
    private final List<Finding> findings;

    private Scoring(String bank, List<Criterion> criteria, Map<String, Double> weights, Optional<String> currency, List<Finding> findings) {
        this.bank = bank;
        this.criteria = criteria;
        this.weights = weights;
        this.sum = Math.max(Double.MIN_NORMAL, criteria.stream().mapToDouble(each -> weights.getOrDefault(each.id(), 0.0)).sum());
        this.currency = currency;
        this.findings = findings;
    }

    /**
     * The criteria that can be told of a bank.
     *
     * @param engine   what gives figures
     * @param bank     the bank's id
     * @param weights  by criterion
     * @param currency what prices are in; those in another do not count
     */
    static Scoring of(Engine engine, String bank, Map<String, Double> weights, Optional<String> currency) {
        Map<String, FigureKind> figures = new HashMap<>();
        engine.analyses().forEach(analysis -> analysis.figures().forEach(figure -> figures.putIfAbsent(figure.id(), figure)));
        List<Criterion> all = new ArrayList<>();
        for (String name : List.of(Criterion.POWER, Criterion.NOISE, Criterion.LIFE)) {
            Optional.ofNullable(figures.get(NAMED.get(name))).ifPresent(figure -> all.add(new Criterion(name, name, figure.quantity(), figure.better(), figure.label()
                    + (name.equals(Criterion.POWER) ? " of the bank, the most in any condition" : ", the worst of all "
                    + (name.equals(Criterion.NOISE) ? "positions" : "places") + " and conditions"))));
        }
        all.addAll(OF_THE_PART);
        List<Finding> findings = new ArrayList<>();
        for (String id : weights.keySet()) {
            if (NAMED.containsKey(id) || all.stream().anyMatch(criterion -> criterion.id().equals(id))) {
                continue; // one that nothing loaded gives just does not count
            }
            FigureKind figure = figures.get(id);
            if (figure == null) {
                findings.add(Finding.error("", "a weight is given for " + id + ", which is neither a criterion nor a figure that anything loaded gives")
                        .remedy("name one of " + String.join(", ", names(all)) + ", or the id of a figure"));
            } else if (figure.better() == Better.NEITHER) {
                findings.add(Finding.error("", "a weight is given for figure " + id + ", of which neither more nor less is better")
                        .remedy("weigh another figure"));
            } else {
                all.add(new Criterion(id, figure.label(), figure.quantity(), figure.better(), "the worst of all places and conditions"));
            }
        }
        all.sort(Comparator.comparing(criterion -> !(weights.getOrDefault(criterion.id(), 0.0) > 0)));
        return new Scoring(bank, List.copyOf(all), weights, currency, findings);
    }

    private static List<String> names(List<Criterion> criteria) {
        return criteria.stream().map(Criterion::id).toList();
    }

    List<Criterion> criteria() {
        return criteria;
    }

    /** The ids of the figures that criteria are. */
    Set<String> figures() {
        return criteria.stream().filter(criterion -> !isOfPart(criterion)).map(criterion -> NAMED.getOrDefault(criterion.id(), criterion.id()))
                .collect(Collectors.toSet());
    }

    List<Finding> findings() {
        return findings;
    }

    /** What a part says of itself, times the number of movers. */
    Map<String, Double> ofPart(AirMover part, Arrangement arrangement) {
        Map<String, Double> values = new LinkedHashMap<>();
        int n = arrangement.movers();
        if (currency.isPresent() && part.datasheet().currency().equals(currency)) {
            part.datasheet().price().ifPresent(price -> values.put(Criterion.COST, n * price.si()));
        }
        if (part.width().isPresent() && part.height().isPresent() && part.depth().isPresent()) {
            values.put(Criterion.SIZE, n * part.width().get().si() * part.height().get().si() * part.depth().get().si());
        }
        part.datasheet().mass().ifPresent(mass -> values.put(Criterion.MASS, n * mass.si()));
        return values;
    }

    /** What an exactly judged candidate comes to. */
    Map<String, Double> values(AirMover part, Arrangement arrangement, Evaluation evaluation) {
        Map<String, Double> ofPart = ofPart(part, arrangement);
        Map<String, List<Figure>> figures = new HashMap<>();
        evaluation.figures().forEach(figure -> figures.computeIfAbsent(figure.kind().id(), id -> new ArrayList<>()).add(figure));
        return inOrder(criterion -> ofPart.containsKey(criterion.id()) || isOfPart(criterion) ? Optional.ofNullable(ofPart.get(criterion.id()))
                : worst(criterion, figures.getOrDefault(NAMED.getOrDefault(criterion.id(), criterion.id()), List.of())));
    }

    /**
     * What a candidate comes to at best.
     *
     * @param ofPart what its part says
     * @param power  no more than it will take, W; NaN where nothing states it
     * @param bounds of figures, by id: the best they may come to; one that will not come out is left out
     * @return by criterion; negative infinity in {@link Criterion#steps} of one that nothing is known of yet is left to {@link #steps}
     */
    Map<String, Double> best(Map<String, Double> ofPart, double power, Function<String, FigureBound.Best> bounds) {
        return inOrder(criterion -> {
            if (isOfPart(criterion)) {
                return Optional.ofNullable(ofPart.get(criterion.id()));
            }
            if (criterion.id().equals(Criterion.POWER)) {
                return Double.isNaN(power) ? Optional.empty() : Optional.of(power);
            }
            FigureBound.Best bound = bounds.apply(NAMED.getOrDefault(criterion.id(), criterion.id()));
            return bound.missing() ? Optional.empty() : Optional.of(bound.value().orElse(criterion.better() == Better.HIGHER
                    ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY));
        });
    }

    private Map<String, Double> inOrder(Function<Criterion, Optional<Double>> value) {
        Map<String, Double> values = new LinkedHashMap<>();
        criteria.forEach(criterion -> value.apply(criterion).ifPresent(known -> values.put(criterion.id(), known)));
        return values;
    }

    private static boolean isOfPart(Criterion criterion) {
        return OF_THE_PART.contains(criterion);
    }

    private Optional<Double> worst(Criterion criterion, List<Figure> figures) {
        Comparator<Double> size = Comparator.naturalOrder();
        return figures.stream().filter(figure -> !criterion.id().equals(Criterion.POWER) || figure.place().equals(bank))
                .map(Figure::value).max(criterion.better() == Better.HIGHER ? size.reversed() : size);
    }

    /** The weighted mean of the steps by all criteria with a weight that are known. */
    double steps(Map<String, Double> values) {
        double steps = 0;
        for (Criterion criterion : criteria) {
            double weight = weights.getOrDefault(criterion.id(), 0.0);
            Double value = values.get(criterion.id());
            if (weight > 0 && value != null) {
                steps += weight * (value == Double.NEGATIVE_INFINITY ? Double.NEGATIVE_INFINITY : criterion.steps(value));
            }
        }
        return steps / sum;
    }

    /** How many criteria with a weight are not known. */
    int unknown(Map<String, Double> values) {
        return (int) criteria.stream().filter(criterion -> weights.getOrDefault(criterion.id(), 0.0) > 0
                && !values.containsKey(criterion.id())).count();
    }

    /** Whether one set of values is as good as another by every criterion, and better by one; what is not known is worst. */
    boolean dominates(Map<String, Double> one, Map<String, Double> other) {
        boolean better = false;
        for (Criterion criterion : criteria) {
            double a = badness(criterion, one);
            double b = badness(criterion, other);
            if (a > b) {
                return false;
            }
            better |= a < b;
        }
        return better;
    }

    private static double badness(Criterion criterion, Map<String, Double> values) {
        Double value = values.get(criterion.id());
        return value == null ? Double.POSITIVE_INFINITY : criterion.better() == Better.HIGHER ? -value : value;
    }

    /** The currency of most parts that state a price; of equally many the first by name. */
    static Optional<String> currency(Map<String, Integer> counts) {
        return counts.entrySet().stream().max(Map.Entry.<String, Integer>comparingByValue().thenComparing(Map.Entry.<String, Integer>comparingByKey().reversed()))
                .map(Map.Entry::getKey);
    }
}
