package tramontane.selection.desktop.internal;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Function;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.FontData;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.graphics.Transform;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import tramontane.analysis.Chart;
import tramontane.desktop.Palette;
import tramontane.physics.units.UnitSystem;
import tramontane.report.ChartColours;
import tramontane.report.ChartDrawing;
import tramontane.report.Drawing;

/** Draws a chart as reports draw it, in the colours of the window. */
final class DrawingCanvas {

    private final Canvas canvas;
    private final Map<Long, Font> fonts = new HashMap<>();
    private Chart chart;
    private UnitSystem units = UnitSystem.METRIC;
    private Palette palette = Palette.LIGHT;
    private Optional<Drawing> drawn = Optional.empty();

    DrawingCanvas(Composite parent) {
        canvas = new Canvas(parent, SWT.DOUBLE_BUFFERED | SWT.NO_BACKGROUND);
        canvas.addPaintListener(event -> paint(event.gc));
        canvas.addDisposeListener(event -> fonts.values().forEach(Font::dispose));
    }

    Canvas control() {
        return canvas;
    }

    void show(Chart changed, UnitSystem shown, Palette colours) {
        if (!changed.equals(chart) || !shown.equals(units) || !colours.equals(palette)) {
            chart = changed;
            units = shown;
            palette = colours;
            canvas.redraw();
        }
    }

    /** Hands on a place of the chart in SI, and how much of each axis a pixel is, where somebody presses. */
    void onPress(BiConsumer<double[], double[]> pressed) {
        canvas.addListener(SWT.MouseDown, event -> drawn.filter(drawing -> drawing.plot().holds(event.x, event.y)).ifPresent(drawing -> {
            Chart.Extent x = chart.extent();
            Chart.Extent y = chart.extent(Chart.Side.LEFT);
            Drawing.Box plot = drawing.plot();
            pressed.accept(new double[] {x.from() + (event.x - plot.left()) / plot.width() * x.length(), y.to() - (event.y - plot.top()) / plot.height() * y.length()},
                    new double[] {x.length() / plot.width(), y.length() / plot.height()});
        }));
    }

    private void paint(GC gc) {
        Point size = canvas.getSize();
        gc.setBackground(palette.surface());
        gc.fillRectangle(0, 0, size.x, size.y);
        if (chart == null || size.x < ChartDrawing.LEAST || size.y < ChartDrawing.LEAST) {
            drawn = Optional.empty();
            return;
        }
        gc.setAntialias(SWT.ON);
        gc.setTextAntialias(SWT.ON);
        Drawing drawing = ChartDrawing.of(chart, units, size.x, size.y, colours(), (text, height, bold) -> {
            gc.setFont(font(height, bold));
            return gc.textExtent(text, SWT.DRAW_TRANSPARENT).x;
        });
        drawn = Optional.of(drawing);
        drawing.items().forEach(item -> paint(gc, item, drawing.plot()));
    }

    private ChartColours colours() {
        return new ChartColours(rgb(palette.surface()), rgb(palette.text()), rgb(palette.muted()), rgb(palette.muted()), rgb(palette.line()), rgb(palette.notJudged()),
                palette.series().stream().map(DrawingCanvas::rgb).toList());
    }

    private static int rgb(Color colour) {
        return colour.getRed() << 16 | colour.getGreen() << 8 | colour.getBlue();
    }

    private static Color colour(int rgb) {
        return new Color(new RGB(rgb >> 16 & 255, rgb >> 8 & 255, rgb & 255));
    }

    private void paint(GC gc, Drawing.Item item, Drawing.Box plot) {
        switch (item) {
            case Drawing.Line line -> {
                clip(gc, line.clip(), plot);
                gc.setForeground(colour(line.colour()));
                gc.setLineWidth((int) Math.max(1, Math.round(line.width())));
                if (line.dashes().isEmpty()) {
                    gc.setLineStyle(SWT.LINE_SOLID);
                } else {
                    gc.setLineDash(line.dashes().stream().mapToInt(dash -> (int) Math.max(1, Math.round(dash))).toArray());
                }
                gc.drawPolyline(corners(line.points()));
                gc.setLineStyle(SWT.LINE_SOLID);
                gc.setClipping((org.eclipse.swt.graphics.Rectangle) null);
            }
            case Drawing.Area area -> {
                clip(gc, area.clip(), plot);
                gc.setBackground(colour(area.colour()));
                gc.setAlpha((int) Math.round(255 * area.opacity()));
                gc.fillPolygon(corners(area.points()));
                gc.setAlpha(255);
                gc.setClipping((org.eclipse.swt.graphics.Rectangle) null);
            }
            case Drawing.Sign sign -> paint(gc, sign);
            case Drawing.Words words -> paint(gc, words);
        }
    }

