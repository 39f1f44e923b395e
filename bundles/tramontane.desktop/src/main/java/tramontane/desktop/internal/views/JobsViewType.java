package tramontane.desktop.internal.views;

import java.util.List;
import java.util.Map;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.TableItem;
import org.osgi.service.component.annotations.Component;
import tramontane.desktop.Command;
import tramontane.desktop.Desk;
import tramontane.desktop.Icon;
import tramontane.desktop.Jobs;
import tramontane.desktop.Palette;
import tramontane.desktop.Scene;
import tramontane.desktop.Spot;
import tramontane.desktop.View;
import tramontane.desktop.ViewType;

/** What is at work, with its progress, and what has ended lately. */
@Component
public final class JobsViewType implements ViewType {

    @Override
    public String id() {
        return "tramontane.jobs";
    }

    @Override
    public String label() {
        return "Jobs";
    }

    @Override
    public Icon icon() {
        return Icon.read(JobsViewType.class, "/tramontane/desktop/icons/jobs.svg");
    }

    @Override
    public Spot spot() {
        return Spot.BOTTOM;
    }

    @Override
    public int order() {
        return 30;
    }

    @Override
    public String help() {
        return """
                What is at work, and what has ended lately. Every edit starts a computation; a newer edit stops the one before.

                - Del or the stop button stops the selected job.
                - Shift+F5 stops everything.""";
    }

    @Override
    public View open(Composite parent, Desk desk) {
        return new JobsView(parent, desk);
    }

    private static final class JobsView implements View {
        private final Desk desk;
        private final Table table;
        private List<Jobs.Job> shown = List.of();
        private boolean following = true;

        JobsView(Composite parent, Desk desk) {
            this.desk = desk;
            table = new Table(parent, SWT.FULL_SELECTION | SWT.V_SCROLL);
            table.setData("tramontane.id", "jobs");
            table.setHeaderVisible(true);
            column("Job", 380, SWT.LEFT);
            column("State", 100, SWT.LEFT);
            column("Done", 80, SWT.RIGHT);
            column("At", 420, SWT.LEFT);
            follow();
        }

        private void column(String label, int width, int align) {
            TableColumn column = new TableColumn(table, align);
            column.setText(label);
            column.setWidth(width);
        }

        private void follow() {
            if (following && !table.isDisposed()) {
                if (table.isVisible()) {
                    draw();
                }
                table.getDisplay().timerExec(150, this::follow);
            }
        }

        private void draw() {
            List<Jobs.Job> now = desk.jobs().list();
            Jobs.Job selected = selected();
            if (now.size() != table.getItemCount()) {
                table.setItemCount(now.size());
            }
            Palette palette = desk.scene().palette();
            for (int i = 0; i < now.size(); i++) {
                Jobs.Job job = now.get(i);
                TableItem item = table.getItem(i);
                set(item, 0, job.label());
                set(item, 1, words(job.state()));
                set(item, 2, job.fraction() < 0 ? "" : Math.round(100 * job.fraction()) + " %");
                set(item, 3, job.state() == Jobs.State.RUNNING ? job.message() : "");
                item.setForeground(job.state() == Jobs.State.RUNNING ? palette.text()
                        : job.state() == Jobs.State.FAILED ? palette.notMet() : palette.muted());
            }
            shown = now;
            int at = now.indexOf(selected);
            if (at >= 0 && table.getSelectionIndex() != at) {
                table.setSelection(at);
            }
        }

        private static void set(TableItem item, int column, String text) {
            if (!item.getText(column).equals(text)) {
                item.setText(column, text);
            }
        }

        private static String words(Jobs.State state) {
            return switch (state) {
                case RUNNING -> "at work";
                case DONE -> "done";
                case CANCELLED -> "stopped";
                case FAILED -> "failed";
            };
        }

        private Jobs.Job selected() {
            int at = table.getSelectionIndex();
            return at >= 0 && at < shown.size() ? shown.get(at) : null;
        }

        @Override
        public Control control() {
            return table;
        }

        @Override
        public void show(Scene scene) {
            Page.colour(table, scene.palette());
            draw();
        }

        @Override
        public List<Command> commands() {
            return List.of(Command.of("jobs.stop", "Stop", "Stops the selected job.", d -> stop())
                    .icon(Icon.read(JobsViewType.class, "/tramontane/desktop/icons/stop.svg")).when(scene -> selected() != null));
        }

        @Override
        public Map<String, Runnable> handlers() {
            return selected() == null ? Map.of() : Map.of(Command.DELETE, this::stop);
        }

        private void stop() {
            Jobs.Job job = selected();
            if (job != null) {
                job.cancel();
            }
        }

        @Override
        public void close() {
            following = false;
        }
    }
}
