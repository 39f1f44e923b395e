package tramontane.acoustics.cli.internal;

import tramontane.acoustics.recording.Progress;
import tramontane.analysis.Cancelled;
import tramontane.analysis.Engine;

/**
 * A part of the work, shown as such, and ended by Ctrl-C.
 *
 * @param watch   shows and stops
 * @param from    what was done before, 0 to 1
 * @param to      what is done behind it, 0 to 1
 * @param message what is being done
 */
record Stage(Engine.Watch watch, double from, double to, String message) implements Progress {

    @Override
    public void at(double share) {
        if (watch.cancelled()) {
            throw new Cancelled();
        }
        watch.progress(Math.min(to, from + share * (to - from)), message);
    }
}
