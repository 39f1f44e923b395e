package tramontane.desktop.test;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** The four variants are what they are called. */
@ExtendWith(Screen.class)
@Tag(Screen.PICTURES)
class VariantTest {
    private static double brightness(RGB colour) {
        return (0.299 * colour.red + 0.587 * colour.green + 0.114 * colour.blue) / 255;
    }

    @Test
    void aPictureOfAPlainShellHasTheScaleAndTheThemeOfTheVariant() {
        Shell shell = new Shell(Screen.display());
        shell.setText("plain");
        shell.setLayout(new GridLayout());
        new Label(shell, SWT.NONE).setText("flow");
        new Text(shell, SWT.BORDER).setText("0.08 m³/s");
        Button button = new Button(shell, SWT.PUSH);
        button.setText("solve");
        boolean[] clicked = {false};
        button.addListener(SWT.Selection, event -> clicked[0] = true);
        shell.setSize(300, 200);
        Hands hands = Hands.open(shell);
        Path file = hands.screenshot(shell, Screen.pictures().resolve("plain.png"));
        ImageData picture = new ImageData(file.toString());
        int scale = Integer.parseInt(Screen.variant().split("-")[0]);
        boolean dark = Screen.variant().endsWith("-dark");
        assertEquals(shell.getClientArea().width * scale / 100, picture.width);
        assertEquals(shell.getClientArea().height * scale / 100, picture.height);
        assertEquals(scale, shell.getMonitor().getZoom());
        // The lower right corner of the shell shows nothing but its background.
        RGB ground = picture.palette.getRGB(picture.getPixel(picture.width * 4 / 5, picture.height * 4 / 5));
        assertEquals(dark, brightness(ground) < 0.5, ground::toString);
        assertEquals(dark, brightness(shell.getBackground().getRGB()) < 0.5, "colour of the shell");
        // At 200 percent it is not the one at 100, twice as large: some pixels differ from the one beside them.
        boolean[] fine = {false};
        for (int y = 0; y < picture.height; y++) {
            for (int x = 0; x + 1 < picture.width; x += 2) {
                fine[0] |= picture.getPixel(x, y) != picture.getPixel(x + 1, y);
            }
        }
        assertTrue(fine[0], "only even pixels");
        // The pointer finds its way in each scale.
        hands.click("solve");
        hands.until("the button was clicked", () -> clicked[0]);
    }
}
