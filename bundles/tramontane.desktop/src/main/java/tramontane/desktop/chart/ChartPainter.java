package tramontane.desktop.chart;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Device;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.FontData;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Path;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Transform;
import tramontane.analysis.Chart;
import tramontane.desktop.Palette;
import tramontane.report.ChartColours;
import tramontane.report.Drawing;
import tramontane.report.TextWidth;

/**
 * Paints a laid out chart. Curves are drawn between places in fractions of a pixel, so that they stay smooth at any zoom.
 *
 * <p>Sizes follow the font of the system: all lengths of a drawing are multiplied by {@link #scale}.
 */
final class ChartPainter {

    /** Pixels of the font for which a drawing is laid out. */
    private static final double LAID_OUT_FOR = 12.5;
    private static final float SIGN_STROKE = 2;

    private final Device device;
    private final String fontName;
    private final double scale;
    private final Map<String, Font> fonts = new HashMap<>();

    /** For a screen. */
    ChartPainter(Device device) {
        this(device, 1);
    }

    /**
     * For a picture.
     *
     * @param points points of it for each pixel of a screen at 100 %
     */
    ChartPainter(Device device, double points) {
        this.device = device;
        FontData system = device.getSystemFont().getFontData()[0];
        fontName = system.getName();
        scale = points * Math.max(1, system.getHeight() * device.getDPI().y / 72.0 / LAID_OUT_FOR);
    }

    /** Pixels of the widget over those of the drawing. */
    double scale() {
        return scale;
    }

    /** Whoever made it disposes of it. */
    void dispose() {
        fonts.values().forEach(Font::dispose);
        fonts.clear();
    }

    private Font font(double size, boolean bold) {
        // heights of fonts are whole points; what is left over is little
        int points = (int) Math.max(1, Math.round(size * scale * 72 / device.getDPI().y));
        return fonts.computeIfAbsent(points + (bold ? "b" : ""), key -> new Font(device, fontName, points, bold ? SWT.BOLD : SWT.NORMAL));
    }

    /** How wide words are with the fonts of this display. */
    TextWidth widths(GC gc) {
        return (text, size, bold) -> {
            gc.setFont(font(size, bold));
            return gc.textExtent(text, SWT.DRAW_TRANSPARENT).x / scale;
        };
    }

    /** The colours of a palette; everything in one where what is shown is no longer true. */
    static ChartColours colours(Palette palette, boolean stale) {
        List<Integer> series = new ArrayList<>();
        palette.series().forEach(colour -> series.add(rgb(stale ? palette.stale() : colour)));
        return new ChartColours(rgb(palette.surface()), rgb(stale ? palette.stale() : palette.text()),
                rgb(stale ? palette.stale() : palette.muted()), rgb(palette.line()), mixed(palette.line(), palette.surface()), rgb(palette.muted()), series);
    }

    private static int rgb(Color colour) {
        return colour.getRed() << 16 | colour.getGreen() << 8 | colour.getBlue();
    }

    /** Half of the one and half of the other. */
    private static int mixed(Color one, Color other) {
        return (one.getRed() + other.getRed()) / 2 << 16 | (one.getGreen() + other.getGreen()) / 2 << 8 | (one.getBlue() + other.getBlue()) / 2;
    }

    static Color colour(int rgb) {
        return new Color(rgb >> 16 & 255, rgb >> 8 & 255, rgb & 255);
    }

    /**
     * Paints.
     *
     * @param gc      where
     * @param drawing what
     * @param which   which of its items
     * @param left    pixel of the drawing that lies at the left edge
     * @param top     pixel of the drawing that lies at the upper edge
     */
    void paint(GC gc, Drawing drawing, Predicate<Drawing.Item> which, double left, double top) {
        gc.setAntialias(SWT.ON);
        gc.setTextAntialias(SWT.ON);
        gc.setLineJoin(SWT.JOIN_ROUND);
        gc.setLineCap(SWT.CAP_FLAT);
        for (Drawing.Item item : drawing.items()) {
            if (which.test(item)) {
                boolean clip = item instanceof Drawing.Line line && line.clip() || item instanceof Drawing.Area area && area.clip();
                if (clip) {
                    Drawing.Box plot = drawing.plot();
                    gc.setClipping((int) Math.round((plot.left() - left) * scale), (int) Math.round((plot.top() - top) * scale),
                            (int) Math.round(plot.width() * scale), (int) Math.round(plot.height() * scale));
                }
                paint(gc, item, colour(drawing.background()), left, top);
                if (clip) {
                    gc.setClipping((org.eclipse.swt.graphics.Rectangle) null);
                }
            }
        }
    }

