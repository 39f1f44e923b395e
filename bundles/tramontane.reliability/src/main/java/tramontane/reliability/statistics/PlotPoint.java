package tramontane.reliability.statistics;

/**
 * A point of a probability plot.
 *
 * @param time   above zero
 * @param failed share that has failed by then, above 0, below 1
 */
public record PlotPoint(double time, double failed) {

    /** Refuses what has no place on probability paper. */
    public PlotPoint {
        Requires.positive("time", time);
        Requires.share("share failed", failed);
    }
}
