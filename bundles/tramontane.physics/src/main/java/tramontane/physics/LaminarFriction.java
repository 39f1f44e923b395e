package tramontane.physics;

/**
 * Friction of laminar flow in a duct from its entry on, as f·Re (Darcy, on the hydraulic diameter d), mean over a length L.
 *
 * <p>It depends on u = Re d/L alone: 0 for fully developed flow, large where the duct ends before the flow has developed.
 */
public sealed interface LaminarFriction {

    /**
     * f·Re.
     *
     * @param u Re d/L, not negative
     */
    double product(double u);

    /**
     * Slope of {@link #product} in u.
     *
     * @param u Re d/L, not negative
     */
    double slope(double u);

    /**
     * Flow that is developed all along.
     *
     * @param developed f·Re
     */
    record Developed(double developed) implements LaminarFriction {

        public Developed {
            Resistance.requirePositive("f·Re", developed);
        }

        @Override
        public double product(double u) {
            return developed;
        }

        @Override
        public double slope(double u) {
            return 0;
        }
    }

    /**
     * Flow that develops from an even velocity at the entry, by R. K. Shah, "A correlation for laminar hydrodynamic entry length
     * solutions for circular and noncircular ducts", J. Fluids Eng. 100 (1978) 177-179: with x = 1/u, Fanning,
     * f·Re = 3.44/√x + [f·Re + K/(4x) - 3.44/√x]/(1 + C/x²). Within some 2.4 % of solutions of the equations of motion.
     *
     * @param developed f·Re of the developed flow, Darcy
     * @param entryLoss K, head lost by developing
     * @param constant  C
     */
    record Shah(double developed, double entryLoss, double constant) implements LaminarFriction {

        /** Short over long side: parallel plates, 5:1, 2:1, square. */
        private static final double[] ASPECT = {0, 0.2, 0.5, 1};
        private static final MonotoneCurve ENTRY_LOSS = MonotoneCurve.of(ASPECT, new double[] {0.674, 0.931, 1.28, 1.43});
        private static final MonotoneCurve CONSTANT = MonotoneCurve.of(ASPECT, new double[] {2.9e-5, 7.6e-5, 2.1e-4, 2.9e-4});

        public Shah {
            Resistance.requirePositive("f·Re", developed);
            Resistance.requirePositive("head lost by developing", entryLoss);
            Resistance.requirePositive("constant", constant);
        }

        /** A round duct. */
        public static Shah round() {
            return new Shah(Friction.LAMINAR_ROUND, 1.25, 0.000212);
        }

        /**
         * A rectangular duct. Both constants are interpolated without overshoot between those that Shah gives for parallel
         * plates, 5:1, 2:1 and the square.
         *
         * @param aspect short over long side; 0 for parallel plates, to 1
         */
        public static Shah rectangle(double aspect) {
            return new Shah(Friction.laminarRectangle(aspect), ENTRY_LOSS.value(aspect), CONSTANT.value(aspect));
        }

        @Override
        public double product(double u) {
            double square = constant * u * u;
            return (4 * 3.44 * Math.sqrt(u) * square + developed + entryLoss * u) / (1 + square);
        }

        @Override
        public double slope(double u) {
            double square = constant * u * u;
            double below = 1 + square;
            double entry = 4 * 3.44 * constant * u * Math.sqrt(u) * (2.5 + 0.5 * square);
            return (entry + entryLoss * below - 2 * constant * u * (developed + entryLoss * u)) / (below * below);
        }
    }

    /**
     * Flow that develops between plates, by J. R. Culham, Y. S. Muzychka, "Optimization of plate fin heat sinks using entropy
     * generation minimization", IEEE Trans. Components Packaging Technol. 24 (2001) 159-165: with x = 1/u, Fanning,
     * f·Re = √[(3.44/√x)² + (f·Re)²].
     *
     * @param developed f·Re of the developed flow, Darcy
     */
    record CulhamMuzychka(double developed) implements LaminarFriction {

        /** (4 · 3.44)² */
        private static final double ENTRY = 13.76 * 13.76;

        public CulhamMuzychka {
            Resistance.requirePositive("f·Re", developed);
        }

        /**
         * A channel between two fins: their polynomial for f·Re of a rectangle.
         *
         * @param aspect width over height of the channel, above 0, to 1
         */
        public static CulhamMuzychka channel(double aspect) {
            if (!(aspect > 0 && aspect <= 1)) {
                throw new IllegalArgumentException("short over long side must be above 0, to 1, got " + aspect);
            }
            return new CulhamMuzychka(4 * (24 + aspect * (-32.527 + aspect * (46.721 + aspect * (-40.829
                    + aspect * (22.954 - 6.089 * aspect))))));
        }

        @Override
        public double product(double u) {
            return Math.sqrt(ENTRY * u + developed * developed);
        }

        @Override
        public double slope(double u) {
            return ENTRY / 2 / product(u);
        }
    }
}
