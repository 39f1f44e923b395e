package tramontane.reliability.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.Analysis;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Input;
import tramontane.analysis.Needs;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.analysis.Severity;
import tramontane.reliability.LifeState;
import tramontane.reliability.MoverLife;
import tramontane.reliability.SystemLife;

/** What happens when movers fail: survival of banks and of the equipment, repair, visits, spares. */
@Component(service = Analysis.class)
public final class SystemAnalysis implements Analysis<SystemLife> {

    private static final SystemLife NOTHING = new SystemLife(List.of(), Optional.empty(), Optional.empty());

    @Override
    public String id() {
        return "reliability.system";
    }

    @Override
    public String label() {
        return "redundancy";
    }

    @Override
    public Scope scope() {
        return Scope.DESIGN;
    }

    @Override
    public Class<SystemLife> gives() {
        return SystemLife.class;
    }

    @Override
    public Needs needs() {
        return Needs.results(LifeState.class);
    }

    @Override
    public List<FigureKind> figures() {
        return Figures.SYSTEM;
    }

    @Override
    public boolean mayBeBrief() {
        return true; // nobody is known to ask for it, and the bounds of all figures cost as much as all else
    }

    @Override
    public Result<SystemLife> run(Input input, Run run) {
        Scene scene = Scene.of(input.design());
        if (!scene.asked() || scene.banks().stream().allMatch(bank -> bank.model().isEmpty())) {
            return Result.of(NOTHING); // the other analyses say what is missing
        }
        if (Scene.phases(input.design()).isEmpty()) {
            return Result.of(NOTHING).with(scene.required(figures(), "redundancy", "without a mission nothing is known of how movers age").toArray(Finding[]::new));
        }
        List<Finding> findings = new ArrayList<>();
        if (scene.service().serviceLife().isEmpty()) {
            findings.addAll(scene.required(List.of(Figures.SYSTEM_SURVIVAL, Figures.REPAIRED_SURVIVAL), "survival", MissionAnalysis.WITHOUT_SERVICE));
        }
        Limits limits = new Limits(scene, run);
        boolean all = scene.banks().stream().allMatch(bank -> bank.section().needed().isPresent());
        if (!all) {
            Limits.Answer whole = limits.whole();
            if (whole.passed().isPresent()) {
                return Result.of(NOTHING).with(Finding.of(Severity.NOT_JUDGED, "", "survival of the banks is not known: a limit is "
                        + (whole.known() ? "passed" : "not known") + " with all movers running (" + whole.passed().get() + ")")
                        .remedy("meet the limits first, or say how many movers are needed in the section " + MoverLife.SECTION + " of each bank"));
            }
            if (!whole.any()) {
                findings.add(Finding.note("", "no limit of a temperature or flow says how many movers are needed: every failure counts as one too many")
                        .remedy("state requirements, limits of heat sources, or how many movers are needed in the section " + MoverLife.SECTION + " of each bank"));
            }
        }
        Exploration exploration = new Exploration(scene, run, limits);
        Map<Failed, Exploration.Node> nodes = exploration.explore();
        if (exploration.cut()) {
            findings.add(Finding.note("", "only the first " + Exploration.MOST + " sets of failed movers were looked at; beyond them limits count as passed")
                    .remedy("say how many movers are needed in the section " + MoverLife.SECTION + " of each bank"));
        }
        Groups groups = new Groups(scene, nodes);
        List<SystemLife.Group> banks = new ArrayList<>();
        boolean complete = true;
        for (int bank = 0; bank < scene.banks().size(); bank++) {
            run.check();
            if (groups.fails(bank)) {
                banks.add(groups.bank(bank));
            } else {
                complete &= scene.banks().get(bank).model().isPresent(); // one that never runs does not fail
            }
        }
        if (banks.isEmpty()) {
            return Result.of(NOTHING).with(findings.toArray(Finding[]::new));
        }
        SystemLife life = new SystemLife(banks, complete && banks.size() > 1 ? Optional.of(groups.whole()) : Optional.empty(), scene.service().interval());
        if (!complete) {
            findings.add(Finding.of(Severity.NOT_JUDGED, "", "survival of the whole equipment is not known: nothing is known of the life of the movers of "
                    + String.join(", ", scene.banks().stream().filter(bank -> bank.model().isEmpty()).map(Scene.Bank::id).toList())));
        }
        run.check();
        SystemFigures figures = new SystemFigures(scene, life, run);
        if (run.brief()) {
            return new Result<>(Optional.of(life), figures.figures(), List.of());
        }
        findings.addAll(figures.findings());
        return new Result<>(Optional.of(life), figures.figures(), findings, SystemTables.of(scene, life, limits.conditions(), all, figures.figures()));
    }
}
