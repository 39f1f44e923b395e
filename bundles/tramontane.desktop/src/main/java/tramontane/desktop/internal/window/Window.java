package tramontane.desktop.internal.window;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.dnd.DND;
import org.eclipse.swt.dnd.DropTarget;
import org.eclipse.swt.dnd.DropTargetAdapter;
import org.eclipse.swt.dnd.DropTargetEvent;
import org.eclipse.swt.dnd.FileTransfer;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.FontData;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Listener;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Spinner;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.ToolBar;
import org.eclipse.swt.widgets.ToolItem;
import tramontane.analysis.Engine;
import tramontane.analysis.Evaluation;
import tramontane.analysis.Exporter;
import tramontane.desktop.Command;
import tramontane.desktop.Document;
import tramontane.desktop.FigureKey;
import tramontane.desktop.Icon;
import tramontane.desktop.Jobs;
import tramontane.desktop.Memory;
import tramontane.desktop.PageType;
import tramontane.desktop.Palette;
import tramontane.desktop.Scene;
import tramontane.desktop.Spot;
import tramontane.desktop.ViewType;
import tramontane.desktop.internal.commands.CommandTable;
import tramontane.desktop.internal.commands.Keys;
import tramontane.desktop.internal.documents.OpenDesign;
import tramontane.desktop.internal.documents.Recovery;
import tramontane.desktop.internal.documents.Session;
import tramontane.desktop.internal.icons.Images;
import tramontane.desktop.internal.layout.Arrangement;
import tramontane.desktop.internal.layout.Arrangement.Side;
import tramontane.desktop.internal.layout.Panes;
import tramontane.desktop.internal.state.Remembered;
import tramontane.desktop.internal.work.JobList;
import tramontane.desktop.internal.work.Live;
import tramontane.desktop.internal.work.LogBook;
import tramontane.model.Design;
import tramontane.model.FormReader;
import tramontane.model.Problem;
import tramontane.model.Value;
import tramontane.model.edit.Edit;
import tramontane.model.edit.Subject;
import tramontane.physics.units.UnitSystem;

/** The window: puts session, files, live results, commands and views together. On the UI thread. */
public final class Window implements InnerDesk, AutoCloseable {

    /** How the window differs from one start to another. */
    public record Options(Path home, Optional<Path> samples, boolean timing) {
    }

    /** How often unsaved changes are copied and files looked at, in milliseconds. */
    private static final int TICK = 1000;
    /** How long results of the state before are shown as if nothing had happened, in milliseconds. */
    private static final int BLINK = 150;
    private static final Icon OURS = Icon.read(Window.class, "/tramontane/desktop/icons/tramontane.svg");

    private final Display display;
    private final Options options;
    private final Engine engine;
    private final Shell shell;
    private final JobList jobs;
    private final Live live;
    private final LogBook log = new LogBook();
    private final Session session;
    private final DesignFiles files;
    private final Images images;
    private final TopBar top;
    private final Strip strip;
    private final Panes panes;
    private final Menus menus;
    private final CommandTable commands;
    private final Map<String, ViewType> types = new LinkedHashMap<>();
    private List<PageType> pages;
    private final Map<String, Frame> frames = new HashMap<>();
    private final Optional<Recovery> recovery;
    private final Path rememberedFile;
    private final Font digits;
    private final Font bold;
    private Remembered remembered;
    private boolean rememberedChanged;
    private Arrangement arrangement;
    private Palette palette;
    private Optional<OpenDesign> documentOf = Optional.empty();
    private Document document;
    private Optional<String> frontView = Optional.empty();
    private boolean drawing;
    private boolean drawAgain;
    private final Deque<Frame> toOpen = new ArrayDeque<>();
    private boolean opening;
    private boolean painted;
    private boolean closing;
    /** Whether something was typed into the field that has the focus and not taken over yet. */
    private boolean halfTyped;
    private long asked;
    private final Listener keys = this::key;
    private final Listener focus = this::focused;
    private final Listener settings = event -> recolour();

    /**
     * Opens the window.
     *
     * @param display   the display, made by the calling thread
     * @param engine    computes designs
     * @param viewTypes the views that there are
     * @param pageTypes the property pages that there are
     * @param options   where things are kept
     */
    public Window(Display display, Engine engine, List<ViewType> viewTypes, List<PageType> pageTypes, Options options) {
        this(display, engine, viewTypes, pageTypes, options, Optional.empty());
    }

