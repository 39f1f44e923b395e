package tramontane.desktop.internal.judging;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import tramontane.desktop.Command;
import tramontane.desktop.Desk;
import tramontane.desktop.FigureText;
import tramontane.desktop.Memory;
import tramontane.desktop.Palette;
import tramontane.desktop.Scene;
import tramontane.desktop.Sheet;
import tramontane.desktop.SheetTable;
import tramontane.desktop.View;

/** Draws tables of figures. */
final class FiguresView implements View {

    private final Desk desk;
    private final FiguresPresenter presenter = new FiguresPresenter();
    private final Composite box;
    private final Composite bar;
    private final Combo tables;
    private final Text text;
    private final Label count;
    private final EmptyOr page;
    private final SheetTable table;
    private Figures.Wanted wanted = Figures.Wanted.ALL_OF_THEM;
    private Figures figures = new Figures(Sheet.EMPTY, Map.of(), List.of(), 0, "");
    private Palette palette;
    private Scene last;

    FiguresView(Composite parent, Desk desk) {
        this.desk = desk;
        box = new Composite(parent, SWT.NONE);
        GridLayout layout = new GridLayout();
        layout.marginWidth = 0;
        layout.marginHeight = 0;
        layout.verticalSpacing = 0;
        box.setLayout(layout);
        bar = new Composite(box, SWT.NONE);
        bar.setLayoutData(new GridData(SWT.FILL, SWT.TOP, true, false));
        GridLayout beside = new GridLayout(3, false);
        beside.marginWidth = 8;
        beside.marginHeight = 4;
        beside.horizontalSpacing = 8;
        bar.setLayout(beside);
        tables = new Combo(bar, SWT.READ_ONLY);
        tables.setData("tramontane.id", "figures.tables");
        tables.setToolTipText("Which table is shown");
        GridData room = new GridData(SWT.LEFT, SWT.CENTER, false, false);
        room.widthHint = 240;
        tables.setLayoutData(room);
        tables.addListener(SWT.Selection, event -> {
            wanted = new Figures.Wanted(tables.getText(), wanted.text(), "", false);
            draw(last);
        });
        text = new Text(bar, SWT.SEARCH | SWT.ICON_SEARCH | SWT.ICON_CANCEL);
        text.setData("tramontane.id", "figures.filter");
        text.setMessage("words to look for");
        GridData wide = new GridData(SWT.LEFT, SWT.CENTER, false, false);
        wide.widthHint = 180;
        text.setLayoutData(wide);
        text.addListener(SWT.Modify, event -> {
            wanted = new Figures.Wanted(wanted.table(), text.getText(), wanted.by(), wanted.down());
            draw(last);
        });
        count = new Label(bar, SWT.NONE);
        count.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        page = new EmptyOr(box);
        page.control().setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, true));
        page.content().setLayout(new FillLayout());
        Memory memory = desk.memory(FiguresViewType.ID);
        table = new SheetTable(page.content(), desk, SWT.MULTI, Optional.of(memory)).onHover(this::hover).onHead(column -> {
            wanted = wanted.sorted(column.key());
            draw(last);
        });
        table.control().setData("tramontane.id", "figures");
        text.addListener(SWT.KeyDown, event -> {
            if (event.keyCode == SWT.ESC) {
                text.setText("");
                table.control().setFocus();
            } else if (event.keyCode == SWT.ARROW_DOWN) {
                table.control().setFocus();
            }
        });
    }

    @Override
    public Control control() {
        return box;
    }

    @Override
    public boolean focus() {
        return table.control().setFocus();
    }

    @Override
    public void show(Scene scene) {
        if (scene.palette() != palette) {
            palette = scene.palette();
            page.colour(palette);
            for (Control each : new Control[] {box, bar, count}) {
                each.setBackground(palette.surface());
            }
            count.setForeground(palette.muted());
        }
        last = scene;
        draw(scene);
    }

    private void draw(Scene scene) {
        figures = presenter.of(scene, Kinds.of(desk), wanted);
        if (!List.of(tables.getItems()).equals(figures.tables())) {
            tables.setItems(figures.tables().toArray(String[]::new));
        }
        int at = Math.max(0, figures.tables().indexOf(wanted.table()));
        if (tables.getSelectionIndex() != at) {
            tables.select(at);
        }
        table.show(figures.sheet(), scene.palette());
        page.say(figures.empty());
        int shown = figures.sheet().rows().size();
        String rows = figures.all() == 0 ? "" : shown == figures.all() ? shown + (shown == 1 ? " row" : " rows") : shown + " of " + figures.all() + " rows";
        if (!count.getText().equals(rows)) {
            count.setText(rows);
        }
    }

    private String hover(Sheet.Row row, int column) {
        Sheet.Cell cell = row.cells().get(column);
        return cell.figure().flatMap(key -> Optional.ofNullable(figures.figures().get(key)))
                .map(figure -> FigureText.full(figure, last.units())).orElse(cell.text());
    }

    @Override
    public List<Command> commands() {
        return List.of(Explaining.command("figures", table));
    }

    @Override
    public Map<String, Runnable> handlers() {
        return Map.of(Command.COPY, () -> {
            if (text.isFocusControl()) {
                text.copy();
            } else {
                table.copy();
            }
        }, Command.FIND, () -> {
            text.setFocus();
            text.selectAll();
        }, Command.SELECT_ALL, () -> table.control().selectAll());
    }
}
