package tramontane.selection.desktop.internal;

import java.nio.file.Path;
import java.util.Map;
import java.util.function.Consumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import tramontane.desktop.Palette;
import tramontane.desktop.View;
import tramontane.model.file.DesignFile;

/** The views of this bundle alone, with the real engine and catalogue and no framework: HOME FILE. */
public final class Demo {

    private Demo() {
    }

    /** Opens them. */
    public static void main(String[] arguments) {
        Display display = new Display();
        Shell shell = new Shell(display);
        shell.setText("Tramontane");
        shell.setLayout(new FillLayout());
        shell.setSize(1280, 800);
        Path home = Path.of(arguments[0]);
        ADesk desk = new ADesk(shell, home, DesignFile.read(Path.of(arguments[1])).design().orElseThrow());
        desk.palette = Display.isSystemDarkTheme() ? Palette.DARK : Palette.LIGHT;
        Shelf shelf = new Shelf(Folders.of(Map.of("tramontane.catalogue", "../../product/catalogue")::get, home), Given.ENGINE::sectionTypes);
        CTabFolder tabs = new CTabFolder(shell, SWT.NONE);
        View candidates = new CandidatesView(tabs, desk, Given.REAL, shelf);
        View catalogue = new CatalogueView(tabs, desk, shelf);
        Consumer<View> add = view -> {
            CTabItem tab = new CTabItem(tabs, SWT.NONE);
            tab.setText(view == candidates ? "Candidates" : "Catalogue");
            tab.setControl(view.control());
            view.show(desk.scene());
        };
        add.accept(candidates);
        add.accept(catalogue);
        tabs.setSelection(0);
        shell.open();
        while (!shell.isDisposed()) {
            if (!display.readAndDispatch()) {
                display.sleep();
            }
        }
        desk.dispose();
        display.dispose();
    }
}
