package tramontane.physics;

/**
 * A passage known by measured points of flow and pressure drop, at any density and viscosity.
 *
 * <p>One point gives a square law. More points give a smooth rising curve through the origin; where the drop per flow
 * does not fall, as in every passage between laminar and turbulent, it is the drop per flow that is interpolated, so
 * that a table of {@code a q + b q²} with a above zero comes back exactly, also beyond its last point.
 *
 * <p>Other air is taken by Reynolds similarity: {@code Δp ρ/μ²} is a function of {@code q ρ/μ} alone. At equal flow
 * the square part goes with density and the linear part with viscosity.
 *
 * <p>Drop is odd in the flow, strictly increasing and smooth, with a positive slope at rest.
 */
public final class MeasuredResistance {

    /** Flow below which a law from a single point turns linear, over that point's flow. */
    private static final double TRANSITION = 0.01;
    /** Least drop per flow at rest over that of the first point: a solver needs some. */
    private static final double LEAST_AT_REST = 1e-3;

    private final Law law;
    private final double density;
    private final double viscosity;

    private MeasuredResistance(Law law, double density, double viscosity) {
        this.law = law;
        this.density = density;
        this.viscosity = viscosity;
    }

    private sealed interface Law {

        double drop(double flow);

        double slope(double flow);
    }

    private record Square(double coefficient, double transitionFlow) implements Law {

        @Override
        public double drop(double flow) {
            return Resistance.drop(flow, coefficient, transitionFlow);
        }

        @Override
        public double slope(double flow) {
            return Resistance.slope(flow, coefficient, transitionFlow);
        }
    }

    /** Drop per flow as a curve that does not fall, hence a drop that rises. */
    private record PerFlow(MonotoneCurve curve) implements Law {

        @Override
        public double drop(double flow) {
            return flow * curve.value(Math.abs(flow));
        }

        @Override
        public double slope(double flow) {
            double size = Math.abs(flow);
            return curve.value(size) + size * curve.slope(size);
        }
    }

    /** Drop itself as a curve, made over flow of both signs to be smooth at rest. */
    private record Direct(MonotoneCurve curve) implements Law {

        @Override
        public double drop(double flow) {
            return Math.copySign(curve.value(Math.abs(flow)), flow); // odd to the last digit
        }

        @Override
        public double slope(double flow) {
            return curve.slope(Math.abs(flow));
        }
    }

    /**
     * Law through measured points.
     *
     * @param flow      m³/s, positive and strictly increasing; a first point at the origin is understood
     * @param drop      Pa, positive and strictly increasing
     * @param density   density at the measurement, kg/m³
     * @param viscosity dynamic viscosity at the measurement, Pa s
     * @return the law
     */
    public static MeasuredResistance of(double[] flow, double[] drop, double density, double viscosity) {
        Resistance.requirePositive("density", density);
        Resistance.requirePositive("viscosity", viscosity);
        if (flow.length != drop.length) {
            throw new IllegalArgumentException(flow.length + " flows but " + drop.length + " pressure drops");
        }
        int skip = flow.length > 0 && flow[0] == 0 && drop[0] == 0 ? 1 : 0;
        int n = flow.length - skip;
        if (n == 0) {
            throw new IllegalArgumentException("a measured resistance needs a point beside the origin");
        }
        // with the origin in front
        double[] q = new double[n + 1];
        double[] p = new double[n + 1];
        for (int i = 1; i <= n; i++) {
            q[i] = flow[i - 1 + skip];
            p[i] = drop[i - 1 + skip];
            if (!(q[i] > q[i - 1] && p[i] > p[i - 1]) || !Double.isFinite(q[i]) || !Double.isFinite(p[i])) {
                throw new IllegalArgumentException("flow and drop must both increase from the origin, got (" + q[i - 1]
                        + ", " + p[i - 1] + ") then (" + q[i] + ", " + p[i] + ")");
            }
        }
        return new MeasuredResistance(law(q, p), density, viscosity);
    }

    private static Law law(double[] q, double[] p) {
        int n = q.length - 1;
        if (n == 1) {
            return new Square(p[1] / (q[1] * q[1]), TRANSITION * q[1]);
        }
        double[] perFlow = new double[n + 1];
        boolean rising = true;
        for (int i = 1; i <= n; i++) {
            perFlow[i] = p[i] / q[i];
            // level within rounding counts as level
            rising &= perFlow[i] >= perFlow[i - 1] * (1 - 1e-12);
            perFlow[i] = Math.max(perFlow[i], perFlow[i - 1]);
        }
        if (rising) {
            double straight = perFlow[1] - (perFlow[2] - perFlow[1]) / (q[2] - q[1]) * q[1];
            perFlow[0] = Math.max(straight, LEAST_AT_REST * perFlow[1]);
            return new PerFlow(MonotoneCurve.of(q, perFlow));
        }
        double[] bothQ = new double[2 * n + 1];
        double[] bothP = new double[2 * n + 1];
        for (int i = 0; i <= n; i++) {
            bothQ[n + i] = q[i];
            bothP[n + i] = p[i];
            bothQ[n - i] = -q[i];
            bothP[n - i] = -p[i];
        }
        MonotoneCurve curve = MonotoneCurve.of(bothQ, bothP);
        double end = Math.max(curve.slope(q[n]), LEAST_AT_REST * p[n] / q[n]);
        return new Direct(curve.withEnds(end, end));
    }

    /**
     * Pressure drop.
     *
     * @param flow        volume flow, m³/s, either sign
     * @param ofDensity   density now, kg/m³
     * @param ofViscosity dynamic viscosity now, Pa s
     * @return Pa, of the sign of the flow
     */
    public double drop(double flow, double ofDensity, double ofViscosity) {
        double reynolds = reynolds(ofDensity, ofViscosity);
        double thickness = ofViscosity / viscosity;
        return law.drop(flow * reynolds) * thickness / reynolds;
    }

    /**
     * Slope of the pressure drop.
     *
     * @param flow        volume flow, m³/s, either sign
     * @param ofDensity   density now, kg/m³
     * @param ofViscosity dynamic viscosity now, Pa s
     * @return Pa s/m³, positive
     */
    public double slope(double flow, double ofDensity, double ofViscosity) {
        return law.slope(flow * reynolds(ofDensity, ofViscosity)) * (ofViscosity / viscosity);
    }

    /** Reynolds number now over that of the measurement at equal flow. */
    private double reynolds(double ofDensity, double ofViscosity) {
        return ofDensity * viscosity / (density * ofViscosity);
    }
}
