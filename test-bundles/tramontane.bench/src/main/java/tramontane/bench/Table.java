package tramontane.bench;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;

/** Runs the benchmarks, and the program in C beside them, and writes one table. */
public final class Table {

    /** Sides of the grids; 0 is the chain. */
    private static final int[] SIDES = {0, 10, 32, 100, 317};
    /** Longest times that are wanted, ms: to solve, for the last one with the set-up. */
    private static final double[] TARGETS = {0.02, 0.3, 5, 500, 8000};
    private static final int[] REPETITIONS = {0, 5000, 1000, 60, 12};
    private static final Pattern TIME = Pattern.compile("factor_solve_ms ([0-9.]+)");
    private static final int SIMPLICIAL = 0;
    private static final int CHOSEN = 1;

    private Table() {
    }

    /**
     * Runs all.
     *
     * @param arguments file to write to; what to say about the program in C; the program, if there is one
     */
    public static void main(String[] arguments) throws IOException, InterruptedException, RunnerException {
        String program = arguments.length > 2 ? arguments[2] : "";
        double before = load();
        StringBuilder rows = new StringBuilder();
        for (int i = 0; i < SIDES.length; i++) {
            rows.append(row(i, program)).append('\n');
        }
        Measured rough = measure("SolverBenchmark.solve", 0, "1e-2");
        Measured fine = measure("SolverBenchmark.solve", 0, "1e-10");
        String text = """
                # How long the flow network solver takes

                Written by `test-bundles/tramontane.bench/run`; do not edit. Times are in ms, of one thread: medians of single \
                calls after warming up, in JMH and in C. Set-up is `NetworkSolver.of`, solve is `solve` from a cold start, a \
                step is one factorisation and solution of the matrix of a grid with the pattern known. CHOLMOD's step is that \
                of `src/main/c/sparse_limit.c` on the same matrix in the same run, as CHOLMOD chooses to do it and, in brackets, \
                without supernodes. The ratio is ours over CHOLMOD's as chosen; 3 is the target.

                | network | bays | set-up | solve | steps | per step | CHOLMOD per step | ratio | target | bytes per solve |
                |---|--:|--:|--:|--:|--:|--:|--:|--:|--:|
                %s
                The chain solved to 1e-2 takes %d steps and %.0f bytes, to 1e-10 %d steps and %.0f bytes.

                %s; %s %s; %s. Load of the machine %.1f at the start, %.1f at the end. CHOLMOD: %s.
                """.formatted(rows, steps(0, 1e-2), rough.bytes, steps(0, 1e-10), fine.bytes, System.getProperty("os.arch"),
                System.getProperty("java.vm.name"), System.getProperty("java.version"), System.getProperty("os.name"), before,
                load(), arguments[1]);
        Files.writeString(Path.of(arguments[0]), text);
        System.out.print(text);
    }

    private record Measured(double time, double bytes) {
    }

    private static String row(int i, String program) throws IOException, InterruptedException, RunnerException {
        int side = SIDES[i];
        Measured setUp = measure("SolverBenchmark.setUp", side, "1e-10");
        Measured solve = measure("SolverBenchmark.solve", side, "1e-10");
        String step = "";
        String other = "";
        String ratio = "";
        if (side > 0) {
            OptionalDouble early = known(program, side, REPETITIONS[i], CHOSEN);
            double ours = measure("StepBenchmark.step", side, "").time;
            OptionalDouble late = known(program, side, REPETITIONS[i], CHOSEN);
            OptionalDouble plain = known(program, side, REPETITIONS[i], SIMPLICIAL);
            step = figure(ours);
            if (early.isPresent() && late.isPresent() && plain.isPresent()) {
                double theirs = Math.min(early.getAsDouble(), late.getAsDouble());
                other = figure(theirs) + " (" + figure(plain.getAsDouble()) + ")";
                ratio = figure(ours / theirs);
            }
        }
        return "| %s | %d | %s | %s | %d | %s | %s | %s | %s | %.0f |".formatted(
                side == 0 ? "chain" : side + " × " + side, side == 0 ? 5 : side * side, figure(setUp.time), figure(solve.time),
                steps(side, 1e-10), step, other, ratio,
                figure(TARGETS[i]) + (i == SIDES.length - 1 ? " with set-up" : ""), solve.bytes);
    }

    private static int steps(int side, double tolerance) {
        SolverBenchmark benchmark = new SolverBenchmark();
        benchmark.side = side;
        benchmark.tolerance = tolerance;
        return benchmark.steps();
    }

    private static Measured measure(String benchmark, int side, String tolerance) throws RunnerException {
        boolean large = side > 50;
        var options = new OptionsBuilder().include("^tramontane\\.bench\\." + benchmark.replace(".", "\\.") + "$")
                .mode(Mode.SampleTime).timeUnit(TimeUnit.NANOSECONDS).forks(1).threads(1).shouldFailOnError(true)
                .warmupIterations(4).warmupTime(TimeValue.milliseconds(large ? 3000 : 1000))
                .measurementIterations(5).measurementTime(TimeValue.milliseconds(large ? 2000 : 1000))
                .jvmArgs("-Xmx2g", "-XX:+UseSerialGC").addProfiler(GCProfiler.class)
                .param("side", Integer.toString(side));
        if (!tolerance.isEmpty()) {
            options.param("tolerance", tolerance);
        }
        Collection<RunResult> results = new Runner(options.build()).run();
        RunResult result = results.iterator().next();
        return new Measured(result.getPrimaryResult().getStatistics().getPercentile(50) / 1e6,
                result.getSecondaryResults().get("gc.alloc.rate.norm").getScore());
    }

    /** Median time of a step of the program in C, ms; empty without it. */
    private static OptionalDouble known(String program, int side, int repetitions, int how)
            throws IOException, InterruptedException {
        if (program.isEmpty()) {
            return OptionalDouble.empty();
        }
        Process process = new ProcessBuilder(List.of(program, Integer.toString(side), Integer.toString(repetitions),
                Integer.toString(how))).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        Matcher matcher = TIME.matcher(said);
        if (process.waitFor() != 0 || !matcher.find()) {
            throw new IOException(program + " says: " + said);
        }
        return OptionalDouble.of(Double.parseDouble(matcher.group(1)));
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
