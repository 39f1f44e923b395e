package tramontane.desktop;

/** Where a view stands in the standard layout. */
public enum Spot {
    /** Left of the middle: what is in the design. */
    LEFT,
    /** The middle: what is worked on. */
    MIDDLE,
    /** Under the middle: whether it holds. */
    BELOW_MIDDLE,
    /** Right of the middle, above: why. */
    RIGHT,
    /** Right of the middle, below: what can be changed. */
    BELOW_RIGHT,
    /** Along the lower edge: findings, jobs, log. */
    BOTTOM
}
