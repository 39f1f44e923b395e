package tramontane.desktop.test;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import javax.management.JMException;
import javax.management.ObjectName;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.osgi.framework.BundleContext;
import org.osgi.framework.InvalidSyntaxException;
import org.osgi.framework.ServiceReference;
import org.osgi.framework.ServiceRegistration;
import org.osgi.test.common.annotation.InjectBundleContext;
import org.osgi.test.junit5.context.BundleContextExtension;
import tramontane.desktop.Desk;
import tramontane.desktop.Icon;
import tramontane.desktop.PageType;
import tramontane.desktop.Scene;
import tramontane.desktop.Spot;
import tramontane.desktop.View;
import tramontane.desktop.ViewType;
import tramontane.model.Design;
import tramontane.model.edit.Subject;
import tramontane.model.file.DesignFile;
import tramontane.model.file.Limits;
import tramontane.model.file.TreeFile;

/** What the window does around its views: layout, faults, bundles that come and go, files, recovery, responsiveness. */
@ExtendWith({Screen.class, BundleContextExtension.class})
class WindowTest {

    @InjectBundleContext
    BundleContext context;

    @TempDir
    Path folder;

    private Bench open(String sample) throws IOException {
        return new Bench(context, folder.resolve("home"), Bench.sample(context, sample, folder));
    }

