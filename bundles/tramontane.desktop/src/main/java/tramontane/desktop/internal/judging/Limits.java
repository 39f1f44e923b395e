package tramontane.desktop.internal.judging;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Judgement;
import tramontane.analysis.Verdict;
import tramontane.desktop.FigureText;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
import tramontane.model.Value;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitException;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/** Requirements and verdicts in words. */
final class Limits {

    private static final int MOST_DIGITS = 12;

    private Limits() {
    }

    /** The limits in the units shown: {@code at least 25.0 m³/h}; as written where they do not fit the figure. */
    static String words(Requirement requirement, Optional<FigureKind> kind, UnitSystem units) {
        List<String> limits = new ArrayList<>();
        requirement.atLeast().ifPresent(limit -> limits.add("at least " + words(limit, kind, units)));
        requirement.atMost().ifPresent(limit -> limits.add("at most " + words(limit, kind, units)));
        return limits.isEmpty() ? "no limit" : String.join(", ", limits);
    }

    /** The same in short, for a column of limits: {@code ≥ 25.0 m³/h}. */
    static String brief(Requirement requirement, Optional<FigureKind> kind, UnitSystem units) {
        return words(requirement, kind, units).replace("at least ", "≥ ").replace("at most ", "≤ ");
    }

    private static String words(Quantity limit, Optional<FigureKind> kind, UnitSystem units) {
        OptionalDouble si = kind.map(known -> si(limit, known)).orElse(OptionalDouble.empty());
        return si.isPresent() ? FigureText.brief(si.getAsDouble(), kind.get().quantity(), units) : switch (limit.written()) {
            case Value.Text text -> text.text();
            case Value.Num num -> num.literal();
            default -> Double.toString(limit.si());
        };
    }

    private static OptionalDouble si(Quantity limit, FigureKind kind) {
        try {
            return OptionalDouble.of(Judgement.limit(limit, kind));
        } catch (UnitException doesNotFit) {
            return OptionalDouble.empty();
        }
    }

    /**
     * The figure that decided, with as many digits more as it takes not to look like the limit that it misses: "not met 80.0 m³/h"
     * under "at least 80.0 m³/h" helps nobody.
     */
    static String value(Verdict verdict, Figure figure, UnitSystem units) {
        double value = figure.value();
        QuantityKind quantity = figure.kind().quantity();
        double missed = verdict.requirement().atLeast().map(limit -> si(limit, figure.kind()).orElse(value)).filter(limit -> value < limit)
                .or(() -> verdict.requirement().atMost().map(limit -> si(limit, figure.kind()).orElse(value)).filter(limit -> value > limit))
                .orElse(value);
        int digits = FigureText.DIGITS;
        String text = Units.format(value, quantity, units, digits);
        while (value != missed && digits < MOST_DIGITS && text.equals(Units.format(missed, quantity, units, digits))) {
            text = Units.format(value, quantity, units, ++digits);
        }
        return text;
    }

    /** How far inside the limit or beyond it. */
    static String margin(Verdict verdict, Figure figure, UnitSystem units) {
        QuantityKind quantity = figure.kind().quantity().equals(QuantityKind.TEMPERATURE) ? QuantityKind.TEMPERATURE_DIFFERENCE
                : figure.kind().quantity();
        String size = FigureText.brief(Math.abs(verdict.margin()), quantity, units);
        return verdict.margin() < 0 ? size + " beyond the limit" : verdict.margin() == 0 ? "right at the limit" : size + " inside the limit";
    }

    /** Between which values the figure may lie; empty where nothing is known of that. */
    static Optional<String> bounds(Figure figure, UnitSystem units) {
        QuantityKind quantity = figure.kind().quantity();
        Optional<String> least = figure.lower().isPresent() ? Optional.of(FigureText.brief(figure.lower().getAsDouble(), quantity, units))
                : Optional.empty();
        Optional<String> most = figure.upper().isPresent() ? Optional.of(FigureText.brief(figure.upper().getAsDouble(), quantity, units))
                : Optional.empty();
        return least.isEmpty() && most.isEmpty() ? Optional.empty()
                : Optional.of(least.map(text -> most.map(other -> text + " to " + other).orElse("down to " + text))
                        .orElseGet(() -> "up to " + most.get()));
    }
}
