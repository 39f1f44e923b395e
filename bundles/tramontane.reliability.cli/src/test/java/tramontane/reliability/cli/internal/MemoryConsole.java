package tramontane.reliability.cli.internal;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import tramontane.analysis.Engine;
import tramontane.cli.Console;

/** A console in memory that shows every letter. */
final class MemoryConsole implements Console, Engine.Watch {

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();
    private final StringWriter data = new StringWriter();
    private final int width;
    final List<String> progress = new ArrayList<>();
    boolean stop;

    MemoryConsole(int width) {
        this.width = width;
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
        return new PrintWriter(out, true);
    }

    @Override
    public PrintWriter err() {
        return new PrintWriter(err, true);
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
        return text;
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
