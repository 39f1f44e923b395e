package tramontane.selection.desktop.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tramontane.analysis.Finding;
import tramontane.analysis.Severity;
import tramontane.selection.Candidate;
import tramontane.selection.Selection;
import tramontane.selection.Task;

/**
 * How a choice stands.
 *
 * @param status    how
 * @param task      what was asked; empty before anything was
 * @param fraction  done, 0 to 1
 * @param message   what is being done
 * @param judged    how many were judged exactly
 * @param may       how many are known that may do
 * @param found     those found so far that meet everything, best first
 * @param selection the answer; of a stopped choice what there was
 * @param sentence  why it failed, and what to do about it; empty otherwise
 */
record Choosing(Status status, Optional<Task> task, double fraction, String message, int judged, int may, List<Candidate> found,
        Optional<Selection> selection, String sentence) {

    /** How a choice stands. */
    enum Status {
        /** Nobody asked yet. */
        NOT_STARTED,
        /** At work. */
        RUNNING,
        /** The answer is there. */
        DONE,
        /** Left early. */
        STOPPED,
        /** There is no answer. */
        FAILED
    }

    static final Choosing NOT_STARTED = new Choosing(Status.NOT_STARTED, Optional.empty(), 0, "", 0, 0, List.of(), Optional.empty(), "");

    Choosing {
        found = List.copyOf(found);
    }

    static Choosing started(Task task) {
        return new Choosing(Status.RUNNING, Optional.of(task), 0, "", 0, 0, List.of(), Optional.empty(), "");
    }

    /** One that could not be started. */
    static Choosing failed(String sentence) {
        return new Choosing(Status.FAILED, Optional.empty(), 0, "", 0, 0, List.of(), Optional.empty(), sentence);
    }

    boolean isRunning() {
        return status == Status.RUNNING;
    }

    Choosing progress(double share, String doing) {
        return new Choosing(status, task, Math.max(fraction, share), doing, judged, may, found, selection, sentence);
    }

    Choosing judged(int so, int of) {
        return new Choosing(status, task, fraction, message, so, of, found, selection, sentence);
    }

    Choosing found(Candidate candidate) {
        List<Candidate> more = new ArrayList<>(found);
        more.add(candidate);
        more.sort(Candidate.BEST_FIRST);
        return new Choosing(status, task, fraction, message, judged, may, more, selection, sentence);
    }

    /** The end: done, stopped, or failed where the answer says that nothing could be chosen. */
    Choosing ended(Selection answer) {
        String wrong = answer.findings().stream().filter(finding -> finding.severity() == Severity.ERROR).findFirst().map(Choosing::sentence).orElse("");
        Status end = answer.cancelled() ? Status.STOPPED : wrong.isEmpty() ? Status.DONE : Status.FAILED;
        return new Choosing(end, task, 1, "", end == Status.DONE ? answer.counts().exact() : judged, end == Status.DONE ? answer.counts().may() : may,
                found, Optional.of(answer), wrong);
    }

    /** The end by a fault. */
    Choosing broken(Throwable fault) {
        return new Choosing(Status.FAILED, task, fraction, "", judged, may, found, Optional.empty(), "the choice failed: "
                + Optional.ofNullable(fault.getMessage()).filter(message -> !message.isBlank()).orElse(fault.getClass().getSimpleName()));
    }

    private static String sentence(Finding finding) {
        return finding.message() + (finding.remedy().isEmpty() ? "" : "; " + finding.remedy());
    }

    /** How it stands, for people. */
    String words() {
        return switch (status) {
            case NOT_STARTED -> "not started";
            case RUNNING -> (may > 0 ? judged + " of " + may + " judged" : message.isEmpty() ? "starting" : message)
                    + (found.isEmpty() ? "" : ", " + found.size() + (found.size() == 1 ? " meets " : " meet ") + met());
            case DONE -> done(selection.orElseThrow());
            case STOPPED -> "stopped: " + judged + " of " + may + " judged, " + found.size() + (found.size() == 1 ? " meets " : " meet ")
                    + met() + " so far; there may be better ones";
            case FAILED -> sentence;
        };
    }

    private String met() {
        return found.stream().anyMatch(candidate -> candidate.unjudged() > 0) ? "everything that could be judged" : "everything";
    }

    private static String done(Selection selection) {
        Selection.Counts counts = selection.counts();
        return counts.parts() + (counts.parts() == 1 ? " part, " : " parts, ") + counts.arranged() + (counts.arranged() == 1 ? " arrangement: " : " arrangements: ")
                + counts.may() + " may do, " + counts.exact() + " judged exactly, " + counts.meeting()
                + (counts.meeting() == 1 ? " meets " : " meet ") + counts.met();
    }
}
