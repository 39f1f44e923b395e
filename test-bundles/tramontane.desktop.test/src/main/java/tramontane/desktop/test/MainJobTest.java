package tramontane.desktop.test;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.TreeItem;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.osgi.framework.BundleContext;
import org.osgi.test.common.annotation.InjectBundleContext;
import org.osgi.test.junit5.context.BundleContextExtension;
import tramontane.model.Design;
import tramontane.model.edit.Subject;
import tramontane.model.file.DesignFile;

/** The main job, by pointer and keys: a design is changed, its results follow, a mover is chosen, all is taken back, saved, opened again. */
@ExtendWith({Screen.class, BundleContextExtension.class})
@Tag("job")
class MainJobTest {

    @InjectBundleContext
    BundleContext context;

    @TempDir
    Path folder;

    @Test
    void aGrilleIsNarrowedAMoverFailsAnotherIsChosenAndAllIsTakenBack() throws IOException {
        Path file = Bench.sample(context, "observatory", folder);
        Design before = DesignFile.read(file).design().orElseThrow();
        try (Bench bench = new Bench(context, folder.resolve("home"), file)) {
            Hands hands = bench.hands();
            double wide = bench.figure("airflow.bank.flow", "fans", "nominal");

            // narrow the grille
            hands.click(hands.find("grille", TreeItem.class));
            hands.until("the grille's fields are shown", () -> hands.look("field:freeArea", Text.class).isPresent());
            assertEquals(Optional.of(new Subject(Subject.Kind.PASSAGE, "grille")), bench.desk().scene().selection());
            bench.fill("field:freeArea", "20 cm²");
            bench.computed();
            double narrow = bench.figure("airflow.bank.flow", "fans", "nominal");
            assertTrue(narrow < 0.95 * wide, () -> "the duty point should have moved: " + wide + " to " + narrow + " m³/s");
            assertTrue(DesignFile.write(bench.design()).contains("20 cm²"), "kept as it was typed");
            assertTrue(bench.undo().isPresent());

            // a mover fails in the condition in front
            int findings = bench.desk().scene().results().findings().size();
            bench.desk().front("hot day");
            hands.settle();
            failMover(bench);
            bench.computed();
            double failed = bench.figure("airflow.bank.flow", "fans", bench.desk().scene().front());
            assertTrue(failed < 0.8 * narrow, () -> "one of two fans is locked: " + failed + " instead of " + narrow + " m³/s");
            assertNotEquals(findings, bench.desk().scene().results().findings().size());
            Table shown = hands.find("findings", Table.class);
            hands.until("a finding about it is shown", () -> java.util.Arrays.stream(shown.getItems())
                    .anyMatch(item -> item.getText(1).contains("fans")));

            // undo all
            for (int steps = 0; bench.undo().isPresent(); steps++) {
                assertTrue(steps < 10, () -> "Ctrl+Z takes nothing back; left is " + bench.undo());
                hands.press(SWT.MOD1, 'z');
                hands.settle();
            }
            assertEquals(before, bench.design());
            assertFalse(bench.desk().scene().document().changed());
            bench.computed();
            assertEquals(wide, bench.figure("airflow.bank.flow", "fans", "nominal"), "the same bits as before");

            // and do one thing again, save, open it anew
            hands.press(SWT.MOD1, 'y');
            hands.settle();
            assertTrue(bench.desk().scene().document().changed());
            Design after = bench.design();
            hands.press(SWT.MOD1, 's');
            hands.until("it is saved", () -> !bench.desk().scene().document().changed());
            assertEquals(after, DesignFile.read(file).design().orElseThrow());
        }
        try (Bench again = new Bench(context, folder.resolve("home"), file)) {
            assertTrue(DesignFile.write(again.design()).contains("20 cm²"));
        }
    }

    /** By the property page of the condition: one entry more in the list of failed movers. */
    private static void failMover(Bench bench) {
        Hands hands = bench.hands();
        bench.desk().select(Optional.of(new Subject(Subject.Kind.CONDITION, "hot day")));
        hands.settle();
        var add = hands.find("add:failed", org.eclipse.swt.widgets.Button.class);
        bench.show(add);
        hands.click(add);
        hands.settle();
        bench.computed();
    }

    @Test
    void unitsAreSwitchedForTheWholeWindowAtOnce() throws IOException {
        try (Bench bench = new Bench(context, folder.resolve("home"), Bench.sample(context, "observatory", folder))) {
            Hands hands = bench.hands();
            hands.click(hands.find("filter", TreeItem.class));
            hands.until("the filter's fields are shown", () -> hands.look("field:ratedFlow", Text.class).isPresent());
            assertEquals("72", number(hands.find("field:ratedFlow", Text.class).getText()));
            hands.press(SWT.MOD1, 'u');
            hands.settle();
            // 72 m³/h are 42.378 cfm (1 ft = 0.3048 m exactly), shown with four digits
            assertEquals("42.38", number(hands.find("field:ratedFlow", Text.class).getText()));
            Design before = bench.design();
            assertEquals(before, bench.design());
            bench.fill("field:ratedFlow", "80 m³/h");
            assertTrue(DesignFile.write(bench.design()).contains("80 m³/h"), "any unit can be typed");
            bench.fill("field:ratedFlow", "50");
            assertTrue(DesignFile.write(bench.design()).contains("50 cfm"), "a plain number is one of the unit shown");
        }
    }

    private static String number(String text) {
        double value = Double.parseDouble(text.replace(',', '.').strip());
        return value == Math.rint(value) ? String.valueOf((long) value) : String.valueOf(value);
    }

    @Test
    void badInputIsSaidBesideTheFieldAndNothingIsLost() throws IOException {
        try (Bench bench = new Bench(context, folder.resolve("home"), Bench.sample(context, "observatory", folder))) {
            Hands hands = bench.hands();
            Design before = bench.design();
            hands.click(hands.find("grille", TreeItem.class));
            hands.until("the grille's fields are shown", () -> hands.look("field:freeArea", Text.class).isPresent());
            bench.fill("field:freeArea", "twelve");
            assertEquals(before, bench.design());
            assertEquals("twelve", hands.find("field:freeArea", Text.class).getText());
            bench.fill("field:freeArea", "-3 cm²");
            assertEquals(before, bench.design());
        }
    }

    @Test
    void theConditionInFrontIsOneForAllAndChangedByKeys() throws IOException {
        try (Bench bench = new Bench(context, folder.resolve("home"), Bench.sample(context, "observatory", folder))) {
            Hands hands = bench.hands();
            List<String> cases = bench.desk().scene().results().cases().stream().map(each -> each.concrete().id()).toList();
            assertEquals("nominal", bench.desk().scene().front());
            for (String next : cases.subList(1, cases.size())) {
                hands.press(0, SWT.F8);
                hands.settle();
                assertEquals(next, bench.desk().scene().front(), "in front after F8");
            }
            hands.until("the list of conditions shows it", () -> hands.find("condition", Combo.class).getText()
                    .equals("any one failed: fans 2 locked"));
        }
    }
}
