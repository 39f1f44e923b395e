package tramontane.thermal.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.SectionType;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Quantity;
import tramontane.model.Range;
import tramontane.model.Value;
import tramontane.model.Values;
import tramontane.physics.units.QuantityKind;

/** What surrounds the air of a bay: how wide its way is, what stands in it, its walls. */
@Component(service = SectionType.class)
public final class EnclosureSection implements SectionType<EnclosureSection.Enclosure> {

    /** The section's name. */
    public static final String NAME = "enclosure";

    /** Which way a wall looks. */
    public enum Facing {
        /** An upright wall. */
        SIDE("side"),
        /** A lid. */
        UP("up"),
        /** A floor with free air below it. */
        DOWN("down");

        private final String word;

        Facing(String word) {
            this.word = word;
        }

        static Facing named(String word) {
            return List.of(values()).stream().filter(each -> each.word.equals(word)).findFirst().orElse(SIDE);
        }
    }

    /**
     * One wall to outside.
     *
     * @param area       m²
     * @param facing     which way it looks
     * @param height     length along which air rises on it; of a lid or floor area over perimeter, m
     * @param resistance thermal resistance of the sheet per area, m² K/W
     * @param emissivity of its outer face
     * @param absorptance of its outer face for sunshine
     * @param sunlit     share of the irradiance that falls on it
     */
    public record Wall(double area, Facing facing, double height, double resistance, double emissivity, double absorptance,
            double sunlit) {
    }

    /**
     * A bay's surroundings.
     *
     * @param flowArea           free cross-section of the way that air takes through it, m²
     * @param chassisCapacity    heat capacity of what stands in its air and gives off no heat of its own, J/K
     * @param chassisConductance heat that goes between it and the air per kelvin, W/K
     * @param walls              walls to outside
     */
    public record Enclosure(Optional<Quantity> flowArea, Optional<Quantity> chassisCapacity,
            Optional<Quantity> chassisConductance, List<Wall> walls) {
        public Enclosure {
            walls = List.copyOf(walls);
        }

        /** Of which nothing is said. */
        public static final Enclosure NONE = new Enclosure(Optional.empty(), Optional.empty(), Optional.empty(), List.of());
    }

    private static final QuantityKind CONDUCTANCE = new QuantityKind("thermal conductance", "W/K");

    private static final Form WALL = Form.of("wall", "A wall of a bay with the air outside behind it.",
            Field.amount("area", "area", QuantityKind.AREA, Range.POSITIVE, "Area that has air on both sides.").mandatory(),
            Field.choice("facing", "facing", List.of("side", "up", "down"), "Which way its outer face looks.").standard("side"),
            Field.amount("height", "height", QuantityKind.LENGTH, Range.POSITIVE,
                    "Height of an upright wall; of a lid or floor area over perimeter. The side of a square of the same area, or a"
                            + " quarter of it for a lid or floor, where not given."),
            Field.amount("thickness", "thickness", QuantityKind.LENGTH, Range.POSITIVE,
                    "Thickness of the sheet, with its conductivity; a sheet of metal hardly matters."),
            Field.amount("conductivity", "conductivity", QuantityKind.CONDUCTIVITY, Range.POSITIVE, "Conductivity of the sheet."),
            Field.amount("emissivity", "emissivity", QuantityKind.FRACTION, Range.SHARE,
                    "Emissivity of the outer face: some 0.9 painted, 0.1 bare metal.").standard(0.9),
            Field.amount("absorptance", "absorptance", QuantityKind.FRACTION, Range.SHARE,
                    "Part of sunshine that the outer face takes up: some 0.2 to 0.3 white, 0.9 and more dark.").standard(0.7),
            Field.amount("sunlit", "sunlit", QuantityKind.FRACTION, Range.SHARE,
                    "Part of the condition's irradiance that falls on it, its slant to the sun included.").standard(0));

