package tramontane.desktop.internal.icons;

import java.util.ArrayList;
import java.util.List;

/**
 * Turns a {@link Drawing} into how much of each pixel it covers. Pure, and the same on every system: what toolkits draw into images differs
 * with their scaling.
 */
public final class Raster {

    private static final int PIECES = 12;
    private static final double SIDE = 16;

    private Raster() {
    }

    /** A straight piece of an outline, on the grid. */
    private record Piece(double x1, double y1, double x2, double y2) {

        double distance(double x, double y) {
            double dx = x2 - x1;
            double dy = y2 - y1;
            double square = dx * dx + dy * dy;
            double along = square == 0 ? 0 : Math.clamp(((x - x1) * dx + (y - y1) * dy) / square, 0, 1);
            return Math.hypot(x - x1 - along * dx, y - y1 - along * dy);
        }

        /** Whether a ray from a point to the right crosses it. */
        boolean crosses(double x, double y) {
            return y1 > y != y2 > y && x < x1 + (y - y1) / (y2 - y1) * (x2 - x1);
        }
    }

    /**
     * The cover of each pixel, 0 to 255, row by row.
     *
     * @param drawing what to draw
     * @param side    how many pixels a side of the grid has
     * @param stroke  the weight of strokes, on the grid
     */
    public static byte[] cover(Drawing drawing, int side, double stroke) {
        double scale = side / SIDE;
        double[] cover = new double[side * side];
        for (Drawing.Shape shape : drawing.shapes()) {
            List<Piece> pieces = pieces(shape.steps());
            for (int row = 0; row < side; row++) {
                double y = (row + 0.5) / scale;
                for (int column = 0; column < side; column++) {
                    double x = (column + 0.5) / scale;
                    double nearest = Double.POSITIVE_INFINITY;
                    int crossed = 0;
                    for (Piece piece : pieces) {
                        nearest = Math.min(nearest, piece.distance(x, y));
                        crossed += shape.fill() && piece.crosses(x, y) ? 1 : 0;
                    }
                    double within = shape.fill() ? crossed % 2 == 1 ? nearest : -nearest : stroke / 2 - nearest;
                    int at = row * side + column;
                    cover[at] = Math.max(cover[at], Math.clamp(0.5 + within * scale, 0, 1));
                }
            }
        }
        byte[] bytes = new byte[cover.length];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = (byte) Math.round(255 * cover[i]);
        }
        return bytes;
    }

    private static List<Piece> pieces(List<Drawing.Step> steps) {
        List<Piece> pieces = new ArrayList<>();
        double x = 0;
        double y = 0;
        double startX = 0;
        double startY = 0;
        for (Drawing.Step step : steps) {
            double[] p = step.points();
            switch (step.kind()) {
                case 'M' -> {
                    startX = p[0];
                    startY = p[1];
                    x = startX;
                    y = startY;
                }
                case 'L' -> {
                    pieces.add(new Piece(x, y, p[0], p[1]));
                    x = p[0];
                    y = p[1];
                }
                case 'C' -> {
                    double fromX = x;
                    double fromY = y;
                    for (int i = 1; i <= PIECES; i++) {
                        double t = i / (double) PIECES;
                        double u = 1 - t;
                        double toX = u * u * u * fromX + 3 * u * u * t * p[0] + 3 * u * t * t * p[2] + t * t * t * p[4];
                        double toY = u * u * u * fromY + 3 * u * u * t * p[1] + 3 * u * t * t * p[3] + t * t * t * p[5];
                        pieces.add(new Piece(x, y, toX, toY));
                        x = toX;
                        y = toY;
                    }
                }
                default -> {
                    pieces.add(new Piece(x, y, startX, startY));
                    x = startX;
                    y = startY;
                }
            }
        }
        return pieces;
    }
}
