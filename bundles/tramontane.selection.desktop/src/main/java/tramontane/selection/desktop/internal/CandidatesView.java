package tramontane.selection.desktop.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.CTabFolder2Listener;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.layout.RowLayout;
import org.eclipse.swt.program.Program;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.ProgressBar;
import org.eclipse.swt.widgets.Text;
import tramontane.catalogue.Catalogue;
import tramontane.desktop.Command;
import tramontane.desktop.Desk;
import tramontane.desktop.Icon;
import tramontane.desktop.Palette;
import tramontane.desktop.Scene;
import tramontane.desktop.View;
import tramontane.desktop.chart.ChartCanvas;
import tramontane.desktop.chart.ChartState;
import tramontane.selection.Selector;

/** The view of candidates: what is asked, the table, and why, side by side, or as points. */
final class CandidatesView implements View {

    static final String ID = "tramontane.candidates";

    /** By this name of its data a widget is found. */
    private static final String WIDGET = "tramontane.id";
    private static final int LOOK = 3000;
    /** From this height on there is room for the table above its explanation. */
    private static final int ROOMY = 520;
    /** Above this width there is room for the table beside its explanation. */
    private static final int WIDE = 560;
    private static final int[] STACKED = {55, 45};
    private static final int[] ABREAST = {50, 50};
    private static final int PROGRESS = 100;
    /** Below this height the axes of the scatter stand beside it. */
    private static final int LOW = 260;
    private static final int BESIDE = 88;
    /** What the words before the axes take. */
    private static final int NAMES = 136;
    private static final Icon CHOOSE = Icon.read(CandidatesView.class, "choose.svg");
    private static final Icon PUT = Icon.read(CandidatesView.class, "put.svg");

    private final Desk desk;
    private final Shelf shelf;
    private final OfDesk desktop;
    private final CandidatesPresenter presenter;
    private final Consumer<Catalogue> reader;

    private final Runnable looking = this::look;
    private final Composite body;
    private final Combo bank;
    private final Button choose;
    private final ProgressBar bar;
    private final Label status;
    private final SashForm halves;
    private final ScrolledComposite scroll;
    private final Composite settings;
    private final Composite fields;
    private final Composite weights;
    private final Map<String, Text> texts = new LinkedHashMap<>();
    private final Map<String, Label> labels = new LinkedHashMap<>();
    private final Menu figures;
    private Optional<Button> keep = Optional.empty();
    private final Button ended;
    private final Button certain;
    private final Label wrong;
    private final Text find;
    private final Label found;
    private final Button leftOut;
    private final Button put;
    private final StackLayout stack = new StackLayout();
    private final Composite place;
    private final EmptyPage empty;
    private final RowTable<Row> table;
    private final CTabFolder tabs;
    private final CTabItem settingsTab;
    private final CTabItem whyTab;
    private final CTabItem compareTab;
    private final CTabItem scatterTab;
    private final BlocksText why;
    private final StackLayout compareStack = new StackLayout();
    private final Composite comparePage;
    private final Label compareHint;
    private final Composite compareBox;
    private final RowTable<Comparison.Line> compare;
    private final Button inFull;
    private final BlocksText full;
    private final Composite scatterPage;
    private final Composite axes;
    private final Combo across;
    private final Combo up;
    private final Label scatterWords;
    private final ChartCanvas scatter;

    private Palette palette = Palette.LIGHT;
    private Candidates shown = Candidates.NOTHING;
    private Comparison compared = Comparison.NONE;
    private Scatter drawn = Scatter.EMPTY;
    private boolean drawing;
    /** Whether the compared ones are shown in every condition. */
    private boolean fullShown;

