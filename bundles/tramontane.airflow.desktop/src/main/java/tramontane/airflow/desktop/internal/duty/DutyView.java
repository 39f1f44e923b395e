package tramontane.airflow.desktop.internal.duty;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import tramontane.analysis.Chart;
import tramontane.desktop.Command;
import tramontane.desktop.Desk;
import tramontane.desktop.Icon;
import tramontane.desktop.Jobs;
import tramontane.desktop.Scene;
import tramontane.desktop.View;
import tramontane.desktop.chart.ChartCanvas;
import tramontane.desktop.chart.ChartState;
import tramontane.model.Problem;
import tramontane.model.edit.Subject;

/** The duty chart in the window. */
final class DutyView implements View {

    private static final String SHOWN = "shown";

    private final Desk desk;
    private final DutyChart.Physics physics;
    private final Composite box;
    private final Composite bar;
    private final Label bankLabel;
    private final Combo banks;
    private final ChartCanvas canvas;

    private Scene scene;
    private DutyState state;
    private Optional<DutyPresenter.Wanted> made = Optional.empty();
    private Optional<DutyPresenter.Wanted> making = Optional.empty();
    private Optional<Jobs.Job> job = Optional.empty();
    private DutyChart.Answer answer = new DutyChart.Answer(Optional.empty(), "");
    private String document = "";
    private boolean stale;

