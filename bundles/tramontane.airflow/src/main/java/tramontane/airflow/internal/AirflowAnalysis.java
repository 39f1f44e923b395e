package tramontane.airflow.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import org.osgi.service.component.annotations.ReferenceCardinality;
import org.osgi.service.component.annotations.ReferencePolicyOption;
import tramontane.airflow.AirPathModel;
import tramontane.airflow.AirPathSolution;
import tramontane.airflow.AirPathSolver;
import tramontane.airflow.NetworkSolver;
import tramontane.airflow.SpeedLaws;
import tramontane.analysis.Analysis;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Input;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.analysis.SpeedLaw;
import tramontane.model.Design;
import tramontane.model.Value;

/**
 * Air flow with every bay at outside temperature.
 *
 * <p>It is made anew when a passage kind or speed law comes or goes, so that whoever keeps its results sees that they are old.
 */
@Component(service = Analysis.class)
public final class AirflowAnalysis implements Analysis<OperatingPoint> {

    private final List<PassageKind> kinds;
    private final List<SpeedLaw> speedLaws;

    /**
     * Made by the framework.
     *
     * @param kinds     the loaded passage kinds
     * @param speedLaws the loaded speed laws with their service properties, by which they are ranked
     */
    @Activate
    public AirflowAnalysis(
            @Reference(cardinality = ReferenceCardinality.MULTIPLE, policyOption = ReferencePolicyOption.GREEDY)
            List<PassageKind> kinds,
            @Reference(cardinality = ReferenceCardinality.MULTIPLE, policyOption = ReferencePolicyOption.GREEDY,
                    service = SpeedLaw.class)
            List<Map.Entry<Map<String, Object>, SpeedLaw>> speedLaws) {
        this.kinds = kinds.stream().sorted(Comparator.comparing(kind -> kind.form().name())).toList();
        this.speedLaws = SpeedLaws.ranked(speedLaws);
    }

    @Override
    public String id() {
        return "airflow";
    }

    @Override
    public String label() {
        return "air flow";
    }

    @Override
    public Scope scope() {
        return Scope.CONDITION;
    }

    @Override
    public Class<OperatingPoint> gives() {
        return OperatingPoint.class;
    }

    @Override
    public List<FigureKind> figures() {
        return Figures.ALL;
    }

    @Override
    public Design reads(Design design) {
        return Design.EMPTY.withAirPath(design.airPath()).withAirMovers(design.airMovers())
                .withHeatSources(design.heatSources()).withConditions(design.conditions())
                .withRequirements(design.requirements().stream()
                        .filter(requirement -> Set.of(Figures.AIR_RISE.id(), Figures.STALL_MARGIN.id()).contains(requirement.figure()))
                        .toList())
                .withMore(Value.Tree.EMPTY);
    }

    @Override
    public Result<OperatingPoint> run(Input input, Run run) {
        AirPathModel model = AirPathModel.of(input.design(), input.condition(), kinds);
        if (!model.obstacles().isEmpty()) {
            return Result.notComputed(model.obstacles().toArray(Finding[]::new));
        }
        Map<String, Double> speeds = model.speeds(speedLaws);
        AirPathSolver solver = model.at(speeds);
        AirPathSolution solution = solver.solve(model.temperatures(), NetworkSolver.Settings.STANDARD, Optional.empty(),
                run::cancelled);
        run.check();
        if (solution.point().isEmpty()) {
            return Result.notComputed(solution.obstacles().toArray(Finding[]::new));
        }
        AirflowReading reading = new AirflowReading(input.design(), model, solver, speeds, solution, Map.of());
        Variations variations = Variations.of(reading, run);
        if (run.trace().recording()) {
            AirflowSteps.record(reading, run.trace());
            PathSteps.record(reading, variations, run.trace());
        }
        List<Figure> figures = new ArrayList<>(variations.bands().figures());
        variations.lessPressure().forEach((bank, flow) -> figures.add(Figure.of(Figures.LESS_PRESSURE, bank, flow)));
        variations.morePressure().forEach((bank, flow) -> figures.add(Figure.of(Figures.MORE_PRESSURE, bank, flow)));
        List<Finding> findings = new ArrayList<>(AirflowFindings.of(reading));
        findings.addAll(PathFindings.of(reading, variations));
        return new Result<>(solution.point(), figures, findings);
    }
}
