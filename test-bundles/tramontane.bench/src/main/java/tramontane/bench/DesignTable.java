package tramontane.bench;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;

/** Runs the benchmarks of temperatures, of the drive, of the catalogue, of noise, or of life, and writes their table. */
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

    private static final String OF_CATALOGUE = "The catalogue has 50,000 invented parts of some 1.6 kB: 500 families of 100 parts, or as many files as"
            + " parts, which the system has read before and holds in memory. Cold is the median of five loads, each the first thing that a Java machine"
            + " of 500 MB does; memory is what is held after collecting garbage. The filter has six conditions. The load uses all processors, here %d.";

    private static final Row[] CATALOGUE = {
        new Row("Catalogue.load", "families", 0, "load 500 families of 100 parts", 2000),
        new Row("Catalogue.load", "singles", 0, "load 50,000 files of one part", 2000),
        new Row("Catalogue.filter", "families", 0, "filter 50,000 parts", 50),
        new Row("Catalogue.part", "families", 0, "make one part of a family", 1),
        new Row("Catalogue.part", "singles", 0, "make one part of a file of its own", 1),
    };

    private static final String OF_ACOUSTICS = "A recording is a file of one channel with 24 bits, which the system has read before and holds in"
            + " memory; its analysis reads it twice and gives levels, third-octaves, lines and tones.";

    private static final Row[] ACOUSTICS = {
        new Row("Noise.ratings", "none", 0, "ratings of 10 sources at one position: A, C, NR, NC, ratios of 10 tones", 1),
        new Row("Noise.analysis", "none", 0, "the whole analysis of a box with 10 banks, one position", 1),
        new Row("Acoustics.recording60s", "none", 0, "a recording of 60 s at 48 kHz, read and analysed", 3000),
    };

    private static final String OF_LIFE = "A test has 50 units, of which half have failed; a bank has 12 movers, of which 10 must run and"
            + " which share the load.";

    private static final Row[] LIFE = {
        new Row("Life.fit", "none", 0, "maximum likelihood of a test", 1),
        new Row("Life.bounds", "none", 0, "likelihood-ratio bounds of its L10", 2),
        new Row("Life.survival", "none", 0, "survival of a bank to one time", 20),
        new Row("Life.life", "none", 0, "L10 of a bank", 20),
        new Row("Life.availability", "none", 0, "availability of a bank with repair", 20),
    };

    /** Cold loads of which the median counts. */
    private static final int COLD = 5;

    private DesignTable() {
    }

    /**
     * Runs all.
     *
     * @param arguments file to write to; folder of the samples; "thermal", "drive", "catalogue", "acoustics" or "reliability"
     */
    public static void main(String[] arguments) throws IOException, InterruptedException, RunnerException {
        double before = load();
        StringBuilder rows = new StringBuilder();
        Row[] all = switch (arguments[2]) {
            case "drive" -> DRIVE;
            case "catalogue" -> CATALOGUE;
            case "acoustics" -> ACOUSTICS;
            case "reliability" -> LIFE;
            default -> THERMAL;
        };
        if (all == CATALOGUE) {
            rows.append(cold("families", "load 500 families of 100 parts, cold")).append(cold("singles", "load 50,000 files of one part, cold"));
        }
        for (Row row : all) {
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
                """.formatted(switch (arguments[2]) {
                    case "drive" -> "the drive takes";
                    case "catalogue" -> "the catalogue takes";
                    case "acoustics" -> "noise takes";
                    case "reliability" -> "life takes";
                    default -> "temperatures take";
                }, arguments[2], all == DRIVE ? OF_DRIVE : all == THERMAL ? OF_THERMAL : all == ACOUSTICS ? OF_ACOUSTICS : all == LIFE ? OF_LIFE
                        : OF_CATALOGUE.formatted(Runtime.getRuntime().availableProcessors()), rows,
                System.getProperty("os.arch"), System.getProperty("java.vm.name"), System.getProperty("java.version"),
                System.getProperty("os.name"), before, load());
        Files.writeString(Path.of(arguments[0]), text);
        System.out.print(text);
    }

    /** Two rows: time and memory of loads in machines just started. */
    private static String cold(String design, String words) throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("catalogue");
        try {
            CatalogueBenchmark.write(folder, design);
            double[] times = new double[COLD];
            double held = 0;
            for (int i = 0; i < COLD; i++) {
                Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx500m", "-cp",
                        System.getProperty("java.class.path"), CatalogueBenchmark.class.getName(), folder.toString())
                        .redirectError(ProcessBuilder.Redirect.INHERIT).start();
                String[] said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip().split(" ");
                if (process.waitFor() != 0 || said.length != 2) {
                    throw new IOException("the load did not work: " + String.join(" ", said));
                }
                times[i] = Double.parseDouble(said[0]);
                held = Math.max(held, Double.parseDouble(said[1]));
            }
            Arrays.sort(times);
            return "| %s | %s | 2000 |%n| memory held, MB | %s | 500 |%n".formatted(words, figure(times[COLD / 2]), figure(held));
        } finally {
            CatalogueBenchmark.remove(folder);
        }
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
