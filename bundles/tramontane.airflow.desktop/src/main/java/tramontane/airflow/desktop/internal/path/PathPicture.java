package tramontane.airflow.desktop.internal.path;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tramontane.model.Design;
import tramontane.model.FailedMover;
import tramontane.physics.units.UnitSystem;

/**
 * The picture of an air path: what to draw where, without a display and without a colour.
 *
 * <p>A tint is a place on the scale of the {@link Legend}, 0 at its lower end and 1 at its upper; empty where nothing is known.
 *
 * @param bounds   all that is drawn
 * @param source   outside at the left
 * @param sink     outside at the right
 * @param bays     the bays
 * @param ribbons  the air in each passage, in the order of the design
 * @param joints   the passages themselves, in the order of the design
 * @param legend   what colours say; empty where nothing is solved
 * @param caseId   the case that is shown
 * @param solved   whether there are values
 * @param stale    whether the values belong to an earlier state of the design
 */
record PathPicture(Box bounds, Bar source, Bar sink, List<BayShape> bays, List<Ribbon> ribbons, List<Joint> joints,
        Optional<Legend> legend, String caseId, boolean solved, boolean stale) {

    /** How a line of text is meant. */
    enum Tone {
        /** As it is. */
        PLAIN,
        /** Said quietly. */
        QUIET,
        /** What should be seen: failed, reverse. */
        CAUTION
    }

    /**
     * A line of text.
     *
     * @param text what it says, already cut to its room
     * @param face how it is written
     * @param tone how it is meant
     * @param box  where; the text stands in its middle
     */
    record Line(String text, Measure.Face face, Tone tone, Box box) {
    }

    /**
     * Outside, at one edge of the picture.
     *
     * @param box   its place
     * @param tint  its air
     * @param lines its texts
     */
    record Bar(Box box, OptionalDouble tint, List<Line> lines) {
        Bar {
            lines = List.copyOf(lines);
        }
    }

    /**
     * A bay.
     *
     * @param id      its id
     * @param box     its place
     * @param tint    its air
     * @param missing whether passages name it and the design does not have it
     * @param pinned  whether a user put it there
     * @param lines   its texts
     */
    record BayShape(String id, Box box, OptionalDouble tint, boolean missing, boolean pinned, List<Line> lines) {
        BayShape {
            lines = List.copyOf(lines);
        }
    }

    /**
     * The air in a passage.
     *
     * @param passage number of the passage in the design
     * @param width   its width
     * @param known   whether the width says anything
     * @param reverse whether air goes against the direction in which the passage is written
     * @param halves  from the first bay to the joint, from there to the second bay
     * @param marks   heads that show where the air goes
     * @param hatches strokes across it where it runs in reverse
     */
    record Ribbon(int passage, double width, boolean known, boolean reverse, List<Half> halves, List<Mark> marks, List<Stroke> hatches) {
        Ribbon {
            halves = List.copyOf(halves);
            marks = List.copyOf(marks);
            hatches = List.copyOf(hatches);
        }

        /** How far a point is from the middle of the ribbon, at most its reach; infinite beyond. */
        double distance(Spot spot, double reach) {
            double least = Double.POSITIVE_INFINITY;
            for (Half half : halves) {
                for (Curve curve : half.spine()) {
                    double left = Math.min(curve.start().x(), curve.end().x());
                    double right = Math.max(curve.start().x(), curve.end().x());
                    boolean far = curve.onward() && (spot.x() < left - reach || spot.x() > right + reach);
                    for (int i = 0; !far && i <= 24; i++) {
                        least = Math.min(least, spot.distance(curve.at(i / 24.0)));
                    }
                }
            }
            return least <= reach ? least : Double.POSITIVE_INFINITY;
        }
    }

    /**
     * Half a ribbon.
     *
     * @param spine its middle
     * @param width its width
     * @param start tint at its start
     * @param end   tint at its end
     */
    record Half(List<Curve> spine, double width, OptionalDouble start, OptionalDouble end) {
        Half {
            spine = List.copyOf(spine);
        }
    }

    /**
     * An arrow head.
     *
     * @param tip       its tip
     * @param direction where it points, of length one
     * @param size      its length
     */
    record Mark(Spot tip, Spot direction, double size) {
    }

    /** A straight stroke. */
    record Stroke(Spot from, Spot to) {
    }

    /**
     * A passage: a named joint on its ribbon.
     *
     * @param passage number of the passage in the design
     * @param box     all of it
     * @param collar  what stands across the ribbon
     * @param bank    whether it holds movers
     * @param cells   its movers, where it holds some
     * @param lines   its texts
     */
    record Joint(int passage, Box box, Box collar, boolean bank, List<Cell> cells, List<Line> lines) {
        Joint {
            cells = List.copyOf(cells);
            lines = List.copyOf(lines);
        }
    }

    /**
     * A position of a bank.
     *
     * @param position counted from 1; 0 where one cell stands for all of a bank too large to draw
     * @param box      its place
     * @param failed   how its mover has failed, if it has
     * @param reverse  whether air goes backwards through it
     * @param along    1 where the bank blows from left to right in the picture, -1 where from right to left
     */
    record Cell(int position, Box box, Optional<FailedMover.State> failed, boolean reverse, int along) {
    }

    /**
     * What colours say.
     *
     * @param by    the quantity
     * @param title its name and unit
     * @param ticks values along the scale
     */
    record Legend(ColourBy by, String title, List<Tick> ticks) {
        Legend {
            ticks = List.copyOf(ticks);
        }
    }

    /**
     * A value on the scale.
     *
     * @param at    0 at its lower end, 1 at its upper
     * @param label the number
     */
    record Tick(double at, String label) {
    }

    PathPicture {
        bays = List.copyOf(bays);
        ribbons = List.copyOf(ribbons);
        joints = List.copyOf(joints);
    }

    /**
     * Draws a picture.
     *
     * @param design    the design
     * @param graph     its graph
     * @param placement a layout that {@linkplain Placement#fits fits} the graph
     * @param values    the air of the case in front
     * @param by        what colours say
     * @param units     in which numbers are shown
     * @param measure   how large text is
     */
    static PathPicture of(Design design, PathGraph graph, Placement placement, AirValues values, ColourBy by, UnitSystem units,
            Measure measure) {
        return new PathSketch(design, graph, placement, values, by, units, measure).picture();
    }
}
