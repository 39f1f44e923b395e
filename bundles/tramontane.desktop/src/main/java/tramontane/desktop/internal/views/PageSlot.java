package tramontane.desktop.internal.views;

import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import tramontane.desktop.Desk;
import tramontane.desktop.PageType;
import tramontane.desktop.Scene;
import tramontane.model.edit.Subject;

/** The place of a page that a bundle brings. What the page throws ends the page: its error text stands where it was. */
final class PageSlot {

    private final PageType type;
    private final Desk desk;
    private final Composite box;
    private Optional<PageType.Page> page = Optional.empty();

    PageSlot(PageType type, Desk desk, Composite parent) {
        this.type = type;
        this.desk = desk;
        int columns = ((GridLayout) parent.getLayout()).numColumns;
        Label head = new Label(parent, SWT.NONE);
        head.setText(type.label());
        head.setFont(desk.bold());
        GridData top = new GridData(SWT.FILL, SWT.TOP, true, false, columns, 1);
        top.verticalIndent = 8;
        head.setLayoutData(top);
        box = new Composite(parent, SWT.NONE);
        box.setData("tramontane.id", "page:" + type.id());
        box.setLayout(new FillLayout());
        box.setLayoutData(new GridData(SWT.FILL, SWT.TOP, true, false, columns, 1));
        guarded(() -> page = Optional.of(type.open(box, desk)));
        box.addListener(SWT.Dispose, event -> page.ifPresent(open -> {
            page = Optional.empty();
            guarded(open::close);
        }));
    }

    void show(Scene scene, Subject subject) {
        guarded(() -> page.ifPresent(open -> open.show(scene, subject)));
    }

    private void guarded(Runnable work) {
        try {
            work.run();
        } catch (Exception | LinkageError | StackOverflowError | AssertionError thrown) {
            page = Optional.empty();
            String message = thrown.getMessage() == null ? thrown.getClass().getSimpleName() : thrown.getMessage();
            desk.failed("The page " + type.label() + " was closed because it failed: " + message, thrown);
            if (!box.isDisposed()) {
                for (Control child : box.getChildren()) {
                    child.dispose();
                }
                Text text = new Text(box, SWT.READ_ONLY | SWT.WRAP | SWT.MULTI);
                text.setData("tramontane.id", "page-error:" + type.id());
                text.setText("This page cannot be shown: " + message + " The log has the details.");
                box.layout(true, true);
            }
        }
    }
}
