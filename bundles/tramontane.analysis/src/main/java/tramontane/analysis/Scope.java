package tramontane.analysis;

/** How often an analysis runs. */
public enum Scope {
    /** Once for each condition, failed movers expanded to single cases. */
    CONDITION,
    /** Once for the whole design, with the results of every condition at hand. */
    DESIGN
}