    private void paint(GC gc, Drawing.Item item, Color background, double left, double top) {
        switch (item) {
            case Drawing.Line line -> {
                gc.setForeground(colour(line.colour()));
                gc.setLineWidth((int) Math.max(1, Math.round(line.width() * scale)));
                if (line.dashes().isEmpty()) {
                    gc.setLineStyle(SWT.LINE_SOLID);
                } else {
                    gc.setLineDash(line.dashes().stream().mapToInt(dash -> (int) Math.max(1, Math.round(dash * scale))).toArray());
                }
                Path path = path(line.points(), left, top, false, ruled(line));
                gc.drawPath(path);
                path.dispose();
                gc.setLineStyle(SWT.LINE_SOLID);
            }
            case Drawing.Area area -> {
                gc.setBackground(colour(area.colour()));
                gc.setAlpha((int) Math.round(255 * area.opacity()));
                Path path = path(area.points(), left, top, true, false);
                gc.fillPath(path);
                path.dispose();
                gc.setAlpha(255);
            }
            case Drawing.Sign sign -> sign(gc, sign, background, left, top);
            case Drawing.Words words -> words(gc, words, background, left, top);
        }
    }

    /** Whether it is a frame or a line of the grid, which are to fill whole pixels. */
    private static boolean ruled(Drawing.Line line) {
        Chart.Points points = line.points();
        return !line.clip() || points.size() == 2 && (points.x(0) == points.x(1) || points.y(0) == points.y(1)) && line.width() <= 1;
    }

    private Path path(Chart.Points points, double left, double top, boolean closed, boolean ruled) {
        Path path = new Path(device);
        for (int i = 0; i < points.size(); i++) {
            double wide = (points.x(i) - left) * scale;
            double high = (points.y(i) - top) * scale;
            // lines of odd width are moved by half a pixel on their way to the screen
            float x = (float) (ruled ? Math.floor(wide) : wide);
            float y = (float) (ruled ? Math.floor(high) : high);
            if (i == 0) {
                path.moveTo(x, y);
            } else {
                path.lineTo(x, y);
            }
        }
        if (closed) {
            path.close();
        }
        return path;
    }

    private void sign(GC gc, Drawing.Sign sign, Color background, double left, double top) {
        float x = (float) ((sign.x() - left) * scale);
        float y = (float) ((sign.y() - top) * scale);
        float r = (float) (sign.radius() * scale);
        Color colour = colour(sign.colour());
        gc.setForeground(colour);
        gc.setBackground(colour);
        gc.setLineWidth(Math.round(SIGN_STROKE * (float) scale));
        Path path = new Path(device);
        switch (sign.shape()) {
            case DISC, RING -> path.addArc(x - r, y - r, 2 * r, 2 * r, 0, 360);
            case SQUARE -> path.addRectangle(x - 0.85f * r, y - 0.85f * r, 1.7f * r, 1.7f * r);
            case DIAMOND -> polygon(path, x, y - r, x + r, y, x, y + r, x - r, y);
            case TRIANGLE -> polygon(path, x - r, y - r, x + r, y, x - r, y + r);
            case CROSS -> {
                path.moveTo(x - r, y - r);
                path.lineTo(x + r, y + r);
                path.moveTo(x - r, y + r);
                path.lineTo(x + r, y - r);
            }
        }
        switch (sign.shape()) {
            case CROSS -> gc.drawPath(path);
            case RING -> {
                gc.setBackground(background);
                gc.fillPath(path);
                gc.drawPath(path);
            }
            default -> gc.fillPath(path);
        }
        path.dispose();
    }

    private static void polygon(Path path, float... xy) {
        path.moveTo(xy[0], xy[1]);
        for (int i = 2; i < xy.length; i += 2) {
            path.lineTo(xy[i], xy[i + 1]);
        }
        path.close();
    }

    private void words(GC gc, Drawing.Words words, Color background, double left, double top) {
        gc.setFont(font(words.size(), words.bold()));
        Point extent = gc.textExtent(words.text(), SWT.DRAW_TRANSPARENT);
        int ascent = gc.getFontMetrics().getAscent() + gc.getFontMetrics().getLeading();
        double before = switch (words.anchor()) {
            case START -> 0;
            case MIDDLE -> extent.x / 2.0;
            case END -> extent.x;
        };
        double x = (words.x() - left) * scale;
        double y = (words.y() - top) * scale;
        if (words.turned()) {
            Transform before90 = new Transform(device);
            gc.getTransform(before90);
            Transform turned = new Transform(device);
            gc.getTransform(turned);
            turned.translate((float) x, (float) y);
            turned.rotate(-90);
            gc.setTransform(turned);
            gc.setForeground(colour(words.colour()));
            gc.drawText(words.text(), (int) Math.round(-before), -ascent, SWT.DRAW_TRANSPARENT);
            gc.setTransform(before90);
            turned.dispose();
            before90.dispose();
            return;
        }
        int px = (int) Math.round(x - before);
        int py = (int) Math.round(y - ascent);
        if (words.halo()) {
            gc.setForeground(background);
            for (int dx = -1; dx <= 1; dx++) {
                for (int dy = -1; dy <= 1; dy++) {
                    gc.drawText(words.text(), px + dx, py + dy, SWT.DRAW_TRANSPARENT);
                }
            }
        }
        gc.setForeground(colour(words.colour()));
        gc.drawText(words.text(), px, py, SWT.DRAW_TRANSPARENT);
    }
}
