package tramontane.selection.desktop.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfEnvironmentVariable;
import org.junit.jupiter.api.io.TempDir;
import tramontane.desktop.Command;
import tramontane.desktop.View;

/** The views on a display; left out where there is none. */
@EnabledIfEnvironmentVariable(named = "DISPLAY", matches = ".+")
class ViewsTest {

    private static final long LONGEST = 20_000;

    @TempDir
    Path home;

    private Display display;
    private Shell shell;
    private ADesk desk;
    private final Given.Fake selector = new Given.Fake();

    @BeforeEach
    void open() {
        display = new Display();
        shell = new Shell(display);
        shell.setLayout(new FillLayout());
        shell.setSize(1000, 700);
        desk = new ADesk(shell, home, Given.duty());
    }

    @AfterEach
    void close() {
        shell.dispose();
        desk.dispose();
        display.dispose();
    }

    private void until(BooleanSupplier there) {
        long end = System.currentTimeMillis() + LONGEST;
        while (!there.getAsBoolean()) {
            assertTrue(System.currentTimeMillis() < end, "it took too long");
            if (!display.readAndDispatch()) {
                try {
                    Thread.sleep(5);
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                    throw new IllegalStateException(e);
                }
            }
        }
    }

    private static <C> List<C> all(Class<C> type, Control control) {
        List<C> found = new ArrayList<>();
        if (type.isInstance(control)) {
            found.add(type.cast(control));
        }
        if (control instanceof Composite composite) {
            for (Control child : composite.getChildren()) {
                found.addAll(all(type, child));
            }
        }
        return found;
    }

    private View candidates() {
        Shelf shelf = new Shelf(Folders.of(name -> null, home), Given.ENGINE::sectionTypes);
        View view = new CandidatesView(shell, desk, selector, shelf);
        shell.open();
        view.show(desk.scene());
        return view;
    }

    private void ownParts() throws java.io.IOException {
        java.nio.file.Files.createDirectories(home.resolve("catalogue"));
        tramontane.catalogue.PartFile.save(home.resolve("catalogue/own.json"), Given.parts());
    }

    private static Command command(View view, String id) {
        return view.commands().stream().filter(command -> command.id().equals(id)).findFirst().orElseThrow();
    }

    /** Once the catalogue has been read. */
    private void choose(View view, Table table) {
        until(() -> all(Button.class, view.control()).stream().anyMatch(button -> button.getText().equals("choose") && button.isEnabled()));
        command(view, "candidates.choose").run().accept(desk);
        until(() -> table.getItemCount() == 3);
    }

    @Test
    void rowsFillInAndOneIsPutByKeys() throws java.io.IOException {
        ownParts();
        View view = candidates();
        Table table = all(Table.class, view.control()).getFirst();
        choose(view, table);
        assertEquals("Garbin 40", table.getItem(0).getText(1));
        assertEquals("10.0 W", table.getItem(0).getText(8));
        assertEquals(desk.digits, table.getItem(0).getFont(8), "digits of one width");
        assertEquals(SWT.RIGHT, table.getColumn(8).getAlignment());
        table.setSelection(1);
        table.notifyListeners(SWT.Selection, new Event());
        assertTrue(command(view, "candidates.put").enabled().test(desk.scene()));
        command(view, "candidates.put").run().accept(desk);
        assertEquals(List.of("put Garbin 92, single into movers"), desk.steps);
        assertEquals(Given.candidates().get(1).design(), desk.design);
        view.close();
    }

    @Test
    void sortingKeepsTheSelectionWithItsRow() throws java.io.IOException {
        ownParts();
        View view = candidates();
        Table table = all(Table.class, view.control()).getFirst();
        choose(view, table);
        table.setSelection(0);
        table.notifyListeners(SWT.Selection, new Event());
        table.getColumn(8).notifyListeners(SWT.Selection, new Event());
        until(() -> table.getSelectionIndex() == 1);
        assertEquals("Garbin 40", table.getSelection()[0].getText(1));
        assertEquals(SWT.UP, table.getSortDirection());
        view.close();
    }

    @Test
    void withoutPartsItOffersTheFolder() {
        View view = candidates();
        until(() -> all(Button.class, view.control()).stream().anyMatch(button -> button.isVisible() && button.getText().equals("open the folder")));
        assertFalse(all(Table.class, view.control()).getFirst().isVisible());
        view.close();
    }

    @Test
    void theCatalogueIsListed() throws java.io.IOException {
        ownParts();
        View view = new CatalogueView(shell, desk, new Shelf(Folders.of(name -> null, home), Given.ENGINE::sectionTypes));
        shell.open();
        view.show(desk.scene());
        Table table = all(Table.class, view.control()).getFirst();
        until(() -> table.getItemCount() == 4);
        all(Text.class, view.control()).getFirst().setText("nothing like it");
        until(() -> table.getItemCount() == 0);
        all(Text.class, view.control()).getFirst().setText("garbin");
        until(() -> table.getItemCount() == 3);
        view.close();
    }
}
