package tramontane.cli.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tramontane.cli.internal.output.Spelling;

class StoppingTest {

    private final StringWriter terminal = new StringWriter();
    private final AtomicLong clock = new AtomicLong();

    private ProgressLine line(boolean looked, int width) {
        return new ProgressLine(new PrintWriter(terminal), () -> looked, () -> false, clock::get, width, Spelling.FULL);
    }

    private void at(long milliseconds, ProgressLine line, double fraction, String message) {
        clock.set(Duration.ofMillis(milliseconds).toNanos());
        line.progress(fraction, message);
    }

    @Test
    void progressShowsAfterAMomentInOneLineAndGoesAway() {
        ProgressLine line = line(true, 40);
        at(299, line, 0.1, "quick");
        assertEquals("", terminal.toString());
        at(301, line, 0.2, "air flow in hot");
        at(350, line, 0.3, "too soon after");
        at(450, line, 1, "noise");
        line.clear();
        line.clear();
        assertEquals("\r 20 %  air flow in hot" + "\r100 %  noise          " + "\r            \r", terminal.toString());
    }

    @Test
    void progressIsCutToTheTerminal() {
        ProgressLine line = line(true, 12);
        at(500, line, 0.5, "a long message");
        assertEquals("\r 50 %  a lo", terminal.toString());
    }

    @Test
    void nothingIsShownWhereNobodyLooks() {
        ProgressLine line = line(false, 40);
        at(500, line, 0.5, "air flow");
        line.clear();
        assertEquals("", terminal.toString());
    }

    @Test
    void stoppingWaitsUntilTheMainThreadHasLeft() throws InterruptedException {
        Interruption interruption = Interruption.listen();
        assertFalse(interruption.wanted());
        Thread signal = new Thread(interruption::stop);
        signal.start();
        Assertions.assertTimeoutPreemptively(Duration.ofSeconds(30), () -> {
            while (!interruption.wanted()) {
                Thread.onSpinWait();
            }
        });
        assertTrue(signal.isAlive(), "still waiting");
        interruption.close();
        signal.join(30_000);
        assertFalse(signal.isAlive());
    }

    /** Ctrl-C is SIGINT; SIGTERM takes the same way, and is not ignored where tests run in the background. */
    @Test
    void aProcessThatIsStoppedLeavesTidily(@TempDir Path folder) throws Exception {
        Path design = Files.writeString(folder.resolve("a"), "{\"format\": 1}");
        Path output = Files.writeString(folder.resolve("out"), "old");
        Process process = new ProcessBuilder(ProcessHandle.current().info().command().orElseThrow(), "-cp",
                System.getProperty("java.class.path"), SlowMain.class.getName(), "solve", design.toString(), "--output",
                output.toString()).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
        try (BufferedReader errors = process.errorReader()) {
            assertEquals("solving", errors.readLine());
            process.toHandle().destroy(); // Process.destroy would close the streams too
            assertEquals(List.of("Stopped."), errors.lines().toList());
            assertTrue(process.waitFor(10, TimeUnit.SECONDS));
            assertEquals(128 + 15, process.exitValue());
            assertEquals("old", Files.readString(output));
        } finally {
            process.destroyForcibly();
        }
    }

    @Test
    void theConsoleSpellsForItsStreamButGivesDataInUtf8() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        SystemConsole console = new SystemConsole(new PrintStream(bytes, true, StandardCharsets.US_ASCII),
                new PrintStream(OutputStream.nullOutputStream()), "", () -> false);
        console.out().println("m³/h\tand \u001bmore");
        console.out().flush();
        console.data().print("m³/h");
        console.data().flush();
        assertEquals("m3/h\tand ?more" + System.lineSeparator() + "m³/h", bytes.toString(StandardCharsets.UTF_8));
        assertTrue(console.arrived());
        assertEquals(100, console.width());
    }

    @Test
    void theConsoleKnowsWhenItsOutputDidNotArrive() {
        OutputStream full = new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                throw new IOException("no space left");
            }
        };
        SystemConsole console = new SystemConsole(new PrintStream(full), new PrintStream(OutputStream.nullOutputStream()),
                "72", () -> false);
        console.out().println("results");
        assertFalse(console.arrived());
        assertEquals(72, console.width());
    }
}
