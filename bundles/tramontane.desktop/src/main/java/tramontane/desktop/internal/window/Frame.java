package tramontane.desktop.internal.window;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import tramontane.desktop.Command;
import tramontane.desktop.Desk;
import tramontane.desktop.Palette;
import tramontane.desktop.Scene;
import tramontane.desktop.View;
import tramontane.desktop.ViewType;

/**
 * A view's place in the window. Whatever the view throws ends the view, not the window: its error text stands where it was, with a button
 * that opens it anew.
 */
final class Frame {

    private static final boolean TIMING = Boolean.getBoolean("tramontane.timing");

    private final ViewType type;
    private final Desk desk;
    private final Composite box;
    private Optional<View> view = Optional.empty();
    private Optional<String> pinned = Optional.empty();
    private Scene last;
    private boolean opened;
    private List<Command> commands = List.of();

    Frame(ViewType type, Desk desk, Composite parent) {
        this.type = type;
        this.desk = desk;
        box = new Composite(parent, SWT.NONE);
        box.setData("tramontane.id", "view:" + type.id());
        box.setLayout(new FillLayout());
    }

    /** Whether the view has not been asked for its widgets yet: that is done when it is first seen. */
    boolean isNew() {
        return !opened;
    }

    /** Has the view build its widgets. */
    void open() {
        if (opened || box.isDisposed()) {
            return;
        }
        opened = true;
        guarded(() -> {
            View made = type.open(box, desk);
            view = Optional.of(made);
            commands = List.copyOf(made.commands());
        });
        box.layout(true, true);
    }

    ViewType type() {
        return type;
    }

    Composite control() {
        return box;
    }

    /** The case this view is pinned to; empty where it follows the window. */
    Optional<String> pinned() {
        return pinned;
    }

    void pin(Optional<String> caseId) {
        pinned = caseId;
        last = null;
    }

    /** Whether it can be seen. */
    boolean isSeen() {
        return !box.isDisposed() && box.isVisible();
    }

    /** Draws a scene if it can be seen and is another one than last time. */
    void show(Scene scene) {
        if (!opened || !isSeen()) {
            return;
        }
        Scene shown = pinned.filter(caseId -> scene.results().cases().stream().anyMatch(each -> each.concrete().id().equals(caseId)))
                .map(scene::inFront).orElse(scene);
        if (shown == last || last != null && same(shown, last)) {
            return;
        }
        last = shown;
        long begun = System.nanoTime();
        guarded(() -> view.ifPresent(each -> each.show(shown)));
        if (TIMING) {
            System.err.printf("tramontane: %s drawn in %.1f ms%n", type.id(), (System.nanoTime() - begun) / 1e6);
        }
    }

    /** Compared by what they hold, without looking into it. */
    private static boolean same(Scene a, Scene b) {
        return a.document() == b.document() && a.results() == b.results() && a.front().equals(b.front())
                && a.selection().equals(b.selection()) && a.asked().equals(b.asked()) && a.units().equals(b.units())
                && a.palette() == b.palette();
    }

    List<Command> commands() {
        return commands;
    }

    Map<String, Runnable> handlers() {
        return guarded(() -> view.map(View::handlers).orElse(Map.of()), Map.of());
    }

    boolean focus() {
        return guarded(() -> view.map(View::focus).orElse(false), false) || box.setFocus();
    }

    void close() {
        guarded(() -> view.ifPresent(View::close));
        view = Optional.empty();
        if (!box.isDisposed()) {
            box.dispose();
        }
    }

    /** Something of this view threw while the window ran it. */
    void failed(Throwable thrown) {
        desk.failed("The view " + type.label() + " was closed because it failed: " + sentence(thrown), thrown);
        try {
            view.ifPresent(View::close);
        } catch (Exception | LinkageError again) {
            // it has failed before, and that was said
        }
        view = Optional.empty();
        commands = List.of();
        if (box.isDisposed()) {
            return;
        }
        for (Control child : box.getChildren()) {
            child.dispose();
        }
        errorText(sentence(thrown));
        box.layout(true, true);
    }

    private void errorText(String sentence) {
        Palette palette = desk.scene().palette();
        Composite page = new Composite(box, SWT.NONE);
        page.setBackground(palette.surface());
        GridLayout layout = new GridLayout();
        layout.marginWidth = 24;
        layout.marginHeight = 24;
        layout.verticalSpacing = 12;
        page.setLayout(layout);
        Label head = new Label(page, SWT.WRAP);
        head.setText(type.label() + " cannot be shown");
        head.setFont(desk.bold());
        head.setForeground(palette.text());
        head.setBackground(palette.surface());
        Text text = new Text(page, SWT.READ_ONLY | SWT.WRAP | SWT.MULTI);
        text.setData("tramontane.id", "view-error:" + type.id());
        text.setText(sentence + "\nThe rest of the window goes on. The log has the details.");
        text.setForeground(palette.text());
        text.setBackground(palette.surface());
        text.setLayoutData(new GridData(SWT.FILL, SWT.TOP, true, false));
        Button again = new Button(page, SWT.PUSH);
        again.setText("Open it again");
        again.addListener(SWT.Selection, event -> {
            page.dispose();
            last = null;
            opened = false;
            open();
            show(desk.scene());
        });
    }

    private static String sentence(Throwable thrown) {
        String message = thrown.getMessage() == null ? "" : thrown.getMessage().lines().findFirst().orElse("");
        String text = message.isBlank() ? thrown.getClass().getSimpleName() : message;
        return text.endsWith(".") ? text : text + ".";
    }

    private void guarded(Runnable work) {
        guarded(() -> {
            work.run();
            return true;
        }, false);
    }

    private <T> T guarded(Supplier<T> work, T otherwise) {
        try {
            return work.get();
        } catch (Exception | LinkageError | StackOverflowError | AssertionError thrown) {
            failed(thrown);
            return otherwise;
        }
    }
}
