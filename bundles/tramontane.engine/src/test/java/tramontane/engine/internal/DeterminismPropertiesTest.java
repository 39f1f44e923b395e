package tramontane.engine.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Input;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.model.Condition;
import tramontane.model.Design;

/** The same bits whatever the number of threads, over random sets of analyses that need, read and ask each other. */
class DeterminismPropertiesTest {

    private static final List<Class<? extends Number>> TYPES = List.of(Double.class, Float.class, Long.class, Integer.class,
            Short.class, Byte.class);
    private static final List<String> CONDITIONS = List.of("hot", "cold", "mild");

    /** One analysis of a random set. */
    private record Member(int index, List<Integer> needs, List<Integer> reads, List<Integer> asks, boolean wide, int mood) {

        static Member random(int index, int count, Random random, boolean asking) {
            List<Integer> needs = new ArrayList<>();
            List<Integer> reads = new ArrayList<>();
            List<Integer> asks = new ArrayList<>();
            for (int other = 0; other < count; other++) {
                if (other < index && random.nextInt(3) == 0) {
                    needs.add(other);
                }
                if (other != index && random.nextInt(4) == 0) {
                    reads.add(other);
                }
                if (asking && random.nextInt(5) == 0) {
                    asks.add(other);
                }
            }
            return new Member(index, needs, reads, asks, random.nextInt(4) == 0, random.nextInt(12));
        }

        private static FigureKind kind(int index) {
            return Toy.figure("toy." + index);
        }

        Toy<? extends Number> toy() {
            return toy(TYPES.get(index));
        }

        private <T extends Number> Toy<T> toy(Class<T> type) {
            // ids in another order than needs
            Toy<T> toy = Toy.of((char) ('a' + index * 5 % 7) + "." + index, type, (input, run) -> {
                double value = compute(input, run);
                if (mood == 0) {
                    throw new IllegalStateException("always");
                }
                if (mood == 1 && !wide && input.condition().id().equals("hot")) {
                    return Result.notComputed(Finding.caution("", "too hot for " + index));
                }
                return Result.of(data(type, value)).with(Figure.of(kind(index), "box", value));
            }).figures(kind(index)).needs(needs.stream().map(TYPES::get).toArray(Class<?>[]::new))
                    .readsFigures(reads.stream().map(other -> "toy." + other).toArray(String[]::new));
            return wide ? toy.designWide() : toy;
        }

        private double compute(Input input, Run run) {
            double value = 0.1 * (index + 1) + (wide ? 0.7 : input.condition().id().length() / 3.0);
            for (int need : needs) {
                value = value * 1.1 + one(input, TYPES.get(need));
            }
            for (int read : reads) {
                for (Figure figure : input.figures("toy." + read)) {
                    value = value * 0.9 + figure.value() / 7 + figure.condition().length();
                }
            }
            for (int ask : asks) {
                value = value / 3 + run.ask(input.design(), Condition.named(CONDITIONS.get((ask + index) % 3)), TYPES.get(ask))
                        .map(Number::doubleValue).orElse(-1.0);
            }
            return value;
        }

        private static double one(Input input, Class<? extends Number> type) {
            try {
                return input.result(type).doubleValue();
            } catch (IllegalArgumentException e) { // given once per condition
                return input.results(type).values().stream().mapToDouble(Number::doubleValue).sum();
            }
        }

        private static <T extends Number> T data(Class<T> type, double value) {
            Number number = type == Double.class ? (Number) value : type == Float.class ? (Number) (float) value
                    : type == Long.class ? (Number) Double.doubleToLongBits(value) : type == Integer.class ? (Number) (int) value
                    : type == Short.class ? (Number) (short) value : (Number) (byte) value;
            return type.cast(number);
        }
    }

    private static Bench bench(List<Member> members, int threads) {
        Bench bench = new Bench(threads);
        members.forEach(member -> bench.load(member.toy(), 0));
        return bench;
    }

    private static void compare(long seed, int count, boolean asking) {
        Random random = new Random(seed);
        List<Member> members = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            members.add(Member.random(i, count, random, asking));
        }
        Design design = Bench.conditions("hot", "cold", "mild")
                .withRequirements(List.of(Bench.atLeast("toy.0", 1), Bench.atLeast("toy." + (count - 1), 2)));
        Evaluation alone = bench(members, 1).run(design);
        Bench several = bench(members, 4);
        assertEquals(alone, several.run(design));
        Evaluation again = several.run(design.withName("once more"));
        assertEquals(alone, new Evaluation(design, again.cases(), again.outcomes(), again.findings(), again.verdicts(),
                again.cancelled()));
    }

    @Property(tries = 100)
    void theNumberOfThreadsChangesNothing(@ForAll long seed, @ForAll @IntRange(min = 2, max = 6) int count) {
        compare(seed, count, false);
    }

    @Property(tries = 100)
    void norDoesItWhereAnalysesAskEachOtherEvenInCircles(@ForAll long seed, @ForAll @IntRange(min = 2, max = 5) int count) {
        compare(seed, count, true);
    }
}
