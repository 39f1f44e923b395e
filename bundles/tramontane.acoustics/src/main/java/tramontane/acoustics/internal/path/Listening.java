package tramontane.acoustics.internal.path;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import tramontane.acoustics.Face;
import tramontane.acoustics.NoiseScene;
import tramontane.acoustics.NoiseScene.Around;
import tramontane.acoustics.NoiseScene.Stands;
import tramontane.acoustics.internal.NoiseSceneSection;
import tramontane.analysis.Amount;
import tramontane.analysis.Finding;
import tramontane.analysis.Sections;
import tramontane.model.Design;
import tramontane.physics.sound.Bands;
import tramontane.physics.sound.OpeningDirectivity;
import tramontane.physics.sound.Room;
import tramontane.physics.sound.Spreading;
import tramontane.physics.units.QuantityKind;

/**
 * What who listens gets of the sound power that leaves by an opening.
 *
 * <p>Directly Q n/(4πr²), and in a room 4/Rc besides. Q is the directivity of the opening alone, 1 where it radiates evenly all round:
 * that of an opening far from all walls ({@link OpeningDirectivity#MIDDLE}), since the face of a box is no wall at low frequency.
 * n counts the plane, once: 2 over a reflecting plane, and in a room for equipment on the floor or on a wall; 1 in a free field, and in a
 * room for equipment on a table or in a rack, where the sound from the floor is part of what the room throws back. Direct and reflected
 * sound do not interfere. r is measured from the middle of the face in which the opening sits, and is never so short that a hemisphere
 * of that radius would be smaller than the opening. Several points of one position are averaged by energy.
 */
public final class Listening {

    /** What the position is called that is assumed where a design names none. */
    public static final String ASSUMED_POSITION = "1 m";

    /** Where operators and bystanders are, ISO 7779 (from memory), m. */
    private static final double OPERATOR = 0.25;
    private static final double SEATED = 1.2;
    private static final double STANDING = 1.5;
    private static final double BYSTANDER = 1;
    private static final String ISO_7779 = "ISO 7779 (from memory)";

    private final ReferenceBox box;
    private final double planes;
    private final Optional<Room> room;
    private final List<Position> positions;
    private final List<Finding> findings;

    /**
     * Where somebody listens.
     *
     * @param id      its name
     * @param points  its points, at least one; their mean by energy counts
     * @param assumed whether the design names none, and it is assumed
     */
    public record Position(String id, List<Point> points, boolean assumed) {
        public Position {
            points = List.copyOf(points);
        }
    }

    private Listening(ReferenceBox box, double planes, Optional<Room> room, List<Position> positions, List<Finding> findings) {
        this.box = box;
        this.planes = planes;
        this.room = room;
        this.positions = List.copyOf(positions);
        this.findings = List.copyOf(findings);
    }

    /** Who listens to a design, by its noise section. */
    public static Listening of(Design design) {
        NoiseScene scene = Sections.decode(new NoiseSceneSection(), design).orElse(NoiseScene.NONE);
        List<Finding> findings = new ArrayList<>();
        ReferenceBox box = ReferenceBox.of(design.equipment(), scene.underside());
        if (design.equipment().width().isEmpty() || design.equipment().height().isEmpty() || design.equipment().depth().isEmpty()) {
            findings.add(Finding.note("", "the size of the equipment is not known; who listens is taken to be as far from one point, or"
                    + " from what is known of it").remedy("state width, height and depth of the equipment"));
        }
        if (scene.undersideAssumed()) {
            findings.add(Finding.note("", "how high the equipment hangs is not stated; its underside is taken to be ",
                    new Amount(scene.underside(), QuantityKind.LENGTH), " above the floor")
                    .remedy("state the height in the noise section of the design").source("assumed"));
        }
        Optional<Room> room = scene.space().around() == Around.ROOM ? room(scene.space()) : Optional.empty();
        if (scene.space().around() == Around.ROOM && room.isEmpty()) {
            findings.add(Finding.caution("", "the room is not known; a reflecting plane is counted in its place")
                    .remedy("state its length, width, height, and its absorption or reverberation time"));
        }
        boolean near = scene.stands() == Stands.FLOOR || scene.stands() == Stands.WALL;
        double planes = scene.space().around() == Around.FREE_FIELD || room.isPresent() && !near ? 1 : 2;
        return new Listening(box, planes, room, positions(scene, box, findings), findings);
    }

    private static Optional<Room> room(NoiseScene.Space space) {
        if (space.volume().isEmpty() || space.absorption().isEmpty() && space.reverberation().isEmpty()) {
            return Optional.empty();
        }
        double[] absorption = space.absorption().or(space::reverberation).orElseThrow().held();
        if (space.absorption().isEmpty()) {
            for (int third = 0; third < absorption.length; third++) {
                // below a certain time Sabine's formula asks for more than all
                absorption[third] = Math.min(1, Room.absorptionArea(space.volume().get(), absorption[third], NoiseSceneSection.SPEED)
                        / space.surface().get());
            }
        }
        return Optional.of(new Room(space.length().get(), space.width().get(), space.height().get(), absorption));
    }

