package tramontane.selection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
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
import tramontane.model.AirMover;
import tramontane.physics.units.QuantityKind;
import tramontane.selection.internal.SelectorComponent;

/** An analysis that comes later joins unasked; with a bound of its figure it costs little. */
class FigureBoundTest {

    private static final FigureKind LEVEL = new FigureKind(Criterion.NOISE_FIGURE, "level", QuantityKind.LEVEL, Better.LOWER, "For this test.");

    record Level(double level) {
    }

    /** Gives 50 lg n + 10 lg N for the movers that run. */
    static final class Loud implements Analysis<Level> {
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

    private static final FigureBound BOUND = new FigureBound() {
        @Override
        public String figure() {
            return Criterion.NOISE_FIGURE;
        }

        @Override
        public OptionalDouble best(AirMover part, Arrangement arrangement, List<Duty> duties) {
            return duties.stream().mapToDouble(duty -> level(duty.speed(), duty.running())).max();
        }
    };

    private static final FigureBound BROKEN = new FigureBound() {
        @Override
        public String figure() {
            return Criterion.NOISE_FIGURE;
        }

        @Override
        public OptionalDouble best(AirMover part, Arrangement arrangement, List<Duty> duties) {
            throw new IllegalStateException("on purpose");
        }
    };

    @Test
    void aFigureThatComesLaterIsWeighedAndItsBoundSavesWork() {
        WiredEngine.Wired wired = WiredEngine.with(new Loud());
        Task task = Task.of(Choices.sample("observatory"), "fans", InventedCatalogue.parts(60, 7), new Space(Optional.of(0.17), Optional.of(0.09), Optional.of(0.06), 6, 2, 12))
                .withWeights(Map.of(Criterion.NOISE, 3.0, Criterion.COST, 1.0));
        Selection without = new SelectorComponent(wired.engine(), wired.laws(), List.of()).choose(task, Watch.NONE);
        Selection with = new SelectorComponent(wired.engine(), wired.laws(), List.of(BOUND)).choose(task, Watch.NONE);
        Selection broken = new SelectorComponent(wired.engine(), wired.laws(), List.of(BROKEN)).choose(task, Watch.NONE);
        assertTrue(with.criteria().stream().anyMatch(criterion -> criterion.id().equals(Criterion.NOISE)));
        assertTrue(with.ranked().stream().allMatch(candidate -> candidate.values().containsKey(Criterion.NOISE)));
        assertEquals(Choices.words(without.ranked()), Choices.words(with.ranked()));
        assertEquals(Choices.words(without.front()), Choices.words(with.front()));
        assertEquals(without.counts(), broken.counts());
        assertEquals(without.counts().may(), without.counts().exact(), "without a bound all that may do are judged");
        assertTrue(with.counts().exact() < without.counts().exact(), () -> with.counts() + " against " + without.counts());
    }
}
