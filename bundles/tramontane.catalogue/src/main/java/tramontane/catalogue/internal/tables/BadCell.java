package tramontane.catalogue.internal.tables;

/** What is wrong with one cell, as a sentence without its place. */
final class BadCell extends Exception {

    private static final long serialVersionUID = 1L;

    private final boolean isUnitMissing;

    BadCell(String message) {
        this(message, false);
    }

    private BadCell(String message, boolean isUnitMissing) {
        super(message);
        this.isUnitMissing = isUnitMissing;
    }

    /** A number without a unit where one is needed. */
    static BadCell withoutUnit(String message) {
        return new BadCell(message, true);
    }

    /** Whether all that is wrong is that no unit is given. */
    boolean isUnitMissing() {
        return isUnitMissing;
    }
}
