package tramontane.reliability.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.LongAdder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.engine.internal.WiredEngine;
import tramontane.invented.InventedCatalogue;
import tramontane.model.AirMover;
import tramontane.model.Design;
import tramontane.model.FormReader;
import tramontane.model.Value;
import tramontane.model.file.DesignFile;
import tramontane.selection.Arrangement;
import tramontane.selection.Candidate;
import tramontane.selection.Criterion;
import tramontane.selection.FigureBound;
import tramontane.selection.Selection;
import tramontane.selection.Selector;
import tramontane.selection.Space;
import tramontane.selection.Task;
import tramontane.selection.Watch;
import tramontane.selection.internal.SelectorComponent;

/** What is said beforehand of the life of candidates, against what is found exactly. */
class LifeBoundTest {

    private static final WiredEngine.Wired WIRED = WiredEngine.with();
    private static final Space ROOM = new Space(Optional.of(0.4), Optional.of(0.3), Optional.of(0.12), 4, 2, 8);

    /** Says what the bound says, and keeps it. */
    private static final class Told implements FigureBound {
        private final FigureBound bound = new LifeBound();
        private final Map<List<Object>, FigureBound.Best> said = new ConcurrentHashMap<>();
        private final LongAdder time = new LongAdder();

        @Override
        public String figure() {
            return bound.figure();
        }

        @Override
        public Bound of(Design design, String bank) {
            Bound prepared = bound.of(design, bank);
            return (part, arrangement, duties) -> {
                long begun = System.nanoTime();
                Best best = prepared.best(part, arrangement, duties);
                time.add(System.nanoTime() - begun);
                said.put(List.of(part.id(), arrangement), best);
                return best;
            };
        }
    }

    private static Selector selector(FigureBound... bounds) {
        return new SelectorComponent(WIRED.engine(), WIRED.laws(), List.of(bounds));
    }

    private static Design sample(String name) {
        Design design = DesignFile.read(Path.of("../../product/samples/" + name + ".tramontane.json")).design().orElseThrow();
        // redundancy would let the movers of every candidate fail
        return design.withRequirements(design.requirements().stream().filter(requirement -> !requirement.figure().startsWith("reliability.system")).toList());
    }

    /** Invented parts, every seventh without a life. */
    private static List<AirMover> parts(int count, long seed) {
        List<AirMover> parts = new ArrayList<>();
        for (AirMover part : InventedCatalogue.parts(count, seed)) {
            if (parts.size() % 7 != 6) {
                parts.add(part);
                continue;
            }
            Value.Tree sections = (Value.Tree) part.tree().get("sections").orElseThrow();
            parts.add(AirMover.from(FormReader.read(AirMover.FORM, part.tree().with("sections", sections.without("life")), "", new ArrayList<>())));
        }
        return parts;
    }

    private static Task task(Design design, List<AirMover> parts, Map<String, Double> weights, int top, boolean exact) {
        return new Task(design, design.airPath().banks().getFirst().id(), parts, ROOM, weights, Task.LOWEST, top, 0, false, exact);
    }

    @ParameterizedTest
    @CsvSource({"observatory, 30, 2", "quick, 60, 1.05"}) // air at the fans of the first is warmer than outside
    void noCandidateLivesLongerThanWasSaid(String name, int count, double farthest, TestReporter reporter) {
        Design design = sample(name);
        Told told = new Told();
        List<Candidate> found = Collections.synchronizedList(new ArrayList<>());
        Watch watch = new Watch() {
            @Override
            public boolean cancelled() {
                return false;
            }

            @Override
            public void progress(double fraction, String message) {
                // nobody looks
            }

            @Override
            public void found(Candidate candidate) {
                found.add(candidate);
            }
        };
        selector(told).choose(task(design, parts(count, 11), Map.of(Criterion.LIFE, 1.0, Criterion.COST, 1.0), 3, true), watch);
        List<Double> ratios = new ArrayList<>();
        int unknown = 0;
        for (Candidate candidate : found) {
            FigureBound.Best best = told.said.get(List.of(candidate.part().id(), candidate.arrangement()));
            Double exact = candidate.values().get(Criterion.LIFE);
            if (exact == null) {
                assertTrue(best.missing(), candidate.words());
                unknown++;
            } else {
                double ratio = best.value().orElseThrow() / exact;
                assertTrue(ratio >= 1 - 1e-9, () -> "life of " + candidate.words() + " is " + exact / 3600 + " h where at best " + best + " was said");
                ratios.add(ratio);
            }
        }
        double[] sorted = ratios.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        assertTrue(sorted.length >= 5, found.size() + " found, " + unknown + " without life");
        reporter.publishEntry(name, sorted.length + " candidates; bound over exact " + sorted[0] + " to " + sorted[sorted.length - 1] + ", median "
                + sorted[sorted.length / 2] + "; " + told.time.sum() / 1e6 / told.said.size() + " ms each of " + told.said.size());
        assertTrue(sorted[sorted.length / 2] < farthest, () -> "half of all bounds are no farther off than that: " + Arrays.toString(sorted));
    }

    @ParameterizedTest
    @CsvSource({"quick, 80"})
    void choicesAreTheSameForLess(String name, int count, TestReporter reporter) {
        Task task = task(sample(name), parts(count, 5), Map.of(Criterion.LIFE, 2.0, Criterion.POWER, 1.0, Criterion.COST, 1.0), 10, false);
        Selection without = selector().choose(task, Watch.NONE);
        Selection with = selector(new LifeBound()).choose(task, Watch.NONE);
        reporter.publishEntry(name, "without bounds " + without.counts() + ", with " + with.counts());
        assertEquals(words(without.ranked()), words(with.ranked()));
        assertEquals(words(without.front()), words(with.front()));
        assertTrue(with.counts().exact() < without.counts().exact(), () -> with.counts() + " against " + without.counts());
    }

    private static List<String> words(List<Candidate> candidates) {
        return candidates.stream().map(candidate -> candidate.words() + " " + candidate.setting() + " " + candidate.values()).toList();
    }

    @Test
    void aPartWithoutALifeSaysSo() {
        Design design = sample("quick");
        AirMover silent = parts(7, 3).getLast();
        FigureBound.Bound bound = new LifeBound().of(design, design.airPath().banks().getFirst().id());
        assertEquals(FigureBound.Best.MISSING, bound.best(silent, Arrangement.SINGLE, List.of()));
    }
}
