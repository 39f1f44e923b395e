package tramontane.desktop.internal.views;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.osgi.service.component.annotations.Component;
import tramontane.desktop.Desk;
import tramontane.desktop.Icon;
import tramontane.desktop.Palette;
import tramontane.desktop.Scene;
import tramontane.desktop.Spot;
import tramontane.desktop.View;
import tramontane.desktop.ViewType;
import tramontane.desktop.internal.state.Remembered.Colours;
import tramontane.desktop.internal.window.InnerDesk;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.Unit;
import tramontane.physics.units.UnitSystem;
import tramontane.physics.units.Units;

/** What each user has his own way. It takes effect at once. */
@Component
public final class PreferencesViewType implements ViewType {

    private static final List<String> SYSTEMS = List.of("SI", "metric", "US");

    @Override
    public String id() {
        return "tramontane.preferences";
    }

    @Override
    public String label() {
        return "Preferences";
    }

    @Override
    public Icon icon() {
        return Icon.read(PreferencesViewType.class, "/tramontane/desktop/icons/preferences.svg");
    }

    @Override
    public Spot spot() {
        return Spot.MIDDLE;
    }

    @Override
    public boolean atFirst() {
        return false;
    }

    @Override
    public String help() {
        return """
                Colours, units and layout, as you like them. Everything takes effect at once and is kept.

                # Units
                The system sets the unit of every quantity; single kinds can be shown in another unit. Fields understand every unit they know,
                whatever is shown: "35 cfm" can be typed where m³/h is shown, and stays written so in the file.""";
    }

    @Override
    public View open(Composite parent, Desk desk) {
        return new PreferencesView(parent, (InnerDesk) desk);
    }

    private static final class PreferencesView implements View {
        private final InnerDesk desk;
        private final ScrolledComposite scroll;
        private final Composite page;
        private final List<Button> colours = new ArrayList<>();
        private final Combo system;
        private final Map<QuantityKind, Combo> kinds = new LinkedHashMap<>();
        private Palette drawn;
        private boolean drawing;

        PreferencesView(Composite parent, InnerDesk desk) {
            this.desk = desk;
            scroll = new ScrolledComposite(parent, SWT.V_SCROLL);
            page = Page.scrolled(scroll, 2);
            Page.heading(page, desk, "Colours");
            for (Colours each : Colours.values()) {
                Button button = new Button(page, SWT.RADIO);
                button.setText(switch (each) {
                    case SYSTEM -> "as the system has them";
                    case LIGHT -> "light";
                    case DARK -> "dark";
                });
                button.setData("tramontane.id", "colours:" + each);
                button.setLayoutData(new GridData(SWT.FILL, SWT.TOP, true, false, 2, 1));
                button.addListener(SWT.Selection, event -> {
                    if (!drawing && button.getSelection()) {
                        desk.colours(each);
                    }
                });
                colours.add(button);
            }
            Page.heading(page, desk, "Units");
            system = combo("system", SYSTEMS);
            system.setData("tramontane.id", "preferences:system");
            system.addListener(SWT.Selection, event -> desk.units(UnitSystem.values()[system.getSelectionIndex()]));
            for (QuantityKind kind : QuantityKind.standard()) {
                List<Unit> units = Units.of(kind);
                if (units.size() > 1) {
                    Combo combo = combo(kind.name(), units.stream().map(unit -> unit.symbol().isEmpty() ? "plain number" : unit.symbol()).toList());
                    combo.addListener(SWT.Selection, event -> desk.units(desk.scene().units().with(kind, units.get(combo.getSelectionIndex()))));
                    kinds.put(kind, combo);
                }
            }
            Page.heading(page, desk, "Layout");
            Button reset = new Button(page, SWT.PUSH);
            reset.setText("Reset layout");
            reset.setData("tramontane.id", "preferences:reset");
            reset.addListener(SWT.Selection, event -> desk.run("view.reset"));
        }

        private Combo combo(String label, List<String> items) {
            Label head = new Label(page, SWT.NONE);
            head.setText(label);
            Combo combo = new Combo(page, SWT.READ_ONLY);
            combo.setItems(items.toArray(String[]::new));
            GridData data = new GridData(SWT.LEFT, SWT.CENTER, false, false);
            data.widthHint = 160;
            combo.setLayoutData(data);
            return combo;
        }

        @Override
        public Control control() {
            return scroll;
        }

        @Override
        public void show(Scene scene) {
            drawing = true;
            for (Colours each : Colours.values()) {
                colours.get(each.ordinal()).setSelection(desk.remembered().colours() == each);
            }
            drawing = false;
            select(system, List.of(UnitSystem.values()).indexOf(scene.units().base()));
            kinds.forEach((kind, combo) -> select(combo, Units.of(kind).indexOf(Units.display(kind, scene.units()))));
            if (scene.palette() != drawn) {
                drawn = scene.palette();
                Page.colour(scroll, drawn);
                Page.fit(scroll, page);
            }
        }

        private static void select(Combo combo, int index) {
            if (combo.getSelectionIndex() != index) {
                combo.select(index);
            }
        }
    }
}
