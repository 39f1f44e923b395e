package tramontane.reliability.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.Analysis;
import tramontane.analysis.Cases;
import tramontane.analysis.Engine;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Input;
import tramontane.analysis.Needs;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.analysis.Severity;
import tramontane.model.Design;
import tramontane.model.MissionPhase;
import tramontane.reliability.LifeState;
import tramontane.reliability.LifeState.Spread;
import tramontane.reliability.MissionLife;
import tramontane.reliability.MoverLife;
import tramontane.reliability.statistics.LifeDistribution;

/** How long movers live over the mission, and what must be heeded whatever the condition. */
@Component(service = Analysis.class)
public final class MissionAnalysis implements Analysis<MissionLife> {

    /** Why survival to the end is not known. */
    static final String WITHOUT_SERVICE = "nothing says how long the equipment is to serve";

    @Override
    public String id() {
        return "reliability.mission";
    }

    @Override
    public String label() {
        return "life over the mission";
    }

    @Override
    public Scope scope() {
        return Scope.DESIGN;
    }

    @Override
    public Class<MissionLife> gives() {
        return MissionLife.class;
    }

    @Override
    public Needs needs() {
        return Needs.results(LifeState.class);
    }

    @Override
    public List<FigureKind> figures() {
        return Figures.MISSION;
    }

    @Override
    public Design reads(Design design) {
        return design.withHeatSources(List.of()).withControlLaws(List.of()).withMore(design.only(List.of(MoverLife.SECTION)));
    }

    @Override
    public Result<MissionLife> run(Input input, Run run) {
        Scene scene = Scene.of(input.design());
        if (!scene.asked()) {
            return Result.of(new MissionLife(Optional.empty(), List.of()));
        }
        List<Finding> findings = new ArrayList<>(RuleFindings.of(scene));
        if (Scene.phases(input.design()).isEmpty()) {
            String without = input.design().mission().isEmpty() ? "the design has no mission" : "the times of its mission are all zero";
            findings.add(Finding.note("", "life over the mission is not computed: " + without).remedy("state how long each condition lasts in a year"));
            findings.addAll(scene.required(figures(), "life over the mission", without));
            return new Result<>(Optional.of(new MissionLife(scene.service().serviceLife(), List.of())), List.of(), findings);
        }
        Map<String, LifeState> states = input.results(LifeState.class);
        List<Missions.Part> parts = new ArrayList<>();
        List<String> missing = new ArrayList<>();
        for (MissionPhase phase : Scene.phases(input.design())) {
            List<Engine.Case> cases = Cases.of(input.design(), Set.of(phase.condition())).of(phase.condition());
            List<LifeState> known = cases.stream().map(each -> Optional.ofNullable(states.get(each.concrete().id()))).flatMap(Optional::stream).toList();
            if (known.size() < cases.size() || cases.isEmpty()) {
                missing.add(phase.condition());
            }
            known.forEach(state -> parts.add(new Missions.Part(phase, phase.timePerYear().si() / cases.size(), state)));
        }
        if (!missing.isEmpty()) {
            findings.add(Finding.of(Severity.NOT_JUDGED, "", "life over the mission is not known: none could be computed in " + String.join(", ", missing)));
            return new Result<>(Optional.of(new MissionLife(scene.service().serviceLife(), List.of())), List.of(), findings);
        }
        List<MissionLife.BankMission> banks = scene.banks().stream().filter(bank -> parts.stream().allMatch(part -> part.state().bank(bank.id()).isPresent()))
                .map(bank -> Missions.bank(bank.id(), bank.part().orElseThrow().id(), parts)).toList();
        MissionLife mission = new MissionLife(scene.service().serviceLife(), banks);
        findings.addAll(still(scene, mission));
        if (run.trace().recording()) {
            LifeSteps.mission(mission, run.trace());
        }
        return new Result<>(Optional.of(mission), figures(mission), findings, LifeTables.mission(mission));
    }

    private static List<Figure> figures(MissionLife mission) {
        List<Figure> figures = new ArrayList<>();
        for (MissionLife.BankMission bank : mission.banks()) {
            List<Spread> movers = bank.movers().stream().map(MissionLife.MoverMission::spread).toList();
            LifeAnalysis.bounded(Figures.MISSION_L10, bank.bank(), movers, lives -> lives.life(0.1), 1).ifPresent(figures::add);
            LifeAnalysis.bounded(Figures.MISSION_L1, bank.bank(), movers, lives -> lives.life(0.01), 1).ifPresent(figures::add);
            LifeAnalysis.bounded(Figures.MISSION_L50, bank.bank(), movers, lives -> lives.life(0.5), 1).ifPresent(figures::add);
            LifeAnalysis.bounded(Figures.MISSION_MEAN, bank.bank(), movers, LifeDistribution::mean, 1).ifPresent(figures::add);
            bank.worst().ifPresent(worst -> mission.serviceLife().ifPresent(service -> {
                double running = service / worst.stretch();
                Spread spread = worst.spread();
                figures.add(Figure.of(Figures.MISSION_SURVIVAL, bank.bank(), spread.value(lives -> lives.survival(running)))
                        .within(spread.lower(lives -> lives.survival(running)), spread.upper(lives -> lives.survival(running))));
                figures.add(Figure.of(Figures.MISSION_USED, bank.bank(), spread.value(lives -> running / lives.life(0.1)))
                        .within(spread.lower(lives -> running / lives.life(0.1)), spread.upper(lives -> running / lives.life(0.1))));
            }));
        }
        return figures;
    }

    private static List<Finding> still(Scene scene, MissionLife mission) {
        List<Finding> findings = new ArrayList<>();
        double year = Scene.phases(scene.design()).stream().mapToDouble(phase -> phase.timePerYear().si()).sum();
        if (mission.serviceLife().isEmpty() && !mission.banks().isEmpty()) {
            findings.addAll(scene.required(List.of(Figures.MISSION_SURVIVAL, Figures.MISSION_USED), "survival", WITHOUT_SERVICE));
            findings.add(Finding.note("", "survival is not computed: " + WITHOUT_SERVICE)
                    .remedy("give a serviceLife in the section " + MoverLife.SECTION + " of the design"));
        }
        if (year < MissionLife.YEAR * 0.999 && !mission.banks().isEmpty()) {
            findings.add(Finding.note("", "the mission lasts ", LifeTables.time(year), " in a year; movers are taken not to age for the rest of it")
                    .remedy("add a phase for what happens in between, if they run then").source("assumed"));
        }
        return findings;
    }
}
