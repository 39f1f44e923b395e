package tramontane.desktop.internal.views;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Link;
import org.osgi.service.component.annotations.Component;
import tramontane.desktop.Desk;
import tramontane.desktop.Icon;
import tramontane.desktop.Palette;
import tramontane.desktop.Scene;
import tramontane.desktop.Spot;
import tramontane.desktop.View;
import tramontane.desktop.ViewType;
import tramontane.desktop.internal.window.InnerDesk;
import tramontane.model.file.DesignFile;

/** Where to begin. */
@Component
public final class WelcomeViewType implements ViewType {

    /** What the samples that we ship show. */
    private static final Map<String, String> SAMPLES = Map.of(
            "observatory", "A controller box on a mountain: two fans, a filter that clogs, one fan failed.",
            "cabinet", "A cabinet with several banks and a supply: drive, speed control, energy.",
            "quick", "The two-minute job: one fan, one box, one curve.",
            "quick-heat", "The same with a heat source and its temperature.");

    @Override
    public String id() {
        return "tramontane.welcome";
    }

    @Override
    public String label() {
        return "Welcome";
    }

    @Override
    public Icon icon() {
        return Icon.read(WelcomeViewType.class, "/tramontane/desktop/icons/welcome.svg");
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
                The samples, the files used last, and how to begin. It opens at the first start and by Help ▸ Welcome.""";
    }

    @Override
    public View open(Composite parent, Desk desk) {
        InnerDesk inner = (InnerDesk) desk;
        ScrolledComposite scroll = new ScrolledComposite(parent, SWT.V_SCROLL);
        Composite page = Page.scrolled(scroll, 2);
        Page.heading(page, desk, "Tramontane: how air cools a piece of equipment");
        Page.text(page, "A sample is open around this page. Select something in the design tree, change a number under Properties, and "
                + "see at once what it does to the air, the temperatures and the requirements. Undo (Ctrl+Z) takes everything back.");
        Page.heading(page, desk, "Samples");
        for (Path sample : inner.samples()) {
            String name = sample.getFileName().toString().replace(DesignFile.ENDING, "");
            row(page, name, SAMPLES.getOrDefault(name, ""), "welcome:" + name, () -> inner.openSample(sample));
        }
        List<Path> recent = inner.remembered().recent().stream().filter(Files::exists).limit(6).toList();
        if (!recent.isEmpty()) {
            Page.heading(page, desk, "Used last");
            for (Path file : recent) {
                row(page, file.getFileName().toString().replace(DesignFile.ENDING, ""), String.valueOf(file.getParent()),
                        "welcome:" + file, () -> inner.openFile(file));
            }
        }
        Page.heading(page, desk, "Begin");
        row(page, "New design", "An empty one; add bays and passages in the air path.", "welcome:new", () -> inner.run("design.new"));
        row(page, "Open…", "A design file (*" + DesignFile.ENDING + "); or drag it onto the window.", "welcome:open",
                () -> inner.run("design.open"));
        row(page, "Help", "F1 tells about the view in front, Shift+F1 lists all keys.", "welcome:help", () -> inner.run("help.view"));
        Page.heading(page, desk, "With care");
        Page.text(page, "Results support an engineer's judgement and do not replace it. Moving blades and mains voltage can injure; where "
                + "cooling protects people or property, follow local codes and have the design confirmed by a licensed professional.");
        return new View() {
            private Palette drawn;

            @Override
            public Control control() {
                return scroll;
            }

            @Override
            public void show(Scene scene) {
                if (scene.palette() != drawn) {
                    drawn = scene.palette();
                    Page.colour(scroll, drawn);
                    for (Control child : page.getChildren()) {
                        if (child instanceof Link link) {
                            link.setLinkForeground(drawn.accent());
                        } else if (child instanceof Label label && label.getData("muted") != null) {
                            label.setForeground(drawn.muted());
                        }
                    }
                    Page.fit(scroll, page);
                }
            }

            @Override
            public boolean focus() {
                for (Control child : page.getChildren()) {
                    if (child instanceof Link) {
                        return child.setFocus();
                    }
                }
                return page.setFocus();
            }
        };
    }

    private static void row(Composite page, String name, String words, String id, Runnable run) {
        Link link = new Link(page, SWT.NONE);
        link.setText("<a>" + name.replace("&", "&&").replace("<", "&lt;") + "</a>");
        link.setData("tramontane.id", id);
        link.addListener(SWT.Selection, event -> run.run());
        GridData left = new GridData(SWT.FILL, SWT.TOP, false, false);
        left.horizontalIndent = 8;
        link.setLayoutData(left);
        Label label = new Label(page, SWT.WRAP);
        label.setText(words);
        label.setData("muted", true);
        GridData right = new GridData(SWT.FILL, SWT.TOP, true, false);
        right.widthHint = 200;
        label.setLayoutData(right);
    }
}