    DutyView(Composite parent, Desk desk, DutyChart.Physics physics) {
        this.desk = desk;
        this.physics = physics;
        scene = desk.scene();
        state = desk.memory(DutyViewType.ID).get(SHOWN).map(DutyState::parse).orElse(DutyState.FIRST);
        box = new Composite(parent, SWT.NONE);
        GridLayout rows = new GridLayout();
        rows.marginWidth = 0;
        rows.marginHeight = 0;
        rows.verticalSpacing = 0;
        box.setLayout(rows);
        bar = new Composite(box, SWT.NONE);
        bar.setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, false));
        GridLayout columns = new GridLayout(2, false);
        columns.marginWidth = 12;
        columns.marginHeight = 4;
        bar.setLayout(columns);
        bankLabel = new Label(bar, SWT.NONE);
        bankLabel.setText("bank");
        banks = new Combo(bar, SWT.READ_ONLY | SWT.DROP_DOWN);
        banks.addListener(SWT.Selection, event -> chosen(banks.getText()));
        canvas = new ChartCanvas(box, desk);
        canvas.control().setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, true));
        Menu menu = new Menu(box.getShell(), SWT.POP_UP);
        menu.addListener(SWT.Show, event -> fill(menu));
        canvas.menu(menu);
        box.addListener(SWT.Dispose, event -> menu.dispose());
        colour();
    }

    private void colour() {
        for (Control each : List.of(box, bar, bankLabel)) {
            each.setBackground(scene.palette().surface());
            each.setForeground(scene.palette().text());
        }
    }

    @Override
    public Control control() {
        return box;
    }

    @Override
    public boolean focus() {
        return canvas.focus();
    }

    @Override
    public void show(Scene next) {
        boolean recoloured = next.palette() != scene.palette();
        boolean selected = !next.selection().equals(scene.selection());
        scene = next;
        if (recoloured) {
            colour();
        }
        if (!document.equals(next.document().key())) {
            document = next.document().key();
            canvas.change(ChartState::fit);
        }
        if (selected) {
            state = DutyPresenter.selected(state, next.document().design(), next.selection());
        }
        showBanks();
        update();
    }

    private void showBanks() {
        List<String> all = DutyPresenter.banks(scene.document().design());
        if (!List.of(banks.getItems()).equals(all)) {
            banks.setItems(all.toArray(String[]::new));
        }
        DutyPresenter.bank(state, scene.document().design()).ifPresent(bank -> {
            if (!banks.getText().equals(bank)) {
                banks.select(all.indexOf(bank));
            }
        });
        GridData data = (GridData) bar.getLayoutData();
        if (data.exclude != all.size() < 2) {
            data.exclude = all.size() < 2;
            bar.setVisible(!data.exclude);
            box.layout();
        }
    }

    private void chosen(String bank) {
        state = state.withBank(bank);
        desk.select(Optional.of(Subject.passage(bank)));
        update();
    }

    private void change(UnaryOperator<DutyState> how) {
        state = how.apply(state);
        desk.memory(DutyViewType.ID).put(SHOWN, state.text());
        update();
    }

    /** Makes the chart that is wanted now, if it is another one than that shown or being made. */
    private void update() {
        Optional<DutyPresenter.Wanted> wanted = DutyPresenter.wanted(state, scene.document().design(), scene.results(), scene.front());
        if (wanted.isEmpty()) {
            job.ifPresent(Jobs.Job::cancel);
            making = Optional.empty();
            if (!scene.results().running() || DutyPresenter.banks(scene.document().design()).isEmpty() || made.isEmpty()) {
                made = Optional.empty();
                answer = new DutyChart.Answer(Optional.empty(), "");
            }
            draw();
            return;
        }
        if (made.filter(wanted.get()::same).isPresent()) {
            made = wanted;
            draw();
            return;
        }
        draw();
        // a part of the results would take the other conditions off the chart for a moment
        boolean waits = made.isPresent() && scene.results().running() && !scene.results().late() && scene.results().before().isPresent();
        if (waits || making.filter(wanted.get()::same).isPresent()) {
            return;
        }
        job.ifPresent(Jobs.Job::cancel);
        making = wanted;
        DutyPresenter.Wanted now = wanted.get();
        job = Optional.of(desk.jobs().quietly(watch -> DutyChart.of(now.evaluation(), now.asked(), physics, watch::cancelled), made -> took(now, made)));
    }

    private void took(DutyPresenter.Wanted wanted, DutyChart.Answer came) {
        if (box.isDisposed() || making.filter(wanted::same).isEmpty()) {
            return;
        }
        boolean another = made.map(before -> !before.asked().bank().equals(wanted.asked().bank())).orElse(false);
        made = making;
        making = Optional.empty();
        answer = came;
        if (another) {
            canvas.change(ChartState::fit);
        }
        draw();
    }

    private void draw() {
        stale = scene.results().late() && (made.map(DutyPresenter.Wanted::stale).orElse(false) || made.isPresent() && making.isPresent()
                && making.get().evaluation() != made.get().evaluation());
        String why = answer.why().isEmpty() ? DutyPresenter.why(scene.document().design(), scene.results(),
                scene.document().problems().stream().anyMatch(Problem::isError)) : answer.why();
        canvas.show(answer.chart(), why, scene.units(), scene.palette(), stale);
    }

    private void fill(Menu menu) {
        for (MenuItem item : menu.getItems()) {
            item.dispose();
        }
        boolean chart = canvas.state().chart().isPresent();
        check(menu, "Curves at other speeds", state.speeds(), on -> change(now -> now.withSpeeds(on)));
        check(menu, "Tolerance of the curve", state.tolerance(), on -> change(now -> now.withTolerance(on)));
        check(menu, "Static efficiency", state.efficiency(), on -> change(now -> now.withEfficiency(on)));
        check(menu, "Other conditions", state.others(), on -> change(now -> now.withOthers(on)));
        List<String> conditions = DutyPresenter.conditions(scene.results()).stream().filter(each -> !each.equals(scene.condition())).toList();
        if (state.others() && !conditions.isEmpty()) {
            MenuItem which = new MenuItem(menu, SWT.CASCADE);
            which.setText("Which conditions");
            Menu inner = new Menu(menu);
            which.setMenu(inner);
            conditions.forEach(condition -> check(inner, condition, !state.hidden().contains(condition),
                    on -> change(now -> now.withCondition(condition, on))));
        }
        new MenuItem(menu, SWT.SEPARATOR);
        item(menu, "Show all\t0", chart, () -> canvas.change(ChartState::fit));
        item(menu, "Larger\t+", chart, () -> canvas.change(seen -> seen.zoom(ChartState.STEP, 0.5, 0.5)));
        item(menu, "Smaller\t-", chart, () -> canvas.change(seen -> seen.zoom(1 / ChartState.STEP, 0.5, 0.5)));
        check(menu, "As a table", canvas.isTable(), canvas::table);
        new MenuItem(menu, SWT.SEPARATOR);
        item(menu, "Copy\tCtrl+C", chart, canvas::copy);
        item(menu, "Save chart as…", chart, this::save);
    }

    private static void check(Menu menu, String label, boolean on, java.util.function.Consumer<Boolean> then) {
        MenuItem item = new MenuItem(menu, SWT.CHECK);
        item.setText(label);
        item.setSelection(on);
        item.addListener(SWT.Selection, event -> then.accept(item.getSelection()));
    }

    private static void item(Menu menu, String label, boolean enabled, Runnable then) {
        MenuItem item = new MenuItem(menu, SWT.PUSH);
        item.setText(label);
        item.setEnabled(enabled);
        item.addListener(SWT.Selection, event -> then.run());
    }

    private void save() {
        made.ifPresent(shown -> canvas.save(DutyPresenter.fileName(scene.document().label(), shown.asked())));
    }

    @Override
    public List<Command> commands() {
        Predicate<Scene> drawn = any -> canvas.state().chart().isPresent();
        List<Command> commands = new ArrayList<>();
        commands.add(Command.of("duty.fit", "Show all", "Zooms out to everything there is.", on -> canvas.change(ChartState::fit))
                .icon(Icon.read(DutyView.class, "fit.svg")).when(drawn));
        commands.add(Command.of("duty.save", "Save chart as…", "Saves it as a picture, SVG or PNG, or its numbers, CSV.", on -> save())
                .icon(Icon.read(DutyView.class, "save.svg")).keys("Ctrl+E").when(drawn));
        commands.add(Command.of("duty.speeds", "Curves at other speeds", "Shows or hides what the bank gives at 40, 60, 80 and 100 %.",
                on -> change(now -> now.withSpeeds(!now.speeds()))).keys("Ctrl+1"));
        commands.add(Command.of("duty.others", "Other conditions", "Shows or hides the system curves of other conditions.",
                on -> change(now -> now.withOthers(!now.others()))).keys("Ctrl+2"));
        commands.add(Command.of("duty.tolerance", "Tolerance of the curve", "Shows or hides the tolerance that the part states.",
                on -> change(now -> now.withTolerance(!now.tolerance()))).keys("Ctrl+3"));
        commands.add(Command.of("duty.efficiency", "Static efficiency", "Shows or hides air power over electrical power.",
                on -> change(now -> now.withEfficiency(!now.efficiency()))).keys("Ctrl+4"));
        commands.add(Command.of("duty.table", "As a table", "Shows the same as numbers, or as a chart again.",
                on -> canvas.table(!canvas.isTable())).keys("Ctrl+T").when(drawn));
        return commands;
    }

    @Override
    public Map<String, Runnable> handlers() {
        return canvas.handlers();
    }

    @Override
    public void close() {
        job.ifPresent(Jobs.Job::cancel);
        making = Optional.empty();
    }

    /** What is seen of the chart. */
    Chart seen() {
        return canvas.state().seen().orElseThrow();
    }

    /** Whether it belongs to an earlier state of the design. */
    boolean stale() {
        return stale;
    }

    /** The chart that is shown. */
    Optional<Chart> chart() {
        return canvas.state().chart();
    }
}
