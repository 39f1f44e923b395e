package tramontane.drive.internal;

import java.util.List;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import tramontane.analysis.Analysis;
import tramontane.analysis.Better;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Input;
import tramontane.analysis.Needs;
import tramontane.analysis.Relation;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.drive.ComputedLaws;
import tramontane.model.Design;
import tramontane.physics.units.QuantityKind;
import tramontane.thermal.ThermalModels;

/**
 * The control laws that spare most and still hold every temperature in every condition.
 *
 * <p>In each case the lowest settings are searched at which all limits and all requirements on temperatures and flows hold; the laws are the lowest
 * ones through these that never fall, start the movers, and are no steeper than their gain margin allows. They are then put into the
 * design and asked about again, and what does not hold yet is raised.
 */
@Component(service = Analysis.class)
public final class LawAnalysis implements Analysis<ComputedLaws> {

    static final FigureKind NEEDED = new FigureKind("drive.law.needed", "setting needed", QuantityKind.FRACTION, Better.LOWER,
            "Lowest setting of a control law that holds all limits, and all requirements that more speed helps, in a case; full speed where none does.");
    static final FigureKind COMPUTED = new FigureKind("drive.law.setting", "setting by the computed law", QuantityKind.FRACTION, Better.LOWER,
            "The setting at which the computed control law rests in a case.");

    static final Relation LEAST = new Relation("setting needed",
            "the least s at which every limit leaves the reserve, and every requirement that more speed helps is met",
            "thermal model; root search", "margins rise with speed");
    static final Relation THROUGH = new Relation("computed law", "f(T), straight between its points: max over cases of min(s_c, s_c - k (T_c - T)), no rise a switch",
            "the lowest law that never falls, is no steeper than k, and gives s_c at T_c", "k by the gain margin wanted");

    private final Decoding decoding = new Decoding();
    private final ThermalModels models;

    /**
     * Made by the framework, where temperatures are loaded.
     *
     * @param models makes thermal models
     */
    @Activate
    public LawAnalysis(@Reference ThermalModels models) {
        this.models = models;
    }

    @Override
    public String id() {
        return "drive.law";
    }

    @Override
    public String label() {
        return "computed control law";
    }

    @Override
    public Scope scope() {
        return Scope.DESIGN;
    }

    @Override
    public Class<ComputedLaws> gives() {
        return ComputedLaws.class;
    }

    @Override
    public Needs needs() {
        return Needs.NOTHING;
    }

    @Override
    public List<FigureKind> figures() {
        return List.of(NEEDED, COMPUTED);
    }

    @Override
    public Design reads(Design design) {
        return models.reads(design).withRequirements(design.requirements());
    }

    @Override
    public Result<ComputedLaws> run(Input input, Run run) {
        return new LawComputation(input.design(), models, decoding, run).result();
    }
}
