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

/** An analysis that never ends and listens to nobody until its bundle is stopped. */
public final class LoopingToy implements BundleActivator, Analysis<Object> {

    private volatile boolean stopped;
    private volatile long turns;

    @Override
    public void start(BundleContext context) {
        context.registerService(Analysis.class, this, null);
    }

    @Override
    public void stop(BundleContext context) {
        stopped = true;
    }

    @Override
    public String id() {
        return "toy.loops";
    }

    @Override
    public String label() {
        return "looping toy";
    }

    @Override
    public Scope scope() {
        return Scope.DESIGN;
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
        while (!stopped) {
            turns = turns + 1;
        }
        return Result.of(new Object());
    }
}
