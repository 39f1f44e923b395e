package tramontane.engine.internal;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Which analysis receives what from which, and the order in which they run. A pure function of the cards.
 *
 * <p>Of several givers of a type the highest ranked counts; one that needs its own type receives what the next lower one
 * gave. An analysis that reads a figure if something gives it runs behind its givers unless that closes a circle.
 */
final class Order {

    private static final Comparator<Card> BY_ID = Comparator.comparing(Card::id)
            .thenComparing(card -> card.extension().id());

    private final List<Card> sequence;
    private final Map<Class<?>, List<Card>> givers = new HashMap<>();
    private final Map<Card, Map<String, List<Card>>> figureGivers = new HashMap<>();
    private final Map<Card, Set<Card>> before = new HashMap<>();
    private final Map<Card, String> rings = new HashMap<>();

    /** Orders cards; those with a fault stand in the order, but give nothing. */
    Order(Collection<Card> all) {
        List<Card> cards = all.stream().sorted(BY_ID).toList();
        for (Card card : cards) {
            before.put(card, new LinkedHashSet<>());
            if (card.fault().isEmpty()) {
                givers.computeIfAbsent(card.gives(), type -> new ArrayList<>()).add(card);
            }
        }
        givers.values().forEach(list -> list.sort((a, b) -> a.extension().before(b.extension()) ? -1
                : b.extension().before(a.extension()) ? 1 : 0));
        for (Card card : cards) {
            card.needs().results().forEach(type -> giver(card, type).ifPresent(before.get(card)::add));
        }
        findRings(cards);
        for (Card card : cards) {
            Map<String, List<Card>> links = new LinkedHashMap<>();
            for (String figure : card.needs().figures()) {
                links.put(figure, cards.stream().filter(giver -> giver != card && giver.declares(figure)
                        && giver.fault().isEmpty() && !reaches(giver, card)).toList());
                before.get(card).addAll(links.get(figure));
            }
            figureGivers.put(card, links);
        }
        sequence = sort(cards);
    }

    /** All analyses, givers before those that need them, else by id. */
    List<Card> sequence() {
        return sequence;
    }

    /** The giver of a type to one who asks from outside. */
    Optional<Card> giver(Class<?> type) {
        return givers.getOrDefault(type, List.of()).stream().findFirst();
    }

    /** The giver of a figure to one who asks from outside: no figure is given by two that do not stand in for each other. */
    Optional<Card> giver(String figure) {
        return sequence.stream().filter(card -> card.fault().isEmpty() && card.declares(figure))
                .filter(card -> above(card).stream().noneMatch(higher -> higher.declares(figure))).findFirst();
    }

    /** The giver of a type to an analysis that needs it. */
    Optional<Card> giver(Card asking, Class<?> type) {
        List<Card> ranked = givers.getOrDefault(type, List.of());
        int own = ranked.indexOf(asking);
        return ranked.stream().skip(own + 1).findFirst();
    }

    /** The givers of a figure that an analysis reads if it is there, by id. */
    List<Card> figureGivers(Card asking, String figure) {
        return figureGivers.get(asking).getOrDefault(figure, List.of());
    }

    /** Everything that must be there before an analysis runs. */
    Set<Card> before(Card card) {
        return before.get(card);
    }

    /** Those that give the same type as an analysis and rank above it. */
    List<Card> above(Card card) {
        List<Card> ranked = givers.getOrDefault(card.gives(), List.of());
        return ranked.subList(0, Math.max(0, ranked.indexOf(card)));
    }

    /** The circle of needs that an analysis stands in, in words; it then never runs. */
    Optional<String> ring(Card card) {
        return Optional.ofNullable(rings.get(card));
    }

    /** These analyses and everything they need or read. */
    Set<Card> closure(Collection<Card> chosen) {
        Set<Card> closed = new LinkedHashSet<>();
        List<Card> open = new ArrayList<>(chosen);
        while (!open.isEmpty()) {
            Card card = open.removeLast();
            if (closed.add(card)) {
                open.addAll(before(card));
            }
        }
        return closed;
    }

    private boolean reaches(Card from, Card to) {
        return closure(List.of(from)).contains(to);
    }

    /** Finds who needs itself by way of others; the way is the shortest, so that the sentence is the same every time. */
    private void findRings(List<Card> cards) {
        for (Card card : cards) {
            way(card).ifPresent(way -> {
                List<String> ids = new ArrayList<>(way.stream().map(Card::id).toList());
                Collections.rotate(ids, -ids.indexOf(Collections.min(ids)));
                ids.add(ids.getFirst());
                rings.put(card, String.join(" needs ", ids));
            });
        }
    }

    /** The shortest way from a card through its needs back to itself, without the second mention of it. */
    private Optional<List<Card>> way(Card start) {
        Map<Card, Card> cameFrom = new HashMap<>();
        List<Card> open = new ArrayList<>(List.of(start));
        for (int i = 0; i < open.size(); i++) {
            for (Card next : before.get(open.get(i))) {
                if (next == start) {
                    List<Card> way = new ArrayList<>();
                    for (Card back = open.get(i); back != null; back = cameFrom.get(back)) {
                        way.addFirst(back);
                    }
                    return Optional.of(way);
                }
                if (!open.contains(next)) {
                    cameFrom.put(next, open.get(i));
                    open.add(next);
                }
            }
        }
        return Optional.empty();
    }

    private List<Card> sort(List<Card> cards) {
        List<Card> sorted = new ArrayList<>();
        Set<Card> placed = new HashSet<>();
        List<Card> open = new ArrayList<>(cards);
        while (!open.isEmpty()) {
            // members of a circle never run and so hold nobody up
            Card next = open.stream().filter(card -> before(card).stream()
                    .allMatch(giver -> placed.contains(giver) || rings.containsKey(giver))).findFirst()
                    .orElseThrow(() -> new IllegalStateException("analyses cannot be ordered"));
            open.remove(next);
            placed.add(next);
            sorted.add(next);
        }
        return List.copyOf(sorted);
    }
}
