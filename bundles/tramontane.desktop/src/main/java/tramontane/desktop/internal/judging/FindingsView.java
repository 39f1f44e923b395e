package tramontane.desktop.internal.judging;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.layout.RowLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Text;
import tramontane.desktop.Command;
import tramontane.desktop.Desk;
import tramontane.desktop.Memory;
import tramontane.desktop.Palette;
import tramontane.desktop.Scene;
import tramontane.desktop.Sheet;
import tramontane.desktop.SheetTable;
import tramontane.desktop.View;

/** Draws the list of findings, with the filter above. */
final class FindingsView implements View {

    private static final String HIDDEN = "hidden";
    private static final String FRONT = "frontOnly";

    private final Desk desk;
    private final Memory memory;
    private final Composite box;
    private final Composite bar;
    private final Composite boxes;
    private final Text text;
    private final Map<Findings.Level, Button> levels = new EnumMap<>(Findings.Level.class);
    private final Button frontOnly;
    private final EmptyOr page;
    private final SheetTable table;
    private Findings findings = new Findings(Sheet.EMPTY, Map.of(), Map.of(), "");
    private Palette palette;
    private Scene last;

    FindingsView(Composite parent, Desk desk) {
        this.desk = desk;
        memory = desk.memory(FindingsViewType.ID);
        box = new Composite(parent, SWT.NONE);
        GridLayout layout = new GridLayout();
        layout.marginWidth = 0;
        layout.marginHeight = 0;
        layout.verticalSpacing = 0;
        box.setLayout(layout);
        bar = new Composite(box, SWT.NONE);
        bar.setLayoutData(new GridData(SWT.FILL, SWT.TOP, true, false));
        GridLayout beside = new GridLayout(2, false);
        beside.marginWidth = 8;
        beside.marginHeight = 4;
        beside.horizontalSpacing = 16;
        bar.setLayout(beside);
        text = new Text(bar, SWT.SEARCH | SWT.ICON_SEARCH | SWT.ICON_CANCEL);
        text.setData("tramontane.id", "findings.filter");
        text.setMessage("words to look for");
        GridData wide = new GridData(SWT.LEFT, SWT.CENTER, false, false);
        wide.widthHint = 130;
        text.setLayoutData(wide);
        text.addListener(SWT.Modify, event -> draw());
        text.addListener(SWT.KeyDown, event -> {
            if (event.keyCode == SWT.ESC) {
                text.setText("");
                focusTable();
            } else if (event.keyCode == SWT.ARROW_DOWN) {
                focusTable();
            }
        });
        boxes = new Composite(bar, SWT.NONE);
        boxes.setLayoutData(new GridData(SWT.FILL, SWT.CENTER, true, false));
        RowLayout row = new RowLayout();
        row.marginLeft = 0;
        row.marginTop = 0;
        row.marginBottom = 0;
        row.spacing = 12;
        row.center = true;
        boxes.setLayout(row);
        Set<String> hidden = Set.of(memory.get(HIDDEN).orElse("").split(","));
        for (Findings.Level level : Findings.Level.values()) {
            levels.put(level, check(level.label(), !hidden.contains(level.name())));
        }
        frontOnly = check("in front only", memory.get(FRONT).isPresent());
        page = new EmptyOr(box);
        page.control().setLayoutData(new GridData(SWT.FILL, SWT.FILL, true, true));
        page.content().setLayout(new org.eclipse.swt.layout.FillLayout());
        table = new SheetTable(page.content(), desk, SWT.MULTI, Optional.of(memory)).onOpen((line, at) -> go(line))
                .onHover((line, at) -> Optional.ofNullable(findings.targets().get(line.key())).map(Findings.Target::hover).orElse(""));
        table.control().setData("tramontane.id", "findings");
    }

    private Button check(String label, boolean on) {
        Button button = new Button(boxes, SWT.CHECK);
        button.setText(label);
        button.setSelection(on);
        button.setData("tramontane.id", "findings." + label);
        button.addListener(SWT.Selection, event -> {
            memory.put(HIDDEN, filter().hidden().stream().map(Findings.Level::name).collect(Collectors.joining(",")));
            memory.put(FRONT, frontOnly.getSelection() ? "yes" : "");
            draw();
        });
        return button;
    }

    private void focusTable() {
        table.control().setFocus();
    }

    @Override
    public Control control() {
        return box;
    }

    @Override
    public boolean focus() {
        return table.control().setFocus();
    }

    @Override
    public void show(Scene scene) {
        if (scene.palette() != palette) {
            palette = scene.palette();
            page.colour(palette);
            for (Control each : new Control[] {box, bar, boxes}) {
                each.setBackground(palette.surface());
            }
        }
        last = scene;
        draw(scene);
    }

    private void draw() {
        if (last != null) {
            draw(last);
        }
    }

    private Findings.Filter filter() {
        Set<Findings.Level> hidden = EnumSet.noneOf(Findings.Level.class);
        levels.forEach((level, button) -> {
            if (!button.getSelection()) {
                hidden.add(level);
            }
        });
        return new Findings.Filter(hidden, frontOnly.getSelection(), text.getText());
    }

    private void draw(Scene scene) {
        findings = FindingsPresenter.of(scene, filter());
        boolean wider = false;
        for (Map.Entry<Findings.Level, Button> each : levels.entrySet()) {
            String label = each.getKey().label() + " (" + findings.counts().getOrDefault(each.getKey(), 0) + ")";
            if (!each.getValue().getText().equals(label)) {
                each.getValue().setText(label);
                wider = true;
            }
        }
        if (wider) {
            box.layout(true, true);
        }
        table.show(findings.sheet(), scene.palette());
        page.say(findings.empty());
    }

    private void go(Sheet.Row row) {
        Optional.ofNullable(findings.targets().get(row.key())).ifPresent(target -> {
            target.front().ifPresent(desk::front);
            target.subject().ifPresent(subject -> desk.select(Optional.of(subject)));
        });
    }

    @Override
    public List<Command> commands() {
        List<Command> commands = new ArrayList<>();
        levels.forEach((level, button) -> commands.add(toggle(level.label(), button)));
        commands.add(toggle("in front only", frontOnly));
        return commands;
    }

    private static Command toggle(String label, Button button) {
        return Command.of("tramontane.findings." + label.replace(' ', '-'), "Show " + label, "Shows " + label + ", or no longer does.", desk -> {
            button.setSelection(!button.getSelection());
            button.notifyListeners(SWT.Selection, new org.eclipse.swt.widgets.Event());
        });
    }

    @Override
    public Map<String, Runnable> handlers() {
        return Map.of(Command.COPY, () -> {
            if (text.isFocusControl()) {
                text.copy();
            } else {
                table.copy();
            }
        }, Command.FIND, () -> {
            text.setFocus();
            text.selectAll();
        }, Command.SELECT_ALL, () -> table.control().selectAll());
    }
}
