package tramontane.selection.desktop.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Widget;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfEnvironmentVariable;
import org.junit.jupiter.api.io.TempDir;
import tramontane.desktop.Command;
import tramontane.desktop.View;
import tramontane.selection.Duty;
import tramontane.selection.WishSection;

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
        display = Display.getDefault(); // one for all tests of a process
        shell = new Shell(display);
        shell.setLayout(new FillLayout());
        shell.setSize(1000, 700);
        desk = new ADesk(shell, home, Given.duty());
    }

    @AfterEach
    void close() {
        shell.dispose();
        desk.dispose();
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

    private static <W extends Widget> W named(String id, Class<W> type, Control control) {
        return all(Control.class, control).stream().filter(each -> id.equals(each.getData("tramontane.id"))).map(type::cast).findFirst()
                .orElseThrow(() -> new AssertionError("no " + id));
    }

    @Test
    void aPointOfTheScatterSelectsItsRow() throws java.io.IOException {
        ownParts();
        View view = candidates();
        Table table = named("candidates", Table.class, view.control());
        choose(view, table);
        assertFalse(named("candidates.across", Combo.class, view.control()).isVisible());
        command(view, "candidates.scatter").run().accept(desk);
        Combo across = named("candidates.across", Combo.class, view.control());
        Combo up = named("candidates.up", Combo.class, view.control());
        assertTrue(across.isVisible());
        assertEquals("power", across.getText());
        up.select(up.indexOf("to spare"));
        up.notifyListeners(SWT.Selection, new Event());
        Composite chart = named("candidates.scatter", Composite.class, view.control());
        until(() -> chart.getSize().y > 200);
        Control plot = all(Control.class, chart).stream().filter(each -> each.isVisible() && each.isListening(SWT.MouseWheel)).findFirst().orElseThrow();
        // 5, 10 and 20 W lie across, 0.002, 0.05 and 0.12 to spare upwards, with a twentieth of room at both ends
        press(plot, (20 - 4.25) / 16.5, (0.12 + 0.0039) / 0.1298);
        assertEquals(1, table.getSelectionIndex());
        press(plot, (5 - 4.25) / 16.5, (0.05 + 0.0039) / 0.1298);
        assertEquals(2, table.getSelectionIndex());
        press(plot, 0.9, 0.5);
        assertEquals(2, table.getSelectionIndex(), "nothing is there");
        command(view, "candidates.table").run().accept(desk);
        Table twin = all(Table.class, chart).getFirst();
        assertTrue(twin.isVisible());
        assertTrue(Arrays.stream(twin.getItems()).anyMatch(item -> item.getText(0).equals("not in the Pareto set: 2 Garbin 92, single") && item.getText(1).equals("20.0 W")),
                Arrays.stream(twin.getItems()).map(item -> item.getText(0)).toList().toString());
        view.close();
    }

    /** Clicks a place of the plot, shares of it from the left and from below. */
    private static void press(Control plot, double x, double y) {
        Event event = new Event();
        event.button = 1;
        event.count = 1;
        event.x = (int) Math.round(x * (plot.getSize().x - 1));
        event.y = (int) Math.round((1 - y) * (plot.getSize().y - 1));
        plot.notifyListeners(SWT.MouseDown, event);
        plot.notifyListeners(SWT.MouseUp, event);
    }

    @Test
    void aFigureIsAddedAndAllIsKeptInTheDesign() throws java.io.IOException {
        ownParts();
        View view = candidates();
        until(() -> named("candidates.choose", Button.class, view.control()).isEnabled());
        assertFalse(named("candidates.keep", Button.class, view.control()).isEnabled(), "nothing differs");
        Menu figures = all(Composite.class, view.control()).stream().map(Control::getMenu).filter(each -> each != null && "candidates.figures".equals(each.getData("tramontane.id")))
                .findFirst().orElseThrow();
        figures.notifyListeners(SWT.Show, new Event());
        MenuItem flow = Arrays.stream(figures.getItems()).flatMap(group -> Arrays.stream(group.getMenu().getItems()))
                .filter(item -> "candidates.figure:airflow.bank.flow".equals(item.getData("tramontane.id"))).findFirst().orElseThrow();
        assertFalse(flow.getSelection());
        flow.setSelection(true);
        flow.notifyListeners(SWT.Selection, new Event());
        Text weight = named("candidates.field:" + Asked.weight("airflow.bank.flow"), Text.class, view.control());
        assertEquals("1", weight.getText());
        weight.setText("2");
        until(() -> named("candidates.keep", Button.class, view.control()).isEnabled());
        named("candidates.keep", Button.class, view.control()).notifyListeners(SWT.Selection, new Event());
        assertEquals(List.of("keep settings of the choice for movers"), desk.steps);
        assertEquals(2.0, WishSection.of(desk.design, Duty.BANK).weights().get("airflow.bank.flow"));
        view.show(desk.scene());
        assertFalse(named("candidates.keep", Button.class, view.control()).isEnabled());
        assertEquals("2", named("candidates.field:" + Asked.weight("airflow.bank.flow"), Text.class, view.control()).getText());
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
