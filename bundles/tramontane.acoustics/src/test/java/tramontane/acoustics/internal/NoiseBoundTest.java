package tramontane.acoustics.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.LongAdder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tramontane.analysis.PassageKind;
import tramontane.engine.internal.WiredEngine;
import tramontane.invented.InventedCatalogue;
import tramontane.model.AirMover;
import tramontane.model.Design;
import tramontane.model.FormReader;
import tramontane.model.Passage;
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

/** What is said beforehand of the noise of candidates, against what is found exactly. */
class NoiseBoundTest {

    private static final WiredEngine.Wired WIRED = WiredEngine.with();
    private static final List<PassageKind> KINDS = List.copyOf(WIRED.engine().passageKinds().values());
    private static final Space ROOM = new Space(Optional.of(0.4), Optional.of(0.3), Optional.of(0.12), 4, 2, 8);
    private static final String POWER = "acoustics.power";

    /** Says what another says, and keeps it. */
    private static final class Heard implements FigureBound {
        private final FigureBound bound;
        private final Map<List<Object>, FigureBound.Best> said = new ConcurrentHashMap<>();
        private final LongAdder time = new LongAdder();

        Heard(FigureBound bound) {
            this.bound = bound;
        }

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

    private static FigureBound level() {
        return new LevelBound(KINDS);
    }

    private static FigureBound power() {
        return new PowerBound(KINDS);
    }

    /** A sample of the product in a room, with a lining and a filter that takes high bands away. */
    private static Design sample(String name) {
        Design design = DesignFile.read(Path.of("../../product/samples/" + name + ".tramontane.json")).design().orElseThrow();
        Value.Tree position = Value.Tree.EMPTY.with("id", new Value.Text("desk")).with("distance", new Value.Text("2 m"));
        Value.Tree noise = Value.Tree.EMPTY.with("positions", new Value.Items(List.of(position, Value.Tree.EMPTY.with("id", new Value.Text("round about"))
                .with("kind", new Value.Text("bystanders")))));
        if (design.section("noise").isEmpty()) {
            design = design.withMore(with(design.more(), noise));
        }
        List<Passage> passages = new ArrayList<>(design.airPath().passages());
        Passage first = passages.getFirst();
        if (first.section("noise").isEmpty()) {
            design = design.withAirPath(design.airPath().withPassage(first.withParameters(with(first.more(), Value.Tree.EMPTY.with("insertionLoss",
                    new Value.Text("0 0 1 3 8 14 18 20 dB"))))));
        }
        return design;
    }

    /** What is written of somebody, with another noise section. */
    private static Value.Tree with(Value.Tree more, Value.Tree noise) {
        return more.with("sections", (more.get("sections").orElse(Value.Tree.EMPTY) instanceof Value.Tree sections ? sections : Value.Tree.EMPTY)
                .with("noise", noise));
    }

    private static AirMover noise(AirMover part, Value.Tree noise) {
        return AirMover.from(FormReader.read(AirMover.FORM, part.tree().with("sections", with(part.more(), noise).get("sections").orElseThrow()), "",
                new ArrayList<>()));
    }

    private static String bank(Design design) {
        return design.airPath().banks().getFirst().id();
    }

    /** Parts with a level alone, as they are invented; every third with bands and tones, every seventh without noise. */
    private static List<AirMover> parts(int count, long seed) {
        List<AirMover> parts = new ArrayList<>();
        Random random = new Random(seed);
        for (AirMover part : InventedCatalogue.parts(count, seed)) {
            int n = parts.size();
            if (n % 7 == 6) {
                parts.add(noise(part, Value.Tree.EMPTY));
            } else if (n % 3 == 2) {
                StringBuilder octaves = new StringBuilder();
                for (int i = 0; i < 8; i++) {
                    octaves.append(30 + random.nextInt(20)).append(' ');
                }
                Value.Tree tone = Value.Tree.EMPTY.with("order", Value.Num.of(5)).with("level", new Value.Text("40 dB"));
                parts.add(noise(part, Value.Tree.EMPTY.with("octaves", new Value.Text(octaves + "dB")).with("at", new Value.Text("best point"))
                        .with("tones", new Value.Items(List.of(tone)))));
            } else {
                parts.add(part);
            }
        }
        return parts;
    }

