package tramontane.selection.internal;

import tramontane.analysis.Engine;

/** Cancels with another watch, and tells it nothing. */
record Silent(Engine.Watch watch) implements Engine.Watch {

    @Override
    public boolean cancelled() {
        return watch.cancelled();
    }

    @Override
    public void progress(double fraction, String message) {
        // how far one of many runs has come nobody wants to know
    }
}
