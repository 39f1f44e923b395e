package tramontane.airflow.desktop.internal.path;

/**
 * An upright rectangle.
 *
 * @param x      left edge
 * @param y      top edge
 * @param width  not negative
 * @param height not negative
 */
record Box(double x, double y, double width, double height) {

    /** Nothing, nowhere. */
    static final Box EMPTY = new Box(0, 0, 0, 0);

    Box {
        if (!Double.isFinite(x) || !Double.isFinite(y) || !(width >= 0) || !(height >= 0) || width > 1e9 || height > 1e9) {
            throw new IllegalArgumentException("no box: " + x + ", " + y + ", " + width + " by " + height);
        }
    }

    /** A box around its middle. */
    static Box around(Spot middle, double width, double height) {
        return new Box(middle.x() - width / 2, middle.y() - height / 2, width, height);
    }

    double right() {
        return x + width;
    }

    double bottom() {
        return y + height;
    }

    Spot middle() {
        return new Spot(x + width / 2, y + height / 2);
    }

    boolean contains(Spot spot) {
        return spot.x() >= x && spot.x() <= right() && spot.y() >= y && spot.y() <= bottom();
    }

    /** Whether two boxes share more than an edge. */
    boolean overlaps(Box other) {
        return x < other.right() - 1e-6 && other.x < right() - 1e-6 && y < other.bottom() - 1e-6 && other.y < bottom() - 1e-6;
    }

    /** This box with a margin all round; a negative one makes it smaller, down to nothing. */
    Box grown(double margin) {
        double w = Math.max(0, width + 2 * margin);
        double h = Math.max(0, height + 2 * margin);
        return Box.around(middle(), w, h);
    }

    /** This box moved. */
    Box moved(double dx, double dy) {
        return new Box(x + dx, y + dy, width, height);
    }

    /** The least box around two. */
    Box with(Box other) {
        double left = Math.min(x, other.x);
        double top = Math.min(y, other.y);
        return new Box(left, top, Math.max(right(), other.right()) - left, Math.max(bottom(), other.bottom()) - top);
    }
}
