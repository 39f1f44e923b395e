package tramontane.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import tramontane.acoustics.NoiseState;
import tramontane.acoustics.internal.NoiseAnalysis;
import tramontane.airflow.internal.BankKind;
import tramontane.airflow.internal.OpeningKind;
import tramontane.analysis.Figure;
import tramontane.analysis.Input;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Trace;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.file.DesignFile;
import tramontane.physics.sound.NoiseCriterion;
import tramontane.physics.sound.NoiseRating;
import tramontane.physics.sound.Spectrum;
import tramontane.physics.sound.ToneInNoise;
import tramontane.physics.sound.Weighting;

/** Ten sources at one position: their ratings alone, and the whole analysis of a box with ten banks. */
@State(Scope.Thread)
public class NoiseBenchmark {

    private static final int SOURCES = 10;

    /** No sample is needed. */
    @Param("none")
    public String design;
    /** Number of its case. */
    @Param("0")
    public int number;

    private final NoiseAnalysis analysis = new NoiseAnalysis(List.of(new OpeningKind(), new BankKind()));
    private final List<Spectrum> sources = new ArrayList<>();
    private final List<ToneInNoise.Tone> tones = new ArrayList<>();
    private Given given;

    private record Given(Design design, OperatingPoint point) implements Input {

        @Override
        public Condition condition() {
            return Condition.NOMINAL;
        }

        @Override
        public <R> R result(Class<R> type) {
            return type.cast(point);
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

    /** Ten banks of one part, each at a speed of its own. */
    @Setup
    public void make() {
        StringBuilder passages = new StringBuilder("{\"id\": \"inlet\", \"kind\": \"opening\", \"from\": \"outside\", \"to\": \"box\", \"area\": \"0.02 m²\"}");
        List<OperatingPoint.BankPoint> banks = new ArrayList<>();
        for (int i = 0; i < SOURCES; i++) {
            passages.append(", {\"id\": \"").append(i).append("\", \"kind\": \"bank\", \"from\": \"box\", \"to\": \"outside\", \"mover\": \"F\"}");
            double speed = 280 + 5.0 * i;
            banks.add(new OperatingPoint.BankPoint(Integer.toString(i), 0.03, 0.036, 40, speed, OptionalDouble.empty(), 293, 1.2, true,
                    List.of(new OperatingPoint.MoverPoint(1, true, 0.03, 40, speed, OptionalDouble.empty())), 1));
            sources.add(Spectrum.ofOctaves(1, 45 + i, 48, 46, 44, 42 - i, 38, 33, 27));
            tones.add(new ToneInNoise.Tone(speed * 7 / (2 * Math.PI), 1e4));
        }
        Design read = DesignFile.parse("""
                {"format": 1, "airMovers": [{"id": "F", "type": "axial", "width": "120 mm", "height": "120 mm", "ratedSpeed": "3000 rpm",
                  "curves": [{"flow": "0 0.02 0.05 m³/s", "pressure": "100 60 0 Pa"}], "sections": {"noise": {"blades": 7,
                  "octaves": "45 48 46 44 42 38 33 27 dB", "tones": [{"order": 7, "level": "42 dB"}]}}}],
                 "airPath": {"bays": ["box"], "passages": [%s]}, "sections": {"noise": {"space": {"kind": "room", "length": "5 m",
                  "width": "4 m", "height": "3 m", "absorption": "10 %%"}, "positions": [{"id": "ear", "kind": "operator seated"}]}}}
                """.formatted(passages)).design().orElseThrow();
        given = new Given(read, new OperatingPoint(banks, List.of(), List.of()));
    }

    /** Sum, A, C, NR, NC and both ratios of ten tones. */
    @Benchmark
    public double ratings() {
        Spectrum sum = Spectrum.SILENCE;
        for (Spectrum source : sources) {
            sum = sum.plus(source);
        }
        double tonal = 0;
        for (ToneInNoise.Prominence tone : ToneInNoise.judge(sum, tones)) {
            tonal = Math.max(tonal, tone.toneToNoise());
        }
        return sum.level(Weighting.A) + sum.level(Weighting.C) + NoiseRating.of(sum).orElseThrow().value()
                + NoiseCriterion.of(sum).orElseThrow().value() + tonal;
    }

    /** From the design and its operating point to figures, findings and tables. */
    @Benchmark
    public Result<NoiseState> analysis() {
        Result<NoiseState> result = analysis.run(given, Run.alone(Trace.SILENT));
        if (result.data().filter(state -> state.positions().size() == 1 && state.openings().size() == SOURCES + 1).isEmpty()) {
            throw new IllegalStateException("one position and " + SOURCES + " openings were expected, got " + result.data());
        }
        return result;
    }
}
