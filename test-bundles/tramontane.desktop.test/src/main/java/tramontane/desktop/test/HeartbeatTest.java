package tramontane.desktop.test;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Shell;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

@ExtendWith(Screen.class)
class HeartbeatTest {

    @Test
    void aListenerThatKeepsTheThreadIsMeasured() {
        Shell shell = new Shell(Screen.display());
        shell.setLayout(new FillLayout());
        Button button = new Button(shell, SWT.PUSH);
        button.setText("work");
        button.addListener(SWT.Selection, event -> keep(Duration.ofMillis(400)));
        shell.setSize(200, 100);
        Hands hands = Hands.open(shell);
        try (Heartbeat heart = new Heartbeat(Screen.display())) {
            hands.click("work");
            hands.until("the wait is over", () -> heart.longest().toMillis() >= 300);
            Duration longest = heart.longest();
            assertTrue(longest.toMillis() >= 380 && longest.toMillis() < 2000, longest::toString);
            heart.reset();
            long end = System.nanoTime() + Duration.ofMillis(100).toNanos();
            hands.until("some time went by", () -> System.nanoTime() > end);
            assertTrue(heart.longest().compareTo(longest) < 0, () -> "still " + heart.longest());
        }
    }

    @Test
    void aWaitThatLastsCounts() {
        try (Heartbeat heart = new Heartbeat(Screen.display())) {
            keep(Duration.ofMillis(200));
            assertTrue(heart.longest().toMillis() >= 150, () -> heart.longest().toString());
        }
    }

    private static void keep(Duration time) {
        try {
            Thread.sleep(time);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(interrupted);
        }
    }
}
