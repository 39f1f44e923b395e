package tramontane.selection.desktop.internal;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import tramontane.analysis.Sections;
import tramontane.model.Design;
import tramontane.model.Noun;
import tramontane.model.Passage;
import tramontane.model.Quantity;
import tramontane.model.Value;
import tramontane.selection.Task;
import tramontane.selection.Wish;
import tramontane.selection.WishSection;

/** Keeps what is asked of a choice in the design: the section of the bank that a choice for it reads. */
final class Keeping {

    private static final WishSection TYPE = new WishSection();
    private static final String NAME = TYPE.form().name();

    private Keeping() {
    }

    /**
     * The design with what is asked kept in it, as far as it differs from what is asked where a design says nothing. Weights of what has
     * no field, as nothing loaded tells it, and what else stands in the section stay.
     *
     * @param design the design
     * @param asked  what is asked
     * @param told   the criteria and figures that anything loaded tells
     * @return empty where something that is typed, or that stands in the section, cannot be read
     */
    static Optional<Design> in(Design design, Asked asked, Set<String> told) {
        Map<String, String> problems = new LinkedHashMap<>();
        Wish wish = asked.wish(told, problems);
        Optional<Passage> bank = design.airPath().passage(asked.bank()).filter(Passage::isBank)
                .filter(passage -> passage.section(NAME).isEmpty() || Sections.decode(TYPE, passage).isPresent());
        if (bank.isEmpty() || !problems.isEmpty()) {
            return Optional.empty();
        }
        Wish before = WishSection.of(design, asked.bank());
        return Optional.of(with(design, bank.get(), TYPE.encode(least(wish, weights(asked, wish.weights(), before.weights()), before.more()))));
    }

    /** The design without anything that is kept for a choice for one of its banks. */
    static Design without(Design design, String bank) {
        return design.airPath().passage(bank).map(passage -> with(design, passage, Value.Tree.EMPTY)).orElse(design);
    }

    private static Design with(Design design, Passage bank, Value.Tree section) {
        Value.Tree sections = bank.parameters().tree(Noun.SECTIONS).orElse(Value.Tree.EMPTY);
        if (sections.isEmpty() && section.isEmpty()) {
            return design;
        }
        Value.Tree changed = section.isEmpty() ? sections.without(NAME) : sections.with(NAME, section);
        return design.withAirPath(design.airPath().withPassage(bank.withParameters(
                changed.isEmpty() ? bank.parameters().without(Noun.SECTIONS) : bank.parameters().with(Noun.SECTIONS, changed))));
    }

    /** Without what would be so anyway. */
    private static Wish least(Wish wish, Map<String, Double> weights, Value.Tree more) {
        Optional<Quantity> lowest = wish.lowest().filter(quantity -> quantity.si() != Task.LOWEST);
        Wish least = new Wish(wish.width(), wish.height(), wish.depth(), wish.columns(), wish.series(), wish.movers(), lowest, wish.where(), weights, more);
        // one that goes may make another one needless, as what is not said of one depends on whether the others are said
        Wish before;
        do {
            before = least;
            for (UnaryOperator<Wish> without : List.<UnaryOperator<Wish>>of(
                    each -> with(each, Optional.empty(), each.series(), each.movers()),
                    each -> with(each, each.columns(), Optional.empty(), each.movers()),
                    each -> with(each, each.columns(), each.series(), Optional.empty()))) {
                Wish less = without.apply(least);
                least = less.space().equals(wish.space()) ? less : least;
            }
        } while (!least.equals(before));
        return least;
    }

    private static Wish with(Wish wish, Optional<Integer> columns, Optional<Integer> series, Optional<Integer> movers) {
        return new Wish(wish.width(), wish.height(), wish.depth(), columns, series, movers, wish.lowest(), wish.where(), wish.weights(), wish.more());
    }

    /** None where all that are told count alike, as they do where nothing is said. */
    private static Map<String, Double> weights(Asked asked, Map<String, Double> typed, Map<String, Double> before) {
        Map<String, Double> kept = new LinkedHashMap<>(typed);
        kept.values().removeIf(weight -> weight == 0);
        Map<String, Double> fieldless = new LinkedHashMap<>(before);
        fieldless.keySet().removeAll(asked.weighed());
        boolean even = typed.entrySet().stream().allMatch(each -> each.getValue() == (Asked.isPlain(each.getKey()) ? 1 : 0));
        if (even && fieldless.isEmpty()) {
            return Map.of();
        }
        kept.putAll(fieldless);
        if (kept.isEmpty()) {
            // that nothing counts is not the same as that nothing is said
            asked.weighed().stream().findFirst().ifPresent(criterion -> kept.put(criterion, 0.0));
        }
        return kept;
    }
}
