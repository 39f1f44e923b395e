package tramontane.report;

import java.util.List;
import tramontane.analysis.Chart;

/**
 * A chart laid out on a canvas: what to draw, from back to front. Lengths in pixels of 1/96 inch from the upper left corner.
 *
 * @param width      of the canvas
 * @param height     of the canvas
 * @param background colour of it, 0xRRGGBB
 * @param plot       where the curves are; what is clipped is not drawn outside of it
 * @param items      what to draw
 */
public record Drawing(double width, double height, int background, Box plot, List<Item> items) {

    public Drawing {
        items = List.copyOf(items);
    }

    /** Something to draw. */
    public sealed interface Item permits Line, Area, Sign, Words {
    }

    /**
     * A line through points.
     *
     * @param points its points
     * @param colour 0xRRGGBB
     * @param width  its width
     * @param dashes lengths of strokes and gaps by turns; none for an unbroken line
     * @param clip   whether only what is in the plot is drawn
     */
    public record Line(Chart.Points points, int colour, double width, List<Double> dashes, boolean clip) implements Item {
        public Line {
            dashes = List.copyOf(dashes);
        }
    }

    /**
     * A filled area.
     *
     * @param points  its corners
     * @param colour  0xRRGGBB
     * @param opacity 0 to 1
     * @param clip    whether only what is in the plot is drawn
     */
    public record Area(Chart.Points points, int colour, double opacity, boolean clip) implements Item {
    }

    /**
     * The sign of a mark.
     *
     * @param x      its middle
     * @param y      its middle
     * @param radius its radius
     * @param shape  its shape
     * @param colour 0xRRGGBB
     */
    public record Sign(double x, double y, double radius, Chart.Shape shape, int colour) implements Item {
    }

    /**
     * Words in a line.
     *
     * @param text   the words
     * @param x      where they are anchored
     * @param y      their base line
     * @param size   height of the font
     * @param bold   whether they are bold
     * @param anchor which part of them is at x
     * @param turned whether they read upwards, turned about their anchor
     * @param colour 0xRRGGBB
     * @param halo   whether the background shines around them, as lines run behind
     */
    public record Words(String text, double x, double y, double size, boolean bold, Anchor anchor, boolean turned, int colour,
            boolean halo) implements Item {
    }

    /** Which part of a line of words is anchored. */
    public enum Anchor {
        /** Its beginning. */
        START,
        /** Its middle. */
        MIDDLE,
        /** Its end. */
        END
    }

    /**
     * A rectangle.
     *
     * @param left   left edge
     * @param top    upper edge
     * @param right  right edge
     * @param bottom lower edge
     */
    public record Box(double left, double top, double right, double bottom) {

        /** Whether two share some area. */
        public boolean overlaps(Box other) {
            return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
        }

        /** Whether another lies in it. */
        public boolean holds(Box other) {
            return left <= other.left && other.right <= right && top <= other.top && other.bottom <= bottom;
        }

        /** Whether it holds a point. */
        public boolean holds(double x, double y) {
            return x >= left && x <= right && y >= top && y <= bottom;
        }

        /** Its width. */
        public double width() {
            return right - left;
        }

        /** Its height. */
        public double height() {
            return bottom - top;
        }
    }
}
