package tramontane.catalogue.internal;

import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.model.FormReader;
import tramontane.model.Quantity;
import tramontane.model.Value;
import tramontane.physics.units.QuantityKind;

/**
 * A rated life as a section {@code life} states it, and the L10 at 40 °C that it stands for, between two ends where the shape of the
 * distribution or the factor per 10 K is not stated. Times in s.
 *
 * @param rated     as it is stated
 * @param statistic which life that is: L1, L10, L50 or MTTF
 * @param shaped    whether the shape of the distribution is stated
 * @param l10       the L10 at the temperature of the rating
 * @param at        air temperature of the rating, K; 40 °C where not stated
 * @param mild      the L10 at 40 °C
 */
public record StatedLife(double rated, String statistic, boolean shaped, Ends l10, double at, Ends mild) {

    /** Temperature that lives of small air movers are compared at, K; that of most ratings, too. */
    public static final double MILD = 273.15 + 40;

    /** Weibull shapes that are met in small bearings where none is stated; common practice. */
    public static final double LOWEST_SHAPE = 1.1;
    /** See {@link #LOWEST_SHAPE}. */
    public static final double HIGHEST_SHAPE = 3.5;

    /** Factors per 10 K that are met where none is stated; common practice. */
    private static final Ends FACTORS = new Ends(1.3, 2);

    /** Boltzmann constant, J/K; SI Brochure, 9th edition (2019), exact. */
    private static final double BOLTZMANN = 1.380649e-23;

    /** The least of the gamma function, at 1.4616; from 1 to 2 it is nowhere above one. */
    private static final double LEAST_GAMMA = 0.8856;

    /**
     * Two ends.
     *
     * @param least the lower
     * @param most  the upper
     */
    public record Ends(double least, double most) {

        static Ends of(double one, double other) {
            return new Ends(Math.min(one, other), Math.max(one, other));
        }

        Ends times(Ends others) {
            return new Ends(least * others.least, most * others.most);
        }
    }

    /**
     * What a section states; empty where there is no rated life that can be read, where its law makes nothing of it, or where it is a mean
     * of a distribution with a shape below one.
     *
     * @param life the section as it is written
     */
    public static Optional<StatedLife> of(Value.Tree life) {
        String law = life.text("law").orElse("");
        OptionalDouble rated = positive(life, "rated", QuantityKind.TIME);
        if (rated.isEmpty() || law.equals("ISO 281") || law.equals("MIL-HDBK-217F")) {
            return Optional.empty();
        }
        String statistic = life.get("statistic").isEmpty() ? "L10" : life.text("statistic").orElse("");
        OptionalDouble stated = positive(life, "shape", QuantityKind.NUMBER);
        Ends shapes = stated.isPresent() ? new Ends(stated.getAsDouble(), stated.getAsDouble()) : new Ends(LOWEST_SHAPE, HIGHEST_SHAPE);
        double at = positive(life, "at", QuantityKind.TEMPERATURE).orElse(MILD);
        Ends cooler = at == MILD ? new Ends(1, 1) : cooler(life, law, at);
        double once = rated.getAsDouble();
        return shares(statistic, shapes).map(share -> share.times(new Ends(once, once)))
                .map(l10 -> new StatedLife(once, statistic, stated.isPresent(), l10, at, l10.times(cooler)));
    }

    /**
     * The L10 over a life of a Weibull distribution: {@code (ln(1/0.9)/ln(1/(1-F)))^(1/β)}; the mean is {@code Γ(1 + 1/β)} characteristic
     * lives.
     */
    private static Optional<Ends> shares(String statistic, Ends shapes) {
        return switch (statistic) {
            case "L10" -> Optional.of(new Ends(1, 1));
            case "L1" -> Optional.of(share(0.01, shapes));
            case "L50" -> Optional.of(share(0.5, shapes));
            case "MTTF" -> shapes.least() < 1 ? Optional.empty()
                    : Optional.of(share(1 - Math.exp(-1), shapes)).map(share -> new Ends(share.least(), share.most() / LEAST_GAMMA));
            default -> Optional.empty();
        };
    }

    private static Ends share(double failed, Ends shapes) {
        double ratio = Math.log1p(-0.1) / Math.log1p(-failed);
        return Ends.of(Math.pow(ratio, 1 / shapes.least()), Math.pow(ratio, 1 / shapes.most()));
    }

    /** By what factor life at 40 °C is longer than at the temperature of the rating. */
    private static Ends cooler(Value.Tree life, String law, double at) {
        OptionalDouble energy = positive(life, "activationEnergy", QuantityKind.ACTIVATION_ENERGY);
        if (law.equals("Arrhenius") && energy.isPresent()) {
            double factor = Math.exp(energy.getAsDouble() / BOLTZMANN * (1 / MILD - 1 / at));
            return new Ends(factor, factor);
        }
        OptionalDouble stated = law.isEmpty() || law.equals("factor per 10 K") ? positive(life, "factor", QuantityKind.NUMBER)
                : OptionalDouble.empty();
        double tens = (at - MILD) / 10;
        return Ends.of(Math.pow(stated.orElse(FACTORS.least()), tens), Math.pow(stated.orElse(FACTORS.most()), tens));
    }

    private static OptionalDouble positive(Value.Tree life, String field, QuantityKind kind) {
        return life.get(field).flatMap(value -> FormReader.quantity(value, kind)).map(Quantity::si).filter(value -> value > 0).stream()
                .mapToDouble(Double::doubleValue).findFirst();
    }
}
