package tramontane.analysis;

/** Which way a figure is better. */
public enum Better {
    /** The larger, the better: flow. */
    HIGHER,
    /** The smaller, the better: temperature, noise. */
    LOWER,
    /** Neither; it describes. */
    NEITHER
}
