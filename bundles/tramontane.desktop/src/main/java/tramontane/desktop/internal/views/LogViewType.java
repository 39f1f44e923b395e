package tramontane.desktop.internal.views;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.eclipse.swt.SWT;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.osgi.service.component.annotations.Component;
import tramontane.desktop.Command;
import tramontane.desktop.Desk;
import tramontane.desktop.Icon;
import tramontane.desktop.Scene;
import tramontane.desktop.Spot;
import tramontane.desktop.View;
import tramontane.desktop.ViewType;
import tramontane.desktop.internal.window.InnerDesk;
import tramontane.desktop.internal.work.LogBook;

/** What was said in the message strip. Copied, an entry has the trace that nobody sees here. */
@Component
public final class LogViewType implements ViewType {

    @Override
    public String id() {
        return "tramontane.log";
    }

    @Override
    public String label() {
        return "Log";
    }

    @Override
    public Icon icon() {
        return Icon.read(LogViewType.class, "/tramontane/desktop/icons/log.svg");
    }

    @Override
    public Spot spot() {
        return Spot.BOTTOM;
    }

    @Override
    public int order() {
        return 40;
    }

    @Override
    public String help() {
        return """
                What was said in the message strip, newest first.

                To report a fault, select its line and copy it (Ctrl+C): the copy has the technical details with it.""";
    }

    @Override
    public View open(Composite parent, Desk desk) {
        return new LogView(parent, (InnerDesk) desk);
    }

    private static final class LogView implements View {
        private final InnerDesk desk;
        private final Table table;
        private List<LogBook.Entry> shown = List.of();
        private boolean following = true;

        LogView(Composite parent, InnerDesk desk) {
            this.desk = desk;
            table = new Table(parent, SWT.FULL_SELECTION | SWT.MULTI | SWT.V_SCROLL);
            table.setData("tramontane.id", "log");
            table.setHeaderVisible(true);
            column("Time", 90);
            column("Kind", 90);
            column("What", 900);
            follow();
        }

        private void column(String label, int width) {
            TableColumn column = new TableColumn(table, SWT.NONE);
            column.setText(label);
            column.setWidth(width);
        }

        /** The log changes without the scene. */
        private void follow() {
            if (following && !table.isDisposed()) {
                if (table.isVisible()) {
                    draw();
                }
                table.getDisplay().timerExec(400, this::follow);
            }
        }

        private void draw() {
            List<LogBook.Entry> now = desk.log().entries().reversed();
            if (now.equals(shown)) {
                return;
            }
            shown = now;
            table.setToolTipText(now.isEmpty() ? "Nothing was said yet." : null);
            table.setRedraw(false);
            table.setItemCount(now.size());
            for (int i = 0; i < now.size(); i++) {
                LogBook.Entry entry = now.get(i);
                TableItem item = table.getItem(i);
                item.setText(new String[] {entry.time().withNano(0).toString(), entry.error() ? "error" : "note", entry.sentence()});
                item.setForeground(entry.error() ? desk.scene().palette().notMet() : null);
            }
            table.setRedraw(true);
        }

        @Override
        public Control control() {
            return table;
        }

        @Override
        public void show(Scene scene) {
            Page.colour(table, scene.palette());
            shown = List.of();
            draw();
        }

        @Override
        public List<Command> commands() {
            return List.of(Command.of("log.copyAll", "Copy all", "Copies the whole log with technical details.", d -> copy(shown))
                    .icon(Icon.read(LogViewType.class, "/tramontane/desktop/icons/copy.svg")).when(scene -> !shown.isEmpty()));
        }

        @Override
        public Map<String, Runnable> handlers() {
            List<LogBook.Entry> chosen = java.util.Arrays.stream(table.getSelectionIndices()).filter(i -> i < shown.size())
                    .mapToObj(shown::get).toList();
            return chosen.isEmpty() ? Map.of(Command.SELECT_ALL, table::selectAll)
                    : Map.of(Command.COPY, () -> copy(chosen), Command.SELECT_ALL, table::selectAll);
        }

        private void copy(List<LogBook.Entry> entries) {
            Clipboard clipboard = new Clipboard(table.getDisplay());
            try {
                clipboard.setContents(new Object[] {entries.stream().map(LogBook.Entry::text).collect(Collectors.joining("\n"))},
                        new Transfer[] {TextTransfer.getInstance()});
            } finally {
                clipboard.dispose();
            }
        }

        @Override
        public void close() {
            following = false;
        }
    }
}
