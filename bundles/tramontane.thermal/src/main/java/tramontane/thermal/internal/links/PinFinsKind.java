package tramontane.thermal.internal.links;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.AirStream;
import tramontane.analysis.Finding;
import tramontane.analysis.LinkKind;
import tramontane.analysis.LinkLaw;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Relation;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Values;
import tramontane.physics.heat.PinFins;

/**
 * The pins of a heat sink and the base between them, without conduction in the base.
 *
 * <p>The velocity before the pins is the part of the flow of its place that comes to them over their frontal area: pins per row
 * times pitch times height. It counts from the air that comes to the sink: the relation is one against the logarithmic mean of the
 * air, and a base of one temperature then takes R = 1/(C (1 - exp(-G/C))), C the heat that this air carries per kelvin.
 */
@Component(service = LinkKind.class)
public final class PinFinsKind implements LinkKind {

    private static final String STAGGERED = "staggered";

    private static final Relation PINS = new Relation("pin fins",
            "R = 1/(C (1 - exp(-G/C))), C = ρ Q cp, G = h (N π D H η + A - N π D²/4), h = Nu k/D",
            "A. Zukauskas, in Handbook of Single-Phase Convective Heat Transfer (1987), as in Y. A. Cengel, Heat and Mass Transfer, "
                    + "tables 7-2 and 7-3, from memory; a base of one temperature: W. M. Kays, A. L. London, Compact Heat Exchangers",
            "some 15 % spread; all air that comes to the pins goes between them");

    private static final Form FORM = Form.of("pin fins", "Round pins of a heat sink across the flow.",
            Fields.length("pinDiameter", "pin diameter", "Diameter of a pin.").mandatory(),
            Fields.length("height", "height", "Height of the pins above their base.").mandatory(),
            Field.whole("across", "across", 1, 10_000, "Pins per row, across the flow.").mandatory(),
            Field.whole("rows", "rows", 1, 10_000, "Rows along the flow.").mandatory(),
            Fields.length("pitchAcross", "pitch across", "Distance from pin to pin in a row, from middle to middle.").mandatory(),
            Fields.length("pitchAlong", "pitch along", "Distance from row to row, from middle to middle.").mandatory(),
            Field.choice("arrangement", "arrangement", List.of("in line", STAGGERED),
                    "Whether rows stand behind each other, or every second one in the gaps of the one before.").standard("in line"),
            Fields.SINK_CONDUCTIVITY, FlowShare.FIELD);

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public Step step() {
        return Step.SURFACE;
    }

    @Override
    public boolean fromInlet(Values values, Setting setting) {
        return true;
    }

    private static boolean staggered(Values values) {
        return values.text("arrangement").equals(STAGGERED);
    }

    @Override
    public List<Problem> check(Values values, Setting setting, String place) {
        List<Problem> problems = new ArrayList<>();
        if (!values.has("pinDiameter")) {
            return problems;
        }
        double diameter = values.si("pinDiameter");
        String expected = "; expected above the pin diameter of " + Checks.millimetres(diameter);
        if (values.has("pitchAcross") && !(values.si("pitchAcross") > diameter)) {
            problems.add(Problem.error(Problem.place(place, "pitchAcross"), "leaves no room between the pins" + expected));
        } else if (values.has("pitchAlong") && !staggered(values) && !(values.si("pitchAlong") > diameter)) {
            problems.add(Problem.error(Problem.place(place, "pitchAlong"), "leaves no room between the rows" + expected));
        } else if (values.has("pitchAlong") && values.has("pitchAcross") && staggered(values)
                && !(Math.hypot(values.si("pitchAlong"), values.si("pitchAcross") / 2) > diameter)) {
            problems.add(Problem.error(Problem.place(place, "pitchAlong"), "leaves no room between pins of neighbouring rows; expected above "
                    + Checks.millimetres(Math.sqrt(diameter * diameter - values.si("pitchAcross") * values.si("pitchAcross") / 4))));
        }
        return problems;
    }

    private static PinFins pins(Values values) {
        return new PinFins(staggered(values), values.whole("across"), values.whole("rows"), values.si("pinDiameter"), values.si("height"),
                values.si("pitchAcross"), values.si("pitchAlong"), values.si("conductivity"));
    }

    /** Velocity before the pins, m/s. */
    private static double velocity(Values values, PinFins pins, AirStream air) {
        return FlowShare.flow(values, air) / (pins.across() * pins.pitchAcross() * pins.height());
    }

    private static double coefficient(Values values, PinFins pins, AirStream air) {
        return pins.coefficient(velocity(values, pins, air), air.kinematicViscosity(), air.conductivity(), air.prandtl());
    }

    /** Heat that the air between the pins carries per kelvin, W/K. */
    private static double capacity(Values values, AirStream air) {
        return FlowShare.flow(values, air) * air.density() * air.specificHeat();
    }

    @Override
    public LinkLaw law(Values values, Setting setting) {
        PinFins pins = pins(values);
        return (air, beyond) -> {
            double capacity = capacity(values, air);
            return capacity == 0 ? Double.POSITIVE_INFINITY
                    : -1 / (capacity * Math.expm1(-pins.conductance(coefficient(values, pins, air)) / capacity));
        };
    }

    @Override
    public List<Finding> findings(Values values, Setting setting, AirStream air) {
        List<Finding> findings = new ArrayList<>(FlowShare.assumed(values, setting, air, ""));
        findings.addAll(Remarks.slow(setting, velocity(values, pins(values), air)));
        return findings;
    }

    @Override
    public Optional<PassageKind.Origin> origin(Values values, Setting setting, AirStream air) {
        PinFins pins = pins(values);
        double coefficient = coefficient(values, pins, air);
        return Optional.of(Inputs.of(setting).length("pin diameter D", pins.diameter()).length("height H", pins.height())
                .count("pins N", pins.across() * pins.rows()).count("rows", pins.rows()).length("pitch across", pins.pitchAcross())
                .length("pitch along", pins.pitchAlong()).conductivity("conductivity of the pins", pins.conductivity())
                .flow("flow Q that comes to the pins", FlowShare.flow(values, air))
                .velocity("velocity before the pins", velocity(values, pins, air)).air(air)
                .coefficient("heat transfer coefficient h", coefficient)
                .number("heat G of the pins in W/K", pins.conductance(coefficient))
                .number("heat C of the air in W/K", capacity(values, air)).of(PINS));
    }
}
