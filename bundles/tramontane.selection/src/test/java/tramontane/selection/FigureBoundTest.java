package tramontane.selection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Analysis;
import tramontane.analysis.Better;
import tramontane.analysis.Engine;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Input;
import tramontane.analysis.Needs;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.analysis.Severity;
import tramontane.invented.InventedCatalogue;
import tramontane.engine.internal.WiredEngine;
import tramontane.model.Design;
import tramontane.model.Quantity;
import tramontane.model.Requirement;
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

    /** A level that may be 3 dB more or less. */
    private static final Loud WIDE = new Loud() {
        @Override
        public Result<Level> run(Input input, Run run) {
            double level = super.run(input, run).data().orElseThrow().level();
            return Result.of(new Level(level)).with(Figure.of(LEVEL, "", level).within(level - 3, level + 3));
        }
    };

    private static Task quiet(double limit, int parts) {
        return quiet(limit, parts, Requirement.WORST);
    }

    private static Task quiet(double limit, int parts, String place) {
        Design design = Choices.sample("observatory");
        List<Requirement> required = new ArrayList<>(design.requirements());
        required.add(new Requirement(Criterion.NOISE_FIGURE, place, Optional.empty(), Optional.of(Quantity.of(limit)), List.of(), Value.Tree.EMPTY));
        return Task.of(design.withRequirements(required), "fans", InventedCatalogue.parts(parts, 7), new Space(Optional.of(0.17), Optional.of(0.09),
                Optional.of(0.06), 6, 2, 12));
    }

    /** Of what stands on the list nothing is left to luck: solved with all bounds, every requirement is met without caution. */
    @Test
    void whatHoldsForCertainHoldsAtTheEdgeOfTheBoundsOfOtherAnalysesToo() {
        WiredEngine.Wired wired = WiredEngine.with(WIDE);
        Selector selector = new SelectorComponent(wired.engine(), wired.laws(), List.of());
        double least = selector.choose(quiet(1000, 24), Watch.NONE).ranked().stream().mapToDouble(each -> each.values().get(Criterion.NOISE)).min().orElseThrow();
        List<Candidate> stated = selector.choose(quiet(least + 2.9, 24), Watch.NONE).ranked();
        assertTrue(!stated.isEmpty() && stated.stream().allMatch(each -> wired.engine().evaluate(Engine.Request.all(each.design()), Engine.Watch.NONE)
                .verdicts().stream().anyMatch(verdict -> verdict.severity() == Severity.CAUTION)), () -> Choices.words(stated).toString());
        Selection narrow = selector.choose(quiet(least + 2.9, 24).certain(true), Watch.NONE);
        assertEquals(List.of(), Choices.words(narrow.ranked()));
        assertTrue(narrow.rejected().stream().anyMatch(each -> each.reason().toString().contains("level in ") && each.reason().toString().contains(" may be ")),
                () -> narrow.rejected().toString());
        List<Candidate> wide = selector.choose(quiet(least + 8, 24).certain(true), Watch.NONE).ranked();
        assertTrue(!wide.isEmpty() && wide.stream().allMatch(each -> wired.engine().evaluate(Engine.Request.all(each.design()), Engine.Watch.NONE)
                .verdicts().stream().allMatch(verdict -> verdict.severity() == Severity.MET)), () -> Choices.words(wide).toString());
    }

    /** A requirement that nothing loaded can judge is said to be so, and does not hold for certain. */
    @Test
    void whatCannotBeJudgedIsNotCertain() {
        Selection stated = Choices.SELECTOR.choose(quiet(1000, 24), Watch.NONE);
        assertTrue(!stated.ranked().isEmpty() && stated.ranked().stream().allMatch(each -> each.unjudged() > 0), () -> Choices.words(stated.ranked()).toString());
        assertEquals(stated.counts().meeting(), stated.counts().unjudged());
        assertEquals("everything that could be judged", stated.counts().met());
        Selection certain = Choices.SELECTOR.choose(quiet(1000, 24, "desk").certain(true), Watch.NONE);
        assertEquals(List.of(), Choices.words(certain.ranked()));
        assertTrue(certain.rejected().stream().anyMatch(each -> each.reason().toString().contains(Criterion.NOISE_FIGURE + " at desk in ") && each.reason().toString()
                .contains("is not judged: nothing loaded gives a figure")), () -> certain.rejected().toString());
    }

    /** A miss by a figure of another analysis tells place and condition, and what that analysis finds of the bank there. */
    @Test
    void aMissByAFigureOfAnotherAnalysisTellsWhatIsFoundThere() {
        WiredEngine.Wired wired = WiredEngine.with(new Loud() {
            @Override
            public Result<Level> run(Input input, Run run) {
                double level = super.run(input, run).data().orElseThrow().level();
                return Result.of(new Level(level)).with(Figure.of(LEVEL, "desk", level)).with(Finding.caution("grille", "rattles"))
                        .with(Finding.caution("fans", "stand close to a grille").remedy("move them away"));
            }
        });
        Task task = quiet(60, 60);
        Selection selection = new SelectorComponent(wired.engine(), wired.laws(), List.of()).choose(task, Watch.NONE);
        Rejected miss = selection.rejected().stream().filter(each -> each.reason().toString().startsWith("level at desk in ")).findFirst().orElseThrow();
        assertTrue(miss.reason().toString().matches("level at desk in .+ is .+ dB at the lowest speed that is enough for flow and temperature where at most 60.0 dB is required"),
                miss.reason()::toString);
        assertTrue(miss.remedy().toString().matches("what is found of fans in .+: stand close to a grille; move them away"), miss.remedy()::toString);
        Design with = miss.in(task).orElseThrow();
        assertEquals(Placement.of(task.design(), "fans", task.parts().stream().filter(part -> part.id().equals(miss.part())).findFirst().orElseThrow(),
                miss.arrangement().orElseThrow(), miss.setting().orElseThrow()), with);
        assertTrue(wired.engine().evaluate(Engine.Request.all(with), Engine.Watch.NONE).verdicts().stream().anyMatch(verdict ->
                verdict.severity() == Severity.NOT_MET && verdict.requirement().figure().equals(Criterion.NOISE_FIGURE)));
    }

    @Test
    void aCriterionThatIsAFigureTellsOfWhichPlaceAndCondition() {
        WiredEngine.Wired wired = WiredEngine.with(new Loud());
        List<Criterion> criteria = new SelectorComponent(wired.engine(), wired.laws(), List.of()).choose(quiet(1000, 20), Watch.NONE).criteria();
        assertEquals("level, the worst of all positions and conditions", criteria.stream().filter(each -> each.id().equals(Criterion.NOISE)).findFirst().orElseThrow().about());
        assertTrue(criteria.stream().filter(each -> each.id().equals(Criterion.COST)).allMatch(each -> each.about().isEmpty()));
    }
}
