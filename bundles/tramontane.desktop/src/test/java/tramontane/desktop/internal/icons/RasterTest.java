package tramontane.desktop.internal.icons;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every icon against the JDK's own drawing of the same outlines, at two scales. */
class RasterTest {

    static List<Path> icons() throws IOException {
        return DrawingTest.icons();
    }

    @ParameterizedTest
    @MethodSource("icons")
    void pixelsAreCoveredAsByTheJdk(Path file) throws IOException {
        Drawing drawing = Drawing.of(Files.readString(file));
        for (int side : new int[] {16, 32}) {
            byte[] cover = Raster.cover(drawing, side, 1.25);
            BufferedImage expected = new BufferedImage(side, side, BufferedImage.TYPE_INT_ARGB);
            Graphics2D graphics = expected.createGraphics();
            graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
            graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
            graphics.scale(side / 16.0, side / 16.0);
            graphics.setStroke(new BasicStroke(1.25f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
            for (Drawing.Shape shape : drawing.shapes()) {
                Path2D path = DrawingTest.outline(new Drawing(List.of(shape)));
                if (shape.fill()) {
                    graphics.fill(path);
                } else {
                    graphics.draw(path);
                }
            }
            graphics.dispose();
            double ours = 0;
            double theirs = 0;
            double apart = 0;
            for (int y = 0; y < side; y++) {
                for (int x = 0; x < side; x++) {
                    double there = (expected.getRGB(x, y) >>> 24) / 255.0;
                    double here = (cover[y * side + x] & 255) / 255.0;
                    ours += here;
                    theirs += there;
                    apart += Math.abs(here - there);
                }
            }
            assertEquals(theirs, ours, 0.12 * theirs + 1, () -> file + " covers as much");
            assertEquals(0, apart / (side * side), 0.05, () -> file + " lies in the same place");
        }
    }
}
