package tramontane.desktop.internal.window;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.ProgressBar;
import org.eclipse.swt.widgets.Text;
import tramontane.desktop.Jobs;
import tramontane.desktop.Palette;

/** The lower edge of the window: what was said last, and what is at work. */
final class Strip {

    private static final int REFRESH = 120;
    /** Work that is over sooner is not shown, in milliseconds. */
    private static final int PATIENCE = 350;

    private final Composite box;
    private final Label mark;
    private final Text message;
    private final Composite actions;
    private final Label work;
    private final ProgressBar bar;
    private final Button stop;
    private final Jobs jobs;
    private final List<Button> buttons = new ArrayList<>();
    private Palette palette;
    private boolean error;
    private String about = "";
    private boolean ticking;
    private long since;

    Strip(Composite parent, Jobs jobs, Palette palette) {
        this.jobs = jobs;
        box = new Composite(parent, SWT.NONE);
        GridLayout layout = new GridLayout(6, false);
        layout.marginWidth = 8;
        layout.marginHeight = 3;
        layout.horizontalSpacing = 8;
        box.setLayout(layout);
        mark = new Label(box, SWT.NONE);
        mark.setText("   ");
        message = new Text(box, SWT.READ_ONLY | SWT.SINGLE);
        message.setData("tramontane.id", "message");
        GridData wide = new GridData(SWT.FILL, SWT.CENTER, true, false);
        wide.widthHint = 200;
        message.setLayoutData(wide);
        actions = new Composite(box, SWT.NONE);
        GridLayout row = new GridLayout(4, false);
        row.marginWidth = 0;
        row.marginHeight = 0;
        actions.setLayout(row);
        work = new Label(box, SWT.NONE);
        GridData words = new GridData(SWT.END, SWT.CENTER, false, false);
        words.widthHint = 190;
        work.setLayoutData(words);
        work.setAlignment(SWT.RIGHT);
        bar = new ProgressBar(box, SWT.HORIZONTAL);
        bar.setMaximum(1000);
        GridData narrow = new GridData(SWT.END, SWT.CENTER, false, false);
        narrow.widthHint = 110;
        bar.setLayoutData(narrow);
        stop = new Button(box, SWT.PUSH);
        stop.setText("Stop");
        stop.setData("tramontane.id", "stop");
        stop.addListener(SWT.Selection, event -> running().ifPresent(Jobs.Job::cancel));
        bar.setVisible(false);
        stop.setVisible(false);
        recolour(palette);
    }

    Composite control() {
        return box;
    }

    void recolour(Palette other) {
        palette = other;
        box.setBackground(other.background());
        for (var child : List.of(mark, message, actions, work)) {
            child.setBackground(other.background());
        }
        message.setForeground(error ? other.notMet() : other.text());
        mark.setForeground(other.notMet());
        work.setForeground(other.muted());
    }

    /**
     * Something has changed since: what was said is no longer true, unless it waits for an answer about this design.
     *
     * @param design the key of the design in front
     */
    void outdated(String design) {
        if (buttons.isEmpty() || !design.equals(about)) {
            say(Notice.of(""), design);
        }
    }

    /** Says something in place of what was said before, about a design. */
    void say(Notice notice, String design) {
        about = design;
        error = notice.error();
        message.setText(notice.sentence());
        message.setToolTipText(notice.sentence());
        message.setForeground(error ? palette.notMet() : palette.text());
        mark.setText(error ? "!" : " ");
        buttons.forEach(Button::dispose);
        buttons.clear();
        for (Notice.Action action : notice.actions()) {
            Button button = new Button(actions, SWT.PUSH);
            button.setText(action.label());
            button.setData("tramontane.id", "message:" + action.label());
            button.addListener(SWT.Selection, event -> {
                say(Notice.of(""), design);
                action.run().run();
            });
            buttons.add(button);
        }
        box.layout(true, true);
    }

    /** Begins to look at the jobs until none runs. */
    void watch() {
        if (!ticking) {
            ticking = true;
            since = System.currentTimeMillis();
            box.getDisplay().timerExec(REFRESH, this::tick);
        }
    }

    private void tick() {
        if (box.isDisposed()) {
            return;
        }
        Optional<Jobs.Job> job = running();
        boolean seen = job.isPresent() && System.currentTimeMillis() - since > PATIENCE;
        set(work, seen ? job.get().label() : "");
        if (bar.getVisible() != seen) {
            bar.setVisible(seen);
            stop.setVisible(seen);
        }
        if (seen) {
            bar.setSelection((int) Math.round(1000 * Math.max(0, job.get().fraction())));
            work.setToolTipText(job.get().message());
        }
        ticking = job.isPresent();
        if (ticking) {
            box.getDisplay().timerExec(REFRESH, this::tick);
        }
    }

    private static void set(Label label, String text) {
        if (!label.getText().equals(text)) {
            label.setText(text);
        }
    }

    private Optional<Jobs.Job> running() {
        return jobs.list().stream().filter(job -> job.state() == Jobs.State.RUNNING).findFirst();
    }
}
