package tramontane.selection.cli.internal;

import tramontane.analysis.Engine;
import tramontane.selection.Candidate;
import tramontane.selection.Watch;

/** Shows beside the progress how many candidates were found and which is the best so far. */
final class Progress implements Watch {

    private final Engine.Watch watch;
    private int found;
    private Candidate best;
    private double fraction;
    private String message = "";

    Progress(Engine.Watch watch) {
        this.watch = watch;
    }

    @Override
    public boolean cancelled() {
        return watch.cancelled();
    }

    @Override
    public synchronized void progress(double done, String doing) {
        fraction = Math.max(fraction, done);
        message = doing;
        show();
    }

    @Override
    public synchronized void found(Candidate candidate) {
        found++;
        if (best == null || candidate.unknown() < best.unknown()
                || candidate.unknown() == best.unknown() && candidate.steps() < best.steps()) {
            best = candidate;
        }
        show();
    }

    private void show() {
        watch.progress(fraction, message + (best == null ? "" : "; " + found + " found, best so far " + best.part().id()));
    }
}
