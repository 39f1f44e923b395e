package tramontane.cli.terminal;

import tramontane.analysis.Engine;

/**
 * Can be stopped, shows nothing: for {@code --quiet}.
 *
 * @param watch says when to stop
 */
public record QuietWatch(Engine.Watch watch) implements Engine.Watch {

    @Override
    public boolean cancelled() {
        return watch.cancelled();
    }

    @Override
    public void progress(double fraction, String message) {
        // asked to be quiet
    }
}
