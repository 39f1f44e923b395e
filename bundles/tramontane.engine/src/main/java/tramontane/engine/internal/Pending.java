package tramontane.engine.internal;

/** A result that is being computed; guarded by the memo. */
final class Pending {

    private final Key key;
    private final Frame frame;
    private boolean over;
    private Answer answer;

    Pending(Key key, Frame frame) {
        this.key = key;
        this.frame = frame;
    }

    Key key() {
        return key;
    }

    /** Who computes it. */
    Frame frame() {
        return frame;
    }

    boolean isOver() {
        return over;
    }

    /** The answer; null where it was given up. */
    Answer answer() {
        return answer;
    }

    void end(Answer found) {
        over = true;
        answer = found;
    }
}
