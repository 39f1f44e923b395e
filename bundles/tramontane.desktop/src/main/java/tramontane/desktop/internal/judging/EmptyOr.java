package tramontane.desktop.internal.judging;

import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import tramontane.desktop.Palette;

/** Content, or a sentence in its place that says what would fill it. */
final class EmptyOr {

    private final Composite box;
    private final StackLayout stack = new StackLayout();
    private final Composite content;
    private final Composite empty;
    private final Label label;

    EmptyOr(Composite parent) {
        box = new Composite(parent, SWT.NONE);
        box.setLayout(stack);
        content = new Composite(box, SWT.NONE);
        empty = new Composite(box, SWT.NONE);
        GridLayout layout = new GridLayout();
        layout.marginWidth = 16;
        layout.marginHeight = 16;
        empty.setLayout(layout);
        label = new Label(empty, SWT.WRAP);
        label.setLayoutData(new GridData(SWT.FILL, SWT.TOP, true, false));
        stack.topControl = content;
    }

    Control control() {
        return box;
    }

    /** Where the content is built. */
    Composite content() {
        return content;
    }

    void colour(Palette palette) {
        for (Control each : new Control[] {box, empty, label}) {
            each.setBackground(palette.surface());
        }
        label.setForeground(palette.muted());
    }

    /** Shows the sentence; empty text shows the content. */
    void say(String sentence) {
        Control wanted = sentence.isEmpty() ? content : empty;
        if (!sentence.isEmpty() && !label.getText().equals(sentence)) {
            label.setText(sentence);
            empty.layout(true, true);
        }
        if (stack.topControl != wanted) {
            stack.topControl = wanted;
            box.layout();
        }
    }
}
