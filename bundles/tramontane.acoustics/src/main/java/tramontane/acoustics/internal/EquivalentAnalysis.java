package tramontane.acoustics.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.osgi.service.component.annotations.Component;
import tramontane.acoustics.EquivalentLevels;
import tramontane.acoustics.NoiseState;
import tramontane.analysis.Amount;
import tramontane.analysis.Analysis;
import tramontane.analysis.Cases;
import tramontane.analysis.Engine;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Input;
import tramontane.analysis.Needs;
import tramontane.analysis.Overview;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.analysis.Severity;
import tramontane.analysis.Table;
import tramontane.analysis.Trace;
import tramontane.model.Design;
import tramontane.model.MissionPhase;
import tramontane.physics.sound.Levels;
import tramontane.physics.units.QuantityKind;

/** The equivalent level at each listening position over the mission. */
@Component(service = Analysis.class)
public final class EquivalentAnalysis implements Analysis<EquivalentLevels> {

    @Override
    public String id() {
        return "acoustics.mission";
    }

    @Override
    public String label() {
        return "noise over the mission";
    }

    @Override
    public Scope scope() {
        return Scope.DESIGN;
    }

    @Override
    public Class<EquivalentLevels> gives() {
        return EquivalentLevels.class;
    }

    @Override
    public Needs needs() {
        return Needs.results(NoiseState.class);
    }

    @Override
    public List<FigureKind> figures() {
        return List.of(Figures.EQUIVALENT);
    }

    @Override
    public Result<EquivalentLevels> run(Input input, Run run) {
        Design design = input.design();
        Map<String, NoiseState> states = input.results(NoiseState.class);
        Set<String> positions = new LinkedHashSet<>();
        states.values().forEach(state -> state.positions().forEach(position -> positions.add(position.position())));
        if (positions.isEmpty() || design.mission().isEmpty()) {
            return Result.of(new EquivalentLevels(List.of()));
        }
        List<EquivalentLevels.AtPosition> levels = new ArrayList<>();
        List<String> missing = new ArrayList<>();
        for (String position : positions) {
            List<EquivalentLevels.Phase> phases = new ArrayList<>();
            for (MissionPhase phase : design.mission()) {
                Optional<EquivalentLevels.Phase> known = phase(design, phase, position, states);
                if (known.isEmpty() && !missing.contains(phase.condition())) {
                    missing.add(phase.condition());
                }
                known.ifPresent(phases::add);
            }
            if (phases.size() == design.mission().size() && phases.stream().mapToDouble(EquivalentLevels.Phase::time).sum() > 0) {
                levels.add(new EquivalentLevels.AtPosition(position, phases));
            }
        }
        List<Finding> findings = missing.isEmpty() ? List.of() : List.of(Finding.of(Severity.NOT_JUDGED, "", "the equivalent level over the mission is"
                + " not known: no level could be computed in " + String.join(", ", missing)));
        EquivalentLevels result = new EquivalentLevels(levels);
        List<Figure> figures = levels.stream().map(each -> Double.isFinite(each.level())
                ? Figure.of(Figures.EQUIVALENT, each.position(), each.level()).within(each.lower(), each.upper())
                : Figure.of(Figures.EQUIVALENT, each.position(), NoiseAnalysis.SILENCE).within(NoiseAnalysis.SILENCE, NoiseAnalysis.SILENCE)).toList();
        levels.forEach(each -> record(each, run.trace()));
        return new Result<>(Optional.of(result), figures, findings, figures.isEmpty() ? List.of() : List.of(new Overview(table(result),
                List.of(Figures.EQUIVALENT.id()))));
    }

    /** A phase; where its condition stands for several cases, the mean of their powers. */
    private static Optional<EquivalentLevels.Phase> phase(Design design, MissionPhase phase, String position, Map<String, NoiseState> states) {
        List<Engine.Case> cases = Cases.of(design, Set.of(phase.condition())).of(phase.condition());
        double power = 0;
        double lower = 0;
        double upper = 0;
        for (Engine.Case each : cases) {
            Optional<NoiseState.PositionNoise> heard = Optional.ofNullable(states.get(each.concrete().id())).flatMap(state -> state.position(position));
            if (heard.isEmpty()) {
                return Optional.empty();
            }
            power += Levels.power(heard.get().level()) / cases.size();
            lower += Levels.power(heard.get().lower()) / cases.size();
            upper += Levels.power(heard.get().upper()) / cases.size();
        }
        return cases.isEmpty() ? Optional.empty() : Optional.of(new EquivalentLevels.Phase(phase.condition(), phase.timePerYear().si(),
                Levels.of(power), Levels.of(lower), Levels.of(upper)));
    }

    private static void record(EquivalentLevels.AtPosition at, Trace trace) {
        if (!trace.recording()) {
            return;
        }
        List<Trace.Term> terms = new ArrayList<>();
        for (EquivalentLevels.Phase phase : at.phases()) {
            if (Double.isFinite(phase.level())) {
                terms.add(new Trace.Term("level L in " + phase.condition(), QuantityKind.LEVEL, phase.level(), Figures.LEVEL.id()));
            }
            terms.add(new Trace.Term("time t in " + phase.condition(), QuantityKind.TIME, phase.time(), "mission"));
        }
        boolean silent = !Double.isFinite(at.level());
        trace.step(new Trace.Step(Figures.EQUIVALENT.id(), at.position(), silent ? Figures.SILENCE : Figures.MEAN,
                silent ? NoiseAnalysis.SILENCE : at.level(), terms));
    }

    private static Table table(EquivalentLevels result) {
        List<Table.Column> columns = new ArrayList<>(List.of(new Table.Column("condition", false), new Table.Column("time in a year", true)));
        result.positions().forEach(at -> columns.add(new Table.Column(at.position(), true)));
        Map<String, List<Table.Cell>> rows = new LinkedHashMap<>();
        List<EquivalentLevels.Phase> phases = result.positions().getFirst().phases();
        for (int i = 0; i < phases.size(); i++) {
            List<Table.Cell> row = new ArrayList<>(List.of(new Table.Words(phases.get(i).condition()), new Amount(phases.get(i).time(), QuantityKind.TIME)));
            for (EquivalentLevels.AtPosition at : result.positions()) {
                row.add(level(at.phases().get(i).level()));
            }
            rows.put(phases.get(i).condition() + i, row);
        }
        List<Table.Cell> sum = new ArrayList<>(List.of(new Table.Words("equivalent"), new Amount(phases.stream().mapToDouble(EquivalentLevels.Phase::time)
                .sum(), QuantityKind.TIME)));
        result.positions().forEach(at -> sum.add(level(at.level())));
        rows.put("", sum);
        return new Table("Noise over the mission", columns, List.copyOf(rows.values()));
    }

    private static Table.Cell level(double level) {
        return Double.isFinite(level) ? new Amount(Math.rint(10 * level) / 10, QuantityKind.LEVEL) : new Table.Words("silent");
    }
}
