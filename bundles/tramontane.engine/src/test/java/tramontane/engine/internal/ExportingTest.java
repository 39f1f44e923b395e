package tramontane.engine.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Exporter;
import tramontane.engine.internal.Toy.Alpha;
import tramontane.engine.internal.Toy.Beta;
import tramontane.engine.internal.Toy.Gamma;
import tramontane.model.Design;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.Values;

class ExportingTest {

    private static class Toys implements Exporter {

        private final String id;
        private final Supplier<Exported> written;

        Toys(String id, Supplier<Exported> written) {
            this.id = id;
            this.written = written;
        }

        @Override
        public String id() {
            return id;
        }

        @Override
        public String label() {
            return "a toy";
        }

        @Override
        public String ending() {
            return "txt";
        }

        @Override
        public Exported write(Design design, Evaluation evaluation, Values settings) {
            return written.get();
        }
    }

    private static List<String> written(Bench bench) {
        List<String> all = new ArrayList<>();
        for (Exporter each : bench.engine.exporters()) {
            Values none = FormReader.read(each.settings(), Value.Tree.EMPTY, "", new ArrayList<>());
            Exporter.Exported exported = each.write(Design.EMPTY, bench.run(Design.EMPTY), none);
            all.add(each.id() + ": " + exported.text() + exported.problems().stream().map(Problem::sentence).toList());
        }
        return all;
    }

    @Test
    void exportersAreThereByTheirIds() {
        Bench bench = new Bench(1).load(new Toys("b", () -> Exporter.Exported.of("two")), 0, "lab.b 1.0.0")
                .load(new Toys("a", () -> new Exporter.Exported("one", List.of(Problem.caution("fans", "guessed")))), 0, "lab.a 1.0.0");
        assertEquals(List.of("a: one[fans: guessed]", "b: two[]"), written(bench));
        Exporter first = bench.engine.exporters().getFirst();
        assertEquals("a toy", first.label());
        assertEquals("txt", first.ending());
        assertEquals(List.of(), first.settings().fields());
        assertEquals(Set.of(), first.reads());
    }

    @Test
    void ofTwoWithOneIdTheHigherRankedIsUsed() {
        Bench bench = new Bench(1).load(new Toys("a", () -> Exporter.Exported.of("low")), 0, "lab.a 1.0.0")
                .load(new Toys("a", () -> Exporter.Exported.of("high")), 1, "lab.b 1.0.0")
                .load(new Toys("a", () -> Exporter.Exported.of("later")), 1, "lab.c 1.0.0");
        assertEquals(List.of("a: high[]"), written(bench));
    }

    @Test
    void anExporterThatThrowsIsNamedAndTheOthersWrite() {
        Bench bench = new Bench(1).load(new Toys("a.throws", () -> {
            throw new StackOverflowError("too deep");
        }), 0, "lab.a 1.0.0").load(new Toys("b.null", () -> null), 0, "lab.b 1.0.0")
                .load(new Toys("c.mute", () -> Exporter.Exported.of("")), 0, "lab.c 1.0.0")
                .load(new Toys("d.fine", () -> Exporter.Exported.of("text")), 0, "lab.d 1.0.0")
                .load(new Toys("e.label", () -> Exporter.Exported.of("text")) {
                    @Override
                    public String label() {
                        throw new IllegalStateException("oops");
                    }
                }, 0, "lab.e 1.0.0");
        assertEquals(List.of("a.throws: [exporter a.throws of bundle lab.a 1.0.0 failed: StackOverflowError: too deep]",
                "b.null: [exporter b.null of bundle lab.b 1.0.0 failed: NullPointerException: write() gave nothing]",
                "c.mute: [exporter c.mute of bundle lab.c 1.0.0 gave no text and does not say why]", "d.fine: text[]",
                "e.label: [exporter e.label of bundle lab.e 1.0.0 failed: IllegalStateException: oops]"), written(bench));
    }

    @Test
    void aTextWithAnErrorIsNone() {
        assertThrows(IllegalArgumentException.class,
                () -> new Exporter.Exported("text", List.of(Problem.error("", "there is no operating point"))));
    }

    @Test
    void onlyWhatAnExporterReadsHasToBeComputed() {
        Toy<Alpha> low = Toy.giving("low", Alpha.class, new Alpha(1));
        Toy<Alpha> high = Toy.giving("high", Alpha.class, new Alpha(2)).needs(Alpha.class);
        Toy<Beta> other = Toy.giving("other", Beta.class, new Beta(3));
        Bench bench = Bench.with(low, other).load(high, 5);
        assertEquals(Set.of("high"), bench.engine.givers(Set.of(Alpha.class, Gamma.class)));
        assertEquals(Set.of("high", "other"), bench.engine.givers(Set.of(Alpha.class, Beta.class)));
        Evaluation evaluation = bench.run(Design.EMPTY, bench.engine.givers(Set.of(Alpha.class)), Set.of());
        assertEquals(2, evaluation.data(Alpha.class, "nominal").orElseThrow().value());
        assertEquals(0, other.runs.get());
    }
}
