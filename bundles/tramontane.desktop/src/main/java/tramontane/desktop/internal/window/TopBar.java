package tramontane.desktop.internal.window;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.CTabFolder2Adapter;
import org.eclipse.swt.custom.CTabFolderEvent;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import tramontane.analysis.Engine;
import tramontane.desktop.Palette;
import tramontane.desktop.Scene;
import tramontane.desktop.internal.documents.OpenDesign;
import tramontane.physics.units.UnitSystem;

/** The upper edge of the window: the open designs, the case in front, the units. */
final class TopBar {

    private static final List<String> UNITS = List.of("SI", "metric: m³/h, Pa", "US: cfm, inH₂O");

    /** What the hand wants. */
    interface Hand {
        /** Another design is to come to the front. */
        void show(String key);

        /** A design is to be closed. */
        void close(String key);

        /** Another case is to come to the front. */
        void front(String caseId);

        /** Other units are wanted. */
        void units(UnitSystem units);
    }

    private final Composite box;
    private final CTabFolder designs;
    private final Combo conditions;
    private final Combo units;
    private final List<Label> labels = new ArrayList<>();
    private List<String> offered = List.of();
    private boolean drawing;

    TopBar(Composite parent, Hand hand, Palette palette) {
        box = new Composite(parent, SWT.NONE);
        GridLayout layout = new GridLayout(5, false);
        layout.marginWidth = 8;
        layout.marginTop = 4;
        layout.marginHeight = 0;
        layout.marginBottom = 2;
        layout.horizontalSpacing = 8;
        box.setLayout(layout);
        designs = new CTabFolder(box, SWT.TOP | SWT.CLOSE | SWT.FLAT);
        designs.setData("tramontane.id", "designs");
        designs.setUnselectedCloseVisible(false);
        GridData strip = new GridData(SWT.FILL, SWT.END, true, false);
        strip.heightHint = 0; // of what is below the tabs
        designs.setLayoutData(strip);
        designs.addListener(SWT.Selection, event -> {
            if (!drawing && event.item != null) {
                hand.show((String) event.item.getData());
            }
        });
        designs.addCTabFolder2Listener(new CTabFolder2Adapter() {
            @Override
            public void close(CTabFolderEvent event) {
                event.doit = false;
                String key = (String) event.item.getData();
                box.getDisplay().asyncExec(() -> hand.close(key));
            }
        });
        conditions = combo("condition", "&Condition", 210, choice -> hand.front(offered.get(choice)));
        conditions.setData("tramontane.id", "condition");
        units = combo("units", "U&nits", 150, choice -> hand.units(UnitSystem.values()[choice]));
        units.setData("tramontane.id", "units");
        units.setItems(UNITS.toArray(String[]::new));
        recolour(palette);
    }

    private Combo combo(String id, String label, int width, Consumer<Integer> chosen) {
        Label head = new Label(box, SWT.NONE);
        head.setText(label);
        labels.add(head);
        Combo combo = new Combo(box, SWT.READ_ONLY);
        combo.setVisibleItemCount(20);
        GridData data = new GridData(SWT.FILL, SWT.CENTER, false, false);
        data.widthHint = width;
        combo.setLayoutData(data);
        combo.addListener(SWT.Selection, event -> {
            if (!drawing && combo.getSelectionIndex() >= 0) {
                chosen.accept(combo.getSelectionIndex());
            }
        });
        return combo;
    }

    Composite control() {
        return box;
    }

    void recolour(Palette palette) {
        box.setBackground(palette.background());
        labels.forEach(label -> {
            label.setBackground(palette.background());
            label.setForeground(palette.muted());
        });
        designs.setBackground(palette.background());
        designs.setForeground(palette.muted());
        designs.setSelectionBackground(palette.surface());
        designs.setSelectionForeground(palette.text());
    }

    /** Draws what is open and what is in front. */
    void show(List<OpenDesign> open, Scene scene) {
        drawing = true;
        try {
            drawDesigns(open, scene);
            drawConditions(scene);
            int system = List.of(UnitSystem.values()).indexOf(scene.units().base());
            if (units.getSelectionIndex() != system) {
                units.select(system);
            }
        } finally {
            drawing = false;
        }
    }

    private void drawDesigns(List<OpenDesign> open, Scene scene) {
        while (designs.getItemCount() > open.size()) {
            designs.getItem(designs.getItemCount() - 1).dispose();
        }
        for (int i = 0; i < open.size(); i++) {
            CTabItem item = i < designs.getItemCount() ? designs.getItem(i) : new CTabItem(designs, SWT.NONE);
            OpenDesign design = open.get(i);
            String text = (design.changed() ? "• " : "") + design.document().label();
            if (!item.getText().equals(text)) {
                item.setText(text);
                item.setToolTipText(design.file().map(Object::toString).orElse("not saved yet") + (design.changed() ? ", with unsaved changes" : ""));
            }
            item.setData(design.key());
            if (design.key().equals(scene.document().key()) && designs.getSelectionIndex() != i) {
                designs.setSelection(i);
            }
        }
    }

    private void drawConditions(Scene scene) {
        List<String> ids = new ArrayList<>();
        List<String> words = new ArrayList<>();
        String front = scene.condition();
        for (var condition : scene.document().design().workingConditions()) {
            List<Engine.Case> cases = scene.results().cases().stream().filter(each -> each.declared().equals(condition.id())).toList();
            boolean several = cases.size() > 1 || cases.size() == 1 && !cases.getFirst().concrete().id().equals(condition.id());
            if (several && condition.id().equals(front)) {
                cases.forEach(each -> {
                    ids.add(each.concrete().id());
                    words.add(each.concrete().id());
                });
            } else {
                ids.add(condition.id());
                words.add(condition.id());
            }
        }
        if (!ids.equals(offered)) {
            offered = List.copyOf(ids);
            conditions.setItems(words.toArray(String[]::new));
        }
        int at = offered.indexOf(scene.front());
        if (at < 0) {
            at = offered.indexOf(front);
        }
        if (conditions.getSelectionIndex() != at) {
            conditions.select(at);
        }
    }
}
