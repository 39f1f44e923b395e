package tramontane.desktop.internal.work;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What was said in the message strip, with the traces that nobody need see there. On one thread. */
public final class LogBook {

    private static final int MOST = 2000;

    /**
     * One entry.
     *
     * @param time     when
     * @param sentence what was said
     * @param trace    the trace of what was thrown; empty where nothing was
     */
    public record Entry(LocalTime time, String sentence, Optional<String> trace) {

        /** Whether something went wrong. */
        public boolean error() {
            return trace.isPresent();
        }

        /** All of it, to be copied. */
        public String text() {
            return time.withNano(0) + "  " + sentence + trace.map(lines -> System.lineSeparator() + lines).orElse("");
        }
    }

    private final List<Entry> entries = new ArrayList<>();

    /** Writes down a sentence. */
    public Entry add(String sentence) {
        return add(new Entry(LocalTime.now(), sentence, Optional.empty()));
    }

    /** Writes down what went wrong. */
    public Entry add(String sentence, Throwable cause) {
        StringWriter text = new StringWriter();
        cause.printStackTrace(new PrintWriter(text, true));
        return add(new Entry(LocalTime.now(), sentence, Optional.of(text.toString())));
    }

    private Entry add(Entry entry) {
        entries.add(entry);
        if (entries.size() > MOST) {
            entries.removeFirst();
        }
        return entry;
    }

    /** All entries, oldest first. */
    public List<Entry> entries() {
        return List.copyOf(entries);
    }
}
