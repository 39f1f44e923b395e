package tramontane.selection;

import tramontane.analysis.Amount;
import tramontane.analysis.Figure;
import tramontane.analysis.Judgement;
import tramontane.analysis.Sentence;
import tramontane.analysis.Verdict;
import tramontane.physics.units.QuantityKind;

/** What a verdict with a figure has to spare, as people compare it. */
public final class Spare {

    /** Less than this share of its limit is just met. */
    private static final double HAIR = 0.01;
    private static final double HAIR_KELVIN = 0.5;

    private Spare() {
    }

    /**
     * The margin of a verdict: of a temperature in K, as a share of it says nothing; else over the limit; in the figure's own unit
     * where the limit is zero. Negative where it does not hold.
     *
     * @param verdict one with a figure
     */
    public static Amount of(Verdict verdict) {
        Figure figure = verdict.figure().orElseThrow();
        QuantityKind kind = figure.kind().quantity();
        if (kind.equals(QuantityKind.TEMPERATURE) || kind.equals(QuantityKind.TEMPERATURE_DIFFERENCE)) {
            return new Amount(verdict.margin(), QuantityKind.TEMPERATURE_DIFFERENCE);
        }
        double limit = Math.abs(verdict.requirement().atLeast().or(() -> verdict.requirement().atMost())
                .map(each -> Judgement.limit(each, figure.kind())).orElse(0.0));
        return limit == 0 ? new Amount(verdict.margin(), kind) : new Amount(verdict.margin() / limit, QuantityKind.FRACTION);
    }

    /** Whether it is so near its limit that nobody would count on the rest: within 1 %, or half a kelvin. */
    public static boolean isHair(Verdict verdict) {
        Amount spare = of(verdict);
        double share = Math.abs(spare.si());
        QuantityKind kind = spare.quantity();
        return kind.equals(QuantityKind.TEMPERATURE_DIFFERENCE) ? share < HAIR_KELVIN
                : kind.equals(QuantityKind.FRACTION) && !isOfNoLimit(verdict) && share < HAIR;
    }

    private static boolean isOfNoLimit(Verdict verdict) {
        return verdict.requirement().atLeast().or(() -> verdict.requirement().atMost())
                .map(each -> Judgement.limit(each, verdict.figure().orElseThrow().kind()) == 0).orElse(true);
    }

    /** In words: {@code just met}, {@code 12.0 % to spare}, {@code 3.10 K to spare}. */
    public static Sentence words(Verdict verdict) {
        Amount spare = of(verdict);
        return isHair(verdict) ? Sentence.of("just met") : Sentence.of(new Amount(Math.abs(spare.si()), spare.quantity()),
                spare.si() < 0 ? " off" : " to spare");
    }

    /** What a verdict is about: {@code flow at fans in hot day}. */
    public static String about(Verdict verdict) {
        Figure figure = verdict.figure().orElseThrow();
        return figure.kind().label() + (figure.place().isEmpty() ? "" : " at " + figure.place())
                + (figure.condition().isEmpty() ? "" : " in " + figure.condition());
    }
}
