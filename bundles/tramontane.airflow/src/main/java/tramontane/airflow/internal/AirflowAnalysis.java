package tramontane.airflow.internal;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import org.osgi.service.component.annotations.ReferenceCardinality;
import org.osgi.service.component.annotations.ReferencePolicyOption;
import tramontane.airflow.AirPathModel;
import tramontane.analysis.Analysis;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Input;
import tramontane.analysis.Kinds;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.analysis.SpeedLaw;
import tramontane.analysis.SpeedLaws;
import tramontane.model.Design;

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
        this.kinds = Kinds.byName(kinds, PassageKind::form);
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
        return AirflowResult.figures();
    }

    @Override
    public boolean mayBeBrief() {
        return true;
    }

    @Override
    public Design reads(Design design) {
        return AirflowResult.reads(design, speedLaws);
    }

    @Override
    public Result<OperatingPoint> run(Input input, Run run) {
        AirPathModel model = AirPathModel.of(input.design(), input.condition(), kinds);
        return AirflowResult.of(input.design(), model, speedLaws, Map.of(), model.temperatures(), Optional.empty(), false, run);
    }
}
