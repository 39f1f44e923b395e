package tramontane.acoustics.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.osgi.service.component.annotations.Component;
import tramontane.acoustics.MoverNoise;
import tramontane.acoustics.NoiseScene;
import tramontane.acoustics.NoiseScene.Around;
import tramontane.acoustics.NoiseScene.Listener;
import tramontane.acoustics.NoiseScene.Stands;
import tramontane.analysis.SectionType;
import tramontane.model.Design;
import tramontane.model.Equipment;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Quantities;
import tramontane.model.Quantity;
import tramontane.model.Range;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.model.Written;
import tramontane.physics.sound.Room;
import tramontane.physics.units.QuantityKind;

/** Where the equipment stands and who listens. */
@Component(service = SectionType.class)
public final class NoiseSceneSection implements SectionType<NoiseScene> {

    /** Speed of sound at 20 °C, m/s. */
    public static final double SPEED = 343.2;

    private static final Form SPACE = Form.of("space", "What surrounds the equipment.",
            Field.choice("kind", "kind", Around.words(), "A free field reflects nothing; the reflecting plane is the floor, or the wall"
                    + " that the equipment hangs on; a room adds its reverberation.").standard(Around.REFLECTING_PLANE.word()),
            Field.amount("length", "length", QuantityKind.LENGTH, Range.POSITIVE, "Length of the room."),
            Field.amount("width", "width", QuantityKind.LENGTH, Range.POSITIVE, "Width of the room."),
            Field.amount("height", "height", QuantityKind.LENGTH, Range.POSITIVE, "Height of the room."),
            Field.amounts("absorption", "absorption", QuantityKind.FRACTION, Range.PART_OF_ONE, 1,
                    "Mean absorption coefficient of the surfaces of the room, per band or one for all. Below the lowest band and above the"
                            + " highest the nearest counts."),
            Field.amounts("reverberationTime", "reverberation time", QuantityKind.TIME, Range.POSITIVE, 1,
                    "Reverberation time of the room, per band or one for all, instead of the absorption."),
            BandFields.BANDS, BandFields.LOWEST_BAND);

    private static final Form POSITION = Form.of("position", "Where somebody listens.",
            Field.words("id", "name", "Its name, unique among the positions.").mandatory(),
            Field.choice("kind", "kind", Listener.words(), "Operator: 0.25 m in front of the equipment, 1.20 m above the floor seated,"
                    + " 1.50 m standing. Bystanders: the mean of four points 1 m from it, 1.50 m high (ISO 7779, from memory)."
                    + " Point: as stated.")
                    .standard(Listener.POINT.word()),
            Field.amount("x", "to the right", QuantityKind.LENGTH, Range.ANY,
                    "Of a point: to the right of the middle, as seen from the front.")
                    .standard("0 m"),
            Field.amount("y", "in front", QuantityKind.LENGTH, Range.ANY,
                    "Of a point: from the front face towards the operator; below zero beside and behind the equipment."),
            Field.amount("z", "above the floor", QuantityKind.LENGTH, Range.NOT_NEGATIVE, "Of a point: height above the floor."),
            Field.amount("distance", "distance", QuantityKind.LENGTH, Range.POSITIVE,
                    "Of a point, instead of the three: how far it is straight in front of the middle of the front face."));

    private static final Form BACKGROUND = Form.of("background", "Noise that is there without the equipment.",
            Field.amounts("levels", "band levels", QuantityKind.LEVEL, Range.between(-50, 150), 2, "Sound pressure level of each band."),
            BandFields.BANDS, BandFields.LOWEST_BAND,
            Field.amount("weighted", "A-weighted level", QuantityKind.LEVEL, Range.between(-50, 150),
                    "A-weighted sound pressure level, instead of band levels."));

    private static final Form DECLARATION = Form.of("declaration", "What a declaration of noise by ISO 9296 needs.",
            Field.amount("reproducibility", "spread of reproducibility", QuantityKind.LEVEL, Range.between(0, 20),
                    "Standard deviation of what different laboratories measure.").standard("1.5 dB"),
            Field.amount("production", "spread of production", QuantityKind.LEVEL, Range.between(0, 20),
                    "Standard deviation of what is made.").mandatory());

