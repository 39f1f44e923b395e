package tramontane.engine.internal;

/**
 * A service of another bundle.
 *
 * @param service the service
 * @param id      its service id
 * @param ranking its service ranking
 * @param bundle  symbolic name and version of its bundle
 */
record Extension<S>(S service, long id, int ranking, String bundle) {

    /** Whether this one counts where both offer the same: higher ranked, or registered earlier. */
    boolean before(Extension<?> other) {
        return ranking != other.ranking ? ranking > other.ranking : id < other.id;
    }

    // comparing what a foreign object makes of equals would hand control to it
    @Override
    public boolean equals(Object other) {
        return other instanceof Extension<?> extension && service == extension.service && id == extension.id
                && ranking == extension.ranking && bundle.equals(extension.bundle);
    }

    @Override
    public int hashCode() {
        return Long.hashCode(id);
    }
}