    Window(Display display, Engine engine, List<ViewType> viewTypes, List<PageType> pageTypes, Options options,
            Optional<Questions> questions) {
        this.display = display;
        this.options = options;
        this.engine = engine;
        rememberedFile = options.home().resolve("desktop.json");
        Remembered.Read read = Remembered.read(rememberedFile);
        remembered = read.value();
        viewTypes.forEach(type -> types.put(type.id(), type));
        pages = pageTypes;
        Theme.apply(display, remembered.colours());
        palette = Theme.palette(display, remembered.colours());
        images = new Images(display, palette.text());
        shell = new Shell(display, SWT.SHELL_TRIM);
        shell.setText("Tramontane");
        shell.setData("tramontane.id", "window");
        shell.setImages(new Image[] {images.of(OURS)});
        FontData system = display.getSystemFont().getFontData()[0];
        digits = new Font(display, Theme.digitsFont(), system.getHeight(), SWT.NORMAL);
        bold = new Font(display, system.getName(), system.getHeight(), SWT.BOLD);
        jobs = new JobList(this::onUi, this::failed);
        live = new Live(engine, jobs, this::onUi, new LiveResults());
        session = new Session(new Session.Listener() {
            @Override
            public void changed() {
                draw();
            }

            @Override
            public void computeAnew() {
                if (!closing) {
                    compute();
                }
            }
        });
        files = new DesignFiles(session, jobs, questions.orElseGet(() -> new Dialogs(shell)), this::say, this::failed, this::used);
        recovery = beginRecovery();
        commands = StandardCommands.of(this);
        menus = new Menus(this);
        GridLayout layout = new GridLayout();
        layout.marginWidth = 0;
        layout.marginHeight = 0;
        layout.verticalSpacing = 0;
        shell.setLayout(layout);
        shell.setMenuBar(menus.bar(shell, commands));
        top = new TopBar(shell, new TopHand(), palette);
        top.control().setLayoutData(new GridData(SWT.FILL, SWT.TOP, true, false));
        panes = new Panes(shell, new PaneHand(), new PaneContent(), palette);
        panes.control().setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, true));
        strip = new Strip(shell, jobs, palette);
        strip.control().setLayoutData(new GridData(SWT.FILL, SWT.BOTTOM, true, false));
        arrangement = withNew(remembered.arrangement().orElseGet(this::standard));
        place();
        listen();
        draw();
        arrange();
        if (!read.note().isEmpty()) {
            say(Notice.error(read.note()));
        }
    }

    private Optional<Recovery> beginRecovery() {
        try {
            return Optional.of(Recovery.begin(recoveries()));
        } catch (IOException e) {
            onUi(() -> failed("Unsaved changes cannot be kept safe: " + recoveries() + " cannot be written to.", e));
            return Optional.empty();
        }
    }

    private Path recoveries() {
        return options.home().resolve("recovery");
    }

    /** With the views open that this window has never seen before; one that comes back stands where it stood, or stays closed. */
    private Arrangement withNew(Arrangement known) {
        Arrangement all = known;
        for (ViewType type : ordered()) {
            if (type.atFirst() && !remembered.views().contains(type.id()) && !all.views().contains(type.id())) {
                all = all.openBehind(type.id(), type.spot());
            }
        }
        remembered = remembered.withViews(types.keySet());
        return all;
    }

    private List<ViewType> ordered() {
        return types.values().stream().sorted(Comparator.comparingInt(ViewType::order).thenComparing(ViewType::id)).toList();
    }

    private Arrangement standard() {
        Map<Spot, List<String>> views = new EnumMap<>(Spot.class);
        ordered().stream().filter(ViewType::atFirst)
                .forEach(type -> views.computeIfAbsent(type.spot(), spot -> new ArrayList<>()).add(type.id()));
        return Arrangement.standard(views);
    }

    private void place() {
        Rectangle screen = display.getPrimaryMonitor().getClientArea();
        remembered.bounds().map(list -> new Rectangle(list.get(0), list.get(1), list.get(2), list.get(3)))
                .filter(bounds -> bounds.width > 200 && bounds.height > 150 && bounds.intersects(display.getClientArea()))
                .ifPresentOrElse(shell::setBounds, () -> shell.setSize(Math.min(1440, screen.width), Math.min(900, screen.height)));
        shell.setMaximized(remembered.maximised());
    }

    private void listen() {
        shell.addListener(SWT.Close, event -> {
            event.doit = false;
            quit();
        });
        shell.addListener(SWT.Activate, event -> files.look());
        display.addFilter(SWT.KeyDown, keys);
        display.addFilter(SWT.FocusIn, focus);
        display.addListener(SWT.Settings, settings);
        DropTarget target = new DropTarget(shell, DND.DROP_COPY | DND.DROP_DEFAULT | DND.DROP_LINK);
        target.setTransfer(FileTransfer.getInstance());
        target.addDropListener(new DropTargetAdapter() {
            @Override
            public void dragEnter(DropTargetEvent event) {
                event.detail = (event.operations & DND.DROP_COPY) != 0 ? DND.DROP_COPY : event.detail;
            }

            @Override
            public void drop(DropTargetEvent event) {
                if (event.data instanceof String[] names) {
                    for (String name : names) {
                        openFile(Path.of(name));
                    }
                }
            }
        });
        display.timerExec(TICK, this::tick);
    }

    /** Shows the window. */
    public void open() {
        Listener painted = new Listener() {
            @Override
            public void handleEvent(Event event) {
                top.control().removeListener(SWT.Paint, this);
                display.asyncExec(Window.this::firstPainted);
            }
        };
        top.control().addListener(SWT.Paint, painted);
        shell.open();
        // where nothing is painted, as the window is covered or iconified, it goes on all the same
        display.timerExec(300, this::firstPainted);
    }

    private void firstPainted() {
        if (!painted && !shell.isDisposed()) {
            painted = true;
            time("first paint");
            draw();
        }
    }

    private void time(String what) {
        if (options.timing()) {
            System.err.println("tramontane: " + what + " after " + (System.currentTimeMillis()
                    - ProcessHandle.current().info().startInstant().orElseThrow().toEpochMilli()) + " ms");
        }
    }

    /** Runs until the window is closed. Whatever a listener throws, in this loop or in that of a dialog, ends neither. */
    public void run() {
        display.setRuntimeExceptionHandler(this::uncaught);
        display.setErrorHandler(error -> {
            if (error instanceof VirtualMachineError && !(error instanceof StackOverflowError)) {
                throw error;
            }
            uncaught(error);
        });
        org.eclipse.jface.window.Window.setExceptionHandler(this::uncaught);
        while (!shell.isDisposed()) {
            if (!display.readAndDispatch()) {
                display.sleep();
            }
        }
    }

    /** What a listener of some widget threw: the view it came from is told by the focus, and goes on. */
    void uncaught(Throwable thrown) {
        String where = frontView.flatMap(id -> Optional.ofNullable(types.get(id))).map(type -> " in " + type.label()).orElse("");
        String message = thrown.getMessage() == null ? thrown.getClass().getSimpleName() : thrown.getMessage().lines().findFirst().orElse("");
        failed("Something failed" + where + ": " + message + (message.endsWith(".") ? "" : "."), thrown);
    }

    private void onUi(Runnable work) {
        if (!display.isDisposed()) {
            display.asyncExec(() -> {
                if (!shell.isDisposed()) {
                    work.run();
                }
            });
        }
    }

    // --- what is shown --------------------------------------------------------------------------------------------------

    @Override
    public Scene scene() {
        OpenDesign front = session.front();
        if (documentOf.isEmpty() || !sameDocument(documentOf.get(), front)) {
            document = front.document();
        }
        documentOf = Optional.of(front);
        return new Scene(document, front.results(), front.front(), front.selection(), front.asked(), remembered.units(), palette);
    }

    private static boolean sameDocument(OpenDesign a, OpenDesign b) {
        return a.key().equals(b.key()) && a.history() == b.history() && a.saved().equals(b.saved()) && a.file().equals(b.file())
                && a.problems() == b.problems();
    }

    private void draw() {
        if (top == null || strip == null || shell.isDisposed()) {
            return; // while the window is being built
        }
        if (drawing) {
            drawAgain = true; // a view that is being shown a scene has changed it
            return;
        }
        drawing = true;
        try {
            for (int i = 0; i == 0 || drawAgain && i < 5; i++) {
                drawAgain = false;
                Scene scene = scene();
                top.show(session.open(), scene);
                String title = (scene.document().changed() ? "• " : "") + scene.document().label() + " – Tramontane";
                if (!shell.getText().equals(title)) {
                    shell.setText(title);
                }
                for (Frame frame : List.copyOf(frames.values())) {
                    frame.show(scene);
                    if (frame.isNew() && frame.isSeen() && !toOpen.contains(frame)) {
                        toOpen.add(frame);
                    }
                }
            }
        } finally {
            drawing = false;
        }
        keepFocus();
        strip.watch();
        if (painted && !toOpen.isEmpty() && !opening) {
            opening = true;
            display.asyncExec(this::openNext);
        }
    }

    /** Where what had the focus is gone, the view in front gets it: keys must always have somebody to go to. */
    private void keepFocus() {
        if (painted && display.getActiveShell() == shell && display.getFocusControl() == null) {
            frontView.map(frames::get).filter(Frame::isSeen)
                    .or(() -> frames.values().stream().filter(Frame::isSeen).findFirst()).ifPresent(Frame::focus);
        }
    }

    /** One view at a time, so that the window is painted and answers between them. */
    private void openNext() {
        opening = false;
        Frame next = toOpen.poll();
        if (next == null || shell.isDisposed()) {
            return;
        }
        long begun = System.nanoTime();
        show(next);
        if (options.timing()) {
            System.err.printf("tramontane: %s opened in %.0f ms%n", next.type().id(), (System.nanoTime() - begun) / 1e6);
        }
        if (toOpen.isEmpty()) {
            time("all views");
        } else {
            opening = true;
            display.timerExec(1, this::openNext);
        }
    }

    private void show(Frame frame) {
        if (frame.isNew() && frame.isSeen()) {
            frame.open();
            panes.tools(frame.type().id());
            frame.show(scene());
        }
    }

    private void arrange() {
        for (String view : List.copyOf(frames.keySet())) {
            if (!arrangement.views().contains(view) || !types.containsKey(view) || frames.get(view).type() != types.get(view)) {
                frames.remove(view).close();
            }
        }
        panes.show(arrangement, types::containsKey);
        draw();
        rememberedChanged = true;
    }

    private void arrange(Arrangement other) {
        if (!other.equals(arrangement)) {
            arrangement = other;
            arrange();
        }
    }

    /**
     * Takes views and pages up and drops them, as bundles come and go.
     *
     * @param there      all views that there are now
     * @param otherPages all pages that there are now
     */
    public void contributions(List<ViewType> there, List<PageType> otherPages) {
        pages = otherPages;
        types.clear();
        there.forEach(type -> types.put(type.id(), type));
        arrangement = withNew(arrangement);
        arrange();
    }

    private void recolour() {
        Palette other = Theme.palette(display, remembered.colours());
        if (other == palette) {
            return;
        }
        palette = other;
        Runnable old = images.recolour(other.text());
        shell.setImages(new Image[] {images.of(OURS)});
        top.recolour(other);
        strip.recolour(other);
        panes.recolour(other);
        panes.refresh();
        draw();
        // by then nothing shows them any more: every view has drawn itself with the new ones
        display.asyncExec(old);
    }

    // --- the desk -------------------------------------------------------------------------------------------------------

    @Override
    public void edit(String what, UnaryOperator<Design> change) {
        Design changed;
        try {
            changed = change.apply(session.front().design());
        } catch (RuntimeException refused) {
            failed("It was not possible to " + what + ": " + refused.getMessage(), refused);
            return;
        }
        session.edit(what, changed);
    }

    @Override
    public boolean edit(Edit edit) {
        if (edit.design().isEmpty()) {
            say(Notice.error(edit.message()));
            return false;
        }
        session.edit(edit.what(), edit.design().get());
        edit.subject().ifPresent(subject -> session.select(Optional.of(subject)));
        if (!edit.message().isEmpty()) {
            say(edit.message());
        }
        return true;
    }

    @Override
    public void select(Optional<Subject> subject) {
        session.select(subject);
    }

    @Override
    public void front(String caseId) {
        session.front(caseId);
    }

    @Override
    public void units(UnitSystem units) {
        remembered = remembered.with(units);
        rememberedChanged = true;
        draw();
    }

    @Override
    public void explain(FigureKey figure) {
        session.ask(Optional.of(figure));
        show("tramontane.whereFrom", false);
    }

    @Override
    public void open(String viewId) {
        show(viewId, true);
    }

    private void show(String viewId, boolean focus) {
        ViewType type = types.get(viewId);
        if (type == null) {
            say(Notice.error("There is no view " + viewId + "; the bundle that brings it is not loaded."));
            return;
        }
        arrange(arrangement.open(viewId, type.spot()));
        if (painted) {
            show(frames.get(viewId));
        }
        if (focus) {
            frontView = Optional.of(viewId);
            frames.get(viewId).focus();
        }
    }

    @Override
    public void run(String commandId) {
        commands.of(commandId).filter(this::can).ifPresent(this::perform);
    }

    @Override
    public void openFile(Path file) {
        // what we ship is not written over
        if (options.samples().filter(folder -> file.toAbsolutePath().normalize().startsWith(folder)).isPresent()) {
            files.openSample(file);
        } else {
            files.open(file);
        }
    }

    @Override
    public void say(String sentence) {
        say(Notice.of(sentence));
    }

    private void say(Notice notice) {
        log.add(notice.sentence());
        if (strip != null) {
            strip.say(notice, session.front().key());
        }
    }

    @Override
    public void failed(String sentence, Throwable cause) {
        LogBook.Entry entry = log.add(sentence, cause);
        if (options.timing()) {
            System.err.println(entry.text());
        }
        if (strip != null) {
            strip.say(new Notice(sentence, true, List.of(new Notice.Action("Log", () -> open("tramontane.log")))), session.front().key());
        }
    }

    @Override
    public Jobs jobs() {
        return jobs;
    }

    @Override
    public Engine engine() {
        return engine;
    }

    @Override
    public Image image(Icon icon) {
        return images.of(icon);
    }

    @Override
    public Image image(Icon icon, Color colour) {
        return images.of(icon, colour);
    }

    @Override
    public Font digits() {
        return digits;
    }

    @Override
    public Font bold() {
        return bold;
    }

    @Override
    public Memory memory(String viewId) {
        return new Memory() {
            @Override
            public Optional<String> get(String name) {
                return remembered.memory(viewId, name);
            }

            @Override
            public void put(String name, String text) {
                remembered = remembered.with(viewId, name, text);
                rememberedChanged = true;
            }
        };
    }

    @Override
    public Path home() {
        return options.home();
    }

    @Override
    public Shell shell() {
        return shell;
    }

    @Override
    public LogBook log() {
        return log;
    }

    @Override
    public CommandTable commands() {
        return commands;
    }

    @Override
    public List<ViewType> viewTypes() {
        return types.values().stream().sorted(Comparator.comparing(ViewType::label)).toList();
    }

    @Override
    public List<PageType> pageTypes() {
        return pages;
    }

    @Override
    public Optional<ViewType> frontView() {
        return frontView.flatMap(id -> Optional.ofNullable(types.get(id)));
    }

    @Override
    public Remembered remembered() {
        return remembered;
    }

    @Override
    public void colours(Remembered.Colours wanted) {
        remembered = remembered.with(wanted);
        rememberedChanged = true;
        Theme.apply(display, wanted);
        recolour();
    }

    @Override
    public List<Path> samples() {
        if (options.samples().isEmpty()) {
            return List.of();
        }
        try (var all = Files.list(options.samples().get())) {
            return all.filter(file -> file.toString().endsWith(".tramontane.json")).sorted().toList();
        } catch (IOException none) {
            return List.of();
        }
    }

    @Override
    public void openSample(Path file) {
        files.openSample(file);
    }

    // --- commands -------------------------------------------------------------------------------------------------------

    Session session() {
        return session;
    }

    DesignFiles files() {
        return files;
    }

    boolean can(Command command) {
        try {
            return command.enabled().test(scene());
        } catch (RuntimeException thrown) {
            uncaught(thrown);
            return false;
        }
    }

    void perform(Command command) {
        try {
            command.run().accept(this);
        } catch (Exception | LinkageError thrown) {
            uncaught(thrown);
        }
    }

    void newDesign() {
        session.openEmpty();
    }

    void openDesigns() {
        new Dialogs(shell).open(session.front().file().map(Path::getParent)).forEach(this::openFile);
    }

    /** What the view in front does for one of the common commands. */
    Optional<Runnable> handler(String id) {
        return frontView.map(frames::get).flatMap(frame -> Optional.ofNullable(frame.handlers().get(id)));
    }

    void fillFront() {
        frontView.ifPresent(view -> arrange(arrangement.fill(arrangement.full().isPresent() ? Optional.empty() : Optional.of(view))));
    }

    void closeFront() {
        frontView.ifPresent(view -> {
            String stack = arrangement.holding(view).map(Arrangement.Stack::name).orElse("");
            arrange(arrangement.close(view));
            // the keys go to what stands there now, or to any other
            frontView = arrangement.stacks().stream().filter(each -> each.name().equals(stack)).map(Arrangement.Stack::front)
                    .filter(frames::containsKey).findFirst().or(() -> frames.keySet().stream().filter(each -> frames.get(each).isSeen()).findFirst());
            frontView.ifPresent(this::open);
        });
    }

    void nextView(int step) {
        List<String> shown = arrangement.stacks().stream().map(Arrangement.Stack::front).filter(frames::containsKey).toList();
        if (!shown.isEmpty()) {
            int at = frontView.map(shown::indexOf).orElse(-1);
            open(shown.get(Math.floorMod(at < 0 ? 0 : at + step, shown.size())));
        }
    }

    void frontMenu() {
        frontView.ifPresent(view -> viewMenu(view, frames.get(view).control().toDisplay(8, 4)));
    }

    void resetLayout() {
        arrangement = standard();
        arrange();
    }

    void nextCase(int step) {
        Scene scene = scene();
        List<String> cases = scene.results().cases().stream().map(each -> each.concrete().id()).toList();
        if (!cases.isEmpty()) {
            front(cases.get(Math.floorMod(cases.indexOf(scene.front()) + step, cases.size())));
        }
    }

    void nextUnits() {
        List<UnitSystem> all = List.of(UnitSystem.values());
        units(all.get((all.indexOf(remembered.units().base()) + 1) % all.size()));
    }

    void compute() {
        OpenDesign front = session.front();
        String condition = front.results().cases().stream().filter(each -> each.concrete().id().equals(front.front()))
                .map(Engine.Case::declared).findFirst().orElse(front.front());
        if (strip != null) {
            strip.outdated(front.key());
        }
        asked = System.nanoTime();
        display.timerExec(BLINK, () -> session.late(front.key(), front.design()));
        live.compute(front.key(), front.document().label(), front.design(), condition);
        if (strip != null) {
            strip.watch();
        }
    }

    void export(Exporter exporter) {
        OpenDesign front = session.front();
        new Dialogs(shell).save(front.file().map(Path::getParent), front.document().label(), "." + exporter.ending(), "File")
                .ifPresent(file -> jobs.start("exporting " + file.getFileName(), watch -> {
                    Set<String> givers = exporter.reads().isEmpty() ? Set.of() : engine.givers(exporter.reads());
                    Evaluation evaluation = engine.evaluate(new Engine.Request(front.design(), givers, Set.of(), Engine.Request.TIME_LIMIT), watch);
                    Exporter.Exported exported = exporter.write(front.design(), evaluation,
                            FormReader.read(exporter.settings(), Value.Tree.EMPTY, "", new ArrayList<>()));
                    Optional<Problem> wrong = exported.problems().stream().filter(Problem::isError).findFirst();
                    if (wrong.isPresent()) {
                        throw new IOException(wrong.get().sentence());
                    }
                    Files.writeString(file, exported.text());
                    return file;
                }, written -> say("Exported " + written.getFileName() + ".")));
    }

    void about() {
        new Dialogs(shell);
        org.eclipse.jface.dialogs.MessageDialog.openInformation(shell, "About Tramontane", "Tramontane: how air cools a piece of equipment, "
                + "judged against its requirements.\n\nResults support an engineer's judgement and do not replace it. Moving blades and mains "
                + "voltage can injure; where cooling protects people or property, follow local codes and have the design confirmed by "
                + "a licensed professional.\n\nBundles loaded: " + engine.analyses().size() + " analyses, " + types.size() + " views.");
    }

    /** Ends the program, once nothing can be lost. */
    void quit() {
        files.settleAll(() -> {
            closing = true;
            remember();
            recovery.ifPresent(Recovery::close);
            shell.dispose();
        });
    }

    // --- keys and focus ---------------------------------------------------------------------------------------------------

    private void key(Event event) {
        if (!(event.widget instanceof Control control) || control.getShell() != shell) {
            return;
        }
        Keys keys = Keys.of(event.stateMask, event.keyCode, event.character);
        if (typing(control) && belongsToText(keys) && (halfTyped || !undoes(keys))) {
            // Enter takes over what was typed
            halfTyped = keys.code() != SWT.CR && (halfTyped || writes(keys, event.character));
            return;
        }
        Optional<Command> own = frontView.map(frames::get).stream().flatMap(frame -> frame.commands().stream())
                .filter(command -> !command.keys().isEmpty() && Keys.parse(command.keys()).equals(keys)).findFirst();
        Optional<Command> command = own.or(() -> commands.of(keys)).filter(this::can);
        if (command.isPresent()) {
            event.doit = false;
            event.type = SWT.None;
            perform(command.get());
        }
    }

    private static boolean typing(Control control) {
        return control instanceof Text text && text.getEditable() || control instanceof Spinner
                || control instanceof Combo combo && (combo.getStyle() & SWT.READ_ONLY) == 0
                || control instanceof org.eclipse.swt.custom.StyledText styled && styled.getEditable();
    }

    /** What a field wants for itself: all without a modifier but F-keys, and what edits its text. */
    private static boolean belongsToText(Keys keys) {
        int others = keys.modifiers() & ~SWT.MOD2;
        boolean function = keys.code() >= SWT.F1 && keys.code() <= SWT.F12;
        return others == 0 && !function
                || others == SWT.MOD1 && keys.code() < 0x10000 && "cvxazy".indexOf(Character.toLowerCase(keys.code())) >= 0;
    }

    private static boolean writes(Keys keys, char character) {
        boolean plain = (keys.modifiers() & SWT.MOD1) == 0;
        return plain ? character >= ' ' || keys.code() == SWT.BS : keys.code() == 'v' || keys.code() == 'x';
    }

    /** Undo and redo belong to a field only while something is half typed in it. */
    private static boolean undoes(Keys keys) {
        return keys.equals(Keys.parse("Ctrl+Z")) || keys.equals(Keys.parse("Ctrl+Y"));
    }

    private void focused(Event event) {
        halfTyped = false;
        if (event.widget instanceof Control control && control.getShell() == shell) {
            panes.viewOf(control).filter(view -> !view.equals("tramontane.help")).ifPresent(view -> frontView = Optional.of(view));
        }
    }

    // --- time -------------------------------------------------------------------------------------------------------------

    private void tick() {
        if (shell.isDisposed() || closing) {
            return;
        }
        keepSafe();
        if (rememberedChanged) {
            rememberedChanged = false;
            Remembered now = present();
            jobs.quietly(watch -> {
                now.save(rememberedFile);
                return true;
            }, done -> { });
        }
        files.look();
        display.timerExec(TICK, this::tick);
    }

    private Map<String, Recovery.Unsaved> unsaved() {
        Map<String, Recovery.Unsaved> unsaved = new HashMap<>();
        session.open().stream().filter(OpenDesign::changed)
                .forEach(each -> unsaved.put(each.key(), new Recovery.Unsaved(each.file(), each.design())));
        return unsaved;
    }

    private void keepSafe() {
        Map<String, Recovery.Unsaved> unsaved = unsaved();
        recovery.ifPresent(keeping -> jobs.quietly(watch -> {
            keeping.keep(unsaved);
            return true;
        }, done -> { }));
    }

    private Remembered present() {
        Rectangle bounds = shell.getBounds();
        Optional<List<Integer>> where = shell.getMaximized() ? remembered.bounds()
                : Optional.of(List.of(bounds.x, bounds.y, bounds.width, bounds.height));
        remembered = remembered.with(arrangement, where, shell.getMaximized());
        return remembered;
    }

    private void remember() {
        try {
            present().save(rememberedFile);
        } catch (IOException e) {
            // the window goes; next time it stands as it did before
        }
    }

    private void used(Path file) {
        remembered = remembered.used(file);
        rememberedChanged = true;
    }

    /** Opens what earlier runs left unsaved when they ended without warning. */
    public boolean recover() {
        Map<Path, List<Recovery.Unsaved>> left = Recovery.left(recoveries());
        List<String> names = new ArrayList<>();
        left.values().stream().flatMap(List::stream).forEach(unsaved -> {
            Optional<Design> saved = unsaved.file().filter(Files::exists)
                    .flatMap(file -> tramontane.model.file.DesignFile.read(file).design());
            session.open(unsaved.file(), unsaved.design(), saved);
            names.add(session.front().document().label());
            unsaved.file().ifPresent(file -> files.known(session.front().key(), file));
        });
        if (!names.isEmpty()) {
            say(new Notice("The program ended without warning last time. Unsaved changes are here again: " + String.join(", ", names)
                    + ". Save to keep them.", true, List.of()));
        }
        Map<String, Recovery.Unsaved> unsaved = unsaved();
        // the old copies go only once there are new ones
        recovery.ifPresent(keeping -> jobs.quietly(watch -> {
            keeping.keep(unsaved);
            left.keySet().forEach(Recovery::forget);
            return true;
        }, done -> { }));
        return !names.isEmpty();
    }

    /**
     * Opens what is to be seen first: files that were named; else what an earlier run left unsaved; else the file used last; else a sample.
     */
    public void begin(List<Path> named) {
        boolean recovered = recover();
        named.forEach(this::openFile);
        if (recovered || !named.isEmpty()) {
            return;
        }
        Optional<Path> last = remembered.recent().stream().filter(Files::exists).findFirst();
        if (last.isPresent()) {
            openFile(last.get());
            return;
        }
        List<Path> samples = samples();
        samples.stream().filter(file -> file.getFileName().toString().startsWith("observatory")).findFirst()
                .or(() -> samples.stream().findFirst()).ifPresent(this::openSample);
        if (!remembered.started() && types.containsKey("tramontane.welcome")) {
            open("tramontane.welcome");
        }
    }

    /** Ends all, without asking; copies of unsaved changes stay, to be found at the next start. */
    @Override
    public void close() {
        closing = true;
        recovery.ifPresent(Recovery::leave);
        display.removeFilter(SWT.KeyDown, keys);
        display.removeFilter(SWT.FocusIn, focus);
        display.removeListener(SWT.Settings, settings);
        frames.values().forEach(Frame::close);
        frames.clear();
        if (!shell.isDisposed()) {
            shell.dispose();
        }
        jobs.close();
        images.dispose();
        digits.dispose();
        bold.dispose();
    }

    // --- what the parts tell ----------------------------------------------------------------------------------------------

    private final class LiveResults implements Live.Listener {
        @Override
        public void checked(String key, Design design, List<Problem> problems) {
            session.checked(key, design, problems);
        }

        @Override
        public void computed(String key, Evaluation evaluation, boolean last) {
            session.computed(key, evaluation, last);
            if (options.timing()) {
                display.asyncExec(() -> System.err.printf("tramontane: %s shown %.0f ms after the edit%n", last ? "all" : "a part",
                        (System.nanoTime() - asked) / 1e6));
            }
        }

        @Override
        public void notComputed(String key, Design design) {
            session.notComputed(key, design);
        }
    }

    private final class TopHand implements TopBar.Hand {
        @Override
        public void show(String key) {
            session.show(key);
        }

        @Override
        public void close(String key) {
            session.open().stream().filter(each -> each.key().equals(key)).findFirst().ifPresent(files::close);
        }

        @Override
        public void front(String caseId) {
            session.front(caseId);
        }

        @Override
        public void units(UnitSystem units) {
            Window.this.units(units);
        }
    }

    private final class PaneHand implements Panes.Hand {
        @Override
        public void front(String view) {
            arrange(arrangement.open(view, types.get(view).spot()));
            frontView = Optional.of(view);
        }

        @Override
        public void close(String view) {
            arrange(arrangement.close(view));
        }

        @Override
        public void move(String view, String stack, Side side) {
            arrange(arrangement.move(view, stack, side));
        }

        @Override
        public void share(Arrangement.Halves halves, double share) {
            arrange(arrangement.share(halves, share));
        }

        @Override
        public void fill(String view) {
            arrange(arrangement.fill(arrangement.full().isPresent() ? Optional.empty() : Optional.of(view)));
        }

        @Override
        public void menu(String view, Point where) {
            viewMenu(view, where);
        }
    }

    private void viewMenu(String view, Point where) {
        Frame frame = frames.get(view);
        if (frame == null) {
            return;
        }
        Menu menu = new Menu(shell, SWT.POP_UP);
        menus.fill(menu, List.<List<Command>>of(frame.commands()));
        if (menu.getItemCount() > 0) {
            new MenuItem(menu, SWT.SEPARATOR);
        }
        Menu pin = Menus.more(menu, "Pin to condition");
        pinItem(pin, frame, "follow the window", Optional.empty());
        scene().results().cases().stream().limit(40).forEach(each -> pinItem(pin, frame, each.concrete().id(), Optional.of(each.concrete().id())));
        Menu move = Menus.more(menu, "Move");
        for (Spot spot : Spot.values()) {
            String stack = spot.name().toLowerCase(java.util.Locale.ROOT);
            Menus.plain(move, SWT.PUSH, "to the " + words(spot), () -> arrange(arrangement.move(view, stack, Side.WITHIN)));
        }
        new MenuItem(move, SWT.SEPARATOR);
        arrangement.holding(view).ifPresent(stack -> {
            for (Side side : List.of(Side.LEFT, Side.RIGHT, Side.ABOVE, Side.BELOW)) {
                Menus.plain(move, SWT.PUSH, switch (side) {
                    case LEFT -> "left of the others here";
                    case RIGHT -> "right of the others here";
                    case ABOVE -> "above the others here";
                    default -> "below the others here";
                }, () -> arrange(arrangement.move(view, stack.name(), side)));
            }
        });
        Menus.plain(menu, SWT.PUSH, arrangement.full().isPresent() ? "Fill the window no longer" : "Fill the window",
                () -> arrange(arrangement.fill(arrangement.full().isPresent() ? Optional.empty() : Optional.of(view))));
        Menus.plain(menu, SWT.PUSH, "Help", () -> {
            frontView = Optional.of(view);
            show("tramontane.help", false);
            draw();
        });
        Menus.plain(menu, SWT.PUSH, "Close", () -> arrange(arrangement.close(view)));
        menu.setLocation(where);
        menu.addListener(SWT.Hide, event -> display.asyncExec(menu::dispose));
        menu.setVisible(true);
    }

    private void pinItem(Menu menu, Frame frame, String label, Optional<String> caseId) {
        MenuItem item = Menus.plain(menu, SWT.RADIO, label, () -> { });
        item.setSelection(frame.pinned().equals(caseId));
        item.addListener(SWT.Selection, event -> {
            if (item.getSelection()) {
                frame.pin(caseId);
                panes.refresh();
                draw();
            }
        });
    }

    private static String words(Spot spot) {
        return switch (spot) {
            case LEFT -> "left";
            case MIDDLE -> "middle";
            case BELOW_MIDDLE -> "lower middle";
            case RIGHT -> "upper right";
            case BELOW_RIGHT -> "lower right";
            case BOTTOM -> "lower edge";
        };
    }

    private final class PaneContent implements Panes.Content {
        @Override
        public String label(String view) {
            Frame frame = frames.get(view);
            return types.get(view).label() + (frame == null ? "" : frame.pinned().map(caseId -> " – " + caseId).orElse(""));
        }

        @Override
        public Image image(String view) {
            return images.of(types.get(view).icon());
        }

        @Override
        public Control frame(String view, Composite parent) {
            Frame frame = frames.get(view);
            if (frame != null && frame.control().getParent() != parent && !frame.control().setParent(parent)) {
                frame.close();
                frame = null;
            }
            if (frame == null) {
                frame = new Frame(types.get(view), Window.this, parent);
                frames.put(view, frame);
            }
            return frame.control();
        }

        @Override
        public Optional<Control> tools(String view, CTabFolder parent) {
            Frame frame = frames.get(view);
            ToolBar bar = new ToolBar(parent, SWT.FLAT);
            bar.setBackground(palette.background());
            if (frame != null) {
                frame.commands().stream().filter(command -> command.icon().isPresent()).forEach(command -> {
                    ToolItem item = new ToolItem(bar, SWT.PUSH);
                    item.setImage(images.of(command.icon().get()));
                    item.setToolTipText(command.label() + (command.keys().isEmpty() ? "" : " (" + command.keys() + ")") + "\n" + command.help());
                    item.setData("tramontane.id", command.id());
                    item.addListener(SWT.Selection, event -> {
                        if (can(command)) {
                            perform(command);
                        }
                    });
                });
            }
            ToolItem more = new ToolItem(bar, SWT.PUSH);
            more.setImage(images.of(MORE));
            more.setToolTipText("Menu of this view");
            more.addListener(SWT.Selection, event -> viewMenu(view, bar.toDisplay(more.getBounds().x, more.getBounds().height)));
            return Optional.of(bar);
        }
    }

    private static final Icon MORE = Icon.read(Window.class, "/tramontane/desktop/icons/more.svg");
}
