package tramontane.engine.internal;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tramontane.analysis.Cases;
import tramontane.analysis.Derivation;
import tramontane.analysis.Engine;
import tramontane.analysis.Trace;
import tramontane.model.Design;

/** Finds where a figure comes from: runs who gave it again, with a trace that records. */
final class Tracing {

    /** More steps than anybody reads; what comes after is dropped. */
    private static final int MOST_STEPS = 100_000;

    private Tracing() {
    }

    /**
     * The steps that lead to a figure, in the order in which they were taken.
     *
     * <p>These are the steps of the analysis that gave it. Where one rests on a figure of another analysis, its input names
     * that figure, which can be asked about in turn.
     *
     * @param session   runs analyses
     * @param job       the job that it is part of
     * @param design    the design
     * @param condition the case's id; empty for a figure of the design as a whole
     * @param figure    the figure's id
     * @param place     its place
     */
    static List<Trace.Step> of(Session session, Job job, Design design, String condition, String figure, String place) {
        Design bare = Cosmetics.strip(design);
        List<Engine.Case> cases = Cases.of(bare, Set.of()).list();
        Optional<Engine.Case> concrete = cases.stream().filter(each -> each.concrete().id().equals(condition)).findFirst();
        Session.OnThread answers = session.new OnThread(job, null, bare, cases);
        for (Card card : session.order().sequence().reversed()) {
            boolean overruled = session.order().above(card).stream().anyMatch(higher -> higher.declares(figure));
            if (!card.declares(figure) || overruled || !card.isDesignWide() && concrete.isEmpty()) {
                continue;
            }
            Optional<Engine.Case> in = card.isDesignWide() ? Optional.empty() : concrete;
            boolean gave = Session.figures(answers.of(card, in), in).anyMatch(each -> each.kind().id().equals(figure)
                    && each.place().equals(place) && each.condition().equals(condition));
            if (gave) {
                Recorder recorder = new Recorder();
                return answers.run(card, in, recorder).isComputed() ? onTheWay(recorder.steps, figure, place) : List.of();
            }
        }
        return List.of();
    }

    /** The steps for one figure at one place, and those that their inputs name, and so on. */
    static List<Trace.Step> onTheWay(List<Trace.Step> steps, String figure, String place) {
        Derivation all = Derivation.of(steps, List.of());
        Set<Trace.Step> chosen = Collections.newSetFromMap(new IdentityHashMap<>());
        List<Trace.Step> open = new ArrayList<>(all.of(figure, place));
        while (!open.isEmpty()) {
            Trace.Step step = open.removeLast();
            if (chosen.add(step)) {
                for (Trace.Term term : step.inputs()) {
                    open.addAll(all.behind(step, term));
                }
            }
        }
        return steps.stream().filter(chosen::contains).toList();
    }

    private static final class Recorder implements Trace {

        private final List<Step> steps = new ArrayList<>();

        @Override
        public boolean recording() {
            return true;
        }

        @Override
        public void step(Step step) {
            if (steps.size() < MOST_STEPS) {
                steps.add(step);
            }
        }
    }
}