    @ParameterizedTest
    @CsvSource({"observatory, 150, 6", "cabinet, 260, 1", "quick, 160, 1"}) // many that fit the observatory work far left of their best point
    void noCandidateIsQuieterThanWasSaid(String name, int count, double farthest, TestReporter reporter) {
        Design design = sample(name);
        Heard level = new Heard(level());
        Heard power = new Heard(power());
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
        Task task = new Task(design, bank(design), parts(count, 11), ROOM, Map.of(Criterion.NOISE, 1.0, POWER, 1.0, Criterion.COST, 1.0), Task.LOWEST, 3, 0,
                false, true);
        selector(level, power).choose(task, watch);
        Map<String, List<Double>> gaps = new LinkedHashMap<>();
        int silent = 0;
        for (Candidate candidate : found) {
            for (Heard heard : List.of(level, power)) {
                String criterion = heard == level ? Criterion.NOISE : POWER;
                FigureBound.Best best = heard.said.get(List.of(candidate.part().id(), candidate.arrangement()));
                Double exact = candidate.values().get(criterion);
                if (exact == null) {
                    assertTrue(best.missing(), candidate.words());
                    silent++;
                    continue;
                }
                double gap = exact - best.value().orElseThrow();
                assertTrue(gap >= 0, () -> criterion + " of " + candidate.words() + " is " + exact + " dB where at best " + best + " was said");
                gaps.computeIfAbsent(criterion, key -> new ArrayList<>()).add(gap);
            }
        }
        assertTrue(silent > 0 && gaps.get(Criterion.NOISE).size() >= 20, found.size() + " found, " + silent + " without noise");
        gaps.forEach((criterion, all) -> {
            double[] sorted = all.stream().mapToDouble(Double::doubleValue).sorted().toArray();
            reporter.publishEntry(name + " " + criterion, sorted.length + " candidates; bound below exact by " + sorted[0] + " to " + sorted[sorted.length - 1]
                    + " dB, median " + sorted[sorted.length / 2] + "; " + level.time.sum() / 1e6 / level.said.size() + " ms each of " + level.said.size());
            assertTrue(sorted[sorted.length / 2] < farthest, () -> "half of all bounds are no farther off than that: " + Arrays.toString(sorted));
        });
    }

    @ParameterizedTest
    @CsvSource({"observatory, 90", "cabinet, 250"})
    void choicesAreTheSameForLess(String name, int count, TestReporter reporter) {
        Design design = sample(name);
        Task task = new Task(design, bank(design), parts(count, 5), ROOM, Map.of(Criterion.NOISE, 2.0, Criterion.POWER, 1.0, Criterion.COST, 1.0), Task.LOWEST, 10, 0,
                false, false);
        long begun = System.nanoTime();
        Selection without = selector().choose(task, Watch.NONE);
        long between = System.nanoTime();
        Selection with = selector(level(), power()).choose(task, Watch.NONE);
        long end = System.nanoTime();
        reporter.publishEntry(name, "without bounds " + without.counts() + " in " + (between - begun) / 1e9 + " s, with " + with.counts() + " in "
                + (end - between) / 1e9 + " s; front " + with.front().size());
        assertEquals(10, with.ranked().size());
        assertEquals(words(without.ranked()), words(with.ranked()));
        assertEquals(words(without.front()), words(with.front()));
        assertEquals(without.counts().may(), without.counts().exact());
        assertTrue(with.counts().exact() < without.counts().exact(), () -> with.counts() + " against " + without.counts());
    }

    private static List<String> words(List<Candidate> candidates) {
        return candidates.stream().map(candidate -> candidate.words() + " " + candidate.setting() + " " + candidate.values()).toList();
    }

    @Test
    void aPartWithoutNoiseSaysSo() {
        Design design = sample("quick");
        AirMover silent = noise(InventedCatalogue.parts(1, 3).getFirst(), Value.Tree.EMPTY);
        assertEquals(FigureBound.Best.MISSING, level().of(design, bank(design)).best(silent, Arrangement.SINGLE, List.of()));
    }
}