    private static final Form FORM = Form.of(NAME, "What surrounds the air of a bay.",
            Field.amount("flowArea", "flow area", QuantityKind.AREA, Range.POSITIVE,
                    "Free cross-section of the way that air takes through the bay, for the velocity at what stands in it."),
            Field.amount("chassisHeatCapacity", "heat capacity of the chassis", QuantityKind.HEAT_CAPACITY, Range.POSITIVE,
                    "Heat capacity of what stands in its air and gives off no heat of its own, for temperatures in time."),
            Field.amount("chassisConductance", "conductance of the chassis", CONDUCTANCE, Range.POSITIVE,
                    "Heat that goes between it and the air per kelvin, W/K: coefficient times surface."),
            Field.parts("walls", "walls", WALL, "Walls to outside that heat goes through; none where not given."));

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Set<Owner> owners() {
        return Set.of(Owner.BAY);
    }

    @Override
    public List<Problem> check(Values values, String place) {
        List<Problem> problems = new ArrayList<>();
        if (values.has("chassisHeatCapacity") != values.has("chassisConductance")) {
            problems.add(Problem.error(place, "has " + (values.has("chassisHeatCapacity") ? "chassisHeatCapacity without chassisConductance"
                    : "chassisConductance without chassisHeatCapacity") + "; expected both or neither"));
        }
        List<Values> walls = values.parts("walls");
        for (int i = 0; i < walls.size(); i++) {
            if (walls.get(i).has("thickness") != walls.get(i).has("conductivity")) {
                problems.add(Problem.error(Problem.place(place, "walls[" + i + "]"), "has "
                        + (walls.get(i).has("thickness") ? "thickness without conductivity" : "conductivity without thickness")
                        + "; expected both or neither"));
            }
        }
        return problems;
    }

    @Override
    public Enclosure decode(Values values) {
        return new Enclosure(values.ifQuantity("flowArea"), values.ifQuantity("chassisHeatCapacity"),
                values.ifQuantity("chassisConductance"), values.parts("walls").stream().map(EnclosureSection::wall).toList());
    }

    private static Wall wall(Values values) {
        double area = values.si("area");
        Facing facing = Facing.named(values.text("facing"));
        double height = values.ifQuantity("height").map(Quantity::si)
                .orElse(facing == Facing.SIDE ? Math.sqrt(area) : Math.sqrt(area) / 4);
        double resistance = values.has("thickness") && values.has("conductivity") ? values.si("thickness") / values.si("conductivity") : 0;
        return new Wall(area, facing, height, resistance, values.si("emissivity"), values.si("absorptance"), values.si("sunlit"));
    }

    @Override
    public Value.Tree encode(Enclosure section) {
        Value.Tree tree = Value.Tree.EMPTY;
        if (section.flowArea().isPresent()) {
            tree = tree.with("flowArea", section.flowArea().get().written());
        }
        if (section.chassisCapacity().isPresent()) {
            tree = tree.with("chassisHeatCapacity", section.chassisCapacity().get().written());
        }
        if (section.chassisConductance().isPresent()) {
            tree = tree.with("chassisConductance", section.chassisConductance().get().written());
        }
        List<Value> walls = new ArrayList<>();
        for (Wall wall : section.walls()) {
            Value.Tree one = Value.Tree.EMPTY.with("area", Value.Num.of(wall.area()))
                    .with("facing", new Value.Text(wall.facing().word)).with("height", Value.Num.of(wall.height()))
                    .with("emissivity", Value.Num.of(wall.emissivity())).with("absorptance", Value.Num.of(wall.absorptance()))
                    .with("sunlit", Value.Num.of(wall.sunlit()));
            if (wall.resistance() > 0) { // only their ratio counts
                one = one.with("thickness", Value.Num.of(wall.resistance())).with("conductivity", Value.Num.of(1));
            }
            walls.add(one);
        }
        return walls.isEmpty() ? tree : tree.with("walls", new Value.Items(walls));
    }
}
