package tramontane.bench;

import java.util.List;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import tramontane.analysis.Sentence;
import tramontane.model.Design;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalState;
import tramontane.thermal.Transient;

/** Flow, temperatures and speeds brought into agreement. */
@State(Scope.Thread)
public class ThermalBenchmark {

    /** A sample of the product, or {@code rack}. */
    @Param("observatory")
    public String design;
    /** Number of its case. */
    @Param("1")
    public int number;

    private ThermalModel model;
    private List<Transient.Step> steps;

    /** Reads the design. */
    @Setup
    public void build() {
        Design read = Racks.design(design);
        model = Racks.model(read, number);
        steps = List.of(new Transient.Step(0, model, Sentence.of("cold start")),
                new Transient.Step(1800, Racks.model(Racks.hotter(read), number), Sentence.of("more heat")));
    }

    /** From cold to agreement. */
    @Benchmark
    public ThermalState settle() {
        return model.settle(() -> false).state().orElseThrow();
    }

    /** An hour from cold, with more heat after half of it. */
    @Benchmark
    public Transient hour() {
        Transient outcome = Transient.of(steps, Transient.Start.COLD, 3600, () -> false);
        if (outcome.history().isEmpty()) {
            throw new IllegalStateException(outcome.obstacles().toString());
        }
        return outcome;
    }
}
