package tramontane.reliability.cli.internal;

import java.util.List;
import java.util.Optional;
import tramontane.cli.terminal.Ending;
import tramontane.cli.terminal.Syntax;
import tramontane.physics.units.QuantityKind;
import tramontane.reliability.bearing.LifeFactor;

/**
 * How a test is hotter than what its life is wanted for.
 *
 * @param acceleration how many times as fast units age in the test
 * @param testAt       K
 * @param ratedAt      K
 * @param words        the law
 */
record Relation(double acceleration, double testAt, double ratedAt, String words) {

    private static final String FACTOR = "--factor";
    private static final String ENERGY = "--energy";
    private static final String TEST_AT = "--test-at";
    private static final String RATED_AT = "--rated-at";

    static Syntax options(Syntax syntax) {
        return syntax.option(TEST_AT, "TEMPERATURE", "The test runs at this air temperature.")
                .option(RATED_AT, "TEMPERATURE", "The life is wanted at this air temperature.")
                .option(FACTOR, "NUMBER", "Life falls by this factor with each 10 K more.")
                .option(ENERGY, "ENERGY", "Or life follows Arrhenius with this activation energy, \"0.4 eV\".");
    }

    /** Empty where the test runs at the temperature that the life is wanted at. */
    static Optional<Relation> of(Syntax.Given given) throws Ending {
        Optional<Double> testAt = Amounts.positive(given, TEST_AT, QuantityKind.TEMPERATURE);
        Optional<Double> ratedAt = Amounts.positive(given, RATED_AT, QuantityKind.TEMPERATURE);
        Optional<Double> factor = Amounts.between(given, FACTOR, 1, 10);
        Optional<Double> energy = Amounts.positive(given, ENERGY, QuantityKind.ACTIVATION_ENERGY);
        if (factor.isPresent() && energy.isPresent()) {
            throw Ending.badInput(FACTOR + " and " + ENERGY + " say the same in two ways; give one.");
        }
        long count = List.of(testAt, ratedAt, factor.or(() -> energy)).stream().filter(Optional::isPresent).count();
        if (count == 0) {
            return Optional.empty();
        }
        if (count < 3) {
            throw Ending.badInput("For a test at another temperature " + TEST_AT + ", " + RATED_AT + " and " + FACTOR + " (or " + ENERGY
                    + ") belong together; missing: " + (testAt.isEmpty() ? TEST_AT : ratedAt.isEmpty() ? RATED_AT : FACTOR) + ".");
        }
        double longer = factor.isPresent() ? LifeFactor.perTenKelvin(factor.get(), testAt.get(), ratedAt.get())
                : LifeFactor.arrhenius(energy.get(), testAt.get(), ratedAt.get());
        if (!(longer > 1e-9 && longer < 1e9)) {
            throw Ending.badInput((factor.isPresent() ? FACTOR : ENERGY) + ": units would age " + Cells.plain(longer)
                    + " times as fast in the test;"
                    + " expected less than 1000000000 times.");
        }
        return Optional.of(new Relation(longer, testAt.get(), ratedAt.get(), factor.isPresent() ? "factor " + Cells.written(factor.get())
                + " per 10 K"
                : "Arrhenius with " + Cells.text(energy.get(), QuantityKind.ACTIVATION_ENERGY)));
    }
}
