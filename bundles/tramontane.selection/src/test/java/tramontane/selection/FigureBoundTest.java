package tramontane.selection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Analysis;
import tramontane.analysis.Better;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Input;
import tramontane.analysis.Needs;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.invented.InventedCatalogue;
import tramontane.engine.internal.WiredEngine;
import tramontane.model.Design;
import tramontane.model.Value;
import tramontane.physics.units.QuantityKind;
import tramontane.selection.internal.SelectorComponent;

/** An analysis that comes later joins unasked; with a bound of its figure it costs little. */
class FigureBoundTest {

    private static final FigureKind LEVEL = new FigureKind(Criterion.NOISE_FIGURE, "level", QuantityKind.LEVEL, Better.LOWER, "For this test.");

    record Level(double level) {
    }

    /** Gives 50 lg n + 10 lg N for the movers that run. */
    static class Loud implements Analysis<Level> {
        @Override
        public String id() {
            return "acoustics";
        }

        @Override
        public String label() {
            return "noise";
        }

        @Override
        public Scope scope() {
            return Scope.CONDITION;
        }

        @Override
        public Class<Level> gives() {
            return Level.class;
        }

        @Override
        public Needs needs() {
            return Needs.results(OperatingPoint.class);
        }

        @Override
        public List<FigureKind> figures() {
            return List.of(LEVEL);
        }

        @Override
        public Result<Level> run(Input input, Run run) {
            OperatingPoint.BankPoint bank = input.result(OperatingPoint.class).banks().getFirst();
            long running = bank.movers().stream().filter(OperatingPoint.MoverPoint::running).count();
            double level = running == 0 ? 0 : level(bank.speed(), running);
            return Result.of(new Level(level)).with(Figure.of(LEVEL, "", level));
        }
    }

    private static double level(double speed, double running) {
        return 50 * Math.log10(speed) + 10 * Math.log10(running);
    }

    /** A bound of the level. */
    private static FigureBound bound(FigureBound.Bound bound) {
        return prepared((design, bank) -> bound);
    }

    private static FigureBound prepared(BiFunction<Design, String, FigureBound.Bound> prepare) {
        return new FigureBound() {
            @Override
            public String figure() {
                return Criterion.NOISE_FIGURE;
            }

            @Override
            public Bound of(Design design, String bank) {
                return prepare.apply(design, bank);
            }
        };
    }

    private static final FigureBound BOUND = bound((part, arrangement, duties) -> FigureBound.Best.of(duties.stream()
            .mapToDouble(duty -> level(duty.speed(), duty.running())).max().orElseThrow()));

    private static final FigureBound BROKEN = bound((part, arrangement, duties) -> {
        throw new IllegalStateException("on purpose");
    });

    private static final FigureBound UNPREPARED = prepared((design, bank) -> {
        throw new IllegalStateException("on purpose");
    });

    @Test
    void aFigureThatComesLaterIsWeighedAndItsBoundSavesWork() {
        WiredEngine.Wired wired = WiredEngine.with(new Loud());
        Task task = Task.of(Choices.sample("observatory"), "fans", InventedCatalogue.parts(60, 7), new Space(Optional.of(0.17), Optional.of(0.09), Optional.of(0.06), 6, 2, 12))
                .withWeights(Map.of(Criterion.NOISE, 3.0, Criterion.COST, 1.0));
        Selection without = new SelectorComponent(wired.engine(), wired.laws(), List.of()).choose(task, Watch.NONE);
        Selection with = new SelectorComponent(wired.engine(), wired.laws(), List.of(BOUND)).choose(task, Watch.NONE);
        Selection broken = new SelectorComponent(wired.engine(), wired.laws(), List.of(BROKEN)).choose(task, Watch.NONE);
        Selection unprepared = new SelectorComponent(wired.engine(), wired.laws(), List.of(UNPREPARED)).choose(task, Watch.NONE);
        assertTrue(with.criteria().stream().anyMatch(criterion -> criterion.id().equals(Criterion.NOISE)));
        assertTrue(with.ranked().stream().allMatch(candidate -> candidate.values().containsKey(Criterion.NOISE)));
        assertEquals(Choices.words(without.ranked()), Choices.words(with.ranked()));
        assertEquals(Choices.words(without.front()), Choices.words(with.front()));
        assertEquals(without.counts(), broken.counts());
        assertEquals(without.counts(), unprepared.counts());
        assertEquals(without.counts().may(), without.counts().exact(), "without a bound all that may do are judged");
        assertTrue(with.counts().exact() < without.counts().exact(), () -> with.counts() + " against " + without.counts());
    }

    /** Of which parts the level comes out: those of one winding. */
    private static boolean tells(String part) {
        return part.endsWith("12H");
    }

    @Test
    void candidatesOfWhichAFigureWillNotComeOutStandBehindThoseThatHaveIt() {
        Loud some = new Loud() {
            @Override
            public Result<Level> run(Input input, Run run) {
                Result<Level> all = super.run(input, run);
                return input.design().airPath().passage("fans").flatMap(bank -> bank.parameters().get("mover"))
                        .filter(mover -> tells(((Value.Text) mover).text())).isPresent() ? all : Result.of(all.data().orElseThrow());
            }
        };
        WiredEngine.Wired wired = WiredEngine.with(some);
        Task task = Task.of(Choices.sample("observatory"), "fans", InventedCatalogue.parts(60, 7), new Space(Optional.of(0.17), Optional.of(0.09), Optional.of(0.06), 6, 2, 12))
                .withWeights(Map.of(Criterion.NOISE, 3.0, Criterion.COST, 1.0));
        FigureBound bound = bound((part, arrangement, duties) -> tells(part.id()) ? BOUND.of(task.design(), "fans").best(part, arrangement, duties)
                : FigureBound.Best.MISSING);
        Selection without = new SelectorComponent(wired.engine(), wired.laws(), List.of()).choose(task, Watch.NONE);
        Selection with = new SelectorComponent(wired.engine(), wired.laws(), List.of(bound)).choose(task, Watch.NONE);
        List<Boolean> told = without.ranked().stream().map(candidate -> candidate.values().containsKey(Criterion.NOISE)).toList();
        assertTrue(told.contains(true) && told.contains(false), told::toString);
        assertEquals(told.stream().sorted(Comparator.reverseOrder()).toList(), told);
        assertEquals(Choices.words(without.ranked()), Choices.words(with.ranked()));
        assertEquals(Choices.words(without.front()), Choices.words(with.front()));
        assertTrue(with.counts().exact() < without.counts().exact(), () -> with.counts() + " against " + without.counts());
    }
}
