package tramontane.acoustics.internal.path;

/**
 * A place.
 *
 * @param x m to the right, as seen from the front of the equipment
 * @param y m from its front face towards the operator
 * @param z m above the floor
 */
public record Point(double x, double y, double z) {

    Point minus(Point other) {
        return new Point(x - other.x, y - other.y, z - other.z);
    }

    double length() {
        return Math.sqrt(x * x + y * y + z * z);
    }

    double dot(Point other) {
        return x * other.x + y * other.y + z * other.z;
    }
}
