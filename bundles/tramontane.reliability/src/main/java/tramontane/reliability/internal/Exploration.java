package tramontane.reliability.internal;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tramontane.analysis.Run;
import tramontane.model.Condition;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.model.MissionPhase;
import tramontane.reliability.LifeState;
import tramontane.reliability.MissionLife;

/**
 * Lets movers fail one after another until a limit is passed, and asks how fast the rest ages then.
 *
 * <p>Beyond the first set that passes a limit all sets pass one; of them as many are kept as repair needs.
 */
final class Exploration {

    /** Sets of failed movers that are looked at; beyond, limits count as passed. */
    static final int MOST = 60;
    /** Failures beyond the first set that passes a limit, for repair. */
    private static final int BEYOND = 2;

    private final Scene scene;
    private final Run run;
    private final Limits limits;
    private final Map<Failed, Node> nodes = new LinkedHashMap<>();
    private boolean cut;

    /**
     * A set of failed movers.
     *
     * @param failed what has failed
     * @param kept   whether all limits are kept
     * @param limit  which is passed
     * @param lives  lives over the mission of those that run, by bank
     * @param beyond how many failures lie behind the last set that kept all limits
     */
    record Node(Failed failed, boolean kept, String limit, List<Optional<MissionLife.BankMission>> lives, int beyond) {
    }

    Exploration(Scene scene, Run run, Limits limits) {
        this.scene = scene;
        this.run = run;
        this.limits = limits;
    }

    /** All sets, that with nothing failed first, fewer failed ones before more. */
    Map<Failed, Node> explore() {
        Failed none = Failed.none(scene.banks());
        nodes.put(none, new Node(none, true, "", lives(List.of()), 0));
        Deque<Failed> open = new ArrayDeque<>(List.of(none));
        int asked = 0;
        while (!open.isEmpty()) {
            run.check();
            Node from = nodes.get(open.poll());
            for (Failed.Next next : from.failed().next(scene.banks())) {
                if (nodes.containsKey(next.to()) || !known(next.bank())) {
                    continue;
                }
                Node node;
                if (!from.kept()) {
                    node = new Node(next.to(), false, from.limit(), from.lives(), from.beyond() + 1);
                } else if (asked >= MOST) {
                    cut = true;
                    node = new Node(next.to(), false, "not looked at", from.lives(), 1);
                } else {
                    asked++;
                    run.progress(Math.min(0.95, asked / 30.0), next.to().words(scene.banks()) + " failed");
                    node = ask(next.to(), from);
                }
                if (node.beyond() <= BEYOND + 1) {
                    nodes.put(next.to(), node);
                    open.add(next.to());
                }
            }
        }
        return nodes;
    }

    /** Whether some sets were not looked at. */
    boolean cut() {
        return cut;
    }

    /** Whether anything is known of the life of a bank; one of which nothing is known does not fail here. */
    private boolean known(int bank) {
        return nodes.values().iterator().next().lives().get(bank).filter(lives -> !lives.movers().isEmpty()).isPresent();
    }

    private Node ask(Failed failed, Node from) {
        boolean asks = false;
        for (int bank = 0; bank < scene.banks().size(); bank++) {
            Scene.Bank each = scene.banks().get(bank);
            Optional<Integer> needed = each.section().needed();
            int running = failed.banks().get(bank).size() * Failed.series(each.passage()) - failed.count(bank);
            if (needed.isPresent() && running < needed.get()) {
                return new Node(failed, false, "fewer than " + needed.get() + " run", from.lives(), 1);
            }
            if (running == 0 && failed.count(bank) > 0) {
                return new Node(failed, false, "none runs", from.lives(), 1);
            }
            asks |= needed.isEmpty() && failed.count(bank) > 0;
        }
        List<FailedMover> movers = failed.movers(scene.banks());
        if (asks) {
            Limits.Answer answer = limits.with(movers);
            if (!answer.any()) {
                return new Node(failed, false, "no limit says how many are needed", from.lives(), 1);
            }
            if (answer.passed().isPresent()) {
                return new Node(failed, false, answer.passed().get(), from.lives(), 1);
            }
        }
        List<Optional<MissionLife.BankMission>> lives = lives(movers);
        for (int bank = 0; bank < lives.size(); bank++) {
            if (lives.get(bank).isEmpty() && known(bank)) {
                return new Node(failed, false, "life not known then", from.lives(), 1);
            }
        }
        return new Node(failed, true, "", lives, 0);
    }

    private List<Optional<MissionLife.BankMission>> lives(List<FailedMover> failed) {
        Design design = scene.design();
        List<Missions.Part> parts = new ArrayList<>();
        for (MissionPhase phase : Scene.phases(design)) {
            run.check();
            Optional<LifeState> state = design.workingConditions().stream().filter(condition -> condition.id().equals(phase.condition())).findFirst()
                    .map(condition -> condition.with(condition.id(), failed)).flatMap((Condition condition) -> run.ask(design, condition, LifeState.class));
            if (state.isEmpty()) {
                return scene.banks().stream().map(bank -> Optional.<MissionLife.BankMission>empty()).toList();
            }
            parts.add(new Missions.Part(phase, phase.timePerYear().si(), state.get()));
        }
        return scene.banks().stream().map(bank -> parts.stream().allMatch(part -> part.state().bank(bank.id()).isPresent()) && !parts.isEmpty()
                ? Optional.of(Missions.bank(bank.id(), bank.part().orElseThrow().id(), parts)) : Optional.<MissionLife.BankMission>empty()).toList();
    }
}
