package tramontane.airflow.desktop.internal.duty;

import java.nio.file.Path;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import tramontane.analysis.Evaluation;
import tramontane.desktop.Palette;

/** The duty chart of a sample in a window of its own: sample, number of the case, light or dark, width, height, what is shown. */
final class DutyDemo {

    private DutyDemo() {
    }

    public static void main(String[] args) {
        Evaluation evaluation = Evaluated.of(Evaluated.sample(Path.of("../../product/samples/" + args[0] + ".tramontane.json")));
        Palette palette = args[2].equals("dark") ? Palette.DARK : Palette.LIGHT;
        Display display = new Display();
        Shell shell = new Shell(display);
        shell.setText(args[0]);
        shell.setLayout(new FillLayout());
        DemoDesk desk = new DemoDesk(shell, evaluation, evaluation.cases().get(Integer.parseInt(args[1])).concrete().id(), palette);
        desk.memory("").put("shown", args[5].replace('+', ' '));
        DutyView view = new DutyView(shell, desk, Evaluated.PHYSICS);
        view.show(desk.scene());
        shell.setSize(Integer.parseInt(args[3]), Integer.parseInt(args[4]));
        shell.open();
        view.focus();
        while (!shell.isDisposed()) {
            if (!display.readAndDispatch()) {
                display.sleep();
            }
        }
        display.dispose();
    }
}