    private static final Form FORM = Form.of(MoverNoise.SECTION, "Where the equipment stands and who listens.",
            Field.part("space", "space", SPACE, "What surrounds the equipment; a reflecting plane where not given."),
            Field.choice("stands", "stands", Stands.words(), "What it stands on: a table is 0.75 m high (ISO 7779, from memory); on a wall"
                    + " and in a rack its underside is taken to be 1 m above the floor where the height is not given.")
                    .standard(Stands.FLOOR.word()),
            Field.amount("height", "height", QuantityKind.LENGTH, Range.NOT_NEGATIVE, "Height of its underside above the floor."),
            Field.parts("positions", "positions", POSITION, "Where somebody listens; bystanders where not given."),
            Field.part("background", "background", BACKGROUND, "Noise that is there without the equipment."),
            Field.part("declaration", "declaration", DECLARATION, "What a declaration of noise needs."));

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Set<Owner> owners() {
        return Set.of(Owner.DESIGN);
    }

    @Override
    public NoiseScene decode(Values v) {
        return new NoiseScene(v.part("space").map(NoiseSceneSection::space).orElse(NoiseScene.Space.PLANE),
                named(Stands.values(), Stands::word, v.text("stands")), si(v, "height"),
                v.parts("positions").stream().map(NoiseSceneSection::position).toList(),
                v.part("background").map(each -> new NoiseScene.Background(BandFields.read(each, "levels"), si(each, "weighted")))
                        .filter(each -> each.levels().isPresent() || each.weighted().isPresent()),
                v.part("declaration").map(each -> new NoiseScene.Declaration(each.si("reproducibility"), each.si("production"))));
    }

    private static NoiseScene.Space space(Values v) {
        return new NoiseScene.Space(named(Around.values(), Around::word, v.text("kind")), si(v, "length"), si(v, "width"), si(v, "height"),
                BandFields.read(v, "absorption"), BandFields.read(v, "reverberationTime"));
    }

    private static NoiseScene.Position position(Values v) {
        return new NoiseScene.Position(v.text("id"), named(Listener.values(), Listener::word, v.text("kind")), v.si("x"), si(v, "y"),
                si(v, "z"), si(v, "distance"));
    }

    private static <T> T named(T[] all, Function<T, String> word, String name) {
        return Arrays.stream(all).filter(each -> word.apply(each).equals(name)).findFirst().orElseThrow();
    }

    private static Optional<Double> si(Values values, String field) {
        return PassageNoiseSection.si(values, field);
    }

    @Override
    public List<Problem> check(Values values, Design design, String place) {
        List<Problem> problems = new ArrayList<>(check(values, place));
        Equipment box = design.equipment();
        Optional<Double> underside = values.unreadable("height") || values.unreadable("stands") ? Optional.empty()
                : si(values, "height").or(() -> Optional.of(named(Stands.values(), Stands::word, values.text("stands")).height()));
        List<Values> positions = values.parts("positions");
        Optional<Values> room = values.part("space").filter(space -> space.text("kind").equals(Around.ROOM.word()));
        boolean holds = room.isEmpty() || holds(room.get(), box, underside, Problem.place(place, "space"), problems);
        for (int i = 0; i < positions.size(); i++) {
            if (Stream.of("kind", "x", "y", "z", "distance").anyMatch(positions.get(i)::unreadable)) {
                continue;
            }
            NoiseScene.Position position = position(positions.get(i));
            if (underside.isPresent() && inside(position, box, underside.get())) {
                problems.add(Problem.error(at(place, i), "lies inside of the equipment; expected a point outside of it"));
            } else if (room.isPresent() && position.listener() == Listener.POINT) {
                outside(room.get(), position, box, holds, at(place, i), problems);
            }
        }
        return problems;
    }

    /** Whether the room has a place for the equipment on its floor; nothing is known of where it stands. */
    private static boolean holds(Values room, Equipment box, Optional<Double> underside, String place, List<Problem> problems) {
        Optional<Double> top = underside.flatMap(under -> box.height().map(high -> under + high.si()));
        if (top.isPresent() && si(room, "height").filter(high -> high < top.get()).isPresent()) {
            problems.add(Problem.caution(Problem.place(place, "height"), "is less than the height of the top of the equipment above the"
                    + " floor, " + metres(top.get()) + "; expected a room that holds it"));
        }
        double width = size(box.width());
        double depth = size(box.depth());
        if (fits(room, width, depth)) {
            return true;
        }
        problems.add(Problem.caution(place, "is " + floor(room) + " large, too small for the equipment, " + metres(width) + " wide and "
                + metres(depth) + " deep; expected a room that holds it"));
        return false;
    }

