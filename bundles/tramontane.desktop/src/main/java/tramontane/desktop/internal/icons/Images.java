package tramontane.desktop.internal.icons;

import java.util.HashMap;
import java.util.Map;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageGcDrawer;
import org.eclipse.swt.graphics.Path;
import org.eclipse.swt.widgets.Display;
import tramontane.desktop.Icon;

/** Images of icons in one colour, each drawn once and by the zoom of the screen it is shown on. Owned and disposed of here. */
public final class Images {

    private static final int SIDE = 16;
    /** Weight of the strokes, on the grid. */
    private static final float STROKE = 1.25f;

    private final Display display;
    private final Map<Icon, Image> images = new HashMap<>();
    private Color colour;

    /** No images yet, to be drawn in a colour. */
    public Images(Display display, Color colour) {
        this.display = display;
        this.colour = colour;
    }

    /** The image of an icon. */
    public Image of(Icon icon) {
        return images.computeIfAbsent(icon, this::draw);
    }

    private Image draw(Icon icon) {
        Drawing drawing = Drawing.of(icon.svg());
        Color ink = colour;
        return new Image(display, new ImageGcDrawer() {
            @Override
            public void drawOn(GC gc, int width, int height) {
                paint(drawing, gc, ink, width / (float) SIDE);
            }

            @Override
            public int getGcStyle() {
                return SWT.TRANSPARENT;
            }
        }, SIDE, SIDE);
    }

    /**
     * Draws an icon.
     *
     * @param scale how large one unit of its grid is
     */
    public static void paint(Drawing drawing, GC gc, Color ink, float scale) {
        gc.setAntialias(SWT.ON);
        gc.setForeground(ink);
        gc.setBackground(ink);
        gc.setLineAttributes(new org.eclipse.swt.graphics.LineAttributes(STROKE * scale, SWT.CAP_ROUND, SWT.JOIN_ROUND));
        for (Drawing.Shape shape : drawing.shapes()) {
            Path path = new Path(gc.getDevice());
            try {
                for (Drawing.Step step : shape.steps()) {
                    double[] p = step.points();
                    switch (step.kind()) {
                        case 'M' -> path.moveTo((float) p[0] * scale, (float) p[1] * scale);
                        case 'L' -> path.lineTo((float) p[0] * scale, (float) p[1] * scale);
                        case 'C' -> path.cubicTo((float) p[0] * scale, (float) p[1] * scale, (float) p[2] * scale, (float) p[3] * scale,
                                (float) p[4] * scale, (float) p[5] * scale);
                        default -> path.close();
                    }
                }
                if (shape.fill()) {
                    gc.fillPath(path);
                } else {
                    gc.drawPath(path);
                }
            } finally {
                path.dispose();
            }
        }
    }

    /**
     * Draws in another colour from now on.
     *
     * @return what was drawn before, to be disposed of once nothing shows it any more
     */
    public Runnable recolour(Color ink) {
        Map<Icon, Image> old = new HashMap<>(images);
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