    CandidatesView(Composite parent, Desk desk, Selector selector, Shelf shelf) {
        this.desk = desk;
        this.shelf = shelf;
        desktop = new OfDesk(desk, parent.getDisplay());
        presenter = new CandidatesPresenter(selector, desk.engine(), desktop, this::draw);
        reader = presenter::catalogue;

        body = new Composite(parent, SWT.NONE);
        body.setLayout(grid(1, 8, 4));
        ((GridLayout) body.getLayout()).marginHeight = 4;

        Composite head = line(body, 5);
        label(head, "bank");
        bank = new Combo(head, SWT.READ_ONLY);
        bank.setToolTipText("The bank that a mover is chosen for.");
        bank.addListener(SWT.Selection, event -> presenter.bank(bank.getText()));
        bank.setData(WIDGET, "candidates.bank");
        choose = new Button(head, SWT.PUSH);
        choose.setData(WIDGET, "candidates.choose");
        choose.addListener(SWT.Selection, event -> chooseOrStop());
        field(head, Asked.WHERE, "parts where", "Which parts of the catalogue are looked at: type = axial and width <= 92 mm. All where it is empty.", 0)
                .setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        texts.get(Asked.WHERE).setMessage("all parts; for example type = axial and width <= 92 mm");
        Composite said = line(body, 2);
        bar = new ProgressBar(said, SWT.HORIZONTAL);
        bar.setMaximum(PROGRESS);
        GridData barData = new GridData(SWT.BEGINNING, SWT.CENTER, false, false);
        barData.widthHint = 96;
        barData.heightHint = 8;
        bar.setLayoutData(barData);
        status = new Label(said, SWT.NONE);
        status.setData(WIDGET, "candidates.status");
        status.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));

        wrong = new Label(body, SWT.WRAP);
        wrong.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));

        halves = new SashForm(body, SWT.VERTICAL | SWT.SMOOTH);
        halves.setSashWidth(6);
        halves.setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, true));

        Composite upper = new Composite(halves, SWT.NONE);
        upper.setLayout(grid(1, 0, 6));
        Composite seek = line(upper, 4);
        find = new Text(seek, SWT.SEARCH | SWT.ICON_SEARCH | SWT.ICON_CANCEL);
        find.setData(WIDGET, "candidates.find");
        find.setMessage("find");
        find.setToolTipText("Words that must all occur, or a filter such as width <= 92 mm. It hides rows and changes nothing of the choice.");
        GridData findData = new GridData(SWT.FILL, SWT.CENTER, true, false);
        findData.widthHint = 80;
        find.setLayoutData(findData);
        find.addListener(SWT.Modify, event -> unlessDrawing(() -> presenter.find(find.getText())));
        find.addListener(SWT.KeyDown, event -> {
            if (event.keyCode == SWT.ESC) {
                find.setText("");
            } else if (event.keyCode == SWT.ARROW_DOWN) {
                focusTable();
            }
        });
        found = new Label(seek, SWT.NONE);
        leftOut = new Button(seek, SWT.CHECK);
        leftOut.setData(WIDGET, "candidates.leftOut");
        leftOut.setText("left out, too");
        leftOut.setToolTipText("Shows what does not do, each with its reason, and what comes behind those listed.");
        leftOut.addListener(SWT.Selection, event -> presenter.leftOut(leftOut.getSelection()));
        put = new Button(seek, SWT.PUSH);
        put.setData(WIDGET, "candidates.put");
        put.setText("put into design");
        put.setToolTipText("Puts the selected candidate into the bank, as one step that undo takes back.");
        put.addListener(SWT.Selection, event -> presenter.put());

        place = new Composite(upper, SWT.NONE);
        place.setLayout(stack);
        place.setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, true));
        empty = new EmptyPage(place, desk, this::act);
        table = new RowTable<>(place, SWT.MULTI, desk, ID, new RowTable.Reader<>() {
            @Override
            public Object key(Row row) {
                return row.key();
            }

            @Override
            public String text(Row row, Column column) {
                return row.text(column.id(), presenter.state().units());
            }

            @Override
            public Optional<Color> colour(Row row) {
                return row.candidate().isEmpty() || presenter.state().isStale() ? Optional.of(palette.stale()) : Optional.empty();
            }
        });
        table.control().setData(WIDGET, "candidates");
        table.control().addListener(SWT.Selection, event -> {
            fullShown = false; // those of before say nothing of others
            presenter.select(table.selected(Row::key));
        });
        table.control().addListener(SWT.DefaultSelection, event -> showWhy());
        stack.topControl = empty.control();

        tabs = new CTabFolder(halves, SWT.BORDER | SWT.FLAT);
        tabs.setData(WIDGET, "candidates.tabs");
        tabs.addListener(SWT.Selection, event -> drawTab(presenter.state()));
        scroll = new ScrolledComposite(tabs, SWT.V_SCROLL);
        settings = new Composite(scroll, SWT.NONE);
        settings.setLayout(grid(1, 8, 8));
        scroll.setContent(settings);
        scroll.setExpandHorizontal(true);
        scroll.setExpandVertical(true);
        scroll.setShowFocusedControl(true);
        scroll.addListener(SWT.Resize, event -> fitSettings());
        label(settings, "room").setFont(desk.bold());
        fields = new Composite(settings, SWT.NONE);
        fields.setLayout(wrapped());
        fields.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        pair(fields, Asked.WIDTH, "opening width", "Width of the opening that the bank may take up: 260 mm. Any where it is empty.", 64);
        pair(fields, Asked.HEIGHT, "height", "Height of that opening.", 64);
        pair(fields, Asked.DEPTH, "depth", "Room along the flow.", 64);
        pair(fields, Asked.SIDE_BY_SIDE, "side by side", "How many movers may stand side by side.", 32);
        pair(fields, Asked.IN_SERIES, "in series", "How many may stand one behind another.", 32);
        pair(fields, Asked.MOVERS, "movers", "How many there may be in all.", 32);
        pair(fields, Asked.LOWEST, "lowest speed", "The lowest speed setting that is looked at; a fifth where it is empty.", 48);
        pair(fields, Asked.LISTED, "listed", "How many candidates are ranked; 20 where it is empty.", 40);
        ended = new Button(fields, SWT.CHECK);
        ended.setData(WIDGET, "candidates.ended");
        ended.setText("ended ones, too");
        ended.setToolTipText("Parts count, too, that are not to be had any more.");
        ended.addListener(SWT.Selection, event -> presenter.ended(ended.getSelection()));
        certain = new Button(fields, SWT.CHECK);
        certain.setData(WIDGET, "candidates.certain");
        certain.setText("tolerances, too");
        certain.setToolTipText("All that is required must be judged, and hold at the edge of the bounds, too: slower.");
        certain.addListener(SWT.Selection, event -> presenter.certain(certain.getSelection()));

        label(settings, "what counts").setFont(desk.bold());
        weights = new Composite(settings, SWT.NONE);
        weights.setLayout(wrapped());
        weights.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));

        figures = new Menu(body.getShell(), SWT.POP_UP);
        figures.setData(WIDGET, "candidates.figures");
        figures.addListener(SWT.Show, event -> fillFigures());
        weights.setMenu(figures);
        settingsTab = tab("Settings", scroll);

        why = new BlocksText(tabs, desk);
        whyTab = tab("Why", why.control());

        comparePage = new Composite(tabs, SWT.NONE);
        comparePage.setLayout(compareStack);
        compareHint = new Label(comparePage, SWT.WRAP);
        compareBox = new Composite(comparePage, SWT.NONE);
        compareBox.setLayout(grid(1, 0, 4));
        compare = new RowTable<>(compareBox, SWT.SINGLE, desk, ID + ".comparison", new RowTable.Reader<>() {
            @Override
            public Object key(Comparison.Line line) {
                return line.label();
            }

            @Override
            public String text(Comparison.Line line, Column column) {
                return column.id().equals("what") ? line.label() + (line.differs() ? "" : " (alike)") : line.text(Integer.parseInt(column.id()), presenter.state().units());
            }

            @Override
            public boolean isNumber(Comparison.Line line, Column column) {
                return !column.id().equals("what") && line.cells().get(Integer.parseInt(column.id())) instanceof tramontane.analysis.Amount;
            }

            @Override
            public boolean isBold(Comparison.Line line, Column column) {
                return !column.id().equals("what") && line.best().contains(Integer.parseInt(column.id()));
            }

            @Override
            public Optional<Color> colour(Comparison.Line line) {
                return line.differs() ? Optional.empty() : Optional.of(palette.muted());
            }
        });
        compare.control().setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, true));
        full = new BlocksText(compareBox, desk);
        GridData fullData = new GridData(SWT.FILL, SWT.FILL, true, true);
        fullData.exclude = true;
        full.control().setLayoutData(fullData);
        full.control().setVisible(false);
        inFull = new Button(compareBox, SWT.PUSH);
        inFull.setText("in every condition");
        inFull.setToolTipText("Computes every requirement in every condition for these candidates.");
        inFull.addListener(SWT.Selection, event -> {
            fullShown = !fullShown;
            if (fullShown && fullTables(presenter.state()).isEmpty()) {
                presenter.compareInFull();
            }
            drawComparison(presenter.state());
        });
        compareStack.topControl = compareHint;
        compareTab = tab("Comparison", comparePage);

        scatterPage = new Composite(tabs, SWT.NONE);
        scatterPage.setLayout(grid(1, 0, 4));
        axes = line(scatterPage, 5);
        ((GridLayout) axes.getLayout()).marginWidth = 8;
        label(axes, "across");
        across = new Combo(axes, SWT.READ_ONLY);
        label(axes, "up");
        up = new Combo(axes, SWT.READ_ONLY);
        across.setData(WIDGET, "candidates.across");
        up.setData(WIDGET, "candidates.up");
        across.addListener(SWT.Selection, event -> axes());
        up.addListener(SWT.Selection, event -> axes());
        scatterWords = new Label(axes, SWT.WRAP);
        scatterWords.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        scatter = new ChartCanvas(scatterPage, desk);
        scatter.control().setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, true));
        scatter.control().setData(WIDGET, "candidates.scatter");
        scatter.picked(picked -> presenter.state().scatter().key(picked.series(), picked.point()).ifPresent(this::pick));
        scatter.menu(scatterMenu());
        scatterPage.addListener(SWT.Resize, event -> arrangeScatter());
        scatterTab = tab("Scatter", scatterPage);
        tabs.setSelection(settingsTab);
        halves.setWeights(STACKED);

        table.control().setMenu(menu());
        body.addListener(SWT.Resize, event -> {
            int height = body.getClientArea().height;
            int way = body.getClientArea().width > WIDE && height < ROOMY ? SWT.HORIZONTAL : SWT.VERTICAL;
            if (halves.getOrientation() != way) {
                halves.setOrientation(way);
                halves.setWeights(way == SWT.HORIZONTAL ? ABREAST : STACKED);
            }
        });
        tabs.setMaximizeVisible(true);
        tabs.addCTabFolder2Listener(CTabFolder2Listener.maximizeAdapter(event -> wide(true)));
        tabs.addCTabFolder2Listener(CTabFolder2Listener.restoreAdapter(event -> wide(false)));
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

    private static RowLayout wrapped() {
        RowLayout layout = new RowLayout(SWT.HORIZONTAL);
        layout.marginLeft = 0;
        layout.marginRight = 0;
        layout.marginTop = 0;
        layout.marginBottom = 0;
        layout.spacing = 12;
        layout.center = true;
        return layout;
    }

    private static Button more(Composite parent, String text, String id, String help, Runnable pressed) {
        Button button = new Button(parent, SWT.PUSH);
        button.setText(text);
        button.setToolTipText(help);
        button.setData(WIDGET, id);
        button.addListener(SWT.Selection, event -> pressed.run());
        return button;
    }

    private static Composite line(Composite parent, int columns) {
        Composite line = new Composite(parent, SWT.NONE);
        line.setLayout(grid(columns, 0, 0));
        line.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        return line;
    }

    private static Label label(Composite parent, String text) {
        Label label = new Label(parent, SWT.NONE);
        label.setText(text);
        return label;
    }

    private void pair(Composite parent, String name, String text, String help, int width) {
        Composite pair = new Composite(parent, SWT.NONE);
        GridLayout layout = grid(2, 0, 0);
        layout.horizontalSpacing = 4;
        pair.setLayout(layout);
        GridData data = new GridData(SWT.BEGINNING, SWT.CENTER, false, false);
        data.widthHint = width;
        field(pair, name, text, help, width).setLayoutData(data);
    }

    private Text field(Composite parent, String name, String text, String help, int width) {
        labels.put(name, label(parent, text));
        Text field = new Text(parent, SWT.BORDER | SWT.SINGLE);
        field.setToolTipText(help);
        field.setData(help);
        field.addListener(SWT.Modify, event -> unlessDrawing(() -> presenter.type(name, field.getText())));
        field.addListener(SWT.DefaultSelection, event -> choose());
        field.setData(WIDGET, "candidates.field:" + name);
        texts.put(name, field);
        return field;
    }

    private CTabItem tab(String text, Control control) {
        CTabItem tab = new CTabItem(tabs, SWT.NONE);
        tab.setText(text);
        tab.setControl(control);
        return tab;
    }

    private void unlessDrawing(Runnable work) {
        if (!drawing) {
            work.run();
        }
    }

    private Menu menu() {
        Menu menu = new Menu(table.control());
        item(menu, "Why\tEnter", this::showWhy);
        item(menu, "Compare", this::showComparison);
        item(menu, "Put it into the design", presenter::put);
        new MenuItem(menu, SWT.SEPARATOR);
        item(menu, "Copy\tCtrl+C", this::copy);
        MenuItem sort = new MenuItem(menu, SWT.CASCADE);
        sort.setText("Sort by");
        Menu columns = new Menu(menu);
        sort.setMenu(columns);
        columns.addListener(SWT.Show, event -> {
            for (MenuItem old : columns.getItems()) {
                old.dispose();
            }
            presenter.state().listing().columns().forEach(column -> item(columns, column.label(), () -> presenter.sort(column.id())));
        });
        return menu;
    }

    private Menu scatterMenu() {
        Menu menu = new Menu(body.getShell(), SWT.POP_UP);
        body.addListener(SWT.Dispose, event -> menu.dispose());
        menu.addListener(SWT.Show, event -> {
            for (MenuItem old : menu.getItems()) {
                old.dispose();
            }
            item(menu, "Put it into the design", presenter::put).setEnabled(presenter.state().toPut().isPresent() && !presenter.state().isPut());
            new MenuItem(menu, SWT.SEPARATOR);
            boolean there = scatter.state().chart().isPresent();
            item(menu, "Show all\t0", () -> scatter.change(ChartState::fit)).setEnabled(there);
            item(menu, "Larger\t+", () -> scatter.change(seen -> seen.zoom(ChartState.STEP, 0.5, 0.5))).setEnabled(there);
            item(menu, "Smaller\t-", () -> scatter.change(seen -> seen.zoom(1 / ChartState.STEP, 0.5, 0.5))).setEnabled(there);
            MenuItem table = new MenuItem(menu, SWT.CHECK);
            table.setText("As a table");
            table.setSelection(scatter.isTable());
            table.addListener(SWT.Selection, chosen -> scatter.table(table.getSelection()));
            new MenuItem(menu, SWT.SEPARATOR);
            item(menu, "Copy\tCtrl+C", scatter::copy).setEnabled(there);
            item(menu, "Save chart as…", this::saveScatter).setEnabled(there);
        });
        return menu;
    }

    /** Where it is low the axes stand beside the chart, which needs the height. */
    private void arrangeScatter() {
        int width = scatterPage.getClientArea().width;
        boolean low = scatterPage.getClientArea().height < LOW;
        ((GridLayout) scatterPage.getLayout()).numColumns = low ? 2 : 1;
        ((GridLayout) axes.getLayout()).numColumns = low ? 1 : 5;
        axes.setLayoutData(low ? new GridData(SWT.BEGINNING, SWT.BEGINNING, false, false) : new GridData(SWT.FILL, SWT.CENTER, true, false));
        for (Combo combo : new Combo[] {across, up}) {
            GridData data = new GridData();
            data.widthHint = low ? BESIDE : Math.max(BESIDE, Math.min(combo.computeSize(SWT.DEFAULT, SWT.DEFAULT).x, (width - NAMES) / 2));
            combo.setLayoutData(data);
        }
        ((GridData) scatterWords.getLayoutData()).widthHint = low ? BESIDE : SWT.DEFAULT;
        if (low) {
            axes.moveBelow(scatter.control());
        } else {
            axes.moveAbove(scatter.control());
        }
        scatterPage.layout(true, true);
    }

    private void pick(Key key) {
        presenter.select(List.of(key));
        table.control().showSelection();
    }

    private void saveScatter() {
        scatter.save(desk.scene().document().label() + ", candidates for " + presenter.state().bank());
    }

    private void showScatter() {
        tabs.setSelection(scatterTab);
        drawTab(presenter.state());
    }

    private static MenuItem item(Menu menu, String text, Runnable run) {
        MenuItem item = new MenuItem(menu, SWT.PUSH);
        item.setText(text);
        item.addListener(SWT.Selection, event -> run.run());
        return item;
    }

    /** Gives all room below the status to the pages, or half of it again. */
    private void wide(boolean all) {
        tabs.setMaximized(all);
        halves.setMaximizedControl(all ? tabs : null);
        if (all) {
            focusPage(); // the table cannot have it any more
        }
    }

    private boolean focusPage() {
        CTabItem page = tabs.getSelection();
        return page == settingsTab ? texts.get(Asked.WIDTH).setFocus() : page == whyTab ? why.control().setFocus()
                : page == scatterTab ? scatter.focus() : compareStack.topControl == compareBox ? compare.control().setFocus() : tabs.setFocus();
    }

    private void fitSettings() {
        int width = scroll.getClientArea().width;
        settings.layout(true, true);
        scroll.setMinHeight(settings.computeSize(width, SWT.DEFAULT).y);
    }

    private void showSettings() {
        tabs.setSelection(settingsTab);
        texts.get(Asked.WIDTH).setFocus();
    }

    private void keep() {
        presenter.keep();
        choose.setFocus(); // a button that cannot be pressed any more would hand it to a field, where undo means another thing
    }

    /** Offers the figures that may count, by who gives them; those that do are checked. */
    private void chooseFigure() {
        tabs.setSelection(settingsTab);
        for (Control child : weights.getChildren()) {
            if ("candidates.figure".equals(child.getData(WIDGET))) {
                figures.setLocation(child.toDisplay(0, child.getSize().y));
            }
        }
        figures.setVisible(true);
    }

    private void fillFigures() {
        for (MenuItem old : figures.getItems()) {
            old.dispose();
        }
        Map<String, Menu> groups = new LinkedHashMap<>();
        presenter.state().addable().forEach(told -> {
            Menu group = groups.computeIfAbsent(told.group(), name -> {
                MenuItem head = new MenuItem(figures, SWT.CASCADE);
                head.setText(name);
                Menu inner = new Menu(figures);
                head.setMenu(inner);
                return inner;
            });
            String id = told.figure().id();
            MenuItem item = new MenuItem(group, SWT.CHECK);
            item.setText(presenter.state().label(id));
            item.setToolTipText(told.figure().help());
            item.setData(WIDGET, "candidates.figure:" + id);
            item.setSelection(presenter.state().asked().weighed().contains(id));
            item.addListener(SWT.Selection, event -> {
                presenter.weigh(id, item.getSelection());
                Optional.ofNullable(texts.get(Asked.weight(id))).ifPresent(field -> {
                    field.setFocus();
                    field.selectAll();
                });
            });
        });
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

    private void chooseOrStop() {
        if (presenter.state().choosing().isRunning()) {
            presenter.stop();
        } else {
            choose();
        }
    }

    /** What is asked gives way to what is found. */
    private void choose() {
        if (presenter.state().canChoose() && tabs.getSelection() == settingsTab) {
            tabs.setSelection(whyTab);
        }
        presenter.choose();
    }

    private void act(Candidates.Action action) {
        switch (action) {
            case CHOOSE -> choose();
            case SHOW_LEFT_OUT -> presenter.leftOut(true);
            case CLEAR_FIND -> presenter.find("");
            case SHOW_DESIGN -> desk.open("tramontane.design");
            case OPEN_FOLDER -> openFolder();
            case NONE -> {
                // there is no button
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

    private void showWhy() {
        tabs.setSelection(whyTab);
        drawTab(presenter.state());
        why.control().setFocus();
    }

    private void showComparison() {
        tabs.setSelection(compareTab);
        drawTab(presenter.state());
    }

    private void axes() {
        List<Column> all = Scatter.axes(presenter.state().listing());
        if (across.getSelectionIndex() >= 0 && up.getSelectionIndex() >= 0 && all.size() == across.getItemCount()) {
            presenter.axes(all.get(across.getSelectionIndex()).id(), all.get(up.getSelectionIndex()).id());
        }
    }

    private void copy() {
        if (table.control().getSelectionCount() > 0) {
            Clipboard clipboard = new Clipboard(body.getDisplay());
            clipboard.setContents(new Object[] {table.copied()}, new Transfer[] {TextTransfer.getInstance()});
            clipboard.dispose();
        }
    }

    private void focusTable() {
        if (stack.topControl == table.control()) {
            table.control().setFocus();
            if (table.control().getSelectionCount() == 0 && !table.rows().isEmpty()) {
                presenter.select(List.of(table.rows().getFirst().key()));
            }
        }
    }

    @Override
    public Control control() {
        return body;
    }

    @Override
    public void show(Scene scene) {
        boolean recoloured = !scene.palette().equals(palette);
        palette = scene.palette();
        presenter.scene(scene.document().key(), scene.document().design(), scene.units());
        if (recoloured) {
            tabs.setBackground(palette.background());
            tabs.setForeground(palette.muted());
            tabs.setSelectionBackground(palette.surface());
            tabs.setSelectionForeground(palette.text());
            shown = Candidates.NOTHING;
            draw(presenter.state());
        }
    }

    @Override
    public boolean focus() {
        if (tabs.getMaximized()) {
            return focusPage();
        }
        if (stack.topControl == table.control()) {
            return table.control().setFocus();
        }
        if (empty.hasButton()) {
            empty.focus();
            return true;
        }
        return texts.get(Asked.WHERE).setFocus();
    }

    @Override
    public List<Command> commands() {
        Predicate<Scene> drawable = scene -> presenter.state().scatter().chart().isPresent();
        return List.of(Command.of("candidates.choose", "Choose, or stop", "Judges the parts against every requirement; pressed again it stops.", d -> chooseOrStop())
                        .keys("Ctrl+Enter").icon(CHOOSE),
                Command.of("candidates.put", "Put it into the design", "Puts the selected candidate into the bank, as one step.", d -> presenter.put())
                        .keys("Ctrl+Shift+Enter").icon(PUT).when(scene -> presenter.state().toPut().isPresent()),
                Command.of("candidates.figure", "Add figure…", "Lets another figure count that what is loaded gives.", d -> chooseFigure())
                        .when(scene -> !presenter.state().asked().bank().isEmpty()),
                Command.of("candidates.keep", "Keep these settings in the design", "Writes room, parts and weights into the bank, as one step.", d -> presenter.keep())
                        .when(scene -> presenter.state().canKeep()),
                Command.of("candidates.why", "Why", "Why the selected candidate stands where it stands.", d -> showWhy()).keys("Ctrl+1"),
                Command.of("candidates.compare", "Compare", "Sets the selected candidates side by side.", d -> showComparison()).keys("Ctrl+2"),
                Command.of("candidates.scatter", "Scatter", "Shows candidates as points of two figures.", d -> showScatter()).keys("Ctrl+3"),
                Command.of("candidates.settings", "Settings", "How much room there is, and what counts.", d -> showSettings()).keys("Ctrl+4"),
                Command.of("candidates.wide", "Pages in full", "Gives the pages beside the table all the room, or half of it again.", d -> wide(!tabs.getMaximized())).keys("Ctrl+5"),
                Command.of("candidates.table", "Scatter as a table", "Shows the points as numbers, or as a chart again.", d -> {
                    showScatter();
                    scatter.table(!scatter.isTable());
                }).keys("Ctrl+T").when(drawable),
                Command.of("candidates.save", "Save scatter as…", "Saves it as a picture, SVG or PNG, or its numbers, CSV.", d -> {
                    showScatter();
                    saveScatter();
                }).keys("Ctrl+E").when(drawable),
                Command.of("candidates.leftOut", "Show what was left out", "Shows what does not do, each with its reason.", d -> presenter.leftOut(!presenter.state().leftOut()))
                        .keys("Ctrl+L"));
    }

    @Override
    public Map<String, Runnable> handlers() {
        Map<String, Runnable> can = new LinkedHashMap<>();
        can.put(Command.FIND, () -> {
            find.setFocus();
            find.selectAll();
        });
        if (tabs.getSelection() == scatterTab) {
            can.putAll(scatter.handlers());
        }
        if (table.control().isFocusControl()) {
            can.put(Command.SELECT_ALL, () -> {
                table.control().selectAll();
                presenter.select(table.selected(Row::key));
            });
            if (table.control().getSelectionCount() > 0) {
                can.put(Command.COPY, this::copy);
            }
        }
        return can;
    }

    @Override
    public void close() {
        body.getDisplay().timerExec(-1, looking);
        shelf.leave(reader);
        presenter.close();
    }

    private void draw(Candidates state) {
        if (body.isDisposed()) {
            return;
        }
        drawing = true;
        try {
            drawAsked(state);
            drawStatus(state);
            drawRows(state);
            drawTab(state);
            shown = state;
        } finally {
            drawing = false;
        }
    }

    private void drawAsked(Candidates state) {
        if (!state.banks().equals(List.of(bank.getItems()))) {
            bank.setItems(state.banks().toArray(String[]::new));
            bank.getParent().layout();
        }
        if (!bank.getText().equals(state.asked().bank())) {
            bank.select(state.banks().indexOf(state.asked().bank()));
        }
        List<String> weighed = state.asked().weighed();
        List<String> there = texts.keySet().stream().filter(name -> name.startsWith(Asked.weight(""))).map(name -> name.substring(Asked.weight("").length())).toList();
        if (!weighed.equals(there)) {
            there.forEach(criterion -> {
                texts.remove(Asked.weight(criterion));
                labels.remove(Asked.weight(criterion));
            });
            for (Control child : weights.getChildren()) {
                child.dispose();
            }
            weighed.forEach(criterion -> pair(weights, Asked.weight(criterion), state.label(criterion), state.help(criterion), 32));
            more(weights, "add figure…", "candidates.figure", "Lets another figure count that what is loaded gives.", this::chooseFigure);
            keep = Optional.of(more(weights, "keep in the design", "candidates.keep", "Writes room, parts and weights into the bank, as one step; they are there when the design is opened again."
                    + "\nHow many are listed, ended ones and tolerances are asked anew each time.", this::keep));
            fitSettings();
        }
        texts.forEach((name, field) -> {
            if (!field.getText().equals(state.asked().text(name))) {
                field.setText(state.asked().text(name));
            }
            Optional<String> problem = Optional.ofNullable(state.problems().get(name));
            Label label = labels.get(name);
            Color colour = problem.isPresent() ? palette.notMet() : null;
            label.setForeground(colour);
            field.setToolTipText(problem.map(Candidates::capital).orElse((String) field.getData()));
        });
        keep.ifPresent(button -> button.setEnabled(state.canKeep()));
        check(ended, state.asked().ended());
        check(certain, state.asked().certain());
        String said = state.problems().entrySet().stream().map(entry -> name(entry.getKey()) + " " + entry.getValue()).collect(Collectors.joining("; "));
        GridData data = (GridData) wrong.getLayoutData();
        if (!wrong.getText().equals(said) || data.exclude != said.isEmpty()) {
            wrong.setText(said.replace("&", "&&"));
            data.exclude = said.isEmpty();
            wrong.setVisible(!said.isEmpty());
            body.layout();
        }
        wrong.setForeground(palette.notMet());
    }

    private String name(String field) {
        return Optional.ofNullable(labels.get(field)).map(Label::getText).map(text -> field.startsWith(Asked.weight("")) ? "weight of " + text : text).orElse(field);
    }

    private static void check(Button button, boolean on) {
        if (button.getSelection() != on) {
            button.setSelection(on);
        }
    }

    private void drawStatus(Candidates state) {
        boolean running = state.choosing().isRunning();
        String text = running ? "stop" : "choose";
        if (!choose.getText().equals(text)) {
            choose.setText(text);
            choose.setToolTipText(running ? "Ends the choice; what was found stays." : "Judges the parts against every requirement in every condition.");
            choose.getParent().layout();
        }
        choose.setEnabled(running || state.canChoose());
        GridData data = (GridData) bar.getLayoutData();
        if (data.exclude == running) {
            data.exclude = !running;
            bar.setVisible(running);
            ((GridLayout) bar.getParent().getLayout()).numColumns = running ? 2 : 1;
            bar.getParent().layout();
        }
        bar.setSelection((int) Math.round(PROGRESS * state.choosing().fraction()));
        String words = state.choosing().status() == Choosing.Status.NOT_STARTED && state.catalogue().isPresent() && state.problems().isEmpty() && !state.banks().isEmpty()
                ? state.parts() + " of " + state.catalogue().get().size() + " parts pass the filter"
                : (running || !state.isStale() ? "" : state.bank().equals(state.asked().bank()) ? "of an earlier state of the design: " : "of bank " + state.bank() + ": ") + state.choosing().words();
        if (!status.getText().equals(words)) {
            status.setText(words.replace("&", "&&"));
            status.setToolTipText(words);
        }
        status.setForeground(state.choosing().status() == Choosing.Status.FAILED ? palette.notMet() : state.isStale() ? palette.stale() : palette.muted());
    }

    private void drawRows(Candidates state) {
        if (!find.getText().equals(state.find())) {
            find.setText(state.find());
        }
        check(leftOut, state.leftOut());
        put.setEnabled(state.toPut().isPresent() && !state.isPut());
        if (!put.getText().equals(state.putWords())) {
            put.setText(state.putWords());
            put.getParent().layout();
        }
        Listing listing = state.listing();
        String count = listing.problem().orElse(listing.rows().size() == listing.all() ? "" : listing.rows().size() + " of " + listing.all() + " rows");
        if (!found.getText().equals(count)) {
            found.setText(count.replace("&", "&&"));
            found.getParent().layout();
        }
        found.setForeground(listing.problem().isPresent() ? palette.notMet() : palette.muted());
        Optional<Candidates.Empty> nothing = state.empty();
        Control top = nothing.isPresent() ? empty.control() : table.control();
        nothing.ifPresent(each -> empty.show(each, palette));
        if (stack.topControl != top) {
            boolean focused = empty.control().getVisible() && top == table.control() && body.getDisplay().getFocusControl() != null
                    && body.getDisplay().getFocusControl().getParent() == empty.control();
            stack.topControl = top;
            place.layout();
            if (focused) {
                table.control().setFocus();
            }
        }
        table.columns(listing.columns(), presenter::sort);
        table.sorted(state.order());
        if (listing != shown.listing()) {
            table.rows(listing.rows(), state.selected());
        } else {
            if (!state.units().equals(shown.units()) || state.isStale() != shown.isStale()) {
                table.refresh();
            }
            table.select(state.selected());
        }
    }

    private void drawTab(Candidates state) {
        CTabItem tab = tabs.getSelection();
        if (tab == whyTab) {
            Explanation explanation = state.explanation();
            why.show(explanation.title().isEmpty() ? new TextBlocks(state.explanationHint(), List.of())
                    : TextBlocks.of(explanation.title(), explanation.sections(), state.units()), palette);
        } else if (tab == compareTab) {
            drawComparison(state);
        } else if (tab == scatterTab) {
            drawScatter(state);
        }
    }

    private void drawComparison(Candidates state) {
        Comparison comparison = state.comparison();
        boolean some = !comparison.heads().isEmpty();
        compareHint.setText("  Select two to six rows (Ctrl+click, or Shift with the arrow keys) to see them side by side.");
        compareHint.setForeground(palette.muted());
        Control top = some ? compareBox : compareHint;
        if (compareStack.topControl != top) {
            compareStack.topControl = top;
            comparePage.layout();
        }
        if (some && (!comparison.equals(compared) || !state.units().equals(shown.units()))) {
            compared = comparison;
            List<Column> columns = new ArrayList<>(List.of(Column.words("what", "what differs first", "")));
            IntStream.range(0, comparison.heads().size()).forEach(i -> columns.add(new Column(Integer.toString(i), comparison.heads().get(i), true, Optional.empty(),
                    tramontane.analysis.Better.NEITHER, comparison.heads().get(i))));
            compare.columns(columns, id -> { });
            compare.rows(comparison.lines(), List.of());
        }
        Optional<Candidates.InFull> tables = fullTables(state);
        boolean whole = fullShown && some;
        GridData data = (GridData) full.control().getLayoutData();
        if (data.exclude == whole) {
            data.exclude = !whole;
            full.control().setVisible(whole);
            ((GridData) compare.control().getLayoutData()).exclude = whole;
            compare.control().setVisible(!whole);
            inFull.setText(whole ? "side by side" : "in every condition");
            compareBox.layout();
        }
        if (whole) {
            full.show(tables.map(each -> TextBlocks.of("In every condition", each.tables().stream().map(one -> Section.of(one.title(), one)).toList(), state.units()))
                    .orElse(new TextBlocks("These candidates are being computed in every condition.", List.of())), palette);
        }
        inFull.setEnabled(whole || state.selectedRows().stream().filter(row -> row.candidate().isPresent()).count() >= Comparison.LEAST);
    }

    private static Optional<Candidates.InFull> fullTables(Candidates state) {
        return state.inFull().filter(each -> each.of().equals(state.selected()));
    }

    private void drawScatter(Candidates state) {
        List<Column> all = Scatter.axes(state.listing());
        String[] names = all.stream().map(Column::label).toArray(String[]::new);
        boolean others = false;
        for (Combo combo : new Combo[] {across, up}) {
            if (!List.of(combo.getItems()).equals(List.of(names))) {
                combo.setItems(names);
                others = true;
            }
        }
        if (others) {
            arrangeScatter();
        }
        Scatter points = state.scatter();
        points.x().ifPresent(column -> choose(across, all, column));
        points.y().ifPresent(column -> choose(up, all, column));
        String words = points.words();
        if (!scatterWords.getText().equals(words)) {
            scatterWords.setText(words);
            scatterWords.setToolTipText(words);
        }
        scatterWords.setForeground(palette.muted());
        boolean elsewhere = !points.x().equals(drawn.x()) || !points.y().equals(drawn.y());
        drawn = points;
        if (elsewhere) {
            scatter.change(ChartState::fit); // what was zoomed in on belongs to other axes
        }
        scatter.show(points.chart(), "Points appear here once there are two candidates.", state.units(), palette, state.isStale());
    }

    private static void choose(Combo combo, List<Column> all, Column column) {
        int index = all.stream().map(Column::id).toList().indexOf(column.id());
        if (combo.getSelectionIndex() != index) {
            combo.select(index);
        }
    }
}
