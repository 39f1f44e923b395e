package tramontane.thermal.internal;

import java.util.List;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import tramontane.airflow.AirflowStudy;
import tramontane.analysis.Analysis;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Finding;
import tramontane.analysis.Input;
import tramontane.analysis.Needs;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.model.Design;
import tramontane.thermal.Loop;
import tramontane.thermal.ThermalModel;
import tramontane.thermal.ThermalModels;

/**
 * The operating point with flow, temperature and speed in agreement. It stands in for that of the air flow alone, which has all
 * bays at outside temperature, and gives all its figures anew.
 */
@Component(service = Analysis.class, property = "service.ranking:Integer=100")
public final class CoupledAnalysis implements Analysis<OperatingPoint> {

    private final ThermalModels models;

    /**
     * Made by the framework.
     *
     * @param models makes models with what is loaded
     */
    @Activate
    public CoupledAnalysis(@Reference ThermalModels models) {
        this.models = models;
    }

    @Override
    public String id() {
        return "thermal.flow";
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
    public Needs needs() {
        return Needs.results(OperatingPoint.class);
    }

    @Override
    public List<FigureKind> figures() {
        return AirflowStudy.figures();
    }

    @Override
    public boolean mayBeBrief() {
        return true;
    }

    @Override
    public Design reads(Design design) {
        return AirflowStudy.reads(design, models.speedLaws()).withControlLaws(design.controlLaws());
    }

    @Override
    public Result<OperatingPoint> run(Input input, Run run) {
        ThermalModel model = models.model(input.design(), input.condition());
        if (!model.obstacles().isEmpty()) {
            return Result.notComputed(model.obstacles().toArray(Finding[]::new));
        }
        Loop loop = model.settle(run::cancelled);
        run.check();
        if (loop.state().isEmpty()) {
            return Result.notComputed(loop.obstacles().isEmpty() ? new Finding[] {ThermalFindings.hunting(model, loop)}
                    : loop.obstacles().toArray(Finding[]::new));
        }
        return model.study(loop.state().get(), run);
    }
}
