package tramontane.analysis;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/**
 * A sentence for the engineer with quantities in it, which each reader sees in the units of his choice.
 *
 * <pre>{@code
 * Sentence.of("the filter costs ", new Amount(drop, QuantityKind.PRESSURE), ", half of all");
 * }</pre>
 *
 * @param parts texts and {@link Amount}s, in order
 */
public record Sentence(List<Object> parts) {

    private static final int DIGITS = 3;

    /** Nothing said. */
    public static final Sentence EMPTY = new Sentence(List.of());

    public Sentence {
        parts = List.copyOf(parts);
        for (Object part : parts) {
            if (!(part instanceof String || part instanceof Amount)) {
                throw new IllegalArgumentException("a sentence is made of texts and amounts, got " + part.getClass().getName());
            }
        }
    }

    /** A sentence of texts, {@link Amount}s and other sentences; empty texts are left out. */
    public static Sentence of(Object... parts) {
        return new Sentence(Arrays.stream(parts).flatMap(part -> part instanceof Sentence inner ? inner.parts().stream() : Stream.of(part))
                .filter(part -> !"".equals(part)).toList());
    }

    /** Whether nothing is said. */
    public boolean isEmpty() {
        return parts.isEmpty();
    }

    /** The sentence with its quantities in these units, to three significant digits. */
    public String in(UnitSystem units) {
        StringBuilder text = new StringBuilder();
        for (Object part : parts) {
            text.append(part instanceof Amount amount ? Units.format(amount.si(), amount.quantity(), units, DIGITS) : part);
        }
        return text.toString();
    }

    /** The sentence in SI units, for messages to developers. */
    @Override
    public String toString() {
        return in(UnitSystem.SI);
    }
}
