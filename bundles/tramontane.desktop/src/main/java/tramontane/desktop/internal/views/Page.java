package tramontane.desktop.internal.views;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import tramontane.desktop.Desk;
import tramontane.desktop.Palette;

/** What the small views are made of. */
final class Page {

    private static final int MARGIN = 24;

    private Page() {
    }

    /** A page with generous margins that scrolls when it must; fill the composite that comes back, then {@link #fit} it. */
    static Composite scrolled(ScrolledComposite scroll, int columns) {
        scroll.setExpandHorizontal(true);
        scroll.setExpandVertical(true);
        Composite page = new Composite(scroll, SWT.NONE);
        GridLayout layout = new GridLayout(columns, false);
        layout.marginWidth = MARGIN;
        layout.marginHeight = MARGIN;
        layout.horizontalSpacing = 16;
        layout.verticalSpacing = 8;
        page.setLayout(layout);
        scroll.setContent(page);
        scroll.addListener(SWT.Resize, event -> fit(scroll, page));
        return page;
    }

    static void fit(ScrolledComposite scroll, Composite page) {
        int width = scroll.getClientArea().width;
        if (width > 0) {
            scroll.setMinSize(100, page.computeSize(width, SWT.DEFAULT).y);
        }
    }

    static Label heading(Composite page, Desk desk, String text) {
        Label label = new Label(page, SWT.WRAP);
        label.setText(text);
        label.setFont(desk.bold());
        label.setLayoutData(new GridData(SWT.FILL, SWT.TOP, true, false, ((GridLayout) page.getLayout()).numColumns, 1));
        return label;
    }

    static Label text(Composite page, String text) {
        Label label = new Label(page, SWT.WRAP);
        label.setText(text);
        GridData data = new GridData(SWT.FILL, SWT.TOP, true, false, ((GridLayout) page.getLayout()).numColumns, 1);
        data.widthHint = 200;
        label.setLayoutData(data);
        return label;
    }

    /** Gives a page and all on it the palette's colours. */
    static void colour(Control control, Palette palette) {
        // what is behind a radio or check button shows through; a colour of its own would hide its ring or box
        boolean button = control instanceof Button;
        boolean ofTheSystem = button && (control.getStyle() & SWT.PUSH) != 0 || control instanceof Combo;
        if (!ofTheSystem && !button) {
            control.setBackground(palette.surface());
        }
        if (!ofTheSystem) {
            control.setForeground(palette.text());
        }
        if (control instanceof Composite composite) {
            for (Control child : composite.getChildren()) {
                colour(child, palette);
            }
        }
    }

    /** Gives a table and its heads the palette's colours. */
    static void colour(Table table, Palette palette) {
        table.setBackground(palette.surface());
        table.setForeground(palette.text());
        table.setHeaderBackground(palette.background());
        table.setHeaderForeground(palette.text());
    }

    /** A text that can be read, searched by the eye and copied; headings bold, items with a dot. */
    static StyledText reading(Composite parent) {
        parent.setLayout(new FillLayout());
        StyledText text = new StyledText(parent, SWT.READ_ONLY | SWT.WRAP | SWT.V_SCROLL);
        text.setMargins(MARGIN, MARGIN, MARGIN, MARGIN);
        text.setLineSpacing(3);
        text.setCaret(null);
        return text;
    }

    /** Sets a help text, whose marks are those of {@code ViewType.help}. */
    static void read(StyledText into, String title, String help) {
        StringBuilder all = new StringBuilder(title).append("\n\n");
        List<StyleRange> styles = new ArrayList<>();
        styles.add(new StyleRange(0, title.length(), null, null, SWT.BOLD));
        for (String paragraph : help.strip().split("\n\\s*\n")) {
            boolean list = false;
            for (String line : paragraph.split("\n")) {
                String bare = line.strip();
                if (bare.startsWith("# ")) {
                    styles.add(new StyleRange(all.length(), bare.length() - 2, null, null, SWT.BOLD));
                    all.append(bare.substring(2)).append('\n');
                } else if (bare.startsWith("- ")) {
                    all.append("•  ").append(bare.substring(2)).append('\n');
                    list = true;
                } else if (list) {
                    all.setCharAt(all.length() - 1, ' ');
                    all.append(bare).append('\n');
                } else {
                    all.append(bare).append(bare.isEmpty() ? "" : " ");
                }
            }
            all.append(all.charAt(all.length() - 1) == '\n' ? "\n" : "\n\n");
        }
        into.setText(all.toString().stripTrailing());
        styles.stream().filter(style -> style.start + style.length <= into.getCharCount()).forEach(into::setStyleRange);
    }
}
