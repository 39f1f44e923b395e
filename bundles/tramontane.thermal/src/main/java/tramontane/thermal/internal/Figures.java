package tramontane.thermal.internal;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import tramontane.analysis.Better;
import tramontane.analysis.FigureKind;
import tramontane.analysis.Judgement;
import tramontane.analysis.LinkKind;
import tramontane.physics.units.QuantityKind;

/** The figures of temperatures. */
final class Figures {

    static final FigureKind JUNCTION = new FigureKind(Judgement.COMPONENT_TEMPERATURE, "junction temperature",
            QuantityKind.TEMPERATURE, Better.LOWER,
            "Temperature at the hot end of a heat source's chain; of the air at it where it has no chain.");
    static final FigureKind MARGIN = new FigureKind("thermal.junction.margin", "margin", QuantityKind.TEMPERATURE_DIFFERENCE,
            Better.HIGHER, "Limit of a heat source less its junction temperature.");
    static final FigureKind LOCAL = new FigureKind("thermal.local.temperature", "air at it", QuantityKind.TEMPERATURE,
            Better.LOWER, "Temperature of the air at a heat source, from which its chain counts.");
    static final FigureKind ARRIVING = new FigureKind("thermal.step.arriving", "air before it",
            QuantityKind.TEMPERATURE_DIFFERENCE, Better.LOWER,
            "Rise of the air from outside to the bay or passage in which a heat source stands: where several streams meet, of their mixture.");
    static final FigureKind ALONG = new FigureKind("thermal.step.along", "air along it", QuantityKind.TEMPERATURE_DIFFERENCE,
            Better.LOWER, "Rise of the air in that bay or passage up to the heat source, by what stands there.");
    static final FigureKind SURFACE = step("surface", "surface to air", "Rise from the air at a heat source to the surface that it touches.");
    static final FigureKind SPREADING = step("spreading", "spreading", "Rise by spreading and conduction in a plate of a heat source's chain.");
    static final FigureKind INTERFACE = step("interface", "interface", "Rise across interfaces of a heat source's chain.");
    static final FigureKind PACKAGE = step("package", "junction to case", "Rise from case to junction of a heat source.");
    static final FigureKind AIR = new FigureKind("thermal.air.temperature", "air temperature", QuantityKind.TEMPERATURE,
            Better.LOWER, "Temperature of the air in a bay, mixed.");
    static final FigureKind EXHAUST = new FigureKind("thermal.exhaust.temperature", "exhaust temperature",
            QuantityKind.TEMPERATURE, Better.LOWER, "Mean temperature of all air that leaves to outside, by the heat that it carries.");
    static final FigureKind HEAT = new FigureKind("thermal.heat.total", "heat", QuantityKind.POWER, Better.LOWER,
            "Heat of all sources that stand somewhere and of the movers.");
    static final FigureKind MOVER_HEAT = new FigureKind("thermal.heat.movers", "heat of the movers", QuantityKind.POWER,
            Better.LOWER, "Electrical input of the movers, all of which becomes heat in their air.");
    static final FigureKind WALL_HEAT = new FigureKind("thermal.heat.walls", "heat through walls", QuantityKind.POWER,
            Better.HIGHER, "Heat that leaves through walls, less what sunshine brings.");
    static final FigureKind SETTING = new FigureKind("thermal.control.setting", "speed setting", QuantityKind.FRACTION,
            Better.LOWER, "Speed setting at which a control law comes to rest, warming up from cold.");
    static final FigureKind FLOW_NEEDED = new FigureKind("thermal.flow.needed", "flow needed", QuantityKind.FLOW, Better.LOWER,
            "Flow from outside, at the density outside, at which the part that is worst then just meets its limit.");
    static final FigureKind FLOW_ESTIMATE = new FigureKind("thermal.flow.estimate", "first estimate", QuantityKind.FLOW,
            Better.LOWER, "Flow by heat of the sources / (density × specific heat × (limit of that part less outside)): all parts as warm as the air.");
    static final FigureKind SPEED_NEEDED = new FigureKind("thermal.speed.needed", "speed needed", QuantityKind.ROTATIONAL_SPEED,
            Better.LOWER, "Speed of a bank, all banks changed alike, at which the part that is worst then just meets its limit.");

    /** In the order in which they are shown. */
    static final List<FigureKind> ALL = List.of(JUNCTION, MARGIN, LOCAL, ARRIVING, ALONG, SURFACE, SPREADING, INTERFACE, PACKAGE, AIR,
            EXHAUST, HEAT, MOVER_HEAT, WALL_HEAT, SETTING, FLOW_NEEDED, FLOW_ESTIMATE, SPEED_NEEDED);

    /** The figure of each step of the budget. */
    static final Map<LinkKind.Step, FigureKind> STEPS = new EnumMap<>(Map.of(LinkKind.Step.SURFACE, SURFACE,
            LinkKind.Step.SPREADING, SPREADING, LinkKind.Step.INTERFACE, INTERFACE, LinkKind.Step.PACKAGE, PACKAGE));

    private Figures() {
    }

    private static FigureKind step(String id, String label, String help) {
        return new FigureKind("thermal.step." + id, label, QuantityKind.TEMPERATURE_DIFFERENCE, Better.LOWER, help);
    }
}