    private static void outside(Values room, NoiseScene.Position p, Equipment box, boolean holds, String place, List<Problem> problems) {
        if (p.z().isPresent() && si(room, "height").filter(high -> high < p.z().get()).isPresent()) {
            problems.add(Problem.caution(place, "lies above the ceiling, which is " + metres(si(room, "height").get())
                    + " high; expected a point in the room"));
        }
        double y = p.distance().or(p::y).orElse(0.0);
        double side = size(box.width()) / 2;
        if (holds && !fits(room, Math.max(side, p.x()) - Math.min(-side, p.x()), Math.max(0, y) - Math.min(-size(box.depth()), y))) {
            problems.add(Problem.caution(place, "lies outside of the room, " + floor(room) + " large, wherever along its walls the"
                    + " equipment stands; expected a point in the room"));
        }
    }

    /** Whether so much fits along the walls of a room, one way or the other; true where its sizes are not known. */
    private static boolean fits(Values room, double across, double along) {
        Optional<Double> length = si(room, "length");
        Optional<Double> width = si(room, "width");
        return length.isEmpty() || width.isEmpty() || Math.max(across, along) <= Math.max(length.get(), width.get())
                && Math.min(across, along) <= Math.min(length.get(), width.get());
    }

    private static String floor(Values room) {
        return metres(room.si("length")) + " by " + metres(room.si("width"));
    }

    private static double size(Optional<Quantity> size) {
        return size.map(Quantity::si).orElse(0.0);
    }

    private static String metres(double length) {
        return Math.round(1000 * length) / 1000.0 + " m";
    }

    private static boolean inside(NoiseScene.Position p, Equipment box, double underside) {
        if (p.listener() != Listener.POINT || p.y().isEmpty() || p.z().isEmpty() || box.width().isEmpty() || box.height().isEmpty()
                || box.depth().isEmpty()) {
            return false;
        }
        return Math.abs(p.x()) < box.width().get().si() / 2 && p.y().get() < 0 && p.y().get() > -box.depth().get().si()
                && p.z().get() > underside && p.z().get() < underside + box.height().get().si();
    }

    @Override
    public List<Problem> check(Values values, String place) {
        List<Problem> problems = new ArrayList<>();
        values.part("space").ifPresent(space -> checkSpace(space, Problem.place(place, "space"), problems));
        Set<String> names = new HashSet<>();
        List<Values> positions = values.parts("positions");
        for (int i = 0; i < positions.size(); i++) {
            String name = positions.get(i).text("id");
            if (!name.isEmpty() && !names.add(name)) {
                problems.add(Problem.error(at(place, i) + ".id", '"' + name + "\" is there twice; expected each name once"));
            }
            checkPosition(positions.get(i), at(place, i), problems);
        }
        values.part("background").ifPresent(background -> {
            String at = Problem.place(place, "background");
            BandFields.check(background, at, problems, "levels");
            if (background.ifQuantities("levels").map(Quantities::written).filter(each -> BandFields.weighted(each, false)).isPresent()) {
                problems.add(Problem.error(Problem.place(at, "levels"), "are A-weighted; expected levels without weighting"));
            }
            boolean levels = stands(background, "levels");
            if (levels == stands(background, "weighted")) {
                problems.add(levels ? Problem.error(at, "has levels and weighted; expected one of them")
                        : Problem.missing(Problem.place(at, "weighted"), "; expected the A-weighted level, or levels of bands instead"));
            }
        });
        return problems;
    }

    private static String at(String place, int position) {
        return Problem.place(place, "positions") + "[" + position + "]";
    }

    /** Whether a field is written, if only wrongly: that has been said, and it is not missing. */
    private static boolean stands(Values values, String field) {
        return values.has(field) || values.unreadable(field);
    }

