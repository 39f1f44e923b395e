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
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;
import tramontane.physics.units.QuantityKind;

/** A stranger's noise: 50 dB at 100 rad/s, and 50 lg n from there. */
public final class NoiseToy implements BundleActivator, Analysis<NoiseToy.Noise> {

    /** Its data. */
    public record Noise(double level) {
    }

    private static final FigureKind LEVEL = new FigureKind("acoustics.level", "level", QuantityKind.LEVEL, Better.LOWER, "By the speed alone.");

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
        return "toy.noise";
    }

    @Override
    public String label() {
        return "noise";
    }

    @Override
    public Scope scope() {
        return Scope.CONDITION;
    }

    @Override
    public Class<Noise> gives() {
        return Noise.class;
    }

    @Override
    public Needs needs() {
        return Needs.results(OperatingPoint.class);
    }

    @Override
    public List<FigureKind> figures() {
        return List.of(LEVEL);
    }

    @Override
    public Result<Noise> run(Input input, Run run) {
        double speed = input.result(OperatingPoint.class).banks().get(0).speed();
        double level = 50 + 50 * Math.log10(speed / 100);
        return Result.of(new Noise(level)).with(Figure.of(LEVEL, "listener", level));
    }
}
