package tramontane.airflow.internal;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.osgi.service.component.annotations.Component;
import tramontane.analysis.Finding;
import tramontane.analysis.FlowLaw;
import tramontane.analysis.OperatingPoint;
import tramontane.analysis.PassageKind;
import tramontane.analysis.Relation;
import tramontane.model.Field;
import tramontane.model.Form;
import tramontane.model.Problem;
import tramontane.model.Range;
import tramontane.model.Values;
import tramontane.physics.DuctFriction;
import tramontane.physics.units.QuantityKind;

/**
 * A cage of circuit boards with a channel for air at each.
 *
 * <p>Δp = (c f L/d + K) ρ v²/2 in channels of board height by what the pitch leaves free, smooth, as a duct; c takes account of
 * components, which make a real channel rougher than a smooth one.
 */
@Component(service = PassageKind.class)
public final class CardCageKind implements PassageKind {

    private static final Relation CHANNELS = new Relation("channels between boards", "Δp = (c f L/d + K) ρ v²/2, v = Q/A",
            "f: R. K. Shah, J. Fluids Eng. 100 (1978) 177-179, joined with S. W. Churchill, Chem. Eng. 84 (1977) no. 24, 91-92",
            "smooth channels, a lower bound where c is 1; boards alike, with the same flow in each channel");

    private static final Form FORM = ExitHead.form("card cage", "A cage of circuit boards with a channel for air at each.", List.of(),
            Field.whole("boards", "boards", 1, 10_000, "Number of boards, and of channels.").mandatory(),
            Field.amount("pitch", "pitch", QuantityKind.LENGTH, Range.POSITIVE, "Distance from board to board.").mandatory(),
            Field.amount("boardThickness", "board thickness", QuantityKind.LENGTH, Range.NOT_NEGATIVE, "Thickness of a bare board.")
                    .standard("1.6 mm"),
            Field.amount("componentHeight", "component height", QuantityKind.LENGTH, Range.NOT_NEGATIVE,
                    "Mean height of the components, by which a channel is narrower.").standard("0 mm"),
            Field.amount("height", "height", QuantityKind.LENGTH, Range.POSITIVE, "Width of a board across the flow.").mandatory(),
            Field.amount("length", "length", QuantityKind.LENGTH, Range.POSITIVE, "Length of a board along the flow.").mandatory(),
            Field.amount("frictionFactor", "friction multiplier", QuantityKind.NUMBER, Range.POSITIVE,
                    "Friction of the channels over that of smooth ones; above 1 for boards with components.").standard(1),
            Fields.INLET_LOSS);

    @Override
    public Form form() {
        return FORM;
    }

    @Override
    public List<Problem> check(Values values, Setting setting, String place) {
        if (values.has("pitch") && !(gap(values) > 0)) {
            return List.of(Problem.error(Problem.place(place, "pitch"), "leaves no channel; expected above "
                    + (float) (1000 * (values.si("boardThickness") + values.si("componentHeight")))
                    + " mm, the thickness of a board with its components"));
        }
        return List.of();
    }

    private static double gap(Values values) {
        return values.si("pitch") - values.si("boardThickness") - values.si("componentHeight");
    }

    private static CrossSection channel(Values values) {
        return CrossSection.rectangle(gap(values), values.si("height"));
    }

    private static double area(Values values) {
        return values.whole("boards") * channel(values).area();
    }

    private static double loss(Values values) {
        return values.si("inletLoss") + ExitHead.of(values);
    }

    @Override
    public FlowLaw law(Values values, Setting setting) {
        CrossSection channel = channel(values);
        double length = values.si("length") / channel.diameter();
        return new ChannelLaw(area(values), channel.diameter(), new DuctFriction(channel.entry(), length, 0),
                values.si("frictionFactor") * length, loss(values));
    }

    /** That of all channels together. */
    @Override
    public OptionalDouble flowArea(Values values, Setting setting) {
        return OptionalDouble.of(area(values));
    }

    @Override
    public List<Finding> findings(Values values, Setting setting, OperatingPoint.PassageFlow flow) {
        return values.si("frictionFactor") != 1 ? List.of() : List.of(Finding.note(flow.passage(), "card cage " + flow.passage()
                + " is taken as smooth channels; components make its real drop larger")
                .remedy("give a friction multiplier, or measure it").source("common practice"));
    }

    @Override
    public Optional<Origin> origin(Values values, Setting setting) {
        return Optional.of(Inputs.of(setting).add("boards", QuantityKind.COUNT, values.whole("boards"))
                .length("channel width", gap(values)).length("channel height", values.si("height"))
                .area("area A of all channels", area(values)).length("hydraulic diameter d", channel(values).diameter())
                .length("length L", values.si("length")).number("friction multiplier c", values.si("frictionFactor"))
                .number("loss coefficient K of entry and exit", loss(values)).of(CHANNELS));
    }
}
