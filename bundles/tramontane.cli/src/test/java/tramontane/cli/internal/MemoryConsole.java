package tramontane.cli.internal;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import tramontane.analysis.Engine;
import tramontane.cli.Console;
import tramontane.cli.internal.output.Spelling;

/** A console in memory. */
public final class MemoryConsole implements Console, Engine.Watch {

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();
    private final StringWriter data = new StringWriter();
    private final Spelling spelling;
    private final int width;
    final List<String> progress = new ArrayList<>();
    volatile boolean stop;

    /** A console of 100 columns that shows every letter. */
    public MemoryConsole() {
        this(100, StandardCharsets.UTF_8);
    }

    /** A console. */
    public MemoryConsole(int width, Charset charset) {
        this.width = width;
        this.spelling = new Spelling(charset);
    }

    String printed() {
        return out.toString();
    }

    String errors() {
        return err.toString();
    }

    String written() {
        return data.toString();
    }

    @Override
    public PrintWriter out() {
        return new PrintWriter(new SpellingWriter(out, spelling), true);
    }

    @Override
    public PrintWriter err() {
        return new PrintWriter(new SpellingWriter(err, spelling), true);
    }

    @Override
    public PrintWriter data() {
        return new PrintWriter(data, true);
    }

    @Override
    public int width() {
        return width;
    }

    @Override
    public String shown(String text) {
        return spelling.of(text);
    }

    @Override
    public Engine.Watch watch() {
        return this;
    }

    @Override
    public boolean cancelled() {
        return stop;
    }

    @Override
    public void progress(double fraction, String message) {
        progress.add(message);
    }
}
