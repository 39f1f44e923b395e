package tramontane.selection.desktop.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.program.Program;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import tramontane.catalogue.Catalogue;
import tramontane.desktop.Command;
import tramontane.desktop.Desk;
import tramontane.desktop.Palette;
import tramontane.desktop.Scene;
import tramontane.desktop.View;

/** The view of the catalogue: all parts, and the sheet of one. */
final class CatalogueView implements View {

    static final String ID = "tramontane.catalogue";

    private static final int LOOK = 3000;

    private final Desk desk;
    private final Shelf shelf;
    private final OfDesk desktop;
    private final CataloguePresenter presenter;
    private final Consumer<Catalogue> reader;
    private final Runnable looking = this::look;
    private final Composite body;
    private final Text find;
    private final Label count;
    private final StackLayout stack = new StackLayout();
    private final Composite place;
    private final EmptyPage empty;
    private final RowTable<Integer> table;
    private final BlocksText sheet;
    private Palette palette = Palette.LIGHT;
    private PartsShown shown = PartsShown.NOTHING;
    private boolean drawing;

    CatalogueView(Composite parent, Desk desk, Shelf shelf) {
        this.desk = desk;
        this.shelf = shelf;
        desktop = new OfDesk(desk, parent.getDisplay());
        presenter = new CataloguePresenter(desktop, this::draw);
        reader = presenter::catalogue;
        body = new Composite(parent, SWT.NONE);
        body.setLayout(grid(1, 8, 8));
        Composite head = new Composite(body, SWT.NONE);
        head.setLayout(grid(3, 0, 0));
        head.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        find = new Text(head, SWT.SEARCH | SWT.ICON_SEARCH | SWT.ICON_CANCEL);
        find.setMessage("find: words, or type = axial and width <= 92 mm");
        find.setToolTipText("Words that must all occur, or a filter. Fields are named as the headings say when they are hovered.");
        find.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        find.addListener(SWT.Modify, event -> {
            if (!drawing) {
                presenter.find(find.getText());
            }
        });
        find.addListener(SWT.KeyDown, event -> {
            if (event.keyCode == SWT.ESC) {
                find.setText("");
            } else if (event.keyCode == SWT.ARROW_DOWN) {
                focus();
            }
        });
        count = new Label(head, SWT.NONE);
        Button folder = new Button(head, SWT.PUSH);
        folder.setText("own parts");
        folder.setToolTipText("Opens the folder of your own parts, " + shelf.folders().own() + ".");
        folder.addListener(SWT.Selection, event -> openFolder());
        SashForm halves = new SashForm(body, SWT.VERTICAL | SWT.SMOOTH);
        halves.setSashWidth(6);
        halves.setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, true));
        place = new Composite(halves, SWT.NONE);
        place.setLayout(stack);
        empty = new EmptyPage(place, desk, this::act);
        table = new RowTable<>(place, SWT.SINGLE, desk, ID, new RowTable.Reader<>() {
            @Override
            public Object key(Integer part) {
                return presenter.state().catalogue().orElseThrow().id(part);
            }

            @Override
            public String text(Integer part, Column column) {
                return Row.text(presenter.state().cell(part, column.id()), presenter.state().units());
            }
        });
        table.control().addListener(SWT.Selection, event -> presenter.select(table.selected(part -> presenter.state().catalogue().orElseThrow().id(part)).stream().findFirst()));
        sheet = new BlocksText(halves, desk);
        table.control().addListener(SWT.DefaultSelection, event -> sheet.control().setFocus());
        stack.topControl = empty.control();
        halves.setWeights(55, 45);
        body.addListener(SWT.Resize, event -> {
            int way = body.getClientArea().width > 1.6 * body.getClientArea().height ? SWT.HORIZONTAL : SWT.VERTICAL;
            if (halves.getOrientation() != way) {
                halves.setOrientation(way);
            }
        });
        shelf.watch(reader);
        look();
    }

    private static GridLayout grid(int columns, int margin, int spacing) {
        GridLayout layout = new GridLayout(columns, false);
        layout.marginWidth = margin;
        layout.marginHeight = margin;
        layout.verticalSpacing = spacing;
        layout.horizontalSpacing = 8;
        return layout;
    }

    private void look() {
        if (body.isDisposed()) {
            return;
        }
        if (body.isVisible() || presenter.state().catalogue().isEmpty()) {
            shelf.look(desktop);
        }
        body.getDisplay().timerExec(LOOK, looking);
    }

    private void act(Candidates.Action action) {
        switch (action) {
            case CLEAR_FIND -> presenter.find("");
            case OPEN_FOLDER -> openFolder();
            default -> {
                // this view has no other button
            }
        }
    }

    private void openFolder() {
        try {
            Files.createDirectories(shelf.folders().own());
            Program.launch(shelf.folders().own().toString());
            desk.say("your own parts belong into " + shelf.folders().own());
        } catch (IOException failed) {
            desk.failed("the folder " + shelf.folders().own() + " could not be made; make it yourself, or put parts elsewhere", failed);
        }
    }

    @Override
    public Control control() {
        return body;
    }

    @Override
    public void show(Scene scene) {
        if (!scene.palette().equals(palette)) {
            palette = scene.palette();
            draw(presenter.state());
        }
        presenter.units(scene.units());
    }

    @Override
    public boolean focus() {
        if (stack.topControl != table.control()) {
            return find.setFocus();
        }
        if (table.control().getSelectionCount() == 0 && !table.rows().isEmpty()) {
            table.control().setSelection(0);
            presenter.select(Optional.of(presenter.state().catalogue().orElseThrow().id(table.rows().getFirst())));
        }
        return table.control().setFocus();
    }

    @Override
    public List<Command> commands() {
        return List.of(Command.of("catalogue.folder", "Open the folder of own parts", "Opens the folder in which your own parts are kept.", d -> openFolder()));
    }

    @Override
    public Map<String, Runnable> handlers() {
        Map<String, Runnable> can = new LinkedHashMap<>();
        can.put(Command.FIND, () -> {
            find.setFocus();
            find.selectAll();
        });
        if (table.control().isFocusControl() && table.control().getSelectionCount() > 0) {
            can.put(Command.COPY, () -> {
                Clipboard clipboard = new Clipboard(body.getDisplay());
                clipboard.setContents(new Object[] {table.copied()}, new Transfer[] {TextTransfer.getInstance()});
                clipboard.dispose();
            });
        }
        return can;
    }

    @Override
    public void close() {
        body.getDisplay().timerExec(-1, looking);
        shelf.leave(reader);
        presenter.close();
    }

    private void draw(PartsShown state) {
        if (body.isDisposed()) {
            return;
        }
        drawing = true;
        try {
            // while somebody types, states lag behind what is typed
            if (!find.isFocusControl() && !find.getText().equals(state.find())) {
                find.setText(state.find());
            }
            String words = state.problem().orElseGet(state::words);
            if (!count.getText().equals(words)) {
                count.setText(words.replace("&", "&&"));
                count.getParent().layout();
            }
            count.setForeground(state.problem().isPresent() ? palette.notMet() : palette.muted());
            Optional<Candidates.Empty> nothing = state.empty();
            nothing.ifPresent(each -> empty.show(each, palette));
            Control top = nothing.isPresent() ? empty.control() : table.control();
            if (stack.topControl != top) {
                stack.topControl = top;
                place.layout();
            }
            table.columns(state.columns(), presenter::sort);
            table.sorted(state.order());
            List<String> selected = state.selected().stream().toList();
            if (!state.parts().equals(shown.parts()) || !state.catalogue().equals(shown.catalogue())) {
                table.rows(state.parts(), selected);
            } else if (!state.units().equals(shown.units())) {
                table.refresh();
            }
            sheet.show(state.sheet().title().isEmpty() ? new TextBlocks("Select a part to read its data sheet and whether its figures can be true together.", List.of())
                    : TextBlocks.of(state.sheet().title(), state.sheet().sections(), state.units()), palette);
            shown = state;
        } finally {
            drawing = false;
        }
    }
}