    private static List<Position> positions(NoiseScene scene, ReferenceBox box, List<Finding> findings) {
        List<Position> positions = new ArrayList<>();
        for (NoiseScene.Position each : scene.positions()) {
            List<Point> points = switch (each.listener()) {
                case OPERATOR_SEATED -> List.of(new Point(0, OPERATOR, SEATED));
                case OPERATOR_STANDING -> List.of(new Point(0, OPERATOR, STANDING));
                case BYSTANDERS -> bystanders(scene, box);
                case POINT -> each.distance().map(box::inFront)
                        .or(() -> each.y().flatMap(y -> each.z().map(z -> new Point(each.x(), y, z))))
                        .map(List::of).orElse(List.of());
            };
            if (points.isEmpty()) {
                findings.add(Finding.caution("", "position " + each.id() + " has no place; nothing is computed for it")
                        .remedy("state its distance, or its coordinates"));
            } else {
                positions.add(new Position(each.id(), points, false));
            }
        }
        if (scene.positions().isEmpty()) {
            positions.add(new Position(ASSUMED_POSITION, bystanders(scene, box), true));
            findings.add(Finding.note("", "no position is named; bystanders 1 m from the equipment are counted").remedy("name positions in the noise section of the design").source(ISO_7779));
        }
        return positions;
    }

    /** Nobody stands behind what hangs on a wall. */
    private static List<Point> bystanders(NoiseScene scene, ReferenceBox box) {
        List<Point> points = new ArrayList<>();
        for (Face face : List.of(Face.FRONT, Face.REAR, Face.LEFT, Face.RIGHT)) {
            if (face != Face.REAR || scene.stands() != Stands.WALL) {
                points.add(box.beside(face, BYSTANDER, STANDING));
            }
        }
        return points;
    }

    /** Where somebody listens, in the order of the design. */
    public List<Position> positions() {
        return positions;
    }

    /**
     * Mean square of sound pressure over (20 µPa)² at a position for a sound power of 1 pW that leaves by an opening.
     *
     * @param opening  the opening
     * @param position the position
     * @return in each third, 1/m²
     */
    public double[] transfer(Opening opening, Position position) {
        double[] transfer = new double[Bands.THIRDS];
        for (Point point : position.points()) {
            add(opening, point, 1.0 / position.points().size(), transfer);
        }
        for (int third = 0; third < transfer.length && room.isPresent(); third++) {
            transfer[third] += room.get().reverberant(third);
        }
        return transfer;
    }

    /** How far the points of a position are from an opening, m; no less than lets a hemisphere about it be as large as itself. */
    public double[] distances(Opening opening, Position position) {
        return position.points().stream().mapToDouble(listener -> distance(opening, listener.minus(source(opening, listener)))).toArray();
    }

    /** The room that it stands in; empty where it stands in none that is known. */
    public Optional<Room> room() {
        return room;
    }

    private Point source(Opening opening, Point listener) {
        return opening.face().map(box::middle).orElseGet(() -> box.nearest(listener));
    }

    private static double distance(Opening opening, Point way) {
        return Math.max(way.length(), Math.sqrt(opening.area() / (2 * Math.PI)));
    }

    private void add(Opening opening, Point listener, double weight, double[] transfer) {
        Point way = listener.minus(source(opening, listener));
        double spread = weight * Spreading.factor(planes, distance(opening, way));
        double angle = opening.face().filter(face -> way.length() > 0)
                .map(face -> Math.acos(Math.clamp(ReferenceBox.normal(face).dot(way) / way.length(), -1, 1))).orElse(0.0);
        boolean directed = opening.directed() && opening.face().isPresent();
        for (int third = 0; third < transfer.length; third++) {
            transfer[third] += spread * (directed ? OpeningDirectivity.MIDDLE.factor(Bands.middle(third), opening.area(), angle) : 1);
        }
    }

    /** What was assumed of the place and of who listens. */
    public List<Finding> findings() {
        return findings;
    }

    /** What is assumed of openings: which of them sit nowhere. */
    public List<Finding> findings(Collection<Opening> openings) {
        List<String> nowhere = openings.stream().filter(opening -> opening.face().isEmpty()).map(Opening::id).toList();
        if (nowhere.isEmpty()) {
            return List.of();
        }
        boolean one = nowhere.size() == 1;
        return List.of(Finding.note(one ? nowhere.getFirst() : "", "in which face of the equipment " + listed(nowhere) + (one ? " sits" : " sit")
                + " is not stated; " + (one ? "its" : "their") + " sound is taken to leave, evenly all round, at the point nearest to who listens")
                .remedy("state the face in the noise section of " + (one ? nowhere.getFirst() : "each")).source("assumed, on the safe side"));
    }

    private static String listed(List<String> names) {
        return names.size() == 1 ? names.getFirst() : String.join(", ", names.subList(0, names.size() - 1)) + " and " + names.getLast();
    }
}
