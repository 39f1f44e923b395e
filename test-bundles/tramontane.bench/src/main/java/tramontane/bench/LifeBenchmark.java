package tramontane.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import tramontane.reliability.statistics.Bounds;
import tramontane.reliability.statistics.Family;
import tramontane.reliability.statistics.LifeData;
import tramontane.reliability.statistics.LifeFit;
import tramontane.reliability.statistics.Observation;
import tramontane.reliability.statistics.Quantity;
import tramontane.reliability.statistics.Weibull;
import tramontane.reliability.system.FailureGraph;
import tramontane.reliability.system.Repair;
import tramontane.reliability.system.SystemSurvival;

/** Life tests of 50 units, half of them failed, and banks that may lose movers. */
@State(Scope.Thread)
public class LifeBenchmark {

    private static final int UNITS = 50;
    private static final double END = 43800;

    /** No sample is needed. */
    @Param("none")
    public String design;
    /** Number of its case. */
    @Param("0")
    public int number;

    private LifeData data;
    private LifeFit fit;
    private SystemSurvival system;

    /** Draws the lives. */
    @Setup
    public void draw() {
        SplittableRandom random = new SplittableRandom(1);
        Weibull lives = new Weibull(1000, 2);
        double end = lives.life(0.5);
        List<Observation> seen = new ArrayList<>();
        for (int i = 0; i < UNITS; i++) {
            double life = lives.life(random.nextDouble());
            seen.add(life < end ? Observation.failure(life) : Observation.survivor(end));
        }
        data = new LifeData(seen);
        fit = LifeFit.of(data, Family.WEIBULL).orElseThrow();
        system = new SystemSurvival(FailureGraph.needed(10, 12, failed -> 1 + 0.05 * failed), List.of(Weibull.through(60000, 0.1, 3)));
    }

    /** Maximum likelihood. */
    @Benchmark
    public LifeFit fit() {
        return LifeFit.of(data, Family.WEIBULL).orElseThrow();
    }

    /** Bounds of L10 by the likelihood ratio. */
    @Benchmark
    public Bounds bounds() {
        return fit.bounds(Quantity.life(0.1), 0.9, Bounds.Method.LIKELIHOOD_RATIO);
    }

    /** Survival of 10 of 12 movers that share the load. */
    @Benchmark
    public double survival() {
        return system.survival(END);
    }

    /** L10 of that bank. */
    @Benchmark
    public double life() {
        return system.life(0.1);
    }

    /** Its availability with repair. */
    @Benchmark
    public double availability() {
        return Repair.of(system.graph(), system.lives(), 72, 1).availability();
    }
}
