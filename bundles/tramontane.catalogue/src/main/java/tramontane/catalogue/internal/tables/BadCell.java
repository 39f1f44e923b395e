package tramontane.catalogue.internal.tables;

/** What is wrong with one cell, as a sentence without its place. */
final class BadCell extends Exception {

    private static final long serialVersionUID = 1L;

    BadCell(String message) {
        super(message);
    }
}
