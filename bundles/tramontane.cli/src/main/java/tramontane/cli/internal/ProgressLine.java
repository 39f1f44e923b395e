package tramontane.cli.internal;

import java.io.PrintWriter;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;
import tramontane.analysis.Engine;
import tramontane.cli.internal.output.Spelling;

/**
 * One line on a terminal that is written over again and again while something runs. What is done quickly shows none.
 *
 * <p>Called from several threads.
 */
final class ProgressLine implements Engine.Watch {

    private static final long PATIENCE = 300_000_000;
    private static final long PAUSE = 100_000_000;

    private final PrintWriter terminal;
    private final BooleanSupplier somebodyLooks;
    private final BooleanSupplier stop;
    private final LongSupplier nanoTime;
    private final int width;
    private final Spelling spelling;
    private final long start;
    private long last;
    private int drawn;
    private Boolean looked;

    /**
     * A progress line.
     *
     * @param terminal      where it is drawn
     * @param somebodyLooks whether that is a terminal; asked once, and only if it takes long enough
     * @param stop          whether the user wants to stop
     * @param nanoTime      the time, ns
     * @param width         columns of the terminal
     * @param spelling      of the terminal
     */
    ProgressLine(PrintWriter terminal, BooleanSupplier somebodyLooks, BooleanSupplier stop, LongSupplier nanoTime, int width,
            Spelling spelling) {
        this.terminal = terminal;
        this.somebodyLooks = somebodyLooks;
        this.stop = stop;
        this.nanoTime = nanoTime;
        this.width = width;
        this.spelling = spelling;
        start = nanoTime.getAsLong();
        last = start;
    }

    @Override
    public boolean cancelled() {
        return stop.getAsBoolean();
    }

    @Override
    public synchronized void progress(double fraction, String message) {
        long now = nanoTime.getAsLong();
        if (now - start < PATIENCE || drawn > 0 && now - last < PAUSE) {
            return;
        }
        if (looked == null) {
            looked = somebodyLooks.getAsBoolean();
        }
        if (!looked) {
            return;
        }
        last = now;
        String percent = Math.round(Math.clamp(fraction, 0.0, 1.0) * 100) + " %";
        String line = spelling.of(" ".repeat(5 - percent.length()) + percent + "  " + message);
        String cut = line.substring(0, Math.min(line.length(), width - 1));
        terminal.print('\r' + cut + " ".repeat(Math.max(0, drawn - cut.length())));
        terminal.flush();
        drawn = cut.length();
    }

    /** Takes the line away, before something else is written. */
    synchronized void clear() {
        if (drawn > 0) {
            terminal.print('\r' + " ".repeat(drawn) + '\r');
            terminal.flush();
            drawn = 0;
        }
    }
}
