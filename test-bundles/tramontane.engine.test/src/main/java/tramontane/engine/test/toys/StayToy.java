package tramontane.engine.test.toys;

import java.util.List;
import org.osgi.framework.BundleActivator;
import org.osgi.framework.BundleContext;
import tramontane.analysis.Analysis;
import tramontane.analysis.Better;
import tramontane.analysis.Figure;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Input;
import tramontane.analysis.Needs;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.Relation;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.analysis.Trace;
import tramontane.physics.units.QuantityKind;

/** A well-behaved analysis: how long air stays in the box. */
public final class StayToy implements BundleActivator, Analysis<StayToy.Stay> {

    /** Its data. */
    public record Stay(double seconds) {
    }

    private static final double VOLUME = 0.02;
    private static final FigureKind STAY = new FigureKind("toy.stay", "stay of air", QuantityKind.TIME, Better.LOWER,
            "Volume by flow.");
    private static final Relation VOLUME_BY_FLOW = new Relation("mean residence time", "t = V / Q", "conservation of volume", "");

    @Override
    public void start(BundleContext context) {
        context.registerService(Analysis.class, this, null);
    }

    @Override
    public void stop(BundleContext context) {
        // the framework takes the service back
    }

    @Override
    public String id() {
        return "toy.stay";
    }

    @Override
    public String label() {
        return "stay of air";
    }

    @Override
    public Scope scope() {
        return Scope.CONDITION;
    }

    @Override
    public Class<Stay> gives() {
        return Stay.class;
    }

    @Override
    public Needs needs() {
        return Needs.results(OperatingPoint.class);
    }

    @Override
    public List<FigureKind> figures() {
        return List.of(STAY);
    }

    @Override
    public Result<Stay> run(Input input, Run run) {
        double flow = input.result(OperatingPoint.class).banks().get(0).flow();
        double seconds = VOLUME / flow;
        if (run.trace().recording()) {
            run.trace().step(new Trace.Step(STAY.id(), "", VOLUME_BY_FLOW, seconds, List.of(
                    new Trace.Term("volume", QuantityKind.VOLUME, VOLUME, "assumed"),
                    new Trace.Term("flow", QuantityKind.FLOW, flow, "airflow.bank.flow"))));
        }
        return Result.of(new Stay(seconds)).with(Figure.of(STAY, "", seconds));
    }
}
