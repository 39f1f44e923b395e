package tramontane.airflow.desktop.internal.path;

/**
 * Which part of a picture is seen.
 *
 * @param x      where the picture's origin lies in the window, pixels
 * @param y      where the picture's origin lies in the window, pixels
 * @param zoom   pixels per unit
 * @param width  of the window, pixels
 * @param height of the window, pixels
 */
record Viewport(double x, double y, double zoom, double width, double height) {

    /** The smallest zoom. */
    static final double LEAST = 0.08;
    /** The largest zoom. */
    static final double MOST = 4;
    private static final double MARGIN = 16;

    Viewport {
        zoom = Math.clamp(zoom, LEAST, MOST);
    }

    /** All of a picture in a window, no larger than it is. */
    static Viewport fit(Box bounds, double width, double height) {
        double zoom = Math.min(1, Math.min((width - 2 * MARGIN) / Math.max(1, bounds.width()), (height - 2 * MARGIN) / Math.max(1, bounds.height())));
        double kept = Math.clamp(zoom, LEAST, MOST);
        Spot middle = bounds.middle();
        return new Viewport(width / 2 - middle.x() * kept, height / 2 - middle.y() * kept, kept, width, height);
    }

    /** The part of the picture that is seen. */
    Box seen() {
        return new Box(-x / zoom, -y / zoom, Math.max(0, width) / zoom, Math.max(0, height) / zoom);
    }

    /** The point of the picture under a pixel. */
    Spot spot(double px, double py) {
        return new Spot((px - x) / zoom, (py - y) / zoom);
    }

    /** Zoomed by a factor about a pixel, which keeps its place. */
    Viewport zoomed(double factor, double px, double py) {
        double changed = Math.clamp(zoom * factor, LEAST, MOST);
        return new Viewport(px - (px - x) * changed / zoom, py - (py - y) * changed / zoom, changed, width, height);
    }

    /** Moved by pixels. */
    Viewport panned(double dx, double dy) {
        return new Viewport(x + dx, y + dy, zoom, width, height);
    }

    /** The same part in a window of another size. */
    Viewport sized(double changedWidth, double changedHeight) {
        return new Viewport(x, y, zoom, changedWidth, changedHeight);
    }

    /** Moved as little as is needed to see a box. */
    Viewport showing(Box box) {
        Box there = seen().grown(-MARGIN / zoom);
        double dx = box.x() < there.x() ? there.x() - box.x() : box.right() > there.right() ? Math.max(there.right() - box.right(), there.x() - box.x()) : 0;
        double dy = box.y() < there.y() ? there.y() - box.y() : box.bottom() > there.bottom() ? Math.max(there.bottom() - box.bottom(), there.y() - box.y()) : 0;
        return panned(dx * zoom, dy * zoom);
    }

    /** Moved back where the picture would be out of sight. */
    Viewport near(Box bounds) {
        double left = bounds.x() * zoom + x;
        double top = bounds.y() * zoom + y;
        double right = bounds.right() * zoom + x;
        double bottom = bounds.bottom() * zoom + y;
        double keep = 4 * MARGIN;
        double dx = right < keep ? keep - right : left > width - keep ? width - keep - left : 0;
        double dy = bottom < keep ? keep - bottom : top > height - keep ? height - keep - top : 0;
        return panned(dx, dy);
    }
}
