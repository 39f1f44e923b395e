package tramontane.engine.test.toys;

import java.util.List;
import org.osgi.framework.BundleActivator;
import org.osgi.framework.BundleContext;
import tramontane.analysis.Analysis;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Input;
import tramontane.analysis.Result;
import tramontane.analysis.Run;
import tramontane.analysis.Scope;

/** An analysis that throws. */
public final class ThrowingToy implements BundleActivator, Analysis<Object> {

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
        return "toy.throws";
    }

    @Override
    public String label() {
        return "throwing toy";
    }

    @Override
    public Scope scope() {
        return Scope.CONDITION;
    }

    @Override
    public Class<Object> gives() {
        return Object.class;
    }

    @Override
    public List<FigureKind> figures() {
        return List.of();
    }

    @Override
    public Result<Object> run(Input input, Run run) {
        throw new IllegalStateException("the toy broke");
    }
}
