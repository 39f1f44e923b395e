package tramontane.bench;

import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import tramontane.model.Design;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalState;

/** Flow, temperatures and speeds brought into agreement. */
@State(Scope.Thread)
public class ThermalBenchmark {

    /** A sample of the product, or {@code rack}. */
    @Param("observatory")
    public String design;
    /** Number of its case. */
    @Param("1")
    public int number;

    private Design read;
    private ThermalModel model;

    /** Reads the design. */
    @Setup
    public void build() {
        read = Racks.design(design);
        model = Racks.model(read, number);
    }

    /** From cold to agreement. */
    @Benchmark
    public ThermalState settle() {
        return model.settle(() -> false).state().orElseThrow();
    }
}
