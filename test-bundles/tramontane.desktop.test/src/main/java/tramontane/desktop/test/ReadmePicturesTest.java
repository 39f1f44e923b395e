package tramontane.desktop.test;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Table;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.osgi.framework.BundleContext;
import org.osgi.test.common.annotation.InjectBundleContext;
import org.osgi.test.junit5.context.BundleContextExtension;
import tramontane.desktop.FigureKey;
import tramontane.model.edit.Subject;

/** The pictures of README.md: taken here, chosen and copied to {@code product/pictures} by hand. */
@ExtendWith({Screen.class, BundleContextExtension.class})
@Tag(Screen.PICTURES)
class ReadmePicturesTest {

    @InjectBundleContext
    BundleContext context;

    @TempDir
    Path folder;

    @Test
    void ofTheWindowAFailureAndCandidates() throws IOException {
        try (Bench bench = new Bench(context, folder.resolve("home"), Bench.sample(context, "observatory", folder))) {
            bench.desk().select(Optional.of(new Subject(Subject.Kind.PASSAGE, "filter")));
            bench.hands().settle();
            Path window = bench.hands().screenshot(bench.desk().shell(), Screen.pictures().resolve("readme-window.png"));
            bench.desk().front("any one failed");
            bench.desk().explain(new FigureKey("airflow.bank.flow", "fans", "any one failed: fans 1 locked"));
            bench.hands().settle();
            bench.hands().screenshot(bench.desk().shell(), Screen.pictures().resolve("readme-failed.png"));
            bench.desk().front("nominal");
            bench.desk().open("tramontane.candidates");
            bench.hands().press(SWT.MOD1, SWT.CR);
            bench.hands().until("candidates are found", Duration.ofSeconds(90), () -> bench.hands().widgets().stream()
                    .filter(each -> each instanceof Table table && table.isVisible() && String.valueOf(table.getData("tramontane.id"))
                            .startsWith("candidates")).anyMatch(each -> ((Table) each).getItemCount() > 5)
                    && bench.desk().jobs().list().stream().noneMatch(job -> job.state() == tramontane.desktop.Jobs.State.RUNNING));
            bench.hands().settle();
            bench.desk().run("view.fill");
            bench.hands().settle();
            Table table = bench.hands().find("candidates", Table.class);
            bench.hands().click(table, new Point(150, table.getHeaderHeight() + table.getItemHeight() / 2));
            bench.hands().press(SWT.MOD1, '3');
            bench.hands().settle();
            bench.hands().screenshot(bench.desk().shell(), Screen.pictures().resolve("readme-candidates.png"));
            assertTrue(Files.size(window) > 20_000, "a window full of things");
        }
    }
}
