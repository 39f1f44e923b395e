package tramontane.selection.desktop.internal;

import java.util.function.Consumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import tramontane.desktop.Desk;
import tramontane.desktop.Palette;

/** Stands in the place of a table that has nothing to show: what would fill it, and the one button that does. */
final class EmptyPage {

    private static final int WIDEST = 480;

    private final Composite page;
    private final Label title;
    private final Label sentence;
    private final Button button;
    private Candidates.Action action = Candidates.Action.NONE;

    EmptyPage(Composite parent, Desk desk, Consumer<Candidates.Action> pressed) {
        page = new Composite(parent, SWT.NONE);
        GridLayout layout = new GridLayout();
        layout.marginWidth = 24;
        layout.marginHeight = 24;
        layout.verticalSpacing = 8;
        page.setLayout(layout);
        title = new Label(page, SWT.NONE);
        title.setFont(desk.bold());
        title.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        sentence = new Label(page, SWT.WRAP);
        GridData wide = new GridData(SWT.BEGINNING, SWT.CENTER, true, false);
        wide.widthHint = WIDEST;
        sentence.setLayoutData(wide);
        button = new Button(page, SWT.PUSH);
        button.setLayoutData(new GridData(SWT.BEGINNING, SWT.CENTER, false, false));
        button.addListener(SWT.Selection, event -> pressed.accept(action));
        page.addListener(SWT.Resize, event -> {
            wide.widthHint = Math.max(120, Math.min(WIDEST, page.getClientArea().width - 48));
            page.layout();
        });
    }

    Composite control() {
        return page;
    }

    boolean hasButton() {
        return button.getVisible();
    }

    void focus() {
        button.setFocus();
    }

    void show(Candidates.Empty empty, Palette palette) {
        action = empty.action();
        page.setBackground(palette.surface());
        for (Label label : new Label[] {title, sentence}) {
            label.setBackground(palette.surface());
            label.setForeground(label == title ? palette.text() : palette.muted());
        }
        set(title, empty.title());
        set(sentence, empty.sentence());
        if (!button.getText().equals(empty.button())) {
            button.setText(empty.button());
        }
        button.setVisible(!empty.button().isEmpty());
        page.layout();
    }

    private static void set(Label label, String text) {
        if (!label.getText().equals(text)) {
            label.setText(text);
        }
    }
}