    private static void clip(GC gc, boolean clip, Drawing.Box plot) {
        if (clip) {
            gc.setClipping((int) Math.floor(plot.left()), (int) Math.floor(plot.top()), (int) Math.ceil(plot.width()) + 1, (int) Math.ceil(plot.height()) + 1);
        }
    }

    private static int[] corners(Chart.Points points) {
        int[] corners = new int[2 * points.size()];
        for (int i = 0; i < points.size(); i++) {
            corners[2 * i] = (int) Math.round(points.x(i));
            corners[2 * i + 1] = (int) Math.round(points.y(i));
        }
        return corners;
    }

    private void paint(GC gc, Drawing.Sign sign) {
        int r = (int) Math.round(sign.radius());
        int x = (int) Math.round(sign.x());
        int y = (int) Math.round(sign.y());
        Function<int[], int[]> around = offsets -> {
            int[] corners = new int[offsets.length];
            for (int i = 0; i < offsets.length; i += 2) {
                corners[i] = x + offsets[i];
                corners[i + 1] = y + offsets[i + 1];
            }
            return corners;
        };
        gc.setForeground(colour(sign.colour()));
        gc.setBackground(colour(sign.colour()));
        gc.setLineWidth(2);
        switch (sign.shape()) {
            case DISC -> gc.fillOval(x - r, y - r, 2 * r, 2 * r);
            case RING -> {
                gc.setBackground(palette.surface());
                gc.fillOval(x - r, y - r, 2 * r, 2 * r);
                gc.drawOval(x - r, y - r, 2 * r, 2 * r);
            }
            case DIAMOND -> gc.fillPolygon(around.apply(new int[] {0, -r, r, 0, 0, r, -r, 0}));
            case SQUARE -> gc.fillRectangle(x - r, y - r, 2 * r, 2 * r);
            case TRIANGLE -> gc.fillPolygon(around.apply(new int[] {-r, -r, r, 0, -r, r}));
            case CROSS -> {
                gc.drawLine(x - r, y - r, x + r, y + r);
                gc.drawLine(x - r, y + r, x + r, y - r);
            }
        }
    }

    private void paint(GC gc, Drawing.Words words) {
        gc.setFont(font(words.size(), words.bold()));
        gc.setForeground(colour(words.colour()));
        Point extent = gc.textExtent(words.text(), SWT.DRAW_TRANSPARENT);
        int ascent = gc.getFontMetrics().getAscent() + gc.getFontMetrics().getLeading();
        int dx = switch (words.anchor()) {
            case START -> 0;
            case MIDDLE -> -extent.x / 2;
            case END -> -extent.x;
        };
        if (words.turned()) {
            Transform turn = new Transform(gc.getDevice());
            turn.translate((float) words.x(), (float) words.y());
            turn.rotate(-90);
            gc.setTransform(turn);
            gc.drawText(words.text(), dx, -ascent, SWT.DRAW_TRANSPARENT);
            gc.setTransform(null);
            turn.dispose();
            return;
        }
        int x = (int) Math.round(words.x()) + dx;
        int y = (int) Math.round(words.y()) - ascent;
        if (words.halo()) {
            gc.setBackground(palette.surface());
            gc.setAlpha(200);
            gc.fillRectangle(x - 1, y, extent.x + 2, extent.y);
            gc.setAlpha(255);
        }
        gc.drawText(words.text(), x, y, SWT.DRAW_TRANSPARENT);
    }

    /** A font of a height in pixels; the system's own at that height. */
    private Font font(double height, boolean bold) {
        long key = Math.round(height * 10) * 2 + (bold ? 1 : 0);
        return fonts.computeIfAbsent(key, absent -> {
            FontData data = canvas.getDisplay().getSystemFont().getFontData()[0];
            int points = (int) Math.max(6, Math.round(height * 72 / 96));
            return new Font(canvas.getDisplay(), new FontData(data.getName(), points, bold ? SWT.BOLD : SWT.NORMAL));
        });
    }
}
