package tramontane.acoustics.internal.path;

import tramontane.acoustics.Face;
import tramontane.model.Equipment;
import tramontane.model.Quantity;

/**
 * The smallest box around the equipment, as it stands: x to the right as seen from the front, y from the front face towards the
 * operator, z up from the floor, the origin on the floor below the middle of the front face. A size that is not stated is 0.
 *
 * @param width     along x, m
 * @param height    along z, m
 * @param depth     along y, m
 * @param underside height of its underside, m
 */
record ReferenceBox(double width, double height, double depth, double underside) {

    static ReferenceBox of(Equipment equipment, double underside) {
        return new ReferenceBox(equipment.width().map(Quantity::si).orElse(0.0), equipment.height().map(Quantity::si).orElse(0.0),
                equipment.depth().map(Quantity::si).orElse(0.0), underside);
    }

    private double middle() {
        return underside + height / 2;
    }

    /** A point straight in front of the middle of the front face. */
    Point inFront(double distance) {
        return new Point(0, distance, middle());
    }

    /** The middle of a face. */
    Point middle(Face face) {
        return switch (face) {
            case FRONT -> new Point(0, 0, middle());
            case REAR -> new Point(0, -depth, middle());
            case LEFT -> new Point(-width / 2, -depth / 2, middle());
            case RIGHT -> new Point(width / 2, -depth / 2, middle());
            case TOP -> new Point(0, -depth / 2, underside + height);
            case BOTTOM -> new Point(0, -depth / 2, underside);
        };
    }

    /** The outward normal of a face. */
    static Point normal(Face face) {
        return switch (face) {
            case FRONT -> new Point(0, 1, 0);
            case REAR -> new Point(0, -1, 0);
            case LEFT -> new Point(-1, 0, 0);
            case RIGHT -> new Point(1, 0, 0);
            case TOP -> new Point(0, 0, 1);
            case BOTTOM -> new Point(0, 0, -1);
        };
    }

    /** Its point that is nearest to another. */
    Point nearest(Point to) {
        return new Point(Math.clamp(to.x(), -width / 2, width / 2), Math.clamp(to.y(), -depth, 0),
                Math.clamp(to.z(), underside, underside + height));
    }

    /** Somebody beside one of its four sides, as far from it and as high as that. */
    Point beside(Face face, double distance, double high) {
        Point side = middle(face);
        Point normal = normal(face);
        return new Point(side.x() + distance * normal.x(), side.y() + distance * normal.y(), high);
    }
}
