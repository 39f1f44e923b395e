package tramontane.launcher;

import java.io.IOException;

/** A feature file cannot be read; the message is one sentence for the person who wrote it. */
final class FeatureFormatException extends IOException {
    private static final long serialVersionUID = 1L;

    FeatureFormatException(String sentence) {
        super(sentence);
    }
}
