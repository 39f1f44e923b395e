package tramontane.desktop.internal.judging;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Link;
import org.eclipse.swt.widgets.Text;
import tramontane.desktop.Command;
import tramontane.desktop.Desk;
import tramontane.desktop.Palette;
import tramontane.desktop.Scene;
import tramontane.desktop.Sheet;
import tramontane.desktop.SheetTable;
import tramontane.desktop.View;

/** Draws the requirements matrix, with the reason of a cell beneath. */
final class MatrixView implements View {

    /** Height of a reason that is a heading and a line. */
    private static final int LEAST = 56;

    private final Desk desk;
    private final EmptyOr page;
    private final SheetTable table;
    private final Composite box;
    private final Composite reason;
    private final Label title;
    private final Text sentences;
    private final Link more;
    private Matrix matrix = new Matrix(Sheet.EMPTY, Map.of(), Map.of(), "");
    private Optional<Matrix.Place> open = Optional.empty();
    private Optional<Matrix.Reason> shown = Optional.empty();
    private Palette palette;

    MatrixView(Composite parent, Desk desk) {
        this.desk = desk;
        page = new EmptyOr(parent);
        box = page.content();
        GridLayout layout = new GridLayout();
        layout.marginWidth = 0;
        layout.marginHeight = 0;
        layout.verticalSpacing = 0;
        box.setLayout(layout);
        table = new SheetTable(box, desk, SWT.SINGLE, Optional.of(desk.memory(MatrixViewType.ID)))
                .onPress(this::choose).onOpen(this::choose).onMove(this::follow).onHover(this::hover).onHead(this::head);
        table.control().setData("tramontane.id", "matrix");
        table.control().setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, true));
        table.control().addListener(SWT.KeyDown, event -> {
            if (event.keyCode == SWT.ESC) {
                tell(Optional.empty());
            }
        });
        reason = new Composite(box, SWT.NONE);
        reason.setData("tramontane.id", "matrix.reason");
        reason.setLayoutData(new GridData(SWT.FILL, SWT.BOTTOM, true, false));
        GridLayout inner = new GridLayout(2, false);
        inner.marginWidth = 8;
        inner.marginHeight = 8;
        inner.verticalSpacing = 4;
        reason.setLayout(inner);
        title = new Label(reason, SWT.WRAP);
        title.setFont(desk.bold());
        title.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        more = new Link(reason, SWT.NONE);
        more.setLayoutData(new GridData(SWT.RIGHT, SWT.CENTER, false, false));
        more.addListener(SWT.Selection, event -> {
            if (event.text.equals("close")) {
                tell(Optional.empty());
            } else {
                shown.flatMap(Matrix.Reason::figure).ifPresent(desk::explain);
            }
        });
        sentences = new Text(reason, SWT.READ_ONLY | SWT.WRAP | SWT.MULTI | SWT.V_SCROLL);
        sentences.setData("tramontane.id", "matrix.sentences");
        box.addListener(SWT.Resize, event -> {
            if (shown.isPresent() && room()) {
                box.layout(true, true);
            }
        });
        sentences.setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, true, 2, 1));
        tell(Optional.empty());
    }

    @Override
    public Control control() {
        return page.control();
    }

    @Override
    public boolean focus() {
        return table.control().setFocus();
    }

    @Override
    public void show(Scene scene) {
        matrix = MatrixPresenter.of(scene, Kinds.of(desk));
        if (scene.palette() != palette) {
            palette = scene.palette();
            page.colour(palette);
            box.setBackground(palette.surface());
            for (Control each : new Control[] {reason, title, more, sentences}) {
                each.setBackground(palette.raised());
                each.setForeground(palette.text());
            }
            more.setLinkForeground(palette.accent());
        }
        table.show(matrix.sheet(), scene.palette());
        page.say(matrix.empty());
        open.ifPresent(place -> tell(matrix.reason(place)));
    }

    private void choose(Sheet.Row row, int column) {
        matrix.reason(row, column).ifPresent(why -> {
            open = Optional.of(new Matrix.Place(row.key(), matrix.sheet().columns().get(column).key()));
            tell(Optional.of(why));
            why.front().ifPresent(desk::front);
            why.subject().ifPresent(subject -> desk.select(Optional.of(subject)));
        });
    }

    /** Once it is open, the reason goes along with the cell. */
    private void follow(Sheet.Row row, int column) {
        if (open.isPresent()) {
            matrix.reason(row, column).ifPresent(why -> {
                open = Optional.of(new Matrix.Place(row.key(), matrix.sheet().columns().get(column).key()));
                tell(Optional.of(why));
            });
        }
    }

    /** Shows a reason, or none. */
    private void tell(Optional<Matrix.Reason> why) {
        if (why.isPresent() && why.equals(shown)) {
            return;
        }
        boolean before = shown.isPresent();
        shown = why;
        open = why.isPresent() ? open : Optional.empty();
        why.ifPresent(each -> {
            title.setText((each.title() + each.severity().map(severity -> ": " + severity.word()).orElse("")).replace("&", "&&"));
            more.setText((each.figure().isPresent() ? "<a href=\"where\">Where from</a>    " : "") + "<a href=\"close\">Close</a>");
            sentences.setText(String.join(" ", each.lines()));
        });
        if (room() || before != why.isPresent()) {
            reason.setVisible(why.isPresent());
            ((GridData) reason.getLayoutData()).exclude = why.isEmpty();
            box.layout(true, true);
            // it has taken room from the table
            table.control().showSelection();
        } else {
            reason.layout(true, true);
        }
    }

    /** Gives the reason the height it wants, but never so much that the table is gone; whether that is another one than before. */
    private boolean room() {
        GridData data = (GridData) reason.getLayoutData();
        int before = data.heightHint;
        data.heightHint = SWT.DEFAULT;
        int wanted = reason.computeSize(Math.max(1, box.getSize().x), SWT.DEFAULT).y;
        data.heightHint = Math.min(wanted, Math.max(LEAST, box.getSize().y * 2 / 5));
        return data.heightHint != before;
    }

    private String hover(Sheet.Row row, int column) {
        return matrix.reason(row, column).map(why -> why.hover().isEmpty() ? String.join("\n", why.lines()) : why.hover()).orElse("");
    }

    private void head(Sheet.Column column) {
        Optional.ofNullable(matrix.conditions().get(column.key())).filter(condition -> !condition.isEmpty()).ifPresent(desk::front);
    }

    @Override
    public List<Command> commands() {
        return List.of(Explaining.command("matrix", table));
    }

    @Override
    public Map<String, Runnable> handlers() {
        return matrix.sheet().rows().isEmpty() ? Map.of() : Map.of(Command.COPY, this::copy);
    }

    private void copy() {
        if (sentences.isFocusControl() && sentences.getSelectionCount() > 0) {
            sentences.copy();
        } else {
            table.copy(matrix.sheet().tabbed());
        }
    }
}
