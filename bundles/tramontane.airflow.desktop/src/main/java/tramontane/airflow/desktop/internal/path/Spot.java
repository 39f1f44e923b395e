package tramontane.airflow.desktop.internal.path;

/**
 * A point of the picture.
 *
 * @param x along the flow
 * @param y downwards
 */
record Spot(double x, double y) {

    Spot {
        if (!Double.isFinite(x) || !Double.isFinite(y)) {
            throw new IllegalArgumentException("a spot is finite, got " + x + ", " + y);
        }
    }

    /** This spot moved. */
    Spot plus(double dx, double dy) {
        return new Spot(x + dx, y + dy);
    }

    /** How far another is away. */
    double distance(Spot other) {
        return Math.hypot(x - other.x, y - other.y);
    }
}