    private static void checkSpace(Values space, String place, List<Problem> problems) {
        if (space.unreadable("kind")) {
            return;
        }
        List<String> sizes = List.of("length", "width", "height");
        if (!space.text("kind").equals(Around.ROOM.word())) {
            for (String field : List.of("length", "width", "height", "absorption", "reverberationTime", "bands", "lowestBand")) {
                if (space.has(field)) {
                    problems.add(Problem.caution(Problem.place(place, field), "is not used; expected where kind is room"));
                }
            }
            return;
        }
        for (String field : sizes) {
            if (!stands(space, field)) {
                problems.add(Problem.missing(Problem.place(place, field), "; expected the " + field + " of the room"));
            }
        }
        if (stands(space, "absorption") && stands(space, "reverberationTime")) {
            problems.add(Problem.error(place, "has absorption and reverberationTime; expected one of them"));
        } else if (!stands(space, "absorption") && !stands(space, "reverberationTime")) {
            problems.add(Problem.missing(Problem.place(place, "absorption"), "; expected the mean absorption of the room, or its"
                    + " reverberationTime instead"));
        }
        BandFields.check(space, place, problems, "absorption", "reverberationTime");
        NoiseScene.Space read = space(space);
        if (read.volume().isPresent() && read.reverberation().isPresent()) {
            // Sabine's formula is the same for the time of an area as for the area of a time
            double least = Room.absorptionArea(read.volume().get(), read.surface().get(), SPEED);
            if (read.reverberation().get().values().stream().anyMatch(time -> time < least)) {
                problems.add(Problem.error(Problem.place(place, "reverberationTime"), "is shorter than where all sides take up all sound, "
                        + Math.round(1000 * least) + " ms; expected longer times"));
            }
        }
    }

    private static void checkPosition(Values position, String place, List<Problem> problems) {
        if (position.unreadable("kind")) {
            return;
        }
        boolean point = position.text("kind").equals(Listener.POINT.word());
        List<String> coordinates = List.of("x", "y", "z");
        if (!point) {
            for (String field : List.of("x", "y", "z", "distance")) {
                if (position.has(field)) {
                    problems.add(Problem.caution(Problem.place(place, field), "is not used; expected where kind is point"));
                }
            }
        } else if (stands(position, "distance") && coordinates.stream().anyMatch(each -> stands(position, each))) {
            problems.add(Problem.error(place, "has a distance and coordinates; expected one of both"));
        } else if (!stands(position, "distance") && coordinates.stream().noneMatch(each -> stands(position, each))) {
            problems.add(Problem.missing(Problem.place(place, "distance"), "; expected the distance of the point, or x, y and z instead"));
        } else if (!stands(position, "distance")) {
            for (String field : List.of("y", "z")) {
                if (!stands(position, field)) {
                    problems.add(Problem.missing(Problem.place(place, field), "; expected all coordinates of the point, or its distance"));
                }
            }
        }
    }

    @Override
    public Value.Tree encode(NoiseScene scene) {
        return new Written().part("space", written(scene.space())).text("stands", scene.stands().word()).number("height", scene.height())
                .parts("positions", scene.positions().stream().map(NoiseSceneSection::written).toList())
                .part("background", scene.background().map(each -> BandFields.write(new Written(), "levels", each.levels())
                        .number("weighted", each.weighted()).tree()).orElse(Value.Tree.EMPTY))
                .part("declaration", scene.declaration().map(each -> new Written().number("reproducibility", each.reproducibility())
                        .number("production", each.production()).tree()).orElse(Value.Tree.EMPTY)).tree();
    }

    private static Value.Tree written(NoiseScene.Space space) {
        Written written = new Written().text("kind", space.around().word()).number("length", space.length()).number("width", space.width())
                .number("height", space.height());
        return BandFields.write(BandFields.write(written, "absorption", space.absorption()), "reverberationTime", space.reverberation())
                .tree();
    }

    private static Value.Tree written(NoiseScene.Position position) {
        Written written = new Written().text("id", position.id()).text("kind", position.listener().word());
        if (position.x() != 0) {
            written.number("x", position.x());
        }
        return written.number("y", position.y()).number("z", position.z()).number("distance", position.distance()).tree();
    }
}
