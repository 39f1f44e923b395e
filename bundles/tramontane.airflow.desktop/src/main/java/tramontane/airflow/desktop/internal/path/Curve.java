package tramontane.airflow.desktop.internal.path;

/**
 * A cubic Bézier curve, level at both ends.
 *
 * @param start  where it starts
 * @param first  its first control point
 * @param second its second control point
 * @param end    where it ends
 */
record Curve(Spot start, Spot first, Spot second, Spot end) {

    private static final double TURN = 70;

    /**
     * A level start and a level end.
     *
     * @param along 1 where air is drawn from left to right there, -1 where from right to left
     */
    static Curve level(Spot start, Spot end, int along) {
        double ahead = (end.x() - start.x()) * along;
        double handle = ahead > 0 ? ahead / 2 : TURN - ahead / 2;
        return new Curve(start, start.plus(handle * along, 0), end.plus(-handle * along, 0), end);
    }

    /** Whether it never turns back. */
    boolean onward() {
        return (end.x() - start.x()) * (first.x() - start.x()) > 0 && (second.x() - first.x()) * (end.x() - start.x()) >= -1e-9;
    }

    /** The point at a parameter from 0 to 1. */
    Spot at(double t) {
        double u = 1 - t;
        double a = u * u * u;
        double b = 3 * u * u * t;
        double c = 3 * u * t * t;
        double d = t * t * t;
        return new Spot(a * start.x() + b * first.x() + c * second.x() + d * end.x(), a * start.y() + b * first.y() + c * second.y() + d * end.y());
    }

    /** The direction at a parameter from 0 to 1, of length one. */
    Spot direction(double t) {
        double u = 1 - t;
        double x = 3 * u * u * (first.x() - start.x()) + 6 * u * t * (second.x() - first.x()) + 3 * t * t * (end.x() - second.x());
        double y = 3 * u * u * (first.y() - start.y()) + 6 * u * t * (second.y() - first.y()) + 3 * t * t * (end.y() - second.y());
        double length = Math.hypot(x, y);
        return length > 1e-9 ? new Spot(x / length, y / length) : new Spot(Math.signum(end.x() - start.x()) >= 0 ? 1 : -1, 0);
    }

    /** This curve moved up or down. */
    Curve moved(double dy) {
        return new Curve(start.plus(0, dy), first.plus(0, dy), second.plus(0, dy), end.plus(0, dy));
    }

    /** The same way back. */
    Curve back() {
        return new Curve(end, second, first, start);
    }

    /** About how long it is. */
    double length() {
        double sum = 0;
        Spot last = start;
        for (int i = 1; i <= 8; i++) {
            Spot next = at(i / 8.0);
            sum += last.distance(next);
            last = next;
        }
        return sum;
    }
}
