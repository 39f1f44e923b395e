package tramontane.catalogue.internal;

/** Something that the quick way leaves to the thorough one: wrong, or right and rare. Says nothing, costs nothing. */
final class Odd extends Exception {

    private static final long serialVersionUID = 1L;

    /** The only one. */
    static final Odd FOUND = new Odd();

    private Odd() {
        super("left to the thorough reader", null, false, false);
    }
}
