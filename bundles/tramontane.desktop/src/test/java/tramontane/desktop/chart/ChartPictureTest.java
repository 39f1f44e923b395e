package tramontane.desktop.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.HashMap;
import java.util.Map;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.widgets.Display;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import tramontane.analysis.Chart;
import tramontane.analysis.Chart.Axis;
import tramontane.analysis.Chart.Look;
import tramontane.analysis.Chart.Mark;
import tramontane.analysis.Chart.Points;
import tramontane.analysis.Chart.Role;
import tramontane.analysis.Chart.Series;
import tramontane.analysis.Chart.Shape;
import tramontane.desktop.Palette;
import tramontane.physics.units.QuantityKind;
import tramontane.physics.units.UnitSystem;
import tramontane.report.ChartDrawing;
import tramontane.report.Drawing;

/** Pictures of charts, drawn from data; left out where there is no display. */
class ChartPictureTest {

    private static final Chart CHART = Chart.of("fans", new Axis("flow", QuantityKind.FLOW), new Axis("static pressure", QuantityKind.PRESSURE))
            .with(new Series("bank", Role.CURVE, Look.line(0), Points.of(new double[] {0, 10}, new double[] {100, 0})))
            .with(new Mark("duty point", 6, 40, Shape.DISC, 1));

    private static Display display;

    @BeforeAll
    static void connect() {
        assumeTrue(System.getenv("DISPLAY") != null || System.getenv("WAYLAND_DISPLAY") != null, "there is no display");
        display = Display.getDefault(); // one for all tests of a process
    }

    @Test
    void aPictureHasTwoPointsForEachPixelWhateverTheZoomOfTheScreen() {
        for (Palette palette : new Palette[] {Palette.LIGHT, Palette.DARK}) {
            ChartPainter painter = new ChartPainter(display, 2);
            ImageData picture = ChartCanvas.picture(display, CHART, UnitSystem.METRIC, ChartPainter.colours(palette, false), 500, 400);
            assertEquals((int) Math.round(500 * painter.scale()), picture.width);
            assertEquals((int) Math.round(400 * painter.scale()), picture.height);
            assertTrue(picture.width >= 1000);
            assertFalse(enlarged(picture), "each point is drawn, none is made of its neighbours");
            Map<Integer, Integer> counts = new HashMap<>();
            for (int x = 0; x < picture.width; x++) {
                for (int y = 0; y < picture.height; y++) {
                    counts.merge(rgb(picture, x, y), 1, Integer::sum);
                }
            }
            assertEquals(rgb(palette.surface()), counts.entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow().getKey(), "background");
            // a disc of radius 5 and the legend's line are drawn in their own colours, at twice the size
            assertTrue(counts.getOrDefault(rgb(palette.series(1)), 0) > 0.6 * Math.PI * 25 * painter.scale() * painter.scale());
            assertTrue(counts.getOrDefault(rgb(palette.series(0)), 0) > 24 * 2 * painter.scale());
            // the lower right corner is as drawn as the rest: a picture of half the size in a corner would leave it empty
            assertEquals(rgb(palette.surface()), rgb(picture, picture.width - 1, picture.height - 1));
            Drawing drawing = drawing(painter, palette);
            int right = (int) Math.round(drawing.plot().right() * painter.scale());
            int bottom = (int) Math.round(drawing.plot().bottom() * painter.scale());
            boolean framed = false;
            for (int d = -3; d <= 3; d++) {
                framed |= rgb(picture, right + d, bottom - 40) == rgb(palette.line());
            }
            assertTrue(framed, "the frame's right edge is where it is laid out");
        }
    }

    /** Whether rows and columns come in equal pairs, as where one point was drawn for four. */
    private static boolean enlarged(ImageData picture) {
        int different = 0;
        for (int x = 0; x + 1 < picture.width; x += 2) {
            for (int y = 0; y + 1 < picture.height; y += 2) {
                int first = picture.getPixel(x, y);
                different += first != picture.getPixel(x + 1, y) || first != picture.getPixel(x, y + 1) ? 1 : 0;
            }
        }
        return different < 500;
    }

    private static Drawing drawing(ChartPainter painter, Palette palette) {
        Image image = new Image(display, 10, 10);
        GC gc = new GC(image);
        Drawing drawing = ChartDrawing.of(CHART, UnitSystem.METRIC, 500, 400, ChartPainter.colours(palette, false), painter.widths(gc));
        gc.dispose();
        image.dispose();
        painter.dispose();
        return drawing;
    }

    private static int rgb(ImageData picture, int x, int y) {
        org.eclipse.swt.graphics.RGB colour = picture.palette.getRGB(picture.getPixel(x, y));
        return colour.red << 16 | colour.green << 8 | colour.blue;
    }

    private static int rgb(org.eclipse.swt.graphics.Color colour) {
        return colour.getRed() << 16 | colour.getGreen() << 8 | colour.getBlue();
    }

    @Test
    void aSavedPictureIsPng() {
        byte[] png = ChartCanvas.png(ChartCanvas.picture(display, CHART, UnitSystem.METRIC, ChartPainter.colours(Palette.LIGHT, false), 300, 200));
        assertEquals("PNG", new String(png, 1, 3, java.nio.charset.StandardCharsets.US_ASCII));
        assertEquals(SWT.IMAGE_PNG, new ImageData(new java.io.ByteArrayInputStream(png)).type);
    }
}
