package tramontane.selection;

import tramontane.analysis.Engine;

/** How a caller follows a choice, sees candidates as they are found, and ends it. */
public interface Watch extends Engine.Watch {

    /** Watches nothing, never cancels. */
    Watch NONE = new Watch() {
        @Override
        public boolean cancelled() {
            return false;
        }

        @Override
        public void progress(double fraction, String message) {
            // nobody looks
        }
    };

    /**
     * A candidate that meets everything was judged exactly; it may still come too far behind to be listed. Called from one thread
     * at a time, in an order that is the same every time.
     */
    default void found(Candidate candidate) {
        // most wait for the list
    }

    /**
     * Some more candidates were judged exactly. Called from one thread at a time, in an order that is the same every time.
     *
     * @param judged how many were judged so far, whether they meet everything or not; never falls
     * @param may    how many are known so far that may do by the reduced design; not all of them need be judged in the end
     */
    default void judged(int judged, int may) {
        // most look at the share that is done
    }
}
