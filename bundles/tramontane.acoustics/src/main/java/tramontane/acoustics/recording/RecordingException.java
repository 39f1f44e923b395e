package tramontane.acoustics.recording;

import java.io.IOException;
import java.util.OptionalLong;

/** A recording cannot be used; the message is one sentence for the engineer: what is wrong, where, what was expected. */
public final class RecordingException extends IOException {

    private static final long serialVersionUID = 1;

    private final long offset;

    /** @param message one sentence */
    public RecordingException(String message) {
        super(message);
        offset = -1;
    }

    /** @param message one sentence without its place
     *  @param offset  byte of the file where it is wrong, from 0 */
    public RecordingException(String message, long offset) {
        super(message + " (at byte " + offset + ")");
        this.offset = offset;
    }

    /** @return byte of the file where it is wrong, from 0; empty where the fault has no place */
    public OptionalLong offset() {
        return offset < 0 ? OptionalLong.empty() : OptionalLong.of(offset);
    }
}
