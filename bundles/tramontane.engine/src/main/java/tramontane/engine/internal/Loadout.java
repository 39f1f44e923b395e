package tramontane.engine.internal;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;

/**
 * What is loaded, asked for what it says of itself and put in order.
 *
 * @param extensions what is loaded
 * @param order      the analyses in order
 * @param unused     analyses that stand behind another of the same name
 */
record Loadout(Extensions extensions, Order order, List<Card> unused) {

    /** Puts cards in order. */
    static Loadout of(Extensions extensions, List<Card> cards) {
        Map<String, Card> used = new TreeMap<>();
        for (Card card : cards) {
            used.merge(card.id(), card, (a, b) -> a.fault().isPresent() != b.fault().isPresent()
                    ? (a.fault().isEmpty() ? a : b) : a.extension().before(b.extension()) ? a : b);
        }
        List<Card> unused = new ArrayList<>();
        for (Card card : cards) {
            Card other = used.get(card.id());
            if (other != card) {
                unused.add(card.faulty(card.name() + " is not used: bundle " + other.bundle()
                        + " gives an analysis of the same name"));
            }
        }
        List<Card> sharing = used.values().stream().map(card -> foreignFigure(card, used.values())
                .map(why -> card.faulty(card.name() + " is not used: " + why)).orElse(card)).toList();
        return new Loadout(extensions, new Order(sharing), List.copyOf(unused));
    }

    /**
     * Why an analysis may not give one of its figures. A figure has one meaning: only analyses that give the same type of data,
     * of which one stands in for the other, may both give it.
     */
    private static Optional<String> foreignFigure(Card card, Collection<Card> all) {
        return all.stream().filter(other -> other != card && other.fault().isEmpty() && card.fault().isEmpty()
                && !other.gives().equals(card.gives()) && other.extension().before(card.extension()))
                .flatMap(other -> card.figures().stream().map(FigureKind::id).filter(other::declares)
                        .map(id -> "figure " + id + " belongs to " + other.name()))
                .findFirst();
    }

    /** All analyses by id. */
    List<Card> all() {
        return Stream.concat(order.sequence().stream(), unused.stream())
                .sorted(Comparator.comparing(Card::id).thenComparing(card -> card.extension().id())).toList();
    }

    /** All figures that anything can give. */
    List<FigureKind> figures() {
        return order.sequence().stream().flatMap(card -> card.figures().stream()).distinct().toList();
    }

    /** What is wrong with what is loaded, whatever the design. */
    List<Finding> findings() {
        return Stream.concat(extensions.broken().stream(), unused.stream().flatMap(card -> card.fault().stream()))
                .map(Failure::finding).toList();
    }
}
