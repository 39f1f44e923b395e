package tramontane.bench;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import tramontane.airflow.SupplySpeed;
import tramontane.analysis.Cases;
import tramontane.analysis.Figure;
import tramontane.analysis.Input;
import tramontane.analysis.Run;
import tramontane.analysis.SpeedLaw;
import tramontane.analysis.Trace;
import tramontane.drive.ComputedLaws;
import tramontane.drive.LoopState;
import tramontane.drive.internal.DriveSpeed;
import tramontane.drive.internal.LawAnalysis;
import tramontane.drive.internal.LoopAnalysis;
import tramontane.model.Condition;
import tramontane.model.ControlLaw;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.model.Quantities;
import tramontane.model.Value;

/** Speeds of movers that say how they are driven, loops of control laws, and computed laws. */
@State(Scope.Thread)
public class DriveBenchmark {

    /** A sample of the product, or {@code rack}. */
    @Param("cabinet")
    public String design;
    /** Number of its case. */
    @Param("0")
    public int number;

    private final DriveSpeed speed = new DriveSpeed();
    private LoopAnalysis loops;
    private LawAnalysis laws;
    private Given one;
    private Given all;
    private SpeedLaw.Supply supply;

    private record Given(Design design, Optional<Condition> one) implements Input {

        @Override
        public Condition condition() {
            return one.orElseThrow();
        }

        @Override
        public <R> R result(Class<R> type) {
            throw new IllegalArgumentException("nothing is needed");
        }

        @Override
        public <R> Map<String, R> results(Class<R> type) {
            return Map.of();
        }

        @Override
        public List<Figure> figures(String id) {
            return List.of();
        }
    }

    private static final Run QUIET = Run.alone(Trace.SILENT);

    /** Reads the design. */
    @Setup
    public void build() {
        Design read = Racks.design(design);
        if (read.controlLaws().isEmpty()) {
            read = read.withControlLaws(List.of(new ControlLaw("law", read.heatSources().getFirst().id(), List.of(), Quantities.of(300, 350),
                    Quantities.of(0.3, 1), Optional.empty(), Optional.empty(), Optional.empty(), Value.Tree.EMPTY)));
        }
        loops = new LoopAnalysis(Racks.models(speed));
        laws = new LawAnalysis(Racks.models(speed));
        Condition condition = Cases.of(read, Set.of()).list().get(number).concrete();
        one = new Given(loops.reads(read), Optional.of(condition));
        all = new Given(laws.reads(read).withRequirements(List.of()), Optional.empty());
        Passage bank = read.airPath().passages().stream().filter(Passage::isBank).findFirst().orElseThrow();
        supply = new SpeedLaw.Supply(one.design(), bank, read.airMovers().getFirst(), condition, 0.7, 1.2, 293.15);
    }

    /** The speed by the curves alone. */
    @Benchmark
    public Optional<Double> plainSpeed() {
        return SupplySpeed.speed(supply);
    }

    /** The speed with wire, supply and control. */
    @Benchmark
    public Optional<Double> speed() {
        return speed.speed(supply);
    }

    /** Margins and run from cold of all laws in a case. */
    @Benchmark
    public LoopState loop() {
        LoopState state = loops.run(one, QUIET).data().orElseThrow();
        if (state.laws().isEmpty()) {
            throw new IllegalStateException("no law acts");
        }
        return state;
    }

    /** Computed laws over all cases. */
    @Benchmark
    public ComputedLaws laws() {
        ComputedLaws computed = laws.run(all, QUIET).data().orElseThrow();
        if (computed.laws().isEmpty()) {
            throw new IllegalStateException("no law was computed");
        }
        return computed;
    }
}
