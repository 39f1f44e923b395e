package tramontane.desktop.test;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.osgi.framework.BundleContext;
import org.osgi.test.common.annotation.InjectBundleContext;
import org.osgi.test.junit5.context.BundleContextExtension;
import tramontane.analysis.Severity;
import tramontane.analysis.Verdict;
import tramontane.desktop.Results;
import tramontane.model.Design;
import tramontane.model.Passage;
import tramontane.model.file.DesignFile;

/** A mover is chosen from the catalogue by pointer and keys, put into the design, and taken back. */
@ExtendWith({Screen.class, BundleContextExtension.class})
class CandidatesTest {

    private static final Duration CHOSEN = Duration.ofSeconds(120);
    private static final int PART = 1;

    @InjectBundleContext
    BundleContext context;

    @TempDir
    Path folder;

    private static Bench candidates(Bench bench) {
        bench.desk().open("tramontane.candidates");
        bench.hands().settle();
        return bench;
    }

    private static void choosable(Hands hands) {
        hands.until("the catalogue has been read", Duration.ofSeconds(30), () -> hands.find("candidates.choose", Button.class).isEnabled());
    }

    private static String mover(Design design) {
        return design.airPath().passage("fans").map(Passage::parameters).flatMap(parameters -> parameters.text("mover")).orElse("");
    }

    @Test
    void theBestIsPutIntoTheDesignAndTakenOutAgain() throws IOException {
        try (Bench bench = candidates(new Bench(context, folder.resolve("home"), Bench.sample(context, "quick", folder)))) {
            Hands hands = bench.hands();
            Design before = bench.design();
            choosable(hands);
            // at the lowest speed that just does, tolerances of the part would leave a caution
            Button certain = hands.find("candidates.certain", Button.class);
            bench.show(certain);
            hands.click(certain);
            hands.until("tolerances count, too", certain::getSelection);
            hands.press(SWT.MOD1, SWT.CR);
            hands.until("the choice has begun", () -> hands.find("candidates.choose", Button.class).getText().equals("stop")
                    || hands.find("candidates", Table.class).getItemCount() > 0);
            hands.until("the choice is done", CHOSEN, () -> hands.find("candidates.status", Label.class).getText().contains("judged exactly"));
            Table table = hands.find("candidates", Table.class);
            hands.until("candidates are listed", () -> table.isVisible() && table.getItemCount() > 0);
            assertFalse(hands.find("candidates.put", Button.class).isEnabled(), "none is selected");

            hands.click(table.getItem(0));
            hands.until("it can be put", () -> hands.find("candidates.put", Button.class).isEnabled());
            String part = table.getItem(0).getText(PART);
            assertNotEquals(mover(before), part);
            hands.press(SWT.MOD1 | SWT.SHIFT, SWT.CR);
            hands.until("it is in the design", () -> mover(bench.design()).equals(part));
            assertTrue(bench.design().airMover(part).isPresent(), "with its data");
            bench.computed();
            List<Results.Known<Verdict>> verdicts = bench.desk().scene().results().verdicts();
            assertFalse(verdicts.isEmpty());
            verdicts.forEach(each -> {
                assertFalse(each.stale());
                assertEquals(Severity.MET, each.value().severity(), () -> each.value().toString());
            });
            assertEquals(1, table.getSelectionCount(), "it stays selected");
            assertEquals("is in the design", hands.find("candidates.put", Button.class).getText());

            hands.press(SWT.MOD1, 'z');
            hands.until("it is taken back", () -> bench.design().equals(before));
            assertEquals(Optional.empty(), bench.undo());
        }
    }

    @Test
    void settingsAreKeptInTheDesignAndReadWhenItIsOpenedAgain() throws IOException {
        Path file = Bench.sample(context, "quick", folder);
        Design before = DesignFile.read(file).design().orElseThrow();
        try (Bench bench = candidates(new Bench(context, folder.resolve("home"), file))) {
            Hands hands = bench.hands();
            choosable(hands);
            Text movers = hands.find("candidates.field:movers", Text.class);
            bench.show(movers);
            hands.click(movers);
            hands.type("1");
            Button keep = hands.find("candidates.keep", Button.class);
            hands.until("it can be kept", keep::isEnabled);
            bench.show(keep);
            hands.click(keep);
            hands.until("it is kept", () -> DesignFile.write(bench.design()).contains("\"selection\""));
            assertEquals(Optional.of("keep settings of the choice for fans"), bench.undo());
            assertFalse(hands.find("candidates.keep", Button.class).isEnabled(), "the design says it now");
            hands.press(SWT.MOD1, 'z');
            hands.until("it is taken back", () -> bench.design().equals(before));
            hands.until("the form says what the design says", () -> hands.find("candidates.field:movers", Text.class).getText().isEmpty());
            hands.press(SWT.MOD1, 'y');
            hands.press(SWT.MOD1, 's');
            hands.until("it is saved", () -> !bench.desk().scene().document().changed());
        }
        try (Bench again = candidates(new Bench(context, folder.resolve("home"), file))) {
            assertEquals("1", again.hands().find("candidates.field:movers", Text.class).getText());
        }
    }
}
