package tramontane.desktop.internal.icons;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.ImageDataProvider;
import org.eclipse.swt.graphics.PaletteData;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.widgets.Display;
import tramontane.desktop.Icon;

/** Images of icons in one colour, each drawn once and by the zoom of the screen it is shown on. Owned and disposed of here. */
public final class Images {

    private static final int SIDE = 16;
    /** Weight of the strokes, on the grid. */
    private static final double STROKE = 1.25;

    private final Display display;
    private final Map<Drawn, Image> images = new HashMap<>();
    private Color colour;

    /** No images yet, to be drawn in a colour. */
    public Images(Display display, Color colour) {
        this.display = display;
        this.colour = colour;
    }

    /** What an image shows. */
    private record Drawn(Icon icon, RGB ink) {
    }

    /** The image of an icon. */
    public Image of(Icon icon) {
        return of(icon, colour);
    }

    /** The image of an icon in a colour of its own. */
    public Image of(Icon icon, Color ink) {
        return images.computeIfAbsent(new Drawn(icon, ink.getRGB()), this::draw);
    }

    private Image draw(Drawn drawn) {
        Drawing drawing = Drawing.of(drawn.icon().svg());
        return new Image(display, (ImageDataProvider) zoom -> data(drawing, drawn.ink(), SIDE * zoom / 100));
    }

    private static ImageData data(Drawing drawing, RGB ink, int side) {
        PaletteData colours = new PaletteData(0xff0000, 0xff00, 0xff);
        ImageData data = new ImageData(side, side, 24, colours);
        int[] row = new int[side];
        Arrays.fill(row, colours.getPixel(ink));
        for (int y = 0; y < side; y++) {
            data.setPixels(0, y, side, row, 0);
        }
        data.alphaData = Raster.cover(drawing, side, STROKE);
        return data;
    }

    /**
     * Draws in another colour from now on.
     *
     * @return what was drawn before, to be disposed of once nothing shows it any more
     */
    public Runnable recolour(Color ink) {
        Map<Drawn, Image> old = new HashMap<>(images);
        images.clear();
        colour = ink;
        return () -> old.values().forEach(Image::dispose);
    }

    /** Disposes of all images. */
    public void dispose() {
        images.values().forEach(Image::dispose);
        images.clear();
    }
}
