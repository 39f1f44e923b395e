package tramontane.reliability.statistics;

import org.hipparchus.special.Erf;

/** Axes on which a distribution of lives is a straight line. */
public enum ProbabilityPaper {

    /** {@code ln t} and {@code ln(-ln(1 - F))}; the slope is the shape β. */
    WEIBULL,
    /** {@code ln t} and the normal quantile of F; the slope is 1/σ. */
    LOGNORMAL,
    /** {@code t} and {@code -ln(1 - F)}; the line goes through the origin and its slope is the failure rate. */
    EXPONENTIAL;

    /** Place of a time along the axis of lives. */
    public double abscissa(double time) {
        return this == EXPONENTIAL ? time : Math.log(time);
    }

    /** Place of a share failed, above 0 and below 1, along the other axis. */
    public double ordinate(double failed) {
        return ordinateOfHazard(-Math.log1p(-failed));
    }

    /** Place of a cumulative hazard {@code -ln(1 - F)} along the other axis. */
    double ordinateOfHazard(double hazard) {
        return switch (this) {
            case WEIBULL -> Math.log(hazard);
            case LOGNORMAL -> -Math.sqrt(2) * Erf.erfcInv(-2 * Math.expm1(-hazard));
            case EXPONENTIAL -> hazard;
        };
    }

    /**
     * The distribution that is this line.
     *
     * @param slope     above zero
     * @param intercept ordinate where the abscissa is 0; of no account on exponential paper
     */
    LifeDistribution distribution(double slope, double intercept) {
        return switch (this) {
            case WEIBULL -> new Weibull(Math.exp(-intercept / slope), slope);
            case LOGNORMAL -> new Lognormal(Math.exp(-intercept / slope), 1 / slope);
            case EXPONENTIAL -> new Exponential(1 / slope);
        };
    }
}
