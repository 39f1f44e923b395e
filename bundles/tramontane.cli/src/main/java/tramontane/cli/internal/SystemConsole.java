package tramontane.cli.internal;

import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.function.BooleanSupplier;
import tramontane.analysis.Engine;
import tramontane.cli.Console;
import tramontane.cli.internal.output.Spelling;

/** The standard streams of this process. */
final class SystemConsole implements Console {

    private static final int USUAL_WIDTH = 100;

    private final PrintStream standardOut;
    private final PrintWriter out;
    private final PrintWriter err;
    private final PrintWriter data;
    private final Spelling spelling;
    private final int width;
    private final ProgressLine progress;

    /**
     * A console.
     *
     * @param out     standard output
     * @param err     standard error
     * @param columns what the environment says of the terminal's width; may be empty
     * @param stop    whether the user wants to stop
     */
    SystemConsole(PrintStream out, PrintStream err, String columns, BooleanSupplier stop) {
        standardOut = out;
        spelling = new Spelling(out.charset());
        this.out = new PrintWriter(new SpellingWriter(writer(out, out.charset()), spelling));
        this.err = new PrintWriter(new SpellingWriter(writer(err, err.charset()), new Spelling(err.charset())), true);
        data = new PrintWriter(writer(out, StandardCharsets.UTF_8));
        width = width(columns);
        progress = new ProgressLine(new PrintWriter(writer(err, err.charset())), SystemConsole::somebodyLooks, stop,
                System::nanoTime, width, new Spelling(err.charset()));
    }

    private static OutputStreamWriter writer(PrintStream stream, Charset charset) {
        return new OutputStreamWriter(stream, charset);
    }

    private static int width(String columns) {
        boolean number = columns.length() < 5 && !columns.isEmpty() && columns.chars().allMatch(c -> c >= '0' && c <= '9');
        return number ? Math.clamp(Integer.parseInt(columns), 60, 200) : USUAL_WIDTH;
    }

    /** Whether standard error is a terminal. Java itself tells of standard input and output only. */
    private static boolean somebodyLooks() {
        String terminal = link(2);
        if (!terminal.isEmpty()) {
            return terminal.startsWith("/dev/pts/") || terminal.startsWith("/dev/tty") || terminal.equals("/dev/console");
        }
        // since Java 22 there is a console without a terminal too, so no progress rather than garbage in a file
        return System.console() != null && Runtime.version().feature() < 22;
    }

    @Override
    public PrintWriter out() {
        progress.clear();
        return out;
    }

    @Override
    public PrintWriter err() {
        progress.clear();
        return err;
    }

    @Override
    public PrintWriter data() {
        progress.clear();
        return data;
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
        return progress;
    }

    /** Whether all that was printed has arrived. */
    boolean arrived() {
        out.flush();
        data.flush();
        return !standardOut.checkError();
    }

    /** Whether the standard output of this process is a pipe: that breaks only because its reader has seen enough. */
    static boolean piped() {
        return link(1).startsWith("pipe:");
    }

    /** What a stream of this process goes to, where the system tells. */
    private static String link(int stream) {
        try {
            Path link = Path.of("/proc/self/fd/" + stream);
            return Files.isSymbolicLink(link) ? Files.readSymbolicLink(link).toString() : "";
        } catch (IOException | InvalidPathException unknown) {
            return "";
        }
    }
}
