package tramontane.desktop.internal.icons;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Arc2D;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class DrawingTest {

    static Path2D outline(Drawing drawing) {
        Path2D path = new Path2D.Double();
        for (Drawing.Shape shape : drawing.shapes()) {
            for (Drawing.Step step : shape.steps()) {
                double[] p = step.points();
                switch (step.kind()) {
                    case 'M' -> path.moveTo(p[0], p[1]);
                    case 'L' -> path.lineTo(p[0], p[1]);
                    case 'C' -> path.curveTo(p[0], p[1], p[2], p[3], p[4], p[5]);
                    default -> path.closePath();
                }
            }
        }
        return path;
    }

    private static void same(Rectangle2D expected, Rectangle2D got, double within) {
        assertEquals(expected.getMinX(), got.getMinX(), within);
        assertEquals(expected.getMinY(), got.getMinY(), within);
        assertEquals(expected.getMaxX(), got.getMaxX(), within);
        assertEquals(expected.getMaxY(), got.getMaxY(), within);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "<path d=\"M2 3 L8 3 V9 h-6 z\"/> | 2 | 3 | 8 | 9",
        "<path d=\"m2 3 6 0 0 6\"/> | 2 | 3 | 8 | 9",
        "<rect x=\"1\" y=\"2\" width=\"10\" height=\"5\" rx=\"1\"/> | 1 | 2 | 11 | 7",
        "<circle cx=\"8\" cy=\"8\" r=\"5\"/> | 3 | 3 | 13 | 13",
        "<ellipse cx=\"8\" cy=\"8\" rx=\"5\" ry=\"2\"/> | 3 | 6 | 13 | 10",
        "<polyline points=\"1,1 4,6 9,2\"/> | 1 | 1 | 9 | 6",
        "<line x1=\"1\" y1=\"2\" x2=\"7\" y2=\"5\"/> | 1 | 2 | 7 | 5",
        "<path d=\"M3 8 A5 5 0 0 1 13 8\"/> | 3 | 3 | 13 | 8",
        "<path d=\"M3 8 A5 5 0 1 0 8 3\"/> | 3 | 3 | 13 | 13"})
    void shapesLieWhereTheyShould(String svg, double left, double top, double right, double bottom) {
        same(new Rectangle2D.Double(left, top, right - left, bottom - top), outline(Drawing.of(svg)).getBounds2D(), 0.01);
    }

    /** Arcs against the JDK's own, point by point. */
    @ParameterizedTest
    @CsvSource({"0, 90", "30, 200", "100, 355", "300, -120", "10, -300"})
    void arcsAreThoseOfTheJdk(double start, double extent) {
        Arc2D arc = new Arc2D.Double(2, 4, 12, 6, start, extent, Arc2D.OPEN);
        String svg = "<path d=\"M" + arc.getStartPoint().getX() + " " + arc.getStartPoint().getY() + " A6 3 0 "
                + (Math.abs(extent) > 180 ? 1 : 0) + " " + (extent < 0 ? 1 : 0) + " " + arc.getEndPoint().getX() + " "
                + arc.getEndPoint().getY() + "\"/>";
        same(flat(arc.getPathIterator(null, 1e-4)), flat(outline(Drawing.of(svg)).getPathIterator(null, 1e-4)), 0.01);
    }

    private static Rectangle2D flat(PathIterator line) {
        Path2D path = new Path2D.Double();
        path.append(line, false);
        return path.getBounds2D();
    }

    static List<Path> icons() throws IOException {
        try (var files = Files.walk(Path.of("src/main/resources"))) {
            return files.filter(file -> file.toString().endsWith(".svg")).toList();
        }
    }

    @ParameterizedTest
    @MethodSource("icons")
    void everyIconStaysOnItsGridAndShowsSomething(Path file) throws IOException {
        String svg = Files.readString(file);
        assertTrue(svg.contains("viewBox=\"0 0 16 16\""));
        Drawing drawing = Drawing.of(svg);
        assertFalse(drawing.shapes().isEmpty());
        Rectangle2D bounds = outline(drawing).getBounds2D();
        assertTrue(bounds.getMinX() >= 1 && bounds.getMinY() >= 1 && bounds.getMaxX() <= 15 && bounds.getMaxY() <= 15,
                () -> file + " lies in " + bounds);
    }

    @Test
    void aFillIsToldFromAStroke() {
        Drawing drawing = Drawing.of("<circle cx=\"8\" cy=\"8\" r=\"2\" fill=\"currentColor\"/><circle cx=\"8\" cy=\"8\" r=\"5\"/>");
        assertEquals(List.of(true, false), drawing.shapes().stream().map(Drawing.Shape::fill).toList());
    }
}
