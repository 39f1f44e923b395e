package tramontane.reliability.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import tramontane.reliability.DutyLife;
import tramontane.reliability.LifeState;
import tramontane.reliability.MissionLife;
import tramontane.reliability.SystemLife;
import tramontane.reliability.statistics.LifeDistribution;
import tramontane.reliability.system.FailureGraph;
import tramontane.reliability.system.SystemSurvival;

/** Makes of what was explored the graphs that survival is computed from. Movers in one place of the columns of a bank share an age. */
final class Groups {

    private final List<Scene.Bank> banks;
    private final Map<Failed, Exploration.Node> nodes;
    private final Exploration.Node none;

    /** Movers in one place of the columns of a bank. */
    private record Kind(int bank, int place) {
    }

    Groups(Scene scene, Map<Failed, Exploration.Node> nodes) {
        this.banks = scene.banks();
        this.nodes = nodes;
        this.none = nodes.values().iterator().next();
    }

    /** Whether anything of a bank may fail. */
    boolean fails(int bank) {
        return none.lives().get(bank).filter(lives -> !lives.movers().isEmpty()).isPresent();
    }

    /** A bank, all others in order. */
    SystemLife.Group bank(int bank) {
        return group(banks.get(bank).id(), failed -> failed.within(bank), List.of(bank));
    }

    /** The whole equipment. */
    SystemLife.Group whole() {
        return group("", failed -> true, IntStream.range(0, banks.size()).boxed().toList());
    }

    private SystemLife.Group group(String place, Predicate<Failed> of, List<Integer> members) {
        List<Exploration.Node> states = nodes.values().stream().filter(node -> of.test(node.failed())).toList();
        Map<Failed, Integer> numbers = new LinkedHashMap<>();
        states.forEach(node -> numbers.put(node.failed(), numbers.size()));
        Map<Kind, Integer> kinds = new LinkedHashMap<>();
        SystemSurvival nominal = survival(states, numbers, kinds, LifeState.Spread::nominal);
        int corners = kinds.keySet().stream().mapToInt(kind -> mover(kind).spread().corners().size()).max().orElse(0);
        List<SystemSurvival> ends = IntStream.range(0, corners).mapToObj(corner -> survival(states, numbers, kinds, spread -> spread.corners()
                .get(corner % spread.corners().size()))).distinct().toList();
        int spare = states.stream().filter(node -> !node.kept()).mapToInt(node -> node.failed().count()).min().orElse(1) - 1;
        List<SystemLife.Step> steps = states.stream().filter(node -> node.beyond() <= 1).map(node -> new SystemLife.Step(node.failed().words(banks), node.failed().count(),
                node.kept(), node.limit(), node.kept() ? meanAgeing(node, members) : 1)).toList();
        return new SystemLife.Group(place, spare, steps, nominal, ends);
    }

    /** The graph, and lives, with one answer to what is uncertain: how much faster the rest ages depends on it, too. */
    private SystemSurvival survival(List<Exploration.Node> states, Map<Failed, Integer> numbers, Map<Kind, Integer> kinds, Function<LifeState.Spread, DutyLife> answer) {
        List<FailureGraph.State> graph = new ArrayList<>();
        for (Exploration.Node node : states) {
            List<FailureGraph.Failure> failures = new ArrayList<>();
            for (Failed.Next next : node.failed().next(banks)) {
                if (numbers.containsKey(next.to())) {
                    int kind = kinds.computeIfAbsent(new Kind(next.bank(), next.place()), key -> kinds.size());
                    failures.add(new FailureGraph.Failure(numbers.get(next.to()), next.units(), kind, kind, node == none ? 1
                            : ageing(node, next.bank(), next.place(), answer)));
                }
            }
            graph.add(new FailureGraph.State(node.kept(), failures));
        }
        return new SystemSurvival(new FailureGraph(graph), kinds.keySet().stream().map(kind -> lives(mover(kind), answer.apply(mover(kind).spread()))).toList());
    }

    /** The first column stands for all. */
    private MissionLife.MoverMission mover(Kind kind) {
        MissionLife.BankMission bank = none.lives().get(kind.bank()).orElseThrow();
        return bank.mover(kind.place() + 1).orElseGet(() -> bank.worst().orElseThrow());
    }

    private static LifeDistribution lives(MissionLife.MoverMission mover, DutyLife life) {
        return life.distribution().scaled(mover.stretch());
    }

    /** How much faster the movers in a place age: the mean over those that run. */
    private double ageing(Exploration.Node node, int bank, int place, Function<LifeState.Spread, DutyLife> answer) {
        int series = Failed.series(banks.get(bank).passage());
        double before = calendar(mover(new Kind(bank, place)), answer);
        OptionalDouble mean = node.lives().get(bank).stream().flatMap(lives -> lives.movers().stream()).filter(mover -> (mover.position() - 1) % series == place)
                .mapToDouble(mover -> before / calendar(mover, answer)).average();
        // alike but for rounding
        return Math.abs(mean.orElse(1) - 1) < 1e-9 ? 1 : mean.getAsDouble();
    }

    private static double calendar(MissionLife.MoverMission mover, Function<LifeState.Spread, DutyLife> answer) {
        return mover.stretch() * answer.apply(mover.spread()).distribution().life(0.1);
    }

    private double meanAgeing(Exploration.Node node, List<Integer> members) {
        double sum = 0;
        int count = 0;
        for (int bank : members) {
            int series = Failed.series(banks.get(bank).passage());
            if (fails(bank)) {
                for (int place = 0; place < series; place++) {
                    sum += ageing(node, bank, place, LifeState.Spread::nominal);
                    count++;
                }
            }
        }
        return count == 0 ? 1 : sum / count;
    }
}
