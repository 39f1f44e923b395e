package tramontane.airflow.desktop.internal.duty;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.OperatingPoint;
import tramontane.desktop.Results;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.model.edit.Subject;

/** Decides which duty chart is shown. Pure functions. */
public final class DutyPresenter {

    private DutyPresenter() {
    }

    /**
     * A chart to be made.
     *
     * @param evaluation out of what; compared by identity, as evaluations are large
     * @param asked      what is to be seen
     * @param stale      whether the evaluation is that of an earlier state of the design
     */
    public record Wanted(Evaluation evaluation, DutyChart.Asked asked, boolean stale) {

        /** Whether another one gives the same chart. */
        public boolean same(Wanted other) {
            return evaluation == other.evaluation && asked.equals(other.asked);
        }
    }

    /** The banks of a design, in its order. */
    public static List<String> banks(Design design) {
        return design.airPath().passages().stream().filter(Passage::isBank).map(Passage::id).toList();
    }

    /** The bank that is shown: that which was chosen if the design has it, else the first. */
    public static Optional<String> bank(DutyState state, Design design) {
        List<String> banks = banks(design);
        return state.bank().filter(banks::contains).or(() -> banks.stream().findFirst());
    }

    /** The state once something was selected in the window: a bank, or the part of one, brings it up. */
    public static DutyState selected(DutyState state, Design design, Optional<Subject> selection) {
        return selection.filter(subject -> subject.kind() == Subject.Kind.PASSAGE && banks(design).contains(subject.id()))
                .map(subject -> state.withBank(subject.id())).orElse(state);
    }

    /** The conditions of what was computed, as declared in the design. */
    public static List<String> conditions(Results results) {
        return results.cases().stream().map(Engine.Case::declared).distinct().toList();
    }

    /**
     * The chart that is to be made.
     *
     * @param state   what is to be seen
     * @param design  the design in front
     * @param results what is known of it
     * @param front   the case in front
     * @return empty where there is no bank, or nothing known of the case
     */
    public static Optional<Wanted> wanted(DutyState state, Design design, Results results, String front) {
        Optional<String> bank = bank(state, design);
        if (bank.isEmpty()) {
            return Optional.empty();
        }
        return Stream.concat(results.now().filter(each -> knows(each, front)).map(each -> wanted(state, bank.get(), each, front, false)).stream(),
                results.before().filter(each -> knows(each, front)).map(each -> wanted(state, bank.get(), each, front, true)).stream()).findFirst()
                .or(() -> results.running() ? Optional.empty() : results.now().map(each -> wanted(state, bank.get(), each, front, false)));
    }

    private static boolean knows(Evaluation evaluation, String caseId) {
        return evaluation.data(OperatingPoint.class, caseId).isPresent();
    }

    private static Wanted wanted(DutyState state, String bank, Evaluation evaluation, String front, boolean stale) {
        Set<String> others = new LinkedHashSet<>();
        Set<String> seen = new LinkedHashSet<>(state.hidden());
        evaluation.cases().stream().filter(each -> each.concrete().id().equals(front)).map(Engine.Case::declared).forEach(seen::add);
        for (Engine.Case each : evaluation.cases()) {
            // of a condition that stands for several cases, the first stands for it
            if (state.others() && seen.add(each.declared())) {
                others.add(each.concrete().id());
            }
        }
        return new Wanted(evaluation, new DutyChart.Asked(bank, front, others, state.speeds(), state.tolerance(), state.efficiency()), stale);
    }

    /** What is said where there is no chart to be made. */
    public static String why(Design design, Results results, boolean errors) {
        if (banks(design).isEmpty()) {
            return "The design has no bank of air movers. Put one into the air path, and this chart shows where it works.";
        }
        if (errors) {
            return "The design has errors, so nothing is computed. The findings say where.";
        }
        return results.running() ? "Computing…" : "Nothing has been computed yet. Press F5 to compute.";
    }

    /** What a saved chart is called: the design, the bank and the case. */
    public static String fileName(String design, DutyChart.Asked asked) {
        return design + ", " + asked.bank() + ", " + asked.front();
    }
}
