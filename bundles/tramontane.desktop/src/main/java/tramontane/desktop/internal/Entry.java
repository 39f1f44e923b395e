package tramontane.desktop.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.ToIntFunction;
import org.eclipse.swt.SWTError;
import org.eclipse.swt.widgets.Display;
import org.osgi.framework.BundleContext;
import org.osgi.framework.ServiceReference;
import org.osgi.service.component.annotations.Activate;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import org.osgi.service.component.annotations.ReferenceCardinality;
import org.osgi.service.component.annotations.ReferencePolicy;
import tramontane.analysis.Engine;
import tramontane.desktop.Desk;
import tramontane.desktop.Desktop;
import tramontane.desktop.PageType;
import tramontane.desktop.ViewType;
import tramontane.desktop.internal.window.Window;

/** What the launcher calls when the window is wanted. */
@Component(service = {ToIntFunction.class, Desktop.class}, property = "tramontane.entry=desktop")
public final class Entry implements ToIntFunction<Object>, Desktop {

    private static final int FAULT = 3;

    private final BundleContext context;
    private final Engine engine;
    private final Map<ServiceReference<ViewType>, ViewType> types = new LinkedHashMap<>();
    private final List<PageType> pages = new CopyOnWriteArrayList<>();
    private Optional<Window> window = Optional.empty();
    private Optional<Display> display = Optional.empty();

    /** Made by Declarative Services. */
    @Activate
    public Entry(BundleContext context, @Reference Engine engine) {
        this.context = context;
        this.engine = engine;
    }

    @Reference(cardinality = ReferenceCardinality.MULTIPLE, policy = ReferencePolicy.DYNAMIC)
    void addType(ServiceReference<ViewType> reference, ViewType type) {
        synchronized (types) {
            types.put(reference, type);
        }
        changed();
    }

    void removeType(ServiceReference<ViewType> reference, ViewType type) {
        synchronized (types) {
            types.remove(reference);
        }
        changed();
    }

    @Reference(cardinality = ReferenceCardinality.MULTIPLE, policy = ReferencePolicy.DYNAMIC)
    void addPage(PageType page) {
        pages.add(page);
        changed();
    }

    void removePage(PageType page) {
        pages.remove(page);
        changed();
    }

    /** Of two views with one id the higher ranked counts, else the one that came first. */
    private List<ViewType> types() {
        Map<String, ViewType> byId = new LinkedHashMap<>();
        synchronized (types) {
            List<ServiceReference<ViewType>> order = new ArrayList<>(types.keySet());
            order.sort(Comparator.reverseOrder());
            order.forEach(reference -> byId.putIfAbsent(types.get(reference).id(), types.get(reference)));
        }
        return List.copyOf(byId.values());
    }

    private void changed() {
        Optional<Display> there;
        synchronized (types) {
            there = display;
        }
        there.filter(each -> !each.isDisposed()).ifPresent(each -> each.asyncExec(() -> window.ifPresent(open -> open.contributions(types(), List.copyOf(pages)))));
    }

    @Override
    public int applyAsInt(Object arguments) {
        Display.setAppName("Tramontane");
        Display made;
        try {
            made = new Display();
        } catch (SWTError noDisplay) {
            System.err.println("tramontane: the window cannot be opened: " + first(noDisplay.getMessage())
                    + ". On the command line, \"tramontane solve FILE\" does without.");
            return FAULT;
        }
        try (Shown shown = show(made, Path.of(property("tramontane.home")), List.of((String[]) arguments).stream().map(Path::of).toList())) {
            shown.window().run();
        } finally {
            made.dispose();
        }
        return 0;
    }

    @Override
    public Opened open(Display on, Path home, List<Path> files) {
        return show(on, home, files);
    }

    private Shown show(Display on, Path home, List<Path> files) {
        Window opened = new Window(on, engine, types(), List.copyOf(pages), new Window.Options(home,
                Optional.ofNullable(context.getProperty("tramontane.samples")).map(Path::of), Boolean.getBoolean("tramontane.timing")));
        synchronized (types) {
            window = Optional.of(opened);
            display = Optional.of(on);
        }
        opened.open();
        opened.begin(files);
        return new Shown(opened);
    }

    private final class Shown implements Opened {
        private final Window window;

        Shown(Window window) {
            this.window = window;
        }

        Window window() {
            return window;
        }

        @Override
        public Desk desk() {
            return window;
        }

        @Override
        public boolean isOpen() {
            return !window.shell().isDisposed();
        }

        @Override
        public void close() {
            synchronized (types) {
                Entry.this.window = Optional.empty();
                display = Optional.empty();
            }
            window.close();
        }
    }

    private String property(String name) {
        return Optional.ofNullable(context.getProperty(name)).orElseGet(() -> System.getProperty("user.home"));
    }

    private static String first(String message) {
        return message == null ? "there is no display" : message.lines().findFirst().orElse("there is no display");
    }
}