    private List<ViewType> types() {
        try {
            List<ViewType> types = new ArrayList<>();
            for (ServiceReference<ViewType> each : context.getServiceReferences(ViewType.class, null)) {
                types.add(context.getService(each));
            }
            return types;
        } catch (InvalidSyntaxException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    @Test
    void everyViewOpensHasAHelpPageAndAnIconAndShowsNoError() throws IOException {
        try (Bench bench = open("observatory")) {
            assertTrue(types().size() >= 14, () -> "views: " + types().stream().map(ViewType::id).toList());
            for (ViewType type : types()) {
                bench.desk().open(type.id());
                bench.hands().settle();
                assertTrue(bench.hands().look("view:" + type.id(), Composite.class).isPresent(), type.id());
                assertFalse(bench.hands().look("view-error:" + type.id(), Text.class).isPresent(), type.id());
                assertTrue(type.help().length() > 40, () -> "help of " + type.id());
                assertFalse(type.icon().equals(Icon.NONE), () -> "icon of " + type.id());
            }
        }
    }

    @Test
    void viewsOpenedAndClosedTwoHundredTimesLeaveNothingBehind() throws IOException {
        try (Bench bench = open("observatory")) {
            Map<String, Integer> before = new TreeMap<>();
            for (ViewType type : types()) {
                for (int i = 0; i < 200; i++) {
                    bench.desk().open(type.id());
                    bench.desk().run("view.close");
                    while (Screen.display().readAndDispatch()) {
                        // all that it left to be done
                    }
                    if (i == 3) {
                        before.put(type.id(), bench.hands().widgets().size());
                    }
                }
                assertEquals(before.get(type.id()), bench.hands().widgets().size(), () -> "widgets after " + type.id());
            }
            bench.desk().run("view.reset");
            bench.hands().settle();
            // what is still to be done for closed views, such as looking for changed files once more, is soon over
            bench.hands().until("closed views are forgotten: " + instances("View"), () -> instances("View").values().stream()
                    .allMatch(count -> count <= 2));
            assertFalse(instances("View").isEmpty());
        }
    }

    /** How many objects of our classes with such names there are, by the JVM's own count of what is reachable. */
    private static Map<String, Long> instances(String ending) {
        try {
            String lines = (String) ManagementFactory.getPlatformMBeanServer().invoke(
                    new ObjectName("com.sun.management:type=DiagnosticCommand"), "gcClassHistogram", new Object[] {new String[0]},
                    new String[] {String[].class.getName()});
            Map<String, Long> counts = new TreeMap<>();
            for (String line : lines.split("\n")) {
                String[] words = line.strip().split("\\s+");
                if (words.length >= 4 && words[3].startsWith("tramontane.") && words[3].endsWith(ending)) {
                    counts.put(words[3], Long.parseLong(words[1]));
                }
            }
            return counts;
        } catch (JMException none) {
            throw new IllegalStateException(none);
        }
    }

    private static final class Failing implements ViewType {
        private boolean fails;

        @Override
        public String id() {
            return "test.failing";
        }

        @Override
        public String label() {
            return "Failing";
        }

        @Override
        public Icon icon() {
            return Icon.NONE;
        }

        @Override
        public Spot spot() {
            return Spot.RIGHT;
        }

        @Override
        public String help() {
            return "Fails when told to.";
        }

        @Override
        public View open(Composite parent, Desk desk) {
            Label label = new Label(parent, SWT.NONE);
            label.setText("all is well");
            label.setData("tramontane.id", "well");
            return new View() {
                @Override
                public Control control() {
                    return label;
                }

                @Override
                public void show(Scene scene) {
                    if (fails) {
                        throw new IllegalStateException("it was told to fail");
                    }
                }
            };
        }
    }

    @Test
    void aViewThatThrowsIsReplacedByItsErrorTextAndTheRestGoesOn() throws IOException {
        Failing failing = new Failing();
        ServiceRegistration<ViewType> service = context.registerService(ViewType.class, failing, null);
        try (Bench bench = open("quick")) {
            bench.desk().open("test.failing");
            bench.hands().settle();
            assertTrue(bench.hands().look("well", Label.class).isPresent());
            failing.fails = true;
            bench.desk().edit("rename", design -> design.withName("other"));
            bench.hands().settle();
            String text = bench.hands().find("view-error:test.failing", Text.class).getText();
            assertTrue(text.contains("it was told to fail") && !text.contains("at tramontane"), text);
            assertTrue(bench.message().contains("Failing"), bench.message());
            bench.computed();
            failing.fails = false;
            bench.hands().click("Open it again");
            bench.hands().settle();
            assertTrue(bench.hands().look("well", Label.class).isPresent());
        } finally {
            service.unregister();
        }
    }

    @Test
    void viewsComeAndGoWithTheirBundles() throws IOException {
        try (Bench bench = open("quick")) {
            ServiceRegistration<ViewType> service = context.registerService(ViewType.class, new Failing(), null);
            bench.hands().until("its tab appears", () -> bench.hands().look("Failing", CTabItem.class).isPresent());
            bench.hands().click("Failing");
            bench.hands().until("it is shown", () -> bench.hands().look("well", Label.class).isPresent());
            service.unregister();
            bench.hands().until("it vanishes", () -> bench.hands().look("well", Label.class).isEmpty()
                    && bench.hands().look("Failing", CTabItem.class).isEmpty());
            ServiceRegistration<ViewType> again = context.registerService(ViewType.class, new Failing(), null);
            bench.hands().until("it comes back where it stood", () -> bench.hands().look("well", Label.class).isPresent());
            again.unregister();
            bench.hands().until("and goes again", () -> bench.hands().look("well", Label.class).isEmpty());
        }
    }

    @Test
    void pagesComeAndGoAndFailAlone() throws IOException {
        boolean[] fails = {false};
        PageType page = new PageType() {
            @Override
            public String id() {
                return "test.page";
            }

            @Override
            public String label() {
                return "Of a lab";
            }

            @Override
            public boolean shows(Design design, Subject subject) {
                return subject.kind() == Subject.Kind.PASSAGE;
            }

            @Override
            public Page open(Composite parent, Desk desk) {
                Label label = new Label(parent, SWT.NONE);
                label.setData("tramontane.id", "lab");
                return new Page() {
                    @Override
                    public Control control() {
                        return label;
                    }

                    @Override
                    public void show(Scene scene, Subject subject) {
                        if (fails[0]) {
                            throw new IllegalStateException("no page today");
                        }
                        label.setText("about " + subject.id());
                    }
                };
            }
        };
        try (Bench bench = open("quick")) {
            ServiceRegistration<PageType> service = context.registerService(PageType.class, page, null);
            bench.hands().settle();
            bench.desk().select(Optional.of(new Subject(Subject.Kind.PASSAGE, "fans")));
            bench.hands().until("the page is shown", () -> bench.hands().look("lab", Label.class)
                    .filter(label -> label.getText().equals("about fans")).isPresent());
            bench.desk().select(Optional.of(new Subject(Subject.Kind.BAY, "box")));
            bench.hands().settle();
            assertTrue(bench.hands().look("lab", Label.class).isEmpty(), "it has nothing to say about bays");
            fails[0] = true;
            bench.desk().select(Optional.of(new Subject(Subject.Kind.PASSAGE, "fans")));
            bench.hands().until("its error text is shown", () -> bench.hands().look("page-error:test.page", Text.class).isPresent());
            assertTrue(bench.hands().look("field:kind", Control.class).isPresent(), "the fields are still there");
            service.unregister();
            bench.hands().settle();
        }
    }

    @Test
    void theLayoutIsRememberedAndReset() throws IOException {
        Path file = Bench.sample(context, "quick", folder);
        try (Bench bench = new Bench(context, folder.resolve("home"), file)) {
            bench.desk().open("tramontane.matrix");
            bench.desk().run("view.close");
            bench.hands().settle();
            assertTrue(bench.hands().look("view:tramontane.matrix", Composite.class).isEmpty());
            // the window writes its layout down once a second
            bench.hands().until("it is written down", () -> layout().map(kept -> !kept.contains("tramontane.matrix")).orElse(false));
        }
        try (Bench bench = new Bench(context, folder.resolve("home"), file)) {
            assertTrue(bench.hands().look("view:tramontane.matrix", Composite.class).isEmpty(), "closed last time");
            bench.desk().run("view.reset");
            bench.hands().settle();
            assertTrue(bench.hands().look("view:tramontane.matrix", Composite.class).isPresent());
        }
    }

    private Optional<String> layout() {
        return TreeFile.read(folder.resolve("home/desktop.json"), Limits.STANDARD).tree().flatMap(tree -> tree.tree("layout")).map(TreeFile::write);
    }

    @Test
    void aLayoutThatCannotBeReadIsReplacedAndSaidSo() throws IOException {
        Files.createDirectories(folder.resolve("home"));
        Files.writeString(folder.resolve("home/desktop.json"), "{\"format\": 1, \"layout\": {");
        try (Bench bench = open("quick")) {
            assertTrue(bench.hands().look("view:tramontane.matrix", Composite.class).isPresent());
        }
    }

    @Test
    void unsavedWorkIsHereAgainAfterAnEndWithoutWarning() throws IOException {
        Path file = Bench.sample(context, "quick", folder);
        Design changed;
        try (Bench bench = new Bench(context, folder.resolve("home"), file)) {
            bench.desk().edit("rename", design -> design.withName("not saved yet"));
            changed = bench.design();
            bench.hands().until("a copy is kept", Duration.ofSeconds(5), () -> !copies().isEmpty());
        }
        try (Bench bench = new Bench(context, folder.resolve("home"))) {
            bench.hands().until("it is here again", () -> bench.design().equals(changed));
            assertTrue(bench.desk().scene().document().changed());
            assertEquals(Optional.of(file), bench.desk().scene().document().file());
            assertTrue(bench.message().contains("Unsaved changes are here again"), bench.message());
        }
    }

    private List<Path> copies() {
        try (var files = Files.walk(folder.resolve("home/recovery"))) {
            return files.filter(each -> each.toString().endsWith(".recovery.json")).toList();
        } catch (IOException none) {
            return List.of();
        }
    }

    @Test
    void aFileChangedOutsideIsTakenOverAndUndoTakesItBack() throws IOException {
        Path file = Bench.sample(context, "quick", folder);
        try (Bench bench = new Bench(context, folder.resolve("home"), file)) {
            Design before = bench.design();
            DesignFile.save(before.withName("changed elsewhere"), file);
            bench.hands().until("it is taken over", () -> bench.design().name().equals("changed elsewhere"));
            assertFalse(bench.desk().scene().document().changed());
            bench.desk().run("edit.undo");
            bench.hands().settle();
            assertEquals(before, bench.design());
            assertTrue(bench.desk().scene().document().changed());
            // now both have changed: the window asks
            DesignFile.save(before.withName("changed again"), file);
            bench.hands().until("it is asked", () -> bench.message().contains("unsaved changes, too"));
            assertEquals(before, bench.design());
            bench.hands().click("message:Take the file's");
            bench.hands().until("the file's is taken", () -> bench.design().name().equals("changed again"));
        }
    }

    @Test
    void aFileThatCannotBeReadIsSaidAndNothingHappens() throws IOException {
        Path broken = Files.writeString(folder.resolve("broken.tramontane.json"), "{\"format\": 1, \"airPath\": ");
        try (Bench bench = open("quick")) {
            Design before = bench.design();
            bench.desk().openFile(broken);
            bench.hands().until("it is said", () -> bench.message().contains("broken.tramontane.json"));
            assertEquals(before, bench.design());
            assertEquals("{\"format\": 1, \"airPath\": ", Files.readString(broken));
        }
    }

    @Test
    void severalDesignsAreOpenAtOnce() throws IOException {
        Path quick = Bench.sample(context, "quick", folder);
        try (Bench bench = open("observatory")) {
            Design first = bench.design();
            bench.desk().openFile(quick);
            bench.hands().until("the other is in front", () -> bench.desk().scene().document().label().equals("quick"));
            bench.computed();
            bench.hands().click("observatory");
            bench.hands().until("the first is in front again", () -> bench.design().equals(first));
            bench.computed();
        }
    }

    @Test
    void theKeysOfAllCommandsAreClear() throws IOException {
        try (Bench bench = open("quick")) {
            bench.hands().press(SWT.SHIFT, SWT.F1);
            bench.hands().until("the keys are listed", () -> bench.hands().look("view:tramontane.keys", Composite.class).isPresent());
            bench.hands().press(0, SWT.F1);
            bench.hands().until("help is shown", () -> bench.hands().look("view:tramontane.help", Composite.class).isPresent());
        }
    }

    @Test
    @Tag("pace")
    void theWindowAnswersWhileItComputes() throws IOException {
        Screen.watch(false);
        try (Bench bench = open("observatory")) {
            // classes are loaded and compiled by the first edits
            for (int i = 0; i < 30; i++) {
                edit(bench, 60 + i);
                bench.computed();
            }
            List<Double> shown = new ArrayList<>();
            try (Heartbeat heartbeat = new Heartbeat(Screen.display())) {
                for (int i = 0; i < 20; i++) {
                    long begun = System.nanoTime();
                    edit(bench, 40 + i);
                    bench.hands().until("the case in front is shown", () -> bench.desk().scene().results().now()
                            .filter(now -> now.design() == bench.design()).isPresent());
                    shown.add((System.nanoTime() - begun) / 1e6);
                    bench.computed();
                }
                double[] sorted = shown.stream().mapToDouble(each -> each).sorted().toArray();
                // times are said, not judged: how long they are depends on what else the machine does
                String report = String.format("edits of observatory: case in front after %.0f ms (median), %.0f ms (slowest); longest"
                        + " without an answer %d ms%n%s%n", sorted[sorted.length / 2], sorted[sorted.length - 1], heartbeat.longest().toMillis(),
                        heartbeat.waits().stream().map(wait -> "waited at\n" + wait).collect(Collectors.joining("\n")));
                System.out.print(report.lines().findFirst().orElseThrow() + System.lineSeparator());
                Files.writeString(Files.createDirectories(Screen.pictures().getParent()).resolve("pace.txt"), report);
                assertTrue(heartbeat.answers() > 20, "the window was asked all the time");
            }
        } finally {
            Screen.watch(true);
        }
    }

    private static void edit(Bench bench, int area) {
        bench.desk().edit("narrow the grille", design -> DesignFile.parse(DesignFile.write(design)
                .replaceAll("\"freeArea\": \"[0-9]+ cm²\"", "\"freeArea\": \"" + area + " cm²\"")).design().orElseThrow());
    }
}
