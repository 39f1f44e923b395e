package tramontane.desktop.internal.icons;

import java.util.EnumMap;
import java.util.Map;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.LineAttributes;
import org.eclipse.swt.graphics.Path;
import tramontane.analysis.Severity;
import tramontane.desktop.Icon;

/**
 * The mark of each severity, which has a shape of its own, drawn as paths wherever it is wanted: an image would be drawn at one zoom and
 * scaled by some widgets.
 */
public final class Marks {

    /** Width and height of a mark. */
    public static final int SIDE = 16;

    private static final float STROKE = 1.25f;
    private static final Map<Severity, Drawing> DRAWINGS = new EnumMap<>(Severity.class);

    static {
        for (Severity severity : Severity.values()) {
            String name = severity == Severity.ERROR ? "error" : severity.word().replace(" ", "");
            DRAWINGS.put(severity, Drawing.of(Icon.read(Marks.class, "/tramontane/desktop/icons/mark-" + name + ".svg").svg()));
        }
    }

    private Marks() {
    }

    /**
     * Draws a mark.
     *
     * @param x its left edge
     * @param y its upper edge
     */
    public static void paint(Severity severity, GC gc, Color ink, float x, float y) {
        gc.setAntialias(SWT.ON);
        gc.setForeground(ink);
        gc.setBackground(ink);
        LineAttributes before = gc.getLineAttributes();
        gc.setLineAttributes(new LineAttributes(STROKE, SWT.CAP_ROUND, SWT.JOIN_ROUND));
        for (Drawing.Shape shape : DRAWINGS.get(severity).shapes()) {
            Path path = new Path(gc.getDevice());
            try {
                for (Drawing.Step step : shape.steps()) {
                    double[] p = step.points();
                    switch (step.kind()) {
                        case 'M' -> path.moveTo(x + (float) p[0], y + (float) p[1]);
                        case 'L' -> path.lineTo(x + (float) p[0], y + (float) p[1]);
                        case 'C' -> path.cubicTo(x + (float) p[0], y + (float) p[1], x + (float) p[2], y + (float) p[3], x + (float) p[4],
                                y + (float) p[5]);
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
        gc.setLineAttributes(before);
    }
}
