package tramontane.cli.internal;

import java.util.List;
import tramontane.analysis.Evaluation;

/** A program that solves for ever, to be stopped from outside. */
final class SlowMain {

    private SlowMain() {
    }

    /** Entry of the program. */
    public static void main(String[] line) {
        CommandLineEntry.run(TestSurroundings.with(new FakeEngine(List.of(), (request, watch) -> {
            System.err.println("solving");
            while (!watch.cancelled()) {
                Thread.onSpinWait();
            }
            return new Evaluation(request.design(), List.of(), List.of(), List.of(), List.of(), true);
        }, List.of())), line);
    }
}
