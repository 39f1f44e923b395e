package tramontane.bench;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;

/** Runs the benchmarks of temperatures, or of the drive, and writes their table. */
public final class DesignTable {

    /** What is measured: benchmark, design, number of its case, words, longest time that is wanted in ms. */
    private record Row(String benchmark, String design, int number, String words, double target) {
    }

    private static final String OF_THERMAL = "Coupled is `ThermalModel.settle`, from cold to flow, temperatures and speeds in agreement; one hour is that from"
            + " cold, with a fifth more heat after half of it.";
    private static final String OF_DRIVE = "A loop is its margins and its run from cold in one condition; a computed law is that with its check, requirements"
            + " left out.";

    private static final Row[] THERMAL = {
        new Row("Thermal.settle", "observatory", 1, "observatory, hot day, coupled", 1),
        new Row("Thermal.settle", "observatory", 3, "observatory, a fan failed, coupled", 1),
        new Row("Thermal.settle", "rack", 0, "200 components in 100 bays, coupled", 20),
        new Row("Thermal.hour", "rack", 0, "200 components in 100 bays, one hour", 1000),
    };

    private static final Row[] DRIVE = {
        new Row("Drive.plainSpeed", "cabinet", 0, "cabinet, speed of a mover by airflow alone", 0.01),
        new Row("Drive.speed", "cabinet", 0, "cabinet, speed of a mover with wire and control", 0.01),
        new Row("Drive.loop", "cabinet", 0, "cabinet, loop of its law", 50),
        new Row("Drive.laws", "cabinet", 0, "cabinet, computed law over 9 cases", 500),
        new Row("Drive.loop", "rack", 0, "200 components in 100 bays, loop of a law", 5000),
    };

    private DesignTable() {
    }

    /**
     * Runs all.
     *
     * @param arguments file to write to; folder of the samples; "thermal" or "drive"
     */
    public static void main(String[] arguments) throws IOException, RunnerException {
        double before = load();
        StringBuilder rows = new StringBuilder();
        boolean drive = arguments[2].equals("drive");
        for (Row row : drive ? DRIVE : THERMAL) {
            rows.append("| %s | %s | %s |%n".formatted(row.words(), figure(measure(row, arguments[1])), figure(row.target())));
        }
        String text = """
                # How long %s

                Written by `test-bundles/tramontane.bench/run %s`; do not edit. Times are in ms, of one thread: medians of single \
                calls after warming up, in JMH. %s

                | what | time | target |
                |---|--:|--:|
                %s
                %s; %s %s; %s. Load of the machine %.1f at the start, %.1f at the end.
                """.formatted(drive ? "the drive takes" : "temperatures take", arguments[2], drive ? OF_DRIVE : OF_THERMAL, rows,
                System.getProperty("os.arch"), System.getProperty("java.vm.name"), System.getProperty("java.version"),
                System.getProperty("os.name"), before, load());
        Files.writeString(Path.of(arguments[0]), text);
        System.out.print(text);
    }

    private static double measure(Row row, String samples) throws RunnerException {
        boolean slow = row.target() > 100;
        var options = new OptionsBuilder().include("^tramontane\\.bench\\." + row.benchmark().replace(".", "Benchmark\\.") + "$")
                .mode(Mode.SampleTime).timeUnit(TimeUnit.NANOSECONDS).forks(1).threads(1).shouldFailOnError(true)
                .warmupIterations(4).warmupTime(TimeValue.milliseconds(slow ? 3000 : 1000))
                .measurementIterations(5).measurementTime(TimeValue.milliseconds(slow ? 2000 : 1000))
                .jvmArgs("-Xmx2g", "-XX:+UseSerialGC", "-Dtramontane.samples=" + samples)
                .param("design", row.design()).param("number", Integer.toString(row.number())).build();
        RunResult result = new Runner(options).run().iterator().next();
        return result.getPrimaryResult().getStatistics().getPercentile(50) / 1e6;
    }

    /** Three significant digits. */
    private static String figure(double value) {
        int digits = value <= 0 ? 0 : Math.max(0, 2 - (int) Math.floor(Math.log10(value)));
        return String.format(Locale.ROOT, "%." + digits + "f", value);
    }

    private static double load() {
        return ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage();
    }
}
